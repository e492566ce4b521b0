"""The facts of a place are worked out once, however many pieces of work ask for them."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.order.kinds import SeamPlace
from advisor.order.otherfacts import Answers, AskedOnce
from tests.garments.whole import NAMES, places, work


def test_a_fact_is_worked_out_once_for_each_place() -> None:
    """Asked of the same place it is remembered; of one that only looks the same it is not."""
    asked: list[tuple[str, str]] = []

    def answers(place: SeamPlace) -> Answers:
        def curved() -> bool:
            asked.append(("curved", place.name))
            return place.said("shape") == "curved"

        return {"curved": curved}

    told, here = AskedOnce(answers), [*places(work(NAMES[0])).values()]
    for _ in range(3):
        assert [p.said("shape") == "curved" for p in here] == [told.of("curved", p) for p in here]
    assert [("curved", p.name) for p in here] == asked
    told.of("curved", replace(here[0], alone="petticoat"))
    assert len(here) + 1 == len(asked)
