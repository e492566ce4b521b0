"""Sentences of the knowledge in the maker's units: they are written in mm, cm and °C.

A rounded inch is meant to be measured at the table: 20 cm of a sample are 8 in, not 7 7/8. The
length and width of stitches stay in mm, because that is what machines are marked in.
"""

from __future__ import annotations

import re
from typing import Any

from advisor.units import MM_PER_INCH, show, show_range

_MEASURE = re.compile(
    r"(?<![\d./])(\d+(?:\.\d+)?)(?: (to|or|and) (\d+(?:\.\d+)?))? (mm|cm|°C|degrees)(?![\w²])"
)
_STITCHES = re.compile(r"(?:stitche?s?, (?:about )?|stitch (?:to|of) |zigzag |blade of )$")
_STITCHES_AFTER = re.compile(r"^ (?:stitch|wide and|long;)")
_PROSE = frozenset({"text", "why", "message", "look_for", "then", "effect", "says", "build_says"})
_COARSE_MM = 45.0
_FINE_MM = 8.0
_STITCH_MM = 3.0
"""Below this a length is one of stitches, or is measured by the marks of a metric rule."""


def in_us(data: Any, key: str = "") -> Any:
    """The same data with every sentence in inches and °F; sets in place and gives back."""
    if isinstance(data, dict):
        for name, value in data.items():
            data[name] = in_us(value, name)
        return data
    if isinstance(data, list):
        data[:] = [in_us(value, key) for value in data]
        return data
    return us_text(data) if isinstance(data, str) and key in _PROSE else data


def us_text(text: str) -> str:
    """A sentence with its lengths in inches and its heat in °F.

    What counts a share in millimetres is left alone: the sum would not come out in inches.
    """
    if "millimetre" in text:
        return text
    return _MEASURE.sub(_swap, text)


def _swap(found: re.Match[str]) -> str:
    low, joint, high, unit = found.groups()
    if unit in ("°C", "degrees"):
        return _heat(float(low), joint, high)
    size = 10.0 if unit == "cm" else 1.0
    before, after = found.string[: found.start()], found.string[found.end() :]
    stitches = _STITCHES.search(before) or _STITCHES_AFTER.search(after)
    stitched = stitches or float(low) < _STITCH_MM
    if unit == "mm" and float(high or low) < _FINE_MM and stitched:
        return found.group()
    ends = [_inches(float(end) * size) for end in (low, high) if end]
    if len(set(ends)) == 1:
        return f"{ends[0]} in"
    return f"{ends[0]} {joint} {ends[1]} in"


def _heat(low: float, joint: str | None, high: str | None) -> str:
    if high is None:
        return show("temperature", low, "us")
    if joint == "to":
        return show_range("temperature", low, float(high), "us")
    return f"{show('temperature', low, 'us')} {joint} {show('temperature', float(high), 'us')}"


def _inches(mm: float) -> str:
    """Whole inches, eighths or sixteenths, as finely as that length is measured by eye."""
    step = 1.0 if mm >= _COARSE_MM else 1 / 8 if mm >= _FINE_MM else 1 / 16
    inches = round(mm / MM_PER_INCH / step) * step
    return show("length", max(inches, 1 / 16) * MM_PER_INCH, "us").removesuffix(" in")
