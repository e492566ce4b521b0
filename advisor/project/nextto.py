"""A place as it is asked about beside all others, and what it is to those that it belongs to."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.knowledge.model import Entry
from advisor.project.garment import Companion, Seam
from advisor.project.headwords import the_words

EDGE: Final = ("edge",)
OF_A_BAND: Final = frozenset({"outer edge", "ends", "inner edge"})
"""What is told of the band alone, though it stands upon its other edges as well."""

OWN_BAND: Final = frozenset({("band",), ("waistband",)})
"""How the band is called that a place sets: `waistband to skirt`, of which the edge is told."""


class Beside(Struct, frozen=True):
    """A place as it is asked about: its words, its layers, and all the others."""

    seam: Seam
    words: tuple[str, ...]
    cloths: tuple[str, ...]
    entries: Mapping[str, Entry]
    others: tuple[Seam, ...]

    def called(self, stem: tuple[str, ...]) -> list[Seam]:
        """The other places that a stem is the name of, or the head; the nearest name first."""
        ends: tuple[Callable[[tuple[str, ...]], bool], ...] = (
            lambda words: words == stem,
            lambda words: words == stem + EDGE,
            lambda words: words[-len(stem) :] == stem,
            lambda words: stem in OWN_BAND and words[:1] in OWN_BAND and words[1:2] == ("to",),
        )
        found = (
            other for fits in ends for other in self.others if stem and fits(the_words(other.name))
        )
        shared = [other for other in found if set(other.cloths()) & set(self.cloths)]
        return list({other.name: other for other in shared}.values())

    def holds(self, what: str) -> bool:
        """Whether a notion lies there, by its id or its kind."""
        found = (self.entries[n] for n in self.seam.cloths() if n in self.entries)
        return any(what in (entry.id, entry.kind) for entry in found)


def belongs_as(place: Beside, kind: str, what: str, hosts: Sequence[Seam], *, first: bool) -> Seam:
    """The place as one that belongs to others: what it is to them, and what is made there."""
    names = tuple(host.name for host in hosts)
    assumed = tuple(dict.fromkeys((*place.seam.assumed, "kind")))
    told = names[:1] if what in OF_A_BAND else names
    why = f"its name, as the {what} of {' and '.join(told)}"
    belongs = Companion(names, what, first=first)
    return replace(place.seam, place=kind, placed_by=why, companion=belongs, assumed=assumed)
