"""A seam's finish against its allowance, and how the allowances are trimmed, cut and turned.

What each finish needs stands in `craft.allowance`. The maker's own allowance and finish are
respected; what they cost her is said. Spacing of clips: 1/4 to 1/2 in (`apparel-1-3-03`).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from msgspec import Struct

from advisor.claims.valuesets import Choice
from advisor.construction.bulk import Verdicts, number, picked
from advisor.craft.allowance import (
    CLIP_SPACING_MM,
    EIGHTH,
    NEEDS,
    UNDERSTITCH_MM,
    Finish,
    favour,
    fit,
    grade,
    narrower_french,
    needs_grading,
    turn_of_cloth,
)
from advisor.craft.rolled import longer_by
from advisor.project.garment import Garment, Seam

HEAVY_MM: Final = 1.0
"""From this thickness of a ply on a cloth counts as heavy for grading (estimate)."""
PLAIN_ENOUGH: Final = frozenset({"overlocked", "zigzag", "pinked", "hand overcast", "edge sealant"})
_BY_KIND: Final = {
    "French": Finish.FRENCH,
    "mock French": Finish.MOCK_FRENCH,
    "felled": Finish.FELLED,
    "self-bound": Finish.FELLED,
    "double-stitched": Finish.DOUBLE_STITCHED,
}
_BY_WORD: Final = {
    "zigzag": Finish.ZIGZAG,
    "Hong Kong": Finish.HONG_KONG,
    "bound": Finish.BOUND,
    "turned and stitched": Finish.TURNED,
    "hand overcast": Finish.NONE,
    "pinked": Finish.PINKED,
    "trimmed and double-stitched": Finish.DOUBLE_STITCHED,
    "edge sealant": Finish.NONE,
    "none": Finish.NONE,
}
_OVERLOCKS: Final = {
    "3-thread": Finish.OVERLOCK_3,
    "4-thread": Finish.OVERLOCK_4,
    "5-thread": Finish.OVERLOCK_4,
}
_OPEN_TO_A_FINISH: Final = "double-stitched"
"""Of the kinds that make a finish by themselves, the one that may have another."""


class Finishing(Struct, frozen=True):
    """A finish against the allowance, all in mm.

    Attributes:
        own: whether the maker fixed the allowance herself.
        short: what is missing for the finish, 0 where it fits.
        instead: finishes that these cloths allow and this allowance has room for.
        when: before the seam is joined, after it, or in the seam itself.
        narrower: rows of a narrower French seam that the allowance has room for.
    """

    finish: str
    allowance: float
    own: bool
    needs: float
    short: float
    curves: bool
    instead: tuple[str, ...]
    when: str
    sources: tuple[str, ...]
    narrower: tuple[float, float] | None = None


WRAPPED: Final = frozenset({"bound-edge"})
UNCLIPPED: Final = frozenset({"hem", "folded"})
"""Edges whose fullness is eased in, or that are wrapped: neither is clipped or notched."""


class Trimming(Struct, frozen=True):
    """How allowances are reduced and turned; empty where nothing is to be done.

    Attributes:
        grade: widths in mm, the one next to the outside first.
        clips: spacing of clips or notches in mm, from and to, and how many at most.
        turn: extra length in mm that the outer layer needs around the fold.
        through: each layer of a rolled stack, the outside first, with what it is cut longer, mm;
            nothing where two layers fold, or a thickness is not known.
        favour: how far in mm the outside is rolled over its facing.
        understitch: mm from the seam.
    """

    grade: tuple[float, ...] = ()
    clips: tuple[float, float, int] | None = None
    turn: float | None = None
    favour: tuple[float, float] | None = None
    understitch: tuple[float, float] | None = None
    through: tuple[tuple[str, float], ...] = ()


def finishing_of(seam: Seam, garment: Garment, verdicts: Verdicts) -> Finishing | None:
    """The finish of a seam against its allowance; None where neither is decided."""
    word, kind = picked(verdicts, "seam.finish"), picked(verdicts, "seam.kind")
    finish = finish_of(kind, word, garment.maker.overlocker)
    pick = number(verdicts, "seam.allowance")
    own = "allowance" in seam.facts
    have = float(seam.facts["allowance"]) if own else pick
    if finish is None or have is None:
        return None
    fitted = fit(finish, have)
    curves = NEEDS[finish].curves or seam.facts.get("shape") in (None, "straight")
    tight = not fitted.fits or not curves
    instead = _instead(have, finish, verdicts, garment, curved=not curves) if tight else ()
    name = kind if makes_its_finish(kind, word) else word or kind
    return Finishing(
        name,
        have,
        own,
        fitted.needs_mm,
        fitted.short_mm,
        curves,
        instead,
        _when(kind, word, seam),
        fitted.sources,
        None if fitted.fits or finish is not Finish.FRENCH else narrower_french(have),
    )


def finish_of(kind: str, word: str, overlocker: str) -> Finish | None:
    """The finish that a kind of seam and a word for its edges come to."""
    if makes_its_finish(kind, word):
        return _BY_KIND[kind]
    if word == "overlocked" or kind == "overlocked":
        return _OVERLOCKS.get(overlocker, Finish.OVERLOCK_3)
    return _BY_WORD.get(word)


def makes_its_finish(kind: str, word: str) -> bool:
    """Whether the kind of seam is its own finish, whatever is said of the edges."""
    if kind != _OPEN_TO_A_FINISH:
        return kind in _BY_KIND
    return word not in _BY_WORD or word in ("none", "trimmed and double-stitched")


def _instead(
    have: float, finish: Finish, verdicts: Verdicts, garment: Garment, *, curved: bool
) -> tuple[str, ...]:
    """Other finishes that the cloths allow and the allowance has room for."""
    verdict = verdicts.get("seam.finish")
    if verdict is None or not isinstance(verdict.allowed, Choice):
        return ()
    found = []
    for option in verdict.allowed.options():
        word = verdict.aspect.words[option]
        other = finish_of("plain", word, garment.maker.overlocker)
        if other in (None, finish, Finish.NONE) or (word == "overlocked" and _without(garment)):
            continue
        if fit(other, have).fits and (NEEDS[other].curves or not curved):
            found.append(word)
    return tuple(found[:2])


def _without(garment: Garment) -> bool:
    return not garment.maker.overlocker


def _when(kind: str, word: str, seam: Seam) -> str:
    if makes_its_finish(kind, word) or word == "enclosed in the seam":
        return "in the seam itself"
    if kind == "overlocked" or word in ("trimmed and double-stitched", "Hong Kong", "bound"):
        return "after joining"
    if word in PLAIN_ENOUGH or word == "turned and stitched":
        return "after joining" if _is_turned(seam) else "before joining"
    return ""


def _is_turned(seam: Seam) -> bool:
    return seam.facts.get("edge") in ("turned", "folded")


def allowance_of(seam: Seam, verdicts: Verdicts) -> float:
    """The allowance of a seam, mm: her own, else the advised; 0 where there is none."""
    own = seam.facts.get("allowance")
    return float(own) if own is not None else number(verdicts, "seam.allowance") or 0.0


def trimming_of(seam: Seam, have: float, plies_mm: Sequence[float | None]) -> Trimming:
    """How the allowances of a seam are graded, clipped and turned.

    Args:
        seam: the seam; its first layer is the outside.
        have: the allowance, mm.
        plies_mm: thickness of each layer from the outside, mm; None where it is not known.
    """
    ply_mm = plies_mm[0]
    turned = _is_turned(seam)
    plies = len(seam.uses)
    heavy = (ply_mm or 0.0) >= HEAVY_MM
    widths: tuple[float, ...] = ()
    if turned and have >= EIGHTH and needs_grading(plies, heavy=heavy or plies == 2):
        widths = grade(plies, have).widths_mm
    clips = None
    length = seam.facts.get("length")
    uncut = seam.place in WRAPPED or seam.facts.get("edge") in UNCLIPPED
    if seam.facts.get("shape") == "curved" and length and not uncut:
        low, high = CLIP_SPACING_MM
        clips = (low, high, max(1, int(float(length) / low)))
    folded = turned or seam.facts.get("edge") == "hem"
    turn = _turn(plies_mm) if folded else None
    rolled = favour(ply_mm) if turned and ply_mm else None
    through = _through(seam, plies_mm) if turned else ()
    under = UNDERSTITCH_MM if turned else None
    return Trimming(widths, clips, turn, rolled, under, through)


def _through(seam: Seam, plies_mm: Sequence[float | None]) -> tuple[tuple[str, float], ...]:
    """What each layer is cut longer than the innermost, where three or more are rolled."""
    known = [ply for ply in plies_mm if ply is not None]
    if len(known) < len(plies_mm) or len(known) <= 2:
        return ()
    extra = reversed(longer_by(known[::-1]))
    return tuple((use.cloth, more) for use, more in zip(seam.uses, extra, strict=True))[:-1]


def _turn(plies_mm: Sequence[float | None]) -> float | None:
    """How much longer the outside is around the edge than the inside; None where not known."""
    known = [ply for ply in plies_mm if ply is not None]
    if not known or len(known) < len(plies_mm):
        return None
    return turn_of_cloth(known[0], known[-1], sum(known[1:-1]))
