"""The iron as at the board: one place on one screen, or all places of a garment in a table."""

from __future__ import annotations

from collections.abc import Iterator

from advisor.answer.model.answer import Answer
from advisor.answer.model.heat import ToldIron
from advisor.answer.model.plan import ToldIronSetting
from advisor.answer.press_clause import (
    at_a_time,
    at_most_words,
    is_stricter,
    longest_press,
    wait_words,
)
from advisor.errors import InputError, Problem, nearest
from advisor.render.iron_text import picture
from advisor.render.lines import Verdicts, by_place, line_parts
from advisor.render.printed.parts import degree
from advisor.render.screen.blocks import Block, Columns, Heading, Para, Picture, Rows, Title
from advisor.render.screen.draw import drawn

DWELL = "press.dwell"
MOISTURE = "press.moisture"
PRESS = (
    MOISTURE,
    "press.side",
    "press.cloth",
    "press.surface",
    "press.motion",
    DWELL,
)
MOTION, HOVERED = "press.motion", "hover with steam"
SHORT = (MOISTURE, "press.cloth")
"""What the table of all places has room for; a place by itself tells all of it."""
MOST_CAUTIONS = 2
CLEAR = "In no one place is a layer too hot for another; try the iron on a scrap all the same."
BESIDE = CLEAR.replace(";", ", but mind what lies beside or behind it, below;")
OVER = (
    "At first a sole overshoots its mark by {} degrees (from memory): let it settle, and try it on "
    "a scrap."
)
ALL = "--all: every layer, every way of pressing and the heat through the layers."


def iron_screen_text(
    answer: Answer, place: str = "", width: int = 80, *, colour: bool = False
) -> str:
    """The screen as text.

    Args:
        answer: with its iron and heat.
        place: one place of the garment; without it all of them.
        width: columns of the window.
        colour: whether the terminal shows emphasis.

    Raises:
        InputError: the garment has no such place; with the nearest name.
    """
    return drawn(iron_screen(answer, place), width, colour=colour)


def iron_screen(answer: Answer, place: str = "") -> list[Block]:
    """The blocks of the screen, the worst first."""
    seams = [seam.name for seam in answer.seams]
    shown = [_known(place, seams)] if place else seams
    verdicts = by_place(answer)
    blocks: list[Block] = [*_clashes(answer, shown if place else [])]
    if len(shown) == 1:
        blocks += _one(answer, shown[0], verdicts.get(("seam", shown[0]), {}))
    else:
        blocks += _table(answer, shown, verdicts)
    over = OVER.format("20 to 70" if answer.units == "us" else "10 to 40")
    told = [("sole", over), *_burns(answer, shown if place else []), ("more", ALL)]
    return [*blocks, Heading(""), Rows(tuple(told))]


def _known(place: str, seams: list[str]) -> str:
    found = [name for name in seams if name.casefold() == place.strip().casefold()]
    if not found:
        near = nearest(place, seams)
        listed = None if near else f"one of {', '.join(seams)}"
        raise InputError(Problem(f"no place '{place}' in this garment", None, listed, near))
    return found[0]


def _clashes(answer: Answer, places: list[str]) -> Iterator[Block]:
    """The clashes under the iron, with their numbers; of one place only its own."""
    found = [
        c
        for c in answer.conflicts
        if any(aspect.startswith("press.") for aspect in c.aspects)
        and (not places or set(places) & set(c.places))
    ]
    clear = BESIDE if any(item.kind == "near" for item in answer.instructions) else CLEAR
    yield Title(f"{answer.garment}: the iron", "" if found else clear)
    for conflict in found:
        where = f"{', '.join(conflict.places)}: " if len(answer.seams) > 1 else ""
        text = f"{where}{degree(conflict)}. {conflict.message}"
        yield Para(text, True, f"{conflict.number:2} ")
        for at, cure in enumerate(conflict.remedies[:2]):
            yield Para(
                f"{cure.text} {cure.then or ''}".strip(), False, "   or  " if at else "   do  "
            )
    for item in answer.instructions:
        if not places or set(places) & set(item.places):
            yield Para(item.text, False, "  - ")


