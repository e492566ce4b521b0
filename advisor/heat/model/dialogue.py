"""What the heat model is asked and what it says: plain data, for which nothing heavy is needed."""

from __future__ import annotations

from msgspec import Struct

from advisor.heat.model.hardparts import HardPart
from advisor.heat.model.materials import Range
from advisor.heat.model.stack import Stack

USUAL_PRESS_S = 10.0  # how long a press is assumed to last where nobody says: estimate


class Times(Struct, frozen=True):
    """Seconds until something happens: soonest, likely, latest; None is not within the horizon."""

    low: float | None
    mid: float | None
    high: float | None

    def as_list(self) -> list[float | None] | None:
        """The three, rounded to a tenth, or None where even the soonest does not come."""
        if self.low is None:
            return None
        return [None if v is None else round(v, 1) for v in (self.low, self.mid, self.high)]


class Glue(Struct, frozen=True):
    """A fusible's need: ``joint`` counts the layer above its glue line; temperature; hold."""

    joint: int
    need_c: float
    hold_s: float = 0.0


class GlueLine(Struct, frozen=True):
    """Whether one setting fuses: when the glue is hot, how long to press, what stands against.

    ``usual`` is when it is hot, and ``usual_at_20_s`` how hot the layer below the joint gets, where
    not all that is uncertain falls out the same way at once; by these it is decided whether to
    try at all.
    """

    sole: Range
    need_c: float
    hot_after: Times
    press_s: float | None
    spoils: tuple[str, ...]
    over_limit: bool
    usual: Times
    usual_at_20_s: Range

    @property
    def does_it(self) -> bool:
        """Whether the glue is sure to be hot in time and no layer's limit is passed."""
        return self.press_s is not None and not self.spoils and not self.over_limit


class HeatQuestion(Struct, frozen=True):
    """A place on the garment under the iron.

    ``parts`` are hard parts with the name of the layer that each sits in; ``press_s`` the
    planned press, after which they are touched.
    """

    place: str
    stack: Stack
    moisture: str = "dry"
    glue: Glue | None = None
    parts: tuple[tuple[str, HardPart], ...] = ()
    press_s: float = USUAL_PRESS_S


class LayerHeat(Struct, frozen=True):
    """A layer's hottest temperature at each asked second, and the time to its limit."""

    name: str
    limit_c: float | None
    at_s: tuple[tuple[float, Range], ...]
    reaches_limit_s: Times | None
    dominated_by: str | None


class HeatAnswer(Struct, frozen=True):
    """All that the model says of one place."""

    place: str
    sole: Range
    cloth: str | None
    moisture: str
    layers: tuple[LayerHeat, ...]
    glue: GlueLine | None
    touch_safe_after: Range | None
    press_at_most_s: float | None
    limited_by: str | None
