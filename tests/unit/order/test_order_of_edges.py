"""Edges, trimmings, strips, tucks and sequins in the order of work: what is done and what not."""

from __future__ import annotations

import pytest

from advisor.answer.ordernotes import heat_words
from advisor.answer.wording import iron_text
from advisor.claims.collect import Place
from advisor.order.overlocking import OVERLOCKER
from advisor.order.setups import Setups
from tests.unit.order.order_projects import (
    KNIT,
    SMALL,
    TUCKED,
    before,
    demo,
    demo_advice,
    demo_names,
    known,
    work_of,
)

DRESS = "allotment-apron-dress"
COAT = "lantern-parade-coat"
CURVED = """\
garment: Curves
maker: {machine: household}
fabrics:
  cloth: {fabric: linen suiting}
  other: {fabric: lawn, fibres: {cotton: 100}}
seams:
  - {name: %s, layers: [cloth, %s], length: 60 cm, shape: curved%s}
"""


@pytest.mark.parametrize(
    ("name", "second", "more"),
    [
        ("hem", "{notion: horsehair braid}", ""),
        ("hem two", "{notion: horsehair braid}", ", edge: hem"),
        ("sleeve hem", "cloth", ""),
        ("shaped edge", "other", ", edge: hem"),
        ("patch pocket", "cloth", ""),
        ("patch pocket", "other", ", edge: turned"),
        ("heart applique", "other", ""),
        ("ribbon trim", "{notion: satin ribbon}", ""),
        ("yoke line", "{notion: velvet ribbon}", ""),
        ("neck binding", "other", ""),
        ("neck binding", "{notion: bias binding}", ""),
    ],
)
def test_only_the_allowances_of_a_seam_are_graded(name: str, second: str, more: str) -> None:
    """Never a hem, a patch pocket, what is laid on top, a trimming or an applied band."""
    work = work_of(CURVED % (name, second, more))
    assert [] == [t.id for t in work.tasks.values() if t.op == "grade"]


@pytest.mark.parametrize(
    ("name", "more"),
    [("armhole", ""), ("neck facing", ", edge: turned"), ("neck binding", ", edge: turned")],
)
def test_a_curved_seam_and_a_turned_edge_are_graded(name: str, more: str) -> None:
    """`gw-apparel-2012 p. 451`, `apparel-1-3-03`: two allowances that are turned or curved."""
    assert f"grade {name}" in work_of(CURVED % (name, "other", more)).tasks


def test_what_the_overlocker_sewed_is_not_trimmed_again() -> None:
    """Its knife has cut the allowance; shears would cut the stitches."""
    assert "grade knit panel" not in work_of(TUCKED).tasks
    assert before(work_of(TUCKED), "press knit panel", "turn knit panel")


@pytest.mark.parametrize("name", [*SMALL, *demo_names()])
def test_no_needle_swings_over_a_single_hole(name: str) -> None:
    """Zigzag and overlock never with the straight-stitch foot or the single-hole plate."""
    work = work_of(SMALL[name]) if name in SMALL else demo(name)
    states = [t.step.machine for t in work.tasks.values()]
    swings = [s for s in states if s is not None and s.stitch in ("304", "zigzag", "308")]
    assert not [s for s in swings if "single-hole" == s.plate or "straight-stitch" == s.foot]


@pytest.mark.parametrize("name", SMALL)
def test_nothing_is_turned_before_it_is_sewn(name: str) -> None:
    """Whether or not its allowances are graded between."""
    work = work_of(SMALL[name])
    for task in work.tasks.values():
        if task.op == "turn" and task.place:
            assert before(work, f"join {task.place.name}", task.id)


def test_an_overlocker_has_its_own_foot() -> None:
    """No walking foot and no single-hole plate of the sewing machine."""
    states = [t.step.machine for t in work_of(TUCKED).tasks.values()]
    on = [s for s in states if s is not None and s.machine == OVERLOCKER]
    assert on
    assert {("overlock", "overlock")} == {(s.foot, s.plate) for s in on}


def test_a_bound_or_trimmed_single_edge_is_not_neatened_once_more() -> None:
    """A binding encloses the edge, and one ply has no second to be double-stitched to."""
    bound = work_of(CURVED % ("neck binding", "{notion: bias binding}", ""))
    assert [] == [t.id for t in bound.tasks.values() if t.op.startswith("neaten")]


def test_a_pocket_that_is_laid_on_has_its_edges_turned_under_first() -> None:
    """Once it is sewn on there is nothing to turn."""
    work = work_of(TUCKED)
    assert before(work, "turn under patch pocket", "stitch on patch pocket")
    assert not {"turn patch pocket", "understitch patch pocket"} & set(work.tasks)


