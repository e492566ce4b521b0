"""Answers of one place that must agree with each other, over all cloths and many pairs.

Each was picked right by itself once, and printed side by side they contradicted: steam held above
what is pressed dry, an overlocked seam sewn by a lockstitch, an edge turned under in an allowance
too narrow for it, and two threads for places that bear the same one.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import combinations

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.judgement import Judgement
from advisor.claims.valuesets import Span
from advisor.construction.finishing import finish_of
from advisor.craft.allowance import fit, need
from advisor.decide.evaluate import judge
from advisor.project.load import garment_of
from advisor.project.quick import quick_garment
from advisor.textio.yamlfile import parse_yaml
from tests.laws.engine_garments import known
from tests.laws.test_guard_laws import forty

OVERLOCKS = {"503", "504", "514", "516"}
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


def test_what_is_overlocked_is_sewn_by_an_overlock_stitch() -> None:
    """One pass that joins and neatens; a lockstitch does not."""
    wrong = [
        asked
        for asked, _, verdicts in places()
        if word(verdicts, "seam.kind") == "overlocked"
        and word(verdicts, "stitch.type") not in {*OVERLOCKS, "hand", ""}
    ]
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


def test_places_that_bear_the_same_threads_share_one() -> None:
    """Of one colour; whichever of them stands first."""
    for cloths in list(combinations(forty(), 2))[::40]:
        text = "garment: Two\nmaker: {machine: household}\nfabrics:\n"
        text += "".join(
            f"  c{k}: {{fabric: {c}, colour: '#203040'}}\n" for k, c in enumerate(cloths)
        )
        text += "seams:\n"
        text += "  - {name: one, layers: [c0, c1]}\n  - {name: two, layers: [c1, c0]}\n"
        judgement = judge(garment_of(parse_yaml(text, "two.yaml"), known()), known())
        one, two = (judgement.verdicts[Place("seam", name)] for name in ("one", "two"))
        for aspect in ("thread.fibre", "thread.size"):
            if one[aspect].advised == two[aspect].advised:
                assert one[aspect].pick == two[aspect].pick, (cloths, aspect)
