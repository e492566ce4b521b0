"""What a tailor found out of order when she sewed from the checklist, and must not come back.

A waistcoat turned through its side, a zipped fleece, a boned gown, dungarees and a slip. All is
common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.order.work import Work
from tests.garments.whole import FOLDER, changed, ordered, places, stands, work

WAISTCOAT, FLEECE, GOWN = "more/ringers_waistcoat", "more/crew_fleece", "more/boned_satin"
DUNGAREES, SLIP = "more/bib_dungarees", "more/slip_on_straps"


def _reasons(found: Work) -> str:
    return " ".join(item.why for items in found.reasons.values() for item in items)


@pytest.mark.parametrize("garment", [WAISTCOAT, FLEECE, GOWN, DUNGAREES, SLIP])
def test_nothing_chases_itself(garment: str) -> None:
    """Every order can be kept."""
    assert work(garment).cycles == ()


def test_what_is_left_open_is_turned_through_and_closed() -> None:
    """Once all that joins shell and lining is sewn, and before buttonholes are worked."""
    found = work(WAISTCOAT)
    turned, closed = "turn through side", "close the opening of side"
    assert stands(found, "join side", "set facing to lining", "press hem", turned, closed)
    assert stands(found, "turn armhole edge", turned, closed, "make buttonholes", "last press")


def test_a_gap_in_the_seam_of_the_lining_is_closed_as_well() -> None:
    """Whatever place it is left in, and by whatever method that is sewn."""
    old = "{name: facing to lining, layers: [tweed, lining], length: 55 cm, times: 2}"
    found = changed(WAISTCOAT, old, old.replace("times: 2", "left open: 12 cm"))
    step = found.tasks["set facing to lining"].step.does
    assert "leave 12 cm of it open to turn through" in step
    assert sum(step.startswith("turn through") and "strap" not in step for step in found.order) == 1
    turned = "turn through facing to lining"
    assert stands(found, "set facing to lining", turned, "close the opening of facing to lining")
    assert stands(found, turned, "close the opening of side")


def test_a_bagged_lining_is_turned_once() -> None:
    """The bagging turns through the gap of the lining's side, and closes it."""
    found = ordered("""
garment: Sample
fabrics: {wool: {fabric: wool gabardine}, lining: {fabric: viscose lining}}
seams:
  - {name: side, layers: [wool, wool], length: 50 cm}
  - {name: lining side, layers: [lining, lining], length: 50 cm, left open: 15 cm}
  - {name: bag the lining, layers: [wool, lining], length: 200 cm}
""")
    assert sum(step.startswith("turn through") for step in found.order) == 1
    assert sum(step.startswith("close the opening") for step in found.order) == 1


def test_pockets_are_cut_before_the_canvas_lies_behind_them() -> None:
    """Nobody slashes a padded front."""
    steps = ("slash welt pocket", "close welt pocket", "baste front canvas", "pad front canvas")
    assert stands(work(WAISTCOAT), *steps)


def test_a_dart_of_thick_cloth_is_cut_open_and_of_thin_cloth_is_not() -> None:
    """Two plies of tweed to one side stand out as a ridge."""
    found = work(WAISTCOAT)
    steps = ("fit", "stitch front dart", "cut open front dart", "press front dart")
    assert stands(found, "baste front dart", *steps)
    thin = changed(
        WAISTCOAT,
        "fabric: tweed, fibres: {wool: 100}, weight: 340",
        "fabric: wool crepe, weight: 200",
    )
    assert "cut open front dart" not in thin.order


def test_the_strap_of_a_waistcoat_is_caught_in_its_side() -> None:
    """It is no shoulder strap, whose ends wait for the fitting."""
    found = work(WAISTCOAT)
    assert stands(found, "turn through back strap", "lay on back strap", "join side")
    assert "sew in the ends of back strap" not in found.order


