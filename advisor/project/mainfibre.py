"""The fibre that makes most of a cloth, whatever else may be in it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from advisor.knowledge.model import Mix
    from advisor.project.garment import Cloth

HALF: Final = 50.0
"""The percentage from which a fibre is the main one."""


def main_fibre(mixes: tuple[Mix, ...]) -> tuple[str | None, float]:
    """The fibre that makes at least half of a cloth whatever it is of, and its greatest share."""
    each = [_mainly(mix) for mix in mixes]
    if not each or len({fibre for fibre, _ in each}) > 1:
        return None, 0.0
    return each[0][0], max(share for _, share in each)


def _mainly(mix: Mix) -> tuple[str | None, float]:
    """The fibre that makes at least half of a mix, and its share; parts of no share are small."""
    told = [(fibre, share) for fibre, share in mix if share is not None]
    if len(mix) == 1:
        return mix[0][0], mix[0][1] or 100.0
    fibre, share = max(told, key=lambda part: part[1], default=(None, 0.0))
    return (fibre, share) if share >= HALF else (None, 0.0)


def vouched_for(cloth: Cloth) -> str | None:
    """The main fibre of a cloth, where its name or its label says it; None where nobody does."""
    return None if cloth.fibre_unknown else main_fibre(cloth.mixes)[0]
