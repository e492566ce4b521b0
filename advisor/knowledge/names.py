"""One spelling for every name, so that "Lamé", "lame" and "LAMÉ " are found alike."""

from __future__ import annotations

import unicodedata
from functools import lru_cache

KEPT = 16_384
"""Spellings that are kept: every name of the knowledge is asked for again and again."""


@lru_cache(maxsize=KEPT)
def plain_name(text: str) -> str:
    """A name in lower case, without accents, hyphens or double spaces."""
    bare = text.casefold()
    if not bare.isascii():  # nearly every name is, and there is nothing to take off it
        split = unicodedata.normalize("NFKD", bare)
        bare = "".join(c for c in split if not unicodedata.combining(c))
    return " ".join(bare.replace("-", " ").replace("’", "'").split())


def source_id(text: str) -> str:
    """The id in `"gw-apparel-2012 p. 468"`; what follows is the place in the work."""
    return text.split(" ", 1)[0]


def yes_or_no(text: str, usual: bool | None = None) -> bool | None:
    """What an answer to a question of yes or no says; `usual` where it is empty, None unclear."""
    word = plain_name(text)
    return {"": usual, "yes": True, "y": True, "no": False, "n": False}.get(word)
