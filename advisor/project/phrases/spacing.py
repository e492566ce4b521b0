"""Words that people write together or apart: "sail cloth", "doublegauze", "lace-up"."""

from __future__ import annotations

from advisor.knowledge.model import Knowledge
from advisor.project.phrases import lexicon
from advisor.project.phrases.grounds import general_words, names_of
from advisor.project.phrases.tokens import singulars

_SHORTEST = 3
_LAST: list[tuple[object, frozenset[str]]] = []


def vocabulary(knowledge: Knowledge) -> frozenset[str]:
    """Every word that a phrase may hold: of names, of fibres, and of the lexicon."""
    if not _LAST or _LAST[0][0] is not knowledge.names:
        names = names_of(knowledge)
        rest = singulars(frozenset(lexicon.SURFACES) | lexicon.NOT)
        _LAST[:] = [(knowledge.names, names.words | names.fibre_words | general_words() | rest)]
    return _LAST[0][1]


def respaced(words: list[str], knowledge: Knowledge) -> list[str]:
    """The words as the knowledge spaces them, where only one way makes words that it knows."""
    known = vocabulary(knowledge)
    said: list[str] = []
    for word in words:
        if said and (word not in known or said[-1] not in known) and said[-1] + word in known:
            said[-1] += word
        else:
            said.append(word)
    return [part for word in said for part in _parted(word, known)]


def _parted(word: str, known: frozenset[str]) -> tuple[str, ...]:
    """A word that nobody knows, in the two that it is written together of."""
    if word in known or not word.isalpha():
        return (word,)
    cuts = range(_SHORTEST, len(word) - _SHORTEST + 1)
    found = [(word[:at], word[at:]) for at in cuts if {word[:at], word[at:]} <= known]
    return found[0] if len(found) == 1 else (word,)
