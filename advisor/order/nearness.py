"""Which places lie so far apart on a garment that the iron at the one cannot touch the other.

Only what two roles tell without doubt: a hood and what is sewn nowhere to it, the end of a sleeve
and the body, a band of the hem and the shoulders. Whatever is not listed may be near.
"""

from __future__ import annotations

from advisor.knowledge.places import PLAIN
from advisor.order.kinds import SeamPlace
from advisor.project.garment import Garment
from advisor.project.placing import singular_words

HOOD = frozenset({"hood", "hood-edge", "hood-casing"})
SLEEVE_END = frozenset({"cuff", "sleeve-hem"})
AT_WRIST = frozenset({"sleeve", "wrist", "cuff"})
"""Words of a channel or an elastic that lies at the end of a sleeve."""
UP_THE_ARM = frozenset({"armhole", "side", "pocket", "patch-pocket", "facing"})
"""What the end of a short sleeve may lie near, and that of a long one does not."""
SLEEVES, LONG_MM = frozenset({"sleeve", "underarm"}), 250.0
"""Words of the seam that closes a sleeve, and the length from which it is long, mm: estimate."""
LEG_END, LEGS = frozenset({"leg-band"}), frozenset({"leg", "inseam", "outseam"})
AT_WAIST = frozenset({"waist", "waistband"})
BELOW = frozenset(
    {
        *("side", "side-and-sleeve", "underarm", "crotch", "inseam", "hem", "lower-edge"),
        *("waist", "waistband", "tier", "ring-tier"),
    }
)
"""What begins at the armhole or below it."""
FROM_A_HOOD = frozenset({"yoke", "shoulder", "armhole", "raglan", "patch-pocket"})
"""What else a hood is not sewn to: it lies apart until it is sewn on at the neck."""
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


AT_THE_HEM, FROM_THE_HEM = (
    frozenset({"hem", "waist", "lower"}),
    frozenset({"shoulder", "collar", "collar-attach", "armhole", "yoke"}),
)
"""Words of a band of rib that ends the body, and what lies so high that its iron stays away."""


PARTING, LOW = (
    frozenset({"open-ended-zip", "two-way-zip"}),
    frozenset({"front", "open", "leg", "ankle", "sleeve", "hem", "lower", "vent"}),
)
"""Zips that open at their lower end, and words of one that may lie at the hem."""
SIDES, CLEAR_MM = frozenset({"side"}), 150.0
"""Words of a seam that runs down to the hem, and how far off an iron at that is, mm: estimate."""


def far_apart(one: SeamPlace, other: SeamPlace, garment: Garment) -> bool:
    """Whether two places are on parts of a garment that do not lie under one iron."""
    return _apart(one, other, garment) or _apart(other, one, garment)


def _apart(one: SeamPlace, other: SeamPlace, garment: Garment) -> bool:
    role = other.role.id
    if one.role.id == "hem" and other.kind.id == "zip":
        return _ends_above(other, garment)
    if one.role.id == "hem" and role == "waistband":
        return _least_side(other, garment) >= LONG_MM
    if one.role.id in HOOD:
        return role in BELOW | FROM_A_HOOD | SLEEVE_END | LEG_END
    if at_sleeve_end(one):
        above = role in UP_THE_ARM and _long(SLEEVES, garment)
        return above or role in OF_BODY | HOOD | LEG_END
    if one.role.id == "neckband" and AT_THE_HEM & set(singular_words(one.name)):
        return role in FROM_THE_HEM
    if one.role.id not in LEG_END:
        return False
    return role in ABOVE_THE_LEG or (role in AT_WAIST and _long(LEGS, garment))


def _ends_above(fastened: SeamPlace, garment: Garment) -> bool:
    """Whether a zip that closes below is shorter by far than the seams that run down its part."""
    long = float(fastened.seam.facts.get("length", 0.0))
    parts = any(garment.cloths[name].entry in PARTING for name in fastened.notions)
    below = _least_side(fastened, garment) >= long + CLEAR_MM
    return bool(long) and below and not parts and not LOW & set(singular_words(fastened.name))


def _least_side(place: SeamPlace, garment: Garment) -> float:
    """The length of the shortest side seam of its part, mm; 0 where none is said."""
    down = (s for s in garment.seams if s.place == PLAIN and s.part == place.seam.part)
    sides = (float(s.facts.get("length", 0.0)) for s in down if SIDES & set(singular_words(s.name)))
    return min(sides, default=0.0)


def _long(words: frozenset[str], garment: Garment) -> bool:
    """Whether the seam of a limb is said to be so long that no iron reaches both of its ends."""
    seams = (s for s in garment.seams if words & set(singular_words(s.name)))
    return any(float(s.facts.get("length", 0.0)) >= LONG_MM for s in seams if s.place == PLAIN)


def at_sleeve_end(place: SeamPlace) -> bool:
    """Whether it closes a sleeve: a cuff, a hem, a frill or a channel that is called after it."""
    channel = place.role.id in ("casing", "elastic-edge", "tier")
    words = set(singular_words(place.name))
    return place.role.id in SLEEVE_END or (channel and bool(words & AT_WRIST))
