"""What is cut for a piece, what is marked on it, and what its cloth and thread say of it."""

from __future__ import annotations

import math

import pytest

from advisor.answer.cutwords import cut_says
from advisor.construction.clothlist import cloths_to_buy
from advisor.construction.cutnotes import CutNote, cut_note
from advisor.construction.cutting import Cut
from advisor.construction.seamwork import seamworks
from advisor.construction.threadlist import threads_to_buy
from tests.unit.construction.build_cases import HEAD, judged, known

SEAM = "  - {name: side, layers: [lawn, lawn], length: 1 m}\n"
PILE = HEAD.replace("  mystery:", "  pile: {fabric: velvet, fibres: {cotton: 100}}\n  mystery:")


def notes(words: str, fabric: str = "denim", seams: str = SEAM) -> list[CutNote]:
    """What there is to say of one piece."""
    text = f"{seams}pieces: [{{name: p, fabric: {fabric}, {words}}}]"
    judgement = judged(text, PILE)
    (row,) = cloths_to_buy(judgement, known())
    assert row.wrong == ""
    return [cut_note(cut, judgement, known()) for cut in row.cuts]


def cut(words: str) -> Cut:
    """The one piece that is cut."""
    (note,) = notes(words)
    return note.cut


def test_tucks_take_twice_their_depth() -> None:
    """Six of 1 cm take 12 cm of the width (clothing-text-1916)."""
    found = cut("width: 20 cm, height: 9 cm, tucks: {depth: 1 cm, number: 6, spacing: 2 cm}")
    assert (320.0, 90.0) == (found.width, found.height)
    assert found.tucks is not None
    assert 120.0 == found.tucks.takes


def test_tucks_lie_in_the_middle_of_their_piece() -> None:
    """On 20 cm six at 2 cm leave 4.5 cm at each side: the first fold is one depth further in."""
    found = cut("width: 20 cm, height: 9 cm, tucks: {depth: 1 cm, number: 6, spacing: 2 cm}").tucks
    assert found is not None
    assert (55.0, 40.0) == (found.first, found.fold_to_fold)
    last = found.first + 5 * found.fold_to_fold
    # Laid, the last tuck covers its depth of flat cloth, and then there is as much as at first.
    assert 320.0 - last == 2 * found.depth + (found.first - found.depth)


def test_a_finished_piece_adds_its_seams_to_the_marks() -> None:
    """The first fold is measured from the cut edge, 15 mm outside the seam line."""
    words = "height: 9 cm, tucks: {depth: 1 cm, number: 6, spacing: 2 cm}"
    finished = words.replace("height", "finished height")
    plain, sewn = cut(f"width: 20 cm, {words}").tucks, cut(f"finished width: 20 cm, {finished}")
    assert plain is not None
    assert sewn.tucks is not None
    assert plain.first + 15 == sewn.tucks.first
    assert 200 + 30 + 120 == sewn.width


def test_a_ring_is_drawn_with_seam_and_hem() -> None:
    """A full circle on 2 pi x 10 cm less its joins: cut at 9 and 22.5 cm, from 45 cm square."""
    seam = 2 * math.pi * 100 - 20
    found = cut(f"hem: 5 mm, allowance: 1 cm, flounce: {{seam: {seam:.6f} mm, depth: 12 cm}}")
    assert found.ring is not None
    assert (90, 100, 225) == pytest.approx(
        (found.ring.cut_inner, found.ring.seam_line, found.ring.cut_outer), abs=1e-4
    )
    assert (450, 450) == pytest.approx((found.width, found.height), abs=1e-3)
    # Its join takes 2 cm of the hem as of the seam: what is hemmed is what a place of it says.
    hem = 2 * math.pi * 220 - 20
    assert (hem, hem / seam) == pytest.approx((found.ring.hem, found.ring.hem_fullness), abs=1e-3)


@pytest.mark.parametrize(
    ("turn", "wide", "high"), [(1, 2, 2), (0.75, 2, 2), (0.5, 2, 1), (0.25, 1, 1)]
)
def test_part_of_a_circle_takes_part_of_a_square(turn: float, wide: int, high: int) -> None:
    """A half circle lies on half the square, a quarter on a quarter of it."""
    found = cut(f"flounce: {{seam: 50 cm, depth: 12 cm, pieces: 2, turn: {turn}}}")
    assert found.ring is not None
    outer = found.ring.cut_outer
    assert (wide * outer, high * outer, 2) == (found.width, found.height, found.number)


