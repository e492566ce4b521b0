"""The whole answer to a project, as the sheet prints it and the page shows it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from advisor.engine.advise import Advice, advise
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
    from advisor.sheet.heat.report import add_heat, heat_of
    from advisor.sheet.report import report

    advice, heat = heat_of(advise(garment, knowledge), knowledge, full=full)
    data = report(advice, knowledge, shopping=True)
    add_heat(data, heat, garment, knowledge)
    if file:
        from advisor.sheet.order.report import add_order

        add_order(data, advice, knowledge, file)
    return advice, data


def iron_rows(advice: Advice, knowledge: Knowledge) -> Sequence[dict[str, Any]]:
    """What every layer of every place bears, for the picture."""
    from advisor.sheet.iron.report import iron_report

    return iron_report(advice.judgement, knowledge)
