"""Where a lace lies: over whole seams, or lapped over an edge."""

from __future__ import annotations

from advisor.project.edgings import edge_under
from advisor.project.garment import Garment, Seam
from advisor.project.lacewords import finished_below, spread
from advisor.project.placing import singular_words


def lace_role(seam: Seam, garment: Garment) -> str:
    """Where a lace lies that is laid over whole seams or lapped over an edge; "" for others."""
    if spread(singular_words(seam.name)):
        return "overlay"
    lace = "lace" in singular_words(seam.name)
    lapped = lace and finished_below(seam, garment.seams, singular_words)
    return "edge-lace" if lapped else ""


def edging_role(seam: Seam, garment: Garment) -> str:
    """Where an edging lies that is sewn by its heading to an edge of its own; "" for others."""
    return "edge-lace" if edge_under(seam, garment) else ""
