"""Quantities inside sentences: written once as values in braces, read in the reader's units.

`Gather {20 cm}: {20 cm} ÷ what is left` · `between {85 and 115 °C}` · `{1.5 or 2 mm stitch}` ·
`a needle of {80 NM}`. A quantity starts with a digit, so that `{place}` and other words that are
filled in later never clash with it. Inches are rounded to what is seen at the table by eye, °F to
five, as dials are marked, and of water to one, as labels are. What a machine is marked in, a
stitch, stays in mm.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import cache
from typing import Final

from advisor.units.factors import MM_PER_INCH, MM_PER_YARD, fahrenheit, us_size
from advisor.units.showing import show

QUANTITY: Final = re.compile(r"\{(\d[^{}]*)\}")
_VALUE = r"\d+(?:\.\d+)?"
_INSIDE: Final = re.compile(
    rf"(?P<low>{_VALUE})(?: (?P<joint>to|or|and) (?P<high>{_VALUE}))? (?P<unit>\S.*)"
)
_METRIC: Final = frozenset({"mm", "cm", "m", "°C", "g/m2"})
_LENGTHS: Final = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": MM_PER_INCH, "yd": MM_PER_YARD}
UNITS: Final = (*_LENGTHS, "°C", "°F", "g/m2", "mm stitch", "per inch", "NM")
"""The units of a quantity in a sentence; `mm stitch` is a stitch's length or width."""
_FAHRENHEIT_STEP, _HOT_WATER = 5, 150
"""To what a dial is read, and up to where it is water that is spoken of, °F."""
_CM_FROM_MM = 100.0
_PARTS: Final = ((45.0, 1), (8.0, 8), (3.0, 16), (0.7, 32))
"""From so many mm on, into how many parts an inch is read; a thinner thing in hundredths."""


def render(sentence: str, units: str) -> str:
    """A sentence with its quantities in the reader's units, `us` or metric; the rest stays.

    Raises:
        ValueError: a brace that starts with a digit holds no quantity.
    """
    if "{" not in sentence:
        return sentence
    return QUANTITY.sub(lambda found: _shown(found.group(1), units), sentence)


def said(value: float, unit: str, units: str) -> str:
    """One quantity as a sentence of ours says it: `said(20, "cm", "us")` is 8 in."""
    return _shown(f"{value:g} {unit}", units)


@cache
def _shown(text: str, system: str) -> str:
    found = _INSIDE.fullmatch(text)
    if found is None:
        raise ValueError(f"'{text}' is no quantity: write it as {{20 cm}} or {{170 to 180 °C}}")
    unit = found["unit"].replace("²", "2")
    if unit not in UNITS:
        raise ValueError(f"'{unit}' is no unit of a quantity in a sentence")
    ends = [found["low"], found["high"] or found["low"]]
    if found["joint"] == "to" and float(ends[0]) >= float(ends[1]):
        raise ValueError(f"'{text}' does not rise")
    if system == "metric" and unit in _METRIC:
        return text.replace("g/m2", "g/m²")
    numbers = [float(end) for end in ends]
    return _in_units(numbers, unit, found["joint"] or "to", system)


def _in_units(ends: list[float], unit: str, joint: str, system: str) -> str:
    if unit in _LENGTHS:
        return _length([end * _LENGTHS[unit] for end in ends], joint, system)
    if unit in ("°C", "°F"):
        return _degrees(ends, unit, joint, system)
    if unit == "NM":
        return _needles(ends, joint, system)
    if unit == "g/m2":
        return _joined(ends, joint, lambda v: show("weight", v, "us").split()[0], "oz/yd²")
    if unit == "mm stitch":
        return _joined(ends, joint, _plain, "mm")
    if system == "us":
        return _joined(ends, joint, _plain, "to the inch")
    return _joined(sorted(MM_PER_INCH / end for end in ends), joint, _tenth, "mm")


def _length(sizes: list[float], joint: str, system: str) -> str:
    if system == "us":
        return _joined(sizes, joint, _inches, "in")
    size, name = (1.0, "mm") if max(sizes) < _CM_FROM_MM else (10.0, "cm")
    return _joined(sizes, joint, lambda mm: f"{mm / size:.0f}", name)


