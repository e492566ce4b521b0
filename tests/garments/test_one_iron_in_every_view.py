"""One iron for one press: what order, sheet and iron print of it, and what lies under it bears."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.model.order import ToldStep
from tests.garments.whole import FILES, read, told

CHOIR = """
garment: Choir cape
fabrics:
  pile: {fabric: velvet, fibres: {cotton: 100}}
  loose: {notion: basting thread}
seams:
  - {name: shoulder, layers: [pile, pile], length: 14 cm}
  - {name: cape hem, layers: [pile], length: 240 cm, edge: hem}
"""
SATCHEL = """
garment: Post rider's tunic
fitting: to the body
fabrics:
  drill: {fabric: cotton drill, fibres: {cotton: 100}, weight: 230 g/m2}
  shine: {fabric: satin, fibres: {acetate: 100}}
  glue: {notion: woven fusible interfacing}
  lace: {notion: drawcord}
seams:
  - {name: side, layers: [drill, drill], length: 60 cm, times: 2}
  - name: shawl collar edge
    layers: [drill, glue, shine]
    length: 84 cm
    shape: curved
    edge: turned
    fused first: [glue]
  - {name: hem channel, kind: casing, layers: [drill, lace], length: 110 cm}
"""
MANTLE = """
garment: Toll collector's mantle
fabrics:
  cloth: {fabric: wool flannel, fibres: {wool: 100}, weight: 300 g/m2}
  inner: {fabric: lining, fibres: {viscose: 100}, weight: 90 g/m2}
seams:
  - {name: side, layers: [cloth, cloth], length: 80 cm, times: 2}
  - {name: lining side, layers: [inner, inner], length: 78 cm, times: 2}
  - {name: hem, layers: [cloth, inner], length: 140 cm, edge: hem}
"""
PRESSED = ("press", "turn", "fuse")
"""What is pressed at a place as the sheet says of it; a channel is folded before its cord is in."""


def steps(answer: Answer) -> tuple[ToldStep, ...]:
    """The order of work."""
    assert answer.work is not None
    return answer.work.order


def ironed(answer: Answer) -> list[ToldStep]:
    """The steps at a place that an iron is set for."""
    return [step for step in steps(answer) if step.iron and step.operation in PRESSED]


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.stem)
def test_an_iron_starts_no_hotter_than_it_may_be(path: Path) -> None:
    """A law of every garment: no press begins above its own bound."""
    for step in steps(told(path)):
        if step.iron and step.iron.at_most_c is not None:
            assert step.iron.temperature_c <= step.iron.at_most_c, step.step


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.stem)
def test_order_sheet_and_iron_start_alike(path: Path) -> None:
    """A law of every garment: one degree to start a press from, and one moisture."""
    answer = told(path)
    irons = {one.place: one for one in answer.irons if one.scope == "seam"}
    moist = {v.place: v.text for v in answer.verdicts if v.aspect == "press.moisture"}
    for step in ironed(answer):
        place, iron = step.on[0], step.iron
        if step.operation == "fuse" or iron is None:
            continue
        assert round(irons[place].start_c) == iron.temperature_c, step.step
        assert moist.get(place, iron.moisture) == iron.moisture, step.step


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.stem)
def test_no_press_is_hotter_than_what_lies_under_it_bears(path: Path) -> None:
    """A law of every garment: every layer of a place bears the iron that the order sets there."""
    answer = told(path)
    bears = {row.place: row.layers for row in answer.iron or () if row.scope == "seam"}
    for step in ironed(answer):
        for layer in bears.get(step.on[0], ()) if step.operation != "fuse" else ():
            if step.iron is not None:
                assert step.iron.temperature_c <= layer.limit_c, f"{step.step}: {layer.name}"


def test_a_thread_is_not_the_cloth_that_is_pressed_at_last() -> None:
    """Where nothing but a velvet is there, it is hung up, and no iron is set for its thread."""
    answer = read(CHOIR)
    (last,) = (step for step in steps(answer) if step.operation == "last-press")
    assert last.iron is None
    assert "rest" not in last.does
    assert not [one for one in answer.irons if one.scope == "garment" and one.mark]


def test_a_flat_piece_is_fused_as_hot_as_it_and_its_glue_bear() -> None:
    """What is joined to it afterwards has no say yet, and no start lies above the bound."""
    (fuse,) = (step for step in steps(read(SATCHEL)) if step.operation == "fuse")
    assert fuse.iron is not None
    assert (fuse.iron.temperature_c, fuse.iron.at_most_c) == (130, 150)


def test_a_channel_that_is_pressed_empty_has_its_iron_in_every_view() -> None:
    """The degrees of the order stand beside those that the cord bears."""
    answer = read(SATCHEL)
    (fold,) = (step for step in steps(answer) if step.operation == "fold-under")
    (told_so,) = (i for i in answer.instructions if i.kind == "part" and "lace" in i.tender)
    assert fold.iron is not None
    assert f"{fold.iron.at_most_c:g} °C" in told_so.text
    assert fold.iron.moisture in told_so.text


@pytest.mark.parametrize(
    ("quilting", "moisture"),
    [
        ("", "damp cloth"),
        (
            "  - {name: back quilting, kind: quilting, layers: [cloth, inner], length: 60 cm}\n",
            "dry",
        ),
    ],
)
def test_a_hem_is_pressed_before_its_lining_is_felled(quilting: str, moisture: str) -> None:
    """A loose lining is not there yet; one that is quilted to its shell is."""
    answer = read(MANTLE + quilting)
    (press,) = (
        step for step in ironed(answer) if step.on[0] == "hem" and step.operation == "press"
    )
    (said,) = (v for v in answer.verdicts if (v.place, v.aspect) == ("hem", "press.moisture"))
    assert press.iron is not None
    assert (said.text, press.iron.moisture) == (moisture, moisture)
