"""Which cloths lengthen while they hang: knits, the bias, and soft weaves whose grain gives.

A coating in an open weave, as mohair, drops by its own weight and hangs a day before its hem
(common practice). A felted knit has been shrunk until its loops hold, so it drops no more
(`common-practice`). A soft weave of filament or viscose lets down on the straight grain too, which
is why its own file asks for a day on the hanger before the hem (`clothing-text-1916`, `memory`);
but straight widths that are gathered or pleated above hang from every thread alike, and are
levelled at once, unless it is of viscose and the like, heavy and soft (common practice).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.claims.collect import Place
from advisor.knowledge.model import Entry
from advisor.order.hanging import cut_in_a_circle
from advisor.order.kinds import SeamPlace

if TYPE_CHECKING:
    from advisor.order.facts import Facts

FELTED: Final = "felted"
SOFT: Final = frozenset({"silks", "satins", "sheers"})
"""Families of cloths with little in them that holds the straight grain."""
REGENERATED: Final = "regenerated cellulose"
HEAVY: Final = 300.0
"""From this weight on an open weave pulls its own threads straight, g/m2: estimate."""
CREPE, BIAS = "crepe", "bias"


def lets_down(entry: Entry, grain: str) -> bool:
    """Whether a cloth that is cut so lengthens when it hangs for a day."""
    if grain == BIAS:
        return True
    if entry.structure == "knit":
        return entry.weave != FELTED
    gives = entry.traits.get("grain holds", (0, 0))[1] > 0
    soft = gives and (entry.family in SOFT or entry.weave == CREPE)
    return entry.structure == "woven" and (soft or _pulls_itself_long(entry))


def _pulls_itself_long(entry: Entry) -> bool:
    """Whether a weave is so open and so heavy that it drops on the straight grain too."""
    loose = entry.traits.get("loose", (0, 0))[0] > 0
    return loose and entry.weight is not None and entry.weight[0] >= HEAVY


def drops(facts: Facts, *, hemmed: bool) -> bool:
    """Whether the lower edge of a garment is of a cloth that lengthens when it hangs.

    Args:
        facts: of the garment.
        hemmed: whether its lower edge is finished in some place.
    """
    lowest = [p for p in facts.places if p.role.last]
    if not lowest and hemmed:
        return False
    cloths = {c for p in lowest for c in _falling(p)} or set(_main(facts.places))
    circle = any(cut_in_a_circle(p, facts.places, facts.garment.name) for p in lowest)
    bias = any(p.said("bias") == "yes" for p in (lowest or facts.places))
    straight = _drawn_up(facts) if all(p.said("shape") != "curved" for p in lowest) else set()
    return circle or bias or any(_gives(cloth, facts, cloth in straight) for cloth in cloths)


def _falling(place: SeamPlace) -> tuple[str, ...]:
    """The cloths whose fall sets the line of an edge: a lining that is felled to it follows."""
    return place.cloths[:1] if place.unit == "both" else place.cloths


def _drawn_up(facts: Facts) -> set[str]:
    """The woven cloths that are gathered or pleated, and so are cut in straight widths."""
    full = {cloth for place in facts.places for cloth in place.full}
    return {c for c in full if facts.entry(c).structure == "woven" and not _heavy(c, facts)}


def _heavy(cloth: str, facts: Facts) -> bool:
    """Whether it is of a fibre that draws its own length out, and of nothing else."""
    groups = {
        facts.knowledge.fibres[f].group for m in facts.garment.cloths[cloth].mixes for f, _ in m
    }
    return groups == {REGENERATED}


def _main(places: tuple[SeamPlace, ...]) -> tuple[str, ...]:
    """The cloth that most seams hold."""
    counts: dict[str, int] = {}
    for place in places:
        for cloth in place.cloths if place.unit != "lining" else ():
            counts[cloth] = counts.get(cloth, 0) + 1
    return tuple(sorted(counts, key=lambda c: (-counts[c], c))[:1])


def _gives(cloth: str, facts: Facts, straight: bool) -> bool:
    grain = facts.setups.word(Place("fabric", cloth), "cut.grain")
    if straight and grain != BIAS:
        return False
    held = facts.least(cloth, "springy") and facts.least(cloth, "stretch") > 1 and facts.close()
    return not held and lets_down(facts.entry(cloth), grain)
