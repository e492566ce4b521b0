"""Every word that `kind:` of a place takes."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from advisor.knowledge.model import Knowledge
from advisor.project.placing import families, spoken


def known_kinds(known: Knowledge) -> tuple[str, ...]:
    """Every word that `kind:` takes: the kinds of place, and what a seam is in the garment."""
    kinds = known.places.kinds
    words: Iterable[Any] = (*kinds, *known.order.kinds, *sorted(families(kinds)))
    return tuple(dict.fromkeys(spoken(str(word)) for word in words))
