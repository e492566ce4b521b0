"""A cloth lighter than any that is sold by its name: of needle and thread it takes the low end.

What its file likes best there is for its usual weights; what it bears and needs stays as it is.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from msgspec.structs import replace

from advisor.knowledge.model import Claim, Entry
from advisor.project.garment import Cloth

BY_WEIGHT: Final = frozenset({"needle.size", "thread.size"})
"""What a handbook gives by the weight of a cloth."""


def as_weighed(cloth: Cloth, entry: Entry) -> Iterator[Claim]:
    """What a cloth's file says, as far as its weight goes."""
    usual, given = entry.weight, cloth.weight
    light = usual is not None and given is not None and given[1] < usual[0]
    for claim in entry.claims:
        if light and claim.aspect in BY_WEIGHT and claim.best is not None and claim.span:
            yield replace(claim, best=claim.span[0])
        else:
            yield claim
