"""What is longer or shorter than the edge that it is sewn to: ease, and a band of a knit."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from advisor.claims.collect import Place
from advisor.claims.consistency import DAMP
from advisor.claims.valuesets import Span
from advisor.craft.irondial import steam_possible
from advisor.knowledge import nouns
from advisor.knowledge.model import LIMIT_ASPECT, Entry
from advisor.order.kinds import SeamPlace
from advisor.order.namewords import GATHERED, KEYHOLE, NECK_SLIT
from advisor.order.roles import APRON_HEM, NECKBAND, PLEATED_HEM, POCKET_ZIP
from advisor.order.setups import Setups
from advisor.order.tasks import Task
from advisor.project.garment import Cloth, Garment
from advisor.project.headwords import speaks_of
from advisor.project.hembands import ends_the_body
from advisor.project.placing import singular_words
from advisor.units import System, show

if TYPE_CHECKING:
    from advisor.order.facts import Facts

HAIR = frozenset({"wool", "mohair", "cashmere", "alpaca", "camel", "angora"})
"""Fibres that steam draws together; silk and plants keep the fullness that is put into them."""
ALL, PILE = 100.0, "pile"
EASED = 1.01
"""The fullness from which ease is more than what a seam takes up unseen: estimate."""
BANDS = frozenset({"neckband", "waistband"})


SHRINK_EASE = "shrink the ease of"
FROM_A_STEAMER = ", a steamer held above it: so cool an iron gives no steam"


def eases_away(place: SeamPlace, garment: Garment) -> bool:
    """Whether what is eased in is mostly hair, so that steam shrinks the ease away."""
    eased = [use.cloth for use in place.seam.uses if 1.0 < use.fullness <= GATHERED]
    return bool(eased) and all(mostly_hair(garment.cloths[cloth]) for cloth in eased)


def mostly_hair(cloth: Cloth) -> bool:
    """Whether half of a cloth or more is hair, whatever mix it turns out to be."""
    shares = ([share or ALL for fibre, share in mix if fibre in HAIR] for mix in cloth.mixes)
    return all(sum(each) >= ALL / 2 for each in shares)


def eased_in(place: SeamPlace, garment: Garment) -> str:
    """How a seam takes in a longer edge, where no stage of its method runs a row for that."""
    fullest = max((use.fullness for use in place.seam.uses), default=1.0)
    rows = any(stage.work == "gather" for stage in place.method.stages)
    if rows or place.kind.id != "seam" or not 1.0 < fullest <= GATHERED:
        return ""
    ease = ease_of(place, garment.units)
    return f", the longer edge below, {ease} drawn up on a long row beside the line"


def ease_of(place: SeamPlace, units: System) -> str:
    """How much is eased in: the share, and the length of it where the seam has one."""
    share = max(use.fullness for use in place.seam.uses) - 1
    length = place.seam.facts.get("length")
    told = f"{share * 100:.2g} %"
    return f"{show('length', float(length) * share, units)} of ease ({told})" if length else told


def cap_alone(place: SeamPlace, setups: Setups) -> Place:
    """What is shrunk of an eased seam: the longer edge by itself, out of the seam again."""
    eased = [use.cloth for use in place.seam.uses if 1.0 < use.fullness <= GATHERED]
    whole = not eased or set(eased) == set(place.seam.cloths())
    return Place("seam", place.name) if whole else setups.alone(dict.fromkeys(eased))


def steamed_flat(place: SeamPlace, setups: Setups) -> bool:
    """Whether it gets the moisture that shrinks ease away: where no hot iron, from a steamer."""
    moist = setups.verdict(cap_alone(place, setups), "press.moisture")
    return moist is not None and isinstance(moist.advised, Span) and moist.advised.high >= DAMP


def with_a_steamer(work: str, place: SeamPlace, setups: Setups) -> str:
    """What is told of the steam for its ease where the iron stays too cool to give any."""
    if work != SHRINK_EASE:
        return ""
    heat = setups.verdict(cap_alone(place, setups), LIMIT_ASPECT)
    hot = heat is not None and isinstance(heat.advised, Span) and steam_possible(heat.advised.high)
    return "" if hot else FROM_A_STEAMER


def only_napped(level: int, entry: Entry) -> bool:
    """Whether the short pile of a woven cloth is a nap raised on it, as on melton."""
    return entry.structure == "woven" and entry.weave != PILE and level == 1


def cap_out(task: Task) -> bool:
    """Whether the cap of a sleeve is shrunk by itself, out of the armhole and clear of the rest."""
    return task.operation is not None and task.operation.verb == SHRINK_EASE


def woven_pile(place: SeamPlace, entry: Callable[[str], Entry]) -> bool:
    """Whether its face is a pile that steam under the hand crushes; a raised nap only lies down."""
    return any(entry(cloth).weave == PILE for cloth in place.cloths)


def eased_pile(place: SeamPlace, facts: Facts) -> bool:
    """Whether a woven pile is eased in by machine: its fullness stands, and no steam shrinks it."""
    eased = [use.cloth for use in place.seam.uses if EASED < use.fullness <= GATHERED]
    stands = [c for c in eased if facts.entry(c).structure == "woven" and facts.least(c, "pile")]
    hair = map(mostly_hair, (facts.garment.cloths[cloth] for cloth in stands))
    return bool(stands) and not all(hair) and not place.seam.by_hand


def stretched_band(place: SeamPlace, entry: Callable[[str], Entry]) -> bool:
    """Whether a knit is stretched to the edge, as a rib is: folded, and sewn on as one."""
    knits = (use for use in place.seam.uses if entry(use.cloth).structure == "knit")
    return any(use.stretched > 1.0 for use in knits)


def two_ended(place: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether a band has two ends: on a pocket, or where its edge opens at the front or the leg."""
    words = set(singular_words(place.name))
    if "pocket" in words:
        return True
    if words & nouns.ON_LEG:
        return any(_opens_the_leg(p) for p in places)
    if place.role.id == "cuff" or words & nouns.OF_A_SLEEVE:
        return False
    if place.role.id == NECKBAND and not ends_below(place.name) and any(map(_opens_it, places)):
        return True
    opens = (p for p in places if p.role.id != POCKET_ZIP)
    fronts = (p for p in opens if p.kind.id in ("front-band", "buttonhole", "zip"))
    return any(p.kind.id != "zip" or nouns.OPENS & set(singular_words(p.name)) for p in fronts)


