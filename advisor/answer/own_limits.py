"""The limits that a maker has loosened for her own cloth: on every sheet, with her reason."""

from __future__ import annotations

from advisor.answer import wording
from advisor.answer.model.told import ToldCaution
from advisor.answer.teller import Teller
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import EASED
from advisor.knowledge.model import LIMIT_ASPECT, Knowledge
from advisor.units import System

SOURCE = "own-test"


def own_limits(judgement: Judgement, teller: Teller) -> tuple[ToldCaution, ...]:
    """One caution that names every limit gone beyond; none where there is none.

    It is one row, and the first, so that no sheet is too short for it.
    """
    texts = []
    about: dict[str, None] = {}
    eased = _eased_aspects(judgement)
    knowledge = teller.knowledge
    for name, cloth in sorted(judgement.garment.cloths.items()):
        for aspect, value, reason in knowledge.entries[cloth.entry].facts.get("loosened", ()):
            if (name, aspect) in eased:
                said = _value(aspect, value, knowledge, teller.units)
                texts.append(f"{name}: {knowledge.aspects[aspect].title} {said}, because: {reason}")
                about[name] = None
    if not texts:
        return ()
    text = f"You have gone beyond a published limit. {'; '.join(texts).rstrip('.')}."
    sources = teller.cite((SOURCE,))
    return (ToldCaution("own-limit", "safety", "damage", teller.say(text), tuple(about), sources),)


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
