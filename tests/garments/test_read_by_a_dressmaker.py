"""What a dressmaker at home found wrong in a denim skirt with a bib, straps and a quilted band."""

from __future__ import annotations

from advisor.order.overlocking import OVERLOCKER
from tests.garments.whole import ordered, places, stands

SKIRT = """
garment: Weighbridge skirt with a bib
units: us
fitting: to the body
maker: {machine: household, overlocker: 4-thread, feet: [standard, zip, walking]}
fabrics:
  denim: {fabric: denim, fibres: {cotton: 100}, weight: 12 oz/yd2, colour: "#243552"}
  cord: {fabric: corduroy, fibres: {cotton: 100}, weight: 8 oz/yd2, colour: "#8a5a2b"}
  quilt: {fabric: quilted cloth, fibres: {cotton: 60, polyester: 40}, weight: 9 oz/yd2}
  rib: {fabric: rib knit, fibres: {cotton: 95, elastane: 5}, weight: 8 oz/yd2}
  lining: {fabric: lining, fibres: {polyester: 100}, weight: 2.2 oz/yd2}
seams:
  - {name: patch pocket, layers: [denim, cord], length: 21 in, shape: corner, times: 2}
  - {name: bib top, layers: [quilt, denim], length: 11 in, edge: turned}
  - name: bib to waistband
    layers: [quilt, denim, {notion: woven fusible interfacing}, denim]
    length: 11 in
  - {name: strap, layers: [denim, denim], length: 32 in, edge: turned, times: 2}
  - {name: rib side panel, layers: [denim, {use: rib, stretched: 1.15}], length: 7 in, times: 4}
  - {name: side, layers: [denim, denim], length: 21 in, times: 2, crosses: [rib side panel]}
  - {name: centre back, layers: [denim, denim], length: 20 in}
  - {name: hem band, layers: [denim, quilt], length: 50 in, crosses: [side, centre back]}
  - {name: lining side, layers: [lining, lining], length: 22 in, times: 2}
  - {name: waist facing to lining, layers: [denim, lining], length: 30 in, shape: curved}
  - {name: hem, layers: [quilt], length: 50 in, edge: hem}
pieces:
  - {name: bib, fabric: quilt, width: 12 in, height: 10 in}
  - {name: hem band, fabric: quilt, width: 26 in, height: 7 in, number: 2}
  - {name: rib panel, fabric: rib, width: 6 in, height: 8 in, number: 2}
"""


def test_no_needle_of_the_sewing_machine_goes_into_the_overlocker() -> None:
    """Denim wants a jeans 100, rib a stretch 90: an overlocker takes 80 or 90 of its own kind."""
    states = [t.step.machine for t in ordered(SKIRT).tasks.values()]
    found = {(s.size, s.point) for s in states if s is not None and s.machine == OVERLOCKER}
    assert found
    assert {size for size, _ in found} <= {80, 90}
    assert all("its manual names" in point for _, point in found)


def test_a_band_of_another_cloth_is_joined_before_its_own_edge_is_hemmed() -> None:
    """It is no hem turned up: two cloths meet there, and the band carries the hem."""
    found = ordered(SKIRT)
    assert places(found)["hem band"].method.id == "plain-seam"
    assert stands(found, "join side", "join hem band", "press hem band", "sew hem")


def test_a_hem_of_one_cloth_is_turned_up_whatever_its_name() -> None:
    """A facing is no band, and one cloth by itself is no seam."""
    found = ordered(
        SKIRT.replace("layers: [denim, quilt], length: 50 in", "layers: [denim], length: 50 in")
    )
    assert places(found)["hem band"].seam.place == "hem"
