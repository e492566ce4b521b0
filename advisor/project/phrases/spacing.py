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
    names = names_of(knowledge).whole
    whole_names = _whole_names(words, knowledge)
    said: list[str] = []
    for word in words:
        joined = said[-1] + word if said else ""
        strange = bool(said) and not {word, said[-1]} <= known
        whole = (joined,) in names and (*said[-1:], word) not in names
        apart = bool(said) and any({said[-1], word} <= name for name in whole_names)
        if joined in known and (strange or whole) and not apart:
            said[-1] = joined
        else:
            said.append(word)
    fibres = names_of(knowledge).fibre_words
    return [part for word in said for part in _parted(word, known, names, fibres)]


def _whole_names(words: list[str], knowledge: Knowledge) -> list[set[str]]:
    """The names of several words that stand in a phrase: "mousseline de laine" is no delaine."""
    by_word = names_of(knowledge).by_word
    found = (set(name.words) for word in words for name in by_word.get(word, ()))
    return [name for name in found if len(name) > 2 and name <= set(words)]


def _parted(
    word: str, known: frozenset[str], names: frozenset[tuple[str, ...]], fibres: frozenset[str]
) -> tuple[str, ...]:
    """A word that nobody knows, in the two of the name that it is written together of, or in a
    fibre and what is said of it: "polyknit".
    """
    if word in known or not word.isalpha():
        return (word,)
    cuts = range(_SHORTEST, len(word) - _SHORTEST + 1)
    pairs = [(word[:at], word[at:]) for at in cuts]
    found = [pair for pair in pairs if pair in names]
    found = found or [pair for pair in pairs if pair[0] in fibres and pair[1] in known]
    return found[0] if len(found) == 1 else (word,)
