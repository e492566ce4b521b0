"""Tools and notions that are called for, as plain data. Lengths are mm."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ToldStrip:
    """A strip to cut for bound edges."""

    width_mm: tuple[float, ...]
    square_mm: float | None
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldInstead:
    """What does instead of a tool, tried through the rules."""

    text: str
    checked: bool
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldBend:
    """How tightly a bone of a material and thickness bends, mm."""

    of: str
    thickness_mm: float
    radius_mm: float
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldNeed:
    """A tool or notion that is called for; one whose state is everyday lies in any workroom.

    `number` is how many are bought by the piece, `cut_mm` how many of which length there are, each
    with `ends_mm` besides for its ends; `buy` the length that the shop cuts, or what else does,
    `least_mm` the longest place of what is cut to pieces like a cloth. `width_mm` is how wide it
    is, or how thick if it is `round`, and `width` whether that was said, is usual, or is for her
    to choose; "" where nothing is told of it. `spare` are bought besides `number`, and `apart_mm`
    is how far apart the fastenings of a row are taken to be where only its length is said. `tried`
    is said of an elastic whose length the body tells, for nobody says how far it is stretched, and
    `less_mm` how much shorter than the body it is usually cut.
    """

    group: str
    item: str
    aspect: str
    for_: tuple[str, ...]
    state: str
    length_mm: float | None
    number: int | None
    cut_mm: tuple[tuple[float | None, ...], ...]
    ends_mm: float
    buy: str
    buy_mm: float | None
    least_mm: float | None
    bends: tuple[ToldBend, ...]
    strip: ToldStrip | None
    instead: tuple[ToldInstead, ...]
    ruled_out: tuple[str, ...]
    width_mm: float | None = None
    width: str = ""
    round: bool = False
    spare: int = 0
    apart_mm: float | None = None
    tried: bool = False
    less_mm: tuple[float, ...] = ()
