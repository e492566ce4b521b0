"""A knit top with a slit at the neck, a taped raincoat and a waxed jacket, as a cutter read them.

What is hung or closed stands before what runs over it, no iron comes over sealing tape, and each
row that lets rain in is sealed. All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.answer.gapwords import told_gaps
from advisor.answer.teller import Teller
from advisor.claims.collect import Place
from advisor.construction.bulk import picked
from advisor.decide.advise import advise
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, stands

TOP = """
garment: Top of a lock keeper
fitting: loosely
pattern: new
maker: {machine: household, overlocker: 4-thread}
fabrics:
  knit: {fabric: jersey, fibres: {wool: 100}, weight: 190 g/m2}
  cape: {fabric: poplin, fibres: {cotton: 100}, weight: 120 g/m2}
  rib: {fabric: rib knit, fibres: {wool: 96, elastane: 4}, weight: 280 g/m2}
seams:
  - {name: shoulder, layers: [cape, cape], length: 12 cm, times: 2}
  - {name: front yoke, layers: [cape, knit, cape], length: 38 cm, edge: turned}
  - {name: neck slit, layers: [cape, cape], length: 14 cm, edge: turned}
  - {name: neckband, layers: [cape, {use: rib, stretched: 1.15}], length: 44 cm, shape: curved}
  - {name: side, layers: [knit, knit], length: 42 cm, times: 2}
  - {name: armhole, layers: [knit, knit], length: 46 cm, shape: curved, times: 2, crosses: [side]}
  - {name: sleeve seam, layers: [knit, knit], length: 48 cm, times: 2}
  - {name: cuff, layers: [knit, {use: rib, stretched: 1.25}], length: 22 cm, times: 2}
  - {name: hem, layers: [knit], length: 104 cm, edge: hem}
  - {name: neck snaps, on: [cape, cape], fastening: snaps, number: 4}
"""
COAT = """
garment: Coat of a ferry hand
fitting: loosely
maker: {machine: household, feet: [standard, roller, zip]}
fabrics:
  shell: {fabric: showerproof cloth, fibres: {polyester: 100}, weight: 170 g/m2}
  warm: {fabric: fleece, fibres: {polyester: 100}, weight: 220 g/m2}
  slick: {fabric: lining, fibres: {nylon: 100}, weight: 65 g/m2}
parts:
  body: {layers: [warm, shell], separate: [warm]}
  sleeve: {layers: [slick, shell], separate: [slick]}
seams:
  - {name: welt pocket, layers: [shell, shell], length: 18 cm, shape: corner, times: 2, part: body}
  - {name: shoulder, layers: [shell, shell], length: 15 cm, times: 2, part: body}
  - {name: side, layers: [shell, shell], length: 58 cm, times: 2, part: body}
  - {name: sleeve seam, layers: [shell, shell], length: 46 cm, times: 2, part: sleeve}
  - {name: armhole, layers: [shell, shell], length: 54 cm, shape: curved, times: 2}
  - {name: collar to neck, layers: [shell, shell, warm], length: 50 cm, shape: curved}
  - {name: zip flap, layers: [shell, {notion: hook-and-loop tape}, shell], length: 74 cm,
     edge: turned, part: body}
  - {name: front zip, layers: [shell, {notion: open-ended zip}, shell], length: 74 cm, part: body}
  - {name: lining side, layers: [warm, warm], length: 54 cm, times: 2, part: body}
  - {name: lining shoulder, layers: [warm, warm], length: 14 cm, times: 2, part: body}
  - {name: lining sleeve seam, layers: [slick, slick], length: 44 cm, times: 2, part: sleeve}
  - {name: lining armhole, layers: [warm, slick], length: 52 cm, shape: curved, times: 2}
  - {name: facing to lining, layers: [shell, warm], length: 150 cm, shape: curved, part: body}
  - {name: sleeve hem, layers: [shell, slick], length: 30 cm, edge: hem, times: 2, part: sleeve}
  - {name: hem, layers: [shell, warm], length: 126 cm, edge: hem, part: body}
"""
WAXED = """
garment: Jacket of a hedger
fitting: loosely
maker: {machine: household}
fabrics:
  shell: {fabric: waxed cotton, weight: 250 g/m2}
  inner: {fabric: jersey, fibres: {cotton: 100}}
