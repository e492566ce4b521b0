"""What a cloth may be made of, given what is said of its fibres: a set of possible mixes.

A fibre said without a share keeps the mixes on file that hold it, and never loosens what guards
the cloth, unless that pure cloth is on file with a source. Only shares fix a mix, and even then
the film of a lamé or the elastane of a stretch cloth stays in it.
"""

from __future__ import annotations

from collections.abc import Iterable

from advisor.knowledge.model import LIMIT_ASPECT, Entry, Knowledge, Mix
from advisor.project.phrases.lexicon import TENDER_PARTS
from advisor.project.phrases.pairing import PARTS
from advisor.project.phrases.shares import Fibres

Note = tuple[str, str]
"""What was not known or taken for granted, and what follows from it."""

_UNSEEN = frozenset({"memory", "estimate"})
_BOUNDED = ("press.moisture", "press.dwell")
_HIGHEST = 1000.0
_STRETCHED = "elastane"
_STRETCHING = {
    **dict.fromkeys(("panne-velvet", "crushed-velvet"), "stretch-panne-velvet"),
    "lace": "stretch-lace",
}
"""What cloths are where elastane is in them, as they are made for that (common practice)."""


def stretching(entry: str, shares: Iterable[tuple[str, float | None]]) -> str:
    """The cloth that an entry is where elastane is among its fibres."""
    given = any(fibre == _STRETCHED for fibre, _ in shares)
    return _STRETCHING.get(entry, entry) if given else entry


def possible_mixes(
    entry: Entry, said: Fibres, knowledge: Knowledge, *, stretch: bool = False
) -> tuple[tuple[Mix, ...], tuple[Note, ...]]:
    """The mixes that a cloth may be of, likeliest first, and what is to be told of them.

    Args:
        entry: the cloth.
        said: its fibres as they were said.
        knowledge: where the fibres and the standing of sources are looked up.
        stretch: whether it was said to stretch; then elastane may be in it.
    """
    notes: tuple[Note, ...] = ()
    if said.either:
        each = [_of_fibres(entry, ((fibre, None),), knowledge) for fibre in said.either]
        mixes = tuple(dict.fromkeys(mix for some, _ in each for mix in some))
        notes = tuple(dict.fromkeys(note for _, some in each for note in some))
    elif not said.shares:
        mixes = entry.mixes
    elif said.whole:
        mixes, notes = _fixed(entry, said.shares, knowledge)
        stretch = stretch and not _on_file(said.shares, entry)
    elif said.blend:
        mixes = _blended(entry, said.shares)
    else:
        mixes, notes = _of_fibres(entry, said.shares, knowledge)
    if stretch:
        mixes = tuple(dict.fromkeys(with_part(mix, _STRETCHED) for mix in mixes))
    return mixes, notes


def with_part(mix: Mix, fibre: str) -> Mix:
    """A mix with one fibre more, its share not known."""
    return mix if any(f == fibre for f, _ in mix) else (*mix, (fibre, None))


def always_in(entry: Entry) -> tuple[str, ...]:
    """The parts that are no ground, one of which every mix of a cloth holds: its film or coat."""
    parts = [tuple(f for f, _ in mix if f in TENDER_PARTS) for mix in entry.mixes]
    if not all(parts):
        return ()
    return tuple(dict.fromkeys(fibre for some in parts for fibre in some))


def parts_laid(mixes: Iterable[Mix], laid: Entry) -> tuple[Mix, ...]:
    """Mixes that are fixed by shares, each with what always lies on a ground such as `laid`.

    Its other fibres are those of grounds that this cloth is not: a coat changes no stated ground.
    """
    every = [some for mix in mixes for some in _with_always(mix, laid)]
    return tuple(mix for mix in every if mix not in mixes)


def _with_always(mix: Mix, entry: Entry) -> tuple[Mix, ...]:
    """A mix that names none of the parts that are always there, with each of them in turn."""
    parts = always_in(entry)
    if not parts or any(fibre in parts for fibre, _ in mix):
        return (mix,)
    return tuple((*mix, (part, None)) for part in parts)


