"""What a project seems to have forgotten: each with the line to write, the gravest first."""

from __future__ import annotations

from typing import Final

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldGap
from advisor.errors import for_shell
from advisor.render.guess_text import guess_section
from advisor.render.layout import heading, wrap
from advisor.render.printed.section import Item, Part, Section

TITLE: Final = "What seems to be missing"
MOST: Final = 5
"""How much of it a sheet tells; `check` tells all."""
UNTIL_WRITTEN: Final = (
    "Each is one more line below seams:, with its length; until it stands there, nothing of it is "
    "sewn, pressed or bought here."
)
"""What was assumed of all that seems to be missing."""


def gap_text(gap: ToldGap) -> str:
    """What seems to be missing, and the line to write."""
    return f"{gap.text}. Write: {gap.line}" if gap.line else f"{gap.text}."


def gap_lines(report: Answer) -> list[str]:
    """All of it."""
    if not report.missing:
        return []
    lines = heading(TITLE)
    for gap in report.missing:
        lines += wrap(f"{gap.place}: {gap_text(gap)}", "  - ")
    return lines + wrap(UNTIL_WRITTEN, "  ")


def no_steps(report: Answer) -> str:
    """That the order has no steps for it, and where to read what it is; "" where nothing is."""
    places = ", ".join(dict.fromkeys(gap.place for gap in report.missing or ()))
    if not places:
        return ""
    return (
        f"What seems to be missing at {places} has no steps here: advisor check "
        f"{for_shell(report.file)} says what it is, and the line to write."
    )


def gap_section(report: Answer) -> Section:
    """As much of it as a sheet tells."""
    gaps = report.missing or ()
    items = tuple(Item(gap.place, parts=(Part(gap_text(gap)),)) for gap in gaps[:MOST])
    more = f" {len(gaps) - MOST} more: advisor check {for_shell(report.file)}."
    close = UNTIL_WRITTEN + (more if len(gaps) > MOST else "")
    return Section("missing", TITLE, items, close=close if items else "")


def not_said(report: Answer) -> tuple[Section, Section]:
    """What names were taken to mean, and what seems to be missing."""
    return guess_section(report), gap_section(report)