@pytest.mark.parametrize(
    ("step", "stitch"), [("set knit zip", "301"), ("stretch on leg elastic", "304")]
)
def test_zip_and_elastic_are_lockstitched_whatever_the_seam(step: str, stitch: str) -> None:
    """The knife of an overlocker would cut the coil and the elastic."""
    work = work_of(TUCKED)
    state, panel = (work.tasks[name].step.machine for name in (step, "join knit panel"))
    assert panel is not None
    assert OVERLOCKER == panel.machine
    assert state is not None
    assert ("household", stitch) == (state.machine, state.stitch)
    assert "cones" not in state.thread_above + state.thread_below


def test_the_fold_of_a_knit_hem_is_kept_from_the_knife() -> None:
    """A hem that has to stretch is sewn on the sewing machine, by one needle in zigzag."""
    named = KNIT.replace("edge: hem}", "edge: hem, method: hem turned up}")
    state = work_of(named).tasks["sew hem"].step.machine
    assert state is not None
    assert ("household", "304", "wide") == (state.machine, state.stitch, state.plate)


def test_a_twin_needle_is_never_set_to_a_zigzag() -> None:
    """Two needles that swing would strike foot and plate (`sca-11-227`): the rows are straight."""
    state = work_of(KNIT).tasks["sew hem"].step.machine
    assert state is not None
    assert ("stretch twin", "301", "wide") == (state.point, state.stitch, state.plate)


@pytest.mark.parametrize("name", SMALL)
def test_no_zip_foot_is_ever_on_an_overlocker(name: str) -> None:
    """On no machine that cuts, in no project."""
    states = [t.step.machine for t in work_of(SMALL[name]).tasks.values()]
    on = {s.foot for s in states if s is not None and s.machine == OVERLOCKER}
    assert not {"zip", "concealed zip"} & on


def test_an_edge_with_elastic_is_turned_in_and_not_neatened() -> None:
    """The elastic is on before the edge is turned in over it, so that no knife comes near it."""
    work = work_of(TUCKED)
    assert "neaten leg elastic" not in work.tasks
    assert before(work, "stretch on leg elastic", "turn in leg elastic")


def test_strips_on_the_bias_are_cut_so_and_never_stayed() -> None:
    """The project's own word for the grain; only the edge of the garment is stayed."""
    dress = demo(DRESS)
    assert "on the bias" in dress.tasks["cut binding"].step.does
    assert "grain" not in dress.tasks["cut binding"].step.does
    assert "lengthwise grain" in dress.tasks["cut dress"].step.does
    stay = dress.tasks["stay-stitch armhole binding"]
    assert ("dress",) == stay.cloths
    assert "dress, the edge of the garment only" in stay.step.does
    small = work_of(TUCKED)
    assert ("lawn",) == small.tasks["stay-stitch neck binding"].cloths
    assert "stay-stitch badge" not in small.tasks  # laid on top: there is no cut edge to stay


def test_a_binding_of_a_cloth_without_pieces_is_not_stayed_either() -> None:
    """By its name, or the layer named last."""
    work = work_of(CURVED % ("armhole binding", "other", ""))
    assert ("cloth",) == work.tasks["stay-stitch armhole binding"].cloths


def test_bias_panels_of_a_garment_are_stayed() -> None:
    """A wide piece on the bias is no strip: its edges stretch most of all."""
    text = CURVED % ("neck facing", "cloth", ", edge: turned")
    pieces = "pieces:\n  - {name: body, fabric: cloth, width: 70 cm, height: 60 cm, grain: bias}\n"
    assert ("cloth",) == work_of(text + pieces).tasks["stay-stitch neck facing"].cloths


def test_tucks_are_stitched_before_the_first_seam_of_their_piece() -> None:
    """And the piece gets its outline then (`common-practice`)."""
    work = work_of(TUCKED)
    task = work.tasks["tuck front"]
    told = "Mark, press and stitch the 6 tucks of front, 5 mm deep; then cut it to its outline."
    assert told == task.step.does
    assert task.step.machine is not None
    assert task.step.iron is not None
    assert before(work, "cut lawn", "tuck front")
    sewn = [t.id for t in work.tasks.values() if t.place and "lawn" in t.cloths]
    assert len(sewn) > 10
    assert all(before(work, "tuck front", step) for step in sewn)
    assert "tuck back" not in work.tasks


