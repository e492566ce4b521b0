"""What the maker and her pieces say of a cloth before it is sewn: its first wash, grain and lay."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.claims.speakers import YOU, Said, option
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment


def left_unwashed(name: str, garment: Garment, knowledge: Knowledge) -> list[Said]:
    """What the maker says of the first wash of a cloth that she cuts as it comes."""
    if not garment.cloths[name].unwashed:
        return []
    return [option("prepare.preshrink", ["nothing"], "You leave it unwashed.", knowledge)]


def pieces_say(name: str, garment: Garment, knowledge: Knowledge) -> list[Said]:
    """What the pieces of a cloth say of its grain, where all of them lie another way than usual."""
    grains = {piece.grain for piece in garment.plan.pieces if piece.cloth == name}
    worded = not grains and garment.cloths[name].on_bias
    grains = {"bias"} if worded else grains
    if len(grains) != 1 or not grains <= {"bias", "crosswise"}:
        return []
    why = "Your words for it say so." if worded else "Your pieces lie so."
    said = option("cut.grain", [*grains], why, knowledge, YOU)
    # A wish, heard first: a cloth that would be spoilt by it still has the last word.
    claim = replace(said.claim, strength="should", risk="", rank=0)
    own = frozenset((name,))
    flat = [_laid_singly(own, knowledge)] if grains == {"bias"} else []
    return [replace(said, claim=claim, cloths=own), *flat]


def _laid_singly(own: frozenset[str], knowledge: Knowledge) -> Said:
    """A piece on the bias lies across the whole width, and two that lean apart are no fold."""
    rest = [word for word in knowledge.aspects["cut.lay"].words if not word.startswith("folded")]
    why = "A fold has half the width, and slides off the bias."
    said = option("cut.lay", rest, why, knowledge)
    claim = replace(said.claim, strength="should", risk="", sources=("common-practice",))
    return replace(said, claim=replace(claim, origin="place"), cloths=own)
