"""Laws of building and buying on whole projects: more of anything never needs less."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from advisor.engine.judge import judge
from advisor.engine.work.clothlist import cloths_to_buy
from advisor.engine.work.seamwork import SeamWork, seamworks
from advisor.engine.work.threadlist import threads_to_buy
from advisor.knowledge.cache import load_knowledge
from advisor.project.garment import Garment, Use
from advisor.project.load import garment_of
from advisor.yamlfile import parse_yaml

KNOWN = load_knowledge()
CLOTHS = ("denim", "coating", "lawn", "organza", "rayon velvet", "wool crepe", "brocade")
cloths = st.sampled_from(CLOTHS)
lengths = st.floats(50, 3000)
fullnesses = st.floats(1.0, 5.0)
FEW = settings(max_examples=25)


def project(
    one: str, other: str, full: float = 1.0, length: float = 500.0, more: str = ""
) -> Garment:  # fmt: skip
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
    return sum(row.total for row in threads_to_buy(judgement, seamworks(judgement, KNOWN)))


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
    many = replace(
        garment, seams=(replace(seam, making=replace(seam.making, times=times)),)
    )
    assert abs(thread_of(many) - times * thread_of(garment)) < 1e-6


@FEW
@given(cloths, st.floats(50, 1300), st.floats(50, 2000), st.integers(1, 6))
def test_one_piece_more_never_needs_less_cloth(
    fabric: str, width: float, height: float, number: int
) -> None:
    """And what is bought is never less than what the pieces cover."""
    lengths = []
    for count in (number, number + 1):
        more = (f"pieces:\n  - {{name: a, fabric: one, width: {width:.2f} mm, "
                f"height: {height:.2f} mm, number: {count}}}\n")  # fmt: skip
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
