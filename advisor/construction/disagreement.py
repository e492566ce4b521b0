"""What it is that two quantities of a garment disagree: where, in which figures, in which words."""

from __future__ import annotations

from msgspec import Struct

from advisor.craft.checks import TooWideError


class Figure(Struct, frozen=True):
    """One number that a project says, or that follows from it: mm, a ratio, or a count."""

    what: str
    value: float
    kind: str = "length"


class Disagreement(Struct, frozen=True):
    """Numbers of one place that do not go together.

    `cloth` is of which too much or too little is bought for it; `together` a finished width that
    was meant of each of some pieces and is read as that of all, how many they are, and how many
    panels of the cloth each of them then takes.
    """

    id: str
    place: str
    figures: tuple[Figure, ...]
    text: str = ""
    cloth: str = ""
    together: tuple[float, int, int] | None = None
    too_wide: TooWideError | None = None
