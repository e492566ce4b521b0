"""Facts of a place that its neighbours in the garment settle, or what the project says of it.

Whether another place opens the pocket whose bag this is, a flap is sewn in with a zip, a gap is
left to turn the garment through, a strap cinches a back or hangs from a shoulder.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Final

from advisor.claims.collect import Place
from advisor.claims.consistency import ENCLOSING
from advisor.claims.drawn import drawn_by
from advisor.claims.edged import straps_of
from advisor.claims.glued import STIFFENS
from advisor.claims.loaded import holds_by_backing
from advisor.claims.speakers import STAYS
from advisor.construction.bands import bands_of
from advisor.construction.stack import ply_of
from advisor.construction.stays import taped_elsewhere
from advisor.knowledge import nouns
from advisor.order.ascut import BULKY, holed_for_good
from advisor.order.bandrings import closed_round, shut_in
from advisor.order.cuffs import (
    STIFFENER,
    faced_with,
    hung_with,
    in_halves,
    is_made_up,
    is_ring,
    turned_up_outside,
)
from advisor.order.easing import ends_in_zip
from advisor.order.kinds import SeamPlace, crosses
from advisor.order.lapels import may_turn_back, turned_back
from advisor.order.layering import LININGS, lining_cloths, lining_swings
from advisor.order.madeup import ends_made
from advisor.order.namewords import MARKED
from advisor.order.openings import closed_here, free_at_zip, turned_here, zips_over
from advisor.order.otherfacts import Answers, facts_of
from advisor.order.overlocking import OVERLOCKER
from advisor.order.roles import (
    PLEATED_HEM,
    POCKET_FLAP,
    POCKET_ZIP,
    holds_words,
)
from advisor.order.shearing import deep_pile, wadded
from advisor.order.topstitching import no_stage_for
from advisor.order.untried import HOLES_FOR_GOOD, NEEDLE_HOLES, PILE_LINE, canvas_waits
from advisor.project.borders import laid_along
from advisor.project.buttons import buttons_of, for_show, half_for_show, has_own_loop, holes_of
from advisor.project.linings import LINING
from advisor.project.neckhung import carries
from advisor.project.placing import singular_words as _words
from advisor.project.pleated_hem import pleats_run_down, taken_in_to_the_waist

if TYPE_CHECKING:
    from advisor.order.facts import Facts

STRIPS = {
    "stay tape": "a stay tape",
    "clear elastic": "clear elastic",
    "self-fabric strip": "a strip of the cloth",
}
"""What is laid along a seam that has to keep its length, by what the sheet advises."""
RAW = "raw edge"
THICK, PILE = 1.2, "pile"
"""From this thickness of a ply on a dart that is folded to one side stands out, mm: estimate."""
HOOD_CASING, HOOD_EDGE = "hood-casing", "hood-edge"
"""Roles of the channel round the face, and of the edge that it may lie along."""
PATCH: Final = "patch-pocket"
PIPING, CUT_OPEN = "piping-cord", "dart-cut-open"
CHILD = "child"
OPEN_ENDED = "open-ended-zip"
CLOSING = frozenset({"collar", "neckband", "cuff", "faced-edge", "bound-edge"})
"""Kinds of place whose layers take in what is sewn to one of them."""
TRY_ON = "Try it on again, its straps as long as they are wanted"
"""Only on the body is it seen where straps are buttoned."""
CANVAS, OF_A_COLLAR = "canvas", "collar-padded-by-hand"
"""Canvas, and its method in a collar."""
PLEAT, PLEATED_ROUND = "pleat", 4
TO_THE_HEM = 250.0
"""From this length on a pleat is meant to run down to the edge, mm: estimate."""
"""Roles of a garment that does not hang from straps."""


def of_place(place: SeamPlace, facts: Facts) -> Answers:
    """The facts of a place among the others."""
    return {
        "turned through here": lambda: turned_here(place, facts.places),
        "gap closed here": lambda: closed_here(place, facts.places),
        "flap named": lambda: _flap(facts),
        "lining swings free": lambda: (
            lining_swings(place, facts.places)
            and not any(facts.entry(c).structure == "knit" for c in place.cloths)
        ),
        "lining faces the edge": lambda: "facing" not in _words(place.name),
        "lapel": lambda: turned_back(place, facts.places),
        "no lapel": lambda: not may_turn_back(place, facts.places),
        "tape in it": lambda: any(facts.entry(n).kind == "tape" for n in place.notions),
        "slit to be stayed": lambda: _ravels(place, facts),
        "round cuff": lambda: is_ring(place, facts.places),
        "free layer at the zip": lambda: bool(free_at_zip(place, facts.garment)),
        "zip runs over it": lambda: bool(zips_over(place, facts.places)),
        "band in pieces": lambda: any(
            b.pieces > 1 for b in bands_of(place.seam, facts.garment, facts.knowledge)
        ),
        **facts_of(place, facts),
        "band with ends": lambda: (
            not is_ring(place, facts.places)
            and not closed_round(place, facts.places)
            and not ends_in_zip(place, facts.places)
            and not ends_made(place, facts.places)
        ),
        "collar made nowhere": lambda: not is_made_up(place, facts.places),
        "band faced": lambda: bool(faced_with(place, facts.places, facts.garment)),
        "band with a curtain": lambda: hung_with(place, facts.places, facts.garment),
        "band cut in halves": lambda: in_halves(place, facts.garment),
        "turned up outside": lambda: turned_up_outside(place, facts.places),
        "stiffened by a strip": lambda: any(facts.entry(n).id == STIFFENER for n in place.notions),
        "opens end to end": lambda: _end_to_end(place, facts),
        "pocket lined": lambda: place.unit == "both" or _two_sided(place, facts),
        "flap over it": lambda: _flap_over(place, facts),
        "laid piece stays as cut": lambda: all(map(facts.stays_cut, laid_on(place, facts.places))),
        "laid piece frays": lambda: (
            not all(map(facts.stays_cut, laid_on(place, facts.places)))
            and any(facts.least(c, "frays") for c in laid_on(place, facts.places))
        ),
        "no button named": lambda: not buttons_of(place.seam, facts.garment),
        "buttons for show": lambda: for_show(place.seam),
        "loop of its own": lambda: has_own_loop(place.seam),
        "loops for buttons": lambda: _loops(place),
        "cord may be drawn in": lambda: not _cordless(place, facts),
        "cord ruled out": lambda: _cordless(place, facts),
        "worn by a child": lambda: facts.garment.maker.worn_by == CHILD,
        "not worn by a child": lambda: facts.garment.maker.worn_by != CHILD,
        "rows asked for": lambda: no_stage_for(place),
        "canvas behind it": lambda: _canvas_behind(place, facts),
        "canvas under it": lambda: _canvas_under(place, facts),
        "piping in it": lambda: any(facts.entry(n).id == PIPING for n in place.notions),
        "no piping in it": lambda: all(facts.entry(n).id != PIPING for n in place.notions),
        "border along an edge": lambda: laid_along(place.seam, facts.garment.seams),
        "carries the garment": lambda: carries(place.seam, facts.garment.seams),
        "slit of its own": lambda: _slit(place, facts),
        "edge stays as cut": lambda: _left_raw(place, facts),
        "edge of its own": lambda: not _on_turned_edge(place, facts),
        "stay advised": lambda: _stayed(place, facts),
        "pleats above it": lambda: bool(pleats_above(place, facts)),
        "taken in to the waist": lambda: taken_in_to_the_waist(place.seam),
        "hemmed before its pleats": lambda: place.role.id == PLEATED_HEM,
        "deep pile in it": lambda: bool(deep_pile(place, facts, knitted=True)),
        "bald seam": lambda: place.kind.id in ("seam", "yoke") and bool(facts.hard(place)),
        "wadding in it": lambda: bool(wadded(place, facts)),
        "hairs caught in it": lambda: bool(deep_pile(place, facts)),
        "waistband beside": lambda: any(p.kind.id == "waistband" for p in facts.places),
        "opening yields": lambda: _support(place, facts) not in ("", "none"),
        "thick": lambda: _thick(place, facts),
        "load on a backing": lambda: (
            not place.notions
            and all(use.fullness <= 1.0 for use in place.seam.uses)
            and bool(holds_by_backing(place.seam, facts.garment, facts.knowledge))
        ),
        "no enclosed seam asked for": lambda: _seam_said(place) not in ENCLOSING,
    }


def _canvas_behind(place: SeamPlace, facts: Facts) -> bool:
    """Whether a canvas is basted in behind a pocket before that is cut, for the fitting."""
    near = [p for p in facts.places if set(p.cloths) & set(place.lies_on)]
    late = any(p.method.id == CUT_OPEN for p in near)  # such a dart is open before a canvas is in
    late = late or canvas_waits(facts.fitting)
    backed = any(p.kind.id == CANVAS for p in near)
    return backed and not late and facts.fitting.cut_into(place)


def _canvas_under(place: SeamPlace, facts: Facts) -> bool:
    """Whether a canvas is padded to the piece in which a hole is bound: no strip goes through."""
    near = (p for p in facts.places if set(p.cloths) & set(place.lies_on))
    return any(p.kind.id == CANVAS and p.method.id != OF_A_COLLAR for p in near)


def keeps(facts: Facts, place: SeamPlace) -> str:
    """What of a row that is taken out again stays in a cloth: holes, or a line in the pile."""
    if holed_for_good(place, facts):
        return HOLES_FOR_GOOD
    marks = {c: facts.least(c, "pin marks") for c in place.cloths}
    if any(level and facts.least(c, "pile") for c, level in marks.items()):
        return PILE_LINE
    return NEEDLE_HOLES if any(level >= MARKED for level in marks.values()) else ""


def knifed(facts: Facts, place: SeamPlace) -> bool:
    """Whether an overlocker sews it, of which the knife trims the allowance."""
    state = facts.setups.seam_machine(place)
    return state is not None and state.machine == OVERLOCKER


def is_frill(place: SeamPlace) -> bool:
    """Whether something is drawn up for show there, and not a skirt or a sleeve."""
    return place.kind.id == "gathered-edge" and bool(nouns.FRILLED & set(_words(place.name)))


def ends_of(place: SeamPlace) -> frozenset[str]:
    """Whether it lies at the neck or at a wrist, by its kind or its name."""
    words = set(_words(place.name))
    neck = place.kind.id in ("collar", "neckband") or bool((nouns.NECKS | {"collar"}) & words)
    wrist = place.kind.id == "cuff" or bool(nouns.ON_SLEEVE & words)
    return frozenset(end for end, there in (("neck", neck), ("wrist", wrist)) if there)


def taken_in(place: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether it lies between the layers of a band or of what closes a neck or wrist, edges too."""
    if shut_in(place, places := tuple(places)):
        return True
    ends = ends_of(place)
    closing = (p for p in places if p.kind.id in CLOSING and set(p.cloths) & set(place.cloths))
    return is_frill(place) and any(ends & ends_of(p) for p in closing)


