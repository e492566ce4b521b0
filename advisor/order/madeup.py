"""What is made up by itself before a seam sets it: a collar, its stand, the edge of a cuff."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from advisor.claims.glued import STIFFENS
from advisor.construction.stays import taped_elsewhere
from advisor.knowledge import nouns
from advisor.order.hosts import edged_apart
from advisor.order.kinds import SeamPlace
from advisor.order.lapels import turned_back
from advisor.order.roles import of_another_cloth
from advisor.order.seambags import run_round
from advisor.project.companions import BAND_ENDS, OUTER
from advisor.project.placing import singular_words
from advisor.project.stands import COLLAR, SET_BY, SETTING, STAND

if TYPE_CHECKING:
    from advisor.order.facts import Facts

INTERFACING: Final = "interfacing"
CANVAS, UNDER_COLLAR, COLLAR_PADDED = "canvas", "collar-padded-by-hand", "collar-edge-padded"
FACED, CUFF, CUFF_EDGE = "faced-edge", "cuff", "cuff-edge"
ALONE: Final = frozenset({"collar", "stand", CUFF_EDGE})
"""Roles of an edge that is sewn and turned while its piece belongs to nothing yet."""
COLLARS, SETS = frozenset({"collar", "stand"}), frozenset({"collar-attach", "facing"})
BACKED_WITH: Final = {CUFF: frozenset({CUFF_EDGE})}
"""Kinds of place that sew on what another has made, by its role."""
OF_A_BAND: Final = frozenset({BAND_ENDS, OUTER})
"""What a place may be to a waistband whose support is in when that is set."""
BOUND: Final = "bound-edge"
HOLES, PLACKET, BAND = "buttonhole", "placket", "band"


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "under collar padded here": lambda: all(p.method.id != UNDER_COLLAR for p in facts.places),
        "set at lapels": lambda: _tailored(facts.places),
        "set by its own seam": lambda: place.seam.placed_by == SET_BY,
        "backed here": lambda: not _backed_elsewhere(place, facts),
        "tape laid here": lambda: not taped_elsewhere(place.seam, facts.garment),
        "run round with its seam": lambda: bool(run_round(place, facts.places)),
        "not run round with its seam": lambda: not run_round(place, facts.places),
        "buttoned through": lambda: _buttoned_through(place, facts),
        "band cut by itself": lambda: _cut_by_itself(place, facts),
        "collar above it": lambda: any(p.kind.id == COLLAR for p in facts.places),
        "no collar above it": lambda: all(p.kind.id != COLLAR for p in facts.places),
        "sets a stand": lambda: place.seam.placed_by == SETTING,
    }


def _backed_elsewhere(place: SeamPlace, facts: Facts) -> bool:
    """Whether what it sets is made up at another place, with the same support: it is in by then."""
    supports = {n for n in place.notions if facts.entry(n).kind in STIFFENS}
    if padded_in(place, facts) or any(_backs(p, place, supports) for p in facts.places):
        return True
    maker = BACKED_WITH.get(place.kind.id, frozenset()) | (COLLARS if _at_neck(place) else set())
    made = [p for p in facts.places if p.name != place.name and p.role.id in maker]
    belongs = place.seam.companion
    hosts = belongs.hosts if belongs is not None and belongs.what in OF_A_BAND else ()
    if supports and any(supports <= set(p.notions) for p in facts.places if p.name in hosts):
        return True
    sets = [p for p in facts.places if _sets_what_is_bound(p, place)]
    return bool(supports) and any(
        supports <= set(p.notions) and (p in sets or made_up(p, facts.places))
        for p in (*made, *sets)
    )


def _backs(backing: SeamPlace, place: SeamPlace, supports: set[str]) -> bool:
    """Whether a place of its own puts the support of another on, by what it is called after."""
    words = [w for w in singular_words(place.name) if w not in nouns.A_LINE]
    after = set(singular_words(backing.name)) - nouns.OF_BACKING
    named = bool(words) and words[-1] in after and after <= set(words)
    same = supports <= set(backing.notions) and bool(set(backing.cloths) & set(place.cloths))
    return bool(supports) and backing.kind.id == INTERFACING and named and same


def _sets_what_is_bound(seam: SeamPlace, bound: SeamPlace) -> bool:
    """Whether a seam sets the collar that is bound at the other place: that seam backs it."""
    words = set(singular_words(seam.name)) & set(singular_words(bound.name))
    return bound.kind.id == BOUND and seam.kind.id != BOUND and COLLAR in words


def _tailored(places: Sequence[SeamPlace]) -> bool:
    """Whether fronts with a canvas turn back below a collar that is no shawl."""
    canvas = any(p.kind.id == CANVAS for p in places)
    lapels = (p for p in places if turned_back(p, places) and p.role.id == "facing")
    return canvas and any(not set(singular_words(p.name)) >= nouns.SHAWL for p in lapels)


def padded_in(place: SeamPlace, facts: Facts) -> frozenset[str]:
    """The canvas of a place that is padded to its cloth and cut out of the allowances elsewhere."""
    canvas = {n for n in place.notions if facts.entry(n).kind == CANVAS}
    others = (p for p in facts.places if p.kind.id == CANVAS and p.name != place.name)
    if place.kind.id == CANVAS or not canvas:
        return frozenset()
    here = place.method.id == COLLAR_PADDED
    return frozenset(
        n
        for n in canvas
        if here or any(n in p.notions and set(p.cloths) & set(place.cloths) for p in others)
    )


def _at_neck(place: SeamPlace) -> bool:
    """Whether it sews a finished collar to the neck; a stand has a support of its own."""
    words = set(singular_words(place.name))
    made = STAND not in words or place.seam.placed_by == SETTING
    return place.role.id in SETS and bool(words & nouns.COLLARED) and made


def _buttoned_through(place: SeamPlace, facts: Facts) -> bool:
    """Whether buttonholes are worked in a placket of a sleeve, which a narrow strip cannot hold."""
    words = set(singular_words(place.name))
    holes = (p for p in facts.places if p.kind.id == HOLES)
    near = (set(singular_words(p.name)) for p in holes)
    return bool(words & nouns.ON_SLEEVE) and any(PLACKET in there for there in near)


def _cut_by_itself(place: SeamPlace, facts: Facts) -> bool:
    """Whether a band is of another cloth, or a piece of its own is cut for it."""
    entries = [facts.entry(name) for name in place.seam.cloths()]
    words = set(singular_words(place.name))
    pieces = (p for p in facts.garment.plan.pieces if p.cloth in place.cloths)
    named = (set(singular_words(p.name)) for p in pieces)
    own = any(BAND in called and called <= words for called in named)
    return own or of_another_cloth(place.seam, entries)


def ends_made(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether another place sews the outer edge of a cuff and closes its ends with that.

    A waistband may have its ends closed at a place of their own, too.
    """
    if edged_apart(place, places):
        return True
    return place.kind.id == CUFF and any(p.role.id == CUFF_EDGE for p in places)


def made_up(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it is turned and pressed before it is set.

    Beside a lapel the edge of a collar is sewn on in one run with that, when the collar is set.
    """
    alone = place.kind.id == FACED and place.role.id in ALONE
    if alone and place.method.id == COLLAR_PADDED:
        return True
    return alone and not any(turned_back(p, places) for p in places)
