"""What a maker of lined jackets found impossible: a rib at the foot, zip, lining, a faced cuff.

A blouson of velveteen with linen sleeves, and one of melton whose rib is called a waistband. All is
common practice of the trade.
"""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.gapwords import told_gaps
from advisor.answer.teller import Teller
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, changed, known, ordered, places, read, stands, work

BLOUSON = "more/gasworks_blouson"
RIB, CUFF, SLIT = "lining-ends-at-a-rib", "lining-ends-at-a-cuff", "cuff-opens-nowhere"
BAND = "waistband-opens-nowhere"
MELTON = """
garment: Melton blouson
fitting: loosely
pattern: new
maker: {machine: household, feet: [standard, zip, walking]}
fabrics:
  body: {fabric: melton, fibres: {wool: 100}, weight: 480 g/m2}
  rib: {fabric: rib knit, fibres: {wool: 100}, weight: 340 g/m2}
  lining: {fabric: lining, fibres: {viscose: 100}, weight: 80 g/m2}
seams:
  - {name: welt pocket, layers: [body, lining], length: 16 cm, times: 2}
  - {name: shoulder, layers: [body, body], length: 14 cm, times: 2}
  - {name: side, layers: [body, body], length: 38 cm, times: 2}
  - {name: armhole, layers: [body, body], length: 50 cm, shape: curved, times: 2}
  - {name: sleeve seam, layers: [body, body], length: 46 cm, times: 2}
  - {name: cuff, layers: [body, {use: rib, stretched: 1.3}], length: 26 cm, times: 2}
  - {name: waistband, layers: [body, {use: rib, stretched: 1.2}], length: 96 cm}
  - {name: collar, layers: [body, {use: rib, stretched: 1.15}], length: 46 cm, shape: curved}
  - {name: front zip, layers: [body, {notion: open-ended zip}, body], length: 58 cm, times: 2}
  - {name: lining shoulder, layers: [lining, lining], length: 14 cm, times: 2}
  - {name: lining armhole, layers: [lining, lining], length: 50 cm, shape: curved, times: 2}
  - {name: lining sleeve seam, layers: [lining, lining], length: 44 cm, times: 2}
  - {name: lining side, layers: [lining, lining], length: 36 cm, times: 2, left open: 16 cm}
  - {name: facing to lining, layers: [body, lining], length: 150 cm, shape: curved}
"""
JOINED = """\
  - {name: lining to rib, layers: [body, rib, lining], length: 96 cm}
  - {name: lining to cuff, layers: [body, lining], length: 26 cm, times: 2}
"""
SKIRT = """
garment: Skirt
fitting: to the body
fabrics: {cloth: {fabric: wool gabardine}}
seams:
  - {name: side, layers: [cloth, cloth], length: 60 cm, times: 2}
  - {name: waistband, layers: [cloth, cloth], length: 72 cm}
  - {name: waistband hook, layers: [cloth, {notion: hook and bar}], kind: hook}
  - {name: hem, layers: [cloth], length: 120 cm, edge: hem}
"""
WOVEN = MELTON.replace("{use: rib, stretched: 1.2}", "{notion: sew-in interfacing}, body")
"""The same with a band of its own cloth, its zip down to the foot of that."""
BREECHES = """
garment: Breeches
fitting: loosely
fabrics: {cloth: {fabric: wool gabardine}, satin: {fabric: satin, fibres: {acetate: 100}}}
seams:
  - {name: inseam, layers: [cloth, cloth], length: 50 cm, times: 2}
  - {name: side, layers: [cloth, cloth], length: 70 cm, times: 2}
  - {name: crotch, layers: [cloth, cloth], length: 70 cm, shape: curved}
  - {name: waistband, layers: [cloth, cloth], length: 84 cm}
  - {name: knee band, layers: [cloth, {use: cloth, fullness: 1.3}, satin], length: 36 cm, times: 2}
"""


def gaps(text: str) -> dict[str, str]:
    """What seems to be missing in a project, with the line to write."""
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    return {gap.id: gap.line for gap in told_gaps(Teller(garment, known()))}


@cache
def text_of(name: str) -> str:
    """The file of a garment."""
    return (FOLDER / f"{name}.yaml").read_text(encoding="utf-8")


