"""What a tailor found out of order in a blazer, lined trousers and a short jacket.

All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from tests.garments.whole import FOLDER, changed, ordered, places, stands, work

BLAZER, TROUSERS, JACKET = (
    "more/ferryman_blazer",
    "more/conductor_trousers",
    "more/skating_jacket",
)


@pytest.mark.parametrize("garment", [BLAZER, TROUSERS, JACKET])
def test_nothing_chases_itself(garment: str) -> None:
    """Every order can be kept."""
    assert work(garment).cycles == ()


def test_the_tape_of_the_roll_line_is_felled_to_a_canvas_that_is_in() -> None:
    """There is nothing to fell it to before."""
    assert stands(work(BLAZER), "baste front canvas", "tape roll line", "join front facing")


def test_a_front_is_padded_before_the_body_hangs_on_it() -> None:
    """Darts, pockets, canvas, then the seams that join it to the back."""
    steps = ("press front dart", "close flap pocket", "baste front canvas", "pad front canvas")
    assert stands(work(BLAZER), *steps, "shape front canvas", "join shoulder", "join side")


def test_a_flap_is_made_before_the_pocket_that_takes_it_in() -> None:
    """It is caught in the upper row, so the slit waits for it."""
    found = work(BLAZER)
    assert places(found)["flap"].role.id == "pocket-flap"
    steps = ("join flap", "grade flap", "turn flap", "lay the flap at flap pocket")
    assert stands(found, *steps, "stitch the welt of flap pocket", "slash flap pocket")


def test_a_flap_is_no_front_edge() -> None:
    """Neither the neck nor the lining waits for it, and the pocket of the lining has none."""
    found = work(BLAZER)
    assert "lay the flap at inside breast pocket" not in found.order
    because = [p.before for p in found.reasons["close collar seam"]]
    assert "turn flap" not in because
    whys = [item.why for items in found.reasons.values() for item in items]
    assert not any("once flap holds the lining" in why for why in whys)


def test_a_pocket_without_a_flap_takes_none_in() -> None:
    """As a welt pocket alone."""
    found = changed(BLAZER, "name: flap, ", "name: front tab, ")
    assert not any(step.startswith("lay the flap") for step in found.order)


def test_the_vent_of_a_sleeve_waits_for_the_seam_that_it_ends() -> None:
    """It is the lower end of the sleeve seam, and the hem runs over it."""
    found = work(BLAZER)
    top = "stitch across the top of cuff vent"
    assert stands(found, "press sleeve seam", top, "tack cuff vent", "sew sleeve hem")


def test_a_sleeve_head_lies_in_the_cap_before_the_pad() -> None:
    """It is no pad, and no shoulder is sewn to it."""
    found = work(BLAZER)
    assert stands(found, "join armhole", "sew in sleeve head", "sew in shoulder pads")
    told = found.tasks["sew in sleeve head"].step.does
    assert "cap" in told
    assert "shoulder" not in told


@pytest.mark.parametrize(("garment", "tried"), [(BLAZER, "baste side"), (JACKET, "baste side")])
def test_a_sleeve_is_basted_in_when_it_is_one(garment: str, tried: str) -> None:
    """Its own seam and the body are closed, and the body is fitted."""
    found = work(garment)
    assert stands(found, tried, "fit", "baste armhole", "join armhole")
    assert stands(found, "join side", "baste armhole")
    assert stands(found, "press sleeve seam", "baste armhole")


def test_a_lining_that_is_joined_nowhere_hangs_in_the_waistband() -> None:
    """It is whole before it is hung, and the zip has it before the band closes over both."""
    found = work(TROUSERS)
    hung = "hang the lining at waistband"
    assert stands(found, "press lining seat seam", hung, "join waistband", "close waistband")
    assert stands(found, "press lining to zip", hung)


def test_a_lining_that_hangs_from_the_waist_edge_is_hung_there_alone() -> None:
    """A place that joins shell and lining at the waist says where."""
    line = "  - {name: lining to zip,"
    own = "  - {name: waist edge, layers: [cloth, lining], length: 78 cm, edge: turned}\n" + line
    assert "hang the lining at waistband" not in changed(TROUSERS, line, own).order


def test_the_lower_edge_of_a_lining_is_felled_where_nothing_else_ends_it() -> None:
    """At the hem and at the sleeve, when the lining hangs and both are turned up."""
    found = work("../../knowledge/templates/tailored-jacket")
    steps = ("catch facing to lining", "fell the lining at hem", "last press")
    assert stands(found, "press hem", *steps[1:])
    assert stands(found, "press lining armhole", *steps)
    assert stands(found, "catch facing to lining", "fell the lining at sleeve hem")


def test_a_lining_with_a_hem_of_its_own_is_not_felled_twice() -> None:
    """Nor is one that is bagged."""
    assert "fell the lining at hem" not in work(JACKET).order
    assert "fell the lining at sleeve hem" in work(BLAZER).order
    assert "fell the lining at hem" not in work(BLAZER).order
    cape = work("../../knowledge/templates/cape")
    assert not any(step.startswith("fell the lining") for step in cape.order)


def test_a_lining_hem_that_names_the_shell_is_felled_to_it() -> None:
    """What is turned up twice by machine holds no cloth but its own."""
    found = work(BLAZER)
    assert places(found)["lining hem"].method.id == "lining-hem-felled"
    assert stands(found, "press hem", "fell lining hem", "fell lining to vent")
    assert places(work(JACKET))["lining hem"].method.id == "lining-hem"


def test_the_outer_seam_of_a_leg_waits_for_the_zip_in_it() -> None:
    """A side zip lies in it, whatever that seam is called."""
    found = work(TROUSERS)
    assert stands(found, "baste outseam", "fit", "set side zip", "join outseam")


def test_braid_down_the_side_has_its_ends_in_waist_and_hem() -> None:
    """It lies over the seam, so that is sewn and pressed before."""
    found = work(TROUSERS)
    steps = ("press outseam", "stitch on side stripe", "press side stripe")
    assert stands(found, *steps, "join waistband")
    assert stands(found, "press side stripe", "sew hem")


def test_straps_that_have_no_other_edge_are_caught_in_the_waistband() -> None:
    """Their ends lie in it before it is closed."""
    found = work(TROUSERS)
    assert stands(found, "fit", "sew in the ends of straps", "close waistband")


def test_a_lined_patch_pocket_is_lined_before_it_is_sewn_on() -> None:
    """A pocket of one cloth has its top hemmed instead."""
    found = work(JACKET)
    assert stands(found, "line pocket", "trim pocket", "turn pocket", "stitch on pocket")
    assert "turn under pocket" not in found.order
    assert "turn under patch pocket" in work("../../knowledge/templates/coat").order


def test_a_cuff_without_an_opening_is_a_ring() -> None:
    """It has no ends to close; one that is buttoned has."""
    found = work(JACKET)
    assert stands(found, "close to a ring cuff", "join cuff", "close cuff")
    assert "close the ends of cuff" not in found.order
    assert "close the ends of cuff" in work("more/shirt").order


def test_a_zip_that_comes_apart_lies_between_front_and_facing() -> None:
    """Nothing below it is basted shut, and no lining comes to its tape."""
    found = work(JACKET)
    assert places(found)["zip"].method.id == "open-ended-zip"
    assert stands(found, "baste zip", "set zip", "join front facing")
    assert not any(step.startswith("fell the lining to zip") for step in found.order)
    assert places(changed(JACKET, "open-ended zip", "coil zip"))["zip"].method.id == "centred-zip"


def test_a_seam_with_a_tape_of_its_own_is_not_stayed_twice() -> None:
    """The place that lays the tape does."""
    found = work(JACKET)
    assert "tape shoulder tape" in found.order
    assert "stay shoulder" not in found.order
    assert "stay armhole" in found.order
    assert "stay shoulder" in changed(JACKET, "name: shoulder tape", "name: neck tape").order


def test_a_lapel_is_not_understitched() -> None:
    """Its facing is the side that is seen; a front without roll line and canvas is."""
    assert "understitch front facing" not in work(BLAZER).order
    row = "  - {name: roll line, layers: [tweed, {notion: stay tape}], length: 34 cm, times: 2}\n"
    assert "understitch front facing" not in changed(BLAZER, row, "").order
    text = (FOLDER / f"{BLAZER}.yaml").read_text(encoding="utf-8").replace(row, "")
    lines = [line for line in text.splitlines() if "name: front canvas" not in line]
    assert "understitch front facing" in ordered("\n".join(lines)).order


def test_buttons_are_marked_through_buttonholes_that_there_are() -> None:
    """Those of a vented cuff are sewn on for show."""
    found = work(BLAZER)
    assert "through the buttonholes" in found.tasks["fasten front buttons"].step.does
    assert "at the marks" in found.tasks["fasten cuff buttons"].step.does


def test_the_slit_of_a_pocket_has_something_behind_it() -> None:
    """Tweed ravels to the corners; a pocket that names an interfacing has that."""
    steps = ("stay the slit of flap pocket", "stitch the welt of flap pocket")
    assert stands(work(BLAZER), *steps, "slash flap pocket")
    lined = work("more/lined_trousers").order
    assert "stay the slit of welt pocket" not in lined


def test_only_what_faces_an_edge_is_understitched() -> None:
    """The seam where a facing meets its lining lies inside."""
    assert "understitch facing to lining" not in work(BLAZER).order
    named = changed(BLAZER, "name: facing to lining", "name: front to lining")
    assert "understitch front to lining" in named.order


def test_an_undercollar_has_no_chest() -> None:
    """Its stand and its fall are padded by themselves."""
    found = work(BLAZER)
    assert places(found)["undercollar"].method.id == "collar-padded-by-hand"
    assert "chest" not in found.tasks["baste undercollar"].step.does
    assert "chest" in found.tasks["baste front canvas"].step.does


def test_a_button_is_hammered_through_a_firm_cloth_of_plants_or_a_skin() -> None:
    """Wool tears round the nail, so there a metal button is sewn on."""
    assert "fasten strap buttons" in work(TROUSERS).order
    drill = "{fabric: denim, fibres: {cotton: 98, elastane: 2}, weight: 380 g/m2}"
    old = (
        '{fabric: gabardine, fibres: {wool: 98, elastane: 2}, weight: 250 g/m2, colour: "#15161c"}'
    )
    assert "hammer on strap buttons" in changed(TROUSERS, old, drill).order


def test_a_lining_is_felled_round_a_vent_that_no_place_joins_it_to() -> None:
    """When both hems are done; a lining that is said to be joined there is felled once."""
    step = "fell the lining round back vent"
    skirt = work("more/lined_skirt")
    assert stands(skirt, "tack back vent", "hang the lining at waistband", "sew hem", step)
    assert stands(skirt, "press lining hem", step, "last press")
    assert stands(work("../../knowledge/templates/tailored-jacket"), "press hem", step)
    assert step not in work(BLAZER).order


BODICE = """
garment: Sample
fabrics: {crepe: wool crepe, lining: viscose lining}
seams:
  - {name: shoulder, layers: [crepe, crepe], length: 12 cm, times: 2}
  - {name: side, layers: [crepe, crepe], length: 30 cm, times: 2}
  - {name: waist, layers: [crepe, crepe], length: 72 cm}
  - {name: lining side, layers: [lining, lining], length: 30 cm, times: 2}
  - {name: facing to lining, layers: [crepe, lining], length: 60 cm, shape: curved}
  - {name: hem, layers: [crepe], length: 110 cm, edge: hem}
"""


def test_the_lining_of_a_bodice_is_felled_to_its_waist() -> None:
    """Where the skirt has none; one that has is joined to it."""
    found = ordered(BODICE)
    step = "fell the lower edge at facing to lining"
    assert stands(found, "join waist", "set facing to lining", step)
    assert "fell the lining at hem" not in found.order
    joined = "  - {name: lining waist, layers: [lining, lining], length: 72 cm}\n  - {name: hem"
    assert step not in ordered(BODICE.replace("  - {name: hem", joined)).order
    assert step not in work(BLAZER).order
