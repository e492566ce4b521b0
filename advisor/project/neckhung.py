"""Cloaks and capes: nothing but the neck and what closes it there carries them."""

from __future__ import annotations

from collections.abc import Iterable

from advisor.knowledge import nouns
from advisor.project.garment import Seam
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

CLASPED = frozenset({"clasp", "frog"})
"""Kinds of place that close a cloak at the neck."""
STAYS = frozenset({"stay-tape", "collar"})


def hangs_from_neck(seams: Iterable[Seam]) -> bool:
    """Whether a garment has no sleeves and no waist, and a clasp at the throat."""
    every = tuple(seams)
    held = any(speaks_of(seam.name, nouns.NOT_BY_THE_NECK) for seam in every)
    return not held and any(_clasp(seam) for seam in every)


def carries(seam: Seam, seams: Iterable[Seam]) -> bool:
    """Whether this place of it bears the whole weight: the clasp, and the stay of the neck."""
    neck = seam.place in STAYS and "neck" in singular_words(seam.name)
    return (neck or _clasp(seam)) and hangs_from_neck(seams)


def _clasp(seam: Seam) -> bool:
    return seam.place in CLASPED and speaks_of(seam.name, nouns.CLOAKED)
