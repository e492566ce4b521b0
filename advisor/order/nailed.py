"""Which cloth holds what is driven through a hole of it, as a rivet or a jeans button."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from advisor.knowledge.model import Mix

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

PLANT: Final = frozenset({"cotton", "linen", "hemp", "ramie"})
HALF, ALL = 50.0, 100.0


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {"takes a nail": lambda: _takes_a_nail(place, facts)}


def _takes_a_nail(place: SeamPlace, facts: Facts) -> bool:
    """Whether a cloth of it is mostly of cotton or flax, or a skin: others tear round the hole."""
    skins = any(facts.entry(c).structure == "skin" for c in place.cloths)
    mixes = [facts.garment.cloths[c].mixes for c in place.cloths]
    firm = (all(_plant(mix) >= HALF for mix in found) for found in mixes if found)
    return skins or any(firm)


def _plant(mix: Mix) -> float:
    return sum(share or ALL for fibre, share in mix if fibre in PLANT)
