"""Which buttons go through which holes, and which only adorn, told by the names of their places.

A button without a hole of its own goes through one that no other buttons go through. What is said
to be for show, an ear or an eye of a toy as well, closes nothing; a button with its own loop is
closed by that.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.project.garment import Garment, Seam, Use
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

BUTTON, HOLES, LOOP, SNAP = "button", "buttonhole", "loop", "snap"
WITH_LOOP: Final = "button-with-its-loop"
"""The method that makes the loop with its button."""
FOR_SHOW: Final = "button-for-show"
"""The method of buttons that close nothing, whatever they are called."""
PAIR: Final = 2
DOUBLE: Final = 2
"""Buttons to a hole of a double-breasted front."""
LINES: Final = (nouns.FRONT_LINE, nouns.CUFF_LINE)
"""Words of holes that lie in one line, or at one end, with the buttons of a neighbour."""
PLAIN: Final = frozenset({(BUTTON,), (HOLES,), ("covered", BUTTON)})


def on_a_front(seam: Seam) -> bool:
    """Whether its buttons may lie down a front: those of a cuff or a pocket are smaller ones."""
    return not nouns.NO_FRONT_BUTTONS & set(singular_words(seam.name))


def for_show(seam: Seam) -> bool:
    """Whether its buttons are said to close nothing."""
    shown = seam.method == FOR_SHOW or speaks_of(seam.name, nouns.ONLY_SHOWN)
    return seam.place == BUTTON and shown


def has_own_loop(seam: Seam) -> bool:
    """Whether a loop is named together with its button, or the method makes both."""
    return seam.method == WITH_LOOP or {LOOP, BUTTON} <= set(singular_words(seam.name))


def through_loops(button: Seam, garment: Garment) -> bool:
    """Whether these buttons go through loops, so that no hole is cut for them."""
    holes = holes_of(button, garment)
    looped = (LOOP in (*singular_words(h.name), *singular_words(h.method)) for h in holes)
    return has_own_loop(button) or (bool(holes) and all(looped))


def alike(one: Seam, other: Seam, garment: Garment | None = None) -> bool:
    """Whether two lie at one place: a word in common, or the name of one says no place."""
    ours, theirs = _where(one, garment), _where(other, garment)
    return not ours or not theirs or bool(ours & theirs)


def _where(seam: Seam, garment: Garment | None) -> set[str]:
    """The words of a name that say where it lies, and not what is sewn there."""
    things = {word for name in seam.cloths() for word in singular_words(name)}
    if garment is not None:
        entries = (garment.cloths[name].entry for name in seam.cloths())
        things |= {word for entry in entries for word in singular_words(entry)}
    return set(singular_words(seam.name)) - things - nouns.HOW_HOLED


def half_for_show(button: Seam, holes: int) -> bool:
    """Whether there are twice as many as holes: one half closes, the other adorns the front.

    Only a front is double-breasted; a cuff with two buttons to a hole is closed to two widths.
    """
    front = not speaks_of(button.name, nouns.NO_FRONT_BUTTONS)
    return front and holes > 1 and button.making.times == DOUBLE * holes


def buttons_of(hole: Seam, garment: Garment) -> tuple[Seam, ...]:
    """The places whose buttons go through these holes or loops."""
    closing = _closing(garment)
    own = _own(hole, closing, garment)
    spare = tuple(s for s in without_holes(garment) if not _elsewhere(hole, s))
    holes = [s for s in garment.seams if s.place == HOLES]
    return own or spare or _left_over(hole, holes, closing, garment)


def _own(hole: Seam, closing: Sequence[Seam], garment: Garment) -> tuple[Seam, ...]:
    """The buttons at the place of a hole; where its name says none, those that are as many.

    Five loops that nobody placed are those of the one row of five, and not of six at the cuffs.
    """
    found = tuple(s for s in closing if alike(hole, s, garment))
    if len(found) < PAIR or _where(hole, garment) or not hole.making.counted:
        return found
    rows = tuple(s for s in found if s.making.counted and s.making.times == hole.making.times)
    return rows if len(rows) == 1 and all(s.making.counted for s in found) else found


def without_holes(garment: Garment) -> tuple[Seam, ...]:
    """The closing buttons of which no hole or loop has a like name."""
    closing = _closing(garment)
    holes = [s for s in garment.seams if s.place == HOLES]
    taken = {s.name for hole in holes for s in _own(hole, closing, garment)}
    return tuple(s for s in closing if s.name not in taken)


def left_over(button: Seam, garment: Garment) -> bool:
    """Whether all holes are counted, and are those of other buttons, just as many."""
    holes = [s for s in garment.seams if s.place == HOLES]
    rows = [buttons_of(hole, garment) for hole in holes]
    counted = all(hole.making.counted for hole in holes)
    return bool(holes) and counted and all(rows) and not any(button in row for row in rows)


def _closing(garment: Garment) -> list[Seam]:
    return [s for s in garment.seams if s.place == BUTTON and not (for_show(s) or has_own_loop(s))]


def _elsewhere(hole: Seam, button: Seam) -> bool:
    """Whether the two say that they lie at different spots: no front closes in a cuff.

    A strap is buttoned to what it holds up.
    """
    ours, theirs = (nouns.SPOTS & set(singular_words(seam.name)) for seam in (hole, button))
    if on_a_strap(hole) and theirs & nouns.STRAPPED:
        return False
    return bool(ours and theirs) and not ours & theirs


def on_a_strap(hole: Seam) -> bool:
    """Whether holes are worked in straps: two or more for a button let it be worn longer."""
    return speaks_of(hole.name, nouns.HOLDS_UP)


def _left_over(
    hole: Seam, holes: Sequence[Seam], closing: Sequence[Seam], garment: Garment
) -> tuple[Seam, ...]:
    """The one row that has just as many buttons over as these holes ask for, where they lie.

    The hole of a collar stand is the top one of the front, that of a placket the next to the cuff.
    """
    if not hole.making.counted:
        return ()
    lone = [h for h in holes if not any(alike(h, s, garment) for s in closing)]
    rows = []
    for row in (s for s in closing if s.making.counted and _beside(hole, s)):
        taken = sum(h.making.times for h in holes if alike(h, row, garment))
        shared = sum(h.making.times for h in lone if _beside(h, row))
        if taken and row.making.times in (taken + hole.making.times, taken + shared):
            rows.append(row)
    return tuple(rows) if len(rows) == 1 else ()


def _beside(hole: Seam, button: Seam) -> bool:
    """Whether a hole lies in the line of a row of buttons, or at the same end of a sleeve."""
    ours, theirs = set(singular_words(hole.name)), set(singular_words(button.name))
    return any(ours & line and theirs & line for line in LINES)


def holes_of(button: Seam, garment: Garment) -> tuple[Seam, ...]:
    """The places of holes or loops that these buttons go through."""
    holes = (s for s in garment.seams if s.place == HOLES)
    return tuple(hole for hole in holes if button in buttons_of(hole, garment))


def number_of_holes(button: Seam, garment: Garment) -> int | None:
    """How many holes there are for these buttons.

    None where nobody counted them, or other buttons go through them as well.
    """
    holes = holes_of(button, garment)
    own = all(h.making.counted and buttons_of(h, garment) == (button,) for h in holes)
    return sum(h.making.times for h in holes) if holes and own else None


def with_named(
    seams: Sequence[Seam], rows: Sequence[Mapping[str, Any]], notion: Callable[[str], str | None]
) -> tuple[Seam, ...]:
    """The places on a cloth, with the buttons or snaps of a sort that their `fastening` names.

    At holes that is done only where no place of its own sews the buttons on.

    Args:
        seams: the places as they are read.
        rows: what the project says of each.
        notion: the name of a notion's cloth, None where the words name none.
    """
    sewn = [s for s in seams if singular_words(s.name)[-1:] == (BUTTON,)]
    found = []
    for seam, row in zip(seams, rows, strict=True):
        said, words = str(row.get("fastening", "")), singular_words(seam.name)
        button = singular_words(said)[-1:] == (BUTTON,) and singular_words(said) not in PLAIN
        hole = HOLES in words or row.get("kind") == HOLES
        there = hole and any(alike(seam, other) for other in sewn)
        snap = singular_words(said)[-1:] == (SNAP,) and len(singular_words(said)) > 1
        unsaid = "layers" not in row and not there
        named = notion(said) if (button and unsaid) or (snap and not hole) else None
        on = seam.uses if "layers" in row else seam.uses[: 2 if hole else 1]
        uses = (*(use for use in on if use.cloth != named), *([Use(named)] if named else []))
        found.append(replace(seam, uses=uses) if named else seam)
    return tuple(found)