def test_a_slashed_pocket_and_a_trimmed_seam_are_no_place_to_stop() -> None:
    """The cut edge frays until it is turned or felled."""
    assert "slash welt pocket" not in work(WAISTCOAT).stops()
    assert "trim inside leg" not in work(DUNGAREES).stops()
    assert "fold inside leg" not in work(DUNGAREES).stops()
    assert "fell inside leg" in work(DUNGAREES).stops()


def test_a_zip_of_a_pocket_is_set_in_the_flat_front() -> None:
    """It neither fits the garment nor opens it, and its bag is closed behind it."""
    found = work(FLEECE)
    assert places(found)["pocket zip"].role.id == "pocket-zip"
    assert stands(found, "slash pocket zip", "set pocket zip", "close pocket bag")
    assert stands(found, "close pocket bag", "baste side and sleeve", "fit")
    assert "Pocket zip crosses" not in _reasons(found)
    assert not any("pocket zip" in told for told in found.taken if "fitted" in told)


def test_a_pocket_zip_in_a_seam_is_not_slashed() -> None:
    """Its opening is the seam."""
    found = changed(FLEECE, "name: pocket zip", "name: side seam pocket zip")
    assert "slash side seam pocket zip" not in found.order
    assert stands(found, "set side seam pocket zip", "close pocket bag")


def test_what_a_basted_seam_crosses_is_basted_too() -> None:
    """Side and sleeve in one cannot be tried on while the sleeve is not in."""
    found = work(FLEECE)
    assert stands(found, "baste armhole", "baste side and sleeve", "fit", "join armhole")
    assert "armhole" in found.tasks["fit"].step.does


def test_the_zip_goes_in_before_the_collar_is_closed_over_it() -> None:
    """Its upper ends lie between the layers of the collar, its lower ones at the rib."""
    found = work(FLEECE)
    assert stands(found, "join collar", "press waist rib", "baste front zip", "set front zip")
    assert stands(found, "set front zip", "close collar")


@pytest.mark.parametrize("rib", ["hem rib", "bottom band", "lower welt"])
def test_a_zip_is_matched_at_whatever_band_it_ends_at(rib: str) -> None:
    """The rib of the lower edge is sewn before both halves are clipped to the front."""
    found = changed(FLEECE, "name: waist rib", f"name: {rib}")
    assert stands(found, f"press {rib}", "baste front zip", "set front zip")


def test_no_hem_is_told_below_the_rib_of_a_waist() -> None:
    """The rib is the lower edge."""
    assert not any(task.op in ("hem", "hem-edge", "hang") for task in work(FLEECE).tasks.values())


def test_reasons_are_told_of_what_is_there() -> None:
    """No pleats where none are laid, no flap where none is made."""
    assert "pleats" not in _reasons(work(FLEECE))
    assert not any("flap" in task.step.does for task in work(FLEECE).tasks.values())
    flap = "  - {name: zip flap, layers: [fleece, yoke], length: 65 cm, edge: turned}\n"
    found = changed(FLEECE, "  - {name: front zip", f"{flap}  - {{name: front zip")
    assert stands(found, "turn zip flap", "baste the flap at front zip", "set front zip")


def test_a_stay_that_the_sheet_advises_is_laid() -> None:
    """A thin woven on a fleece, a heavy waist: what is bought for it has a step."""
    assert stands(work(FLEECE), "stay back yoke", "join back yoke")
    assert stands(work(GOWN), "roll bodice mounting", "stay waist", "join waist")
    assert "stay shoulder" not in work(FLEECE).order


def test_a_seam_that_shapes_a_bodice_may_be_changed_at_the_fitting() -> None:
    """It is named there; under bones it is sewn, neatened before: no knife comes beside a bone."""
    found = work(GOWN)
    assert "bodice princess" in found.tasks["fit"].step.does
    assert stands(found, "neaten bodice princess", "join bodice princess", "fit")


