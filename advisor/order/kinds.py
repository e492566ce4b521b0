"""Where each place lies in the garment: its role, told by its name, and which places it crosses.

What is made there is the place's own kind (`project.placing`); the role says whether it is a
shoulder, a side or an armhole. A name says that better than any fact, so the words of the roles
are looked for in it, in the order of the knowledge; a project may say `kind:` instead, name the
panels that a seam joins, and the places that it crosses, which goes before every table.
"""

from __future__ import annotations

from msgspec import Struct

from advisor.knowledge import nouns
from advisor.knowledge.ordering import SEWN, SeamKind
from advisor.knowledge.places import PLAIN, Method, PlaceKind
from advisor.order import namewords as called
from advisor.order.belonging import made_apart
from advisor.order.roles import PART_HEM
from advisor.project.garment import Seam
from advisor.project.headwords import speaks_of
from advisor.project.linings import LINING, Unit
from advisor.project.placing import POCKETS, singular_words
from advisor.project.pleated_hem import taken_in_to_the_waist
from advisor.project.seampockets import opens_in_a_seam
from advisor.project.unjoined import drawn_up
from advisor.project.zipping import in_its_line

NO_METHOD = Method("", "", (), (), "", {}, (), "", ())
NO_KIND = PlaceKind(
    PLAIN, PLAIN, PLAIN, "", (), (), (), True, True, "none", "", "joined", (), "", ()
)
FRILL_HEM = "frill-hem"
UNLISTED = frozenset({"fastening", "laid on"})
"""Families of places that a list of the seams which one crosses leaves out."""
MAIN = ("zip", "set-lining", *(work for work in SEWN if work not in ("zip", "set-lining")))
"""The pieces of work that make a place, the most telling first."""


class SeamPlace(Struct, frozen=True):
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
    def lies_on(self) -> tuple[str, ...]:
        """The cloths of the pieces that it lies on: the bag of a pocket is no piece of a seam."""
        return self.cloths[:1] if self.kind.id in POCKETS else self.cloths

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
        """The cloths that are gathered or pleated into it; the last where none is told to be."""
        return drawn_up(self.seam)


def crosses(later: SeamPlace, earlier: SeamPlace) -> bool:
    """Whether one place runs over the end of another: as the project says, else by their roles.

    What is said of one of the two settles it for both: who says that the inseam crosses the
    crotch says as well that the crotch does not cross the inseam.
    """
    if later.name == earlier.name or _ends_at(later, earlier) or _lies_in(earlier, later):
        return False
    if (
        _ends_at(earlier, later)
        or _lies_in(later, earlier)
        or (later.crosses is not None and earlier.name in later.crosses)
    ):
        return True
    if earlier.crosses and later.name in earlier.crosses:
        return False
    if takes_in_both(later, earlier) or _set_over_a_shoulder(later, earlier):
        return True
    if later.crosses is not None and (earlier.kind.family not in UNLISTED or not later.crosses):
        return False  # a list of seams for the plies says nothing of a zip or of a pocket
    if same_unit(later, earlier) and _share_panels(later, earlier):
        if later.role.id in earlier.method.crossed_by:
            return not _no_cloth_in_common(later, earlier)
        if earlier.role.id in later.method.crossed_by:
            return False
    return _by_roles(later, earlier)


def takes_in_both(band: SeamPlace, seam: SeamPlace) -> bool:
    """Whether all that a seam at the waist joins lies in the waistband, which closes over it."""
    joined = set(seam.cloths)
    at_waist = seam.role.id == "waist" and seam.kind.family in ("seam", "gathers")
    whole = len(joined) > 1 and joined <= set(band.cloths)
    return band.kind.id == "waistband" and at_waist and whole and same_unit(band, seam)


def _set_over_a_shoulder(sleeve: SeamPlace, shoulder: SeamPlace) -> bool:
    """Whether a sleeve is set into an armhole that a shoulder closes above, of whatever cloth."""
    seams = sleeve.kind.family == "seam" == shoulder.kind.family
    roles = (sleeve.role.id, shoulder.role.id) == ("armhole", "shoulder")
    return seams and roles and same_unit(sleeve, shoulder) and _share_panels(sleeve, shoulder)


def _ends_at(channel: SeamPlace, edge: SeamPlace) -> bool:
    """Whether a channel of bones is said to meet an edge: then the edge runs over its end."""
    named = edge.name in (channel.crosses or ())
    return named and channel.role.id == called.CHANNEL and edge.kind.family in ("edge", "band")


def _lies_in(channel: SeamPlace, edge: SeamPlace) -> bool:
    """Whether a channel lies between the plies of a faced edge, called after the same: back bones.

    It is stitched through both when the edge is turned.
    """
    plies = [use for use in channel.seam.uses if use.cloth in channel.cloths]
    halves = nouns.HALVES & set(singular_words(channel.name)) & set(singular_words(edge.name))
    along = channel.role.id == called.CHANNEL and edge.kind.id == "faced-edge"
    shared = set(channel.cloths) & set(edge.cloths)
    return along and len(plies) > 1 and bool(halves and shared) and len(channel.notions) == 1