def built(text: str, place: str) -> str:
    """What is told of how a place is built."""
    seam = next(seam for seam in read(text).seams if seam.name == place)
    return " ".join(seam.built.build_says) if seam.built else ""


def said(found: Work, step: str) -> str:
    """What a step says."""
    return found.tasks[step].step.does


@pytest.mark.parametrize("project", [MELTON, MELTON + JOINED])
def test_each_order_can_be_kept(project: str) -> None:
    """Nothing chases itself."""
    assert ordered(project).cycles == ()


def test_a_rib_called_a_waistband_is_the_foot_of_a_jacket() -> None:
    """No hem is turned up below it, and it is stretched on, not turned over as a band."""
    found = ordered(MELTON)
    assert places(found)["waistband"].kind.id == "neckband"
    assert not any(task.op in ("hem", "hem-edge", "hang") for task in found.tasks.values())


def test_the_zip_that_takes_in_the_ends_of_a_rib_is_set_after_it() -> None:
    """Sides, then the rib over them, then the zip down to its foot, and then the lining."""
    found = ordered(MELTON)
    assert "the zip takes them in" in said(found, "fold waistband")
    assert stands(found, "join side", "join waistband", "baste front zip", "set front zip")
    assert stands(found, "set front zip", "set facing to lining", "turn through lining side")


def test_a_rib_at_the_waist_of_a_skirt_or_a_dress_is_no_foot() -> None:
    """A skirt hangs below it, and its hem is sewn."""
    dress = MELTON + "  - {name: hem, layers: [body], length: 120 cm, edge: hem}\n"
    assert places(ordered(dress))["waistband"].kind.id == "waistband"
    assert "sew hem" in ordered(dress).tasks


def test_a_rib_is_no_collar_that_is_felled_inside() -> None:
    """It is folded, its ends closed, and stretched to the neck in one row."""
    found = ordered(MELTON)
    assert places(found)["collar"].method.id == "band-stretched-on"
    assert "close collar" not in found.tasks
    assert stands(found, "close the ends of collar", "join collar")


def test_a_pocket_of_a_new_pattern_is_cut_after_the_fitting() -> None:
    """A loose jacket is tried on as well, and a slit moves nowhere; a tried pattern is cut."""
    assert stands(ordered(MELTON), "fit", "stitch the welt of welt pocket", "slash welt pocket")
    tried = ordered(MELTON.replace("pattern: new", "pattern: tried"))
    assert stands(tried, "slash welt pocket", "fit")


def test_a_lining_is_asked_what_it_is_joined_to_below() -> None:
    """At the rib and at the cuffs, of the cloths that meet there."""
    found = gaps(MELTON)
    assert "{name: lining to rib, layers: [body, rib, lining]}" == found[RIB]
    assert "{name: lining to cuff, layers: [body, lining], times: 2}" == found[CUFF]
    assert not {RIB, CUFF} & gaps(MELTON + JOINED).keys()


@pytest.mark.parametrize(
    "filled", ["lining hem, layers: [lining]", "bag the lining, layers: [body, lining]"]
)
def test_a_lining_that_is_hemmed_or_bagged_is_asked_nothing_at_the_rib(filled: str) -> None:
    """It hangs free, or is sewn all round."""
    assert RIB not in gaps(f"{MELTON}  - {{name: {filled}, length: 96 cm}}\n")


def test_the_lining_is_sewn_to_the_rib_before_it_is_turned_and_felled_to_the_cuff_after() -> None:
    """The seam of the rib is reached wrong side out; a sleeve lies in a sleeve right side out."""
    found = ordered(MELTON + JOINED)
    assert stands(found, "set front zip", "sew lining to rib", "turn through lining side")
    assert stands(found, "turn through lining side", "fell lining to cuff")


def test_what_is_bagged_runs_along_the_rib() -> None:
    """The rib lies between shell and lining."""
    assert "along the seam of hem rib" in said(work(BLOUSON), "bag bag the lining")
    assert stands(work(BLOUSON), "set front zip", "bag bag the lining")


