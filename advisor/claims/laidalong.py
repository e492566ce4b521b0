"""What is advised to be laid along a seam is a layer of it too: the iron there is what it bears.

An elastic of film that holds a shoulder is in by the time that the seam is pressed, whether the
maker lists it or the sheet advises it. Where a cloth cannot do without more heat than that, another
stay is advised.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, decide, narrowed
from advisor.claims.speakers import HEAT_ASPECTS, Said
from advisor.claims.valuesets import Choice
from advisor.knowledge.model import LIMIT_ASPECT, Entry, Knowledge

SUPPORT: Final = "seam.support"
TOO_COOL: Final = "It melts below the heat that this seam cannot do without."


def laid_in(by_aspect: Mapping[str, Verdict], knowledge: Knowledge) -> Entry | None:
    """What the sheet advises to lay along a place, as the knowledge has it; None if nothing."""
    held = by_aspect.get(SUPPORT)
    if held is None or held.pick is None:
        return None
    return knowledge.entries.get(held.aspect.words[int(held.pick)].replace(" ", "-"))


def stay_bears(place: Place, by_aspect: dict[str, Verdict], knowledge: Knowledge) -> None:
    """Let what is laid along a seam speak of the iron there, or advise a stay that bears more."""
    entry, heat = laid_in(by_aspect, knowledge), by_aspect.get(LIMIT_ASPECT)
    if place.scope != "seam" or entry is None or heat is None or heat.clash:
        return
    said = [Said(entry.name, claim) for claim in entry.claims if claim.aspect in HEAT_ASPECTS]
    if not any(s.claim.aspect == LIMIT_ASPECT for s in said):
        return
    found = {}
    for aspect in sorted({s.claim.aspect for s in said} & by_aspect.keys()):
        before = by_aspect[aspect]
        heard = [*before.because, *before.given_up]
        own = [s for s in said if s.claim.aspect == aspect and s not in heard]
        found[aspect] = decide(before.aspect, [*heard, *own], together=True)
    if not any(verdict.clash for verdict in found.values()):
        by_aspect.update(found)
        return
    held = by_aspect[SUPPORT]
    left = [word for word in _options(held) if word != entry.name]
    if left:
        by_aspect[SUPPORT] = narrowed(held, left, TOO_COOL)


def _options(held: Verdict) -> list[str]:
    if not isinstance(held.allowed, Choice):
        return []
    return [held.aspect.words[at] for at in held.allowed.options()]
