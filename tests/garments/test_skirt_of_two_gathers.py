"""A skirt of two cloths drawn up into one band, and a lined dress of pile: what is one place there.

Written as an occasion dressmaker writes them; what is done and when is common practice.
"""

from __future__ import annotations

import pytest

from advisor.order.missing import missing
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands

SKIRT = """garment: Regatta skirt
fitting: to the body
fabrics:
  veil: {fabric: organza, fibres: {polyester: 100}}
  under: {fabric: silk dupion}
seams:
  - {name: veil side, layers: [veil, veil], length: 66 cm, times: 2}
  - {name: veil back opening, layers: [veil], length: 18 cm, edge: hem, times: 2}
  - {name: under side, layers: [under, under], length: 66 cm}
  - {name: under back seam, layers: [under, under], length: 48 cm}
  - {name: back zip, layers: [under, {notion: concealed zip}], length: 18 cm}
  - {name: gather veil over under, layers: [{use: under, fullness: 2}, {use: veil, fullness: 3}],
     length: 70 cm}
  - {name: waistband, length: 70 cm, layers: [under, {notion: woven fusible interfacing},
     {use: veil, fullness: 3}, {use: under, fullness: 2}]}
  - {name: waistband ends, layers: [under, {notion: woven fusible interfacing}, under],
     length: 4 cm, times: 2, edge: turned}
  - {name: waistband inside, layers: [under, under], length: 70 cm, stitched by: hand}
  - {name: veil hem, layers: [veil], length: 210 cm, edge: hem}
  - {name: under hem, layers: [under], length: 140 cm, edge: hem}
"""
DRESS = """garment: Concert frock
fitting: to the body
fabrics:
  nap: {fabric: velvet, fibres: {viscose: 82, silk: 18}}
  crepe: {fabric: wool crepe}
  inside: {fabric: acetate lining}
seams:
  - {name: shoulder, layers: [nap, nap], length: 12 cm, times: 2}
  - {name: bodice side, layers: [nap, nap], length: 20 cm, times: 2}
  - {name: sleeve seam, layers: [nap, nap], length: 40 cm, times: 2}
  - {name: armhole, layers: [nap, {use: nap, ease: 3 cm}], length: 44 cm, times: 2}
  - {name: skirt side, layers: [crepe, crepe], length: 66 cm, times: 2}
  - {name: waist, layers: [nap, crepe], length: 72 cm}
  - {name: centre back zip, layers: [nap, {notion: concealed zip}], length: 54 cm}
  - {name: lining side, layers: [inside, inside], length: 20 cm, times: 2}
  - {name: lining shoulder, layers: [inside, inside], length: 12 cm, times: 2}
  - {name: neck edge, layers: [nap, inside], length: 60 cm, edge: turned}
  - {name: skirt hem, layers: [crepe], length: 130 cm, edge: hem}
pieces:
  - {name: bodice front lining, fabric: inside, width: 46 cm, height: 44 cm}
  - {name: skirt front lining, fabric: inside, width: 60 cm, height: 68 cm}
  - {name: skirt back lining, fabric: inside, width: 34 cm, height: 68 cm, number: 2}
"""


def _gaps(text: str) -> set[str]:
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    return {gap.rule.id for gap in missing(garment, known())}


def _does(text: str, step: str) -> str:
    return ordered(text).tasks[step].step.does


@pytest.mark.parametrize("called", ["waistband ends", "waistband end"])
def test_the_ends_of_a_band_are_closed_once_it_is_joined(called: str) -> None:
    """They are no strap whose ends are sewn on, and nothing stands before itself."""
    found = ordered(SKIRT.replace("waistband ends", called))
    assert not found.cycles
    assert stands(found, "join waistband", f"close {called}", "fell waistband inside")


def test_the_inside_of_a_band_is_its_inner_edge() -> None:
    found = ordered(SKIRT)
    assert "inner-edge" == places(found)["waistband inside"].kind.id
    assert not {"join waistband inside", "close waistband"} & {*found.order}
    other = ordered(SKIRT.replace("band inside", "band lower"))
    assert "waistband" == places(other)["waistband lower"].kind.id


def test_an_opening_whose_edges_are_hemmed_is_finished_before_it_is_gathered() -> None:
    found = ordered(SKIRT)
    assert stands(found, "stitch down veil back opening", "gather waistband")
    assert "Level" not in _does(SKIRT, "stitch down veil back opening")
    assert (
        "hem"
        == places(ordered(SKIRT.replace("veil back opening", "veil back edge")))[
            "veil back edge"
        ].kind.id
    )


def test_an_edge_that_a_band_draws_up_is_drawn_up_there_alone() -> None:
    """A gathered edge with something flat in it is joined to that, and is one by itself."""
    told = [step for step in ordered(SKIRT).order if step.endswith("gather veil over under")]
    assert [] == told
    flat = ordered(SKIRT.replace("[{use: under, fullness: 2}, {use: veil", "[under, {use: veil"))
    assert "join gather veil over under" in flat.order


def test_a_glue_between_two_cloths_is_no_damper_than_the_one_it_is_fused_to() -> None:
    """Water marks the silk of the band; that the veil behind it bears a damp one helps nothing."""
    iron = ordered(SKIRT).tasks["fuse waistband"].step.iron
    assert iron is not None
    assert "dry" == iron.moisture


def test_nothing_is_warned_of_for_one_degree() -> None:
    """149 °C beside 150 °C is kept to without a word; a zip that bears 110 °C is still told."""
    assert all("crepe" not in tender for _, tender in ordered(DRESS).capped)
    assert any("concealed zip" in tender for _, tender in ordered(SKIRT).capped)


def test_a_waist_that_was_only_basted_comes_apart_after_the_fitting() -> None:
    assert "then open the basting of waist" in _does(DRESS, "fit")
    sewn = DRESS.replace("fitting: to the body", "fitting: loosely")
    assert all("open the basting" not in t.step.does for t in ordered(sewn).tasks.values())


def test_ease_is_taken_out_of_the_pattern_of_a_pile_before_it_is_cut() -> None:
    out = "take the ease of armhole out of the pattern"
    assert out in _does(DRESS, "try the lengths")
    wool = DRESS.replace("fabric: velvet, fibres: {viscose: 82, silk: 18}", "fabric: wool flannel")
    assert out not in _does(wool, "try the lengths")


def test_a_skirt_lining_that_is_cut_and_sewn_nowhere_is_asked_for() -> None:
    line = "  - {name: skirt lining side, layers: [inside, inside], length: 66 cm, times: 2}\n"
    assert "skirt-lining-not-sewn" in _gaps(DRESS)
    assert "skirt-lining-not-sewn" not in _gaps(DRESS.replace("pieces:\n", line + "pieces:\n"))
    assert "skirt-lining-not-sewn" not in _gaps(DRESS.partition("pieces:")[0])
