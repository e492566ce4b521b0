"""How long an elastic is cut from the body: so much shorter as its file says of such a place.

The file names it under `less`: 5 cm round a waist, 13 mm round a wrist (`trade-elastic-lengths`).
Never more than `MOST` of the body, so that a child's waist is not cut as much as hers (`estimate`).
One that lies across a back alone lies round what a flat band in front leaves of a body that is
measured all round, or round half of it.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from msgspec.structs import replace

from advisor.construction.widths import at_place
from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.project.garment import Seam
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

ELASTIC: Final = "elastic"
DRAWN_IN: Final = frozenset({"casing", "elastic-edge"})
"""Kinds of places that an elastic draws in; in a seam it only stays what gives."""
EDGE, CASING, BAND = "elastic-edge", "casing", "waistband"
MOST: Final = 0.1


def less_than_body(entry: Entry, seam: Seam) -> float | None:
    """How much shorter than the body it is usually cut there, mm; None where nothing says it."""
    said = entry.facts.get("less")
    return None if said is None else at_place(said, seam) or None


def across(seam: Seam, body: float) -> bool:
    """Whether it draws in half of a garment, and what is said goes round the whole body.

    No elastic that draws in is as long as its channel, so such a length is no measure of a part.
    """
    half = speaks_of(seam.name, nouns.HALVES) and seam.place == CASING
    return half and 0 < seam.long_mm <= body


def flat_beside(seam: Seam, body: float, seams: Iterable[Seam]) -> float:
    """The length of the band on the other half that nothing draws in, mm; 0 where none is said.

    It goes round its own part of the body, and the elastic only round what is left of that.
    """
    words = nouns.HALVES & set(singular_words(seam.name))
    if len(words) != 1 or not across(seam, body):
        return 0.0
    other = nouns.HALVES - words
    flat = [
        s.long_mm * s.making.times
        for s in seams
        if s.place == BAND and s.part == seam.part and other <= set(singular_words(s.name))
    ]
    return flat[0] if len(flat) == 1 and flat[0] < body else 0.0


def from_body(entry: Entry, seam: Seam, body: float, seams: Iterable[Seam] = ()) -> float:
    """How long it lies round so much of a body, mm; across a part of it, round what that leaves.

    That is what a flat band on the other half of `seams` leaves, or half where none is.
    """
    flat = flat_beside(seam, body, seams)
    part = body - flat if flat else body / 2 if across(seam, body) else body
    here = _all_round(seam) if flat else seam
    return part - min(less_than_body(entry, here) or 0.0, MOST * part)


def _all_round(seam: Seam) -> Seam:
    """The place as if it went all round: beside a flat band it alone gives the hold of a waist."""
    words = (word for word in seam.name.split() if not speaks_of(word, nouns.HALVES))
    return replace(seam, name=" ".join(words))


def slack(entry: Entry, seam: Seam, name: str, seams: Iterable[Seam] = ()) -> float | None:
    """How long an elastic is cut from the body that is no shorter than its channel, mm."""
    body = next((use.body for use in seam.uses if use.cloth == name and use.body), None)
    if body is None or seam.place not in DRAWN_IN or not seam.long_mm:
        return None
    cut = from_body(entry, seam, body, seams)
    return cut if cut >= seam.long_mm else None


def is_tried(entry: Entry, places: list[Seam], name: str) -> bool:
    """Whether only trying it on tells its length: it draws in, and no stretch nor body is said."""
    uses = [use for seam in places for use in seam.uses if use.cloth == name]
    said = any(use.stretched > 1 or use.body for use in uses)
    return entry.kind == ELASTIC and any(s.place in DRAWN_IN for s in places) and not said


def told_less(entry: Entry, places: list[Seam]) -> tuple[float, ...]:
    """How much shorter than the body it is cut in places, mm, least first, where that is usual."""
    every = {less_than_body(entry, seam) for seam in places if seam.place in DRAWN_IN - {EDGE}}
    return tuple(sorted(less for less in every if less))
