"""Cloth, thread and kit to buy, and what does instead of a tool that is missing."""

from __future__ import annotations

import pytest

from advisor.answer.buyingwords import sold_text, wrong_text
from advisor.construction.clothlist import SQUARED, Bought, cloths_to_buy
from advisor.construction.seamwork import seamworks
from advisor.construction.threadlist import reels_for, threads_to_buy
from advisor.craft.allowance import strip_square
from advisor.decide.evaluate import judge
from advisor.decide.instead import substitutes
from advisor.decide.kit import kit_of
from tests.unit.construction.build_cases import HEAD, judged, known

SEAM = "  - {name: side, layers: [lawn, lawn], length: 1 m}\n"


def cloths(pieces: str, head: str = HEAD):  # type: ignore[no-untyped-def]
    """Cloth to buy for these pieces."""
    return {b.cloth: b for b in cloths_to_buy(judged(SEAM + "pieces:\n" + pieces, head), known())}


def test_panels_side_by_side_need_one_length() -> None:
    """Two panels of 70 cm on a cloth of 150: one length, shrinkage on top, rounded up."""
    found = cloths("  - {name: a, fabric: denim, width: 70 cm, height: 1 m, number: 2}")["denim"]
    assert (1000 + SQUARED) / (1 - found.shrinks) == pytest.approx(found.length)
    assert found.buy_metric % 100 == pytest.approx(0)
    assert found.buy_metric >= found.length


def test_panels_too_wide_for_side_by_side_need_two() -> None:
    """Two of 80 cm do not lie beside each other."""
    found = cloths("  - {name: a, fabric: denim, width: 80 cm, height: 1 m, number: 2}")["denim"]
    assert (2000 + SQUARED) / (1 - found.shrinks) == pytest.approx(found.length)


def test_lace_is_squared_at_its_ends_as_any_cloth_is() -> None:
    """Its pattern has to run level, and the cut of the shop seldom does."""
    head = (
        "garment: Ends\nfabrics:\n  lawn: {fabric: lawn}\n  lace: {fabric: corded lace}\nseams:\n"
    )
    found = cloths("  - {name: a, fabric: lace, width: 70 cm, height: 1 m}", head)["lace"]
    assert (1000 + SQUARED) / (1 - found.shrinks) == pytest.approx(found.length)


def test_finished_sizes_get_seams_hem_and_fullness() -> None:
    """Finished 60 x 50 with a hem of 4: cut 63 wide and 55.5 long."""
    found = cloths(
        "  - {name: a, fabric: denim, finished width: 60 cm, finished height: 50 cm, hem: 4 cm}"
    )["denim"]
    assert (555 + SQUARED) / (1 - found.shrinks) == pytest.approx(found.length)


def test_a_full_piece_is_cut_in_panels() -> None:
    """2 m round at 2 to 1 on 150 cm: 4 m and seams, so three panels, one below the other."""
    found = cloths(
        "  - {name: a, fabric: denim, finished width: 2 m, finished height: 50 cm, fullness: 2}"
    )["denim"]
    assert 3 == found.pieces


def test_a_width_that_nobody_said_is_told() -> None:
    """The usual width is taken, and said to be taken."""
    found = cloths("  - {name: a, fabric: lawn, width: 30 cm, height: 30 cm}")["lawn"]
    assert "width" in found.assumed


def test_nap_lies_one_way() -> None:
    """Coating has a nap, so its pieces all lie one way."""
    found = cloths("  - {name: a, fabric: coat, width: 30 cm, height: 30 cm}")["coat"]
    assert found.one_way


def only(pieces: str, cloth: str) -> Bought:
    """What is bought of one cloth of its own project."""
    head = f"garment: One\nfabrics:\n  c: {{{cloth}}}\nseams:\n"
    seam = "  - {name: side, layers: [c, c], length: 1 m}\n"
    (found,) = cloths_to_buy(judged(f"{seam}pieces:\n{pieces}", head), known())
    return found


def test_a_knit_shrinks_across_as_well() -> None:
    """Two backs of 69 cm lie beside each other on 140 cm only until it is washed: 1.5 m."""
    back = "  - {name: back, fabric: c, width: 69 cm, height: 72 cm, number: 2}"
    jersey = "fabric: jersey, fibres: {cotton: 100}, width: 140 cm, shrinks: 3 %"
    found = only(back, jersey)
    assert (1500.0, 0.03) == (pytest.approx(found.buy_metric), found.shrinks_across)
    assert 800 == pytest.approx(
        only(back, f"{jersey}, shrinks across: 0 %, selvage: 0 cm").buy_metric
    )


def test_a_woven_of_which_the_length_was_measured_is_warned_of() -> None:
    """Told as measured; what it would take if it shrinks across too stands beside it."""
    legs = (
        "  - {name: front, fabric: c, width: 36 cm, height: 106 cm, number: 2}\n"
        "  - {name: back, fabric: c, width: 42 cm, height: 106 cm, number: 2}"
    )
    denim = "fabric: denim, fibres: {cotton: 100}, weight: 14 oz, width: 80 cm, shrinks: 8 %"
    found = only(legs, denim)
    assert ((2120 + SQUARED) / 0.92, 0.0) == (pytest.approx(found.length), found.shrinks_across)
    assert found.if_across is not None
    assert (3180 + SQUARED) / 0.92 == pytest.approx(found.if_across.length_mm)
    assert only(legs, f"{denim}, shrinks across: 0 %").if_across is None


