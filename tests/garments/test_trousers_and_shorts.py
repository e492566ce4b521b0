"""Trousers with a half lining, pockets of their own and a curtain; shorts on elastic and a cord.

What a tailor who read their orders of work missed. All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.claims.collect import Place
from tests.garments.test_laid_hung_and_lapped import picked
from tests.garments.whole import ordered, places, read, stands

CHORISTER = """
garment: Chorister's trousers
fitting: to the body
maker: {machine: industrial, overlocker: 3-thread, feet: [standard, zip]}
fabrics:
  cloth: {fabric: wool suiting, fibres: {wool: 100}, weight: 310 g/m2}
  half lining: {fabric: lining, fibres: {cotton: 55, silk: 45}, weight: 85 g/m2}
  pocketing: {fabric: cotton twill, fibres: {cotton: 100}, weight: 150 g/m2}
seams:
  - {name: half lining of the fronts, kind: underlining, layers: [cloth, half lining], length: 60 cm, times: 2}
  - {name: end of half lining, layers: [half lining], length: 32 cm, edge: raw, times: 2}
  - {name: back dart, layers: [cloth, cloth], length: 10 cm, times: 2}
  - {name: hip welt pocket, layers: [cloth, pocketing], length: 13 cm, stress: high}
  - {name: side pocket, layers: [cloth, half lining, pocketing], length: 17 cm, stress: high, times: 2}
  - {name: side pocket bag, layers: [pocketing, pocketing], length: 54 cm, shape: curved, times: 2}
  - {name: fly zip, layers: [cloth, half lining, {notion: metal zip}], length: 18 cm, stress: high}
  - {name: outseam, layers: [cloth, half lining, cloth], length: 105 cm, times: 2}
  - {name: inseam, layers: [cloth, half lining, cloth], length: 79 cm, times: 2}
  - {name: seat seam, layers: [cloth, cloth], length: 60 cm, shape: curved, stress: high, crosses: inseam}
  - {name: waistband, layers: [cloth, {notion: waistband stiffener}, pocketing], length: 86 cm, method: band with a curtain}
  - {name: hip pocket buttonhole, kind: buttonhole, on: cloth, number: 1, length: 16 mm}
  - {name: hip pocket button, layers: [cloth, {notion: horn button}]}
  - {name: hem, layers: [cloth], length: 43 cm, edge: hem, times: 2}
"""  # noqa: E501
SHORTS = """
garment: Ferry shorts
fitting: loosely
maker: {machine: household, overlocker: 3-thread}
fabrics: {cloth: {fabric: poplin, fibres: {cotton: 100}, weight: 130 g/m2}}
seams:
  - {name: outseam, layers: [cloth, cloth], length: 46 cm, times: 2}
  - {name: inseam, layers: [cloth, cloth], length: 19 cm, times: 2}
  - {name: crotch seam, layers: [cloth, cloth], length: 66 cm, shape: curved, crosses: inseam}
  - {name: waist casing, layers: [cloth, {notion: woven elastic}, {notion: drawcord}], length: 104 cm, edge: folded}
  - {name: waist drawstring buttonholes, kind: buttonhole, on: cloth, number: 2, length: 12 mm}
  - {name: hem, layers: [cloth], length: 60 cm, edge: hem, times: 2}
"""  # noqa: E501
MOISTURE = "press.moisture"


def does(text: str, step: str) -> str:
    """The words of a step."""
    return ordered(text).tasks[step].step.does


@pytest.mark.parametrize("place", ["seat seam", "waistband", "hem", "outseam"])
def test_wool_is_pressed_damp_over_a_backing_that_bears_it(place: str) -> None:
    """What is hidden behind it says what it bears, and not how it would be pressed best."""
    assert picked(CHORISTER, Place("seam", place), MOISTURE) == "damp cloth"
    renamed = CHORISTER.replace("half lining", "silk backing")
    assert picked(renamed, Place("seam", place), MOISTURE) == "damp cloth"


def test_linen_over_silk_stays_dry() -> None:
    """Linen only likes it damp, so the silk behind it is not risked."""
    linen = CHORISTER.replace("wool suiting, fibres: {wool: 100}", "suiting, fibres: {linen: 100}")
    assert picked(linen, Place("seam", "seat seam"), MOISTURE) == "dry"


def test_a_bag_closes_the_pockets_that_it_is_called_after() -> None:
    """The bag of the side closes none at the hip, which is closed in its own steps."""
    assert "round the bag" in does(CHORISTER, "close hip welt pocket")
    plain = CHORISTER.replace("side pocket bag", "pocket bag")
    assert "close the ends of hip welt pocket" in ordered(plain).tasks


def test_the_hole_of_a_pocket_in_a_slit_is_worked_before_its_bag_is_closed() -> None:
    """By hand where the machine sews straight alone; by a machine that can, in the same turn."""
    found, hole = ordered(CHORISTER), "work hip pocket buttonhole"
    assert stands(found, "turn hip welt pocket", hole, "close hip welt pocket")
    foot = CHORISTER.replace("[standard, zip]", "[standard, zip, buttonhole]")
    for text in (foot, CHORISTER.replace("machine: industrial", "machine: household")):
        made = "make hip pocket buttonhole"
        assert stands(ordered(text), "turn hip welt pocket", made, "close hip welt pocket")


def test_the_end_of_a_half_lining_is_cut_before_it_is_basted_in() -> None:
    """No seam of the leg has to be sewn first, for it ends far above the hem."""
    found = ordered(CHORISTER)
    assert stands(found, "cut end of half lining", "baste half lining of the fronts")
    assert "Hem the lower edge" not in does(CHORISTER, "baste half lining of the fronts")


def test_the_outseam_is_pressed_while_the_leg_lies_open() -> None:
    """And its pocket's bag is closed in the row that joins it."""
    found = ordered(CHORISTER)
    assert stands(found, "join outseam", "run round side pocket bag", "press outseam")
    assert stands(found, "press outseam", "join inseam", "press inseam", "join seat seam")


