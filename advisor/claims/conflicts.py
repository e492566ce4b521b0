"""Finds where musts leave nothing, and names the smallest set of them that already clashes.

For a range or a scale that is always two: the highest floor and the lowest ceiling. For options
it is the smallest set with an empty meet, found by trying pairs, then triples, and so on.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import combinations

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.claimsets import full_set, meet, set_of
from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Choice
from advisor.knowledge.model import LIMIT_ASPECT, Aspect, Claim

WORST_FIRST = ("injury", "damage", "result")
"""The three degrees: it hurts you, it ruins cloth, it shows."""
NO_METHOD = "care.method"
OF_A_GLUE = ("press.temperature", "press.moisture", "press.motion", "interfacing.kind")
"""Aspects of which every clash of a glue has one cause: it does not go on that cloth."""
BY_PLACE = ("seam.bulk",)
"""Aspects whose clash is of its place alone, however like another it sounds."""

Spot = tuple[str, str]
"""The name of a place and an aspect."""


class Conflict(Struct, frozen=True):
    """A clash of musts: where it is worst, and in `also` where else the same cause shows.

    Attributes:
        cause: who wants what from whom; the same wherever it shows.
        behind: the other causes that clash in the same place on the same aspect, less badly.
    """

    aspect: str
    place: Place
    clash: tuple[Said, ...]
    severity: str
    also: tuple[Conflict, ...] = ()
    cause: object = None
    behind: frozenset[object] = frozenset()

    @property
    def key(self) -> Spot:
        """What makes two conflicts the same: the place and the aspect."""
        return (self.place.name, self.aspect)

    @property
    def spots(self) -> tuple[Spot, ...]:
        """Every place and aspect that clashes for this one cause, the worst first."""
        return (self.key, *(other.key for other in self.also))

    @property
    def places(self) -> tuple[str, ...]:
        """The names of all its places."""
        return tuple(dict.fromkeys(name for name, _ in self.spots))

    @property
    def aspects(self) -> tuple[str, ...]:
        """All its aspects."""
        return tuple(dict.fromkeys(aspect for _, aspect in self.spots))

    @property
    def id(self) -> str:
        """A name for it, made of its content."""
        return f"{self.aspect} at {self.place.name}".replace(" ", "-").replace(".", "-")

    @property
    def between(self) -> tuple[str, ...]:
        """Who clashes."""
        return tuple(dict.fromkeys(said.who for said in self.clash))


def find_conflicts(
    verdicts: dict[Place, dict[str, Verdict]], skins: frozenset[str] = frozenset()
) -> list[Conflict]:
    """Every conflict, place by place; skins are wiped where the rest is only sponged."""
    found = []
    for place, by_aspect in verdicts.items():
        for name, verdict in by_aspect.items():
            if verdict.clash:
                clash = smallest_clash(verdict.aspect, verdict.clash)
                found.append(Conflict(name, place, clash, severity_of(clash)))
        if place.scope == "garment":
            found += _no_method(place, by_aspect, skins)
    return found


def in_order(conflicts: Iterable[Conflict], places: Sequence[Place]) -> tuple[Conflict, ...]:
    """The conflicts as they are numbered wherever they are printed: the worst first, then by place.

    Args:
        conflicts: of one garment, in any order.
        places: the places of the garment in its own order.
    """
    at = {place: i for i, place in enumerate(places)}
    return tuple(
        sorted(
            conflicts,
            key=lambda c: (
                WORST_FIRST.index(c.severity),
                at[c.place],
                c.aspect != LIMIT_ASPECT,
                c.aspect,
            ),
        )
    )


def one_per_cause(conflicts: Sequence[Conflict]) -> tuple[Conflict, ...]:
    """The conflicts with those of one cause as one, which stands where the first of them stood.

    Args:
        conflicts: of one garment, in their order, each with its cause.
    """
    causes: dict[object, list[Conflict]] = {}
    for conflict in conflicts:
        causes.setdefault(conflict.cause, []).append(conflict)
    return tuple(replace(first, also=tuple(rest)) for first, *rest in causes.values())


def cause_of(place: Place, aspect: str, clash: Sequence[Said], glues: frozenset[str]) -> object:
    """Who wants what from whom: two layers under one iron, a glue on a cloth, or the claims.

    Args:
        place: where it clashes.
        aspect: on what.
        clash: the claims that leave nothing.
        glues: the cloths of the garment that are glued on by heat.
    """
    if aspect in BY_PLACE:
        return (place, aspect)
    about = frozenset(name for s in clash for name in s.cloths)
    glue = glues & (about | frozenset(s.who for s in clash))
    if glue and aspect in OF_A_GLUE:
        return ("glue", glue, about - glue)
    if aspect in ("press.temperature", "press.moisture") and len(clash) == 2:
        return ("iron", clash[0].cloths, clash[1].cloths - clash[0].cloths)
    return (aspect, tuple((s.who, s.claim) for s in clash))


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


def severity_of(clash: Sequence[Said]) -> str:
    """How bad it is: what is lost when the graver guard is kept, as the sheet keeps it.

    A need that gives way to a guard costs the result and no cloth. What the maker has fixed
    herself she will do, and then the worst of it happens.
    """
    risks = sorted((_risk(said.claim) for said in clash), key=WORST_FIRST.index)
    hers = any(said.claim.origin == "maker" for said in clash)
    return risks[0] if hers else risks[-1]


def _risk(claim: Claim) -> str:
    """What comes to harm where a claim is not kept; a wish that guards has no risk of its own."""
    if claim.strength == "must":
        return claim.risk
    if "hands" in claim.purposes:
        return "injury"
    return "damage" if claim.guards else "result"


def _no_method(
    place: Place, by_aspect: dict[str, Verdict], skins: frozenset[str]
) -> list[Conflict]:
    """A garment that is to be neither washed nor dry cleaned has no way to be cleaned at all.

    Also where only wishes say so. A cloth that wants neither knows a way of its own: what it
    only wishes away its own cleaner may do, as to leather, or she with a sponge, as to waxed
    cotton. That is no clash, as long as nobody else speaks against that way.
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
    own = any(all(s.claim.strength != "must" and s.cloths <= one for s in way) for way in against)
    if _is_sponged([s for s in against[0] if not s.cloths or not s.cloths <= skins], one):
        return []
    if not sure and ((one and own) or [wash.advised, clean.advised] != last):
        return []
    clash = (_strictest(wash, one, sure), _strictest(clean, one, sure))
    return [Conflict(NO_METHOD, place, clash, "damage")]


def _is_sponged(unwashed: list[Said], one: set[str]) -> bool:
    """Whether a cloth that bears neither way only wishes not to be washed, and no other forbids it.

    Two that part in the wash are never soaked where the face is sponged; a cloth that by itself
    may not get wet has to be cleaned in another way, and is not silenced by this.
    """
    alone = [s for s in unwashed if len(s.cloths) == 1]
    wishes = (s.cloths <= one and s.claim.strength != "must" for s in alone)
    return bool(alone) and all(wishes)


def _strictest(verdict: Verdict, one: set[str], sure: bool) -> Said:
    """Who rules a way out: a must, or somebody who does not rule out both, before a wish."""
    said = [s for s in verdict.because if s.claim.strength == "must" or not sure]

    def key(s: Said) -> tuple[object, ...]:
        soft = s.claim.strength != "must" and s.cloths <= one
        return (bin(s.claim.mask).count("1"), soft, s.claim.rank, s.key)

    return min(said, key=key)
