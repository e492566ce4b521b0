"""The needle against the stack that it goes through, and what is said of a thick or weak seam."""

from __future__ import annotations

from advisor.answer.seamwords import bulk_clause, seam_says, warnings
from advisor.construction.needlestack import STEPS, needed_needle
from advisor.construction.stack import TAPE_MM
from tests.unit.construction.build_cases import HEAD, advised, judged, works

SHEER = HEAD.replace("seams:", "  sheer: {fabric: chiffon, fibres: {silk: 100}}\nseams:")
OVER = "  - {name: s, layers: [denim, denim, denim, denim, denim, denim, sheer], length: 40 cm}"


def test_a_thicker_stack_never_takes_a_finer_needle() -> None:
    """Both sizes rise with the thickness, and below the first step the stack says nothing."""
    heights = [0.1 * i for i in range(80)]
    found = [needed_needle(mm) for mm in heights]
    assert sorted(found) == found
    assert (0.0, 0.0) == needed_needle(min(step[0] for step in STEPS) - 0.01)


def test_the_stack_speaks_of_the_needle() -> None:
    """Two plies of lawn leave the needle to the cloth; six of denim ask for a thicker one."""
    found = []
    for layers in ("lawn, lawn", "denim, denim, denim, denim, denim, denim"):
        judgement = judged(f"  - {{name: s, layers: [{layers}]}}")
        said = next(said for place, said in judgement.gathered.said.items() if place.name == "s")
        found.append(
            [
                (s.claim.strength, s.claim.sources)
                for s in said["needle.size"]
                if s.claim.origin == "bulk"
            ]
        )
    wishes = [("should", ("estimate",))] * 2  # the size that suits, and one finer
    assert [[], [*wishes, ("must", ("estimate",))]] == found


def test_a_needle_that_the_sheer_keeps_fine_is_an_eye_caution() -> None:
    """Chiffon wants a fine needle and six plies of denim a thick one: it is said, with glasses."""
    work = works(OVER, SHEER)["s"]
    assert work.fine_needle is not None
    assert work.fine_needle[0] < work.fine_needle[1]
    said = warnings(work, "metric")[0]
    assert said.startswith("Eye: over the thickest place turn the hand wheel, with glasses on")
    assert all(f"{size:g}" in said for size in work.fine_needle)


def test_a_zip_counts_by_its_tape() -> None:
    """Its teeth are never sewn over, so a zip in a light seam is no clash of bulk."""
    seam = "  - {name: s, layers: [lawn, {notion: coil zip}, lawn], length: 30 cm}"
    work = works(seam)["s"]
    end = next(s for s in work.spots if s.name == "at the end of the zip")
    assert (6.0, 4 * 0.2 + 2 * TAPE_MM, "fine") == (end.plies, end.lies_mm, work.room)


def test_a_stack_higher_than_the_lift_is_not_called_fine() -> None:
    """Three plies of thick coating press down far enough, but lie higher than the foot lifts."""
    work = works("  - {name: s, layers: [coat, coat, coat], seam: plain}")["s"]
    assert work.squeeze
    assert bulk_clause(work, "metric").endswith("under the foot: goes in pressed down")


def test_an_unknown_strength_in_a_pulled_place_is_a_warning() -> None:
    """No figure for a zigzag: where the place is pulled hard that is said on the close sheet."""
    seam = "  - {{name: s, layers: [lawn, lawn], stress: {}, length: 30 cm, stitch: '304'}}"
    hard, slack = (works(seam.format(stress))["s"] for stress in ("high", "low"))
    assert hard.holding.has is None
    assert [True] == [text.startswith("Strength not known") for text in warnings(hard, "metric")]
    assert [] == warnings(slack, "metric")
    assert any("Pull a sewn scrap" in text for text in seam_says(slack, "metric"))


def test_the_overlocker_takes_the_folds_out_of_a_seam_that_is_too_thick() -> None:
    """Felled denim on felled denim is cured by an overlocked seam, if there is an overlocker."""
    seam = (
        "  - {name: side, layers: [denim, denim], seam: plain}\n"
        "  - {name: waist, layers: [denim, denim, denim, denim, denim], seam: felled}"
    )
    without = HEAD.replace(", overlocker: 4-thread", "")
    found = [
        "overlock-to-flatten" in {c.remedy for c in advised(seam, head).cures["waist", "seam.bulk"]}
        for head in (HEAD, without)
    ]
    assert [True, False] == found
