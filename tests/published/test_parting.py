"""What two cloths of a seam part by, against a published list of shrinkage and plain arithmetic.

Shrinkage of plain cotton 2.5 and 6 %, of mercerised plain cotton 3.5 and 3.5 % (weft and warp): a
trade list, seen in part (second round of the reference notes); that cleaners call up to 3 % normal:
`lcn-shrinkage-2019`.
"""

from __future__ import annotations

import pytest

from advisor.answer.pipeline import answer
from advisor.craft import shrinkage
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

UNLIKE = """
garment: two cottons
fabrics:
  plain:
    {fabric: cotton poplin, fibres: {cotton: 100}, weight: 120 g/m2,
     shrinks: 6 %, shrinks across: 2.5 %}
  fine:
    {fabric: cotton lawn, fibres: {cotton: 100}, weight: 80 g/m2,
     shrinks: 3.5 %, shrinks across: 3.5 %}
seams:
  - {name: side, layers: [plain, fine], length: 60 cm}
  - {name: back, layers: [plain, plain], length: 40 cm}
"""


@pytest.mark.parametrize(
    ("length", "one", "other", "far"),
    [(600, 0.06, 0.035, 15.0), (600, 0.025, 0.035, 6.0), (1000, 0.07, 0.0, 70.0)],
)
def test_edges_part_by_the_difference_of_their_shares(
    length: float, one: float, other: float, far: float
) -> None:
    """60 cm of plain against mercerised cotton: 15 mm along the warp, 6 mm along the weft."""
    assert far == pytest.approx(shrinkage.apart(length, one, other))
    assert far == pytest.approx(shrinkage.apart(length, other, one))


def test_a_lining_is_cut_longer_by_what_it_shrinks_more() -> None:
    """100 cm inside a shell that keeps its length, at 4 %: 1000 / 0.96, so 41.7 mm more."""
    assert 41.67 == pytest.approx(shrinkage.longer_lining(1000, 0.0, 0.04), abs=0.01)
    assert 0.0 == shrinkage.longer_lining(1000, 0.04, 0.0)
    cut = 1000 + shrinkage.longer_lining(1000, 0.02, 0.06)
    assert 1000 * 0.98 == pytest.approx(cut * 0.94)


def test_a_seam_tells_what_its_cloths_part_by() -> None:
    """Both ways of the grain in mm, at the seam that joins them and at no other."""
    known = shipped()
    found = answer(garment_of(parse_yaml(UNLIKE, "unlike.yaml"), known), known)
    told = {seam.name: " ".join(seam.built.build_says) for seam in found.seams if seam.built}
    assert (
        "plain ends 15 mm with the grain or 6 mm across it shorter here than fine" in told["side"]
    )
    assert "2.5 % apart" in told["side"]
    assert "Washed unshrunk" not in told["back"]


def test_what_stays_unwashed_parts_by_nothing() -> None:
    """Where the seller says dry clean only, nothing is told of a wash."""
    known = shipped()
    text = UNLIKE.replace("weight: 120 g/m2,", "weight: 120 g/m2, care: dry clean only,")
    found = answer(garment_of(parse_yaml(text, "dry.yaml"), known), known)
    (side,) = [s.built for s in found.seams if s.name == "side"]
    assert side is not None
    assert "Washed unshrunk" not in " ".join(side.build_says)
