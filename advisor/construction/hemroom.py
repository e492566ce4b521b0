"""What is turned up below a piece, against what the hem of its cloth takes as it is made."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.construction.belonging import may_belong
from advisor.construction.bulk import picked
from advisor.construction.disagreement import Disagreement, Figure
from advisor.knowledge.model import Knowledge
from advisor.knowledge.places import Depth, Method, Turn
from advisor.project.garment import Garment, Seam
from advisor.project.making import Piece
from advisor.units import show_size
from advisor.units.sentences import render

HEM: Final = "hem"
SHALLOW: Final = "shallow hem"
CM: Final = 10.0
"""Of a cm, mm."""
IN_CM: Final = 20.0
"""From this on a hem of whole cm is told in them, mm."""

TWICE, LEAST_DEEP = 2, 50.0
"""How often a wide double hem is turned, and its least depth, mm (`tx-l-1374`)."""


def deep_in_narrow(judgement: Judgement, knowledge: Knowledge) -> Iterator[Disagreement]:
    """A piece with more or less below it than the hem that is made there takes."""
    for seam in judgement.garment.seams:
        method = _made(seam, judgement, knowledge) if seam.place == HEM else None
        takes = method.turns.allowed if method and method.turns else None
        if method is None or takes is None or len(seam.cloths()) > 1:
            continue
        for name, deep in turned_up_below(seam, judgement.garment):
            bound = takes.max if deep > takes.max else takes.min
            if deep > takes.max or deep < takes.min:
                has = Figure(f"the piece {name} has a hem of", deep)
                ends = "most" if deep > bound else "least"
                made = f"{seam.name} is made a {method.name}, which takes at {ends}"
                kind = HEM if deep > bound else SHALLOW
                yield Disagreement(kind, seam.name, (has, Figure(made, bound)))


def too_short_for_two(judgement: Judgement, knowledge: Knowledge) -> Iterator[Disagreement]:
    """A piece with one depth below it where the hem is turned up twice by that depth."""
    for seam in judgement.garment.seams:
        for name, deep in _turned_twice(seam, judgement, knowledge):
            has = Figure(f"the piece {name} has a hem of", deep)
            takes = Figure(
                f"{seam.name} is turned up twice by that depth, which takes", TWICE * deep
            )
            yield Disagreement("hem twice", seam.name, (has, takes))


def with_both_turns(piece: Piece, judgement: Judgement, knowledge: Knowledge) -> Piece:
    """The piece with both turns of its hem below it, where only the depth of one is said."""
    for seam in judgement.garment.seams:
        if piece.name in {name for name, _ in _turned_twice(seam, judgement, knowledge)}:
            return replace(piece, hem=TWICE * (piece.hem or 0.0))
    return piece


def _turned_twice(
    seam: Seam, judgement: Judgement, knowledge: Knowledge
) -> list[tuple[str, float]]:
    """The pieces of which no more than the finished depth of a hem of two deep turns is said."""
    method = _made(seam, judgement, knowledge) if seam.place == HEM else None
    if method is None or method.turns is None or method.turns.times < TWICE:
        return []
    least = 0.0 if seam.method else LEAST_DEEP
    below = turned_up_below(seam, judgement.garment)
    return [(name, deep) for name, deep in below if least <= deep < TWICE * LEAST_DEEP]


def _made(seam: Seam, judgement: Judgement, knowledge: Knowledge) -> Method | None:
    """The method of a hem: the one that is named, else the one of the kind that was picked."""
    methods = knowledge.places.methods
    kind = picked(judgement.verdicts[Place("seam", seam.name)], "hem.kind")
    fit = (m for m in methods.values() if HEM in m.makes and m.fits == {HEM: (kind,)})
    return methods.get(seam.method) or next(fit, None)


def how_deep(turn: Turn, seam: Seam, garment: Garment) -> str:
    """How deep a hem is turned, by what is cut for it where her pieces say that.

    On a curve what is deeper than the usual does not lie, and a narrow hem has its own measure.
    """
    curved = seam.facts.get("shape") == "curved"
    depth = turn.allowed or (curved and turn.curved) or turn.usual
    if not depth:
        return turn.deep
    hers = [] if depth is turn.allowed else sorted(mm for _, mm in turned_up_below(seam, garment))
    if not hers or (curved and hers[-1] > depth.max):
        told = render(_lengths(depth), garment.units)
    else:
        ends = dict.fromkeys((hers[0], hers[-1]))
        told = " to ".join(show_size(mm, garment.units) for mm in ends)
    return depth.told.replace("{depth}", told)


def _lengths(depth: Depth) -> str:
    """Two lengths in mm as a sentence holds them."""
    whole = depth.min >= IN_CM and not depth.min % CM + depth.max % CM
    size, unit = (CM, "cm") if whole else (1.0, "mm")
    return f"{{{depth.min / size:g} to {depth.max / size:g} {unit}}}"


def turned_up_below(seam: Seam, garment: Garment) -> list[tuple[str, float]]:
    """The pieces of its cloth that have a hem said, with how deep that is."""
    mine = (p for p in garment.plan.pieces if p.cloth in seam.cloths() and p.hem is not None)
    return [(p.name, p.hem) for p in mine if p.hem is not None and may_belong(p, seam, garment)]
