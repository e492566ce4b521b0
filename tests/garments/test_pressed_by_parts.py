"""One panel that takes no iron leaves the rest of the garment its last press (common practice)."""

from __future__ import annotations

from advisor.claims.byparts import PARTS
from advisor.claims.workarounds import Instruction
from advisor.decide.advise import advise
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import advice, changed, known, work

JACKET, GILET = "more/skating_jacket", "more/gilet"


def _parted(name: str) -> list[Instruction]:
    return [i for i in advice(name).judgement.instructions if i.kind == PARTS]


def _last(found: Work) -> str:
    return found.tasks["last press"].step.does


def test_a_collar_of_fur_leaves_the_rest_its_press() -> None:
    """At no more than the coolest of what is pressed bears, and nowhere over the fur."""
    (one,) = _parted(JACKET)
    assert one.tender == {"fur", "leather"}
    assert one.needy == {"boucle", "gift", "lining"}
    assert one.most == 110
    step = work(JACKET).tasks["last press"].step
    assert step.does.startswith("Press it part by part, boucle, gift and lining")
    assert "smooth fur and leather with the hands" in step.does
    assert step.iron is not None
    assert step.iron.temperature_c <= 110


def test_a_garment_that_is_mostly_without_an_iron_has_none() -> None:
    """Its few seams that bear one were pressed as they were sewn."""
    assert _parted(GILET) == []
    assert _last(work(GILET)).startswith("Smooth the whole garment with the hands")


def test_a_garment_that_an_iron_suits_is_pressed_whole() -> None:
    """No fur, no parts."""
    fur = "{fabric: faux fur, fibres: {modacrylic: 100}, weight: 700 g/m2}"
    assert "part by part" not in _last(changed(JACKET, fur, "wool crepe 250 g/m2"))


def test_where_only_a_notion_is_pressed_nothing_is_parted() -> None:
    """No seam of its cloth takes an iron, so there is no part of it to press."""
    fur = "{fabric: faux fur, fibres: {modacrylic: 100}}"
    text = f"""
garment: Sample
fabrics: {{fur: {fur}, lace: {{notion: satin ribbon}}}}
seams:
  - {{name: ribbon trim, layers: [lace], length: 300 cm}}
  - {{name: side, layers: [fur, fur], length: 40 cm}}
"""
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    found = advise(garment, known()).judgement.instructions
    assert not [i for i in found if i.kind == PARTS]
