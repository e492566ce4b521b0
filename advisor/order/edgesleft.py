"""Whose cut edges no row of their own neatens: another place takes them in, or binds them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.order.beside import taken_in
from advisor.order.hosts import bound_elsewhere
from advisor.order.kinds import SeamPlace
from advisor.order.yokelining import lined_later

IN_A_SEAM: Final = frozenset({"centred-zip", "concealed-zip", "hand-picked-zip", "lapped-zip"})


def set_in_a_seam(place: SeamPlace) -> bool:
    """Whether it is a zip between the two edges of a seam, which are neatened before it is set."""
    return place.method.id in IN_A_SEAM


def finished_elsewhere(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a frill is shut in, a strip binds the edges, or a lining is sewn into the seam."""
    elsewhere = (taken_in, bound_elsewhere, lined_later)
    return any(told(place, places) for told in elsewhere)


def waits_for_lining(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a lining is still sewn into a seam, so that nothing is trimmed off it before."""
    return lined_later(place, places)
