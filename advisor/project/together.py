"""What is made at a place as only the others tell: a hem under mounted lace, a waist on a tape."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.project.borders import laid_along
from advisor.project.garment import Seam
from advisor.project.headwords import speaks_of, the_words
from advisor.project.making import Piece

MOUNT, HEM, BAND, PLAIN = "underlining", "hem", "waistband", "seam"
BAND_WORD = "band"
WAIST = "waist"
FACES_A_WAIST = frozenset({"petersham", "grosgrain-ribbon"})
PLY_AND_RIBBON: Final = 2
CARTRIDGE: Final = "cartridge"
DRAWN_UP: Final = "gathered-edge"
LAID, ALONG = "applique", "the turned edge that it lies along"
SET_IN, PATCH, FACED = "set-in-pocket", "patch-pocket", "faced-edge"
TOP_OF_PATCH = "the patch pocket that it ends"
TAPED = "the {ribbon} that faces its waist"


def seen_together(
    seams: tuple[Seam, ...], entries: Mapping[str, Entry], lace: str
) -> tuple[Seam, ...]:
    """The places, each with the kind that the others leave it.

    What was taken for lace laid on is a hem where the lace is mounted: its cloth is hemmed by
    itself. A seam of one cloth and a ribbon at a waist that no other place joins or finishes is the
    upper edge, which is faced with the ribbon when what runs into it is closed; so are skirts that
    hang in one another, or in their lining, below no bodice. A border of which
    the cloth is taken in by a turned edge lies on its piece.
    """
    return tuple(_seen(seam, seams, entries, lace) for seam in seams)


def _seen(seam: Seam, seams: Sequence[Seam], entries: Mapping[str, Entry], lace: str) -> Seam:
    if seam.placed_by == lace and over_its_mount(seam, seams):
        return replace(seam, place=HEM)
    if seam.place == PLAIN and seam.placed_by and laid_along(seam, seams):
        return replace(seam, place=LAID, placed_by=ALONG)
    if seam.placed_by and seam.place == SET_IN and _tops_a_patch(seam, seams):
        return replace(seam, place=FACED, placed_by=TOP_OF_PATCH)
    if seam.place == "pleat" and seam.placed_by and _cartridge(seam):
        return replace(seam, place=DRAWN_UP)
    ribbon = ribbon_at_the_waist(seam, entries)
    if seam.place != PLAIN or not seam.placed_by or not ribbon:
        return seam
    bodied = len(seam.cloths()) > PLY_AND_RIBBON and any(
        speaks_of(s.name, nouns.ABOVE) for s in seams
    )
    if bodied or _waist_beside(seam, seams, ribbon):
        return seam
    return replace(seam, place=BAND, placed_by=TAPED.format(ribbon=ribbon))


def _cartridge(seam: Seam) -> bool:
    """Whether pleats are drawn up on rows and whipped to a band, and so are folded in no piece."""
    return CARTRIDGE in the_words(seam.name) and len(seam.cloths()) > 1


def _tops_a_patch(seam: Seam, seams: Sequence[Seam]) -> bool:
    """Whether it is the turned upper edge of a pocket that is laid on, which has no bag to hang."""
    words = {*the_words(seam.name)}
    patches = [s for s in seams if s.place == PATCH and set(seam.cloths()) <= set(s.cloths())]
    return bool(patches) and seam.facts.get("edge") == "turned" and "bag" not in words


def over_its_mount(seam: Seam, seams: Sequence[Seam]) -> bool:
    """Whether all that lies at an edge is held as one by an underlining already."""
    cloths = set(seam.cloths())
    return any(s.place == MOUNT and cloths <= set(s.cloths()) for s in seams)


def ribbon_at_the_waist(seam: Seam, entries: Mapping[str, Entry]) -> str:
    """The ribbon that is all that one cloth meets at its waist; "" where it is no such place.

    Several cloths, each once, are skirts or a lining that hang in one another, unless it is a band.
    """
    words = {*the_words(seam.name)}
    ribbons = [n for n in seam.cloths() if n in entries and entries[n].id in FACES_A_WAIST]
    hung = len(ribbons) < len(seam.uses) == len(seam.cloths()) and WAIST in words
    one = len(seam.uses) == len(ribbons) + 1 or hung
    one = one and all(use.fullness <= 1 for use in seam.uses)
    called = WAIST in words or BAND_WORD in words
    return ribbons[0] if ribbons and one and called and not nouns.TAPED & words else ""


def ribbon_as_band(seam: Seam, pieces: Sequence[Piece], entries: Mapping[str, Entry]) -> bool:
    """Whether a ribbon is the band of one cloth, and not what lies inside a band that is cut.

    What is drawn up is cut for no band, nor is there one where every piece is told and none is it.
    """
    ribbons = [n for n in seam.cloths() if n in entries and entries[n].id in FACES_A_WAIST]
    if seam.place != BAND or len(ribbons) != 1 or len(seam.uses) != len(ribbons) + 1:
        return False
    full = any(use.fullness > 1 for use in seam.uses)
    cut = any({BAND, BAND_WORD} & {*the_words(piece.name)} for piece in pieces)
    faced = WAIST in the_words(seam.name)
    return full or (bool(pieces) and not cut and not faced)


def _waist_beside(seam: Seam, seams: Sequence[Seam], ribbon: str) -> bool:
    ours = set(seam.cloths()) - {ribbon}
    others = (s for s in seams if s is not seam and ours & set(s.cloths()))
    return any({WAIST, BAND} & {*the_words(s.name)} for s in others)
