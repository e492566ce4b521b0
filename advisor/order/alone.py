"""Trousers that are worn with a jacket and joined to it nowhere, though no part is named."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from advisor.knowledge import nouns
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.kinds import SeamPlace

WAIST = "waist"
TROUSERS = "trousers"
LEGS, BANDS = frozenset({"crotch", "inseam"}), frozenset({"casing", "waistband", "elastic-edge"})
"""Roles and bands that only trousers have where what is worn above has none said of it."""


def legs_alone(places: Sequence[SeamPlace]) -> frozenset[str]:
    """The places of trousers that are worn with a jacket and joined to it nowhere, as pyjamas are.

    Both are named, and no waist holds them together: a suit in one has its seam there.
    """
    words = {p.name: set(singular_words(p.name)) for p in places}
    above = any(nouns.TOPS & said for said in words.values())
    if not above or any(p.role.id == WAIST for p in places):
        return frozenset()
    legs = {p.name for p in places if p.role.id in LEGS or nouns.OF_LEGWEAR & words[p.name]}
    bands = {p.name for p in places if p.kind.id in BANDS and nouns.WAISTS & words[p.name]}
    below = frozenset(legs | bands) if any(p.role.id in LEGS for p in places) else frozenset()
    return frozenset(name for name in below if not nouns.TOPS & words[name])
