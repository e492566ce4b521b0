"""The iron across layers as data: each layer's range and what they have in common."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from advisor.answer.model.heat import ToldCeiling, ToldIron, ToldLayerIron
from advisor.answer.teller import Teller
from advisor.answer.wording import who_text
from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.judgement import Judgement
from advisor.claims.laidalong import laid_in
from advisor.claims.mounted import backings, shells
from advisor.claims.speakers import Said, is_heat_limit
from advisor.claims.valuesets import Span
from advisor.craft.irondial import mark_for, overshoot, steam_possible
from advisor.knowledge.model import COLD, LIMIT_ASPECT
from advisor.project.garment import Garment


def told_iron(judgement: Judgement, teller: Teller) -> tuple[ToldIron, ...]:
    """For every seam, and for the last press: the layers' ranges and what is left of them."""
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
            ToldIron(
                place=place.name,
                scope=place.scope,
                layers=(
                    *(_layer(name, said, teller) for name in names),
                    *_laid(place, by_aspect, said, teller),
                ),
                range_c=(max(verdict.allowed.low, COLD), limit),
                pick_c=verdict.pick,
                advised_c=_advised(verdict),
                conflict=bool(verdict.clash),
                mark=mark.name if mark else None,
                overshoot_k=overshoot(limit),
                steam=steam_possible(limit),
            )
        )
    return tuple(rows)


def _advised(verdict: Verdict) -> float:
    """The most that is advised, which wishes may have brought below what the layers bear."""
    return verdict.advised.high if isinstance(verdict.advised, Span) else COLD


def _names(garment: Garment, place: Place) -> list[str]:
    for seam in garment.seams:
        if place.scope == "seam" and seam.name == place.name:
            return [*seam.cloths(), *shells(seam, garment), *backings(seam, garment)]
    return sorted(garment.cloths)


def _laid(
    place: Place, by_aspect: Mapping[str, Verdict], said: list[Said], teller: Teller
) -> tuple[ToldLayerIron, ...]:
    """What the sheet advises to lay in a seam: a layer that nobody named has its row as well."""
    entry = laid_in(by_aspect, teller.knowledge) if place.scope == "seam" else None
    own = [s for s in said if entry is not None and s.who == entry.name and not s.cloths]
    return (_row(own[0].who, frozenset(), own, teller),) if own else ()


def _layer(name: str, said: list[Said], teller: Teller) -> ToldLayerIron:
    """The range of one layer of a place."""
    fibres = frozenset(f for mix in teller.garment.cloths[name].mixes for f, _ in mix)
    return _row(name, fibres, [s for s in said if name in s.cloths], teller)


def _row(name: str, fibres: frozenset[str], said: Sequence[Said], teller: Teller) -> ToldLayerIron:
    """A range of the iron: the lowest ceiling, the highest need, and who says so."""
    own = [s for s in said if s.claim.span]
    lids = [s for s in own if is_heat_limit(s.claim)]
    lid = min(lids, key=lambda s: (s.claim.span or (0, 999))[1], default=None)
    needs = [s.claim.span[0] for s in own if s.claim.span and s.claim.strength == "must"]
    starts = [s.claim.best for s in lids if s.claim.best is not None]
    published = tuple(
        ToldCeiling(fibre, c.max, teller.cite(c.sources), c.note, c.good)
        for fibre in sorted(fibres)
        for c in teller.knowledge.fibres[fibre].ceilings
    )
    limit = (lid.claim.span or (COLD, COLD))[1] if lid else COLD
    return ToldLayerIron(
        name=name,
        limit_c=limit,
        start_c=min([limit, *starts]),
        needs_c=max([n for n in needs if n > COLD], default=None),
        who=who_text(lid) if lid else name,
        why=teller.say(lid.claim.why) if lid else "",
        sources=teller.cite(lid.claim.sources) if lid else (),
        published=published,
    )
