"""What a maker finds out before she cuts, and tries on before anything is past recall."""

from __future__ import annotations

from collections.abc import Sequence

from advisor.knowledge import nouns
from advisor.order.ascut import holed_for_good
from advisor.order.backed import boned_after
from advisor.order.beside import CANVAS, OF_A_COLLAR, ends_of
from advisor.order.channels import levels_to_mark
from advisor.order.drawnup import listed
from advisor.order.easing import eased_pile
from advisor.order.facts import Facts
from advisor.order.fitting import FRONT_ZIP, RAGLAN, TO_BODY, Fitting
from advisor.order.frontgathers import TO_WAIST, WRAP
from advisor.order.holdwords import is_clipped, taken_off
from advisor.order.kinds import SeamPlace, related
from advisor.order.laidlate import laid_on_what_drops, placed_on_the_body
from advisor.order.layering import waist_edge
from advisor.order.letout import SLEEVE, corrected
from advisor.order.namewords import UPPER_ROLES, ZIPS
from advisor.order.openings import held_shut
from advisor.order.quiltwords import flat_for_quilting
from advisor.order.untried import canvas_waits, settled_under_bones
from advisor.project.placing import singular_words

ARMHOLE, SHOULDER, PAD, WAIST = "armhole", "shoulder", "pad", "waist"
OPEN_BELOW = frozenset({"shoulder", "collar-attach"})
"""Roles of basted seams beside which a piece lies flat all the same: they only hold its top."""
CLOSINGS = frozenset({"hook", "button", "snap"})
"""Kinds of what closes a garment down the body."""
BACKING = "backing"
"""The family of what is only held behind a closing, as its interfacing."""
ROW = 4
"""From so many on fastenings that are told no place close the garment: estimate."""
ACROSS = frozenset({"elastic-across-the-back", "elastic-in-the-back-of-a-band"})
"""Methods of an elastic that draws a part in, and is sewn after the fitting."""
NO_PIN_ON_A_CHILD = (
    "; no pin stays in it on a child: baste, count the pins as they come out, or hold it to a "
    "garment that fits"
)


def what_to_find_out(facts: Facts) -> str:
    """Of which cloths somebody has to find out what they are made of, and what a pattern loses."""
    garment = facts.garment
    unknown = sorted(n for n, c in garment.cloths.items() if c.fibre_unknown)
    eased = [p.name for p in facts.places if eased_pile(p, facts)]
    out = f"; take the ease of {listed(eased)} out of the pattern, for its pile takes hardly any"
    first = f"; ask first what {listed(unknown)} may be made of, or find it out (advisor identify)"
    return (first if unknown else "") + (out if eased else "")


def what_to_fit(places: Sequence[SeamPlace], facts: Facts) -> str:
    """What may still be changed at the fitting, and how it is held shut and on for that."""
    fitting = facts.fitting
    tried = (p for p in places if fitting.tried(p) or fitting.basted(p))
    ready = sorted(tried, key=lambda p: (p.role.stage, p.name))
    open_still = (
        p.name
        for p in ready
        if (fitting.fitted(p) and not settled_under_bones(p, fitting))
        or fitting.basted(p)
        or corrected(p, facts)
    )
    names = list(open_still) or [p.name for p in ready]
    child = facts.garment.maker.worn_by == "child"
    told = f": {', '.join(names)} may still be changed" if names else ""
    held = "baste" if child else "pin"
    told += held_shut(places) or _shut_for_now(places, facts, held)
    if any(_hangs_from_a_band(p, facts) for p in places):
        told += "; tie a tape round the waist, where the band comes"
    told += f"; lap the fronts and {held} them" if any(map(_laps, places)) else ""
    told += boned_after(places, fitting)
    if SLEEVE in {p.role.id for p in ready} and not {ARMHOLE, RAGLAN} & {p.role.id for p in ready}:
        told += _sleeves_in(ready, facts, child=child)
    flat = flat_for_quilting(places, facts)
    told += flat + levels_to_mark(places, fitting) + _canvas_in(places, facts)
    cut = [p for p in places if fitting.cut_into(p) and not fitting.tries(p)]
    if cut:
        told += _cut_later(cut, places, facts, flat=bool(flat))
    told += _laid_later(places, fitting, held)
    pads = [p.name for p in places if p.role.id == PAD and p.unit != "lining"]
    told += f"; pin {listed(pads)} in" if pads and SHOULDER in {p.role.id for p in ready} else ""
    drawn = [p.name for p in places if p.method.id in ACROSS and p.unit != "lining"]
    if drawn:
        told += f"; baste the ends of the elastic over {listed(drawn)}, drawn up to its measure"
    if SLEEVE not in {p.role.id for p in ready} and any("wrist" in ends_of(p) for p in cut):
        sleeve = "baste the seam of the sleeve" if child else "pin the seam of the sleeve together"
        told += f" ({sleeve}, and the sleeve in, for that)"
    body = (p for p in places if not p.role.id.startswith("hood"))
    if any(p.kind.id == "lining-seam" or p.unit == "lining" for p in body):
        told += "; make every correction in the lining as well"
    return told + _parted_again(ready, facts) + (NO_PIN_ON_A_CHILD if child else "")


