"""Small cases of daily wear: slits, French seams, half zips, tabs and straps, braid, mounted cloth.

Each is as small as the fault allows. All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.handwork import as_made
from advisor.answer.teller import Teller
from advisor.answer.verdicts import told_verdict
from advisor.claims.collect import Place
from advisor.claims.judgement import Advice
from advisor.decide.advise import advise
from advisor.order.work import Work, order_of
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, places, stands

SLIT = """
garment: Cycling cape
fitting: to the body
fabrics: {linen: linen suiting 180 g/m2}
seams:
  - {name: arm slit, layers: [linen], length: 22 cm, times: 2}
  - {name: shoulder, layers: [linen, linen], length: 12 cm}
  - {name: side, layers: [linen, linen], length: 50 cm}
  - {name: hem, layers: [linen], length: 100 cm, edge: hem}
"""
BLOUSE = """
garment: Post-office blouse
fitting: loosely
maker: {overlocker: 4-thread}
fabrics: {chiffon: silk chiffon}
seams:
  - {name: shoulder, layers: [chiffon, chiffon], length: 12 cm, seam: French}
  - {name: side, layers: [chiffon, chiffon], length: 50 cm, seam: French, stitch: "304"}
  - {name: sleeve seam, layers: [chiffon, chiffon], length: 45 cm, seam: French, times: 2}
  - {name: armhole, layers: [chiffon, chiffon], length: 50 cm, shape: curved, times: 2}
  - {name: neck binding, layers: [chiffon, {notion: bias binding}], length: 50 cm, shape: curved}
  - {name: back keyhole, layers: [chiffon, chiffon], length: 12 cm}
  - {name: hem, layers: [chiffon], length: 100 cm, edge: hem}
"""
TOP = """
garment: Paddle top
fitting: loosely
fabrics: {fleece: fleece}
seams:
  - {name: shoulder, layers: [fleece, fleece], length: 12 cm}
  - {name: half front zip, layers: [fleece, {notion: coil zip}], length: 25 cm}
  - {name: neckband, layers: [fleece, fleece], length: 44 cm}
  - {name: side, layers: [fleece, fleece], length: 50 cm}
  - {name: hem, layers: [fleece], length: 100 cm, edge: hem}
"""
SHIRT = """
garment: Lock shirt
fitting: to the body
fabrics: {linen: linen suiting 180 g/m2}
seams:
  - {name: shoulder, layers: [linen, linen], length: 12 cm}
  - {name: side, layers: [linen, linen], length: 50 cm}
  - {name: buttonholes, on: linen, fastening: shell button, number: 6}
  - {name: neck button, kind: buttonhole, on: linen, fastening: shell button, number: 1}
  - {name: shoulder strap, layers: [linen, linen], length: 20 cm, times: 2}
  - {name: neck facing, layers: [linen, linen], length: 50 cm, edge: turned, shape: curved}
  - {name: belt tabs, layers: [linen, linen], length: 6 cm, times: 2}
  - {name: waistband, layers: [linen, linen], length: 70 cm}
  - {name: hem, layers: [linen], length: 100 cm, edge: hem}
"""
TROUSERS = """
garment: Band trousers
fitting: to the body
fabrics: {wool: wool flannel 260 g/m2}
seams:
  - {name: outseam, layers: [wool, wool], length: 100 cm, times: 2}
  - {name: outseam braid, layers: [wool, {notion: braid}], length: 100 cm, times: 2}
  - {name: inseam, layers: [wool, wool], length: 80 cm, times: 2}
  - {name: crotch, layers: [wool, wool], length: 60 cm, shape: curved}
  - {name: hem, layers: [wool], length: 44 cm, edge: hem, times: 2}
"""
MOUNTED = """
garment: Mounted dress
fitting: to the body
maker: {overlocker: 4-thread}
fabrics:
  wool: wool flannel 260 g/m2
  organza: silk organza
seams:
  - {name: underlining, layers: [wool, organza]}
  - {name: bust dart, layers: [wool, organza], length: 9 cm, times: 2}
  - {name: side, layers: [wool, wool], length: 50 cm}
  - {name: hem, layers: [wool, organza], length: 100 cm, edge: hem}
"""
PEPLUM = """
garment: Peplum bodice
fitting: to the body
fabrics:
  wool: wool flannel 260 g/m2
  velvet: silk velvet
