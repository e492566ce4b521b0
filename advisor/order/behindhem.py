"""What hangs behind a hem when that is pressed, though no seam holds both: a lining, a petticoat.

The hem is turned up last, and by then whatever was hung in from above comes down to it: the iron
lies on it unless it is lifted away. Where nothing tells that it ends well above, it is near.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from advisor.order.kinds import SeamPlace
from advisor.order.nearness import clear_of_hem, far_apart

if TYPE_CHECKING:
    from advisor.order.setups import Setups
    from advisor.project.garment import Garment

HEM: Final = "hem"
DRAWN_ON: Final = frozenset({"tier", "ring-tier"})
"""Roles of what is gathered to the end of another piece and hangs below it."""
LINING, BOTH = "lining", "both"
NO_SEAM: Final = frozenset({"backing", "fastening", "stay", "laid on"})
"""Families of places that hang nothing from an edge."""


def hung_behind(
    hem: SeamPlace, joined: Sequence[SeamPlace], garment: Garment
) -> dict[str, SeamPlace]:
    """The cloths that hang level with a hem of the shell, each with the place that hung it there.

    Args:
        hem: the place that is pressed.
        joined: the places that were sewn before, on what is worn together with it.
        garment: whose lengths tell what ends far above.
    """
    if hem.role.id != HEM or hem.unit == LINING:
        return {}
    near = [p for p in joined if p.alone == hem.alone and p.kind.family not in NO_SEAM]
    found: dict[str, SeamPlace] = {}
    for place in near:
        if place.role.id == HEM or (far_apart(hem, place, garment) and place.unit != BOTH):
            continue
        for name in _brought(place, hem, near, garment) - clear_of_hem(hem, place, garment):
            found.setdefault(name, place)
    return found


def too_tender_behind(
    hem: SeamPlace, most: float, joined: Sequence[SeamPlace], setups: Setups
) -> frozenset[str]:
    """What hangs behind a hem and bears less than the hottest iron that is told for that."""
    bears = {n: setups.bears_alone(n) for n in hung_behind(hem, joined, setups.garment)}
    return frozenset(n for n, limit in bears.items() if limit is not None and limit < most)


def _brought(
    place: SeamPlace, hem: SeamPlace, near: Sequence[SeamPlace], garment: Garment
) -> set[str]:
    """What a place lets hang down to a hem: the lining it takes in, or the net it draws on."""
    own = set(hem.cloths)
    if place.unit == BOTH:
        return {n for n in place.cloths if n not in own and _hangs_free(n, hem, garment)}
    if place.role.id in DRAWN_ON and not own & set(place.cloths) and _hung(place, own, near):
        return set(place.full) - own
    return set()


def _hangs_free(cloth: str, hem: SeamPlace, garment: Garment) -> bool:
    """Whether a cloth has a lower edge of its own, which is no edge of the shell."""
    edges = (s for s in garment.seams if s.name != hem.name and s.facts.get("edge") == HEM)
    return any(set(seam.cloths()) == {cloth} for seam in edges)


def _hung(place: SeamPlace, shell: set[str], near: Sequence[SeamPlace]) -> bool:
    """Whether something sews the piece that a tier is drawn to beside the cloth of the hem."""
    above = {n for n in place.cloths if n not in place.full}
    return any(shell & set(p.cloths) and above & set(p.cloths) for p in near)
