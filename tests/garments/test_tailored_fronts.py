"""What the front of a tailored coat and a thick lined dress have to get right, and in which order.

All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.gapwords import told_gaps
from advisor.answer.seamwords import warnings
from advisor.answer.teller import Teller
from advisor.claims.collect import Place
from advisor.construction.seamwork import seamwork
from advisor.decide.advise import advise
from advisor.order.rows import further_rows
from advisor.order.work import Work, order_of
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import advice, changed, known, stands, work

COAT = "more/clock_keeper_coat"
JACKET = """garment: Weighbridge jacket
fitting: to the body
pattern: new
fabrics:
  cloth: {fabric: wool suiting, fibres: {wool: 100}, weight: 280 g/m2}
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: front dart, layers: [cloth], length: 24 cm, times: 2}
  - {name: front canvas, layers: [cloth, {notion: hair canvas}], length: 70 cm, kind: canvas}
  - {name: welt pocket, layers: [cloth, cloth], length: 15 cm, shape: corner, times: 2}
  - {name: breast pocket, layers: [cloth, cloth], length: 40 cm, kind: patch pocket}
  - {name: shoulder, layers: [cloth, cloth], length: 14 cm, times: 2}
  - {name: side, layers: [cloth, cloth], length: 46 cm, times: 2}
  - {name: collar edge, layers: [cloth, cloth], length: 56 cm, edge: turned}
  - {name: collar seam, layers: [cloth, cloth], length: 42 cm, shape: curved}
  - {name: front facing, layers: [cloth, cloth], length: 70 cm, edge: turned, times: 2}
  - {name: facing to lining, layers: [cloth, lining], length: 150 cm, shape: curved}
  - {name: hanging loop, layers: [cloth], length: 8 cm}
"""
ROWS = """garment: Bench tabard
fitting: loosely
fabrics:
  drill: {fabric: poplin, fibres: {cotton: 100}, weight: 200 g/m2}
seams:
  - {name: shoulder, layers: [drill, drill], length: 14 cm, times: 2, seam: French, topstitch: 2}
  - {name: bust dart, layers: [drill], length: 14 cm, times: 2, topstitch: 1}
  - {name: waistband, layers: [drill, drill], length: 80 cm, topstitch: 1}
  - {name: hem, layers: [drill], length: 100 cm, edge: hem, topstitch: 1}
  - {name: buttons, layers: [drill, {notion: button}], topstitch: 1}
"""
DRESS = """garment: Kiln dress
fitting: to the body
fabrics:
  drill: {fabric: wool flannel, fibres: {wool: 100}, weight: 330 g/m2}
  lining: {fabric: lining, fibres: {acetate: 100}}
seams:
  - {name: shoulder, layers: [drill, drill], length: 8 cm, times: 2}
  - {name: side, layers: [drill, drill], length: 92 cm, times: 2}
  - {name: waist, layers: [drill, drill], length: 74 cm}
  - {name: back zip, layers: [drill, {notion: coil zip}, drill], length: 56 cm, crosses: waist}
  - {name: centre back, layers: [drill, drill], length: 30 cm}
  - {name: neck edge, layers: [drill, lining], length: 60 cm, shape: curved, edge: turned}
  - {name: lining side, layers: [lining, lining], length: 88 cm, times: 2}
  - {name: lining waist, layers: [lining, lining], length: 74 cm, shape: curved}
