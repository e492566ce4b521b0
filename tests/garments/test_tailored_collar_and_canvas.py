"""A tailored coat: its canvas, its collar at the lapels, its sleeves, and a machine with no zigzag.

All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from tests.garments.whole import ordered, places, read, stands

COAT = """garment: Ferry pilot's coat
fitting: to the body
maker: {machine: industrial, overlocker: no, feet: [standard, straight-stitch]}
fabrics:
  tweed: {fabric: tweed, fibres: {wool: 100}, weight: 380 g/m2}
  pile: {fabric: velvet, fibres: {cotton: 100}}
  melton: {fabric: wool coating, fibres: {wool: 100}, weight: 320 g/m2}
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: front princess seam, layers: [tweed, tweed], length: 58 cm, shape: curved,
     lined: yes, times: 2}
  - {name: side seam, layers: [tweed, tweed], length: 46 cm, lined: yes, times: 2}
  - {name: shoulder, layers: [tweed, {use: tweed, ease: 8 mm}], length: 13 cm, lined: yes, times: 2}
  - {name: front canvas, layers: [tweed, {notion: hair canvas}], length: 68 cm, times: 2}
  - {name: roll line, layers: [tweed, {notion: hair canvas}, {notion: stay tape}],
     length: 32 cm, times: 2}
  - {name: front facing, layers: [tweed, {notion: hair canvas}, tweed], length: 72 cm,
     edge: turned, times: 2}
  - {name: undercollar, layers: [melton, {notion: hair canvas}], length: 44 cm}
  - {name: collar edge, layers: [pile, {notion: hair canvas}, melton], length: 60 cm,
     shape: corner, edge: turned}
  - {name: collar seam, layers: [tweed, pile], length: 44 cm, shape: curved}
  - {name: flap pocket, layers: [tweed, lining], length: 15 cm, times: 2}
  - {name: sleeve seam, layers: [tweed, tweed], length: 44 cm, lined: yes, times: 4}
  - {name: sleeve vent, layers: [tweed, tweed], length: 10 cm, times: 2}
  - {name: armhole, layers: [tweed, {use: tweed, ease: 30 mm}], length: 46 cm, shape: curved,
     lined: yes, times: 2}
  - {name: shoulder pads, layers: [tweed, {notion: shoulder pad}], times: 2}
  - {name: sleeve hem, layers: [tweed, lining], length: 27 cm, edge: hem, times: 2}
  - {name: hem, layers: [tweed, lining], length: 112 cm, edge: hem}
  - {name: buttonholes, kind: fastening, fastening: buttonholes, on: tweed, number: 3,
     length: 24 mm}
  - {name: front buttons, layers: [tweed, {notion: horn button}], times: 3}
  - {name: cuff buttons, layers: [tweed, {notion: horn button}], times: 6}
"""
HOUSEHOLD = COAT.replace("industrial", "household")
TRIED = COAT.replace("fitting: to the body", "fitting: to the body\npattern: tried")
PADDED_IN_THE_EDGE = "\n".join(x for x in COAT.splitlines() if "undercollar" not in x)
SWIM = """garment: Lock keeper's swimming top
maker: {machine: industrial, overlocker: no}
fabrics:
  knit: {fabric: jersey, fibres: {cotton: 95, elastane: 5}}
seams:
  - {name: neck edging, layers: [knit, {notion: picot elastic}], length: 50 cm}
"""
SHEARLING = """garment: Ice cutter's coat
fabrics:
  melton: {fabric: wool coating, fibres: {wool: 100}, weight: 480 g/m2}
  skin: {fabric: shearling}
seams:
  - {name: under collar, layers: [melton, {notion: hair canvas}], length: 46 cm}
  - {name: collar edge, layers: [skin, melton], length: 64 cm, edge: turned}
  - {name: collar seam, layers: [melton, skin], length: 46 cm, shape: curved}
  - {name: front facing, layers: [melton, melton], length: 100 cm, edge: turned, times: 2}
  - {name: bound buttonholes, kind: fastening, fastening: buttonholes, on: melton, number: 4,
     length: 30 mm, method: bound buttonhole}
