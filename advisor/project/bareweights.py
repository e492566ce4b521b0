"""A weight without a unit: taken for grams, unless the cloth rather weighs so many momme or ounces.

Silk is sold by the momme and denim by the ounce, so "7" on a habutai is no 7 g/m2.
"""

from __future__ import annotations

from advisor.errors import InputError, Problem, shown
from advisor.knowledge.model import Entry
from advisor.project.phrases.weights import Weight
from advisor.units import parse

_FAR_BELOW = 0.5
"""A cloth hardly weighs less than this share of the lightest that is usual: estimate."""
_SLACK = 1.25
"""How far beyond the usual weights a cloth may lie and still be likely: estimate."""


def refuse_doubtful(value: object, entry: Entry, fibres: frozenset[str]) -> None:
    """Refuse a bare number that is too few grams for a cloth.

    Raises:
        InputError: with the lines that may have been meant, the likeliest first.
    """
    text = " ".join(str(value).split())
    try:
        number = float(text.replace(",", "."))
    except ValueError:
        return
    if entry.weight is None or not 0 < number < entry.weight[0]:
        return
    units = [unit for unit in _units(fibres) if _likely(number, unit, entry.weight)]
    if not units and number >= _FAR_BELOW * entry.weight[0]:
        return
    lines = " or ".join(f"'weight: {text} {unit}'" for unit in (*units, "g/m2"))
    low, high = entry.weight
    wrong = f"'weight': the number {shown(text)} has no unit"
    expected = f"{lines}; {entry.name} usually weighs {low:g} to {high:g} g/m2"
    raise InputError(Problem(wrong, None, expected))


def _units(fibres: frozenset[str]) -> tuple[str, ...]:
    silk = any("silk" in fibre for fibre in fibres)
    return ("momme", "oz") if silk else ("oz",)


def _likely(number: float, unit: str, usual: Weight) -> bool:
    grams = parse("weight", f"{number} {unit}")
    return usual[0] / _SLACK <= grams <= usual[1] * _SLACK
