"""Takes remedies into a project file: proved first, written whole, read back before it counts."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct

from advisor.errors import InputError
from advisor.writing.meanwhile import refuse_changed

if TYPE_CHECKING:
    from advisor.claims.claimsets import ValueSet
    from advisor.claims.collect import Place
    from advisor.claims.conflicts import Conflict
    from advisor.claims.judgement import Judgement
    from advisor.decide.together import Together
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment


class Taken(Struct, frozen=True):
    """The lines that were written, as text, and what could not be kept of the file.

    `numbers` says what was taken, and how the rest is numbered now: a number that is typed again
    means another conflict.
    """

    lines: tuple[str, ...]
    notes: tuple[str, ...]
    numbers: tuple[str, ...]


def take_remedies(file: Path, words: str, known: Knowledge, seen: str = "") -> Taken:
    """Write remedies into a project.

    Args:
        file: the project.
        words: the numbers of remedies, `2` or `1,3.2`, or `all`.
        known: what the garment is judged by.
        seen: the mark of the text that the numbers belong to; nothing where it is read only now.

    Raises:
        InputError: nothing is so numbered, or together they cure nothing, or the file is no
            longer the one that was seen; nothing is written.
    """
    from advisor.answer.pipeline import Parts, decide
    from advisor.decide.taking import chosen
    from advisor.project.load import load_project
    from advisor.textio.files import update_file

    advice = decide(load_project(file, known), known, Parts(file=str(file))).remedied
    together = chosen(advice, words, known)

    def change(text: str) -> str:
        refuse_changed(text, seen, file)
        return rewritten(text, together, known, file)

    notes = update_file(file, change)
    numbers = _numbers(advice.judgement, together, known)
    return Taken(tuple(line.text for line in together.lines), notes, numbers)


def rewritten(text: str, together: Together, known: Knowledge, file: Path) -> str:
    """The text of a project with remedies in it, read back as the garment that was proved.

    Raises:
        InputError: the lines have no place in it, or would not say what was proved.
    """
    from advisor.project.load import garment_of
    from advisor.project.taking import with_lines
    from advisor.textio.yamlfile import parse_yaml

    new = with_lines(text, together.lines, str(file))
    _must_be(garment_of(parse_yaml(new, str(file)), known), together.after, known, file)
    return new


CLEANING = "how it is cleaned"
"""What a clash is about that is of two treatments at once, and so of no aspect."""


def _numbers(before: Judgement, together: Together, known: Knowledge) -> tuple[str, ...]:
    """What each number meant that was taken, and the new number of whatever has another."""

    def called(conflict: Conflict) -> str:
        about = known.aspects.get(conflict.aspect)
        title = CLEANING if about is None else about.title
        return f"{', '.join(conflict.places)} ({title})"

    was = {conflict.key: n for n, conflict in enumerate(before.conflicts, 1)}
    taken = [f"{n}, {called(before.conflicts[n - 1])}" for n, _ in together.picks]
    moved = [
        f"{called(conflict)} was {was[conflict.key]} and is {n} now"
        for n, conflict in enumerate(together.after.conflicts, 1)
        if was.get(conflict.key, n) != n
    ]
    told = [f"Taken: the remedy of {'; of '.join(taken)}."]
    return (*told, *([f"Other numbers now: {'; '.join(moved)}."] if moved else []))


def _must_be(garment: Garment, proved: Judgement, known: Knowledge, file: Path) -> None:
    """Refuse what would not read back as the garment that was proved."""
    from advisor.decide.evaluate import judge

    if _allowed(judge(garment, known)) != _allowed(proved):
        raise InputError(
            f"{file}: this remedy cannot be written into the project as it stands; write it by hand"
        )


def _allowed(judgement: Judgement) -> dict[tuple[Place, str], ValueSet]:
    """What is allowed in every place, which is all that a remedy may change."""
    return {
        (place, aspect): verdict.allowed
        for place, found in judgement.verdicts.items()
        for aspect, verdict in found.items()
    }
