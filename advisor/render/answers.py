"""The shorter answers: conflicts alone, and the iron across the layers of every place."""

from __future__ import annotations

from dataclasses import replace

from advisor.answer.model.answer import Answer
from advisor.errors import for_shell
from advisor.render.gap_text import gap_lines
from advisor.render.guess_text import guess_lines
from advisor.render.heat_text import heat_lines
from advisor.render.iron_text import render_iron
from advisor.render.layout import heading, wrap
from advisor.render.printed.detailed import (
    caution_lines,
    check_lines,
    conflict_lines,
    gave_way_lines,
    unknown_lines,
)
from advisor.render.printed.numbers import Numbers


def render_check(report: Answer) -> str:
    """The conflicts with how each is taken, what was just taken, and how the parts are pressed."""
    numbers = Numbers(report)
    lines = heading(report.garment, 1)
    if report.taken is not None:
        lines += heading("Written into the project") + [f"  {text}" for text in report.taken]
    lines += conflict_lines(report, numbers) + _how_to_take(report)
    lines += check_lines(report) + guess_lines(report)
    lines += gap_lines(report) + gave_way_lines(report)
    if report.instructions:
        lines += heading("Work it so")
        for item in report.instructions:
            where = ", ".join(p for p in item.places if p != report.garment)
            text = f"{item.text} {numbers.mark(item.sources)}"
            lines += wrap(f"{where}: {text}" if where else text, "  - ")
    if report.conflicts or report.instructions:
        lines += numbers.lines()
    return "\n".join(lines) + "\n"


def _how_to_take(report: Answer) -> list[str]:
    """What to type for a remedy to be written into the project."""
    offered = [c for c in report.conflicts if c.remedies and c.remedies[0].take]
    if not offered:
        return []
    first = offered[0].remedies
    typed = f"advisor check {for_shell(report.file)}"
    text = f"{typed} --take {first[0].take} writes that remedy into the project"
    if len(first) > 1:
        text += f", --take {first[1].take} the one after 'or'"
    found = report.cure_all
    if found is not None and len(report.conflicts) > 1:
        then = " and what stands behind" if len(found.remedies) > len(found.takes) else ""
        text += f"; --take all takes {', '.join(found.takes)}{then}, which leaves no conflict"
    return wrap(f"{text}.", "   ")


def render_iron_answer(report: Answer) -> str:
    """What can go wrong under the iron, each place's layers, and what burns."""
    numbers = Numbers(report)
    heat = replace(
        report,
        conflicts=tuple(c for c in report.conflicts if c.aspect.startswith("press.")),
        cautions=tuple(c for c in report.cautions if c.kind == "burn" or c.area == "press"),
    )
    lines = heading(f"{report.garment}: the iron across its layers", 1)
    lines += conflict_lines(heat, numbers)
    lines += render_iron(report.iron or (), report) + heat_lines(report)
    lines += caution_lines(heat, numbers) + gave_way_lines(heat)
    lines += unknown_lines([u for u in report.unknowns if u.limit_c is not None])
    return "\n".join(lines + numbers.lines()) + "\n"
