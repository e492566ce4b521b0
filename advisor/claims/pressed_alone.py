"""Who is pressed by itself first, though nothing clashes: its wish for the iron has given way.

A seam keeps to the iron of its tenderest layer. A wool beside a waxed cotton then gets neither heat
nor moisture there, and a satin under sequins no iron at all; each is pressed while it is a piece
(common practice). Whoever clashes already, or is told of already, is not told again.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.combine import HEARSAY, Verdict, decide, start_of
from advisor.claims.conflicts import Conflict
from advisor.claims.speakers import HEAT_ASPECTS, HOTTEST, Said, is_heat_limit, is_heat_need
from advisor.claims.valuesets import Span
from advisor.claims.workarounds import (
    ALONE,
    GLUED,
    LINING,
    PART,
    PARTS,
    RESTING,
    Instruction,
    is_lining,
)
from advisor.craft.irondial import MARKS, ROUNDING, mark_for
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Entry, Knowledge
from advisor.project.garment import Garment, Seam

MOISTURE = "press.moisture"
Key = tuple[str, frozenset[str], frozenset[str]]
Spot = tuple[Place, float | None]


def pressed_alone(
    garment: Garment,
    verdicts: Mapping[Place, Mapping[str, Verdict]],
    knowledge: Knowledge,
    conflicts: Iterable[Conflict],
    told: Iterable[Instruction],
) -> tuple[Instruction, ...]:
    """What is told already, and one instruction more for each who-and-whom of the seams.

    Where a part has to be kept from the iron of another cloth anyway, one instruction does for all.
    """
    every = list(told)
    for key, spots in _found(garment, verdicts, knowledge, conflicts, every):
        every.append(Instruction(*key, tuple(place for place, _ in spots), spots[0][1]))
    merged: dict[object, Instruction] = {}
    for one in every:
        # Each who-and-whom by itself, but of a part kept from the iron of several cloths one.
        same = (one.kind, one.tender, one.places, one.needy if one.kind != PART else None)
        known = merged.get(same, one)
        merged[same] = replace(known, needy=known.needy | one.needy)
    return tuple(merged.values())


def _found(
    garment: Garment,
    verdicts: Mapping[Place, Mapping[str, Verdict]],
    knowledge: Knowledge,
    conflicts: Iterable[Conflict],
    told: Sequence[Instruction],
) -> Iterable[tuple[Key, list[Spot]]]:
    """Who is pressed alone before whom, and where; with what the tender ones bear."""
    entries = {n: knowledge.entries[c.entry] for n, c in garment.cloths.items()}
    said = _said(conflicts, told)
    found: dict[Key, list[Spot]] = {}
    for seam in garment.seams:
        place = Place("seam", seam.name)
        early = frozenset(seam.cloths()) if seam.cold else seam.apart
        kept: dict[tuple[frozenset[str], float | None], set[str]] = {}
        for name in dict.fromkeys(seam.cloths()):
            if entries[name].kind == "cloth" and name not in early and (place, name) not in said:
                tender = _kept_from(name, seam, verdicts.get(place, {}), entries)
                kept.setdefault(tender, set()).add(name)
        for (tender_ones, most), needy in kept.items():
            if tender_ones:
                key = (_kind(tender_ones, entries), frozenset(needy), tender_ones)
                found.setdefault(key, []).append((place, most))
    return found.items()


def _said(conflicts: Iterable[Conflict], told: Iterable[Instruction]) -> set[tuple[Place, str]]:
    """Of whom it is told already, and where."""
    spots = {(place, name) for item in told for place in item.places for name in item.needy}
    every = (other for conflict in conflicts for other in (conflict, *conflict.also))
    return spots | {
        (one.place, name)
        for one in every
        if one.aspect in HEAT_ASPECTS
        for words in one.clash
        for name in words.cloths
    }


def _kind(tender: Iterable[str], entries: Mapping[str, Entry]) -> str:
    if all(entries[name].kind in PARTS for name in tender):
        return PART
    return LINING if all(is_lining(name, entries[name]) for name in tender) else ALONE


def _kept_from(
    name: str,
    seam: Seam,
    by_aspect: Mapping[str, Verdict],
    entries: Mapping[str, Entry],
) -> tuple[frozenset[str], float | None]:
    """The layers that keep the iron or the moisture of a seam from one that wants it."""
    heat, moist = by_aspect.get(LIMIT_ASPECT), by_aspect.get(MOISTURE)
    if heat is None or not isinstance(heat.advised, Span) or heat.advised.is_empty:
        return frozenset(), None
    there = [other for other in seam.cloths() if other not in seam.apart]
    # A glue comes to a cloth, not a cloth to it: how hot it may be pressed there, each step says.
    lids = {other: _lid(heat, other) for other in there if entries[other].kind not in GLUED}
    own = lids.pop(name)
    tender = _cooler(own, lids, [low for low in _wants(heat, name) if low <= own], heat.advised)
    cooler = {n for n, lid in lids.items() if _dots(lid) < _dots(own)}
    if not tender and all(entries[n].kind in PARTS for n in cooler):
        tender = cooler
    if tender:
        least = min(lids[n] for n in tender)
        return frozenset(n for n in tender if _dots(lids[n]) == _dots(least)), least
    if _dots(own) and not _dots(heat.advised.high):
        return frozenset(n for n in _unrested(by_aspect) if n != name and n in lids), COLD
    # What lies basted behind is pressed with its face in every seam, so no piece comes before it.
    drier = frozenset() if moist is None else _drier(name, moist) & set(seam.cloths())
    cloths = frozenset(n for n in drier if entries[n].kind not in PARTS)
    return cloths or drier, None


def _cooler(
    own: float, lids: Mapping[str, float], wants: Sequence[float], advised: Span
) -> set[str]:
    """Who bears less than a layer wants, or no iron where it bears one.

    From two dots on every cloth takes a press, if not its best.
    """
    wanted = max(wants, default=0.0) if _dots(advised.high) <= 1 else 0.0
    if not _dots(advised.high) and _dots(own):
        wanted = max(wanted, MARKS[0].ceiling - ROUNDING)
    return {n for n, lid in lids.items() if lid < wanted}


def _unrested(by_aspect: Mapping[str, Verdict]) -> set[str]:
    """Who bears no weight of an iron: it is steamed from above, or opened with the fingers."""
    motion = by_aspect.get("press.motion")
    if motion is None:
        return set()
    rests = sum(1 << i for i, word in enumerate(motion.aspect.words) if word in RESTING)
    return {n for s in _words(motion) if not s.claim.mask & rests for n in s.cloths}


def _drier(name: str, moist: Verdict) -> frozenset[str]:
    """Who has to stay drier than a layer wants to be pressed, unless it has to itself."""
    wet = max(_wants(moist, name), default=0.0)
    dry = {n for s in _words(moist) if s.claim.span and s.claim.span[1] < wet for n in s.cloths}
    mild = ((s.claim.best, s.cloths) for s in moist.because if s.claim.guards)
    drier = {n for best, names in mild if best is not None and best < wet for n in names}
    drier = {n for n in drier if max(_wants(moist, n), default=0.0) < wet}  # wool takes its damp
    return frozenset() if name in dry else frozenset(dry | drier - {name})


def _dots(heat: float) -> int:
    mark = mark_for(heat)
    return 0 if mark is None else mark.dots


def _words(verdict: Verdict) -> Iterator[Said]:
    yield from (*verdict.because, *verdict.given_up)


def _wants(verdict: Verdict, name: str) -> Iterator[float]:
    """The least heat or moisture of each published wish of a cloth that gave way."""
    for said in verdict.given_up:
        claim = said.claim
        if said.cloths == {name} and claim.rank < HEARSAY and is_heat_need(claim) and claim.span:
            yield claim.span[0]


def _lid(heat: Verdict, name: str) -> float:
    """What a layer bears of the iron, as far as anybody says."""
    lids = (s for s in _words(heat) if name in s.cloths and is_heat_limit(s.claim))
    return min((s.claim.span[1] for s in lids if s.claim.span), default=HOTTEST)


def heard_apart(
    verdicts: Mapping[Place, dict[str, Verdict]], instructions: Iterable[Instruction]
) -> None:
    """Decide each such seam anew without what those want of the iron who are pressed before it.

    What they bear still counts, and they start no cooler than they do by themselves.
    """
    for item in instructions:
        for place in item.places if item.kind in (LINING, ALONE) else ():
            for name in HEAT_ASPECTS & verdicts.get(place, {}).keys():
                verdict = verdicts[place][name]
                heard, early = list(_words(verdict)), item.needy
                left = [_unasking(s, heard, verdict) if s.cloths <= early else s for s in heard]
                if place.scope == "seam" and left != heard:
                    verdicts[place][name] = decide(verdict.aspect, left, together=True)


def _unasking(said: Said, words: list[Said], verdict: Verdict) -> Said:
    """What somebody bears, without what it asks for."""
    claim = said.claim
    if not said.cloths or not claim.span:
        return said
    if not is_heat_need(claim):
        start = None if claim.best is None else start_of(said.cloths, words)
        return said if start is None else replace(said, claim=replace(claim, best=start))
    span = (verdict.aspect.low, claim.span[1])
    return replace(said, claim=replace(claim, span=span, best=None, ends=(claim.purposes[1],) * 2))
