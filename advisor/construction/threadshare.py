"""One thread for as many places of a colour as bear it, so that fewer are bought and threaded.

What a place advises of fibre and size is often more than one thread. Of those that it advises the
one is picked that most places of the same colour advise too, then the one that most of them would
pick by themselves. Sheet, order, strength and shopping then read the same pick.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from advisor.claims.collect import Place
from advisor.claims.combine import HERE, Verdict, picking
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Choice, Span
from advisor.knowledge.model import Claim, Knowledge
from advisor.project.garment import Garment, Seam

FIBRE, SIZE = "thread.fibre", "thread.size"
THREADS: Final = frozenset({FIBRE, SIZE})
WHY: Final = "More places of this colour take it: fewer reels, fewer re-threadings."
Thread = tuple[int, float]
"""Fibre as its place among the words of the aspect, and tex."""


@dataclass(frozen=True, slots=True)
class _Wanted:
    """What a place advises of its thread, and what it would pick by itself."""

    by_aspect: dict[str, Verdict]
    fibres: frozenset[int]
    sizes: frozenset[float]
    pick: Thread

    def bears(self, thread: Thread) -> bool:
        return thread[0] in self.fibres and thread[1] in self.sizes


def thread_cloth(seam: Seam, garment: Garment, knowledge: Knowledge) -> str:
    """The cloth whose colour a place is sewn in: its first that is no notion, else its first."""
    cloths = seam.cloths()
    own = (n for n in cloths if knowledge.entries[garment.cloths[n].entry].kind == "cloth")
    return next(own, cloths[0])


def colour_of(cloth: str, garment: Garment) -> str:
    """The colour of a cloth as the project says it, else that it has to match the cloth."""
    return garment.cloths[cloth].colour or f"to match {cloth}"


def sewn_as(cloth: str, garment: Garment) -> Seam | None:
    """A seam that shows how a cloth is sewn; one in its own colour first."""
    seams = [seam for seam in garment.seams if cloth in seam.cloths()]
    return min(seams, key=lambda s: s.uses[0].cloth != cloth, default=None)


def share_threads(
    garment: Garment, verdicts: dict[Place, dict[str, Verdict]], knowledge: Knowledge
) -> None:
    """Pick for every seam the thread that it shares with most others of its colour."""
    groups: dict[str, list[_Wanted]] = {}
    for seam in garment.seams:
        wanted = _wanted(verdicts[Place("seam", seam.name)])
        if wanted is not None:
            cloth = thread_cloth(seam, garment, knowledge)
            groups.setdefault(colour_of(cloth, garment), []).append(wanted)
    for group in groups.values():
        for one in group if len(group) > 1 else ():
            _take(one, max(_threads(one), key=lambda t: _worth(t, one, group)))


def _wanted(by_aspect: dict[str, Verdict]) -> _Wanted | None:
    """What a place wants of its thread; None where fibre or size is not decided."""
    fibre, size = by_aspect.get(FIBRE), by_aspect.get(SIZE)
    if fibre is None or size is None or fibre.pick is None or size.pick is None:
        return None
    if not isinstance(fibre.advised, Choice) or not isinstance(size.advised, Span):
        return None
    steps = {step for step in size.aspect.steps if step in size.advised}
    fibres = frozenset(fibre.advised.options())
    return _Wanted(by_aspect, fibres, frozenset(steps | {size.pick}), (int(fibre.pick), size.pick))


def _threads(one: _Wanted) -> Iterator[Thread]:
    return ((fibre, size) for fibre in sorted(one.fibres) for size in sorted(one.sizes))


def _worth(thread: Thread, one: _Wanted, group: list[_Wanted]) -> tuple[float, ...]:
    """How many places bear a thread, how many would pick it, how near it is to the own pick."""
    bear = sum(other.bears(thread) for other in group)
    like = sum(other.pick == thread for other in group)
    own = thread[0] == one.pick[0]
    return (bear, like, own, -abs(thread[1] - one.pick[1]), -thread[1], -thread[0])


def _take(one: _Wanted, thread: Thread) -> None:
    fibre, size = thread
    if fibre != one.pick[0]:
        one.by_aspect[FIBRE] = picking(one.by_aspect[FIBRE], fibre, WHY)
    if size != one.pick[1]:
        one.by_aspect[SIZE] = _sized(one.by_aspect[SIZE], size)


def _sized(verdict: Verdict, size: float) -> Verdict:
    """A size that is advised, picked because it is shared."""
    about = verdict.aspect.id
    claim = Claim(about, (size, size), 0, size, "may", "", WHY, ("derived",), 2, f"aspect {about}")
    return replace(verdict, pick=size, because=(*verdict.because, Said(HERE, claim)))
