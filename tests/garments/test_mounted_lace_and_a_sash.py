"""A lace top over its crepe with a bias skirt, and a child's frock with a sash.

Every claim is common practice of the trade, unless a source stands beside it.
"""

from __future__ import annotations

import pytest

from advisor.answer.label import Asked
from advisor.answer.pipeline import Parts, answer
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, read, stands

PIER = """
garment: Pier pavilion two-piece
units: metric
fitting: to the body
pattern: new
maker: {machine: household, foot lift: 6 mm}
fabrics:
  lace: {fabric: corded lace, fibres: {cotton: 60, nylon: 40}, weight: 180 g/m2, width: 130 cm}
  cady: {fabric: crepe, fibres: {viscose: 100}, weight: 160 g/m2, width: 140 cm}
  veil: {fabric: tulle, fibres: {nylon: 100}, weight: 22 g/m2, width: 150 cm}
  sateen: {fabric: satin, fibres: {acetate: 100}, weight: 140 g/m2, width: 140 cm}
parts:
  top: {layers: [cady, lace], fitting: to the body}
  sleeves: {layers: [veil], fitting: loosely}
  skirt: {layers: [sateen], fitting: to the body}
seams:
  - {name: top mount, layers: [lace, cady], kind: underlining, part: top}
  - {name: shoulder, layers: [lace, cady, cady, lace], length: 11 cm, times: 2, part: top}
  - {name: top side, layers: [lace, cady, cady, lace], length: 28 cm, times: 2, part: top}
  - {name: sleeve underarm, layers: [veil, veil], length: 40 cm, times: 2, part: sleeves}
  - {name: wrist binding, layers: [{use: veil, fullness: 1.4}, sateen], kind: bound edge,
      edge: bound, length: 20 cm, times: 2, part: sleeves}
  - {name: armhole, layers: [lace, cady, veil], length: 42 cm, shape: curved, times: 2, part: top}
  - {name: loops of the back, layers: [lace, cady], kind: buttonhole,
      method: button loops caught in the edge, number: 9,
      part: top}
  - {name: back facing, layers: [lace, cady, cady], edge: turned, length: 34 cm,
      times: 2, part: top}
  - {name: buttons of the back, layers: [lace, cady, {notion: covered button}], times: 9, part: top}
  - {name: lower edge of the lace, layers: [lace, cady], edge: hem, length: 90 cm, part: top}
  - {name: skirt side, layers: [sateen, sateen], length: 80 cm, bias: yes, times: 2, part: skirt}
  - {name: side zip, layers: [sateen, {notion: concealed zip}], length: 20 cm, bias: yes,
      part: skirt}
  - {name: skirt waist petersham, layers: [sateen, {notion: petersham}], length: 70 cm, part: skirt}
pieces:
  - {name: top front, fabric: lace, width: 50 cm, height: 46 cm}
  - {name: cady front, fabric: cady, width: 50 cm, height: 46 cm}
  - {name: sleeve, fabric: veil, width: 44 cm, height: 56 cm, number: 2}
  - {name: skirt panel, fabric: sateen, width: 64 cm, height: 84 cm, number: 2, grain: bias}
"""
FROCK = """
garment: Bandstand frock of a small child
units: metric
fitting: loosely
worn by: child
pattern: tried
fabrics:
  voile: {fabric: organza, fibres: {silk: 100}, weight: 30 g/m2, width: 110 cm}
  lawn: {fabric: lawn, fibres: {cotton: 100}, weight: 75 g/m2, width: 140 cm}
  mesh: {fabric: net, fibres: {nylon: 100}, weight: 40 g/m2, width: 140 cm}
  bow: {notion: satin ribbon, fibres: {polyester: 100}}
seams:
  - {name: bodice tucks, layers: [voile], kind: tuck, length: 16 cm, times: 10}
  - {name: bodice mount, layers: [voile, lawn], kind: underlining}
  - {name: shoulder, layers: [voile, lawn, lawn, voile], length: 6 cm, times: 2}
  - {name: bodice side, layers: [voile, lawn, lawn, voile], length: 13 cm, times: 2}
  - {name: back placket, layers: [voile, lawn], kind: placket, length: 30 cm}
  - {name: back buttons, layers: [voile, lawn, {notion: shell button}], kind: button,
      method: button with its loop, times: 4}
  - {name: petticoat row, layers: [lawn, {use: mesh, fullness: 3}], length: 80 cm}
  - {name: waist, layers: [voile, lawn, {use: voile, fullness: 2}, {use: lawn, fullness: 1.6}],
      length: 54 cm}
  - {name: sash ends, layers: [voile, lawn, bow], fastening: strap or ties, length: 60 cm, times: 2}
  - {name: skirt hem, layers: [voile], edge: hem, length: 108 cm, method: wide double hem}
pieces:
  - {name: underskirt, fabric: lawn, finished width: 54 cm, finished height: 44 cm, fullness: 1.6}
  - {name: bodice front, fabric: voile, width: 34 cm, height: 22 cm,
      tucks: {depth: 3 mm, number: 10, spacing: 10 mm}}
  - {name: bodice back, fabric: voile, width: 17 cm, height: 22 cm, number: 2}
  - {name: skirt, fabric: voile, finished width: 54 cm, finished height: 44 cm,
      fullness: 2, hem: 6 cm}
"""


