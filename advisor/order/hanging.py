"""A skirt that is cut in a circle or flared: much of its edge hangs on the bias, whatever is said.

Its hem is curved, and far longer than the waist that it falls from, or than any hip; straight
widths that are gathered above are as wide below, and hang on the grain.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.project.placing import singular_words

CIRCLE: Final = 3.0
"""From how many times the waist a curved hem is one of a circle: estimate; a half one has 4."""
CIRCULAR: Final = frozenset({"circle", "circular"})
FLARED_MM: Final = 1800.0
"""A curved hem from this length on is wider than any hip that it falls from, mm: estimate."""


def cut_in_a_circle(hem: SeamPlace, places: Iterable[SeamPlace], garment: str) -> str:
    """Why the edge of a hem is taken to hang on the bias; "" where it is not."""
    if hem.said("bias") == "no" or hem.said("shape") != "curved":
        return ""
    if CIRCULAR & {*singular_words(hem.name), *singular_words(garment)}:
        return "its name says so"
    length = hem.seam.long_mm
    places = tuple(places)
    straight = any(p.full and set(p.full) & set(hem.cloths) for p in places)
    waists = [
        p for p in places if p.role.id in nouns.WAISTS and "length" in p.seam.facts and not p.full
    ]
    waist = next((p for p in waists if p.seam.making.pleats is None), None)
    if waist is not None and length >= CIRCLE * float(waist.seam.facts["length"]):
        return f"it is curved and more than three times as long as {waist.name}"
    return "it is curved and longer than any hip" if length >= FLARED_MM and not straight else ""
