"""Facings, collars and linings at a front: each thing once, and in the order of a workroom.

All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.construction.notionlist import notions_to_buy
from advisor.construction.twice import told_once_more
from advisor.order.work import Work
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, stands

FUSIBLE = "{notion: woven fusible interfacing}"
JACKET = f"""garment: Sluice house jacket
fitting: to the body
pattern: new
fabrics:
  cloth: {{fabric: wool suiting, fibres: {{wool: 100}}, weight: 260 g/m2}}
seams:
  - {{name: shoulder, layers: [cloth, cloth], length: 14 cm, times: 2}}
  - {{name: side, layers: [cloth, cloth], length: 46 cm, times: 2}}
  - {{name: fusing of the facing, layers: [cloth, {FUSIBLE}], length: 70 cm, times: 2}}
  - {{name: front edge tape, layers: [cloth, {{notion: stay tape}}], length: 70 cm, times: 2}}
  - {{name: front facing, layers: [cloth, {FUSIBLE}, cloth], length: 70 cm, edge: turned, times: 2}}
  - {{name: neck facing, layers: [cloth, cloth], length: 42 cm, shape: curved, edge: turned}}
  - {{name: sleeve, layers: [cloth, cloth], length: 45 cm, shape: curved, times: 2}}
  - {{name: hem, layers: [cloth], length: 110 cm, edge: hem}}
"""
SHIRT_JACKET = f"""garment: Customs shed shirt jacket
fitting: loosely
pattern: tried
fabrics:
  cloth: {{fabric: cotton drill, fibres: {{cotton: 100}}, weight: 220 g/m2}}
seams:
  - {{name: shoulder, layers: [cloth, cloth], length: 14 cm, times: 2}}
  - {{name: side, layers: [cloth, cloth], length: 46 cm, times: 2}}
  - {{name: collar edge, layers: [cloth, cloth], length: 56 cm, edge: turned}}
  - {{name: collar seam, layers: [cloth, cloth], length: 42 cm, shape: curved}}
  - {{name: front edge tape, layers: [cloth, {{notion: stay tape}}], length: 70 cm, times: 2}}
  - {{name: front facing, layers: [cloth, {FUSIBLE}, cloth], edge: turned, topstitch: 1}}
  - {{name: sleeve, layers: [cloth, cloth], length: 45 cm, shape: curved, times: 2}}
  - {{name: waistband, layers: [cloth, cloth], length: 100 cm}}
"""
BLOUSE = """garment: Weir cottage blouse
fabrics:
  cloth: {fabric: poplin, fibres: {cotton: 100}, weight: 120 g/m2}
seams:
  - {name: shoulder, layers: [cloth, cloth], length: 14 cm, times: 2}
  - {name: side, layers: [cloth, cloth], length: 46 cm, times: 2}
  - {name: neck edge, layers: [cloth, {notion: bias binding}], length: 60 cm, edge: bound}
  - {name: neck binding, layers: [cloth, {notion: bias binding}], length: 60 cm, shape: curved}
  - {name: hem, layers: [cloth], length: 110 cm, edge: hem}
"""
RAINCOAT = """garment: Slipway raincoat
fitting: loosely
pattern: tried
fabrics:
  shell: {fabric: cotton drill, fibres: {cotton: 100}, weight: 240 g/m2}
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: shoulder, layers: [shell, shell], length: 14 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 60 cm, times: 2}
  - {name: sleeve seam, layers: [shell, shell], length: 45 cm, times: 2}
  - {name: armhole, layers: [shell, shell], length: 50 cm, shape: curved, times: 2}
  - {name: hood seam, layers: [shell, shell], length: 60 cm, shape: curved}
  - {name: hood lining seam, layers: [lining, lining], length: 60 cm, shape: curved}
  - {name: hood edge, layers: [shell, lining], length: 70 cm, edge: turned}
  - {name: hood to neck, layers: [shell, shell], length: 50 cm, shape: curved}
  - {name: front zip, layers: [shell, {notion: open-ended zip}, shell], length: 75 cm}
  - {name: front facing, layers: [shell, shell], length: 75 cm, edge: turned, times: 2}
  - {name: lining shoulder, layers: [lining, lining], length: 14 cm, times: 2}
  - {name: lining side, layers: [lining, lining], length: 60 cm, times: 2}
  - {name: lining sleeve seam, layers: [lining, lining], length: 45 cm, times: 2}
  - {name: lining armhole, layers: [lining, lining], length: 50 cm, shape: curved, times: 2}
  - {name: facing to lining, layers: [shell, lining], length: 150 cm, method: bagged lining}
  - {name: lining to hem, layers: [shell, lining], length: 110 cm}
  - {name: lining to sleeve hem, layers: [shell, lining], length: 30 cm, times: 2}
  - {name: sleeve hem, layers: [shell], length: 30 cm, edge: hem, times: 2}
  - {name: hem, layers: [shell], length: 110 cm, edge: hem}
