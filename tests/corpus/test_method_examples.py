"""Each method of the knowledge against its own example: its stages, each once and in order."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest

from advisor.decide.advise import advise
from advisor.order.work import Work, order_of
from advisor.project.load import garment_of
from advisor.textio.yamlfile import Document, Positions
from tests.typed import shipped

KNOWN = shipped()
METHODS = sorted(KNOWN.places.methods)
PICKED = [id_ for id_ in METHODS if KNOWN.places.methods[id_].example["picked"] == "yes"]


@cache
def work(id_: str, *, named: bool) -> Work:
    """The order of the example; with or without the method named there."""
    example = KNOWN.places.methods[id_].example
    place = {**example["place"], "method": id_} if named else dict(example["place"])
    if not named:
        place.pop("method", None)
    data: dict[str, Any] = {
        "garment": "Example",
        "fitting": "to the body",
        "maker": {"machine": "household", "overlocker": "4-thread"},
        "fabrics": {name: {"fabric": said} for name, said in example["fabrics"].items()},
        "seams": [place],
    }
    garment = garment_of(Document(data, Positions({}, {}), "example.yaml"), KNOWN)
    return order_of(advise(garment, KNOWN), KNOWN)


def test_there_are_enough_methods() -> None:
    """At least sixty ways to make a place, and one or more for each kind of place."""
    assert len(METHODS) >= 60
    made = {kind for method in KNOWN.places.methods.values() for kind in method.makes}
    assert set(KNOWN.places.kinds) == made


@pytest.mark.parametrize("id_", METHODS)
def test_a_named_method_gives_its_steps_in_order(id_: str) -> None:
    """Who names a method gets it: every step of the example, each once, in its order."""
    found = work(id_, named=True)
    example = KNOWN.places.methods[id_].example
    name = example["place"]["name"]
    steps = [f"{verb} {name}" for verb in example["steps"]]
    assert steps == [step for step in found.order if step in steps]
    places = {t.place.method.id for t in found.tasks.values() if t.place}
    assert {id_} == places


@pytest.mark.parametrize("id_", PICKED)
def test_a_method_is_picked_where_its_example_says_so(id_: str) -> None:
    """Where nobody names a method, the engine picks it by what it fits."""
    found = work(id_, named=False)
    assert {id_} == {t.place.method.id for t in found.tasks.values() if t.place}


@pytest.mark.parametrize("id_", METHODS)
def test_the_stages_of_a_method_stand_once_and_in_order(id_: str) -> None:
    """Whatever the search does, a place is made in the order of its method."""
    found = work(id_, named=True)
    stages = [found.tasks[name].stage for name in found.order if found.tasks[name].place]
    assert sorted(stages) == stages
    assert len(set(stages)) == len(stages)
