"""Which seams another place of the garment already stays, so that nothing is laid there twice.

Nor is a waist stayed that an elastic holds, or that has to give until the wearer is in.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.claims.collect import Place
from advisor.construction.canvassed import stayed_by_backing
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.companions import AT_ZIP, JOINED
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words
from advisor.project.together import ribbon_as_band

if TYPE_CHECKING:
    from advisor.claims.combine import Verdict

STAY_TAPE: Final = "stay-tape"
FACED: Final = "faced-edge"
SUPPORT: Final = "seam.support"
WAIST, ZIP, TIED, CAUGHT_IN = "waist", "zip", "ties", "clear-elastic"
WAISTS: Final = frozenset({"seam", "gathered-edge"})
"""Kinds of place that join a bodice and a skirt."""
DRAWN_IN: Final = frozenset({"casing", "elastic-edge"})
STIFFENED: Final = frozenset({"interfacing", "stay-tape"})
ALIKE: Final = 0.05
"""Up to which share two lengths are taken for those of one edge: estimate."""
FLAT: Final = 1.1
"""The fullness up to which a layer is not gathered: estimate."""
STAY, CLOTH = "stay", "cloth"
OPEN: Final = frozenset({"placket", "front-band"})


def taped_elsewhere(seam: Seam, garment: Garment) -> bool:
    """Whether a place of its own lays the tape of a seam, by its name and what they share.

    The facing of an edge is sewn along the line that the tape of that edge lies on.
    """
    words = set(singular_words(seam.name))
    lines = nouns.A_LINE | nouns.FACES if seam.place == FACED else nouns.A_LINE
    named = words - lines or words
    return any(
        other.place == STAY_TAPE
        and other.name != seam.name
        and named <= set(singular_words(other.name))
        and not nouns.ROLLS & set(singular_words(other.name)) - words
        and bool(set(seam.cloths()) & set(other.cloths()))
        for other in garment.seams
    )


def drawn_in_elsewhere(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether a place of its own lays an elastic at the waist that a seam joins.

    The elastic holds the measure; a tape beside it would keep the waist from going over the body.
    """
    if WAIST not in singular_words(seam.name) or seam.place not in WAISTS:
        return False
    return any(
        WAIST in singular_words(other.name)
        and other.place in DRAWN_IN
        and bool(set(seam.cloths()) & set(other.cloths()))
        and any(_elastic(name, garment, knowledge) for name in other.cloths())
        for other in garment.seams
        if other.name != seam.name
    )


def edge_stayed_for_zip(seam: Seam, garment: Garment) -> bool:
    """Whether a place of its own interfaces or tapes the edge that a zip is set into.

    It is called after the zip, or is as long as the zip and lies as often on its cloth.
    """
    if seam.place != ZIP:
        return False
    return any(
        other.place in STIFFENED
        and bool(set(seam.cloths()) & set(other.cloths()))
        and (ZIP in singular_words(other.name) or _as_long(seam, other))
        for other in garment.seams
    )


def _stay_among_its_layers(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether a layer of a zip's place is a cloth that she calls a stay: no second strip is laid.

    So is one of which a piece is called after both, as `zip stay`.
    """
    if seam.place != ZIP:
        return False
    cloths = [n for n in seam.cloths() if knowledge.entries[garment.cloths[n].entry].kind == CLOTH]
    pieces = [p for p in garment.plan.pieces if {ZIP, STAY} <= set(singular_words(p.name))]
    called = {n for n in cloths if STAY in singular_words(n)} | {p.cloth for p in pieces}
    return len(cloths) > 1 and bool(called & set(cloths))


def _felled_to_a_zip(seam: Seam) -> bool:
    """Whether a lining is felled to a zip that another place sets: it carries nothing."""
    belongs = seam.companion
    return seam.place == JOINED and belongs is not None and belongs.what == AT_ZIP


def stretched_on(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether a knit waist has to go over shoulders or hips, for nothing lets the wearer in."""
    if WAIST not in singular_words(seam.name) or seam.place not in WAISTS:
        return False
    flat = (use.cloth for use in seam.uses if use.fullness <= FLAT)
    entries = [knowledge.entries[garment.cloths[name].entry] for name in flat]
    gives = [e for e in entries if e.structure == "knit" and e.traits.get("stretch", (0, 0))[0] > 1]
    return bool(gives) and not any(_opens(other, knowledge) for other in garment.seams)


def _opens(seam: Seam, knowledge: Knowledge) -> bool:
    kind = knowledge.places.kinds.get(seam.place)
    fastens = kind is not None and kind.family == "fastening" and seam.place != TIED
    return fastens or seam.place in OPEN or speaks_of(seam.name, nouns.WAYS_IN)


def _elastic(name: str, garment: Garment, knowledge: Knowledge) -> bool:
    entry = knowledge.entries[garment.cloths[name].entry]
    return entry.kind == "elastic" and entry.id != CAUGHT_IN


def _as_long(seam: Seam, other: Seam) -> bool:
    alike = abs(seam.long_mm - other.long_mm) <= ALIKE * seam.long_mm
    return bool(seam.long_mm) and alike and seam.making.times == other.making.times


def stayed_once(
    garment: Garment, verdicts: dict[Place, dict[str, Verdict]], knowledge: Knowledge
) -> None:
    """Advise no stay where a place of its own or a firm backing stays the line, or it must give."""
    about = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    for seam in garment.seams:
        said = any(aspect == SUPPORT for aspect, _ in seam.choices)
        if (
            (not said and stayed_by_backing(seam, garment, about))
            or taped_elsewhere(seam, garment)
            or ribbon_as_band(seam, garment.plan.pieces, about)
            or drawn_in_elsewhere(seam, garment, knowledge)
            or edge_stayed_for_zip(seam, garment)
            or _stay_among_its_layers(seam, garment, knowledge)
            or _felled_to_a_zip(seam)
            or stretched_on(seam, garment, knowledge)
        ):
            verdicts.get(Place("seam", seam.name), {}).pop(SUPPORT, None)
