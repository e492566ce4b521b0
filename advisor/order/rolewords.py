"""The role that a name means, where some of its words only say of which cloth the place is."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.knowledge.ordering import SeamKind
from advisor.project.garment import Seam
from advisor.project.headwords import the_words
from advisor.project.kindnames import spans_of
from advisor.project.ownwords import by_itself, own_spans, without

OF_THE_BODY = frozenset(
    {"shoulder", "armhole", "raglan", "underarm", "crotch", "inseam", "side-and-sleeve"}
)
"""Roles of seams that no such piece has: their own word goes before that of the cloth."""


def read_role(
    words: tuple[str, ...], seam: Seam, about: Mapping[str, Entry], roles: Iterable[SeamKind]
) -> SeamKind | None:
    """The first role whose words stand in a name, those of its own cloths apart."""
    every = tuple(roles)
    found, spans = _first(words, every), spans_of(words, seam, about)
    if found is None or not spans:
        return found
    called = {word for low, high in spans for word in words[low:high]}
    if by_itself(words, spans) and not nouns.TUBES & called:
        return None
    return _between(found, _first(without(words, spans), every), called)


def words_of_place(seam: Seam) -> set[str]:
    """The words of a name that may say where it lies, without those of its own cloths."""
    words = the_words(seam.name)
    spans = own_spans(words, {the_words(name): name for name in seam.cloths()}, seam.cloths())
    return set(without(words, spans))


def _between(found: SeamKind, other: SeamKind | None, called: set[str]) -> SeamKind:
    """The role of the whole name, or of what is left of it without the names of cloths."""
    if other is None or other.id == found.id:
        return found
    return other if other.id in OF_THE_BODY or not nouns.PIECES & called else found


def _first(words: tuple[str, ...], roles: tuple[SeamKind, ...]) -> SeamKind | None:
    return next((k for k in roles if any(holds(words, w) for w in k.words)), None)


def holds(words: tuple[str, ...], phrase: str) -> bool:
    """Whether the words of a phrase stand side by side among others."""
    wanted = the_words(phrase)
    return any(words[i : i + len(wanted)] == wanted for i in range(len(words)))
