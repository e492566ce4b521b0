"""Laws of guards: what keeps cloth, needle or fingers whole only tightens, whoever comes in.

Every name of a cloth and every notion alone, all pairs of forty cloths by family, and garments
drawn at random. ADVISOR_LAW_EXAMPLES asks for more of the random ones than a quick run has.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import replace
from functools import cache, reduce
from itertools import combinations, product, zip_longest

from hypothesis import given, settings
from hypothesis import strategies as st

from advisor.claims.claimsets import ValueSet, full_set, insisted, meet, set_of
from advisor.claims.collect import Place
from advisor.claims.combine import HEARSAY, Verdict, span_of
from advisor.claims.judgement import Judgement
from advisor.claims.valuesets import Span
from advisor.decide.evaluate import judge
from advisor.knowledge.model import COLD
from advisor.project.garment import Garment, Seam, Use
from advisor.project.quick import SEAM, quick_garment
from tests.laws.engine_garments import cloths, garments, known, uses

EXAMPLES = int(os.environ.get("ADVISOR_LAW_EXAMPLES", "80"))
law = settings(max_examples=EXAMPLES, deadline=None, derandomize=True, database=None)
GENTLE = ("press.temperature", "press.moisture", "press.dwell", "machine.pressure", "pin.place")
"""Aspects of which too much harms: iron, moisture, dwell, foot pressure and pins."""
Layer = str | dict[str, str]


@cache
def alone(layer: str, kind: str) -> Judgement:
    """One cloth or notion in a seam by itself."""
    return judge(quick_garment([layer if kind == "cloth" else {"notion": layer}], known()), known())


def forty() -> list[str]:
    """Forty cloths, each family's first before its second."""
    by_family: dict[str, list[str]] = {}
    for entry in known().fabrics():
        by_family.setdefault(entry.family, []).append(entry.name)
    in_turn = [name for row in zip_longest(*by_family.values()) for name in row if name]
    return in_turn[:40]


def every_name() -> Iterator[tuple[str, str]]:
    """Each name of each cloth and notion."""
    for name, id_ in known().names.items():
        yield name, known().entries[id_].kind


def bound(judgement: Judgement, place: Place, aspect: str) -> float:
    """The most that the guards of a place leave of an aspect."""
    about = known().aspects[aspect]
    said = judgement.gathered.said.get(place, {}).get(aspect, [])
    sets = [held for s in said if s.claim.guards and (held := insisted(about, s.claim))]
    left: ValueSet = reduce(meet, sets, full_set(about))
    assert isinstance(left, Span)
    return left.high


def picked(judgement: Judgement, place: Place, aspect: str) -> float | None:
    verdict = judgement.verdicts.get(place, {}).get(aspect)
    return None if verdict is None else verdict.pick


def assert_sound(judgement: Judgement) -> None:
    """Guards hold, none is given up, and a pick lies in all that is printed as its reason."""
    for place, by_aspect in judgement.verdicts.items():
        for name, verdict in by_aspect.items():
            where = f"{place} {name}"
            assert_guarded(verdict, where)
            if verdict.pick is not None:
                at = int(verdict.pick) if verdict.aspect.kind == "options" else verdict.pick
                assert at in verdict.advised, where
                for said in verdict.because:
                    assert at in set_of(said.claim), f"{where}: {at} is not what {said} says"


def assert_guarded(verdict: Verdict, where: str) -> None:
    """What is allowed lies in all that guards insist on, and none of them is given up."""
    for said in verdict.because:
        left = insisted(verdict.aspect, said.claim) if said.claim.guards else None
        if left is not None:
            assert verdict.allowed <= left, f"{where}: {said}"  # type: ignore[operator]
    for said in verdict.given_up:
        assert not said.claim.guards or insisted(verdict.aspect, said.claim) is None, where
    assert verdict.advised <= verdict.allowed, where  # type: ignore[operator]


def test_every_name_alone_keeps_its_guards_and_picks_inside_its_reasons() -> None:
    """More than six hundred names, each asked by itself."""
    for name, kind in every_name():
        assert_sound(alone(name, kind))


def test_no_pair_goes_past_what_its_gentler_cloth_bears_alone() -> None:
    """All pairs of forty cloths: neither the bound that guards set nor the printed pick."""
    place = Place("seam", SEAM)
    names = forty()
    bears = {
        (name, aspect): bound(alone(name, "cloth"), place, aspect)
        for name in names
        for aspect in GENTLE
    }
    for one, two in combinations(names, 2):
        both = judge(quick_garment([one, two], known()), known())
        assert_sound(both)
        for aspect in GENTLE:
            least = min(bears[one, aspect], bears[two, aspect])
            assert bound(both, place, aspect) <= least, f"{one} with {two}: {aspect}"
            assert (picked(both, place, aspect) or 0.0) <= least, f"{one} with {two}: {aspect}"


