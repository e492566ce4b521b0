"""A blouse with an insertion and a stand; a full skirt with pockets, a zip and a border of pile."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.order.work import Work
from tests.garments.whole import ordered, read
from tests.typed import typed

BLOUSE = """
garment: Reading room blouse
fitting: to the body
pattern: tried
maker: {machine: household, overlocker: no, feet: [standard, straight-stitch]}
fabrics:
  crepe: {fabric: crepe de chine, fibres: {silk: 100}, weight: 14 momme, width: 114 cm}
  poplin: {fabric: cotton poplin, fibres: {cotton: 100}, weight: 130 g/m2, width: 140 cm}
  lacework: {notion: lace insertion, fibres: {cotton: 90, nylon: 10}}
  glue: {notion: woven fusible interfacing, width: 90 cm}
seams:
  - {name: front yoke insertion, layers: [crepe, lacework, crepe], length: 16 cm, times: 2}
  - {name: back yoke, layers: [crepe, {use: crepe, fullness: 1.25}], length: 36 cm, seam: French}
  - {name: shoulder, layers: [crepe, crepe], length: 12 cm, seam: French, times: 2}
  - {name: side, layers: [crepe, crepe], length: 44 cm, seam: French, times: 2}
  - name: front band
    layers: [poplin, glue, poplin, crepe]
    length: 62 cm
    times: 2
    crosses: front yoke insertion
  - {name: collar edge, layers: [poplin, glue, poplin], length: 48 cm, shape: corner, edge: turned}
  - name: collar to stand
    layers: [poplin, poplin, glue, poplin, poplin]
    length: 36 cm
    shape: curved
    edge: turned
  - {name: stand to neck, layers: [poplin, glue, crepe, poplin], length: 37 cm, shape: curved}
  - {name: buttonholes, layers: [poplin, glue, poplin], fastening: buttonholes, number: 8}
  - {name: hem, layers: [crepe], length: 108 cm, edge: hem, crosses: side}
"""
SKIRT = """
garment: Maypole skirt
units: metric
fitting: to the body
pattern: tried
maker: {machine: household, overlocker: 3-thread, feet: [standard, zip, concealed zip]}
fabrics:
  cloth: {fabric: viscose twill, fibres: {viscose: 100}, weight: 170 g/m2, width: 140 cm}
  lawn: {fabric: cotton lawn, fibres: {cotton: 100}, weight: 80 g/m2, width: 136 cm}
  pile: {notion: velvet ribbon, fibres: {nylon: 100}}
  glue: {notion: woven fusible interfacing, width: 90 cm}
parts:
  skirt: {layers: [lawn, cloth], separate: [lawn], fitting: loosely}
  waistband: {layers: [cloth, glue, cloth], fitting: to the body}
seams:
  - name: pocket to side edge
    layers: [cloth, lawn]
    length: 17 cm
    kind: seam bag
    times: 4
    part: skirt
  - {name: pocket bag, layers: [lawn, lawn], length: 44 cm, shape: curved, times: 2, part: skirt}
  - {name: side seam, layers: [cloth, cloth], length: 66 cm, times: 2, part: skirt}
  - {name: lining side, layers: [lawn, lawn], length: 60 cm, times: 2, part: skirt}
  - {name: lining hem, layers: [lawn], length: 100 cm, edge: hem, part: skirt}
  - {name: band side, layers: [cloth, glue, cloth], length: 6 cm, part: waistband}
  - {name: band top edge, layers: [cloth, glue, cloth], length: 72 cm, edge: turned}
  - name: waistband to skirt
    layers: [cloth, glue, {use: cloth, fullness: 1.9}, {use: lawn, fullness: 1.3}]
    length: 78 cm
    gathers: {method: hand rows, to: 78 cm}
    crosses: side seam
    part: waistband
  - name: band facing inside
    layers: [cloth, cloth]
    length: 78 cm
    kind: inner edge
    part: waistband
  - {name: side zip, layers: [cloth, {notion: concealed zip}, cloth], length: 22 cm, part: skirt}
  - {name: lining to zip, layers: [lawn, {notion: concealed zip}], length: 15 cm, part: skirt}
  - {name: border, layers: [cloth, pile], length: 148 cm, crosses: side seam, part: skirt}
  - {name: hem, layers: [cloth], length: 148 cm, edge: hem, crosses: side seam, part: skirt}
pieces:
  - {name: skirt panel, fabric: cloth, width: 77 cm, height: 72 cm, number: 2}
