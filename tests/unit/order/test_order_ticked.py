"""Every step of every demo can be ticked, in the printed order and alone, and the work goes on."""

from __future__ import annotations

import os
from functools import cache
from pathlib import Path

import pytest
from msgspec.structs import replace

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Decided, Parts, tell
from advisor.claims.judgement import Advice
from advisor.decide.advise import advise
from advisor.order.search import Effort
from advisor.order.work import Work, order_of
from advisor.project.load import load_project
from advisor.render.order_text import render_order
from tests.typed import shipped as _known

DEMOS = sorted(Path("knowledge/examples").glob("*.yaml"))
EVERY = int(os.environ.get("ADVISOR_EVERY_TICK", "6"))
"""One tick in so many is also printed; 1 prints them all."""
BRIEF = Effort(states=50, bounds=500, beam=2)


@cache
def _advice(demo: Path) -> Advice:
    return advise(load_project(demo, _known()), _known())


def _with(demo: Path, done: tuple[str, ...]) -> Advice:
    """The advice on a demo in which these steps are ticked."""
    advice = _advice(demo)
    garment = advice.judgement.garment
    garment = replace(garment, wishes=replace(garment.wishes, done=done))
    return replace(advice, judgement=replace(advice.judgement, garment=garment))


@cache
def _numbers(demo: Path) -> dict[str, int]:
    """The numbers as they are printed before anything is ticked."""
    order = order_of(_with(demo, ()), _known(), BRIEF).order
    return {name: k for k, name in enumerate(order, 1)}


def _worked(demo: Path, done: tuple[str, ...]) -> Work:
    work = order_of(_with(demo, done), _known(), BRIEF)
    assert set(done) == set(work.done)
    assert _numbers(demo) == work.numbers  # so that no number ever ticks another step
    left = set(work.left())
    assert left.isdisjoint(done)
    assert set(work.stops()) <= left
    assert not left or work.left()[-1] in work.stops()
    assert [n for s in work.sittings(45) for n in s.steps] == list(work.left())
    return work


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.stem)
def test_each_step_can_be_ticked_alone(demo: Path) -> None:
    """Whatever is ticked, and whatever it belongs to in one sitting, the rest is planned."""
    steps = _worked(demo, ()).order
    for name in steps:
        assert len(steps) - 1 == len(_worked(demo, (name,)).left())


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.stem)
def test_the_steps_can_be_ticked_as_they_are_printed(demo: Path) -> None:
    """From the first to the last; a half-done sitting goes on where it was left."""
    steps = _worked(demo, ()).order
    for k in range(1, len(steps) + 1):
        work = _worked(demo, steps[:k])
        assert steps[:k] == work.done or set(steps[:k]) == set(work.done)
        assert not [r for r in work.remarks if "is ticked, but" in r]


def _told(advice: Advice, parts: Parts) -> Answer:
    work = order_of(advice, _known(), plain=parts.plain)
    return tell(Decided(advice, None, work), _known(), parts)


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.stem)
def test_what_is_ticked_is_printed(demo: Path) -> None:
    """The checklist can be told at any point of the work, with as many lines as steps."""
    steps = _worked(demo, ()).order
    told = [()] + [steps[:k] for k in range(1, len(steps) + 1, EVERY)] + [steps]
    told += [(name,) for name in steps[::EVERY]]
    for done in told:
        parts = Parts(order=True, plain=True, sitting=60)
        text = " ".join(render_order(_told(_with(demo, tuple(done)), parts)).split())
        assert len(done) == text.count("[x]")
        assert len(steps) - len(done) == text.count("[ ]")
