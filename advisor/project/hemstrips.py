"""The cloth of a hem that only binds its cut edge: a strip of a thin one on a thick one.

What names the strip, its pieces, or that it is thin and lies nowhere else says so. Such a strip
is turned up with the hem, and has no say in how that is made.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.project.garment import Garment, Seam
from advisor.project.placing import singular_words

STRIP_MM: Final = 100.0
"""A bias piece no wider than this is a binding or a band and not a panel, mm: estimate."""
THIN: Final = 0.4
"""Up to which share of the weight of its shell a cloth binds a hem and never backs it: estimate."""


def bias_strips(garment: Garment, cloth: str) -> bool:
    """Whether nothing but narrow strips on the bias is cut from it."""
    pieces = [piece for piece in garment.plan.pieces if piece.cloth == cloth]
    return bool(pieces) and all(
        piece.grain == "bias" and min(piece.width, piece.height) <= STRIP_MM for piece in pieces
    )


def hem_strip(seam: Seam, garment: Garment, entries: Mapping[str, Entry]) -> str:
    """The cloth that binds this hem; "" where none does: a facing, a frill or lace does not."""
    uses = [use for use in seam.uses if entries[use.cloth].kind == "cloth"]
    if (
        seam.facts.get("edge") != "hem"
        or len(uses) != 2
        or len(set(seam.cloths())) != len(seam.uses)
    ):
        return ""
    shell, strip = (use.cloth for use in uses)
    words = set(singular_words(strip))
    if uses[-1].fullness > 1.0 or entries[strip].structure != "woven" or nouns.FACES & words:
        return ""
    named = nouns.STRIPS & words or bias_strips(garment, strip)
    return strip if named or _thin_and_alone(shell, strip, garment) else ""


def _thin_and_alone(shell: str, strip: str, garment: Garment) -> bool:
    """Whether it weighs little beside the first cloth, and lies in no place but hems."""
    heavy, light = garment.cloths[shell].weight, garment.cloths[strip].weight
    elsewhere = any(strip in s.cloths() and s.facts.get("edge") != "hem" for s in garment.seams)
    part = any(strip in part.layers for part in garment.parts)
    thin = heavy is not None and light is not None and light[1] <= THIN * heavy[0]
    return thin and not elsewhere and not part and len(garment.seams) > 1
