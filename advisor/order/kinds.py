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
from advisor.order.alone import parts_alone
from advisor.order.guessing import guessed_role
from advisor.order.sidezip import with_side_open
from advisor.project.garment import Garment, Seam
from advisor.project.linings import Unit, unit_of
from advisor.project.placing import singular_words

HALVES = frozenset({"front", "back"})
"""Words of a name that say on which half of the garment a seam lies."""
NO_METHOD = Method("", "", (), (), "", {}, (), "", ())
NO_KIND = PlaceKind(
    PLAIN, PLAIN, PLAIN, "", (), (), (), True, True, "none", "", "joined", (), "", ()
)
ZIPS = frozenset({"zip", "concealed-zip", "side-zip"})
OPENS = frozenset({"front", "open", "ended"})
"""Words of a zip that opens the front from end to end."""
LOWER = frozenset({"bottom", "hem", "lower", "welt"})
"""Words of a band that say that it closes the lower edge."""
ALL_ROUND = frozenset({"armhole", "bodice", "top", "waist", "upper"})
"""Words of a facing that say that it runs round the body, over its sides."""
ABOVE = frozenset({"shoulder", "bodice", "armhole", "neck", "neckline", "strap"})
"""Words of a name that say that there is a part above the waist."""
HIPS = frozenset({"waist", "hip"})
UPPER_WORDS = ABOVE | {"bust", "collar", "sleeve", "cuff", "lapel", "princess"}
"""Words of a name that say that there is a bodice, whose darts may run anywhere."""
EDGES = frozenset({"edge", "round"})
"""Words of a trimming that say that it lies round the edges of the garment."""
ROUND_MM = 1000.0
"""A trimming from this length on lies round edges and on no one piece, mm: estimate."""
PIECES = frozenset(
    {"skirt", "sleeve", "bodice", "yoke", "pocket", "panel", "leg", "row", "tier", "chest"}
)
"""Words of a trimming that say on which piece it lies."""
PAIR = 2
JOINING = frozenset({"seam", "dart", "fold"})
"""Families of places between pieces: no seam runs over one in quite another cloth."""
VENTS = frozenset({"vent", "slit"})
AFTER_HEM = frozenset({"edge-trim", "vent-lining"})
"""Roles of what is sewn to finished edges, the hem among them."""
SLEEVE_ENDS = frozenset({"underarm", "cuff", "sleeve-hem"})
"""What lies on a sleeve, which no placket of the body meets."""
UPPER_ROLES = frozenset(
    {
        *("shoulder", "armhole", "underarm", "collar", "collar-attach", "neckband", "cuff"),
        *("sleeve-hem", "bagged-edge"),
    }
)
"""What lies above the waist whatever the garment is."""
BODICE, SKIRT, SLEEVE = "bodice", "skirt", "sleeve"
SKIRTS = frozenset({SKIRT, "underskirt", "overskirt", "petticoat", "tier", "frill", "flounce"})
"""Words of a name that say that it lies below a waist or in what is drawn up."""
BODY, WRIST = HALVES | {BODICE, SKIRT}, frozenset({"wrist", "cuff"})
NECK, ARMHOLE = frozenset({"neck", "neckline"}), frozenset({"armhole", "armscye"})
BAGGED_EDGE, TOP_EDGE, STRAP = "bagged-edge", "top-edge", "strap"
TURNS = frozenset({"shoulder", "raglan", "yoke"})
"""Roles of the seams through which an upper edge is turned. What hangs from straps alone has none:
its edge goes round the body, over closed sides."""
UPPER_EDGE = NECK | ARMHOLE | {"upper", "top"}
CHANNEL = "bone-channel"
MAIN = ("zip", "set-lining", *(work for work in SEWN if work not in ("zip", "set-lining")))
"""The pieces of work that make a place, the most telling first."""
WIDTHS = frozenset({"plain", "tier"})
"""Roles of a seam that may join widths of what is drawn up."""
GATHERED = 1.1
"""The fullness from which an edge is gathered and not only eased: estimate."""


