"""What a garment weighs as it is cut, and what hangs from its shoulders, waist and gathers.

A project says no more than names, so what hangs where is read from them: from a shoulder or strap
the whole garment, from a waist the pieces of its cloths that are named as skirts and legs are,
from a gathered edge the full pieces of the cloth that is gathered in. Where that cannot be told
nothing is said. Formulas in `craft.hanging`.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from msgspec import Struct

from advisor.claims.judgement import Judgement
from advisor.construction.clothlist import Bought
from advisor.construction.cutting import Cut
from advisor.construction.notionlist import notions_to_buy
from advisor.construction.seamwork import SeamWork
from advisor.construction.threadlist import ThreadBought
from advisor.craft import hanging
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.attached import sews_on
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import the_words
from advisor.project.making import Piece
from advisor.project.neckhung import carries, hangs_from_neck

BAND: Final = "waistband"
GATHERED: Final = 1.2
"""A fullness from which a layer hangs in folds and is not eased, to 1 (estimate)."""
SAME: Final = 0.05
"""Two lengths that differ by no more than this share are the same edge (estimate)."""


class Weighed(Struct, frozen=True):
    """What a garment weighs, g: each cloth from lightest to heaviest, notions and thread.

    `unknown` are cloths of which nobody knows the weight; `uncounted` cloths that no piece is cut
    from, and notions that nobody can weigh from what is said.
    """

    cloths: dict[str, tuple[float, float]]
    notions: float
    thread: float
    unknown: tuple[str, ...]
    uncounted: tuple[str, ...]
    pieces: dict[str, float]
    sources: tuple[str, ...] = hanging.SOURCES

    @property
    def whole(self) -> tuple[float, float]:
        """The whole garment, lightest and heaviest."""
        low, high = (sum(ends[i] for ends in self.cloths.values()) for i in (0, 1))
        rest = self.notions + self.thread
        return (low + rest, high + rest)

    @property
    def middle(self) -> float:
        """The middle of what it may weigh."""
        return sum(self.whole) / 2


class Hang(Struct, frozen=True):
    """What one place carries at rest.

    Attributes:
        mass: g, of all its times together.
        newton: what each of its times carries, N.
        per_cm: N/cm along it; None for a strap, whose width is not its length.
        carrier: the cloth that it hangs from.
        as_long: how many m of that cloth would weigh as much; None where nobody knows.
        holds: the very most that the carrying cloth or its seam holds, N/cm; None where unknown.
        heavy: whether it is more than the carrier should be left to bear alone.
        stay: the place of the garment that is there to take the weight; empty where none is.
    """

    mass: float
    newton: float
    per_cm: float | None
    carrier: str
    as_long: float | None
    holds: float | None
    heavy: bool
    stay: str = ""


def weigh(
    judgement: Judgement,
    bought: Iterable[Bought],
    threads: Iterable[ThreadBought],
    knowledge: Knowledge,
) -> Weighed | None:
    """The weight of a garment; None where no piece of it is said."""
    garment = judgement.garment
    cuts = [cut for row in bought for cut in row.cuts]
    if not cuts:
        return None
    cloths: dict[str, tuple[float, float]] = {}
    pieces: dict[str, float] = {}
    unknown = dict[str, None]()
    for cut in cuts:
        about = garment.cloths[cut.piece.cloth]
        if about.weight is None:
            unknown[about.name] = None
            continue
        low, high = (hanging.cloth_mass(area_of(cut), weight) for weight in about.weight)
        before = cloths.get(about.name, (0.0, 0.0))
        cloths[about.name] = (before[0] + low, before[1] + high)
        pieces[cut.piece.name] = pieces.get(cut.piece.name, 0.0) + (low + high) / 2
    used = {cut.piece.cloth for cut in cuts}
    rest = [n for n, c in garment.cloths.items() if n not in used and _is_cut(c.entry, knowledge)]
    notions, unweighed = _notions(garment, knowledge, used)
    thread = sum(hanging.thread_mass(row.total, row.tex) for row in threads if row.tex)
    return Weighed(cloths, notions, thread, tuple(unknown), (*rest, *unweighed), pieces)


def _is_cut(entry: str, knowledge: Knowledge) -> bool:
    return knowledge.entries[entry].kind == "cloth"


def area_of(cut: Cut) -> float:
    """The area of all pieces of a kind as they are cut, mm²; a ring is a ring, not its square."""
    if cut.ring is not None:
        ring = cut.ring
        return cut.number * hanging.ring_area(ring.cut_inner, ring.cut_outer, ring.turn)
    wide = cut.width
    if cut.piece.narrow is not None and cut.piece.width > 0:
        wide *= (1 + cut.piece.narrow / cut.piece.width) / 2
    return cut.number * wide * cut.height


def _notions(garment: Garment, knowledge: Knowledge, used: set[str]) -> tuple[float, list[str]]:
    """What the notions weigh, g, and those that cannot be weighed."""
    mass, lost = 0.0, []
    for row in notions_to_buy(garment, knowledge):
        entry = garment.cloths[row.name].entry
        if row.name in used:
            continue
        metres = sum(c.number * c.each for c in row.cut if c.each is not None) / 1000
        if entry in hanging.PIECE_G and row.number is not None:
            mass += hanging.PIECE_G[entry] * row.number
        elif entry in hanging.METRE_G and metres and None not in [c.each for c in row.cut]:
            mass += hanging.METRE_G[entry] * metres
        else:
            lost.append(row.name)
    return mass, lost


def hangs(
    works: Iterable[SeamWork], weighed: Weighed, garment: Garment, apart: Iterable[str] = ()
) -> dict[str, Hang]:
    """What each carrying place of a garment carries, by its name.

    No shoulder carries the pieces of the parts that are worn `apart`, as a skirt below a top.
    """
    named = set[str]().union(*map(_words, apart))
    below = sum(
        mass for name, mass in weighed.pieces.items() if _words(name) & named & nouns.HANGS_BELOW
    )
    found = {}
    every = list(works)
    cloak = hangs_from_neck(garment.seams)
    shoulders = [w for w in every if _on_shoulder(w.seam) and not cloak]
    number = sum(w.seam.making.times for w in shoulders)
    complete = not weighed.unknown and not weighed.uncounted
    for work in every:
        seam = work.seam
        if work in shoulders:
            # Each shoulder or strap takes its part of the whole, as far as that is known.
            share = (weighed.middle - below) * seam.making.times / number
            if complete or weighed.cloths:
                found[seam.name] = _hang(work, share, garment, seam.uses[0].cloth)
        elif cloak and carries(seam, garment.seams) and (complete or weighed.cloths):
            found[seam.name] = _hang(work, weighed.middle, garment, seam.uses[0].cloth)
        elif hung := _below(seam, garment):
            mass = sum(weighed.pieces.get(name, 0.0) for name in hung)
            if mass > 0:
                found[seam.name] = _hang(work, mass, garment, _carrier(seam, hung, garment))
    return found


def _on_shoulder(seam: Seam) -> bool:
    """Whether it lies on a shoulder; where a strap is sewn on, that strap is told by itself."""
    return _is(seam, nouns.ON_SHOULDERS) and not sews_on(seam)


def _carrier(seam: Seam, hung: set[str], garment: Garment) -> str:
    """The cloth that pieces hang from at a place: not their own, unless that is above them too."""
    below = {piece.cloth for piece in garment.plan.pieces if piece.name in hung}
    cloths = [use.cloth for use in seam.uses]
    above = [name for name in cloths if name not in below and garment.cloths[name].weight]
    twice = [name for name in cloths if cloths.count(name) > 1]
    if seam.place == BAND and twice:  # what hangs inside it, as a curtain, carries nothing
        return twice[0]
    return [*above, *twice, *cloths][0]


def _words(name: str) -> set[str]:
    return {*the_words(name)}


def _is(seam: Seam, words: frozenset[str]) -> bool:
    said = _words(seam.name)
    return bool(said & words) and not said & (nouns.CARRIES_NOTHING | nouns.NO_SEAM)


def _below(seam: Seam, garment: Garment) -> set[str]:
    """The pieces that hang from a waist or a gathered edge; none where that is not told."""
    if seam.place == BAND and _nothing_above(garment):
        return {p.name for p in garment.plan.pieces if not _words(p.name) & nouns.OF_A_BAND}
    full = {use.cloth for use in seam.uses[1:] if use.fullness >= GATHERED}
    hung = {p.name for p in garment.plan.pieces if p.cloth in full and _fits(p.name, seam, garment)}
    joins = seam.companion is None and not _words(seam.name) & nouns.NO_SEAM
    if _words(seam.name) & nouns.WAISTS and joins:
        lined = "lining" in _words(seam.name)
        cloths = _hung_cloths(seam, garment)
        hung |= {
            p.name
            for p in garment.plan.pieces
            if p.cloth in cloths
            and (_words(p.name) & nouns.HANGS_BELOW or _drawn_up_to(p, seam))
            and (lined or p.cloth in seam.cloths() or "lining" not in _words(p.name))
        }
    return hung


def _nothing_above(garment: Garment) -> bool:
    """Whether all of a garment hangs from its waistband, as a skirt or trousers do."""
    names = [seam.name for seam in garment.seams]
    names += [piece.name for piece in garment.plan.pieces]
    names += [part.name for part in garment.parts]
    return not any(_words(name) & (nouns.ABOVE | nouns.HELD_UP | nouns.TOPS) for name in names)


def _drawn_up_to(piece: Piece, seam: Seam) -> bool:
    """Whether a piece, whatever it is called, is gathered to the length of a waist."""
    length, wide = seam.long_mm, piece.width * (piece.number or 1)
    return piece.fullness >= GATHERED and bool(length) and abs(wide - length) <= SAME * length


def _hung_cloths(seam: Seam, garment: Garment) -> set[str]:
    """The cloths of a place, and what is gathered on to these in turn, as rows on to a basque."""
    cloths = set(seam.cloths())
    rings = {piece.cloth for piece in garment.plan.pieces if piece.flounce is not None}
    for _ in garment.seams:
        cloths |= {
            use.cloth
            for other in garment.seams
            if other.uses[0].cloth in cloths
            for use in other.uses[1:]
            if use.fullness >= GATHERED or use.cloth in rings
        }
    return cloths


def _fits(name: str, seam: Seam, garment: Garment) -> bool:
    """Whether a full piece belongs to this gathered edge: by its length, its name, or alone."""
    pieces = [p for p in garment.plan.pieces if p.name == name]
    full = [
        p for p in garment.plan.pieces if p.cloth == pieces[0].cloth and _is_full(p.name, garment)
    ]
    if not _is_full(name, garment):
        return False
    named = [p for p in full if _words(p.name) & _words(seam.name) & nouns.HANGS_BELOW]
    if named:
        return any(p.name == name for p in named)
    length = seam.facts.get("length")
    if length is None:
        return len(full) == 1
    edge = float(length) * seam.making.times
    return any(abs(p.width * (p.number or 1) - edge) <= SAME * edge for p in pieces)


def _is_full(name: str, garment: Garment) -> bool:
    return any(
        p.fullness >= GATHERED or p.flounce is not None or p.tiers is not None
        for p in garment.plan.pieces
        if p.name == name
    )


def _hang(work: SeamWork, mass: float, garment: Garment, carrier: str) -> Hang:
    seam = work.seam
    newton = hanging.force(mass) / seam.making.times
    strap = bool(_words(seam.name) & nouns.ON_SHOULDERS - {"shoulder"})
    length = seam.facts.get("length")
    long = None if length is None or strap else float(length) * seam.making.times
    per_cm = None if long is None else hanging.load(mass, long)
    holds = work.holding.has
    weight = garment.cloths[carrier].weight
    waist = not (_is(seam, nouns.ON_SHOULDERS) or carries(seam, garment.seams))
    as_long = hanging.as_long_as(mass, long, sum(weight) / 2) if waist and long and weight else None
    moved = (per_cm or 0.0) * hanging.IN_MOTION
    felt = holds is not None and moved > holds * hanging.FELT
    much = hanging.MUCH_M if felt else hanging.MUCH_UNKNOWN_M
    little = mass < hanging.LITTLE_G and bool(weight) and sum(weight or ()) / 2 >= hanging.FIRM_G
    heavy = as_long is not None and as_long > much and (felt or holds is None) and not little
    weak = None not in (per_cm, holds) and moved > (holds or 0.0)
    stay = next((s.name for s in garment.seams if waist and _is(s, nouns.WAISTS) and _stays(s)), "")
    return Hang(mass, newton, per_cm, carrier, as_long, holds, heavy or weak, stay)


def _stays(seam: Seam) -> bool:
    """Whether a place is a ribbon or a tape inside the waist, which takes the weight."""
    return seam.place == "stay-tape" and "stay" in _words(seam.name)