def pleats_above(hem: SeamPlace, facts: Facts) -> list[SeamPlace]:
    """The pleats whose folds run down to a hem; those of a waist or a cuff end above it."""
    if hem.kind.id != "hem" or "hem" not in _words(hem.name) or not hem.method.sewn:
        return []
    return [p for p in facts.places if _runs_down(p) and crosses(hem, p)]


def _runs_down(place: SeamPlace) -> bool:
    """Whether a place is a row of pleats whose folds are pressed over their whole length."""
    words, making = set(_words(place.name)), place.seam.making
    many = (
        bool(nouns.FLAT_PLEATS & words)
        or making.pleats is not None
        or making.times >= PLEATED_ROUND
    )
    long = place.seam.long_mm >= TO_THE_HEM
    down = (many and long) or pleats_run_down(place.seam)
    return place.kind.id == PLEAT and PLEAT in words and down


def _slit(place: SeamPlace, facts: Facts) -> bool:
    """Whether a zip lies in the middle of a piece, by all that its name says.

    One of a pocket does, and one that ends part of the way down a front with no seam in it.
    """
    hidden = any("concealed" in name for name in (place.name, *place.notions))
    words = set(_words(place.name))
    front = any(p.role.id == "centre" and "back" not in _words(p.name) for p in facts.places)
    partly = bool(nouns.PARTLY & words) and not front and "back" not in words
    return (place.role.id == POCKET_ZIP or partly) and not hidden and not nouns.SEAMED & words


