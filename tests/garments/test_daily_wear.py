"""What pyjamas, a pinafore, a child's coat, an overshirt and a wrap dress have to get right.

All is common practice of the trade.
"""

from __future__ import annotations

from tests.garments.whole import changed, places, stands, work

PYJAMAS, PINAFORE = "more/lighthouse_pyjamas", "more/signalbox_pinafore"
COAT, OVERSHIRT, WRAP = "more/tram_stop_coat", "more/harbour_overshirt", "more/allotment_wrap"
SHIRT_DRESS = "more/ticket_shirt_dress"


def test_a_lining_is_what_its_seams_say_whatever_it_is_cut_of() -> None:
    """A bodice lined with lawn is turned at neck and armholes before its sides are closed."""
    found = work(PINAFORE)
    edge = "neck and armholes"
    assert ("both", "bagged-edge") == (places(found)[edge].unit, places(found)[edge].role.id)
    assert stands(found, f"join {edge}", f"turn {edge}", "join side")
    assert stands(found, f"turn {edge}", "join lining side", "join waist")


def test_a_lining_may_be_named_after_its_part() -> None:
    """A bodice lining is the lining of the bodice, as a lining side is its side."""
    found = changed(PINAFORE, "name: lining side", "name: bodice lining side")
    assert "lining" == places(found)["bodice lining side"].unit
    assert stands(found, "turn neck and armholes", "join bodice lining side", "join waist")


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
    """Straight seams of brushed cotton are felled; round an armhole and a seat a fell puckers."""
    found = places(work(PYJAMAS))
    made = [found[name].method.id for name in ("inseam", "armhole", "crotch")]
    assert made == ["felled-seam", "plain-seam", "seat-sewn-twice"]


def test_a_flat_piping_backs_nothing() -> None:
    """It is seen between two cloths, though it is fine enough to back one."""
    assert "baste piping" not in work(PYJAMAS).order


def test_edges_sewn_all_in_one_are_drawn_out_through_the_shoulders() -> None:
    """With both shoulders joined no armhole is turned otherwise."""
    step = work(PINAFORE).tasks["turn neck and armholes"].step
    assert "through its shoulder" in step.does


def test_an_opening_is_basted_shut_when_its_seam_is_there_from_end_to_end() -> None:
    """A zip that runs over the waist is basted and set in one line."""
    assert stands(work(PINAFORE), "join waist", "baste shut centre back zip")


def test_a_lining_to_a_facing_joins_the_two() -> None:
    """Its name begins with the lining, and its head is what that is sewn to: no facing is made."""
    found = work(COAT)
    place = places(found)["lining to facing"]
    assert ("lining-seam", "both") == (place.kind.id, place.unit)
    assert stands(found, "join front facing", "set lining to facing", "fell the lining at hem")


def test_a_sleeve_is_its_own_seam_where_the_armhole_has_a_name_of_its_own() -> None:
    """So the sleeve of a lining is closed before it is set in."""
    found = work(COAT)
    assert "underarm" == places(found)["lining sleeve"].role.id
    assert stands(found, "join lining sleeve", "join lining armhole")


def test_a_place_is_made_by_the_method_that_its_own_words_name() -> None:
    """Bound buttonholes are made in the single front, before the facing is on."""
    found = work(COAT)
    assert "bound-buttonhole" == places(found)["buttonholes"].method.id
    assert stands(found, "slash buttonholes", "join front facing")


def test_a_half_placket_has_two_bands_and_is_there_before_the_collar() -> None:
    """A slit bound with a strip is for a sleeve; the collar runs over the open end of a front's."""
    found = work(OVERSHIRT)
    assert "placket-of-two-bands" == places(found)["half placket"].method.id
    assert stands(found, "fuse half placket", "sew the bands of half placket", "join collar stand")


def test_a_flap_is_stitched_over_its_patch_pocket() -> None:
    """It is made up by itself, and somebody has to sew it on."""
    found = work(OVERSHIRT)
    steps = ("turn pocket flaps", "stitch on chest pockets", "stitch the flap over chest pockets")
    assert stands(found, *steps, "join side and sleeve")
    assert "stitch the flap over patch pockets" not in work(PINAFORE).order


def test_a_slit_at_the_end_of_a_side_is_not_cut() -> None:
    """The side seam ends at a mark, and the edges below it are turned in."""
    found = work(OVERSHIRT)
    assert "slash side slits" not in found.order
    assert stands(found, "press side and sleeve", "turn in side slits", "sew hem")


def test_patches_are_laid_on() -> None:
    """The plural of a patch is patches: it is stitched on its sleeve while that lies flat."""
    found = work(OVERSHIRT)
    assert "applique" == places(found)["elbow patches"].kind.id
    assert stands(found, "stitch on elbow patches", "join side and sleeve")


def test_a_tie_is_drawn_through_a_gap_and_ends_in_the_waist() -> None:
    """The gap is marked before its side is sewn, and is neither slashed nor bound."""
    found = work(WRAP)
    assert stands(found, "mark the gap of tie opening", "join bodice side")
    assert stands(found, "fit", "sew in the ends of wrap ties", "join waist")
    assert "slash tie opening" not in found.order


def test_buttons_are_sewn_on_where_only_their_holes_are_named() -> None:
    """They are bought with the holes, so somebody sews them on."""
    found = work(OVERSHIRT)
    assert stands(found, "make buttonholes", "sew the buttons of buttonholes", "last press")
    assert "sew the buttons of jacket buttonholes" not in work(PYJAMAS).order


def test_a_neck_is_finished_when_its_shoulders_are_fitted() -> None:
    """Of what is fitted to the body: sewn over, they are neither taken in nor let out."""
    found = work(WRAP)
    assert stands(found, "join shoulder", "fit", "join neck facing")
    assert "shoulder" in found.tasks["fit"].step.does


def test_an_armhole_is_topstitched_before_the_sleeve_is_closed() -> None:
    """Its edges wait for the fitting, so the seam that runs over its end is basted for that."""
    found = work(OVERSHIRT)
    assert stands(
        found, "baste side and sleeve", "fit", "topstitch armhole", "join side and sleeve"
    )


def test_a_band_down_the_whole_front_is_made_when_the_waist_is_joined() -> None:
    """It runs over the seam; a band of the bodice alone is made while that lies flat."""
    found = work(SHIRT_DRESS)
    assert stands(found, "fit", "press waist", "fold button band", "join collar stand")
    assert "baste button band" not in found.order
    short = changed(SHIRT_DRESS, "length: 108 cm", "length: 42 cm")
    assert stands(short, "press button band", "baste waist", "fit")


def test_loops_lie_over_the_waist_and_a_tab_on_its_open_sleeve() -> None:
    """No tab belongs to a pocket in the seam, and none waits for one."""
    found = work(SHIRT_DRESS)
    assert stands(found, "press waist", "bar on belt loops")
    assert stands(found, "baste on sleeve tabs", "join sleeve seam")
    assert all("pocket" not in p.after for p in found.graph.precedences if "tabs" in p.why)
