"""What is fused before its layers meet, and to which of them.

A flat piece is fused before anything is joined to it (common practice). So the heat of such a glue
is no business of the seam, as long as a layer beside it bears that heat and does not rule the glue
out; else the clash stands.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import pairwise

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, decide
from advisor.claims.conflicts import Conflict
from advisor.claims.glued import GLUES
from advisor.claims.speakers import HEAT_ASPECTS, HOTTEST
from advisor.claims.workarounds import INTERFACING, Instruction
from advisor.knowledge.model import Entry, Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.glue_first import BUTTONHOLE, never_fused

LINING = "linings"
MOISTURE = "press.moisture"
FUSED = "fused"
"""An instruction for a glue that is fused to one layer before the others are joined."""


def fused_first(
    garment: Garment,
    verdicts: dict[Place, dict[str, Verdict]],
    knowledge: Knowledge,
    conflicts: Iterable[Conflict],
) -> tuple[Instruction, ...]:
    """Each glue that is fused first, with the layer that it is fused to.

    The other layers of the seam have no say in the interfacing then.
    """
    entries = {n: knowledge.entries[c.entry] for n, c in garment.cloths.items()}
    clashing = {n for c in conflicts for said in c.clash for n in (said.who, *said.cloths)}
    found = []
    for seam in garment.seams:
        place = Place("seam", seam.name)
        early = sorted((seam.apart & set(seam.cloths())) - clashing)
        for glue in (name for name in early if entries[name].kind in GLUES):
            by_aspect = verdicts.get(place, {})
            base = _base(glue, seam, entries, by_aspect)
            if base:
                _settled(by_aspect, frozenset((glue, base)))
                both = (frozenset((glue,)), frozenset((base,)))
                if seam.place == BUTTONHOLE:
                    continue  # its piece is fused at another place
                dry = _driest(base, by_aspect.get(MOISTURE))
                found.append(Instruction(FUSED, *both, (place,), None, dry=dry))
    return tuple(found)


def _settled(by_aspect: dict[str, Verdict], fused: frozenset[str]) -> None:
    """What interfaces a seam is settled between the glue and what it is fused to."""
    kind = by_aspect.get(INTERFACING)
    if kind is not None:
        heard = (*kind.because, *kind.given_up, *kind.clash)
        own = [s for s in heard if s.cloths <= fused and (s.cloths or s.claim.origin == "maker")]
        by_aspect[INTERFACING] = decide(kind.aspect, own)


def _base(
    glue: str, seam: Seam, entries: Mapping[str, Entry], by_aspect: Mapping[str, Verdict]
) -> str:
    """The first layer that bears the glue's heat and moisture and does not rule it out.

    Those that lie beside it come first, and a lining last, for it is what hides the glued side;
    "" where there is none.
    """
    names = [use.cloth for use in seam.uses]
    pairs = (*pairwise(names), *pairwise(reversed(names)))
    beside = [two for one, two in pairs if one == glue]
    kind = by_aspect.get(INTERFACING)
    against = set() if kind is None else {n for s in kind.clash for n in s.cloths}
    cut = names.count  # a band is cut twice, or folded; the edge that it takes in lies there once
    in_turn = sorted(
        dict.fromkeys((*beside, *names)),
        key=lambda n: (entries[n].family == LINING, never_fused(entries[n]), -cut(n)),
    )
    for other in in_turn:
        able = all(_bears(entries[glue], other, by_aspect.get(a)) for a in HEAT_ASPECTS)
        if entries[other].kind == "cloth" and other not in against and able:
            return other
    return ""


def _bears(glue: Entry, name: str, verdict: Verdict | None) -> bool:
    """Whether a layer bears as much heat or moisture as a glue needs."""
    if verdict is None:
        return True
    said = [c for c in glue.claims if c.aspect == verdict.aspect.id and c.span]
    wet = verdict.aspect.id == MOISTURE  # a wish for moisture gives way to what drops would spoil
    floors = [c.span[0] for c in said if c.span and (c.strength == "must" or not wet)]
    return _top(name, verdict) >= max(floors, default=0.0)


def _top(name: str, verdict: Verdict) -> float:
    """The most that a layer bears of an aspect."""
    words = (*verdict.because, *verdict.given_up, *verdict.clash)
    own = [s.claim for s in words if name in s.cloths and s.claim.guards and s.claim.span]
    return min((claim.span[1] for claim in own if claim.span), default=HOTTEST)


def _driest(name: str, verdict: Verdict | None) -> bool:
    """Whether what is fused bears no moisture at all."""
    return verdict is not None and _top(name, verdict) < 1
