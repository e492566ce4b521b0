"""Sewing calculations against published worked examples, one table per source."""

from __future__ import annotations

from typing import Any

import pytest

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
from advisor.craft.fullness import Weight
from advisor.units.factors import us_size

INCH = 25.4

# trade-consumption-formulas: (stitch, thickness, stitches per unit, ratio)
FORMULAS = [(101, 0.005, 9, 3.09), (301, 0.01, 10, 2.2)]

# thread-bulletin-2008: 401 at 8 stitches per inch, (seam thickness in inches, ratio)
CHART_401 = [(0.055, 4.88), (0.060, 4.96), (0.065, 5.04), (0.070, 5.12), (0.075, 5.20)]

# derived: 301 by thickness in mm at 3, 4 and 5 stitches per cm
CHART_301 = [
    (0.4, 2.24, 2.32, 2.40),
    (0.6, 2.36, 2.48, 2.60),
    (1.0, 2.60, 2.80, 3.00),
    (2.0, 3.20, 3.60, 4.00),
    (3.0, 3.80, 4.40, 5.00),
]

# derived: 304, (zigzag width over advance, ratio of the surface part)
CHART_304 = [(1.0, 2.8), (2.0, 4.5), (2.5, 5.4), (3.4, 7.1)]

# derived: the needle's share of 401, (thickness × stitches, share)
SHARE_401 = [(0.0, 0.25), (0.6, 0.42), (1.2, 0.53)]

# thread-consumption-bulletin (from memory), (stitch, ratio, needle share); the ratios of 503,
# 504, 512 and 516 also stand in trade-overedge-ratios
RATIOS = [
    (406, 18.0, 0.30),
    (503, 12.0, 0.55),
    (504, 14.0, 0.20),
    (512, 18.0, 0.25),
    (516, 20.0, 0.20),
    (602, 25.0, 0.20),
    (605, 28.0, 0.30),
]

# trade-consumption-order: (inches of seam, ratio) of one shirt
SHIRT = [(104, 19.0), (52, 32.0), (20, 5.0), (15, 2.75)]

# thread-spi-bulletin: pounds per inch at 6, 8, 10 and 12 stitches per inch, (thread lb, table)
POUNDS = [(2.2, (20, 26, 33, 40)), (2.6, (23.4, 31.2, 39, 46.8))]
# thread-spi-select: thread strength worked back from the printed table
POUNDS_SELECT = [(2.8, (25, 34, 42, 50))]

# peirce-1937 worked out (derived): tex, diameter mm, NM by rule (from the diameter as printed)
SIZES = [
    (10, 0.118, 41),
    (13.5, 0.137, 48),
    (18, 0.158, 55),
    (24, 0.183, 64),
    (27, 0.194, 68),
    (30, 0.204, 71),
    (35, 0.221, 77),
    (40, 0.236, 83),
    (45, 0.250, 88),
    (50, 0.264, 92),
    (60, 0.289, 101),
    (80, 0.334, 117),
    (105, 0.382, 134),
    (135, 0.433, 152),
]

# peirce-1937: cotton count Ne, diameter mm
PEIRCE = [(20, 0.203), (30, 0.166), (40, 0.144), (60, 0.117)]

# trade-ticket-2013 (the printed series is rounded): tex, metric ticket
TICKETS = [
    (10, 300),
    (13.5, 222),
    (18, 167),
    (24, 125),
    (25, 120),
    (27, 111),
    (30, 100),
    (35, 86),
    (40, 75),
    (45, 67),
    (50, 60),
    (60, 50),
    (80, 38),
    (105, 29),
    (135, 22),
]

# trade-needle-number: US size, NM below US 19 by the rule
US_NM = [(us, 60 + 5 * (us - 8)) for us in range(8, 19)]

# iso-13936-2 (read at second hand), and the upholstery procedure of its family (memory)
STANDARD_NEEDLES = [(45, 90), (74, 110)]

# trade-fullness, trade-gather-ratio; light from memory: weight, low, high
FULLNESS = [
    (fullness.Weight.SHEER, 3.0, 4.0),
    (fullness.Weight.LIGHT, 2.5, 3.0),
    (fullness.Weight.MEDIUM, 2.0, 2.0),
    (fullness.Weight.HEAVY, 1.5, 1.5),
]