"""


def of(found: Work, place: str) -> list[str]:
    """The steps of a place."""
    return [name for name in found.order if (p := found.tasks[name].place) and p.name == place]


def does(found: Work) -> str:
    """All that the steps say."""
    return " ".join(found.tasks[name].step.does for name in found.order)


def before(found: Work, *steps: str) -> bool:
    """Whether steps stand in this order."""
    at = [found.order.index(step) for step in steps]
    return at == sorted(at)


def view(folder: Path, text: str, what: str) -> str:
    """What a command prints of a project."""
    file = folder / "made.yaml"
    file.write_text(text, "utf-8")
    return " ".join(typed(what, str(file)).out.split())


def test_a_collar_is_sewn_between_its_stands_once() -> None:
    """Collar to stand makes the stand up; stand to neck only sets it."""
    found = ordered(BLOUSE)
    steps = ["turn collar edge", "make up collar to stand", "turn collar to stand"]
    assert before(found, *steps, "join stand to neck")
    assert does(found).count("the finished collar between its layers") == 1
    assert "collar between the two stands" not in does(found)
    assert "fuse stand to neck" not in found.order
    assert "stay-stitch collar to stand" not in found.order


@pytest.mark.parametrize("name", ["front yoke insertion", "front insertion", "front inset"])
def test_an_insertion_between_two_pieces_is_joined_as_one(name: str) -> None:
    """Whatever the pieces are called; the sheet finishes its edges as the order does."""
    text = BLOUSE.replace("front yoke insertion", name)
    assert f"cut away behind {name}" in ordered(text).order
    told = read(text).verdicts
    finish = [v.text for v in told if (v.place, v.aspect) == (name, "seam.finish")]
    assert finish == ["zigzag"]


def test_an_insertion_says_nothing_of_a_yoke_beside_it() -> None:
    """A trimming that lies on a yoke makes no seam of it."""
    text = BLOUSE.replace(
        "front yoke insertion, layers: [crepe, lacework, crepe]", "lace, layers: [crepe, lacework]"
    )
    assert (
        "join lace"
        not in ordered(text.replace("crosses: front yoke insertion", "crosses: side")).order
    )


def test_a_gathered_yoke_that_is_to_be_french_is_sewn_so() -> None:
    """Its rows are stitched and drawn up first, and nothing of it is felled."""
    found = ordered(BLOUSE)
    steps = [step.removesuffix(" back yoke") for step in of(found, "back yoke")]
    assert steps[-7:] == ["gather", "draw up", "join", "trim", "turn", "enclose", "press"]
    assert "Join side wrong sides together, 6 mm outside the seam line" in does(found)
    assert "fell back yoke" not in found.order


def test_lace_that_ends_in_a_seam_is_pressed_as_it_bears(tmp_path: Path) -> None:
    """The band is said to cross it, so no iron beside the seam helps."""
    text = view(tmp_path, BLOUSE, "iron")
    assert (
        "front band is pressed at 150 °C, too hot for it: where it ends in the seam go no" in text
    )
    folds = [
        t for t in ordered(BLOUSE).tasks.values() if t.id in ("turn shoulder", "press shoulder")
    ]
    assert {t.at_most for t in folds} == {110.0}


@pytest.mark.parametrize("what", ["iron", "check", "order"])
def test_what_is_fused_is_no_hotter_than_its_glue_in_any_view(what: str, tmp_path: Path) -> None:
    """The cloth by itself bears more."""
    assert "where glue is fused to it, at most 150 °C" in view(tmp_path, BLOUSE, what)


def test_nothing_is_fused_at_a_buttonhole() -> None:
    """Its piece was fused elsewhere, and the silk beside it wants it dry."""
    moist = {v.place: v.text for v in read(BLOUSE).verdicts if v.aspect == "press.moisture"}
    assert moist["buttonholes"] == "dry"
    assert "fuse buttonholes" not in ordered(BLOUSE).order
    fused = [i for i in read(BLOUSE).instructions if "Fuse" in i.text and "buttonholes" in i.places]
    assert not fused


@pytest.mark.parametrize("fibres", [", fibres: {nylon: 100}", ", fibres: {cotton: 100}"])
def test_a_pile_sewn_on_meets_no_iron_of_whatever_fibre(fibres: str, tmp_path: Path) -> None:
    """A fibre that is named loosens nothing."""
    text = SKIRT.replace(", fibres: {nylon: 100}", fibres)
    assert "pile with the iron" in does(ordered(text))
    assert "not over the pile" in view(tmp_path, text, "label")
    assert "not over the pile" in view(tmp_path, text, "sheet")


def test_a_band_with_a_support_is_sewn_to_its_skirt(tmp_path: Path) -> None:
    """The support is no cloth that only the band has."""
    assert "2 garments" not in view(tmp_path, SKIRT, "label")
    assert "From the body outwards: cloth, glue, cloth." in view(tmp_path, SKIRT, "sheet")


def test_a_band_in_pieces_is_fused_closed_and_felled_once() -> None:
    """Its top and its inner edge are told as places of their own."""
    found = ordered(SKIRT)
    fused = [step for step in found.order if step.startswith("fuse ")]
    assert all(before(found, step, "join band side") for step in fused)
    steps = ["join band side", "join waistband to skirt", "turn band top edge"]
    assert before(found, *steps, "fell band facing inside")
    assert "close waistband to skirt" not in found.order
    assert not [m for m in read(SKIRT).missing or () if m.place == "band side"]


def test_a_border_said_to_cross_the_sides_is_laid_over_all_of_them() -> None:
    """Otherwise its step says that all but one are joined first."""
    found = ordered(SKIRT)
    assert before(found, "join side seam", "stitch on border")
    assert "the last of them" not in does(found)
    lone = SKIRT.replace("name: border", "name: skirt border")
    open_ = lone.replace("length: 148 cm, crosses: side seam, part", "length: 148 cm, part", 1)
    assert "first join and press all but one of side seam" in does(ordered(open_))


def test_a_full_skirt_of_soft_viscose_hangs_before_its_hem() -> None:
    """One of cotton in straight widths is levelled at once."""
    assert before(ordered(SKIRT), "hang", "sew hem")
    cotton = SKIRT.replace(
        "viscose twill, fibres: {viscose: 100}", "cotton poplin, fibres: {cotton: 100}"
    )
    assert "hang" not in ordered(cotton).order


@pytest.mark.parametrize("kind", ["    kind: seam bag\n", ""])
def test_a_pocket_in_a_side_is_joined_before_the_side(kind: str, tmp_path: Path) -> None:
    """Said or not, the places tell which is the opening and which the bag."""
    found = ordered(SKIRT.replace("    kind: seam bag\n", kind))
    steps = ["join pocket to side edge", "press pocket to side edge", "join side seam"]
    assert before(found, *steps, "run round pocket bag")
    assert "pocket to side edge sews lawn" not in view(tmp_path, SKIRT, "check")


def test_a_zip_in_the_side_of_a_pocket_is_asked_about(tmp_path: Path) -> None:
    """One pocket alone is on the other side."""
    asked = "and side zip closes one of them"
    assert asked in view(tmp_path, SKIRT, "check")
    assert asked not in view(tmp_path, SKIRT.replace("times: 4", "times: 1"), "check")
    back = SKIRT.replace("side zip", "centre back zip")
    assert "closes one of them" not in view(tmp_path, back, "check")


def test_a_lining_at_the_zip_is_finished_once(tmp_path: Path) -> None:
    """Where a place fells it, its opening is not finished by itself as well."""
    assert "finish the free opening at side zip" not in ordered(SKIRT).order
    lone = "\n".join(row for row in SKIRT.splitlines() if "lining to zip" not in row)
    assert "finish the free opening at side zip" in ordered(lone).order
    assert "light interfacing" not in view(tmp_path, SKIRT, "sheet")


CUFF = """
garment: Toll-keeper's jacket
fitting: to the body
pattern: tried
fabrics:
  wool: {fabric: wool crepe, fibres: {wool: 100}}
  slip: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: sleeve seam, layers: [wool, wool], length: 40 cm, times: 2}
  - {name: sleeve lining seam, layers: [slip, slip], length: 40 cm, times: 2}
  - {name: cuff, layers: [wool, slip, wool], length: 24 cm, times: 2}
  - {name: lining to cuff, layers: [slip, wool], length: 24 cm, times: 2}
  - {name: hem, layers: [wool], length: 110 cm, edge: hem}
"""


def test_a_lining_that_is_felled_at_a_cuff_is_not_caught_in_its_row() -> None:
    """Without a place of its own it is sewn in with the cuff."""
    assert "Join one edge of cuff to the garment: wool + wool." in does(ordered(CUFF))
    lone = "\n".join(row for row in CUFF.splitlines() if "lining to cuff" not in row)
    assert "Join one edge of cuff to the garment: wool + slip + wool." in does(ordered(lone))
