"""Answers what the templates of work ask of a garment and its seams."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import partial

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.consistency import STEAM
from advisor.claims.valuesets import Choice
from advisor.craft.fullness import METHOD_RATIOS, GatherMethod
from advisor.decide.trials import find_trials
from advisor.knowledge import nouns
from advisor.knowledge.model import Entry, Knowledge
from advisor.knowledge.ordering import Operation
from advisor.order import layering
from advisor.order import namewords as called
from advisor.order.backed import backings, beside_bones
from advisor.order.beside import cords_out, keeps, knifed, of_place
from advisor.order.choosing import with_methods
from advisor.order.drawnin import left_to_the_waist
from advisor.order.dropping import drops
from advisor.order.easing import (
    eases_away,
    ends_at,
    ends_in_zip,
    only_napped,
    steamed_flat,
    stretched_band,
    two_ended,
    woven_pile,
)
from advisor.order.edgesleft import finished_elsewhere, set_in_a_seam, waits_for_lining
from advisor.order.fitting import Fitting
from advisor.order.kinds import SeamPlace
from advisor.order.letout import edges_wait
from advisor.order.namewords import FINISHED, GATHERED, LAID_ON, SHOULDERED, STAYED_ON_BIAS
from advisor.order.openings import loose_at_zip, seam_below
from advisor.order.otherfacts import Answers, AskedOnce
from advisor.order.rain import coated_throughout, proofed, waxed
from advisor.order.setups import OVERLOCKS, Setups
from advisor.order.shearing import THICK, with_shearing
from advisor.order.sidezip import side_left_open
from advisor.order.staging import staged
from advisor.order.supports import stayed_alone, supports
from advisor.order.topstitching import AT_THE_END
from advisor.order.tothefloor import WHOLE
from advisor.order.untried import NOT, toile_first
from advisor.project.folded import pleated_apart
from advisor.project.garment import Garment
from advisor.project.headwords import speaks_of
from advisor.project.linings import ends_short, of_a_part
from advisor.project.placing import singular_words
from advisor.project.waisttabs import end_the_body
from advisor.project.zipping import runs_into

FUSIBLE, OVERLOCKED = ("fusible", "low-temperature fusible"), "overlocked"
"""Glues; the finish of which the knife cuts both edges in the same run."""
CHANNEL, LEG, NEATENED = "bone-channel", "leg-band", "neaten-after"
BAGGED, STITCH = "bagged-lining", "stitch.type"
TOPSTITCHING = "topstitching"
CORD_EYELETS = 6
"""More eyelets than this lace an opening; a drawn cord comes out of two or four: estimate."""
VERY_FULL = METHOD_RATIOS[GatherMethod.ROWS].high
"""The fullness beyond which two rows no longer carry the cloth."""


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
        self.places, self.of_seam = places, AskedOnce(self._answers).of
        self.places, self.of_seam = with_methods(places, self), AskedOnce(self._answers).of
        told = (partial(keeps, self), partial(knifed, self))
        self.fitting = Fitting(garment, self.places, self._works, *told)

    def _works(self, place: SeamPlace) -> list[Operation]:
        """The pieces of work on a place, but for the basting that a fitting asks for."""
        return [op for op in self.listed(place) if op.id != "baste" and self.wanted(op, place)]

    def listed(self, place: SeamPlace) -> list[Operation]:
        """All that its kind prepares and its method does, wanted here or not."""
        works = self.knowledge.order.operations
        listed = [works[id_] for id_ in place.kind.prepares]
        listed += [staged(s, works[s.work], place.seam.by_hand) for s in place.method.stages]
        if any(self.of_seam(fact, place) for fact in THICK):
            listed = with_shearing(listed, works)
        listed += [works[id_] for id_ in AT_THE_END if id_ in works]
        if self.setups.finish(place) not in called.CLOSED_FINISHES:
            return listed
        return [replace(op, let_out=False) if op.id == NEATENED else op for op in listed]

    def wanted(self, op: Operation, place: SeamPlace) -> bool:
        """Whether a piece of work is called for at a place."""
        here = self.hold(op.when, lambda fact: self.of_seam(fact, place))
        here = here and not left_to_the_waist(op.id, place, self)
        return here and self.called_for(op.id, place)

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
            return self.fitting.degree != NOT
        if fact == "pattern not tried":
            return toile_first(self.fitting)
        if fact == "lengths tried":
            return any(not t.places for t in find_trials(self.setups.advice.judgement))
        if fact == "bias or knit drops":
            return drops(self, hemmed=not self._unhemmed())
        if fact in WHOLE:
            return WHOLE[fact](self)
        if fact == "rows to be waxed":
            return any(waxed(p, self) for p in self.places)
        return fact == "no hem named" and self._unhemmed()

    def _unhemmed(self) -> bool:
        """Whether a lower edge is left that no place speaks of; none on net or with elastic."""
        closed = {"elastic-edge", "bound-edge"}
        below = [p for p in self.places if p.role.id not in called.AT_WRIST]
        ended = (p.role.last or p.kind.id in closed or ends_at(p, self.places) for p in below)
        if any(ended) or self.close() or any(end_the_body(p.seam) for p in below):
            return False
        if any(p.method.id == BAGGED for p in self.places):
            return False  # shell and lining meet at the lower edge
        ends = (p for p in below if p.kind.id in FINISHED)
        if any(speaks_of(p.name, nouns.LOWER_EDGE | nouns.ON_LEG) for p in ends):
            return False
        full = {c for p in self.places if p.kind.id == "gathered-edge" for c in p.full}
        return not any(self.stays_cut(c) for c in full)

    def stays_cut(self, cloth: str) -> bool:
        """Whether an edge of it neither frays nor curls, so that it may be left as it is cut."""
        entry = self.entry(cloth)
        plain = entry.structure in ("net", "skin", "film") or entry.family == "nets"
        return plain and not (self.least(cloth, "frays") or self.least(cloth, "curls"))

    def close(self) -> bool:
        """Whether the garment lies close to the body, so that nothing of it hangs."""
        held = any(p.kind.id in ("elastic-edge", "casing") for p in self.places)
        return held and any(p.role.id == "crotch" for p in self.places)

    def _answers(self, place: SeamPlace) -> Answers:
        """Every fact of a place by its name."""
        return {
            **of_place(place, self),
            **self._of_layers(place),
            "curved": lambda: place.said("shape") == "curved",
            "one cut edge": lambda: place.op in ("join", "set-lining") and not place.full,
            "bias": lambda: place.said("bias") == "yes" and place.role.id in STAYED_ON_BIAS,
            "woven": lambda: any(self.entry(c).structure == "woven" for c in place.cloths),
            "turned": lambda: place.said("edge") == "turned" or place.kind.id == "faced-edge",
            "gathered": lambda: bool(place.full) and not self._pleats(place),
            "pleated": lambda: self._pleats(place),
            "lockstitched": lambda: not self._overlocked(place),
            "closed seam": lambda: not self.open_seam(place),
            "pressed open": lambda: self.open_seam(place),
            "no pile": lambda: not self.tender_face(place),
            "sewn-in interfacing": lambda: (
                self._has(place, ("sew-in", "canvas"))
                or bool(supports(place, self))
                or (self._has(place, FUSIBLE) and self.setups.glue_ruled_out(place))
            ),
            "fusible interfacing": lambda: (
                self._has(place, FUSIBLE) and not self.setups.glue_ruled_out(place)
            ),
            "needs neatening": lambda: self.neatened(place),
            "fit is settled": lambda: not self.fit_open(place),
            "fit may change it": lambda: self.fit_open(place),
            "sewn seam": lambda: place.op not in ("fasten", "zip"),
            "tried on": lambda: self.fitting.basted(place),
        }

    def _of_layers(self, place: SeamPlace) -> Answers:
        """The facts of what lies in a place, whatever its method."""
        cloths, full = place.cloths, max((u.fullness for u in place.seam.uses), default=1.0)
        return {
            "lining loose at the zip": lambda: loose_at_zip(place, self.places, self.garment.parts),
            "of a lining": lambda: place.unit == "lining",
            "lining ends above": lambda: (
                of_a_part(place.seam) or ends_short(place.cloths[1:], self.garment)
            ),
            "takes in a lining": lambda: layering.hangs_lined(place, self.places),
            "lining loose at the vent": lambda: layering.lining_loose_at_vent(place, self.places),
            "seam below among others": lambda: seam_below(place, self.places) is not None,
            "a side left open": lambda: side_left_open(place, self.places) is not None,
            "waist edge": lambda: layering.waist_edge(place, self.places),
            "allowance is kept": lambda: self.neatened(place) and not self.cut_down(place),
            "allowance is cut down": lambda: not self.neatened(place) or self.cut_down(place),
            "eased": lambda: 1.0 < full <= GATHERED,
            "cord in a casing": lambda: (
                self.named_near(called.DRAWCORD, place) and place.seam.making.times <= CORD_EYELETS
            ),
            "closed round": lambda: not two_ended(place, self.places),
            "open in front": lambda: (
                two_ended(place, self.places) and not ends_in_zip(place, self.places)
            ),
            "ends in a zip": lambda: ends_in_zip(place, self.places),
            "hangs from the shoulder": lambda: any(p.role.id in SHOULDERED for p in self.places),
            "sewn straight": lambda: self.setups.word(Place("seam", place.name), STITCH) == "301",
            "steam held above": lambda: self.steamed(place),
            "wool eased in": lambda: (
                eases_away(place, self.garment)
                and steamed_flat(place, self.setups)
                and not (self.hard(place) or woven_pile(place, self.entry))
            ),
            "very full": lambda: full > VERY_FULL and not self._pleats(place),
            "coated throughout": lambda: coated_throughout(place, self),
            "sheer": lambda: all(self.least(c, "sheer") >= called.SHEER for c in cloths),
            "topstitched": lambda: place.seam.making.topstitch > 0 or self.jeans(place),
            "more than one cloth": lambda: len(cloths) > 1,
            "topstitching suits": lambda: not any(self.avoids(c, TOPSTITCHING) for c in cloths),
            "knit band stretched on": lambda: stretched_band(place, self.entry),
            "tender face": lambda: self.tender_face(place),
        }

    def steamed(self, place: SeamPlace) -> bool:
        """Whether steam is held above a place instead of an iron set down on it."""
        return self.setups.word(Place("seam", place.name), "press.motion") == STEAM

    def named_near(self, notion: str, near: SeamPlace) -> bool:
        """Whether a notion lies in some place of the same cloth."""
        beside = [p for p in self.places if set(p.cloths) & set(near.cloths)]
        return any(self.entry(n).id == notion for p in beside for n in p.notions)

    def avoids(self, cloth: str, work: str) -> bool:
        """Whether a cloth is better without some work, as it is judged by itself."""
        found = self.setups.judged(Place("fabric", cloth)).get("design.avoids")
        if found is None or not isinstance(found.advised, Choice):
            return False
        return work not in {found.aspect.words[i] for i in found.advised.options()}

    def backs(self, cloth: str) -> tuple[SeamPlace, ...]:
        """The places in which a cloth is held as one with its neighbour: it has no seam of its own.

        Such a cloth lies inside, flat, and is one that backs others: a sheer, a lining, or one
        that the project calls a support.
        """
        entry, words = self.entry(cloth), set(singular_words(cloth))
        if entry.kind != "cloth" or not (entry.family in layering.BACKING or words & nouns.BACKS):
            return ()
        mine = [p for p in self.places if cloth in p.cloths]
        if any(p.kind.family == "backing" for p in mine):
            return ()  # a place of its own says how it is held
        if words & nouns.SHOWN or any(
            p.cloths == (cloth,) or cloth in p.full or layering.of_a_yoke(cloth, p) for p in mine
        ):
            return ()
        inside = [p for p in mine if any(u.cloth == cloth for u in p.seam.uses[1:-1])]
        return tuple(p for p in inside if p.kind.family not in ("fastening", "backing"))

    def proofed(self, cloth: str) -> bool:
        """Whether it is a coated cloth that keeps rain out, so that every hole in it leaks."""
        return proofed(cloth, self)

    def jeans(self, place: SeamPlace) -> bool:
        """Whether it is a felled seam of heavy denim, whose rows are meant to be seen."""
        if self.setups.word(Place("seam", place.name), "seam.kind", "") != "felled":
            return False
        cloths = [self.garment.cloths[name] for name in place.cloths]
        return all(
            c.entry == "denim" and c.weight[0] >= called.HEAVY_DENIM for c in cloths if c.weight
        )

    def called_for(self, op: str, place: SeamPlace) -> bool:
        """Whether a seam has what some pieces of work are all about."""
        if op == "stay-stitch":
            return bool(stayed_alone(place, self)) and place.role.id not in LAID_ON
        if op in ("bone", "close-bones"):
            return bool(self.setups.bones(place))
        if op == "clear":
            return bool(self.hard(place)) and place.op != "fasten"
        if op == "grade":
            return self.graded(place)
        if op == "lay-pleats":
            return not pleated_apart(place.seam, self.garment.seams)
        if op in ("understitch", "turn"):
            return place.role.id not in LAID_ON
        if op == "interface":
            webs = [n for n in self.ruled_out(place) if self.garment.cloths[n].entry == called.WEB]
            padded = any(stage.work == "baste-backing" for stage in place.method.stages)
            return not padded and (not webs or len(place.notions) > len(webs))
        return True

    def hard(self, place: SeamPlace) -> tuple[str, ...]:
        """The cloths of a seam that carry sequins, beads or stones."""
        return tuple(c for c in place.cloths if self.least(c, "embellished") >= called.HARD)

    def graded(self, place: SeamPlace) -> bool:
        """Whether the seam has two allowances or more, of which all but one are cut down.

        A hem is no seam, a binding encloses its edge whole, what is laid on top has its edges
        turned under, a trimming has no allowance, what the overlocker sewed is cut already, and
        no clip may run through a neatened edge.
        """
        joined = place.op in ("join", "set-lining") and place.role.id not in LAID_ON
        kept = self._overlocked(place) or waits_for_lining(place, self.places)
        if kept or not joined or place.said("edge") == "hem":
            return False
        turned = place.said("edge") == "turned"
        if not turned and (place.binds or self._knit_band(place) or self._neatened_as_one(place)):
            return False
        entries = [self.entry(use.cloth) for use in place.seam.uses]
        plies = [e for e in entries if e.kind == "cloth" or (turned and e.id == "bias-binding")]
        return len(plies) > 1

    def _neatened_as_one(self, place: SeamPlace) -> bool:
        """Whether both allowances are cut and neatened as one, so that neither is the wider."""
        cut = self.setups.finish(place) == OVERLOCKED or self.cut_down(place)
        return (bool(place.full) or cut) and self.neatened(place)

    def cut_down(self, place: SeamPlace) -> bool:
        """Whether its finish cuts the allowance close to a second row."""
        return self.setups.finish(place) in called.CLOSED_FINISHES

    def _pleats(self, place: SeamPlace) -> bool:
        """Whether pleats are laid: planned for the seam, or set in the cloth that is full there."""
        full = [self.entry(cloth).id for cloth in place.full]
        set_in = bool(full) and set(full) == {called.PLEATED}
        laid = pleated_apart(place.seam, self.garment.seams)
        return place.seam.making.pleats is not None or set_in or laid

    def _overlocked(self, place: SeamPlace) -> bool:
        return self.setups.word(Place("seam", place.name), "stitch.type", "301") in OVERLOCKS

    def _knit_band(self, place: SeamPlace) -> bool:
        knit = any(self.entry(c).structure == "knit" for c in place.cloths)
        return place.role.id == "neckband" and knit

    def ruled_out(self, place: SeamPlace) -> frozenset[str]:
        """The fusibles of a seam that some layer of it does not bear, and a cord that strangles."""
        return cords_out(place, self) | self.setups.glues_left_out(place)

    def fit_open(self, place: SeamPlace) -> bool:
        """Whether a fitting may still change the seam, so that its edges wait for it.

        An edge that a zip is set to is neatened before: no machine comes under the tape later. Nor
        does a knife come beside a bone: what is let out there has its edge all the same.
        """
        zipped = set_in_a_seam(place) or any(runs_into(place.seam, p.seam) for p in self.places)
        settled = zipped or beside_bones(place, self)
        return not settled and edges_wait(place, self) and self.of_garment("something to fit")

    def neatened(self, place: SeamPlace) -> bool:
        """Whether the edges of the seam are neatened as work of their own."""
        joined = place.op in ("join", "set-lining") and place.role.id != CHANNEL
        joined = (joined or set_in_a_seam(place)) and place.said("edge") != "turned"
        if not joined or finished_elsewhere(place, self.places):
            return False
        finish, entries = self.setups.finish(place), [self.entry(u.cloth) for u in place.seam.uses]
        one = sum(entry.kind == "cloth" for entry in entries) < 2
        taped = any(entry.id == "bias-binding" for entry in entries)  # it encloses the edge
        return bool(finish) and not (one and (taped or finish in called.CLOSED_FINISHES))

    def open_seam(self, place: SeamPlace) -> bool:
        """Whether the allowances are pressed apart, each neatened by itself."""
        if self._has(place, ("elastic",)):
            return True  # neatened before it is on, so that no knife comes near it
        if set_in_a_seam(place) or self.cut_down(place) or place.full:
            return set_in_a_seam(place)
        kind = self.setups.word(Place("seam", place.name), "seam.kind", "plain")
        sheer = {c for c in place.cloths if self.least(c, "sheer")}
        shows = backings(place, self.places) < sheer
        return place.role.pressed == "open" and kind in called.OPEN_SEAMS and not shows

    def tender_face(self, place: SeamPlace) -> bool:
        """Whether pile or sequins in it suffer from handling; a raised nap only lies down."""
        piled = (
            c
            for c in place.cloths
            if (n := self.least(c, "pile")) >= 1 and not only_napped(n, self.entry(c))
        )
        return any(piled) or any(self.least(c, "embellished") >= called.HARD for c in place.cloths)

    def _has(self, place: SeamPlace, kinds: tuple[str, ...]) -> bool:
        return any(self.entry(name).kind in kinds for name in place.notions)
