"""What to mind of the pieces that are cut: what their cloth avoids, how full is usual, tuck thread.

Usual fullness stands in `craft.fullness`; a bias ruffle wants less (`clothing-text-1916`). Rows of
tucks are straight lockstitch through two plies.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from msgspec import Struct

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.claims.valuesets import Choice
from advisor.construction.bulk import number
from advisor.construction.cutting import Cut
from advisor.construction.fullness import weight_class
from advisor.construction.stack import ply_of
from advisor.construction.threadshare import sewn_as
from advisor.craft import thread
from advisor.craft.fullness import BIAS_RUFFLE, SOURCES, STRAIGHT_RUFFLE, Ratio, gather_ratio
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Seam, Use
from advisor.project.placing import singular_words
from advisor.project.tucked import tucks_on_a_piece

AVOIDS: Final = {
    "tucks": ("tucks", "pressed pleats"),
    "flounce": ("bias cut", "soft drape"),
    "gathers": ("gathers", "ruffles"),
}
"""What of a cloth's design speaks against a shape."""
USUAL_STITCH: Final = 2.5


class CutNote(Struct, frozen=True):
    """A piece as it is cut, with what its cloth avoids of it and the thread of its tucks, mm."""

    cut: Cut
    avoids: tuple[str, ...]
    usual: Ratio | None
    thread: thread.ThreadUse | None
    sewn_as: Seam | None
    sources: tuple[str, ...] = SOURCES
    opens: str = ""
    """The seam in the middle behind that leaves another one in the middle of the front."""

    @property
    def shape(self) -> str:
        """Tucks, flounce, gathers, or nothing of these."""
        if self.cut.tucks is not None:
            return "tucks"
        if self.cut.ring is not None:
            return "flounce"
        return "gathers" if self.cut.fullness > 1 else ""


def cut_note(cut: Cut, judgement: Judgement, knowledge: Knowledge) -> CutNote:
    """What there is to say of one piece."""
    cloth = cut.piece.cloth
    plain = CutNote(cut, (), None, None, None)
    avoided = _avoided(cloth, judgement)
    against = tuple(word for word in AVOIDS.get(plain.shape, ()) if word in avoided)
    usual = _usual(cut, judgement, knowledge) if plain.shape == "gathers" else None
    seam = sewn_as(cloth, judgement.garment)
    own = any(tucks_on_a_piece(s, judgement.garment) == cut.piece for s in judgement.garment.seams)
    counted = cut.tucks is None or seam is None or own  # a place for them has their thread
    rows = None if counted or seam is None else _rows(cut, seam, judgement, knowledge)
    opens = _middle_behind(cut, judgement.garment.seams) if plain.shape == "gathers" else ""
    return CutNote(cut, against, usual, rows, seam, opens=opens)


def _middle_behind(cut: Cut, seams: Iterable[Seam]) -> str:
    """The centre back seam of a cloth whose whole round is cut in an even number of panels."""
    if cut.piece.cut or (cut.piece.number or 1) > 1 or cut.number % 2:
        return ""
    own = (s for s in seams if len(s.uses) > 1 and {u.cloth for u in s.uses} == {cut.piece.cloth})
    called = ((s.name, {*singular_words(s.name)}) for s in own)
    return next((name for name, words in called if "back" in words and nouns.MIDDLE & words), "")


def _avoided(cloth: str, judgement: Judgement) -> tuple[str, ...]:
    verdict = judgement.verdicts.get(Place("fabric", cloth), {}).get("design.avoids")
    if verdict is None or not isinstance(verdict.advised, Choice):
        return ()
    kept = set(verdict.advised.options())
    return tuple(word for i, word in enumerate(verdict.aspect.words) if i not in kept)


def _usual(cut: Cut, judgement: Judgement, knowledge: Knowledge) -> Ratio:
    """The usual fullness: by grain on the bias, else from a straight ruffle's to the weight's."""
    if cut.piece.grain == "bias":
        return BIAS_RUFFLE
    use = Use(cut.piece.cloth, cut.fullness)
    by_weight = gather_ratio(weight_class(use, judgement.garment, knowledge))
    sources = tuple(dict.fromkeys((*by_weight.sources, *STRAIGHT_RUFFLE.sources)))
    return Ratio(min(by_weight.low, STRAIGHT_RUFFLE.low), by_weight.high, sources)


def _rows(cut: Cut, seam: Seam, judgement: Judgement, knowledge: Knowledge) -> thread.ThreadUse:
    """Thread of the rows of all tucks, mm, with tails at their ends."""
    assert cut.tucks is not None
    ply = ply_of(judgement.garment.cloths[cut.piece.cloth], knowledge)
    length = number(judgement.verdicts[Place("seam", seam.name)], "stitch.length")
    return thread.gathering_rows(
        cut.tucks.row,
        cut.tucks.number * cut.number,
        length or USUAL_STITCH,
        2 * ply.thickness_mm if ply else 0.0,
    )
