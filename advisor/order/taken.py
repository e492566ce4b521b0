"""What the order takes for granted of places and of the fitting, and what it cannot do as said."""

from __future__ import annotations

from advisor.construction.fullness import drawn_up_by
from advisor.order.choosing import refused
from advisor.order.facts import Facts
from advisor.order.fitting import NOT, TO_BODY
from advisor.order.hanging import cut_in_a_circle
from advisor.order.kinds import SeamPlace
from advisor.order.topstitching import rows_asked, rows_suit
from advisor.order.untried import toile_first
from advisor.project.hembands import BAND_BELOW

SKIN = "a toile comes first, for the holes of its seams stay; 'pattern: tried' leaves it out"
HOLED = frozenset({"eyelets-for-a-cord", "grommets-set", "laced-through-grommets", "rivet-set"})
"""Methods of what is placed like a button, and is none."""


def taken(facts: Facts) -> tuple[str, ...]:
    """What nobody says and is assumed, one sentence each."""
    fitting, told = facts.fitting, []
    if fitting.because and any(p.role.closes or p.role.fitted for p in facts.places):
        others = " or ".join(d for d in (TO_BODY, "loosely", NOT) if d != fitting.degree)
        told.append(
            f"Taken as fitted {fitting.degree}, because {fitting.because}; say 'fitting: {others}' "
            "where that is wrong."
        )
    if fitting.degree == TO_BODY and not facts.garment.pattern:
        says = SKIN if toile_first(fitting) else "'pattern: new' puts a toile first"
        told.append(f"Nobody says whether the pattern has been tried: {says}.")
    told += _circles(facts)
    guessed = [p for p in facts.places if p.seam.placed_by and p.kind.family != "seam"]
    guessed += [p for p in facts.places if p.seam.placed_by == BAND_BELOW]
    if guessed:
        listed = ", ".join(f"{p.name} as {_made_as(p)}" for p in guessed)
        told.append(f"What is made is taken from names, notions and edges: {listed}.")
    return tuple(told)


def _made_as(place: SeamPlace) -> str:
    """What is made there; metal holes count as buttons and are called by what they are."""
    return place.method.name if place.method.id in HOLED else place.kind.name


def _circles(facts: Facts) -> list[str]:
    """Hems that are taken to hang on the bias."""
    hems = [p for p in facts.places if p.role.last]
    why = {p.name: cut_in_a_circle(p, facts.places, facts.garment.name) for p in hems}
    return [
        f"{name} is taken for that of a circle or a flare, for {reason}: much of it hangs on the "
        "bias, so it hangs out before it is hemmed; say 'bias: no' there where that is wrong."
        for name, reason in why.items()
        if reason
    ]


def refusals(facts: Facts) -> tuple[str, ...]:
    """What the maker named and cannot have, with the reason."""
    found = []
    for place in facts.places:
        named = facts.knowledge.places.methods.get(place.seam.method)
        if named is not None and (why := refused(place, named, facts)):
            found.append(f"{why} It is made as {place.method.name}.")
        elif (other := _gathers(place) or _tape(place, facts) or _topstitch(place)) != "":
            found.append(other)
    return tuple(found)


def _tape(place: SeamPlace, facts: Facts) -> str:
    """A woven tape in a seam that has to be sealed, where it does another thing."""
    tapes = [name for name in place.notions if facts.entry(name).id == "stay-tape"]
    if not tapes or place.method.fits.get("facts") != ("coated throughout",):
        return ""
    return (
        f"'{place.name}': {tapes[0]} is taken for a woven stay tape, which seals nothing; the seam "
        "is sealed with sealing tape or a sealant. Write 'sealing tape' where that is meant."
    )


def _topstitch(place: SeamPlace) -> str:
    """Rows of topstitching that the place, as it is made, does not get."""
    if not rows_asked(place) or rows_suit(place):
        return ""
    return f"'{place.name}': made as {place.method.name} it has no edge to be topstitched along."


def _gathers(place: SeamPlace) -> str:
    """A way to gather that the project names and that does not reach the fullness."""
    gathers = place.seam.making.gathers
    if gathers is None or not gathers.method or place.seam.method:
        return ""
    over = place.method.fits.get("facts") == ("very full",)
    if not over and drawn_up_by(place.seam) == gathers.method:
        return ""
    full = max(use.fullness for use in place.seam.uses)
    return (
        f"'{place.name}': {gathers.method} does not carry {full:.3g} to 1, so it is "
        f"{place.method.name}; 'method:' names another way."
    )