seams:
  - {name: bust dart, layers: [wool], length: 9 cm, times: 2}
  - {name: side, layers: [wool, wool], length: 50 cm}
  - {name: embroidered panel, layers: [wool, velvet], length: 80 cm}
  - {name: centre back, layers: [wool, wool], length: 60 cm}
  - {name: peplum, layers: [wool, {use: wool, fullness: 1.3}], length: 80 cm, crosses: [side]}
  - {name: waist, layers: [wool, wool], length: 80 cm, crosses: [side]}
  - {name: hem, layers: [wool], length: 100 cm, edge: hem}
"""

PLEATED = """
garment: Rounds skirt
fabrics: {suiting: wool suiting 230 g/m2}
seams:
  - {name: skirt panel seams, layers: [suiting, suiting], length: 52 cm, times: 3}
  - {name: knife pleats, kind: pleat, layers: [suiting], length: 52 cm, times: 16}
  - {name: waistband, layers: [suiting, suiting], length: 74 cm}
"""

SMOCK = """
garment: Early-shift smock
fitting: loosely
fabrics:
  twill: cotton twill 200 g/m2
  contrast: cotton poplin 120 g/m2
seams:
  - {name: raglan seams, layers: [twill, twill], length: 30 cm, times: 4}
  - {name: side and sleeve, layers: [twill, twill], length: 92 cm, times: 2}
  - {name: pocket top bindings, layers: [twill, contrast], length: 18 cm, times: 2}
  - {name: patch pockets, layers: [twill], length: 52 cm, shape: corner, times: 2}
  - {name: towel loop, layers: [twill, twill], length: 12 cm}
  - {name: hem, layers: [twill], length: 124 cm, edge: hem}
