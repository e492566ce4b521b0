"""Whether a sleeve goes into an armhole: its cloths, parts, pieces and the other places tell."""

from __future__ import annotations

from collections import Counter
from itertools import chain

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.project.garment import Garment
from advisor.project.headwords import speaks_of, the_words

SLEEVE = "sleeve"
EASED = 1.0
"""A layer fuller than its seam is a sleeve that is eased or gathered in."""
PAIR = 2


def sleeve_goes_in(armhole: SeamPlace, garment: Garment) -> bool:
    """Whether a sleeve is told of, or two like edges meet at an armhole.

    A body with its backing or its lining there is an armhole that is finished by itself, and wings
    are no sleeves.
    """
    words = set(chain.from_iterable(map(the_words, _names(garment))))
    full = any(use.fullness > EASED for use in armhole.seam.uses)
    if SLEEVE in words or full:
        return True
    bare = speaks_of(garment.name, nouns.SLEEVELESS) and armhole.unit == "both"
    if nouns.WINGS & words or bare or "layers" in armhole.seam.assumed:
        return False
    met = Counter(use.cloth for use in armhole.seam.uses if use.cloth in armhole.cloths)
    return max(met.values(), default=0) > 1 or (len(met) == PAIR and armhole.unit != "both")


def _names(garment: Garment) -> list[str]:
    """How places, parts, pieces and cloths are called."""
    return [
        *(seam.name for seam in garment.seams),
        *(part.name for part in garment.parts),
        *(piece.name for piece in garment.plan.pieces),
        *garment.cloths,
    ]