"""


@cache
def garment(text: str) -> Garment:
    """A garment that is written here."""
    return garment_of(parse_yaml(text, "p.yaml"), known())


@cache
def ordered(text: str) -> Work:
    """The order of its work."""
    return order_of(advise(garment(text), known()), known())


def test_a_front_is_faced_and_turned_when_its_collar_is_on() -> None:
    """The facing is sewn over the ends of the collar, and turned once for all.

    Where canvas makes the front a tailored one, its collar is set from the notches that are turned.
    """
    steps = ("turn collar edge", "press collar seam", "join front facing", "turn front facing")
    assert stands(ordered(JACKET), *steps, "close collar seam")
    set_on = ("join collar seam", "join the gorge of collar seam", "close collar seam")
    assert stands(work(COAT), *steps[2:], "topstitch front facing", *set_on)
    assert stands(work(COAT), "turn collar edge", *set_on)


def test_a_collar_on_a_stand_waits_for_the_front() -> None:
    """Its ends are finished at an edge that is turned already."""
    stand = JACKET.replace(
        "{name: collar seam,", "{name: collar stand, method: collar with a stand,"
    )
    reasons = {
        (p.before, p.after) for p in ordered(stand).graph.precedences if "collar" in p.before
    }
    assert ("join collar stand", "join front facing") not in reasons


def test_a_thick_dart_is_cut_open_after_the_fitting() -> None:
    """It is only basted until then, and so is what runs over it."""
    cut = ("stitch front dart", "cut open front dart", "press front dart", "join side")
    assert stands(work(COAT), "baste front dart", "baste side", "fit", *cut)
    assert "fit" in work(COAT).graph.forced_before("stitch front dart")
    assert "mark anew where welt pocket will lie" in work(COAT).tasks["fit"].step.does
    tried = changed(COAT, "pattern: new", "pattern: tried")
    assert stands(tried, "cut open front dart", "fit")


def test_canvas_hangs_in_the_front_at_the_fitting_and_is_laid_back_from_a_slit() -> None:
    """It is padded when it likes, and cut out of the allowances once those are sure."""
    found = ordered(JACKET)
    assert stands(found, "press front dart", "baste front canvas", "fit", "trim front canvas")
    laid = "lay the canvas back at welt pocket"
    assert stands(found, "baste front canvas", "fit", laid, "slash welt pocket")


def test_where_the_pattern_is_tried_or_a_dart_is_open_late_the_pocket_comes_before_canvas() -> None:
    """Both orders are taught; which one holds is told as the reason."""
    tried = ordered(JACKET.replace("pattern: new", "pattern: tried"))
    for found in (tried, work(COAT)):
        assert stands(found, "close welt pocket", "baste front canvas")
        assert not any(step.startswith("lay the canvas back") for step in found.order)
    canvas = (item for item in tried.graph.precedences if item.after == "baste front canvas")
    assert any("others baste it in before" in item.why for item in canvas)


def test_an_undercollar_waits_for_no_fitting_and_no_pocket() -> None:
    """It is padded and shaped by itself; only a front is tried on with its canvas in."""
    line = "  - {name: undercollar, layers: [cloth, {notion: hair canvas}], kind: canvas}\n"
    for found in (ordered(JACKET + line), ordered((JACKET + line).replace(": new", ": tried"))):
        for step in ("baste undercollar", "trim undercollar"):
            assert not {"fit", "close welt pocket"} & set(found.graph.forced_before(step))


def test_a_patch_pocket_is_sewn_to_the_flat_front() -> None:
    """Before its facing is on and a collar hangs from it."""
    found = ordered(JACKET)
    assert stands(found, "press breast pocket", "join collar seam", "join front facing")
    for later in ("join collar seam", "join front facing"):
        assert "press breast pocket" in found.graph.forced_before(later)


@pytest.mark.parametrize("text", [JACKET, DRESS], ids=["jacket", "dress"])
def test_the_label_is_in_before_the_lining_closes(text: str) -> None:
    """It is sewn to lining or facing alone; in what has no lining it comes last."""
    found = ordered(text)
    closing = next(
        s for s in found.order if s in ("set facing to lining", "fell the lining to back zip")
    )
    assert stands(found, "label", closing)
    assert "label" in found.graph.forced_before(closing)
    assert "label" == ordered(ROWS).order[-1]


def test_a_loop_to_hang_it_by_is_caught_in_the_neck() -> None:
    """It waits for no side seam: it is no loop for a belt."""
    for found in (ordered(JACKET), work(COAT)):
        forced = found.graph.forced_before("set facing to lining")
        assert "baste on hanging loop" in forced
        reasons = [p.why for p in found.graph.precedences if p.after == "baste on hanging loop"]
        assert not any("belt" in why for why in reasons)


def test_a_lining_is_graded_and_neatened_before_it_is_felled_to_the_zip() -> None:
    """No scissors reach it afterwards."""
    found = ordered(DRESS)
    closing = "fell the lining to back zip"
    mine = [s for s in found.order if s.split()[0] in ("grade", "neaten") and "lining" in s]
    assert mine
    assert set(mine) <= set(found.graph.forced_before(closing))


def test_a_pile_collar_is_told_what_holds_it_up() -> None:
    """Canvas goes to the cloth of the undercollar, and never to the pile."""
    coat = advice(COAT).judgement.garment
    told = next(g for g in told_gaps(Teller(coat, known())) if g.id == "collar-with-nothing-inside")
    assert "undercollar of wool on the bias" in told.text
    assert "layers: [coating, {notion: hair canvas}]" in told.line
    found = changed(COAT, "seams:", f"seams:\n  - {told.line}\n")
    assert "pad undercollar canvas" in found.order


def test_a_seam_takes_the_needle_of_its_cloth_and_a_crossing_the_hand_wheel() -> None:
    """A thick crossing asks for glasses and, there alone, a larger needle."""
    found = advise(garment(DRESS), known())
    needle = found.judgement.verdicts[Place("seam", "back zip")]["needle.size"]
    side = found.judgement.verdicts[Place("seam", "side")]["needle.size"]
    assert needle.pick == side.pick
    seam = next(s for s in garment(DRESS).seams if s.name == "back zip")
    told = " ".join(warnings(seamwork(seam, found.judgement, known()), "metric"))
    assert "turn the hand wheel, with glasses on" in told
    assert "90 there alone, if borne" in told


def test_rows_that_no_method_sews_are_a_stage_of_their_own() -> None:
    """They are told as a step with their number, and thread is reckoned for each."""
    found = ordered(ROWS)
    assert stands(found, "press shoulder", "topstitch shoulder")
    assert stands(found, "press bust dart", "topstitch bust dart")
    assert stands(found, "close waistband", "topstitch waistband")
    assert "in 2 rows" in found.tasks["topstitch shoulder"].step.does
    bare = further_rows(ordered(ROWS.replace("French, topstitch: 2", "French")))
    assert further_rows(found)["shoulder"] - bare["shoulder"] == 2


def test_a_row_of_its_own_counts_and_what_has_no_edge_takes_none() -> None:
    """A hem is sewn through to the face anyway; along a button no row can run."""
    found = ordered(ROWS)
    assert not {"topstitch hem", "topstitch buttons"} & set(found.order)
    assert any("'buttons'" in text and "no edge" in text for text in found.remarks)


def test_the_machine_is_set_for_the_thread_that_is_topstitched_with() -> None:
    """A thick thread in the needle and a large needle for it; the bobbin keeps what it has."""
    found = work(COAT).tasks
    rows, seam = (
        found[step].step.machine for step in ("topstitch centre back", "join centre back")
    )
    assert rows
    assert seam
    assert (rows.point, rows.size, rows.thread_below) == ("topstitch", 100, seam.thread_below)
    assert "for topstitching" in rows.thread_above


def test_a_lining_that_hangs_from_turned_edges_is_felled_round_the_vent() -> None:
    """As one that hangs from a facing; where nothing holds it at the top, nothing is felled."""
    vent = "  - {name: back vent, layers: [drill, drill], length: 20 cm}\n"
    arms = "  - {name: armhole edge, layers: [drill, lining], length: 46 cm, edge: turned}\n"
    felled = "fell the lining round back vent"
    assert felled in ordered(DRESS + vent + arms).order
    edge = next(line for line in DRESS.splitlines() if "neck edge" in line)
    assert felled not in ordered(DRESS.replace(f"{edge}\n", "") + vent).order
