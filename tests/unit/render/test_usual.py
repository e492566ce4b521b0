"""What most seams share is said once, and what differs is always said."""

from __future__ import annotations

from advisor.answer.model.told import ToldVerdict
from advisor.render.usual import own_parts, usual_answers
from tests.told import verdict_row

Verdicts = dict[str, ToldVerdict]
ASPECTS = ("machine.foot", "machine.pressure", "stitch.length", "needle.size", "thread.fibre")


def seam(**answers: str) -> Verdicts:
    """The verdicts of a seam, with a point written as two underscores."""
    return {
        key.replace("__", "."): verdict_row(key.replace("__", "."), text)
        for key, text in answers.items()
    }


def texts(verdicts: Verdicts, usual: dict[str, str]) -> list[str]:
    return [text for text, _ in own_parts(verdicts, ASPECTS, usual)]


def test_more_than_half_is_usual() -> None:
    """Three of four seams make an answer usual; two of four do not."""
    seams = [seam(stitch__length="2.5 mm")] * 3 + [seam(stitch__length="3 mm")]
    assert {"stitch.length": "2.5 mm"} == usual_answers(seams, ASPECTS)
    assert {} == usual_answers([*seams[1:], seam(stitch__length="3 mm")], ASPECTS)


def test_a_few_seams_have_nothing_in_common() -> None:
    """With three seams each says its own."""
    assert {} == usual_answers([seam(stitch__length="2.5 mm")] * 3, ASPECTS)


def test_the_needle_is_never_usual() -> None:
    """Each seam names its needle, however many share it."""
    assert {} == usual_answers([seam(needle__size="90 (US 14)")] * 5, ASPECTS)


def test_an_answer_that_some_seam_lacks_is_not_usual() -> None:
    """A seam without any stitch length must not seem to have the others'."""
    sewn = seam(needle__size="90 (US 14)")
    assert {} == usual_answers([*[seam(stitch__length="2.5 mm")] * 4, sewn], ASPECTS)


def test_a_place_that_no_machine_works_neither_has_nor_hinders_the_usual() -> None:
    """A button has no stitch: the others still share theirs, and it says nothing of any."""
    usual = usual_answers([*[seam(stitch__length="2.5 mm")] * 4, seam()], ASPECTS)
    assert {"stitch.length": "2.5 mm"} == usual
    assert [] == texts(seam(), usual)


def test_a_seam_that_differs_says_so_even_where_that_goes_without_saying() -> None:
    """Where light pressure is usual, a seam of medium pressure says medium."""
    light = seam(machine__pressure="light")
    sewn = seam(stitch__type="301")
    usual = usual_answers([*[light] * 4, sewn], ASPECTS)
    assert {"machine.pressure": "light"} == usual
    assert [] == texts(light, usual)
    assert ["medium pressure"] == texts(sewn, usual)


def test_two_threads_in_another_order_are_the_same_two() -> None:
    """Polyester or core-spun is no other answer than core-spun or polyester."""
    one = seam(thread__fibre="polyester, core-spun polyester or silk")
    other = seam(thread__fibre="core-spun polyester, polyester or cotton")
    usual = usual_answers([one, other, one, other], ASPECTS)
    assert [] == texts(one, usual)
    assert [] == texts(other, usual)
