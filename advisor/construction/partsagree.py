"""Whether places agree with the parts that they lie in: their layers, and what hangs free."""

from __future__ import annotations

from collections.abc import Iterator

from advisor.construction.disagreement import Disagreement
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.linings import lines_a_part
from advisor.project.placing import POCKETS, singular_words

HEMMED = frozenset({"edge", "casing", "gathers", "laid on"})
"""Families of places by which a lower edge may be finished."""


def unended(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """A layer that hangs free and frays, with no end below, where other edges are hemmed."""
    kinds, entries = knowledge.places.kinds, knowledge.entries
    ends = [
        seam
        for seam in garment.seams
        if seam.place in kinds
        and kinds[seam.place].family in HEMMED
        and not speaks_of(seam.name, nouns.UPPER_ENDS)
    ]
    if not any(seam.place == "hem" for seam in ends):
        return
    # A lining to the knee is hemmed as it is made, and hangs free below.
    ends += [seam for seam in garment.seams if lines_a_part(seam.name)]
    for part in garment.parts:
        for name in part.separate:
            entry = entries[garment.cloths[name].entry]
            frays = entry.kind == "cloth" and entry.traits.get("frays", (0, 0))[1] > 0
            if frays and not any(name in seam.cloths() for seam in ends):
                text = f"hangs free in {part.name} and ends nowhere: write a hem of {name} alone"
                yield Disagreement("unended", name, (), text)


AT_EDGES = frozenset({"stay-tape", "faced-edge", "bound-edge", "zip"})
"""Kinds of place where a stay, a facing or a strip lies, and is a layer of no whole part."""


def _at_edges_alone(name: str, garment: Garment) -> bool:
    """Whether a cloth only stays or faces edges, so that no part has it for a layer."""
    held = (seam.place in AT_EDGES for seam in garment.seams if name in seam.cloths())
    return all(held) and not any(name in part.layers for part in garment.parts)


LINED = "lining-seam"
"""What joins the lining to the shell: it is called after one of them and holds both."""
ENDING = frozenset({"band", "stay"})
ENDED_BY = ("faced-edge", "bound-edge", "ties")
"""Families and kinds of place that end a part or hold it in a cloth that is no layer of it."""


def against_its_part(seam: Seam, garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """A place with a cloth that its part does not list, or that sews down what hangs free there."""
    part = next((part for part in garment.parts if part.name == seam.part), None)
    if part is None:
        return
    kinds = {name: knowledge.entries[garment.cloths[name].entry].kind for name in seam.cloths()}
    cloths = [name for name, kind in kinds.items() if kind == "cloth"]
    # A bag, a band or a facing and what binds or covers a cord are seen in no layer of the part;
    # and a seam that holds a layer of it may join it to what another part is cut of.
    kind = knowledge.places.kinds.get(seam.place)
    ends = kind is not None and kind.family in ENDING
    whole = seam.place in (*POCKETS, *ENDED_BY, LINED) or ends
    across = set(cloths) & set(part.layers) and not nouns.LENGTHWISE & set(
        singular_words(seam.name)
    )
    joined = {name for p in garment.parts if across for name in p.layers}
    seen = not whole and bool(part.layers)
    known = {*part.layers, *joined}
    other = [n for n in cloths if seen and not (n in known or garment.cloths[n].trims)]
    other = [n for n in other if not _at_edges_alone(n, garment)]
    if other:
        text = f"holds {' and '.join(other)}, which the layers of {part.name} do not name"
        yield Disagreement("part-layers", seam.name, (), text)
    free = [name for name in cloths if name in part.separate]
    runs = seam.place not in POCKETS and speaks_of(seam.name, nouns.LENGTHWISE)
    runs = runs and not speaks_of(seam.name, nouns.ON_SLEEVE)  # it ends there, however free above
    if free and len(cloths) > 1 and runs:
        held = ", ".join(name for name in cloths if name not in free) or free[-1]
        text = f"sews {free[0]} to {held}, while {part.name} says that {free[0]} hangs free"
        yield Disagreement("part-separate", seam.name, (), text)
