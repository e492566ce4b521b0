"""Lace that is laid on, let in or spread over a whole piece, as its name and its layers tell it.

A lace that lies on another cloth joins no two edges: it has neither an allowance nor edges to be
neatened, and its motifs hide the row that holds it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry

if TYPE_CHECKING:
    from advisor.project.garment import Seam

LACE: Final = 4
"""The level of `openwork` of a lace, whose motifs hide a row of stitches."""
BETWEEN: Final = frozenset({"insertion", "inset"})
"""Words of a lace that lies open between two pieces."""
SET: Final = ("set", "in")
FINISHED: Final = frozenset({"faced-edge", "bound-edge"})
"""Kinds of an edge that is finished by itself, so that lace is only lapped over it."""


def is_lace(entry: Entry) -> bool:
    """Whether a cloth has motifs and holes."""
    return entry.traits.get("openwork", (0, 0))[0] >= LACE


def lace_on_edge(seam: Seam, entry: Callable[[str], Entry | None], words: Sequence[str]) -> bool:
    """Whether a lace of its own is laid on the edge of a cloth, and so is neither seam nor hem.

    The name, of these words, says so ("lace hem"), or the lace is named last at a hem of which
    nothing else is said; what is turned is turned, and a lace on a lining is its shell.
    """
    about = {name: found for name in seam.cloths() if (found := entry(name)) is not None}
    cloths = {name: found for name, found in about.items() if found.kind == "cloth"}
    laces = [name for name, found in cloths.items() if is_lace(found)]
    others = [e for e in cloths.values() if e.family not in ("lace", "nets", "linings")]
    edge = seam.facts.get("edge", "")
    if not laces or not others or edge == "turned" or not words:
        return False
    if "lace" in words and (nouns.ANY_EDGE & set(words[-2:]) or edge == "hem"):
        return True
    return words[-1] == "hem" and not edge and seam.cloths()[-1] in laces


def lace_on_cloth(seam: Seam, about: Mapping[str, Entry], words: Sequence[str]) -> bool:
    """Whether its name lays a lace on another cloth, or lets one into it: it joins no two edges."""
    at = words.index("lace") + 1 if "lace" in words else len(words)
    laid = bool(nouns.LAID_ON & set(words[at : at + 1])) or is_let_in(words) or spread(words)
    laces = [name for name, entry in about.items() if entry.kind == "cloth" and is_lace(entry)]
    one = len(laces) == 1 and len(about) > 1
    flat = all(use.fullness <= 1 for use in seam.uses)
    return laid and one and flat and not {"edge", "seam.kind"} & _settled(seam)


def is_let_in(words: Sequence[str]) -> bool:
    """Whether a name says that a lace is let into the cloth that it lies on."""
    set_in = any(tuple(words[i : i + 2]) == SET for i in range(len(words)))
    return "lace" in words and (set_in or bool(nouns.LET_IN & set(words)))


def spread(words: Iterable[str]) -> bool:
    """Whether a name says that a lace lies over a whole piece."""
    named = {*words}
    return "lace" in named and bool(nouns.OVERLAID & named)


def finished_below(
    seam: Seam, seams: Iterable[Seam], words: Callable[[str], Sequence[str]]
) -> Seam | None:
    """The edge over which a lace is lapped, where some other place finishes that by itself."""
    ours, named = set(seam.cloths()), set(words(seam.name))
    for other in seams:
        where = set(words(other.name)) - nouns.NOT_WHERE
        if other.place in FINISHED and where and where <= named and ours & set(other.cloths()):
            return None if other is seam else other
    return None


def _settled(seam: Seam) -> set[str]:
    """What the maker says herself of an edge or of the kind of a seam."""
    return {*seam.facts, *(aspect for aspect, _ in seam.choices)} - set(seam.assumed)
