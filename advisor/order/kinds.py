"""Where each place lies in the garment: its role, told by its name, and which places it crosses.

What is made there is the place's own kind (`project.placing`); the role says whether it is a
shoulder, a side or an armhole. A name says that better than any fact, so the words of the roles
are looked for in it, in the order of the knowledge; a project may say `kind:` instead, name the
panels that a seam joins, and the places that it crosses, which goes before every table.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from advisor.knowledge.model import Knowledge
from advisor.knowledge.ordering import SEWN, SeamKind
from advisor.knowledge.places import PLAIN, Method, PlaceKind
from advisor.order.roles import HALVES, ZIPS, role_of
from advisor.project.garment import Garment, Seam
from advisor.project.linings import Unit, unit_of
from advisor.project.placing import POCKETS, singular_words

NO_METHOD = Method("", "", (), (), "", {}, (), "", ())
NO_KIND = PlaceKind(
    PLAIN, PLAIN, PLAIN, "", (), (), (), True, True, "none", "", "joined", (), "", ()
)
AFTER_HEM = frozenset({"edge-trim", "vent-lining"})
"""Roles of what is sewn to finished edges, the hem among them."""
SLEEVE_ENDS = frozenset({"underarm", "cuff", "sleeve-hem"})
"""What lies on a sleeve, which no placket of the body meets."""
SLEEVE, SETS_SLEEVES = "sleeve", frozenset({"armhole", "raglan", "side-and-sleeve"})
"""The word of what lies on a sleeve, and the roles of what joins a sleeve to the body."""
BODY = frozenset({"side", "centre", "waist", "waistband", "crotch", "inseam"})
"""Roles of seams of the body that no sleeve has."""
UPPER_ROLES = frozenset(
    {
        *("shoulder", "armhole", "underarm", "collar", "collar-attach", "neckband", "cuff"),
        *("sleeve-hem", "bagged-edge"),
    }
)
"""What lies above the waist whatever the garment is."""
BODICE, SKIRT = "bodice", "skirt"
NECK, ARMHOLE = frozenset({"neck", "neckline"}), frozenset({"armhole", "armscye"})
BAGGED_EDGE = "bagged-edge"
CHANNEL = "bone-channel"
ON_ITS_CLOTH = frozenset({"hem", "casing"})
"""Kinds of edge that are turned in from the cloth itself, which is therefore always told."""
ALL_TOLD = frozenset({"seam", "gathers", "laid on", "dart", "fold"})
"""Families of places whose layers are all the cloths that meet there."""
MAIN = ("zip", "set-lining", *(work for work in SEWN if work not in ("zip", "set-lining")))
"""The pieces of work that make a place, the most telling first."""
GATHERED = 1.1
"""The fullness from which an edge is gathered and not only eased: estimate."""


@dataclass(frozen=True, slots=True)
class SeamPlace:
    """A place with what is made there, where it lies, and the method by which it is made.

    `cloths` leaves the notions out; `panels` and `crosses` are None where nobody said them.
    """

    seam: Seam
    role: SeamKind
    kind: PlaceKind
    unit: Unit
    cloths: tuple[str, ...]
    notions: tuple[str, ...]
    panels: frozenset[str] | None
    crosses: frozenset[str] | None
    method: Method = NO_METHOD

    @property
    def op(self) -> str:
        """The piece of work by which its method makes it."""
        works = {stage.work for stage in self.method.stages}
        return next((work for work in MAIN if work in works), "")

    @property
    def name(self) -> str:
        """The name of the seam."""
        return self.seam.name

    @property
    def lies_on(self) -> tuple[str, ...]:
        """The cloths of the pieces that it lies on: the bag of a pocket is no piece of a seam."""
        return self.cloths[:1] if self.kind.id in POCKETS else self.cloths

    @property
    def binds(self) -> bool:
        """Whether it sews a strip over an edge, at the neck or elsewhere."""
        neck = self.role.id == "neckband" and "binding" in _words(self.name)
        return self.kind.id == "bound-edge" or self.role.id == "binding" or neck

    def said(self, fact: str) -> str:
        """What the project says of a fact of the seam; empty where it does not."""
        return str(self.seam.facts.get(fact, ""))

    @property
    def full(self) -> tuple[str, ...]:
        """The cloths that are gathered or pleated into it."""
        uses = [use.cloth for use in self.seam.uses if use.fullness > GATHERED]
        return tuple(dict.fromkeys(uses))


def seam_places(garment: Garment, knowledge: Knowledge) -> tuple[SeamPlace, ...]:
    """Every seam of a garment with what it is."""
    places = tuple(_place(seam, garment, knowledge) for seam in garment.seams)
    bagged = _bagged(places)
    role = knowledge.order.kinds.get(BAGGED_EDGE)
    return tuple(replace(p, role=role) if role and p.name in bagged else p for p in places)


def _bagged(places: tuple[SeamPlace, ...]) -> frozenset[str]:
    """The armholes, and the neck, where they and another edge are turned to the lining.

    What is sewn round several edges is turned through the shoulders, and that goes only while the
    sides are open; an armhole that is turned alone is turned past its closed seams.
    """
    turned = [p for p in places if p.unit == "both" and p.kind.id == "faced-edge"]
    necks, armholes = (
        {p.name for p in turned if words & set(_words(p.name))} for words in (NECK, ARMHOLE)
    )
    whole = {p.name for p in places if p.kind.id == "lining-seam" and _all_round(p)}
    joined = (p for p in places if p.unit == "both" and p.kind.id in ("faced-edge", "lining-seam"))
    others = any(p.name not in armholes for p in joined)
    return frozenset(whole | necks | armholes if others and armholes else whole)


def _all_round(place: SeamPlace) -> bool:
    """Whether one place says that neck and armholes are joined to the lining together."""
    words = set(_words(place.name))
    return bool(words & NECK and words & ARMHOLE) and place.unit == "both"


def crosses(later: SeamPlace, earlier: SeamPlace) -> bool:
    """Whether one place runs over the end of another: as the project says, else by their roles.

    What is said of one of the two settles it for both: who says that the inseam crosses the
    crotch says as well that the crotch does not cross the inseam.
    """
    if later.name == earlier.name or _ends_at(later, earlier):
        return False
    if _ends_at(earlier, later):
        return True
    if later.crosses is not None and earlier.name in later.crosses:
        return True
    if earlier.crosses and later.name in earlier.crosses:
        return False
    if later.crosses is not None and (earlier.kind.family != "fastening" or not later.crosses):
        return False  # a list of seams for the plies says nothing of a zip
    if same_unit(later, earlier) and _share_panels(later, earlier):
        if later.role.id in earlier.method.crossed_by:
            return not _no_cloth_in_common(later, earlier)
        if earlier.role.id in later.method.crossed_by:
            return False
    return _by_roles(later, earlier)


def _ends_at(channel: SeamPlace, edge: SeamPlace) -> bool:
    """Whether a channel of bones is said to meet an edge: then the edge runs over its end."""
    named = edge.name in (channel.crosses or ())
    return named and channel.role.id == CHANNEL and edge.kind.family in ("edge", "band")


def crosses_by_custom(later: SeamPlace, earlier: SeamPlace) -> bool:
    """Whether one place would run over another by its role, where the maker's list leaves it out.

    A list is written for the plies, so what it leaves out is still usual, and no more than that.
    """
    if later.name == earlier.name or not later.crosses or earlier.name in later.crosses:
        return False
    return not (earlier.crosses and later.name in earlier.crosses) and _by_roles(later, earlier)


def _by_roles(later: SeamPlace, earlier: SeamPlace) -> bool:
    if earlier.role.id not in later.role.crosses or not same_unit(later, earlier):
        return False
    return _share_panels(later, earlier) and not _no_cloth_in_common(later, earlier)


def _no_cloth_in_common(later: SeamPlace, earlier: SeamPlace) -> bool:
    """Whether a seam or a hem holds no cloth of what it would run over, so that it never does.

    A band, an edge or a zip may be told by its own cloth alone, and says nothing of its neighbour.
    """
    if later.panels is not None and earlier.panels is not None:
        return False
    told = later.kind.family in ALL_TOLD or later.kind.id in ON_ITS_CLOTH
    pockets = [p for p in (later, earlier) if p.kind.id in POCKETS]
    if len(pockets) > 1 or any(len(set(p.cloths)) < 2 for p in pockets):
        return False  # a bag and its opening, or a bag told without the cloth that it hangs in
    cloths = bool(later.cloths) and bool(earlier.cloths)
    return told and cloths and not set(later.lies_on) & set(earlier.lies_on)


def related(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether two seams lie on the same pieces, as far as anybody can tell."""
    if one.name == other.name or not same_unit(one, other) or not _share_panels(one, other):
        return False
    said = one.panels is not None and other.panels is not None
    return said or bool(set(one.lies_on) & set(other.lies_on))


