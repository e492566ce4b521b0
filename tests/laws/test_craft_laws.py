"""Laws of the sewing calculations: more never needs less."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from advisor.craft import (
    allowance,
    cloth,
    fullness,
    pleats,
    strength,
    thickness,
    thread,
    threadsize,
)
from advisor.craft.allowance import Finish
from advisor.craft.pleats import Pleat

ratios = st.floats(1, 6)
mm = st.floats(1, 2000)
thin = st.floats(0.05, 6)
more = st.floats(1, 3)
stitch_mm = st.floats(0.5, 6)
TINY = 1e-9


def not_less(big: float, small: float) -> bool:
    """Whether a number is at least another, up to the last digits."""
    return big >= small * (1 - TINY) - TINY


@given(thin, st.floats(1, 8), more, st.floats(10, 900), st.floats(0.8, 1.6))
def test_more_plies_never_need_less_lift(
    thick: float, number: int, factor: float, weight: float, density: float
) -> None:
    """More plies: never lower as they lie, or under the foot; and pressing never thickens."""
    small, big = (
        [thickness.StackedCloth(thick, count, weight, density)]
        for count in (number, number * factor)
    )
    assert not_less(thickness.as_it_lies(big), thickness.as_it_lies(small))
    assert not_less(thickness.under_foot(big), thickness.under_foot(small))
    assert thickness.under_foot(small) <= thickness.as_it_lies(small) + TINY


@given(st.floats(10, 900), st.floats(0.8, 2.5), st.floats(0.02, 1))
def test_packing_round_trips(weight: float, density: float, packing: float) -> None:
    """Thickness from packing gives that packing back, and no cloth is thinner than its fibre."""
    thick = thickness.thickness_from_packing(weight, density, packing)
    least = thickness.least_thickness(weight, density)
    assert abs(least / thick - packing) < 1e-9
    assert not_less(thick, least)


@given(
    st.sampled_from([101, 301, 304, 401, 504, *thread.TABLE]),
    thin,
    stitch_mm,
    st.floats(0.5, 8),
    more,
)
def test_thicker_or_denser_never_takes_less_thread(
    stitch: int, thick: float, step: float, width: float, factor: float
) -> None:
    """Thickness and stitches per cm never save thread, in any thread of the stitch."""
    base = thread.ratio(stitch, thick, step, width)
    for other in (
        thread.ratio(stitch, thick * factor, step, width),
        thread.ratio(stitch, thick, step / factor, width),
        thread.ratio(stitch, thick, step, width * factor),
    ):
        assert not_less(other.needle, base.needle)
        assert not_less(other.bobbin, base.bobbin)
        assert not_less(other.looper, base.looper)


@given(st.lists(st.floats(0, 5000), min_size=1, max_size=6), st.floats(0, 0.5), st.floats(1, 9000))
def test_more_seam_never_takes_less_thread(
    lengths: list[float], wastage: float, reel: float
) -> None:
    """One more seam, or wastage, never lowers metres or reels."""
    uses = [thread.lockstitch(1, 2.5).times(length) for length in lengths]
    whole = thread.total(uses, wastage).total
    part = thread.total(uses[:-1], wastage).total
    assert not_less(whole, part)
    assert not_less(whole, thread.total(uses, 0).total)
    assert thread.reels(whole, reel) >= thread.reels(part, reel)
    assert thread.reels(whole, reel) * reel >= whole * (1 - TINY) - TINY


@given(st.floats(100, 5000), st.integers(1, 4), stitch_mm, thin, more)
def test_more_gathering_never_takes_less_thread(
    width: float, rows: int, step: float, thick: float, factor: float
) -> None:
    """More width or rows to gather, or to baste, never takes less thread."""
    base = thread.gathering_rows(width, rows, step, thick).total
    assert not_less(thread.gathering_rows(width * factor, rows, step, thick).total, base)
    assert not_less(thread.gathering_rows(width, rows + 1, step, thick).total, base)
    basted = thread.hand_basting(width, step, thick).total
    assert not_less(thread.hand_basting(width * factor, step, thick).total, basted)


@given(st.floats(5, 150), more)
def test_thicker_thread_never_takes_a_finer_needle(tex: float, factor: float) -> None:
    """Needle, as worked out and as sold, and diameter grow with tex; the ticket falls."""
    assert threadsize.needle_sold(tex * factor) >= threadsize.needle_sold(tex)
    assert not_less(threadsize.diameter(tex * factor), threadsize.diameter(tex))
    assert threadsize.ticket(tex * factor) <= threadsize.ticket(tex) * (1 + TINY)


@given(stitch_mm, st.floats(1, 60), st.floats(1, 60), st.floats(1, 500), more)
def test_weakest_part_governs(
    step: float, needle: float, under: float, fabric: float, factor: float
) -> None:
    """A stronger part never weakens a seam, and no seam exceeds its cloth."""
    seam = strength.seam_strength(step, needle, under, cloth_n_per_cm=fabric)
    assert seam.n_per_cm <= fabric
    for other in (
        strength.seam_strength(step, needle * factor, under, cloth_n_per_cm=fabric),
        strength.seam_strength(step, needle, under * factor, cloth_n_per_cm=fabric),
        strength.seam_strength(step, needle, under, cloth_n_per_cm=fabric * factor),
        strength.seam_strength(step / factor, needle, under, cloth_n_per_cm=fabric),
    ):
        assert not_less(other.n_per_cm, seam.n_per_cm)


@given(st.sampled_from(allowance.Finish), st.floats(0, 30), more)
def test_wider_allowance_never_stops_fitting(finish: Finish, width: float, factor: float) -> None:
    """A finish that fits an allowance fits a wider one."""
    assert allowance.fit(finish, width * factor).short_mm <= allowance.fit(finish, width).short_mm


@given(st.integers(1, 8), st.floats(4, 30))
def test_grading_steps_down_from_the_outside(number: int, width: float) -> None:
    """Widths never grow inward, none below 1/8 in, none beyond the allowance."""
    widths = allowance.grade(number, width).widths_mm
    assert number == len(widths)
    assert list(widths) == sorted(widths, reverse=True)
    assert min(widths) >= allowance.EIGHTH - TINY
    assert max(widths) <= width + TINY


@given(mm, ratios, more, st.floats(700, 1600), st.floats(0, 20), st.floats(0, 0.2))
def test_more_fullness_never_needs_less_cloth(
    edge: float, ratio: float, factor: float, width: float, seam: float, shrink: float
) -> None:
    """More fullness, length or shrinkage never needs fewer panels or less cloth."""

    def bought(fuller: float, longer: float, shrinkage: float) -> float:
        plan = fullness.panels(edge, fuller, width, seam)
        length = fullness.cut_length(500 * longer, 50, 15, shrinkage=shrinkage)
        return cloth.round_up_to_shop(plan.number * length)

    base = bought(ratio, 1, shrink)
    assert not_less(bought(ratio * factor, 1, shrink), base)
    assert not_less(bought(ratio, factor, shrink), base)
    assert not_less(bought(ratio, 1, shrink * factor), base)


@given(mm, ratios, st.floats(700, 1600), st.floats(0, 20))
def test_panels_carry_the_fullness(edge: float, ratio: float, width: float, seam: float) -> None:
    """Panels less their seams make edge × fullness, and none is wider than the cloth."""
    plan = fullness.panels(edge, ratio, width, seam)
    assert plan.panel_width <= width * (1 + TINY)
    net = plan.number * (plan.panel_width - 2 * seam)
    assert abs(net - edge * ratio) <= 1e-6 * edge * ratio
    assert not_less(plan.fullness_at_full_width, ratio)


@given(
    st.sampled_from(pleats.Pleat),
    st.integers(1, 30),
    st.floats(5, 100),
    st.floats(0.1, 1),
    st.floats(0, 50),
)
def test_pleats_stay_within_three_to_one(
    kind: Pleat, number: int, face: float, part: float, spacing: float
) -> None:
    """Pleats take more with depth, 3 : 1 where the folds touch; knife pleats may lie deeper."""
    most = face + spacing if kind is Pleat.KNIFE else pleats.deepest(kind, face, spacing)
    row = pleats.pleats(kind, number, face, most * part, spacing=spacing)
    whole = pleats.pleats(kind, number, face, most, spacing=spacing)
    assert whole.touching
    assert abs(whole.ratio - 3) < 1e-9
    assert not_less(whole.cut, row.cut)
    deepest = pleats.pleats(
        kind, number, face, pleats.deepest(kind, face, spacing), spacing=spacing
    )
    assert not_less(deepest.cut, whole.cut)


@given(st.floats(50, 3000), st.floats(10, 600), st.integers(1, 4), st.floats(0.2, 1), more)
def test_deeper_flounce_is_fuller(
    seam: float, depth: float, pieces: int, turn: float, factor: float
) -> None:
    """A flounce meets its seam exactly; deeper means fuller at the hem."""
    ring = fullness.flounce(seam, depth, pieces=pieces, turn=turn)
    met = 2 * 3.141592653589793 * ring.inner_radius * turn * pieces
    assert abs(met - seam) < 1e-6 * seam
    deeper = fullness.flounce(seam, depth * factor, pieces=pieces, turn=turn)
    assert not_less(deeper.hem_fullness, ring.hem_fullness)
    assert ring.hem_fullness > 1


pieces = st.builds(
    cloth.CutPiece,
    width_mm=st.integers(50, 700),
    length_mm=st.integers(50, 1100),
    count=st.integers(1, 3),
    any_grain=st.booleans(),
)
cloths = st.builds(
    cloth.BoughtCloth,
    width_mm=st.integers(1110, 1500),
    one_way=st.booleans(),
    selvage_mm=st.just(0),
)
piece_lists = st.lists(pieces, min_size=1, max_size=3)


@settings(max_examples=40, deadline=None)
@given(piece_lists, cloths)
def test_estimate_lies_between_its_bounds(
    lot: list[cloth.CutPiece], width: cloth.BoughtCloth
) -> None:
    """Never shorter than no layout can beat, and never longer than one piece after another."""
    found = cloth.estimate(lot, width)
    assert not_less(found.packed_mm, found.least_mm)
    assert found.packed_mm <= sum(piece.length_mm * piece.count for piece in lot) + 0.1
    assert found.buy_metric_mm >= found.length_mm - 1e-6
    assert found.buy_us_mm >= found.length_mm - 1e-6


@settings(max_examples=60, deadline=None)
@given(st.integers(50, 1100), st.integers(50, 1000), st.integers(1, 9), st.integers(0, 200), cloths)
def test_one_kind_of_piece_is_strictly_monotone(
    wide: float, long: float, count: int, extra: int, width: cloth.BoughtCloth
) -> None:
    """For one kind of piece, longer, wider or more never needs less, exactly."""
    base = cloth.estimate([cloth.CutPiece(wide, long, count)], width).packed_mm
    wider = min(wide + extra, 1100)
    for piece in (
        cloth.CutPiece(wide, long + extra, count),
        cloth.CutPiece(wider, long, count),
        cloth.CutPiece(wide, long, count + extra % 5),
    ):
        assert not_less(cloth.estimate([piece], width).packed_mm, base)


@settings(max_examples=30, deadline=None)
@given(piece_lists, st.integers(1110, 1500), st.floats(0, 0.1), st.floats(0, 0.1))
def test_shrinkage_along_never_saves_cloth(
    lot: list[cloth.CutPiece], width: float, shrink: float, extra: float
) -> None:
    """More shrinkage along the cloth never needs less of it."""
    small, big = (
        cloth.estimate(lot, cloth.BoughtCloth(width, shrinks_long=part)).length_mm
        for part in (shrink, shrink + extra)
    )
    assert not_less(big, small)


@settings(max_examples=30, deadline=None)
@given(
    st.integers(200, 700),
    st.floats(0, 1),
    st.integers(200, 1100),
    st.integers(1, 8),
    st.integers(1110, 1500),
)
def test_nap_never_saves_cloth(
    wide: float, taper: float, long: float, count: int, width: float
) -> None:
    """Tapered panels on a one-way cloth never need less than on a two-way one."""
    piece = cloth.CutPiece(wide, long, count, narrow_mm=wide * taper)
    napped = cloth.estimate([piece], cloth.BoughtCloth(width, one_way=True)).packed_mm
    free = cloth.estimate([piece], cloth.BoughtCloth(width)).packed_mm
    assert not_less(napped, free)
