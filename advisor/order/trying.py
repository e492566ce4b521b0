"""What a maker finds out before she cuts, and tries on before anything is past recall."""

from __future__ import annotations

from collections.abc import Sequence

from advisor.order.backed import boned_after
from advisor.order.beside import ends_of
from advisor.order.facts import Facts
from advisor.order.fitting import RAGLAN, TO_BODY
from advisor.order.kinds import SeamPlace, related
from advisor.order.letout import CORRECTED, SLEEVE
from advisor.order.namewords import ZIPS
from advisor.order.openings import held_shut
from advisor.order.step_words import listed
from advisor.project.garment import Garment
from advisor.project.placing import singular_words

ARMHOLE, SHOULDER, PAD = "armhole", "shoulder", "pad"
CLOSINGS, BODY = frozenset({"hook", "button", "snap"}), frozenset({"back", "front", "side"})
"""Kinds and words of what closes a garment down the body."""
ACROSS = frozenset({"elastic-across-the-back", "elastic-in-the-back-of-a-band"})
"""Methods of an elastic that draws a part in, and is sewn after the fitting."""
NO_PIN_ON_A_CHILD = (
    "; no pin stays in it on a child: baste, count the pins as they come out, or hold it to a "
    "garment that fits"
)


def what_to_find_out(garment: Garment) -> str:
    """Of which cloths somebody has to find out first what they are made of."""
    unknown = sorted(n for n, c in garment.cloths.items() if c.fibre_unknown)
    first = f"; ask first what {listed(unknown)} may be made of, or find it out (advisor identify)"
    return first if unknown else ""


def what_to_fit(places: Sequence[SeamPlace], facts: Facts) -> str:
    """What may still be changed at the fitting, and how it is held shut and on for that."""
    fitting = facts.fitting
    tried = (p for p in places if fitting.tried(p) or fitting.basted(p))
    ready = sorted(tried, key=lambda p: (p.role.stage, p.name))
    open_still = (
        p.name
        for p in ready
        if fitting.fitted(p)
        or fitting.basted(p)
        or (p.role.id in CORRECTED and p.kind.family == "seam")
    )
    names = list(open_still) or [p.name for p in ready]
    child = facts.garment.maker.worn_by == "child"
    told = f": {', '.join(names)} may still be changed" if names else ""
    told += held_shut(places) or _shut_for_now(places, facts, "baste" if child else "pin")
    told += boned_after(places, fitting)
    if SLEEVE in {p.role.id for p in ready} and not {ARMHOLE, RAGLAN} & {p.role.id for p in ready}:
        told += "; baste the sleeves in" if child else "; pin the basted sleeves in"
    cut = [p for p in places if fitting.cut_into(p) and not fitting.tries(p)]
    if cut:
        names = [p.name for p in cut]
        told += f"; mark anew where {listed(names)} will lie, before anything is cut there"
        shut = [p.name for p in places if fitting.basted(p) and any(related(p, c) for c in cut)]
        told += (
            f", and open the basting of {listed(shut)}, so that each piece lies flat for it"
            if shut
            else ""
        )
    pads = [p.name for p in places if p.role.id == PAD and p.unit != "lining"]
    told += f"; pin {listed(pads)} in" if pads and SHOULDER in {p.role.id for p in ready} else ""
    drawn = [p.name for p in places if p.method.id in ACROSS and p.unit != "lining"]
    if drawn:
        told += f"; baste the ends of the elastic over {listed(drawn)}, drawn up to its measure"
    if any("wrist" in ends_of(p) for p in cut):
        held = "baste the seam of the sleeve" if child else "pin the seam of the sleeve together"
        told += f" ({held}, and the sleeve in, for that)"
    body = (p for p in places if not p.role.id.startswith("hood"))
    if any(p.kind.id == "lining-seam" or p.unit == "lining" for p in body):
        told += "; make every correction in the lining as well"
    return told + (NO_PIN_ON_A_CHILD if child else "")


def _shut_for_now(places: Sequence[SeamPlace], facts: Facts, held: str) -> str:
    """How what is closed at last is held along its line, or nobody sees how close it lies."""
    doors = [
        p.name
        for p in places
        if facts.fitting.degree == TO_BODY
        and not facts.fitting.tried(p)
        and p.unit != "lining"
        and (p.role.id in ZIPS or (p.kind.id in CLOSINGS and BODY & set(singular_words(p.name))))
    ]
    return f"; {held} it shut along the line of {doors[0]}" if doors else ""
