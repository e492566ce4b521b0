"""The shorter answers: conflicts alone, and the iron across the layers of every place."""

from __future__ import annotations

from typing import Any

from advisor.knowledge.model import Knowledge
from advisor.render.heat_text import heat_lines
from advisor.render.iron_text import render_iron
from advisor.render.layout import heading
from advisor.render.printed.detailed import caution_lines, conflict_lines, unknown_lines
from advisor.render.printed.numbers import Numbers


def render_conflicts(report: dict[str, Any]) -> str:
    """The conflicts alone."""
    numbers = Numbers(report)
    lines = heading(report["garment"], 1) + conflict_lines(report, numbers)
    if report["conflicts"]:
        lines += numbers.lines()
    return "\n".join(lines) + "\n"


def render_iron_answer(
    report: dict[str, Any], rows: list[dict[str, Any]], knowledge: Knowledge
) -> str:
    """What can go wrong under the iron, each place's layers, and what burns."""
    numbers = Numbers(report)
    heat = {
        **report,
        "conflicts": [c for c in report["conflicts"] if c["aspect"].startswith("press.")],
        "cautions": [c for c in report["cautions"] if c["kind"] == "burn" or c["area"] == "press"],
    }
    lines = heading(f"{report['garment']}: the iron across its layers", 1)
    lines += conflict_lines(heat, numbers)
    lines += render_iron(rows, report, knowledge) + heat_lines(report)
    lines += caution_lines(heat, numbers)
    lines += unknown_lines([u for u in report["unknowns"] if "limit_c" in u])
    return "\n".join(lines + numbers.lines()) + "\n"
