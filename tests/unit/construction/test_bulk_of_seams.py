"""Plies and thickness at every place of a seam, against the machine, and what cures a clash."""

from __future__ import annotations

import pytest

from advisor.construction.bulk import thickest
from advisor.construction.stack import least_density, ply_of
from advisor.craft.thickness import under_foot
from tests.unit.construction.build_cases import HEAD, advised, judged, known, verdict, works

FELLED = "  - {name: side, layers: [denim, denim], length: 50 cm, seam: felled}\n"
PLIES = {
    # place and seam: plies of the published counting (derived geometry)
    "plain": ("{name: s, layers: [denim, denim], seam: plain}", "at the stitch line", 2),
    "beside": ("{name: s, layers: [denim, denim], seam: plain}", "beside it", 2),
    "French": ("{name: s, layers: [lawn, lawn], seam: French}", "in the French ridge", 4),
    "French, with the body": (
        "{name: s, layers: [lawn, lawn], seam: French}",
        "beside it, to one side",
        3,
    ),
    "felled": ("{name: s, layers: [lawn, lawn], seam: felled}", "in the felled seam", 4),
    "gathered": (
        "{name: s, layers: [denim, {use: lawn, fullness: 2.5}]}",
        "at the stitch line",
        3.5,
    ),
    "gathered, pressed up": (
        "{name: s, layers: [denim, {use: lawn, fullness: 2.5}]}",
        "beside it",
        4.5,
    ),
    "hem over a seam": (
        "{name: s, layers: [denim, denim], edge: hem}",
        "at the hem over a seam",
        4,
    ),
    "zip": (
        "{name: s, layers: [denim, {notion: coil zip}]}",
        "at the end of the zip",
        4,
    ),
    "pleat": (
        "{name: s, layers: [denim, lawn], length: 9cm, pleats: {kind: box, number: 1, depth: 9mm}}",
        "on a pleat",
        4,
    ),
    "gathers between two flat edges": (
        "{name: s, layers: [denim, {use: lawn, fullness: 2.5}, denim]}",
        "at the stitch line",
        4.5,
    ),
    "double ruffle": (
        "{name: s, layers: [denim, {use: lawn, fullness: 2.5}, {use: lawn, fullness: 2.5}]}",
        "at the stitch line",
        6,
    ),
}


@pytest.mark.parametrize("name", PLIES)
def test_plies_at_a_place(name: str) -> None:
    """Each place holds the plies that geometry gives it."""
    seam, place, plies = PLIES[name]
    (work,) = works(f"  - {seam}").values()
    assert {place: pytest.approx(plies)} == {s.name: s.plies for s in work.spots if s.name == place}


def test_open_seams_that_cross_are_four_plies() -> None:
    """Two plain seams, pressed open and aligned: 2 × 2."""
    found = works(
        "  - {name: side, layers: [denim, denim], seam: plain}\n"
        "  - {name: waist, layers: [denim, denim], seam: plain, crosses: side}"
    )
    assert {"where it crosses side": 4.0} == {
        s.name: s.plies for s in found["waist"].spots if "crosses" in s.name
    }


def test_felled_seams_that_cross_are_sixteen_plies() -> None:
    """The published product: 4 × 4."""
    found = works(FELLED + "  - {name: waist, layers: [denim, denim], seam: felled, crosses: side}")
    assert [16.0] == [s.plies for s in found["waist"].spots if "crosses" in s.name]


CROSSED = [
    # the seam crossed, the seam that crosses it, plies where they meet (derived geometry)
    ("[denim, denim], seam: overlocked", "[denim, denim], seam: plain", 6),
    ("[lawn, lawn], seam: felled", "[lawn, mystery], seam: felled", 10),
    ("[lawn, lawn], seam: plain", "[denim, {use: lawn, fullness: 2.5}], seam: plain", 6),
]


@pytest.mark.parametrize(("old", "new", "plies"), CROSSED)
def test_crossings(old: str, new: str, plies: float) -> None:
    """To one side 3 + 3; felled in one panel 2 × 4 + 2; a tier adds its fullness again."""
    found = works(
        f"  - {{name: side, layers: {old}}}\n  - {{name: waist, layers: {new}, crosses: side}}"
    )
    assert [plies] == [s.plies for s in found["waist"].spots if "crosses" in s.name]


