"""Reads a quantity out of a maker's text, into the base unit of its kind."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping

from msgspec import Struct

from advisor.units.factors import (
    ABSOLUTE_ZERO,
    MM_PER_INCH,
    MM_PER_YARD,
    MOMME,
    OUNCE_PER_SQUARE_YARD,
    TEX_NE,
    TEX_NM,
    TEX_TICKET,
    nm_from_us,
    us_size,
)

LONGEST_TEXT = 60
LARGEST = 1e9
"""No cloth, oven or seam comes near it; a number above is a slip of the keyboard."""


class _Unit(Struct, frozen=True):
    """A way to write a quantity: base = (number - zero) × times / over, or times / number."""

    spellings: tuple[str, ...]
    times: float = 1.0
    over: float = 1.0  # kept apart from `times`, so that 230 °F is 110 °C to the last digit
    zero: float = 0.0
    per: bool = False
    fractions: bool = False

    def to_base(self, number: float) -> float:
        if not self.per:
            return (number - self.zero) * self.times / self.over
        if number == 0:
            raise ValueError("it must not be 0")
        return self.times / number


class _Kind(Struct, frozen=True):
    """A kind of quantity: its units (the base unit first), lowest value, and an example."""

    units: tuple[_Unit, ...]
    lowest: float
    accepted: str
    above: bool = False


_INCH = _Unit(("in", "inch", "inches", '"'), MM_PER_INCH, fractions=True)
_YARD = _Unit(("yd", "yds", "yard", "yards"), MM_PER_YARD, fractions=True)
_MM = _Unit(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), 1.0)
_CM = _Unit(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), 10.0)

_KINDS: Mapping[str, _Kind] = {
    "length": _Kind(
        (_MM, _CM, _Unit(("m", "metre", "metres", "meter", "meters"), 1000.0), _INCH, _YARD),
        0.0,
        "mm, cm, m, in or yd, as in 15 mm, 5/8 in, 1 1/2 yd",
    ),
    "weight": _Kind(
        (
            _Unit(("g/m2", "gsm", "g/sq m"), 1.0),
            _Unit(("kg/m2", "kg/sq m"), 1000.0),
            _Unit(("oz", "oz/yd2", "oz/sq yd", "oz per sq yd"), OUNCE_PER_SQUARE_YARD),
            _Unit(("momme",), MOMME),
        ),
        0.0,
        "g/m², oz/yd² or momme, as in 340 g/m2, 10 oz, 16 momme",
        above=True,
    ),
    "temperature": _Kind(
        (
            _Unit(("°c", "c", "degc", "degrees c", "℃", "celsius"), 1.0),
            _Unit(("°f", "f", "degf", "degrees f", "℉", "fahrenheit"), 5.0, 9.0, 32.0),
        ),
        ABSOLUTE_ZERO,
        "°C or °F, as in 110 °C, 230 F",
    ),
    "time": _Kind(
        (
            _Unit(("s", "sec", "secs", "second", "seconds"), 1.0),
            _Unit(("min", "mins", "minute", "minutes"), 60.0),
            _Unit(("h", "hr", "hrs", "hour", "hours"), 3600.0),
        ),
        0.0,
        "s, min or h, as in 10 s, 5 min",
    ),
    "tex": _Kind(
        (
            _Unit(("tex",), 1.0),
            _Unit(("dtex",), over=10.0),
            _Unit(("den", "denier"), over=9.0),
            _Unit(("ticket", "tkt"), TEX_TICKET, per=True),
            _Unit(("nm",), TEX_NM, per=True, fractions=True),
            _Unit(("ne",), TEX_NE, per=True, fractions=True),
        ),
        0.0,
        "tex, dtex, denier, ticket, Nm or Ne, as in 40 tex, ticket 75, Nm 80/2",
        above=True,
    ),
    "stitch length": _Kind(
        (
            _MM,
            _Unit(("spi", "stitches per inch", "stitches/in"), MM_PER_INCH, per=True),
            _Unit(("stitches per cm", "stitches/cm", "st/cm"), 10.0, per=True),
        ),
        0.0,
        "mm or stitches per inch, as in 2.5 mm, 10 spi",
        above=True,
    ),
    "percent": _Kind((_Unit(("%", "percent", "per cent"), 1.0),), 0.0, "a number, as in 80 %"),
    "count": _Kind((_Unit((), 1.0),), 0.0, "a plain number in digits, as in 3"),
    "needle": _Kind((_Unit(("nm",)),), 26.0, "a metric or US size, as in 70, NM 70, 70/10, US 10"),
}

KINDS: tuple[str, ...] = tuple(_KINDS)
"""The kinds of quantity that `parse`, `show` and `show_range` know."""

_DECIMAL = r"[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+"
_NUMBER = re.compile(
    r"(?P<sign>[-+]?)\s*(?:(?:(?P<whole>[0-9]+)(?:\s+|\s*-\s*))?"
    r"(?P<top>[0-9]+)\s*/\s*(?P<bottom>[0-9]+)"
    rf"|(?P<decimal>(?:{_DECIMAL})(?:e[-+]?[0-9]+)?))"
)
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_NEEDLE_PAIR = re.compile(r"(?:nm\s*)?([0-9]+)\s*/\s*([0-9]+)")
_NEEDLE_US = re.compile(r"us\s*([0-9]+)")
_VULGAR = {
    "¼": "1/4",
    "½": "1/2",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
}
_LOOKALIKES = str.maketrans(
    {"²": "2", "^": "", "−": "-", "–": "-", "⁄": "/", "″": '"', "”": '"', "º": "°", "\xa0": " "}
    | {sign: f" {plain} " for sign, plain in _VULGAR.items()}
)


def parse(kind: str, value: object, default_unit: str | None = None) -> float:
    """Return a quantity in the base unit of its kind.

    Args:
        kind: one of `KINDS`.
        value: text such as "1 1/2 in", or a bare number; anything else is refused.
        default_unit: the unit of a bare number, the base unit when not given.

    Raises:
        ValueError: not such a quantity; the message names the accepted spellings.
    """
    entry = _kind(kind)
    try:
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            raise ValueError("this is not a quantity")
        base = _read(kind, entry, value, default_unit)
        return _checked(entry, base) + 0.0  # + 0.0 turns -0.0 into 0.0
    except (ValueError, OverflowError) as error:
        shown = f"{value:.40}" if isinstance(value, str) else _named(value)
        reason = "the number is too large" if isinstance(error, OverflowError) else str(error)
        article = f"a {kind}" if kind != "tex" else "a thread size"
        raise ValueError(f"'{shown}' is not {article}: {reason}; write {entry.accepted}") from None


def _named(value: object) -> str:
    if isinstance(value, bool) or value is None:
        return {True: "true", False: "false", None: "nothing"}[value]
    if isinstance(value, int | float):
        return "a very large number" if LARGEST**2 <= abs(value) < math.inf else f"{value}"
    return f"a {type(value).__name__}"


def _read(kind: str, entry: _Kind, value: str | float, default_unit: str | None) -> float:
    default = _unit(entry, default_unit) if default_unit is not None else entry.units[0]
    if not isinstance(value, str):
        return default.to_base(float(value))
    if len(value) > LONGEST_TEXT:
        raise ValueError("the text is far too long")
    text = " ".join(value.translate(_LOOKALIKES).casefold().split())
    if kind == "needle" and (size := _needle_label(text)) is not None:
        return size
    lengths = re.fullmatch(r"(.+ ?(?:yds?|yards?)) (.+ ?(?:in|inch|inches|\"))", text)
    if kind == "length" and lengths:
        return sum(_one(entry, part, default) for part in lengths.groups())
    return _one(entry, text, default)


def _one(entry: _Kind, text: str, default: _Unit) -> float:
    """Return one number with its unit, which may stand after it or before it (ticket 75)."""
    found = _NUMBER.search(text)
    if found is None:
        raise ValueError("there is no number in it" if text else "it is empty")
    before, after = text[: found.start()].strip(), text[found.end() :].strip()
    if before and after:
        raise ValueError("there is text on both sides of the number")
    word = (before or after).rstrip(".")
    unit = _unit(entry, word) if word else default
    return unit.to_base(_number(found, unit))


def _needle_label(text: str) -> float | None:
    if us := _NEEDLE_US.fullmatch(text):
        return float(nm_from_us(int(us[1])))
    pair = _NEEDLE_PAIR.fullmatch(text)
    if pair is None:
        return None
    label, size = sorted((int(pair[1]), int(pair[2])))
    if us_size(size) != label:
        raise ValueError(f"{size} and {label} are not the same needle")
    return float(size)


def _number(found: re.Match[str], unit: _Unit) -> float:
    sign = -1.0 if found["sign"] == "-" else 1.0
    if found["decimal"] is not None:
        if _THOUSANDS.fullmatch(found["decimal"]):
            raise ValueError("the comma may mean a decimal or thousands; use a point, or none")
        return sign * float(found["decimal"].replace(",", "."))
    if not unit.fractions:
        raise ValueError("a fraction is read only with in, yd, Nm or Ne")
    top, bottom, whole = int(found["top"]), int(found["bottom"]), found["whole"]
    if bottom == 0:
        raise ValueError("a fraction cannot be over 0")
    if whole is not None and top >= bottom:
        raise ValueError("the fraction after a whole number must be less than 1")
    return sign * (int(whole or 0) * bottom + top) / bottom


def _unit(entry: _Kind, word: str) -> _Unit:
    key = word.translate(_LOOKALIKES).casefold().replace(" / ", "/").strip()
    for unit in entry.units:
        if key in unit.spellings:
            return unit
    raise ValueError(f"the unit '{word}' is not known here")


def _checked(entry: _Kind, base: float) -> float:
    if not math.isfinite(base):
        raise ValueError("it is not a finite number")
    if base < 0 and entry.lowest == 0 and not entry.above:
        raise ValueError("it is below 0")
    if base < entry.lowest or (entry.above and base == entry.lowest):
        least = "more than" if entry.above else "at least"
        raise ValueError(f"it must be {least} {entry.lowest:g}")
    if base > LARGEST:
        raise ValueError("the number is too large")
    return base


def _kind(kind: str) -> _Kind:
    if kind not in _KINDS:
        raise ValueError(f"no kind of quantity is called '{kind}'; known: {', '.join(KINDS)}")
    return _KINDS[kind]
