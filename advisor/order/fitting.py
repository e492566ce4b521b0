"""The fitting as a gate: what has to wait for it, and what is basted so that it can be tried on.

A garment is fitted to the body, loosely, or not at all: as the project says, else as its darts,
zips and bones tell. At a fitted place no stage past recall comes before the fitting. A place of
which the sewing itself is past recall (a French seam, one that an overlocker cuts) is basted for
it, and so is one that can only be sewn once another is.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from advisor.knowledge import nouns
from advisor.knowledge.ordering import SEWN, Operation
from advisor.order.bandlining import takes_whole_lining
from advisor.order.bandtried import band_tried
from advisor.order.channels import level_open
from advisor.order.hooded import depth_open, hood_tried
from advisor.order.infull import lies_in_fullness, lies_under_rows
from advisor.order.kinds import SeamPlace, below, crosses, joins_widths, related
from advisor.order.laidlate import LAY_ON, laid_on_what_drops, placed_on_the_body
from advisor.order.legs import closes_the_tube, shuts_in_a_stripe
from advisor.order.namewords import NECK_SLIT
from advisor.order.quilting import cut_after_the_fitting, waits_for_the_fitting
from advisor.order.roles import POCKET_ZIP
from advisor.order.slitpleats import laid_to_a_slit
from advisor.order.strapped import hung_from
from advisor.order.untried import (
    CROTCH,
    DART,
    HOLED,
    HOLES_FOR_GOOD,
    PILE_LINE,
    closes_the_body,
    dart_may_move,
    hangs_a_sleeve,
    in_a_line_that_drops,
    not_cut_before,
    off_again,
    pierced_once,
    settled_curve,
    settled_under_bones,
    shuts_a_slit,
    sleeve_tried,
    under_canvas,
)
from advisor.project.garment import Garment
from advisor.project.methods import FITTINGS
from advisor.project.placing import BONES, singular_words
from advisor.project.zipping import runs_into

STAYS = (PILE_LINE, HOLES_FOR_GOOD)
TO_BODY, LOOSELY, NOT = FITTINGS
BANDS = "band"
JOINED = frozenset({"seam", "gathers", "band"})
"""Families of places that hold pieces together."""
BEFORE_CROSSING = frozenset(
    {*SEWN, "press", "turn", "grade", "thin", "row", "trim"}
    | {"fold-under", "flap-over", "draw-in"}
)
"""Work on a place that is done before another place runs over its end."""
TOPSTITCH, NEATEN = "topstitch", "neaten-after"
HANGING = frozenset({"side", "centre"})
"""Roles of the seams that hang down a skirt: on the bias they drop with it."""
FLAT = frozenset({"backing", "laid on"})
"""Families of places on a single piece, which no fitting moves."""


@dataclass(frozen=True)
class Fitting:
    """What the fitting of one garment concerns.

    `places` have their methods, and `stages` gives the pieces of work that one of them needs;
    `keeps` says what of a row that is taken out again stays there for good, and `knifed` whether
    a machine that sews a place trims its allowance.
    """

    garment: Garment
    places: tuple[SeamPlace, ...]
    stages: Callable[[SeamPlace], list[Operation]]
    keeps: Callable[[SeamPlace], str] = lambda _: ""
    knifed: Callable[[SeamPlace], bool] = lambda _: False

    @cached_property
    def degree(self) -> str:
        """How the garment is fitted."""
        return self.garment.fitting or self._guess[0]

    @property
    def because(self) -> str:
        """Of what that was taken; "" where the project says it."""
        return "" if self.garment.fitting else self._guess[1]

    @cached_property
    def _guess(self) -> tuple[str, str]:
        close = next((part for part in self.garment.parts if part.fitting == TO_BODY), None)
        if close is not None:
            return TO_BODY, f"its {close.name} is"
        shell = [p for p in self.places if p.unit != "lining"]
        if not any(p.role.closes or p.role.fitted for p in shell):
            return NOT, "nothing of it closes round the body"
        for place in shell:
            front = place.kind.id == "zip" and (nouns.PARTLY | {"front"}) & set(
                singular_words(place.name)
            )
            shaped = place.role.id == "panel" and place.said("shape") == "curved"
            tells = place.kind.id in ("dart", "zip", *BONES) or shaped
            if (tells and not front and place.role.id != POCKET_ZIP) or place.role.id == CROTCH:
                return TO_BODY, f"it has {place.name}"
        return LOOSELY, "nothing shapes it to the body"

    def concerned(self, place: SeamPlace) -> bool:
        """Whether a fitting may change this place; what is drawn up takes it in its gathers."""
        said = place.seam.fitting
        if any(joins_widths(place, other) for other in self.places):
            return False
        if self.degree == NOT and not said:
            return False
        flat = place.role.apart or place.kind.family in FLAT
        if said and not (flat and self._of_its_part(place)):
            return said != NOT
        return not flat

    def _of_its_part(self, place: SeamPlace) -> bool:
        """Whether its fit was only taken over from the part that it lies on."""
        fits = {part.name: part.fitting for part in self.garment.parts}
        return fits.get(place.seam.part, "") == place.seam.fitting

    def past_recall(self, place: SeamPlace, op: Operation) -> bool:
        """Whether nothing of a fitted place is left to let out after a stage of it."""
        if self.cut_into(place):
            return any(stage.work == op.id for stage in place.method.stages)
        degree = place.seam.fitting or self.degree
        deep = place.kind.id == YOKE and degree == TO_BODY and self.may_move(place)
        if op.id == "grade" and (deep or depth_open(place, self)):
            return True
        if op.verb == CLIP and settled_curve(place, self):
            return self._marked(place)  # else nothing more is asked of its allowance
        if self.cut_behind(place, op) or (not op.let_out and self._holed(place)):
            return True
        late = placed_on_the_body(place, self) or laid_on_what_drops(place, self)
        laid = (op.id == LAY_ON and late) or level_open(place, op.id, self)
        laid = laid or (op.id == "join" and in_a_line_that_drops(place, self))
        if laid or waits_for_the_fitting(place, self):
            return True
        if op.id in ("join", DART) and (self._marked(place) or self.drops(place)):
            return True
        free = op.let_out and not self._trimmed(place, op)
        if free or not self.concerned(place) or settled_under_bones(place, self):
            return False
        return not (place.kind.id == "zip" and degree == LOOSELY) or self._ends_at_neck(place)

    def _holed(self, place: SeamPlace) -> bool:
        """Whether it is a band that keeps each hole of the needle: it is measured on the body."""
        close = self.degree == TO_BODY and self.garment.pattern != TRIED
        return close and place.kind.family == BANDS and self.keeps(place) in HOLED

    def _trimmed(self, place: SeamPlace, op: Operation) -> bool:
        """Whether a knife cuts away, as it is joined, what may be let out where it is basted."""
        basted = any(stage.work == "baste" for stage in place.method.stages)
        close = (place.seam.fitting or self.degree) == TO_BODY
        return op.id == "join" and (basted or close) and self.knifed(place)

    def _ends_at_neck(self, place: SeamPlace) -> bool:
        """Whether it is a zip down a whole front that nobody has cut before, or with a collar.

        With a collar or a hood it waits for the neck of that; a new pattern may still move it.
        """
        opens = place.method.id == FRONT_ZIP and place.op == "zip"
        necks = any(p.kind.id == COLLAR and p.role.id != "facing" for p in self.places)
        hood = any(p.role.id == HOODED and p.unit != "lining" for p in self.places)
        return opens and (self.garment.pattern == NEW or necks or hood)

    def cut_into(self, place: SeamPlace) -> bool:
        """Whether a slit is cut there into a piece of which a fitting may still move the place.

        The whole of it waits: rows that are sewn round a slit say where it lies. A pattern that
        has been tried has settled that; through the one at the neck the head comes in.
        """
        cut = any(s.cuts_in for s in place.method.stages) and place.role.id != NECK_SLIT
        return cut and self.may_move(place) and not lies_in_fullness(place, self.places)

    def cut_behind(self, place: SeamPlace, op: Operation) -> bool:
        """Whether what lies behind a lace is cut away there, of a piece that a fitting may move.

        That cut alone waits: what is laid on can be taken off again. A sleeve is made up first.
        """
        cut = any(stage.cuts_behind and stage.work == op.id for stage in place.method.stages)
        sleeve = nouns.ON_SLEEVE & set(singular_words(f"{place.name} {place.seam.part}"))
        return cut and not sleeve and self.may_move(place)

    @property
    def cut_anew(self) -> bool:
        """Whether it is fitted to the body, and nobody has cut it before."""
        return self.degree == TO_BODY and self.garment.pattern == NEW

    def may_move(self, place: SeamPlace) -> bool:
        """Whether a fitting may still move what lies on a piece of the shell.

        One to the body may unless the pattern has been tried; a loose one where that is called new.
        """
        degree, pattern = place.seam.fitting or self.degree, self.garment.pattern
        moves = pattern != TRIED if degree == TO_BODY else degree == LOOSELY and pattern == NEW
        return moves and place.unit != "lining"

    @cached_property
    def late(self) -> frozenset[str]:
        """The places that cannot be sewn before the fitting, and those that wait for them."""
        works = {p.name: self.past_of(p) for p in self.places}
        late = {p.name for p in self.places if p.op in works[p.name] or self.hangs(p)}
        ends = {
            p.name for p in self.places if works[p.name] & BEFORE_CROSSING and not self._cut_out(p)
        }
        ends |= {p.name for p in self.places if self._finished_last(p)}
        late |= {p.name for p in self.places if self._marked(p) or self._tube(p)}
        late |= {p.name for p in self.places if off_again(p, self)}
        byname = {p.name: p for p in self.places}
        while True:
            zips = [byname[name] for name in sorted(late) if byname[name].op == "zip"]
            past = [byname[name] for name in sorted(late | ends)]
            more = {
                p.name
                for p in self.places
                if p.name not in late
                and (any(crosses(p, q) for q in past) or any(self._after_zip(p, z) for z in zips))
            }
            if not more:
                return frozenset(late)
            late |= more

    def _cut_out(self, place: SeamPlace) -> bool:
        """Whether all that waits there is the cut behind a lace, which is made from the inside."""
        return any(self.cut_behind(place, op) for op in self.stages(place))

    def _finished_last(self, place: SeamPlace) -> bool:
        """Whether its edges wait for the fitting, and its topstitching for them.

        What runs over its end is only basted before that, or no machine gets at the row. So it is
        over a raglan seam, whose two edges are neatened as one.
        """
        rows = {op.id for op in self.stages(place)}
        late = NEATEN in rows and (TOPSTITCH in rows or place.role.id == RAGLAN)
        return late and self.concerned(place) and self.fitted(place)

    def drops(self, place: SeamPlace) -> bool:
        """Whether it is a long bias seam of what is fitted to the body: basted, it hangs first."""
        bias = place.said("bias") == "yes" and place.op == "join" and self.concerned(place)
        return bias and self.degree == TO_BODY and place.role.id in HANGING

    @staticmethod
    def _after_zip(place: SeamPlace, zipped: SeamPlace) -> bool:
        """Whether it is sewn once a zip is in: below a hidden one, or the crotch at a fly."""
        if zipped.role.id == "zip":
            return place.role.id == CROTCH and related(place, zipped)
        if zipped.role.id != "concealed-zip" or place.op != "join" or place.one_waits:
            return False
        centre = place.role.id == "centre" and below(place, zipped)
        return centre or (place.role.id == "side" and runs_into(place.seam, zipped.seam))

    def _tube(self, place: SeamPlace) -> bool:
        """Whether it makes a tube of what is felled, laid on or slit beside it while flat."""
        return shuts_a_slit(place, self) or any(
            closes_the_tube(place, o) or shuts_in_a_stripe(place, o) for o in self.places
        )

    def past_of(self, place: SeamPlace) -> frozenset[str]:
        """The pieces of work on a place that stand at its first one past recall, or after it."""
        works = self.stages(place)
        first = next((k for k, op in enumerate(works) if self.past_recall(place, op)), len(works))
        return frozenset(op.id for op in works[first:])

    def tries(self, place: SeamPlace) -> bool:
        """Whether the first fitting needs this place, sewn or basted."""
        return place.name in self.needed

    @cached_property
    def needed(self) -> frozenset[str]:
        """What the first fitting needs, and what ends in a seam that it needs: a sleeve in flat."""
        found = {p.name: p for p in self.places if self._first(p) or self._hangs_from_raglan(p)}
        sleeves = {p.name: p for p in self.places if sleeve_tried(p, self)}
        if sleeves:
            found |= sleeves | {p.name: p for p in self.places if hangs_a_sleeve(p)}
        while True:
            more = {
                p.name: p
                for p in self.places
                if p.name not in found
                and p.op in ("join", "lay-on")
                and p.unit != "lining"
                and p.kind.family in JOINED
                and self.concerned(p)
                and any(crosses(q, p) for q in found.values() if q.op != "zip")
            }
            if not more:
                return frozenset(found)
            found |= more

    def _hangs_from_raglan(self, place: SeamPlace) -> bool:
        """Whether it closes a raglan sleeve, of which only a tube shows how it sits."""
        sleeve = place.role.id == "underarm" and place.op == "join" and place.unit != "lining"
        return sleeve and any(p.role.id == RAGLAN and p.unit != "lining" for p in self.places)

    def fitted(self, place: SeamPlace) -> bool:
        """Whether a fitting changes it by what it is: a side, or a seam that shapes the body."""
        changed = place.role.fitted or self.shapes(place)
        return changed and not lies_under_rows(place, self.places)

    def shapes(self, place: SeamPlace) -> bool:
        """Whether it is a seam between panels that gives a bodice its shape.

        Canvas covers the edges of such a seam in a front, so behind it the seam is finished before.
        """
        words = set(singular_words(place.name))
        if under_canvas(place, self) and not not_cut_before(place, self):
            return False
        curved = place.said("shape") == "curved" and not nouns.SET_IN & words
        shaped = place.role.id == "panel" and (curved or bool(nouns.SHAPING & words))
        return shaped and self.degree == TO_BODY

    def _marked(self, place: SeamPlace) -> bool:
        """Whether it is basted and not sewn for the fitting: its cloth keeps the mark of a seam.

        So is every seam that shapes or closes what nobody has cut before, and every dart. Where the
        pattern is known bones are tried on in their channels, over seams that are sewn.
        """
        held = pierced_once(place, self) or cut_after_the_fitting(place, self)
        if held or dart_may_move(place, self):
            return True
        if (self.garment.pattern == NEW or under_canvas(place, self)) and self.shapes(place):
            return True
        if closes_the_body(place, self) and not_cut_before(place, self):
            return True
        boned, kept = any(p.kind.id == "boning" for p in self.places), self.keeps(place)
        shaped = bool(kept) and self.shapes(place)
        shoulder = place.role.id == SHOULDER and place.op == "join" and self.may_move(place)
        corrected = place.role.fitted or (shoulder and self.concerned(place))
        return not boned and (shaped or (kept in STAYS and corrected))

    def _first(self, place: SeamPlace) -> bool:
        """Whether the first fitting needs this place by what it is."""
        early = place.role.stage < FIT_ENDS or (place.role.closes and place.role.fitted)
        flat = early and (place.role.pressed == "open" or place.role.id == RAGLAN)
        flat = flat and not (place.kind.id == BAND and WAIST in place.role.crosses)
        sewn = place.op in ("join", "dart", "pleat", "zip", "lay-on")
        needed = (sewn and flat) or pierced_once(place, self) or self.hangs(place)
        late = takes_whole_lining(place, self.places) or laid_to_a_slit(place, self)
        needed = (needed or hood_tried(place, self)) and not late
        return needed and place.unit != "lining" and self.concerned(place)

    def hangs(self, place: SeamPlace) -> bool:
        """Whether it is the plain waist of what is fitted to the body: the skirt hangs from it.

        It is only basted, so that the seams that run into it can be let out and neatened first. So
        is what a bib is sewn to, where the garment hangs from the straps of the bib, however loose.
        """
        waist, degree = place.role.id == WAIST, place.seam.fitting or self.degree
        if degree == NOT or place.op != "join":
            return False
        bib = waist or "bib" in singular_words(place.name) or place.kind.id == "waistband"
        close = (waist and degree == TO_BODY) or band_tried(place, self)
        return close or (bib and self._strapped(place))

    def _strapped(self, place: SeamPlace) -> bool:
        """Whether it joins pieces of the shell of what hangs from the straps of a bib."""
        bib = any("bib" in singular_words(p.name) for p in self.places)
        joins = place.kind.family in JOINED and place.unit != "lining"
        return bib and joins and any(map(self._carries, self.places))

    def tried(self, place: SeamPlace) -> bool:
        """Whether it is sewn before the fitting."""
        return self.tries(place) and place.name not in self.late

    def basted(self, place: SeamPlace) -> bool:
        """Whether it is only basted for the fitting."""
        late = self.tries(place) and place.name in self.late and place.op != "zip"
        return late or self._carries(place)

    def _carries(self, place: SeamPlace) -> bool:
        """Whether the garment hangs from these straps, or their own stretch is tried with it."""
        return hung_from(place, self)


FRONT_ZIP, COLLAR = "open-ended-zip", "collar"
HOODED = "collar-attach"
NEW, TRIED, SHOULDER = "new", "tried", "shoulder"
CLIP = "clip"
YOKE, BAND, WAIST = "yoke", "front-band", "waist"
"""A band down the whole front waits for the waist that it runs over: the front is pinned shut."""
RAGLAN = "raglan"
"""The seam from which a sleeve hangs: nothing is tried on without it, though it lies closed."""
FIT_ENDS = 460
"""The stage up to which seams are sewn before the first fitting."""
