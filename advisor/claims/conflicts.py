"""Finds where musts leave nothing, and names the smallest set of them that already clashes.

For a range or a scale that is always two: the highest floor and the lowest ceiling. For options
it is the smallest set with an empty meet, found by trying pairs, then triples, and so on.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, full_set, meet, set_of
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Choice
from advisor.knowledge.model import Aspect

WORST_FIRST = ("injury", "damage", "result")
NO_METHOD = "care.method"


@dataclass(frozen=True, slots=True)
class Conflict:
    """A clash of musts in one place on one aspect."""

    aspect: str
    place: Place
    clash: tuple[Said, ...]
    severity: str

    @property
    def key(self) -> tuple[str, str]:
        """What makes two conflicts the same: the place and the aspect."""
        return (self.place.name, self.aspect)

    @property
    def id(self) -> str:
        """A name for it, made of its content."""
        return f"{self.aspect} at {self.place.name}".replace(" ", "-").replace(".", "-")

    @property
    def between(self) -> tuple[str, ...]:
        """Who clashes."""
        return tuple(dict.fromkeys(said.who for said in self.clash))


def find_conflicts(verdicts: dict[Place, dict[str, Verdict]]) -> list[Conflict]:
    """Every conflict, place by place."""
    found = []
    for place, by_aspect in verdicts.items():
        for name, verdict in by_aspect.items():
            if verdict.clash:
                clash = smallest_clash(verdict.aspect, verdict.clash)
                found.append(Conflict(name, place, clash, _severity(clash)))
        if place.scope == "garment":
            found += _no_method(place, by_aspect)
    return found


def smallest_clash(aspect: Aspect, musts: tuple[Said, ...]) -> tuple[Said, ...]:
    """The smallest set of claims that leaves nothing; on a tie the best founded, then by name."""
    if aspect.kind != "options":
        spans = [(said, said.claim.span or (aspect.low, aspect.high)) for said in musts]
        floor = min(spans, key=lambda p: (-p[1][0], p[0].claim.rank, p[0].key))
        ceiling = min(spans, key=lambda p: (p[1][1], p[0].claim.rank, p[0].key))
        return (floor[0], ceiling[0])
    ordered = sorted(musts, key=lambda s: (s.claim.rank, s.key))
    for size in range(1, len(ordered) + 1):
        for group in combinations(ordered, size):
            left = full_set(aspect)
            for said in group:
                left = meet(left, set_of(said.claim))
            if left.is_empty:
                return group
    return tuple(ordered)


def _severity(clash: tuple[Said, ...]) -> str:
    risks = {said.claim.risk for said in clash}
    return next((risk for risk in WORST_FIRST if risk in risks), "result")


def _no_method(place: Place, by_aspect: dict[str, Verdict]) -> list[Conflict]:
    """A garment that is to be neither washed nor dry cleaned has no way to be cleaned at all.

    Also where only wishes say so, if one cloth speaks against the one and another against the
    other: a cloth that wants neither, such as leather, knows its own way and is no clash.
    """
    wash, clean = by_aspect.get("care.wash"), by_aspect.get("care.professional")
    if wash is None or clean is None or wash.clash or clean.clash:
        return []
    last = [Choice(1 << len(v.aspect.words) - 1) for v in (wash, clean)]
    against = [
        [s for s in verdict.because if (set_of(s.claim) == none)]
        for verdict, none in zip((wash, clean), last, strict=True)
    ]
    sure = [wash.allowed, clean.allowed] == last
    one = {c for s in against[0] for c in s.cloths} & {c for s in against[1] for c in s.cloths}
    if not sure and (one or [wash.advised, clean.advised] != last):
        return []
    return [Conflict(NO_METHOD, place, (_strictest(wash, sure), _strictest(clean, sure)), "damage")]


def _strictest(verdict: Verdict, sure: bool) -> Said:
    said = [s for s in verdict.because if s.claim.strength == "must" or not sure]
    return min(said, key=lambda s: (bin(s.claim.mask).count("1"), s.claim.rank, s.key))
