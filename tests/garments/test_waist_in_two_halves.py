"""A waist whose front is called after its pleats: it is sewn all the same, as its back is."""

from __future__ import annotations

from tests.garments.whole import ordered, places, read, stands

DRESS = """
garment: Ropewalk dress
pattern: new
fabrics:
  wool: {fabric: wool crepe, fibres: {wool: 100}, weight: 240 g/m2}
  lining: {fabric: lining, fibres: {viscose: 100}}
parts:
  bodice: {layers: [wool], fitting: to the body}
  skirt: {layers: [wool], fitting: loosely}
  sleeve: {layers: [lining, wool], separate: [lining]}
seams:
  - {name: shoulder, layers: [wool, wool], length: 12 cm, times: 2}
  - {name: bodice side, layers: [wool, wool], length: 22 cm, times: 2}
  - {name: skirt side, layers: [wool, wool], length: 60 cm, times: 2}
  - {name: waist back, layers: [wool, wool], length: 38 cm}
  - name: waist front pleats
    layers: [wool, wool]
    length: 38 cm
    pleats: {kind: knife, number: 4, depth: 4 cm}
  - {name: sleeve hem, layers: [wool, lining], length: 26 cm, edge: hem, times: 2}
  - {name: skirt hem, layers: [wool], length: 170 cm, edge: hem}
"""
BACK = "  - {name: waist back, layers: [wool, wool], length: 38 cm}\n"


def test_half_a_waist_is_basted_tried_on_and_joined() -> None:
    """Laid, basted, tried on, and only then sewn, as the other half is."""
    work = ordered(DRESS)
    name = "waist front pleats"
    assert stands(work, f"baste {name}", "fit")
    assert stands(work, "fit", f"join {name}")
    assert stands(work, "fit", "join waist back")


def test_pleats_without_another_half_are_laid_in_their_piece() -> None:
    """Where no other place is a waist, the same words are pleats and no seam."""
    alone, halves = ordered(DRESS.replace(BACK, "")), ordered(DRESS)
    assert places(alone)["waist front pleats"].kind.id == "pleat"
    assert places(halves)["waist front pleats"].kind.id == "gathered-edge"


def test_a_sleeve_lining_may_hang_free_and_end_at_its_hem() -> None:
    """It hangs free above; at the wrist it is felled, and that is no contradiction."""
    assert not [told for told in read(DRESS).checks or () if "hangs free" in told.text]
