"""What a maker keeps in her own folder beside cloths and rules: the thread on her rack, her prices.

Light values without pydantic, compiled with the rest, so that a warm start reads no YAML. A
colour is a code or measured L*, a*, b* of CIE 15; a word alone can only be matched by eye.
"""

from __future__ import annotations

import re
from typing import Final

from msgspec import Struct, field

from advisor.knowledge.names import plain_name
from advisor.knowledge.pricing import Quoting
from advisor.units import parse

RACK: Final = "threads.yaml"
QUOTE: Final = "quote.yaml"
LIGHTEST, STRONGEST = 100.0, 150.0
"""Bounds of L* and of a* and b*; no dye goes beyond them."""
_NUMBER: Final = r"-?\d+(?:\.\d+)?"
_CODE: Final = re.compile(r"#(?:[0-9a-f]{6}|[0-9a-f]{3})(?![0-9a-z])", re.IGNORECASE)
_LAB: Final = re.compile(rf"(?<!\S)(?:Lab\s+)?({_NUMBER})[,\s]+({_NUMBER})[,\s]+({_NUMBER})(?!\S)")


class Reel(Struct, frozen=True):
    """A reel of thread that she has; `fibre` is "" and `tex` None where she does not say them.

    Its colour is `code` (an sRGB code) or `lab` (measured), or neither where it is only named.
    """

    name: str
    code: str = ""
    lab: tuple[float, float, float] | None = None
    fibre: str = ""
    tex: float | None = None


class Mine(Struct, frozen=True):
    """Her rack, how near a reel has to be to be shared (CIEDE2000), and what she charges by."""

    reels: tuple[Reel, ...] = ()
    near: float | None = None
    quote: Quoting = field(default_factory=Quoting)


def read_colour(text: str) -> tuple[str, tuple[float, float, float] | None]:
    """The code, or the measured figures, that a colour is written as.

    Raises:
        ValueError: it is neither.
    """
    said = " ".join(text.split())
    if _CODE.fullmatch(said):
        return said.casefold(), None
    measured = _LAB.fullmatch(said)
    if measured is None:
        raise ValueError('a code such as "#1b2a4a", or measured L*, a*, b* as in "17.8 3.1 -20.4"')
    return "", _checked(measured)


def _checked(measured: re.Match[str]) -> tuple[float, float, float]:
    light, a, b = (float(measured[i]) for i in (1, 2, 3))
    if not 0 <= light <= LIGHTEST or max(abs(a), abs(b)) > STRONGEST:
        raise ValueError(
            f"L* from 0 to {LIGHTEST:g}, a* and b* from -{STRONGEST:g} to {STRONGEST:g}"
        )
    return light, a, b


def reel_of(text: str, fibres: tuple[str, ...] = ()) -> Reel:
    """A reel as a line of a project says it: name, colour, and perhaps fibre and size behind.

    As in `navy #1b2a4a`, `navy 17.8 3.1 -20.4` or `navy #1b2a4a polyester tex 27`. What cannot be
    read as a colour stays part of its name.
    """
    said = " ".join(text.split())
    found = _CODE.search(said) or _LAB.search(said)
    if found is None:
        return Reel(said)
    try:
        code, lab = read_colour(found[0].removeprefix("Lab "))
    except ValueError:
        return Reel(said)
    name, rest = said[: found.start()].strip(), said[found.end() :].strip()
    words = plain_name(rest)
    fibre = max((f for f in fibres if words.startswith(plain_name(f))), key=len, default="")
    return Reel(name or found[0], code, lab, fibre, _tex(rest[len(fibre) :].strip()))


def _tex(text: str) -> float | None:
    try:
        return parse("tex", text) if text else None
    except ValueError:
        return None
