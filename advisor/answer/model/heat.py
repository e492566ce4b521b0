"""What is told of the heat through the layers and of the iron across them.

Temperatures are °C, times s, bands (least, likely, most). A time that is None does not come within
a minute by the calculation, which is no permission: the limits stand.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from advisor.records import FLATTENED, OPTIONAL

Band = tuple[float, ...]
Wait = tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class ToldLayerHeat:
    """A layer's hottest temperature at each asked second, and the time to its limit."""

    name: str
    limit_c: float | None
    at_s: dict[str, Band]
    reaches_limit_s: Wait | None
    dominated_by: str | None


@dataclass(frozen=True, slots=True)
class ToldFusing:
    """What becomes of the glue of a fusible in one way of fusing it."""

    fusible: str
    way: str
    through: str
    onto: str
    need_c: float
    maker_s: float
    setting_c: float
    sole_c: Band
    cloth: str | None
    moisture: str
    hot_after_s: Wait | None
    press_s: float | None
    spoils: tuple[str, ...]
    over_limit: bool
    does_it: bool
    grade: str
    sources: tuple[str, ...]
    note: str


@dataclass(frozen=True, slots=True)
class ToldGlue:
    """The glue of a place's fusible: as it lies in the seam, and flat before anything else."""

    seam: ToldFusing | None = field(metadata=FLATTENED)
    flat: ToldFusing | None
    flat_as_advised: ToldFusing | None


@dataclass(frozen=True, slots=True)
class ToldKinderSide:
    """Which side to press from, by the longer time until the first layer is at its limit."""

    iron_on: str
    as_laid: bool
    as_laid_s: float | None
    turned_s: float | None
    mark: str


@dataclass(frozen=True, slots=True)
class ToldHeat:
    """One way of pressing one place; the first of a place is the press as advised."""

    place: str
    way: str
    sole_c: Band
    mark: str
    wanted_by: tuple[str, ...]
    cloth: str | None
    moisture: str
    layers: tuple[ToldLayerHeat, ...]
    touch_safe_after_s: Band | None
    hard_parts: tuple[str, ...]
    press_at_most_s: float | None
    limited_by: str | None
    assumed: dict[str, tuple[str, ...]]
    computed: str
    sources: tuple[str, ...]
    glue_line: ToldGlue | None = None
    kinder_side: ToldKinderSide | None = field(default=None, metadata=OPTIONAL)
    rest_s: Wait | None = field(default=None, metadata=OPTIONAL)


@dataclass(frozen=True, slots=True)
class ToldCeiling:
    """One published ceiling of a fibre of a layer."""

    fibre: str
    max_c: float
    sources: tuple[str, ...]
    note: str
    counts: bool


@dataclass(frozen=True, slots=True)
class ToldLayerIron:
    """What one layer bears and needs, and who says so."""

    name: str
    limit_c: float
    start_c: float
    needs_c: float | None
    who: str
    why: str
    sources: tuple[str, ...]
    published: tuple[ToldCeiling, ...]


@dataclass(frozen=True, slots=True)
class ToldIron:
    """The iron across the layers of one place."""

    place: str
    scope: str
    layers: tuple[ToldLayerIron, ...]
    range_c: tuple[float, float]
    pick_c: float | None
    advised_c: float
    conflict: bool
    mark: str | None
    overshoot_k: float
    steam: bool
