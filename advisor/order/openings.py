"""Openings that a lining leaves: where a bagged garment is turned through, and the edge at a zip.

A lining that is sewn all round is turned through a gap. It may be left in the bagged seam itself,
or in a seam of the lining, as she says with `left open`. At a zip it is felled to the tape, unless
a place of its own joins it there.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from advisor.order.easing import ends_below, is_foot
from advisor.order.kinds import crosses
from advisor.order.sidezip import side_left_open
from advisor.project.placing import singular_words
from advisor.project.zipping import runs_into
from advisor.units import show

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from advisor.order.kinds import SeamPlace
    from advisor.project.garment import Garment, GarmentPart
    from advisor.units import System

HIDDEN, PLAIN_ROLE, BELOW = "concealed-zip", "plain", "skirt"
PARTED, FACING, LINING_SEAM = "open-ended-zip", "facing", "lining-seam"
RIB = "neckband"
HAND_WIDE = "an opening a hand wide"
HAND_WIDE_HERE = "; in one of them leave a hand's breadth open in the middle to turn through"
"""How wide the gap is where she says nothing: common practice."""


BAGGED, BAG, UNDERARM, LINING = "bagged-lining", "bagged", "underarm", "lining"


def is_bagged(place: SeamPlace) -> bool:
    """Whether shell and lining are sewn all round there and turned, by its method or its name."""
    named = place.kind.id == LINING_SEAM and bool({"bag", BAG} & set(singular_words(place.name)))
    return BAGGED in (place.method.id, place.seam.method) or named


def turned_through(place: SeamPlace, places: Sequence[SeamPlace]) -> SeamPlace:
    """The place with the opening that a bagged place is turned through.

    Where she says none it is left in the seam of a sleeve lining, in which nobody sees how it is
    closed, and in the bagged seam itself where no sleeve is lined.
    """
    said = [other for other in places if other.seam.making.left_open]
    sleeve = [p for p in places if p.unit == LINING and p.role.id == UNDERARM and p.op == "join"]
    gaps = said or (sleeve if is_bagged(place) else [])
    return place if place in gaps or not gaps else gaps[0]


TURN, CLOSE = ("turn through",), ("close the opening of", "close the gap of")
"""What the stages are called that turn a garment through its gap, and that close the gap."""


def turned_here(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it is turned through the gap of a place, and no method of any place turns there.

    Where several gaps are left it is turned through the first of them, once.
    """
    gaps = (p for p in places if p.seam.making.left_open and not _done_by(TURN, p, places))
    first = next(gaps, None)
    return first is not None and first.name == place.name


