"""Thread to buy, by colour: metres by needle, bobbin and looper, wastage in, then reels.

A seam is sewn in the colour of the cloth that shows most, which is the first of its stack. What
a reel or a cone holds is the trade's custom (`common-practice`).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.construction.bulk import number, picked
from advisor.construction.cutnotes import CutNote
from advisor.construction.seamwork import SeamWork
from advisor.craft import thread, threadsize

REELS: Final = (100.0, 250.0, 500.0, 1000.0)
"""What a reel of sewing thread holds, m."""
CONE: Final = 1500.0
"""What a cone of overlock thread holds, m."""
Kind = tuple[str, str, float | None]
"""Colour, fibre and tex of a thread."""
COTTON: Final = "cotton"
LOOPERS: Final = {"3-thread": 3, "4-thread": 4, "5-thread": 5}


@dataclass(frozen=True, slots=True)
class ThreadBought:
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
    judgement: Judgement, works: list[SeamWork], cuts: Iterable[CutNote] = ()
) -> list[ThreadBought]:
    """Thread by colour and kind, most first; finishing threads go with the seam's colour.

    The rows of tucks take the thread of a seam of their cloth, in the colour of that cloth.
    """
    groups: dict[Kind, list[SeamWork]] = {}
    for work in works:
        groups.setdefault(_kind(work, work.seam.uses[0].cloth, judgement), []).append(work)
    merged = _merged(groups, judgement)
    tucked: dict[Kind, list[CutNote]] = {}
    for note in cuts:
        sewn = next((w for w in works if w.seam is note.sewn_as), None)
        if note.thread is not None and sewn is not None:
            key = _kind(sewn, note.cut.piece.cloth, judgement)
            tucked.setdefault(_kept(key, sewn, merged, judgement), []).append(note)
    keys = dict.fromkeys((*merged, *tucked))
    found = [_bought(key, merged.get(key, []), tucked.get(key, [])) for key in keys]
    found.sort(key=lambda b: (-b.total, b.colour, b.fibre, b.tex or 0.0))
    return _with_cones(found, LOOPERS.get(judgement.garment.maker.overlocker, 3))


def _kind(work: SeamWork, cloth: str, judgement: Judgement) -> Kind:
    """The thread of a seam, in the colour of a cloth."""
    verdicts = judgement.verdicts[Place("seam", work.seam.name)]
    about = judgement.garment.cloths[cloth]
    return (
        about.colour or f"to match {about.name}",
        picked(verdicts, "thread.fibre"),
        number(verdicts, "thread.size"),
    )


def _kept(
    key: Kind, work: SeamWork, kept: dict[Kind, list[SeamWork]], judgement: Judgement
) -> Kind:
    """The thread itself where it is bought already, or another that does as well."""
    if key in kept:
        return key
    same = (k for k in kept if k[0] == key[0] and k[2] == key[2])
    return next((k for k in same if _allow([work], k[1], judgement)), key)


def _merged(groups: dict[Kind, list[SeamWork]], judgement: Judgement) -> dict[Kind, list[SeamWork]]:
    """Threads of one colour and size as one, where the lesser's seams allow the other's fibre."""
    kept: dict[Kind, list[SeamWork]] = {}
    for key, works in sorted(groups.items(), key=lambda g: (-len(g[1]), str(g[0]))):
        same = (k for k in kept if k[0] == key[0] and k[2] == key[2])
        other = next((k for k in same if _allow(works, k[1], judgement)), None)
        kept.setdefault(other or key, []).extend(works)
    return kept


def _allow(works: list[SeamWork], fibre: str, judgement: Judgement) -> bool:
    """Whether every one of some seams may be sewn with a thread of this fibre."""
    for work in works:
        verdict = judgement.verdicts[Place("seam", work.seam.name)].get("thread.fibre")
        if verdict is None or fibre not in verdict.aspect.words:
            return False
        if verdict.aspect.words.index(fibre) not in verdict.advised:
            return False
    return True


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


def _bought(key: Kind, works: list[SeamWork], tucked: list[CutNote]) -> ThreadBought:
    counted = [w for w in works if w.threads is not None]
    rows = [note.thread for note in tucked if note.thread is not None]
    seams = [p.use for w in counted for p in w.threads or () if not _on_cones(p.use)]
    sewn = thread.total([*seams, *rows])
    coned = thread.total(p.use for w in counted for p in w.threads or () if _on_cones(p.use))
    reeled = (sewn.needle + sewn.bobbin) / 1000
    named = (*(w.seam.uses[0].cloth for w in works), *(n.cut.piece.cloth for n in tucked))
    names = tuple(dict.fromkeys(named))
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


def _on_cones(use: thread.Use) -> bool:
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
