"""Conditions have three values, because a fibre, a level or a measure may be unknown."""

from __future__ import annotations

from typing import Any

import pytest

from advisor.claims.conditions import (
    Fact,
    facts_of,
    layer_facts,
    maker_facts,
    seam_facts,
)
from advisor.claims.conditions import (
    test_facts as ask_facts,
)
from advisor.claims.conditions import (
    test_layer as ask_layer,
)
from advisor.claims.subjects import Truth, in_number, subject_of
from advisor.project.garment import Cloth, Maker, Use
from tests.unit.decide.engine_cases import KNOWN, cloth, seam

NO, MAYBE, YES = Truth.NO, Truth.MAYBE, Truth.YES


def ask(tree: list[Any], about: Cloth, use: Use | None = None) -> Truth:
    return ask_layer(tree, subject_of(about, use, KNOWN), KNOWN)


SILK = cloth("organza", "silk")
UNSURE = cloth("organza")
MIX = cloth("lining", "wool/nylon")


@pytest.mark.parametrize(
    ("tree", "about", "expected"),
    [
        (["fibre", ["silk"], "any"], SILK, YES),
        (["fibre", ["wool"], "any"], SILK, NO),
        (["fibre", ["silk"], "any"], UNSURE, MAYBE),
        (["fibre", ["silk", "nylon"], "any"], UNSURE, YES),
        (["fibre", ["wool"], "any"], UNSURE, NO),
        (["fibre", ["wool"], "any"], MIX, YES),
        (["fibre", ["wool"], "mostly"], MIX, YES),
        (["fibre", ["wool"], "only"], MIX, NO),
        (["fibre", ["wool", "nylon"], "only"], MIX, YES),
        (["fibre", ["elastane"], "mostly"], cloth("jersey", "cotton/elastane/wool"), NO),
        (["group", ["protein"]], SILK, YES),
        (["group", ["protein"]], UNSURE, MAYBE),
        (["group", ["protein", "polyamide"]], UNSURE, YES),
        (["group", ["metal"]], UNSURE, NO),
        (["word", "fibre known", ["no"]], UNSURE, YES),
        (["word", "fibre known", ["yes"]], SILK, YES),
        (["word", "structure", ["woven", "net"]], SILK, YES),
        (["word", "structure", ["knit"]], SILK, NO),
        (["word", "fabric", ["organza"]], SILK, YES),
        (["word", "notion", ["organza"]], SILK, NO),
        (["word", "notion", ["iron-on"]], cloth("iron-on"), YES),
        (["word", "shade", ["dark"]], SILK, NO),
        (["word", "shade", ["dark"]], cloth("organza", "silk", shade="dark"), YES),
    ],
)
def test_a_fact_of_a_layer(tree: list[Any], about: Cloth, expected: Truth) -> None:
    """A fibre is so for every candidate, for some, or for none; a word is so or not."""
    assert expected == ask(tree, about)


def test_mostly_without_shares_is_a_maybe() -> None:
    """Where nobody has said how much, `mostly` cannot be answered; `any` and `only` can."""
    mix = Cloth("gift", "lining", ((("wool", None), ("nylon", None)),))
    assert MAYBE == ask(["fibre", ["wool"], "mostly"], mix)
    assert YES == ask(["fibre", ["wool"], "any"], mix)
    assert YES == ask(["fibre", ["wool", "nylon"], "mostly"], mix)


@pytest.mark.parametrize(
    ("low", "high", "expected"), [(0, 0, NO), (1, 1, YES), (1, 2, YES), (2, 2, NO)]
)
def test_a_trait_lies_between_levels(low: int, high: int, expected: Truth) -> None:
    """Velvet has a short pile, the middle one of three levels."""
    assert expected == ask(["trait", "pile", low, high], cloth("velvet", "silk"))


def test_an_unknown_level_may_be_any() -> None:
    """An unknown trait is a maybe wherever it could fit, and surely somewhere on the scale."""
    lining = cloth("lining", "cupro")
    assert MAYBE == ask(["trait", "frays", 2, 2], lining)
    assert YES == ask(["trait", "frays", 0, 2], lining)


def test_a_trait_that_nobody_lists_is_at_its_first_word() -> None:
    """Organza has no pile, because its file says nothing of pile."""
    assert YES == ask(["trait", "pile", 0, 0], SILK)
    assert NO == ask(["trait", "pile", 1, 2], SILK)


def test_a_trait_of_a_fibre_is_as_sure_as_the_fibre() -> None:
    """Silk marks with water, so silk organza does and organza of silk or nylon may."""
    marks = ["trait", "water marks", 1, 1]
    assert YES == ask(marks, SILK)
    assert MAYBE == ask(marks, UNSURE)
    assert NO == ask(marks, cloth("organza", "nylon"))


def test_the_maker_knows_her_cloth_best() -> None:
    """A trait that she states stands above that of the entry and of the fibre."""
    assert NO == ask(
        ["trait", "water marks", 1, 1], cloth("organza", "silk", traits={"water marks": (0, 0)})
    )


@pytest.mark.parametrize(
    ("truth", "about"), [(YES, SILK), (MAYBE, UNSURE), (NO, cloth("organza", "nylon"))]
)
def test_not_turns_yes_and_no_and_leaves_maybe(truth: Truth, about: Cloth) -> None:
    """`not` of a maybe is a maybe: unknown never becomes known by being denied."""
    tree = ["fibre", ["silk"], "any"]
    assert truth == ask(tree, about)
    assert Truth(2 - truth) == ask(["not", tree], about)
    assert (MAYBE == truth) == (ask(["not", tree], about) == MAYBE)


