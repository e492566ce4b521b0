"""How dark a cloth is by the words for its colours, because strong dye comes off on pale cloth.

A colour is dark, pale, or `middle`: as strong as red, so that it may be dark and is surely not
pale. What is called light and has a dark colour's name may be either, and so tells nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from advisor.project.phrases.lexicon import SHADES

_BEFORE = {
    **dict.fromkeys(("dark", "deep"), "dark"),
    **dict.fromkeys(("pale", "pastel"), "pale"),
    **dict.fromkeys(("light", "lighter"), "light"),
}
_BY_DEPTH = ("dark", "middle", "pale")
BOTH = " and "
"""What joins the shades of a cloth of several colours: the dye of one may come off on another."""


def shades_of(words: Sequence[str]) -> frozenset[str]:
    """The shades that some words surely tell, each colour with what stands before it."""
    found = set()
    for before, word in pairwise(["", *words]):
        shade, turned = SHADES.get(word, ""), _BEFORE.get(before, "")
        if word in SHADES and turned:
            shade = turned if turned != "light" else "" if shade in ("dark", "middle") else "pale"
        found.add(shade)
    return frozenset(found - {""})


def shade_in(words: Sequence[str]) -> str:
    """The shade that they tell, strongest first where there are two; "" where no word tells."""
    found = shades_of(words)
    return BOTH.join(shade for shade in _BY_DEPTH if shade in found)
