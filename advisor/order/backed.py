"""What is told of a cloth that is backed: both are worked as one, and bones lie in the backing."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from advisor.knowledge.ordering import Operation
from advisor.order.kinds import SeamPlace, crosses, crosses_by_custom, related
from advisor.project.attached import SLID_IN
from advisor.project.placing import BONES

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.fitting import Fitting

UNDERLINING = "underlining"
BEHIND = ", on the backing and the open allowances alone, the shell held clear of every row"
OFF_THE_SEAMS = "; a channel for bones that lies on no seam is sewn to the backing before"
"""No machine comes between shell and backing once both are basted all round."""
SPIRAL = "spiral-boning"
NIPPED = ", nipped off coil by coil with side cutters, goggles on, a tip pressed on both ends"
ROUNDED, STEEL, GOGGLES = ", their ends rounded or capped", "flat-steel-boning", ", goggles on"
BOTH = (
    ": spirals nipped off coil by coil with side cutters, flat steel cut across and its corners "
    "rounded, goggles on, a tip on every end"
)
HOOP = "slide the steel into"
"""How a hoop goes into its channel: no fitting has seen that."""
SLID = (
    "Slide the bones into {channels}, each shortened first where the fitting asks for it, its end "
    "capped anew, {how} or more short of every seam."
)
"""What is told of bones that the fitting has seen."""
OVER_BONES = frozenset({"join", "row", "neaten-after"})
TWICE = "stitch again"
OUT = ", any bone beside it drawn out first or, in a shut channel, kept clear of the foot"
CLEAR = ", any bone that is in by then drawn back clear of needle and knife"
"""What is told of a row that runs over the end of a channel."""


def backed_with(place: SeamPlace, places: Sequence[SeamPlace]) -> frozenset[str]:
    """The shells that the cloths of a place are mounted on, where it holds none of them itself."""
    mounts = [p for p in places if p.kind.id == UNDERLINING and set(p.cloths) & set(place.cloths)]
    shells = {cloth for p in mounts for cloth in p.cloths} - set(place.cloths)
    return frozenset(shells if place.kind.id in BONES else ())


def beside_bones(place: SeamPlace, facts: Facts) -> bool:
    """Whether bones come in on the pieces of a seam, so that no knife comes there later."""
    return any(facts.setups.bones(p) and related(place, p) for p in facts.places)


def clear_of_bones(op: Operation, place: SeamPlace, facts: Facts) -> str:
    """What is told of a row over the end of a channel, whose bones are in for the fitting."""
    seam = op.id in OVER_BONES and place.kind.family in ("seam", "gathers")
    boned = [p for p in facts.places if facts.setups.bones(p)]
    if op.verb == TWICE:
        return OUT if boned else ""
    boned = [p for p in boned if p is not place]
    over = (crosses(place, p) or crosses_by_custom(place, p) for p in boned)
    return CLEAR if seam and any(over) else ""


def backings(place: SeamPlace, places: Sequence[SeamPlace]) -> frozenset[str]:
    """The cloths of a place that lie behind another of it: a mount of organza shows no edges."""
    mounts = (p.cloths for p in places if p.kind.id == UNDERLINING)
    both = (m for m in mounts if m and m[0] in place.cloths)
    return frozenset(cloth for m in both for cloth in m[1:] if cloth in place.cloths)


def boned_backing(op: Operation, place: SeamPlace, places: Sequence[SeamPlace]) -> str:
    """What is told before a backing is basted that bones lie on; "" where none do."""
    if op.id != "baste-backing" or place.kind.id != UNDERLINING:
        return ""
    boned = any(backed_with(p, places) & set(place.cloths) for p in places)
    return OFF_THE_SEAMS if boned else ""


def boned_after(places: Sequence[SeamPlace], fitting: Fitting) -> str:
    """What a fitting leaves for another one, where channels wait until their seams are sure."""
    boned = any(p.kind.id in BONES for p in places)
    if not boned or not any(fitting.basted(p) and fitting.shapes(p) for p in places):
        return ""
    return "; try it on once more when the bones are in, before their channels are closed"


def bones_cut(facts: Facts) -> str:
    """How the bones of a garment are cut for the fitting: spirals are nipped off and tipped."""
    spiral = any(facts.entry(n).id == SPIRAL for p in facts.places for n in p.notions)
    steel = any(facts.entry(n).id == STEEL for p in facts.places for n in p.notions)
    if spiral and steel:
        return BOTH
    return NIPPED if spiral else ROUNDED + GOGGLES * steel


def slid_in(op: Operation, place: SeamPlace, facts: Facts) -> str:
    """The sentence of a bone that was tried on already; "" for one that was not."""
    tried = op.id == "bone" and op.verb != HOOP and boned_after(facts.places, facts.fitting)
    told = SLID if tried else op.does
    if op.id not in ("bone", "close-bones") or not _with_others(place, facts.places):
        return told if tried else ""
    return told.replace("the bones", "{name}", 1)


def _with_others(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether other bones as well are slid into the channels that these are."""
    hosts = place.seam.companion.hosts if place.seam.companion else ()
    alike = (p for p in places if p.kind.id == place.kind.id == SLID_IN and p is not place)
    return any(p.seam.companion and set(p.seam.companion.hosts) & set(hosts) for p in alike)


def as_worked(names: Sequence[str], facts: Facts) -> str:
    """The cloths of a list, those that are mounted as one: `satin with mount, and lining`."""
    left, told = list(names), []
    mounts = [p.cloths for p in facts.places if p.kind.id == UNDERLINING]
    while left:
        first = left.pop(0)
        pair = next((m for m in mounts if first in m), ())
        held = [n for n in left if n in pair]
        left = [n for n in left if n not in held]
        told.append(" with ".join([first, *held]))
    return " and ".join([", ".join(told[:-1]), told[-1]] if told[1:] else told)