def same_unit(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether both belong to the shell, or both to the lining; a mixed seam belongs to both.

    Named parts that have no cloth in common, as a sheer over a vest, are units of their own.
    """
    parts = {one.seam.part, other.seam.part} - {""}
    if len(parts) > 1 and not set(one.cloths) & set(other.cloths):
        return False
    return one.unit == other.unit or "both" in (one.unit, other.unit)


def _share_panels(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether two seams may lie on one piece, by their panels or by front and back in names."""
    if one.panels is not None and other.panels is not None:
        return bool(one.panels & other.panels)
    if (_above(one) and _below(other)) or (_above(other) and _below(one)):
        return False
    if _body_placket(one, other) or _body_placket(other, one):
        return False
    if (_on_sleeve(one) and other.role.id in BODY) or (_on_sleeve(other) and one.role.id in BODY):
        return False
    ours, theirs = (HALVES & set(_words(place.name)) for place in (one, other))
    return not ours or not theirs or bool(ours & theirs)


def _body_placket(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether one is a placket of front or back, and the other lies on a sleeve."""
    body = one.role.id == "placket" and HALVES & set(_words(one.name))
    return bool(body) and other.role.id in SLEEVE_ENDS


def _on_sleeve(place: SeamPlace) -> bool:
    """Whether it lies on a sleeve and meets nothing of the body but through the armhole."""
    named = SLEEVE in _words(place.name) and place.role.id not in SETS_SLEEVES
    return named or place.role.id in SLEEVE_ENDS


def _above(place: SeamPlace) -> bool:
    return place.role.id in UPPER_ROLES or BODICE in _words(place.name)


def _below(place: SeamPlace) -> bool:
    """Whether it is a seam of the skirt and nothing else; the waist and the zip join both parts."""
    words = set(_words(place.name))
    return SKIRT in words and not {BODICE, "waist"} & words and place.role.id not in ZIPS


def _place(seam: Seam, garment: Garment, knowledge: Knowledge) -> SeamPlace:
    entries = {name: knowledge.entries[garment.cloths[name].entry] for name in seam.cloths()}
    cloths = tuple(name for name, entry in entries.items() if entry.kind == "cloth")
    notions = tuple(name for name, entry in entries.items() if entry.kind != "cloth")
    unit = unit_of(seam, entries)
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


_words = singular_words
