"""Which colour a thread has, told by the cloth that it matches or by a reel of hers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from advisor.construction.threadshare import matched, own_colour, seen_of

if TYPE_CHECKING:
    from advisor.claims.judgement import Judgement


def colour_words(first: str, judgement: Judgement) -> str:
    """The colour of the thread of a cloth: a reel of hers, or the cloth that it matches."""
    shade = judgement.shades.get(first)
    if shade is not None and shade.reel:
        return f"from the reel {shade.colour}"
    return f"to match {matched(colour_of(first, judgement), judgement.garment)}"


def colour_of(first: str, judgement: Judgement) -> str:
    """The first cloth of the garment that has the colour of the thread of this one."""
    shade, garment = judgement.shades.get(first), judgement.garment
    colour = shade.colour if shade else own_colour(first, garment)
    firsts = {seen_of(seam, seam.cloths(), garment) for seam in garment.seams if seam.cloths()}
    alike = [n for n in firsts if own_colour(n, garment) == colour]
    return min(alike, default=first)  # as the list of thread has it first
