"""The finished edge to which a lace edging is sewn by its heading, as part and name tell."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.project.headwords import the_words
from advisor.project.lacewords import FINISHED

if TYPE_CHECKING:
    from advisor.project.garment import Garment, Seam

EDGING: Final = "lace-edging"


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
    named = [edge for edge in edges if (set(the_words(edge.name)) - nouns.NOT_WHERE) & words]
    found = [] if nouns.NO_EDGE & words else named or edges
    return found[0] if len(found) == 1 else None
