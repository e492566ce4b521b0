"""How wide a notion is bought: as the project says at its layer or its cloth, else as is usual.

What is usual stands in the file of the notion under `wide`, for all places or for those that are
called so: an elastic is wider at a waist than at a wrist.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from advisor.knowledge.model import Entry
from advisor.project.garment import Garment, Seam
from advisor.project.placing import singular_words


class Width(Struct, frozen=True):
    """How wide a notion is, mm, or how thick if it is round; None where its look decides.

    `said` is whether the project says it; else it is what is usual at such a place.
    """

    mm: float | None
    said: bool = False
    round: bool = False


def width_of(name: str, seam: Seam, entry: Entry, garment: Garment) -> Width | None:
    """How wide a notion of a place is; None where nobody says anything of it."""
    usual = usual_width(entry, seam)
    bolt = garment.plan.bolts.get(name)
    here = (use.width for use in seam.uses if use.cloth == name and use.width)
    said = next(here, None if bolt is None else bolt.width)
    return usual if said is None else Width(said, said=True, round=bool(usual and usual.round))


def usual_width(entry: Entry, seam: Seam) -> Width | None:
    """How wide a notion usually is at such a place; None where its file says nothing."""
    wide = entry.facts.get("wide")
    return None if wide is None else Width(at_place(wide, seam), round=bool(wide.get("round")))


def at_place(said: dict[str, Any], seam: Seam) -> float | None:
    """What a fact of a notion says, mm: at places called so, else everywhere."""
    words = set(singular_words(seam.name))
    here = (mm for name, mm in said.get("at", {}).items() if words >= set(singular_words(name)))
    return next(here, said.get("mm"))


def narrowest_said(name: str, garment: Garment) -> float | None:
    """The least width, mm, that any place says of a notion; None where none does."""
    every = (use for seam in garment.seams for use in seam.uses)
    return min((use.width for use in every if use.cloth == name and use.width), default=None)
