"""Finish against allowance, strength against place, fullness, and thread of each seam."""

from __future__ import annotations

import math

import pytest

from advisor.answer.seamwords import warnings
from advisor.construction.holding import weaker_side
from advisor.construction.threads import whole
from advisor.craft import thread
from tests.unit.construction.build_cases import garment, known, works


def one(seam: str):  # type: ignore[no-untyped-def]
    """What one seam comes to."""
    (work,) = works(f"  - {seam}").values()
    return work


def test_a_short_allowance_of_ones_own_is_kept_and_told() -> None:
    """A French seam wants 5/8 in; 10 mm stay 10 mm, and 5.9 are missing."""
    found = one("{name: s, layers: [lawn, lawn], seam: French, allowance: 10 mm}").finishing
    assert (10.0, True) == (found.allowance, found.own)
    assert 15.875 == pytest.approx(found.needs)
    assert 5.875 == pytest.approx(found.short)
    assert found.instead


def test_fifteen_millimetres_are_enough_for_a_french_seam() -> None:
    """5/8 in and 15 mm are the same allowance to the trade."""
    found = one("{name: s, layers: [lawn, lawn], seam: French, allowance: 15 mm}").finishing
    assert 0.0 == found.short


def test_a_french_seam_on_a_curve_is_told() -> None:
    """It only lies on a straight line."""
    found = one("{name: s, layers: [lawn, lawn], seam: French, shape: curved}").finishing
    assert not found.curves


def test_a_felled_seam_finishes_itself() -> None:
    """Whatever is said of the edges, they are inside."""
    found = one("{name: s, layers: [denim, denim], seam: felled}").finishing
    assert ("felled", "in the seam itself", 15.0) == (found.finish, found.when, found.needs)


def test_three_enclosed_allowances_are_graded() -> None:
    """1/8 in steps, the widest next to the outside."""
    found = one("{name: s, layers: [coat, denim, denim], edge: turned, allowance: 15 mm}").trimming
    assert [9.525, 6.35, 3.175] == pytest.approx(list(found.grade))


def test_a_curve_is_clipped_every_quarter_to_half_inch() -> None:
    """The published spacing, and the length tells how many at most."""
    found = one("{name: s, layers: [lawn, lawn], shape: curved, length: 127 mm}").trimming
    assert (6.35, 12.7, 20) == found.clips


def test_a_hem_is_not_clipped() -> None:
    """Its fullness is eased in or rolled; a notch would show below every one of them."""
    hem = "{name: s, layers: [lawn], shape: curved, edge: hem, length: 127 mm}"
    assert one(hem).trimming.clips is None


STRONG = "{name: s, layers: [denim, denim], stress: high, length: 10 cm, stitch: 301}"


def test_strength_is_stitches_times_thread_times_factor() -> None:
    """N/cm = 10 / length × tex × tenacity × 1.5, of the thread that was picked."""
    work = one(STRONG)
    assert work.holding.has is not None
    assert 60.0 == work.holding.needs


def test_a_place_that_moves_asks_for_more() -> None:
    """A low waist on the hip is worked at every step."""
    low = one("{name: s, layers: [denim, denim], stress: low}").holding.needs
    moved = one("{name: s, layers: [denim, denim], stress: low, moves: yes}").holding.needs
    assert (15.0, 35.0) == (low, moved)


def test_a_strength_that_nobody_published_is_unknown() -> None:
    """A zigzag has no published factor: unknown, never strong."""
    found = one('{name: s, layers: [denim, denim], stitch: "304"}').holding
    assert (None, None) == (found.has, found.enough)
    assert found.why_not


def test_the_strip_goes_before_the_plan() -> None:
    """30 cm that became 15 are 2 to 1, whatever was planned."""
    strip = "gathers: {method: gathering foot, strip: {flat: 30 cm, gathered: 15 cm}}"
    layers = "layers: [denim, {use: lawn, fullness: 3}], length: 50 cm"
    found = one(f"{{name: s, {layers}, {strip}}}").full
    assert (2.0, 2.0, 1000.0) == (found.measured, found.ratio, found.cut)
    assert any("strip" in text for text in found.says)


