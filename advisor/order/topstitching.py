"""Rows of topstitching that a project asks for, beyond the row that a place has anyway."""

from __future__ import annotations

from advisor.order.kinds import SeamPlace

TOPSTITCH = "topstitch"
AT_THE_END = (
    "topstitch",
    "thin",
    "finish-free-opening",
    "press-folds",
    "free-hairs",
    "sew-back",
    "turn-through",
    "close-opening",
    "hem-rest",
)
"""What is done last at a place, however it is made: rows that are asked for, a gap closed."""
SEWN_THROUGH = frozenset({"hem", "patch-pocket", "zip"})
"""Kinds of place whose own row is sewn through to the face, and counts for one of topstitching."""
LAID_ON = {"ribbon": 2, "applique": 1}
"""Rows that sew what is laid on, along both edges of a band: they are its topstitching."""
FELLED = "felled-seam-topstitched"
"""The fold of such a seam is stitched down in the first row."""
UNSEWN = frozenset({"fastening", "backing", "stay"})
"""Families of places whose edges no row runs along."""


def rows_asked(place: SeamPlace) -> int:
    """How many rows are asked for that its own is none of; what is sewn by hand has no row."""
    own = int(place.kind.id in SEWN_THROUGH) or LAID_ON.get(place.kind.id, 0)
    own = 0 if place.method.by_hand else own
    own = own or int(place.method.id == FELLED)
    return max(place.seam.making.topstitch - own, 0)


def no_stage_for(place: SeamPlace) -> bool:
    """Whether rows are asked for that no stage of its method sews, though they can be sewn."""
    own = any(stage.work == TOPSTITCH for stage in place.method.stages)
    return rows_asked(place) > 0 and not own and rows_suit(place)


def rows_suit(place: SeamPlace) -> bool:
    """Whether a row can run along it at all."""
    return place.kind.family not in UNSEWN or place.kind.id in SEWN_THROUGH


def rows_told(place: SeamPlace) -> str:
    """How many rows, as its step says it; "" for one."""
    rows = rows_asked(place)
    return f", in {rows} rows" if rows > 1 else ""
