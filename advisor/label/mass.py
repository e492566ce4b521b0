"""The fibre content of a whole garment by mass, where its parts need not be told apart.

In the EU each component with a content of its own is stated, but not those that are no main lining
and less than 30 % of the weight (`eu-1007-2011` Art. 11(2), memory). Where that leaves one part,
the content of the whole by mass may stand for it: of each fibre the sum over the cloths of mass
times share (`derived`). Masses are of the pieces as cut; where a weight is only usual the least
favourable ends count for the 30 %.
"""

from __future__ import annotations

from typing import Final

from msgspec import Struct

from advisor.claims.judgement import Judgement
from advisor.construction.clothlist import cloths_to_buy
from advisor.construction.weighing import weigh
from advisor.craft.fibrelabel import Share, Small, content, content_text
from advisor.knowledge.labels import Market
from advisor.knowledge.model import Knowledge
from advisor.label.content import Content
from advisor.project.linings import lining_by_seams

MARKETS: Final = frozenset({"eu"})
LESSER: Final = 0.30
"""Below this share of the weight a part that is no main lining need not be stated."""
LINING: Final = "lining"
SOURCES: Final = ("eu-1007-2011 Art 11", "memory", "derived")


class WholeContent(Struct, frozen=True):
    """What a label may say of the whole: the line, the shares of its parts, whether usual weights.

    `parts` are the shares of the whole mass by cloth, the heaviest first.
    """

    text: str
    parts: tuple[tuple[str, float], ...]
    usual: bool


def whole_content(
    judgement: Judgement, knowledge: Knowledge, market: Market, said: Content
) -> WholeContent | None:
    """The content of the whole by mass; None where parts have to be told apart or masses lack."""
    names = [name for part in said.parts for name in part.cloths]
    if market.id not in MARKETS or said.missing or said.animal or len(said.parts) < 2:
        return None
    weighed = weigh(judgement, cloths_to_buy(judgement, knowledge), (), knowledge)
    if weighed is None or not all(name in weighed.cloths for name in names):
        return None
    ends = {name: weighed.cloths[name] for name in names}
    cloths = judgement.garment.cloths
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in cloths.items()}
    linings = lining_by_seams(judgement.garment.seams, entries, knowledge.places.kinds)
    grouped = [
        (sum(ends[n][0] for n in part.cloths), sum(ends[n][1] for n in part.cloths), part.cloths)
        for part in said.parts
    ]
    most = [high / (high + sum(o[0] for o in grouped) - low) for low, high, _ in grouped]
    main = max(range(len(grouped)), key=lambda i: sum(grouped[i][:2]))
    for i, (_, _, part) in enumerate(grouped):
        lining = any(n in linings or _is_lining(n, cloths[n].entry, knowledge) for n in part)
        if i != main and (most[i] >= LESSER or lining):
            return None
    mass = {name: sum(low_high) / 2 for name, low_high in ends.items()}
    whole = sum(mass.values())
    fibres: dict[str, float] = {}
    for name, grams in mass.items():
        for fibre, share in cloths[name].mixes[0]:
            fibres[fibre] = fibres.get(fibre, 0.0) + grams / whole * (share or 0.0)
    few = market.small_amounts
    small = Small(few.below, few.one, few.more, few.named) if few else None
    shares = [Share(f, market.names[f].say or f, p) for f, p in fibres.items() if p > 0]
    parts = sorted(mass.items(), key=lambda item: (-item[1], item[0]))
    return WholeContent(
        content_text(content(shares, small), market.joint),
        tuple((name, grams / whole) for name, grams in parts),
        any("weight" in cloths[name].assumed for name in names),
    )


def _is_lining(name: str, entry: str, knowledge: Knowledge) -> bool:
    words = name.casefold().replace("_", " ").replace("-", " ").split()
    return LINING in words or knowledge.entries[entry].family == "linings"