def crosses_by_custom(later: SeamPlace, earlier: SeamPlace) -> bool:
    """Whether one place would run over another by its role, where the maker's list leaves it out.

    A list is written for the plies, so what it leaves out is still usual, and no more than that.
    """
    if later.name == earlier.name or not later.crosses or earlier.name in later.crosses:
        return False
    if earlier.crosses and later.name in earlier.crosses:
        return False
    return _runs_through(earlier) and _by_roles(later, earlier)


def _runs_through(place: SeamPlace) -> bool:
    """Whether a seam surely ends in what is sewn across its piece: it runs from edge to edge.

    A dart, a thing laid on or let in, or a panel that only ornaments may end anywhere.
    """
    if place.role.id == "panel":
        named = nouns.WHOLE_LENGTH & set(singular_words(place.name))
        return place.said("shape") == "curved" or bool(named)
    return place.role.id not in called.ENDS_ANYWHERE and place.kind.family != "laid on"


def _by_roles(later: SeamPlace, earlier: SeamPlace) -> bool:
    if earlier.role.id not in later.role.crosses or not same_unit(later, earlier):
        return False
    if later.role.id == FRILL_HEM and feeds(later, earlier):
        return False  # the strip is hemmed while it is long and flat, before it is drawn up there
    if later.role.id == PART_HEM and earlier.unit != LINING:
        return (
            False  # its lining is hemmed while it is loose, before a seam of the shell takes it in
        )
    if earlier.role.id == "applied" and not _reaches(later, earlier):
        return False
    if later.kind.id == "stay-tape" and not _runs_through(earlier):
        return False  # what may end anywhere keeps no edge from being stayed
    return _share_panels(later, earlier) and not _no_cloth_in_common(later, earlier)


def _reaches(later: SeamPlace, patch: SeamPlace) -> bool:
    """Whether a seam holds the piece that a patch lies on; at a knee only what runs along it."""
    limb = called.ALONG_LIMBS.keys() & set(singular_words(patch.name))
    leg = later.kind.id == "faced-edge" and "leg" in singular_words(later.name)
    along = leg or any(later.role.id in called.ALONG_LIMBS[word] for word in limb)
    return bool(set(later.cloths) & set(patch.cloths)) and (along or not limb)


def _no_cloth_in_common(later: SeamPlace, earlier: SeamPlace) -> bool:
    """Whether a seam or a hem holds no cloth of what it would run over, so that it never does.

    A band, an edge or a zip may be told by its own cloth alone, and says nothing of its neighbour.
    """
    if later.panels is not None and earlier.panels is not None:
        return False
    if later.role.id == "armhole" and earlier.role.id == called.SIDE:
        return False  # a ring round the arm runs over the side of whatever cloth that is
    told = later.kind.family in called.ALL_TOLD or later.kind.id in called.ON_ITS_CLOTH
    pockets = [p for p in (later, earlier) if p.kind.id in POCKETS]
    if len(pockets) > 1 or any(len(set(p.cloths)) < 2 for p in pockets):
        return False  # a bag and its opening, or a bag told without the cloth that it hangs in
    cloths = bool(later.cloths) and bool(earlier.cloths)
    return told and cloths and not set(later.lies_on) & set(earlier.lies_on)