def test_a_weight_that_its_thickness_cannot_hold_is_named() -> None:
    """400 g/m² of cotton in 0.2 mm would be denser than cotton."""
    head = HEAD.replace("thickness: 0.9 mm", "thickness: 0.2 mm")
    seam = "  - {name: s, layers: [denim, lawn]}\n"
    assert [(), ("denim",)] == [works(seam, each)["s"].too_dense for each in (HEAD, head)]


def test_thickness_is_that_of_the_stack() -> None:
    """As it lies: plies times thickness; under the foot: by weight, density and packing."""
    (work,) = works("  - {name: s, layers: [denim, denim], seam: plain}").values()
    cloth = judged("  - {name: s, layers: [denim]}").garment.cloths["denim"]
    ply = ply_of(cloth, known())
    assert work.spot is not None
    assert ply is not None
    assert 1.8 == pytest.approx(work.spot.lies_mm)
    assert 2 * under_foot([ply]) == pytest.approx(work.spot.foot_mm)


def test_an_unknown_fibre_counts_by_its_lightest_candidate() -> None:
    """The least dense candidate makes the thickest stack, so that is what counts."""
    cloth = judged("  - {name: s, layers: [mystery]}").garment.cloths["mystery"]
    each = [least_density((mix,), known()) for mix in cloth.mixes]
    assert len(each) > 1
    assert min(d for d in each if d) == least_density(cloth.mixes, known())


def test_where_no_density_is_known_a_cloth_does_not_give() -> None:
    """Film yarn has no density here, so its brocade counts under the foot as it lies."""
    work = works("  - {name: s, layers: [film, film], seam: plain}")["s"]
    assert work.spot is not None
    assert work.spot.lies_mm == work.spot.foot_mm


def test_a_thin_seam_is_fine() -> None:
    """Two plies of lawn are nothing to a lift of 6 mm."""
    (work,) = works("  - {name: s, layers: [lawn, lawn]}").values()
    assert ("fine", False) == (work.room, work.squeeze)


def test_more_than_half_of_the_lift_is_a_warning() -> None:
    """Seven plies of denim: above 3 mm and below 4.5 mm."""
    seam = "  - {name: s, layers: [denim, denim, denim, denim, denim, denim, denim], seam: plain}"
    judgement = judged(seam)
    assert 3.0 < verdict(judgement, "s").pick < 4.5
    assert ["warning"] == [w.room for w in works(seam).values()]
    assert [] == [c for c in judgement.conflicts if c.aspect == "seam.bulk"]


def test_above_three_quarters_of_the_lift_is_a_conflict_with_checked_cures() -> None:
    """Sixteen plies do not go under; pressed open, or with a plain seam, fewer do."""
    advice = advised(
        FELLED + "  - {name: waist, layers: [denim, denim], seam: felled, crosses: side}"
    )
    assert [("waist", "seam.bulk")] == [
        c.key for c in advice.judgement.conflicts if c.aspect == "seam.bulk"
    ]
    cures = {cure.remedy: cure.after for cure in advice.cures["waist", "seam.bulk"]}
    assert {"press-the-crossing-open", "hand-sew"} <= set(cures)
    assert all(
        ("waist", "seam.bulk") not in {c.key for c in after.conflicts} for after in cures.values()
    )


def test_gathers_are_cured_by_a_stay_or_by_less_of_them() -> None:
    """Six times as much coating as edge: a stay takes the gathers out of the seam."""
    advice = advised("  - {name: s, layers: [denim, {use: coat, fullness: 6}], length: 60 cm}")
    cures = {cure.remedy for cure in advice.cures["s", "seam.bulk"]}
    assert {"gather-to-a-stay", "less-fullness"} <= cures


def test_a_seam_by_hand_asks_nothing_of_the_machine() -> None:
    """No foot, no lift."""
    judgement = judged("  - {name: s, layers: [denim, denim], stitched by: hand}")
    assert "seam.bulk" not in next(v for p, v in judgement.verdicts.items() if p.name == "s")


def test_a_lofty_stack_is_squeezed_in_and_is_no_conflict() -> None:
    """Three plies of thick coating lie 9 mm high and press to less than half of the lift."""
    found = works("  - {name: s, layers: [coat, coat, coat], seam: plain}")["s"]
    assert ("fine", True) == (found.room, found.squeeze)


def test_the_thickest_sewn_place_counts() -> None:
    """What lies beside the seam is not under the foot while it is sewn."""
    work = works("  - {name: s, layers: [denim, {use: lawn, fullness: 2.5}]}")["s"]
    spot = thickest(list(work.spots))
    assert spot is not None
    assert "at the stitch line" == spot.name
