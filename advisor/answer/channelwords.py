"""How wide a channel is stitched for what runs in it, in words.

It is 3 to 6 mm wider than an elastic, so that this neither rolls nor twists (`common-practice`).
"""

from __future__ import annotations

from typing import Final

from advisor.claims.judgement import Judgement
from advisor.construction.widths import width_of
from advisor.knowledge.model import Knowledge

CASING: Final = "casing"
ROOM: Final = (3.0, 6.0)
"""What a channel is wider than a flat thing in it, mm, from and to."""


def channels(judgement: Judgement, knowledge: Knowledge) -> dict[str, str]:
    """How wide each channel is stitched, by its place; its quantities stand in braces."""
    garment = judgement.garment
    found = {}
    for seam in garment.seams:
        if seam.place != CASING:
            continue
        for name in seam.cloths():
            entry = knowledge.entries[garment.cloths[name].entry]
            wide = None if entry.kind == "cloth" else width_of(name, seam, entry, garment)
            if wide is None or wide.mm is None or wide.round:
                continue
            low, high = (wide.mm + room for room in ROOM)
            usual = "" if wide.said else "the usual "
            channel = f"the channel {{{low:g} to {high:g} mm}} wide"
            found[seam.name] = f"{channel} for {name} of {usual}{{{wide.mm:g} mm}}"
    return found
