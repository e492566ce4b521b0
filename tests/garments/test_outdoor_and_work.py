"""A waistcoat of canvas and goatskin, and rain tops of coated cloth, as their maker reads them.

What lies on a piece is sewn while that is flat, what keeps a hole is not sewn before the fitting,
and a sleeve that hangs from a raglan is tried on as a tube. All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.model.answer import Answer
from advisor.order.work import Work, order_of
from advisor.render.lines import phrase
from tests.garments.whole import FOLDER, decided, known, ordered, places, read, stands, told

FILE = FOLDER / "more" / "quarry_waistcoat.yaml"
RAIN = """
garment: Weir watcher's rain top
fitting: loosely
worn by: child
maker: {machine: household, foot lift: 6 mm, overlocker: no, feet: [standard, roller, zip]}
fabrics:
  coat: {fabric: showerproof cloth, fibres: {polyester: 100}, weight: 150 g/m2}
  patch: {fabric: ripstop, fibres: {nylon: 100}, weight: 90 g/m2}
  bag: {fabric: poplin, fibres: {polyester: 65, cotton: 35}}
seams:
  - {name: elbow patch, layers: [coat, patch], length: 40 cm, shape: corner, times: 2}
  - {name: side pocket, layers: [coat, bag], length: 40 cm, shape: curved, times: 2}
  - {name: raglan, layers: [coat, coat], length: 26 cm, shape: curved, times: 4}
  - {name: side and sleeve, layers: [coat, coat], length: 62 cm, times: 2, crosses: raglan}
  - {name: hood centre, layers: [coat, coat], length: 34 cm, shape: curved}
  - {name: hood to neck, layers: [coat, coat], length: 38 cm, shape: curved}
  - {name: front zip, layers: [coat, {notion: moulded zip}, coat], length: 48 cm}
  - {name: hem, layers: [coat], length: 92 cm, edge: hem}
"""
FOG = """
garment: Fog signal jacket
fitting: loosely
maker: {machine: household, overlocker: no}
fabrics:
  shell: {fabric: flannel, fibres: {cotton: 100}, weight: 200 g/m2}
seams:
  - {name: raglan, layers: [shell, shell], length: 30 cm, shape: curved, times: 4}
  - {name: sleeve seam, layers: [shell, shell], length: 44 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 44 cm, times: 2}
  - {name: front zip, layers: [shell, {notion: open-ended zip}, shell], length: 60 cm}
  - {name: hem, layers: [shell], length: 110 cm, edge: hem}
"""
APRON = """
garment: Ropewalk tool apron
pattern: new
maker: {machine: household, foot lift: 8 mm, overlocker: no, feet: [standard, walking]}
fabrics:
  waxed: {fabric: waxed cotton, weight: 300 g/m2}
  skin: {fabric: cowhide}
  lining: {fabric: drill, fibres: {cotton: 100}, weight: 240 g/m2}
seams:
  - {name: lower pocket, layers: [waxed, lining], length: 90 cm, shape: corner, times: 2}
  - {name: pocket binding, layers: [skin, lining], length: 30 cm, kind: bound edge}
  - {name: bib edge, layers: [waxed, lining], length: 90 cm, edge: turned}
  - {name: straps, layers: [skin, {notion: webbing}], length: 90 cm, times: 2}
  - {name: hem, layers: [waxed], length: 80 cm, edge: hem}
