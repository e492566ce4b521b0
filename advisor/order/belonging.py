"""The role of a place that belongs to others, as it follows from theirs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from advisor.knowledge.ordering import SeamKind
from advisor.project.attached import BONES, ENDS
from advisor.project.companions import BOUND, JOINED, ROWS
from advisor.project.garment import Companion

if TYPE_CHECKING:
    from advisor.order.kinds import SeamPlace

MADE_FIRST, SET_LINING = "made-first", "set-lining"


def role_beside(
    hosts: Sequence[SeamKind], kind: str, belongs: Companion, roles: Mapping[str, SeamKind]
) -> SeamKind:
    """The role of what is made for others, or upon them.

    What is made first lies by itself yet. Rows and bindings run where their seams run, so that
    whatever crosses those crosses them; a lining at a zip closes as every lining does; and the
    inner edge of a band comes when the band is on.
    """
    last = max(hosts, key=lambda role: role.stage)
    if kind == JOINED:
        return roles.get(SET_LINING, last)
    if belongs.first:
        first = roles.get(MADE_FIRST, last)
        return replace(first, stage=last.stage - 1)
    if belongs.what in (ROWS, BONES, ENDS, BOUND):
        return replace(last, stage=last.stage + 1, closes=False, fitted=False)
    own = roles.get(MADE_FIRST, last)
    return replace(own, stage=last.stage + 1, flat=False)


def made_apart(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether one is made on a piece that lies by itself yet, and the other is none of its own."""
    belongs = one.seam.companion
    return belongs is not None and belongs.first and other.name not in belongs.hosts