@pytest.mark.parametrize("seam", ["spark panel", "star panel"])
def test_sequins_are_cleared_before_a_needle_meets_them(seam: str) -> None:
    """With goggles, a finger's breadth past the seam line (`trade-sequin-strip`, `threads-92`)."""
    work = demo(COAT) if seam == "spark panel" else work_of(TUCKED)
    does = work.tasks[f"clear {seam}"].step.does
    assert "goggles on" in does
    assert "a finger's breadth past the seam line" in does
    sewn = [
        t.id for t in work.tasks.values() if t.place and t.place.name == seam and t.op != "clear"
    ]
    assert f"join {seam}" in sewn
    assert all(before(work, f"clear {seam}", step) for step in sewn)
    assert [f"clear {seam}"] == [t.id for t in work.tasks.values() if t.op == "clear"]


def test_pleats_that_are_set_in_the_cloth_are_laid_and_not_gathered() -> None:
    """Rows would crush them."""
    work = work_of(
        "garment: Skirt\nfabrics:\n  top: {fabric: gabardine}\n"
        "  fan: {fabric: pleated, fibres: {polyester: 100}}\nseams:\n"
        "  - {name: waist, layers: [top, {use: fan, fullness: 1.5}], length: 70 cm}\n"
    )
    assert "Lay and baste the pleats of fan for waist." == work.tasks["fold waist"].step.does
    assert "gather waist" not in work.tasks


HOT = """\
garment: Elastic beside a hot seam
fitting: loosely
fabrics:
  cloth: {fabric: linen suiting}
seams:
  - {name: panel, layers: [cloth, cloth], length: 40 cm}
  - {name: leg elastic, layers: [cloth, {notion: braided elastic}], length: 45 cm}
  - {name: side, layers: [cloth, cloth], length: 60 cm}
  - {name: zip, layers: [cloth, {notion: coil zip}], length: 20 cm}
"""


def test_heat_comes_before_the_elastic_that_cannot_bear_it() -> None:
    """Every hotter pressing of the same cloth."""
    work = work_of(HOT)
    for seam in ("panel", "side"):
        assert before(work, f"press {seam}", "stretch on leg elastic")
    assert [] == [pair for pair in work.hot_near if "braided elastic" in pair[1]]


def test_a_zip_is_still_set_while_the_pieces_lie_flat() -> None:
    """`unit-method-text` sets it before the seams are closed; the iron is walked round it."""
    assert before(work_of(HOT), "set zip", "join side")


def test_a_low_fusible_is_fused_and_pressed_as_the_sheet_says() -> None:
    """Start at 105 °C, at most 110: an iron and no fingers."""
    work = work_of(
        "garment: Low\nfabrics:\n  gift: {fabric: brocade, fibres: unknown}\nseams:\n"
        "  - {name: neck edge, layers: [gift, {notion: low-temperature fusible}, gift],"
        " edge: turned}\n"
    )
    expected = "start at 105 °C, at most 110 °C (one dot, low end)"
    for step in ("fuse neck edge", "press neck edge", "turn neck edge"):
        assert expected == heat_words(work.tasks[step], "metric")
        assert "fingers" not in work.tasks[step].step.does


@pytest.mark.parametrize("name", demo_names())
def test_order_and_sheet_set_one_iron(name: str) -> None:
    """For every seam that is pressed or turned: the same words, or no iron in both."""
    setups, told = Setups(demo_advice(name), known()), 0
    for task in demo(name).tasks.values():
        if task.op not in ("press", "turn") or task.place is None:
            continue
        verdict = setups.verdict(Place("seam", task.place.name), "press.temperature")
        if verdict is None or verdict.pick is None:
            continue
        words = heat_words(task, "metric")
        sheet = iron_text(verdict, "metric")
        assert words == ("" if sheet.startswith("no iron") else sheet)
        told += 1
    assert told > 3


WAXED = """\
garment: Round coat
fitting: to the body
fabrics:
  cloth: {fabric: waxed cotton}
seams:
  - {name: side, layers: [cloth, cloth], length: 60 cm}
  - {name: shoulder, layers: [cloth, cloth], length: 14 cm}
"""


def test_no_needle_goes_through_proofed_cloth_to_try_it_on() -> None:
    """`trade-waterproof`: every hole leaks, so what is tried on is held by clips."""
    tasks = [t for t in work_of(WAXED).tasks.values() if t.op == "baste"]
    assert {"clip side", "clip shoulder"} == {t.id for t in tasks}
    assert all("no pin and no basting" in t.step.does for t in tasks)


def test_a_seam_that_is_felled_is_not_made_as_a_taped_one() -> None:
    """Its row is folded in; steps, bulk and settings speak of one way to make it."""
    folded = {
        t.place.name for t in work_of(WAXED).tasks.values() if t.op == "fold-under" and t.place
    }
    assert {"side", "shoulder"} == folded
    assert not [t for t in work_of(WAXED).tasks.values() if t.op == "seal"]
