"""A way out that nobody has taken is told as that: nothing it does away with is bought or done."""

from __future__ import annotations

import pytest

from advisor.answer.model.answer import Answer
from advisor.render.order_text import render_order
from tests.garments.whole import FOLDER, ordered, told

REPLACED = {
    "cardigan": "knit fusible interfacing",
    "lockgate_domino": "woven fusible interfacing",
    "midwinter_herald": "sequin trim",
    "saltmarsh_smock": "drawcord",
}
"""Garments with a clash, and the notion that what is offered first puts another in place of."""
GONE_ROUND = {"kilt": "straps", "quarry_waistcoat": "back yoke"}
"""Garments whose order presses a cloth before a clash, and where."""
SKIRT = """garment: Tanner's skirt
fabrics:
  skin: {fabric: nappa}
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: side, layers: [skin, skin], length: 60 cm, times: 2}
  - {name: back vent, layers: [skin, {notion: low-temperature fusible}, skin], length: 20 cm}
  - {name: back zip, layers: [skin, {notion: metal zip}], length: 20 cm}
  - {name: hem, layers: [skin], length: 90 cm, edge: hem}
"""


def _told(name: str) -> Answer:
    return told(FOLDER / "more" / f"{name}.yaml")


@pytest.mark.parametrize("name", REPLACED)
def test_what_the_first_way_out_replaces_is_not_bought_yet(name: str) -> None:
    """Whatever its conflict is about, its heat, its cleaning or a child's neck."""
    answer, notion = _told(name), REPLACED[name]
    rows = [row for row in answer.kit or () if row.item == notion]
    assert rows
    for row in rows:
        assert any(one.bars_buying(row.item, row.for_) for one in answer.conflicts)


@pytest.mark.parametrize("name", GONE_ROUND)
def test_the_order_says_where_it_goes_by_a_way_out_that_nobody_took(name: str) -> None:
    """It presses a cloth by itself first, which is offered and not decided."""
    work = _told(name).work
    assert work is not None
    head = " ".join(render_order(_told(name)).split("steps,")[0].split())
    assert f"Nothing is decided yet at {GONE_ROUND[name]}" in head


def test_a_glue_that_clashes_is_not_laid_in_as_if_it_were_none() -> None:
    """Clipped on and never fused it backs nothing: what does instead is asked first."""
    found = ordered(SKIRT)
    step = next(t.step.does for t in found.tasks.values() if t.op == "interface")
    assert step.startswith("Settle first what backs back vent")


@pytest.mark.parametrize(
    ("name", "place"), [("cardigan", "button band"), ("ponte_dress", "neck facing")]
)
def test_no_kind_of_a_glue_is_told_where_it_is_not_fused(name: str, place: str) -> None:
    """Beside "settle first what backs it" a fusible is no answer."""
    assert ("interfacing.kind", place) not in {(v.aspect, v.place) for v in _told(name).verdicts}
