"""Sheet, list and order agree: each tool and stay is called for and used, each stitch is one."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Decided, Parts, tell
from advisor.claims.collect import Place
from advisor.construction.bulk import picked
from advisor.decide.kit import Need, kit_of
from advisor.decide.usedup import used_up
from advisor.order.beside import STRIPS
from advisor.render.bought_words import bought_text
from tests.garments.whole import FOLDER, advice, known, work

GARMENTS = sorted(str(p.relative_to(FOLDER).with_suffix("")) for p in FOLDER.glob("*.yaml")) + [
    f"more/{p.stem}" for p in sorted((FOLDER / "more").glob("*.yaml"))
]
EVERYBODY_HAS = {"", "standard", "overlock"}
"""Feet that come with the machine."""
TWIN = "stretch twin"
ROWS = "gather"
"""Rows that are drawn up are set as for their cloth alone; any foot serves that sews it."""
DRAWN = frozenset(
    {"gather", "lay-pleats", "neaten-early", "neaten-after", "neaten-bag", "neaten-facing"}
)
"""Rows that draw up, and finishes, which are counted by themselves."""
WORDS = {
    "goggles": ("goggles",),
    "hammer": ("hammer",),
    "awl": ("awl",),
    "die": ("dies",),
}
"""Words of a step that name a tool, and how the list names it."""


ASKS = {
    r"(?<!no )\b(baste|basting)\b": "basting thread",
    r"\bby hand\b|\bsew in the label": "hand needle",
    r"\btissue\b": "tissue",
    r"\bstabiliser\b": "stabiliser",
    r"\btowel\b": "towel",
    r"\bchalk\b": "chalk",
    r"\bcotton cloth\b": "press cloth",
    r"\bmeasure\b|\blevel\b": "tape measure",
    r"\bbrown paper\b": "brown paper",
    r"\bclapper\b": "clapper",
    r"\btweezers\b": "tweezers",
    r"\b(elastic|cord) through\b": "bodkin",
}
"""What a sentence asks for, and the word of the list that answers it."""
STEP = {"metric": 100.0, "us": 36 * 25.4 / 8}
"""What shops cut: a tenth of a metre, an eighth of a yard."""


@cache
def told(garment: str) -> Answer:
    """All that is told of a garment, with its list."""
    decided = Decided(advice(garment), None, work(garment))
    return tell(decided, known(), Parts(shopping=True, order=True))


def sentences(found: Answer) -> Iterator[str]:
    """The steps of the order and the settings and lines of the sheet, as they are printed."""
    assert found.work is not None
    yield from (step.does for step in found.work.order)
    yield from (row.text for row in found.work.keep_off)
    yield from (str(v.pick) for v in found.verdicts if v.aspect in ("press.cloth", "mark.method"))
    yield from (row.text for row in found.advice)


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


@pytest.mark.parametrize("garment", GARMENTS)
def test_whatever_is_asked_for_in_words_is_on_the_list(garment: str) -> None:
    """To buy, at hand, or as in any workroom: nothing is asked for that she is not told to have."""
    found = told(garment)
    listed = " ".join(row.item for row in found.kit or ())
    for sentence in sentences(found):
        for asked, word in ASKS.items():
            if re.search(asked, sentence.casefold()):
                assert word in listed, sentence


@pytest.mark.parametrize("garment", GARMENTS)
def test_every_notion_is_listed_with_its_amount_or_why_there_is_none(garment: str) -> None:
    """Lengths reach all their places and what their ends take, in what shops cut."""
    found = told(garment)
    rows = [row for row in found.kit or () if row.group == "in the seam" and row.strip is None]
    named = {row.item for row in rows}
    made = advice(garment).judgement.garment
    for name in {name for seam in made.seams for name in seam.cloths()}:
        assert known().entries[made.cloths[name].entry].kind == "cloth" or name in named
    for row in rows:
        assert bought_text(row, "us" if found.units == "us" else "metric"), row.item
        if row.buy_mm is None:
            continue
        whole = sum((n or 0) * ((each or 0) + row.ends_mm) for n, each in row.cut_mm)
        assert whole - 0.5 <= row.buy_mm < whole + STEP[found.units] + 0.5
        assert round(row.buy_mm / STEP[found.units], 3) % 1 == 0


@pytest.mark.parametrize("garment", GARMENTS)
def test_a_strip_is_cut_for_each_edge_that_is_bound_and_for_no_other(garment: str) -> None:
    """Wherever a step of the order neatens with a strip on the bias."""
    found = told(garment)
    bound = {
        task.place.name
        for task in work(garment).tasks.values()
        if task.place is not None and "in a strip on the bias" in task.step.does
    }
    assert bound == {place for row in found.kit or () if row.strip for place in row.for_}


@pytest.mark.parametrize("garment", GARMENTS)
def test_reels_hold_every_row_that_the_order_sews(garment: str) -> None:
    """Counted again, place by place: a row lies on both faces, and 15 % go to waste."""
    found = told(garment)
    least = 0.0
    for task in work(garment).tasks.values():
        length = None if task.place is None else task.place.seam.facts.get("length")
        state = task.step.machine
        if length is None or state is None or task.place is None:
            continue
        if task.op in DRAWN or task.op == "baste" or task.op.startswith("neaten"):
            continue  # what is basted by machine for a fitting is drawn out again
        if state.stitch in ("301", "304", "308", "straight stretch"):
            pieces = 2 if task.op == "stay-stitch" else 1
            least += 1.15 * 2 * pieces * float(length) * task.place.seam.making.times / 1000
    assert least <= sum(row.total_m - row.overlocker_m for row in found.thread or ())
