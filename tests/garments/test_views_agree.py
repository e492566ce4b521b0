"""What two views print of one garment is one fact: times under the iron, minutes, thread.

A law: it holds for every garment, so a garment that is new goes into the list.
"""

from __future__ import annotations

import re

import pytest

from advisor.answer.press_clause import COUNTED_S, press_clauses
from advisor.render.lines import by_place, line_parts
from advisor.render.screen.blocks import Columns
from advisor.render.screen.iron import iron_screen
from tests.garments.whole import FOLDER, NAMES, work
from tests.garments.whole import told as answered
from tests.typed import typed

MORE = (
    "more/lock_keeper_dress",
    "more/bandmaster_skirt",
    "more/ferryhouse_wrap",
    "more/lawn_shirt",
    "more/sundress",
    "more/harbour_dress",
    "more/linen_jacket",
)
EVERY = (*NAMES, *MORE)
MOST = re.compile(r"(?:to|at most|no more than) (\d+) s\b")


def text(*words: str) -> str:
    """What a command prints of a garment, on one line."""
    return " ".join(typed(*words).out.split())


def _file(name: str) -> str:
    return str(FOLDER / f"{name}.yaml")


FUSED = (
    "more/lawn_shirt",
    "more/linen_jacket",
    "more/ticket_shirt_dress",
)


@pytest.mark.parametrize("name", FUSED)
def test_sheet_iron_and_order_hold_a_glue_for_one_time(name: str) -> None:
    """What is fused is held as long as the glue wants it, whichever of the three is read."""
    told = answered(FOLDER / f"{name}.yaml")
    verdicts = by_place(told)
    rows = [r for b in iron_screen(told) if isinstance(b, Columns) for r in b.rows]
    fused = [task for task in work(name).tasks.values() if task.op == "fuse"]
    assert fused
    for task in fused:
        assert task.place is not None
        time = verdicts["seam", task.place.name]["press.dwell"].text
        assert f", {time} in each spot" in task.step.does
        row = next(row for row in rows if task.place.name in row[0].split(", "))
        assert row[3].startswith(f"{time} to fuse") or row[1].startswith("no iron")


@pytest.mark.parametrize("name", EVERY)
def test_sheet_and_iron_print_one_time_for_a_press(name: str) -> None:
    """The shortest time that the sheet tells of a place is the one that the iron tells."""
    told = answered(FOLDER / f"{name}.yaml")
    verdicts = by_place(told)
    tables = [block for block in iron_screen(told) if isinstance(block, Columns)]
    rows = [row for table in tables for row in table.rows]
    of = {seam.name: row for row in rows for seam in told.seams if seam.name in row[0].split(", ")}
    for seam in told.seams:
        if seam.name not in of:
            continue
        here = [t for t, _ in line_parts(verdicts.get(("seam", seam.name), {}), ("press.dwell",))]
        clauses = press_clauses(told, seam.name)
        sheet = [int(s) for one in (*here, *clauses) for s in MOST.findall(one)]
        iron = [int(s) for s in MOST.findall(of[seam.name][3])]
        if of[seam.name][1].startswith("no iron"):
            assert [] == iron, seam.name
        elif " to fuse" in of[seam.name][3]:
            assert sheet == iron, seam.name
        elif sheet or (iron and iron[0] < COUNTED_S):
            assert [min(sheet)] == iron, seam.name


@pytest.mark.parametrize("name", EVERY)
def test_sheet_and_order_print_one_count_of_minutes(name: str) -> None:
    """Steps, changes and the minutes that they take."""
    said = re.compile(r"(\d+) steps, (\d+) changes of set-up, which take about ([\d.]+) min")
    order, sheet = text("order", _file(name)), text("sheet", _file(name))
    assert said.findall(order)
    assert said.findall(order) == said.findall(sheet)


@pytest.mark.parametrize("name", EVERY)
def test_sheet_and_shopping_print_one_length_of_thread(name: str) -> None:
    """Needle, bobbin and looper together are what the sheet says of each colour.

    A sheet that has no room for them prints none, and sends her to the list.
    """
    sheet = text("sheet", _file(name))
    short = re.findall(r"(\d+) (?:m|yd) of tex (\d+)", sheet)
    long = text("sheet", _file(name), "--only", "shopping")
    taken = re.findall(r"tex (\d+)\)\. Takes: ([^\[;]*)", long)
    sums = [(str(sum(map(int, re.findall(r"(\d+) (?:m|yd)\b", said)))), tex) for tex, said in taken]
    if not short:
        assert re.search(r"Thread, [^:]*all else: .*--only shopping", sheet)
        assert sums
        return
    assert sorted(sums) == sorted(short)
