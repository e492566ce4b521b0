"""Chooses what of many things to do and to try goes on a sheet that fits two pages.

Nothing is lost: the report holds all of it, and `all` prints it. What is left out is counted.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldCaution, ToldTask, ToldTest

PER_PLACE = {"fabric": 3, "seam": 2, "garment": 4}
ONLY_SEAM = 12  # where one seam is all that is asked about, it gets more of the room
ONLY_CLOTH = 20  # and so does a cloth that is asked about by itself
ONLY_SAID_HERE = 3  # the weight of a rule that sets nothing and warns of nothing; see weight_of
GENERAL = 5
PER_TEST = 3
LENGTHS = 2
"""Cloths that are tried by themselves on the close sheet; `--only tests` prints all."""
PER_KIND = {"damage": 2}
NAMED = 3
MANY = 10_000
NEAR = "near"
"""The kind of instruction that keeps an iron off what lies near it."""


class Todo(Struct, frozen=True):
    """Something to do, where, on whose word, and how much it matters, least first."""

    text: str
    places: tuple[str, ...]
    sources: tuple[str, ...]
    weight: tuple[int, int, str] = (0, 0, "")
    harms: bool = False
    """Whether it tells of an iron near what it spoils; the order says it at each step too."""


class Digest(Struct, frozen=True):
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
    near = {told.text for told in report.instructions if told.kind == NEAR}
    for text, items in _in_turn(grouped):
        places = tuple(dict.fromkeys(item.place for item in items))
        todo = Todo(text, places, tuple(items[0].sources), items[0].weight, text in near)
        if len(places) > 1:
            general.append(todo)
        else:
            lone.setdefault((items[0].scope, places[0]), []).append(todo)

    def most(few: int) -> int:
        return MANY if everything else few

    room = _room(report)
    kept = {key: tuple(todos[: most(room[key[0]])]) for key, todos in lone.items()}
    shown = tuple(general[: most(GENERAL)])
    cautions = _cautions(report, most)
    left = len(grouped) - len(shown) - sum(len(todos) for todos in kept.values())
    left += len(report.cautions) - len(cautions)
    return Digest(kept, shown, cautions, _tests(report, most(PER_TEST), most(LENGTHS)), left)


def _in_turn(grouped: dict[str, list[ToldTask]]) -> list[tuple[str, list[ToldTask]]]:
    """What is printed first: what guards, then what the settings do not say already.

    The first thing of every rule comes before the second of any, so that no rule fills the room.
    """
    said: dict[str, int] = {}
    turns = []
    for text, items in grouped.items():
        rule, grave = items[0].rule or text, items[0].weight[0]
        said[rule] = said.get(rule, 0) + 1
        rank = 0 if grave < ONLY_SAID_HERE - 1 else 1 if grave >= ONLY_SAID_HERE else 2
        turns.append((said[rule], rank, text, items))
    return [(text, items) for *_, text, items in sorted(turns, key=lambda turn: turn[:2])]


def _room(report: Answer) -> dict[str, int]:
    """How many things to do a place of each scope may have."""
    places = {(v.scope, v.place) for v in report.verdicts}
    alone = {scope for scope in ("seam", "fabric") if sum(s == scope for s, _ in places) <= 1}
    more = {"seam": ONLY_SEAM, "fabric": ONLY_CLOTH}
    return {**PER_PLACE, **{scope: more[scope] for scope in alone}}


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


def _tests(report: Answer, most: int, lengths: int) -> tuple[tuple[ToldTest, tuple[str, ...]], ...]:
    """Each thing to look for once, with the first sandwich that shows it; of some lengths only."""
    asked: set[str] = set()
    rows = []
    alone = [test for test in report.tests if not test.places][lengths:]
    for test in report.tests:
        if test in alone:
            continue
        fresh = [text for text in test.look_for if text not in asked][:most]
        asked.update(fresh)
        rows.append((test, tuple(fresh)))
    return tuple(rows)
