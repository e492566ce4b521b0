"""What a glue asks for is nobody's where it is not fused: its seconds, its heat and its damp."""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

from advisor.claims.combine import Verdict, decide, span_of
from advisor.claims.speakers import is_heat_need
from advisor.claims.valuesets import Span
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Knowledge
from advisor.project.garment import Garment

DWELL: Final = "press.dwell"
MOISTURE: Final = "press.moisture"
MOTION: Final = "press.motion"


def _unfused(by_aspect: dict[str, Verdict], glued: set[str]) -> bool:
    """Whether a layer rules the glue out, or the place is pressed cooler than the glue wants."""
    interfacing, heat = by_aspect.get("interfacing.kind"), by_aspect.get(LIMIT_ASPECT)
    if interfacing is not None and interfacing.clash:
        return True
    if heat is None:
        return False
    # Its own fibre's wish for a hot iron may give way where the glue still gets what it needs.
    advised = heat.advised
    high = advised.high if isinstance(advised, Span) and not advised.is_empty else COLD
    left_out = [s for s in (*heat.given_up, *heat.clash) if s.cloths and s.cloths <= glued]
    return any(is_heat_need(s.claim) and span_of(s)[0] > high for s in left_out)


def idle_glue(
    garment: Garment, apart: frozenset[str], by_aspect: dict[str, Verdict], knowledge: Knowledge
) -> None:
    """The seconds of a glue are nobody's where it is ruled out, not hot, or fused before."""
    glued = {
        name
        for name, cloth in garment.cloths.items()
        if "fusible" in knowledge.entries[cloth.entry].kind
    }
    if apart & glued or _unfused(by_aspect, glued):
        _unheard(DWELL, by_aspect, glued)


def fused_here(by_aspect: dict[str, Verdict], glues: frozenset[str]) -> frozenset[str]:
    """The glues; none where a layer rules them out, for there they are to be left out.

    Their heat, their damp and how the iron is set down for them are nobody's then.
    """
    interfacing = by_aspect.get("interfacing.kind")
    if interfacing is None or not interfacing.clash:
        return glues
    for aspect in (LIMIT_ASPECT, MOISTURE):
        if aspect in by_aspect and not by_aspect[aspect].clash:
            _unheard(aspect, by_aspect, glues)
    _unheard(MOTION, by_aspect, glues)
    return frozenset()


def _unheard(aspect: str, by_aspect: dict[str, Verdict], glued: Collection[str]) -> None:
    """An answer without what a glue asks for; no answer where nobody else speaks.

    What it bears at the most stays: she may leave it in all the same.
    """
    verdict = by_aspect.get(aspect)
    if verdict is None:
        return
    said = [*verdict.because, *verdict.given_up, *verdict.clash]
    least = verdict.aspect.low if aspect not in (DWELL, MOTION) else None
    left = [s for s in said if not (s.cloths and s.cloths <= {*glued}) or span_of(s)[0] == least]
    if not left:
        del by_aspect[aspect]
    elif len(left) < len(said):
        by_aspect[aspect] = decide(verdict.aspect, left)
