"""One thread for as many places of a colour as bear it, so that fewer are bought and threaded.

What a place advises of fibre and size is often more than one thread. Of those that it advises the
one is picked that most places of the same colour advise too, then one that she has on her rack,
then the one that most of them would pick by themselves. A reel is bought for no place that takes
another one of hardly another thickness without passing a guard. Where she says how near is near
enough, cloths of like colours are sewn with one thread; else those that nobody tells apart. Sheet,
order, strength and shopping then read the same pick.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Final

from msgspec import Struct

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, picking, picking_number
from advisor.claims.judgement import Judgement, Shade
from advisor.claims.valuesets import Choice, Span
from advisor.construction.rack import (
    FIBRE,
    NEAR_TEX,
    SIZE,
    from_rack,
    lab_of_reel,
    near_of,
    rack_of,
    unsuited,
)
from advisor.craft import threadsize
from advisor.craft.colour import SLIGHT, UNSEEN, lab_of, match
from advisor.craft.sharing import Thread as Candidate
from advisor.craft.sharing import fewest
from advisor.knowledge.mine import Reel
from advisor.knowledge.model import Knowledge
from advisor.knowledge.places import PLAIN
from advisor.project.garment import Garment, Seam
from advisor.project.phrases.shading import BOTH

THREADS: Final = frozenset({FIBRE, SIZE})
NEEDLE: Final = "needle.size"
FITS: Final = "It runs freely in the eye of this needle and fills the hole that it makes."
WHY: Final = "More places take it, or it is on the rack: fewer reels, fewer re-threadings."
ALIKE: Final = 1.15
"""Two sizes, tex, that hardly differ in the seam: 7 % of their thickness (`estimate`)."""
FROM_THE_FACE: Final = frozenset({"ribbon", "applique", "bound-edge"})
"""Kinds of place whose last layer is stitched down on the outside, in its own colour."""
Thread = tuple[int, float]
"""Fibre as its place among the words of the aspect, and tex."""


class _Wanted(Struct, frozen=True):
    """What a place advises of its thread, and what it would pick by itself."""

    by_aspect: dict[str, Verdict]
    fibres: frozenset[int]
    sizes: frozenset[float]
    pick: Thread

    def bears(self, thread: Thread) -> bool:
        return thread[0] in self.fibres and thread[1] in self.sizes

    @property
    def loaded(self) -> bool:
        """Whether its least size is that by which the seam holds."""
        because = [s.claim for s in self.by_aspect[SIZE].because if s.claim.purposes[0] == "seam"]
        return any(c.span is not None and c.span[0] == min(self.sizes) for c in because)

    def takes(self, thread: Thread) -> bool:
        """Whether it bears a thread, or one of so nearly its size, and no guard is against it."""
        fibre, size = thread
        near = any(max(size, own) <= ALIKE * min(size, own) for own in self.sizes)
        near = near and (size >= min(self.sizes) or not self.loaded)
        return fibre in self.fibres and near and size in self.by_aspect[SIZE].allowed


def thread_cloth(seam: Seam, garment: Garment, knowledge: Knowledge) -> str:
    """The cloth whose colour a place is sewn in: of those that are no notion, else of all."""
    cloths = seam.cloths()
    own = [n for n in cloths if knowledge.entries[garment.cloths[n].entry].kind == "cloth"]
    return seen_of(seam, own or cloths, garment)


def seen_of(seam: Seam, cloths: Sequence[str], garment: Garment) -> str:
    """The one on which the row is seen: what is laid on or binds from the face, else the first."""
    laid = (n for n in reversed(cloths) if seam.place in FROM_THE_FACE and garment.cloths[n].trims)
    return next(laid, cloths[0])


def colour_of(cloth: str, judgement: Judgement) -> str:
    """The colour of the thread of a cloth: shared, as the project says it, or to match it."""
    shade = judgement.shades.get(cloth)
    return shade.colour if shade else own_colour(cloth, judgement.garment)


def own_colour(cloth: str, garment: Garment) -> str:
    """The colour of a cloth as the project says it, else that it has to match the cloth."""
    return garment.cloths[cloth].colour.casefold() or f"to match {cloth}"


def matched(cloth: str, garment: Garment) -> str:
    """What a thread is matched to: a cloth, or the stronger colour of one that has several."""
    several = BOTH in garment.cloths[cloth].shade
    return f"the darker colour of {cloth}" if several else cloth


def sewn_as(cloth: str, garment: Garment) -> Seam | None:
    """A seam that shows how a cloth is sewn; one in its own colour, and a plain one, first."""
    seams = [seam for seam in garment.seams if cloth in seam.cloths()]
    plain = (PLAIN, "")
    return min(
        seams, key=lambda s: (s.uses[0].cloth != cloth, s.place not in plain, s.name), default=None
    )


def share_threads(
    garment: Garment, verdicts: dict[Place, dict[str, Verdict]], knowledge: Knowledge
) -> dict[str, Shade]:
    """Pick for every seam the thread that it shares with most others of its colour.

    Returns the colours of thread that cloths share; nothing where she lets none be shared.
    """
    places: dict[str, list[dict[str, Verdict]]] = {}
    for seam in garment.seams:
        cloth = thread_cloth(seam, garment, knowledge)
        places.setdefault(cloth, []).append(verdicts[Place("seam", seam.name)])
    reels = rack_of(garment, knowledge)
    near = near_of(garment, knowledge)
    alike, hers = (UNSEEN, ()) if near is None else (near, reels)
    shades = _shades(places, hers, alike, garment)
    groups: dict[str, list[_Wanted]] = {}
    for cloth, sewn in places.items():
        colour = shades[cloth].colour if cloth in shades else own_colour(cloth, garment)
        groups.setdefault(colour, []).extend(w for w in map(_wanted, sewn) if w is not None)
    for colour, group in groups.items():
        had = _at_hand(colour, reels)
        shared = len(group) > 1 or had
        picks = [_best(one, group, had) if shared else one.pick for one in group]
        for one, thread in zip(group, _fewer(group, picks, had), strict=True):
            _take(one, thread)
    return shades


def _fewer(group: list[_Wanted], picks: list[Thread], had: tuple[Reel, ...]) -> list[Thread]:
    """The threads with every reel left out whose places all take another that is used anyway.

    The least used goes first, into what she has at hand, or the most used; what she has costs
    nothing and stays.
    """
    hers = _reels_as_threads(group[0], had) if group else []
    for thread in reversed(_by_use(picks)):
        places = [one for one, picked in zip(group, picks, strict=True) if picked == thread]
        used = (other for other in _by_use(picks) if other != thread)
        into = next((o for o in (*hers, *used) if all(one.takes(o) for one in places)), None)
        if into is not None and not any(_is_had(thread, one, had) for one in places):
            picks = [into if picked == thread else picked for picked in picks]
    return picks


def _by_use(picks: list[Thread]) -> list[Thread]:
    """The threads, the most used first; of two alike the finer one."""
    taken = Counter(picks)
    return sorted(taken, key=lambda one: (-taken[one], one))


def _shades(
    places: dict[str, list[dict[str, Verdict]]],
    reels: tuple[Reel, ...],
    near: float,
    garment: Garment,
) -> dict[str, Shade]:
    """The colour of thread that each cloth shares, by as few threads as her nearness allows."""
    labs = {c: lab_of(code) for c in places if (code := garment.cloths[c].colour).startswith("#")}
    if near <= 0 or not labs:
        return {}
    own = {garment.cloths[cloth].colour: lab for cloth, lab in labs.items()}
    candidates = [Candidate(code, lab, bought=True) for code, lab in own.items()]
    candidates += [Candidate(r.name, lab) for r in reels if (lab := lab_of_reel(r)) is not None]
    barred = {(c, r.name) for c in labs for r in reels if unsuited(r, places[c])}
    taken = fewest(labs, candidates, near, frozenset(barred))
    found = {c: (one, match(one.name, one.lab, labs[c])) for c, one in taken.items()}
    return {
        cloth: Shade(one.name, not one.bought, near_by.difference, near_by.darker)
        for cloth, (one, near_by) in found.items()
        if one.name != garment.cloths[cloth].colour
    }


def _wanted(by_aspect: dict[str, Verdict]) -> _Wanted | None:
    """What a place wants of its thread; None where fibre or size is not decided."""
    fibre, size = by_aspect.get(FIBRE), by_aspect.get(SIZE)
    if fibre is None or size is None or fibre.pick is None or size.pick is None:
        return None
    if not isinstance(fibre.advised, Choice) or not isinstance(size.advised, Span):
        return None
    steps = {step for step in size.aspect.steps if step in size.advised} | {size.pick}
    sizes = _through_the_eye(steps, by_aspect.get(NEEDLE))
    own = size.pick
    pick = min(sizes, key=lambda step: (abs(step - own), step))
    return _Wanted(by_aspect, frozenset(fibre.advised.options()), sizes, (int(fibre.pick), pick))


def _through_the_eye(sizes: set[float], needle: Verdict | None) -> frozenset[float]:
    """The sizes of thread that suit the needle of a place; the nearest where none does."""
    if needle is None or needle.pick is None:
        return frozenset(sizes)
    number = needle.pick
    near = min(sizes, key=lambda tex: (abs(threadsize.needle_for(tex) - number), tex))
    return frozenset(tex for tex in sizes if threadsize.suits(tex, number)) or frozenset({near})


def _threads(one: _Wanted) -> Iterator[Thread]:
    return ((fibre, size) for fibre in sorted(one.fibres) for size in sorted(one.sizes))


def _at_hand(colour: str, reels: tuple[Reel, ...]) -> tuple[Reel, ...]:
    """Reels of hers that hardly anybody tells from a colour; by name where it is a reel's."""
    named = tuple(reel for reel in reels if reel.name.casefold() == colour)
    near = (one for one in from_rack(colour, reels) if one.found is not None)
    return named or tuple(o.reel for o in near if o.found and o.found.difference < SLIGHT)


