"""What a cutter of bias gowns and a maker of lined cloaks would not have let pass.

A bias dress with lace laid on its bodice and a zip over its waist, and a cloak whose lining hangs
free. All is common practice of the trade.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.claims.collect import Place
from advisor.construction.bulk import picked
from advisor.construction.halves import unjoined_widths
from advisor.decide.advise import advise
from advisor.decide.kit import kit_of
from advisor.knowledge.model import LIMIT_ASPECT
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, advice, changed, known, ordered, read, stands, told, work
from tests.typed import typed

DRESS = "more/bias_dress_with_lace_bodice"
TEXT = (FOLDER / f"{DRESS}.yaml").read_text(encoding="utf-8")
CLOAK = """
garment: Sample cloak
fabrics:
  pile: {fabric: velvet, fibres: {viscose: 100}, weight: 220 g/m2, width: 140 cm}
  inside: {fabric: lining, fibres: {acetate: 100}, width: 140 cm}
seams:
  - {name: side, layers: [pile, pile], length: 100 cm, times: 2}
  - {name: lining side, layers: [inside, inside], length: 98 cm, times: 2}
  - {name: front edge, layers: [pile, inside], length: 105 cm, edge: turned, left open: 18 cm}
  - {name: hem, layers: [pile], length: 290 cm, edge: hem}
  - {name: lining hem, layers: [inside], length: 280 cm, edge: hem}
pieces:
  - {name: back, fabric: pile, width: 139 cm, height: 110 cm}
  - {name: lining back, fabric: inside, width: 130 cm, height: 108 cm}
kit: {needles: [universal 80]}
"""


@pytest.mark.parametrize(
    ("zip_", "above", "below"), [("34 cm", "17 cm", "17 cm"), ("50 cm", "20 cm", "30 cm")]
)
def test_a_zip_over_a_waist_is_shared_by_the_sides_above_and_below(
    zip_: str, above: str, below: str
) -> None:
    """No side is left open for longer than it is."""
    found = changed(DRESS, "length: 34 cm", f"length: {zip_}")
    for name, part in (("bodice side", above), ("skirt side", below)):
        assert f"stays open for {part} from the waist" in found.tasks[f"join {name}"].step.does


def test_what_has_another_grain_is_laid_on_when_the_bias_has_dropped() -> None:
    """It would hold the cloth below it up in a bag; on the straight grain nothing drops."""
    found = work(DRESS)
    assert stands(found, "hang the basted seams", "fit", "stitch on bodice overlay")
    assert "bodice overlay over it as it hangs" in found.tasks["fit"].step.does
    straight = ordered(TEXT.replace(", grain: bias", ""))
    assert stands(straight, "stitch on bodice overlay", "fit")


def test_a_shoulder_that_the_fitting_may_change_is_not_overcast_before_it() -> None:
    """Long work by hand is lost where the seam is moved."""
    assert stands(work(DRESS), "fit", "neaten shoulder")


@pytest.mark.parametrize("place", ["skirt side", "shoulder strap", "hem"])
def test_lace_caps_the_iron_of_no_seam_that_it_cannot_reach(place: str) -> None:
    """Its pieces are shorter than the seam, or the strap is made up without it."""
    verdict = advice(DRESS).judgement.verdicts[Place("seam", place)][LIMIT_ASPECT]
    assert {name for said in verdict.because for name in said.cloths} == {"crepe"}


def test_a_strap_on_the_bias_gives_in_its_row() -> None:
    """A straight row snaps when the tube is turned and worn; on the straight grain it holds."""
    here = Place("seam", "shoulder strap")
    assert picked(advice(DRESS).judgement.verdicts[here], "stitch.type") == "304"


def test_lace_stays_neither_the_opening_of_a_zip_nor_an_edge_on_the_bias() -> None:
    """It gives between its motifs: the strip of the sheet is laid, and stands in the order."""
    where = "length: 44 cm, shape: curved, edge: turned, times: 2"
    edge = f"  - {{name: armhole edge, layers: [crepe, web, crepe], {where}}}"
    found = ordered(TEXT.replace("pieces:", f"{edge}\npieces:"))
    assert stands(found, "stay the opening of side zip", "set side zip")
    assert stands(found, "stay armhole edge", "join armhole edge")
    assert "on the pattern" in found.tasks["stay armhole edge"].step.does
    assert not any("cowl" in name for name in found.order if name.startswith("stay "))
    straight = ordered(TEXT.replace("pieces:", f"{edge}\npieces:").replace(", grain: bias", ""))
    assert "stay armhole edge" not in straight.order


def test_no_floor_levels_the_edge_of_a_cowl() -> None:
    """It is trued to its pattern, and the hem below is levelled."""
    found = work(DRESS)
    assert found.tasks["sew cowl edge"].step.does.startswith("True cowl edge to its pattern")
    assert found.tasks["sew hem"].step.does.startswith("Level hem")


def test_a_gap_that_is_not_needed_is_in_no_step() -> None:
    """The order and the sheet say the same: the cloak is turned where its lining hangs free."""
    found = ordered(CLOAK)
    assert not any("open to turn" in task.step.does for task in found.tasks.values())
    assert not any(name.startswith(("turn through", "close the opening")) for name in found.order)
    told = read(CLOAK)
    assert not any("left open" in (seam.made or "") for seam in told.seams)
    assert any("left open" in one.text for one in told.checks or ())
    hung = CLOAK.replace(
        "  - {name: lining hem, layers: [inside], length: 280 cm, edge: hem}\n", ""
    )
    assert "leave 18 cm" in ordered(hung).tasks["join front edge"].step.does


def test_a_needle_of_her_own_that_is_fine_enough_does_instead() -> None:
    """Nobody buys a size for what another of the same point may sew."""
    for mine, said in ((80, "the universal 80 that you have"), (110, "")):
        text = CLOAK.replace("universal 80", f"universal {mine}")
        garment = garment_of(parse_yaml(text, "project.yaml"), known())
        needs = {n.item: n for n in kit_of(advise(garment, known()).judgement, known())}
        assert "".join(one.text for one in needs["universal 70"].instead) == said


def test_the_list_says_which_cloth_cannot_be_laid_out(tmp_path: Path) -> None:
    """A cloth that is left out without a word is not bought."""
    file = tmp_path / "cloak.yaml"
    file.write_text(CLOAK, encoding="utf-8")
    assert "pile cannot be laid out" in " ".join(typed("sheet", str(file)).out.split())


WIDTHS = """
garment: Sample skirt
fabrics:
  under: {fabric: satin, fibres: {silk: 100}}
  veil: {fabric: chiffon, fibres: {silk: 100}}
