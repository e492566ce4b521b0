"""What an order of work must never do to a cloth, a bone or an eye, and how it says so."""

from __future__ import annotations

from typing import Any

import pytest

from advisor.answer.order import told_order
from advisor.answer.seamwords import warnings
from advisor.answer.teller import Teller
from advisor.claims.collect import Place
from advisor.claims.judgement import Advice
from advisor.construction.seamwork import seamworks
from advisor.craft.irondial import starts_too_cool
from advisor.order.setups import STAY, Setups
from advisor.order.work import Work
from advisor.records import as_data
from tests.unit.order.order_projects import (
    BONED,
    COSTUME,
    SMALL,
    TIERS,
    advice_of,
    before,
    demo,
    demo_advice,
    demo_names,
    known,
    work_of,
)

COAT = "lantern-parade-coat"
FUSED = """\
garment: Cotton jacket
fabrics:
  shell: {fabric: poplin, fibres: {cotton: 100}}
seams:
  - name: front facing
    layers: [shell, {notion: woven fusible interfacing}, shell]
    length: 60 cm
    edge: turned
  - {name: side, layers: [shell, shell], length: 40 cm}
"""


def rows_of(text: str) -> dict[str, dict[str, Any]]:
    return rows(work_of(text), advice_of(text))


def demo_rows(name: str) -> dict[str, dict[str, Any]]:
    return rows(demo(name), demo_advice(name))


def rows(work: Work, advice: Advice) -> dict[str, Any]:
    told = told_order(work, advice, (), Teller(advice.judgement.garment, known()))
    return {step.step: as_data(step) for step in told.order}


def test_bones_go_into_a_channel_that_is_sewn_and_pressed() -> None:
    """Channel, press, bones, end closed: nothing is ever sewn or pressed over a bone."""
    steps = ["join bones", "press bones", "insert bones in bones", "close bones"]
    assert steps == [step for step in work_of(BONED).order if step in steps]


def test_an_empty_channel_is_pressed_as_the_sheet_tells_of_it() -> None:
    """The linen would take more, but two heats told of one place would be taken for a slip."""
    work, setups = work_of(BONED), Setups(advice_of(BONED), known())
    iron = work.tasks["press bones"].step.iron
    assert iron is not None
    assert 110 == setups.limit(Place("seam", "bones"))
    assert (110, 110) == (iron.temperature_c, work.tasks["press bones"].at_most)
    assert "boning" not in work.tasks["join bones"].step.does
    assert "neaten bones" not in work.tasks


def test_what_is_pressed_hotter_than_bones_bear_comes_before_them() -> None:
    """Every hot pressing of the pieces that hold the channels, but for the seam that shuts them."""
    work = work_of(BONED)
    hot = [
        t.id
        for t in work.tasks.values()
        if t.op == "press"
        and "shell" in t.cloths
        and t.step.iron is not None
        and t.step.iron.temperature_c > 110
    ]
    assert {"press side", "press front panel"} <= set(hot)
    assert "press waist" not in hot  # its chiffon starts at one dot
    assert all(before(work, step, "insert bones in bones") for step in hot)
    assert before(work, "insert bones in bones", "join waist")


def test_boned_pieces_are_tried_on_with_their_bones_where_heat_allows() -> None:
    """With nothing hot left to press, the bones are in at the fitting and before the waist."""
    cool = BONED.replace("{fabric: linen suiting}", "{fabric: taffeta, fibres: {acetate: 100}}")
    work = work_of(cool)
    assert before(work, "insert bones in bones", "fit")
    assert before(work, "insert bones in bones", "join waist")


def test_only_wovens_are_stay_stitched() -> None:
    """No skin, no film, and no knit that is to be stretched."""
    work = work_of(BONED)
    stayed = {name: t.cloths for name, t in work.tasks.items() if t.op == "stay-stitch"}
    assert {
        "stay-stitch front panel": ("shell",),
        "stay-stitch armhole": ("shell",),
    } == stayed


@pytest.mark.parametrize("name", SMALL)
def test_a_stay_row_is_straight_and_short(name: str) -> None:
    """Lockstitch 301 on the sewing machine, whatever stitch the seam itself has."""
    tasks = [t for t in work_of(SMALL[name]).tasks.values() if t.op == "stay-stitch"]
    states = [t.step.machine for t in tasks]
    assert all(s is not None and s.stitch == STAY and s.machine != "overlocker" for s in states)


def test_a_stay_row_has_the_needle_of_what_it_is_in() -> None:
    """The seam to the stretched mesh wants a stretch needle; the linen by itself does not."""
    work = work_of(BONED)
    seam, stay = (work.tasks[f"{verb} armhole"].step.machine for verb in ("join", "stay-stitch"))
    assert seam is not None
    assert stay is not None
    assert ("stretch", "304") == (seam.point, seam.stitch)
    assert "stretch" != stay.point


def test_a_stay_row_tells_its_length_in_her_units() -> None:
    """1.5 to 2 mm, 3 mm outside the seam line (`trade-staystitch`), or to the inch."""
    metric = rows_of(BONED)["stay-stitch armhole"]["does"]
    us = rows_of(BONED.replace("maker:", "units: us\nmaker:"))["stay-stitch armhole"]["does"]
    assert "3 mm outside the seam line, straight stitches, 1.5 to 2 mm." in metric
    assert "1/8 in outside the seam line, straight stitches, 13 to 17 stitches per inch." in us


