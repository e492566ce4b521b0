"""Facts of a place that follow from how its cloths behave at their cut edges and curves."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from advisor.construction.bands import in_shaped_pieces
from advisor.construction.fullness import drawn_up_by
from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.order.waistwords import from_the_waist, tape_round_waist
from advisor.project.bindings import strip_of
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts

BY_ROWS = "hand rows"
FELLED_OVER = "lining-felled-over-a-seam"
SEAT = "crotch"
PAIR = 2
"""Up to so many gathered edges lie one at each side; more of one cloth stand in rows (estimate)."""
ROW = 4
"""From how many pleats on they are a row of them, and where such a row lies (estimate)."""
DOWN_THE_BODY = frozenset({"side", "panel", "centre", "underarm", "inseam"})
"""Roles of seams of which the curve keeps its line where all its cloths are thick."""
WHOLE_LENGTH = 1000.0
"""From this length on a seam runs down a whole cloak or gown, mm: estimate."""
BULKY = 2
"""The level of `bulky` from which a cloth is thick in a seam."""
WITH_EDGES = frozenset({"trim", "tape"})
"""Kinds of what is woven narrow, and is neither folded nor hemmed along its length."""
NO_YARNS = frozenset({"skin", "film"})
"""Structures of what keeps each hole, however it is steamed or rubbed."""


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "pleated before it is cut": lambda: pleated_in_a_block(place),
        "lining bound in": lambda: place.unit == "both",
        "seat under strain": lambda: strained_seat(place),
        "line may give": lambda: line_may_give(place, facts),
        "rows laid on one face": lambda: in_rows(place, facts),
        "tape at a waist edge": lambda: tape_round_waist(place, facts.places),
        "band of shaped pieces": lambda: in_shaped_pieces(place.seam, facts.garment),
        "hangs from the waist": lambda: from_the_waist(place, facts.places),
        "loops of ribbon": lambda: of_ribbon(place, facts),
        "band of one layer that stays as cut": lambda: of_one_layer(place, facts),
    }


def of_ribbon(place: SeamPlace, facts: Facts) -> bool:
    """Whether loops are cut of what has edges of its own, as ribbon, tape or webbing."""
    kinds = {facts.entry(name).kind for name in place.notions}
    single = len([use for use in place.seam.uses if use.cloth in place.cloths]) == 1
    hung = nouns.HUNG_BY & {*singular_words(place.name)}
    return single and not hung and bool(kinds & WITH_EDGES)


def pleated_in_a_block(place: SeamPlace) -> bool:
    """Whether so many pleats lie over a piece above the waist that it is cut when they are laid.

    Few are marked from the pattern, and those of a skirt run down its whole widths.
    """
    laid, words = place.seam.making.pleats, set(singular_words(f"{place.name} {place.seam.part}"))
    above = bool(nouns.OVER_A_PIECE & words) and not nouns.SKIRTED & words
    return laid is not None and laid.number >= ROW and above and len(place.seam.uses) == 1


def strained_seat(place: SeamPlace) -> bool:
    """Whether it is the seam of a seat, by its name or by what pulls at it."""
    called = place.name.casefold()
    named = any(words in called for words in ("seat seam", "crotch seam"))
    return place.role.id == SEAT and (named or place.said("stress") == "high")


def of_one_layer(place: SeamPlace, facts: Facts) -> bool:
    """Whether one layer of what needs no edge turned, as a skin, is set on another cloth."""
    plies = [use.cloth for use in place.seam.uses if use.cloth in place.cloths]
    band = strip_of(place.seam, facts.garment)
    return len(plies) > 1 == plies.count(band) and not place.full and facts.stays_cut(band)


def in_rows(place: SeamPlace, facts: Facts) -> bool:
    """Whether several gathered rows of what frays nowhere stand on one face, drawn up by rows."""
    raw = place.seam.making.times > PAIR and all(map(facts.stays_cut, place.full))
    by_rows = drawn_up_by(place.seam) in ("", BY_ROWS)
    return raw and by_rows and not facts.of_seam("very full", place)


def line_may_give(place: SeamPlace, facts: Facts) -> bool:
    """Whether a curve may stretch while it is handled; one down a whole length hardly curves.

    That of a lining which is felled there is free, and a seat has to stretch with the body.
    """
    if place.method.id == FELLED_OVER or place.role.id == SEAT:
        return False
    thin = any(facts.least(c, "bulky") < BULKY for c in place.cloths)
    short = thin and place.seam.long_mm < WHOLE_LENGTH
    return short or place.role.id not in DOWN_THE_BODY


def holed_for_good(place: SeamPlace, facts: Facts) -> bool:
    """Whether a cloth of it has no yarns that close again over a hole."""
    return any(facts.entry(c).structure in NO_YARNS for c in place.cloths)