def test_selvages_are_not_cut_from() -> None:
    """Two of 70 cm lie on 142 cm, not on 141; on net, which has none, on 140."""
    two = "  - {name: a, fabric: c, width: 70 cm, height: 1 m, number: 2}"
    silk = "fabric: organza, fibres: {silk: 100}, shrinks: 0 %, width"
    assert [1015, 2015] == [only(two, f"{silk}: {wide} cm").length for wide in (142, 141)]
    assert 1015 == only(two, "fabric: net, fibres: {nylon: 100}, width: 140 cm").length


def test_a_bias_panel_wider_than_its_cloth_is_refused() -> None:
    """(100 + 112)/√2 = 149.9 cm across, and 138 cm can be cut: no figure, both numbers, a name."""
    skirt = "  - {name: bias skirt, fabric: c, width: 100 cm, height: 112 cm, grain: bias}"
    satin = "fabric: charmeuse, fibres: {silk: 100}, width: 140 cm, shrinks: 0 %"
    found = only(skirt, satin)
    assert (None, None) == (found.length, found.used)
    text = wrong_text(found, "metric")
    assert "bias skirt spans 149.9 cm on the bias, and 138 cm of the width can be cut" in text
    assert "59 in on the bias" in wrong_text(found, "us")
    assert only(skirt.replace("grain: bias", "grain: bias, joined: yes"), satin).length


def test_full_bias_panels_are_counted_by_what_they_span() -> None:
    """3 m round and 60 cm long on 138 cm: (w + 64.5)/√2 ≤ 138 leaves 127 cm each, so three."""
    words = "finished width: 1.5 m, finished height: 60 cm, hem: 3 cm, fullness: 2, grain: bias"
    satin = "fabric: charmeuse, fibres: {silk: 100}, width: 140 cm, shrinks: 0 %"
    found = only(f"  - {{name: skirt, fabric: c, {words}}}", satin)
    assert (3, 1030) == (found.pieces, found.cuts[0].width)


def test_a_tapered_panel_has_seams_at_both_ends() -> None:
    """Two of 80 and 30 cm finished: 83 and 33 as cut, so head to tail they reach 141 cm."""
    panel = (
        "  - {name: gore, fabric: c, finished width: 80 cm, narrow end: 30 cm, "
        "finished height: 87 cm, hem: 3 cm, number: 2}"
    )
    silk = "fabric: organza, fibres: {silk: 100}, shrinks: 0 %, width"
    assert [915 + 15, 2 * 915 + 15] == [only(panel, f"{silk}: {w} cm").length for w in (143, 142)]


def test_a_length_has_an_allowance_at_both_ends_or_a_hem() -> None:
    """50 cm: 53 between two seams, 55.5 with a hem of 4; a net is raw below, so 51.5."""
    piece = "  - {{name: a, fabric: c, finished width: 20 cm, finished height: 50 cm{}}}"
    silk, net = "fabric: organza, fibres: {silk: 100}", "fabric: net, fibres: {nylon: 100}"
    found = [
        only(piece.format(more), cloth).cuts[0].height
        for more, cloth in (("", silk), (", hem: 4 cm", silk), ("", net), (", hem: 0 cm", silk))
    ]
    assert [530, 555, 515, 515] == found


def test_the_last_tier_has_a_hem() -> None:
    """Where none is said it gets an allowance, as every other tier has at both ends."""
    words = "finished width: 70 cm, finished height: 60 cm, tiers: {number: 2}"
    lawn = "fabric: lawn, fibres: {cotton: 100}, width: 140 cm"
    found = only(f"  - {{name: skirt, fabric: c, {words}}}", lawn)
    assert [330, 330] == [cut.height for cut in found.cuts]


def test_an_exact_yard_stays_a_yard() -> None:
    """Four rows of 9 1/4 in and four of 8 1/2 in, with square ends, lie on 2 yd; 72 in are 2 yd."""
    rows = (
        "  - {name: a, fabric: c, width: 40 in, height: 9 1/4 in, number: 4}\n"
        "  - {name: b, fabric: c, width: 40 in, height: 8 1/2 in, number: 4}"
    )
    net = "fabric: net, fibres: {nylon: 100}, width: 54 in, shrinks: 0 %"
    found = only(rows, net)
    assert found.buy_us is not None
    assert "2 yd" == sold_text(found.buy_us, "us")
    sold = [sold_text(inches * 25.4, "us") for inches in (72, 90, 31.5)]
    assert ["2 yd", "2 1/2 yd", "7/8 yd"] == sold


