"""Which places lie so far apart on a garment that the iron at the one cannot touch the other.

Only what two roles tell without doubt: a hood and what lies below the armhole, the end of a sleeve
and the body. Whatever is not listed may be near.
"""

from __future__ import annotations

from advisor.order.kinds import SeamPlace
from advisor.project.placing import singular_words

HOOD = frozenset({"hood", "hood-edge", "hood-casing"})
SLEEVE_END = frozenset({"cuff", "sleeve-hem"})
AT_WRIST = frozenset({"sleeve", "wrist", "cuff"})
"""Words of a channel or an elastic that lies at the end of a sleeve."""
LEG_END = frozenset({"leg-band"})
BELOW = frozenset(
    {
        *("side", "side-and-sleeve", "underarm", "crotch", "inseam", "hem", "lower-edge"),
        *("waist", "waistband", "tier", "ring-tier"),
    }
)
"""What begins at the armhole or below it."""
OF_BODY = frozenset(
    {
        *("shoulder", "collar", "collar-attach", "neckband", "centre", "crotch", "inseam"),
        *("hem", "lower-edge", "waist", "waistband", "yoke", "set-lining", "dart", "waist-dart"),
    }
)
"""What no sleeve reaches with its end."""
ABOVE_THE_LEG = frozenset(
    {"shoulder", "collar", "collar-attach", "neckband", "armhole", "yoke", "underarm"}
)


def far_apart(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether two places are on parts of a garment that do not lie under one iron."""
    return _apart(one, other) or _apart(other, one)


def _apart(one: SeamPlace, other: SeamPlace) -> bool:
    role = other.role.id
    if one.role.id in HOOD:
        return role in BELOW | SLEEVE_END | LEG_END
    if at_sleeve_end(one):
        return role in OF_BODY | HOOD | LEG_END
    return one.role.id in LEG_END and role in ABOVE_THE_LEG


def at_sleeve_end(place: SeamPlace) -> bool:
    """Whether it closes a sleeve: a cuff, a hem, or a channel that is called after it."""
    channel = place.role.id in ("casing", "elastic-edge")
    words = set(singular_words(place.name))
    return place.role.id in SLEEVE_END or (channel and bool(words & AT_WRIST))