def test_full_pleats_are_three_to_one() -> None:
    """Folds that touch: 10 pleats with a face of 4 cm and folds of 4 cm on 40 cm."""
    found = one(
        "{name: s, layers: [denim, lawn], length: 40 cm, "
        "pleats: {kind: knife, number: 10, depth: 4 cm}}"
    ).full
    assert (3.0, 1200.0) == (pytest.approx(found.ratio), pytest.approx(found.cut))


def test_thread_of_a_plain_lockstitch() -> None:
    """Seam: length × (2 + 2TS), half in the needle and half in the bobbin; edges on their own."""
    work = one(
        '{name: s, layers: [lawn, lawn], seam: plain, stitch: "301", finish: overlocked, '
        "length: 1 m, times: 2}"
    )
    by = {p.purpose: p.use for p in work.threads}
    assert by["seam"].needle == by["seam"].bobbin
    assert 4000.0 < by["seam"].total < 5000.0
    edges = thread.from_table(514).times(1000.0 * 2 * 2)
    assert edges.total == pytest.approx(by["finish"].total)


def test_the_edges_of_a_bag_are_overlocked_as_one() -> None:
    """Two plies go under the knife together: one run, where a side that is pressed open has two."""
    line = "layers: [lawn, lawn], length: 48 cm, seam: plain, finish: overlocked"
    bag, side = (one(f"{{name: {name}, {line}}}").threads for name in ("pocket bag", "side"))
    runs = [next(p.use.total for p in each if p.purpose == "finish") for each in (bag, side)]
    assert [runs[0], 2 * runs[0]] == pytest.approx(runs)


def test_gathering_rows_are_counted_on_the_width_before() -> None:
    """Two rows over 2 m, with their tails, more than the 1 m of the seam itself."""
    work = one("{name: s, layers: [denim, {use: lawn, fullness: 2}], length: 1 m}")
    rows = next(p.use for p in work.threads if p.purpose == "gathering")
    assert thread.gathering_rows(2000.0, stitch_mm=4.0).total == pytest.approx(rows.total)


def test_a_seam_without_a_length_has_no_thread() -> None:
    """What is not known is not made up."""
    assert one("{name: s, layers: [lawn, lawn]}").threads is None


def test_whole_is_the_sum() -> None:
    """All purposes together."""
    work = one("{name: s, layers: [lawn, lawn], length: 1 m}")
    assert sum(p.use.total for p in work.threads) == pytest.approx(whole(work.threads).total)


def test_the_standards_names_of_a_seam() -> None:
    """A felled seam is LSc, on the word of the reproduced standard."""
    named = one("{name: s, layers: [denim, denim], seam: felled}").named
    assert ("LSc", "2.04.06") == (named.astm, named.iso)
    assert "memory" in named.iso_sources
    assert "memory" not in named.astm_sources


SHEER = """\
garment: Sheer
maker: {machine: household}
fabrics:
  sheer: {fabric: organza, fibres: {silk: 100}, weight: 40 g/m2}
  shell: {fabric: gabardine, fibres: {wool: 100}, weight: 250 g/m2, thickness: 0.6 mm}
  film: {fabric: vinyl, fibres: unknown}
seams:
"""


def test_no_seam_holds_more_than_its_cloth() -> None:
    """40 g/m² of silk bears 76 N/cm at the very most, however it is sewn; two of them 152."""
    g = garment("  - {name: s, layers: [sheer, sheer]}\n", SHEER)
    both = garment("  - {name: s, layers: [sheer, sheer, sheer, sheer]}\n", SHEER)
    half = garment("  - {name: s, layers: [shell, sheer]}\n", SHEER)
    none = garment("  - {name: s, layers: [film, film]}\n", SHEER)
    found = [weaker_side(each.seams[0], each, known()) for each in (g, both, half, none)]
    assert [76, 152, 76, None] == found