"""
COAT = """garment: Chain pier coat
fitting: to the body
pattern: tried
fabrics:
  cloth: {fabric: wool suiting, fibres: {wool: 100}, weight: 320 g/m2}
seams:
  - {name: front canvas, layers: [cloth, {notion: hair canvas}], length: 70 cm, kind: canvas}
  - {name: facing canvas, layers: [cloth, {notion: hair canvas}], length: 70 cm}
  - {name: shoulder, layers: [cloth, cloth], length: 14 cm, times: 2}
  - {name: side, layers: [cloth, cloth], length: 46 cm, times: 2}
  - {name: front facing, layers: [cloth, {notion: hair canvas}, cloth], length: 70 cm, edge: turned}
  - {name: hem, layers: [cloth], length: 110 cm, edge: hem}
"""


def _garment(text: str) -> Garment:
    return garment_of(parse_yaml(text, "p.yaml"), known())


def _steps(found: Work, verb: str) -> list[str]:
    """The steps whose name begins so, in their order."""
    return [step for step in found.order if step.startswith(f"{verb} ")]


def _bought(text: str, name: str) -> float:
    return sum(b.whole or 0.0 for b in notions_to_buy(_garment(text), known()) if b.name == name)


@pytest.mark.parametrize("name", ["fusing of the facing", "facing interfacing", "facing fusing"])
def test_a_facing_is_fused_once_and_first_of_all(name: str) -> None:
    """Whatever the place is called that fuses it, and wherever the facing itself lists the glue."""
    found = ordered(JACKET.replace("fusing of the facing", name))
    assert _steps(found, "fuse") == [f"fuse {name}"]
    assert f"join {name}" not in found.tasks
    assert stands(found, f"fuse {name}", "tape front edge tape", "join shoulder")


def test_what_is_fused_at_no_place_of_its_own_is_fused_at_its_facing() -> None:
    """An interfacing of another piece does nothing for it."""
    found = ordered(JACKET.replace("fusing of the facing", "hem interfacing"))
    assert "fuse front facing" in found.tasks
    assert "fuse front facing" in ordered(SHIRT_JACKET).tasks


def test_the_facings_of_neck_and_fronts_are_one() -> None:
    """Pieced at the shoulders, neatened once, sewn round in one seam and turned as one."""
    found = ordered(JACKET)
    run = ("piece neck facing", "neaten the edge of neck facing", "join front facing")
    assert stands(found, "fit", *run, "join neck facing", "press front facing")
    assert stands(found, "join neck facing", "grade front facing", "turn front facing")
    assert stands(found, "grade neck facing", "turn front facing", "turn neck facing")
    assert "neaten the edge of front facing" not in found.tasks
    assert "run on from front facing" in found.tasks["join neck facing"].step.does
    swapped = [line for line in JACKET.splitlines() if "neck facing" in line]
    first = JACKET.replace(swapped[0] + "\n", "").replace("seams:\n", f"seams:\n{swapped[0]}\n")
    assert stands(ordered(first), *run, "join neck facing", "turn front facing", "turn neck facing")


def test_facings_of_two_cloths_or_at_lapels_are_two() -> None:
    """So is a neck facing by itself."""
    other = JACKET.replace("seams:", "  trim: {fabric: poplin}\nseams:")
    other = other.replace(
        "neck facing, layers: [cloth, cloth]", "neck facing, layers: [cloth, trim]"
    )
    assert "piece neck facing" not in ordered(other).tasks
    alone = "\n".join(line for line in JACKET.splitlines() if "front facing" not in line)
    assert "piece neck facing" not in ordered(alone).tasks


def test_a_front_is_topstitched_when_the_collar_in_its_seam_is_closed() -> None:
    """The row runs to the end of the collar."""
    found = ordered(SHIRT_JACKET)
    assert stands(found, "turn front facing", "close collar seam", "topstitch front facing")


@pytest.mark.parametrize("collar", ["collar seam", "waistband"])
def test_a_band_is_graded_before_it_is_pressed(collar: str) -> None:
    """What is clipped lies open or turns; pressed first it is pressed twice."""
    found = ordered(SHIRT_JACKET)
    assert stands(found, f"join {collar}", f"grade {collar}", f"press {collar}", f"close {collar}")


def test_a_yoke_is_clipped_before_it_is_pressed() -> None:
    """A straight one is pressed as it is sewn, and so is one whose edges are neatened as one."""
    bound = "{name: back yoke, layers: [cloth, cloth], length: 40 cm, shape: curved}"
    lines = JACKET.replace("  - {name: shoulder", f"  - {bound}\n  - {{name: shoulder")
    assert stands(ordered(lines), "join back yoke", "grade back yoke", "press flat back yoke")
    straight = lines.replace(bound, bound.replace(", shape: curved", ""))
    assert "press back yoke" in ordered(straight).tasks
    zigzagged = SHIRT_JACKET.replace("  - {name: shoulder", f"  - {bound}\n  - {{name: shoulder")
    assert stands(ordered(zigzagged), "press back yoke", "grade back yoke")


def test_a_tape_is_laid_once_after_the_fusing_and_before_the_facing() -> None:
    """At its own place, and not again with the facing that names it too."""
    taped = SHIRT_JACKET.replace(
        f"[cloth, {FUSIBLE}, cloth]", f"[cloth, {FUSIBLE}, {{notion: stay tape}}, cloth]"
    )
    for text in (SHIRT_JACKET, taped):
        found = ordered(text)
        assert _steps(found, "tape") == ["tape front edge tape"]
        assert stands(found, "fuse front facing", "tape front edge tape", "join front facing")
        assert _bought(text, "stay tape") == pytest.approx(1400)
    without = "\n".join(line for line in taped.splitlines() if "edge tape" not in line)
    without = without.replace(", topstitch: 1", "")
    assert _steps(ordered(without), "tape") == ["tape front facing"]


def test_an_edge_and_its_binding_are_one() -> None:
    """One strip is bought and sewn on, and the file is told so."""
    found = ordered(BLOUSE)
    assert [step for step in found.order if step.endswith("neck edge")] == []
    assert stands(found, "join shoulder", "join neck binding")
    assert _bought(BLOUSE, "bias binding") == pytest.approx(600)
    said = list(told_once_more(_garment(BLOUSE)))
    assert [d.place for d in said] == ["neck edge"]
    armhole = BLOUSE.replace("neck binding", "armhole binding")
    assert "join neck edge" in ordered(armhole).tasks


def test_a_hood_is_held_to_its_lining_before_it_is_set() -> None:
    """Turned first; not where a place of its own joins the lining of the hood."""
    hold = "hold the lining at hood to neck"
    assert stands(ordered(RAINCOAT), "turn hood edge", hold, "join hood to neck")
    own = RAINCOAT.replace(
        "  - {name: hem,",
        "  - {name: hood lining to neck, layers: [lining, shell]}\n  - {name: hem,",
    )
    assert hold not in ordered(own).tasks


def test_a_label_goes_into_the_lining_that_is_made_up_and_not_closed() -> None:
    """It is the last that is done to the lining by itself."""
    found = ordered(RAINCOAT)
    assert stands(found, "neaten lining armhole", "label", "bag facing to lining")


def test_a_bagged_lining_is_sewn_all_round_turned_and_closed_last() -> None:
    """The gap is left in the seam of a sleeve lining, where no other is said."""
    found = ordered(RAINCOAT)
    sewn = ("bag facing to lining", "set lining to hem", "turn through facing to lining")
    assert stands(found, *sewn, "close the opening of facing to lining", "last press")
    assert stands(found, "set lining to sleeve hem", "turn through facing to lining")
    does = {id_: task.step.does for id_, task in found.tasks.items()}
    assert "open in the middle to turn through" in does["join lining sleeve seam"]
    assert "lining sleeve seam" in does["close the opening of facing to lining"]
    assert "leave" not in does["bag facing to lining"]


def test_a_zip_is_topstitched_through_the_facing_that_covers_its_tape() -> None:
    """And it is in before the hem is turned."""
    found = ordered(RAINCOAT)
    steps = ("set front zip", "join front facing", "turn front facing", "topstitch front zip")
    assert stands(found, *steps, "sew hem")
    assert "between front and facing" not in found.tasks["set front zip"].step.does
    bare = "\n".join(line for line in RAINCOAT.splitlines() if "front facing" not in line)
    assert "between front and facing" in ordered(bare).tasks["set front zip"].step.does


def test_canvas_lies_in_the_front_and_the_facing_takes_none() -> None:
    """Whether it is told for both, or between the two."""
    found = ordered(COAT)
    assert [s for s in found.tasks if "canvas" in s and "facing" in s] == []
    between = "\n".join(line for line in COAT.splitlines() if " canvas, layers" not in line)
    assert "the front itself" in ordered(between).tasks["interface front facing"].step.does
