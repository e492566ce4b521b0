"""A dress that wraps: its edge runs down both fronts and round the neck, over the waist.

All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache

from advisor.order.work import Work
from tests.garments.whole import ordered, places, stands

WRAP = """garment: Weir keeper's dress
fabrics:
  crepe: {fabric: crepe-back satin, fibres: {polyester: 100}, weight: 150 g/m2}
parts:
  bodice: {layers: [crepe], fitting: to the body}
  skirt: {layers: [crepe], fitting: loosely}
seams:
  - {name: shoulder, layers: [crepe, crepe], length: 12 cm, times: 2}
  - {name: side, layers: [crepe, crepe], length: 22 cm, times: 2}
  - {name: skirt side, layers: [crepe, crepe], length: 68 cm, times: 2}
  - {name: waist, layers: [crepe, crepe], length: 74 cm}
  - {name: wrap edge, kind: edge, layers: [crepe], length: 160 cm}
  - {name: skirt hem, kind: edge, on: crepe, length: 240 cm, shape: curved}
"""


@cache
def sewn() -> Work:
    """Its order of work."""
    return ordered(WRAP)


def test_a_wrap_edge_is_faced_and_not_levelled_like_a_hem() -> None:
    """It hangs nowhere: a facing turns it, over the waist and before the hem."""
    found = sewn()
    assert "faced-edge" == places(found)["wrap edge"].kind.id
    assert stands(found, "join waist", "join wrap edge", "turn wrap edge", "sew skirt hem")


def test_one_part_to_the_body_makes_it_a_fitted_garment() -> None:
    """The skirt is loose; the waist from which it hangs is basted and tried on all the same."""
    found = sewn()
    assert stands(found, "baste waist", "fit", "join waist")
    assert stands(found, "fit", "grade wrap edge")
