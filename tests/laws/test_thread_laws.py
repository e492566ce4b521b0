"""Thread is chosen once: the order threads what shopping buys, and the sheet says the same."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from advisor.answer.model.answer import Answer
from tests.garments.whole import FILES, decided, told

Thread = tuple[str, float, str]
"""Fibre, tex and colour."""
CONES, TOPSTITCHING = "neutral cones", "for topstitching"


def threaded(found: Answer, colours: dict[str, str | None]) -> dict[str, Thread]:
    """The thread of every step that sews from reels."""
    threads = {}
    assert found.work is not None
    for step in found.work.order:
        if step.machine is None or step.machine.thread_above == CONES:
            continue
        if step.machine.thread_above.startswith(TOPSTITCHING):
            continue  # a reel of its own, among the notions
        said = re.fullmatch(r"(.+) tex ([\d.]+) to match (.+)", step.machine.thread_above)
        assert said is not None, step.step
        cloth = said[3]
        threads[step.step] = (said[1], float(said[2]), colours[cloth] or f"to match {cloth}")
    return threads


@pytest.mark.parametrize("file", FILES, ids=lambda path: path.stem)
def test_order_sheet_and_list_name_one_thread(file: Path) -> None:
    """Both on one answer: each garment is worked out once."""
    _every_step_threads_what_is_bought(file)
    _the_sheet_names_the_thread_that_is_bought(file)


def _every_step_threads_what_is_bought(file: Path) -> None:
    """Fibre, size and colour of the order's steps are rows of the shopping list."""
    found = told(file)
    assert found.thread is not None
    garment = decided(file).advice.judgement.garment
    colours = {name: cloth.colour or None for name, cloth in garment.cloths.items()}
    bought = {(row.fibre, row.tex, row.colour) for row in found.thread}
    steps = threaded(found, colours)
    assert {} == {step: thread for step, thread in steps.items() if thread not in bought}
    on_reels = {
        (row.fibre, row.tex, row.colour)
        for row in found.thread
        if row.total_m > row.overlocker_m
        and any(" ".join(s.split()[1:]) in row.seams for s in steps)
    }
    assert on_reels <= set(steps.values())


def _the_sheet_names_the_thread_that_is_bought(file: Path) -> None:
    """A seam that is counted in a row of the list has that row's fibre and size on the sheet."""
    found = told(file)
    assert found.thread is not None
    picks = {(v.place, v.aspect): v.pick for v in found.verdicts if v.aspect.startswith("thread.")}
    for row in found.thread:
        assert row.fibre
        for seam in (*row.seams, *row.not_counted):
            sheet = (picks.get((seam, "thread.fibre")), picks.get((seam, "thread.size")))
            assert (row.fibre, row.tex) == sheet, seam


def test_places_of_one_colour_share_a_thread_that_both_bear() -> None:
    """Trousers of denim: pocketing seams would take 40 tex and bear 45, so one reel does."""
    (file,) = [f for f in FILES if f.stem == "04_trousers"]
    found = told(file)
    assert found.thread is not None
    assert [("polyester", 45.0)] == [(row.fibre, row.tex) for row in found.thread]
