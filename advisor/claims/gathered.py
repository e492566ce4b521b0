"""What was gathered about a garment: where it was said, and which rules fired."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from msgspec import Struct

from advisor.claims.conditions import Fact
from advisor.claims.speakers import Said
from advisor.knowledge.model import Rule

if TYPE_CHECKING:
    from advisor.claims.asking import LayerAsker
    from advisor.claims.outcomes import Outcomes


class Place(Struct, frozen=True):
    """Where a verdict is made: one cloth, one seam or the garment."""

    scope: str
    name: str


class Fired(Struct, frozen=True):
    """A rule that fired in a place, with what made it fire."""

    rule: Rule
    place: Place
    cloths: tuple[str, ...]
    facts: tuple[Fact, ...]
    certain: bool


@dataclass(slots=True)
class Gathered:
    """All that was said, by place and aspect, and every rule that fired.

    `beside` is what the parts say that they bear, which the last press goes round.
    """

    said: dict[Place, dict[str, list[Said]]] = field(default_factory=dict)
    fired: list[Fired] = field(default_factory=list)
    beside: list[Said] = field(default_factory=list)
    asker: LayerAsker | None = field(default=None, repr=False, compare=False)
    outcomes: Outcomes | None = field(default=None, repr=False, compare=False)
