"""The seams and bands of a leg, told by their names."""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.knowledge.ordering import SeamKind

IN_A_SIDE: Final = ("pocket", "pocket-bag", "pocket-zip", "patch-pocket", "yoke")
"""Roles of what runs into the outer seam of a leg alone."""


def on_a_leg(role: str, words: Collection[str]) -> str:
    """The role of a band that closes a leg, or of its outer seam; "" where it is neither."""
    if role == "cuff" and not nouns.ON_LEG.isdisjoint(words):
        return "leg-band"
    return "side" if role == "inseam" and not nouns.OUTER_LEG.isdisjoint(words) else ""


def with_both_seams(role: SeamKind, words: Collection[str]) -> SeamKind:
    """The role of "leg seams", which are the outer as well as the inner one, so fitted too."""
    both = (
        role.id == "inseam"
        and {"leg", "seam"} <= set(words)
        and not {"inside", "inner"} & set(words)
    )
    return replace(role, fitted=True, crosses=(*role.crosses, *IN_A_SIDE)) if both else role
