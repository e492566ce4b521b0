"""What does instead of a tool that is not at hand, each tried by the engine in its places."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Final

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.construction.bulk import picked
from advisor.decide.evaluate import judge
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment

if TYPE_CHECKING:
    from advisor.knowledge.workshop import Substitute

NO_PINS: Final = "no pins"
"""What is said of a cloth in which each hole stays, that of a basting needle as well."""
BASTED: Final = "hand basting"
_seam = partial(Place, "seam")


def substitutes(
    aspect: str, word: str, places: tuple[str, ...], judgement: Judgement, knowledge: Knowledge
) -> tuple[tuple[Substitute, ...], tuple[str, ...]]:
    """What does instead of a tool in some places: those that cure, and those refused."""
    tool = knowledge.workshop.tools.get((aspect, word))
    if tool is None:
        return (), ()
    known = {c.key for c in judgement.conflicts}
    here = replace(
        judgement.garment, seams=tuple(s for s in judgement.garment.seams if s.name in places)
    )
    leaks = any(picked(judgement.verdicts[p], "pin.place") == NO_PINS for p in map(_seam, places))
    found, refused = [], []
    for other in tool.instead:
        tried = _with_choice(aspect, other.word, here) if other.word else None
        if leaks and other.word == BASTED:
            refused.append(other.text)
        elif tried is None or _seam_clashes(tried, judgement, knowledge) <= known:
            found.append(other)
        else:
            refused.append(other.text)
    return tuple(found), tuple(refused)


def _seam_clashes(
    garment: Garment, before: Judgement, knowledge: Knowledge
) -> set[tuple[str, str]]:
    """The conflicts of a garment's seams; a tool changes nothing in the whole."""
    after = judge(garment, knowledge, before)
    return {c.key for c in after.conflicts if c.place.scope == "seam"}


def _with_choice(aspect: str, word: str, garment: Garment) -> Garment:
    """The garment with one answer fixed in every seam, and the tool that it needs at hand."""
    seams = tuple(
        replace(seam, choices=(*(c for c in seam.choices if c[0] != aspect), (aspect, word)))
        for seam in garment.seams
    )
    maker = garment.maker
    if aspect == "machine.foot" and maker.feet is not None and word not in maker.feet:
        maker = replace(maker, feet=(*maker.feet, word))
    return replace(garment, seams=seams, maker=maker)
