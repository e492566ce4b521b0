"""Compiled knowledge in the reader's units: its sentences hold quantities as values in braces.

The compiled data keeps every sentence as it stands in its file, and a list of the ways to those
that hold a quantity, so that a start walks these few and not all.
"""

from __future__ import annotations

from typing import Any, Final

from advisor.units.sentences import QUANTITY, render
from advisor.units.showing import System

WAYS: Final = "spoken"
Way = list[str | int]


def ways(raw: Any, way: tuple[str | int, ...] = ()) -> list[Way]:
    """The ways to every sentence with a quantity, in a fixed order."""
    if isinstance(raw, str):
        return [list(way)] if "{" in raw and QUANTITY.search(raw) else []
    inner = raw.items() if isinstance(raw, dict) else enumerate(raw) if _is_list(raw) else ()
    return [found for step, value in inner for found in ways(value, (*way, step))]


def in_units(raw: dict[str, Any], system: System) -> dict[str, Any]:
    """The data with its sentences in the units; what is changed is copied, the rest is shared."""
    top = dict(raw)
    copies: dict[tuple[str | int, ...], Any] = {(): top}
    for way in raw.get(WAYS, ()):
        holder: Any = top
        for n, step in enumerate(way[:-1], 1):
            here = tuple(way[:n])
            if here not in copies:
                inner = holder[step]
                copies[here] = dict(inner) if isinstance(inner, dict) else list(inner)
                holder[step] = copies[here]
            holder = copies[here]
        holder[way[-1]] = render(holder[way[-1]], system)
    return top


def _is_list(raw: Any) -> bool:
    return isinstance(raw, list | tuple)
