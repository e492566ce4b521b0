"""An edge that is bound in a cloth of which pieces are cut, and no strip among them."""

from __future__ import annotations

from collections.abc import Iterator

from advisor.construction.disagreement import Disagreement
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.bindings import strip_of
from advisor.project.garment import Garment
from advisor.project.headwords import speaks_of

BOUND, CLOTH = "bound-edge", "cloth"


def no_strip(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """Cloths that bind edges, of whose pieces none is on the bias or called after a binding."""
    bound: dict[str, list[str]] = {}
    for seam in garment.seams:
        kinds = {knowledge.kind_of(garment.cloths[name].entry) for name in seam.cloths()}
        if seam.place == BOUND and len(seam.uses) > 1 and kinds == {CLOTH}:
            bound.setdefault(strip_of(seam, garment), []).append(seam.name)
    for cloth, places in bound.items():
        pieces = [piece for piece in garment.plan.pieces if piece.cloth == cloth]
        strips = (p.grain == "bias" or speaks_of(p.name, nouns.BINDS) for p in pieces)
        if pieces and not any(strips):
            text = (
                f"binds {' and '.join(places)}, and no piece of it is a strip: write one with "
                "grain: bias and joined: yes, or too little of it is bought"
            )
            yield Disagreement("no strip", cloth, (), text)
