"""Through a stack, against circles measured one by one and against the turn of cloth."""

from __future__ import annotations

import math

import pytest

from advisor.answer.pipeline import answer
from advisor.craft import allowance, rolled
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped


@pytest.mark.parametrize("radius", [0.0, 3.0, 40.0])
def test_each_layer_runs_on_its_own_half_circle(radius: float) -> None:
    """Coating 2 mm, canvas 0.5 mm, coating 2 mm: canvas 3.93 and the outside 7.85 mm longer."""
    layers, at, arcs = (2.0, 0.5, 2.0), radius, []
    for thick in layers:
        arcs.append(math.pi * (at + thick / 2))
        at += thick
    found = rolled.longer_by(layers)
    assert [arc - arcs[0] for arc in arcs] == pytest.approx(found)
    assert (0.0, 3.927, 7.854) == pytest.approx(found, abs=0.001)


def test_the_outermost_is_the_turn_of_cloth() -> None:
    """Two unlike plies and what lies between, at any angle."""
    for degrees in (90, 135, 180):
        inner, between, outer = 0.3, 1.1, 2.4
        found = rolled.longer_by((inner, between, outer), degrees)
        wanted = allowance.turn_of_cloth(outer, inner, between, degrees)
        assert wanted == pytest.approx(found[-1])


def test_one_layer_is_no_longer_than_itself() -> None:
    """Nothing is added to it, and a stack without layers is refused."""
    assert (0.0,) == rolled.longer_by((1.5,))
    with pytest.raises(ValueError, match="layers"):
        rolled.longer_by(())


COLLAR = """
garment: collar
fabrics:
  coat: {fabric: wool coating, fibres: {wool: 100}, weight: 500 g/m2, thickness: 2 mm}
  canvas: {fabric: linen suiting, fibres: {linen: 100}, weight: 200 g/m2, thickness: 0.5 mm}
seams:
  - {name: collar edge, layers: [coat, canvas, coat], length: 50 cm, edge: turned}
  - {name: side, layers: [coat, coat], length: 50 cm}
"""


def test_a_collar_tells_its_layers_one_by_one() -> None:
    """The first layer is the outside; the innermost is what the others are measured by."""
    known = shipped()
    found = answer(garment_of(parse_yaml(COLLAR, "collar.yaml"), known), known)
    told = {seam.name: " ".join(seam.built.build_says) for seam in found.seams if seam.built}
    assert "coat 7.9 mm and canvas 3.9 mm longer across the roll" in told["collar edge"]
    assert "Through the stack" not in told["side"]
