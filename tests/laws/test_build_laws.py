"""Laws of building and buying on whole projects: more of anything never needs less."""

from __future__ import annotations

import math

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from advisor.construction.clothlist import cloths_to_buy
from advisor.construction.cutnotes import cut_note
from advisor.construction.cutting import cuts_of, on_cloth
from advisor.construction.seamwork import SeamWork, seamworks
from advisor.construction.threadlist import threads_to_buy
from advisor.craft import cloth as lay
from advisor.decide.evaluate import judge
from advisor.project.garment import Garment, Use
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

KNOWN = shipped()
CLOTHS = ("denim", "coating", "lawn", "organza", "rayon velvet", "wool crepe", "brocade")
cloths = st.sampled_from(CLOTHS)
lengths = st.floats(50, 3000)
fullnesses = st.floats(1.0, 5.0)
FEW = settings(max_examples=25)


def project(
    one: str, other: str, full: float = 1.0, length: float = 500.0, more: str = ""
) -> Garment:
    """A garment of one seam of two cloths."""
    text = (
        "garment: Test\nfabrics:\n"
        f"  one: {{fabric: {one}, width: 140 cm}}\n  other: {{fabric: {other}, width: 140 cm}}\n"
        "seams:\n"
        f"  - {{name: s, layers: [one, {{use: other, fullness: {full:.4f}}}], "
        f"length: {length:.3f} mm}}\n{more}"
    )
    return garment_of(parse_yaml(text, "p.yaml"), KNOWN)


def built(garment: Garment) -> SeamWork:
    (work,) = seamworks(judge(garment, KNOWN), KNOWN)
    return work


def thread_of(garment: Garment) -> float:
    judgement = judge(garment, KNOWN)
    return sum(row.total for row in threads_to_buy(judgement, seamworks(judgement, KNOWN), KNOWN))


@FEW
@given(cloths, cloths, fullnesses, fullnesses)
def test_more_fullness_never_needs_less_lift(one: str, other: str, a: float, b: float) -> None:
    """The fuller edge is never thinner, as it lies or under the foot."""
    less, more = sorted((a, b))
    thin, thick = (built(project(one, other, full)).spots[0] for full in (less, more))
    assert thin.lies_mm <= thick.lies_mm + 1e-9
    assert thin.foot_mm <= thick.foot_mm + 1e-9


@FEW
@given(cloths, cloths, st.integers(1, 4))
def test_a_layer_more_is_never_thinner(one: str, other: str, more: int) -> None:
    """Every layer added adds to the stack."""
    garment = project(one, other)
    seam = garment.seams[0]
    thicker = replace(garment, seams=(replace(seam, uses=seam.uses + (Use("one"),) * more),))
    assert built(garment).spots[0].foot_mm < built(thicker).spots[0].foot_mm


@FEW
@given(cloths, cloths, lengths, lengths)
def test_a_longer_seam_never_takes_less_thread(one: str, other: str, a: float, b: float) -> None:
    """Thread grows with the length."""
    short, long = sorted((a, b))
    assert thread_of(project(one, other, length=short)) <= (
        thread_of(project(one, other, length=long)) + 1e-9
    )


@FEW
@given(cloths, cloths, st.integers(1, 5))
def test_thread_of_many_is_many_times_that_of_one(one: str, other: str, times: int) -> None:
    """`times` multiplies; nothing is counted twice or left out."""
    garment = project(one, other)
    seam = garment.seams[0]
    many = replace(garment, seams=(replace(seam, making=replace(seam.making, times=times)),))
    assert abs(thread_of(many) - times * thread_of(garment)) < 1e-6


@FEW
@given(cloths, st.floats(50, 1300), st.floats(50, 2000), st.integers(1, 6))
def test_one_piece_more_never_needs_less_cloth(
    fabric: str, width: float, height: float, number: int
) -> None:
    """And what is bought is never less than what the pieces cover."""
    lengths = []
    for count in (number, number + 1):
        more = (
            f"pieces:\n  - {{name: a, fabric: one, width: {width:.2f} mm, "
            f"height: {height:.2f} mm, number: {count}}}\n"
        )
        (bought,) = cloths_to_buy(judge(project(fabric, "lawn", more=more), KNOWN), KNOWN)
        if bought.length is None or bought.buy_metric is None:
            return  # wider than the cloth once it has shrunk: said, and no figure
        area = count * width * height / 1400.0
        assert bought.buy_metric >= bought.length - 1e-6
        assert bought.length >= area - 1.0
        lengths.append(bought.length)
    assert lengths[0] <= lengths[1] + 1e-6


