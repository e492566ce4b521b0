"""The price of a change: what is charged, what is not, and which way round."""

from __future__ import annotations

import dataclasses

import pytest
from msgspec.structs import replace

from advisor.order.costs import ChangedPart, CostTable
from advisor.order.steps import IronState, MachineState

PLAIN = MachineState(
    "household", "black", "black", "universal", 80, "standard", "standard", "lockstitch", "firm"
)
OVERLOCK = dataclasses.replace(PLAIN, machine="overlocker", stitch="overlock")
COOL = IronState(110, "dry", "board")

# The weights that the shipped table starts from: our estimates, in minutes.
WEIGHTS = [
    ({"size": 70}, "needle", 2),
    ({"point": "sharp"}, "needle", 2),
    ({"point": "sharp", "size": 70}, "needle", 2),
    ({"thread_above": "red"}, "thread", 2),
    ({"thread_below": "red"}, "bobbin", 1),
    ({"foot": "zip"}, "foot", 1),
    ({"plate": "straight"}, "plate", 3),
    ({"tension": "light"}, "tension", 3),
    ({"stitch": "zigzag"}, "stitch", 0),
]


@pytest.mark.parametrize(("differs", "what", "minutes"), WEIGHTS)
def test_each_part_of_a_set_up_has_its_own_price(
    differs: dict[str, object], what: str, minutes: int
) -> None:
    """One thing changed is charged once, by the estimate for that thing."""
    new = dataclasses.replace(PLAIN, **differs)  # type: ignore[arg-type]
    assert (ChangedPart(what, minutes * 60),) == CostTable().machine_parts(PLAIN, new)


def test_the_price_is_the_sum_of_its_parts() -> None:
    """Needle, foot and upper thread changed together cost what they cost apart."""
    new = dataclasses.replace(PLAIN, size=70, foot="zip", thread_above="red")
    assert (2 + 1 + 2) * 60 == CostTable().machine_seconds(PLAIN, new)


def test_an_overlocker_is_rethreaded_as_a_whole() -> None:
    """Upper and lower threads of an overlocker are one job of six minutes."""
    new = dataclasses.replace(OVERLOCK, thread_above="red", thread_below="red")
    assert (ChangedPart("threads", 360),) == CostTable().machine_parts(OVERLOCK, new)


def test_two_machines_do_not_disturb_each_other() -> None:
    """There is no price between set-ups of different machines, only for turning round."""
    with pytest.raises(ValueError, match="keep their own set-ups"):
        CostTable().machine_seconds(PLAIN, OVERLOCK)
    assert 30 == CostTable().turn_seconds


def test_an_iron_heats_faster_than_it_cools() -> None:
    """Down costs the five minutes of trade-iron-wait, up a minute."""
    hot = replace(COOL, temperature_c=200)
    assert 60 == CostTable().iron_seconds(COOL, hot)
    assert 300 == CostTable().iron_seconds(hot, COOL)


def test_moisture_and_surface_are_charged_apart_from_heat() -> None:
    """Steam and another board cost half a minute each."""
    new = IronState(110, "steam", "pile board")
    assert (ChangedPart("moisture", 30), ChangedPart("surface", 30)) == CostTable().iron_parts(
        COOL, new
    )


def test_equal_states_cost_nothing() -> None:
    """Nothing changed is nothing charged."""
    assert () == CostTable().machine_parts(PLAIN, PLAIN)
    assert () == CostTable().iron_parts(COOL, COOL)


@pytest.mark.parametrize("price", [-1.0, float("nan"), float("inf")])
def test_a_price_must_be_a_sum_of_time(price: float) -> None:
    """A negative or boundless price is refused by name."""
    with pytest.raises(ValueError, match="'needle'"):
        CostTable(needle=price)
