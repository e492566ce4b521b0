"""What is not known, and what knowing it would change.

Each candidate of a cloth of unknown fibre is tried in its place and the iron limit read again.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.claims.valuesets import Span
from advisor.construction.bulk import picked
from advisor.decide.apart import judge_apart
from advisor.decide.evaluate import judge
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Knowledge, Mix
from advisor.project.facts import NO_IRON
from advisor.project.garment import Garment, Seam, Use


class Unknown(Struct, frozen=True):
    """A cloth whose fibre nobody has named: the limit now, and for each candidate.

    What its name says it holds, it is not hoped to be without: a wool gabardine is no cotton.
    """

    cloth: str
    limit: float
    candidates: tuple[tuple[Mix, float], ...]


def find_unknowns(judgement: Judgement, knowledge: Knowledge) -> list[Unknown]:
    """Every cloth of unknown fibre with what each candidate would allow by itself."""
    found = []
    for name, cloth in sorted(judgement.garment.cloths.items()):
        if cloth.fibre_known:
            continue
        now = _limit(judgement.garment, name, cloth.mixes, knowledge)
        likely = [mix for mix in cloth.mixes if cloth.named <= {fibre for fibre, _ in mix}]
        each = tuple(
            (mix, _limit(judgement.garment, name, (mix,), knowledge))
            for mix in likely or cloth.mixes
        )
        found.append(Unknown(name, now, _as_named(each)))
    return found


def find_ruling(judgement: Judgement, knowledge: Knowledge) -> list[Unknown]:
    """The notions of unknown fibre that bound the iron of the whole, with what each would allow.

    A tie of webbing that may be polypropylene keeps the iron off a whole skirt, and one question
    in the shop may free it; so the limits here are those of the finished garment.
    """
    found = judgement.verdicts.get(_whole(judgement), {}).get(LIMIT_ASPECT)
    now = _whole_limit(judgement)
    rows = []
    heard = found.because if found else ()
    lowest = [s for s in heard if s.claim.span is not None and s.claim.span[1] <= now]
    for name in sorted({n for said in heard for n in said.cloths}):
        if any(name not in said.cloths for said in lowest):
            continue  # another keeps the iron as low, whatever this one is of
        cloth = judgement.garment.cloths[name]
        if cloth.fibre_known or knowledge.entries[cloth.entry].kind == "cloth":
            continue
        each = ((mix, _whole_limit(as_if(judgement, name, mix, knowledge))) for mix in cloth.mixes)
        rows.append(Unknown(name, now, tuple(each)))
    return [one for one in rows if any(limit > now for _, limit in one.candidates)]


def as_if(judgement: Judgement, name: str, mix: Mix, knowledge: Knowledge) -> Judgement:
    """What is said of the garment if one of its cloths is of these fibres."""
    garment = judgement.garment
    known = replace(garment.cloths[name], mixes=(mix,))
    return judge(replace(garment, cloths=garment.cloths | {name: known}), knowledge, judgement)


def _whole(judgement: Judgement) -> Place:
    return Place("garment", judgement.garment.name)


def _whole_limit(judgement: Judgement) -> float:
    found = judgement.verdicts.get(_whole(judgement), {}).get(LIMIT_ASPECT)
    span = None if found is None else found.advised
    return span.high if isinstance(span, Span) and not span.is_empty else COLD


def _as_named(each: tuple[tuple[Mix, float], ...]) -> tuple[tuple[Mix, float], ...]:
    """The candidates, none above what a fibre bears that was named though nobody sells it so.

    Such a cloth is guarded by all that its kind is sold in; but finding out cannot make a cloth
    that holds alpaca bear what cotton bears.
    """
    named = [limit for mix, limit in each if any(share is None for _, share in mix)]
    if not named or len(named) == len(each):
        return each
    return tuple((mix, min(limit, max(named))) for mix, limit in each)


def _limit(garment: Garment, name: str, mixes: tuple[Mix, ...], knowledge: Knowledge) -> float:
    """The iron limit of one cloth by itself, °C; `COLD` where it is pressed with a finger."""
    cloth = replace(garment.cloths[name], mixes=mixes)
    alone = replace(garment, cloths={name: cloth}, seams=(Seam(name, (Use(name),)),))
    verdicts = judge_apart(alone, knowledge).verdicts
    seams = [v for place, v in verdicts.items() if place.scope == "seam"]
    if any(picked(v, "press.motion") == NO_IRON for v in seams):
        return COLD
    limits = [v[LIMIT_ASPECT].allowed for v in seams]
    return min((s.high for s in limits if isinstance(s, Span)), default=0.0)
