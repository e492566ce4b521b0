"""Laws of the order of work on real projects: the demo projects in any order of their file."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from advisor.decide.advise import advise
from advisor.order.graph import build
from advisor.order.search import plan_graph
from advisor.order.steps import Precedence
from advisor.order.work import QUICK, Work, order_of
from advisor.project.garment import Garment
from advisor.project.load import load_project
from tests.unit.order.order_projects import DEMOS, SMALL, demo, demo_names, known, work_of

works = st.sampled_from(demo_names()).map(demo) | st.sampled_from(sorted(SMALL)).map(
    lambda name: work_of(SMALL[name])
)


@st.composite
def shuffled(draw: st.DrawFn) -> tuple[str, Garment]:
    """A demo project with its seams and cloths in another order, and perhaps fewer seams."""
    name = draw(st.sampled_from(demo_names()))
    garment = load_project(DEMOS / f"{name}.yaml", known())
    seams = draw(st.permutations(garment.seams))
    cloths = {key: garment.cloths[key] for key in draw(st.permutations(sorted(garment.cloths)))}
    return name, replace(garment, seams=tuple(seams), cloths=cloths)


def shown(work: Work) -> tuple[object, ...]:
    return work.order, [work.tasks[name].step for name in work.order], work.plan


@settings(max_examples=8)
@given(shuffled())
def test_the_order_of_the_file_never_matters(case: tuple[str, Garment]) -> None:
    """Seams and cloths listed in any order give the same steps in the same order."""
    name, garment = case
    assert shown(demo(name)) == shown(order_of(advise(garment, known()), known()))


@settings(max_examples=12)
@given(shuffled(), st.data())
def test_any_part_of_a_garment_can_be_ordered(
    case: tuple[str, Garment], data: st.DataObject
) -> None:
    """Whatever seams are left out: a permutation that keeps every precedence, never dearer."""
    _, garment = case
    count = data.draw(st.integers(1, len(garment.seams)))
    work = order_of(advise(replace(garment, seams=garment.seams[:count]), known()), known())
    place = {name: k for k, name in enumerate(work.order)}
    assert sorted(work.tasks) == sorted(work.order)
    assert all(place[p.before] < place[p.after] for p in work.graph.precedences)
    assert work.plan.bound <= work.plan.cost <= work.plan.plain_cost
    assert () == work.cycles


NO_WAY_BACK = frozenset({"past recall", "cut into what is fitted"})
"""Tags of what nothing puts right at a fitting."""


@settings(max_examples=12)
@given(shuffled(), st.data(), st.sampled_from(["to the body", "loosely", "not at all"]))
def test_nothing_past_recall_comes_before_a_fitting(
    case: tuple[str, Garment], data: st.DataObject, degree: str
) -> None:
    """Whatever parts are there and however fitted; and each place keeps its method's stages."""
    _, garment = case
    count = data.draw(st.integers(1, len(garment.seams)))
    part = replace(garment, seams=garment.seams[:count], fitting=degree)
    work = order_of(advise(part, known()), known())
    at = {name: k for k, name in enumerate(work.order)}
    assert ("fit" in at) == (degree != "not at all")
    past = [name for name, task in work.tasks.items() if task.tags & NO_WAY_BACK]
    assert all(at["fit"] < at[name] for name in past)
    assert not (past and degree == "not at all")
    by_place: dict[str, list[int]] = {}
    for name in work.order:
        task = work.tasks[name]
        if task.place is not None:
            by_place.setdefault(task.place.name, []).append(task.stage)
    assert all(stages == sorted(set(stages)) for stages in by_place.values())


@settings(max_examples=15)
@given(works, st.data())
def test_one_more_precedence_never_makes_an_order_cheaper(work: Work, data: st.DataObject) -> None:
    """Any two steps tied as they stand in another lawful order: the least price does not fall."""
    first = data.draw(st.sampled_from(work.order))
    free = [n for n in work.order if n != first and n not in work.graph.forced_before(first)]
    second = data.draw(st.sampled_from(free or [first]))
    if first == second:
        return
    tied = build(work.graph.steps, [*work.graph.precedences, Precedence(first, second)])
    found = plan_graph(tied, work.setting, QUICK)
    assert work.plan.bound <= found.cost
    assert work.plan.optimal


@settings(max_examples=10)
@given(works, st.floats(20, 400))
def test_sittings_hold_the_whole_order(work: Work, length: float) -> None:
    """Cut in any length, nothing is lost, doubled or moved."""
    sittings = work.sittings(length)
    assert list(work.order) == [name for sitting in sittings for name in sitting.steps]
    assert all(s.minutes <= length + 1e-6 or s.over > 0 for s in sittings)
