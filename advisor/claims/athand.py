"""Of the pins that suit a seam, those that the maker has are taken before others."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.claims.combine import picking
from advisor.claims.valuesets import Choice
from advisor.knowledge.names import plain_name

if TYPE_CHECKING:
    from advisor.claims.combine import Verdict

PINS: Final = "pin.kind"
BASTED: Final = "hand basting"


def at_hand(by_aspect: dict[str, Verdict], has: tuple[str, ...] | None) -> None:
    """Pick pins that are in her kit, where those that were picked are not and others do as well.

    A kit that only says `pins` names none of them, and changes no pick.
    """
    kind = by_aspect.get(PINS)
    if not has or kind is None or kind.clash or kind.pick is None:
        return
    words, mine = kind.aspect.words, [plain_name(item) for item in has]
    advised = kind.advised
    if words[int(kind.pick)] == BASTED or not isinstance(advised, Choice):
        return
    own = [i for i in advised.options() if any(plain_name(words[i]) in item for item in mine)]
    if own and int(kind.pick) not in own:
        by_aspect[PINS] = picking(kind, own[0], "These are the pins that you have.")
