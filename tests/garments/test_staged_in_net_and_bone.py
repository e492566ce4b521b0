"""A laced stage dress with rows of net, and a full skirt on petersham over a petticoat of net.

What lies under an iron without being named, what hangs from a waist, a ribbon that is a band, bones
of two kinds: common practice of workrooms for the stage.
"""

from __future__ import annotations

import pytest

from advisor.claims.collect import Place
from advisor.construction.notionlist import notions_to_buy
from advisor.decide.advise import advise
from advisor.order.missing import missing
from advisor.order.setups import Setups
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands

DRESS = """garment: Salt heron's dress
fitting: to the body
pattern: new
maker: {machine: industrial, overlocker: 4-thread}
fabrics:
  base: {fabric: coutil, fibres: {cotton: 100}, weight: 280 g/m2}
  face: {fabric: brocade, fibres: {viscose: 60, polyester: 30, metallic-film: 10}, weight: 250 g/m2}
  apron: {fabric: cotton twill, fibres: {cotton: 100}, weight: 210 g/m2}
  net: {fabric: net, fibres: {nylon: 100}, weight: 40 g/m2}
parts:
  bodice: {layers: [base, face], fitting: to the body}
  skirt: {layers: [apron, net], fitting: loosely}
seams:
  - {name: panel seams, layers: [base, face, face, base], length: 33 cm, shape: curved,
     stress: high, times: 8, part: bodice}
  - {name: bone channels, layers: [base, {notion: boning channel}], length: 31 cm, times: 10,
     part: bodice}
  - {name: bones, layers: [base, {notion: boning channel}, {notion: spiral boning}],
     length: 29 cm, times: 10, part: bodice}
  - {name: back edge, layers: [face, base], length: 33 cm, edge: turned, times: 2, part: bodice}
  - {name: back bones, layers: [base, base, {notion: flat steel boning}], length: 31 cm,
     times: 4, part: bodice}
  - {name: waist stay, layers: [base, {notion: petersham ribbon}], length: 70 cm, part: bodice}
  - {name: top edge, layers: [face, base, {notion: bias binding}], length: 86 cm, edge: bound,
     part: bodice}
  - {name: back lacing, on: face, fastening: lacing, length: 33 cm, part: bodice}
  - {name: net rows, layers: [apron, {use: net, fullness: 3}], length: 86 cm, times: 3,
     gathers: {method: hand rows, to: 86 cm}, part: skirt}
  - {name: apron to bodice, layers: [base, face, apron], length: 86 cm, shape: curved}
  - {name: sewn stones, layers: [face, base, {notion: glass stone}], times: 40, part: bodice}
"""
SKIRT = """garment: Harbour lantern skirt
fitting: to the body
maker: {machine: household, overlocker: 4-thread}
fabrics:
  silk: {fabric: taffeta, fibres: {silk: 100}, weight: 95 g/m2}
  yoke: {fabric: lining, fibres: {viscose: 100}, weight: 90 g/m2}
  net: {fabric: net, fibres: {nylon: 100}, weight: 38 g/m2}
parts:
  skirt: {layers: [silk], fitting: loosely}
  petticoat: {layers: [yoke, net], separate: [net], fitting: loosely}
seams:
  - {name: skirt side, layers: [silk, silk], length: 80 cm, times: 2, part: skirt}
  - {name: side zip, layers: [silk, {notion: concealed zip}], length: 20 cm, part: skirt}
  - {name: waistband, layers: [{notion: petersham ribbon}, {use: silk, fullness: 3}],
     length: 70 cm, stress: high, gathers: {method: hand rows, to: 70 cm}, part: skirt}
  - {name: petticoat side, layers: [yoke, yoke], length: 20 cm, times: 2, part: petticoat}
  - {name: petticoat to band, layers: [{notion: petersham ribbon}, yoke], length: 70 cm,
     stress: high, part: petticoat}
  - {name: first net tier, layers: [yoke, {use: net, fullness: 3}], length: 96 cm,
     gathers: {method: hand rows, to: 96 cm}, part: petticoat}
  - {name: second net tier, layers: [net, {use: net, fullness: 2}], length: 290 cm,
     gathers: {method: gathering foot, to: 290 cm}, part: petticoat}
  - {name: net edge ribbon, layers: [net, {notion: satin ribbon}], length: 580 cm,
     part: petticoat}
  - {name: hem, layers: [silk], length: 210 cm, edge: hem, part: skirt}
  - {name: band hooks, layers: [silk, {notion: petersham ribbon}, {notion: hook and bar}], times: 2}
pieces:
  - {name: skirt, fabric: silk, finished width: 70 cm, finished height: 80 cm, fullness: 3}
  - {name: petticoat yoke, fabric: yoke, width: 52 cm, height: 24 cm, number: 2}
"""


