"""Chooses what of many things to do and to try goes on a sheet that fits two pages.

Nothing is lost: the report holds all of it, and `all` prints it. What is left out is counted.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldCaution, ToldTask, ToldTest

PER_PLACE = {"fabric": 3, "seam": 2, "garment": 4}
ONLY_SEAM = 4  # where one seam is all that is asked about, it gets more of the room
GENERAL = 5
PER_TEST = 3
PER_KIND = {"damage": 2}
NAMED = 3
MANY = 10_000


@dataclass(frozen=True, slots=True)
class Todo:
    """Something to do, where, and on whose word."""

    text: str
    places: tuple[str, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Digest:
    """What is printed: by place, for several places at once, tests, and how much was left out."""

    by_place: dict[tuple[str, str], tuple[Todo, ...]]
    general: tuple[Todo, ...]
    cautions: tuple[tuple[ToldCaution, str], ...]
    tests: tuple[tuple[ToldTest, tuple[str, ...]], ...]
    left_out: int


def digest(report: Answer, *, everything: bool = False) -> Digest:
    """Choose; the weightiest come first in the report already."""
    grouped: dict[str, list[ToldTask]] = {}
    for item in report.advice:
        grouped.setdefault(item.text, []).append(item)
    lone: dict[tuple[str, str], list[Todo]] = {}
    general: list[Todo] = []
    for text, items in grouped.items():
        places = tuple(dict.fromkeys(item.place for item in items))
        todo = Todo(text, places, tuple(items[0].sources))
        if len(places) > 1:
            general.append(todo)
        else:
            lone.setdefault((items[0].scope, places[0]), []).append(todo)

    def most(few: int) -> int:
        return MANY if everything else few

    seams = {v.place for v in report.verdicts if v.scope == "seam"}
    room = PER_PLACE if len(seams) > 1 else {**PER_PLACE, "seam": ONLY_SEAM}
    kept = {key: tuple(todos[: most(room[key[0]])]) for key, todos in lone.items()}
    shown = tuple(general[: most(GENERAL)])
    cautions = _cautions(report, most)
    left = len(grouped) - len(shown) - sum(len(todos) for todos in kept.values())
    left += len(report.cautions) - len(cautions)
    return Digest(kept, shown, cautions, _tests(report, most(PER_TEST)), left)


def _cautions(report: Answer, most: Callable[[int], int]) -> tuple[tuple[ToldCaution, str], ...]:
    """What can hurt somebody, all of it; what only spoils cloth, the weightiest."""
    kept: dict[str, int] = {}
    rows = []
    for caution in report.cautions:
        kind = caution.kind
        kept[kind] = kept.get(kind, 0) + 1
        if kept[kind] <= most(PER_KIND.get(kind, MANY)):
            about = caution.about
            rows.append((caution, ", ".join(about) if len(about) <= NAMED else ""))
    return tuple(rows)


def _tests(report: Answer, most: int) -> tuple[tuple[ToldTest, tuple[str, ...]], ...]:
    """Each thing to look for once, with the first sandwich that shows it."""
    asked: set[str] = set()
    rows = []
    for test in report.tests:
        fresh = [text for text in test.look_for if text not in asked][:most]
        asked.update(fresh)
        rows.append((test, tuple(fresh)))
    return tuple(rows)