def _one(answer: Answer, place: str, verdicts: Verdicts) -> Iterator[Block]:
    iron = _setting(answer, place)
    found = next((i for i in answer.iron or () if (i.scope, i.place) == ("seam", place)), None)
    yield Heading(f"Set for {place}")
    rows = [] if iron is None else [("iron", iron.text)]
    longest, dwell = longest_press(answer, place), verdicts.get(DWELL)
    ruled = is_stricter(dwell, longest)
    lines = [aspect for aspect in PRESS if aspect != DWELL or ruled]
    told = [text for text, verdict in line_parts(verdicts, lines)]
    if told:
        rows.append(("press", ", ".join(told)))
    rows += at_a_time(dwell, longest, answer)
    rows += _drops(answer, {place, *(x.name for x in (found.layers if found else ()))}, verdicts)
    waits = [r for r in answer.heat or () if r.place == place and r.touch_safe_after_s]
    if waits:
        parts = " and ".join(dict.fromkeys(waits[0].hard_parts))
        rows.append(("hot", f"{parts}: {wait_words(waits[0].touch_safe_after_s or ())}"))
    yield Rows(tuple(rows))
    if found is not None:
        yield Heading("From the iron down")
        yield Picture(tuple(picture(found, answer.units)))
        yield Rows(tuple((layer.name, _why(found, layer.name)) for layer in found.layers))


def _drops(answer: Answer, about: set[str], verdicts: Verdicts) -> list[tuple[str, str]]:
    """What the rule that sets the damp of a place has her do about the iron's water."""
    damp = verdicts.get(MOISTURE)
    said = () if damp is None else (*damp.because, *damp.given_up)
    rules = [claim.rule.removeprefix("rule ") for claim in said]
    told = [t for t in answer.advice if t.rule in rules and t.place in about]
    first = min(told, key=lambda t: rules.index(t.rule), default=None)
    return [] if first is None else [("water", first.text)]


def _why(found: ToldIron, name: str) -> str:
    """Who sets a layer's limit, in a sentence."""
    layer = next(x for x in found.layers if x.name == name)
    who = "" if layer.who == layer.name else f"{layer.who}: "
    return f"{who}{layer.why}"


def _table(
    answer: Answer, places: list[str], verdicts: dict[tuple[str, str], Verdicts]
) -> Iterator[Block]:
    yield Heading("Place by place")
    alike: dict[tuple[str, str, str], list[str]] = {}
    for place in places:
        iron = _setting(answer, place)
        if iron is None:
            continue
        here = verdicts.get(("seam", place), {})
        told = [text for text, _ in line_parts(here, SHORT)]
        motion = here.get(MOTION)
        if motion is not None and motion.pick == HOVERED:
            told.insert(0, motion.text)  # who reads only this row would set the iron down
        how = ", ".join(told) if iron.mark else ""
        most = at_most_words(here.get(DWELL), longest_press(answer, place), answer)
        most = most if iron.mark else ""
        alike.setdefault((iron.text, how, most), []).append(place)
    rows = tuple((", ".join(names), *same) for same, names in alike.items())
    yield Columns(("place", "iron", "press", "at a time"), rows, (4, 5, 3, 2))


def _setting(answer: Answer, place: str) -> ToldIronSetting | None:
    return next((i for i in answer.irons if (i.scope, i.place) == ("seam", place)), None)


def _burns(answer: Answer, places: list[str]) -> Iterator[tuple[str, str]]:
    """What burns here and nowhere else."""
    told = [
        c.text
        for c in answer.cautions
        if c.kind == "burn"
        and not c.general
        and (not places or not c.about or set(places) & set(c.about))
    ]
    for at, text in enumerate(dict.fromkeys(told[:MOST_CAUTIONS])):
        yield ("" if at else "mind", text)
