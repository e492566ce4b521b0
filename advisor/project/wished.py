"""What the maker may say of the order of work: steps added, dropped, tied, pinned, ticked off.

Light frozen values. Steps are named as `advisor order` prints them ("join side"); whether a name
is a step is known only when the steps are made, so that is asked there. Minutes are minutes.
"""

from __future__ import annotations

from msgspec import Struct, field


class Added(Struct, frozen=True):
    """A step of the maker's own: what it comes after and before, and how long it takes."""

    step: str
    after: tuple[str, ...] = ()
    before: tuple[str, ...] = ()
    minutes: float = 10.0
    on: tuple[str, ...] = ()


class Pinned(Struct, frozen=True):
    """Where the maker wants a step: after one, before another, or at a place counted from 1."""

    step: str
    after: str | None = None
    before: str | None = None
    at: int | None = None


class Wishes(Struct, frozen=True):
    """All that a project says of its order; `kinds` and `joins` are of seams by name."""

    add: tuple[Added, ...] = ()
    drop: tuple[str, ...] = ()
    tie: tuple[tuple[str, str], ...] = ()
    pin: tuple[Pinned, ...] = ()
    after: tuple[tuple[str, str], ...] = ()
    costs: dict[str, float] = field(default_factory=dict)
    sitting: float | None = None
    done: tuple[str, ...] = ()
    kinds: dict[str, str] = field(default_factory=dict)
    joins: dict[str, tuple[str, ...]] = field(default_factory=dict)
