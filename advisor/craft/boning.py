"""Boning: how tightly a bone bends, and how long it is cut for its channel.

A strip bent to a radius is strained by thickness / (2 × radius) at its faces (beam theory,
`derived`), so it takes a set or breaks below thickness / (2 × strain). The strains that a bone
bears, spring steel 0.4 % and plastic 3 %, are from `memory`. A bone is cut shorter than its channel
so that its ends neither poke through nor are stitched over (`common-practice`).
"""

from __future__ import annotations

from typing import Final

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("derived", "memory", "common-practice")
#: Strain at the face that a bone bears without a set, and its usual thickness in mm.
STRAIN: Final[dict[str, float]] = {"steel": 0.004, "plastic": 0.03}
USUAL_MM: Final[dict[str, float]] = {"steel": 0.3, "plastic": 1.5}
#: What is left free at each end of the channel, mm.
FREE_MM: Final = 6.0


def least_radius(thickness_mm: float, strain: float) -> float:
    """The tightest radius in mm that a bone is bent to: thickness / (2 × strain)."""
    thickness = checks.above("thickness of the bone", thickness_mm)
    return thickness / (2 * checks.above("strain", strain))


def cut_length(channel_mm: float) -> float:
    """Length in mm of a bone for a channel, from seam to seam: shorter by 6 mm at each end.

    Raises ValueError for a channel too short to hold a bone.
    """
    return checks.above("bone", checks.above("channel", channel_mm) - 2 * FREE_MM)