def related(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether two seams lie on the same pieces, as far as anybody can tell."""
    if one.name == other.name or not same_unit(one, other) or not _share_panels(one, other):
        return False
    if made_apart(one, other) or made_apart(other, one):
        return False
    said = one.panels is not None and other.panels is not None
    return said or bool(set(one.lies_on) & set(other.lies_on))


def below(seam: SeamPlace, zip_: SeamPlace) -> bool:
    """Whether a seam runs on below a zip: on its pieces, or called after its line.

    A zip is often told by the upper cloth alone, and ends in another one that hangs from it. One
    that lies at a side by its name has no middle seam below it.
    """
    if seam.role.id == "centre" and called.SIDE in singular_words(zip_.name):
        return False
    return related(seam, zip_) or (same_unit(seam, zip_) and in_its_line(seam.seam, zip_.seam))


def feeds(seam: SeamPlace, gathered: SeamPlace) -> bool:
    """Whether a seam joins the widths of what is drawn up elsewhere: gathers run over its end.

    No side does of what is drawn up on one half alone, as a back into its yoke, or on a sleeve.
    """
    if seam.name == gathered.name or not same_unit(seam, gathered):
        return False
    halves = nouns.HALVES & set(singular_words(gathered.name))
    if seam.role.id == called.SIDE and (len(halves) == 1 or _on_sleeve_only(gathered, seam)):
        return False
    frill = nouns.FRILLED & set(singular_words(gathered.name))
    strips = {p for p in seam.panels or () if frill & set(singular_words(p))}
    if frill and seam.panels and not strips:
        return False  # it joins named pieces, and none of them is a strip of that
    return bool(seam.cloths) and set(seam.cloths) <= set(gathered.full)


def joins_widths(seam: SeamPlace, gathered: SeamPlace) -> bool:
    """Whether it only joins widths of what is drawn up, so that no fitting changes it.

    Where the same cloth lies flat on the other side as well, its name has to say which it joins.
    Pleats that shape a skirt from hip to waist are fitted, and the seams between them too.
    """
    if (
        seam.role.id not in called.WIDTHS
        or taken_in_to_the_waist(gathered.seam)
        or seam.said("shape") == "curved"
        or not feeds(seam, gathered)
        or (_above(gathered) and _below(seam))
    ):
        return False
    words = set(singular_words(seam.name))
    flat = {use.cloth for use in gathered.seam.uses if use.fullness <= called.GATHERED}
    return not nouns.WITH_A_BODICE & words and (
        not flat & set(seam.cloths) or bool(nouns.SKIRTED & words)
    )


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
    if any(apart(one, other) or apart(other, one) for apart in APART):
        return False
    ours, theirs = _halves(one), _halves(other)
    return not ours or not theirs or bool(ours & theirs)


def _halves(place: SeamPlace) -> frozenset[str]:
    """Whether it lies in front or behind, by its name; a dart at the bust lies in front."""
    words = set(singular_words(place.name))
    bust = place.role.id == "dart" and nouns.BUST & words
    return frozenset({"front"}) if bust else nouns.HALVES & words


def _high_dart(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether one is a dart that ends at the side or the neck, and the other lies below it.

    A pocket in a side seam is reached by the hand, at the hip.
    """
    high = one.role.id == "dart" and nouns.HIGH_DARTS & set(singular_words(one.name))
    low = other.role.id in called.AT_THE_WAIST or opens_in_a_seam(other.seam) or _below(other)
    return bool(high) and low


def _low_dart(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether one is a dart at the waist, pointed at both ends, and the other lies far above it."""
    low = one.role.id in ("dart", "waist-dart") and "waist" in singular_words(one.name)
    return low and speaks_of(other.name, nouns.SHOULDER_LINE)


def _below_an_opening(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether one is the seam below an opening, which ends there and reaches nothing above it."""
    words = set(singular_words(one.name))
    below = "below" in words and bool(nouns.CLOSED_ABOVE & words)
    return below and speaks_of(other.name, nouns.SHOULDER_LINE)


def _body_placket(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether one is a placket of front or back, and the other lies on a sleeve."""
    body = one.role.id == "placket" and nouns.HALVES & set(singular_words(one.name))
    return bool(body) and other.role.id in called.SLEEVE_ENDS


def _at_wrist(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether one lies on a sleeve alone, and the other on front, back or skirt."""
    words = set(singular_words(one.name))
    body = called.BODY & set(singular_words(other.name))
    ends = called.SLEEVE in words and one.role.id in called.SLEEVE_ENDS
    apart = bool(nouns.WRISTS & words) or ends
    return (
        apart
        and bool(body)
        and not (called.BODY & words or called.SLEEVE in singular_words(other.name))
    )


def _on_sleeve_only(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether one lies on a sleeve, which meets the body through the armhole alone."""
    named = called.SLEEVE in singular_words(one.name) and one.role.id not in called.SETS_SLEEVES
    body = other.role.id in called.OF_THE_BODY and called.SLEEVE not in singular_words(other.name)
    return (named or one.role.id in called.SLEEVE_ENDS) and body


def _off_the_sleeve(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether one is called after the sleeve that it lies on, and the other joins other pieces."""
    named = called.SLEEVE in singular_words(one.name) and one.role.id not in called.SETS_SLEEVES
    pieces = [singular_words(panel) for panel in other.panels or ()]
    return named and bool(pieces) and not any(called.SLEEVE in words for words in pieces)


def _above(place: SeamPlace) -> bool:
    high = place.role.id in called.UPPER_ROLES | {called.BUST_GATHERS}
    return high or (called.BODICE in _where(place) and place.role.id != "waist")


def _where(place: SeamPlace) -> frozenset[str]:
    """The words of a name and of the part that it belongs to."""
    return frozenset((*singular_words(place.name), *singular_words(place.seam.part)))


def _below(place: SeamPlace) -> bool:
    """Whether it is a seam of the skirt and nothing else; the waist and the zip join both parts."""
    words = _where(place)
    return (
        bool(nouns.SKIRTS & words)
        and place.role.id != "waist"
        and not {called.BODICE, "waist"} & words
        and place.role.id not in called.ZIPS
    )


APART = (
    _high_dart,
    _below_an_opening,
    _off_the_sleeve,
    _low_dart,
    _body_placket,
    _at_wrist,
    _on_sleeve_only,
)
"""What tells of two places that they lie on different pieces."""
