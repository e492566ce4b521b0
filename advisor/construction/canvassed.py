"""Cloths that are worked as one with a firm one behind them, and seams that this stays already."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from advisor.claims.loaded import FIRM_FROM, MOUNTED, OFTEN
from advisor.knowledge.model import Entry
from advisor.project.garment import Garment, Seam

DOUBLED, PAIR = 4, 2
STIFF, SLIPS, OPENWORK = "stiffness", "slips at seams", "openwork"
MOTIFS = 4
"""The level of `openwork` of a lace, which gives between its motifs and stays nothing."""


def doubled(seam: Seam, entries: Mapping[str, Entry]) -> tuple[str, ...]:
    """The shell and what lies behind it, where a seam joins each of the two to its own like.

    Behind lies the firmer of the two; of two as firm the one whose yarns hold.
    """
    plies = [use.cloth for use in seam.uses if entries[use.cloth].kind == "cloth"]
    if len(plies) != DOUBLED or plies != plies[::-1] or len(set(plies)) != PAIR:
        return ()
    first, second = plies[0], plies[1]
    levels = {n: (_level(n, STIFF, entries), -_level(n, SLIPS, entries)) for n in plies}
    return (first, second) if levels[second] >= levels[first] else (second, first)


def backed_pairs(garment: Garment, entries: Mapping[str, Entry]) -> set[tuple[str, ...]]:
    """Every shell with the cloth behind it: mounted by a place, or doubled in seam after seam."""
    told = {s.cloths()[:PAIR] for s in garment.seams if s.place == MOUNTED}
    return told | often_doubled(garment.seams, entries)


def often_doubled(seams: Iterable[Seam], entries: Mapping[str, Entry]) -> set[tuple[str, ...]]:
    """The pairs that lie doubled in several seams, or in one that the garment has several times."""
    held = ((doubled(seam, entries), seam.making.times) for seam in seams)
    found = Counter(pair for pair, times in held if pair for _ in range(times))
    return {pair for pair, number in found.items() if number >= OFTEN}


def stayed_by_backing(seam: Seam, garment: Garment, entries: Mapping[str, Entry]) -> bool:
    """Whether every cloth of a seam whose yarns slip is held by a firm weave behind it."""
    pairs = backed_pairs(garment, entries)
    here = [name for name in seam.cloths() if entries[name].kind == "cloth"]
    slipping = [name for name in here if _level(name, SLIPS, entries)]
    behind = {
        face: back
        for face, *rest in pairs
        for back in rest
        if back in here and _firm(back, garment, entries)
    }
    return bool(slipping) and all(name in behind for name in slipping)


def _firm(name: str, garment: Garment, entries: Mapping[str, Entry]) -> bool:
    weight, least = garment.cloths[name].weight, FIRM_FROM.get(entries[name].structure)
    heavy = weight is not None and least is not None and weight[0] >= least
    lace = _level(name, OPENWORK, entries) >= MOTIFS
    return heavy and not lace and not _level(name, SLIPS, entries)


def _level(name: str, trait: str, entries: Mapping[str, Entry]) -> int:
    return entries[name].traits.get(trait, (0, 0))[1]
