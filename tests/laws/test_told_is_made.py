"""What the sheet tells of a place is made by a step of the order, over all garments at hand.

A view alone may read well: only beside the other does it show that an edge is told to be bound and
no step binds it, or that a length is drawn up and nobody runs a row.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from advisor.answer.pipeline import Parts, answer
from advisor.order.setups import OVERLOCKS
from advisor.project.load import load_project
from tests.told import written
from tests.typed import shipped as known

CHECKOUT = Path(__file__).resolve().parents[2]
FOLDERS = ("knowledge/examples", "tests/garments", "tests/garments/more")
FILES = sorted(path for folder in FOLDERS for path in (CHECKOUT / folder).glob("*.yaml"))
BY_ITSELF = {"none", "enclosed in the seam"}
DRAWN = {"gather", "draw-up", "ease", "pleat", "lay-pleats"}
SAID_BEFORE = (
    "not in yet",
    "in it yet",
    "before any steel is in",
    "elastic is in",
    "cord is in",
    "use ",
    "hrink",
)
"""Words of a step that stands before what keeps the press of a place cool is in."""
MOISTURES = ["dry", "damp cloth", "steam"]
ROUNDED = 1.0
"""A limit that is published as 300 °F is told as 149 °C, one of 150 °C as that."""


@pytest.fixture(scope="module", params=FILES, ids=lambda path: path.stem)
def told(request: pytest.FixtureRequest) -> dict[str, Any]:
    """The sheet and the order of one garment."""
    garment = load_project(request.param, known())
    return written(answer(garment, known(), Parts(shopping=True, order=True, iron=True)))


def steps_at(told: dict[str, Any], place: str) -> list[dict[str, Any]]:
    """The steps of an order that are about few things, this place among them."""
    return [step for step in told["order"] if place in step["on"] and len(step["on"]) <= 2]


def by_place(told: dict[str, Any], aspect: str) -> dict[str, dict[str, Any]]:
    """The verdicts on one aspect by the names of places."""
    return {v["place"]: v for v in told["verdicts"] if v["aspect"] == aspect}


def test_an_edge_that_is_told_to_be_neatened_is_neatened_by_a_step(told: dict[str, Any]) -> None:
    stitch = by_place(told, "stitch.type")
    for place, verdict in by_place(told, "seam.finish").items():
        steps = steps_at(told, place)
        sewn_over = verdict["pick"] == "overlocked" and stitch[place]["pick"] in OVERLOCKS
        if not steps or sewn_over or verdict["pick"] in BY_ITSELF or verdict["pick"] is None:
            continue
        done = {step["operation"] for step in steps}
        neat = any(each.startswith("neaten") for each in done) or done >= {"row", "trim"}
        assert neat, (place, verdict["text"], sorted(done))


def test_what_is_told_to_be_fuller_is_drawn_up_or_laid_by_a_step(told: dict[str, Any]) -> None:
    for seam in told["seams"]:
        steps = {step["operation"] for step in steps_at(told, seam["name"])}
        full = seam["fullness"]
        if steps and full and full["ratio"] > 1.15:
            assert steps & DRAWN, (seam["name"], full["says"], sorted(steps))


def test_no_press_of_a_place_is_hotter_or_wetter_than_is_told_there(told: dict[str, Any]) -> None:
    heat, water = by_place(told, "press.temperature"), by_place(told, "press.moisture")
    for step in told["order"]:
        iron, place = step["iron"], step["on"][0] if len(step["on"]) == 1 else ""
        if not iron or place not in heat or any(word in step["does"] for word in SAID_BEFORE):
            continue
        most = heat[place]["high"]
        if most is not None and iron["at_most_c"] is not None:
            assert iron["at_most_c"] <= most + ROUNDED, (step["step"], iron, most)
        wettest = water[place]["high"] if place in water else None
        if wettest in MOISTURES and iron["moisture"] in MOISTURES:
            assert MOISTURES.index(iron["moisture"]) <= MOISTURES.index(wettest), step["step"]


def test_no_two_steps_of_an_order_read_the_same(told: dict[str, Any]) -> None:
    words = [step["does"] for step in told["order"]]
    assert len(words) == len(set(words))