@pytest.mark.parametrize(("stitch", "thick", "dense", "expected"), FORMULAS)
def test_consumption_formulas_give_the_printed_examples(
    stitch: int, thick: float, dense: float, expected: Any
) -> None:
    """The 101 and 301 formulas give the ratios their source prints."""
    assert expected == pytest.approx(thread.ratio(stitch, thick, 1 / dense).total)


@pytest.mark.parametrize(("inches", "expected"), CHART_401)
def test_chainstitch_chart(inches: float, expected: Any) -> None:
    """The 401 formula gives the printed chart at 8 stitches to the inch."""
    assert expected == pytest.approx(thread.double_chain(inches, 1 / 8).total)


def test_chainstitch_yards() -> None:
    """1.17 yd at 5.20 takes 6.08 yd, 7.00 yd with 15 % (thread-bulletin-2008)."""
    use = thread.double_chain(0.075, 1 / 8).times(1.17)
    assert 6.08 == pytest.approx(use.total, abs=0.005)
    assert 7.00 == pytest.approx(thread.total([use]).total, abs=0.005)


@pytest.mark.parametrize(("thick", "at_3", "at_4", "at_5"), CHART_301)
def test_lockstitch_chart(thick: float, at_3: float, at_4: float, at_5: float) -> None:
    """The 301 formula gives the chart by thickness and stitches per cm (derived)."""
    got = [thread.lockstitch(thick, 10 / dense).total for dense in (3, 4, 5)]
    assert [at_3, at_4, at_5] == pytest.approx(got)


@pytest.mark.parametrize(("swing", "expected"), CHART_304)
def test_zigzag_spans_the_two_published_ratios(swing: float, expected: Any) -> None:
    """Zigzags of different width explain the ratios 5.5 and 7.0 (derived)."""
    assert expected == pytest.approx(thread.zigzag(0, 1, swing).total, abs=0.06)


@pytest.mark.parametrize(("depth", "expected"), SHARE_401)
def test_chainstitch_needle_share(depth: float, expected: Any) -> None:
    """The needle's share of 401 grows with thickness, from 25 to 53 % (derived)."""
    use = thread.double_chain(depth, 1)
    assert expected == pytest.approx(use.needle / use.total, abs=0.005)


def test_overedge_straddles_the_table() -> None:
    """504 at W 5 mm, T 1 mm, 4.5 stitches/cm: 13.8 and 15.8 (trade-consumption-formulas)."""
    assert (13.8, 15.8) == pytest.approx(thread.overedge_range(1, 10 / 4.5, 5))


@pytest.mark.parametrize(("stitch", "expected", "needle"), RATIOS)
def test_ratio_table(stitch: int, expected: Any, needle: float) -> None:
    """Classes without a formula follow the ratio table and its needle shares."""
    use = thread.ratio(stitch, 1.0, 2.5)
    assert (expected, expected * needle) == pytest.approx((use.total, use.needle))


def test_safety_stitch_is_the_sum_of_its_parts() -> None:
    """516 = 401 + 503 or 504: 5.5 + 14 = 19.5 against 20 printed; 515 = 17.5 (derived)."""
    assert 20 == pytest.approx(5.5 + thread.from_table(504).total, abs=0.5)
    assert thread.from_table(515).total == pytest.approx(5.5 + thread.from_table(503).total)


def test_four_thread_overlock_lies_between_its_two_sources() -> None:
    """514 takes 18 to 19 (derived; trade-consumption-order)."""
    assert 18 <= thread.from_table(514).total <= 19


def test_measured_chainstitch() -> None:
    """15 cm unpicked gave 19.5 and 62.0 cm: 100 cm takes 540, 621 with 15 %.

    Source: trade-consumption-measured.
    """
    ratio = thread.ThreadUse(round(19.5 / 15, 1), looper=round(62.0 / 15, 1))
    use = ratio.times(100)
    assert (130, 410) == pytest.approx((use.needle, use.looper))
    assert 621 == pytest.approx(thread.total([use]).total)


