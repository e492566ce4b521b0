"""From a garment to verdicts and conflicts; what a remedy makes of them is a judgement too."""

from __future__ import annotations

from dataclasses import dataclass

from advisor.engine.agree import LINKED, agree
from advisor.engine.claims import Gathered, Place, gather
from advisor.engine.combine import Verdict, decide
from advisor.engine.conflicts import Conflict, find_conflicts
from advisor.engine.shrinking import SHRINK, shrink_as_cleaned
from advisor.engine.speakers import Said
from advisor.engine.work.bulk import add_bulk
from advisor.engine.work.needlestack import add_needles
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment

AFRESH = LINKED | {SHRINK}
"""Aspects that hang on other answers, so that like words may bring another verdict."""


@dataclass(frozen=True, slots=True)
class Judgement:
    """What was said of a garment, what came of it, and where it clashes."""

    garment: Garment
    gathered: Gathered
    verdicts: dict[Place, dict[str, Verdict]]
    conflicts: tuple[Conflict, ...]


@dataclass(frozen=True, slots=True)
class Cure:
    """A remedy that was applied and re-run: its conflict is gone and none is new."""

    remedy: str
    words: dict[str, str]
    after: Judgement
    effort: int
    look: int


def judge(garment: Garment, knowledge: Knowledge, before: Judgement | None = None) -> Judgement:
    """Combine everything said about a garment; no remedies are tried.

    `before` is of a garment much like it: where the same is said, its verdict is taken over.
    """
    gathered = gather(garment, knowledge, None if before is None else before.gathered)
    order = {aspect: i for i, aspect in enumerate(knowledge.aspects)}
    verdicts = {
        place: {
            name: _same(place, name, by_aspect[name], before)
            or decide(knowledge.aspects[name], by_aspect[name])
            for name in sorted(by_aspect, key=order.__getitem__)
        }
        for place, by_aspect in gathered.said.items()
    }
    agree(garment, verdicts, knowledge)
    shrink_as_cleaned(garment, verdicts, knowledge)
    add_bulk(garment, gathered, verdicts, knowledge)
    add_needles(garment, gathered, verdicts, knowledge)
    return Judgement(garment, gathered, verdicts, tuple(find_conflicts(verdicts)))


def _same(place: Place, aspect: str, said: list[Said], before: Judgement | None) -> Verdict | None:
    """The verdict of before, if exactly the same was said then."""
    if aspect in AFRESH or before is None or aspect not in before.verdicts.get(place, {}):
        return None
    return before.verdicts[place][aspect] if before.gathered.said[place][aspect] == said else None
