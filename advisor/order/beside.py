"""Facts of a place that its neighbours in the garment settle, or what the project says of it.

Whether another place opens the pocket whose bag this is, a flap is sewn in with a zip, a gap is
left to turn the garment through, a strap cinches a back or hangs from a shoulder.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from advisor.claims.collect import Place
from advisor.construction.stack import ply_of
from advisor.order.kinds import SeamPlace
from advisor.order.openings import closed_here, turned_here
from advisor.order.roles import POCKET_ZIP
from advisor.project.placing import POCKETS
from advisor.project.placing import singular_words as _words

if TYPE_CHECKING:
    from advisor.order.facts import Facts

STRIPS = {
    "stay tape": "a stay tape",
    "clear elastic": "clear elastic",
    "self-fabric strip": "a strip of the cloth",
}
"""What is laid along a seam that has to keep its length, by what the sheet advises."""
ENCLOSED = frozenset({"French", "mock French", "felled", "self-bound"})
"""Kinds of seam that shut in their own edges."""
THICK = 1.2
"""From this thickness of a ply on a dart that is folded to one side stands out, mm: estimate."""
SEAMED = frozenset({"side", "seam", "inseam", "yoke", "panel"})
"""Words of a pocket zip that lies in a seam, which is closed above and below it."""
BULKY = 2
"""The level of `bulky` from which a cloth is thick in a seam."""
HELD_ABOVE = frozenset({"shoulder", "armhole", "crotch", "inseam", "waistband", "raglan"})
"""Roles of a garment that does not hang from straps."""


def of_place(fact: str, place: SeamPlace, facts: Facts) -> bool:
    """A fact of a place among the others."""
    answers: dict[str, Callable[[], bool]] = {
        "opening of its own": lambda: bool(_pockets(place, facts, bags=False)),
        "bag apart": lambda: bool(_pockets(place, facts, bags=True)),
        "bag not apart": lambda: not _pockets(place, facts, bags=True),
        "turned through here": lambda: turned_here(place, facts.places),
        "gap closed here": lambda: closed_here(place, facts.places),
        "flap named": lambda: _flap(facts),
        "cinches the body": lambda: any(p.role.id in HELD_ABOVE for p in facts.places),
        "slit of its own": lambda: _slit(place),
        "stay advised": lambda: _stayed(place, facts),
        "thick": lambda: _thick(place, facts),
        "no enclosed seam asked for": lambda: _seam_said(place) not in ENCLOSED,
    }
    return answers[fact]()


def _pockets(place: SeamPlace, facts: Facts, *, bags: bool) -> list[SeamPlace]:
    """The other places where a pocket is set in: its bags, or else its openings."""
    others = (
        p
        for p in facts.places
        if p.name != place.name and (p.kind.id in POCKETS or p.role.id == POCKET_ZIP)
    )
    return [p for p in others if ("bag" in _words(p.name)) == bags]


def _slit(place: SeamPlace) -> bool:
    """Whether a zip of a pocket lies in the middle of a piece, by all that its name says."""
    hidden = any("concealed" in name for name in (place.name, *place.notions))
    return place.role.id == POCKET_ZIP and not hidden and not SEAMED & set(_words(place.name))


def _flap(facts: Facts) -> bool:
    """Whether a flap lies behind or before a zip of the front."""
    return any(p.role.id == "flap" for p in facts.places)


def _stayed(place: SeamPlace, facts: Facts) -> bool:
    """Whether the sheet advises a stay in a seam that holds none among its layers."""
    advised = facts.setups.word(Place("seam", place.name), "seam.support")
    listed = any(facts.entry(name).id in ("stay-tape", "clear-elastic") for name in place.notions)
    taped = any(stage.work == "tape" for stage in place.method.stages)
    return advised in STRIPS and not listed and not taped


def _seam_said(place: SeamPlace) -> str:
    """The kind of seam that the maker asks for; "" where she leaves it open."""
    return str(dict(place.seam.choices).get("seam.kind", ""))


def _thick(place: SeamPlace, facts: Facts) -> bool:
    """Whether one ply of it is so thick that a fold of two shows from the face."""
    bulky = (c for c in place.cloths if facts.least(c, "bulky") >= BULKY)
    plies = [ply_of(facts.garment.cloths[c], facts.knowledge) for c in bulky]
    return any(ply is not None and ply.thickness_mm >= THICK for ply in plies)