"""


@cache
def advised(text: str) -> Advice:
    """The advice on a small garment."""
    return advise(garment_of(parse_yaml(text, "project.yaml"), known()), known())


@cache
def work(text: str) -> Work:
    """Its order of work."""
    return order_of(advised(text), known())


def says(found: Work, step: str) -> str:
    """The words of a step."""
    return found.tasks[step].step.does


def test_an_arm_slit_is_cut_where_the_fitting_finds_the_arm() -> None:
    """Whatever the pattern; of a sleeve, a pattern that was tried tells where its slit lies."""
    tried = SLIT.replace("fabrics:", "pattern: tried\nfabrics:")
    for text in (SLIT, tried):
        assert stands(work(text), "fit", "slash arm slit", "close arm slit")
    assert stands(work(tried.replace("arm slit", "sleeve slit")), "slash sleeve slit", "fit")


def test_a_sleeve_with_a_french_seam_is_basted_to_be_tried_on() -> None:
    """Its seam is past recall as soon as it is sewn, so the sleeve hangs basted at the fitting."""
    found = work(BLOUSE)
    assert stands(found, "baste sleeve seam", "baste armhole", "fit", "join sleeve seam")
    assert "sleeve seam" in says(found, "fit")
    assert "right sides together" in says(found, "baste sleeve seam")
    assert "take the basting out" in says(found, "baste sleeve seam")
    plain = BLOUSE.replace("seam: French, times", "seam: plain, finish: hand overcast, times")
    assert "baste sleeve seam" not in work(plain).order


def test_the_first_row_of_a_french_seam_is_straight() -> None:
    """Whatever the seam is sewn with: the first row is enclosed, and only holds the edges."""
    state = work(BLOUSE).tasks["join side"].step.machine
    assert state is not None
    assert "301" == state.stitch


def test_what_is_only_basted_is_basted_last_and_told_as_open() -> None:
    """Shoulders hang with the rest, and a fitting changes them as often as a side."""
    found = work(BLOUSE)
    basted = [k for k, step in enumerate(found.order) if step.startswith("baste ")]
    assert found.order.index("fit") - len(basted) == basted[0]
    assert "shoulder, side" in says(found, "fit")
    assert "shoulder, side" in says(work(SLIT), "fit")


def test_a_neck_is_bound_after_the_slit_that_ends_in_it() -> None:
    """A keyhole is a faced slit, and the binding runs over its open end."""
    found = work(BLOUSE)
    assert ("placket", "placket-faced") == (
        places(found)["back keyhole"].kind.id,
        places(found)["back keyhole"].method.id,
    )
    assert stands(found, "turn back keyhole", "join neck binding")


def test_a_zip_that_ends_half_way_is_set_in_a_slit() -> None:
    """It does not come apart below, and goes in flat before the neck closes over its end."""
    found = work(TOP)
    assert "zip-in-a-slit" == places(found)["half front zip"].method.id
    assert stands(found, "set half front zip", "join side")
    assert stands(found, "set half front zip", "join neckband")
    whole = work(TOP.replace("half front zip", "front zip"))
    assert "open-ended-zip" == places(whole)["front zip"].method.id


@pytest.mark.parametrize("name", ["buttonholes", "neck button"])
def test_a_button_that_fastens_a_buttonhole_leaves_it_one(name: str) -> None:
    """Its name, or its kind, says holes; the button that goes through is bought with them."""
    assert "buttonhole" == places(work(SHIRT))[name].kind.id


def test_what_is_caught_in_an_edge_is_there_before_the_edge_is_sewn() -> None:
    """The ends of a strap are tried on first; a tab is basted where the band takes it in."""
    found = work(SHIRT)
    assert stands(found, "fit", "sew in the ends of shoulder strap", "join neck facing")
    assert stands(found, "baste on belt tabs", "join waistband")


def test_a_braid_is_laid_on_while_the_leg_lies_flat() -> None:
    """Over the seam that it covers, and before the other seam of the leg closes it."""
    found = work(TROUSERS)
    assert stands(found, "fit", "join outseam", "stitch on outseam braid", "join inseam")
    assert stands(found, "baste inseam", "fit")


def test_a_mounted_cloth_is_sewn_as_its_shell() -> None:
    """What backs it guards itself against a thick needle, and asks for no fine one."""
    found = advised(MOUNTED).judgement.verdicts
    shell, dart, hem = (found[Place("seam", n)] for n in ("side", "bust dart", "hem"))
    for aspect in ("needle.size", "needle.point", "stitch.length", "thread.size"):
        assert shell[aspect].pick == dart[aspect].pick, aspect
    assert hem["hem.kind"].aspect.words[int(hem["hem.kind"].pick or 0)] != "bound"


@pytest.mark.parametrize(
    ("method", "stitch"),
    [("catch-stitched-hem", "catch stitch"), ("hand-rolled-hem", "slip stitch")],
)
def test_a_place_by_hand_names_its_stitch(method: str, stitch: str) -> None:
    """A hem is no seam in backstitch: the stitch is that of the way in which it is made."""
    made = as_made(advised(SLIT), {"hem": known().places.methods[method]}).judgement
    here = Place("seam", "hem")
    told = told_verdict(here, made.verdicts[here]["stitch.type"], Teller(made.garment, known()))
    assert f"by hand, in {stitch}" == told.text


def test_only_what_surely_meets_a_seam_is_said_to_run_into_it() -> None:
    """A dart and an ornament end anywhere; a centre seam runs into the waist."""
    why = {
        (p.before.removeprefix("join ").removeprefix("stitch "), p.after): p.why
        for p in work(PEPLUM).graph.precedences
        if "usually runs into" in p.why
    }
    assert ("centre back", "join waist") in why
    assert not [pair for pair in why if pair[0] in ("bust dart", "embroidered panel")]


def test_a_bust_dart_ends_above_the_waist() -> None:
    """Nothing at the waist crosses it; the side does."""
    found = {
        (p.before, p.after) for p in work(PEPLUM.replace(", crosses: [side]", "")).graph.precedences
    }
    assert ("press bust dart", "join side") in found
    assert not {("press bust dart", "join peplum"), ("press bust dart", "join waist")} & found


def test_a_skirt_pleated_all_round_is_joined_to_one_length_first() -> None:
    """Its seams lie inside the pleats; a pleat or two in a panel are laid before that is joined."""
    assert stands(work(PLEATED), "press skirt panel seams", "lay knife pleats", "join waistband")
    few = work(PLEATED.replace("times: 16", "times: 2"))
    assert stands(few, "press knife pleats", "join skirt panel seams")


def test_the_top_of_a_pocket_is_bound_before_the_pocket_is_turned_under() -> None:
    """It lies on the pocket alone, so no seam of the body runs over its end."""
    found = work(SMOCK)
    assert stands(found, "stitch down pocket top bindings", "turn under patch pockets")
    over = [p for p in found.graph.precedences if "Pocket top bindings is finished" in p.why]
    assert [] == over


def test_a_towel_loop_is_no_seam() -> None:
    """It is folded and barred on, as the loops of a belt are."""
    assert "belt-loop" == places(work(SMOCK))["towel loop"].kind.id


def test_strips_that_bind_are_cut_on_the_bias() -> None:
    """Where no piece says so, the cutting of their cloth does; a shell is cut as it was."""
    found = work(SMOCK)
    assert "strips on the bias, four times their finished width" in says(found, "cut contrast")
    assert "bias" not in says(found, "cut twill")
