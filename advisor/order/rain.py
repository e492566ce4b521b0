"""Which cloths keep rain out, and whether tape or sealant makes their seams tight."""

from __future__ import annotations

from typing import TYPE_CHECKING

from advisor.order.kinds import SeamPlace

if TYPE_CHECKING:
    from advisor.order.facts import Facts

RAINWEAR = frozenset({"laminated-cotton", "softshell"})
"""Cloths against the rain that are no plain weave: each hole leaks; no imitation of leather."""
UNTAPED = frozenset({"softshell", "waxed-cotton"})
"""Those of them on whose inside no sealing tape holds: a fleece, and wax on either side."""
SEALING_TAPE = "sealing-tape"


def proofed(cloth: str, facts: Facts) -> bool:
    """Whether it is a coated cloth that keeps rain out, so that every hole in it leaks."""
    entry = facts.entry(cloth)
    rain = entry.structure == "woven" or entry.id in RAINWEAR
    return rain and facts.least(cloth, "coated") > 0


def coated(place: SeamPlace, facts: Facts) -> bool:
    """Whether it is sealed from behind: all of it is coated, or part of it and the garment is.

    A coated pocket on a cloth that lets the rain through has nothing to keep out.
    """
    tight = [_sealable(cloth, facts) for cloth in place.cloths]
    rain = any(tight) and (all(tight) or any(coated_throughout(p, facts) for p in facts.places))
    return rain or _taped(place, facts)


def coated_throughout(place: SeamPlace, facts: Facts) -> bool:
    """Whether both sides of a seam keep rain out; one that lets it through needs no tape."""
    uses = [use.cloth for use in place.seam.uses if use.cloth in place.cloths]
    tight = sum(_sealable(cloth, facts) for cloth in uses)
    return tight > 1 or (tight > 0 and tight == len(uses)) or _taped(place, facts)


def _sealable(cloth: str, facts: Facts) -> bool:
    """Whether a tape or a sealant holds on its inside, as on film, not on fleece or wax."""
    return proofed(cloth, facts) and facts.entry(cloth).id not in UNTAPED


def _taped(place: SeamPlace, facts: Facts) -> bool:
    """Whether the project lays sealing tape on the seam, whatever is known of its cloth."""
    return any(facts.entry(name).id == SEALING_TAPE for name in place.notions)
