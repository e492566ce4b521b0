"""A cloak and a doublet as a theatre cutter reads them: what is cut, hung, caught in and felled.

All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.answer.pipeline import WHOLE, decide, tell
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands

CLOAK = """garment: Ferryman's hooded cloak
fitting: loosely
pattern: new
maker: {machine: household}
fabrics:
  shell: {fabric: velvet, fibres: {cotton: 100}, weight: 280 g/m2}
  satin: {fabric: satin, fibres: {polyester: 100}, weight: 120 g/m2}
  gilt: {fabric: brocade, fibres: {polyester: 85, metallic-film: 15}, weight: 220 g/m2}
  canvas: {fabric: canvas, fibres: {cotton: 100}, weight: 240 g/m2}
parts:
  body: {layers: [satin, canvas, shell, gilt], separate: [satin], fitting: loosely}
seams:
  - {name: side, layers: [shell, shell], length: 130 cm, times: 2, shape: curved}
  - {name: shoulder, layers: [shell, shell], length: 16 cm, times: 2, shape: curved, stress: high}
  - {name: hand slits, layers: [shell, shell], length: 26 cm, times: 2, edge: faced}
  - {name: hood centre, layers: [shell, shell], length: 60 cm, shape: curved}
  - {name: hood to neck, layers: [shell, shell], length: 48 cm, shape: curved}
  - {name: neck stay, layers: [shell, {notion: stay tape}], length: 48 cm}
  - {name: hood edge, layers: [shell, satin], length: 80 cm, edge: turned}
  - {name: front edge, layers: [shell, satin], length: 132 cm, times: 2, edge: turned}
  - {name: lining side, layers: [satin, satin], length: 128 cm, times: 2}
  - {name: lining to neck, layers: [shell, satin], length: 48 cm, shape: curved, stitched by: hand}
  - {name: lining round slits, layers: [shell, satin], length: 52 cm, times: 2, stitched by: hand}
  - {name: hem, layers: [shell], length: 360 cm, edge: hem, shape: curved}
  - {name: lining hem, layers: [satin], length: 350 cm, edge: hem, shape: curved}
  - {name: throat clasp, on: [shell, canvas, gilt], fastening: clasps, number: 1, stress: high}
pieces:
  - {name: back, fabric: shell, width: 80 cm, height: 138 cm, number: 2}
  - {name: front, fabric: shell, width: 80 cm, height: 138 cm, number: 2}
"""
LINED = "{name: hand slits, layers: [shell, shell], length: 26 cm, times: 2, edge: faced}"


def said(work: Work) -> str:
    """All that the steps of an order say."""
    return "\n".join(task.step.does for task in work.tasks.values())


@pytest.mark.parametrize("name", ["hand slits", "arm slit", "sleeve slit", "keyhole"])
def test_a_slit_that_is_faced_is_slashed(name: str) -> None:
    """No edge is there to be turned before the slit is cut between the rows of its facing."""
    work = ordered(CLOAK.replace("hand slits", name))
    assert "placket-faced" == places(work)[name].method.id
    assert stands(work, f"face {name}", f"slash {name}", f"turn {name}")


def test_a_slit_is_cut_where_the_fitting_finds_the_hand() -> None:
    """Nothing moves it afterwards, and the lining is cut to match once it hangs."""
    work = ordered(CLOAK)
    assert stands(work, "fit", "face hand slits")
    assert stands(work, "turn hand slits", "hang", "slash lining round slits")
    assert stands(work, "slash lining round slits", "fell lining round slits")
    assert "strip" not in work.tasks["slash lining round slits"].step.does


def test_a_hood_is_tried_before_its_neck_is_closed() -> None:
    """Shoulder and hood are basted; the tape and the edge round the face wait for the fitting."""
    work = ordered(CLOAK)
    for basted in ("baste shoulder", "baste hood to neck"):
        assert stands(work, basted, "fit")
    for waits in ("join shoulder", "tape neck stay", "grade hood edge", "join hood to neck"):
        assert stands(work, "fit", waits)


def test_a_tried_pattern_has_settled_how_deep_its_hood_is() -> None:
    """The near miss: what was cut before needs no basted hood."""
    work = ordered(CLOAK.replace("pattern: new", "pattern: tried"))
    assert "baste hood to neck" not in work.tasks


def test_shell_and_lining_hang_apart_before_they_are_joined() -> None:
    """Joined at neck and front before the cloth has dropped, one drags the other."""
    work = ordered(CLOAK)
    assert stands(work, "hang", "fell lining to neck")
    assert stands(work, "hang", "join front edge")
    assert "each by itself" in work.tasks["hang"].step.does


def test_a_lining_felled_by_hand_has_nothing_to_grade() -> None:
    """Its edge is turned under: there is no allowance to trim, and no zip to keep clear of."""
    work = ordered(CLOAK)
    assert "hand-set-lining" == places(work)["lining to neck"].method.id
    assert "grade lining to neck" not in work.tasks
    assert "zip" not in work.tasks["fell lining to neck"].step.does


def test_the_clasp_of_a_cloak_carries_it_and_is_never_pressed() -> None:
    """It lies on the face, sewn through all layers, and no conflict is made of its cloths' heat."""
    garment = garment_of(parse_yaml(CLOAK, "p.yaml"), known())
    answer = tell(decide(garment, known(), WHOLE), known(), WHOLE)
    assert () == tuple(answer.conflicts)
    assert answer.weight is not None
    assert {"neck stay", "throat clasp"} == {hang.place for hang in answer.weight.hangs}
    work = ordered(CLOAK)
    assert "never through" not in work.tasks["fasten throat clasp"].step.does
    assert "through all layers" in work.tasks["fasten throat clasp"].step.does


def test_the_clasp_of_a_coat_is_sewn_to_what_is_behind_its_edge() -> None:
    """The near miss: sleeves and shoulders carry a coat, so nothing shows on its face."""
    sleeve = "  - {name: armhole, layers: [shell, shell], length: 50 cm, times: 2}\n  - {name: hem,"
    work = ordered(CLOAK.replace("  - {name: hem,", sleeve))
    assert "never through to the face" in work.tasks["fasten throat clasp"].step.does