def test_a_folded_lay_is_reckoned_folded() -> None:
    """Two at a time: front beside half the back, strips beside the odd strip on the fold."""
    lot = (
        "  - {name: front, fabric: c, width: 40 cm, height: 86 cm, number: 2}\n"
        "  - {name: back, fabric: c, width: 66 cm, height: 84 cm}\n"
        "  - {name: strip, fabric: c, width: 10 cm, height: 84 cm, number: 5}"
    )
    lawn = "fabric: lawn, fibres: {cotton: 100}, width: 150 cm, shrinks: 0 %"
    found = only(lot, lawn)
    assert found.folded
    assert (2 * 840 + 15) == found.length


def test_thread_by_colour_has_wastage_in_it() -> None:
    """What the seams take, and 15 % on top."""
    judgement = judged(SEAM)
    works = seamworks(judgement, known())
    (row,) = threads_to_buy(judgement, works, known())
    net = sum(p.use.total for w in works for p in w.threads or ()) / 1000
    assert 1.15 * net == pytest.approx(row.total)
    assert ("white", ("lawn",)) == (row.colour, row.to_match)


def test_a_seam_without_length_is_named_as_not_counted() -> None:
    """It is not silently left out."""
    judgement = judged("  - {name: side, layers: [lawn, lawn]}")
    (row,) = threads_to_buy(judgement, seamworks(judgement, known()), known())
    assert (0.0, ("side",)) == (row.total, row.uncounted)


REELS = [
    (0.0, ()),
    (1.0, ((1, 100.0),)),
    (100.0, ((1, 100.0),)),
    (101.0, ((1, 250.0),)),
    (2500.0, ((3, 1000.0),)),
]


@pytest.mark.parametrize(("metres", "reels"), REELS)
def test_reels_hold_the_thread(metres: float, reels: tuple[tuple[int, float], ...]) -> None:
    """The smallest reel that is enough; above the largest, many of those."""
    assert reels == reels_for(metres)


def test_a_kit_that_is_said_is_counted() -> None:
    """A needle that she has is at hand; one that she has not is missing."""
    needs = kit_of(judged(SEAM + "kit: {needles: [wedge 110]}"), known())
    assert {"missing"} == {n.state for n in needs if n.group == "needles"}
    names = {n.item for n in needs if n.group == "needles"}
    has = f"kit: {{needles: [{', '.join(sorted(names))}]}}"
    again = kit_of(judged(SEAM + has), known())
    assert {"have"} == {n.state for n in again if n.group == "needles"}


def test_a_kit_that_nobody_said_is_not_said() -> None:
    """Unknown is not missing."""
    needs = kit_of(judged(SEAM), known())
    assert {"not said"} == {n.state for n in needs if n.group == "needles"}


BOUND = (
    "  - {name: a, layers: [coat, coat], length: 80 cm, times: 2, "
    "finish: Hong Kong, allowance: 15 mm}\n"
    "  - {name: b, layers: [coat, coat], length: 1 m, finish: bound, seam: plain}\n"
    "  - {name: c, layers: [coat, {use: coat, fullness: 1.5}], length: 70 cm, finish: bound}\n"
)


def test_edges_that_are_bound_call_for_a_bias_strip() -> None:
    """Hong Kong: both edges, allowance + 1/4 in; bound: a strip of 25 to 32 mm; joins 10 %.

    The two edges of an open seam are bound one by one, those of a gathered edge together.
    """
    one, other = [need for need in kit_of(judged(BOUND), known()) if need.strip]
    assert (one.word, one.places, one.state) == ("Hong Kong", ("a",), "not said")
    assert (1.1 * 2 * 1600, 1.1 * 2700) == pytest.approx((one.length, other.length))
    assert one.strip is not None
    assert other.strip is not None
    assert (21.35, 21.35) == pytest.approx(one.strip.width)
    assert (25.0, 32.0) == other.strip.width
    assert one.strip.square == pytest.approx(strip_square(3520, 21.35))


def test_no_strip_is_cut_for_an_edge_that_no_step_neatens() -> None:
    """And where the order binds both edges together one strip does."""
    found = kit_of(judged(BOUND), known(), {"b": ("bound", 1)})
    (bound,) = [need for need in found if need.strip]
    assert ("bound", ("b",), pytest.approx(1100)) == (bound.word, bound.places, bound.length)


def test_a_strip_without_a_length_is_not_reckoned() -> None:
    """Its width is told; how much of it, nobody can say."""
    text = "  - {name: a, layers: [coat, coat], finish: Hong Kong}"
    (need,) = [need for need in kit_of(judged(text), known()) if need.strip]
    assert need.strip is not None
    assert (None, None) == (need.length, need.strip.square)


VELVET = """\
garment: Velvet
fabrics: {velvet: "rayon velvet", lining: "acetate satin"}
seams:
  - {name: s, layers: [velvet, lining], length: 50 cm}
"""


def test_a_substitute_is_offered_only_when_the_engine_finds_no_new_clash() -> None:
    """Every substitute of every tool that velvet calls for leaves no new conflict."""
    judgement = judged("", VELVET)
    before = {c.key for c in judgement.conflicts}
    needs = [n for n in kit_of(judgement, known()) if n.instead]
    assert needs
    for need in needs:
        found, _ = substitutes(need.aspect, need.word, need.places, judgement, known())
        assert found == need.instead
    assert before == {c.key for c in judge(judgement.garment, known()).conflicts}
