"""Answers of one place that must agree with each other, over all cloths and many pairs.

Each was picked right by itself once, and printed side by side they contradicted: steam held above
what is pressed dry, an overlocked seam sewn by a lockstitch, an edge turned under in an allowance
too narrow for it, and two threads for places that bear the same one.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import combinations

from advisor.answer.teller import Teller
from advisor.answer.verdicts import told_claim, told_verdict
from advisor.claims.claimsets import set_of
from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Choice, Span
from advisor.construction.finishing import finish_of
from advisor.craft.allowance import fit, need
from advisor.decide.evaluate import judge
from advisor.knowledge.model import COLD
from advisor.project.load import garment_of
from advisor.project.quick import quick_garment
from advisor.textio.yamlfile import parse_yaml
from tests.laws.engine_garments import known
from tests.laws.test_guard_laws import forty

OVERLOCKS = {"503", "504", "514", "516"}
ONE_DOT = 120.0
"""Where the band of the lowest dot ends, °C; below two dots a steam iron drips."""
EVERY = 3
"""Of the pairs of forty cloths, each third: the families still meet each other."""


@cache
def judged() -> tuple[Judgement, ...]:
    """Every cloth by itself, and pairs of cloths of all families."""
    alone = [[entry.name] for entry in known().fabrics()]
    pairs = [list(pair) for pair in list(combinations(forty(), 2))[::EVERY]]
    return tuple(judge(quick_garment([*layers], known()), known()) for layers in alone + pairs)


def places() -> Iterator[tuple[str, Judgement, dict[str, Verdict]]]:
    """The seams of them, each with what it was asked of and its verdicts."""
    for judgement in judged():
        for seam in judgement.garment.seams:
            verdicts = judgement.verdicts[Place("seam", seam.name)]
            yield " + ".join(seam.cloths()), judgement, verdicts


def word(verdicts: dict[str, Verdict], aspect: str) -> str:
    """The picked word of an aspect; "" where there is none."""
    verdict = verdicts.get(aspect)
    if verdict is None or verdict.pick is None:
        return ""
    return verdict.aspect.words[int(verdict.pick)]


def test_steam_is_held_only_above_what_gets_steam() -> None:
    """With an iron and without one."""
    wrong = [
        asked
        for asked, _, verdicts in places()
        if word(verdicts, "press.motion") == "hover with steam"
        and word(verdicts, "press.moisture") != "steam"
    ]
    assert [] == wrong


def test_no_steam_comes_from_an_iron_that_starts_at_one_dot() -> None:
    """It drips there: moisture is of a damp cloth, unless steam is held above the place."""
    wrong = [
        asked
        for asked, _, verdicts in places()
        if word(verdicts, "press.moisture") == "steam"
        and word(verdicts, "press.motion") != "hover with steam"
        and (heat := verdicts.get("press.temperature")) is not None
        and heat.pick is not None
        and COLD < heat.pick <= ONE_DOT
    ]
    assert [] == wrong


def test_nothing_is_said_to_have_given_way_that_gets_what_it_wants() -> None:
    """'Wanted at most 75' beside a needle of 75 reads as a slip."""
    wrong = []
    for asked, judgement, verdicts in places():
        teller = Teller(judgement.garment, known())
        for verdict in verdicts.values():
            if verdict.pick is None:
                continue
            pick = int(verdict.pick) if verdict.aspect.kind == "options" else verdict.pick
            lost = [s for s in verdict.given_up if pick in set_of(s.claim)]
            told = told_verdict(Place("seam", "it"), verdict, teller).given_up
            wrong += [
                (asked, verdict.aspect.id, claim.says)
                for said in lost
                for claim in told
                if (claim.says, claim.rule) == (says(said, verdict, teller), said.claim.origin)
            ]
    assert [] == wrong


def says(said: Said, verdict: Verdict, teller: Teller) -> str:
    """What somebody wants of an aspect, as it is told."""
    return told_claim(said, verdict.aspect, teller).says


def test_no_needle_swings_in_a_foot_with_one_small_hole() -> None:
    """It would strike it and break toward the face."""
    wrong = [
        asked
        for asked, _, verdicts in places()
        if word(verdicts, "stitch.type") in ("304", "308")
        and word(verdicts, "machine.foot") == "straight-stitch"
    ]
    assert [] == wrong


def test_no_iron_at_one_dot_is_asked_for_steam() -> None:
    """It drips there (Oregon 4-H 320-14; ISO 3758:2012 gives one dot no steam)."""
    wrong = []
    for judgement in judged():
        for place, verdicts in judgement.verdicts.items():
            heat, motion = verdicts.get("press.temperature"), word(verdicts, "press.motion")
            cool = heat is not None and isinstance(heat.advised, Span) and heat.advised.high < 148
            steamed = word_or_step(verdicts, "press.moisture") == "steam"
            if cool and steamed and motion != "hover with steam":
                wrong.append((place, [*judgement.garment.cloths]))
    assert [] == wrong


def word_or_step(verdicts: dict[str, Verdict], aspect: str) -> str:
    """The most that is advised of a scale of words; "" where it is not asked."""
    verdict = verdicts.get(aspect)
    if verdict is None or not isinstance(verdict.advised, Span) or verdict.advised.is_empty:
        return ""
    return verdict.aspect.words[int(verdict.advised.high)]


def overlocking(cloth: str, more: str = "") -> dict[str, Verdict]:
    """What is decided for a side of one cloth, sewn by who has an overlocker."""
    text = (
        "garment: One\nmaker: {machine: household, overlocker: 4-thread}\n"
        f"fabrics:\n  cloth: {{fabric: {cloth}}}\nseams:\n"
        f"  - {{name: side, layers: [cloth, cloth]{more}}}\n"
    )
    judgement = judge(garment_of(parse_yaml(text, "one.yaml"), known()), known())
    return judgement.verdicts[Place("seam", "side")]


def test_what_an_overlocker_sews_is_not_pinned_where_clips_will_do() -> None:
    """Its knife breaks a pin in the allowance; what bears neither may be pinned."""
    wrong = []
    for entry in known().fabrics():
        verdicts = overlocking(entry.name)
        pins = verdicts.get("pin.kind")
        if word(verdicts, "stitch.type") not in OVERLOCKS or pins is None:
            continue
        assert isinstance(pins.advised, Choice)
        able = {pins.aspect.words[i] for i in pins.advised.options()}
        if able & {"sewing clips", "hand basting"} and "pins" in word(verdicts, "pin.kind"):
            wrong.append(entry.name)
    assert [] == wrong


def test_what_is_overlocked_is_sewn_by_an_overlock_stitch() -> None:
    """One pass that joins and neatens; a lockstitch does not. Where there is an overlocker."""
    wrong = []
    for entry in known().fabrics():
        verdicts = overlocking(entry.name, ", worn next to skin: yes")
        sewn = {*OVERLOCKS, "hand", ""}
        if (
            word(verdicts, "seam.kind") == "overlocked"
            and word(verdicts, "stitch.type") not in sewn
        ):
            wrong.append(entry.name)
    assert [] == wrong


def test_the_allowance_has_room_for_the_finish_that_is_picked() -> None:
    """As far as one that has is advised."""
    wrong = []
    for asked, judgement, verdicts in places():
        kind, edge = word(verdicts, "seam.kind"), word(verdicts, "seam.finish")
        finish = finish_of(kind, edge, judgement.garment.maker.overlocker)
        wide = verdicts.get("seam.allowance")
        if finish is None or wide is None or wide.pick is None or fit(finish, wide.pick).fits:
            continue
        if isinstance(wide.advised, Span) and need(finish) in wide.advised:
            wrong.append((asked, finish, wide.pick))
    assert [] == wrong


def test_places_that_bear_the_same_thread_share_it() -> None:
    """Of one colour: where some thread suits both, both are sewn with the same."""
    wrong = []
    for cloths in list(combinations(forty(), 2))[::20]:
        cloth = "".join(
            f"  c{k}: {{fabric: {c}, colour: '#203040'}}\n" for k, c in enumerate(cloths)
        )
        seams = "  - {name: one, layers: [c0, c0]}\n  - {name: two, layers: [c1, c1]}\n"
        text = f"garment: Two\nmaker: {{machine: household}}\nfabrics:\n{cloth}seams:\n{seams}"
        verdicts = judge(garment_of(parse_yaml(text, "two.yaml"), known()), known()).verdicts
        one, two = (threads(verdicts[Place("seam", name)]) for name in ("one", "two"))
        if one[1] & two[1] and one[0] != two[0]:
            wrong.append((cloths, one[0], two[0]))
    assert [] == wrong


def threads(
    verdicts: dict[str, Verdict],
) -> tuple[tuple[float | None, ...], set[tuple[float, ...]]]:
    """The thread that is picked, and all that are advised, as fibre and tex."""
    fibre, size = verdicts["thread.fibre"], verdicts["thread.size"]
    able: set[tuple[float, ...]] = {
        (float(option), step)
        for option in (fibre.advised.options() if isinstance(fibre.advised, Choice) else ())
        for step in size.aspect.steps
        if isinstance(size.advised, Span) and step in size.advised
    }
    return (fibre.pick, size.pick), able
