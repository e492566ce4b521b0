"""Laws of the heat's advice, on garments drawn at random: it only lowers and shortens."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from advisor.answer.pipeline import Parts, answer
from advisor.answer.press_clause import (
    COUNTABLE_S,
    LONG_S,
    TOUCHED_S,
    budget,
    press_clauses,
    seconds,
)
from advisor.claims.valuesets import Span
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.decide.gluing import advise_with_heat
from advisor.heat.layers import layer_of
from advisor.heat.stacks import presses
from advisor.knowledge.model import LIMIT_ASPECT
from advisor.project.garment import Cloth, Garment
from tests.laws.engine_garments import cloths, garments, known
from tests.told import heat_answer, heat_row

law = settings(max_examples=40, deadline=None, derandomize=True, database=None)
few = settings(law, max_examples=6)
times = st.one_of(st.none(), st.floats(0.0, 60.0))


@law
@given(cloths("cloth"), st.booleans())
def test_any_cloth_is_a_layer(cloth: Cloth, moist: bool) -> None:
    """Whatever its fibres and weight, a cloth has a thickness and a mass that its fibre fits in."""
    layer = layer_of(cloth, 110.0, known(), moist=moist)
    assert 0.0 < layer.thickness_mm.low <= layer.thickness_mm.high
    assert layer.mass_gsm > 0.0
    assert layer.limit_c == 110.0


@law
@given(garments())
def test_no_press_as_advised_is_above_any_limit(garment: Garment) -> None:
    """The mark that is asked as advised lies within the place's limit, and each layer's with it."""
    judgement = judge(garment, known())
    found, asked = presses(judgement, known())
    for bed in found:
        allowed = next(
            v[LIMIT_ASPECT].allowed
            for p, v in judgement.verdicts.items()
            if p.scope == "seam" and p.name in bed.places
        )
        assert isinstance(allowed, Span)
        limits = [x for x in bed.limits if x is not None]
        assert min(limits, default=allowed.high) >= allowed.high
        for press in asked:
            if press.places == bed.places and not press.setting.wanted_by:
                assert press.setting.sole.mid <= allowed.high


@few
@given(garments())
def test_the_heat_changes_no_verdict_and_takes_no_clash_away(garment: Garment) -> None:
    """Guidance on top of the limits: verdicts stay as they are, clashes may only be added."""
    advice = advise(garment, known())
    after, heat = advise_with_heat(advice, known(), full=False)
    assert after.judgement.verdicts == advice.judgement.verdicts
    assert set(advice.judgement.conflicts) <= set(after.judgement.conflicts)
    plain, told = answer(garment, known()), answer(garment, known(), Parts(heat=True))
    assert plain.verdicts == told.verdicts
    assert heat.rows or not told.heat
    for row in told.heat or ():
        assert row.press_at_most_s is None or row.press_at_most_s >= 0.0
        assert row.touch_safe_after_s is None or min(row.touch_safe_after_s) > 0.0


@law
@given(times, times, times, times)
def test_the_clause_never_lengthens_a_time(
    settled: float | None, dried: float | None, low: float | None, high: float | None
) -> None:
    """What is printed is no longer than the computed budget nor than the rule's time."""
    ways = (("advised", settled), ("dried out", dried), ("bare", 0.1))
    rows = [heat_row(place="hem", way=way, press_at_most_s=most) for way, most in ways]
    said = press_clauses(heat_answer(rows, dwell=(low, high)), "hem")
    assert len(said) <= 1
    for text in said:
        longest = budget(rows)
        if longest is None:
            assert min(x for x in (settled, dried) if x is not None) < COUNTABLE_S
            assert "touch and lift" in text
            continue
        assert longest == min(x for x in (settled, dried) if x is not None)
        assert longest < (60.0 if high is None else high)
        alone = "short touches, at most" if longest < TOUCHED_S else "at most"
        word = alone if high is None or high >= LONG_S else "here no more than"
        assert f"Computed: {word} {seconds(longest)} at a time" in text
        assert longest < 1.0 or float(seconds(longest).split()[0]) <= longest