def test_measured_chainstitch_yards() -> None:
    """42 in at factors 3 and 2.67: 6.63 yd, 7.62 with 15 % (trade-consumption-2011)."""
    use = thread.ThreadUse(3, looper=2.67).times(1.17)
    assert (3.51, 3.12) == pytest.approx((use.needle, use.looper), abs=0.005)
    assert 7.62 == pytest.approx(thread.total([use]).total, abs=0.015)


def test_shirt_order() -> None:
    """A shirt takes 3,781 in, 105.65 m with 10 % (trade-consumption-order; total derived).

    The source prints 106.71 m: its own arithmetic is off by 1 %.
    """
    uses = [thread.ThreadUse(ratio).times(inches) for inches, ratio in SHIRT]
    assert 3781 == pytest.approx(thread.total(uses, 0).total, abs=0.5)
    assert 105.65 == pytest.approx(thread.total(uses, 0.10).total * INCH / 1000, abs=0.01)


def test_denser_lockstitch_adds_a_tenth_of_thread_and_half_the_strength() -> None:
    """3 to 4.5 stitches/cm at 0.83 mm: +10 % thread, +50 % strength (thread-seam-strength-2017)."""
    sparse, dense = (thread.lockstitch(0.83, 10 / each).total for each in (3, 4.5))
    assert 1.10 == pytest.approx(dense / sparse, abs=0.002)
    assert 1.50 == pytest.approx(strength.thread_limit(4.5, 9) / strength.thread_limit(3, 9))


@pytest.mark.parametrize(("thread_lb", "expected"), [*POUNDS, *POUNDS_SELECT])
def test_strength_tables(thread_lb: float, expected: Any) -> None:
    """The tables of seam strength follow spi × thread × 1.5."""
    got = [strength.thread_limit(spi, thread_lb) for spi in (6, 8, 10, 12)]
    assert list(expected) == pytest.approx(got, abs=0.5)


@pytest.mark.parametrize(
    ("spi", "thread_lb", "stitch", "expected"),
    [
        (10, 4.0, 301, 60),  # thread-spi-bulletin
        (10, 4.0, 401, 68),  # thread-spi-bulletin
        (5, 35, 401, 297.5),  # trade-thread-strength
    ],
)
def test_strength_examples(spi: float, thread_lb: float, stitch: int, expected: Any) -> None:
    """The printed examples: 60 lb, 68 lb and 297.5 lb."""
    assert expected == pytest.approx(strength.thread_limit(spi, thread_lb, stitch))


def test_strength_in_metric() -> None:
    """10 spi of tex 24 core-spun holds 68 N/cm (derived from thread-spi-bulletin)."""
    newtons = strength.thread_strength(24, "core-spun polyester")
    assert 11.6 == pytest.approx(newtons, abs=0.1)
    assert 68 == pytest.approx(strength.seam_strength(2.54, newtons).n_per_cm, abs=0.5)
    assert 9.8 == pytest.approx(strength.thread_strength(27, "spun polyester"), abs=0.1)


@pytest.mark.parametrize(("tex", "mm", "nm"), SIZES)
def test_thread_and_needle_sizes(tex: float, mm: float, nm: float) -> None:
    """Diameter to 0.001 mm, and the needle within the rounding of the printed diameter."""
    assert mm == pytest.approx(threadsize.diameter(tex), abs=0.0008)
    assert nm == pytest.approx(threadsize.needle_for(tex), abs=0.6)
    assert 13 * tex**0.5 == pytest.approx(threadsize.needle_for(tex), rel=0.01)


@pytest.mark.parametrize(("count", "mm"), PEIRCE)
def test_peirce(count: int, mm: float) -> None:
    """Diameter 1/(28 √Ne) in; the printed column is 0.0374 √tex, rounded up by 0.2 %."""
    assert mm == pytest.approx(threadsize.diameter(590.54 / count), abs=0.0005 + 0.002 * mm)


@pytest.mark.parametrize(("tex", "ticket"), TICKETS)
def test_tickets(tex: float, ticket: float) -> None:
    """Ticket = 3000/tex, printed to the nearest whole number."""
    assert ticket == pytest.approx(threadsize.ticket(tex), abs=0.5)


