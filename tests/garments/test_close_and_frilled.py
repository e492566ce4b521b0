"""A suit close to the body, and a frill on it: read as one who sews swimsuits would read them."""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.pipeline import Parts, answer
from advisor.order.namewords import CLOSED_FINISHES
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.render.printed.compact import render_sheet
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands

SUIT = """\
garment: Suit with a hip frill
fabrics:
  shell: nylon 80 elastane 20 swim knit
  frill: silk organza
  lining: nylon 82 elastane 18 tricot
seams:
  - {name: side, layers: [shell, shell], length: 24 cm, times: 2}
  - {name: crotch, layers: [shell, lining, shell], length: 8 cm}
  - {name: lining side, layers: [lining, lining], length: 24 cm, times: 2}
  - {name: hip frill, layers: [{use: frill, fullness: 1.6}, shell], length: 90 cm}
  - {name: leg edge, layers: [shell, lining, {notion: swimwear elastic}], length: 60 cm, times: 2}
  - {name: neck edge, layers: [shell, {notion: swimwear elastic}], length: 60 cm}
"""


@cache
def suit() -> Work:
    return ordered(SUIT)


@cache
def sheet() -> str:
    garment = garment_of(parse_yaml(SUIT, "suit.yaml"), known())
    return " ".join(render_sheet(answer(garment, known(), Parts(order=True))).split())


@pytest.mark.parametrize("edge", ["leg edge", "neck edge"])
def test_elastic_is_sewn_to_the_edge_of_a_suit(edge: str) -> None:
    """Swim elastic is stretched on, with the lining or without; a casing is for woven cloth."""
    assert places(suit())[edge].kind.id == "elastic-edge"
    woven = SUIT.replace("nylon 80 elastane 20 swim knit", "cotton poplin")
    assert places(ordered(woven))["neck edge"].kind.id == "casing"


def test_two_pieces_with_elastic_between_are_a_seam() -> None:
    """Clear elastic in a shoulder steadies a seam; it is no edge."""
    text = SUIT + "  - {name: shoulder, layers: [shell, shell, {notion: clear elastic}]}\n"
    assert places(ordered(text))["shoulder"].kind.id == "seam"


def test_a_suit_has_no_hem_and_its_lining_is_neatened_before_the_elastic() -> None:
    """Every opening has its elastic; what runs over the end of a seam comes after it."""
    found = suit()
    assert not [step for step in found.order if "hem" in step.split()]
    assert stands(found, "neaten lining side", *[s for s in found.order if s.startswith("elastic")])


def test_a_gathered_frill_is_not_taped_shut() -> None:
    """The suit has to pass over the hips: no stay tape, and the gathering threads come out."""
    frill = sheet().split("hip frill (frill + shell).")[1].split("leg edge (")[0]
    assert "stay tape" not in frill
    assert "Pull the gathering threads out" in frill


def test_what_a_length_has_to_show_is_tried_on_the_length() -> None:
    """Which way it shades is no question of a crotch, and no iron is told where none comes."""
    tests = sheet().split("TRY ON SCRAPS FIRST")[1].split("NOT KNOWN")[0]
    assert "[ ] shell, lining. Hang two lengths side by side" in tests
    common = sheet().split("every seam (")[1].split(" side (")[0]
    assert "Press:" not in common


@pytest.mark.parametrize("finish", ["overlocked", "zigzag", *sorted(CLOSED_FINISHES)])
def test_what_cuts_the_allowance_waits_for_the_fitting(finish: str) -> None:
    """Two rows and scissors leave nothing to let out."""
    found = ordered(
        "garment: g\nfitting: to the body\nfabrics: {a: silk chiffon}\nseams:\n"
        f"  - {{name: side, layers: [a, a], length: 40 cm, finish: {finish}, method: plain seam}}\n"
        "  - {name: waist dart, layers: [a], length: 9 cm}\n"
    )
    assert stands(found, "fit", "neaten side")
    past = "past recall" in found.tasks["neaten side"].tags
    assert past == (finish in CLOSED_FINISHES)


DUNGAREES = """\
garment: Dungarees
fabrics: {denim: {fabric: denim, weight: 12 oz, fibres: {cotton: 100}}}
seams:
  - {name: inseam, layers: [denim, denim], length: 70 cm, times: 2}
  - {name: pocket rivets, layers: [denim, {notion: rivet}], number: 6}
  - {name: bib buckles, layers: [denim, {notion: buckle}], number: 2}
"""


def test_a_buckle_is_no_seam_and_washes_as_a_button_does() -> None:
    """It hangs in a loop of a strap: nothing is joined, neatened or bound, and no wire breaks."""
    found = ordered(DUNGAREES)
    assert "buckle" == places(found)["bib buckles"].kind.id
    assert ["fasten bib buckles"] == [s for s in found.order if "bib buckles" in s]
    whole = answer(garment_of(parse_yaml(DUNGAREES, "d.yaml"), known()), known(), Parts())
    wash = next(v for v in whole.verdicts if v.aspect == "care.wash")
    assert "hand" not in str(wash.text)


def test_nothing_is_stitched_on_scraps_for_a_rivet() -> None:
    """Only what a machine sews is sewn on scraps."""
    whole = answer(garment_of(parse_yaml(DUNGAREES, "d.yaml"), known()), known(), Parts())
    tried = {place for test in whole.tests for place in test.places}
    assert {"inseam"} == tried


@pytest.mark.parametrize(
    ("cloth", "method"),
    [
        ("cotton poplin", "machine-buttonhole"),
        ("silk satin", "hand-worked-buttonhole"),
        ("cotton velvet", "bound-buttonhole"),
    ],
)
def test_no_buttonhole_is_worked_by_machine_where_none_is_advised(cloth: str, method: str) -> None:
    """What the cloth avoids is not told as the way that it is made; pile and satin want another."""
    found = ordered(
        f"garment: g\nfabrics: {{a: {cloth}}}\nseams:\n"
        "  - {name: side, layers: [a, a], length: 40 cm}\n"
        "  - {name: front buttonholes, on: a, fastening: buttonholes, number: 5}\n"
    )
    assert method == found.methods["front buttonholes"].id


JACKET = """\
garment: Jacket
fabrics: {shell: boiled wool, cuff: wool rib knit}
seams:
  - {name: shoulder, layers: [shell, shell], length: 14 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 45 cm, times: 2}
  - {name: cuff, layers: [shell, {use: cuff, stretched: 1.2}], length: 26 cm, times: 2}
"""


def test_only_what_carries_is_taped() -> None:
    """A shoulder of boiled wool grows unless it is taped; its side hangs and carries nothing."""
    whole = answer(garment_of(parse_yaml(JACKET, "j.yaml"), known()), known(), Parts())
    held = {v.place: v.text for v in whole.verdicts if v.aspect == "seam.support"}
    assert "stay tape" in held["shoulder"]
    assert "side" not in held or "stay tape" not in held["side"]


def test_a_rib_cuff_is_folded_and_sewn_on_as_one() -> None:
    """It is no band in two stages: both its edges go into one seam, stretched to fit."""
    assert "band-stretched-on" == ordered(JACKET).methods["cuff"].id
    woven = JACKET.replace("{use: cuff, stretched: 1.2}", "shell")
    assert "band-in-two-stages" == ordered(woven).methods["cuff"].id
