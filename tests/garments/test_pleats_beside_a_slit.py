"""The pleats of a sleeve are laid towards its slit, and so when that is finished."""

from __future__ import annotations

import pytest

from tests.garments.whole import ordered, stands

SHIRT = """garment: Cooper's shirt
fitting: to the body
pattern: PATTERN
fabrics:
  lawn: {fabric: cotton lawn, fibres: {cotton: 100}}
seams:
  - {name: shoulder, layers: [lawn, lawn], length: 15 cm, times: 2}
  - {name: back yoke, layers: [lawn, lawn, lawn], length: 44 cm}
  - {name: sleeve placket, layers: [lawn, lawn], length: 14 cm, times: 2}
  - name: sleeve pleats
    layers: [lawn]
    length: 4 cm
    times: 2
    pleats: {kind: knife, number: 3, depth: 1 cm}
  - {name: armhole, layers: [lawn, {use: lawn, ease: 15 mm}], length: 48 cm, times: 2}
  - {name: side, layers: [lawn, lawn], length: 46 cm, times: 2}
  - {name: sleeve underarm, layers: [lawn, lawn], length: 46 cm, times: 2}
  - {name: cuff, layers: [lawn, lawn, lawn], length: 24 cm, times: 2}
  - {name: cuff buttonholes, layers: [lawn, lawn], fastening: buttonholes, number: 2}
  - {name: hem, layers: [lawn], length: 120 cm, edge: hem}
"""


@pytest.mark.parametrize("pattern", ["new", "tried"])
def test_sleeve_pleats_are_laid_when_the_slit_beside_them_is_finished(pattern: str) -> None:
    """Whether the slit waits for the fitting or not; no yoke has to do with them, but the cuff."""
    found = ordered(SHIRT.replace("PATTERN", pattern))
    assert stands(found, "press sleeve placket", "lay sleeve pleats", "join cuff")
    assert not found.cycles


def test_pleats_of_the_body_are_tried_on_all_the_same() -> None:
    """Only those of a sleeve wait for its slit."""
    pleats = "pleats: {kind: box, number: 1, depth: 2 cm}"
    row = f"  - {{name: back pleat, layers: [lawn], length: 4 cm, {pleats}}}\n"
    text = SHIRT.replace("PATTERN", "new").replace(
        "  - {name: armhole", f"{row}  - {{name: armhole"
    )
    assert stands(ordered(text), "lay back pleat", "fit")
