"""A lining is one whatever its cloth is called: a second body, seam for seam in the first."""

from __future__ import annotations

from advisor.order.cuffs import faced_with
from advisor.order.seamplaces import seam_places
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, stands

GOWN = """garment: Verger's gown
fitting: loosely
fabrics:
  shell: {fabric: brocade, fibres: {polyester: 100}}
  pile: {fabric: velvet, fibres: {cotton: 100}}
  LINED: {fabric: quilted cloth, fibres: {cotton: 60, polyester: 40}}
seams:
  - {name: shoulder, layers: [shell, shell], length: 15 cm, times: 2}
  - {name: armhole, layers: [shell, shell], length: 52 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 88 cm, times: 2}
  - {name: sleeve seam, layers: [shell, shell], length: 38 cm, times: 2}
  - {name: cuff, layers: [shell, pile, LINED], length: 40 cm, times: 2}
  - {name: LINED shoulder, layers: [LINED, LINED], length: 15 cm, times: 2}
  - {name: LINED armhole, layers: [LINED, LINED], length: 52 cm, times: 2}
  - {name: LINED side, layers: [LINED, LINED], length: 86 cm, times: 2}
  - {name: LINED sleeve seam, layers: [LINED, LINED], length: 38 cm, times: 2}
  - {name: hem, layers: [shell], length: 150 cm, edge: hem}
  - {name: lining hem, layers: [LINED, shell], length: 148 cm}
"""


def _units(cloth: str) -> list[str]:
    garment = garment_of(parse_yaml(GOWN.replace("LINED", cloth), "project.yaml"), known())
    return [place.unit for place in seam_places(garment, known())]


def test_what_lines_a_gown_is_its_lining_by_any_name() -> None:
    """Called `quilt`, after what it is of, its seams are the lining's as those of `lining` are."""
    assert _units("lining") == _units("quilt") == _units("wadded")
    assert ["lining"] * 4 == _units("quilt")[5:9]


def test_a_lining_that_has_a_sleeve_faces_no_cuff() -> None:
    """It is sewn up inside the sleeve; the cuff is faced with what it is made of."""
    garment = garment_of(parse_yaml(GOWN.replace("LINED", "quilt"), "project.yaml"), known())
    found = seam_places(garment, known())
    cuff = next(place for place in found if place.name == "cuff")
    assert faced_with(cuff, found, garment) == ""


def test_shell_and_lining_are_fitted_once() -> None:
    """The shell is tried on, and the lining sewn by what that showed."""
    found = ordered(GOWN.replace("LINED", "quilt"))
    assert stands(found, "fit", "join quilt shoulder")
    assert "every correction in the lining" in found.tasks["fit"].step.does


def test_a_cloth_of_two_bodies_lines_nothing_without_a_word_of_it() -> None:
    """Two gowns in one file, worn over one another, are two shells."""
    text = GOWN.replace("lining hem, layers: [LINED, shell]", "under hem, layers: [LINED]")
    garment = garment_of(parse_yaml(text.replace("LINED", "quilt"), "project.yaml"), known())
    assert "lining" not in {place.unit for place in seam_places(garment, known())}