def _parted_again(ready: Sequence[SeamPlace], facts: Facts) -> str:
    """The waist that was only basted, and comes apart so that bodice and skirt lie flat again."""
    waists = [p for p in ready if p.role.id == WAIST and facts.fitting.basted(p)]
    above = any(p.role.id in UPPER_ROLES and facts.fitting.basted(p) for p in ready)
    return f"; then {taken_off(waists, facts)}" if waists and above else ""


def _laid_later(places: Sequence[SeamPlace], fitting: Fitting, held: str) -> str:
    """What is only held on for it, and sewn on afterwards."""
    laid = [p.name for p in places if placed_on_the_body(p, fitting)]
    over = [p.name for p in places if laid_on_what_drops(p, fitting)]
    told = f"; tape {listed(laid)} on, and mark the height of each" if laid else ""
    return told + (f"; {held} {listed(over)} over it as it hangs" if over else "")


def _canvas_in(places: Sequence[SeamPlace], facts: Facts) -> str:
    """The canvas that a front is tried on with, though it is padded to it only after that."""
    fronts = [p.name for p in places if p.kind.id == CANVAS and p.method.id != OF_A_COLLAR]
    if not fronts or not canvas_waits(facts.fitting):
        return ""
    return f"; lay the canvas of {listed(fronts)} in on a few basting stitches for it"


def _cut_later(
    cut: Sequence[SeamPlace], places: Sequence[SeamPlace], facts: Facts, *, flat: bool
) -> str:
    """What is marked for a slit, and opened again so that its piece lies flat, if it does not."""
    names = listed([p.name for p in cut])
    told = f"; mark anew where {names} will lie, before anything is cut there"
    basted = (p for p in places if facts.fitting.basted(p) and p.role.id not in OPEN_BELOW)
    shut = [p for p in basted if any(related(p, c) for c in cut)]
    if flat or not shut:
        return told
    return f"{told}, and {taken_off(shut, facts)}, so that each piece lies flat for it"


def _sleeves_in(ready: Sequence[SeamPlace], facts: Facts, *, child: bool) -> str:
    """How sleeves are held in for the fitting: by no pin in what keeps its holes."""
    if any(p.role.id == SLEEVE and holed_for_good(p, facts) for p in ready):
        return "; clip the sleeves in"
    return "; baste the sleeves in" if child else "; pin the basted sleeves in"


def _hangs_from_a_band(band: SeamPlace, facts: Facts) -> bool:
    """Whether skirt or trousers hang from a band that is on only after they were tried on."""
    close = facts.fitting.degree == TO_BODY and waist_edge(band, facts.places)
    return close and band.kind.id == "waistband" and not facts.fitting.tried(band)


def _laps(place: SeamPlace) -> bool:
    """Whether it is the edge of a front that laps over the other, with nothing to close it yet."""
    return place.role.id in (WRAP, TO_WAIST) and place.unit != "lining"


def _shut_for_now(places: Sequence[SeamPlace], facts: Facts, held: str) -> str:
    """How what is closed at last is held along its line, or nobody sees how close it lies."""
    doors = [
        p
        for p in places
        if (facts.fitting.degree == TO_BODY or p.method.id == FRONT_ZIP)
        and not facts.fitting.tried(p)
        and p.unit != "lining"
        and p.kind.family != BACKING
        and (p.role.id in ZIPS or _down_the_body(p))
    ]
    if not doors:
        return ""
    held = "clip" if is_clipped(doors[0], facts) else held
    return f"; {held} it shut along the line of {doors[0].name}"


def _down_the_body(place: SeamPlace) -> bool:
    """Whether it closes front, back or side: by its name, or as a long row that is told no place.

    The buttons of a cuff are called after it, and those of a back pocket close that alone.
    """
    words = set(singular_words(place.name))
    if "pocket" in words:
        return False
    row = not words - nouns.HOW_HOLED and place.seam.making.times >= ROW
    return place.kind.id in CLOSINGS and (bool(nouns.SIDES & words) or row)
