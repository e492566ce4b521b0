"""How far two colours lie apart as the eye sees it, and which reel of a rack suits a cloth.

Difference by CIEDE2000 (`sharma-2005`: G. Sharma, W. Wu, E. N. Dalal, "The CIEDE2000
color-difference formula", Color Research and Application 30(1), 2005, with kL = kC = kH = 1 unless
told), checked against all 34 pairs of its table. Colours are CIE L*, a*, b*; an sRGB code is turned
into them by IEC 61966-2-1 for D65 and the 2° observer. A screen's code stands for a thread only
roughly, and two dyes that agree in one light may part in another: daylight decides.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Final

from msgspec import Struct

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("sharma-2005", "iec-61966-2-1", "colour-tolerance-page")
#: Below the first nobody sees a difference, up to the second it is seen on close inspection
#: (`colour-tolerance-page`, which does not say by which formula; buyers' bounds differ).
UNSEEN: Final = 1.0
SLIGHT: Final = 2.0
#: A thread that is no more than this darker is taken before any lighter one (`estimate`).
DARKER: Final = 4.0
_WHITE: Final = (0.95047, 1.0, 1.08883)


class Lab(Struct, frozen=True):
    """A colour: lightness 0 to 100, red against green, yellow against blue."""

    lightness: float
    a: float
    b: float


def lab_of(code: str) -> Lab:
    """The colour of an sRGB code such as "#27455f".

    Raises ValueError for anything else.
    """
    digits = code.removeprefix("#")
    if len(digits) == 3:
        digits = "".join(d * 2 for d in digits)
    if len(digits) != 6:
        raise ValueError(f"{code!r} is no colour code")
    red, green, blue = (_linear(int(digits[i : i + 2], 16) / 255) for i in (0, 2, 4))
    x = 0.4124564 * red + 0.3575761 * green + 0.1804375 * blue
    y = 0.2126729 * red + 0.7151522 * green + 0.0721750 * blue
    z = 0.0193339 * red + 0.1191920 * green + 0.9503041 * blue
    fx, fy, fz = (_root(value / white) for value, white in zip((x, y, z), _WHITE, strict=True))
    return Lab(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz))


def _linear(value: float) -> float:
    return value / 12.92 if value <= 0.04045 else float(((value + 0.055) / 1.055) ** 2.4)


def _root(value: float) -> float:
    return float(value ** (1 / 3)) if value > 216 / 24389 else (24389 / 27 * value + 16) / 116


def difference(one: Lab, other: Lab, light_weight: float = 1.0) -> float:
    """CIEDE2000 between two colours; `light_weight` is kL (1, or 2 as textiles sometimes take)."""
    chroma = (math.hypot(one.a, one.b) + math.hypot(other.a, other.b)) / 2
    stretch = 1.5 - 0.5 * math.sqrt(chroma**7 / (chroma**7 + 25**7))
    a1, a2 = one.a * stretch, other.a * stretch
    c1, c2 = math.hypot(a1, one.b), math.hypot(a2, other.b)
    h1, h2 = _hue(a1, one.b), _hue(a2, other.b)
    apart = _turn(h1, h2) if c1 * c2 else 0.0
    hue = _mean_hue(h1, h2) if c1 * c2 else h1 + h2
    light, mean_c = (one.lightness + other.lightness) / 2, (c1 + c2) / 2
    d_light = other.lightness - one.lightness
    d_hue = 2 * math.sqrt(c1 * c2) * math.sin(math.radians(apart / 2))
    s_light = 1 + 0.015 * (light - 50) ** 2 / math.sqrt(20 + (light - 50) ** 2)
    s_chroma = 1 + 0.045 * mean_c
    s_hue = 1 + 0.015 * mean_c * _wave(hue)
    l_part = d_light / (checks.above("weight of lightness", light_weight) * s_light)
    c_part, h_part = (c2 - c1) / s_chroma, d_hue / s_hue
    twist = _twist(hue, mean_c)
    return math.sqrt(l_part**2 + c_part**2 + h_part**2 + twist * c_part * h_part)


def _hue(a: float, b: float) -> float:
    return math.degrees(math.atan2(b, a)) % 360 if a or b else 0.0


def _turn(h1: float, h2: float) -> float:
    """From one hue to the other the shorter way, degrees."""
    turn = h2 - h1
    return turn - 360 if turn > 180 else turn + 360 if turn < -180 else turn


def _mean_hue(h1: float, h2: float) -> float:
    whole = h1 + h2
    if abs(h1 - h2) <= 180:
        return whole / 2
    return (whole + 360) / 2 if whole < 360 else (whole - 360) / 2


def _wave(hue: float) -> float:
    def cos(degrees: float) -> float:
        return math.cos(math.radians(degrees))

    return (
        1
        - 0.17 * cos(hue - 30)
        + 0.24 * cos(2 * hue)
        + 0.32 * cos(3 * hue + 6)
        - 0.20 * cos(4 * hue - 63)
    )


def _twist(hue: float, chroma: float) -> float:
    """The rotation term, which turns the ellipses of blue."""
    around = 30 * math.exp(-(((hue - 275) / 25) ** 2))
    bend = 2 * math.sqrt(chroma**7 / (chroma**7 + 25**7))
    return -math.sin(math.radians(2 * around)) * bend


class Match(Struct, frozen=True):
    """A reel against a cloth: how far apart, and whether the reel is the darker."""

    name: str
    difference: float
    darker: bool

    @property
    def suits(self) -> bool:
        """Whether it is taken: nobody sees it, or it is slightly darker."""
        return self.difference < UNSEEN or (self.darker and self.difference <= DARKER)

    @property
    def seen(self) -> str:
        """What an eye sees of the difference: nothing, little, or plainly."""
        if self.difference < UNSEEN:
            return "nobody sees the difference"
        return "seen on close inspection" if self.difference < SLIGHT else "it is seen"


def match(name: str, reel: Lab, cloth: Lab) -> Match:
    """A reel against a cloth."""
    return Match(name, difference(cloth, reel), reel.lightness < cloth.lightness)


def matches(cloth: Lab, reels: Iterable[tuple[str, Lab]]) -> tuple[Match, ...]:
    """Reels that suit a cloth, the best first: unseen, then slightly darker, then the nearest."""

    def key(found: Match) -> tuple[int, float, str]:
        return (0 if found.suits else 1, found.difference, found.name)

    return tuple(sorted((match(name, lab, cloth) for name, lab in reels), key=key))
