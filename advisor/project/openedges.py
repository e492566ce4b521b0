"""An edge of the garment where two layers meet and nothing is joined on: the one faces the other.

"Neck edge" of a shell and its lining, or of two pieces of one cloth, is laid right sides together,
sewn and turned, though nobody wrote `edge: turned`; as a plain seam its allowances would stand up
round the neck and be neatened.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.project.garment import Seam
from advisor.project.headwords import speaks_of, the_words

TWO_LAYERS: Final = "two layers at an edge that nothing is joined to"
FACED: Final = "faced-edge"
FULL: Final = 1.0
LINING: Final = "linings"
"""The family of the cloths that line."""


def ends_in_two_layers(seam: Seam, seams: Sequence[Seam], entries: Mapping[str, Entry]) -> bool:
    """Whether a place is a free edge at which one layer can only face the other."""
    if {"edge", "finish"} & seam.facts.keys() or any(a == "seam.kind" for a, _ in seam.choices):
        return False
    cloths = [u for u in seam.uses if u.cloth in entries and entries[u.cloth].kind == "cloth"]
    plies = [entries[use.cloth] for use in cloths]
    even = all(use.fullness <= FULL and use.stretched <= FULL for use in cloths)
    if len(plies) != 2 or not even or seam.making.pleats is not None:
        return False
    if any(speaks_of(use.cloth, nouns.STRIPS | nouns.COLLARED) for use in cloths):
        return False
    alike = cloths[0].cloth == cloths[1].cloth
    if all(entry.structure == "knit" for entry in plies) and alike:
        return False  # a band of the knit itself is as likely
    return _is_free(seam, seams, lined=LINING in {entry.family for entry in plies})


def as_curved(seam: Seam) -> Seam:
    """The faced edge of a neck or an armhole as the curve that it is, where nobody said its shape.

    A V and a square turn a corner, and a slit or a line between two points is straight.
    """
    words = set(the_words(seam.name))
    if seam.place != FACED or "shape" in seam.facts or not words & nouns.ROUND_EDGES:
        return seam
    if words & nouns.STRAIGHT_EDGES:
        return seam
    shape = "corner" if words & nouns.CORNERED else "curved"
    return replace(seam, facts=seam.facts | {"shape": shape}, assumed=(*seam.assumed, "shape"))


def _is_free(seam: Seam, seams: Sequence[Seam], *, lined: bool) -> bool:
    """Whether its name is that of an edge, and no other place joins anything there."""
    words = the_words(seam.name)
    if nouns.JOINS & set(words) or nouns.ATTACHED & set(words) or not words:
        return False
    others = [other.name for other in seams if other is not seam]
    if any(
        speaks_of(name, nouns.FINISH_AN_EDGE) and set(words) & set(the_words(name))
        for name in others
    ):
        return False
    if nouns.NECKS & set(words):
        ends = words[-1] == "edge" or words[-1] in nouns.NECKS
        return ends and not any(speaks_of(name, nouns.SET_ON_A_NECK) for name in others)
    if nouns.ARMHOLES & set(words[-1:]) or (words[-1] == "edge" and nouns.ARMHOLES & set(words)):
        return lined and not any(speaks_of(name, nouns.ON_SLEEVE) for name in others)
    return words[-1] == "edge" and bool(nouns.FREE_EDGES & set(words))
