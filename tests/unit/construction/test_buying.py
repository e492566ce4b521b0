"""Cloth, thread and kit to buy, and what does instead of a tool that is missing."""

from __future__ import annotations

import pytest

from advisor.construction.clothlist import cloths_to_buy
from advisor.construction.seamwork import seamworks
from advisor.construction.threadlist import reels_for, threads_to_buy
from advisor.decide.evaluate import judge
from advisor.decide.kit import kit_of, substitutes
from tests.unit.construction.build_cases import HEAD, judged, known

SEAM = "  - {name: side, layers: [lawn, lawn], length: 1 m}\n"


def cloths(pieces: str, head: str = HEAD):  # type: ignore[no-untyped-def]
    """Cloth to buy for these pieces."""
    return {b.cloth: b for b in cloths_to_buy(judged(SEAM + "pieces:\n" + pieces, head), known())}


def test_panels_side_by_side_need_one_length() -> None:
    """Two panels of 70 cm on a cloth of 150: one length, shrinkage on top, rounded up."""
    found = cloths("  - {name: a, fabric: denim, width: 70 cm, height: 1 m, number: 2}")["denim"]
    assert 1000 / (1 - found.shrinks) == pytest.approx(found.length)
    assert found.buy_metric % 100 == pytest.approx(0)
    assert found.buy_metric >= found.length


def test_panels_too_wide_for_side_by_side_need_two() -> None:
    """Two of 80 cm do not lie beside each other."""
    found = cloths("  - {name: a, fabric: denim, width: 80 cm, height: 1 m, number: 2}")["denim"]
    assert 2000 / (1 - found.shrinks) == pytest.approx(found.length)


def test_finished_sizes_get_seams_hem_and_fullness() -> None:
    """Finished 60 x 50 with a hem of 4: cut 63 wide and 55.5 long."""
    found = cloths(
        "  - {name: a, fabric: denim, finished width: 60 cm, finished height: 50 cm, hem: 4 cm}"
    )["denim"]
    assert 555 / (1 - found.shrinks) == pytest.approx(found.length)


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


def test_thread_by_colour_has_wastage_in_it() -> None:
    """What the seams take, and 15 % on top."""
    judgement = judged(SEAM)
    works = seamworks(judgement, known())
    (row,) = threads_to_buy(judgement, works)
    net = sum(p.use.total for w in works for p in w.threads or ()) / 1000
    assert 1.15 * net == pytest.approx(row.total)
    assert ("white", ("lawn",)) == (row.colour, row.to_match)


def test_a_seam_without_length_is_named_as_not_counted() -> None:
    """It is not silently left out."""
    judgement = judged("  - {name: side, layers: [lawn, lawn]}")
    (row,) = threads_to_buy(judgement, seamworks(judgement, known()))
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
    "finish: Hong Kong, allowance: 15}\n"
    "  - {name: b, layers: [coat, coat], length: 1 m, finish: bound, seam: plain}\n"
)


def test_edges_that_are_bound_call_for_a_bias_strip() -> None:
    """Hong Kong: both edges, allowance + 1/4 in; bound: one strip of 25 to 32 mm; joins 10 %."""
    one, other = [need for need in kit_of(judged(BOUND), known()) if need.strip]
    assert (one.word, one.places, one.state) == ("Hong Kong", ("a",), "not said")
    assert (1.1 * 2 * 1600, 1.1 * 1000) == pytest.approx((one.length, other.length))
    assert one.strip is not None
    assert other.strip is not None
    assert (21.35, 21.35) == pytest.approx(one.strip.width)
    assert (25.0, 32.0) == other.strip.width
    assert one.strip.square == pytest.approx((3520 * 21.35) ** 0.5)


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
