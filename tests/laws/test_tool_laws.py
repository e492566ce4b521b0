"""Sheet, list and order agree: each tool and stay is called for and used, each stitch is one."""

from __future__ import annotations

import pytest

from advisor.claims.collect import Place
from advisor.construction.bulk import picked
from advisor.decide.kit import Need, kit_of
from advisor.decide.usedup import used_up
from advisor.order.beside import STRIPS
from tests.garments.whole import FOLDER, advice, known, work

GARMENTS = sorted(str(p.relative_to(FOLDER).with_suffix("")) for p in FOLDER.glob("*.yaml")) + [
    f"more/{p.stem}" for p in sorted((FOLDER / "more").glob("*.yaml"))
]
EVERYBODY_HAS = {"", "standard", "overlock"}
"""Feet that come with the machine."""
TWIN = "stretch twin"
ROWS = "gather"
"""Rows that are drawn up are set as for their cloth alone; any foot serves that sews it."""
WORDS = {
    "goggles": ("goggles",),
    "hammer": ("hammer",),
    "awl": ("awl",),
    "die": ("dies",),
}
"""Words of a step that name a tool, and how the list names it."""


def needs(garment: str) -> list[Need]:
    """All that a garment calls for."""
    judgement = advice(garment).judgement
    tasks = [t for t in work(garment).tasks.values() if t.place is not None]
    methods = {t.place.name: t.place.method for t in tasks if t.place is not None}
    return [*kit_of(judgement, known()), *used_up(judgement.garment, methods, known())]


@pytest.mark.parametrize("garment", GARMENTS)
def test_each_foot_and_needle_that_is_set_is_called_for(garment: str) -> None:
    """A foot that the machine is set up with, and a needle's point and size."""
    listed = " ".join(need.item for need in needs(garment))
    for task in work(garment).tasks.values():
        state = task.step.machine
        if state is None or task.op == ROWS:
            continue
        assert state.foot in EVERYBODY_HAS or f"{state.foot}" in listed, task.step.id
        assert state.point != TWIN or "stretch twin needle" in listed, task.step.id


@pytest.mark.parametrize("garment", GARMENTS)
def test_each_tool_that_a_step_names_is_called_for(garment: str) -> None:
    """Shears that pink, a hammer, an awl, dies, and goggles for the eyes."""
    listed = " ".join(need.item for need in needs(garment))
    for task in work(garment).tasks.values():
        words = set(task.step.does.replace(",", " ").replace(":", " ").replace(".", " ").split())
        for word, names in WORDS.items():
            assert word not in words or any(name in listed for name in names), task.step.id
        assert "(pinked)" not in task.step.does or "pinking shears" in listed, task.step.id


@pytest.mark.parametrize("garment", GARMENTS)
def test_each_stay_that_is_advised_is_laid(garment: str) -> None:
    """What the list has you buy for a seam is laid along it by a step of the order."""
    tasks = work(garment).tasks.values()
    laid = {t.place.name for t in tasks if t.place is not None and t.op in ("stay", "tape")}
    for need in kit_of(advice(garment).judgement, known()):
        if need.aspect == "seam.support" and need.word in STRIPS:
            assert not set(need.places) - laid, need.word


@pytest.mark.parametrize("garment", GARMENTS)
def test_sheet_and_order_name_one_stitch(garment: str) -> None:
    """The stitch that the sheet tells of a place is the one that its main step is set for."""
    verdicts = advice(garment).judgement.verdicts
    for task in work(garment).tasks.values():
        state, place = task.step.machine, task.place
        if place is None or state is None or task.op != place.op or state.point == TWIN:
            continue
        told = picked(verdicts[Place("seam", place.name)], "stitch.type")
        assert told in ("", state.stitch), task.step.id
