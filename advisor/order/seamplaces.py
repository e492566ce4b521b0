"""Every place of a garment with what it is: its kind, its role, its unit and its cloths."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.construction.needlessgap import without_needless_gaps
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.knowledge.places import PLAIN
from advisor.order import namewords as called
from advisor.order.alone import TROUSERS, legs_alone
from advisor.order.belonging import role_beside
from advisor.order.bodicelining import with_linings_felled
from advisor.order.cartridge import with_bands_first
from advisor.order.flatsleeve import with_sleeves_flat
from advisor.order.kinds import NO_KIND, SeamPlace
from advisor.order.ringseam import with_rings_closed
from advisor.order.roles import role_of
from advisor.order.sidezip import with_side_open
from advisor.order.yokelining import below_the_shoulders
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.linings import lining_by_seams, unit_of
from advisor.project.nolining import lined_by
from advisor.project.placing import singular_words
from advisor.project.unjoined import parts_alone


def seam_places(garment: Garment, knowledge: Knowledge) -> tuple[SeamPlace, ...]:
    """Every seam of a garment with what it is."""
    garment = without_needless_gaps(garment, knowledge)
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    linings = lining_by_seams(garment.seams, entries, knowledge.places.kinds)
    places = tuple(_place(seam, garment, knowledge, linings) for seam in garment.seams)
    alone, legs = parts_alone(garment, knowledge), legs_alone(places)
    places = tuple(
        replace(p, alone=TROUSERS if p.name in legs else p.seam.part)
        if p.name in legs or p.seam.part in alone
        else p
        for p in places
    )
    places = with_sleeves_flat(with_side_open(_among_their_hosts(places, knowledge)))
    places = with_linings_felled(places, knowledge.order.kinds)
    places = with_rings_closed(places, knowledge.order.kinds)
    places = with_bands_first(places, knowledge.order.kinds)
    bagged = _bagged(places)
    hung = any(p.role.id == called.STRAP for p in places) and not any(
        p.role.id in called.TURNS for p in places
    )
    role = knowledge.order.kinds.get(called.TOP_EDGE if hung else called.BAGGED_EDGE)
    if hung:
        bagged |= {p.name for p in _turned(places) if speaks_of(p.name, nouns.UPPER_EDGE)}
    return tuple(replace(p, role=role) if role and p.name in bagged else p for p in places)


def _among_their_hosts(
    places: tuple[SeamPlace, ...], knowledge: Knowledge
) -> tuple[SeamPlace, ...]:
    """The places, those that belong to another with the role that this gives them."""
    roles = {place.name: place.role for place in places}
    own = ((p, p.seam.companion) for p in places)
    found = {
        p.name: role_beside([roles[host] for host in c.hosts], p.kind.id, c, knowledge.order.kinds)
        for p, c in own
        if c is not None and p.role.id not in called.AFTER_HEM
    }
    return tuple(replace(p, role=found.get(p.name, p.role)) for p in places)


def _bagged(places: tuple[SeamPlace, ...]) -> frozenset[str]:
    """The armholes, and the neck, where they and another edge are turned to the lining.

    What is sewn round several edges is turned through the shoulders, and that goes only while the
    sides are open; an armhole that is turned alone is turned past its closed seams.
    """
    turned = _turned(places)
    necks, armholes = (
        {p.name for p in turned if words & set(singular_words(p.name))}
        for words in (nouns.NECKS, {"armhole"})
    )
    joined = [p for p in places if p.unit == "both" and p.kind.id in ("faced-edge", "lining-seam")]
    whole = {p.name for p in joined if _all_round(p)}
    armholes -= {p.name for p in turned if below_the_shoulders(p, places)}
    others = any(p.name not in armholes for p in joined)
    return frozenset(whole | necks | armholes if others and armholes else whole)


def _turned(places: tuple[SeamPlace, ...]) -> list[SeamPlace]:
    """The edges that are turned to the lining."""
    return [p for p in places if p.unit == "both" and p.kind.id == "faced-edge"]


def _all_round(place: SeamPlace) -> bool:
    """Whether one place says that neck and armholes are joined to the lining together."""
    words = set(singular_words(place.name))
    return bool(words & nouns.NECKS and "armhole" in words)


def _place(
    seam: Seam, garment: Garment, knowledge: Knowledge, linings: frozenset[str]
) -> SeamPlace:
    entries = {name: knowledge.entries[garment.cloths[name].entry] for name in seam.cloths()}
    cloths = tuple(name for name, entry in entries.items() if entry.kind == "cloth")
    notions = tuple(name for name, entry in entries.items() if entry.kind != "cloth")
    unit = unit_of(seam, entries, linings)
    unit = "shell" if unit == "both" and not lined_by(seam, entries, garment, linings) else unit
    kind = knowledge.places.kinds.get(seam.place or PLAIN, NO_KIND)
    role = role_of(seam, kind.id, unit, list(entries.values()), garment, knowledge)
    panels = garment.wishes.joins.get(seam.name)
    making = seam.making
    return SeamPlace(
        seam,
        role,
        kind,
        unit,
        cloths,
        notions,
        frozenset(panels) if panels else None,
        frozenset(making.crosses) if making.crosses or making.crosses_said else None,
    )
