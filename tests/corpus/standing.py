"""On what kind of source each value of the knowledge rests: the best of those it names."""

from __future__ import annotations

from collections import Counter

from advisor.knowledge.names import source_id
from tests.corpus import audit

GOOD = frozenset({"standard", "regulation", "handbook", "extension", "trade-journal", "paper"})
TRADE = frozenset({"trade-page", "manual"})
CLAIMS = frozenset({"claims", "then", "cautions"})
"""Where in an entry what is said of handling stands; the rest is weights, names and notes."""


def best_of(value: audit.Value) -> str:
    """`good`, `trade`, `common`, `derived` or `weak`, by the best source of a value."""
    kinds = {audit.book().sources[source_id(text)].form.kind for text in value.sources}
    ranks = (
        ("good", GOOD),
        ("trade", TRADE),
        ("common", {"common-practice"}),
        ("derived", {"derived"}),
    )
    return next((name for name, members in ranks if kinds & set(members)), "weak")


def claims() -> list[audit.Value]:
    return [value for value in audit.values() if value.path[0] in CLAIMS]


def shares(values: list[audit.Value]) -> dict[str, float]:
    """What part of the values rests on each kind."""
    found = Counter(best_of(value) for value in values)
    return {name: number / len(values) for name, number in found.items()}
