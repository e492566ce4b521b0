"""Which share is whose: "cotton 97 elastane 3", "97 cotton 3 elastane", and never half of each."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from advisor.errors import InputError, Problem

Share = tuple[str, float | None]
PARTS: Final = frozenset({"elastane", "rubber", "metallic-film"})
"""Fibres of which no cloth is made alone: what gives one its stretch or its glitter."""
_ALL: Final = 100.0


def paired(items: Sequence[str | float], ends: tuple[bool, bool]) -> tuple[Share, ...]:
    """Each number beside its fibre, always on the same side; one that is missing is the rest.

    A fibre in the cloth's name and again with its share is one fibre: "wool crepe, 100% wool".
    Where the numbers lie between the fibres that goes which names each fibre once, and of two the
    one whose shares fall, as on a label; else the name goes first, as the phrase begins.

    Args:
        items: fibres and numbers in their order.
        ends: whether a fibre stands right before the first number, and right behind the last.
    """
    numbers = [item for item in items if not isinstance(item, str)]
    names = [item for item in items if isinstance(item, str)]
    if len(numbers) == len(names) > 1 and list(items) in ([*numbers, *names], [*names, *numbers]):
        return tuple(zip(names, numbers, strict=True))
    between = isinstance(items[0], str) and isinstance(items[-1], str)
    if not between:
        return _told_once(_on_one_side(items, first=isinstance(items[0], float)))
    named, counted = (_whole(items, first=first) for first in (False, True))
    sides = [shares for shares, touches in ((named, ends[0]), (counted, ends[1])) if touches]
    whole = [shares for shares in (sides or [named, counted]) if shares is not None]
    if not whole:
        return _told_once(_on_one_side(items, first=True))
    return next((shares for shares in whole if _falls(shares)), whole[0])


def _whole(items: Sequence[str | float], *, first: bool) -> tuple[Share, ...] | None:
    """The shares with the numbers on one side; None where that makes no sense."""
    try:
        found = _on_one_side(items, first=first)
    except InputError:
        return None
    told = [fibre for fibre, share in found if share is not None]
    return _told_once(found) if len(told) == len(set(told)) else None


def _falls(shares: Sequence[Share]) -> bool:
    """Whether each share is at most the one before it, as on a label; one not told is the rest."""
    rest = _ALL - sum(share for _, share in shares if share is not None)
    each = [rest if share is None else share for _, share in shares]
    return all(one >= other for one, other in pairwise(each))


def _on_one_side(items: Sequence[str | float], *, first: bool) -> list[Share]:
    """Each number with the fibre behind it where they come first, else with that before it."""
    found: list[Share] = []
    number: float | None = None
    for item in items:
        if isinstance(item, str):
            found.append((item, number))
            number = None
        elif first and number is None:
            number = item
        elif not first and found and found[-1][1] is None:
            found[-1] = (found[-1][0], item)
        else:
            expected = "a share beside each fibre: 'cotton 97 elastane 3'"
            raise InputError(Problem(f"not understood: '{item:g}'", None, expected))
    return found


def _told_once(found: Sequence[Share]) -> tuple[Share, ...]:
    """The shares without a fibre that has none where it has one elsewhere."""
    shared = {fibre for fibre, share in found if share is not None}
    return tuple(dict.fromkeys(item for item in found if item[1] or item[0] not in shared))
