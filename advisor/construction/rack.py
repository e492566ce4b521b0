"""Thread that the maker has: which reel of her rack suits a cloth whose colour is a code.

A reel is written in her kit as its name and its colour, `navy #1b2a4a`, or as the measured
L*, a*, b* behind its name, `navy 17.8 3.1 -20.4`. A cloth whose colour is only a word is matched by
eye.
"""

from __future__ import annotations

import re
from typing import Final

from advisor.craft.colour import Lab, Match, lab_of, matches

FAR: Final = 6.0
"""A reel further away than this is no match at all (estimate)."""
_CODE: Final = re.compile(r"(.*?)\s*(#(?:[0-9a-f]{6}|[0-9a-f]{3}))", re.IGNORECASE)
_NUMBER: Final = r"-?\d+(?:\.\d+)?"
_MEASURED: Final = re.compile(rf"(.*?)\s+({_NUMBER})\s+({_NUMBER})\s+({_NUMBER})")


def reel_of(text: str) -> tuple[str, Lab] | None:
    """A reel's name and colour; None where its colour is neither a code nor measured."""
    if code := _CODE.fullmatch(text):
        return code[1] or code[2], lab_of(code[2])
    if measured := _MEASURED.fullmatch(text):
        light, a, b = (float(measured[i]) for i in (2, 3, 4))
        return measured[1], Lab(light, a, b)
    return None


def from_rack(colour: str, rack: tuple[str, ...]) -> tuple[Match, ...]:
    """Reels that are near a colour, the best first; none where the colour is only a word."""
    if not colour.startswith("#"):
        return ()
    reels = [reel for reel in map(reel_of, rack) if reel is not None]
    return tuple(found for found in matches(lab_of(colour), reels) if found.difference <= FAR)
