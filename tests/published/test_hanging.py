"""Weight and where it hangs, against figures worked by hand from the definitions of the units."""

from __future__ import annotations

import math

import pytest

from advisor.answer.pipeline import Parts, answer
from advisor.craft import hanging
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped


def test_a_tex_is_a_gram_for_a_kilometre() -> None:
    """ISO 1144: 1000 m of 27 tex weigh 27 g; 250 m of it 6.75 g."""
    assert 6.75 == pytest.approx(hanging.thread_mass(250, 27))


def test_a_square_metre_weighs_what_is_said() -> None:
    """1.4 m of 1.5 m wide cloth of 300 g/m² are 630 g."""
    assert 630 == pytest.approx(hanging.cloth_mass(1400 * 1500, 300))


def test_a_kilogram_pulls_with_standard_gravity() -> None:
    """9.80665 N, the standard value of the CGPM of 1901; over 70 cm that is 0.1401 N/cm."""
    assert 9.80665 == pytest.approx(hanging.force(1000))
    assert 0.1401 == pytest.approx(hanging.load(1000, 700), abs=1e-4)


def test_half_a_ring() -> None:
    """A half circle skirt of radii 12 and 72 cm: π (72² - 12²) / 2 = 7917 cm²."""
    assert 791_681 == pytest.approx(hanging.ring_area(120, 720, 0.5), rel=1e-4)
    assert math.pi * 25 == pytest.approx(hanging.ring_area(0, 5, 1))


def test_steel_boning_by_its_density() -> None:
    """7 mm × 0.3 mm × 1 m of steel at 7.85 g/cm³ is 16.5 g."""
    assert 0.7 * 0.03 * 100 * 7.85 == pytest.approx(hanging.METRE_G["boning"], abs=0.05)


HEAVY = """
garment: heavy from light
fabrics:
  top: {fabric: silk chiffon, fibres: {silk: 100}, weight: 40 g/m2}
  skirt: {fabric: cotton velvet, fibres: {cotton: 100}, weight: 350 g/m2, width: 140 cm}
seams:
  - {name: waist, layers: [top, {use: skirt, fullness: 2}], length: 70 cm}
pieces:
  - {name: bodice, fabric: top, width: 60 cm, height: 45 cm, number: 2}
  - {name: skirt, fabric: skirt, width: 70 cm, height: 100 cm, number: 2}
"""


def test_heavy_hung_from_light_is_told_by_number() -> None:
    """1.4 m² of 350 g/m² are 490 g on 70 cm: 700 g/m, as much as 17.5 m of 40 g/m² weigh."""
    known = shipped()
    found = answer(garment_of(parse_yaml(HEAVY, "heavy.yaml"), known), known, Parts(shopping=True))
    assert found.weight is not None
    (waist,) = found.weight.hangs
    assert (490.0, 17.5, True) == (waist.mass_g, waist.as_long_m, waist.heavy)
    assert 0.069 == pytest.approx(waist.n_per_cm, abs=0.001)
    assert "490 g" in waist.text
    assert "heavy for top" in waist.text
    assert 490 + 2 * 0.6 * 0.45 * 40 == pytest.approx(
        found.weight.low_g - found.weight.thread_g, abs=0.2
    )


def test_the_same_cloth_hangs_from_itself_without_a_warning() -> None:
    """A skirt of the bodice's own cloth, half as full again and 1 m long, is 1.5 m of it."""
    text = HEAVY.replace("use: skirt, fullness: 2", "use: skirt, fullness: 1.5")
    text = text.replace(
        "silk chiffon, fibres: {silk: 100}, weight: 40", "cotton velvet, weight: 350"
    )
    text = text.replace("width: 70 cm, height: 100 cm", "width: 52.5 cm, height: 100 cm")
    known = shipped()
    found = answer(garment_of(parse_yaml(text, "light.yaml"), known), known, Parts(shopping=True))
    assert found.weight is not None
    (waist,) = found.weight.hangs
    assert (1.5, False) == (waist.as_long_m, waist.heavy)


LINED = """
garment: Lined skirt
fabrics:
  wool: {fabric: wool flannel, fibres: {wool: 100}, weight: 280 g/m2, width: 150 cm}
  lining: {fabric: lining, fibres: {viscose: 100}, weight: 80 g/m2, width: 140 cm}
  crepe: {fabric: crepe de chine, fibres: {silk: 100}, weight: 60 g/m2, width: 114 cm}
seams:
  - {name: waistband, layers: [wool, LINING, wool], length: 72 cm, kind: waistband}
  - {name: flounce seam, layers: [wool, crepe], length: 160 cm}
pieces:
  - {name: skirt panel, fabric: wool, width: 40 cm, height: 70 cm, number: 4}
  - {name: skirt lining, fabric: lining, width: 50 cm, height: 65 cm, number: 2}
  - {name: flounce, fabric: crepe, flounce: {seam: 160 cm, depth: 15 cm, pieces: 3}}
"""


def carried(lining: str) -> float:
    """What the waistband carries, g."""
    made = garment_of(parse_yaml(LINED.replace("LINING, ", lining), "skirt.yaml"), shipped())
    found = answer(made, shipped(), Parts(shopping=True))
    assert found.weight is not None
    (waist,) = found.weight.hangs
    return waist.mass_g


def test_a_waist_carries_the_lining_that_is_set_into_it_and_the_rings_below() -> None:
    """1.12 m² of 280, three rings of 1861 cm² of 60, and 0.65 m² of 80, in the band or below it.

    With nothing above the band all of a skirt hangs from that, also what no place sets into it.
    """
    whole = 1.12 * 280 + 3 * 0.1861 * 60 + 0.65 * 80
    assert whole == pytest.approx(carried(""), rel=0.02)
    assert whole == pytest.approx(carried("lining, "), rel=0.02)
