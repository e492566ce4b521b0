"""Steam that is held above a place: for whom it is, and what lies under it has of it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from msgspec.structs import replace

from advisor.claims.claimsets import insisted
from advisor.claims.combine import Verdict, decide
from advisor.claims.speakers import Said
from advisor.claims.steaming import HOVER
from advisor.claims.valuesets import Span
from advisor.craft.irondial import mark_for, starts_too_cool
from advisor.knowledge.model import COLD

ASPECTS: Final = ("temperature", "moisture", "motion")
RESTING: Final = ("lift and lower", "glide")
STEAMY: Final = 2.0
"""The degree of moisture that is steam."""


def gets_no_steam(moist: Verdict) -> bool:
    """Whether a place may have no steam."""
    return isinstance(moist.advised, Span) and moist.advised.high < STEAMY


def nothing_between(by_aspect: dict[str, Verdict]) -> None:
    """Steam held above a place comes through no press cloth: one way of pressing is told."""
    motion = by_aspect.get("press.motion")
    if motion and motion.pick == float(motion.aspect.words.index(HOVER)) and not motion.clash:
        by_aspect.pop("press.cloth", None)


def for_some(by_aspect: Mapping[str, Verdict]) -> bool:
    """Whether some layers wish for steam held above them, and the rest would have less of it."""
    heat, moist, motion = (by_aspect.get(f"press.{it}") for it in ASPECTS)
    if heat is None or moist is None or motion is None:
        return False
    hover = float(motion.aspect.words.index(HOVER))
    words = [(s, v) for v in (heat, moist, motion) for s in (*v.because, *v.given_up)]
    steamed = {c for s, v in words for c in s.cloths if v is motion and s.claim.best == hover}
    if not steamed or steamed.issuperset(c for s, _ in words for c in s.cloths):
        return False
    start = heat.pick or COLD
    drips = start > COLD and starts_too_cool(start)
    best = [s.claim.best for s in moist.because if s.claim.best is not None]
    drier = bool(best) and (moist.pick or 0.0) < STEAMY  # with no best said, any that is borne does
    return drips or moist.pick is None or drier


def steamed_all_the_same(moist: Verdict, motion: Verdict) -> Verdict:
    """The moisture of what may not be rested on: steam where what lies by it only wishes for less.

    Held above a place it wets less than a damp cloth under a sole does.
    """
    heard = [*moist.because, *moist.given_up]
    lids = [s for s in heard if s.claim.span and s.claim.span[1] < STEAMY]
    rests = sum(1 << at for at, word in enumerate(motion.aspect.words) if word in RESTING)
    piles = {n for s in motion.because if not s.claim.mask & rests for n in s.cloths}
    if moist.clash or any(_insists(moist, s) or s.cloths & piles for s in lids):
        return moist
    anew = decide(moist.aspect, [s for s in heard if s not in lids], together=True)
    return replace(anew, given_up=(*lids, *anew.given_up))


def _insists(moist: Verdict, said: Said) -> bool:
    """Whether steam is kept off by more than a wish: by a need, or by a guard of any strength."""
    left = insisted(moist.aspect, said.claim)
    return said.claim.strength == "must" or (isinstance(left, Span) and left.high < STEAMY)


def unmarked(heat: Verdict) -> bool:
    """Whether no mark of the dial is cool enough for what is advised."""
    span = heat.advised
    return isinstance(span, Span) and not span.is_empty and mark_for(span.high) is None
