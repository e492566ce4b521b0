"""Thread of each seam, row by row: the seam itself, its finish, gathering, basting.

Ratios stand in `craft.thread`; the thickness that they take is the stack as the stitches draw
it together, which is near what the foot presses it to. How many rows a seam and a finish have
is their usual make (`common-practice`); width and length of a finishing stitch are estimates.
"""

from __future__ import annotations

from typing import Final

from msgspec import Struct

from advisor.construction.bulk import Verdicts, number, picked
from advisor.construction.finishing import makes_its_finish
from advisor.construction.fullness import Fullness
from advisor.construction.stack import is_closed
from advisor.craft import thread
from advisor.craft.thread import ThreadUse
from advisor.project.garment import Garment, Seam
from advisor.project.placing import POCKETS

ROWS: Final = {
    "French": 2,
    "mock French": 2,
    "felled": 2,
    "self-bound": 2,
    "double-stitched": 2,
    "lapped": 2,
}
ZIGZAG_WIDTH: Final = {"304": 1.0, "308": 5.0}
OVERLOCK_LENGTH, OVERLOCK_WIDTH = 2.5, 5.0
EDGE_ZIGZAG: Final = (2.0, 4.0)
GATHER_MM: Final = 4.0
HAND_ROWS: Final = "hand rows"
GUESS: Final = ("estimate",)
EACH: Final = {"buttonhole": 1500.0, "button": 600.0, "hook": 600.0, "snap": 600.0}
"""Thread for one of each, with what is left to thread the needle and to knot, mm (estimate)."""
BACKSTITCH: Final = 3.0
"""Thread of a hand backstitch: forward, back and forward again (derived)."""
_EDGE_ROWS: Final = {"Hong Kong": 4, "bound": 2, "turned and stitched": 2}


class Purpose(Struct, frozen=True):
    """Thread in mm for one purpose in one seam."""

    purpose: str
    use: ThreadUse


def threads_of(
    seam: Seam, garment: Garment, verdicts: Verdicts, thick: float, full: Fullness | None
) -> tuple[Purpose, ...] | None:
    """Thread of a seam by purpose, all its times together; None where its length is not said.

    Buttons, buttonholes, hooks and snaps are counted instead, where their number is said.
    """
    length = seam.facts.get("length")
    if length is None:
        each = EACH.get(seam.place) if seam.making.counted else None
        if each is None:
            return None
        return (Purpose("seam", ThreadUse(each, sources=GUESS).times(seam.making.times)),)
    edge = float(length)
    kind = picked(verdicts, "seam.kind")
    found = [Purpose("seam", _seam_row(seam, verdicts, thick).times(edge * ROWS.get(kind, 1)))]
    finish = _finish_row(seam, garment, verdicts, kind, thick)
    if finish is not None:
        found.append(Purpose("finish", finish.times(edge)))
    if full is not None and full.cut:
        drawn = _gathering(full, garment, edge).times(full.layers)
        others = [u for u in seam.uses if u.fullness > 1 and u.cloth != full.cloth]
        for use in others if full.method == HAND_ROWS else ():
            rows = thread.gathering_rows(edge * use.fullness, stitch_mm=GATHER_MM)
            drawn = thread.total([drawn, rows], wastage=0.0)
        found.append(Purpose("gathering", drawn))
    if picked(verdicts, "pin.kind") == "hand basting":
        found.append(Purpose("basting", thread.hand_basting(edge, thickness_mm=thick)))
    made = seam.making.pleats
    if made is not None and made.stitched_down:
        down = thread.lockstitch(thick, number(verdicts, "stitch.length") or 2.5)
        found.append(Purpose("pleats", down.times(made.stitched_down * made.number)))
    return tuple(Purpose(p.purpose, p.use.times(seam.making.times)) for p in found)


def _seam_row(seam: Seam, verdicts: Verdicts, thick: float) -> ThreadUse:
    """One row of the seam's own stitch, for a length of 1."""
    stitch = picked(verdicts, "stitch.type")
    length = number(verdicts, "stitch.length") or 2.5
    if seam.by_hand or stitch == "hand":
        return ThreadUse(BACKSTITCH)
    if stitch == "straight stretch":
        return thread.lockstitch(thick, length).times(3)
    if stitch in ZIGZAG_WIDTH:
        return thread.zigzag(thick, length, ZIGZAG_WIDTH[stitch])
    if stitch.isdigit():
        return thread.ratio(int(stitch), thick, length, OVERLOCK_WIDTH if stitch == "504" else None)
    return thread.lockstitch(thick, length)


def _finish_row(
    seam: Seam, garment: Garment, verdicts: Verdicts, kind: str, thick: float
) -> ThreadUse | None:
    """The finish of both edges for a length of 1; a gathered edge has its own, longer one.

    The edges of a bag are neatened together.
    """
    word = picked(verdicts, "seam.finish")
    length = number(verdicts, "stitch.length") or 2.5
    if kind in ROWS and makes_its_finish(kind, word):
        return None
    full = max(use.fullness for use in seam.uses)
    edges = 1.0 if is_closed(seam, kind) or seam.place in POCKETS else 1.0 + full
    if word == "overlocked" and kind != "overlocked":
        stitch = 504 if garment.maker.overlocker in ("", "3-thread") else 514
        width = OVERLOCK_WIDTH if stitch == 504 else None
        return thread.ratio(stitch, thick / 2, OVERLOCK_LENGTH, width).times(edges)
    if word == "zigzag":
        return thread.zigzag(thick / 2, *EDGE_ZIGZAG).times(edges)
    if word == "hand overcast":
        return ThreadUse(BACKSTITCH * edges)
    if word == "trimmed and double-stitched":
        return thread.lockstitch(thick, length)
    if word in _EDGE_ROWS:
        each = 2 if word == "bound" and not is_closed(seam, kind) else 1
        return thread.lockstitch(thick / 2, length).times(_EDGE_ROWS[word] * each)
    return None


def _gathering(full: Fullness, garment: Garment, edge: float) -> ThreadUse:
    """Thread that draws up, or tacks down, a full edge."""
    wide = full.cut or edge
    if "pleats" in full.method:
        return thread.hand_basting(edge)
    if full.method == "gathering foot":
        return thread.gathering_rows(wide, rows=1, stitch_mm=GATHER_MM)
    if full.method == "overlock":
        stitch = 504 if garment.maker.overlocker in ("", "3-thread") else 514
        return thread.from_table(stitch).times(wide)
    if full.method == "elastic":
        return thread.zigzag(0.0, *EDGE_ZIGZAG).times(wide)
    return thread.gathering_rows(wide, stitch_mm=GATHER_MM)


def further(seam: Seam, verdicts: Verdicts, purposes: tuple[Purpose, ...], rows: int) -> ThreadUse:
    """Thread of so many rows besides the seam, all its times together, each as its own row is.

    Rows that its kind makes by itself are counted with the seam; beside a seam that is sewn on the
    overlocker a row is a lockstitch.
    """
    made = ROWS.get(picked(verdicts, "seam.kind"), 1)
    own = next(p.use for p in purposes if p.purpose == "seam")
    more = max(0, rows - (made - 1))
    if own.looper:
        length = float(seam.facts["length"]) * seam.making.times
        return thread.lockstitch(1.0, 2.5).times(length * more)
    return own.times(more / made)


def whole(purposes: tuple[Purpose, ...]) -> ThreadUse:
    """All purposes together, no wastage."""
    return thread.total((p.use for p in purposes), wastage=0.0)
