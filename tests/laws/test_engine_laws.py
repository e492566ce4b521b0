"""Laws of combining, on garments drawn at random from the shipped knowledge."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from functools import reduce
from itertools import combinations
from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from advisor.claims.claimsets import ValueSet, full_set, insisted, meet, set_of
from advisor.claims.collect import Place
from advisor.claims.conflicts import NO_METHOD, Spot, smallest_clash
from advisor.claims.hungup import HUNG
from advisor.claims.judgement import Advice, Judgement
from advisor.claims.placefacts import VELVETS
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Choice, Span
from advisor.construction.threadshare import THREADS
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.knowledge.model import LIMIT_ASPECT, Aspect, Claim
from advisor.project.garment import Garment
from tests.laws.engine_garments import (
    TAKEN,
    beside_velvet,
    carries_weight,
    cloths,
    expected_fired,
    facing_seen,
    garments,
    holds_a_cord,
    known,
    lies_flat,
    main_fibre_known,
    raw_rules,
    shuffled,
    uses,
)

law = settings(max_examples=60, deadline=None, derandomize=True, database=None)
BESIDE = "interfacing.kind"
"""The one aspect on which only neighbours are heard: what is glued concerns what it is glued to."""

BULK = "seam.bulk"
"""How thick a stack is hangs on the kind of seam that was picked: plain is thinner than French."""
THREAD = frozenset({"thread.fibre", "thread.size"})
"""Matched to the cloth that lies outside."""
HIDDEN = frozenset({"seam.kind", "seam.finish"})
"""What a layer that lies between two others does not show, so that it does not wish it."""

few = settings(law, max_examples=25)

spans = st.tuples(st.integers(0, 12), st.integers(0, 12)).map(lambda t: Span(*map(float, t)))
choices = st.integers(0, 255).map(Choice)
alike = st.one_of(st.tuples(spans, spans, spans), st.tuples(choices, choices, choices))


@law
@given(alike)
def test_meeting_is_commutative_associative_and_idempotent(sets: Any) -> None:
    """A meet does not depend on order or grouping, and the same set twice is the set."""
    a, b, c = sets
    assert meet(a, b) == meet(b, a)
    assert meet(meet(a, b), c) == meet(a, meet(b, c))
    assert a == meet(a, a)


@law
@given(alike)
def test_meeting_never_widens(sets: Any) -> None:
    """What two sets share lies in both, and nothing else that lies in both is left out."""
    a, b, _ = sets
    both = meet(a, b)
    assert both <= a
    assert both <= b
    for x in range(13):
        assert (x in both) == (x in a and x in b)


def guards(aspect: Aspect, said: list[Said]) -> ValueSet:
    """What is left by everything that guards against damage or injury."""
    kept = [left for s in said if s.claim.guards and (left := insisted(aspect, s.claim))]
    return reduce(meet, kept, full_set(aspect))


def within(small: ValueSet, large: ValueSet) -> bool:
    """Whether a set of an aspect leaves no more than another of the same aspect."""
    if isinstance(small, Span):
        assert isinstance(large, Span)
        return small <= large
    assert isinstance(large, Choice)
    return small <= large


def said_of(judgement: Judgement, place: Place, aspect: str) -> list[Said]:
    return list(judgement.gathered.said.get(place, {}).get(aspect, []))


def pressed_of(judgement: Judgement, place: Place, aspect: str) -> list[Said]:
    """What is said of a place, but of a whole garment nothing by what its last press leaves."""
    left = {n for told in judgement.instructions if told.kind == HUNG for n in told.tender}
    said = said_of(judgement, place, aspect)
    return [s for s in said if place.scope != "garment" or not s.cloths or not s.cloths <= left]


def not_of_every(said: list[Said]) -> list[Said]:
    """Without the rules that speak only while every layer is of one kind."""
    silent = {f"rule {id_}" for id_, raw in raw_rules().items() if "every" in raw["when"]}
    return [s for s in said if s.claim.origin not in silent]


@law
@given(st.data())
def test_a_layer_added_never_widens_what_guards_allow(data: st.DataObject) -> None:
    """In every place and on every aspect: what guards against harm only ever narrows.

    What a rule says of seams where *every* layer is of one kind can fall silent when another
    kind comes in; that is what `every` means, and only such rules are left out.
    """
    before, after, apart = _with_a_layer(data)
    for place, by_aspect in before.verdicts.items():
        for name, verdict in by_aspect.items():
            if not (apart and name == BESIDE):
                old = guards(verdict.aspect, not_of_every(said_of(before, place, name)))
                new = guards(verdict.aspect, not_of_every(said_of(after, place, name)))
                assert within(new, old), f"{place} {name}: {old} became {new}"


@law
@given(st.data())
def test_a_layer_added_never_widens_a_verdict(data: st.DataObject) -> None:
    """Where nothing clashes afterwards, `allowed` has narrowed, and no clash has gone away.

    Where musts clash, needs are given up and what is allowed lies inside what the guards leave.
    """
    before, after, apart = _with_a_layer(data)
    for place, by_aspect in after.verdicts.items():
        if not _holds_a_cloth(before, place):
            continue  # glue or thread alone is no seam: a cloth that comes in takes its place
        for name, new in by_aspect.items():
            assert within(new.allowed, guards(new.aspect, pressed_of(after, place, name)))
            old = before.verdicts.get(place, {}).get(name)
            said = said_of(before, place, name)
            if (
                old is None
                or new.clash
                or name == BULK
                or name in HIDDEN
                or said != not_of_every(said)
                or (apart and name == BESIDE)
            ):
                continue
            assert not old.clash, f"{place} {name}: a layer more has cured a clash"
            assert within(new.allowed, old.allowed), f"{place} {name}"


@law
@given(st.data())
def test_a_layer_added_never_raises_an_iron_limit(data: st.DataObject) -> None:
    """The hottest that is allowed in a seam and in the last press stays or falls, clash or not."""
    before, after, _ = _with_a_layer(data)
    for place, by_aspect in before.verdicts.items():
        if LIMIT_ASPECT in by_aspect:
            old, new = by_aspect[LIMIT_ASPECT], after.verdicts[place][LIMIT_ASPECT]
            assert new.allowed.high <= old.allowed.high, f"{place}"  # type: ignore[union-attr]


def _holds_a_cloth(judgement: Judgement, place: Place) -> bool:
    """Whether a seam held a cloth before, and a garment one that its last press does not leave."""
    garment = judgement.garment
    names = {c for s in garment.seams if s.name == place.name for c in s.cloths()}
    names = names if place.scope == "seam" else {*garment.cloths}
    entries = [known().entries[garment.cloths[name].entry] for name in names]
    pressed = [entry for entry in entries if place.scope == "seam" or entry.family != VELVETS]
    return any(entry.kind == "cloth" for entry in pressed)


def _with_a_layer(data: st.DataObject) -> tuple[Judgement, Judgement, bool]:
    """A garment before and after one more layer, and whether it has parted two neighbours."""
    garment = data.draw(garments())
    extra = data.draw(cloths("extra"))
    use = data.draw(uses(["extra", *garment.cloths]))
    at = data.draw(st.integers(0, len(garment.seams) - 1))
    old = garment.seams[at]
    where = data.draw(st.integers(0, len(old.uses)))
    wider = replace(old, uses=(*old.uses[:where], use, *old.uses[where:]))
    seams = (*garment.seams[:at], wider, *garment.seams[at + 1 :])
    more = {**garment.cloths, "extra": extra} if use.cloth == "extra" else garment.cloths
    changed = replace(garment, cloths=more, seams=seams)
    return judge(garment, known()), judge(changed, known()), 0 < where < len(old.uses)


def words_of(said: tuple[Said, ...]) -> Counter[Any]:
    """What was said, whatever the order in which it was said."""
    return Counter((s.who, s.claim, frozenset(s.facts), s.certain, s.cloths) for s in said)


@law
@given(st.data())
def test_the_order_of_writing_never_matters(data: st.DataObject) -> None:
    """Cloths, seams and layers in another order: the same answers, reasons and conflicts.

    Only an interfacing asks which layers it lies against; where one of the two is ruled out by
    that, nothing is fused and no time under the iron is told. What lies hidden between two others
    hangs on the order as well, with the room that its finish needs, and so do the bulk of the seam
    and the thread of the outer cloth.
    """
    garment = data.draw(garments())
    other = shuffled(data.draw, garment)
    one, two = judge(garment, known()), judge(other, known())
    alike = ruled_out(one) == ruled_out(two)
    laid = {BESIDE, BULK, *HIDDEN, *THREAD}
    if picks_of(one, HIDDEN) != picks_of(two, HIDDEN):
        laid.add("seam.allowance")
    assert_alike(one, two, without=laid if alike else {*laid, "press.dwell"})


def picks_of(judgement: Judgement, aspects: Iterable[str]) -> dict[str, list[float | None]]:
    """What is picked on some aspects at every place."""
    return {
        place.name: [found[name].pick for name in sorted(aspects) if name in found]
        for place, found in judgement.verdicts.items()
    }


def ruled_out(judgement: Judgement) -> set[str]:
    """The places whose interfacing some layer beside it rules out."""
    return {
        place.name
        for place, found in judgement.verdicts.items()
        if BESIDE in found and found[BESIDE].clash
    }


@law
@given(st.data())
def test_a_stack_turned_over_is_the_same_stack(data: st.DataObject) -> None:
    """Where every layer keeps its neighbours there is no exception."""
    garment = data.draw(garments())
    other = shuffled(data.draw, garment, upside_down=True)
    assert_alike(judge(garment, known()), judge(other, known()), without=set())


def assert_alike(one: Judgement, two: Judgement, without: set[str]) -> None:
    """Both say the same of every place, but for some aspects."""
    assert set(one.verdicts) == set(two.verdicts)
    for place, by_aspect in one.verdicts.items():
        left = {n: v for n, v in by_aspect.items() if n not in without}
        right = {n: v for n, v in two.verdicts[place].items() if n not in without}
        assert list(left) == list(right)
        for name, verdict in left.items():
            other = right[name]
            assert verdict.allowed == other.allowed
            if name in THREADS:
                # Its colour is that of the first layer, and with places of that it is shared.
                continue
            assert verdict.advised == other.advised
            assert verdict.pick == other.pick
            assert words_of(verdict.because) == words_of(other.because)
            assert words_of(verdict.given_up) == words_of(other.given_up)
    assert conflicts_of(one, without) == conflicts_of(two, without)


def conflicts_of(judgement: Judgement, without: set[str]) -> list[Any]:
    """Every conflict with the claims that it names."""
    return sorted(
        (one.id, one.severity, [s.key for s in one.clash], sorted(c.spots))
        for c in judgement.conflicts
        for one in (c, *c.also)
        if not set(c.aspects) & without
    )


@few
@given(st.data())
def test_the_order_of_writing_never_changes_a_cure(data: st.DataObject) -> None:
    """A stack turned over, cloths and seams in another order: the same remedies in the same order.

    Layers keep their neighbours here, because what is fused first, and to what, depends on who
    lies beside the glue.
    """
    garment = data.draw(garments())
    other = shuffled(data.draw, garment, upside_down=True)
    one, two = (advise(g, known()) for g in (garment, other))
    assert remedies_of(one) == remedies_of(two)


def remedies_of(advice: Advice) -> dict[frozenset[Spot], list[str]]:
    """The remedies of each conflict; which of its places it is named after hangs on the order."""
    return {
        frozenset(c.spots): [cure.remedy for cure in advice.cures[c.key]]
        for c in advice.judgement.conflicts
    }


@law
@given(garments())
def test_a_range_conflict_is_always_a_pair(garment: Garment) -> None:
    """On a range or a scale two claims clash: one's floor lies above the other's ceiling."""
    for conflict in judge(garment, known()).conflicts:
        if conflict.aspect != NO_METHOD and known().aspects[conflict.aspect].kind != "options":
            floor, ceiling = conflict.clash
            assert floor.claim.span is not None
            assert ceiling.claim.span is not None
            assert floor.claim.span[0] > ceiling.claim.span[1]


@law
@given(garments())
def test_every_proper_subset_of_a_conflict_can_be_satisfied(garment: Garment) -> None:
    """The set that is named leaves nothing, and without any one of it something is left."""
    for conflict in judge(garment, known()).conflicts:
        if conflict.aspect != NO_METHOD:
            assert_smallest(known().aspects[conflict.aspect], conflict.clash)


def assert_smallest(aspect: Aspect, clash: tuple[Said, ...]) -> None:
    """The whole clashes and no part of it does."""
    assert left_by(aspect, clash).is_empty
    for size in range(len(clash)):
        for part in combinations(clash, size):
            assert not left_by(aspect, part).is_empty


def left_by(aspect: Aspect, said: tuple[Said, ...]) -> ValueSet:
    """What some claims leave together."""
    return reduce(meet, (set_of(s.claim) for s in said), full_set(aspect))


@law
@given(st.lists(st.integers(1, 254), min_size=2, max_size=7, unique=True))
def test_a_clash_of_options_is_named_by_its_smallest_set(masks: list[int]) -> None:
    """Whatever the options: the set that is named is empty, minimal, and no smaller one exists."""
    aspect = replace(known().aspects["needle.point"], words=tuple("abcdefgh"))
    said = tuple(
        Said(
            f"{i}",
            Claim(aspect.id, None, mask, None, "must", "damage", "", ("derived",), 1, f"{i}"),
        )
        for i, mask in enumerate(masks)
    )
    assume(left_by(aspect, said).is_empty)
    found = smallest_clash(aspect, said)
    assert_smallest(aspect, found)
    for size in range(len(found)):
        for part in combinations(said, size):
            assert not left_by(aspect, part).is_empty


@few
@given(garments())
def test_each_remedy_offered_cures_when_it_is_applied_again(garment: Garment) -> None:
    """The changed garment judged anew has lost the conflict and has no new one."""
    advice = advise(garment, known())
    before = set(advice.judgement.clashes)
    for conflict in advice.judgement.conflicts:
        for cure in advice.cures[conflict.key]:
            after = set(judge(cure.after.garment, known()).clashes)
            assert not after & set(conflict.spots), f"{cure.remedy} does not cure {conflict.id}"
            assert after < before, f"{cure.remedy} brings {after - before}"


@law
@given(garments())
def test_an_unknown_fibre_is_allowed_no_more_than_any_candidate(garment: Garment) -> None:
    """Whichever it turns out to be, the iron and every guard against harm were tight enough."""
    unknown = [name for name, cloth in garment.cloths.items() if not cloth.fibre_known]
    assume(unknown)
    before = judge(garment, known())
    for mix in garment.cloths[unknown[0]].mixes:
        cloth = replace(garment.cloths[unknown[0]], mixes=(mix,))
        after = judge(replace(garment, cloths={**garment.cloths, cloth.name: cloth}), known())
        for place, by_aspect in after.verdicts.items():
            for name, verdict in by_aspect.items():
                tight = guards(verdict.aspect, said_of(before, place, name))
                loose = guards(verdict.aspect, said_of(after, place, name))
                assert within(tight, loose), f"{place} {name} as {mix}: {tight} but {loose}"
            if LIMIT_ASPECT in by_aspect:
                limit = before.verdicts[place][LIMIT_ASPECT].allowed.high  # type: ignore[union-attr]
                assert limit <= by_aspect[LIMIT_ASPECT].allowed.high  # type: ignore[union-attr]


@law
@given(garments())
def test_the_rules_that_fire_are_those_that_hold(garment: Garment) -> None:
    """Read naively from the rule files, the same rules hold in the same places, as surely."""
    fired = {(f.rule.id, f.place.name, f.certain) for f in judge(garment, known()).gathered.fired}
    expected = expected_fired(garment)
    assert set() == fired - expected, "fired and does not hold"
    assert set() == expected - fired, "holds and did not fire"


@law
@given(garments())
def test_every_fact_given_as_a_reason_is_true(garment: Garment) -> None:
    """A fact names a cloth or seam of the garment and what the project or the knowledge says."""
    judgement = judge(garment, known())
    said = [
        s
        for by in judgement.verdicts.values()
        for v in by.values()
        for s in (*v.because, *v.given_up)
    ]
    facts = [f for s in said for f in s.facts] + [
        f for fired in judgement.gathered.fired for f in fired.facts
    ]
    for fact in set(facts):
        assert _is_true(fact.who, fact.fact, fact.value, fact.certain, garment), fact


def _is_true(who: str, name: str, value: str, certain: bool, garment: Garment) -> bool:
    seam = next((s for s in garment.seams if s.name == who), None)
    if seam is not None:
        numbers = {"layers": len(seam.uses), "plies": sum(u.fullness for u in seam.uses)}
        said = {
            "allowance given": "yes" if "allowance" in seam.facts else "no",
            "carries weight": carries_weight(seam),
            "place": seam.place,
            "facing seen": facing_seen(seam),
            "beside a velvet": beside_velvet(seam, garment),
            "lies flat": lies_flat(seam),
            "may be pleated": "no" if seam.place else "yes",
            "sleeve head": "no",
            "at hood or neck": "no",
            "through loops": "no",
            "hangs from nothing": "no",
            "holds a cord": holds_a_cord(seam, garment),
            "holds a pocket": "no",
            "closes a tube": "no",
            "over a lining": "no",
            "laid in pleats": "no" if seam.making.pleats is None else "yes",
        }
        shown = (TAKEN | numbers | said | seam.facts).get(name)
        return value == (f"{shown:g}" if isinstance(shown, int | float) else shown)
    cloth = garment.cloths[who]
    entry = known().entries[cloth.entry]
    if name == "fibre":
        listed = f" or {value} or "  # a name may hold such a word itself
        named = {f for f, about in known().fibres.items() if f" or {about.name} or " in listed}
        inside = [bool(named & {f for f, _ in mix}) for mix in cloth.mixes]
        return all(inside) if certain else any(inside)
    if name in known().traits:
        return _trait_is(name, value, cloth.mixes, entry.traits.get(name, (0, 0)))
    if name in ("weight", "thickness"):
        span = getattr(cloth, name)
        return span is None or value in (f"{span[0]:g}", f"{span[0]:g} to {span[1]:g}")
    if name in ("fullness", "stretched"):
        return value in {
            f"{getattr(u, name):g}" for s in garment.seams for u in s.uses if u.cloth == who
        } | {"1"}
    told = {
        "fibre known": "yes" if len(cloth.mixes) == 1 else "no",
        "main fibre known": main_fibre_known(cloth),
        "fabric": entry.id,
        "notion": "" if entry.kind == "cloth" else entry.id,
        "detachable": "no",
        "trims": "yes" if cloth.trims else "no",
        "unwashed": "yes" if cloth.unwashed else "no",
    }
    found = told.get(name) or getattr(cloth, name, "") or getattr(entry, name, "")
    return value == found


def _trait_is(name: str, value: str, mixes: Any, own: tuple[int, int]) -> bool:
    raised = [max(known().fibres[f].traits.get(name, 0) for f, _ in mix) for mix in mixes]
    words = known().traits[name]
    low, high = max(own[0], min(raised)), max(own[1], *raised)
    return value == (words[low] if low == high else f"{words[low]} to {words[high]}")
