"""Deep pile in a seam: what of it is sheared off before the seam is sewn."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from advisor.knowledge.ordering import Operation
from advisor.order.kinds import SeamPlace

if TYPE_CHECKING:
    from advisor.order.facts import Facts

SHEAR, CATCHING = "shear", ("join", "set-lining")
"""Work on a deep pile before a seam, and the work that catches it."""
DEEP = 2
"""The level of `pile` that is deep."""


def with_shearing(listed: list[Operation], works: Mapping[str, Operation]) -> list[Operation]:
    """The pieces of work on a place with the shearing of its pile just before it is sewn."""
    at = next((k for k, op in enumerate(listed) if op.id in CATCHING), None)
    return (
        listed if at is None or SHEAR not in works else [*listed[:at], works[SHEAR], *listed[at:]]
    )


def deep_pile(place: SeamPlace, facts: Facts, *, knitted: bool = False) -> list[str]:
    """The cloths whose deep pile a seam may catch; that of a knitted ground is sheared off it.

    The hair of a skin or of mohair is pushed out of the seam and not cut.
    """
    if place.op not in CATCHING:
        return []
    deep = [c for c in place.cloths if facts.least(c, "pile") >= DEEP]
    return [c for c in deep if not knitted or facts.entry(c).structure == "knit"]
