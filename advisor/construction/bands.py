"""How long a band is cut: a knit or an elastic that is stretched to its edge, and one that laps."""

from __future__ import annotations

from msgspec import Struct

from advisor.construction.elastics import ELASTIC, across, flat_beside
from advisor.construction.notionlist import cut_of, ends_of
from advisor.knowledge import nouns
from advisor.knowledge.model import Entry, Knowledge
from advisor.project.garment import Garment, Seam, Use
from advisor.project.placing import singular_words

CLEARLY_SHORT = 0.7
"""The share of a band's length below which a piece is only a part of it (estimate)."""
UNDERLAP = (20.0, 30.0)
"""How far one end of a band runs on below the other, mm: common practice."""
ENDS = 30.0
"""What the allowances of both its ends take, mm: estimate."""
CLOSED = {"waistband": nouns.WAISTS, "cuff": nouns.WRISTS}
"""Bands that close, and what their fastenings are called after."""
GIVES = 2
"""From this level of `stretch` on, moderate."""
LAPPED = frozenset({"hook", "button", "buttonhole", "snap", "hook-and-loop"})
"""Fastenings of which one half lies over the other."""


WAISTBAND, BAND = "waistband", "band"


class Band(Struct, frozen=True):
    """A band of a knit or an elastic: its cloth, and its length without that of its ends, mm.

    `ends` is what the two ends of an elastic take besides; a knit has an allowance at each.
    `pieces` of one length make it up, where the project has more than one that is too short; one
    that `laps` closes with one end over the other, and no piece of its name is cut long enough. It
    lies round `half` of the body that is said where it draws in one half alone, or `round_` a body,
    mm, less a flat band in front.
    """

    cloth: str
    length: float
    ends: float | None = None
    pieces: int = 1
    laps: bool = False
    half: bool = False
    round_: tuple[float, float] | None = None


def bands_of(seam: Seam, garment: Garment, knowledge: Knowledge) -> list[Band]:
    """What is stretched to an edge of a known length: a knit, and the elastics there."""
    found: list[Band] = []
    for use in seam.uses:
        entry = knowledge.entries[garment.cloths[use.cloth].entry]
        if entry.kind == ELASTIC and (use.body or use.stretched > 1):
            length, body = cut_of(seam, use.cloth, entry, garment.seams), use.body or 0.0
            flat = flat_beside(seam, body, garment.seams)
            half = bool(body) and not flat and across(seam, body)
            round_ = (body, flat) if flat else None
            if length is not None:
                ends = ends_of(entry, garment, [seam])
                found.append(Band(use.cloth, length, ends, half=half, round_=round_))
        elif use.stretched > 1 and (entry.structure == "knit" or gives(entry)):
            found += _knit(seam, use, garment)
    return list(dict.fromkeys(found)) or _lapping(seam, garment)


def gives(entry: Entry) -> bool:
    """Whether a cloth that is no knit is stretched to an edge as one is, as a mesh."""
    return entry.traits.get("stretch", (0, 0))[0] >= GIVES


def _knit(seam: Seam, use: Use, garment: Garment) -> list[Band]:
    """A knit, in one piece or in as many as the project has that are too short alone."""
    edge = seam.long_mm
    if not edge:
        return []
    long = edge / use.stretched
    named = (p for p in garment.plan.pieces if p.name.casefold() == seam.name.casefold())
    short = (p for p in named if p.cloth == use.cloth and p.width < long * CLEARLY_SHORT)
    return [Band(use.cloth, long, pieces=max((p.number or 1 for p in short), default=1))]


def _lapping(seam: Seam, garment: Garment) -> list[Band]:
    """A band that a fastening closes, where no piece called after it is cut long enough to lap."""
    edge = seam.long_mm
    words = CLOSED.get(seam.place, frozenset())
    fastened = (s for s in garment.seams if s.place in LAPPED and s.part in ("", seam.part))
    closes = any(words & set(singular_words(other.name)) for other in fastened)
    called = (p for p in garment.plan.pieces if words & set(singular_words(p.name)))
    widest = max((p.width for p in called), default=0.0)
    short = widest < edge + UNDERLAP[0] + ENDS and not in_shaped_pieces(seam, garment)
    return [Band(seam.name, edge, laps=True)] if edge and closes and short else []


def in_shaped_pieces(seam: Seam, garment: Garment) -> bool:
    """Whether the pieces of a waistband are listed, as of one on a curve, and reach round it."""
    called = (p for p in garment.plan.pieces if p.cloth in seam.cloths())
    bands = [p for p in called if BAND in singular_words(p.name) and _of_a_waist(p.name)]
    round_it = sum(p.width * (p.number or 1) for p in bands)
    each = all(p.width < seam.long_mm for p in bands)
    return seam.place == WAISTBAND and len(bands) > 1 and each and round_it >= seam.long_mm


def _of_a_waist(name: str) -> bool:
    words = set(singular_words(name))
    return not words & (nouns.NECKS | nouns.ON_SLEEVE | {"hem"})
