"""What is told of the order of work; temperatures °C, times minutes."""

from __future__ import annotations

from dataclasses import dataclass

from advisor.answer.model.told import ToldConflict, ToldLink, ToldSource
from advisor.order.steps import MachineState


@dataclass(frozen=True, slots=True)
class ToldIronState:
    """A setting of the iron and what the layers bear."""

    temperature_c: float
    at_most_c: float | None
    moisture: str
    surface: str


@dataclass(frozen=True, slots=True)
class ToldStep:
    """One step of the order; its number stays when others are ticked off."""

    step: str
    does: str
    operation: str
    on: tuple[str, ...]
    how: str
    done: bool
    machine: MachineState | None
    iron: ToldIronState | None
    after: tuple[str, ...]
    because: tuple[ToldLink, ...]
    why: str
    set_up: str
    change: tuple[str, ...]
    change_min: float
    work_min: float
    undo: str
    act: str
    """What nothing undoes of it, in a word or two."""
    stop: bool
    warn: tuple[str, ...]
    number: int


@dataclass(frozen=True, slots=True)
class ToldOrderCost:
    """What the order costs in changes of set-up and in minutes, and how good it is."""

    changes: int
    minutes: float
    bound: float
    optimal: bool
    gap: float
    plain: float
    work: float
    shown: str


@dataclass(frozen=True, slots=True)
class ToldSitting:
    """A sitting of work."""

    steps: tuple[str, ...]
    minutes: float
    change_min: float
    over: float


@dataclass(frozen=True, slots=True)
class ToldSettled:
    """A clash of the sheet whose remedy the order carries, or does not."""

    place: str
    aspect: str
    remedy: str


@dataclass(frozen=True, slots=True)
class ToldKeepOff:
    """Pressings hotter than a layer that is in by then."""

    steps: tuple[str, ...]
    keep_off: tuple[str, ...]
    temperature_c: float
    text: str


@dataclass(frozen=True, slots=True)
class ToldPin:
    """Where the maker wants a step, and whether it can be so."""

    step: str
    after: str | None
    before: str | None
    at: int | None
    honoured: bool
    forbidden_by: tuple[ToldLink, ...]
    remark: str


@dataclass(frozen=True, slots=True)
class ToldOrder:
    """The whole order of work."""

    order: tuple[ToldStep, ...]
    order_cost: ToldOrderCost
    order_conflicts: tuple[ToldConflict, ...]
    try_on: tuple[str, ...]
    sittings: tuple[ToldSitting, ...]
    settled: tuple[ToldSettled, ...]
    unsettled: tuple[ToldSettled, ...]
    keep_off: tuple[ToldKeepOff, ...]
    given_up: tuple[ToldLink, ...]
    pins: tuple[ToldPin, ...]
    remarks: tuple[str, ...]
    assumed: tuple[str, ...]
    order_sources: tuple[ToldSource, ...]
