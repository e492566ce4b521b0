"""Which places lie so far apart on a garment that the iron at the one cannot touch the other.

Only what two roles tell without doubt: a hood and what is sewn nowhere to it, the end of a sleeve
and the body, a band of the hem and the shoulders. Whatever is not listed may be near.
"""

from __future__ import annotations

from advisor.claims.lies_behind import may_lie
from advisor.claims.loaded import MOUNTED
from advisor.knowledge import nouns
from advisor.knowledge.places import PLAIN
from advisor.order.kinds import SeamPlace
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.linings import LINING, short_by
from advisor.project.placing import singular_words

HOOD = frozenset({"hood", "hood-edge", "hood-casing"})
SLEEVE_END = frozenset({"cuff", "sleeve-hem"})
UP_THE_ARM = frozenset({"armhole", "side", "pocket", "patch-pocket", "facing"})
"""What the end of a short sleeve may lie near, and that of a long one does not."""
LONG_MM = 250.0
"""The length from which the seam of a sleeve is long, mm: estimate."""
LEG_END = frozenset({"leg-band"})
INSEAM = frozenset({"inseam"})
"""A word of the seam that is as long as the leg."""
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
        *("shoulder", "collar", "stand", "collar-attach", "neckband", "centre", "crotch", "inseam"),
        *("hem", "lower-edge", "waist", "waistband", "yoke", "set-lining", "dart", "waist-dart"),
        "bone-channel",
    }
)
"""What no sleeve reaches with its end."""
ABOVE_THE_LEG = frozenset(
    {"shoulder", "collar", "stand", "collar-attach", "neckband", "armhole", "yoke", "underarm"}
)


FROM_THE_HEM = frozenset({"shoulder", "collar", "stand", "collar-attach", "armhole", "yoke"})
"""What lies so high that the iron of a band of rib stays away."""


JOINS = frozenset({PLAIN, "gathered-edge"})
"""Kinds of place by which a skirt hangs from what is above it."""
PARTING = frozenset({"open-ended-zip", "two-way-zip"})
"""Zips that open at their lower end."""
BIB, SKIRT = "bib", "skirt"
"""What stands above the waist and what hangs from it."""
HIGH = nouns.CHEST | (nouns.HUNG_ABOVE - nouns.SLEEVES)
"""Words of what lies above the waist, whatever hangs from it."""
ABOVE_THE_WAIST = frozenset(
    {
        *("shoulder", "collar", "stand", "collar-attach", "neckband", "armhole", "raglan", "yoke"),
        *("underarm", "bust-gathers", "wrap-to-waist", "top-edge", "neck-slit"),
    }
)
SIDES, CLEAR_MM = frozenset({"side"}), 150.0
"""Words of a seam that runs down to the hem, and how far off an iron at that is, mm: estimate."""


MADE_BY_ITSELF = frozenset({"pocket-flap", "flap", "patch-pocket", "pocket"})
"""Roles of what is made of shell and lining by itself, or on the shell before that is lined."""
CLEAR_OF_SLEEVES = frozenset(
    {"facing", "wrap-edge", "patch-pocket", "pocket", "pocket-flap", "hem", "shoulder"}
)
"""Roles of what lies on a body, where no iron in a sleeve comes."""


def far_apart(one: SeamPlace, other: SeamPlace, garment: Garment) -> bool:
    """Whether two places are on parts of a garment that do not lie under one iron."""
    both = (one, other), (other, one)
    return any(_apart(a, b, garment) or _backs_another(a, b, garment) for a, b in both)


def _backs_another(mount: SeamPlace, place: SeamPlace, garment: Garment) -> bool:
    """Whether what is mounted at the one place surely lies behind another panel than the other."""
    return mount.kind.id == MOUNTED and not may_lie(mount.seam, place.seam, garment)


def _apart(one: SeamPlace, other: SeamPlace, garment: Garment) -> bool:
    if one.unit == LINING and other.role.id in MADE_BY_ITSELF and _hung_last(garment):
        return True
    if one.role.id == "hem" and (apart := _from_a_hem(one, other, garment)) is not None:
        return apart
    role = other.role.id
    if one.role.id in HOOD:
        band = role == "neckband" and speaks_of(other.name, nouns.AT_THE_HEM)
        limb = role == "applied" and speaks_of(other.name, nouns.LIMBS)
        elsewhere = band or limb or _backs_no_hood(other, one, garment)
        return elsewhere or role in BELOW | FROM_A_HOOD | SLEEVE_END | LEG_END
    if _over_the_waist(one, other, garment):
        return True
    if one.role.id == "underarm" and _set_in(garment):
        return other.kind.id == "quilting" or other.role.id in CLEAR_OF_SLEEVES
    if at_sleeve_end(one):
        above = role in UP_THE_ARM and _long(nouns.SLEEVES, garment)
        return above or role in OF_BODY | HOOD | LEG_END
    if one.role.id == "neckband" and speaks_of(one.name, nouns.AT_THE_HEM):
        return role in FROM_THE_HEM
    up_the_leg = role in ABOVE_THE_LEG or (role in AT_WAIST and _long(nouns.LEG_SIDES, garment))
    return one.role.id in LEG_END and up_the_leg