def _garment(text: str) -> Garment:
    return garment_of(parse_yaml(text, "project.yaml"), known())


def _setups(text: str) -> Setups:
    return Setups(advise(_garment(text), known()), known())


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize("place", ["bone channels", "waist stay"])
def test_what_is_sewn_to_one_of_two_doubled_cloths_keeps_to_the_other(
    place: str, *, turned: bool
) -> None:
    """The film in the brocade bears 110 °C and no damp, named or not, whichever lies inside."""
    plies = "[face, base, base, face]" if turned else "[base, face, face, base]"
    text = DRESS.replace("[base, face, face, base]", plies)
    setups = _setups(text)
    found = Place("seam", place)
    assert 110 == setups.limit(found)
    assert "dry" == setups.word(found, "press.moisture")
    single = text.replace(plies, "[base, base]")
    assert 110 < (_setups(single).limit(Place("seam", "waist stay")) or 0)


def test_cloths_that_lie_doubled_ask_for_a_mounting() -> None:
    """One line told eight times is as telling as eight lines; bones between two plies are none."""
    gaps = {gap.rule.id: gap for gap in missing(_garment(DRESS), known())}
    assert ("face", "base") == gaps["cloths-mounted-nowhere"].cloths
    line = "  - {name: mounting, layers: [face, base], part: bodice}\n"
    told = missing(_garment(DRESS.replace("seams:\n", f"seams:\n{line}")), known())
    assert "cloths-mounted-nowhere" not in {gap.rule.id for gap in told}


def test_an_empty_channel_and_its_place_are_pressed_at_one_heat() -> None:
    """The cloth would bear 200 °C: what the sheet tells of the place stands in the order too."""
    text = (
        DRESS.replace("[base, {notion: boning channel}, {notion: spiral boning}]", "[base, base]")
        .replace("name: bones", "name: side gore")
        .replace(
            "layers: [base, {notion: boning channel}]",
            "kind: boning, layers: [base, base, {notion: spiral boning}]",
        )
    )
    found, setups = ordered(text), _setups(text)
    iron = found.tasks["press bone channels"].step.iron
    place = setups.iron(Place("seam", "bone channels"))
    assert iron is not None
    assert iron == place


def test_no_cloth_is_too_tender_for_its_own_limit() -> None:
    """Elastic is pinned on for the fitting and off again: the brocade beside it bears the press."""
    strap = (
        "  - {name: shoulder straps, layers: [face, base, {notion: knitted elastic}],\n"
        "     length: 28 cm, times: 2, part: bodice}\n"
    )
    assert "press bone channels" not in dict(ordered(DRESS + strap).hot_near)


@pytest.mark.parametrize("name", ["apron to bodice", "apron joined on", "lower join"])
def test_what_joins_two_parts_comes_after_the_seams_that_end_there(name: str) -> None:
    """Whatever it is called: panels are sewn, and net stands on the apron, before that hangs."""
    found = ordered(DRESS.replace("name: apron to bodice", f"name: {name}"))
    assert "waist" == places(found)[name].role.id
    assert stands(found, "join panel seams", "join net rows", f"join {name}")
    assert stands(found, "baste panel seams", f"baste {name}", "fit")


def test_what_ravels_inside_is_not_pinked_and_a_firm_cloth_takes_the_pull() -> None:
    """Neither a raw nor a pinked edge stops it; no strip is laid where coutil lies behind."""
    found = advise(_garment(DRESS), known()).judgement.verdicts[Place("seam", "panel seams")]
    finish = found["seam.finish"]
    assert finish.pick is not None
    assert finish.aspect.words[int(finish.pick)] not in ("pinked", "none")
    assert "seam.support" not in found


def test_bones_of_two_kinds_are_told_apart() -> None:
    """Steel is not nipped coil by coil, and lies between the plies of an edge that is turned."""
    found = ordered(DRESS)
    assert stands(found, "turn back edge", "join back bones", "insert bones in back bones")
    assert "flat steel cut" in found.tasks["baste the bones in"].step.does
    rear = ordered(DRESS.replace("back bones, layers: [base, base,", "rear bones, layers: [base,"))
    steps = ("insert bones in bones", "insert bones in rear bones")
    assert 2 == len({rear.tasks[step].step.does for step in steps})


