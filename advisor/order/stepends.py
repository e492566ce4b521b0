"""How the sentence of a step ends: what is left open, what waits, what is kept clear of."""

from __future__ import annotations

from advisor.claims.collect import Place
from advisor.knowledge.ordering import Operation
from advisor.order.backed import boned_backing, clear_of_bones
from advisor.order.drawnup import listed
from advisor.order.easing import with_a_steamer
from advisor.order.facedrun import ON_INTO, runs_on_from
from advisor.order.facts import Facts
from advisor.order.flatsleeve import run_on_from
from advisor.order.frillstrips import DRAWN, made_before
from advisor.order.hemsmeet import HEM, beside_raw, turned_hem, under_a_hem
from advisor.order.holdwords import between_the_rows, clear_of_skins
from advisor.order.kinds import SeamPlace
from advisor.order.lapels import canvas_of_a_front
from advisor.order.openings import left_open, waits, zip_gap
from advisor.order.roles import PLEATED_HEM
from advisor.order.runsdown import closed_over_its_end
from advisor.order.slits import seam_instead, short_of_its_opening
from advisor.order.twopiece import ROUND_A_ROLL, closes_the_sleeve

JOINS = ("join", "set-lining")
"""The work by which a seam is closed but for the gap that is left in it."""
ROLL, SURFACE = "roll", "press.surface"
WIDTHS_FLAT = ", while the widths lie flat, all but a hand's breadth beside each seam still open"

TO_THE_FRONT = ", which is the front itself: the facing takes none"
OVER_THE_CANVAS = ", over the trimmed edge of the canvas"
ARMHOLE, PAD = "armhole", "pad"
SLASH = "slash"
LEFT_OPEN = (
    "; or cut nothing and leave the upper end of {seam} open for it (method: opening at the end of "
    "a seam)"
)


def end_of(op: Operation, place: SeamPlace, facts: Facts, *, alone: bool) -> str:
    """What follows the sentence of a stage; "" where nothing does.

    Args:
        op: the work.
        place: where.
        facts: about the garment.
        alone: what stiffens has no cloth beside it that it could be basted to.
    """
    units, places = facts.garment.units, facts.places
    said = left_open(place, places, units) if op.id in JOINS and "{leave}" not in op.does else ""
    if op.id == "join":
        side = run_on_from(place, places)
        said += f", the row of {side} run on into the sleeve" if side else ""
        front = runs_on_from(place, places)
        said += ON_INTO.format(front=front) if front else ""
        said += short_of_its_opening(place, places)
        said += waits(place, places) + zip_gap(place, places, units)
    if op.id == "press" and ROLL not in facts.setups.word(Place("seam", place.name), SURFACE):
        said += ROUND_A_ROLL if closes_the_sleeve(place, places) else ""
    if op.id == HEM:
        said += WIDTHS_FLAT if place.role.id == PLEATED_HEM else ""
        said += beside_raw(place, places) if turned_hem(place) else ""
        said += closed_over_its_end(place, places)
    if op.id in (HEM, "trim"):
        said += under_a_hem(place, places)
    if op.act == SLASH and (seam := seam_instead(place, places)):
        said += LEFT_OPEN.format(seam=seam)
    if op.id in DRAWN:
        said += made_before(place, places, facts.garment)
    if op.id == "tape" and canvas_of_a_front(place, facts):
        said += OVER_THE_CANVAS
    if op.id == op.verb == "baste" and place.role.id == ARMHOLE and place.unit != "lining":
        pads = [p.name for p in places if p.role.id == PAD and p.unit != "lining"]
        said += f", {listed(pads)} pinned in" if pads else ""
    if op.id == "interface" and canvas_of_a_front(place, facts):
        said += TO_THE_FRONT
    said += with_a_steamer(op.verb, place, facts.setups)
    said += between_the_rows(op, place, facts)
    said += boned_backing(op, place, places) + clear_of_bones(op, place, facts)
    return said + (clear_of_skins(place, facts) if op.id == "interface" and not alone else "")