def test_cotton_ticket_is_another_number() -> None:
    """Cotton 60 is 29.5 tex, metric 60 is 50 tex (thread-size-pages, trade-ticket-2017)."""
    assert 60 == pytest.approx(threadsize.cotton_ticket(29.5), abs=0.1)
    assert 60 == pytest.approx(threadsize.ticket(50))


@pytest.mark.parametrize(("us", "nm"), US_NM)
def test_us_numbers(us: float, nm: float) -> None:
    """NM = 60 + 5 × (US − 8) below US 19."""
    assert us == us_size(nm)


@pytest.mark.parametrize(("tex", "nm"), STANDARD_NEEDLES)
def test_needles_of_the_standards(tex: float, nm: float) -> None:
    """The rule picks the needle that the slippage standard names for its thread."""
    assert nm == threadsize.needle_sold(tex)


@pytest.mark.parametrize(("weight", "low", "high"), FULLNESS)
def test_fullness_by_weight(weight: Weight, low: float, high: float) -> None:
    """The lighter the cloth, the more fullness."""
    ratio = fullness.gather_ratio(weight)
    assert (low, high) == (ratio.low, ratio.high)


def test_bias_ruffle() -> None:
    """A bias ruffle takes 1 1/4 to 1 1/3, a straight one about 1 1/2 (clothing-text-1916)."""
    assert (1.25, pytest.approx(1.3333, abs=1e-4)) == (
        fullness.BIAS_RUFFLE.low,
        fullness.BIAS_RUFFLE.high,
    )
    assert fullness.STRAIGHT_RUFFLE.low == 1.5


@pytest.mark.parametrize(
    ("edge", "expected"),
    [(30, 3.98), (24, 3.125)],  # dressmaking-course-5: waist and hip of a skirt
)
def test_skirt_of_1922(edge: float, expected: Any) -> None:
    """The 1922 skirt: first pleat 2 1/8 in, then every 3.98 at one edge, 3 1/8 at the other."""
    assert expected == pytest.approx(pleats.pitch(edge, 7, 2.125), abs=0.005)


def test_full_pleats_take_three_to_one() -> None:
    """Side pleats that touch take 3 : 1 (new-dressmaker-1921)."""
    assert 3 == pytest.approx(pleats.pleats(pleats.Pleat.KNIFE, 8, 3, 3).ratio)


def test_box_pleats_just_short_of_touching() -> None:
    """Box pleats take slightly under 3 : 1 when their folds nearly meet (new-dressmaker-1921)."""
    touching = pleats.pleats(pleats.Pleat.BOX, 8, 3, 1.5)
    apart = pleats.pleats(pleats.Pleat.BOX, 8, 3, 1.4)
    assert 3 == pytest.approx(touching.ratio)
    assert 2.8 < apart.ratio < 3


def test_tucks() -> None:
    """Tucks take 2 × depth × number (clothing-text-1916)."""
    assert 2 * 0.25 * 6 == fullness.tucks(0.25, 6)


def test_panels_of_a_gathered_skirt() -> None:
    """Waist 72 cm, 2 : 1, cloth 140: two panels of 75; full widths would give 3.8 (derived)."""
    plan = fullness.panels(72, 2, 140, 1.5)
    assert (2, 75) == (plan.number, pytest.approx(plan.panel_width))
    assert 147 == pytest.approx(plan.needed_width)
    assert 144 == pytest.approx(2 * plan.panel_width - 4 * 1.5)
    assert 3.8 == pytest.approx(plan.fullness_at_full_width, abs=0.01)


def test_cut_length_of_a_gathered_skirt() -> None:
    """65 + hem 5 + seam 1.5, shrinking 4 %: cut 74.5 cm (derived)."""
    assert 71.5 == fullness.cut_length(65, 5, 1.5)
    assert 74.5 == pytest.approx(fullness.cut_length(65, 5, 1.5, shrinkage=0.04), abs=0.05)


def test_tiers() -> None:
    """Waist 23 in: 34.5 + 1.5 = 36, then 54, two pieces of 27 (trade-tiers)."""
    first = fullness.tiers(23, [1.5], seam=1.5)[0]
    second = fullness.tiers(first, [1.5])[0]
    assert (36, 54) == pytest.approx((first, second))
    assert 27 == pytest.approx(second / 2)


