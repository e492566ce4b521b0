"""A reel of the maker's own rack for a cloth, and places that share one."""

from __future__ import annotations

from dataclasses import replace

import pytest

from advisor.answer.making import told_shopping
from advisor.answer.teller import Teller
from advisor.construction.rack import from_rack, lab_of_reel
from advisor.craft.colour import Lab, matches
from advisor.decide.advise import advise
from advisor.knowledge.mine import Mine, Reel, read_colour, reel_of
from advisor.knowledge.model import Knowledge
from advisor.order.work import order_of
from tests.unit.construction.build_cases import judged, known

HEAD = (
    "garment: Blue\nfabrics:\n"
    '  skirt: {fabric: lawn, fibres: {cotton: 100}, colour: "#27455f"}\n'
    '  top: {fabric: lawn, fibres: {cotton: 100}, colour: "#2a4862"}\nseams:\n'
)
SEAMS = (
    "  - {name: skirt side, layers: [skirt, skirt], length: 1 m}\n"
    "  - {name: top side, layers: [top, top], length: 1 m}\n"
)


def with_rack(*reels: Reel, near: float | None = None) -> Knowledge:
    """The knowledge with some reels in her own folder."""
    plain = {**known().plain, "mine": {}}
    fresh = replace(known(), plain=plain)
    from advisor.knowledge.model import from_plain

    fresh = from_plain(plain)
    fresh.registers.__dict__["mine"] = Mine(reels, near)
    return fresh


def test_a_reel_is_written_with_its_colour() -> None:
    """A code or measured figures behind its name, perhaps fibre and size; a word is by eye."""
    navy = reel_of("navy #1a1f33")
    lab = lab_of_reel(navy)
    assert lab is not None
    assert ("navy", pytest.approx(12.25, abs=0.1)) == (navy.name, lab.lightness)
    assert Reel("old gold", "", (61.3, 3.7, -5.4)) == reel_of("old gold 61.3 3.7 -5.4")
    fibres = ("polyester", "core-spun polyester", "cotton")
    assert Reel("navy", "#1a1f33", None, "polyester", 25.0) == reel_of(
        "navy #1a1f33 polyester ticket 120", fibres
    )
    assert Reel("some red") == reel_of("some red")


@pytest.mark.parametrize("text", ["", "navy", "#12", "#12345g", "101 0 0", "50 200 0", "50 0"])
def test_what_is_no_colour_is_refused(text: str) -> None:
    """Neither a code nor L*, a*, b* that a dye can have."""
    with pytest.raises(ValueError, match=r"as in|from 0"):
        read_colour(text)


def test_slightly_darker_goes_before_lighter() -> None:
    """Of two reels as far away the darker is named first; an unseen one before both."""
    cloth = Lab(50, 0, 0)
    reels = [("lighter", Lab(51.5, 0, 0)), ("darker", Lab(48, 0, 0)), ("same", Lab(50.2, 0, 0))]
    found = matches(cloth, reels)
    assert ["same", "darker", "lighter"] == [match.name for match in found]
    assert ("nobody sees the difference", "seen on close inspection") == (
        found[0].seen,
        found[1].seen,
    )
    assert [True, True, False] == [match.suits for match in found]


def test_what_is_far_away_is_no_match() -> None:
    """Red is offered for no blue cloth; a colour that is only a word takes a reel of that word."""
    reels = [Reel("red", "#c01020"), Reel("mine", "#26445e"), Reel("navy", "#27455f")]
    assert () == from_rack("#27455f", reels[:1])
    assert ["navy"] == [one.reel.name for one in from_rack("navy", reels)]
    assert [None] == [one.found for one in from_rack("navy", reels)]
    assert ["mine"] == [one.reel.name for one in from_rack("#27455f", reels[:2])]


def test_the_shopping_list_names_the_reel_that_she_has() -> None:
    """Its difference and what an eye sees of it, from the kit of the project."""
    kit = 'kit: {threads: ["midnight #223f58", "red #c01020"]}'
    judgement = judged(f"{SEAMS.splitlines()[0]}\n{kit}", HEAD)
    bought = told_shopping(judgement, Teller(judgement.garment, known()))
    ((reel,),) = [row.rack for row in bought.thread]
    assert ("midnight", True, True, "") == (reel.name, reel.darker, reel.suits, reel.wrong)
    assert reel.difference is not None
    assert 0 < reel.difference < 4
    assert {"sharma-2005", "colour-tolerance-page"} <= set(reel.sources)


def test_a_reel_of_a_wrong_fibre_or_size_is_told_so() -> None:
    """The colour alone does not make a thread: bonded nylon does not suit a cotton lawn."""
    kit = 'kit: {threads: ["a #27455f bonded nylon tex 90", "b #27455f polyester tex 18"]}'
    judgement = judged(f"{SEAMS.splitlines()[0]}\n{kit}", HEAD)
    bought = told_shopping(judgement, Teller(judgement.garment, known()))
    rack = bought.thread[0].rack
    assert [("b", ""), ("a", "it is bonded nylon")] == [(r.name, r.wrong) for r in rack]
    assert ("polyester", 18.0) == (bought.thread[0].fibre, bought.thread[0].tex)


@pytest.mark.parametrize(("near", "colours"), [("0", 2), ("0.5", 2), ("2", 1)])
def test_she_sets_how_near_a_shared_thread_is(near: str, colours: int) -> None:
    """Two blues 1.2 apart take two threads, or one where she lets them share it."""
    judgement = judged(f"{SEAMS}kit: {{thread near: {near}}}", HEAD)
    bought = told_shopping(judgement, Teller(judgement.garment, known()))
    assert colours == len(bought.thread)
    shared = [one for row in bought.thread for one in row.shared]
    assert (colours == 1) == bool(shared)


def test_a_shared_thread_is_threaded_once() -> None:
    """The order of work changes the thread once less, and its price falls by that much."""
    apart = judged(f"{SEAMS}kit: {{thread near: 0}}", HEAD).garment
    near = judged(f"{SEAMS}kit: {{thread near: 2}}", HEAD).garment
    two, one = (order_of(advise(garment, known()), known()) for garment in (apart, near))
    assert 3.0 == two.plan.cost - one.plan.cost
    assert 1 == len({t.step.machine.thread_above for t in one.tasks.values() if t.step.machine})


def test_the_rack_of_her_folder_counts() -> None:
    """A reel of `threads.yaml` suits both cloths, and is what the steps name."""
    knowledge = with_rack(Reel("dusk", "#253f58", None, "polyester", 18.0), near=4.0)
    garment = judged(SEAMS, HEAD).garment
    advice = advise(garment, knowledge)
    assert {"dusk"} == {shade.colour for shade in advice.judgement.shades.values()}
    work = order_of(advice, knowledge)
    threads = {t.step.machine.thread_above for t in work.tasks.values() if t.step.machine}
    assert {"polyester tex 18 from the reel dusk"} == threads


def test_a_reel_that_does_not_suit_is_not_shared() -> None:
    """A bonded nylon reel of just the colour is never what two lawns are sewn with."""
    knowledge = with_rack(Reel("strong", "#27455f", None, "bonded nylon", 90.0), near=3.0)
    shades = advise(judged(SEAMS, HEAD).garment, knowledge).judgement.shades
    assert "strong" not in {shade.colour for shade in shades.values()}
