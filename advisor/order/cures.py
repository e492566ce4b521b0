"""Which remedies of the sheet the order of work carries out: those that mean "earlier"."""

from __future__ import annotations

from advisor.claims.conflicts import Conflict
from advisor.claims.judgement import Advice, Cure
from advisor.knowledge.model import Knowledge


def chosen_cures(advice: Advice) -> dict[tuple[str, str], Cure]:
    """For each conflict the remedy that the order carries out: the cheapest that means earlier."""
    earlier = ("press-before-joining", "fuse-before-joining")
    chosen: dict[tuple[str, str], Cure] = {}
    for key, cures in advice.cures.items():
        best = next((cure for cure in cures if cure.remedy in earlier), None)
        best = best or next(iter(cures), None)
        if best is not None:
            chosen[key] = best
    return chosen


def heat_pairs(
    advice: Advice, knowledge: Knowledge
) -> list[tuple[Conflict, frozenset[str], frozenset[str]]]:
    """Conflicts cured by pressing earlier, each with who wants the heat and who cannot bear it."""
    pairs = []
    chosen = chosen_cures(advice)
    for conflict in advice.judgement.conflicts:
        cure = chosen.get(conflict.key)
        if cure is None or cure.remedy != "press-before-joining":
            continue
        after = cure.after.garment
        apart = [seam.apart for seam in after.seams if seam.name == conflict.place.name]
        needy = after.apart if conflict.place.scope == "garment" else frozenset().union(*apart)
        harmed = [s.cloths for s in conflict.clash if s.claim.risk != "result"]
        # A zip or a button is walked round with the iron; a cloth cannot be.
        tender = frozenset(
            name
            for name in frozenset().union(*harmed) - needy
            if knowledge.entries[after.cloths[name].entry].kind == "cloth"
        )
        if not tender:
            continue
        pairs.append((conflict, needy, tender))
    return pairs
