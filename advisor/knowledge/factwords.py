"""Facts of a seam and of a cloth that are one of a few words: a project says them, a rule asks.

Each is declared here and nowhere else: its words, what is taken where nobody says it, and how a
new project file shows and explains it.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

YES_NO = ("yes", "no")
WEARERS = ("adult", "child")
"""By whom a garment is worn, where somebody says it."""


class FactWords(NamedTuple):
    """A fact that is one of a few words.

    `usual` is taken for granted where the project is silent, and the sheet says so; "" where
    silence says nothing. `shown` and `means` stand in a new project file.
    """

    words: tuple[str, ...]
    usual: str
    shown: str
    means: str

    @property
    def told(self) -> tuple[str, str]:
        """How a new project file shows and explains it."""
        return self.shown, self.means


_EDGE = (
    "open (pressed open or to a side), turned (enclosed, as in a facing), hem or folded; or how it "
    "is made: faced, bound, raw, elastic"
)
SEAM_FACTS: Mapping[str, FactWords] = {
    "shape": FactWords(("straight", "curved", "corner"), "straight", "curved", ""),
    "edge": FactWords(("open", "turned", "hem", "folded"), "open", "turned", _EDGE),
    "stress": FactWords(
        ("low", "medium", "high"), "medium", "high", "how much strain it takes: low, medium or high"
    ),
    "stitched by": FactWords(("machine", "hand"), "machine", "hand", "machine or hand"),
    "worn next to skin": FactWords(YES_NO, "no", "yes", "yes when nothing is worn below it"),
    "bias": FactWords(YES_NO, "no", "yes", "yes when it runs across the grain"),
    "lined": FactWords(YES_NO, "no", "yes", "yes when a lining covers its allowances"),
}
CLOTH_FACTS: Mapping[str, FactWords] = {
    "shade": FactWords(
        ("dark", "middle", "pale"),
        "",
        "dark",
        "dark, middle or pale; a colour in digits tells it by itself",
    ),
    "care": FactWords(
        ("washable", "dry clean only"),
        "",
        "washable",
        "what the label or the shop said: washable or dry clean only",
    ),
    "detachable": FactWords(YES_NO, "", "yes", "yes when it comes off for washing and pressing"),
    "unwashed": FactWords(
        YES_NO, "", "yes", "yes when you cut it as it comes, without washing it first"
    ),
}
SEAM_WORDS: Mapping[str, tuple[str, ...]] = {key: one.words for key, one in SEAM_FACTS.items()}
SEAM_USUAL: Mapping[str, str] = {key: one.usual for key, one in SEAM_FACTS.items()}
CLOTH_WORDS: Mapping[str, tuple[str, ...]] = {key: one.words for key, one in CLOTH_FACTS.items()}
