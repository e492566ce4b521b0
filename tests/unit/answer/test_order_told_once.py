"""The order of work as it is told: no reason twice."""

from __future__ import annotations

import pytest

from advisor.answer.orderwhys import whys
from tests.unit.order.order_projects import demo, demo_names


@pytest.mark.parametrize("name", demo_names())
def test_a_reason_is_told_once(name: str) -> None:
    """Of other places it is the same sentence, and what it rests on stays in the answer."""
    work = demo(name)
    named = {task.place.name.lower() for task in work.tasks.values() if task.place}
    places = sorted(named, key=lambda place: (-len(place), place))
    told = [reason.partition(": ")[2].lower() for reason in whys(work).values()]
    assert told
    for place in places:
        told = [reason.replace(place, "") for reason in told]
    assert len(set(told)) == len(told)
    assert sum(map(len, work.reasons.values())) > len(told)
