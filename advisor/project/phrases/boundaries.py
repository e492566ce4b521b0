"""Finds where one cloth ends and the next begins: in one argument, or in words without quotes.

A comma, a plus, "with", "over", "under" and "on" part two cloths where a cloth stands on either
side; "jersey with 5 % elastane" and "embroidery on tulle" stay one.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from advisor.knowledge.model import Knowledge
from advisor.project.phrases import lexicon
from advisor.project.phrases.composition import Note
from advisor.project.phrases.grounds import find_grounds
from advisor.project.phrases.shares import fibres_at
from advisor.project.phrases.tokens import words_of
from advisor.project.phrases.weights import take_weight

_PARTS = re.compile(r"\s*(?:[,;+]|\b(?:with|over|under|on)\b)\s*", re.IGNORECASE)
_SURFACES = frozenset(words_of(word)[0] for word in lexicon.SURFACES)
_MOST_WORDS = 40


def split_cloths(text: str, knowledge: Knowledge) -> list[str]:
    """The cloths that one argument names, the upper first; one where it names one."""
    if "unknown" in text.casefold() and "," in text and len(_PARTS.findall(text)) == 1:
        return [text]
    marks = [mark.strip().casefold() for mark in _PARTS.findall(text)]
    found: list[str] = []
    turned = False
    for mark, piece in zip(["", *marks], _PARTS.split(text), strict=True):
        if not piece:
            continue
        if found and not (
            _is_cloth(piece, mark, knowledge) and _is_cloth(found[-1], mark, knowledge)
        ):
            found[-1] = f"{found[-1]}{' with ' if mark == 'with' else ', '}{piece}"
            continue
        turned = turned or mark == "under"
        found.append(piece)
    ordered = found[::-1] if turned and len(found) == 2 else found
    return ordered or [text]


def _is_cloth(piece: str, mark: str, knowledge: Knowledge) -> bool:
    """Whether a piece names a cloth by itself; a fibre alone does only beside "over"."""
    words = words_of(take_weight(piece)[0])
    if all(word in _SURFACES for word in words):
        return False
    grounds = find_grounds(words, knowledge)
    if grounds is not None:
        return (
            any(not fibres_at([word], 0, knowledge)[0] for word in grounds.name) or mark == "over"
        )
    return mark in ("over", "under", "on") and any(
        _is_fibre(words, at, knowledge) for at in range(len(words))
    )


def _is_fibre(words: list[str], at: int, knowledge: Knowledge) -> bool:
    return bool(fibres_at(words, at, knowledge)[0])


def join_words(words: Sequence[str], knowledge: Knowledge) -> list[str]:
    """The cloths of words that came without quotes: each ends with the name of a cloth.

    What stands alone as a cloth stays as it is; a fibre goes with the cloth behind it.
    """
    if len(words) > _MOST_WORDS or any(" " in word.strip() for word in words):
        return list(words)
    if all(_stands(word, knowledge) for word in words):
        return list(words)
    found: list[list[str]] = []
    open_: list[str] = []
    at = 0
    while at < len(words):
        length = _name_at(words, at, knowledge)
        open_ += words[at : at + max(length, 1)]
        at += max(length, 1)
        if length:
            found.append(open_)
            open_ = []
    if (
        open_
        and found
        and not any(_is_fibre(words_of(word) or [""], 0, knowledge) for word in open_)
    ):
        found[-1] += open_
    elif open_:
        found.append(open_)
    return [" ".join(group) for group in found]


def _stands(word: str, knowledge: Knowledge) -> bool:
    return _is_cloth(word, "", knowledge)


def _name_at(words: Sequence[str], at: int, knowledge: Knowledge) -> int:
    """How many words from a place on make the longest name of a cloth; 0 where none do."""
    for length in range(min(4, len(words) - at), 0, -1):
        some = words_of(" ".join(words[at : at + length]))
        grounds = find_grounds(some, knowledge)
        whole = grounds is not None and sorted(grounds.name) == sorted(some)
        if (
            grounds is not None
            and whole
            and not all(_is_fibre([word], 0, knowledge) for word in some)
        ):
            return length
    return 0


def cloths_said(arguments: Sequence[str], knowledge: Knowledge) -> tuple[list[str], Note | None]:
    """The cloths of the arguments of a question, and what was taken for them where it differs."""
    joined = join_words(arguments, knowledge)
    cloths = [cloth for text in joined for cloth in split_cloths(text, knowledge)]
    if cloths == list(arguments):
        return cloths, None
    said = " ".join(arguments)
    taken = " | ".join(cloths)
    return cloths, (
        f"your words '{said}'",
        f"taken as {taken}; quotes round each cloth say it surely",
    )
