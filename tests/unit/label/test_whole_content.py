"""The content of a whole garment by mass, reckoned again by hand."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from advisor.answer.label import Asked
from advisor.answer.model.label import ToldLabel
from advisor.answer.pipeline import Parts, answer
from tests.unit.construction.build_cases import judged, known

HEAD = (
    "garment: Shift\nfabrics:\n"
    "  body: {fabric: poplin, fibres: {cotton: 100}, weight: 120 g/m2, width: 150 cm}\n"
    "  trim: {fabric: poplin, fibres: {polyester: 65, cotton: 35}, weight: %s g/m2, "
    "width: 150 cm}\n"
    "seams:\n"
)
PIECES = (
    "  - {name: side, layers: [body, body], length: 1 m}\n"
    "  - {name: neck, layers: [body, trim], length: 40 cm}\n"
    "pieces:\n  - {name: front, fabric: body, width: 100 cm, height: 100 cm, number: 2}\n"
    "  - {name: yoke, fabric: trim, width: 50 cm, height: 50 cm}\n"
)


def label(
    weight: float = 160, market: str = "eu", head: str = HEAD, pieces: str = PIECES
) -> ToldLabel:
    """The label of a shift whose trim weighs so much."""
    garment = judged(pieces, head % weight if "%s" in head else head).garment
    found = answer(garment, known(), Parts(label=Asked(market, "metric", frozenset()))).label
    assert found is not None
    return found


def test_the_whole_by_mass_by_hand() -> None:
    """240 g of cotton and 40 g of 65/35: polyester 26 g of 280 is 9 %, cotton 91 %."""
    whole = label().whole
    assert whole is not None
    assert "91 % cotton, 9 % polyester" == whole.line
    assert {"body": 85.7, "trim": 14.3} == whole.parts
    assert "eu-1007-2011 Art 11" in whole.sources


def test_a_part_of_30_percent_is_told_apart() -> None:
    """240 g and 0.25 m2: below 411 g/m2 it is less than 30 %, from there it has to be stated."""
    assert label(410).whole is not None
    assert label(412).whole is None


def test_a_main_lining_is_told_apart() -> None:
    """However light it is."""
    head = HEAD.replace("  trim:", "  lining:")
    garment = judged(PIECES.replace("trim", "lining"), head % 60).garment
    found = answer(garment, known(), Parts(label=Asked("eu", "metric", frozenset()))).label
    assert found is not None
    assert found.whole is None


def test_the_other_market_tells_its_sections() -> None:
    """What the EU leaves out is no rule of the other market."""
    assert label(market="us").whole is None


@settings(max_examples=15, deadline=None)
@given(st.floats(40, 400))
def test_fibres_sum_to_the_whole(weight: float) -> None:
    """Whole percent make 100, and more of the heavier part never tells less of its fibre."""
    whole = label(round(weight, 1)).whole
    assert whole is not None
    figures = [int(part.split(" ")[0]) for part in whole.line.split(", ")]
    assert 100 == sum(figures)
    assert pytest.approx(100.0, abs=0.2) == sum(whole.parts.values())
    trim = 0.25 * weight
    assert figures[-1] == pytest.approx(100 * 0.65 * trim / (240 + trim), abs=1.0)


def told_shares(*weights: float) -> list[str]:
    """The shares that are told of four cloths of one size, each of a fibre of its own."""
    names = ("drill", "taffeta", "net", "moire")
    fibres = ("cotton", "silk", "nylon", "acetate")
    named = list(zip(names, fibres, weights, strict=True))
    cloths = "".join(
        f"  {name}: {{fabric: poplin, fibres: {{{fibre}: 100}}, weight: {weight} g/m2, "
        "width: 150 cm}\n"
        for name, fibre, weight in named
    )
    rows = "".join(
        f"  - {{name: {name}, fabric: {name}, width: 100 cm, height: 100 cm}}\n"
        for name, _, _ in named
    )
    seam = "  - {name: side, layers: [drill, taffeta, net, moire], length: 40 cm}\npieces:\n"
    whole = label(head=f"garment: Shift\nfabrics:\n{cloths}seams:\n", pieces=seam + rows).whole
    assert whole is not None
    return re.findall(r"([\d.]+) %[,.]", whole.text.split(" No part")[0])


def test_the_shares_of_the_parts_make_a_hundred() -> None:
    """43.7, 28.6, 13.8 and 13.8 %: rounded each by itself they would come to 101."""
    assert told_shares(109.25, 71.5, 34.6, 34.6) == ["44", "28", "14", "14"]


def test_a_part_below_30_percent_is_not_told_as_30() -> None:
    """29.8 % beside "none reaches 30 %" is told to the tenth, and all of them with it."""
    assert told_shares(117, 74.5, 29.25, 29.25) == ["46.8", "29.8", "11.7", "11.7"]