@law
@given(st.data())
def test_a_layer_or_notion_added_raises_nothing(data: st.DataObject) -> None:
    """Bounds never rise in any place, and no pick passes what a layer bears by itself."""
    garment = data.draw(garments())
    extra = data.draw(cloths("extra"))
    old = garment.seams[0]
    at = data.draw(st.integers(0, len(old.uses)))
    use = data.draw(uses(["extra"]))
    wider = replace(old, uses=(*old.uses[:at], use, *old.uses[at:]))
    changed = replace(
        garment,
        cloths={**garment.cloths, "extra": extra},
        seams=(wider, *garment.seams[1:]),
    )
    before, after = judge(garment, known()), judge(changed, known())
    assert_sound(after)
    for place in before.verdicts:
        for aspect in GENTLE:
            assert bound(after, place, aspect) <= bound(before, place, aspect), f"{place} {aspect}"
    for seam in changed.seams:
        assert_gentle(changed, after, seam)


def assert_gentle(garment: Garment, judgement: Judgement, seam: Seam) -> None:
    """No pick of a seam goes past what any of its layers bears alone in the same seam."""
    place = Place("seam", seam.name)
    for use in dict.fromkeys(seam.uses):
        by_itself = judged_alone(garment, seam, use)
        for aspect in GENTLE:
            pick = picked(judgement, place, aspect) or 0.0
            assert pick <= bound(by_itself, place, aspect), f"{use.cloth} in {seam.name}: {aspect}"


def judged_alone(garment: Garment, seam: Seam, use: Use) -> Judgement:
    only = {use.cloth: garment.cloths[use.cloth]}
    lone = replace(garment, cloths=only, seams=(replace(seam, uses=(use,)),))
    return judge(lone, known())


@law
@given(garments())
def test_steam_reaches_no_layer_that_bears_less_than_it_has(garment: Garment) -> None:
    """Where guards leave less than 100 °C and more than no iron, there is no steam."""
    judgement = judge(garment, known())
    for place, by_aspect in judgement.verdicts.items():
        if place.scope != "seam" or not COLD < lowest_limit(judgement, place) < 100:
            continue
        assert bound(judgement, place, "press.moisture") < 2, place.name
        motion = by_aspect["press.motion"]
        hover = motion.aspect.words.index("hover with steam")
        assert hover not in motion.allowed, place.name


def lowest_limit(judgement: Judgement, place: Place) -> float:
    """The lowest limit of any layer that an iron may touch at all."""
    said = judgement.gathered.said[place].get("press.temperature", [])
    tops = [s.claim.span[1] for s in said if s.claim.span and s.claim.guards]
    return min((top for top in tops if top > COLD), default=200.0)


def test_what_nobody_vouches_for_takes_no_pair_past_where_its_gentler_cloth_starts() -> None:
    """All pairs of forty cloths: the iron starts no higher than for the gentler one alone.

    Only a need that somebody has published may raise it; what is estimated may not.
    """
    place = Place("seam", SEAM)
    for one, two in combinations(forty(), 2):
        both = judge(quick_garment([one, two], known()), known())
        heat = both.verdicts.get(place, {}).get("press.temperature")
        starts = [picked(alone(n, "cloth"), place, "press.temperature") for n in (one, two)]
        least = min((start for start in starts if start and start > COLD), default=COLD)
        because = () if heat is None else heat.because
        needs = [s for s in because if s.claim.span and s.claim.span[0] > least]
        vouched = [s for s in needs if s.claim.rank < HEARSAY]
        start = picked(both, place, "press.temperature") or COLD
        assert start <= least or vouched, f"{one} with {two}: {start} °C instead of {least} °C"


NOBODYS_DRY = {"corduroy": "trade-corduroy-guide", "dotted swiss": "common-practice"}
"""Cloths that are dry alone only because nobody wants them damp, and who lets them be steamed."""


def test_no_pair_is_pressed_wetter_than_its_drier_cloth_alone() -> None:
    """All pairs of forty cloths, and each with three linings; no glue, which needs its damp."""
    place, damp = Place("seam", SEAM), "press.moisture"
    linings = ("acetate lining", "silk lining", "viscose lining")
    names = (*forty(), *linings, "fleece", "minky")
    starts = {n: picked(alone(n, "cloth"), place, damp) for n in names}
    for name, source in NOBODYS_DRY.items():
        said = alone(name, "cloth").verdicts[place][damp].because
        assert any(source in s.claim.sources and span_of(s)[1] == 2 for s in said), name
    cool = product(("calico", "denim"), ("fleece", "minky"))  # an iron too cool for steam
    for one, two in (*combinations(forty(), 2), *product(forty(), linings), *cool):
        both = picked(judge(quick_garment([one, two], known()), known()), place, damp)
        known_dry = [n for n in (one, two) if n not in NOBODYS_DRY]
        least = min((s for n in known_dry if (s := starts[n]) is not None), default=2.0)
        assert (both or 0.0) <= least, f"{one} with {two}: {both} instead of {least}"
