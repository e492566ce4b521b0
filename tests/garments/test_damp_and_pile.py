"""Damp beside what water marks, and the iron near velvet: one voice in every view."""

from __future__ import annotations

import pytest

from tests.garments.whole import read

SKIRT = """
garment: Signal box skirt
fitting: to the body
maker: {machine: household, feet: [standard, zip, concealed zip, walking]}
fabrics:
  shell: {fabric: tweed, fibres: {wool: 100}, weight: 320 g/m2, width: 150 cm}
  lining: {fabric: lining, fibres: {FIBRE: 100}, width: 140 cm}
seams:
  - {name: side seam, layers: [shell, shell], length: 60 cm, times: 2}
  - {name: zip, layers: [shell, {notion: concealed zip}], length: 20 cm}
  - {name: lining side seam, layers: [lining, lining], length: 60 cm, times: 2}
  - {name: lining to zip, layers: [lining, shell], length: 20 cm, times: 2}
  - {name: lining to waist, layers: [shell, lining], length: 72 cm}
  - {name: hem, layers: [shell], length: 120 cm, edge: hem}
"""


@pytest.mark.parametrize("fibre", ["viscose", "acetate"])
def test_a_wool_is_pressed_damp_by_itself_and_dry_where_its_lining_is_joined(fibre: str) -> None:
    """The order presses the wool damp before, and neither the seam nor the last press is damp."""
    answer = read(SKIRT.replace("FIBRE", fibre))
    damp = {v.place: v.text for v in answer.verdicts if v.aspect == "press.moisture"}
    assert "damp cloth" == damp["side seam"]
    assert ["dry"] * 3 == [damp[n] for n in ("lining to zip", "lining to waist", answer.garment)]
    assert answer.work is not None
    irons = {one.step: one.iron.moisture for one in answer.work.order if one.iron is not None}
    assert ["damp cloth", "dry", "dry"] == [
        irons[step] for step in ("hot press shell", "press lining to waist", "last press")
    ]
