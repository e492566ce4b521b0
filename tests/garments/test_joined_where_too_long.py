"""Pieces longer than their cloth is wide that may have a seam: cut in parts, and bought so."""

from __future__ import annotations

import math

import pytest

from advisor.answer.model.making import ToldCloth, ToldCut
from advisor.craft.cloth import BoughtCloth, CutPiece, estimate
from advisor.craft.lying import CORNER, PART, lying
from advisor.errors import InputError
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, read

GOWN = """\
garment: Night ferry gown
fabrics: {satin: {fabric: silk satin, width: 140 cm, shrinks: 0 %, selvage: 1 cm}}
pieces:
  - {name: FRONT, fabric: satin, width: 60 cm, height: 150 cm, grain: bias, joined: yes}
  - {name: BACK, fabric: satin, width: 60 cm, height: 150 cm, grain: bias, joined: yes}
seams:
  - {name: side, layers: [satin, satin], length: 145 cm, times: 2}
"""
DRESS = """\
garment: Weir dress
fabrics: {poplin: {fabric: cotton poplin, width: 140 cm, shrinks: 0 %, selvage: 1 cm}}
pieces:
  - {name: front, fabric: poplin, width: 60 cm, height: 110 cm}
  - {name: sash, fabric: poplin, width: 250 cm, height: 12 cm, grain: GRAIN, joined: yes}
  - {name: belt, fabric: poplin, finished width: 4 cm, finished height: 230 cm, doubled: yes,
      joined: yes}
seams:
  - {name: side, layers: [poplin, poplin], length: 105 cm, times: 2}
"""
SPAN = (600 + 1500) / math.sqrt(2)


def gown(front: str = "front", back: str = "back") -> ToldCloth:
    (row,) = read(GOWN.replace("FRONT", front).replace("BACK", back)).cloth or ()
    return row


def cut(name: str, grain: str = "lengthwise") -> ToldCut:
    found = read(DRESS.replace("GRAIN", grain)).cut or ()
    (row,) = [each for each in found if each.name == name]
    return row


def test_a_gown_on_the_bias_is_bought_as_its_panels_lie() -> None:
    """Front and back lean to opposite sides, so each spans 148.5 cm of the length by itself.

    Two corners of each reach past 138 cm; they are cut beside them, and the sheet says so.
    """
    row = gown()
    assert (row.buy_mm, row.pieces) == (3000.0, 2)
    assert 2 * SPAN + 15 <= (row.buy_mm or 0) < 2 * SPAN + 15 + 100
    assert any("Two corners of front and back reach past the cloth" in each for each in row.says)


@pytest.mark.parametrize(("one", "other"), [("skirt back", "skirt front"), ("right", "left")])
def test_the_halves_lean_apart_however_they_are_called(one: str, other: str) -> None:
    """What is called after two halves of one part is laid as front and back are."""
    assert gown(one, other).buy_mm == gown().buy_mm


def test_other_panels_may_lean_alike() -> None:
    """A cape and a drape are no halves of one round: the second nests behind the first."""
    assert (gown("cape", "drape").buy_mm or 0) < (gown().buy_mm or 0)


@pytest.mark.parametrize("length", [1500, 1800, 2400, 3100])
def test_a_panel_that_is_put_together_holds_all_of_it(length: float) -> None:
    """Its parts and corners are no smaller than it is, with an allowance at each join."""
    piece = CutPiece(600, length, bias=True, joined=True, seam_mm=15)
    laid = lying(estimate([piece], BoughtCloth(1380)).laid, [piece])

    def area(points: tuple[tuple[float, float], ...]) -> float:
        pairs = zip(points, [*points[1:], points[0]], strict=True)
        return abs(sum(a * d - c * b for (a, b), (c, d) in pairs)) / 2

    joins = sum(2 * 15 * x.along for x in laid if x.way == CORNER)
    joins += 30 * 600 * max(0, sum(x.way == PART for x in laid) - 1)
    whole = sum(area(x.outlines[0]) for x in laid)
    assert joins
    assert piece.area_mm2 + 0.7 * joins <= whole <= piece.area_mm2 + 1.1 * joins
    assert all(0 <= x <= 1380.01 for lies in laid for x, _ in lies.outlines[0])


def test_a_longer_panel_never_needs_less() -> None:
    """From whole, over two corners cut apart, to parts joined across."""
    lots = (CutPiece(600, long, bias=True, joined=True, seam_mm=15) for long in (1300, 1500, 1800))
    found = [estimate([each], BoughtCloth(1380)).length_mm for each in lots]
    assert found == sorted(found)


@pytest.mark.parametrize("grain", ["lengthwise", "crosswise"])
def test_a_sash_is_cut_in_parts_with_its_joins(grain: str) -> None:
    """250 cm of a cloth of 138: two of 126.5 cm, for each has an allowance at the join."""
    row = cut("sash", grain)
    assert (2, 1265.0, 120.0) == (row.number, row.width_mm, row.height_mm)
    assert "2 joined into one of 250 cm" in row.size


def test_a_doubled_belt_is_joined_along_itself() -> None:
    """230 cm and two ends of 15 mm are 233: two of 118 cm, each 11 cm wide."""
    row = cut("belt")
    assert (2, 110.0, 1180.0) == (row.number, row.width_mm, row.height_mm)


def test_what_may_have_no_seam_is_refused_with_what_would_do() -> None:
    """A sash without joins does not lie across its cloth, and the message names the way out."""
    text = DRESS.replace("GRAIN, joined: yes", "lengthwise")
    with pytest.raises(InputError, match="joined: yes"):
        garment_of(parse_yaml(text, "dress.yaml"), known())


def test_a_ruffle_that_may_be_joined_is_cut_in_as_many_panels_as_it_takes() -> None:
    """8 m of net in 147 cm each are six, though three were said to be enough."""
    text = (
        "garment: Pilot skirt\nfabrics: {net: {fabric: nylon tulle, width: 150 cm}}\n"
        "pieces: [{name: ruffle, fabric: net, finished width: 2 m, finished height: 10 cm, "
        "fullness: 4, number: 3JOINED}]\n"
        "seams: [{name: ruffle, layers: [net, {use: net, fullness: 4}], length: 2 m}]\n"
    )
    (row,) = read(text.replace("JOINED", ", joined: yes")).cut or ()
    assert row.number == 6
    assert row.number * (row.width_mm - 30) == pytest.approx(8000, abs=1)
    with pytest.raises(InputError, match="joined: yes"):
        garment_of(parse_yaml(text.replace("JOINED", ""), "skirt.yaml"), known())
