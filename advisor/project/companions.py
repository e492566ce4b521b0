"""Places that belong to another: its piping, its lining, the rows on it, the seam of its ring.

A maker writes such a place beside the one that it is made for and calls it after that: `collar
piping` beside `collar edge`. It is no second collar. It belongs where its name is that of another
place, or of the piece there, and a word of what it is to that; where its layers go with it; and
where no `kind:` says what it is. What was taken so is told.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from advisor.knowledge.model import Entry
from advisor.project.garment import Companion, Seam
from advisor.project.headwords import the_words
from advisor.project.ownwords import cloths_among

PIPING: Final = "piping"
ROWS: Final = "topstitching"
LINING: Final = "lining"
RING: Final = "seam"
INNER: Final = "inner edge"
AT_ZIP: Final = "lining"
BOUND: Final = "binding of the edges"
OUTER: Final = "outer edge"
ENDS: Final = "ends"
OF_A_BAND: Final = frozenset({OUTER, ENDS, INNER})
"""What is told of the band alone, though it stands upon its other edges as well."""
CORD, ZIP, POCKET, BAND = "piping-cord", "zip", "patch-pocket", "band"
TOPSTITCHED = frozenset({"topstitching", "topstitch", "edgestitching"})
BELONGING = TOPSTITCHED | {PIPING}
"""Last words of a name that say what it is to another place, and nothing of its own."""
ROUND = frozenset({"round", "around"})
WITHIN = frozenset({"inner", "inside"})
BANDS = frozenset({"waistband", "cuff", "collar", "neckband", "front-band"})
"""Kinds of band that are made up by themselves before they are set."""
EDGE, PAIR = ("edge",), 2
BINDING, BOUND_EDGE = "binding", "bound-edge"
WAISTBAND, FACED, FACING = "waistband", "faced-edge", "facing"
OUTER_EDGES = frozenset({"top", "upper", "outer"})
"""How the edge of a waistband is called that no garment hangs from."""
CLOSED = frozenset({"end", "ends"})
PIECED = (("seam",), ("centre", "back"), ("center", "back"), ("join",))
"""How the seam is called by which a band is pieced, or closed to a ring."""
JOINED: Final = "lining-seam"
SEWN_FLAT = frozenset({"seam", "gathered-edge", "yoke"})
"""Kinds of place that rows of topstitching lie along."""


@dataclass(frozen=True, slots=True)
class Beside:
    """A place as it is asked about: its words, its layers, and all the others."""

    seam: Seam
    words: tuple[str, ...]
    cloths: tuple[str, ...]
    entries: Mapping[str, Entry]
    others: tuple[Seam, ...]

    def called(self, stem: tuple[str, ...]) -> list[Seam]:
        """The other places that a stem is the name of, or the head; the nearest name first."""
        ends: tuple[Callable[[tuple[str, ...]], bool], ...] = (
            lambda words: words == stem,
            lambda words: words == stem + EDGE,
            lambda words: words[-len(stem) :] == stem,
        )
        found = (
            other for fits in ends for other in self.others if stem and fits(the_words(other.name))
        )
        shared = [other for other in found if set(other.cloths()) & set(self.cloths)]
        return list({other.name: other for other in shared}.values())

    def holds(self, what: str) -> bool:
        """Whether a notion lies there, by its id or its kind."""
        found = (self.entries[n] for n in self.seam.cloths() if n in self.entries)
        return any(what in (entry.id, entry.kind) for entry in found)


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
    free = [s for s in seams if (s.name not in own or s.place == BOUND_EDGE) and s.cloths()]
    asked = {s.name: (_bound_edges,) if s.name in own else ASKED for s in free}
    found = {s.name: made for s in free if (made := _belonging(s, seams, entries, asked[s.name]))}
    return tuple(found.get(seam.name, seam) for seam in seams)


def _belonging(
    seam: Seam,
    seams: Sequence[Seam],
    entries: Mapping[str, Entry],
    asked: Sequence[Callable[[Beside], Seam | None]],
) -> Seam | None:
    words = the_words(seam.name)
    others = tuple(other for other in seams if other.name != seam.name)
    place = Beside(seam, words, tuple(cloths_among(seam.cloths(), entries)), entries, others)
    for ask in asked:
        found = ask(place)
        if found is not None:
            return found
    return None


def _as(place: Beside, kind: str, what: str, hosts: Sequence[Seam], *, first: bool) -> Seam:
    names = tuple(host.name for host in hosts)
    assumed = tuple(dict.fromkeys((*place.seam.assumed, "kind")))
    told = names[:1] if what in OF_A_BAND else names
    why = f"its name, as the {what} of {' and '.join(told)}"
    belongs = Companion(names, what, first=first)
    return replace(place.seam, place=kind, placed_by=why, companion=belongs, assumed=assumed)


def _piping(place: Beside) -> Seam | None:
    """A covered cord along the edge of what is faced or turned afterwards."""
    hosts = place.called(place.words[:-1])[:1]
    fits = place.words[-1:] == (PIPING,) and place.holds(CORD)
    return _as(place, PIPING, PIPING, hosts, first=True) if fits and hosts else None


def _rows(place: Beside) -> Seam | None:
    """Rows of stitches along seams that lie in these cloths alone."""
    hosts = place.called(place.words[:-1])
    hosts = [h for h in hosts if h.place in SEWN_FLAT and set(h.cloths()) <= set(place.cloths)]
    fits = bool(TOPSTITCHED & set(place.words[-1:]))
    return _as(place, ROWS, ROWS, hosts, first=False) if fits and hosts else None


def _pocket_lining(place: Beside) -> Seam | None:
    """The lining of a pocket that is turned before the pocket is stitched on."""
    hosts = [host for host in place.called(place.words[:-1])[:1] if host.place == POCKET]
    fits = place.words[-1:] == (LINING,) and len(place.cloths) > 1
    return _as(place, "faced-edge", LINING, hosts, first=True) if fits and hosts else None


def _felled_lining(place: Beside) -> Seam | None:
    """A lining that is felled over a seam which another place sews, or round a slit of another."""
    by_hand = place.seam.facts.get("stitched by") == "hand"
    round_it = place.words[:1] == (LINING,) and bool(ROUND & set(place.words[1:2]))
    hosts = place.called(place.words[2:] if round_it else place.words[:-1])[:1]
    hosts = [host for host in hosts if round_it or host.place in SEWN_FLAT]
    fits = (round_it or (place.words[-1:] == (LINING,) and by_hand)) and len(place.cloths) > 1
    return _as(place, JOINED, LINING, hosts, first=False) if fits and hosts else None


def _ring(place: Beside) -> Seam | None:
    """The seam of one cloth by which the piece of a band is closed or pieced."""
    tail = next((tail for tail in PIECED if place.words[-len(tail) :] == tail), None)
    if tail is None or len(place.cloths) != 1 or len(place.seam.uses) != PAIR:
        return None
    stem = place.words[: -len(tail)]
    hosts = [host for host in place.called(stem)[:1] if host.place in BANDS or stem == (BAND,)]
    return _as(place, "seam", RING, hosts, first=True) if hosts else None


def _inner_edge(place: Beside) -> Seam | None:
    """The inner edge of a band, folded and felled over the seam that sets it."""
    hosts = place.called(place.words[:-2])[:1]
    named = len(place.words) > 2 and place.words[-1:] == EDGE and place.words[-2] in WITHIN
    folded = place.seam.facts.get("edge") in ("folded", None)
    fits = named and folded and len(place.cloths) > 1
    return _as(place, "inner-edge", INNER, hosts, first=False) if fits and hosts else None


def _at_zip(place: Beside) -> Seam | None:
    """A lining that is felled to the tape of a zip which another place sets."""
    notions = set(place.seam.cloths()) - set(place.cloths)
    hosts = [o for o in place.others if o.place == ZIP and notions & set(o.cloths())][:1]
    named = place.words[:2] == (LINING, "to") and ZIP in place.words
    fits = named and place.holds(ZIP)
    return _as(place, JOINED, AT_ZIP, hosts, first=False) if fits and hosts else None


def _outer_edge(place: Beside) -> Seam | None:
    """The edge of a waistband along which its facing is sewn: no second band."""
    named = place.words[-1:] == EDGE and bool(OUTER_EDGES & set(place.words[-2:-1]))
    turned = place.seam.facts.get("edge") in ("turned", None)
    hosts = _bands(place.called(place.words[:-2])) if named and turned else []
    return _as(place, FACED, OUTER, hosts, first=False) if hosts else None


def _ends(place: Beside) -> Seam | None:
    """The short ends of a waistband, closed once its facing is on."""
    hosts = _bands(place.called(place.words[:-1])) if CLOSED & set(place.words[-1:]) else []
    stem = place.words[:-1]
    edges = [o for o in place.others if _is_outer_edge(o, stem)]
    return _as(place, FACED, ENDS, [*hosts, *edges], first=False) if hosts else None


def _facing_felled(place: Beside) -> Seam | None:
    """The free edge of the facing of a waistband, felled by hand over the seam that sets that."""
    by_hand = place.seam.facts.get("stitched by") == "hand"
    stem = place.words[:-1] if place.words[-1:] == (FACING,) else ()
    hosts = _bands(place.called(stem)) if by_hand and len(place.cloths) > 1 else []
    before = [o for o in place.others if _is_outer_edge(o, stem) or _is_end(o, stem)]
    return _as(place, "inner-edge", INNER, [*hosts, *before], first=False) if hosts else None


def _bound_edges(place: Beside) -> Seam | None:
    """The strip over the allowances of a seam, which finishes them in place of any other finish."""
    bound = place.words[-1:] == (BINDING,) and place.seam.place == BOUND_EDGE
    hosts = [h for h in place.called(place.words[:-1])[:1] if h.place in SEWN_FLAT] if bound else []
    strip = [h for h in hosts if set(h.cloths()) < set(place.cloths) and len(set(h.cloths())) > 1]
    return _as(place, BOUND_EDGE, BOUND, strip, first=False) if strip else None


def _bands(found: Sequence[Seam]) -> list[Seam]:
    """The waistband among the places that a name fits, and no edge of it."""
    bands = [o for o in found if o.place == WAISTBAND]
    return [o for o in bands if not CLOSED & set(the_words(o.name)[-1:])][:1]


def _is_outer_edge(other: Seam, stem: tuple[str, ...]) -> bool:
    words = the_words(other.name)
    return words[:-2] == stem and words[-1:] == EDGE and bool(OUTER_EDGES & set(words[-2:-1]))


def _is_end(other: Seam, stem: tuple[str, ...]) -> bool:
    words = the_words(other.name)
    return words[:-1] == stem and bool(CLOSED & set(words[-1:]))


def buys_its_notions(seam: Seam) -> bool:
    """Whether its notions are its own: a lining at a zip is felled to the one that is there."""
    return seam.companion is None or seam.place != JOINED


ASKED: Final = (
    *(_piping, _rows, _pocket_lining, _felled_lining, _ring, _inner_edge, _at_zip),
    *(_outer_edge, _ends, _facing_felled, _bound_edges),
)
"""What a place may be to another, asked in this order."""