"""


def _does(text: str, step: str) -> str:
    return ordered(text).tasks[step].step.does


def test_no_stitch_is_told_that_the_machine_does_not_make() -> None:
    """An industrial lockstitch machine makes no zigzag: edges are overcast by hand."""
    found = ordered(COAT)
    stitches = {t.step.machine.stitch for t in found.tasks.values() if t.step.machine}
    assert stitches <= {"301", "301, long", "301, short"}
    assert "zigzag" not in " ".join(t.step.does for t in found.tasks.values())
    told = {v.place: v.text for v in read(COAT).verdicts if v.aspect == "seam.finish"}
    assert told["side seam"] == "hand overcast"


def test_the_same_edges_are_zigzagged_where_the_machine_does() -> None:
    """The rest of the coat being the same, a household machine zigzags them."""
    assert "(zigzag" in _does(HOUSEHOLD, "neaten side seam")
    assert "neaten its edge" in _does(HOUSEHOLD, "sew sleeve hem")


def test_a_hem_edge_is_overcast_where_no_machine_zigzags() -> None:
    """No plate for a straight stitch is set for an edge that is neatened."""
    step = ordered(COAT).tasks["sew sleeve hem"].step
    assert step.machine is None
    assert "overcast its edge by hand" in step.does


def test_elastic_is_sewn_on_by_hand_where_no_machine_zigzags() -> None:
    """A straight row would snap, so herringbone stitch takes its place."""
    step = ordered(SWIM).tasks["zigzag on neck edging"].step
    assert step.machine is None
    assert "herringbone" in step.does


def test_buttonholes_are_worked_by_hand_where_no_machine_makes_them() -> None:
    """A lockstitch machine makes none either."""
    assert places(ordered(COAT))["buttonholes"].method.id == "hand-worked-buttonhole"
    assert places(ordered(HOUSEHOLD))["buttonholes"].method.id != "hand-worked-buttonhole"


def test_a_front_is_tried_on_before_its_shaping_seam_is_sewn_under_canvas() -> None:
    """It is basted for that, sewn after it, and the canvas is padded over it then."""
    steps = (
        "baste front princess seam",
        "fit",
        "join front princess seam",
        "press front princess seam",
        "baste front canvas",
        "pad front canvas",
    )
    assert stands(ordered(COAT), *steps)
    assert "front princess seam" in _does(COAT, "fit").partition(" may still")[0]
    assert "lay the canvas of front canvas in" in _does(COAT, "fit")


def test_a_tried_pattern_has_its_front_sewn_and_canvassed_before_the_fitting() -> None:
    """Nothing of the seam moves any more, so that the front is tried on with its canvas in."""
    assert stands(ordered(TRIED), "join front princess seam", "baste front canvas", "fit")


def test_an_under_collar_is_padded_once() -> None:
    """Where it has a place of its own the edge of the collar pads it no second time."""
    steps = ("pad undercollar", "shape undercollar", "join collar edge")
    assert stands(ordered(COAT), *steps)
    assert "pad the undercollar of collar edge" not in ordered(COAT).order
    assert "pad the undercollar of collar edge" in ordered(PADDED_IN_THE_EDGE).order


def test_canvas_that_is_cut_out_of_the_allowances_is_in_no_row() -> None:
    """It is padded to its cloth; the rows join cloth to cloth."""
    for step in ("join collar edge", "join front facing"):
        assert "canvas" not in _does(COAT, step)
    assert "interface front facing" not in ordered(COAT).order


def test_a_tailored_collar_is_set_between_turned_lapels() -> None:
    """The notch is left between the collar and the facings, which are turned before."""
    steps = (
        "turn front facing",
        "join collar seam",
        "join the gorge of collar seam",
        "close collar seam",
    )
    assert stands(ordered(COAT), *steps)
    assert "notch" in _does(COAT, "join collar seam")


def test_no_iron_rests_on_a_turned_edge_of_pile() -> None:
    """Its edge is opened with the fingers and steamed."""
    told = {v.place: v.text for v in read(COAT).verdicts if v.aspect == "press.motion"}
    assert told["collar edge"] in ("finger-press", "hover with steam")


def test_a_tape_of_unknown_fibre_is_taken_of_cotton() -> None:
    """It lies in the front for good, under an iron that cotton bears."""
    said = " ".join(one.text for one in read(COAT).instructions)
    assert "Take stay tape of cotton" in said
    cotton = COAT.replace("notion: stay tape", "notion: cotton stay tape")
    assert "Take cotton" not in " ".join(one.text for one in read(cotton).instructions)


def test_a_vented_sleeve_is_hemmed_while_it_is_loose() -> None:
    """Vent and hem turn in one corner, and nobody gets at that once the sleeve hangs."""
    assert stands(ordered(COAT), "fit", "sew sleeve hem", "ease armhole", "join armhole")


@pytest.mark.parametrize("ease", ["8 mm", "5 mm"])
def test_the_ease_of_a_shoulder_is_drawn_up_where_it_is_joined(ease: str) -> None:
    """The sheet says how much longer one edge is cut, so the order says how it goes in."""
    text = COAT.replace("ease: 8 mm", f"ease: {ease}")
    assert f"{ease} of ease" in _does(text, "join shoulder")
    assert "ease" not in _does(text, "join side seam")


def test_a_flap_pocket_is_slashed_unless_it_lies_in_a_side() -> None:
    """Its flap covers a slit; crossing a side seam it opens in that."""
    assert "slash flap pocket" in ordered(COAT).order
    side = COAT.replace("length: 15 cm, times: 2}", "length: 15 cm, times: 2, crosses: side seam}")
    assert "slash flap pocket" not in ordered(side).order


def test_an_under_collar_is_a_canvas_in_one_word_or_two() -> None:
    """It is padded and shaped with steam before a skin is joined to it, and set by nothing."""
    found = ordered(SHEARLING)
    assert places(found)["under collar"].kind.id == "canvas"
    assert stands(found, "pad under collar", "shape under collar", "join collar edge")


def test_buttonholes_of_a_front_are_pressed_as_the_front_is() -> None:
    """A skin at the collar lies under no iron of theirs."""
    told = {v.place: v for v in read(SHEARLING).verdicts if v.aspect == "press.temperature"}
    high = told["bound buttonholes"].high
    assert isinstance(high, float)
    assert high > 110


def test_buttons_of_a_cuff_are_another_lot_than_those_of_the_front() -> None:
    """They are smaller, and each lot has its own spare; worked holes need their twist."""
    kit = read(COAT).kit or ()
    rows = {row.for_: row.number for row in kit if row.item.startswith("horn button")}
    assert rows == {("front buttons",): 3, ("cuff buttons",): 6}
    assert any(row.item.startswith("buttonhole twist") for row in kit)
