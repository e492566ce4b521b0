"""Places that belong to another: its piping, its lining, the rows on it, the seam of its ring.

A maker writes such a place beside the one that it is made for and calls it after that: `collar
piping` beside `collar edge`. It is no second collar. It belongs where its name is that of another
place, or of the piece there, and a word of what it is to that; where its layers go with it; and
where no `kind:` says what it is. What was taken so is told.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.project.attached import guard, slid_in, strap_ends
from advisor.project.garment import Seam
from advisor.project.headwords import the_words
from advisor.project.nextto import EDGE, Beside, belongs_as
from advisor.project.ownwords import cloths_among

PIPING: Final = "piping"
ROWS: Final = "topstitching"
LINING: Final = "lining"
RING: Final = "seam"
INNER: Final = "inner edge"
AT_ZIP: Final = "lining"
BOUND: Final = "binding of the edges"
OUTER: Final = "outer edge"
BAND_ENDS, END = "ends", "end"
CORD, ZIP, POCKET, BAND = "piping-cord", "zip", "patch-pocket", "band"
BELONGING = nouns.TOPSTITCHED | {PIPING}
"""Last words of a name that say what it is to another place, and nothing of its own."""
FACING_HEM = ("facing", "hem")
ROUND = frozenset({"round", "around"})
WITHIN = frozenset({"inner", "inside"})
BANDS = frozenset({"waistband", "cuff", "collar", "neckband", "front-band"})
"""Kinds of band that are made up by themselves before they are set."""
PAIR = 2
BINDING, BOUND_EDGE = "binding", "bound-edge"
WAISTBAND, FACED, FACING = "waistband", "faced-edge", "facing"
WAIST: Final = "waist"
PIECED = (("seam",), ("centre", "back"), ("join",))
"""How the seam is called by which a band is pieced, or closed to a ring."""
SIDES = (("side", "seam"), ("side",))
"""How the seams are called that join the front of a band to its back."""
CHANNEL = "casing"
JOINED: Final = "lining-seam"
SEWN_FLAT = frozenset({"seam", "gathered-edge", "yoke"})
"""Kinds of place that rows of topstitching lie along."""


def with_companions(
    seams: Sequence[Seam], said: Iterable[str], entries: Mapping[str, Entry]
) -> tuple[Seam, ...]:
    """The places, those that belong to another marked so, and made as that calls for.

    Args:
        seams: the places with what each was taken for.
        said: the names of those whose kind the project says.
        entries: what each cloth and notion is.
    """
    own = frozenset(said)
    held = [seam for seam in seams if seam.cloths()]
    found = {s.name: made for s in held if (made := _belonging(s, seams, entries, s.name in own))}
    return tuple(found.get(seam.name, seam) for seam in seams)


def _belonging(
    seam: Seam, seams: Sequence[Seam], entries: Mapping[str, Entry], said: bool
) -> Seam | None:
    """What a place is to others; of those whose kind is said only bones and bindings belong."""
    words = the_words(seam.name)
    others = tuple(other for other in seams if other.name != seam.name)
    place = Beside(seam, words, tuple(cloths_among(seam.cloths(), entries)), entries, others)
    return next((found for ask in (KEPT if said else ASKED) if (found := ask(place))), None)


def _piping(place: Beside) -> Seam | None:
    """A covered cord along the edge of what is faced or turned afterwards."""
    hosts = place.called(place.words[:-1])[:1]
    fits = place.words[-1:] == (PIPING,) and place.holds(CORD)
    return belongs_as(place, PIPING, PIPING, hosts, first=True) if fits and hosts else None


def _rows(place: Beside) -> Seam | None:
    """Rows of stitches along seams that lie in these cloths alone."""
    hosts = place.called(place.words[:-1])
    hosts = [h for h in hosts if h.place in SEWN_FLAT and set(h.cloths()) <= set(place.cloths)]
    fits = bool(nouns.TOPSTITCHED & set(place.words[-1:]))
    return belongs_as(place, ROWS, ROWS, hosts, first=False) if fits and hosts else None


def _pocket_lining(place: Beside) -> Seam | None:
    """The lining of a pocket that is turned before the pocket is stitched on."""
    hosts = [host for host in place.called(place.words[:-1])[:1] if host.place == POCKET]
    fits = place.words[-1:] == (LINING,) and len(place.cloths) > 1
    return belongs_as(place, "faced-edge", LINING, hosts, first=True) if fits and hosts else None


def _felled_lining(place: Beside) -> Seam | None:
    """A lining that is felled over a seam which another place sews, or round a slit of another."""
    if over := _over_a_ring(place):
        return belongs_as(place, JOINED, LINING, over, first=False)
    by_hand = place.seam.facts.get("stitched by") == "hand"
    round_it = place.words[:1] == (LINING,) and bool(ROUND & set(place.words[1:2]))
    hosts = place.called(place.words[2:] if round_it else place.words[:-1])[:1]
    hosts = [host for host in hosts if round_it or host.place in SEWN_FLAT]
    fits = (round_it or (place.words[-1:] == (LINING,) and by_hand)) and len(place.cloths) > 1
    return belongs_as(place, JOINED, LINING, hosts, first=False) if fits and hosts else None


def _over_a_ring(place: Beside) -> list[Seam]:
    """The waist, armhole or yoke that a lining called after it ends at, and is in no row of.

    A lining that goes on below a waist, to a hem of its own or as that of a skirt, hangs there.
    """
    rings = nouns.RINGS & set(place.words)
    if LINING not in place.words or len(place.cloths) < PAIR or nouns.HANGS_ON & set(place.words):
        return []
    rows = [o for o in place.others if o.place in SEWN_FLAT and rings & set(the_words(o.name))]
    shell = [o for o in rows if LINING not in the_words(o.name) and not o.by_hand]
    hosts = [o for o in shell if _but_one(place, o)]
    inner = {c for o in hosts for c in set(place.cloths) - set(o.cloths())}
    hems = [o for o in place.others if "hem" in (o.place, *the_words(o.name))]
    below = WAIST in rings and any(inner & set(o.cloths()) for o in hems)
    return [] if below else hosts[:1]


def _but_one(place: Beside, row: Seam) -> bool:
    """Whether all its cloths but the lining lie in a row: that is sewn, and this lies over it."""
    if len(place.cloths) > PAIR and not nouns.HAND_FELLED & set(place.words):
        return False  # a machine joins the three
    shared = set(place.cloths) & set(row.cloths())
    return bool(shared) and len(set(place.cloths) - shared) == 1


def _ring(place: Beside) -> Seam | None:
    """The seam of one cloth by which the piece of a band is closed or pieced."""
    tail = next((tail for tail in PIECED if place.words[-len(tail) :] == tail), None)
    if tail is None or len(place.cloths) != 1 or _plies(place) != PAIR:
        return None
    stem = place.words[: -len(tail)]
    hosts = [host for host in place.called(stem)[:1] if host.place in BANDS or stem == (BAND,)]
    return belongs_as(place, "seam", RING, hosts, first=True) if hosts else None


def _sides(place: Beside) -> Seam | None:
    """The side seams of a band whose front and back are told as two places, set on as one ring."""
    tail = next((tail for tail in SIDES if place.words[-len(tail) :] == tail), None)
    if tail is None or len(place.cloths) != 1 or _plies(place) != PAIR:
        return None
    stem = set(place.words[: -len(tail)])
    hosts = [
        other
        for other in place.others
        if stem <= set(the_words(other.name))
        and nouns.HALVES & set(the_words(other.name))
        and other.place in BANDS | {CHANNEL}
        and set(other.cloths()) & set(place.cloths)
    ]
    both = len({tuple(nouns.HALVES & set(the_words(h.name))) for h in hosts}) == PAIR
    if not stem & (nouns.BANDS | {"waist"}):
        return None
    if not both:
        hosts = _bands(place.called(place.words[: -len(tail)])) if stem <= nouns.BANDS else []
    return belongs_as(place, "seam", RING, hosts, first=True) if hosts else None


def _plies(place: Beside) -> int:
    """How many layers of cloth lie there; what stiffens one of them is none."""
    return sum(use.cloth in place.cloths for use in place.seam.uses)


def _inner_edge(place: Beside) -> Seam | None:
    """The inner edge of a band, folded and felled over the seam that sets it."""
    hosts = place.called(place.words[:-2])[:1]
    named = len(place.words) > 2 and place.words[-1:] == EDGE and place.words[-2] in WITHIN
    if place.words[-2:] == FACING_HEM:
        named, hosts = True, _faced(place)
    folded = place.seam.facts.get("edge") in ("folded", None)
    fits = named and folded and len(place.cloths) > 1
    return belongs_as(place, "inner-edge", INNER, hosts, first=False) if fits and hosts else None


def _inside(place: Beside) -> Seam | None:
    """The inside of a waistband, called so: its inner edge, and no second band."""
    stem = place.words[:-1] if WITHIN & set(place.words[-1:]) else ()
    hosts = _bands(place.called(stem)) if place.seam.place == WAISTBAND else []
    return belongs_as(place, "inner-edge", INNER, hosts, first=False) if hosts else None


def _said_inner(place: Beside) -> Seam | None:
    """The inner edge of a waistband, by its kind, whatever it is called."""
    hosts = _bands(place.called(place.words[:1])) if place.seam.place == "inner-edge" else []
    return belongs_as(place, "inner-edge", INNER, hosts, first=False) if hosts else None


def _faced(place: Beside) -> list[Seam]:
    """The facing whose free edge is turned under and felled to what it faces."""
    ends = [other for other in place.others if the_words(other.name)[-1:] == FACING_HEM[:1]]
    return [o for o in ends if o.facts.get("edge") == "turned" and place.cloths[0] in o.cloths()]


def _at_zip(place: Beside) -> Seam | None:
    """A lining that is felled to the tape of a zip which another place sets."""
    notions = set(place.seam.cloths()) - set(place.cloths)
    hosts = [o for o in place.others if o.place == ZIP and notions & set(o.cloths())][:1]
    at = place.words.index(ZIP) if ZIP in place.words else 0
    before = place.words[1:at]
    named = place.words[:1] == (LINING,) and bool(nouns.FELLED & {*before})
    fits = named and place.holds(ZIP)
    return belongs_as(place, JOINED, AT_ZIP, hosts, first=False) if fits and hosts else None


def _outer_edge(place: Beside) -> Seam | None:
    """The edge of a waistband along which its facing is sewn: no second band."""
    named = place.words[-1:] == EDGE and bool(nouns.OUTER_EDGES & set(place.words[-2:-1]))
    turned = place.seam.facts.get("edge") in ("turned", None)
    hosts = _bands(place.called(place.words[:-2])) if named and turned else []
    return belongs_as(place, FACED, OUTER, hosts, first=False) if hosts else None


def _ends(place: Beside) -> Seam | None:
    """The short ends of a waistband, closed once its facing is on."""
    hosts = _bands(place.called(place.words[:-1])) if place.words[-1:] == (END,) else []
    stem = place.words[:-1]
    edges = [o for o in place.others if _is_outer_edge(o, stem)]
    return belongs_as(place, FACED, BAND_ENDS, [*hosts, *edges], first=False) if hosts else None


def _facing_felled(place: Beside) -> Seam | None:
    """The free edge of the facing of a waistband, felled by hand over the seam that sets that."""
    by_hand = place.seam.facts.get("stitched by") == "hand"
    stem = place.words[:-1] if place.words[-1:] == (FACING,) else ()
    hosts = _bands(place.called(stem)) if by_hand and len(place.cloths) > 1 else []
    before = [o for o in place.others if _is_outer_edge(o, stem) or _is_end(o, stem)]
    return belongs_as(place, "inner-edge", INNER, [*hosts, *before], first=False) if hosts else None


def _bound_edges(place: Beside) -> Seam | None:
    """The strip over the allowances of a seam, which finishes them in place of any other finish."""
    bound = place.words[-1:] == (BINDING,) and place.seam.place == BOUND_EDGE
    hosts = [h for h in place.called(place.words[:-1])[:1] if h.place in SEWN_FLAT] if bound else []
    strip = [h for h in hosts if set(h.cloths()) < set(place.cloths) and len(set(h.cloths())) > 1]
    return belongs_as(place, BOUND_EDGE, BOUND, strip, first=False) if strip else None


def _bands(found: Sequence[Seam]) -> list[Seam]:
    """The waistband among the places that a name fits, and no edge of it."""
    bands = [o for o in found if o.place == WAISTBAND]
    return [o for o in bands if the_words(o.name)[-1:] != (END,)][:1]


def _is_outer_edge(other: Seam, stem: tuple[str, ...]) -> bool:
    words = the_words(other.name)
    return words[:-2] == stem and words[-1:] == EDGE and bool(nouns.OUTER_EDGES & set(words[-2:-1]))


def _is_end(other: Seam, stem: tuple[str, ...]) -> bool:
    words = the_words(other.name)
    return words[:-1] == stem and words[-1:] == (END,)


def felled_over(seam: Seam) -> tuple[str, ...]:
    """The seams over which a lining is felled by hand: no press is wanted there."""
    belongs = seam.companion
    lined = belongs is not None and belongs.what == LINING and seam.place == JOINED
    return belongs.hosts if belongs is not None and lined else ()


def buys_its_notions(seam: Seam) -> bool:
    """Whether its notions are its own: a lining at a zip is felled to the one that is there."""
    return seam.companion is None or seam.place != JOINED


KEPT: Final = (slid_in, _bound_edges, _said_inner)
"""What a place is to another even where its kind is said."""
ASKED: Final = (
    *(_piping, _rows, _pocket_lining, _felled_lining, _ring, _sides, _inner_edge, _inside, _at_zip),
    *(guard, strap_ends, _outer_edge, _ends, _facing_felled, *KEPT),
)
"""What a place may be to another, the first that fits."""