def picked(text: str, place: str, aspect: str) -> object:
    verdicts = (v for v in read(text).verdicts if (v.place, v.aspect) == (place, aspect))
    return next(verdicts).pick


def checks(text: str) -> dict[str, str]:
    return {f"{c.place}: {c.id}": c.text for c in read(text).checks or ()}


@pytest.mark.parametrize("place", ["shoulder", "top side"])
def test_mounted_lace_is_sewn_as_one_with_its_cloth(place: str) -> None:
    """A lapped seam would leave the cut edge of the crepe bare beside the motifs."""
    assert picked(PIER, place, "seam.kind") == "plain"
    assert picked(PIER, place, "stitch.type") == "301"
    assert not [step for step in ordered(PIER).order if step.startswith("cut away")]
    assert f"neaten {place}" in ordered(PIER).order


def test_lace_alone_is_still_lapped() -> None:
    """The near miss: without a cloth in the seam its motifs hide it."""
    text = PIER.replace(
        "layers: [lace, cady, cady, lace], length: 11", "layers: [lace, lace], length: 11"
    )
    assert picked(text, "shoulder", "seam.kind") == "lapped"


def test_net_is_not_lapped_down_a_sleeve() -> None:
    """It has no motifs: two rows close together, trimmed, in the order as on the sheet."""
    assert picked(PIER, "sleeve underarm", "seam.kind") == "double-stitched"
    assert picked(PIER, "sleeve underarm", "seam.finish") == "trimmed and double-stitched"
    assert stands(ordered(PIER), "join sleeve underarm", "trim sleeve underarm")


def test_lace_hangs_over_the_hem_of_its_mount() -> None:
    """Nothing is cut away behind: there the crepe is the inside of the garment."""
    found = ordered(PIER)
    assert stands(found, "sew lower edge of the lace", "trim the lace at lower edge of the lace")
    assert "cut away behind lower edge of the lace" not in found.order
    bare = ordered(
        PIER.replace("kind: underlining, part: top", "kind: pleat, length: 9 cm, part: top")
    )
    assert "cut away behind lower edge of the lace" in bare.order


def test_a_waist_is_faced_with_its_ribbon_when_the_zip_is_in() -> None:
    """Its ends lie over the tape, so zip and sides come first, and a hook closes it."""
    found = ordered(PIER)
    last = "turn and catch skirt waist petersham"
    assert stands(found, "set side zip", "join skirt side", "join skirt waist petersham", last)
    assert stands(found, "stay-stitch skirt waist petersham", "baste skirt side")
    assert places(found)["skirt waist petersham"].kind.id == "waistband"
    above = PIER.replace("skirt waist petersham, layers", "waist stay, layers")
    assert places(ordered(above))["waist stay"].kind.id == "stay-tape"


def test_what_a_strip_binds_is_drawn_up_first() -> None:
    """The sheet says how full the end is, so the order draws it up; no other fullness is urged."""
    found = ordered(PIER)
    assert stands(found, "gather wrist binding", "draw up wrist binding", "join wrist binding")
    told = [line.text for line in read(PIER).advice if "3 to 4 times" in line.text]
    assert not told


def test_two_garments_have_two_labels() -> None:
    """Nothing joins skirt and top; a strip of the skirt's cloth at the wrist does not."""
    told = labelled(PIER)
    assert "2 garments, skirt of sateen; the rest of lace, cady, veil, sateen" in told
    joined = PIER.replace(
        "name: skirt waist petersham, layers: [sateen,", "name: waist, layers: [cady, sateen,"
    )
    assert "garments" not in labelled(joined).split(":")[0]


