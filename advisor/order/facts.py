"""Answers what the templates of work ask of a garment and its seams."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from advisor.claims.collect import Place
from advisor.knowledge.model import Entry, Knowledge
from advisor.order.kinds import SeamPlace
from advisor.order.setups import OVERLOCKS, Setups
from advisor.project.garment import Garment

FUSIBLE = ("fusible", "low-temperature fusible")
CLOSED_FINISHES = frozenset({"trimmed and double-stitched"})
OPEN_SEAMS = frozenset({"plain", "mock French"})
CHANNEL = "bone-channel"
WEB = "bonding-web"
"""What sticks two cloths together, and so is basted to neither."""
LAID_ON = frozenset({"patch-pocket", "applied"})
"""Kinds of seam that sew a piece on top of another, its edges turned under or left as they are."""
HARD = 2
"""The level of `embellished` that says sequins, beads or stones."""
PLEATED = "pleated"
"""The cloth that is sold with its pleats set: gathering rows would crush them."""
FIT_ENDS = 460
"""The stage up to which seams are sewn before the first fitting."""


class Facts:
    """The facts of one garment."""

    def __init__(
        self,
        garment: Garment,
        knowledge: Knowledge,
        setups: Setups,
        places: tuple[SeamPlace, ...],
    ) -> None:
        self.garment = garment
        self.knowledge = knowledge
        self.setups = setups
        self.places = places

    @staticmethod
    def hold(when: Iterable[Iterable[str]], true: Callable[[str], bool]) -> bool:
        """Whether one of the lists of facts holds; no list asks nothing."""
        lists = [list(facts) for facts in when]
        return not lists or any(all(true(fact) for fact in facts) for facts in lists)

    def entry(self, cloth: str) -> Entry:
        """What a cloth is."""
        return self.knowledge.entries[self.garment.cloths[cloth].entry]

    def least(self, cloth: str, trait: str) -> int:
        """The level of a trait that a cloth may have at most, 0 where it says nothing."""
        own = self.garment.cloths[cloth].traits.get(trait)
        return (own or self.entry(cloth).traits.get(trait, (0, 0)))[1]

    def of_garment(self, fact: str) -> bool:
        """A fact of the whole."""
        if fact == "something to fit":
            return any(p.kind.closes or p.kind.fitted for p in self.places if p.unit != "lining")
        if fact == "bias or knit drops":
            return self.drops()
        return fact == "no hem named" and not any(p.kind.last for p in self.places)

    def drops(self) -> bool:
        """Whether the lower edge is of a cloth that lengthens when it hangs."""
        lowest = [p for p in self.places if p.kind.last]
        cloths = {c for p in lowest for c in p.cloths} or set(self._main())
        return any(self._gives(cloth) for cloth in cloths) or any(
            p.said("bias") == "yes" for p in (lowest or self.places)
        )

    def _main(self) -> tuple[str, ...]:
        """The cloth that most seams hold."""
        counts: dict[str, int] = {}
        for place in self.places:
            for cloth in place.cloths if place.unit != "lining" else ():
                counts[cloth] = counts.get(cloth, 0) + 1
        return tuple(sorted(counts, key=lambda c: (-counts[c], c))[:1])

    def _gives(self, cloth: str) -> bool:
        grain = self.setups.word(Place("fabric", cloth), "cut.grain")
        return self.entry(cloth).structure == "knit" or grain == "bias"

    def of_seam(self, fact: str, place: SeamPlace) -> bool:
        """A fact of a seam."""
        answers: dict[str, Callable[[], bool]] = {
            "curved": lambda: place.said("shape") == "curved",
            "one cut edge": lambda: place.kind.op == "join" and not place.full,
            "bias": lambda: place.said("bias") == "yes",
            "woven": lambda: any(self.entry(c).structure == "woven" for c in place.cloths),
            "turned": lambda: place.said("edge") == "turned" and place.kind.op == "join",
            "gathered": lambda: bool(place.full) and not self._pleats(place),
            "pleated": lambda: self._pleats(place),
            "lockstitched": lambda: not self._overlocked(place),
            "closed seam": lambda: not self.open_seam(place),
            "pressed open": lambda: self.open_seam(place),
            "no pile": lambda: not self.tender_face(place),
            "sewn-in interfacing": lambda: (
                self._has(place, ("sew-in", "canvas"))
                or (self._has(place, FUSIBLE) and self.setups.glue_ruled_out(place))
            ),
            "fusible interfacing": lambda: (
                self._has(place, FUSIBLE) and not self.setups.glue_ruled_out(place)
            ),
            "needs neatening": lambda: self.neatened(place),
            "fit is settled": lambda: not self.fit_open(place),
            "fit may change it": lambda: self.fit_open(place),
            "sewn seam": lambda: place.kind.op not in ("fasten", "zip"),
        }
        return answers[fact]()

    def called_for(self, op: str, place: SeamPlace) -> bool:
        """Whether a seam has what some pieces of work are all about."""
        if op == "stay-stitch":
            return bool(self.setups.stayed(place)) and place.kind.id not in LAID_ON
        if op in ("bone", "close-bones"):
            return bool(self.setups.bones(place))
        if op == "clear":
            return bool(self.hard(place)) and place.kind.op != "fasten"
        if op == "grade":
            return self.graded(place)
        if op in ("understitch", "turn"):
            return place.kind.id not in LAID_ON
        if op == "interface":
            webs = [n for n in self.ruled_out(place) if self.garment.cloths[n].entry == WEB]
            return not webs or len(place.notions) > len(webs)
        return True

    def hard(self, place: SeamPlace) -> tuple[str, ...]:
        """The cloths of a seam that carry sequins, beads or stones."""
        return tuple(c for c in place.cloths if self.least(c, "embellished") >= HARD)

    def graded(self, place: SeamPlace) -> bool:
        """Whether the seam has two allowances or more, of which all but one are cut down.

        A hem is no seam, a binding encloses its edge whole, what is laid on top has its edges
        turned under, a trimming has no allowance, and what the overlocker sewed is cut already.
        """
        if self._overlocked(place):
            return False
        joined = place.kind.op in ("join", "set-lining") and place.kind.id not in LAID_ON
        if not joined or place.said("edge") == "hem":
            return False
        turned = place.said("edge") == "turned"
        if not turned and (place.binds or self._knit_band(place)):
            return False
        entries = [self.entry(use.cloth) for use in place.seam.uses]
        plies = [e for e in entries if e.kind == "cloth" or (turned and e.id == "bias-binding")]
        return len(plies) > 1

    def _pleats(self, place: SeamPlace) -> bool:
        """Whether pleats are laid: planned for the seam, or set in the cloth that is full there."""
        full = [self.entry(cloth).id for cloth in place.full]
        return place.seam.making.pleats is not None or (bool(full) and set(full) == {PLEATED})

    def _overlocked(self, place: SeamPlace) -> bool:
        return self.setups.word(Place("seam", place.name), "stitch.type", "301") in OVERLOCKS

    def _knit_band(self, place: SeamPlace) -> bool:
        knit = any(self.entry(c).structure == "knit" for c in place.cloths)
        return place.kind.id == "neckband" and knit

    def ruled_out(self, place: SeamPlace) -> frozenset[str]:
        """The fusibles of a seam that some layer of it does not bear."""
        if not self.setups.glue_ruled_out(place):
            return frozenset()
        return frozenset(name for name in place.notions if self.entry(name).kind in FUSIBLE)

    def fit_open(self, place: SeamPlace) -> bool:
        """Whether a fitting may still change the seam."""
        return place.kind.fitted and self.of_garment("something to fit")

    def neatened(self, place: SeamPlace) -> bool:
        """Whether the edges of the seam are neatened as work of their own."""
        joined = place.kind.op in ("join", "set-lining") and place.kind.id != CHANNEL
        if not joined or place.said("edge") == "turned":
            return False
        finish, entries = self.setups.finish(place), [self.entry(u.cloth) for u in place.seam.uses]
        one = sum(entry.kind == "cloth" for entry in entries) < 2
        bound = any(entry.id == "bias-binding" for entry in entries)  # it encloses the edge
        return bool(finish) and not (one and (bound or finish in CLOSED_FINISHES))

    def open_seam(self, place: SeamPlace) -> bool:
        """Whether the allowances are pressed apart, each neatened by itself."""
        finish = self.setups.finish(place)
        if self._has(place, ("elastic",)):
            return True  # neatened before it is on, so that no knife comes near it
        if finish in CLOSED_FINISHES or place.full:
            return False
        kind = self.setups.word(Place("seam", place.name), "seam.kind", "plain")
        sheer = any(self.least(cloth, "sheer") for cloth in place.cloths)
        if kind not in OPEN_SEAMS or sheer:
            return False
        return place.kind.pressed == "open"

    def tried(self, place: SeamPlace) -> bool:
        """Whether the first fitting needs this seam."""
        sewn = place.kind.op in ("join", "dart", "pleat", "zip")
        early = place.kind.stage < FIT_ENDS and place.kind.pressed == "open"
        return sewn and early and place.unit != "lining"

    def tender_face(self, place: SeamPlace) -> bool:
        """Whether pile or sequins in it suffer from handling."""
        return any(
            self.least(c, "pile") >= 1 or self.least(c, "embellished") >= HARD for c in place.cloths
        )

    def _has(self, place: SeamPlace, kinds: tuple[str, ...]) -> bool:
        return any(self.entry(name).kind in kinds for name in place.notions)