seams:
  - {name: storm flap, layers: [shell, {notion: set snap}, shell], length: 60 cm, edge: turned}
  - {name: side, layers: [shell, shell], length: 50 cm, times: 2}
  - {name: lining side, layers: [inner, inner], length: 50 cm, times: 2}
  - {name: front zip, layers: [shell, {notion: open-ended zip}, shell], length: 62 cm}
  - {name: front facing to lining, layers: [shell, inner], length: 150 cm, shape: curved}
"""
STAYED = """
garment: Dress of a bell ringer
fitting: to the body
maker: {machine: household}
fabrics:
  knit: {fabric: jersey, fibres: {viscose: 95, elastane: 5}, weight: 220 g/m2}
seams:
  - {name: shoulder, layers: [knit, knit], length: 11 cm, times: 2}
  - {name: side, layers: [knit, knit], length: 40 cm, times: 2}
  - {name: waist, layers: [knit, knit], length: 76 cm}
  - {name: armhole, layers: [knit, knit, {notion: clear elastic}], length: 44 cm, times: 2}
  - {name: sleeve seam, layers: [knit, knit], length: 40 cm, times: 2}
"""


def _changed(text: str, old: str, new: str) -> str:
    assert old in text
    return text.replace(old, new)


def _does(work: Work, step: str) -> str:
    return work.tasks[step].step.does


def _picked(text: str, place: str, aspect: str) -> str:
    found = advise(garment_of(parse_yaml(text, "p.yaml"), known()), known())
    return picked(found.judgement.verdicts[Place("seam", place)], aspect)


def _gaps(text: str) -> set[str]:
    teller = Teller(garment_of(parse_yaml(text, "p.yaml"), known()), known())
    return {gap.id for gap in told_gaps(teller)}


@pytest.mark.parametrize("crossed", ["[side]", "[side, sleeve seam]", "[front yoke]", "[]"])
def test_a_sleeve_goes_over_a_finished_shoulder_whatever_its_list_names(crossed: str) -> None:
    """A list is written for the plies; the armhole is a ring only once the shoulder is sewn."""
    found = ordered(_changed(TOP, "crosses: [side]", f"crosses: {crossed}"))
    assert found.cycles == ()
    assert stands(found, "join shoulder", "join armhole")


def test_a_sleeve_that_runs_over_its_side_is_set_in_the_round() -> None:
    """Side and sleeve are closed by then, so nothing is said of what still lies open."""
    found = ordered(TOP)
    assert stands(found, "join side", "join armhole")
    assert stands(found, "join sleeve seam", "join armhole")
    assert "still open" not in _does(found, "join armhole")
    flat = ordered(_changed(TOP, ", crosses: [side]", ""))
    assert stands(flat, "join armhole", "join side")
    assert "still open" in _does(flat, "join armhole")


def test_a_side_with_a_strip_let_in_is_no_one_run_with_the_sleeve() -> None:
    """Four rows run down two sides: none of them is the one that goes on into the sleeve."""
    found = ordered(
        _changed(_changed(TOP, ", crosses: [side]", ""), "42 cm, times: 2", "42 cm, times: 4")
    )
    assert "still open" not in _does(found, "join armhole")
    assert "run on into" not in _does(found, "join sleeve seam")


def test_a_neckband_ends_at_the_slit_that_opens_its_neck() -> None:
    """Only without a slit, or over a keyhole below it, its ends are joined to a ring."""
    assert "close the ends of neckband" in ordered(TOP).tasks
    whole = _changed(
        TOP, "  - {name: neck slit, layers: [cape, cape], length: 14 cm, edge: turned}\n", ""
    )
    assert "to a ring" in _does(ordered(whole), "make up neckband")
    keyhole = ordered(_changed(TOP, "name: neck slit", "name: keyhole"))
    assert "to a ring" in _does(keyhole, "make up neckband")


def test_the_slit_at_the_neck_is_made_in_its_flat_piece_before_the_fitting() -> None:
    """No head comes through the neck without it, so no fitting waits for it."""
    found = ordered(TOP)
    assert stands(found, "face neck slit", "slash neck slit", "turn neck slit", "join front yoke")
    assert stands(found, "turn neck slit", "fit")


def test_snaps_on_a_faced_slit_ask_for_an_underlap() -> None:
    """Its edges only meet; an underlap, or a placket of two bands, lies one over the other."""
    lap = "  - {name: slit underlap, layers: [cape, cape], length: 15 cm, edge: turned}\n"
    assert "slit-edges-only-meet" in _gaps(TOP)
    assert "slit-edges-only-meet" not in _gaps(TOP + lap)
    assert "slit-edges-only-meet" not in _gaps(
        _changed(TOP, "name: neck slit", "name: half placket")
    )


def test_no_iron_comes_over_a_seam_that_is_taped() -> None:
    """Taped seams are flattened cold, the loose cloth is pressed before, and a hem clear of it."""
    found = ordered(COAT)
    taped = [name for name in found.order if name.startswith("seal ")]
    assert "seal shoulder" in taped
    assert all(stands(found, "hot press shell", name) for name in taped)
    for seam in ("shoulder", "side", "sleeve seam", "armhole"):
        assert found.tasks[f"press {seam}"].step.iron is None
    assert "clear of the sealing tape" in _does(found, "press sleeve hem")


def test_it_is_said_how_the_tape_is_pressed_on() -> None:
    """Warm and dry, paper between, the iron lifted and never slid."""
    told = ordered(COAT).tasks["seal side"].step
    assert told.iron is not None
    assert told.iron.temperature_c <= 110
    assert "paper" in told.does
    assert "never slid" in told.does


@pytest.mark.parametrize("place", ["welt pocket", "front zip", "zip flap"])
def test_each_row_through_the_shell_is_sealed_before_the_lining_shuts_it_in(place: str) -> None:
    """The corners of a welt, the rows of a zip, and those of the tape on the front leak as well."""
    found = ordered(COAT)
    assert stands(found, f"seal {place}", "set facing to lining")
    dry = ordered(_changed(COAT, "showerproof cloth", "poplin"))
    assert f"seal {place}" not in dry.tasks


def test_the_tape_of_a_flap_is_stitched_to_single_layers_before_it_is_turned() -> None:
    """Sewn between its layers it would be shut in, and close nothing."""
    found = ordered(COAT)
    assert stands(found, "stitch the tape of zip flap", "join zip flap", "turn zip flap")
    assert "hook-and-loop" not in _does(found, "join zip flap")


def test_the_caps_of_snaps_go_through_the_finished_flap() -> None:
    """They hold all its layers; where a place of their own tells them nothing is told twice."""
    found = ordered(WAXED)
    assert stands(found, "turn storm flap", "set the caps of storm flap")
    assert "set snap" not in _does(found, "join storm flap")
    own = "  - {name: storm flap snaps, layers: [shell, shell, {notion: set snap}], times: 4}\n"
    assert "set the caps of storm flap" not in ordered(WAXED + own).tasks


def test_a_lining_set_to_the_facing_of_a_parted_front_is_finished_once() -> None:
    """The seam to the facing finishes its front; left to hang free it is turned under."""
    assert "finish the free opening at front zip" not in ordered(COAT).tasks
    free = _changed(COAT, "facing to lining, layers: [shell, warm]", "front edge, layers: [shell]")
    assert "finish the free opening at front zip" in ordered(free).tasks


def test_no_hand_stitch_holds_the_hem_of_a_coated_cloth_with_a_lining() -> None:
    """Each that catches the face leaks: one row holds it, and the lining is felled to that."""
    assert "catch nothing by hand" in _does(ordered(COAT), "sew hem")
    plain = ordered(_changed(COAT, "showerproof cloth", "poplin"))
    assert "catch it by hand" in _does(plain, "sew hem")


def test_the_head_of_a_lining_sleeve_is_not_stayed() -> None:
    """It has to ease; of a body that is a knit nothing is stay-stitched either."""
    assert not [name for name in ordered(COAT).order if name.startswith("stay-stitch")]
    woven = ordered(_changed(COAT, "fleece, fibres", "flannel, fibres"))
    told = next(_does(woven, name) for name in woven.order if name == "stay-stitch lining armhole")
    assert "slick" not in told


def test_waxed_cloth_joined_to_a_knit_is_sewn_straight() -> None:
    """The wax decides: a zigzag makes twice the holes. Two knits alone keep theirs."""
    assert _picked(WAXED, "front facing to lining", "stitch.type") == "301"
    assert _picked(WAXED, "lining side", "stitch.type") == "304"


def test_elastic_in_an_armhole_lies_under_no_iron_at_the_waist() -> None:
    """It is met only by what ends in its seam."""
    near = dict(ordered(STAYED).hot_near)
    assert "press waist" not in near
    assert "press side" in near