def test_panelled_skirt_yardage() -> None:
    """14 cuts × 13 in + 5 = 187 in, bought as 5 1/4 yd, 5 3/4 with shrinkage (trade-panels)."""
    length = 14 * 13 + 5
    assert 187 == length
    bought = cloth.round_up_to_shop(length * INCH, cloth.US_STEP_MM) / (36 * INCH)
    assert (5.25, 5.75) == pytest.approx((bought, bought + 0.5))


def test_french_seam_allowance() -> None:
    """3/8 + 1/4 in make the usual 5/8, trimmed to 1/8 between (trade-french-seam-1)."""
    first, trim, second = allowance.FRENCH_STEPS
    assert (3 / 8, 1 / 8, 1 / 4) == pytest.approx((first / INCH, trim / INCH, second / INCH))
    assert 5 / 8 == pytest.approx(allowance.need(allowance.Finish.FRENCH) / INCH)


@pytest.mark.parametrize(
    ("source", "inches"),
    [("trade-french-seam-2", 1 / 2), ("forum-french-seam", 5 / 8), ("dressmaking-course-1", 3 / 8)],
)
def test_french_seam_variants(source: str, inches: float) -> None:
    """The other published French seams come to 1/2, 5/8 and 3/8 in."""
    assert inches == pytest.approx(sum(allowance.FRENCH_VARIANTS[source]) / INCH)


def test_french_seam_in_thick_cloth() -> None:
    """Bulkier cloth adds 1/8 in for the turn (forum-french-seam)."""
    assert 3 / 4 == pytest.approx(allowance.need(allowance.Finish.FRENCH, thick_turn=True) / INCH)


def test_hong_kong_strip() -> None:
    """Allowance + 1/4 in: 5/8 gives 7/8 in, 15 mm gives 22 mm (encyclopedia-hong-kong)."""
    assert 7 / 8 == pytest.approx(allowance.hong_kong_strip(5 / 8 * INCH) / INCH)
    assert 22 == -(-allowance.hong_kong_strip(15) // 1)


def test_four_thread_overlock_allowance() -> None:
    """A 4-thread overlocked seam takes 7 mm, 9/32 in (fashion-designers)."""
    assert 9 / 32 == pytest.approx(allowance.need(allowance.Finish.OVERLOCK_4) / INCH, abs=0.006)


def test_grading() -> None:
    """Outer 1/4 in, inner 1/8 in (gw-apparel-2012, apparel-1-3-03)."""
    assert (1 / 4, 1 / 8) == pytest.approx([each / INCH for each in allowance.grade(2).widths_mm])


def test_clips_lie_a_quarter_to_half_an_inch_apart() -> None:
    """Clips and notches every 1/4 to 1/2 in (apparel-1-3-03)."""
    assert (1 / 4, 1 / 2) == pytest.approx([each / INCH for each in allowance.CLIP_SPACING_MM])


def test_turn_of_cloth() -> None:
    """π/2 × t for a right angle, π × (outer + inner)/2 and what lies between for a whole turn."""
    assert (1.5708, 3.1416, 4.8695, 11.1527) == pytest.approx(
        (
            allowance.turn_of_cloth(1, 1, degrees=90),
            allowance.turn_of_cloth(1, 1),
            allowance.turn_of_cloth(0.1, 3),
            allowance.turn_of_cloth(0.1, 3, 2),
        ),
        abs=1e-4,
    )


def test_thickness_of_a_gathered_tier() -> None:
    """R 2, 0.6 mm gathered on 1.0 mm flat, topstitched: 3.2 mm (derived)."""
    stack = [thickness.StackedCloth(1.0, 2), thickness.StackedCloth(0.6, 2)]
    assert 3.2 == pytest.approx(thickness.as_it_lies(stack))


def test_household_lift_is_spent_at_three_quarters() -> None:
    """Lever lift 6.0 mm (manual-service): tight from 3.0, too thick from 4.5 (design-choice)."""
    assert (3.0, 4.5) == (6.0 * thickness.WARN_SHARE, 6.0 * thickness.BLOCK_SHARE)
