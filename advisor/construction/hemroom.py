"""What is turned up below a piece, against what the hem of its cloth takes as it is made."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.construction.belonging import may_belong
from advisor.construction.bulk import picked
from advisor.construction.disagreement import Disagreement, Figure
from advisor.knowledge.model import Knowledge
from advisor.knowledge.places import Method
from advisor.project.garment import Garment, Seam
from advisor.project.making import Piece
from advisor.units import show_size
from advisor.units.reading import parse

HEM: Final = "hem"
SHALLOW: Final = "shallow hem"
USUAL: Final = re.compile(r"(?:\d[\d./ ]* to )?(\d[\d./ ]* (?:mm|cm|in)) deep(?!, twice)")
"""How deep a hem is usually turned, in the words of its method."""

DEEP_TWICE: Final = re.compile(r"deep, twice")
TWICE, LEAST_DEEP = 2, 50.0
"""How often a wide double hem is turned, and its least depth, mm (`tx-l-1374`)."""


def deep_in_narrow(judgement: Judgement, knowledge: Knowledge) -> Iterator[Disagreement]:
    """A piece with more or less below it than the hem that is made there takes."""
    for seam in judgement.garment.seams:
        method = _made(seam, judgement, knowledge) if seam.place == HEM else None
        turns = method.turns if method and len(seam.cloths()) == 1 else None
        if method is None or turns is None or turns.most is None or turns.least is None:
            continue
        for name, deep in turned_up_below(seam, judgement.garment):
            bound = turns.most if deep > turns.most else turns.least
            if deep > turns.most or deep < turns.least:
                has = Figure(f"the piece {name} has a hem of", deep)
                ends = "most" if deep > bound else "least"
                takes = f"{seam.name} is made a {method.name}, which takes at {ends}"
                kind = HEM if deep > bound else SHALLOW
                yield Disagreement(kind, seam.name, (has, Figure(takes, bound)))


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
    if seam.place != HEM or not DEEP_TWICE.search(_deep(_made(seam, judgement, knowledge))):
        return []
    least = 0.0 if seam.method else LEAST_DEEP
    below = turned_up_below(seam, judgement.garment)
    return [(name, deep) for name, deep in below if least <= deep < TWICE * LEAST_DEEP]


def _deep(method: Method | None) -> str:
    return method.turns.deep if method and method.turns else ""


def _made(seam: Seam, judgement: Judgement, knowledge: Knowledge) -> Method | None:
    """The method of a hem: the one that is named, else the one of the kind that was picked."""
    methods = knowledge.places.methods
    kind = picked(judgement.verdicts[Place("seam", seam.name)], "hem.kind")
    fit = (m for m in methods.values() if HEM in m.makes and m.fits == {HEM: (kind,)})
    return methods.get(seam.method) or next(fit, None)


def as_she_has_it(deep: str, seam: Seam, garment: Garment) -> str:
    """How deep a hem is turned, by what is cut for it where her pieces say that.

    On a curve what is deeper than the usual does not lie, and a narrow hem has its own measure.
    """
    usual = USUAL.search(deep)
    hers = sorted({mm for _, mm in turned_up_below(seam, garment)})
    if usual is None or not hers:
        return deep
    if seam.facts.get("shape") == "curved" and hers[-1] > parse("length", usual[1]):
        return deep
    said = " to ".join(show_size(mm, garment.units) for mm in dict.fromkeys((hers[0], hers[-1])))
    return deep.replace(usual[0], f"{said} deep")


def turned_up_below(seam: Seam, garment: Garment) -> list[tuple[str, float]]:
    """The pieces of its cloth that have a hem said, with how deep that is."""
    mine = (p for p in garment.plan.pieces if p.cloth in seam.cloths() and p.hem is not None)
    return [(p.name, p.hem) for p in mine if p.hem is not None and may_belong(p, seam, garment)]
