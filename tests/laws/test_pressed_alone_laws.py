"""Nothing goes unpressed in silence: where a seam keeps the iron from a cloth, somebody says so."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import Any

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.claims.workarounds import PARTS
from advisor.craft.irondial import mark_for
from advisor.decide.evaluate import judge
from advisor.project.quick import SEAM, asked_garment, quick_garment
from tests.laws.engine_garments import known
from tests.laws.test_guard_laws import alone, bound, forty, picked

HEAT = "press.temperature"
MOIST = (HEAT, "press.moisture")
PLACE = Place("seam", SEAM)
EVERY = 4
"""Of the cloths that each part is set into, each fourth."""


def dots(heat: float | None) -> int:
    mark = mark_for(heat or 0.0)
    return 0 if mark is None else mark.dots


def asked() -> Iterator[tuple[list[str], list[Any]]]:
    """Every second pair of cloths of all families, and each part with cloths of many."""
    for one, two in list(combinations(forty(), 2))[::2]:
        yield [one, two], [one, two]
    for notion in (e for e in known().entries.values() if e.kind in PARTS):
        for cloth in forty()[::EVERY]:
            yield [cloth], [cloth, {"notion": notion.name}]


def told_of(judgement: Judgement) -> set[str]:
    """Who is spoken of where the iron of the seam is not what it wants."""
    named = {name for item in judgement.instructions for name in (*item.needy, *item.tender)}
    clashes = (said for c in judgement.conflicts for said in c.clash)
    return named | {name for said in clashes for name in said.cloths}


def test_a_cloth_that_takes_an_iron_is_told_to_be_pressed_first_where_its_seam_takes_none() -> None:
    """Pressed with the fingers alone it would never lie flat; pressed later it would spoil."""
    silent = []
    for cloths, layers in asked():
        both = judge(quick_garment(layers, known()), known())
        verdict = both.verdicts[PLACE].get(HEAT)
        if verdict is None or dots(getattr(verdict.advised, "high", None)):
            continue
        tops = {name: bound(alone(name, "cloth"), PLACE, HEAT) for name in cloths}
        ironed = {name for name in cloths if dots(picked(alone(name, "cloth"), PLACE, HEAT))}
        lowest = bound(both, PLACE, HEAT)
        silent += [
            (layers, name)
            for name in ironed
            if dots(tops[name]) and not dots(lowest) and name not in told_of(both)
        ]
    assert [] == silent


def test_a_glue_asked_about_with_two_cloths_makes_their_seam_no_hotter() -> None:
    """It is fused before they meet, or clashes; its heat and its seconds are not the seam's."""
    hotter = []
    for one, two in list(combinations(forty(), 2))[::5]:
        bare = judge(asked_garment((one, two), known()), known())
        glued = judge(asked_garment((one, "woven fusible interfacing", two), known()), known())
        hotter += [
            (one, two, aspect)
            for aspect in (HEAT, "press.dwell")
            if (picked(glued, PLACE, aspect) or 0.0) > (picked(bare, PLACE, aspect) or 30.0)
            and not glued.conflicts
        ]
    assert [] == hotter


def test_where_a_cloth_is_pressed_by_itself_the_seam_is_pressed_as_the_tender_one_alone() -> None:
    """'Keep to the gentler iron' beside a damp cloth that marks the lining helps nobody."""
    wetter = []
    for one in forty():
        for lining in ("acetate lining", "silk lining"):
            both = judge(quick_garment([one, lining], known()), known())
            if any(item.kind == "lining" and lining in item.tender for item in both.instructions):
                alone_pick = {a: picked(alone(lining, "cloth"), PLACE, a) for a in MOIST}
                wetter += [
                    (one, lining, aspect)
                    for aspect, most in alone_pick.items()
                    if (picked(both, PLACE, aspect) or 0.0) > (most or 0.0)
                ]
    assert [] == wetter