def test_a_channel_is_bought_once() -> None:
    """Bones that name the channel they slide into buy none: ten lengths of 31 cm."""
    rows = {row.name: row for row in notions_to_buy(_garment(DRESS), known())}
    assert ("bone channels",) == rows["boning channel"].places
    assert 3100 == rows["boning channel"].whole


def test_stones_that_are_called_sewn_are_sewn_when_all_is_pressed() -> None:
    """With a thread, after the last press; what says nothing of it is glued."""
    found = ordered(DRESS)
    assert stands(found, "last press", "sew on sewn stones")
    glued = ordered(DRESS.replace("name: sewn stones", "name: stones"))
    assert "glue stones" in glued.order


@pytest.mark.parametrize("turned", [False, True])
def test_petersham_that_takes_gathers_in_is_the_band(*, turned: bool) -> None:
    """Rows, drawn up, tried on, lapped; nothing is turned over, for no band was cut."""
    text = SKIRT
    if turned:
        plies = "[{notion: petersham ribbon}, {use: silk, fullness: 3}]"
        assert plies in text
        text = text.replace(plies, "[{use: silk, fullness: 3}, {notion: petersham ribbon}]")
    found = ordered(text)
    steps = ("gather waistband", "draw up waistband", "baste waistband", "fit", "join waistband")
    assert stands(found, "join skirt side", *steps, "turn the ends of waistband")
    assert "close waistband" not in found.order
    assert "tried" not in found.tasks["join waistband"].step.does
    tried = ordered(text.replace("to the body\n", "to the body\npattern: tried\n", 1))
    assert "baste waistband" not in tried.order


def test_a_flat_edge_on_petersham_is_lapped_when_its_sides_are_closed() -> None:
    """It is no plain seam: the ribbon has no edge to neaten, and needs no strip beside it."""
    found = ordered(SKIRT)
    assert "band-of-petersham" == places(found)["petticoat to band"].method.id
    assert stands(found, "join petticoat side", "join petticoat to band")
    verdicts = advise(_garment(SKIRT), known()).judgement.verdicts
    assert "seam.support" not in verdicts[Place("seam", "petticoat to band")]


def test_a_band_that_is_cut_keeps_its_petersham_inside() -> None:
    """A piece called after it is the band, and its gathers are drawn up all the same."""
    cut = "  - {name: waistband, fabric: silk, width: 76 cm, height: 9 cm}\n"
    flat = SKIRT.replace(
        "[{notion: petersham ribbon}, {use: silk, fullness: 3}]",
        "[silk, {use: silk, fullness: 3}, {notion: petersham ribbon}]",
    )
    found = ordered(flat + cut)
    assert "waistband-with-facing" == places(found)["waistband"].method.id
    assert stands(found, "gather waistband", "draw up waistband", "join waistband")


def test_a_tier_takes_the_lower_edge_of_its_yoke_in() -> None:
    """No hem of the lining is asked for where a tier hangs from its lower edge."""
    asked = {gap.place.name for gap in missing(_garment(SKIRT), known())}
    assert "petticoat side" not in asked


def test_a_ribbon_is_laid_along_a_strip_while_that_is_flat() -> None:
    """It is as long as the strip is before it is drawn up; round an edge that is not, it waits."""
    found = ordered(SKIRT)
    assert stands(found, "stitch on net edge ribbon", "gather second net tier")
    shorter = ordered(SKIRT.replace("length: 580 cm", "length: 420 cm"))
    assert stands(shorter, "join second net tier", "stitch on net edge ribbon")


def test_the_band_of_a_circle_is_tried_on_and_that_of_straight_widths_is_not() -> None:
    """The waist edge of a circle grows as it hangs, so its band is basted for the fitting."""
    circle = """garment: Weir walker's skirt
fitting: to the body
fabrics: {crepe: {fabric: crepe, fibres: {wool: 100}, weight: 220 g/m2}}
seams:
  - {name: side, layers: [crepe, crepe], length: 70 cm, times: 2}
  - {name: side zip, layers: [crepe, {notion: concealed zip}], length: 20 cm}
  - {name: waistband, layers: [crepe, crepe], length: 72 cm}
  - {name: hem, layers: [crepe], length: 480 cm, edge: hem, shape: curved}
"""
    assert stands(ordered(circle), "baste side", "baste waistband", "fit", "join waistband")
    straight = circle.replace("480 cm, edge: hem, shape: curved", "110 cm, edge: hem")
    assert "baste waistband" not in ordered(straight).order
