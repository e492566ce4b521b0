"""The foot of a front band that is cut by itself is left open for the hem, which closes it."""

from __future__ import annotations

from tests.garments.whole import ordered, places, stands

SHIRT = """garment: Weaver's shirt
fabrics:
  lawn: {fabric: cotton lawn, fibres: {cotton: 100}}
  linen: {fabric: linen, fibres: {linen: 100}}
seams:
  - {name: shoulder, layers: [lawn, lawn], length: 15 cm, times: 2}
  - {name: front band, layers: [lawn, linen, linen], length: 70 cm, times: 2}
  - {name: collar edge, layers: [linen, linen], length: 60 cm, edge: turned}
  - {name: collar seam, layers: [lawn, linen, linen], length: 40 cm}
  - {name: armhole, layers: [lawn, lawn], length: 48 cm, times: 2}
  - {name: side, layers: [lawn, lawn], length: 46 cm, times: 2}
  - {name: hem, layers: [lawn], length: 120 cm, edge: hem}
  - {name: sleeve hem, layers: [lawn], length: 40 cm, edge: hem, times: 2}
"""


def test_the_hem_closes_the_foot_of_a_band_cut_by_itself() -> None:
    """What the band leaves open is named where it is closed, and at no other hem."""
    found = ordered(SHIRT)
    assert "front-band-cut-apart" == places(found)["front band"].method.id
    hem, wrist = (found.tasks[f"sew {name}"].step.does for name in ("hem", "sleeve hem"))
    assert "the foot of front band closed over its end" in hem
    assert "front band" not in wrist
    assert stands(found, "stitch front band", "sew hem")
