"""Tells whether a colour is dark, pale or between, because dark dye comes off on pale cloth.

Lightness is L* of CIE 15 from the luminance of an sRGB colour (IEC 61966-2-1). Where dark ends
and pale begins is an estimate.
"""

from __future__ import annotations

import re

from advisor.errors import InputError, Problem, shown
from advisor.knowledge.names import plain_name
from advisor.project.phrases.shading import shade_in

DARK_BELOW = 40.0
PALE_FROM = 75.0

_HEX = re.compile(r"#(?:[0-9a-f]{3}|[0-9a-f]{6})", re.IGNORECASE)


def read_colour(value: object) -> tuple[str, str]:
    """The colour as it was written, and its shade; "" where a word does not tell.

    Raises:
        InputError: it starts as a colour code and is none.
    """
    text = " ".join(str(value).split())
    if not isinstance(value, str):
        expected = 'a word such as navy, or a code in quotes such as "#27455f"'
        raise InputError(
            Problem(f"'colour': {shown(text)} is a number and no colour", None, expected)
        )
    if text.startswith("#"):
        if not _HEX.fullmatch(text):
            raise InputError(
                Problem(
                    f"'colour': {shown(text)} is no colour code",
                    None,
                    'a word, or six digits as in "#27455f"',
                )
            )
        return text.casefold(), _shade(lightness(text))
    return text, shade_in(plain_name(text).split())


def lightness(code: str) -> float:
    """L* from 0 (black) to 100 (white) of a code such as "#27455f"."""
    digits = code[1:] if len(code) == 7 else "".join(d * 2 for d in code[1:])
    red, green, blue = (_linear(int(digits[i : i + 2], 16) / 255) for i in (0, 2, 4))
    luminance = 0.2126 * red + 0.7152 * green + 0.0722 * blue
    if luminance > 216 / 24389:
        return float(116 * luminance ** (1 / 3) - 16)
    return luminance * 24389 / 27


def _linear(value: float) -> float:
    return value / 12.92 if value <= 0.04045 else float(((value + 0.055) / 1.055) ** 2.4)


def _shade(light: float) -> str:
    if light < DARK_BELOW:
        return "dark"
    return "pale" if light >= PALE_FROM else "middle"
