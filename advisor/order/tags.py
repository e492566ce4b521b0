"""What precedences may ask of a step on a place, beyond its work and its kind."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.knowledge import nouns
from advisor.knowledge.ordering import Operation
from advisor.order.backed import boned_after
from advisor.order.bandlining import takes_whole_lining
from advisor.order.bandrings import side_of_a_band
from advisor.order.bandtried import basted_drawn_up
from advisor.order.belonging import MADE_FIRST
from advisor.order.beside import ends_of, gone_through, is_frill
from advisor.order.channels import of_a_strip
from advisor.order.collarsin import catches_a_collar
from advisor.order.covering import covered_by, covered_neck, covered_zip
from advisor.order.drawnin import joined_by_the_waist
from advisor.order.easing import is_foot
from advisor.order.ended import back_of_straps, front_of_straps, tabs_of_waist
from advisor.order.facedrun import of_a_longer_facing, one_facing
from advisor.order.facts import Facts
from advisor.order.felled import bagged
from advisor.order.fitting import TO_BODY
from advisor.order.flatsleeve import ARMHOLE, one_run, set_flat
from advisor.order.hemsmeet import turned_hem
from advisor.order.hoodlining import HOLDS
from advisor.order.hungapart import joins_hung_apart
from advisor.order.innerparts import hangs_inside, takes_in_inner
from advisor.order.kinds import SeamPlace, crosses
from advisor.order.laidlate import laid_on_what_drops, placed_on_the_body
from advisor.order.layering import FLAP, shuts_in_lining
from advisor.order.legs import closes_the_tube
from advisor.order.letout import edges_wait
from advisor.order.madeup import made_up
from advisor.order.namewords import AFTER_HEM, SHEER, UPPER_ROLES
from advisor.order.nearness import at_sleeve_end
from advisor.order.openings import BAGGED
from advisor.order.pocketbags import buttoned_slit
from advisor.order.quilting import on_the_quilted
from advisor.order.roles import PART_HEM, POCKET_FLAP
from advisor.order.sashes import CAUGHT_IN, asks_for_its_seam
from advisor.order.seambags import runs_round_a_bag
from advisor.order.strapped import STRAPS
from advisor.order.twopiece import closes_the_sleeve, outer_of
from advisor.order.untried import (
    BEHIND,
    lining_waits,
    not_cut_before,
    pierced_once,
    runs_across,
    sleeve_tried,
)
from advisor.order.waistwords import fastens_the_band, tape_round_waist
from advisor.project.headwords import speaks_of
from advisor.project.linings import worn_under
from advisor.project.placing import singular_words
from advisor.project.strapless import strapless

PINNED_IN: Final = frozenset({"draw-up", "baste"})
"""The work by which a sleeve is held in its armhole, to be looked at before it is sewn."""
UNPRESSED = frozenset({"glue", "sew-on-last"})
"""What comes after the last press, because no iron may come near it."""
HOLED = frozenset({"grommets-set", "laced-through-grommets", "lacing-threaded"})
"""Methods that set metal holes or lace through them: no iron lies flat on them."""
WORKED = "laced-through-eyelets"
"""The method whose holes are pressed with the edge that they lie in, before the cord goes in."""
ENDS = frozenset({"fasten", "set-lining", "glue"})
NO_SEAM = frozenset({"fastening", "backing", "stay", "laid on"})
"""Families of places that close no garment, whatever cloths lie in them."""
EDGES = frozenset({"edge", "casing", "band"})
"""Families of places that finish an edge."""
AT_A_ZIP = frozenset({"lining-seam", "ribbon"})
"""Kinds of what is sewn over the tape of a zip where its name says so."""
PADDED = frozenset({"pad", "canvas"})
"""Kinds and roles of what shapes a shoulder or a front."""
VENT = "vent-lapped"
FACED, TAB = "faced-edge", "tab-made-up"
IN_A_BLOCK = "pleats-in-a-block"
SEAMS = frozenset({"seam", "edge", "gathers", "band", "dart", "fold", "laid on", "stay", "casing"})
"""Families of places that are finished before another place runs over their end."""


def tags_of(op: Operation, place: SeamPlace, facts: Facts, past: list[bool]) -> frozenset[str]:
    """The tags of a stage; `past` says of it and of each stage before it whether it is past recall.

    See `schema_order.Tag` for what each is asked for.
    """
    role, fitting = place.role, facts.fitting
    whole = takes_whole_lining(place, facts.places)
    tail = role.last or place.op in ENDS or role.id in AFTER_HEM
    tender = facts.tender_face(place)
    ends = ends_of(place)
    behind = fitting.cut_behind(place, op)
    cut = behind or fitting.cut_into(place)
    laced = place.method.id in HOLED or (place.method.id == WORKED and op.id == "finish-by-hand")
    faced = one_facing(facts.places) or (None, None)
    pair = one_run(facts.places) or (None, None)
    edged = _upper_edge(place) and not front_of_straps(place, facts)
    tags = {
        "flat": role.flat and not tail,
        "closes": role.closes,
        "fitted": edges_wait(place, facts),
        "tried": fitting.tried(place) and not any(past),
        "basted to try on": op.id == "baste" and op.verb != HOLDS and fitting.basted(place),
        "basted to look": op.id in PINNED_IN and _looked_at(place) and not fitting.basted(place),
        "drawn up after it is tried on": op.id == "gather"
        and fitting.basted(place)
        and not basted_drawn_up(place),
        "pierced once across": runs_across(place) and pierced_once(place, fitting),
        "sleeve looked at": _hangs_anew(place, facts),
        "set in the round": role.id == ARMHOLE and not set_flat(place, facts),
        "sleeve with a vent": any(map(_slit_of_a_sleeve, facts.places)),
        "layers laid together": op.id == "baste" and op.verb != op.id,
        "past recall": past[-1] and not cut,
        "cut into what is fitted": past[-1] and cut,
        "may come before fitting": not past[-1],
        "lining closes": place.unit == "lining" and (role.closes or role.fitted),
        "before lining": not tail and place.op != "hem" and place.unit != "both",
        "takes in the whole lining": whole,
        "before hem": not role.last
        and not whole
        and place.op not in ("fasten", "glue")
        and role.id not in AFTER_HEM,
        "joins what hangs apart": joins_hung_apart(place, facts),
        "may be sewn before hanging": not joins_hung_apart(place, facts),
        "before last press": op.id not in UNPRESSED and not laced,
        "after last press": laced,
        "shell or lining seam": place.kind.family in SEAMS and not behind,
        "cut away behind": behind,
        "hangs from nothing": strapless(place.seam, facts.garment),
        "under a skirt": worn_under(place.seam),
        "over a petticoat": place.unit == "shell" and not worn_under(place.seam),
        "of the shell": place.unit == "shell",
        "of the lining": place.unit == "lining",
        "lining of a new pattern": lining_waits(place, fitting),
        "made of the lining": place.unit == "lining" and place.kind.family != "laid on",
        "not of the lining": place.unit != "lining",
        "at the zip": _at_zip(place, facts),
        "covers a neck seam": covered_neck(place, facts.places),
        "covered at the neck": covered_by(place, facts.places),
        "left as it is cut": place.method.id == "hem-left-raw",
        "not at a vent": role.id != "vent-lining",
        "not hemmed apart": role.id != PART_HEM,
        "not of a collar": place.method.id != "collar-padded-by-hand",
        "of a collar": place.method.id == "collar-padded-by-hand",
        "set at lapels": place.method.id == "collar-set-at-lapels",
        "not of a back": BEHIND not in singular_words(place.name),
        "not a flap": role.id not in (POCKET_FLAP, MADE_FIRST, "collar"),
        "not of a band": not speaks_of(place.name, nouns.BANDS | {"hem"}),
        "down a front": set(singular_words(place.name)) >= nouns.FRONT_EDGE,
        "not down a front": not set(singular_words(place.name)) >= nouns.FRONT_EDGE,
        "shell to lining": place.unit == "both" and place.kind.id == "faced-edge",
        "takes in the lining": place.unit == "both"
        and place.kind.family not in NO_SEAM
        and role.id != FLAP,
        "runs down to the hem": speaks_of(place.name, nouns.FRONT_OPENING | {"round"}),
        "opens the front": place.method.id == "open-ended-zip",
        "foot of the body": is_foot(place),
        "joined by the waist": joined_by_the_waist(place, facts),
        "felled in the flat": any(closes_the_tube(p, place) for p in facts.places),
        "edge of straps": (edged and place.kind.id != FACED) or back_of_straps(place, facts),
        "closes over straps": edged and place.kind.id == FACED,
        "caught in an edge": place.method.id == TAB and not tabs_of_waist(place, facts.places),
        "tried on with bones later": bool(boned_after(facts.places, fitting)),
        "caught in the waist": tabs_of_waist(place, facts.places),
        "caught in a seam": place.method.id == CAUGHT_IN,
        "cut from a block": place.method.id == IN_A_BLOCK,
        "not cut from a block": place.method.id != IN_A_BLOCK,
        "in no seam yet": asks_for_its_seam(place, facts.places),
        "hangs inside": hangs_inside(place, facts),
        "takes in what hangs inside": takes_in_inner(place, facts),
        "caught in a side": place.method.id == "strap-caught-in-the-side",
        "runs over a fitted shoulder": _over_shoulders(place, facts),
        "ends in a waist": place.method.id in STRAPS and not _strap(place),
        "goes through a hole": bool(gone_through(place, facts)),
        "hangs from it": _strap(place),
        "hangs from the band": _strap(place) and hangs_from_band(facts.places),
        "frill": is_frill(place),
        "side of a band": side_of_a_band(place),
        "loops caught in": place.method.id == "button-loops-caught-in",
        "collar or its facing": _collar_or_facing(place),
        "turns the whole": place.method.id == BAGGED,
        "takes in a collar": catches_a_collar(place, facts),
        "bagged": bagged(place, facts.places),
        "at the neck": "neck" in ends,
        "worked on the quilted": on_the_quilted(op, place, fitting),
        "inner seam of a sleeve": outer_of(place, facts.places) is not None,
        "outer seam of a sleeve": closes_the_sleeve(place, facts.places),
        "channel laid on": of_a_strip(place),
        "on a pocket": "pocket" in singular_words(place.name),
        "on what is finished": not _on_a_pocket(place, facts)
        and not buttoned_slit(place, facts.places),
        "buttons a pocket in a slit": buttoned_slit(place, facts.places),
        "first of one run": place == pair[0],
        "second of one run": place == pair[1],
        "front of one facing": place == faced[0],
        "neck of one facing": place == faced[1],
        "at the waist": speaks_of(place.name, nouns.LOW_BANDS),
        "runs round a bag": runs_round_a_bag(place, facts.places),
        "made up by itself": made_up(place, facts.places),
        "at the wrist": "wrist" in ends,
        "ends a tried sleeve": at_sleeve_end(place)
        and any(sleeve_tried(p, fitting) for p in facts.places),
        "not at the wrist": "wrist" not in ends,
        "shuts in the lining": shuts_in_lining(place, facts.places),
        "over pleats": speaks_of(place.name, nouns.HIPS | {"pleat"}),
        "placed on the body": placed_on_the_body(place, fitting),
        "laid on what drops": laid_on_what_drops(place, fitting),
        "fastens the band": fastens_the_band(place, facts.places),
        "turned hem": turned_hem(place),
        "round the waist": tape_round_waist(place, facts.places),
        "sheer": any(facts.least(c, "sheer") >= SHEER for c in place.full),
        "last": role.last,
        "tender face": tender and not tail,
        "not tender face": not tender and not tail,
        "not fastening": place.op not in ("fasten", "glue") and place.kind.family != "fastening",
    }
    return frozenset(name for name, holds in tags.items() if holds)


def _on_a_pocket(place: SeamPlace, facts: Facts) -> bool:
    """Whether snaps are set in a pocket that is laid on, while that lies by itself."""
    named = place.kind.id == "snap" and "pocket" in singular_words(place.name)
    return named and any(p.kind.id == "patch-pocket" for p in facts.places)


def _at_zip(place: SeamPlace, facts: Facts) -> bool:
    """Whether it is sewn over the tape of a zip, by its name or by the zip that it holds."""
    named = place.kind.id in AT_A_ZIP and "zip" in singular_words(place.name)
    return named or covered_zip(place, facts.places)


def _over_shoulders(place: SeamPlace, facts: Facts) -> bool:
    """Whether an edge or a band takes in shoulders that a fitting to the body may change.

    A shawl collar lies round the neck from front to front, however loose the garment is.
    """
    shoulders = [p for p in facts.places if p.role.id == "shoulder"]
    if set(singular_words(place.name)) >= nouns.SHAWL:
        return bool(shoulders) and facts.of_garment("something to fit")
    close = facts.fitting.degree == TO_BODY and place.kind.family in EDGES
    front = place.role.id == "facing" and "front" in singular_words(place.name)
    front = front and not of_a_longer_facing(place, facts.places)
    return close and not front and any(crosses(place, p) for p in shoulders)


def _collar_or_facing(place: SeamPlace) -> bool:
    """Whether it is a collar that a facing is sewn over, or a facing that runs up to the neck.

    The ends of a collar on a stand are finished by themselves, at a front that is turned already.
    """
    facing = place.role.id == "facing" and speaks_of(place.name, nouns.NECKS | {"front"})
    return place.method.id == "collar-set" or facing


def _strap(place: SeamPlace) -> bool:
    return place.kind.id == "ties" and "strap" in singular_words(place.name)


def _hangs_anew(place: SeamPlace, facts: Facts) -> bool:
    """Whether how long a sleeve is shows only where it hangs: not cut before, or over a pad.

    Else the published order hems a sleeve before it is set in (unit-method-text); that of a shirt
    and of a knit that is set in flat is measured on its piece.
    """
    if place.role.id != ARMHOLE or place.unit == "lining" or set_flat(place, facts):
        return False
    if any(_slit_of_a_sleeve(p) for p in facts.places):
        return False  # its corner is turned with the hem, on the loose sleeve
    padded = any(p.kind.id in PADDED or p.role.id in PADDED for p in facts.places)
    return padded or not_cut_before(place, facts.fitting)


def _slit_of_a_sleeve(place: SeamPlace) -> bool:
    """Whether it is the vent at the end of a sleeve, which was marked at the fitting."""
    vent = place.method.id == VENT and place.unit != "lining"
    return vent and "sleeve" in singular_words(place.name)


def _looked_at(place: SeamPlace) -> bool:
    """Whether its method bastes a sleeve in to look at how it hangs, fitted or not."""
    return place.role.id == ARMHOLE and any(s.work == "baste" for s in place.method.stages)


def hangs_from_band(places: Sequence[SeamPlace]) -> bool:
    """Whether straps are caught in a waistband, for the garment has no other edge above it."""
    return any(p.kind.id == "waistband" for p in places) and not any(
        p.role.id in UPPER_ROLES or _upper_edge(p) for p in places
    )


def _upper_edge(place: SeamPlace) -> bool:
    edge = place.kind.family in EDGES and not place.role.last and place.role.id != "waistband"
    return edge and speaks_of(place.name, nouns.TOP_EDGE)
