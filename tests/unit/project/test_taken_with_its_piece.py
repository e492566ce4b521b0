"""A remedy that takes a notion out of its seam takes the pieces that are cut of it along."""

from __future__ import annotations

from advisor.project.lines import Line
from advisor.project.load import garment_of
from advisor.project.taking import with_lines
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

GLUE = "woven fusible interfacing"
ROBE = f"""garment: Ferry robe
fabrics:
  shell: cotton flannel
seams:
  - {{name: collar edge, layers: [shell, {{notion: {GLUE}}}, shell], edge: turned}}
pieces:
  - {{name: collar, fabric: shell, width: 20 cm, height: 90 cm}}
  - {{name: collar support, fabric: {GLUE}, width: 20 cm, height: 90 cm}}
"""


def _cut_of(value: object) -> list[str]:
    text = with_lines(ROBE, [Line(("seams", "collar edge", "layers", 1), value)], "project.yaml")
    garment = garment_of(parse_yaml(text, "project.yaml"), shipped())
    return [piece.cloth for piece in garment.plan.pieces]


def test_a_piece_is_cut_of_what_comes_instead() -> None:
    """It keeps its size and its name."""
    assert _cut_of({"notion": "silk organza"}) == ["shell", "silk organza"]


def test_a_piece_of_what_is_left_out_is_cut_no_more() -> None:
    """Nothing takes the place of the interfacing."""
    assert _cut_of(None) == ["shell"]
