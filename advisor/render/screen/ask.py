"""The answer to a question on one screen: the clash first, then what to set, cut, try and mind."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from advisor.answer.model.answer import Answer
from advisor.render.lines import Verdicts, by_place, line_parts, phrase_of
from advisor.render.printed.parts import degree
from advisor.render.screen.blocks import Block, Columns, Heading, Para, Rows, Title
from advisor.render.screen.draw import drawn
from advisor.render.usual import two_threads

SETTINGS = (
    (
        "press",
        (
            "press.moisture",
            "press.side",
            "press.cloth",
            "press.surface",
            "press.motion",
            "press.dwell",
        ),
    ),
    ("needle", ("needle.size", "needle.point")),
    ("thread", ("thread.fibre", "thread.size")),
    ("stitch", ("stitch.type", "stitch.length", "stitch.tension")),
    ("foot", ("machine.foot", "machine.pressure")),
    ("pins", ("pin.kind", "pin.place", "pin.insertion")),
    (
        "seam",
        (
            "seam.kind",
            "seam.allowance",
            "seam.finish",
            "seam.support",
            "hem.kind",
            "interfacing.kind",
        ),
    ),
)
CUTTING = (
    ("prepare", ("prepare.preshrink",)),
    ("cut", ("cut.direction", "cut.lay", "cut.grain")),
    ("hold", ("cut.hold",)),
    ("mark", ("mark.method",)),
)
MOST_BESIDE = 3
"""So many cloths stand beside one another; more stand below one another."""
LINES = 40
"""What a screen holds, the prompt left out."""
DWELL = "press.dwell"
NOT_RECKONED = ", or less where `advisor iron` reckons so"
"""Said beside a rule's time where the heat was not worked out, which may only shorten it."""
OWN = "own-limit"
ALWAYS_TOLD = ("eye", "child")
"""Kinds of caution that no lack of room leaves out."""
CLEAR = "Nothing clashes here; test on scraps all the same."
MORE = "--more: reasons and sources; --all: everything; `advisor iron`: the heat."


@dataclass(frozen=True, slots=True)
class ScreenRoom:
    """How many of each kind there is room for; what is left out, `--more` prints."""

    tasks: int
    tests: int
    cautions: int
    cures: int
    choices: int
    lost: int
    long: bool = False


ROOMS = (
    ScreenRoom(3, 2, 3, 2, 3, 3, long=True),
    ScreenRoom(2, 2, 2, 2, 2, 3),
    ScreenRoom(2, 1, 2, 2, 2, 2),
    ScreenRoom(1, 1, 1, 2, 2, 2),
    ScreenRoom(1, 1, 1, 1, 1, 1),
    ScreenRoom(0, 1, 1, 1, 1, 1),
)
"""From the widest to the closest; no clash, no setting and no danger to eyes is ever left out."""


def ask_text(answer: Answer, width: int = 80, *, colour: bool = False) -> str:
    """The screen as text, with as much on it as a window holds.

    Args:
        answer: to a question or to a garment.
        width: columns of the window.
        colour: whether the terminal shows emphasis.
    """
    texts: dict[int, str] = {}

    def fits(at: int) -> bool:
        texts[at] = drawn(ask_screen(answer, ROOMS[at]), width, colour=colour)
        return texts[at].count("\n") <= LINES

    # The rooms grow closer one by one, so the widest that fits is found by halving.
    at = min(bisect_left(range(len(ROOMS)), True, key=fits), len(ROOMS) - 1)
    return texts[at] if at in texts else drawn(ask_screen(answer, ROOMS[at]), width, colour=colour)


def ask_screen(answer: Answer, room: ScreenRoom) -> list[Block]:
    """The blocks of the screen, the worst first."""
    places = by_place(answer)
    return [
        *_clashes(answer, room),
        *(block for seam in answer.seams for block in _settings(answer, seam.name, places, room)),
        *_cutting(answer, places, room),
        Heading(""),
        Rows((*rest_rows(answer, room), ("more", MORE))),
    ]


def _clashes(answer: Answer, room: ScreenRoom) -> Iterator[Block]:
    yield Title(answer.garment, "" if answer.conflicts else CLEAR)
    for conflict in answer.conflicts:
        yield Para(f"{degree(conflict)}. {conflict.message}", True, f"{conflict.number:2} ")
        cures = conflict.remedies[: room.cures]
        for at, cure in enumerate(cures):
            yield Para(
                f"{cure.text} {cure.then or ''}".strip(), False, "   or  " if at else "   do  "
            )
    for item in answer.instructions:
        yield Para(item.text, False, "  - ")