def _fixed(
    entry: Entry, shares: Mix, knowledge: Knowledge
) -> tuple[tuple[Mix, ...], tuple[Note, ...]]:
    mixes = _with_always(shares, entry)
    if mixes == (shares,):
        return mixes, ()
    names = " or ".join(knowledge.fibres[part].name for part in always_in(entry))
    return mixes, ((f"no {names} is named", f"{entry.name} always holds {names}, so it stays"),)


def _on_file(shares: Mix, entry: Entry) -> bool:
    """Whether elastane, or its absence, was already spoken of by somebody."""
    return any(fibre == _STRETCHED for fibre, _ in shares) or shares in entry.mixes


def _blended(entry: Entry, shares: Mix) -> tuple[Mix, ...]:
    """Something unknown is mixed in, so nothing is left out but the pure cloth of that fibre."""
    fibres = {fibre for fibre, _ in shares}
    holding = [m for m in entry.mixes if fibres <= {f for f, _ in m} and len(m) > len(fibres)]
    first = holding or [tuple((fibre, None) for fibre in sorted(fibres))]
    return tuple(dict.fromkeys([*first, *entry.mixes]))


def _of_fibres(
    entry: Entry, shares: Mix, knowledge: Knowledge
) -> tuple[tuple[Mix, ...], tuple[Note, ...]]:
    """The mixes that hold all of some fibres whose shares nobody said."""
    fibres = [fibre for fibre, _ in shares]
    holding = tuple(m for m in entry.mixes if set(fibres) <= {f for f, _ in m})
    if holding:
        if _pure_on_file(fibres, entry, knowledge) or as_tender(holding, entry.mixes, knowledge):
            return holding, ()
        return tuple(dict.fromkeys([*holding, *entry.mixes])), ()
    if set(fibres) <= PARTS:  # no ground: "denim with elastane" is denim with some in it
        mixes = entry.mixes
        for fibre in fibres:
            mixes = tuple(dict.fromkeys(with_part(mix, fibre) for mix in mixes))
        return mixes, ()
    names = " and ".join(knowledge.fibres[fibre].name for fibre in fibres)
    added = _with_always(tuple((fibre, None) for fibre in fibres), entry)
    note = (
        f"nobody is known to sell {entry.name} of {names}",
        f"treated as the tenderest of {names} and of what {entry.name} is sold in",
    )
    return tuple(dict.fromkeys([*added, *entry.mixes])), (note,)


def _pure_on_file(fibres: list[str], entry: Entry, knowledge: Knowledge) -> bool:
    """Whether the cloth of one fibre alone is on file on somebody's word."""
    pure = len(fibres) == 1 and any(len(m) == 1 and m[0][0] == fibres[0] for m in entry.mixes)
    kinds = {knowledge.sources[s.split(" ", 1)[0]].kind for s in entry.sold_sources}
    return pure and bool(kinds - _UNSEEN)


def as_tender(kept: Iterable[Mix], every: Iterable[Mix], knowledge: Knowledge) -> bool:
    """Whether what is kept bears no more heat, moisture or time than everything did."""
    now, before = _bears(kept, knowledge), _bears(every, knowledge)
    return all(a <= b for a, b in zip(now, before, strict=True))


def _bears(mixes: Iterable[Mix], knowledge: Knowledge) -> tuple[float, ...]:
    """The most that the tenderest fibre of some mixes bears: heat, its start, moisture, time."""
    fibres = [knowledge.fibres[fibre] for mix in mixes for fibre, _ in mix]
    heat = [c.span[1] for f in fibres for c in f.claims if c.aspect == LIMIT_ASPECT and c.span]
    bounds = [
        min(
            (c.span[1] for f in fibres for c in f.claims if c.aspect == aspect and c.span),
            default=_HIGHEST,
        )
        for aspect in _BOUNDED
    ]
    return (
        min(f.limit for f in fibres),
        min(f.start for f in fibres),
        min(heat, default=_HIGHEST),
        *bounds,
    )