def test_a_cuff_that_is_faced_has_its_outer_edge_sewn_first() -> None:
    """Caught in the first row both edges would lie in the seam, and none be left to fell."""
    found = work(BLOUSON)
    assert "satin" in said(found, "face cuff")
    assert "satin" not in said(found, "join cuff")
    assert stands(
        found, "face cuff", "turn cuff", "join cuff", "close the ends of cuff", "close cuff"
    )


def test_a_sleeve_lining_in_a_cuff_is_no_facing() -> None:
    """It has a seam of its own in the sleeve, and hangs there."""
    found = changed(BLOUSON, "sew-in interfacing}, satin]", "sew-in interfacing}, lining]")
    assert "face cuff" not in found.tasks
    assert "lining" in said(found, "join cuff")


def test_a_cuff_that_closes_wants_a_slit_above_it() -> None:
    """Without one no hand goes through; with one nothing is missing."""
    without = text_of(BLOUSON).replace("  - {name: sleeve slit", "  #")
    assert (
        "{name: sleeve placket, layers: [sleeve], kind: placket, times: 2}" == gaps(without)[SLIT]
    )
    assert SLIT not in gaps(text_of(BLOUSON))


@pytest.mark.parametrize(
    "opening", ["side zip, layers: [cloth, {notion: zip}]", "placket, layers: [cloth]"]
)
def test_a_waistband_that_closes_wants_an_opening_below_it(opening: str) -> None:
    """A hook at the band alone lets nothing over the hips."""
    assert BAND in gaps(SKIRT)
    assert BAND not in gaps(f"{SKIRT}  - {{name: {opening}, length: 18 cm}}\n")


def test_a_band_that_laps_is_cut_longer_than_its_edge() -> None:
    """The end that lies under carries the bar; what is cut long enough is told nothing."""
    piece = "pieces:\n  - {name: waistband, fabric: cloth, width: 80 cm, height: 8 cm}\n"
    lap = "20 to 30 mm more for the end that lies under"
    assert lap in built(SKIRT, "waistband")
    assert lap not in built(SKIRT + piece, "waistband")


def test_a_band_that_closes_a_leg_is_its_foot() -> None:
    """It is made as a cuff, a ring where nothing opens it, and no hem is turned up below it."""
    found = ordered(BREECHES)
    assert places(found)["knee band"].method.id == "band-in-two-stages"
    assert stands(found, "close to a ring knee band", "face knee band", "join knee band")
    assert not any(task.op in ("hem", "hem-edge") for task in found.tasks.values())
    slit = "  - {name: knee slit, layers: [cloth], length: 9 cm, times: 2}\n"
    assert "close the ends of knee band" in ordered(BREECHES + slit).tasks


def test_a_collar_that_no_other_place_makes_is_made_up_before_it_is_set() -> None:
    """Its outer edge is sewn somewhere; with a place of its own it is sewn there."""
    found = work(BLOUSON)
    assert stands(found, "make up collar", "turn collar", "join collar")
    edge = "  - {name: collar edge, layers: [body, body], length: 60 cm, edge: turned}\n"
    lining = "  - {name: lining shoulder"
    assert "make up collar" not in changed(BLOUSON, lining, edge + lining).tasks


def test_a_band_of_cloth_at_the_foot_takes_in_its_zip_and_its_lining() -> None:
    """The band is joined, the zip runs over its end, and its inner edge is closed over all."""
    found = ordered(WOVEN)
    assert found.cycles == ()
    assert stands(found, "join side", "join waistband", "set front zip", "close waistband")
    assert stands(found, "set facing to lining", "turn through lining side", "close waistband")
    assert "the lower edge of the lining" in said(found, "close waistband")
    assert "close the ends of waistband" not in found.tasks
    assert not any(task.op in ("hem", "hem-edge") for task in found.tasks.values())
    assert "waistband-not-closed" not in gaps(WOVEN)


def test_a_band_that_buttons_by_itself_ends_its_zip() -> None:
    """The zip is set first, and the ends of the band are closed beside it."""
    found = ordered(WOVEN + "  - {name: waistband button, layers: [body, {notion: button}]}\n")
    assert stands(found, "set front zip", "join waistband", "close the ends of waistband")
    assert not any(task.op in ("hem", "hem-edge") for task in found.tasks.values())