def _opens_it(place: SeamPlace) -> bool:
    """Whether it is a slit down from the neck, and no hole below its band: the band ends there."""
    return place.role.id == NECK_SLIT and KEYHOLE not in singular_words(place.name)


def _opens_the_leg(place: SeamPlace) -> bool:
    """Whether it closes a leg that is left open along its inside, as snaps of a child's suit do."""
    named = set(singular_words(place.name)) & {"inseam", *nouns.ON_LEG}
    return place.kind.family == "fastening" and bool(named)


def ends_in_zip(place: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether the ends of a lower band are taken in by the zip of the front, and so stay open."""
    lower = ends_below(place.name) and place.role.id == NECKBAND
    zips = (p for p in places if p.kind.id == "zip" and speaks_of(p.name, nouns.OPENS))
    return lower and two_ended(place, places) and any(zips)


def ends_below(name: str) -> bool:
    """Whether a band is called after the lower edge or the waist."""
    return speaks_of(name, (nouns.LOWER | {"welt"}) | nouns.LOW_BANDS)


def is_foot(place: SeamPlace) -> bool:
    """Whether a band of two layers is the lower edge of a jacket, and its zip runs over its end."""
    return place.kind.id == "waistband" and place.role.id == NECKBAND


def ends_at(place: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether it ends at a rib of its waist, with no skirt or legs below, or is hemmed already.

    A front edge with a corner that is turned to its lining runs on along the lower edge.
    """
    words = set(singular_words(place.name))
    lined = place.kind.id == "faced-edge" and place.unit == "both" and "front" in words
    if place.role.id in (PLEATED_HEM, APRON_HEM) or (lined and place.said("shape") == "corner"):
        return True
    return place.kind.id in BANDS and ends_the_body(place.seam, [p.seam for p in places])