def _flap(facts: Facts) -> bool:
    """Whether a flap lies behind or before a zip of the front."""
    return any(p.role.id == "flap" for p in facts.places)


def _cordless(place: SeamPlace, facts: Facts) -> bool:
    """Whether the cord of a place is ruled out: it would strangle a child."""
    drawn = facts.setups.judged(Place("seam", place.name)).get("edge.drawn")
    return drawn is not None and bool(drawn.clash)


def cords_out(place: SeamPlace, facts: Facts) -> frozenset[str]:
    """The notions of a place that are ruled out as its cord."""
    drawn, _ = drawn_by(place.seam, facts.garment, facts.knowledge)
    return frozenset({drawn} & set(place.notions) if _cordless(place, facts) else ())


def _two_sided(place: SeamPlace, facts: Facts) -> bool:
    """Whether a pocket holds the cloth that lines the garment, whatever that is called."""
    lining = lining_cloths(facts.places) & set(place.cloths)
    lining |= {name for name in place.cloths if facts.entry(name).family == LININGS}
    return bool(lining) and lining != set(place.cloths)


MIRRORED = "as far beyond the middle of the front"
NO_BUTTONHOLE = " where its buttonhole or loop lies (none is named: make that first)"


def marked(place: SeamPlace, facts: Facts) -> str:
    """How buttons are placed: through their buttonholes, or at marks of their own."""
    holes = gone_through(place, facts)
    if holes:
        looped = all("loop" in _words(f"{p.name} {p.seam.fastening}") for p in holes)
        way = "at the loops" if looped else "through the buttonholes"
        both = half_for_show(place.seam, sum(p.seam.making.times for p in holes))
        way = f"half of {place.name} {way} and half, for show, {MIRRORED}" if both else way
        first = TRY_ON if any(straps_of(p.seam, facts.garment) for p in holes) else "Close the edge"
        return f"{first}, mark {way if both else f'{place.name} {way}'}, and sew them on"
    if _at_vent(place, facts):
        return f"Sew {place.name} on at the marks, through the outer layers alone"
    if "brace" in _words(place.name):
        return f"Mark {place.name} in pairs on the finished band, and sew them on"
    return f"Close the edge, mark {place.name}{NO_BUTTONHOLE}, and sew them on"


