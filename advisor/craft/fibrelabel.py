"""How a fibre content is written: order by weight, small amounts, whole percent that make 100.

Which amounts count as small, and what stands for them, is the market's; it comes in from outside.
The arithmetic is `derived`; the order by weight is that of 16 CFR 303.16 and of Article 9 of
Regulation (EU) No 1007/2011.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence

from msgspec import Struct

WHOLE = 100.0
SLACK = 0.5
"""Shares that were rounded when they were given may miss 100 by so much, percent (estimate)."""


class Share(Struct, frozen=True):
    """One fibre of a cloth: its id, the name that the market asks for, its percent by weight."""

    fibre: str
    name: str
    percent: float


class Small(Struct, frozen=True):
    """Amounts below `below` percent are written as one, unless the fibre is in `named`."""

    below: float
    one: str
    more: str
    named: frozenset[str] = frozenset()


class FibreLine(Struct, frozen=True):
    """One entry of a label: what is written, its whole percent, and the fibres that it counts."""

    name: str
    percent: int
    fibres: tuple[str, ...]
    others: bool = False


def content(shares: Sequence[Share], small: Small | None = None) -> tuple[FibreLine, ...]:
    """The entries of a label in their order; small amounts stand last as one.

    Raises:
        ValueError: no share, one that is not above nought, or shares that do not make 100.
    """
    if not shares or any(share.percent <= 0 for share in shares):
        raise ValueError("a content needs shares, each above nought")
    if abs(sum(share.percent for share in shares) - WHOLE) > SLACK:
        raise ValueError("the shares of a content make 100 percent")
    merged = _merged(shares)
    named = [m for m in merged if small is None or not _is_small(m, small)]
    rest = [m for m in merged if m not in named]
    if not named:
        named, rest = merged, []
    weights = [weight for _, weight, _ in named]
    if rest:
        weights.append(sum(weight for _, weight, _ in rest))
    percents = whole_percents(weights)
    lines = [
        FibreLine(name, percent, fibres)
        for (name, _, fibres), percent in zip(named, percents, strict=False)
    ]
    if rest and small is not None:
        fibres = tuple(fibre for _, _, ids in rest for fibre in ids)
        name = small.one if len(rest) == 1 else small.more
        lines.append(FibreLine(name, percents[-1], fibres, others=True))
    return tuple(lines)


_Merged = tuple[str, float, tuple[str, ...]]


def _merged(shares: Sequence[Share]) -> list[_Merged]:
    """Fibres of one name are one entry; the heaviest first, and by name on a tie."""
    weights: dict[str, float] = {}
    fibres: dict[str, list[str]] = {}
    for share in shares:
        weights[share.name] = weights.get(share.name, 0.0) + share.percent
        fibres.setdefault(share.name, []).append(share.fibre)
    ordered = sorted(weights, key=lambda name: (-weights[name], name))
    return [(name, weights[name], tuple(sorted(set(fibres[name])))) for name in ordered]


def _is_small(entry: _Merged, small: Small) -> bool:
    _, weight, fibres = entry
    return weight < small.below and not small.named.intersection(fibres)


def whole_percents(weights: Sequence[float]) -> list[int]:
    """Whole percent that make 100, each at least 1 and less than 2 away from its weight.

    The largest remainders are rounded up; the greater weight never gets the smaller figure. What
    is there at all is never written as 0.
    """
    total = sum(weights)
    exact = [weight * WHOLE / total for weight in weights]
    figures = [max(1, math.floor(value)) for value in exact]
    while sum(figures) < WHOLE:
        i = max(range(len(exact)), key=lambda k: (exact[k] - figures[k], exact[k], -k))
        figures[i] += 1
    while sum(figures) > WHOLE:
        i = max(
            (k for k in range(len(exact)) if figures[k] > 1),
            key=lambda k: (figures[k] - exact[k], -exact[k], k),
        )
        figures[i] -= 1
    places = sorted(range(len(exact)), key=lambda k: (-exact[k], k))
    for place, figure in zip(places, sorted(figures, reverse=True), strict=True):
        figures[place] = figure
    return figures


def content_text(lines: Sequence[FibreLine], joint: str) -> str:
    """The entries as one line: `82 % viscose, 18 % silk`; `joint` stands before the sign."""
    return ", ".join(f"{line.percent}{joint}% {line.name}" for line in lines)


def without_test(
    fibres: Collection[str],
    weight: float | None,
    *,
    raised: bool,
    spared: Collection[str],
    heavy: float,
) -> bool:
    """Whether a cloth is spared the flame test of 16 CFR 1610.1(d): by weight, or by its fibres.

    Args:
        fibres: every fibre that it may hold.
        weight: the least that it may weigh, g/m²; None where that is not known.
        raised: whether its surface is raised, or may be.
        spared: fibres of which cloth of any surface and weight is spared.
        heavy: the weight from which a plain cloth is spared, g/m².
    """
    if fibres and set(fibres) <= set(spared):
        return True
    return not raised and weight is not None and weight >= heavy
