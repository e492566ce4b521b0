"""Which remedies of the sheet the order of work carries out: those that mean "earlier"."""

from __future__ import annotations

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.judgement import Advice, Cure, Judgement
from advisor.claims.speakers import HOTTEST
from advisor.claims.valuesets import Choice
from advisor.claims.workarounds import ALONE, GLUED, LINING
from advisor.heat.stacks import layer_limits
from advisor.knowledge.model import LIMIT_ASPECT, Knowledge
from advisor.project.garment import Garment, Seam

FUSED = "fuse-before-joining"


def chosen_cures(advice: Advice) -> dict[tuple[str, str], Cure]:
    """For each conflict the remedy that the order carries out: the cheapest that means earlier."""
    earlier = ("press-before-joining", FUSED)
    chosen: dict[tuple[str, str], Cure] = {}
    for key, cures in advice.cures.items():
        best = next((cure for cure in cures if cure.remedy in earlier), None)
        best = best or next(iter(cures), None)
        if best is not None:
            chosen[key] = best
    return chosen


def heat_pairs(
    advice: Advice, knowledge: Knowledge
) -> list[tuple[str, frozenset[str], frozenset[str]]]:
    """Who is pressed earlier, where, and who cannot bear that: what was taken, what the sheet says
    to press by itself, and for a conflict that still stands its remedy that means earlier.
    """
    judgement = advice.judgement
    pairs = [*_taken(judgement, knowledge)]
    for item in judgement.instructions:
        if item.kind in (LINING, ALONE):
            pairs += [(place.name, item.needy, item.tender) for place in item.places]
    chosen = chosen_cures(advice)
    for conflict in judgement.conflicts:
        cure = chosen.get(conflict.key)
        if cure is not None and cure.remedy == "press-before-joining":
            pairs += _taken(cure.after, knowledge, set(conflict.places))
    kept = []
    for place, needy, tender in pairs:
        # A zip or a button is walked round with the iron; a cloth cannot be.
        cloths = frozenset(n for n in tender if _is_cloth(n, advice, knowledge))
        if cloths:
            kept.append((place, needy, cloths))
    return kept


def fused_first(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether the project fuses an interfacing of a seam before the seam is sewn."""
    return any(knowledge.entries[garment.cloths[n].entry].kind in GLUED for n in seam.apart)


def cured_earlier(place: str, advice: Advice, kind: Verdict | None) -> bool:
    """Whether what is told first against a clash of a place is to fuse it to a piece by itself.

    Where the sheet names what to lay there instead, and not also nothing, that is done.
    """
    if kind and isinstance(kind.advised, Choice):
        words = {kind.aspect.words[i] for i in kind.advised.options()}
        if words and "none" not in words:
            return False
    told = (c.key for c in advice.judgement.conflicts if place in c.places)
    return any(cures[0].remedy == FUSED for key in told if (cures := advice.cures.get(key)))


def _is_cloth(name: str, advice: Advice, knowledge: Knowledge) -> bool:
    cloth = advice.judgement.garment.cloths[name]
    return knowledge.entries[cloth.entry].kind == "cloth"


def _taken(
    judgement: Judgement, knowledge: Knowledge, places: set[str] | None = None
) -> list[tuple[str, frozenset[str], frozenset[str]]]:
    """Each seam that says what is pressed first, with that and with what could not bear it."""
    pairs = []
    for seam in judgement.garment.seams:
        needy = frozenset(
            name
            for name in seam.apart
            if knowledge.entries[judgement.garment.cloths[name].entry].kind == "cloth"
        )
        if not needy or (places is not None and seam.name not in places):
            continue
        verdict = judgement.verdicts[Place("seam", seam.name)].get(LIMIT_ASPECT)
        others = frozenset(seam.cloths()) - seam.apart
        limits = {} if verdict is None else layer_limits(verdict, seam.cloths())
        hot = max((limits.get(n) or HOTTEST for n in needy), default=HOTTEST)
        tender = frozenset(n for n in others if (limits.get(n) or HOTTEST) < hot)
        pairs.append((seam.name, needy, tender or others))
    return pairs
