"""Quantities of building and cutting, with the bounds that only keep slips of the keyboard out.

The bounds are estimates. `Asker` reads the keys of one group of a project file and notes what is
wrong with each at its place.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import partial
from typing import TYPE_CHECKING, Any

from msgspec import Struct

from advisor.project.facts import MEASURES, Measure, read_measure, read_word
from advisor.project.findings import Findings
from advisor.project.names import MOST_TIERS
from advisor.units import show_size

if TYPE_CHECKING:
    from advisor.textio.yamlfile import Steps

_IN_MM = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?) mm\b")
_LONG = "from 1 mm to 50 m"
_LENGTH = Measure("length", 1.0, 50_000.0, _LONG, "cm or in")
_SHORT = Measure("length", 0.0, 2_000.0, "from 0 to 2 m", "cm or in")
_COUNT = Measure("count", 1.0, 400.0, "a whole number from 1 to 400")
MANY = "many"
"""What is counted one by one, as stones, is counted by the gross."""
_MANY = Measure("count", 1.0, 20_000.0, "a whole number from 1 to 20000")

BUILDING: Mapping[str, Measure] = {
    "to": _LENGTH,
    "flat": _LENGTH,
    "gathered": _LENGTH,
    "hip": _LENGTH,
    "waist": _LENGTH,
    "stitched down": _SHORT,
    "spacing": _SHORT,
    "hem": _SHORT,
    "ease": Measure("length", 1.0, 500.0, "an ease from 1 mm to 50 cm", "mm or in"),
    "left open": Measure("length", 20.0, 1_000.0, "an opening from 2 cm to 1 m", "cm or in"),
    "repeat": _SHORT,
    "depth": Measure("length", 1.0, 1_000.0, "from 1 mm to 1 m", "cm or in"),
    "face": Measure("length", 1.0, 1_000.0, "from 1 mm to 1 m", "cm or in"),
    "overhang": Measure("length", 5.0, 600.0, "a reach from 5 mm to 60 cm", "cm or in"),
    "sinks": Measure("length", 1.0, 600.0, "a sinking from 1 mm to 60 cm", "cm or in"),
    "selvage": Measure("length", 0.0, 100.0, "from 0 to 10 cm", "cm or in"),
    "bolt": Measure("length", 20.0, 4_000.0, "a cloth from 2 cm to 4 m wide", "cm or in"),
    "notion": Measure("length", 1.0, 4_000.0, "a notion from 1 mm to 4 m wide", "mm or in"),
    "width": _LENGTH,
    "height": _LENGTH,
    "finished width": _LENGTH,
    "finished height": _LENGTH,
    "narrow end": Measure("length", 0.0, 50_000.0, "from 0 to 50 m", "cm or in"),
    "allowance": Measure("length", 0.0, 50.0, "from 0 to 50 mm", "mm or in"),
    "shrinks": Measure("percent", 0.0, 30.0, "from 0 to 30 %"),
    "shrinks across": Measure("percent", 0.0, 30.0, "from 0 to 30 %"),
    "fullness": MEASURES["fullness"],
    "seam": _LENGTH,
    "number": _COUNT,
    "times": _COUNT,
    MANY: _MANY,
    "thread near": Measure("count", 0.0, 10.0, "a difference of colour from 0 to 10"),
    "topstitch": Measure("count", 1.0, 4.0, "how many rows, from 1 to 4"),
    "pieces": _COUNT,
    "turn": Measure("count", 0.05, 1.0, "a share of a circle, from 0.05 to 1 (a full circle)"),
    "tiers": Measure("count", 2.0, float(MOST_TIERS), f"a whole number from 2 to {MOST_TIERS}"),
}


class Asker(Struct, frozen=True):
    """Reads one group of keys; what is missing or wrong comes back as None."""

    about: Mapping[str, Any]
    steps: Steps
    findings: Findings
    bare: bool = True

    def said(self, key: str) -> bool:
        """Whether the key has a word or a number."""
        return isinstance(self.about.get(key), str | int | float)

    def measure(self, key: str, of: str = "") -> float | None:
        """A quantity in mm, or a plain number."""
        if not self.said(key):
            return None
        read = partial(
            read_measure, key, self.about[key], bare=self.bare, about=BUILDING[of or key]
        )
        return self.findings.attempt((*self.steps, key), read)

    def below(self, key: str) -> Asker | None:
        """The same for a group under a key; None where there is no such group."""
        about = self.about.get(key)
        if not isinstance(about, dict):
            return None
        return Asker(about, (*self.steps, key), self.findings, self.bare)

    def measures(self, key: str, of: str) -> tuple[float, ...] | None:
        """A list of quantities; None where there is none, or one of them is wrong."""
        listed = self.about.get(key)
        if not isinstance(listed, list):
            return None
        found = []
        for i, value in enumerate(listed):
            read = partial(read_measure, key, value, bare=self.bare, about=BUILDING[of])
            found.append(self.findings.attempt((*self.steps, key, i), read))
        known = tuple(value for value in found if value is not None)
        return known if len(known) == len(listed) else None

    def count(self, key: str, of: str = "") -> int | None:
        """A whole number."""
        number = self.measure(key, of)
        if number is not None and number != int(number):
            self.findings.say((*self.steps, key), f"'{key}': {number:g} is no whole number")
            return None
        return None if number is None else int(number)

    def word(self, key: str, known: Iterable[str]) -> str:
        """One of a few words, or nothing."""
        if not self.said(key):
            return ""
        read = partial(read_word, key, self.about[key], known)
        return self.findings.attempt((*self.steps, key), read) or ""

    def yes(self, key: str) -> bool:
        """Whether the key says yes."""
        return self.word(key, ("yes", "no")) == "yes"

    def deny(self, key: str, message: str, expected: str = "") -> None:
        """Note that a value cannot be; sizes in it are mm, and are told in the maker's units."""
        said, fits = (
            text if self.bare else _IN_MM.sub(_in_inches, text) for text in (message, expected)
        )
        self.findings.say((*self.steps, key), said, fits or None)


def _in_inches(found: re.Match[str]) -> str:
    return show_size(float(found[1]), "us")
