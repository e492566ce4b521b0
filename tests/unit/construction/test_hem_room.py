"""How deep a hem is told to be turned: by the figures of its method, or by what is cut for it."""

from __future__ import annotations

import pytest

from advisor.construction.hemroom import how_deep
from advisor.knowledge.places import Depth, Turn
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known

STRAIGHT, CURVED = Depth(40, 50, "down to {depth}"), Depth(15, 20, "{depth} deep, eased in")
WORKROOM = """
garment: Loft smock
units: UNITS
fabrics: {o: cotton poplin}
seams:
  - {name: hem, layers: [o], length: 100 cm, edge: hem, shape: SHAPE}
pieces: [{name: front, fabric: o, width: 50 cm, height: 80 cm HEM}]
"""


@pytest.mark.parametrize(
    ("shape", "units", "hers", "told"),
    [
        ("straight", "metric", "", "down to 4 to 5 cm"),
        ("straight", "us", "", "down to 1 5/8 to 2 in"),
        ("straight", "metric", ", hem: 7 cm", "down to 70 mm"),
        ("curved", "metric", "", "15 to 20 mm deep, eased in"),
        ("curved", "metric", ", hem: 12 mm", "12 mm deep, eased in"),
        ("curved", "us", ", hem: 7 cm", "5/8 to 3/4 in deep, eased in"),
    ],
)
def test_whatever_its_words_a_hem_is_told_by_its_figures(
    shape: str, units: str, hers: str, told: str
) -> None:
    """As it is cut; on a curve what is deeper than the usual does not lie."""
    text = WORKROOM.replace("UNITS", units).replace("SHAPE", shape).replace(" HEM", hers)
    assert told == deep(Turn("", STRAIGHT, CURVED, None, ""), text)


def test_what_takes_no_more_or_has_no_figure_keeps_its_own() -> None:
    """A hem that is rolled is rolled, and another thing's width is told in words."""
    text = (
        WORKROOM.replace("UNITS", "metric")
        .replace("SHAPE", "curved")
        .replace(" HEM", ", hem: 7 cm")
    )
    assert (
        deep(Turn("", None, None, Depth(6, 10, "{depth} allowed"), ""), text)
        == "6 to 10 mm allowed"
    )
    assert deep(Turn("as deep as the braid", None, None, None, ""), text) == "as deep as the braid"


def deep(turn: Turn, text: str) -> str:
    """How deep the one hem of a project is told to be."""
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    return how_deep(turn, garment.seams[0], garment)
