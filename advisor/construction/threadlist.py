"""Thread to buy, by colour: metres by needle, bobbin and looper, wastage in, then reels.

A seam is sewn in the colour of the cloth that shows most, which is the first of its stack; which
fibre and size is the pick of its verdicts (`threadshare`). What
a reel or a cone holds is the trade's custom (`common-practice`).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.construction.bulk import number, picked
from advisor.construction.cutnotes import CutNote
from advisor.construction.rack import FIBRE, SIZE
from advisor.construction.seamwork import SeamWork
from advisor.construction.threads import further
from advisor.construction.threadshare import colour_of, thread_cloth
from advisor.craft import thread, threadsize
from advisor.craft.thread import ThreadUse
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Seam

REELS: Final = (100.0, 250.0, 500.0, 1000.0)
"""What a reel of sewing thread holds, m."""
CONE: Final = 1500.0
"""What a cone of overlock thread holds, m."""
Kind = tuple[str, str, float | None]
"""Colour, fibre and tex of a thread."""
COTTON: Final = "cotton"
LOOPERS: Final = {"3-thread": 3, "4-thread": 4, "5-thread": 5}


class ThreadBought(Struct, frozen=True):
    """Thread of one colour and kind, m, wastage included, and what to buy.

    `overlocker` is what of it comes from cones, needles and loopers together.
    """

    colour: str
    to_match: tuple[str, ...]
    fibre: str
    tex: float | None
    needle: float
    bobbin: float
    looper: float
    overlocker: float
    reels: tuple[tuple[int, float], ...]
    cones: int
    seams: tuple[str, ...]
    uncounted: tuple[str, ...]
    sources: tuple[str, ...]
    tucks: tuple[str, ...] = ()

    @property
    def total(self) -> float:
        """All of it."""
        return self.needle + self.bobbin + self.looper

    @property
    def ticket(self) -> float | None:
        """What it is sold as: its metric ticket, or the cotton ticket of a cotton thread."""
        if self.tex is None:
            return None
        by = threadsize.cotton_ticket if self.fibre == COTTON else threadsize.ticket
        return by(self.tex)

    @property
    def needle_size(self) -> int | None:
        """The needle whose eye suits its thickness, NM."""
        return None if self.tex is None else threadsize.needle_sold(self.tex)


def threads_to_buy(
    judgement: Judgement,
    works: list[SeamWork],
    knowledge: Knowledge,
    cuts: Iterable[CutNote] = (),
    rows: Mapping[str, int] | None = None,
) -> list[ThreadBought]:
    """Thread by colour and kind, most first; finishing threads go with the seam's colour.

    `rows` are those that the order of work sews at a place besides its seam. The rows of tucks
    take the thread of a seam of their cloth, in the colour of that cloth.
    """
    groups: dict[Kind, list[SeamWork]] = {}
    matched: dict[Kind, list[str]] = {}
    for work in works:
        if is_sewn(work.seam, judgement):
            cloth = thread_cloth(work.seam, judgement.garment, knowledge)
            key = _kind(work.seam, cloth, judgement)
            groups.setdefault(key, []).append(work)
            matched.setdefault(key, []).append(cloth)
    tucked: dict[Kind, list[CutNote]] = {}
    for note in cuts:
        if note.thread is not None and note.sewn_as is not None:
            key = _kind(note.sewn_as, note.cut.piece.cloth, judgement)
            tucked.setdefault(key, []).append(note)
    keys = dict.fromkeys((*groups, *tucked))
    found = [
        _bought(
            key,
            groups.get(key, []),
            matched.get(key, []),
            tucked.get(key, []),
            [use for work in groups.get(key, []) for use in _further(work, rows or {}, judgement)],
        )
        for key in keys
    ]
    found.sort(key=lambda b: (-b.total, b.colour, b.fibre, b.tex or 0.0))
    return _with_cones(found, LOOPERS.get(judgement.garment.maker.overlocker, 3))


def _further(work: SeamWork, rows: Mapping[str, int], judgement: Judgement) -> list[ThreadUse]:
    """Thread of what is sewn at a place besides its seam."""
    if work.threads is None or not rows.get(work.seam.name):
        return []
    verdicts = judgement.verdicts[Place("seam", work.seam.name)]
    return [further(work.seam, verdicts, work.threads, rows[work.seam.name])]


def is_sewn(seam: Seam, judgement: Judgement) -> bool:
    """Whether a place is sewn at all: a stone that is glued on asks for no thread."""
    return FIBRE in judgement.verdicts[Place("seam", seam.name)]


def _kind(seam: Seam, cloth: str, judgement: Judgement) -> Kind:
    """The thread of a seam, in the colour of a cloth."""
    verdicts = judgement.verdicts[Place("seam", seam.name)]
    fibre, size = picked(verdicts, FIBRE), number(verdicts, SIZE)
    return (colour_of(cloth, judgement), fibre, size)


def _with_cones(rows: list[ThreadBought], threads: int) -> list[ThreadBought]:
    """One set of cones, in the colour that takes most: a cone for each thread of the overlocker."""
    takes: dict[str, float] = {}
    for row in rows:
        takes[row.colour] = takes.get(row.colour, 0.0) + row.overlocker
    whole = sum(takes.values())
    if not whole:
        return rows
    colour = max(takes, key=lambda c: takes[c])
    first = next(i for i, row in enumerate(rows) if row.colour == colour)
    cones = max(threads, thread.reels(whole, CONE))
    return [replace(row, cones=cones) if i == first else row for i, row in enumerate(rows)]


def _bought(
    key: Kind,
    works: list[SeamWork],
    cloths: list[str],
    tucked: list[CutNote],
    more: list[ThreadUse],
) -> ThreadBought:
    counted = [w for w in works if w.threads is not None]
    rows = [note.thread for note in tucked if note.thread is not None]
    seams = [p.use for w in counted for p in w.threads or () if not _on_cones(p.use)]
    sewn = thread.total([*seams, *rows, *more])
    coned = thread.total(p.use for w in counted for p in w.threads or () if _on_cones(p.use))
    reeled = (sewn.needle + sewn.bobbin) / 1000
    names = tuple(sorted({*cloths, *(n.cut.piece.cloth for n in tucked)}))
    sources = tuple(dict.fromkeys((*sewn.sources, *coned.sources, "common-practice")))
    return ThreadBought(
        key[0],
        names,
        key[1],
        key[2],
        (sewn.needle + coned.needle) / 1000,
        sewn.bobbin / 1000,
        coned.looper / 1000,
        coned.total / 1000,
        reels_for(reeled),
        0,
        tuple(w.seam.name for w in counted),
        tuple(w.seam.name for w in works if w.threads is None),
        sources,
        tuple(note.cut.name for note in tucked),
    )


def _on_cones(use: thread.ThreadUse) -> bool:
    """Whether a row is made on the overlocker, whose threads come from cones."""
    return use.looper > 0


def reels_for(metres: float) -> tuple[tuple[int, float], ...]:
    """Reels that hold so much thread: the smallest one that does, or many of the largest."""
    if metres <= 0:
        return ()
    for size in REELS:
        if metres <= size:
            return ((1, size),)
    return ((thread.reels(metres, REELS[-1]), REELS[-1]),)
