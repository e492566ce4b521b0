"""What a claim is for where it does not say so, and what it says itself."""

from __future__ import annotations

import pytest

from advisor.knowledge import schema
from advisor.knowledge.compiling import _set_of
from advisor.knowledge.purposes import ends_of, unsaid

IRON = schema.AspectForm.model_validate(
    {
        "title": "iron",
        "kind": "range",
        "scope": ["seam"],
        "unit": "°C",
        "low": 20,
        "high": 210,
        "for": {"at most": "cloth", "at least": "seam"},
    }
)
PINS = schema.AspectForm.model_validate(
    {
        "title": "pins",
        "kind": "options",
        "scope": ["seam"],
        "options": ["pins", "clips"],
        "for": {"not": "cloth"},
    }
)


def ends(aspect: schema.AspectForm, about: dict[str, object], *bounds: bool) -> tuple[str, str]:
    form = schema.ClaimForm.model_validate({"aspect": "x", **about})
    _set_of(form, aspect)
    return ends_of(form, aspect, (bounds or (False, False))[:2])  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("strength", "risk", "purpose"),
    [
        ("must", "injury", "hands"),
        ("must", "damage", "cloth"),
        ("must", "result", "seam"),
        ("should", "", "look"),
        ("may", "", "habit"),
    ],
)
def test_strength_and_risk_say_what_nobody_declares(strength: str, risk: str, purpose: str) -> None:
    """The order of what a must guards, and what is left for a wish and a taste."""
    assert purpose == unsaid(strength, risk)


@pytest.mark.parametrize(
    ("about", "bounds", "expected"),
    [
        ({"max": 150}, (False, True), ("cloth", "cloth")),
        ({"min": 110}, (True, False), ("seam", "seam")),
        ({"min": 110, "max": 150}, (True, True), ("seam", "cloth")),
        ({"min": 20, "max": 210}, (False, False), ("look", "look")),
        ({"max": 150, "strength": "may"}, (False, True), ("habit", "habit")),
        ({"max": 150, "strength": "must"}, (False, True), ("cloth", "cloth")),
        ({"min": 110, "strength": "must", "risk": "result"}, (True, False), ("seam", "seam")),
        ({"min": 110, "for": "machine"}, (True, False), ("machine", "machine")),
    ],
)
def test_each_end_of_a_should_is_for_what_its_aspect_says(
    about: dict[str, object], bounds: tuple[bool, bool], expected: tuple[str, str]
) -> None:
    """Too hot harms and too cool does not; an end that bounds nothing is for nothing of its own."""
    assert expected == ends(IRON, about, *bounds)


def test_a_should_not_may_guard_where_a_should_of_is_a_wish() -> None:
    """`not` keeps something away; `of` chooses."""
    assert ("cloth", "cloth") == ends(PINS, {"not": ["pins"]})
    assert ("look", "look") == ends(PINS, {"of": ["clips"]})
