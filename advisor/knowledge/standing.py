"""How good a source is by its kind: which ones a limit may rest on, and which go first."""

from __future__ import annotations

GOOD_KINDS = frozenset(
    {"standard", "regulation", "handbook", "extension", "trade-journal", "paper"}
)
RANKS = {
    "standard": 0,
    "regulation": 0,
    "handbook": 1,
    "extension": 1,
    "trade-journal": 1,
    "paper": 1,
    "manual": 2,
    "trade-page": 3,
    "common-practice": 2,
    "derived": 2,
    "memory": 4,
    "estimate": 4,
    "own-test": -1,
}
"""The standing of a kind of source, best first; her own test goes before all."""
