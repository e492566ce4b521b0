"""A lined dress without a sleeve: nothing is told of caps, of arms that reach, or of a jacket."""

from __future__ import annotations

import pytest

from tests.garments.whole import ordered, places, read

DRESS = """
garment: Tollhouse supper dress
fabrics:
  faille: {fabric: faille, fibres: {polyester: 60, viscose: 40}}
  inner: {fabric: lining, fibres: {cupro: 100}}
parts:
  bodice: {layers: [inner, faille], fitting: to the body}
seams:
  - {name: bust dart, layers: [faille], length: 12 cm, times: 2}
  - {name: shoulder, layers: [faille, faille], length: 11 cm, times: 2}
  - {name: bodice side, layers: [faille, faille], length: 20 cm, times: 2}
  - {name: lining bodice side, layers: [inner, inner], length: 20 cm, times: 2}
  - {name: skirt side, layers: [faille, faille], length: 66 cm, times: 2}
  - {name: waist, layers: [faille, {use: faille, fullness: 2.5}], length: 70 cm, stress: high}
  - {name: centre back zip, layers: [faille, {notion: concealed zip}], length: 50 cm}
  - {name: skirt hem, layers: [faille], length: 175 cm, edge: hem}
"""
SLEEVED = DRESS + "  - {name: sleeve seam, layers: [faille, faille], length: 40 cm, times: 2}\n"


@pytest.mark.parametrize("words", ["flatten the cap", "centre back of the lining"])
def test_what_is_told_of_sleeves_waits_for_a_sleeve(words: str) -> None:
    """The same cloths with a sleeve seam are told it."""
    told = {
        name: " ".join(a.text for a in read(text).advice or ())
        for name, text in {"bare": DRESS, "sleeved": SLEEVED}.items()
    }
    assert words not in told["bare"]
    assert words in told["sleeved"]


def test_a_lining_wants_as_many_darts_as_its_bodice_has() -> None:
    """The line to write counts nothing that the file does not say."""
    missing = read(DRESS).missing or ()
    lines = [gap.line for gap in missing if "dart" in gap.line]
    assert lines
    assert not any("times: 4" in line for line in lines)


def test_a_seam_that_is_cut_close_is_not_told_to_stay_whole() -> None:
    """The waist is trimmed to its second row, and thinned once more where the zip runs over it."""
    tasks = ordered(DRESS).tasks.values()
    thinned = [t.step.does for t in tasks if "cut its allowances back in steps" in t.step.does]
    assert thinned
    assert not any("stay whole" in does for does in thinned)


EDGES = """
garment: Lamplighter's shift
fabrics:
  satin: {fabric: polyester satin, width: 140 cm}
  lining: {fabric: acetate lining, width: 140 cm}
parts:
  bodice: {layers: [lining, satin], fitting: to the body}
seams:
  - {name: shoulder, layers: [satin, satin], length: 11 cm, times: 2}
  - {name: side, layers: [satin, satin], length: 80 cm, times: 2}
  - {name: lining side, layers: [lining, lining], length: 78 cm, times: 2}
  - {name: neckline, layers: [satin, lining], length: 60 cm}
  - {name: armhole, layers: [satin, lining], length: 46 cm, times: 2}
  - {name: hem, layers: [satin], length: 110 cm}
  - {name: lining hem, layers: [lining], length: 106 cm}
"""


def test_an_edge_of_shell_and_lining_is_turned_though_nobody_says_so() -> None:
    """Neck and armholes that nothing is joined to are faced by the lining, and curved."""
    work = ordered(EDGES)
    for edge in ("neckline", "armhole"):
        place = places(work)[edge]
        assert place.kind.id == "faced-edge"
        assert place.said("shape") == "curved"
        assert f"neaten {edge}" not in work.order
    sleeved = EDGES + "  - {name: sleeve seam, layers: [satin, satin], length: 40 cm, times: 2}\n"
    assert places(ordered(sleeved))["armhole"].kind.id == "seam"
    stood = EDGES + "  - {name: stand collar, layers: [satin, satin], length: 44 cm}\n"
    assert places(ordered(stood))["neckline"].kind.id == "seam"
    assert (
        places(ordered(EDGES.replace("neckline", "square neck")))["square neck"].said("shape")
        == "corner"
    )