def closed_here(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a gap is left in a place, and no method of any place closes it."""
    return place.seam.making.left_open > 0 and not _done_by(CLOSE, place, places)


def _done_by(verbs: tuple[str, ...], place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a stage of its own method, or of a lining that is turned through it, does it."""
    return any(
        any(stage.verb in verbs for stage in other.method.stages)
        and (other.name == place.name or other.kind.id == "lining-seam")
        and turned_through(other, places).name == place.name
        for other in places
    )


def opening_fields(place: SeamPlace, places: Sequence[SeamPlace], units: System) -> dict[str, str]:
    """What a sentence of a bagged seam says of its opening: `leave` one here, `opened` where."""
    opened = turned_through(place, places)
    wide = opened.seam.making.left_open
    gap = f"an opening of {show('length', wide, units)}" if wide else HAND_WIDE
    parted = place.method.id == PARTED and any(_faces(p, place) for p in places)
    between = "to its front edge, the facing sewn on over it next" if parted else BETWEEN
    here = f", and leave {gap} in a straight stretch to turn through" if opened == place else ""
    below = seam_below(place, places) or side_left_open(place, places)
    rib = next((p for p in places if p.kind.id == RIB and ends_below(p.name)), None)
    foot = f", at the foot along the seam of {rib.name}, the rib between the two" if rib else ""
    lined = is_foot(place) and any(p.unit == "lining" and p.kind.id == "seam" for p in places)
    hung = " and the lower edge of the lining, seam on seam" if lined else ""
    called = {"hung": hung, "opened": opened.name, "below": below.name if below else ""}
    called["between"] = between
    return {"leave": here, "foot": foot, **called}


BETWEEN = "between front and facing, or under the folded edge"


def _faces(place: SeamPlace, zip_: SeamPlace) -> bool:
    """Whether a facing of its own is sewn along the edge that a zip is set to."""
    named = {FACING, "front"} <= set(singular_words(place.name)) and place.kind.id == "faced-edge"
    return named and bool(set(place.cloths) & set(zip_.cloths))


def left_open(place: SeamPlace, places: Sequence[SeamPlace], units: System) -> str:
    """What a seam of which a stretch stays open is told; "" where none does."""
    wide = place.seam.making.left_open
    if wide:
        return f"; leave {show('length', wide, units)} of it open to turn through"
    bags = (p for p in places if p.method.id == BAGGED and p.name != place.name)
    through = any(turned_through(p, places).name == place.name for p in bags)
    return HAND_WIDE_HERE if through else ""


def loose_at_zip(
    fastened: SeamPlace, places: Sequence[SeamPlace], parts: Sequence[GarmentPart] = ()
) -> bool:
    """Whether there is a lining, and no place of its own where it is joined to the zip.

    What shell and lining share has to hold the cloth that the zip is set in: the lining yoke of an
    underskirt hangs from another part, and so does the lining of a jacket above a skirt whose
    layers name none.
    """
    seams = [p for p in places if p.kind.id == "lining-seam" and _within(p, fastened, parts)]
    if any("zip" in singular_words(place.name) for place in seams):
        return False
    shell = set(fastened.cloths)
    edges = (place for place in places if place.unit == "both" and shell & set(place.cloths))
    return bool(seams) or any(p.kind.family == "band" or p.kind.id == "faced-edge" for p in edges)


def free_at_zip(fastened: SeamPlace, garment: Garment) -> tuple[str, ...]:
    """What hangs free in the part of a zip, whose opening is finished apart; not what it is in.

    Nor what is set to the facing of a front that a zip parts: there the seam finishes its edge.
    """
    parts = (p for p in garment.parts if p.name == fastened.seam.part and fastened.op == "zip")
    beside = [s for s in garment.seams if s.companion and fastened.name in s.companion.hosts]
    if fastened.method.id == PARTED:
        faced = (s for s in garment.seams if FACING in singular_words(s.name))
        beside += [s for s in faced if s.place == LINING_SEAM]
    held = {*fastened.cloths, *(name for seam in beside for name in seam.cloths())}
    return tuple(name for p in parts for name in p.separate if name not in held)


def _within(place: SeamPlace, fastened: SeamPlace, parts: Sequence[GarmentPart]) -> bool:
    """Whether a place lies in the part of a zip, or that part has all its cloths among its own."""
    own = fastened.seam.part
    layers = next((part.layers for part in parts if part.name == own), ())
    return place.seam.part in ("", own) or not layers or set(place.cloths) <= set(layers)


def seam_below(fastened: SeamPlace, places: Sequence[SeamPlace]) -> SeamPlace | None:
    """The seams of which one runs on below a concealed zip, where no place is that seam alone.

    Who writes the seams of a skirt as one place of several has the one below the zip among them.
    """
    if fastened.role.id != HIDDEN or any(_is_below(p, fastened) for p in places):
        return None
    several = [p for p in places if p.role.id == PLAIN_ROLE and p.seam.making.times > 1]
    found = [p for p in several if p.op == "join" and set(p.cloths) == set(fastened.cloths)]
    lower = [p for p in found if BELOW in singular_words(p.name)]
    return next(iter(lower), None)


def _is_below(place: SeamPlace, fastened: SeamPlace) -> bool:
    """Whether a place is by itself the seam in whose line a zip lies."""
    return place.role.id in ("centre", "side") and bool(set(place.cloths) & set(fastened.cloths))


OPEN_SIDES = frozenset({"zip", "side-zip"})
"""Roles of a zip whose opening is left when its seam is sewn; a concealed one goes in before."""
PAIR = 2
CROTCH, FLY, CENTRE = "crotch", "fly-zip", "centre"


def waits(place: SeamPlace, places: Sequence[SeamPlace]) -> str:
    """What a place of several seams is told where one of them has to wait for a zip."""
    hidden = (p for p in places if p.role.id == HIDDEN)
    over = next((p for p in hidden if seam_below(p, places) == place), None)
    if over is not None:
        return f"; the one below {over.name} waits until that is in"
    if place.role.id == CROTCH and (zips := [p.name for p in places if _runs_down(p)]):
        return f"; above the mark where {zips[0]} is to end it stays open"
    sides = (p for p in places if place.one_waits and side_left_open(p, places) == place)
    beside = next(sides, None)
    if beside is None:
        return ""
    return f"; the one where {beside.name} goes stays open, and is only pinned to try on"


def _runs_down(zip_: SeamPlace) -> bool:
    """Whether a zip lies in the line of a crotch seam; a fly starts that by itself."""
    called = set(singular_words(zip_.name))
    return zip_.op == "zip" and CENTRE in called and zip_.method.id != FLY


def zip_gap(place: SeamPlace, places: Sequence[SeamPlace], units: System) -> str:
    """What the sides are told where a zip lies in one of them, which stays open so far."""
    zips = (p for p in places if p.op == "zip" and p.role.id in OPEN_SIDES)
    over = next((p for p in zips if runs_into(place.seam, p.seam)), None)
    if over is None or place.role.id != "side" or place.seam.making.times < PAIR:
        return ""
    length = float(over.seam.facts.get("length") or 0)
    both = [p for p in places if p.role.id == "side" and runs_into(p.seam, over.seam)]
    if length and len(both) > 1 and any(over.name in zips_over(p, places) for p in places):
        return _shared(place, both, over, length, units)
    far = f" for {show('length', length, units)}" if length else ""
    return f"; one of them stays open{far}, where {over.name} goes"


def _shared(
    place: SeamPlace, both: Sequence[SeamPlace], zip_: SeamPlace, length: float, units: System
) -> str:
    """How much of a zip that runs over a waist lies in this side: half of it, or what there is.

    No side is left open for longer than it is; the other takes the rest.
    """
    lengths = [float(p.seam.facts.get("length") or length) for p in both]
    own = float(place.seam.facts.get("length") or length)
    rest = sum(lengths) - own
    part = min(own, max(length / len(both), length - rest))
    far, whole = (show("length", v, units) for v in (part, length))
    return (
        f"; one of them stays open for {far} from the waist, where {zip_.name} goes, {whole} long"
    )


LACED = "lacing"


def held_shut(places: Sequence[SeamPlace]) -> str:
    """How an opening that is laced at last is held at the fitting, before it has any holes."""
    laced = [p.name for p in places if p.kind.id == LACED]
    if not laced:
        return ""
    strips = "strips of firm cloth with eyelets, basted along both its edges and laced"
    return f"; hold {laced[0]} shut by {strips}"


def zips_over(place: SeamPlace, places: Iterable[SeamPlace]) -> tuple[str, ...]:
    """The zips that are set over the allowances of a waist, in the seam that closes it."""
    if place.role.id != "waist" or place.op != "join":
        return ()
    return tuple(p.name for p in places if p.op == "zip" and crosses(p, place))
