"""The kind of place that a name means: of the words found in it the one that ends last."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.knowledge.places import PLAIN, PlaceKind
from advisor.project.garment import Seam
from advisor.project.headwords import head_of, the_words
from advisor.project.ownwords import Span, by_itself, cloths_among, inside, own_spans

OF_PARTS = frozenset({"gathers", "band", "casing", "edge"})
"""Families of places that have such seams before they are joined to anything."""


def named(name: str, kinds: Mapping[str, PlaceKind]) -> str:
    """The kind whose word stands last in a name; "" where it holds none, or means a plain seam."""
    return meant_in(head_of(the_words(name)), kinds)[0]


def read_in(seam: Seam, about: Mapping[str, Entry], kinds: Mapping[str, PlaceKind]) -> str:
    """The kind that the name of a place means, where it does not only name the cloth there."""
    words = head_of(the_words(seam.name))
    spans = spans_of(words, seam, about)
    found, span = meant_in(words, kinds)
    if not found or by_itself(words, spans):
        return ""
    return "" if inside(span, spans) else found


def spans_of(words: tuple[str, ...], seam: Seam, about: Mapping[str, Entry]) -> list[Span]:
    """Where a name only says of which of its cloths a place is."""
    cloths = cloths_among(seam.cloths(), about)
    return own_spans(words, {the_words(name): name for name in cloths}, cloths)


def meant_in(words: tuple[str, ...], kinds: Mapping[str, PlaceKind]) -> tuple[str, Span]:
    """The kind that words mean, "" for none, and where the word stands that means it.

    The head of a name may stand before an `of`: the fusing of the facing is no facing.
    """
    head = words[: words.index("of")] if "of" in words else ()
    before = meant_in(head, kinds) if head else ("", (0, 0))
    if before[0] and before[1][1] == len(head):
        return before
    best, found, have = (-1, 0), "", set(words)
    for kind in kinds.values():
        for phrase in kind.words:
            wanted = the_words(phrase)
            at = _last(words, wanted) if have.issuperset(wanted) else -1
            if at >= 0 and (at + len(wanted), len(wanted)) > best:
                best, found = (at + len(wanted), len(wanted)), kind.id
    rest = set(words[best[0] :]) if found else set()
    family = kinds[found].family if found else ""
    of_part = bool(rest & nouns.SEAM_SIDES) and family in OF_PARTS
    widths = "seam" in rest and (family == "gathers" or found == "ties")
    span = (best[0] - best[1], best[0])
    return ("", span) if of_part or widths or found == PLAIN else (found, span)


def _last(words: Sequence[str], wanted: Sequence[str]) -> int:
    places = range(len(words) - len(wanted), -1, -1)
    return next((i for i in places if tuple(words[i : i + len(wanted)]) == tuple(wanted)), -1)