@dataclass(frozen=True, slots=True)
class SeamPlace:
    """A place with what is made there, where it lies, and the method by which it is made.

    `cloths` leaves the notions out; `panels` and `crosses` are None where nobody said them, and
    `alone` is its part where that is sewn to no other, as a petticoat. Of two sides `one_waits`
    says that one stays open for a concealed zip, though a waist runs over the other.
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
    alone: str = ""
    one_waits: bool = False

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
    def binds(self) -> bool:
        """Whether it sews a strip over an edge, at the neck or elsewhere."""
        neck = self.role.id == "neckband" and "binding" in singular_words(self.name)
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
    alone = parts_alone(garment, places)
    places = tuple(replace(p, alone=p.seam.part) if p.seam.part in alone else p for p in places)
    places = with_side_open(places)
    bagged = _bagged(places)
    hung = any(p.role.id == STRAP for p in places) and not any(p.role.id in TURNS for p in places)
    role = knowledge.order.kinds.get(TOP_EDGE if hung else BAGGED_EDGE)
    if hung:
        bagged |= {p.name for p in _turned(places) if UPPER_EDGE & set(singular_words(p.name))}
    return tuple(replace(p, role=role) if role and p.name in bagged else p for p in places)


def _bagged(places: tuple[SeamPlace, ...]) -> frozenset[str]:
    """The armholes, and the neck, where they and another edge are turned to the lining.

    What is sewn round several edges is turned through the shoulders, and that goes only while the
    sides are open; an armhole that is turned alone is turned past its closed seams.
    """
    turned = _turned(places)
    necks, armholes = (
        {p.name for p in turned if words & set(singular_words(p.name))} for words in (NECK, ARMHOLE)
    )
    whole = {p.name for p in places if p.kind.id == "lining-seam" and _all_round(p)}
    joined = (p for p in places if p.unit == "both" and p.kind.id in ("faced-edge", "lining-seam"))
    others = any(p.name not in armholes for p in joined)
    return frozenset(whole | necks | armholes if others and armholes else whole)


def _turned(places: tuple[SeamPlace, ...]) -> list[SeamPlace]:
    """The edges that are turned to the lining."""
    return [p for p in places if p.unit == "both" and p.kind.id == "faced-edge"]


def _all_round(place: SeamPlace) -> bool:
    """Whether one place says that neck and armholes are joined to the lining together."""
    words = set(singular_words(place.name))
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
            return True
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
    if {later.kind.family, earlier.kind.family} <= JOINING and not _share_cloth(later, earlier):
        return False
    return _share_panels(later, earlier)


def _share_cloth(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether two places have a cloth in common; a place of notions alone lies on any."""
    return not one.cloths or not other.cloths or bool(set(one.cloths) & set(other.cloths))