def _reels_as_threads(one: _Wanted, reels: tuple[Reel, ...]) -> list[Thread]:
    """Her reels of which fibre and size are known."""
    words = one.by_aspect[FIBRE].aspect.words
    known = ((reel.fibre, reel.tex) for reel in reels)
    return [(words.index(fibre), tex) for fibre, tex in known if tex and fibre in words]


def _is_had(thread: Thread, one: _Wanted, reels: tuple[Reel, ...]) -> bool:
    """Whether a reel of hers is known to be this thread."""
    fibre = one.by_aspect[FIBRE].aspect.words[thread[0]]
    return any(
        reel.fibre == fibre and reel.tex is not None and abs(reel.tex - thread[1]) <= NEAR_TEX
        for reel in reels
    )


def _best(one: _Wanted, group: list[_Wanted], had: tuple[Reel, ...]) -> Thread:
    """The thread of a place: what most bear, what she has, what most would pick, nearest to all.

    It is counted alike from every place, so that places that bear the same come to one thread.
    """

    def worth(thread: Thread) -> tuple[float, ...]:
        bear = sum(other.bears(thread) for other in group)
        like = sum(other.pick == thread for other in group)
        fibre = sum(other.pick[0] == thread[0] for other in group)
        apart = sum(abs(thread[1] - other.pick[1]) for other in group)
        return (bear, _is_had(thread, one, had), like, fibre, -apart, -thread[1], -thread[0])

    return max(_threads(one), key=worth)


def _take(one: _Wanted, thread: Thread) -> None:
    fibre, size = thread
    if fibre != one.pick[0]:
        one.by_aspect[FIBRE] = picking(one.by_aspect[FIBRE], fibre, WHY)
    own = one.by_aspect[SIZE].pick
    if size != own:
        why = WHY if own in one.sizes else FITS
        one.by_aspect[SIZE] = picking_number(one.by_aspect[SIZE], size, why)
