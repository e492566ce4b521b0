"""Whether the fullness of a seam lies in pleats that the project names as a place of their own."""

from __future__ import annotations

from collections.abc import Iterable

from advisor.knowledge import nouns
from advisor.project.garment import Seam
from advisor.project.headwords import speaks_of
from advisor.project.placing import GATHERED, singular_words

PLEAT = "pleat"


def pleated_apart(seam: Seam, seams: Iterable[Seam]) -> bool:
    """Whether its full cloth is laid in pleats elsewhere, so that nothing is drawn up here."""
    full = {use.cloth for use in seam.uses if use.fullness >= GATHERED}
    told = seam.making.gathers is not None or seam.making.pleats is not None
    if not full or told or {"gather", "frill"} & set(singular_words(seam.name)):
        return False
    return any(
        other.place == PLEAT
        and PLEAT in singular_words(other.name)
        and full & set(other.cloths())
        and _on_sleeve(other) == _on_sleeve(seam)
        and other.part in ("", seam.part)
        for other in seams
    )


def _on_sleeve(seam: Seam) -> bool:
    return speaks_of(seam.name, nouns.ON_SLEEVE)
