"""What is set at a place, as every view reads it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ToldIronSetting:
    """How the iron is set at a place: a mark of its dial, then the limit; °C of the sole plate.

    Attributes:
        mark: the dial's mark; None where no mark is cool enough, and the fingers press.
        low_end: whether the mark's band reaches beyond the limit, so that its low end is set.
        start_c: where to start; no higher than `most_c`.
        most_c: the most that is advised.
        limit_c: what the most tender layer bears; never less than `most_c`.
        text: the same in words and in the maker's units.
    """

    place: str
    scope: str
    mark: str | None
    low_end: bool
    start_c: float
    most_c: float
    limit_c: float
    text: str
