"""What matching a pattern from piece to piece costs in length: a repeat for each row of them.

A lay begins matched pieces at a repeat, and no two patterns of a garment meet it at one height: a
front that is to match a side front is moved by up to a whole repeat. Within a row nothing is lost
by that; each further row may lose one.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from advisor.construction.cutting import Cut, all_on_cloth
from advisor.craft import cloth as lay
from advisor.craft.lying import lying


def rows_of(cuts: Sequence[Cut], found: lay.Estimate) -> int:
    """How many rows of matched pieces lie one after the other along the cloth."""
    laid = lying(found.laid, all_on_cloth(cuts))
    return len({round(lies.y) for lies in laid if cuts[lies.piece].piece.matched})


def with_rows(sold: lay.BoughtCloth, rows: int) -> lay.BoughtCloth:
    """The cloth with a repeat for each row after the first, which has its own already."""
    return replace(sold, ends_mm=sold.ends_mm + max(0, rows - 1) * sold.repeat_mm)
