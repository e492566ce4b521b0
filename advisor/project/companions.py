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
CORD, ZIP, POCKET, BAND = "piping-cord", "zip", "patch-pocket", "band"
TOPSTITCHED = frozenset({"topstitching", "topstitch", "edgestitching"})
BELONGING = TOPSTITCHED | {PIPING}
"""Last words of a name that say what it is to another place, and nothing of its own."""
FACING_HEM = ("facing", "hem")
ROUND = frozenset({"round", "around"})
WITHIN = frozenset({"inner", "inside"})
BANDS = frozenset({"waistband", "cuff", "collar", "neckband", "front-band"})
"""Kinds of band that are made up by themselves before they are set."""
EDGE, PAIR = ("edge",), 2
PIECED = (("seam",), ("centre", "back"), ("center", "back"), ("join",))
"""How the seam is called by which a band is pieced, or closed to a ring."""
SIDES = (("side", "seam"), ("side",))
"""How the seams are called that join the front of a band to its back."""
HALVES = frozenset({"front", "back"})
CHANNEL, CUT_SO = "casing", frozenset({"waistband", "band", "waist"})
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
    free = [seam for seam in seams if seam.name not in own and seam.cloths()]
    found = {seam.name: made for seam in free if (made := _belonging(seam, seams, entries))}
    return tuple(found.get(seam.name, seam) for seam in seams)


def _belonging(seam: Seam, seams: Sequence[Seam], entries: Mapping[str, Entry]) -> Seam | None:
    words = the_words(seam.name)
    others = tuple(other for other in seams if other.name != seam.name)
    place = Beside(seam, words, tuple(cloths_among(seam.cloths(), entries)), entries, others)
    for ask in ASKED:
        found = ask(place)
        if found is not None:
            return found
    return None


def _as(place: Beside, kind: str, what: str, hosts: Sequence[Seam], *, first: bool) -> Seam:
    names = tuple(host.name for host in hosts)
    assumed = tuple(dict.fromkeys((*place.seam.assumed, "kind")))
    why = f"its name, as the {what} of {' and '.join(names)}"
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


def _sides(place: Beside) -> Seam | None:
    """The side seams of a band whose front and back are told as two places, set on as one ring."""
    tail = next((tail for tail in SIDES if place.words[-len(tail) :] == tail), None)
    if tail is None or len(place.cloths) != 1 or len(place.seam.uses) != PAIR:
        return None
    stem = set(place.words[: -len(tail)])
    hosts = [
        other
        for other in place.others
        if stem <= set(the_words(other.name))
        and HALVES & set(the_words(other.name))
        and other.place in BANDS | {CHANNEL}
        and set(other.cloths()) & set(place.cloths)
    ]
    both = len({tuple(HALVES & set(the_words(h.name))) for h in hosts}) == PAIR
    return _as(place, "seam", RING, hosts, first=True) if stem & CUT_SO and both else None


def _inner_edge(place: Beside) -> Seam | None:
    """The inner edge of a band, folded and felled over the seam that sets it."""
    hosts = place.called(place.words[:-2])[:1]
    named = len(place.words) > 2 and place.words[-1:] == EDGE and place.words[-2] in WITHIN
    if place.words[-2:] == FACING_HEM:
        named, hosts = True, _faced(place)
    folded = place.seam.facts.get("edge") in ("folded", None)
    fits = named and folded and len(place.cloths) > 1
    return _as(place, "inner-edge", INNER, hosts, first=False) if fits and hosts else None


def _faced(place: Beside) -> list[Seam]:
    """The facing whose free edge is turned under and felled to what it faces."""
    ends = [other for other in place.others if the_words(other.name)[-1:] == FACING_HEM[:1]]
    return [o for o in ends if o.facts.get("edge") == "turned" and place.cloths[0] in o.cloths()]


def _at_zip(place: Beside) -> Seam | None:
    """A lining that is felled to the tape of a zip which another place sets."""
    notions = set(place.seam.cloths()) - set(place.cloths)
    hosts = [o for o in place.others if o.place == ZIP and notions & set(o.cloths())][:1]
    named = place.words[:2] == (LINING, "to") and ZIP in place.words
    fits = named and place.holds(ZIP)
    return _as(place, JOINED, AT_ZIP, hosts, first=False) if fits and hosts else None


ASKED: Final = (
    _piping,
    _rows,
    _pocket_lining,
    _felled_lining,
    _ring,
    _sides,
    _inner_edge,
    _at_zip,
)
"""What is asked of a place in turn."""


def buys_its_notions(seam: Seam) -> bool:
    """Whether its notions are its own: a lining at a zip is felled to the one that is there."""
    return seam.companion is None or seam.place != JOINED
