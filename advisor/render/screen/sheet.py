"""The sheet of a project on a screen: what clashes and what to do first, then what to set.

What most places have in common is said once, and a place says what is its own; but the iron and
the needle each place says itself, since looked up wrong they spoil cloth. The printed sheet and
`--all` hold the rest.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from msgspec import Struct

from advisor.answer.model.answer import Answer
from advisor.answer.model.order import ToldStep
from advisor.errors import for_shell
from advisor.render.gap_text import MOST, TITLE, gap_text
from advisor.render.gaveway import gave_way
from advisor.render.guess_text import TITLE as TAKEN
from advisor.render.guess_text import guess_text
from advisor.render.lines import Verdicts, by_place, phrase_of, said_once
from advisor.render.printed.parts import degree
from advisor.render.screen.ask import CLEAR, CUTTING, ROOMS, SETTINGS, rest_rows, told_rows
from advisor.render.screen.blocks import Block, Columns, Heading, Para, Rows, Title
from advisor.render.screen.draw import drawn
from advisor.render.usual import own_parts, usual_answers


class Top(Struct, frozen=True):
    """How many remedies and pieces of work the top of the screen tells, and how long."""

    cures: int
    steps: int
    outcome: bool


TOPS = (Top(2, 5, outcome=True), Top(1, 5, outcome=True), Top(1, 3, outcome=False))
"""From the widest to the closest, so that clashes and first steps stand on the first screen."""
SCREEN = 40
TOGETHER: Mapping[str, str] = {"shrink": "Shrink", "cut": "Cut", "mark": "Mark"}
"""Work on one cloth after the other that is told in one line."""


def sheet_text(answer: Answer, width: int = 80, *, colour: bool = False) -> str:
    """The screen as text.

    Args:
        answer: to a project, with its order of work.
        width: columns of the window.
        colour: whether the terminal shows emphasis.
    """
    heads = ([*_clashes(answer, top), *_first(answer, top)] for top in TOPS)
    texts = (drawn(head, width, colour=colour) for head in heads)
    first = next((text for text in texts if text.count("\n") <= SCREEN), None)
    if first is None:
        first = drawn(
            [*_clashes(answer, TOPS[-1]), *_first(answer, TOPS[-1])], width, colour=colour
        )
    return first + drawn(settings_screen(answer), width, colour=colour)


def settings_screen(answer: Answer) -> list[Block]:
    """What stands below the clashes and the first steps."""
    return [
        *_checks(answer),
        *_missing(answer),
        *_gave_way(answer),
        *_settings(answer),
        *_cutting(answer),
        Heading(""),
        Rows(tuple(_rest(answer))),
    ]


def _clashes(answer: Answer, top: Top) -> Iterator[Block]:
    yield Title(answer.garment, "" if answer.conflicts else CLEAR)
    for conflict in answer.conflicts:
        where = ", ".join(conflict.places)
        yield Para(
            f"{where}: {degree(conflict)}. {conflict.message}", True, f"{conflict.number:2} "
        )
        for at, cure in enumerate(conflict.remedies[: top.cures]):
            text = f"{cure.text} {cure.then or ''}".strip() if top.outcome else cure.text
            yield Para(text, False, "   or  " if at else "   do  ")
    if any(conflict.remedies for conflict in answer.conflicts):
        yield Para(f"advisor check {for_shell(answer.file)} --take NUMBER writes a remedy into it.")


def _checks(answer: Answer) -> Iterator[Block]:
    """Figures that do not agree, those of several places once."""
    alike = said_once(answer.checks or ())
    if alike:
        yield Heading("Figures that do not agree")
    for text, places in alike.items():
        yield Para(f"{', '.join(places)}: {text}", False, "  - ")
    if taken := guess_text(answer):
        yield Heading(TAKEN)
        yield Para(taken)


def _gave_way(answer: Answer) -> Iterator[Block]:
    """The gravest wishes that gave way."""
    wishes = gave_way(answer)
    if wishes.items:
        yield Heading(wishes.title)
    for item in wishes.items:
        yield Para(f"{item.lead}: {item.parts[0].text}", False, "  - ")


def _missing(answer: Answer) -> Iterator[Block]:
    """The gravest of what the project seems to have forgotten."""
    gaps = answer.missing or ()
    if gaps:
        yield Heading(TITLE)
    for gap in gaps[:MOST]:
        yield Para(f"{gap.place}: {gap_text(gap)}", False, "  - ")


def _first(answer: Answer, top: Top) -> Iterator[Block]:
    """The next pieces of work, with the numbers of the whole order."""
    if answer.work is None:
        return
    left = [step for step in answer.work.order if not step.done]
    groups = [list(some) for _, some in groupby(left, key=_together)]
    done = len(answer.work.order) - len(left)
    yield Heading("Do first" if not done else f"Do next ({done} of {done + len(left)} steps done)")
    yield Rows(tuple(_step(group) for group in groups[: top.steps]))
    if len(groups) > top.steps:
        yield Para(f"advisor order {for_shell(answer.file)}: all {done + len(left)} steps.")


def _together(step: ToldStep) -> str:
    return step.operation if step.operation in TOGETHER else step.step


def _step(group: Sequence[ToldStep]) -> tuple[str, str]:
    first, last = group[0], group[-1]
    if len(group) == 1:
        return f"{first.number}", first.does
    numbers = f"{first.number}-{last.number}"
    if last.number - first.number != len(group) - 1:
        numbers = ", ".join(str(step.number) for step in group)
    return numbers, f"{TOGETHER[first.operation]} {', '.join(step.on[0] for step in group)}."


def _settings(answer: Answer) -> Iterator[Block]:
    """What is set everywhere, and then of each place its iron, its needle and what differs."""
    found = by_place(answer)
    irons = {iron.place: iron.text for iron in answer.irons if iron.scope == "seam"}
    places = {seam.name: found.get(("seam", seam.name), {}) for seam in answer.seams}
    usual = usual_answers(list(places.values()), [a for _, aspects in SETTINGS for a in aspects])
    rows = [(label, phrases_of(aspects, usual)) for label, aspects in SETTINGS]
    if any(text for _, text in rows):
        yield Heading("Set everywhere, unless a place says otherwise")
        yield Rows(tuple(row for row in rows if row[1]))
    alike: dict[tuple[str, str, str], list[str]] = {}
    built = {seam.name: seam.built.fullness for seam in answer.seams if seam.built}
    for name, verdicts in places.items():
        iron, needle, besides = _place(irons.get(name, ""), verdicts, usual)
        full = built.get(name)
        besides = "; ".join(
            filter(None, (besides, full.says[:1].lower() + full.says[1:-1] if full else ""))
        )
        alike.setdefault((iron, needle, besides), []).append(name)
    yield Heading("Place by place")
    head = ("", "iron", "needle", "besides")
    cells = tuple((", ".join(names), *told) for told, names in alike.items())
    yield Columns(head, cells, (5, 9, 6, 10))


def _place(iron: str, verdicts: Verdicts, usual: Mapping[str, str]) -> tuple[str, str, str]:
    """The three cells of a place: its iron, its needle, and what is not set so everywhere."""
    own = {
        label: ", ".join(text for text, _ in own_parts(verdicts, aspects, dict(usual)))
        for label, aspects in SETTINGS
    }
    press, needle = own.pop("press", ""), own.pop("needle", "").removeprefix("needle ")
    besides = "; ".join(_labelled(label, text) for label, text in own.items() if text)
    hot = iron if press and press in iron else "; ".join(filter(None, (iron, press)))
    return hot or "no iron", needle or "no machine", besides


def _labelled(label: str, text: str) -> str:
    """A setting with its label, unless it says it itself."""
    return text if label in text else f"{label} {text}"


def phrases_of(aspects: Sequence[str], usual: Mapping[str, str]) -> str:
    """What some aspects are set to everywhere, as one row."""
    told = [phrase_of(aspect, usual[aspect]) for aspect in aspects if aspect in usual]
    return ", ".join(text.removeprefix("thread ") for text in told if not text.startswith("no "))


def _cutting(answer: Answer) -> Iterator[Block]:
    """What is the same for every cloth said once, and then each cloth's own."""
    verdicts = by_place(answer)
    names = [layer.name for layer in answer.layers if layer.kind == "cloth"]
    told = {
        name: dict(told_rows(verdicts.get(("fabric", name), {}), CUTTING, ROOMS[-1].choices))
        for name in names
    }
    same = {
        label: text
        for label, text in next(iter(told.values()), {}).items()
        if len(names) > 1 and all(rows.get(label) == text for rows in told.values())
    }
    yield Heading("Prepare, cut and mark")
    rows = [("every cloth", "; ".join(f"{k}: {v}" for k, v in same.items()))] if same else []
    for name, own in told.items():
        text = "; ".join(f"{k}: {v}" for k, v in own.items() if k not in same)
        rows.append((name, text or "nothing of its own"))
    yield Rows(tuple(rows))


def _rest(answer: Answer) -> Iterator[tuple[str, str]]:
    last = next((iron for iron in answer.irons if iron.scope == "garment"), None)
    if last is not None:
        yield "last press", last.text
    bought = [f"{row.fabric} {row.buy}" for row in answer.cloth or () if row.buy]
    if bought:
        yield "to buy", f"{'; '.join(bought)} (an estimate: lay out first)"
    yield from rest_rows(answer, ROOMS[1])
    file = for_shell(answer.file)
    everything = f"advisor sheet {file} --all: everything, --reasons: why, --only tests: scraps"
    yield "more", f"{everything} to try; advisor iron {file}: the heat."
