"""A border of another cloth: laid on a piece whose edge is finished over both of them."""

from __future__ import annotations

from collections.abc import Iterable

from advisor.knowledge.places import plain_word
from advisor.project.garment import Seam

BORDER = "border"
TWO = 2


def laid_along(seam: Seam, seams: Iterable[Seam]) -> bool:
    """Whether a place is called a border, and a turned edge holds both its cloths and another.

    The edge takes in the outer edge of the border, so its inner one alone is sewn here. Where no
    such edge is told, a border may be a band that is joined on.
    """
    cloths = set(seam.cloths())
    open_edge = not {"edge", "finish"} & (seam.facts.keys() - set(seam.assumed))
    called = plain_word(seam.name).split()[-1:] == [BORDER] and len(cloths) == TWO == len(seam.uses)
    over = (other for other in seams if other.facts.get("edge") == "turned" and other is not seam)
    return called and open_edge and any(cloths < set(other.cloths()) for other in over)