def _settings(
    answer: Answer, place: str, places: dict[tuple[str, str], Verdicts], room: ScreenRoom
) -> Iterator[Block]:
    verdicts = places.get(("seam", place), {})
    yield Heading(f"Set for {place}")
    iron = next((i for i in answer.irons if (i.scope, i.place) == ("seam", place)), None)
    rows = [] if iron is None else [("iron", iron.text)]
    rows += told_rows(verdicts, SETTINGS)
    if answer.heat is None and line_parts(verdicts, (DWELL,)):
        rows = [(label, text + NOT_RECKONED * (label == "press")) for label, text in rows]
    yield Rows(tuple(rows))
    lost = _lost(verdicts)[: room.lost]
    if lost:
        yield Para(f"Had to give way: {'; '.join(lost)}.")


def told_rows(
    verdicts: Verdicts, lines: Sequence[tuple[str, Sequence[str]]], most: int = 3
) -> list[tuple[str, str]]:
    """Settings as rows: a label, and in a few words what is set under it."""
    rows = []
    for label, aspects in lines:
        parts = [_short(v.aspect, text, most) for text, v in line_parts(verdicts, aspects)]
        if parts:
            rows.append((label, ", ".join(dict.fromkeys(parts))))
    return rows


def _short(aspect: str, text: str, most: int) -> str:
    """An answer without the words that its label says already, and with few choices."""
    if aspect == "thread.fibre":
        return " or ".join(two_threads(text.removeprefix("thread ")))
    for said in ("needle ", "hold with ", "hem: ", "closure "):
        text = text.removeprefix(said)
    if aspect in ("cut.hold", "mark.method"):
        choices = text.replace(" or ", ", ").split(", ")
        return " or ".join(choices[:most])
    return text


def _lost(verdicts: Verdicts) -> list[str]:
    """Wishes that gave way, by name, one for each aspect; those under the iron first."""
    pressed_first = sorted(verdicts.items(), key=lambda found: not found[0].startswith("press."))
    told = [
        f"{claim.who} wanted {phrase_of(aspect, claim.says)}"
        for aspect, verdict in pressed_first
        for claim in verdict.given_up[:1]
        if claim.strength == "should"
    ]
    return list(dict.fromkeys(told))


def _cutting(
    answer: Answer, places: dict[tuple[str, str], Verdicts], room: ScreenRoom
) -> Iterator[Block]:
    cloths = {layer.name for layer in answer.layers if layer.kind == "cloth"}
    laid = dict.fromkeys(name for seam in answer.seams for name in seam.layers)
    names = [name for name in laid if name in cloths]
    told = {
        name: dict(told_rows(places.get(("fabric", name), {}), CUTTING, room.choices))
        for name in names
    }
    yield Heading("Prepare, cut and mark")
    if not 1 < len(names) <= MOST_BESIDE:
        for name in names:
            yield Para(name, True)
            yield Rows(tuple(told[name].items()))
        return
    rows = [(label, *(told[n].get(label, "") for n in names)) for label, _ in CUTTING]
    yield Columns(("", *names), tuple(row for row in rows if any(row[1:])))


def rest_rows(answer: Answer, room: ScreenRoom) -> Iterator[tuple[str, str]]:
    """What is done, tried and minded, and what was taken for granted: a label and a sentence."""
    tasks = dict.fromkeys(task.text for task in answer.advice if not task.general and task.rule)
    tests = dict.fromkeys(text for test in answer.tests for text in test.look_for)
    yield from _labelled("do", list(tasks)[: room.tasks])
    yield from _labelled("try first", list(tests)[: room.tests])
    yield from _labelled("mind", _cautions(answer, room.cautions))
    gains = [u for u in answer.unknowns if (u.most_c or 0.0) > (u.limit_c or 0.0)]
    fibres = [f"{u.fact}: {u.effect}" if room.long else u.short or "" for u in gains]
    yield from _labelled("find out", fibres)
    taken = [u.effect.removeprefix("taken as ") for u in answer.unknowns if not u.limit_c]
    yield from _labelled("assumed", ["; ".join(taken)] if taken else [])
    usual = dict.fromkeys(c.general for c in answer.cautions if c.general)
    yield from _labelled("always", [" ".join(usual)] if usual else [])


def _cautions(answer: Answer, most: int) -> list[str]:
    """What this combination adds: for eyes and children, own limits, the gravest of the rest."""
    special = [c for c in answer.cautions if not c.general]
    kept = [c for c in special if c.kind in ALWAYS_TOLD or c.id == OWN]
    kept += [c for c in special if c not in kept][: max(0, most - len(kept))]
    return list(dict.fromkeys(c.text for c in kept))


def _labelled(label: str, texts: Sequence[str]) -> Iterator[tuple[str, str]]:
    for at, text in enumerate(texts):
        yield ("" if at else label, text)
