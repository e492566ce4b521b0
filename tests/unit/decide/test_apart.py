"""Judgements apart from a garment: what judging anew would say, and judged once."""

from __future__ import annotations

import dataclasses

import pytest
from msgspec.structs import replace

from advisor.decide import apart
from advisor.decide.apart import judge_apart
from advisor.decide.evaluate import judge
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment
from advisor.project.quick import quick_garment
from advisor.project.wished import Wishes
from tests.typed import shipped


@pytest.fixture(scope="module")
def known() -> Knowledge:
    return shipped()


@pytest.fixture
def judged(monkeypatch: pytest.MonkeyPatch) -> list[Garment]:
    """Every garment that was really judged, beginning with nothing kept."""
    found: list[Garment] = []

    def counted(garment: Garment, *about: object) -> object:
        found.append(garment)
        return judge(garment, *about)  # type: ignore[arg-type]

    monkeypatch.setattr(apart, "_KEPT", apart._Kept())
    monkeypatch.setattr(apart, "judge", counted)
    return found


def test_an_equal_garment_is_judged_once(known: Knowledge, judged: list[Garment]) -> None:
    """It gets the verdicts that judging it anew would give."""
    for _ in range(3):
        found = judge_apart(quick_garment(["linen suiting", "organza"], known), known)
    assert 1 == len(judged)
    assert judge(quick_garment(["linen suiting", "organza"], known), known).verdicts == (
        found.verdicts
    )


def test_whatever_differs_is_judged_by_itself(known: Knowledge, judged: list[Garment]) -> None:
    """Another fact of a cloth or of the maker, other units, another knowledge."""
    plain = quick_garment(["linen suiting"], known)
    name, cloth = next(iter(plain.cloths.items()))
    heavy = replace(plain, cloths={name: replace(cloth, weight=(400.0, 400.0))})
    industrial = quick_garment(["linen suiting"], known, maker={"machine": "industrial"})
    for garment in (plain, heavy, industrial, replace(plain, units="us")):
        judge_apart(garment, known)
    judge_apart(plain, known.told("us"))
    judge_apart(plain, known)
    assert 6 == len(judged)


def test_a_step_that_is_ticked_lets_every_judgement_stand(
    known: Knowledge, judged: list[Garment]
) -> None:
    """What is wished of the order of work has no part in a judgement."""
    plain = quick_garment(["linen suiting"], known)
    found = judge_apart(plain, known)
    ticked = replace(plain, wishes=Wishes(done=("cut shell",), sitting=45.0))
    assert judge(ticked, known).verdicts == judge_apart(ticked, known).verdicts == found.verdicts
    assert 1 == len(judged)


def test_no_more_is_kept_than_there_is_room_for(
    known: Knowledge, judged: list[Garment], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The seam that was judged longest ago is judged anew."""
    monkeypatch.setattr(apart, "MOST_SEAMS", 1)
    for fabric in ("linen suiting", "organza", "organza", "linen suiting"):
        judge_apart(quick_garment([fabric], known), known)
    assert 3 == len(judged)


def test_a_change_is_judged_as_if_nothing_had_been(known: Knowledge) -> None:
    """What stood before a change at the page saves asking, and leaves no trace in the answer."""
    garment = quick_garment(["silk organza", "linen suiting"], known)
    other = quick_garment(["silk organza", "cotton velveteen"], known)
    for one in (garment, replace(other, name=garment.name), garment):
        found = apart.judge_again(one, known)
        assert (found, found.gathered.said) == (judge(one, known), judge(one, known).gathered.said)


def test_few_garments_are_kept(known: Knowledge, judged: list[Garment]) -> None:
    """A page over a folder of many keeps the judgements of the last few, and of one knowledge."""
    garment = quick_garment(["linen suiting"], known)
    for number in range(2 * apart.MOST_GARMENTS):
        apart.judge_again(replace(garment, name=str(number)), known)
    assert apart.MOST_GARMENTS == len(apart._KEPT.whole)
    apart.judge_again(garment, dataclasses.replace(known))
    assert 1 == len(apart._KEPT.whole)
