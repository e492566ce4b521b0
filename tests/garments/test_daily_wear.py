"""What two garments of daily wear have to get right: piped pyjamas, and a lined tweed pinafore.

All is common practice of the trade.
"""

from __future__ import annotations

from tests.garments.whole import places, stands, work

PYJAMAS, PINAFORE = "more/lighthouse_pyjamas", "more/signalbox_pinafore"


def test_a_lining_is_what_its_seams_say_whatever_it_is_cut_of() -> None:
    """A bodice lined with lawn is turned at neck and armholes before its sides are closed."""
    found = work(PINAFORE)
    edge = "neck and armholes"
    assert ("both", "bagged-edge") == (places(found)[edge].unit, places(found)[edge].role.id)
    assert stands(found, f"join {edge}", f"turn {edge}", "join side")
    assert stands(found, f"turn {edge}", "join lining side", "join waist")


def test_a_lining_is_whole_before_the_waist_takes_it_in() -> None:
    """Its darts and shoulders too: nothing of it can be reached afterwards."""
    found = work(PINAFORE)
    for step in ("stitch lining dart", "press lining shoulder", "press lining side"):
        assert stands(found, step, "join waist")
    assert stands(found, "set centre back zip", "fell the lining to centre back zip")


def test_what_lies_in_pleats_is_not_gathered_as_well() -> None:
    """The pleats are a place of their own: the waist takes them in as they lie."""
    found = work(PINAFORE)
    assert "pleated-into-a-seam" == places(found)["waist"].method.id
    assert not {"gather waist", "fold waist"} & set(found.order)
    assert "Draw" not in found.tasks["baste waist"].step.does
    assert stands(found, "lay box pleats", "press box pleats", "baste waist")


def test_a_tab_of_a_pocket_is_no_pocket() -> None:
    """The head of a name stands last: a tab is made up by itself and has no bag."""
    found = work(PINAFORE)
    assert "ties" == places(found)["pocket tabs"].kind.id
    assert "topstitch pocket tabs" not in found.order


def test_only_what_has_glue_is_fused() -> None:
    """A cord in the same edge is no interfacing."""
    text = work(PYJAMAS).tasks["fuse collar edge"].step.does
    assert "woven fusible interfacing" in text
    assert "piping" not in text


def test_a_jacket_and_its_trousers_wait_for_nothing_of_each_other() -> None:
    """The casing of the trousers neither ends at the hem of the jacket nor lies under its iron."""
    found = work(PYJAMAS)
    legs = {name for name, place in places(found).items() if place.alone}
    assert {"inseam", "crotch", "waist casing", "trouser hems"} == legs
    near = [p for p in found.graph.precedences if {p.before, p.after} == {CLOSE, HEM}]
    assert [] == near


CLOSE, HEM = "close waist casing", "sew jacket hem"


def test_a_curve_is_not_felled_unasked() -> None:
    """Straight seams of brushed cotton are felled; round an armhole a fell puckers."""
    found = places(work(PYJAMAS))
    assert "felled-seam" == found["inseam"].method.id
    assert {"plain-seam"} == {found[name].method.id for name in ("armhole", "crotch")}


def test_a_flat_piping_backs_nothing() -> None:
    """It is seen between two cloths, though it is fine enough to back one."""
    assert "baste piping" not in work(PYJAMAS).order