def test_a_seat_is_not_held_by_a_row_that_does_not_stretch() -> None:
    """A curve of a neck is stay-stitched, the fork is stretched."""
    assert "stay-stitch seat seam" not in ordered(CHORISTER).tasks
    assert "stay-stitch waistband" in ordered(CHORISTER).tasks


def test_legs_of_wool_are_offered_shape_and_crease_and_tried_on_for_their_length() -> None:
    """Neither where the leg ends at the knee, nor in a cloth that a damp iron does not set."""
    steps = ["shape the backs of the legs", "try the legs on for the length", "crease the legs"]
    found = ordered(CHORISTER)
    assert stands(found, steps[0], "baste inseam", steps[1], "sew hem", "press hem", steps[2])
    short = ordered(CHORISTER.replace("length: 79 cm", "length: 20 cm"))
    assert not [step for step in steps if step in short.tasks]
    cotton = ordered(CHORISTER.replace("wool suiting, fibres: {wool", "twill, fibres: {cotton"))
    assert [step for step in steps if step in cotton.tasks] == [steps[1]]


def test_the_mouth_of_a_pocket_under_strain_is_stayed_and_barred() -> None:
    """Where a tape lies among its layers, that stays it."""
    assert stands(ordered(CHORISTER), "stay the mouth of side pocket", "join side pocket")
    assert "which bars it" in does(CHORISTER, "run round side pocket bag")
    taped = CHORISTER.replace(
        "side pocket, layers: [cloth,", "side pocket, layers: [cloth, {notion: stay tape},"
    )
    assert "stay the mouth of side pocket" not in ordered(taped).tasks


def test_what_is_said_of_trousers_is_of_trousers() -> None:
    """No sleeve, no jacket, no skirt, and a curtain that is of something."""
    told = str(read(CHORISTER))
    for words in (
        "Where a sleeve is cut",
        "jacket or coat",
        "not to the skirt",
        "hangs from a waist",
    ):
        assert words not in told
    assert "of pocketing, along its middle" in does(CHORISTER, "face waistband")
    assert "pocketing" not in does(CHORISTER, "join waistband")
    folded = CHORISTER.replace(", method: band with a curtain", "")
    assert "cloth" in does(folded, "join waistband").split(": ")[-1]
    assert "hip pocket button" not in does(CHORISTER, "fit").split("mark anew")[0]


def test_a_cord_comes_out_of_its_holes_and_elastic_lies_beside_it() -> None:
    """The holes are worked before the channel is folded, and no button is sewn on through them."""
    found = ordered(SHORTS)
    assert stands(found, "work waist drawstring buttonholes", "fold waist casing")
    assert stands(found, "stitch waist casing", "draw the elastic through waist casing")
    assert stands(found, "draw the elastic through waist casing", "draw through waist casing")
    assert not any("sew the buttons" in step for step in found.order)
    assert sum("openings" in step or "work waist" in step for step in found.order) == 1
    bare = SHORTS.replace("{notion: woven elastic}, ", "")
    assert "draw the elastic through waist casing" not in ordered(bare).tasks
    assert (
        places(ordered(bare))["waist drawstring buttonholes"].method.id == "buttonholes-for-a-cord"
    )


def test_a_cuff_of_trousers_is_a_turn_up() -> None:
    """Hemmed on the inside, folded out on the face and caught; one of a sleeve is none."""
    for name in ("turned-back cuff", "leg cuff", "turn-up"):
        cuffed = CHORISTER.replace("name: hem,", f"name: {name},")
        assert stands(ordered(cuffed), f"fold out {name}", f"catch {name}")
    plain = ordered(CHORISTER)
    assert "turn-up-folded" != places(plain)["hem"].method.id


def test_a_waist_is_held_for_the_fitting_before_its_band_is_on() -> None:
    """Trousers and skirts hang from it, and nobody sees their fall while they slide."""
    assert "tie a tape round the waist" in does(CHORISTER, "fit")
    assert "round the waist" not in does(SHORTS, "fit")


def test_a_fork_is_stretched_and_not_clipped() -> None:
    """Whether much is said to pull at it or not; another curve is clipped before it is opened."""
    easy = CHORISTER.replace("shape: curved, stress: high, crosses", "shape: curved, crosses")
    curved = CHORISTER.replace("length: 105 cm, times", "length: 105 cm, shape: curved, times")
    assert "stretched and not clipped" in str(read(CHORISTER))
    assert "Clip or notch first" not in str(read(easy))
    assert "Clip or notch first" in str(read(curved))