def _over_the_waist(skirt: SeamPlace, other: SeamPlace, garment: Garment) -> bool:
    """Whether one runs down a skirt alone, and a waist lies between it and what lies high."""
    words = set(singular_words(skirt.name)) | _part(skirt.seam)
    runs = skirt.kind.id == PLAIN and bool(nouns.SKIRTS & words) and bool(nouns.DOWN & words)
    waist = any("waist" in singular_words(s.name) and s.place in JOINS for s in garment.seams)
    low = nouns.SKIRTS | {"hip"}
    high = other.role.id in ABOVE_THE_WAIST and not low & set(singular_words(other.name))
    return runs and waist and high


def _from_a_hem(hem: SeamPlace, other: SeamPlace, garment: Garment) -> bool | None:
    """Whether a place is clear of an iron at a hem; None where no length tells."""
    role = other.role.id
    if nouns.CHEST & _part(hem.seam):
        return None
    if other.kind.id == "zip":
        apart = not set(other.cloths) & set(hem.cloths) and _long_skirt(garment)
        above = apart and _ends_at_the_waist(other, hem, garment)
        return above or _ends_above(other, garment)
    legs = _long_legs(garment)
    if role == "waistband":
        return bool(legs & set(hem.cloths)) or _least_side(other, garment) >= LONG_MM
    if legs:
        high = role in ABOVE_THE_LEG | AT_WAIST or BIB in singular_words(other.name)
        return high or (not legs & set(other.cloths) and _ends_at_the_waist(other, hem, garment))
    if role in ABOVE_THE_LEG and _long_sides(garment, LONG_MM):
        return True
    if _above_the_waist(other):
        if _long_sides(garment, LONG_MM + CLEAR_MM) and not _lined_down(other, hem, garment):
            return True
        return _long_skirt(garment) and _ends_at_the_waist(other, hem, garment)
    return None


def _backs_no_hood(backing: SeamPlace, hood: SeamPlace, garment: Garment) -> bool:
    """Whether what is quilted or mounted there is no layer of the hood, as its part has them."""
    layers = {name for part in garment.parts if part.name == hood.seam.part for name in part.layers}
    known = bool(layers) and backing.kind.family == "backing"
    return known and not set(backing.seam.cloths()) <= layers


def _long_legs(garment: Garment) -> set[str]:
    """The cloths of legs that are long enough for no iron to reach both of their ends."""
    seams = (s for s in garment.seams if s.place == PLAIN and INSEAM & set(singular_words(s.name)))
    long = [s for s in seams if s.long_mm >= LONG_MM]
    return {name for seam in long for name in seam.cloths()}


def _long_sides(garment: Garment, least: float) -> bool:
    """Whether a side seam is so long that no iron at the hem reaches what lies high above it."""
    sides = (s for s in garment.seams if s.place == PLAIN and set(singular_words(s.name)) >= SIDES)
    return any(s.long_mm >= least for s in sides if not speaks_of(s.name, nouns.SLEEVES))


def _ends_above(fastened: SeamPlace, garment: Garment) -> bool:
    """Whether a zip that closes below is shorter by far than the seams that run down its part."""
    long = fastened.seam.long_mm
    parts = any(garment.cloths[name].entry in PARTING for name in fastened.notions)
    below = _least_side(fastened, garment) >= long + CLEAR_MM
    return bool(long) and below and not parts and not speaks_of(fastened.name, nouns.SHORT_ZIPS)


def _least_side(place: SeamPlace, garment: Garment) -> float:
    """The length of the shortest side seam of its part, mm; 0 where none is said."""
    down = (s for s in garment.seams if s.place == PLAIN and s.part == place.seam.part)
    sides = (s.long_mm for s in down if SIDES & set(singular_words(s.name)))
    return min(sides, default=0.0)


def _above_the_waist(place: SeamPlace) -> bool:
    """Whether it lies in the bodice, by its role or its name, and runs down no skirt."""
    words = set(singular_words(place.name))
    high = place.role.id in ABOVE_THE_WAIST or bool(HIGH & (words | _part(place.seam)))
    return high and SKIRT not in words and not nouns.AT_THE_HEM & words


