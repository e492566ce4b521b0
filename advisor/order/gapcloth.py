"""Of which cloths the line is made that a garment file seems to have forgotten.

It is copied as it stands, so it names no cloth that the thing is not made of: a tender cloth left
out of it would be pressed as hot as the other one bears.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.order.easing import ends_below
from advisor.order.kinds import SeamPlace
from advisor.order.roles import holds_words
from advisor.project.garment import Garment
from advisor.project.headwords import speaks_of
from advisor.project.linings import lining_by_seams

SLEEVE, ZIP, UNDERCOLLAR, PILES = "sleeve", "zip", "undercollar", "piles"
NAMED_AFTER: Final = "{place}"
"""How a line begins that is called after the place, and is of what is drawn up there."""
TO_A_BAND, CUFF, RIB = "lining to", "cuff", "neckband"
"""How a line begins that joins a lining to what the shell ends in, and what that may be."""
BACK: Final = "back"
SKIRT, LINED = "skirt", "lining"
ARMHOLES: Final = frozenset({"armhole", "raglan"})
"""Roles of what joins a sleeve to the body, each perhaps of its own cloth."""


def cloths_of(
    wanted: str, place: SeamPlace, garment: Garment, knowledge: Knowledge
) -> tuple[str, ...]:
    """The cloths of the layers of a line, in turn.

    Args:
        wanted: the name of what is missing.
        place: the place that calls for it.
        garment: with its cloths and pieces.
        knowledge: with the kinds of place.

    Returns:
        The cloths; where one of two is meant and nothing tells which, `this or that`, which no
        project takes until the maker has struck one of them out.
    """
    if wanted.startswith(TO_A_BAND):
        return _of_band(holds_words(wanted, CUFF), garment, knowledge) + place.cloths
    if place.full and (wanted.startswith(NAMED_AFTER) or holds_words(wanted, SKIRT)):
        return place.full
    found = _own_side(place, garment, knowledge) or tuple(garment.cloths)
    if holds_words(wanted, UNDERCOLLAR):
        firm = [n for n in found if knowledge.entries[garment.cloths[n].entry].family != PILES]
        return tuple(firm) or found
    cut = {piece.cloth for piece in garment.plan.pieces if holds_words(piece.name, LINED)}
    if holds_words(wanted, LINED) and place.unit != LINED and cut & set(place.cloths):
        return tuple(name for name in place.cloths if name in cut)
    halves = {p.cloth for p in garment.plan.pieces if holds_words(p.name, BACK)} & set(found)
    if holds_words(wanted, f"centre {BACK}") and halves and place.kind.id != ZIP:
        return tuple(sorted(halves))
    if place.kind.id == ZIP and len(found) > 1:
        return (" or ".join(found),)  # it ends in one of them, and nothing tells in which
    of_a_cuff = place.kind.id == CUFF and holds_words(wanted, SLEEVE)
    if not (place.role.id in ARMHOLES or of_a_cuff) or len(found) == 1:
        return found
    sleeves = _of_sleeves(found, place, garment)
    body = tuple(name for name in found if name not in sleeves)
    meant = sleeves if holds_words(wanted, SLEEVE) else body if sleeves else found
    meant = meant or found
    return meant if len(meant) == 1 else (" or ".join(meant),)


def _of_band(at_wrist: bool, garment: Garment, knowledge: Knowledge) -> tuple[str, ...]:
    """The cloths of the shell where it ends: at a cuff that of the sleeve, else the rib as well."""
    bands = (s for s in garment.seams if s.place in (RIB, CUFF))
    found = (s for s in bands if at_wrist == speaks_of(s.name, nouns.ON_SLEEVE))
    cloths = next((s.cloths() for s in found if at_wrist or ends_below(s.name)), ())
    kinds = {name: knowledge.entries[garment.cloths[name].entry].kind for name in cloths}
    own = tuple(name for name in dict.fromkeys(cloths) if kinds[name] == "cloth")
    return own[:1] if at_wrist else own


def _own_side(place: SeamPlace, garment: Garment, knowledge: Knowledge) -> tuple[str, ...]:
    """The cloths of the place, without the lining where the shell calls."""
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    linings = lining_by_seams(garment.seams, entries, knowledge.places.kinds)
    shell = tuple(name for name in place.cloths if name not in linings)
    return (shell if place.unit != "lining" else ()) or place.cloths


def _of_sleeves(found: Sequence[str], place: SeamPlace, garment: Garment) -> tuple[str, ...]:
    """Those of some cloths that the sleeves are cut of: so named, so cut, or eased in."""
    cut = {piece.cloth for piece in garment.plan.pieces if holds_words(piece.name, SLEEVE)}
    named = tuple(n for n in found if holds_words(n, SLEEVE))
    named = named or tuple(n for n in found if n in cut)
    eased = tuple(dict.fromkeys(u.cloth for u in place.seam.uses if u.fullness > 1.0))
    return named or tuple(n for n in found if n in eased)
