"""Over what a garment is worn, read from its name, its cloths and its places.

What may be slept in has rules of its own, and so has what is worn out of doors: cords at a hood
catch there. A garment of which nothing tells is taken for neither. The lists are common practice.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment

ENDS: Final = ("coat", "jacket")
"""How the names of coats end: raincoat, overcoat, windjacket."""
RAINPROOF: Final = "coated"
PADDED: Final = frozenset({"wadding", "quilted"})
HOOD: Final = "hood"
ZIPPED: Final = "open-ended-zip"


def worn_over(garment: Garment, knowledge: Knowledge) -> bool:
    """Whether it is surely a coat, a jacket or the like, so that nobody sleeps in it."""
    words = set(singular_words(garment.name))
    if words & (nouns.SLEPT_IN | nouns.NOT_WORN_OVER):
        return False
    if words & nouns.WORN_OVER or any(word.endswith(ENDS) for word in words):
        return True
    entries = [knowledge.entries[cloth.entry] for cloth in garment.cloths.values()]
    if any(entry.family == RAINPROOF and entry.structure == "woven" for entry in entries):
        return True
    ids = {entry.id for entry in entries}
    return bool(ids & PADDED) and (hooded(garment) or ZIPPED in ids)


def hooded(garment: Garment) -> bool:
    """Whether it has a hood: some place or cloth of it is called so."""
    names = (*garment.cloths, *(seam.name for seam in garment.seams))
    return any(HOOD in singular_words(name) for name in names)
