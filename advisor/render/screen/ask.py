"""The answer to a question on one screen: the clash first, then what to set, cut, try and mind."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldTask, ToldUnknown
from advisor.answer.press_clause import at_a_time, is_stricter, longest_press
from advisor.answer.unknowns import HARDLY_HOTTER, NO_WEIGHT
from advisor.answer.wording import degrees
from advisor.render.gaveway import TITLE, lost
from advisor.render.lines import (
    PRESSING,
    Verdicts,
    by_place,
    line_parts,
)
from advisor.render.printed.parts import degree
from advisor.render.screen.blocks import Block, Columns, Heading, Para, Rows, Title
from advisor.render.screen.draw import drawn
from advisor.render.usual import two_threads

SETTINGS = (
    ("press", PRESSING),
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
IN_A_LINE = {
    "prepare": "Prepare: {}",
    "cut": "cut {}",
    "hold": "hold with {}",
    "mark": "mark with {}",
}
FEW = 2
"""So many cloths have a table and their weights however close it is."""
MOST_BESIDE = 3
"""So many cloths stand beside one another; more stand below one another."""
LINES = 40
"""What a screen holds, the prompt left out."""
DWELL = "press.dwell"
LEFT_OUT = ("left out", "not used")
"""How it begins what became of a word that is not known, or of a measure."""
OWN = "own-limit"
OF_CLOTH = ("cloth", "thread")
"""Kinds of layer of which the settings say all; of a notion somebody asks how it goes in."""
ALWAYS_TOLD = ("eye", "child")
"""Kinds of caution that no lack of room leaves out."""
CLEAR = "Nothing clashes here; test on scraps all the same."
MORE = "--more: reasons; --all: everything; `advisor iron`: heat and seconds"


class ScreenRoom(Struct, frozen=True):
    """How many of each kind there is room for; what is left out, `--more` prints.

    `brief` has a few lines for each of many cloths in place of a table, and no usual weights;
    `bare` has no weights of few cloths either, and no blank line before what is told last;
    `close` has none at all.
    """

    tasks: int
    tests: int
    cautions: int
    cures: int
    choices: int
    lost: int
    long: bool = False
    brief: bool = False
    bare: bool = False
    close: bool = False


ROOMS = (
    ScreenRoom(3, 2, 3, 2, 3, 3, long=True),
    ScreenRoom(2, 2, 2, 2, 2, 3),
    ScreenRoom(2, 1, 2, 2, 2, 2),
    ScreenRoom(2, 1, 2, 2, 2, 2, brief=True),
    ScreenRoom(1, 1, 2, 2, 2, 2, brief=True),
    ScreenRoom(1, 1, 1, 2, 2, 2, brief=True),
    ScreenRoom(1, 1, 1, 1, 1, 1, brief=True),
    ScreenRoom(0, 1, 1, 1, 1, 1, brief=True),
    ScreenRoom(0, 1, 1, 1, 1, 1, brief=True, bare=True),
    ScreenRoom(0, 1, 1, 1, 1, 1, brief=True, bare=True, close=True),
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
    kept: dict[Block, str] = {}

    def fits(at: int) -> bool:
        texts[at] = drawn(ask_screen(answer, ROOMS[at]), width, colour=colour, kept=kept)
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
        *([] if room.bare else [Heading("")]),
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
    yield Heading(f"Set for {place}", room.close)
    iron = next((i for i in answer.irons if (i.scope, i.place) == ("seam", place)), None)
    rows = [] if iron is None else [("iron", iron.text)]
    longest, dwell = longest_press(answer, place), verdicts.get(DWELL)
    ruled = is_stricter(dwell, longest)
    here = {aspect: v for aspect, v in verdicts.items() if ruled or aspect != DWELL}
    press = told_rows(here, SETTINGS[:1])
    # "no iron: finger-press" says all that the row below it would.
    rows += [row for row in press if not (rows and rows[0][1].endswith(f" {row[1]}"))]
    rows += at_a_time(dwell, longest, answer)
    rows += told_rows(verdicts, SETTINGS[1:])
    yield Rows(tuple(rows))
    wishes = lost(verdicts, answer, place)[: room.lost]
    if wishes:
        yield Para(f"{TITLE}: {'; '.join(wishes)}.")


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
    if aspect == "stitch.length":
        return text.replace("stitches per inch", "per inch")
    for said in ("needle ", "hold with ", "hem: ", "closure "):
        text = text.removeprefix(said)
    if aspect in ("cut.hold", "mark.method"):
        choices = text.replace(" or ", ", ").split(", ")
        return " or ".join(choices[:most])
    return text


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
    if names:
        yield Heading("Prepare, cut and mark", room.close)
    if room.brief and len(names) > FEW:
        for name in names:
            said = (IN_A_LINE[label].format(text) for label, text in told[name].items())
            yield Para(f"{name}. {'; '.join(said)}.")
        return
    if not 1 < len(names) <= MOST_BESIDE:
        for name in names:
            yield Para(name, True)
            yield Rows(tuple(told[name].items()))
        return
    rows = [(label, *(told[n].get(label, "") for n in names)) for label, _ in CUTTING]
    yield Columns(("", *names), tuple(row for row in rows if any(row[1:])))


def rest_rows(answer: Answer, room: ScreenRoom) -> Iterator[tuple[str, str]]:
    """What is done, tried and minded, and what was taken for granted: a label and a sentence."""
    tasks = _by_turns(task for task in answer.advice if not task.general and task.rule)
    told = [t for t in reversed(answer.advice) if not t.rule and t.scope == "fabric"]
    notes = {t.place: f"{t.place}: {t.text[0].lower()}{t.text[1:]}" for t in told}
    most = max(room.tasks, 1) if any(a.kind not in OF_CLOTH for a in answer.layers) else room.tasks
    tests = dict.fromkeys(text for test in answer.tests for text in test.look_for)
    yield from _labelled("do", [*reversed(notes.values()), *tasks[:most]])
    yield from _labelled("try first", list(tests)[: room.tests])
    yield from _labelled("mind", _cautions(answer, room.cautions))
    yield from _labelled("find out", _to_find_out(answer, room))
    taken = [_taken(u, room) for u in answer.unknowns if not u.limit_c]
    yield from _labelled("assumed", ["; ".join(taken)] if taken else [])
    usual = dict.fromkeys(c.general for c in answer.cautions if c.general)
    yield from _labelled("always", [" ".join(usual)] if usual else [])


def _by_turns(tasks: Iterable[ToldTask]) -> list[str]:
    """The first thing of every rule before the second of any: no rule fills the room alone."""
    rules = dict.fromkeys((task.rule, task.text) for task in tasks)
    said: Counter[str] = Counter()
    turns = []
    for rule, text in rules:
        said[rule] += 1
        turns.append((said[rule], text))
    return list(dict.fromkeys(text for _, text in sorted(turns, key=lambda turn: turn[0])))


def _taken(unknown: ToldUnknown, room: ScreenRoom) -> str:
    """What was taken for granted; of words that were left out also which they are."""
    many = unknown.effect.count(", ") >= FEW
    if unknown.fact == NO_WEIGHT and (room.bare or (room.brief and many)):
        return "the usual weights"
    if unknown.effect.startswith(LEFT_OUT):
        return f"{unknown.fact.split(': ', 1)[-1]}, {unknown.effect}"
    return unknown.effect.removeprefix("taken as ")


def _to_find_out(answer: Answer, room: ScreenRoom) -> list[str]:
    """What a hotter iron hangs on; cloths that may gain the same share a line."""
    gains = [u for u in answer.unknowns if (u.most_c or 0.0) - (u.limit_c or 0.0) > HARDLY_HOTTER]
    if room.long:
        return [f"{u.fact}: {u.effect}" for u in gains]
    alike: dict[float, list[ToldUnknown]] = {}
    for one in gains:
        alike.setdefault(one.most_c or 0.0, []).append(one)
    if room.brief and len(alike) > 1:
        each = (
            f"{' and of '.join(u.fact.split(':')[0] for u in some)} ({degrees(most, answer.units)})"
            for most, some in alike.items()
        )
        return [f"the fibres of {', of '.join(each)}: pressed alone, they may then take so much"]
    return [
        some[0].short or ""
        if len(some) == 1
        else f"the fibres of {' and of '.join(u.fact.split(':')[0] for u in some)}: pressed alone, "
        f"they may then take up to {degrees(most, answer.units)}"
        for most, some in alike.items()
    ]


def _cautions(answer: Answer, most: int) -> list[str]:
    """For eyes and children and own limits, the gravest of the rest, and what the cloths add.

    The first that they surely add together has room always: nothing else on the screen says it.
    """
    special = [c for c in answer.cautions if not c.general]
    kept = [c for c in special if c.kind in ALWAYS_TOLD or c.id == OWN]
    room = max(0 if most < FEW else 1, most - len(kept))  # a flame beside a danger to eyes
    kept += [c for c in special if c not in kept][:room]
    kept += [c for c in special if c.meeting and c not in kept][:1]
    return list(dict.fromkeys(c.text for c in kept))


def _labelled(label: str, texts: Sequence[str]) -> Iterator[tuple[str, str]]:
    for at, text in enumerate(texts):
        yield ("" if at else label, text)