def test_all_is_as_sure_as_its_least_part_and_any_as_its_surest() -> None:
    """Yes and maybe make a maybe together, and a yes as alternatives."""
    sure = ["word", "structure", ["woven"]]
    unsure = ["fibre", ["silk"], "any"]
    never = ["word", "structure", ["knit"]]
    assert MAYBE == ask(["all", sure, unsure], UNSURE)
    assert NO == ask(["all", sure, unsure, never], UNSURE)
    assert YES == ask(["any", never, unsure, sure], UNSURE)
    assert MAYBE == ask(["any", never, unsure], UNSURE)
    assert YES == ask(["all"], UNSURE)
    assert NO == ask(["any"], UNSURE)


FAR = 1e9
UNDER_90 = [-FAR, 90.0, False, True]
AT_MOST_90 = [-FAR, 90.0, False, False]
OVER_90 = [90.0, FAR, True, False]
AT_LEAST_90 = [90.0, FAR, False, False]
FROM_60_TO_90 = [60.0, 90.0, False, False]


@pytest.mark.parametrize(
    ("span", "test", "expected"),
    [
        ((90.0, 90.0), UNDER_90, NO),
        ((89.9, 89.9), UNDER_90, YES),
        ((90.0, 90.0), AT_MOST_90, YES),
        ((90.0, 90.0), OVER_90, NO),
        ((90.1, 90.1), OVER_90, YES),
        ((90.0, 90.0), AT_LEAST_90, YES),
        ((60.0, 60.0), FROM_60_TO_90, YES),
        ((59.0, 59.0), FROM_60_TO_90, NO),
        ((91.0, 91.0), FROM_60_TO_90, NO),
        ((60.0, 100.0), UNDER_90, YES),  # an assumed span counts by its middle, 80
        ((80.0, 120.0), UNDER_90, MAYBE),  # its middle, 100, is out, but it reaches in
        ((95.0, 120.0), UNDER_90, NO),
        ((50.0, 200.0), FROM_60_TO_90, MAYBE),
        (None, UNDER_90, MAYBE),
    ],
)
def test_a_number_is_tested_at_its_ends(
    span: tuple[float, float] | None, test: list[Any], expected: Truth
) -> None:
    """Under and over leave the end out, at least and at most take it in; no number is a maybe."""
    assert expected == in_number(span, test)


def test_how_a_layer_is_used_is_a_fact_of_its_use() -> None:
    """Fullness belongs to the use in a seam; the cloth by itself is flat."""
    gathered = ["number", "fullness", 1.5, FAR, True, False]
    assert YES == ask(gathered, SILK, Use("organza", fullness=2.0))
    assert NO == ask(gathered, SILK, Use("organza"))
    assert NO == ask(gathered, SILK)


def test_the_facts_of_a_layer_are_the_leaves_that_hold() -> None:
    """What holds is named with its value, what only may hold as uncertain, a denial not at all."""
    tree = [
        "all",
        ["word", "structure", ["woven"]],
        ["fibre", ["silk"], "any"],
        ["not", ["word", "family", ["knits"]]],
        ["any", ["word", "weave", ["twill"]], ["number", "weight", 0.0, 90.0, False, False]],
    ]
    found = layer_facts(tree, subject_of(UNSURE, None, KNOWN), KNOWN)
    assert [
        Fact("organza", "structure", "woven", True),
        Fact("organza", "fibre", "silk", False),
        Fact("organza", "weight", "20 to 40", True),
    ] == found


def test_a_seam_takes_for_granted_what_nobody_said() -> None:
    """A seam is straight, open, of medium strain and stitched by machine; layers are counted."""
    facts = seam_facts(seam("hem", "a", Use("b", fullness=2.0), facts={"shape": "curved"}))
    assert ("curved", "open", "medium", "machine") == tuple(
        facts[key] for key in ("shape", "edge", "stress", "stitched by")
    )
    assert (2.0, 3.0) == (facts["layers"], facts["plies"])


def test_a_seam_sewn_by_hand_says_so() -> None:
    """What a remedy has changed stands above what the project said."""
    assert (
        "hand"
        == seam_facts(seam("hem", "a", facts={"stitched by": "machine"}, by_hand=True))[
            "stitched by"
        ]
    )


def test_facts_of_a_seam_and_of_the_maker() -> None:
    """They are asked in the same way; a number that nobody gave is a maybe."""
    facts = seam_facts(seam("hem", "a", facts={"shape": "curved"}))
    curved = ["word", "shape", ["curved", "corner"]]
    long = ["number", "length", 300.0, FAR, True, False]
    assert YES == ask_facts(curved, facts)
    assert NO == ask_facts(["not", curved], facts)
    assert MAYBE == ask_facts(long, facts)
    assert MAYBE == ask_facts(["not", long], facts)
    assert MAYBE == ask_facts(["all", curved, long], facts)
    assert YES == ask_facts(["any", curved, long], facts)
    assert [Fact("hem", "shape", "curved")] == facts_of(["all", curved], facts, "hem")
    assert YES == ask_facts(["word", "overlocker", ["no"]], maker_facts(Maker()))
    assert YES == ask_facts(
        ["word", "overlocker", ["yes"]], maker_facts(Maker(overlocker="4-thread"))
    )
