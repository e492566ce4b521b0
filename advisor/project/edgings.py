"""The finished edge to which a lace edging is sewn by its heading, as part and name tell."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.project.headwords import the_words
from advisor.project.lacewords import FINISHED, NOT_WHERE

if TYPE_CHECKING:
    from advisor.project.garment import Garment, Seam

EDGING: Final = "lace-edging"
ELSEWHERE: Final = frozenset({"hem", "seam", "frill", "ruffle", "tuck", "row"})
"""Words of a lace that lies at no edge that is turned or bound."""


def edge_under(seam: Seam, garment: Garment) -> Seam | None:
    """The one edge of its part and its cloth that is finished at a place of its own.

    Of several it is the one that the name of the edging says; where that says none, nobody knows.
    """
    if all(garment.cloths[name].entry != EDGING for name in seam.cloths()):
        return None
    words = set(the_words(seam.name)) - set(the_words(seam.part))
    cloths = {name for name in seam.cloths() if garment.cloths[name].entry != EDGING}
    edges = [
        other
        for other in garment.seams
        if other.place in FINISHED
        and other is not seam
        and other.part == seam.part
        and cloths & set(other.cloths())
    ]
    named = [edge for edge in edges if (set(the_words(edge.name)) - NOT_WHERE) & words]
    found = [] if ELSEWHERE & words else named or edges
    return found[0] if len(found) == 1 else None
