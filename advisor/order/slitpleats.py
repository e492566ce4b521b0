"""Pleats at the end of a sleeve that are laid towards a slit which waits for the fitting."""

from __future__ import annotations

from typing import TYPE_CHECKING

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace, related
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.fitting import Fitting

PLEAT, PLACKET = "pleat", "placket"


def laid_to_a_slit(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether its folds lie beside a slit of the sleeve that is cut after the fitting.

    Nobody tries them on: they are pinned for that, and laid when the slit is finished.
    """
    if place.kind.id != PLEAT or not speaks_of(place.name, nouns.ON_SLEEVE):
        return False
    slits = (p for p in fitting.places if p.kind.id == PLACKET and related(place, p))
    return any(nouns.ON_SLEEVE & set(singular_words(p.name)) and fitting.cut_into(p) for p in slits)
