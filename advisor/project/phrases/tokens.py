"""Splits a phrase into plain words, alike for what is typed and for the names of the knowledge."""

from __future__ import annotations

import re
from functools import lru_cache

from advisor.knowledge.names import KEPT, plain_name

_MARKS = re.compile(r"[,;:()\[\]+/|_~\"“”„!?…*=]|(?<!\d)\.|\.(?!\d)")
_QUOTED = re.compile(r"(?<!\w)'|'(?!\w)")
_JOINED = re.compile(r"(?<![a-z\d])(\d+(?:\.\d+)?%?)(?=[a-z]{3,})")
_PERCENT = re.compile(r"(\d)\s*(?:%|(?:pct|per\s?cents?)\b)")
_LONG_ENOUGH = 4
_NO_PLURAL = ("ss", "us", "is")
_ONE = {"zipper": "zip"}
"""Words that are the same in every name."""
_ES = ("ches", "shes", "xes")


def words_of(text: str) -> list[str]:
    """The words of a phrase in one spelling, without marks; a share keeps its sign: "65%"."""
    return list(_words_of(text))


@lru_cache(maxsize=KEPT)
def _words_of(text: str) -> tuple[str, ...]:
    if text.isalpha() and text.isascii() and text.islower():  # most are one plain word
        return (singular(text),)
    plain = plain_name(text)
    if plain.isascii() and plain.replace(" ", "").isalpha():  # no mark, share or number in it
        return tuple(singular(word) for word in plain.split())
    plain = _MARKS.sub(" ", _QUOTED.sub(" ", plain.replace("&", " and ")))
    parted = _PERCENT.sub(r"\1%", _JOINED.sub(r"\1 ", plain)).split()
    return tuple(singular(word) for word in parted)


def singular(word: str) -> str:
    """A word without the s of its plural or owner; what has none loses it on both sides alike."""
    word = word.removesuffix("'s")
    if len(word) < _LONG_ENOUGH or not word.endswith("s") or word.endswith(_NO_PLURAL):
        return _ONE.get(word, word)
    if word.endswith("ies") and not word.endswith("ties"):  # peonies, and no neckties
        return f"{word[:-3]}y"
    return word[:-2] if word.endswith(_ES) else _ONE.get(word[:-1], word[:-1])


def singulars(words: frozenset[str]) -> frozenset[str]:
    """A list of words as `words_of` spells them."""
    return frozenset(part for word in words for part in _words_of(word))
