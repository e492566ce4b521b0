"""The whole answer to a project, as the sheet prints it and the page shows it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from advisor.claims.judgement import Advice
from advisor.decide.advise import advise
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment

if TYPE_CHECKING:
    from collections.abc import Sequence


def whole_answer(
    garment: Garment, knowledge: Knowledge, *, full: bool = False, file: str = ""
) -> tuple[Advice, dict[str, Any]]:
    """The advice for a garment and its report, with the heat, the shopping and the order of work.

    Args:
        garment: what is made.
        knowledge: what the advice comes from.
        full: compute the heat of every way of pressing, and not only of the advised one.
        file: what the project's file is called; without one there is no order of work.
    """
    from advisor.answer.core import report
    from advisor.answer.heat import add_heat, heat_of

    advice, heat = heat_of(advise(garment, knowledge), knowledge, full=full)
    data = report(advice, knowledge, shopping=True)
    add_heat(data, heat, garment, knowledge)
    if file:
        from advisor.answer.order import add_order

        add_order(data, advice, knowledge, file)
    return advice, data


def iron_rows(advice: Advice, knowledge: Knowledge) -> Sequence[dict[str, Any]]:
    """What every layer of every place bears, for the picture."""
    from advisor.answer.iron import iron_report

    return iron_report(advice.judgement, knowledge)