def test_without_bones_it_is_basted_where_needle_holes_stay() -> None:
    """Satin shows every row that was taken out; and with no bone beside them its edges wait."""
    bones = "  - {name: bones, layers: [mount, {notion: boning}], length: 24 cm, times: 8}\n"
    found = changed(GOWN, bones, "")
    assert stands(found, "baste bodice princess", "fit", "join bodice princess")
    assert stands(found, "fit", "neaten bodice princess")


def test_behind_canvas_a_panel_seam_is_tried_on_and_finished_first() -> None:
    """A pattern that is not tried shapes the front there; once it is padded nobody comes to it."""
    panel = "  - {name: front princess, layers: [tweed, tweed], length: 40 cm, shape: curved}\n"
    dart = "  - {name: front dart, layers: [tweed], length: 22 cm, times: 2}\n"
    found = changed(WAISTCOAT, dart, panel)
    assert "front princess" in found.tasks["fit"].step.does
    steps = ("baste front princess", "fit", "join front princess", "neaten front princess")
    assert stands(found, *steps, "baste front canvas")


def test_bones_are_tried_on_and_shut_in_afterwards() -> None:
    """They are found too long at the fitting, and drawn out of the way of the iron."""
    found = work(GOWN)
    assert stands(
        found, "insert bones in bones", "fit", "press waist", "close bones", "join top edge"
    )


def test_a_lining_is_felled_to_the_zip_when_it_hangs_from_its_edge() -> None:
    """Before that there is nothing to fell."""
    assert stands(work(GOWN), "turn top edge", "fell the lining to back zip", "sew skirt hem")


def test_the_felled_seam_of_a_leg_is_sewn_while_the_leg_is_open() -> None:
    """No row reaches round inside a tube, whichever of the two seams is felled."""
    found = work(DUNGAREES)
    assert stands(found, "baste outside leg", "fit", "fell inside leg", "join outside leg")
    other = _swapped()
    assert stands(other, "baste inside leg", "fit", "fell outside leg", "join inside leg")


def _swapped() -> Work:
    """The dungarees with the outside leg felled and the inside leg plain."""
    text = (FOLDER / f"{DUNGAREES}.yaml").read_text(encoding="utf-8")
    text = text.replace("76 cm, seam: felled", "76 cm, seam: plain")
    return ordered(text.replace("84 cm, times: 2", "84 cm, seam: felled, times: 2"))


def test_two_plain_seams_of_a_leg_are_tried_on_sewn() -> None:
    """Nothing is basted for a felling that is not there."""
    found = changed(DUNGAREES, "76 cm, seam: felled", "76 cm, seam: plain")
    assert "baste outside leg" not in found.order


def test_elastic_in_a_band_is_drawn_in_when_the_pressing_above_the_hem_is_done() -> None:
    """It is no plain seam, and no iron of the cord comes over it."""
    found = work(DUNGAREES)
    assert places(found)["back elastic"].kind.id == "casing"
    steps = ("press inside leg", "press waistband", "draw through back elastic", "sew hem")
    assert stands(found, *steps)


def test_sliders_are_threaded_before_strap_ends_are_caught_in_the_edges() -> None:
    """A slider has no prong, and goes on while an end is free; a facing is sewn over the ends."""
    found = work(SLIP)
    assert stands(found, "turn through straps", "thread strap sliders", "sew in the ends of straps")
    assert stands(found, "zigzag again top edge", "sew in the ends of straps")
    assert stands(found, "fit", "sew in the ends of straps", "join back edge facing")
    assert "prong" not in found.tasks["thread strap sliders"].step.does


def test_neck_and_armholes_named_as_one_seam_of_the_lining_are_turned_with_open_sides() -> None:
    """Closed sides would hold what is drawn through the shoulders."""
    found = work("more/bias_gown")
    whole = "neck and armhole to lining"
    assert stands(found, "join shoulder", f"set {whole}", f"turn {whole}", "join bodice side")
