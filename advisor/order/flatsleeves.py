"""Sleeves of knits that go in while all lies flat: they have no ease, and an overlocker sews them.

The armhole comes first, then side and sleeve in one run. A sleeve with ease, of a woven, over a
pad or with a lining of its own is set into a closed armhole as before.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.claims.collect import Place

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

ARMHOLE, SIDE, UNDERARM = "armhole", "side", "underarm"
FLAT: Final = "sleeve-set-in-flat"
ROUND: Final = frozenset({"pad", "canvas", "lining-seam"})
"""Kinds of place of a garment whose sleeves are shaped at the head, or lined."""
OVERLOCKED: Final = frozenset({"504", "514", "516"})


def goes_in_flat(place: SeamPlace, facts: Facts) -> bool:
    """Whether it is the armhole of such a sleeve, with a side and a sleeve seam to close after."""
    if place.role.id != ARMHOLE or place.unit != "shell" or place.kind.id != "seam":
        return False
    knit = all(facts.entry(name).structure == "knit" for name in place.seam.cloths())
    eased = any(use.fullness > 1.0 for use in place.seam.uses)
    stitch = facts.setups.word(Place("seam", place.name), "stitch.type", "")
    shaped = any(p.kind.id in ROUND for p in facts.places)
    both = all(_closing(role, facts) for role in (SIDE, UNDERARM))
    return knit and not eased and stitch in OVERLOCKED and not shaped and both


def run_with(place: SeamPlace, facts: Facts) -> str:
    """The other of side and sleeve, with which a seam is sewn in one run; "" where it is not."""
    other = {SIDE: UNDERARM, UNDERARM: SIDE}.get(place.role.id, "")
    flat = any(p.role.id == ARMHOLE and p.method.id == FLAT for p in facts.places)
    if not other or not flat or place.unit != "shell" or place.kind.family != "seam":
        return ""
    return next((p.name for p in _closing(other, facts) if p.op == place.op), "")


def _closing(role: str, facts: Facts) -> list[SeamPlace]:
    seams = (p for p in facts.places if p.role.id == role and p.kind.family == "seam")
    return [p for p in seams if p.unit == "shell"]