seams:
  - {name: side, layers: [under, under], length: 80 cm, times: 2}
  - {name: waist gathers, layers: [under, {use: veil, fullness: 1.5}], length: 70 cm}
  - {name: hem, layers: [under], length: 120 cm, edge: hem}
  - {name: veil hem, layers: [veil], length: 204 cm, edge: hem}
pieces:
  - {name: skirt, fabric: under, width: 60 cm, height: 84 cm, number: 2}
  - {name: overskirt, fabric: veil, width: 104 cm, height: 84 cm, number: 2}
"""


def test_widths_with_one_hem_and_no_seam_are_asked_about() -> None:
    """A seam answers it, and so does one width, or a hem to each."""
    seam = "  - {name: veil side, layers: [veil, veil], length: 80 cm, times: 2}\npieces:"
    for old, new, asked in (
        ("pieces:", "pieces:", ["veil hem"]),
        ("pieces:", seam, []),
        ("width: 104 cm, height: 84 cm, number: 2", "width: 208 cm, height: 84 cm", []),
        ("length: 204 cm,", "length: 102 cm, times: 2,", []),
    ):
        garment = garment_of(parse_yaml(WIDTHS.replace(old, new), "project.yaml"), known())
        assert [one.place for one in unjoined_widths(garment)] == asked


def test_what_is_cut_on_the_bias_is_laid_singly() -> None:
    """A fold has half the width: the panel of a gown does not lie across it."""
    answer = told(FOLDER / f"{DRESS}.yaml")
    lay = {v.place: v.text for v in answer.verdicts if v.aspect == "cut.lay"}
    assert lay["crepe"].startswith("single layer")
