"""Which buttons go through which holes, which only adorn, and which are bought. Common practice."""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import WHOLE, answer
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

COAT = """
garment: Sample
fitting: loosely
fabrics: {cloth: {fabric: tweed, fibres: {wool: 100}}}
seams:
  - {name: side, layers: [cloth, cloth], length: 40 cm, times: 2}
  - {name: neck facing, layers: [cloth, cloth], length: 40 cm, edge: turned}
  - {name: hem, layers: [cloth], length: 100 cm, edge: hem}
"""
HOLES = "  - {name: front buttonholes, fastening: buttonholes, on: cloth, number: 3}\n"
SHELL_HOLES = HOLES.replace("fastening: buttonholes", "fastening: shell button")
FRONT = "  - {name: front buttons, layers: [cloth, {notion: shell button}], times: 3}\n"
DOUBLE = FRONT.replace("times: 3", "times: 6")
EARS = "  - {name: ear buttons, layers: [cloth, {notion: horn button}], times: 2}\n"
NECK = "  - {name: neck loop and button, layers: [cloth, {notion: horn button}]}\n"


@cache
def told(places: str) -> Answer:
    """The whole answer to a coat with some fastenings."""
    known = shipped()
    return answer(garment_of(parse_yaml(COAT + places, "p.yaml"), known), known, WHOLE)


def steps(places: str) -> dict[str, str]:
    """What is done in each step of its order, in order."""
    work = told(places).work
    assert work is not None
    return {row.step: row.does for row in work.order}


def bought(places: str) -> dict[str, float | None]:
    """How many of each button are bought."""
    return {row.item: row.number for row in told(places).kit or () if "button" in row.item}


@pytest.mark.parametrize("others", ["", EARS, NECK])
def test_buttons_named_at_their_holes_are_bought_and_sewn_on(others: str) -> None:
    """Whatever other buttons there are, and never a nameless one."""
    found = bought(SHELL_HOLES + others)
    assert found["shell button"] == 3
    assert not [item for item in found if item.startswith("button (")]
    assert (
        "mark the buttons through"
        in steps(SHELL_HOLES + others)["sew the buttons of front buttonholes"]
    )


def test_buttons_of_a_place_of_their_own_are_not_bought_twice() -> None:
    """Though the holes name them as well."""
    assert bought(SHELL_HOLES + FRONT)["shell button"] == 3


def test_a_button_at_a_hole_keeps_the_iron_as_low_as_it_bears() -> None:
    """And the hole is told to be interfaced all the same."""
    found = told(SHELL_HOLES)
    (limit,) = (
        v.limit
        for v in found.verdicts
        if v.place == "front buttonholes" and v.aspect == "press.temperature"
    )
    assert limit == 110
    assert any("behind each buttonhole" in task.text for task in found.advice)


def test_the_plain_word_button_names_no_kind_of_button() -> None:
    """It says what closes there, and nothing of what is bought."""
    garment = garment_of(
        parse_yaml(COAT + HOLES.replace("fastening: buttonholes", "fastening: button"), "p.yaml"),
        shipped(),
    )
    assert set(garment.cloths) == {"cloth"}


def test_twice_as_many_buttons_as_holes_make_a_double_breasted_front() -> None:
    """Half of them close, and half are for show: taken so, and told."""
    found = told(HOLES + DOUBLE)
    assert found.checks == ()
    assert any(
        u.fact.startswith("front buttons: 6 for 3") and "3 are for show" in u.effect
        for u in found.unknowns
    )
    assert "half, for show" in steps(HOLES + DOUBLE)["fasten front buttons"]


def test_five_buttons_for_three_holes_are_a_slip() -> None:
    """And so are two for one."""
    five = told(HOLES + DOUBLE.replace("6", "5")).checks or ()
    assert [check.id for check in five] == ["buttons"]
    two = told(HOLES.replace("3", "1") + DOUBLE.replace("6", "2")).checks or ()
    assert [check.id for check in two] == ["buttons"]


def test_what_is_for_show_closes_nothing() -> None:
    """It is sewn flat, goes through no hole and is no answer to one."""
    does = steps(HOLES + EARS)
    assert "close nothing" in does["sew on ear buttons"]
    assert "sew the buttons of front buttonholes" in does
    assert any(u.fact == "no buttons are named" for u in told(HOLES + EARS).unknowns)


def test_a_loop_that_is_named_with_its_button_is_made_and_caught_in() -> None:
    """It lies in the edge before that is faced; the button comes when the edge is closed."""
    order = list(steps(HOLES + FRONT + NECK))
    loop = order.index("baste the loop of neck loop and button")
    assert loop < order.index("join neck facing")
    assert order.index("sew hem") < order.index("sew on the button of neck loop and button")


CUFFS = (
    "  - {name: cuff buttonholes, fastening: buttonholes, on: cloth, number: 2}\n"
    "  - {name: cuff buttons, layers: [cloth, {notion: horn button}], length: 80 cm}\n"
)
UNCOUNTED = FRONT.replace(", times: 3", ", length: 80 cm")


def test_each_row_of_holes_tells_the_number_of_its_own_buttons() -> None:
    """Whatever other holes there are; nobody is asked to count them again."""
    found = bought(HOLES + UNCOUNTED + CUFFS)
    assert (3, 2) == (found["shell button"], found["horn button"])
    assert told(HOLES + UNCOUNTED + CUFFS).checks == ()


def test_buttons_that_nobody_counted_contradict_no_holes() -> None:
    """Though their name is another: as many are bought as there are holes."""
    back = UNCOUNTED.replace("front buttons", "placket buttons")
    assert told(HOLES + back).checks == ()
    two = told(HOLES + back.replace("length: 80 cm", "times: 2")).checks or ()
    assert ["buttons"] == [check.id for check in two]