def _long_skirt(garment: Garment) -> bool:
    """Whether a skirt has seams of its own, all so long that no iron reaches both of their ends."""
    seams = [
        s for s in garment.seams if s.place == PLAIN and nouns.SKIRTS & {*singular_words(s.name)}
    ]
    down = [s for s in seams if nouns.DOWN & set(singular_words(s.name))]
    return bool(down) and all(s.long_mm >= LONG_MM for s in down)


def _ends_at_the_waist(place: SeamPlace, hem: SeamPlace, garment: Garment) -> bool:
    """Whether what a place holds beyond the cloths of a hem is sewn in bodice and sleeves alone.

    A lining of which nobody says where it is sewn may hang down to the hem.
    """
    cloths = {n for n in place.cloths if n not in hem.cloths}
    return all(_sewn_above(name, garment) for name in cloths)


def _lined_down(place: SeamPlace, hem: SeamPlace, garment: Garment) -> bool:
    """Whether a lining hangs from a place, and may hang down as far as the hem."""
    own = [s for s in garment.seams if s.place == PLAIN and LINING in singular_words(s.name)]
    hung = {name for s in own for name in s.cloths()} & set(place.cloths) - set(hem.cloths)
    return any(not _sewn_above(name, garment) for name in hung)


def clear_of_hem(hot: SeamPlace, place: SeamPlace, garment: Garment) -> frozenset[str]:
    """What of a place lies so high that the iron at a hem never meets it.

    A lining that is cut much shorter than its shell hangs nowhere near. Of a place at the waist or
    above, a notion that is sewn in there ends there; a cloth that is seamed in a skirt hangs down.
    """
    if hot.role.id != "hem":
        return frozenset()
    elsewhere = garment.cloths.keys() - set(hot.cloths)
    linings = {p.cloth for p in garment.plan.pieces if LINING in singular_words(p.name)}
    short = frozenset(n for n in elsewhere & linings if short_by((n,), garment) >= CLEAR_MM)
    at_waist = place.role.id in {*AT_WAIST, *ABOVE_THE_WAIST} or _above_the_waist(place)
    at_waist = at_waist and not nouns.CHEST & _part(hot.seam)
    if not at_waist or not _long_skirt(garment):
        return short
    others = elsewhere & set(place.seam.cloths())
    return short | {n for n in others if n in place.notions or _sewn_above(n, garment)}


def _sewn_above(cloth: str, garment: Garment) -> bool:
    """Whether every seam of a cloth is called after what lies high, or is too short to reach down.

    Even from the waist its side would end well above the hem.
    A lining of which nobody says where it is sewn may hang down to the hem.
    """
    own = [s for s in garment.seams if s.place == PLAIN and cloth in s.cloths()]
    return bool(own) and all(_high(s, garment) for s in own)


def _part(seam: Seam) -> set[str]:
    """The words of the part that it lies on."""
    return set(singular_words(seam.part))


def _high(seam: Seam, garment: Garment) -> bool:
    words = set(singular_words(seam.name))
    if (nouns.CHEST | nouns.SLEEVES | nouns.SHOULDER_LINE) & (words | _part(seam)):
        return True
    sides = [s for s in garment.seams if s.place == PLAIN and SIDES & set(singular_words(s.name))]
    below = [s.long_mm for s in sides if nouns.SKIRTS & set(singular_words(s.name))]
    down = bool(SIDES & words) and not (nouns.SKIRTS | {LINING}) & words
    return down and 0 < seam.long_mm <= min(below, default=0.0) - LONG_MM


def _long(words: frozenset[str], garment: Garment) -> bool:
    """Whether the seam of a limb is said to be so long that no iron reaches both of its ends."""
    seams = (s for s in garment.seams if words & set(singular_words(s.name)))
    return any(s.long_mm >= LONG_MM for s in seams if s.place == PLAIN)


def at_sleeve_end(place: SeamPlace) -> bool:
    """Whether it closes a sleeve: a cuff, a hem, a frill or a channel that is called after it."""
    channel = place.role.id in ("casing", "elastic-edge", "tier")
    words = set(singular_words(place.name))
    return place.role.id in SLEEVE_END or (channel and bool(words & nouns.ON_SLEEVE))


def _set_in(garment: Garment) -> bool:
    """Whether sleeves are set in by a seam, so that their own are pressed while they lie apart."""
    seams = (s for s in garment.seams if s.place == PLAIN)
    return any("armhole" in singular_words(s.name) for s in seams)


def _hung_last(garment: Garment) -> bool:
    """Whether the lining is made up by itself and joined to the shell by a place of its own."""
    return any(seam.place == "lining-seam" for seam in garment.seams)
