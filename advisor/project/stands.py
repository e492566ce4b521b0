"""A collar stand and the seam that sets it, told as two places: one makes it, the other sews it on.

Told alone, the stand is both. Beside a neck or collar seam of its own it is made up by itself, as
a collar is, and the neck seam is closed by its inner layer: nothing there is joined twice.
"""

from __future__ import annotations

from typing import Final

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.project.garment import Seam
from advisor.project.placing import singular_words

STAND: Final = "stand"
COLLAR, FACED, PLAIN = "collar", "faced-edge", "seam"
SET_BY, SETTING = "the seam that sets it", "the stand that it sets"


def seen_at_a_stand(seams: tuple[Seam, ...]) -> tuple[Seam, ...]:
    """The places, a stand and the seam that sets it each as what it is beside the other."""
    stands = [seam for seam in seams if is_stand(seam) or _makes_up(seam, seams)]
    setting = [s for s in seams if s not in stands and any(_sets(s, stand) for stand in stands)]
    if not setting:
        return seams
    made = [stand for stand in stands if any(_sets(seam, stand) for seam in setting)]
    return tuple(
        _as(seam, FACED, SET_BY)
        if seam in made
        else _as(seam, COLLAR, SETTING)
        if seam in setting
        else seam
        for seam in seams
    )


def is_stand(seam: Seam) -> bool:
    """Whether it is the stand of a collar, of which nobody says how it is made."""
    words = singular_words(seam.name)
    return _guessed(seam) and words[-1:] == (STAND,) and not nouns.JOINS & set(words)


def _guessed(seam: Seam) -> bool:
    return seam.place == COLLAR and bool(seam.placed_by) and not seam.method


def _makes_up(seam: Seam, seams: tuple[Seam, ...]) -> bool:
    """Whether it sews the collar to its stand, which another place then sews to the neck."""
    words = set(singular_words(seam.name))
    joined = {COLLAR, STAND} <= words and bool(nouns.JOINS & words) and not nouns.NECKS & words
    others = (set(singular_words(s.name)) for s in seams if s is not seam and _guessed(s))
    return joined and _guessed(seam) and any({STAND} < o and bool(nouns.NECKS & o) for o in others)


def _sets(seam: Seam, stand: Seam) -> bool:
    """Whether a seam joins a stand to the neck: by its name, and a cloth of the stand in it."""
    words = set(singular_words(seam.name))
    named = (
        bool(words & nouns.COLLARED)
        and bool(words & nouns.JOINS)
        and words <= nouns.COLLARED | nouns.JOINS | {STAND, "the"}
    )
    plain = seam.place in (PLAIN, COLLAR) and bool(seam.placed_by) and not seam.method
    turned = seam.facts.get("edge") == "turned" and seam.place != COLLAR
    cloth = bool(set(seam.cloths()) & set(stand.cloths()))
    return seam is not stand and named and plain and cloth and not turned


def _as(seam: Seam, kind: str, why: str) -> Seam:
    assumed = seam.assumed if "kind" in seam.assumed else (*seam.assumed, "kind")
    return replace(seam, place=kind, placed_by=why, assumed=assumed)
