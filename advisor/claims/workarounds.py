"""Clashes under the iron that a way of working avoids: they become instructions, not conflicts.

Parts are pressed by themselves (common practice of the trade). A zip, elastic, tape or trim goes
in after its seam is pressed, or lies beside the iron; a lining is pressed alone, and where it is
joined the cooler iron counts; in the last press each cloth is pressed where it lies by itself. A
cloth whose own fibres want unlike irons keeps a soft crease, which spoils nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from itertools import takewhile
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.conflicts import (
    Conflict,
    cause_of,
    find_conflicts,
    in_order,
    one_per_cause,
    severity_of,
)
from advisor.claims.speakers import HEAT_ASPECTS, KEPT_OFF, Said, is_heat_need
from advisor.claims.valuesets import Span
from advisor.craft.irondial import mark_for
from advisor.knowledge import nouns
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Entry, Knowledge
from advisor.knowledge.places import SEWN_ON
from advisor.project.garment import Garment
from advisor.project.glue_first import BAND, neighbours
from advisor.project.placing import singular_words

PARTS = frozenset({"zip", "elastic", "button", "hook-and-loop", "tape", "trim", "bone"})
"""Kinds of notion that can be kept beside the iron, or go in after it."""
RESTING = ("lift and lower", "glide")
"""Ways to move an iron that is set down."""
TRIM = "trim"
GLUED = frozenset({"fusible", "low-temperature fusible"})
"""Kinds of notion that have to be hot where they lie."""
DRAWN_THROUGH = "casing"
"""The kind of place that is folded and stitched empty: elastic or a cord is drawn in afterwards."""
INTERFACING = "interfacing.kind"
PART = "part"
"""An instruction for what goes in after its place was pressed, or lies beside the iron."""
ALONE, LAID_ON = "alone", "laid on"
"""An instruction for a cloth that is pressed as a piece, before a tender one is joined to it; and
the family of places in which the laid piece is a small one, whose row is pressed alone afterwards.
"""
LINING = "lining"
"""An instruction for a lining, which is pressed alone, and so is its shell."""
_ORDER = (PART, LINING, ALONE, "last")
ROUND = "round"
"""An instruction for the last press, which goes round the parts that bear less."""

Pair = tuple[Said, Said]


class Instruction(Struct, frozen=True):
    """How the work goes so that two layers never clash under one iron.

    Attributes:
        kind: `part` goes in or lies beside the iron, `lining` is pressed alone, `last` is of the
            whole garment, `unpressed` of one that takes no iron when it is whole, `round` of the
            parts that the last press goes round, `behind` of a backing that may end before it.
        needy: who wants the heat or the moisture.
        tender: who cannot bear it.
        places: where they meet.
        most: what the tender ones bear, °C; None where it is only the moisture that they fear.
        alone: what the needy ones bear where no tender one lies behind them, °C.
        irons: how the order of work presses the needy ones by themselves.
        dry: whether what a glue is fused to bears no moisture.
    """

    kind: str
    needy: frozenset[str]
    tender: frozenset[str]
    places: tuple[Place, ...]
    most: float | None
    alone: float | None = None
    irons: tuple[OwnIron, ...] = ()
    dry: bool = False


class OwnIron(NamedTuple):
    """How a step presses a cloth by itself: from where and up to what, °C, and how moist.

    `glue` says how hot it may be where something is fused to it.
    """

    cloth: str
    start: float
    most: float
    moisture: str
    glue: str = ""


def settle(
    garment: Garment, verdicts: dict[Place, dict[str, Verdict]], knowledge: Knowledge
) -> tuple[tuple[Conflict, ...], tuple[Instruction, ...]]:
    """The conflicts that no way of working avoids, one per cause, and what avoids the others."""
    return _Settler(garment, verdicts, knowledge).both()


def gone_round(
    whole: Place, verdicts: Mapping[Place, Mapping[str, Verdict]], beside: Iterable[Said]
) -> tuple[Instruction, ...]:
    """What the last press goes round: the parts that bear less than the cloths are pressed at."""
    heat = verdicts.get(whole, {}).get(LIMIT_ASPECT)
    span = None if heat is None else heat.advised
    high = span.high if isinstance(span, Span) and not span.is_empty else COLD
    lids = [
        (said.claim.span[1], said.cloths)
        for said in beside
        if said.claim.aspect == LIMIT_ASPECT and said.claim.span and said.claim.span[1] < high
    ]
    if not lids or mark_for(high) is None:
        return ()
    tender = frozenset(name for _, names in lids for name in names)
    return (Instruction(ROUND, frozenset(), tender, (whole,), min(most for most, _ in lids)),)


def kept_off(garment: Garment, knowledge: Knowledge) -> tuple[str, ...]:
    """The elastics, buttons and piles sewn on: whoever irons the finished garment goes round."""
    if garment.single:
        return ()
    worn = (name for name, cloth in garment.cloths.items() if not cloth.detachable)
    kinds = {name: knowledge.entries[garment.cloths[name].entry].kind for name in worn}
    parts = {name for name, kind in kinds.items() if kind in KEPT_OFF}
    return tuple(sorted(parts | set(piled_trims(garment, knowledge))))


def piled_trims(garment: Garment, knowledge: Knowledge) -> tuple[str, ...]:
    """The trims with a pile, of whatever fibre: an iron that comes over them lays it for good."""
    worn = {n: knowledge.entries[c.entry] for n, c in garment.cloths.items() if not c.detachable}
    piled = (n for n, e in worn.items() if e.kind == TRIM and e.traits.get("pile", (0, 0))[0])
    return () if garment.single else tuple(sorted(piled))


def pressed_after_all(one: Instruction) -> Instruction:
    """An instruction of a garment that is pressed part by part, though no iron suits the whole."""
    return replace(one, kind="last") if one.kind == "unpressed" else one


def is_lining(name: str, entry: Entry) -> bool:
    """Whether a cloth lines the garment: by what it is, or by what the project calls it."""
    return entry.family == "linings" or "lining" in singular_words(name)


class _Settler:
    def __init__(
        self, garment: Garment, verdicts: dict[Place, dict[str, Verdict]], knowledge: Knowledge
    ) -> None:
        self.verdicts = verdicts
        self.seams = {seam.name: seam for seam in garment.seams}
        self.entries = {n: knowledge.entries[c.entry] for n, c in garment.cloths.items()}
        self.kinds = knowledge.places.kinds
        self.glues = frozenset(n for n, e in self.entries.items() if e.kind in GLUED)
        self.parts = garment.parts
        self.found: dict[tuple[str, frozenset[str], frozenset[str]], list[tuple[Place, Said]]] = {}

    def both(self) -> tuple[tuple[Conflict, ...], tuple[Instruction, ...]]:
        skins = frozenset(n for n, e in self.entries.items() if e.structure == "skin")
        found = find_conflicts(self.verdicts, skins)
        kept = [c for c in map(self._real, found) if c is not None]
        conflicts = one_per_cause(in_order(kept, list(self.verdicts)))
        return conflicts, (*(told := self._instructions(conflicts)), *self._pressed_empty(told))

    def _pressed_empty(self, told: tuple[Instruction, ...]) -> Iterator[Instruction]:
        """Places that only what goes in later keeps from the iron: they are pressed without."""
        done = {(place, name) for one in told for place in one.places for name in one.tender}
        for place, found in self.verdicts.items():
            seam, heat = self.seams.get(place.name), found.get(LIMIT_ASPECT)
            span = None if heat is None else heat.allowed
            if seam is None or place.scope != "seam" or heat is None or not isinstance(span, Span):
                continue
            lids = [s for s in heat.because if s.claim.span and s.claim.span[1] <= span.high]
            tender = frozenset(name for lid in lids for name in lid.cloths)
            drawn = seam.place == DRAWN_THROUGH and mark_for(span.high) is None
            if not drawn and not self._boned(heat, tender, span.high):
                continue
            needy = frozenset(n for n in seam.cloths() if self.entries[n].kind == "cloth")
            new = tender and not any((place, name) in done for name in tender)
            if new and self._all(tender, self._is_part):
                yield Instruction(PART, needy, tender, (place,), span.high)

    def _boned(self, heat: Verdict, tender: frozenset[str], most: float) -> bool:
        """Whether only bones keep a place below the mark that its cloths bear."""
        if not tender or any(self.entries[name].kind != "bone" for name in tender):
            return False
        said = [s for s in (*heat.because, *heat.given_up) if s.claim.span and s.cloths - tender]
        rest = min((s.claim.span[1] for s in said if s.claim.span), default=most)
        return mark_for(rest) != mark_for(most)

    def _real(self, conflict: Conflict) -> Conflict | None:
        """The conflict as far as no way of working avoids it; what does is noted."""
        if conflict.aspect == INTERFACING and self._fused_before(conflict):
            return None
        conflict = replace(conflict, cause=self._cause(conflict, conflict.clash))
        if conflict.aspect not in HEAT_ASPECTS:
            return conflict
        verdict = self.verdicts[conflict.place][conflict.aspect]
        pairs = list(_pairs(verdict))
        if not pairs:
            return conflict
        left = []
        for need, lid in pairs:
            kind = self._way(conflict.place, need, lid)
            if not kind:
                left.append((need, lid))
            elif kind != "own":
                key = (kind, need.cloths, lid.cloths - need.cloths)
                self.found.setdefault(key, []).append((conflict.place, lid))
        if self._sewn_on(conflict.place):  # its cloths are pressed where they are joined
            left = [pair for pair in left if self._of_the_fastening(pair)]
        if not left:
            return None
        clash = min(left, key=_worst)
        causes = frozenset(self._cause(conflict, pair) for pair in left)
        cause = self._cause(conflict, clash)
        return replace(
            conflict,
            clash=clash,
            severity=severity_of(clash),
            cause=cause,
            behind=causes - {cause},
        )

    def _sewn_on(self, place: Place) -> bool:
        """Whether a hook, a snap or a button is sewn to what is pressed already."""
        return place.name in self.seams and self.seams[place.name].place in SEWN_ON

    def _of_the_fastening(self, pair: Pair) -> bool:
        """Whether what is sewn on has a say in a clash: from that the iron is kept all the same."""
        return any(self.entries[name].kind != "cloth" for said in pair for name in said.cloths)

    def _cause(self, conflict: Conflict, clash: tuple[Said, ...]) -> object:
        return cause_of(conflict.place, conflict.aspect, clash, self.glues)

    def _fused_before(self, conflict: Conflict) -> bool:
        """Whether the glue is fused, before this seam, to a layer beside it that takes it."""
        seam = self.seams.get(conflict.place.name)
        glues = {s.who for s in conflict.clash if s.claim.origin == "maker"}
        if seam is None or not glues or not glues <= seam.apart & self.glues:
            return False
        verdict = self.verdicts[conflict.place][conflict.aspect]
        brought = [s.claim.mask for s in verdict.clash if s.who in glues]
        against = {
            name
            for s in verdict.clash
            if s.who not in glues and any(not s.claim.mask & mask for mask in brought)
            for name in s.cloths
        }
        names = [use.cloth for use in seam.uses]
        kind = self.kinds.get(seam.place)
        beside = set(names) if kind is not None and kind.family == BAND else neighbours(seam, glues)
        return bool({n for n in beside if self.entries[n].kind == "cloth"} - against - self.glues)

    def _way(self, place: Place, need: Said, lid: Said) -> str:
        """What avoids the clash of two claims; nothing where nothing does."""
        needy, tender = need.cloths, lid.cloths - need.cloths
        own = "maker" in (need.claim.origin, lid.claim.origin)
        if own or not needy or not lid.cloths:
            return ""
        parts = self._all(tender, self._is_part)
        if needy & self.glues:  # it is fused to a flat piece, long before anything is sewn on
            return "own" if self._sewn_on(place) and parts else ""
        if not tender:
            return "own"
        return self._way_past(place, needy, tender)

    def _way_past(self, place: Place, needy: frozenset[str], tender: frozenset[str]) -> str:
        """What keeps the iron that some layers need from others that do not bear it."""
        if place.scope == "garment" and self._all(tender, self._is_part):
            return "own"  # the last press keeps to what its parts bear, or goes round them
        if place.scope == "garment" and not self._meet(needy, tender):
            return "last"
        if self._all(needy, self._is_part) or self._all(tender, self._is_part):
            return PART
        if place.scope == "garment":
            return "last"
        lined = self._all(needy, self._lines) or self._all(tender, self._lines)
        if self._laid(place) or self._all(needy, lambda name: self._covered(place, name)):
            return ALONE
        return "lining" if lined else ""

    def _laid(self, place: Place) -> bool:
        """Whether one cloth is laid on another: each is pressed before, the row as both bear."""
        kind = self.kinds.get(self.seams[place.name].place) if place.name in self.seams else None
        return kind is not None and kind.family == LAID_ON

    def _covered(self, place: Place, name: str) -> bool:
        """Whether a cloth lies under an opaque one of its part at a place, so that it never shows.

        What heat makes of its look is seen on its own pieces, which are pressed before. What backs
        others by its name never shows either.
        """
        if (words := set(singular_words(name))) & nouns.BEHIND and not words & nouns.SHOWN:
            return True
        cloths = self.seams[place.name].cloths() if place.name in self.seams else ()
        held = (p.layers for p in self.parts if name in p.layers)
        over = (takewhile(lambda outer: outer != name, reversed(layers)) for layers in held)
        seen = (outer for layers in over for outer in layers if outer in cloths)
        return any(
            not any(self.entries[outer].traits.get(t, (0, 0))[1] for t in ("sheer", "openwork"))
            for outer in seen
        )

    def _meet(self, needy: frozenset[str], tender: frozenset[str]) -> bool:
        """Whether some of the one lie in a seam with some of the other."""
        return any(
            needy & set(seam.cloths()) and tender & set(seam.cloths())
            for seam in self.seams.values()
        )

    def _is_part(self, name: str) -> bool:
        return self.entries[name].kind in PARTS

    def _lines(self, name: str) -> bool:
        return is_lining(name, self.entries[name])

    @staticmethod
    def _all(names: frozenset[str], true) -> bool:  # type: ignore[no-untyped-def]
        return bool(names) and all(true(name) for name in names)

    def _instructions(self, conflicts: tuple[Conflict, ...]) -> tuple[Instruction, ...]:
        """One for each who-and-whom; the last press says nothing that a seam has said already.

        Where it says something of a cloth, it names all that the cloth has to be kept from.
        """
        said = {(c.clash[0].cloths, c.clash[-1].cloths - c.clash[0].cloths) for c in conflicts}
        groups: dict[tuple[object, ...], list[tuple[frozenset[str], Place, Said]]] = {}
        new = set()
        for key in sorted(self.found, key=lambda k: (_ORDER.index(k[0]), *map(sorted, k[1:]))):
            kind, needy, tender = key
            # In the last press one sentence does for all that one cloth has to be kept from.
            group = (kind, needy) if kind == "last" else key
            if kind != "last" or (needy, tender) not in said:
                new.add(group)
            said.add((needy, tender))
            spots = [(tender, place, lid) for place, lid in self.found[key]]
            groups.setdefault(group, []).extend(spots)
        kept = {key: spots for key, spots in groups.items() if key in new}
        found = (_instruction(str(key[0]), key[1], spots) for key, spots in kept.items())
        return tuple(self._as_pressed_last(one) for one in found)

    def _as_pressed_last(self, one: Instruction) -> Instruction:
        """What is said of the last press, where the whole takes no iron at all."""
        heat = self.verdicts.get(one.places[0], {}).get(LIMIT_ASPECT)
        if one.kind != "last" or heat is None or not isinstance(heat.advised, Span):
            return one
        return one if mark_for(heat.advised.high) else replace(one, kind="unpressed")


def _instruction(
    kind: str, needy: object, spots: list[tuple[frozenset[str], Place, Said]]
) -> Instruction:
    tender = frozenset(name for names, _, _ in spots for name in names)
    spans = [s.claim.span for _, _, s in spots if s.claim.aspect == LIMIT_ASPECT]
    seams = dict.fromkeys(place for _, place, _ in spots if place.scope == "seam")
    places = tuple(seams) or (spots[0][1],)
    most = min((span[1] for span in spans if span), default=None)
    return Instruction(kind, frozenset(needy), tender, places, most)  # type: ignore[call-overload]


def _pairs(verdict: Verdict) -> Iterator[Pair]:
    """Each need for heat or moisture with each ceiling that it goes past."""
    spans = [(said, said.claim.span) for said in verdict.clash if said.claim.span]
    for need, (low, _) in spans:
        if is_heat_need(need.claim):
            yield from ((need, lid) for lid, (_, high) in spans if high < low)


def _worst(pair: Pair) -> tuple[object, ...]:
    """The highest floor and the lowest ceiling first; on a tie the best founded, then by name."""
    (floor, _), (_, ceiling) = (said.claim.span or (0.0, 0.0) for said in pair)
    standing = tuple((said.claim.rank, said.key) for said in pair)
    return (-floor, ceiling, *standing)
