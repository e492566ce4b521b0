"""The iron across layers as data: each layer's range and what they have in common."""

from __future__ import annotations

from typing import Any

from advisor.answer.wording import who_text
from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Span
from advisor.craft.irondial import mark_for, overshoot, steam_possible
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Knowledge
from advisor.project.garment import Garment


def iron_report(judgement: Judgement, knowledge: Knowledge) -> list[dict[str, Any]]:
    """For every seam, and for the last press: the layers' ranges and what is left of them.

    Returns:
        `[{"place", "layers": [{"name", "limit_c", "start_c", "needs_c", "why", "sources",
        "published"}], "range_c": [low, high], "advised_c", "mark", "overshoot_k", "steam"}]`
    """
    rows = []
    for place, by_aspect in judgement.verdicts.items():
        verdict = by_aspect.get(LIMIT_ASPECT)
        if verdict is None or not isinstance(verdict.allowed, Span):
            continue
        said = [*verdict.because, *verdict.given_up]
        names = _names(judgement.garment, place)
        limit = verdict.allowed.high
        mark = mark_for(limit)
        rows.append(
            {
                "place": place.name,
                "scope": place.scope,
                "layers": [_layer(name, said, judgement.garment, knowledge) for name in names],
                "range_c": [max(verdict.allowed.low, COLD), limit],
                "pick_c": verdict.pick,
                "advised_c": _advised(verdict),
                "conflict": bool(verdict.clash),
                "mark": mark.name if mark else None,
                "overshoot_k": overshoot(limit),
                "steam": steam_possible(limit),
            }
        )
    return rows


def _advised(verdict: Verdict) -> float:
    """The most that is advised, which wishes may have brought below what the layers bear."""
    return verdict.advised.high if isinstance(verdict.advised, Span) else COLD


def _names(garment: Garment, place: Place) -> list[str]:
    for seam in garment.seams:
        if place.scope == "seam" and seam.name == place.name:
            return list(seam.cloths())
    return sorted(garment.cloths)


def _layer(name: str, said: list[Said], garment: Garment, knowledge: Knowledge) -> dict[str, Any]:
    """The range of one layer: its lowest ceiling, its highest need, and who says so."""
    own = [s for s in said if name in s.cloths and s.claim.span]
    lids = [s for s in own if s.claim.strength == "must" and s.claim.risk != "result"]
    lid = min(lids, key=lambda s: (s.claim.span or (0, 999))[1], default=None)
    needs = [s.claim.span[0] for s in own if s.claim.span and s.claim.strength == "must"]
    starts = [s.claim.best for s in lids if s.claim.best is not None]
    fibres = {f for mix in garment.cloths[name].mixes for f, _ in mix}
    published = [
        {"fibre": f, "max_c": c.max, "sources": list(c.sources), "note": c.note, "counts": c.good}
        for f in sorted(fibres)
        for c in knowledge.fibres[f].ceilings
    ]
    limit = (lid.claim.span or (COLD, COLD))[1] if lid else COLD
    return {
        "name": name,
        "limit_c": limit,
        "start_c": min([limit, *starts]),
        "needs_c": max([n for n in needs if n > COLD], default=None),
        "who": who_text(lid) if lid else name,
        "why": lid.claim.why if lid else "",
        "sources": list(lid.claim.sources) if lid else [],
        "published": published,
    }
