"""What cloths of one seam part by when the garment is cleaned: as bought, and as prepared.

What each cloth shrinks is what the project says of it, else what is usual for it (`clothlist`).
What is washed or soaked before cutting has shrunk; steam and damp cloths leave a rest that nobody
has measured, so they count as nothing done where the garment is washed. Formulas in
`craft.shrinkage`.
"""

from __future__ import annotations

from typing import Final

from msgspec import Struct

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.construction.bulk import picked
from advisor.construction.clothlist import shrinks
from advisor.craft import shrinkage
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Seam

WET: Final = frozenset({"wash as it will be washed", "soak and dry flat"})
DRY_CARE: Final = ("", "do not wash")
SELLER_SAYS: Final = "dry clean only"
LINING: Final = "lining-seam"


class Parting(Struct, frozen=True):
    """The two cloths of a seam that part most.

    Attributes:
        more, less: the cloth that shrinks more, and the one that shrinks less.
        along, across: mm on this seam as bought, if it runs along the grain or across it.
        share: the greater of both differences.
        still: the same share after what the sheet has done to them before cutting.
        said: whether the project says what both shrink; else it is what is usual.
    """

    more: str
    less: str
    along: float
    across: float
    share: float
    still: float
    said: bool
    sources: tuple[str, ...] = shrinkage.SOURCES


class LiningEase(Struct, frozen=True):
    """How much longer than its shell a lining is cut, mm: the trade's fold, and for shrinking."""

    fold: float
    more: float
    sources: tuple[str, ...] = shrinkage.EASE_SOURCES


def parting_of(seam: Seam, judgement: Judgement, knowledge: Knowledge) -> Parting | None:
    """What the cloths of a seam part by; None where they shrink alike or it is never washed."""
    length = seam.facts.get("length")
    names = [n for n in seam.cloths() if _is_cloth(n, judgement, knowledge)]
    if length is None or len(names) < 2 or not washed(judgement):
        return None
    shares = {name: _shares(name, judgement, knowledge) for name in names}
    pairs = [(a, b) for i, a in enumerate(names) for b in names[i + 1 :]]
    one, other = max(pairs, key=lambda p: _differ(shares[p[0]], shares[p[1]]))
    if sum(shares[one]) < sum(shares[other]):
        one, other = other, one
    first, second = shares[one], shares[other]
    differ = _differ(first, second)
    if differ < shrinkage.SEEN:
        return None
    left = [_left(n, shares[n], judgement) for n in (one, other)]
    bolts = judgement.garment.plan.bolts
    return Parting(
        one,
        other,
        shrinkage.apart(float(length), first[0], second[0]),
        shrinkage.apart(float(length), first[1], second[1]),
        differ,
        _differ(left[0], left[1]),
        all(n in bolts and bolts[n].shrinks is not None for n in (one, other)),
    )


def lining_ease(seam: Seam, judgement: Judgement, knowledge: Knowledge) -> LiningEase | None:
    """What a lining needs in its length where it is set to its shell; None for other places."""
    names = [n for n in seam.cloths() if _is_cloth(n, judgement, knowledge)]
    if seam.place != LINING or len(names) < 2:
        return None
    shell, lining = names[0], names[-1]
    longest = max((p.height for p in judgement.garment.plan.pieces if p.cloth == lining), default=0)
    if not longest:
        return LiningEase(shrinkage.HEM_EASE_MM, 0.0)
    rest = [_left(n, _shares(n, judgement, knowledge), judgement)[0] for n in (shell, lining)]
    if not washed(judgement):
        rest = [0.0, 0.0]
    return LiningEase(shrinkage.HEM_EASE_MM, shrinkage.longer_lining(longest, *rest))


def washed(judgement: Judgement) -> bool:
    """Whether the whole garment is ever washed; the seller of a cloth may rule it out."""
    cloths = judgement.garment.cloths.values()
    if any(cloth.care == SELLER_SAYS and not cloth.detachable for cloth in cloths):
        return False
    verdicts = judgement.verdicts.get(Place("garment", judgement.garment.name), {})
    return picked(verdicts, "care.wash") not in DRY_CARE


def _is_cloth(name: str, judgement: Judgement, knowledge: Knowledge) -> bool:
    return knowledge.entries[judgement.garment.cloths[name].entry].kind == "cloth"


def _shares(name: str, judgement: Judgement, knowledge: Knowledge) -> tuple[float, float]:
    return shrinks(judgement.garment.cloths[name], judgement, knowledge)


def _left(name: str, shares: tuple[float, float], judgement: Judgement) -> tuple[float, float]:
    """What is left to shrink after the preparation that the sheet asks for."""
    done = picked(judgement.verdicts.get(Place("fabric", name), {}), "prepare.preshrink")
    return (0.0, 0.0) if done in WET else shares


def _differ(one: tuple[float, float], other: tuple[float, float]) -> float:
    return max(abs(a - b) for a, b in zip(one, other, strict=True))
