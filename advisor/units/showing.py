"""Writes a quantity as a maker reads it, rounded to what hands and tools can do.

Rounding is for reading only: a limit is compared before it is printed, never after.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Final, Literal, TypeAlias

from msgspec import Struct

from advisor.units.factors import MM_PER_INCH, OUNCE_PER_SQUARE_YARD, fahrenheit, us_size
from advisor.units.reading import KINDS, LARGEST

System: TypeAlias = Literal["metric", "us"]
SYSTEMS: Final[Mapping[str, System]] = {"metric": "metric", "us": "us"}
"""Systems of units by their names, for a name that was typed."""


def needle(nm: float) -> str:
    """Return a needle size as it stands on the packet, "70 (US 10)"."""
    label = us_size(nm)
    return _decimal(nm) if label is None else f"{_decimal(nm)} (US {label})"


class _Scale(Struct, frozen=True):
    """How a quantity is printed below `limit`: in units of `size`, to the nearest `step` (base)."""

    limit: float
    unit: str
    size: float
    step: float


_ANY = math.inf
_TEX = (_Scale(_ANY, "tex", 1, 0.1),)
_TIME = (
    _Scale(10, "s", 1, 0.1),
    _Scale(120, "s", 1, 1),
    _Scale(7200, "min", 60, 6),
    _Scale(_ANY, "h", 3600, 360),
)
_METRIC: Mapping[str, tuple[_Scale, ...]] = {
    "length": (
        _Scale(1, "mm", 1, 0.01),
        _Scale(10, "mm", 1, 0.1),
        _Scale(100, "mm", 1, 0.5),
        _Scale(1000, "cm", 10, 1),
        _Scale(_ANY, "m", 1000, 10),
    ),
    "weight": (_Scale(10, "g/m²", 1, 0.1), _Scale(_ANY, "g/m²", 1, 1)),
    "temperature": (_Scale(_ANY, "°C", 1, 1),),
    "time": _TIME,
    "tex": _TEX,
    "stitch length": (_Scale(_ANY, "mm", 1, 0.1),),
    "percent": (_Scale(_ANY, "%", 1, 0.1),),
    "count": (_Scale(_ANY, "", 1, 0.01),),
    "needle": (_Scale(_ANY, "", 1, 1),),
}
_OZ = OUNCE_PER_SQUARE_YARD
_US: Mapping[str, tuple[_Scale, ...]] = {
    **_METRIC,
    "weight": (_Scale(_OZ, "oz/yd²", _OZ, _OZ / 100), _Scale(_ANY, "oz/yd²", _OZ, _OZ / 10)),
    # Read in degrees Fahrenheit and in stitches per inch, see _in_us.
    "temperature": (_Scale(_ANY, "°F", 1, 1),),
    "stitch length": (
        _Scale(5, "stitches per inch", 1, 0.1),
        _Scale(_ANY, "stitches per inch", 1, 1),
    ),
}
_YARD_FROM = 36
_SIXTEENTHS = 16


def show(kind: str, value: float, system: System = "metric") -> str:
    """Return a quantity as a maker reads it, "15 mm" or "5/8 in"; rounded, so for reading only.

    Raises:
        ValueError: unknown kind, or a value that is not finite or beyond all sewing.
    """
    _known(kind)
    if not abs(value) <= LARGEST * 10:
        raise ValueError(f"{value} cannot be printed")
    if kind == "needle":
        return needle(value)
    if value < 0 and kind != "temperature":
        return f"-{show(kind, -value, system)}"
    if kind == "length" and system == "us":
        return _us_length(value / MM_PER_INCH)
    if kind == "stitch length" and value == 0:
        system = "metric"  # no length has no count to the inch
    number, scale = _rounded(kind, value, system)
    return f"{_decimal(number / scale.size)} {scale.unit}".rstrip()


def show_size(mm: float, system: System = "metric") -> str:
    """Return the size of a piece as it is measured on the table: cm and mm, or inches only.

    Raises:
        ValueError: a value that is not finite or beyond all sewing.
    """
    if system == "us":
        return f"{_inches(mm / MM_PER_INCH)} in" if mm >= 0 else show("length", mm, system)
    if not 100 <= mm <= LARGEST:
        return show("length", mm, system)
    return f"{_decimal(_half_up(mm) / 10)} cm"


def show_range(kind: str, low: float, high: float, system: System = "metric") -> str:
    """Return a range with its unit once, "60 to 70" or "10 to 15 mm"; an open end is infinite.

    Raises:
        ValueError: unknown kind, nan, or low above high.
    """
    if not low <= high:
        raise ValueError(f"{low} to {high} is not a range")
    _known(kind)
    inverted = kind == "stitch length" and system == "us"
    if inverted:  # longer stitches are fewer to the inch, and no length is no limit to the count
        low, high = high, low or _ANY
    first, last = (None if math.isinf(end) else show(kind, end, system) for end in (low, high))
    if first is None or last is None:
        return f"at most {last}" if last else f"at least {first}" if first else "any"
    if first == last:
        return first
    if kind == "needle":
        return f"{_decimal(low)} to {_decimal(high)}"
    if kind == "length" and system == "us":
        return f"{_inches(low / MM_PER_INCH)} to {_inches(high / MM_PER_INCH)} in"
    number, _ = _rounded(kind, low, system)
    _, scale = _rounded(kind, high, system)
    return f"{_decimal(number / scale.size)} to {last}"


def _rounded(kind: str, value: float, system: System) -> tuple[float, _Scale]:
    """Return the value rounded as it is printed, in base units, and the scale it is printed on."""
    if system == "us" and kind == "temperature":
        value = fahrenheit(value)
    if system == "us" and kind == "stitch length":
        value = MM_PER_INCH / value
    scales = (_US if system == "us" else _METRIC)[kind]
    for scale in scales:
        # What rounds up to a limit belongs to the next scale.
        number = _half_up(value / scale.step) * scale.step
        if number < scale.limit - scale.step / 2:
            break
    return number, scale


def _us_length(inches: float) -> str:
    sixteenths = _half_up(inches * _SIXTEENTHS)
    yards, rest = divmod(sixteenths, _YARD_FROM * _SIXTEENTHS)
    if yards == 0:
        return f"{_inches(inches)} in"
    eighths, odd = divmod(rest * 8, _YARD_FROM * _SIXTEENTHS)
    if odd == 0:  # cloth is sold by the eighth of a yard; between eighths inches say it exactly
        return f"{_fraction(yards * 8 + eighths, 8)} yd"
    return f"{yards} yd {_fraction(rest, _SIXTEENTHS)} in"


def _inches(inches: float) -> str:
    sixteenths = _half_up(inches * _SIXTEENTHS)
    if 0 < inches < 1 / _SIXTEENTHS and sixteenths == 0:
        return _decimal(inches)
    return _fraction(sixteenths, _SIXTEENTHS)


def _fraction(top: int, bottom: int) -> str:
    """Return top/bottom as a whole number and a proper fraction in lowest terms."""
    whole, rest = divmod(top, bottom)
    shared = math.gcd(rest, bottom)
    part = f"{rest // shared}/{bottom // shared}" if rest else ""
    return f"{whole} {part}".strip() if whole or not part else part


def _half_up(number: float) -> int:
    # Half goes up, as people round; the digits dropped first are only binary noise.
    return math.floor(round(number, 9) + 0.5)


def _known(kind: str) -> None:
    if kind not in KINDS:
        raise ValueError(f"no kind of quantity is called '{kind}'; known: {', '.join(KINDS)}")


def _decimal(number: float) -> str:
    text = f"{number:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
