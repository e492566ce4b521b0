"""A full cloth that goes into a place in several layers, of which fewer are cut."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from advisor.construction.belonging import may_belong
from advisor.construction.disagreement import Disagreement
from advisor.project.garment import Garment, Seam
from advisor.project.making import Piece


def too_few_layers(seam: Seam, garment: Garment) -> Iterator[Disagreement]:
    """A place that takes in more layers of a full cloth than its pieces are."""
    drawn = Counter(use.cloth for use in seam.uses if use.fullness > 1)
    for cloth, number in drawn.items():
        ours = (p for p in garment.plan.pieces if p.cloth == cloth and may_belong(p, seam, garment))
        full = [p for p in ours if p.tiers is not None or (p.fullness > 1 and not p.cut)]
        has = sum(map(_layers, full))
        if full and has < number and seam.making.pleats is None:
            names = " and ".join(piece.name for piece in full)
            give = "gives" if len(full) == 1 else "give"
            text = (
                f"takes in {number} layers of {cloth}, and {names} {give} {has}: write a piece for "
                "each, or too little of it is bought"
            )
            yield Disagreement("layers", seam.name, (), text)


def _layers(piece: Piece) -> int:
    """How many layers a full piece is: its number says in how many panels each is cut."""
    copies = piece.number or 1 if piece.tiers is not None else 1
    return copies * (2 if piece.doubled else 1)
