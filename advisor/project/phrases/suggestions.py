"""What may have been meant by a word that nobody knows: the likest names, labels and ids alike."""

from __future__ import annotations

from collections.abc import Iterable

from advisor.knowledge.model import Knowledge
from advisor.knowledge.names import plain_name
from advisor.project.phrases import lexicon
from advisor.project.phrases.grounds import general_words, names_of
from advisor.project.phrases.tokens import words_of

_LONG = 7
"""From so many letters on a word may hold two slips of the keyboard, not only one: estimate."""
_PLAINLY = 6
"""From so many letters on one slip is plain, even in the first letter: estimate."""
_CLOSELY, _LOOSELY = 75.0, 72.0
_WHOLLY = 90.0
_SHORT = 3
_ALIKE = 0.7
"""So much of what was typed a name must have, in letters: estimate."""


def likest(text: str, knowledge: Knowledge, most: int = 3) -> tuple[str, ...]:
    """Names of cloths and fibres that look like a phrase, never the phrase itself."""
    from rapidfuzz import fuzz, process

    plain, general = plain_name(text), general_words()
    telling = " ".join(word for word in plain.split() if word not in general)
    typed = telling or plain
    fibres = [name for name in knowledge.fibre_names if len(name) > _SHORT]
    labels = [e.name for e in knowledge.fabrics()] + fibres + list(knowledge.names)
    choices = {plain_name(label): label for label in reversed(labels)}
    choices.pop(plain, None)
    known = list(choices)
    # As a whole first: "cordory" is no cord, though it begins with one.
    found = []
    # What says nothing of a cloth, as "stuff", is a part of many names and speaks for none.
    for scorer, least in ((fuzz.ratio, _CLOSELY), (fuzz.WRatio, _LOOSELY))[: 2 if telling else 1]:
        rows = process.extract(typed, known, scorer=scorer, limit=4 * most, score_cutoff=least)
        rows = [row for row in rows if scorer is fuzz.ratio or _near(typed, row[0])]
        found += sorted(rows, key=lambda row: (-row[1], abs(len(row[0]) - len(typed)), row[0]))
    names: dict[str, str] = {}
    for name, _, _ in found:
        entry = knowledge.names.get(name)
        names.setdefault(entry or name, choices[name])
    return tuple(names.values())[:most]


def whole_slip(text: str, knowledge: Knowledge) -> tuple[str, ...]:
    """The name that a whole phrase is a slip of: "linen suuiting" of "linen suiting"."""
    from rapidfuzz import fuzz

    plain = plain_name(text)
    found = likest(text, knowledge)
    return tuple(n for n in found if fuzz.ratio(plain, plain_name(n)) >= _WHOLLY)[:1]


def _near(typed: str, name: str) -> bool:
    """Whether a name that holds some of the letters looks like what was typed, and is no "borg"
    for "orgnza"; a word of four letters or fewer has to be a slip of one of the name's.
    """
    from rapidfuzz.distance import OSA

    if len(typed) > _SHORT + 1:
        return len(name) >= _ALIKE * len(typed)
    # Of three letters one was left out, or two are turned about.
    short = len(typed) <= _SHORT
    return any(
        OSA.distance(typed, word) <= 1
        for word in name.split()
        if not short or len(word) > _SHORT or sorted(word) == sorted(typed)
    )


def slip_of(word: str, knowledge: Knowledge, *, notions: bool = False) -> tuple[str, ...]:
    """The known words that one may be a slip of: fibres, cloths, and what is laid on them.

    A word of a notion's name matters only where a notion is named. Hardly anybody mistypes a
    word's first letter, so a word that begins otherwise is another word: "clipped" is no slip
    of "slipper". Three letters are a slip only where one was left out: "nol" of "noil".
    """
    if len(word) < _SHORT:
        return ()
    from rapidfuzz import process
    from rapidfuzz.distance import OSA

    most = 2 if len(word) >= _LONG else 1
    known = _mattering(knowledge, notions=notions)
    if word in known:  # a part of some name, and of none that stands here
        return likest(word, knowledge)
    found = process.extract(word, known, scorer=OSA.distance, limit=3, score_cutoff=most)
    return tuple(
        name
        for name, slips, _ in found
        if len(word) > _SHORT or len(name) > len(word)
        if name[0] == word[0] or (slips == 1 and len(word) >= _PLAINLY)
    )


def meant_by(
    word: str, words: list[str], knowledge: Knowledge, *, notions: bool
) -> tuple[str, ...]:
    """The names that a word which is not understood may have been meant for, where it matters."""
    if notions and _elsewhere(word, words, knowledge):
        return ()
    return slip_of(word, knowledge, notions=notions) or _completed(word, words, knowledge)


def _elsewhere(word: str, words: list[str], knowledge: Knowledge) -> bool:
    """Whether a word stands in names of other things alone: a "single fold" binding is no elastic.

    What may be a name with another word of the phrase, or is a glue, is asked for.
    """
    found = [name for name in names_of(knowledge).all if word in name.words]
    rest = {other for other in words if other != word}
    return bool(found) and not any(
        rest & set(name.words) or knowledge.kind_of(name.entry) == "fusible" for name in found
    )


def _completed(word: str, words: list[str], knowledge: Knowledge) -> tuple[str, ...]:
    """The names that all other words of a phrase make up, but for one that this is a slip of.

    A "fau leather" is no leather, and a "frech terry" another cloth than terry.
    """
    from rapidfuzz.distance import OSA

    rest = {other for other in words if other != word}
    found = (
        (name, next(iter(missing)))
        for name in names_of(knowledge).all
        if len(missing := set(name.words) - rest) == 1 and len(name.words) > 1
    )
    return tuple(
        " ".join(name.words)
        for name, lacking in found
        if len(lacking) > _SHORT and len(word) >= _SHORT and OSA.distance(word, lacking) == 1
    )[:1]


def may_be(word: str, knowledge: Knowledge) -> tuple[str, ...]:
    """The known word, of a notion or a use too, that one may be a slip of: "wool crepe zpi"."""
    from rapidfuzz.distance import OSA

    names = names_of(knowledge).words
    known = (*sorted(names), *sorted(general_words() - names))
    return tuple(
        name
        for name in known
        if OSA.distance(word, name) == 1
        if len(name) > _SHORT or sorted(name) == sorted(word)
        if len(word) > _SHORT or len(name) >= len(word)
    )[:1]


def _mattering(knowledge: Knowledge, *, notions: bool) -> list[str]:
    """The words whose loss could do harm."""
    general = general_words()
    all_ = names_of(knowledge).all
    names = [word for name in all_ if name.cloth or notions for word in name.words]
    fibres = [word for name in knowledge.fibre_names for word in words_of(name)]
    every: Iterable[str] = (*names, *fibres, *lexicon.SURFACES, *lexicon.NOT)
    telling = {word for word in every if word not in general} | lexicon.SHAM | lexicon.STRETCH
    return sorted({word for word in telling if len(word) > _SHORT} - _LEFT)


_LEFT = frozenset({"cloth", "fabric"})
