"""A name may speak of what lies beside the place, and of what it is joined to: common practice.

The seam below a zip is no second zip, and a neck that is turned to the lining is sewn before the
armholes shut shell and lining together, for afterwards nothing can be turned.
"""

from __future__ import annotations

import pytest

from advisor.decide.advise import advise
from advisor.decide.unknowns import find_unknowns
from advisor.order.work import Work
from advisor.project.quick import asked_garment
from tests.garments.whole import known, ordered, places, stands

DRESS = """garment: Tea dress
fitting: to the body
fabrics:
  shell: {fabric: challis, fibres: {viscose: 100}}
  sleeve: {fabric: georgette, fibres: {polyester: 100}}
  lining: {fabric: lining, fibres: {cupro: 100}}
seams:
  - {name: bodice side, layers: [shell, shell], length: 20 cm}
  - {name: shoulder, layers: [shell, shell], length: 11 cm}
  - {name: lining shoulder, layers: [lining, lining], length: 11 cm}
  - {name: lining side, layers: [lining, lining], length: 85 cm}
  - {name: NECK, layers: [shell, lining], length: 62 cm, shape: curved, edge: turned}
  - {name: armhole, layers: [shell, lining, sleeve], length: 46 cm, shape: curved}
  - {name: back zip, layers: [shell, {notion: concealed zip}, shell], length: 50 cm}
  - {name: BELOW, layers: [shell, shell], length: 50 cm}
"""


def dress(neck: str = "neckline", below: str = "centre back") -> Work:
    text = DRESS.replace("NECK", neck).replace("BELOW", below)
    return ordered(text)


@pytest.mark.parametrize(
    "below", ["centre back", "back seam below zip", "centre back behind the zip"]
)
def test_the_seam_below_a_zip_is_a_seam(below: str) -> None:
    """It is closed after the zip, by no method of a zip."""
    found = dress(below=below)
    assert "seam" == places(found)[below].kind.id
    assert stands(found, "set back zip", f"join {below}")


@pytest.mark.parametrize("neck", ["neckline", "neck to lining", "neckline to lining"])
def test_a_neck_is_turned_before_the_armholes_shut_it(neck: str) -> None:
    """Whatever it is called."""
    found = dress(neck=neck)
    assert "faced-edge" == places(found)[neck].kind.id
    assert stands(found, f"turn {neck}", "join armhole")


def test_finding_out_makes_no_cloth_bear_more_than_the_fibre_that_was_named() -> None:
    """Boucle of cotton bears 200 °C; what holds alpaca bears what alpaca bears."""
    judged = advise(asked_garment(("alpaca boucle", "cupro lining"), known()), known()).judgement
    (boucle,) = (u for u in find_unknowns(judged, known()) if u.cloth == "alpaca boucle")
    assert {150.0} == {max(limit for _, limit in boucle.candidates)}