def test_a_shoulder_does_not_carry_the_skirt_of_another_garment() -> None:
    """Worn apart, the skirt hangs from its own waist."""
    weight = read(PIER).weight
    assert weight is not None
    carried = {hang.place: hang.mass_g for hang in weight.hangs}
    whole = (weight.low_g + weight.high_g) / 2
    assert carried["shoulder"] == pytest.approx(whole - carried["skirt waist petersham"], abs=1.0)


def labelled(text: str) -> str:
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    label = answer(garment, known(), Parts(label=Asked("eu", "metric", frozenset()))).label
    assert label is not None
    return label.rules[0].text


def test_a_zip_on_the_bias_has_one_support() -> None:
    """The strip on the straight grain; no interfacing is bought beside it."""
    assert picked(PIER, "side zip", "seam.support") == "self-fabric strip"


@pytest.mark.parametrize("text", [PIER, FROCK])
def test_buttons_through_loops_ask_for_no_buttonhole(text: str) -> None:
    """Neither a hole to measure nor a gap to fill: the loops are there."""
    assert not [line for line in read(text).advice if "Lay a ribbon round" in line.text]
    assert not [gap for gap in read(text).missing or () if gap.place == "back buttons"]
    holes = PIER.replace("method: button loops caught in the edge, ", "")
    holes = holes.replace("loops of", "holes of")
    assert [line for line in read(holes).advice if "Lay a ribbon round" in line.text]


def test_both_turns_of_a_double_hem_are_cut() -> None:
    """6 cm turned up twice take 12 cm; a hem that is said as both is left as it is."""
    assert cut_height(FROCK) == cut_height(FROCK.replace("hem: 6 cm", "hem: 12 cm"))
    assert "turned up twice" in checks(FROCK)["skirt hem: hem twice"]
    assert "skirt hem: hem twice" not in checks(FROCK.replace("hem: 6 cm", "hem: 12 cm"))


def cut_height(text: str) -> float:
    return next(cut.height_mm for cut in read(text).cut or () if cut.name == "skirt")


def test_tucks_that_are_said_twice_are_stitched_once() -> None:
    """The piece has their depth and number, the place their name; they are pressed at the place."""
    found = ordered(FROCK)
    assert "tuck bodice tucks" not in found.order
    assert stands(found, "tuck bodice front", "press bodice tucks")
    others = FROCK.replace("name: bodice tucks", "name: sleeve tucks").replace(
        "times: 10", "times: 4"
    )
    assert "tuck sleeve tucks" in ordered(others).order


def test_loops_lie_in_the_placket_before_it_is_bound() -> None:
    """Their ends are in the allowance that the strip covers."""
    assert stands(ordered(FROCK), "baste the loop of back buttons", "bind back placket")


def test_a_slit_longer_than_its_piece_is_asked_about() -> None:
    """30 cm in a back of 22 cm run on through the waist."""
    assert "runs on through the seam" in checks(FROCK)["back placket: slit"]
    assert "back placket: slit" not in checks(FROCK.replace("length: 30 cm", "length: 20 cm"))


def test_the_ends_of_a_sash_are_short_on_a_child() -> None:
    """Source: trade-child-belts, 36 cm for a child of any age."""

    def told(text: str) -> list[str]:
        return [c.text for c in read(text).cautions if "36 cm" in c.text]

    assert len(told(FROCK)) == 2
    assert len(told(FROCK.replace("length: 60 cm", "length: 30 cm"))) == 1
    assert not told(FROCK.replace("worn by: child", "worn by: adult"))


def test_stiff_net_is_bound_on_a_child() -> None:
    """Its cut bars scratch; on an adult the edge may stay as the cloth has it."""
    assert picked(FROCK, "petticoat row", "seam.finish") == "bound"
    grown = FROCK.replace("worn by: child", "worn by: adult")
    assert picked(grown, "petticoat row", "seam.finish") != "bound"


def test_a_light_skirt_is_not_heavy_for_its_bodice() -> None:
    """A few metres of a cloth's own weight are what any cloth carries."""
    weight = read(FROCK).weight
    assert weight is not None
    assert [hang.heavy for hang in weight.hangs if hang.place == "waist"] == [False]