@FEW
@given(cloths, cloths, fullnesses)
def test_units_change_only_words(one: str, other: str, full: float) -> None:
    """In inches the figures are the same."""
    garment = project(one, other, full)
    metric, us = built(garment), built(replace(garment, units="us"))
    assert metric.spots == us.spots
    assert metric.threads == us.threads


def piece(words: str) -> Garment:
    """A garment with one piece of its first cloth."""
    return project("lawn", "denim", more=f"pieces: [{{name: p, fabric: one, {words}}}]\n")


def bought_for(words: str) -> tuple[float, float]:
    """Length of cloth for one piece, and thread of everything."""
    judgement = judge(piece(words), KNOWN)
    (row,) = cloths_to_buy(judgement, KNOWN)
    notes = [cut_note(cut, judgement, KNOWN) for cut in row.cuts]
    sewn = threads_to_buy(judgement, seamworks(judgement, KNOWN), KNOWN, notes)
    assert row.length is not None
    return row.length, sum(each.total for each in sewn)


@FEW
@given(st.integers(1, 7), st.integers(1, 7), st.floats(2, 40))
def test_more_tucks_never_need_less(a: int, b: int, depth: float) -> None:
    """More tucks of a depth never take less cloth or less thread."""
    less, more = (
        bought_for(
            f"width: 40 cm, height: 30 cm, number: 3, "
            f"tucks: {{depth: {depth:.3f} mm, number: {n}, spacing: 5 cm}}"
        )
        for n in sorted((a, b))
    )
    assert less[0] <= more[0] + 1e-6
    assert less[1] <= more[1] + 1e-6


@FEW
@given(st.floats(200, 900), st.floats(10, 250), st.integers(1, 2), st.sampled_from([0.25, 0.5, 1]))
def test_a_deeper_flounce_never_needs_less_cloth(
    seam: float, depth: float, rings: int, turn: float
) -> None:
    """Twice as deep never takes less; and the seam line of its rings covers seam and joins."""
    words = f"flounce: {{seam: {seam:.3f} mm, depth: {{0:.3f}} mm, pieces: {rings}, turn: {turn}}}"
    cuts = [
        cuts_of(piece(words.replace("{0:.3f}", f"{d:.3f}")).plan.pieces[0], 1400.0)[0]
        for d in (depth, 2 * depth)
    ]
    less, more = (lay.estimate([on_cloth(each)], lay.BoughtCloth(1400.0)) for each in cuts)
    assert less.length_mm <= more.length_mm + 1e-6
    ring = cuts[0].ring
    assert ring is not None
    covered = rings * (2 * math.pi * turn * ring.seam_line - 2 * cuts[0].piece.allowance)
    assert abs(covered - seam) < 0.01


@FEW
@given(st.integers(2, 5), st.floats(1.0, 2.0), st.floats(300, 900))
def test_tiers_meet(number: int, full: float, edge: float) -> None:
    """The panels of each tier, less their seams, make its fullness; and that is the next edge."""
    words = (
        f"finished width: {edge:.3f} mm, finished height: 60 cm, "
        f"tiers: {{number: {number}, fullness: {full:.4f}}}"
    )
    found = piece(words).plan.pieces[0]
    cuts = cuts_of(found, 1400.0)
    assert number == len(cuts)
    below = [cut.number * (cut.width - 2 * found.allowance) for cut in cuts]
    for cut, wide in zip(cuts, below, strict=True):
        assert cut.edge is not None
        assert abs(wide - cut.edge * cut.fullness) < 1e-6 * wide
    for wide, cut in zip(below[:-1], cuts[1:], strict=True):
        assert cut.edge is not None
        assert abs(wide - cut.edge) < 1e-6 * wide