"""


@cache
def waistcoat() -> Work:
    return order_of(decided(FILE).advice, known())


@cache
def rain() -> Work:
    return ordered(RAIN)


@cache
def fog(more: str = "") -> Work:
    return ordered(FOG.replace("fitting: loosely", f"fitting: loosely\n{more}"))


def _sheet(place: str, aspect: str, answer: Answer) -> str:
    (found,) = [v.text for v in answer.verdicts if (v.place, v.aspect) == (place, aspect)]
    return found


@pytest.mark.parametrize("laid", ["stitch on shoulder patch", "box on tool loop"])
def test_what_lies_on_a_piece_goes_on_while_it_is_flat(laid: str) -> None:
    """A patch called after the shoulder is no shoulder seam, and a loop of webbing no side."""
    assert stands(waistcoat(), laid, "join shoulder")
    assert stands(waistcoat(), laid, "join side panel front")


def test_webbing_is_neither_overlocked_nor_opened() -> None:
    assert "neaten tool loop" not in waistcoat().tasks
    assert "in a box" in waistcoat().tasks["box on tool loop"].step.does


def test_canvas_is_pressed_hot_before_its_skin_is_on() -> None:
    for hot in ("press chest pocket", "press pocket in the side seam"):
        assert stands(waistcoat(), hot, "stitch on shoulder patch")


def test_a_skin_is_clipped_and_not_sewn_for_the_fitting() -> None:
    """Every hole in it stays, so that its side is sewn when it is known to fit."""
    found = waistcoat()
    assert stands(found, "clip side panel back", "fit", "join side panel back")
    assert "every hole beside the row stays" in found.tasks["clip side panel back"].step.does
    assert "baste side panel back" not in found.tasks


def test_no_knife_runs_along_a_skin() -> None:
    """Its rib asks for a stitch that gives, and an overlocker has two; a zigzag gives too."""
    assert "zigzag" in _sheet("side panel back", "stitch.type", told(FILE))


def test_a_front_zip_lies_in_no_seam_at_the_side() -> None:
    assert "stays open" not in waistcoat().tasks["join side panel front"].step.does


def test_a_mesh_that_stays_flat_takes_no_iron() -> None:
    assert _sheet("underarm gusset", "press.temperature", told(FILE)).startswith("no iron")


def test_no_time_under_the_iron_is_of_no_seconds() -> None:
    """A cable is never pressed on: that is said in words."""
    text = """
garment: Slipway cushion vest
fabrics:
  cable: {fabric: cable knit, fibres: {wool: 100}}
seams:
  - {name: side, layers: [cable, cable], length: 40 cm, times: 2}
"""
    (dwell,) = [v for v in read(text).verdicts if (v.place, v.aspect) == ("side", "press.dwell")]
    assert phrase(dwell) == "never left standing"


def test_a_patch_on_a_raincoat_is_sealed_on_the_flat_sleeve() -> None:
    """Rain comes in behind it, whatever seams the sides are said to cross."""
    assert stands(rain(), "stitch on elbow patch", "seal elbow patch", "join raglan")
    assert "sealed" in places(rain())["elbow patch"].method.says


def test_a_pocket_lies_in_the_side_and_not_in_the_raglan() -> None:
    """A list of the seams that a side crosses is for its plies, and says nothing of a pocket."""
    found = rain()
    lies = {
        after
        for after, reasons in found.reasons.items()
        for reason in reasons
        if reason.before == "pin up side pocket" and "two edges" in reason.why
    }
    assert {"clip side and sleeve"} == lies


def test_a_front_zip_waits_for_its_hood_and_that_for_the_fitting() -> None:
    assert stands(rain(), "fit", "join hood to neck", "baste front zip", "set front zip")


def test_a_zip_in_a_new_pattern_waits_for_the_fitting() -> None:
    """Its edges may still move; where the pattern is known it goes in while all is flat."""
    assert stands(fog("pattern: new"), "fit", "set front zip")
    assert stands(fog("pattern: tried"), "set front zip", "join side")


def test_a_raglan_is_tried_on_with_its_sleeve_a_tube() -> None:
    found = fog()
    tube = [step for step in found.order if step in ("baste sleeve seam", "join sleeve seam")]
    assert stands(found, tube[0], "fit")
    assert "sleeves in" not in found.tasks["fit"].step.does


def test_edges_that_a_zigzag_takes_as_one_are_of_one_width() -> None:
    found = fog()
    assert "neaten raglan" in found.tasks
    does = found.tasks["grade raglan"].step.does
    assert "to one width" in does
    assert "the widest lies" not in does


def test_no_step_pins_what_takes_no_pins() -> None:
    """A binding on a skin or on waxed cloth is clipped to its face, and so are bags of a pocket."""
    found = ordered(APRON)
    for step in ("stitch down pocket binding", "pin up lower pocket"):
        assert "lip " in found.tasks[step].step.does
        assert "in it from the face" not in found.tasks[step].step.does
        assert not found.tasks[step].step.does.startswith("Pin")


def test_no_wedge_cuts_the_webbing_of_a_strap() -> None:
    assert "leather" != _sheet("straps", "needle.point", read(APRON))
