"""The limits that a maker has loosened for her own cloth: on every sheet, with her reason."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from advisor.answer import wording
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import EASED
from advisor.knowledge.model import LIMIT_ASPECT, Knowledge
from advisor.units import System

SOURCE = "own-test"


def own_limits(
    judgement: Judgement,
    knowledge: Knowledge,
    units: System,
    cite: Callable[[tuple[str, ...]], list[str]],
) -> list[dict[str, Any]]:
    """One caution that names every limit gone beyond; none where there is none.

    It is one row, and the first, so that no sheet is too short for it.
    """
    texts = []
    about = []
    eased = _eased_aspects(judgement)
    for name, cloth in sorted(judgement.garment.cloths.items()):
        for aspect, value, reason in knowledge.entries[cloth.entry].facts.get("loosened", ()):
            if (name, aspect) in eased:
                said = _value(aspect, value, knowledge, units)
                texts.append(f"{name}: {knowledge.aspects[aspect].title} {said}, because: {reason}")
                about.append(name)
    if not texts:
        return []
    text = "; ".join(texts).rstrip(".")
    return [
        {
            "id": "own-limit",
            "area": "safety",
            "kind": "damage",
            "text": f"You have gone beyond a published limit. {text}.",
            "about": list(dict.fromkeys(about)),
            "sources": cite((SOURCE,)),
        }
    ]


def _eased_aspects(judgement: Judgement) -> set[tuple[str, str]]:
    """The cloths and aspects of which a limit was in fact opened."""
    return {
        (cloth, aspect)
        for by_aspect in judgement.gathered.said.values()
        for aspect, said in by_aspect.items()
        for one in said
        if EASED in one.claim.why
        for cloth in one.cloths
    }


def _value(aspect: str, value: float, knowledge: Knowledge, units: System) -> str:
    if aspect == LIMIT_ASPECT:
        return wording.degrees(value, units)
    about = knowledge.aspects[aspect]
    return about.words[int(value)] if about.words else f"{value:g} {about.unit}".strip()
