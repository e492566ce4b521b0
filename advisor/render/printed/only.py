"""One section of the sheet by itself: as it stands there, or in full where there is more to say."""

from __future__ import annotations

from advisor.answer.model.answer import Answer
from advisor.render.layout import heading
from advisor.render.making_blocks import (
    cloth,
    kit,
    seams_in_full,
    shopping,
    tests_in_full,
    thread,
)
from advisor.render.printed.blocks import sections
from advisor.render.printed.compact import WIDTH, section_lines
from advisor.render.printed.digest import digest
from advisor.render.printed.numbers import Numbers
from advisor.render.printed.section import Section


def render_only(report: Answer, name: str) -> str:
    """The section of that name, with the sources that it cites."""
    numbers = Numbers(report, most=2, short=True)
    found = _found(report, numbers, name)
    titles = {"shopping": "shopping list", "tests": "tests on scraps", "seams": "seams"}
    lines = heading(f"{report.garment}: {titles.get(name, name)}", 1)
    for section in found:
        lines += section_lines(section)
    if not found:
        lines += ["", "  Nothing to say here."]
    return "\n".join(lines + numbers.lines(WIDTH)) + "\n"


def _found(report: Answer, numbers: Numbers, name: str) -> list[Section]:
    if name == "shopping":
        return shopping(report, numbers)
    if name == "kit":
        return kit(report, numbers)
    if name in ("cloth", "thread"):
        return cloth(report, numbers) if name == "cloth" else thread(report, numbers)
    if name == "tests":
        return [tests_in_full(report, numbers)]
    every = sections(report, numbers, digest(report, everything=True))
    found = [section for section in every if section.id == name]
    if name == "seams":
        found.append(seams_in_full(report, numbers))
    return found
