"""What of a garment is its lining, and which seams lie covered between lining and shell.

A file seldom says of a seam that it is `lined`: the lining has places of its own, or is joined to
the shell all round, and that is enough. Where the lining's own seam of the same name is much
shorter (a lined bodice on a skirt that hangs by itself) the longer one is not covered. What was
taken so is told as assumed.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from itertools import pairwise
from typing import Final, Literal

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.knowledge.places import PlaceKind
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.placing import POCKETS, singular_words
from advisor.project.secondbody import second_bodies

Unit = Literal["shell", "lining", "both"]

LINING: Final = "lining"
JOINED: Final = "lining-seam"
"""The kind of place where a lining that was made up by itself is joined to its shell."""
SHEER: Final = 2
"""The level of `sheer` at which allowances show through plainly."""
SHORT: Final = 0.8
"""Below which share of the shell a piece of the lining ends within its part: estimate."""
COVERS: Final = 1.5
"""From how many times its length a seam of the shell runs on below the lining: estimate."""


def of_part(words: tuple[str, ...], unit: Unit) -> tuple[str, ...]:
    """Words of a name without a "lining" that says only of what it is: of a hood, of a sleeve."""
    if LINING in words[1:-1] and words[words.index(LINING) - 1] not in nouns.BEFORE_LINING:
        return tuple(word for word in words if word != LINING)
    return words[1:] if unit == LINING and words[:1] == (LINING,) else words


def unit_of(
    seam: Seam, entries: Mapping[str, Entry], linings: frozenset[str] = frozenset()
) -> Unit:
    """Whether a seam is the shell's, the lining's, or joins the two; by its cloths and name.

    `linings` are the cloths that line this garment, whatever they are called (`lining_by_seams`).
    """
    cloths = [n for n in seam.cloths() if n in entries and entries[n].kind == "cloth"]
    lined = [
        n
        for n in cloths
        if n in linings or entries[n].family == "linings" or LINING in singular_words(n)
    ]
    words = singular_words(seam.name)
    felled = words[:1] == (LINING,) and bool(nouns.FELLED & {*words[1:2]})
    joins = felled and len(lined) < len(cloths)
    own = words[:1] == (LINING,) or (of_part(words, "both") != words and len(set(cloths)) == 1)
    named = own and not joins
    bag = seam.place in POCKETS and not named  # of lining, it hangs in the shell all the same
    if bag and (len(lined) < len(cloths) or "bag" in words):
        return "shell"
    if not named and worn_under(seam):
        return "shell"
    if named or (lined and len(lined) == len(cloths)):
        return "lining"
    return "both" if lined else "shell"


def worn_under(seam: Seam) -> bool:
    """Whether it is of a skirt under another: that is finished by itself and tacked to nothing."""
    return speaks_of(f"{seam.name} {seam.part}", nouns.UNDER_A_SKIRT) and LINING not in (
        singular_words(seam.name)
    )


def lining_by_seams(
    seams: Sequence[Seam], entries: Mapping[str, Entry], kinds: Mapping[str, PlaceKind]
) -> frozenset[str]:
    """The cloths of the seams of the lining that make no seam of the shell by themselves."""
    joins = [(s, unit_of(s, entries)) for s in seams if s.place in kinds]
    joins = [(s, unit) for s, unit in joins if kinds[s.place].family == "seam"]
    cloths = [({n for n in s.cloths() if entries[n].kind == "cloth"}, unit) for s, unit in joins]
    own = {n for names, unit in cloths if unit == "lining" for n in names}
    shell = {n for names, unit in cloths if unit != "lining" and len(names) == 1 for n in names}
    return frozenset(own - shell) | second_bodies(seams, entries)


def with_lined(
    seams: Sequence[Seam], entries: Mapping[str, Entry], kinds: Mapping[str, PlaceKind]
) -> tuple[Seam, ...]:
    """The seams, those that a lining covers marked so where the project is silent."""
    own = [seam for seam in seams if unit_of(seam, entries) == "lining"]
    if not own and not any(seam.place == JOINED for seam in seams):
        return tuple(seams)
    part = any(of_a_part(seam) for seam in own)
    sleeves = bool(own) and all(speaks_of(seam.name, nouns.ON_SLEEVE) for seam in own)
    return tuple(
        _covered(seam)
        if "lined" not in seam.facts
        and kinds[seam.place].finish
        and not _seen_through(seam, entries)
        and _below(seam, own)
        and not (part and _beside_a_part(seam, own))
        and not (sleeves and not speaks_of(seam.name, nouns.SLEEVED_SEAMS))
        else seam
        for seam in seams
    )


def in_their_parts(seams: Sequence[Seam], entries: Mapping[str, Entry]) -> tuple[Seam, ...]:
    """The seams, none taken for covered on a part of the garment that has no seam of the lining.

    Where the lining is called a part by itself nothing tells what it covers; the seam that joins it
    to the shell may be called of either.
    """
    own = {s.name: s.part for s in seams if unit_of(s, entries) == LINING and s.place != JOINED}
    shell = {s.part for s in seams if s.name not in own and s.place != JOINED}
    lined = set(own.values())
    if not lined or "" in lined or not lined <= shell:
        return tuple(seams)
    bare = shell - lined - {""}
    return tuple(_bare(s) if s.part in bare and "lined" in s.assumed else s for s in seams)


def _bare(seam: Seam) -> Seam:
    facts = {name: value for name, value in seam.facts.items() if name != "lined"}
    assumed = tuple(word for word in seam.assumed if word != "lined")
    return replace(seam, facts=facts, assumed=assumed)


def of_a_part(seam: Seam) -> bool:
    """Whether it is of a half lining or a like one, by its name or that of its cloth."""
    return any(map(lines_a_part, (seam.name, *seam.cloths())))


def ends_short(own: Collection[str], garment: Garment) -> bool:
    """Whether a lining of these cloths is cut so much shorter than its shell that it ends above."""
    return short_by(own, garment) > 0


def short_by(own: Collection[str], garment: Garment) -> float:
    """How far above its shell a lining of these cloths ends, mm; 0 where it may reach down to it.

    The skirt of one tells, and so does each of its pieces beside that of the shell of its name.
    """
    high = [p for p in garment.plan.pieces if p.height]
    skirts = [p for p in high if speaks_of(p.name, nouns.SKIRTS)]
    inner = max((p.height for p in skirts if p.cloth in own), default=0.0)
    outer = max((p.height for p in skirts if p.cloth not in own), default=0.0)
    pairs = (
        [(inner, outer)]
        if inner and outer
        else [
            (p.height, other.height)
            for p in high
            if p.cloth in own and LINING in singular_words(p.name)
            for other in high
            if other.cloth not in own and _lies_under(p.name, other.name)
        ]
    )
    ends = [long - short if short < SHORT * long else 0.0 for short, long in pairs]
    return min(ends, default=0.0)


def _lies_under(name: str, other: str) -> bool:
    """Whether a piece is called the lining of another."""
    return [w for w in singular_words(name) if w != LINING] == list(singular_words(other))


def lines_a_part(name: str) -> bool:
    """Whether a name says that a lining ends within its part."""
    pairs = pairwise(singular_words(name))
    return any(first in nouns.PART_LINED and second == LINING for first, second in pairs)


def _beside_a_part(seam: Seam, own: Sequence[Seam]) -> bool:
    """Whether a lining of a part leaves this seam in sight: nothing says that it covers it."""
    words = singular_words(seam.name)
    alike = any((tail := _tail(s)) and words[-len(tail) :] == tail for s in own)
    return not alike and not nouns.UNDER_A_PART & set(words)


def hung_apart(seam: Seam, seams: Sequence[Seam], entries: Mapping[str, Entry]) -> frozenset[str]:
    """The cloths of a hem that are its lining: sewn up elsewhere, and hemmed or felled by itself.

    A cloth that lies nowhere else in the lining is a facing, whatever it is called.
    """
    cloths = [n for n in seam.cloths() if n in entries and entries[n].kind == "cloth"]
    if seam.facts.get("edge") != "hem" or len(cloths) < 2:
        return frozenset()
    rest = [other for other in seams if other.name != seam.name]
    own = [s for s in rest if s.place == JOINED or unit_of(s, entries) == "lining"]
    lining = {n for s in own for n in _linings_in(s, entries)} & set(cloths)
    return frozenset(lining if lining < set(cloths) else ())


def _linings_in(seam: Seam, entries: Mapping[str, Entry]) -> tuple[str, ...]:
    """The cloths of a lining's own seam, or the lining where it is sewn to the shell."""
    cloths = [n for n in seam.cloths() if n in entries and entries[n].kind == "cloth"]
    if unit_of(seam, entries) == "lining":
        return tuple(cloths)
    return tuple(n for n in cloths if entries[n].family == "linings" or LINING in singular_words(n))


def _covered(seam: Seam) -> Seam:
    facts = seam.facts | {"lined": "yes"}
    return replace(seam, facts=facts, assumed=(*seam.assumed, "lined"))


def _seen_through(seam: Seam, entries: Mapping[str, Entry]) -> bool:
    """Whether all of its cloths are sheer: its edges show, whatever lies below."""
    found = (entries[name] for name in seam.cloths() if name in entries)
    cloths = [entry for entry in found if entry.kind == "cloth"]
    return all(entry.traits.get("sheer", (0, 0))[1] >= SHEER for entry in cloths)


def _below(seam: Seam, own: Sequence[Seam]) -> bool:
    """Whether no lining seam of the same name ends long before this one does."""
    words, length = singular_words(seam.name), seam.long_mm
    alike = [s for s in own if (tail := _tail(s)) and words[-len(tail) :] == tail]
    longest = max((s.long_mm for s in alike), default=0.0)
    return not longest or length <= COVERS * longest


def _tail(seam: Seam) -> tuple[str, ...]:
    """The words of a lining seam without "lining"."""
    return tuple(word for word in singular_words(seam.name) if word != LINING)