def _degrees(ends: list[float], unit: str, joint: str, system: str) -> str:
    if system == "us":
        return _joined([fahrenheit(v) if unit == "°C" else v for v in ends], joint, _to_five, "°F")
    return _joined([(end - 32) / 1.8 for end in ends], joint, lambda v: f"{v:.0f}", "°C")


def _joined(ends: list[float], joint: str, text: Callable[[float], str], unit: str) -> str:
    first, last = text(ends[0]), text(ends[1])
    return f"{first} {unit}" if first == last else f"{first} {joint} {last} {unit}"


def _plain(value: float) -> str:
    return f"{value:g}"


def _tenth(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")


def _to_five(degrees: float) -> str:
    step = 1 if degrees < _HOT_WATER else _FAHRENHEIT_STEP
    return f"{round(degrees / step) * step}"


def _inches(mm: float) -> str:
    """Whole inches, eighths, sixteenths or thirty-seconds, as finely as a length is seen by eye."""
    parts = next((parts for start, parts in _PARTS if mm >= start), 0)
    if not parts:
        return f"{max(mm / MM_PER_INCH, 0.01):.2f}"
    whole, rest = divmod(round(mm / MM_PER_INCH * parts), parts)
    while rest and rest % 2 == 0:
        rest, parts = rest // 2, parts // 2
    return " ".join([str(whole)] * bool(whole) + [f"{rest}/{parts}"] * bool(rest))


def _needles(ends: list[float], joint: str, system: str) -> str:
    sizes = list(dict.fromkeys(ends))
    text = f" {joint} ".join(_plain(size) for size in sizes)
    labels = [us_size(size) for size in sizes]
    if system == "metric" or None in labels:
        return text
    return f"{text} (US {f' {joint} '.join(str(label) for label in labels)})"


_BARE: Final = re.compile(
    r"(?<!tex )(?<![\w¤.])\d+(?:[.,/]\d+)*(?:(?: (?:to|or|and) |-)\d+(?:[.,/]\d+)*)?"
    r"(?: ?(?P<unit>mm|cm|°C|°F|g/m2|g/m²|NM|oz|yd)|"
    r" (?P<word>m|in|inch|inches|degrees|metres?|yards?|to the inch|an inch))(?![\w²])"
)
_LONE: Final = re.compile(
    r"(?<![\w¤.'-])\d+(?:[.,]\d+)*(?![\w.'-]*\w)"
    rf"(?!(?: (?:to|or|and) {_VALUE})? ?(?:%|per ?cent|times|minutes?|seconds?))"
)
_SPELT: Final = {
    "inch": "in",
    "inches": "in",
    "an inch": "per inch",
    "to the inch": "per inch",
    "degrees": "°C",
    "metre": "m",
    "metres": "m",
    "yard": "yd",
    "yards": "yd",
    "g/m²": "g/m2",
}
"""How a unit that stands in a sentence is written in braces."""


def faults(sentence: str, unit: str = "") -> Iterator[tuple[str, str]]:
    """What is wrong with the numbers of a sentence: each wrong word, and what is wrong with it.

    Args:
        sentence: as it stands in a file.
        unit: what a number without a unit would mean here; with one, no number may stand alone.
    """
    for found in QUANTITY.finditer(sentence):
        try:
            _shown(found.group(1), "us")
        except ValueError as error:
            yield found.group(1), str(error)
    rest = QUANTITY.sub(lambda q: "¤" * len(q.group()), sentence)
    for found in _BARE.finditer(rest):
        word = found["unit"] or found["word"]
        right = _SPELT.get(word, word)
        number = found.group().removesuffix(word).strip().replace("-", " to ")
        yield found.group(), f"'{found.group()}' stands bare: write {{{number} {right}}}"
    if unit:
        for found in _LONE.finditer(_BARE.sub(lambda q: "¤" * len(q.group()), rest)):
            text = (
                f"'{found.group()}' has no unit: write {{{found.group()} {unit}}} or what it counts"
            )
            yield found.group(), text
