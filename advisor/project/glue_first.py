"""Glue that is fused before its layers meet, as everybody works.

Who asks of a wool, a fusible and a lining names what the garment is of; a flat piece is fused
before anything is joined to it (common practice). Of one cloth and a glue the seam that is asked
about is the fusing itself. In a project a band, a facing or a pocket is fused flat as well, before
the lining that it takes in is there.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from msgspec.structs import replace

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping

    from advisor.knowledge.model import Entry, Knowledge
    from advisor.project.garment import Garment, Seam

GLUES: Final = frozenset({"fusible", "low-temperature fusible"})
LININGS: Final = "linings"
MEETS_FIRST: Final = ("seam", "gathers")
"""Families of place in which the layers may be joined before the glue is hot."""
BAND: Final = "band"
"""The family of places whose own piece is stiffened before it takes in an edge."""
BUTTONHOLE: Final = "buttonhole"
"""What is worked through a piece that another place has fused."""
STRIKES_THROUGH: Final = 2
"""The level of `sheer` from which the glue shows through."""
NEVER_FUSED: Final = frozenset({"nets", "lace", "piles", "skins"})
"""Families of cloths that a glue spoils, which a band takes in all the same."""
FEWEST: Final = 2
"""So many layers besides the glue make a seam in which it need not be hot."""


def fusing_first(garment: Garment, knowledge: Knowledge) -> Garment:
    """The garment with the glues of each such seam pressed before it.

    A glue that is named at the end lies on whichever of the first two cloths takes it.
    """
    kinds = {name: knowledge.entries[c.entry].kind for name, c in garment.cloths.items()}
    return replace(garment, seams=tuple(_first(seam, kinds) for seam in garment.seams))


def _first(seam: Seam, kinds: Mapping[str, str]) -> Seam:
    glues = frozenset(name for name in seam.cloths() if kinds[name] in GLUES)
    if not glues or len({n for n in seam.cloths() if kinds[n] == "cloth"}) < FEWEST:
        return seam
    uses = list(seam.uses)
    for end in (0, -1):
        if uses[end].cloth in glues:
            uses.insert(1, uses.pop(end))
    return replace(seam, uses=tuple(uses), apart=seam.apart | glues)


def fusing_flat(garment: Garment, knowledge: Knowledge) -> Garment:
    """The project with the glue of each piece that takes in a lining fused before that."""
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    lining = frozenset(name for name, entry in entries.items() if entry.family == LININGS)
    glues = frozenset(name for name, entry in entries.items() if entry.kind in GLUES)
    elsewhere = {n for s in garment.seams if fused_as_made(s, knowledge) for n in s.cloths()}
    seams = (
        replace(seam, apart=seam.apart | (glues & set(seam.cloths())))
        if fused_as_made(seam, knowledge)
        and (_on_the_shell(seam, glues, lining) or _of_a_band(seam, glues, entries, knowledge))
        else replace(seam, apart=seam.apart | (glues & elsewhere & set(seam.cloths())))
        if seam.place == BUTTONHOLE
        else seam
        for seam in garment.seams
    )
    return replace(garment, seams=tuple(seams))


def _of_a_band(
    seam: Seam, glues: frozenset[str], entries: Mapping[str, Entry], knowledge: Knowledge
) -> bool:
    """Whether it stiffens the piece of a band that takes in a cloth on which no glue is fused."""
    names = [name for name in seam.cloths() if name in entries and name not in glues]
    barred = [name for name in names if never_fused(entries[name])]
    kind = knowledge.places.kinds.get(seam.place)
    band = kind is not None and kind.family == BAND
    return band and bool(barred) and len(barred) < len(names)


def never_fused(entry: Entry) -> bool:
    """Whether a glue strikes through a cloth, or is pressed into its face."""
    sheer = entry.traits.get("sheer", (0, 0))[0] >= STRIKES_THROUGH
    return sheer or entry.family in NEVER_FUSED


def neighbours(seam: Seam, glues: Collection[str]) -> set[str]:
    """What lies beside some glues in a place."""
    names = [use.cloth for use in seam.uses]
    pairs = (*pairwise(names), *pairwise(reversed(names)))
    return {other for one, other in pairs if one in glues}


def fused_as_made(seam: Seam, knowledge: Knowledge) -> bool:
    """Whether a kind of place is fused while it is a flat piece.

    In a plain seam the layers may meet first.
    """
    kind = knowledge.places.kinds.get(seam.place)
    return kind is not None and kind.family not in MEETS_FIRST and "fuse" in kind.prepares


def _on_the_shell(seam: Seam, glues: frozenset[str], lining: frozenset[str]) -> bool:
    """Whether a lining lies in a place of which each glue lies against something else as well."""
    names = [use.cloth for use in seam.uses]
    pairs = (*pairwise(names), *pairwise(reversed(names)))
    carried = {one for one, beside in pairs if one in glues and beside not in glues | lining}
    return bool(lining & set(names)) and carried >= glues & set(names)
