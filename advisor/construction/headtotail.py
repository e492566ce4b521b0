"""What a sheen costs: tapered pieces of a plain satin would lie head to tail, were it laid so."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from msgspec.structs import replace

from advisor.claims.combine import Verdict
from advisor.claims.valuesets import Choice
from advisor.construction.cutting import Cut, all_on_cloth
from advisor.craft import cloth as lay
from advisor.knowledge.model import Entry

SHEEN: Final = "satins"
"""The family of cloths of which only the sheen shades, and in some lengths does not."""
TURNED: Final = "either way"
SAVES: Final = 300.0
"""So much has to be saved before it is worth a look at two lengths, mm (estimate)."""


def head_to_tail(
    cuts: Sequence[Cut], sold: lay.BoughtCloth, length: float, entry: Entry, way: Verdict | None
) -> lay.Estimate | None:
    """The lay with its tapered pieces turned, where no guard forbids that and it saves enough.

    No pattern with an up, no pile: a cloth that has one keeps its way, whatever that costs.
    """
    tapered = any(cut.piece.narrow is not None for cut in cuts)
    plain = entry.family == SHEEN and not sold.repeat_mm and sold.one_way
    if not (tapered and plain) or way is None or not isinstance(way.allowed, Choice):
        return None
    if way.aspect.words.index(TURNED) not in way.allowed.options():
        return None
    turned = lay.estimate(all_on_cloth(cuts), replace(sold, one_way=False))
    return turned if length - turned.length_mm >= SAVES else None