def gone_through(place: SeamPlace, facts: Facts) -> list[SeamPlace]:
    """The holes or loops that these buttons go through; a vent of a sleeve has none."""
    holes = holes_of(place.seam, facts.garment)
    found = [p for p in facts.places if p.seam in holes]
    wrists = [p for p in found if nouns.ON_SLEEVE & set(_words(p.name))]
    return wrists if _at_vent(place, facts) else found


def _at_vent(place: SeamPlace, facts: Facts) -> bool:
    """Whether it lies at the end of a sleeve that has a vent, which buttons only adorn."""
    vent = any(p.role.id == "sleeve-vent" for p in facts.places)
    return vent and bool(nouns.ON_SLEEVE & set(_words(place.name)))


def _ravels(place: SeamPlace, facts: Facts) -> bool:
    """Whether a slit is cut into a cloth that frays, with nothing behind it to hold the corners."""
    stiff = any(facts.entry(n).kind in STIFFENS for n in place.notions)
    return not stiff and any(facts.least(c, "frays") for c in place.cloths)


def _end_to_end(place: SeamPlace, facts: Facts) -> bool:
    """Whether a zip comes apart below, by kind or name; one of a pocket or a half never does."""
    apart = any(facts.entry(name).id == OPEN_ENDED for name in place.notions)
    called = any(holds_words(place.name, word) for word in ("front zip", "open-ended"))
    partly = place.role.id == POCKET_ZIP or bool(nouns.PARTLY & set(_words(place.name)))
    return (apart or called) and not partly


