"""Holes for a cord, buttons with no holes of their own, an armhole without a sleeve: as written.

Common practice: holes are worked when the edge is finished and before the last press, and the
cord goes in after it; a button goes through what lies at its own spot, and through nothing else.
"""

from __future__ import annotations

import pytest

from advisor.decide.usedup import used_up
from advisor.errors import InputError
from advisor.order.missing import missing
from advisor.project.buttons import holes_of
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands

JERKIN = """garment: Warden's coat
fitting: to the body
fabrics:
  shell: {fabric: wool coating, fibres: {wool: 100}}
  mount: {fabric: canvas, fibres: {cotton: 100}}
  inner: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: side, layers: [shell, shell], length: 24 cm, times: 2}
  - {name: shoulder, layers: [shell, shell], length: 13 cm, times: 2}
  - {name: armhole, layers: ARMHOLE, length: 48 cm, times: 2}
  - {name: front facing, layers: [shell, shell], length: 52 cm, edge: turned, times: 2}
  - {name: hem, layers: [shell], length: 100 cm, edge: hem}
  - {name: front eyelets, on: [shell, mount], fastening: LACED, number: 24}
"""
BLOUSE = """garment: Ferry blouse
fitting: to the body
fabrics:
  body: {fabric: cotton poplin}
  sleeve: {fabric: cotton lawn}
seams:
  - {name: shoulder, layers: [body, body], length: 12 cm, times: 2}
  - {name: side, layers: [body, body], length: 42 cm, times: 2}
  - {name: armhole, layers: [body, sleeve], length: 48 cm, times: 2}
  - {name: sleeve seam, layers: [sleeve, sleeve], length: 45 cm, times: 2}
  - {name: cuff opening, kind: edge, layers: [sleeve], length: 8 cm, times: 2}
  - {name: cuff, layers: [body, {use: sleeve, fullness: 2}], length: 22 cm, times: 2}
  - {name: neck tie, kind: collar, layers: [body, body], length: 42 cm}
  - {name: hem, layers: [body], length: 110 cm, edge: hem}
  - {name: front buttons, fastening: buttons, on: body, number: 7}
  - {name: cuff buttons, fastening: button loops, on: body, number: 6}
"""


def jerkin(armhole: str = "[shell, inner]", laced: str = "lacing", more: str = "") -> str:
    return JERKIN.replace("ARMHOLE", armhole).replace("LACED", laced) + more


def read(text: str) -> Garment:
    return garment_of(parse_yaml(text, "project.yaml"), known())


def asked(text: str) -> set[str]:
    """What seems to be missing, by the rule that asks for it."""
    return {gap.rule.id for gap in missing(read(text), known())}


@pytest.mark.parametrize("armhole", ["[shell, inner]", "[shell, mount, inner]"])
def test_no_sleeve_is_asked_for_where_none_goes_in(armhole: str) -> None:
    """An armhole of the body and its lining is finished by itself."""
    assert "sleeve-not-closed" not in asked(jerkin(armhole))


def test_wings_are_no_sleeves() -> None:
    """Two like layers meet there, and what is set in is told of."""
    wings = "  - {name: wing edge, layers: [shell, inner], length: 34 cm, edge: turned, times: 2}\n"
    assert "sleeve-not-closed" not in asked(jerkin("[shell, shell, inner]", more=wings))


@pytest.mark.parametrize("armhole", ["[shell, shell]", "[shell, {use: inner, fullness: 1.4}]"])
def test_a_sleeve_that_nothing_closes_is_asked_about(armhole: str) -> None:
    """Two edges that are alike meet there, or one fuller than the other."""
    assert "sleeve-not-closed" in asked(jerkin(armhole))


@pytest.mark.parametrize("laced", ["lacing", "eyelets"])
def test_holes_come_before_the_last_press_and_the_cord_after_it(laced: str) -> None:
    """Whether the lacing is named or its holes; they are made on the finished, fitted edge."""
    found = ordered(jerkin(laced=laced))
    assert "laced-through-eyelets" == places(found)["front eyelets"].method.id
    assert stands(found, "fit", "make front eyelets")
    assert stands(found, "turn front facing", "make front eyelets")
    assert stands(found, "make front eyelets", "last press")
    assert stands(found, "last press", "lace up front eyelets")


def test_as_many_eyelets_are_bought_as_are_said() -> None:
    """They are counted, and the cord is measured by them."""
    garment = read(jerkin())
    method = {"front eyelets": places(ordered(jerkin()))["front eyelets"].method}
    bought = {row.item: row.number for row in used_up(garment, method, known())}
    assert 24 == next(n for item, n in bought.items() if item.startswith("eyelet"))


def test_buttons_go_through_nothing_at_another_spot() -> None:
    """The loops of the cuffs close no front, and the holes that are missing are asked for."""
    garment = read(BLOUSE)
    front = next(seam for seam in garment.seams if seam.name == "front buttons")
    assert () == holes_of(front, garment)
    assert "buttons-without-holes" in asked(BLOUSE)


def test_a_slit_is_made_while_the_sleeve_lies_flat() -> None:
    """Whatever it is called, an opening above a cuff comes before the seam of the sleeve."""
    found = ordered(BLOUSE)
    slit = [step for step in found.order if step.endswith("cuff opening")]
    assert slit
    assert all(stands(found, step, "join sleeve seam") for step in slit)


@pytest.mark.parametrize(
    ("old", "new", "means"),
    [
        ("fitting: to the body", "fit: to the body", "fitting"),
        ("fitting: to the body", "fitted: to the body", "fitting"),
        ("kind: collar", "role: collar", "kind"),
        ("kind: collar", "type: collar", "kind"),
    ],
)
def test_a_key_called_otherwise_is_named_once(old: str, new: str, means: str) -> None:
    """The key that is meant, and nothing that follows from the slip."""
    with pytest.raises(InputError) as refused:
        read(BLOUSE.replace(old, new))
    (problem,) = refused.value.problems
    assert (means,) == tuple(problem.nearest)


def test_a_band_is_said_by_its_kind() -> None:
    """`band:` is no key, and the line says what is."""
    with pytest.raises(InputError) as refused:
        read(BLOUSE.replace("kind: collar", "band: yes"))
    (problem,) = refused.value.problems
    assert "kind: cuff" in str(problem.expected)
