"""What nobody asks of a place: no pins of a button, no foot and no tension where the hand sews."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from advisor.answer.model.told import ToldVerdict
from advisor.knowledge.places import GROUPS

SEWN: Final = frozenset((*GROUPS["machine"], *GROUPS["thread"], *GROUPS["pins"]))
"""What is asked of the sewing and not of the place: where nothing is sewn it is not asked."""


def unasked(verdicts: Mapping[str, ToldVerdict], aspect: str) -> bool:
    """Whether nobody asks this of a place, as of the needle where buttons are sewn on.

    Nor of foot and tension where the hand sews: the stitch alone is told there.
    """
    stitch = verdicts.get("stitch.type")
    by_hand = stitch is not None and stitch.options == ("hand",)
    if by_hand and aspect in GROUPS["machine"] and aspect not in verdicts:
        return True
    group = next((g for g in GROUPS.values() if aspect in g), ())
    return bool(group) and not any(a in verdicts for a in group)
