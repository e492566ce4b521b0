"""Facts of a seam and of a cloth that are one of a few words: a project says them, a rule asks."""

from __future__ import annotations

from collections.abc import Mapping

YES_NO = ("yes", "no")
WEARERS = ("adult", "child")
"""By whom a garment is worn, where somebody says it."""
SEAM_WORDS: Mapping[str, tuple[str, ...]] = {
    "shape": ("straight", "curved", "corner"),
    "edge": ("open", "turned", "hem", "folded"),
    "stress": ("low", "medium", "high"),
    "stitched by": ("machine", "hand"),
    "worn next to skin": YES_NO,
    "bias": YES_NO,
    "lined": YES_NO,
}
"""Facts of a seam that are one of a few words."""
CLOTH_WORDS: Mapping[str, tuple[str, ...]] = {
    "shade": ("dark", "middle", "pale"),
    "care": ("washable", "dry clean only"),
    "detachable": YES_NO,
    "unwashed": YES_NO,
}
"""Facts of a cloth that are one of a few words."""
