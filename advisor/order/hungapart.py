"""A lining that hangs free behind a front: shell and lining drop apart before they meet."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.order.layering import LENGTHWISE
from advisor.project.linings import LINING
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts

MEETS: Final = frozenset({"faced-edge", "lining-seam"})
APART: Final = ", shell and lining each by itself"


def joins_hung_apart(place: SeamPlace, facts: Facts) -> bool:
    """Whether it joins shell and lining of what drops and is hemmed apart, at neck or front."""
    meets = place.unit == "both" and place.kind.id in MEETS
    edge = (nouns.FRONT_OPENING | nouns.NECKS) & set(singular_words(place.name))
    return meets and bool(edge) and hung_apart(facts)


def hung_apart(facts: Facts) -> bool:
    """Whether a lining with a hem of its own is joined down the whole front of what drops."""
    hems = {p.unit for p in facts.places if p.role.id == "hem"}
    if not {"shell", LINING} <= hems or not facts.of_garment("bias or knit drops"):
        return False
    sides = [p.seam.long_mm for p in facts.places if p.role.id in LENGTHWISE and p.unit == "shell"]
    fronts = (p for p in facts.places if p.unit == "both" and p.kind.id in MEETS)
    down = (p.seam.long_mm for p in fronts if nouns.FRONT_OPENING & set(singular_words(p.name)))
    return bool(sides) and any(long >= min(sides) for long in down)
