"""Laws of guards: what keeps cloth, needle or fingers whole only tightens, whoever comes in.

Every name of a cloth and every notion alone, all pairs of forty cloths by family, and garments
drawn at random. ADVISOR_LAW_EXAMPLES asks for more of the random ones than a quick run has.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from functools import cache, reduce
from itertools import combinations, product, zip_longest

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from advisor.claims.claimsets import ValueSet, full_set, insisted, meet, set_of
from advisor.claims.collect import Place
from advisor.claims.combine import HEARSAY, Verdict, span_of
from advisor.claims.consistency import DRIPS
from advisor.claims.judgement import Judgement
from advisor.claims.valuesets import Choice, Span
from advisor.craft.irondial import MARKS
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


PLACE, DAMP = Place("seam", SEAM), "press.moisture"


def judged(*layers: str) -> Judgement:
    """Some cloths in one seam."""
    return judge(quick_garment([*layers], known()), known())


def assert_gentler(one: str, two: str, both: Judgement) -> None:
    """Neither the bound that guards set nor the printed pick goes past what either bears alone."""
    assert_sound(both)
    for aspect in GENTLE:
        least = min(bound(alone(name, "cloth"), PLACE, aspect) for name in (one, two))
        assert bound(both, PLACE, aspect) <= least, f"{one} with {two}: {aspect}"
        assert (picked(both, PLACE, aspect) or 0.0) <= least, f"{one} with {two}: {aspect}"


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


def assert_starts_low(one: str, two: str, both: Judgement) -> None:
    """Only a need that somebody has published may raise the start; what is estimated may not."""
    heat = both.verdicts.get(PLACE, {}).get("press.temperature")
    starts = [picked(alone(n, "cloth"), PLACE, "press.temperature") for n in (one, two)]
    least = min((start for start in starts if start and start > COLD), default=COLD)
    because = () if heat is None else heat.because
    needs = [s for s in because if s.claim.span and s.claim.span[0] > least]
    vouched = [s for s in needs if s.claim.rank < HEARSAY]
    start = picked(both, PLACE, "press.temperature") or COLD
    assert start <= least or vouched, f"{one} with {two}: {start} °C instead of {least} °C"


def assert_no_wetter(one: str, two: str, both: Judgement) -> None:
    """As dry as the drier cloth is by itself, or as it lets itself be where nobody wants it damp.

    Steam that alone lets the iron off both is no one's harm.
    """
    moist = picked(both, PLACE, DAMP) or 0.0
    hot = (picked(both, PLACE, "press.temperature") or COLD) > MARKS[0].band[1]
    least = min(
        lets(alone(n, "cloth"), 2.0 if hot or only_hovers(both) else 1.0) for n in (one, two)
    )
    assert moist <= least or only_hovers(both), f"{one} with {two}: {moist} instead of {least}"


def lets(judgement: Judgement, iron: float) -> float:
    """How moist a cloth is by itself; how moist somebody lets it be, where nobody names a best.

    A cool iron gives a damp cloth at most, whatever a cloth lets itself be.
    """
    damp = judgement.verdicts[PLACE].get(DAMP)
    if damp is None:
        return 2.0
    own = [s for s in (*damp.because, *damp.given_up) if s.claim.sources != DRIPS]
    hearsay = {word for s in own for word in s.claim.sources} <= {"memory", "estimate"}
    tops = (span_of(s)[1] if s.claim.best is None else s.claim.best for s in own)
    most = min(tops, default=2.0)
    return (damp.pick or 0.0) if hearsay else max(damp.pick or 0.0, min(most, iron))


def only_hovers(both: Judgement) -> bool:
    """Whether no iron is set down and nobody there would rather have it drier than steam."""
    motion, moist = (both.verdicts[PLACE].get(f"press.{it}") for it in ("motion", "moisture"))
    if motion is None or moist is None:
        return False
    rests = {motion.aspect.words.index(word) for word in ("lift and lower", "glide")}
    hover = motion.aspect.words.index("hover with steam")
    return hover in motion.advised and not rests & {*options(motion)} and 2.0 in moist.advised


def options(verdict: Verdict) -> tuple[int, ...]:
    assert isinstance(verdict.advised, Choice)
    return verdict.advised.options()


EVERY = int(os.environ.get("ADVISOR_LAW_PAIRS", "12"))
"""Of the twelve thousand pairs of all cloths, each twelfth; 1 asks for every one."""
LININGS = ("acetate lining", "silk lining", "viscose lining")


def test_no_pair_is_pressed_harder_than_its_gentler_cloth_alone() -> None:
    """All pairs of forty cloths, the forty on three linings, and of all cloths each twelfth pair.

    Iron, moisture, dwell, foot pressure and pins keep to what either bears, and iron and
    moisture start no higher than for the gentler one; no glue, which needs its heat and damp.
    """
    every = list(combinations((entry.name for entry in known().fabrics()), 2))[::EVERY]
    cool = product(("calico", "denim"), ("fleece", "minky"))  # an iron too cool for steam
    for one, two in {*combinations(forty(), 2), *product(forty(), LININGS), *cool, *every}:
        assert_gentle_pair(one, two, judged(one, two))


def assert_gentle_pair(one: str, two: str, both: Judgement) -> None:
    assert_gentler(one, two, both)
    assert_starts_low(one, two, both)
    assert_no_wetter(one, two, both)


PRESSED = ("press.temperature", DAMP, "press.motion", "press.dwell")
FIBRES = ("", "wool ", "silk ", "acetate ", "polyester ", "cotton 95 elastane 5 ", "pure linen ")


@law
@given(st.data())
def test_fibres_said_names_and_order_raise_nothing(data: st.DataObject) -> None:
    """Two cloths with a fibre said: gentler than alone; turned over or renamed, the same."""
    every = st.sampled_from([entry.name for entry in known().fabrics()])
    one, two = (data.draw(st.sampled_from(FIBRES)) + data.draw(every) for _ in range(2))
    garment = quick_garment([one, two], known())
    both = judge(garment, known())
    assert_gentle_pair(one, two, both)
    called = {name: f"cloth {9 - at}" for at, name in enumerate(garment.cloths)}
    cloths = {new: replace(garment.cloths[old], name=new) for old, new in called.items()}
    uses = tuple(replace(use, cloth=called[use.cloth]) for use in garment.seams[0].uses)
    seam = replace(garment.seams[0], uses=uses)
    for other in (
        judged(two, one),
        judge(replace(garment, cloths=cloths, seams=(seam,)), known()),
    ):
        for aspect in PRESSED:
            assert picked(both, PLACE, aspect) == picked(other, PLACE, aspect), aspect


LAID = {
    "wet look jersey": "foil knit",
    "wet-look cotton": "foil knit",
    "denim wet look cloth": "foil knit",
    "silk noil wet look knit": "foil knit",
    "poplin wet-look fabric": "foil knit",
    "cotton with glitter print": "glitter cloth",
    "glitter print linen": "glitter cloth",
    "satin backed cotton": "satin",
    "satin-backed wool": "satin",
    "rubberised linen": "rubber cotton elastic",
    "rubberised cotton twill": "rubber cotton elastic",
}
"""Words for what lies on a cloth, and what it bears by itself."""


def test_what_lies_on_a_cloth_guards_it_as_it_guards_itself() -> None:
    """Coat, print or other face: no hotter and no wetter than that is alone, rules included."""
    for phrase, other in LAID.items():
        for aspect in ("press.temperature", DAMP):
            most = bound(alone(other, "cloth"), PLACE, aspect)
            assert bound(alone(phrase, "cloth"), PLACE, aspect) <= most, f"{phrase}: {aspect}"
