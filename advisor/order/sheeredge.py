"""To which side allowances are pressed: those of a sheer onto the firm cloth, those of a waist up.

A seam that joins a skirt to a bodice is pressed up into that, or away from what is drawn up or laid
in folds, so that its fullness hangs from the seam and is not flattened (common practice).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.claims.collect import Place
from advisor.construction.panels import sides_of
from advisor.knowledge import nouns
from advisor.order.namewords import OPEN_SEAMS, SHEER, UPPER_ROLES
from advisor.project.headwords import speaks_of

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

LAID: Final = "lay-on"
SEAMED: Final = frozenset({"seam", "yoke", "gathered-edge"})

WAIST: Final = "waist"
UP: Final = ", both allowances up into the bodice"
AWAY: Final = ", both allowances away from the {folds}, the iron on them alone"


def laid_to_a_side(place: SeamPlace, facts: Facts) -> str:
    """How the press of a seam ends whose allowances are laid to one side; "" of every other."""
    return laid_onto_the_firm(place, facts) or _up_at_a_waist(place, facts)


def _up_at_a_waist(place: SeamPlace, facts: Facts) -> str:
    plain = facts.setups.word(Place("seam", place.name), "seam.kind", "plain") in OPEN_SEAMS
    if place.role.id != WAIST or place.kind.id not in SEAMED or not plain:
        return ""
    if facts.open_seam(place) or place.notions:
        return ""
    above = (p for p in facts.places if p.alone == place.alone)
    if not any(p.role.id in UPPER_ROLES or speaks_of(p.name, nouns.ABOVE) for p in above):
        return ""
    folds = "pleats" if place.seam.making.pleats else "gathers" if place.full else ""
    whole = any(use.fullness <= 1 for use in place.seam.uses)
    return AWAY.format(folds=folds) * whole if folds else UP


def laid_onto_the_firm(place: SeamPlace, facts: Facts) -> str:
    """How the press of such a seam ends; "" where both edges are seen, or neither, or lie open.

    Nor has one such allowances of which both pieces are of the same layers, or what is laid on.
    """
    if any(stage.work == LAID for stage in place.method.stages) or _alike(place):
        return ""
    sheer = {name for name in place.cloths if facts.least(name, "sheer") >= SHEER}
    firm = [name for name in dict.fromkeys(place.cloths) if name not in sheer]
    joins = place.kind.id in SEAMED and place.unit == "shell" and not facts.open_seam(place)
    return f", both allowances laid onto {firm[0]}" if joins and sheer and len(firm) == 1 else ""


def _alike(place: SeamPlace) -> bool:
    one, other = ({use.cloth for use in side} for side in sides_of(place.seam))
    return one == other