def test_a_place_that_its_cloth_cannot_hold_is_told_as_such() -> None:
    """Light silk gauze under strain: no stitch helps, so tape or a stay takes the pull."""
    light = SHEER.replace("weight: 40 g/m2", "weight: 20 g/m2")
    (work,) = works("  - {name: s, layers: [sheer, sheer], stress: high}\n", light).values()
    assert (38, True, False, None) == (
        work.holding.has,
        work.holding.by_cloth,
        work.holding.enough,
        work.holding.shorten_to,
    )
    assert any("the cloth itself holds no more" in text for text in warnings(work, "metric"))


def test_a_second_row_in_the_allowance_carries_nothing() -> None:
    """Two rows share the pull of a felled seam, not of a double-stitched one."""
    plain, double, felled = (
        one(f"{{name: s, layers: [denim, denim], seam: {kind}, stitch: 301}}").holding.rows
        for kind in ("plain", "double-stitched", "felled")
    )
    assert (1, 1, 2) == (plain, double, felled)


def test_a_sheer_over_a_coating_turns_by_both() -> None:
    """π × half of both thicknesses, and what lies between in full."""
    edge = "{name: s, layers: [lawn, coat], edge: turned, length: 30 cm}"
    between = "{name: s, layers: [lawn, lawn, coat], edge: turned, length: 30 cm}"
    assert math.pi * (0.2 + 3) / 2 == pytest.approx(one(edge).trimming.turn)
    assert math.pi * ((0.2 + 3) / 2 + 0.2) == pytest.approx(one(between).trimming.turn)


PLEATED = (
    "{name: waist, layers: [denim, denim], length: 84 cm, "
    "pleats: {kind: knife, number: 21, depth: 4 cm, hip: 96 cm, waist: 84 cm}}"
)


def test_pleats_are_as_wide_at_the_hip_as_at_the_waist() -> None:
    """96 + 21 × 8 = 264 cm, and 84 + 21 × 8.57 at the waist."""
    full = one(PLEATED).full
    assert full is not None
    assert (2640, 840) == (pytest.approx(full.cut), full.finished)
    assert any("8 cm" in say or "80 mm" in say for say in full.says)
    assert any("lie on each other" in say for say in full.says)


def test_two_full_layers_take_twice_the_cloth() -> None:
    """Each layer is cut as wide; the other full cloth of the place is told too."""
    full = "{use: lawn, fullness: 3}"
    twice = f"{{name: w, layers: [coat, {full}, {full}], length: 70 cm}}"
    single = f"{{name: w, layers: [coat, {full}], length: 70 cm}}"
    two, alone = one(twice), one(single)
    assert two.full is not None
    assert (2, 2100) == (two.full.layers, two.full.cut)
    drawn = [
        next(p.use.total for p in work.threads or () if p.purpose == "gathering")
        for work in (two, alone)
    ]
    assert drawn[0] == pytest.approx(2 * drawn[1])
    other = (
        "{name: w, layers: [{use: denim, fullness: 1.5}, {use: lawn, fullness: 3}], length: 1 m}"
    )
    told = one(other).full
    assert told is not None
    assert any("denim 1.5 to 1, 150 cm wide" in say for say in told.says)


def test_each_full_cloth_of_a_place_has_rows_of_its_own() -> None:
    """A frill of one cloth over a frill of another: both are drawn up, each along its own width."""
    both = "[lawn, {use: lawn, fullness: 2}, {use: denim, fullness: 1.5}]"
    work = one(f"{{name: s, layers: {both}, length: 1 m}}")
    rows = next(p.use for p in work.threads if p.purpose == "gathering")
    wanted = sum(thread.gathering_rows(w, stitch_mm=4.0).total for w in (2000.0, 1500.0))
    assert wanted == pytest.approx(rows.total)


def test_fastenings_are_counted_where_their_number_is_said() -> None:
    """Nine buttonholes take their thread nine times; of a row without a number nothing is told."""
    line = "{name: buttonholes, kind: buttonhole, layers: [lawn, lawn]"
    said = one(f"{line}, number: 9}}").threads
    once = one(f"{line}, number: 1}}").threads
    assert 9 * whole(once).total == pytest.approx(whole(said).total)
    assert 1000.0 < whole(once).total
    assert one(f"{line}}}").threads is None
