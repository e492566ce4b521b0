"""What places were taken for by their names alone, in one line."""

from __future__ import annotations

from typing import Final

from advisor.answer.model.answer import Answer
from advisor.render.layout import heading, wrap
from advisor.render.printed.section import Section

TITLE: Final = "Taken from names"


def guess_text(answer: Answer) -> str:
    """Every place of which only the name tells what it is, those taken alike together; or ""."""
    alike: dict[str, list[str]] = {}
    for place in answer.seams:
        if place.guess:
            alike.setdefault(place.guess, []).append(place.name)
    told = [f"{', '.join(names)} as {guess}" for guess, names in alike.items()]
    return f"{'; '.join(told)}; say kind: where that is wrong." if told else ""


def guess_lines(answer: Answer) -> list[str]:
    """The same below its heading."""
    text = guess_text(answer)
    return heading(TITLE) + wrap(text, "  ") if text else []


def guess_section(answer: Answer) -> Section:
    """The same as a section of a sheet."""
    return Section("guesses", TITLE, (), guess_text(answer))