def _flap_over(place: SeamPlace, facts: Facts) -> bool:
    """Whether a flap was made up that hangs over a pocket of the shell, by what it is called."""
    flaps = (set(_words(p.name)) for p in facts.places if p.role.id == POCKET_FLAP)
    named = (words - nouns.FLAPPED for words in flaps)
    here = set(_words(place.name))
    patches = any(p.kind.id == PATCH and p.name != place.name for p in facts.places)
    any_pocket = (
        place.kind.id == PATCH or not patches
    )  # what only is called a flap hangs over those
    hangs = any(bool(words & here) if words else any_pocket for words in named)
    return place.unit != "lining" and hangs


def laid_on(place: SeamPlace, places: Iterable[SeamPlace]) -> tuple[str, ...]:
    """The cloths of a piece that is laid on: those that only this place holds; all where none is.

    No order of the layers says it, so that of two cloths that nothing else tells apart either may
    be the piece.
    """
    others = {c for p in places if p.name != place.name and p.unit != LINING for c in p.cloths}
    return tuple(c for c in place.cloths if c not in others) or place.cloths


def _on_turned_edge(place: SeamPlace, facts: Facts) -> bool:
    """Whether a channel lies along an edge that a facing or a lining finishes already."""
    edges = (p for p in facts.places if p.kind.id == "faced-edge" and p.role.id == HOOD_EDGE)
    return place.role.id == HOOD_CASING and any(edges)


def _left_raw(place: SeamPlace, facts: Facts) -> bool:
    """Whether an edge is left as it is cut: its cloth lets it, or the sheet advises it.

    Where a cloth that frays has such an edge it is a border, and this one is cut across it.
    """
    advised = facts.setups.word(Place("seam", place.name), "hem.kind", "")
    alone = len(place.cloths) == 1 and not facts.least(place.cloths[0], "frays")
    raw = advised == RAW and alone
    return raw or (bool(place.cloths) and all(map(facts.stays_cut, place.cloths)))


def _support(place: SeamPlace, facts: Facts) -> str:
    """What the sheet advises to hold the length of a place; "" where any will do."""
    return facts.setups.word(Place("seam", place.name), "seam.support", "")


def _stayed(place: SeamPlace, facts: Facts) -> bool:
    """Whether the sheet advises a stay in a seam that holds none among its layers."""
    advised = _support(place, facts)
    listed = any(facts.entry(name).id in STAYS for name in place.notions)
    taped = any(stage.work == "tape" for stage in place.method.stages)
    taped = taped or taped_elsewhere(place.seam, facts.garment)
    return advised in STRIPS and not listed and not taped


def _seam_said(place: SeamPlace) -> str:
    """The kind of seam that the maker asks for; "" where she leaves it open."""
    return str(dict(place.seam.choices).get("seam.kind", ""))


def _loops(place: SeamPlace) -> bool:
    """Whether what buttons go through are loops, by its name or by the project's own word."""
    return bool(nouns.LOOPS & set(_words(f"{place.name} {place.seam.fastening}")))


def _thick(place: SeamPlace, facts: Facts) -> bool:
    """Whether one ply of it is so thick that a fold of two shows from the face.

    A woven pile gives under the iron, and its cut edges ravel: its darts lie to one side.
    """
    firm = (c for c in place.cloths if facts.entry(c).weave != PILE)
    bulky = (c for c in firm if facts.least(c, "bulky") >= BULKY)
    plies = [ply_of(facts.garment.cloths[c], facts.knowledge) for c in bulky]
    return any(ply is not None and ply.thickness_mm >= THICK for ply in plies)