def test_a_lone_press_is_what_the_cloth_takes_by_itself() -> None:
    """Corduroy that waits for a film gets its own heat, moisture and needle board."""
    work, setups = work_of(BONED), Setups(advice_of(BONED), known())
    alone = advice_of(
        "garment: One\nfabrics:\n  pile: {fabric: corduroy, fibres: {cotton: 100}}\n"
        "seams:\n  - {name: seam, layers: [pile, pile]}\n"
    )
    iron = work.tasks["hot press pile"].step.iron
    assert Setups(alone, known()).iron(Place("seam", "seam")) == iron == setups.cloth_iron("pile")
    assert iron is not None
    assert (180, "needle board") == (iron.temperature_c, iron.surface)
    assert "dry" != iron.moisture


def test_a_lone_press_waits_only_for_what_its_cloth_meets() -> None:
    """A tender cloth in some other seam is no reason; the seam that joins the two is."""
    work = work_of(BONED)
    pile = [
        p.after
        for p in work.graph.precedences
        if p.before == "hot press pile" and p.why.startswith("Pile wants")
    ]
    assert ["join collar"] == pile


@pytest.mark.parametrize("name", demo_names())
def test_the_iron_is_told_as_the_sheet_tells_it(name: str) -> None:
    """Where to start, what is borne at most, and the mark: an iron overshoots its setting."""
    told = 0
    for step, row in demo_rows(name).items():
        task = demo(name).tasks[step]
        if task.step.iron is None or task.op == "fuse":
            continue
        limit = f"at most {task.at_most:g} °C ("
        assert limit in row["set_up"]
        lower = starts_too_cool(task.step.iron.temperature_c) and "one dot" not in row["set_up"]
        assert not lower or task.step.iron.temperature_c >= (task.at_most or 0) - 2
        start = f"{task.step.iron.temperature_c} °C, {limit}"
        assert (start in row["set_up"] and " start " in row["set_up"]) == (
            task.step.iron.temperature_c < (task.at_most or 0) - 2
        )
        assert task.at_most == row["iron"]["at_most_c"]
        told += 1
    assert told > 5


@pytest.mark.parametrize("name", demo_names())
def test_a_needle_that_may_break_is_told_at_its_step(name: str) -> None:
    """In the words of the sheet, and only there."""
    judgement = demo_advice(name).judgement
    fine = {
        work.seam.name: next(w for w in warnings(work, "metric") if w.startswith("Eye:"))
        for work in seamworks(judgement, known())
        if work.fine_needle
    }
    told = {
        row["on"][0]: text
        for row in demo_rows(name).values()
        for text in row["warn"]
        if text.startswith("Eye:")
    }
    assert fine == told
    assert (name == COAT) == bool(told)


def test_hot_seams_come_before_the_sequins_where_they_may() -> None:
    """What the sequins do not run into is pressed before they are in."""
    work = work_of(COSTUME)
    for step in ("press shoulder", "turn edge"):
        assert before(work, step, "join strap")
    assert not any("sparks" in tender for _, tender in work.hot_near)


def test_sequins_that_are_in_are_covered_and_kept_from_steam() -> None:
    """At each pressing beside them, in words that are no use for an interfacing inside."""
    rows = demo_rows(COAT)
    dry = "cover them with a dry folded towel, keep the iron to the seam and the steam away."
    assert [f"Near it gift, glow and sparks: {dry}"] == rows["press shoulder"]["warn"]
    near = [row for row in rows.values() if any("sparks" in text for text in row["warn"])]
    assert len(near) > 5
    assert all(
        "dry folded towel" in text
        for row in near
        for text in row["warn"]
        if not text.startswith("Eye:")
    )
    inside = rows_of(FUSED)["press side"]["warn"]
    shown = "keep the iron to the seam and the steam short."
    assert [f"Near it woven fusible interfacing: {shown}"] == inside


def test_a_fusible_that_no_layer_bears_is_neither_cut_nor_joined() -> None:
    """The velvet collar: the sheet names something else, so no step handles the glue."""
    work = demo(COAT)
    handled = [t for t in work.tasks.values() if "woven fusible interfacing" in t.step.does]
    assert ["interface collar edge"] == [t.id for t in handled]
    assert "instead of" in handled[0].step.does


def test_a_full_edge_is_drawn_up_as_the_project_has_it() -> None:
    """Rows where nothing is said, three in a chiffon that slips; else the foot, with the foot."""
    step = work_of(BONED).tasks["gather waist"].step
    assert "For waist, take the basting out, and gather skirt with the gathering foot." == step.does
    assert step.machine is not None
    assert "gathering" == step.machine.foot
    rows = work_of(TIERS).tasks["gather tier 1 to tier 2"].step
    assert "three gathering rows along cloth" in rows.does


def test_the_edges_of_a_patch_pocket_are_turned_under_before_it_is_sewn_on() -> None:
    """Afterwards nobody reaches them."""
    work = demo("allotment-apron-dress")
    assert before(work, "turn under patch pocket", "stitch on patch pocket")


def test_a_part_of_a_fastener_on_one_cloth_is_a_fastening() -> None:
    """Whatever its place is called: no press goes over it."""
    work = work_of(
        "garment: Tabard\nfabrics:\n  front: {fabric: felt}\nseams:\n"
        "  - {name: neck, layers: [front, {notion: hook-and-loop tape}], length: 10 cm}\n"
    )
    assert "stitch on neck" in work.order
    assert "press neck" not in work.order