def related(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether two seams lie on the same pieces, as far as anybody can tell."""
    if one.name == other.name or not same_unit(one, other) or not _share_panels(one, other):
        return False
    said = one.panels is not None and other.panels is not None
    return said or bool(set(one.cloths) & set(other.cloths))


def feeds(seam: SeamPlace, gathered: SeamPlace) -> bool:
    """Whether a seam joins the widths of what is drawn up elsewhere: gathers run over its end."""
    if seam.name == gathered.name or not same_unit(seam, gathered):
        return False
    return bool(seam.cloths) and set(seam.cloths) <= set(gathered.full)


def joins_widths(seam: SeamPlace, gathered: SeamPlace) -> bool:
    """Whether it only joins widths of what is drawn up, so that no fitting changes it.

    Where the same cloth lies flat on the other side as well, its name has to say which it joins.
    """
    if seam.role.id not in WIDTHS or seam.said("shape") == "curved" or not feeds(seam, gathered):
        return False
    words = set(singular_words(seam.name))
    flat = {use.cloth for use in gathered.seam.uses if use.fullness <= GATHERED}
    return not UPPER_WORDS & words and (not flat & set(seam.cloths) or bool(SKIRTS & words))


def same_unit(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether both belong to the shell, or both to the lining; a mixed seam belongs to both.

    Named parts that have no cloth in common, as a sheer over a vest, are units of their own.
    """
    if one.alone != other.alone:
        return False
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
    if _at_wrist(one, other) or _at_wrist(other, one):
        return False
    ours, theirs = (HALVES & set(singular_words(place.name)) for place in (one, other))
    return not ours or not theirs or bool(ours & theirs)


def _body_placket(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether one is a placket of front or back, and the other lies on a sleeve."""
    body = one.role.id == "placket" and HALVES & set(singular_words(one.name))
    return bool(body) and other.role.id in SLEEVE_ENDS


def _at_wrist(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether one lies on a sleeve alone, and the other on front, back or skirt."""
    words, body = set(singular_words(one.name)), BODY & set(singular_words(other.name))
    apart = bool(WRIST & words) or (SLEEVE in words and one.role.id in SLEEVE_ENDS)
    return apart and bool(body) and not (BODY & words or SLEEVE in singular_words(other.name))


def _above(place: SeamPlace) -> bool:
    return place.role.id in UPPER_ROLES or BODICE in _where(place)


def _where(place: SeamPlace) -> frozenset[str]:
    """The words of a name and of the part that it belongs to."""
    return frozenset((*singular_words(place.name), *singular_words(place.seam.part)))


def _below(place: SeamPlace) -> bool:
    """Whether it is a seam of the skirt and nothing else; the waist and the zip join both parts."""
    words = _where(place)
    return SKIRT in words and not {BODICE, "waist"} & words and place.role.id not in ZIPS


def _place(seam: Seam, garment: Garment, knowledge: Knowledge) -> SeamPlace:
    entries = {name: knowledge.entries[garment.cloths[name].entry] for name in seam.cloths()}
    cloths = tuple(name for name, entry in entries.items() if entry.kind == "cloth")
    notions = tuple(name for name, entry in entries.items() if entry.kind != "cloth")
    unit = unit_of(seam, entries)
    roles, kinds = knowledge.order.kinds, knowledge.places.kinds
    kind = kinds.get(seam.place or PLAIN, NO_KIND)
    wished = garment.wishes.kinds.get(seam.name, "")
    role = roles.get(wished) or guessed_role(seam, kind.id, unit, list(entries.values()), roles)
    role = roles.get(_narrower(role.id, seam, garment, kind.id)) or role
    role = _as_here(role, garment, unit, seam.name)
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


def _narrower(role: str, seam: Seam, garment: Garment, kind: str) -> str:
    """A role of its own for what a word tells of where it lies; "" where none does.

    The darts of a skirt or of trousers run to the waist and meet no side; a trim that belongs to
    no piece lies round the edges; and a lining is not set at a vent but felled to it.
    """
    words = set(singular_words(seam.name))
    if role == "dart" and (HALVES | HIPS) & words:
        above = any(UPPER_WORDS & set(singular_words(other.name)) for other in garment.seams)
        return "waist-dart" if HIPS & words or not above else ""
    if kind == "ribbon" and seam.name not in garment.wishes.joins and not seam.making.crosses:
        return "edge-trim" if _round_the_edges(seam, words) else ""
    return "vent-lining" if kind == "lining-seam" and VENTS & words else ""


def _round_the_edges(seam: Seam, words: set[str]) -> bool:
    """Whether a trimming is called after edges, or is too long to lie on one piece.

    One that names its piece is sewn to that, and several rows of it lie on the face.
    """
    long = float(seam.facts.get("length", 0.0)) >= ROUND_MM and seam.making.times <= PAIR
    return bool(EDGES & words) or (long and not PIECES & words)


def _as_here(role: SeamKind, garment: Garment, unit: Unit, name: str) -> SeamKind:
    """The role with what it crosses in this garment.

    A zip runs over the waist only where the garment goes on above it; and where a concealed zip
    does, the seam below the zip is closed after both, so the waist does not cross it. An edge
    that is turned to the lining ends beside the zip: it is joined while the pieces lie flat, and
    the lining is felled to the tape afterwards. A band at an armhole runs over its side seam, and
    so does a facing that goes round the body.
    """
    zips, words = _zips(garment), set(singular_words(name))
    if role.id == "facing" and (unit == "both" or _clear_of(zips, words)):
        return replace(role, crosses=tuple(id_ for id_ in role.crosses if id_ not in ZIPS))
    round_the_body = role.id == "neckband" and "armhole" in words
    if round_the_body or (role.id == "facing" and ALL_ROUND & words):
        return replace(role, crosses=(*role.crosses, "side", "underarm"))
    if role.id == "zip" and OPENS & words:
        return replace(role, crosses=(*role.crosses, "neckband"))
    if role.id == "crotch" and not any("side" in singular_words(n) for n in zips):
        return replace(role, crosses=(*role.crosses, "concealed-zip"))
    if role.id == "neckband" and LOWER & words:
        return replace(role, crosses=(*role.crosses, "side", "side-and-sleeve", "centre"))
    bodice = any(ABOVE & set(singular_words(seam.name)) for seam in garment.seams)
    not_here = {"waist"} if role.id in ZIPS and not bodice else set()
    if role.id == "waist" and bodice and zips:
        beside = any("side" in singular_words(n) for n in zips)
        not_here = {"side" if beside else "centre"}
    left = tuple(id_ for id_ in role.crosses if id_ not in not_here)
    return role if left == role.crosses else replace(role, crosses=left)


def _clear_of(zips: list[str], words: set[str]) -> bool:
    """Whether it is the facing of a neck, and every zip lies in a side."""
    neck = bool(NECK & words) and not ALL_ROUND & words
    return neck and bool(zips) and all("side" in singular_words(name) for name in zips)


def _zips(garment: Garment) -> list[str]:
    """The names of the places where a concealed zip lies."""
    return [
        seam.name
        for seam in garment.seams
        if any(garment.cloths[name].entry == "concealed-zip" for name in seam.cloths())
    ]