def test_tiers_are_cut_one_by_one() -> None:
    """70 cm at 1.5 to 1: 105, 157.5 and 236.25 cm round, the hem on the last alone."""
    found = [
        note.cut
        for note in notes(
            "finished width: 70 cm, finished height: 60 cm, hem: 2 cm, tiers: {number: 3}"
        )
    ]
    assert ["p, tier 1", "p, tier 2", "p, tier 3"] == [each.name for each in found]
    round_ = [each.number * (each.width - 30) for each in found]
    assert [1050, 1575, 2362.5] == pytest.approx(round_)
    assert [230, 230, 235] == pytest.approx([each.height for each in found])


def test_a_doubled_ruffle_is_cut_twice_as_deep() -> None:
    """4 cm deep with 15 mm of seam: 11 cm (derived)."""
    words = "finished width: 20 cm, finished height: 4 cm, fullness: 2, doubled: yes"
    assert 110 == cut(words).height


def test_a_full_bias_strip_counts_its_fullness() -> None:
    """Cloth for a bias ruffle is that of its whole width."""
    flat, full = (
        cloths_to_buy(
            judged(
                f"{SEAM}pieces: [{{name: p, fabric: denim, finished width: 60 cm, "
                f"finished height: 9 cm, grain: bias{more}}}]"
            ),
            known(),
        )[0].length
        for more in (", joined: yes", ", joined: yes, fullness: 2")
    )
    assert flat is not None
    assert full is not None
    assert flat < full


def test_a_cloth_that_avoids_a_shape_is_named() -> None:
    """Velvet crushes in tucks; lawn does not mind."""
    words = "width: 20 cm, height: 9 cm, tucks: {depth: 1 cm, number: 2}"
    assert "tucks" in notes(words, "pile")[0].avoids
    assert () == notes(words, "lawn")[0].avoids


def test_usual_fullness_goes_by_grain() -> None:
    """A bias ruffle 1.25 to 1.33, a straight one from 1.5 (clothing-text-1916)."""
    words = "finished width: 20 cm, finished height: 4 cm, fullness: 2"
    straight, bias = notes(words)[0].usual, notes(words + ", grain: bias")[0].usual
    assert straight is not None
    assert bias is not None
    assert (1.5, 1.25, 4 / 3) == (straight.low, bias.low, bias.high)


def test_thread_of_tucks_is_bought_in_the_colour_of_their_cloth() -> None:
    """Rows, tails and 15 % are added to the thread of the seam, and the piece is named."""
    text = SEAM + "pieces: [{name: p, fabric: lawn, width: 9 cm, height: 9 cm"
    plain = judged(text + "}]")
    tucked = judged(text + ", tucks: {depth: 1 cm, number: 2}}]")
    (row,) = cloths_to_buy(tucked, known())
    (note,) = [cut_note(each, tucked, known()) for each in row.cuts]
    (before,) = threads_to_buy(plain, seamworks(plain, known()), known())
    (after,) = threads_to_buy(tucked, seamworks(tucked, known()), known(), [note])
    assert note.thread is not None
    assert before.total + 1.15 * note.thread.total / 1000 == pytest.approx(after.total)
    assert (("p",), "white") == (after.tucks, after.colour)


def test_tucks_of_a_cloth_in_no_seam_have_no_thread() -> None:
    """Nothing says how it is sewn, so nothing is guessed."""
    (note,) = notes("width: 9 cm, height: 9 cm, tucks: {depth: 1 cm, number: 2}", "denim")
    assert note.thread is None


@pytest.mark.parametrize(("hem", "said"), [("3 mm", "3.0 % to ease in"), ("30 mm", "too much")])
def test_a_curved_hem_tells_what_it_has_too_much(hem: str, said: str) -> None:
    """On an edge of radius 206 mm 3 mm have 3 % to ease; 30 mm are more than cloth eases."""
    (note,) = notes(
        f"flounce: {{seam: 50 cm, depth: 12 cm, pieces: 2, turn: 0.5}}, hem: {hem}, allowance: 1 cm"
    )
    assert any(said in text for text in cut_says(note, "metric"))
