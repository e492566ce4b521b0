"""How machine and iron are set for a place, out of the verdicts of the sheet.

The order of work uses the picks of the sheet, so that both say the same. Thread colour is not a
verdict: it is taken to match the first cloth of the seam or what is laid on it, and the
overlocker's cones to be neutral and to stay (estimates of how people work). Irons are set in steps
of 5 °C, downwards.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace as set_to

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.consistency import NARROW, STEAM, SWINGING
from advisor.claims.glued import STIFFENS
from advisor.claims.judgement import Advice
from advisor.claims.mounted import with_shells
from advisor.claims.valuesets import Span
from advisor.claims.workarounds import GLUED
from advisor.construction.fullness import drawn_up_by
from advisor.construction.rack import FIBRE, SIZE
from advisor.construction.threadshare import seen_of, sewn_as
from advisor.craft.irondial import mark_for, step_down
from advisor.decide.apart import judge_apart, of_one_seam
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Entry, Knowledge
from advisor.order.cures import chosen_cures
from advisor.order.fusing import beside_glue, fused_onto, fusing_iron, no_damper
from advisor.order.heldalready import held_already, stayed_elsewhere
from advisor.order.kinds import SeamPlace
from advisor.order.layering import hung, quilted
from advisor.order.overlocking import on_the_overlocker
from advisor.order.rowneedle import with_the_point_of
from advisor.order.steps import IronState, MachineState
from advisor.order.threadwords import colour_of, colour_words
from advisor.order.unsettled import glue_ruled_out
from advisor.project.bindings import strip_of
from advisor.project.garment import Seam, Use
from advisor.project.hemstrips import bias_strips

OVERLOCKS = frozenset({"503", "504", "514", "516", "401"})
ZIP_FEET = frozenset({"zip", "concealed zip"})
UNFINISHED = frozenset({"none", "enclosed in the seam", ""})
BY_HAND = frozenset({"pinked", "hand overcast", "edge sealant"})
BONE = "bone"
"""What goes into a stitched and pressed channel, and is never sewn over."""
STAY = "301, short"
ZIGZAG = "304"
USUAL_TEX = 27
PRESSURE, USUAL_PRESSURE = "machine.pressure", "medium"
LIGHT_CLOTH = 150.0
"""Below this weight a light foot does no harm where a medium one would do, g/m²: estimate."""


class Setups:
    """The set-ups of one garment."""

    def __init__(self, advice: Advice, knowledge: Knowledge) -> None:
        self.advice = advice
        self.knowledge = knowledge
        self.garment = advice.judgement.garment
        self.machine_name = self.garment.maker.machine
        self.zigzags = ZIGZAG in knowledge.machines[self.machine_name].stitches
        self.chosen = chosen_cures(advice)
        self.apart: dict[Place, dict[str, Verdict]] = {}

    def judged(self, place: Place) -> dict[str, Verdict]:
        """Every verdict of a place of the garment, or of one that was judged apart from it."""
        return self.apart.get(place) or self.advice.judgement.verdicts.get(place, {})

    def alone(self, cloths: Iterable[str]) -> Place:
        """Some cloths flat in a seam of their own, judged as the sheet would judge that."""
        uses = tuple(map(Use, cloths))
        return self._judge_apart("alone", Seam(" + ".join(u.cloth for u in uses), uses))

    def unboned(self, seam: SeamPlace) -> Place:
        """A seam as it is before its bones go in; the seam itself where it has none."""
        return self._without(seam, self.bones(seam), "without bones")

    def empty(self, seam: SeamPlace) -> Place:
        """A channel as it is folded and pressed, before anything is drawn through it."""
        return self._without(seam, frozenset(seam.notions), "empty")

    def _without(self, seam: SeamPlace, names: frozenset[str], scope: str) -> Place:
        rest = tuple(use for use in seam.seam.uses if use.cloth not in names)
        if not names or not rest:
            return Place("seam", seam.name)
        return self._judge_apart(scope, with_shells(replace(seam.seam, uses=rest), self.garment))

    def _judge_apart(self, scope: str, seam: Seam) -> Place:
        place = Place(scope, seam.name)
        if place not in self.apart:
            garment = of_one_seam(self.garment, seam)
            found = judge_apart(garment, self.knowledge, self.advice.judgement)
            self.apart[place] = found.verdicts[Place("seam", seam.name)]
        return place

    def bones(self, seam: SeamPlace) -> frozenset[str]:
        """The bones that lie in a seam."""
        entries, cloths = self.knowledge.entries, self.garment.cloths
        return frozenset(n for n in seam.notions if entries[cloths[n].entry].kind == BONE)

    def verdict(self, place: Place, aspect: str) -> Verdict | None:
        """The verdict of a place, after the chosen remedy where the place clashes."""
        found = self.judged(place).get(aspect)
        cure = self.chosen.get((place.name, aspect))
        if found is not None and found.pick is None and cure is not None:
            return cure.after.verdicts.get(place, {}).get(aspect)
        return found

    def pick(self, place: Place, aspect: str) -> float | None:
        """The picked number or index; None where there is none."""
        found = self.verdict(place, aspect)
        return None if found is None else found.pick

    def word(self, place: Place, aspect: str, default: str = "") -> str:
        """The picked word of a scale or of options."""
        found = self.verdict(place, aspect)
        if found is None or found.pick is None:
            return default
        return found.aspect.words[int(found.pick)]

    def seam_machine(self, seam: SeamPlace) -> MachineState | None:
        """How the machine is set to sew a seam; None for hand work."""
        return self._machine(Place("seam", seam.name), self._first(seam))

    def lock_machine(self, seam: SeamPlace) -> MachineState | None:
        """How it is set where no overlocker can sew: as for the seam, but lockstitched.

        Its knife would cut the coil of a zip, the edge of an elastic and the fold of a hem, and
        it sews no dart. What has to stretch is sewn in zigzag.
        """
        entries, place = self.knowledge.entries, Place("seam", seam.name)
        elastic = any(entries[self.garment.cloths[n].entry].kind == "elastic" for n in seam.notions)
        told = self.word(place, "stitch.type")
        swings = told if told in SWINGING else ZIGZAG
        lock = swings if elastic or seam.op == "hem" else "301"
        return self._machine(place, self._first(seam), lock)

    def cloth_machine(self, cloth: str) -> MachineState | None:
        """How it is set to stitch a cloth to itself, flat, as in tucks."""
        return self._machine(self.alone((cloth, cloth)), cloth, "301")

    def _machine(self, place: Place, cloth: str, lock: str = "") -> MachineState | None:
        """How a machine is set in a place; `lock` is the stitch instead of an overlocker's."""
        stitch = self.word(place, "stitch.type", "301")
        if stitch == "hand" or self.machine_name == "hand":
            return None
        stitch = lock if lock and stitch in OVERLOCKS else stitch
        foot = self.word(place, "machine.foot", "standard")
        if stitch in SWINGING and foot == NARROW:
            foot = "standard"  # a needle that swings would strike foot and plate
        plate = "single-hole" if foot == "straight-stitch" else "wide"
        thread = self._thread(place, cloth)
        tension = self.word(place, "stitch.tension", "balanced")
        state = MachineState(
            self.machine_name,
            thread,
            thread,
            self.word(place, "needle.point", "universal"),
            int(self.pick(place, "needle.size") or 80),
            foot,
            plate,
            stitch,
            f"{tension}, {self._pressure(place, cloth)} pressure",
        )
        if stitch not in OVERLOCKS:
            return state
        return on_the_overlocker(state, self.knowledge, stitch)

    def _pressure(self, place: Place, cloth: str) -> str:
        """The pressure of the foot; where nobody minds, that of the other seams of a light cloth.

        A light cloth bears a light foot, so nothing is set anew between two of its seams.
        """
        told = self.word(place, PRESSURE)
        weight = self.garment.cloths[cloth].weight if cloth in self.garment.cloths else None
        if told or weight is None or weight[1] >= LIGHT_CLOTH:
            return told or USUAL_PRESSURE
        others = (s for s in self.garment.seams if cloth in s.cloths())
        asked = [w for s in others if (w := self.word(Place("seam", s.name), PRESSURE))]
        return "light" if asked and set(asked) == {"light"} else USUAL_PRESSURE

    def rows_machine(self, seam: SeamPlace) -> MachineState | None:
        """How it is set to draw a full edge up, with needle and thread of that edge alone."""
        alone = self.cloth_machine(seam.full[0]) if len(seam.full) == 1 else None
        usual, method = self.lock_machine(seam), drawn_up_by(seam.seam)
        state = alone or usual
        if state is None:
            return None
        if alone:
            place = self.alone((seam.full[0], seam.full[0]))
            state = with_the_point_of(alone, usual, self.judged(place).get("needle.point"))
        if method == "overlock" and self.garment.maker.overlocker:
            return on_the_overlocker(state, self.knowledge)
        state = set_to(state, machine=self.machine_name, stitch="301, long")
        sewn = sewn_as(seam.full[0], self.garment) if alone else None
        if sewn is None or sewn.uses[0].cloth != seam.full[0]:
            thread = self.thread(seam)  # no reel is bought in the colour of that cloth
            state = set_to(state, thread_above=thread, thread_below=thread)
        if method == "gathering foot":
            return set_to(state, foot="gathering", plate="wide")
        if method == "elastic":
            return state.swinging()
        return state

    def stayed(self, seam: SeamPlace) -> tuple[str, ...]:
        """The cloths of a seam whose cut edge is stay-stitched.

        Wovens only: a knit that is to give would be held, and in a skin or film the holes stay.
        No strip on the bias either: it has to give to lie round the edge.
        """
        drawn = {use.cloth for use in seam.seam.uses if use.stretched > 1} | self.strips(seam)
        about = {
            n: self.knowledge.entries[self.garment.cloths[n].entry] for n in seam.seam.cloths()
        }
        drawn |= quilted(self.garment.seams) | hung(seam, {n: about[n] for n in seam.cloths})
        drawn |= stayed_elsewhere(seam.seam, self.garment)
        drawn |= held_already(seam, {name: entry.kind for name, entry in about.items()})
        return tuple(
            name
            for name in seam.cloths
            if name not in drawn
            and not self._holes_leak(name)
            and self.knowledge.entries[self.garment.cloths[name].entry].structure == "woven"
        )

    def _holes_leak(self, name: str) -> bool:
        """Whether a cloth is coated, so that no row is sewn in it that need not be."""
        cloth = self.garment.cloths[name]
        own = cloth.traits.get("coated")
        return bool((own or self.knowledge.entries[cloth.entry].traits.get("coated", (0, 0)))[1])

    def strips(self, seam: SeamPlace) -> frozenset[str]:
        """The cloths of which a seam sews a bias strip; of a binding the one named so, or last."""
        found = {name for name in seam.cloths if bias_strips(self.garment, name)}
        if not found and seam.binds and len(seam.cloths) > 1:
            found = {strip_of(seam.seam, self.garment)} & set(seam.cloths)
        return frozenset(found)

    def stay_machine(self, seam: SeamPlace) -> MachineState | None:
        """How it is set to stay-stitch: straight and short, with the needle of those pieces."""
        stayed = self.stayed(seam)
        whole = stayed == seam.cloths
        place = Place("seam", seam.name) if whole else self.alone(stayed)
        state = self._machine(place, self._first(seam), STAY)
        thread = self.thread(seam)
        if state is None:
            return None
        state = set_to(state, thread_above=thread, thread_below=thread)
        return set_to(state, machine=self.machine_name, stitch=STAY)

    def zip_machine(self, seam: SeamPlace) -> MachineState | None:
        """How it is set to sew in a zip: always the lockstitch machine."""
        state = self.lock_machine(seam)
        usual = "concealed zip" if seam.role.id == "concealed-zip" else "zip"
        told = self.word(Place("seam", seam.name), "machine.foot", usual)
        foot = told if told in ZIP_FEET else usual
        return None if state is None else set_to(state, foot=foot, plate="wide", stitch="301")

    def finish(self, seam: SeamPlace) -> str:
        """The edge finish of a seam; empty where its edges need none."""
        place = Place("seam", seam.name)
        found = self.word(place, "seam.finish")
        sewn = self.word(place, "stitch.type", "301")
        needless = found in UNFINISHED or (sewn in OVERLOCKS and found == "overlocked")
        return "" if needless else found

    def finish_machine(self, seam: SeamPlace) -> MachineState | None:
        """How a machine is set to neaten the edges; None for hand work."""
        finish, state = self.finish(seam), self.lock_machine(seam)
        if not finish and seam.op == "hem" and not self.zigzags:
            return None  # its edge is overcast, and it is turned up, by hand
        if finish in BY_HAND or state is None:
            return None
        if finish == "overlocked" and self.garment.maker.overlocker:
            return on_the_overlocker(state, self.knowledge)
        state = set_to(state, foot="standard") if state.foot in ZIP_FEET else state
        if finish in ("overlocked", "zigzag"):
            foot = "standard" if state.foot == "straight-stitch" else state.foot
            return set_to(state, plate="wide", stitch="zigzag", foot=foot)
        return state

    def thread(self, seam: SeamPlace) -> str:
        """The thread of the sewing machine in words: fibre, size and the colour it matches."""
        return self._thread(Place("seam", seam.name), self._first(seam))

    def _thread(self, place: Place, cloth: str) -> str:
        if place.scope != "seam":
            # Rows in a cloth by itself take the thread that a seam of it takes.
            sewn = sewn_as(cloth, self.garment)
            place = place if sewn is None else Place("seam", sewn.name)
        fibre = self.word(place, FIBRE, "polyester")
        size = self.pick(place, SIZE) or USUAL_TEX
        return f"{fibre} tex {size:g} {self._colour_words(cloth)}"

    def _colour_words(self, first: str) -> str:
        """The colour of the thread of a cloth: a reel of hers, or the cloth that it matches."""
        return colour_words(first, self.advice.judgement)

    def colour_of(self, first: str) -> str:
        """The first cloth of the garment that has the colour of the thread of this one."""
        return colour_of(first, self.advice.judgement)

    def iron(self, place: Place) -> IronState | None:
        """How the iron is set in a place that allows one."""
        most = self.iron_most(place)
        heat = self.pick(place, LIMIT_ASPECT)
        heat = most if heat is None else heat
        if most is None or heat is None or heat <= COLD or mark_for(most) is None:
            return None  # or no dial goes that low
        hovered = self.word(place, "press.motion") == STEAM
        return IronState(
            step_down(heat),
            self.word(place, "press.moisture", "steam" if hovered else "dry"),
            self.word(place, "press.surface", "padded board"),
        )

    def iron_most(self, place: Place) -> float | None:
        """What the sheet tells as the hottest iron of a place, °C: often less than is borne."""
        found = self.verdict(place, LIMIT_ASPECT)
        if found is None or found.pick is None or not isinstance(found.advised, Span):
            return self.limit(place)
        return found.advised.high

    def limit(self, place: Place) -> float | None:
        """What the most tender layer of a place bears, °C."""
        found = self.judged(place).get(LIMIT_ASPECT)
        if found is None:
            return None
        if found.clash:
            return min(s.claim.span[1] for s in found.clash if s.claim.span)
        return found.allowed.high if isinstance(found.allowed, Span) else None

    def bears(self, seam: SeamPlace) -> float | None:
        """What the most tender layer of a seam bears before its bones go in, °C."""
        return self.limit(self.unboned(seam))

    def cloth_most(self, cloth: str) -> float | None:
        """The hottest iron for a cloth by itself, as the sheet would tell it, °C."""
        return self.iron_most(self.alone((cloth, cloth)))

    def bears_alone(self, name: str) -> float | None:
        """What a cloth or notion bears by itself, °C."""
        return self.limit(self.alone((name, name)))

    def comes_in(self, seam: SeamPlace) -> tuple[str, ...]:
        """The notions that a seam brings in; interfacing lies on its piece before it."""
        return tuple(
            name
            for name in seam.notions
            if self._kind(name) not in STIFFENS and name not in self.bones(seam)
        )

    def _kind(self, name: str) -> str:
        return self.knowledge.entries[self.garment.cloths[name].entry].kind

    def glue_ruled_out(self, seam: SeamPlace) -> bool:
        """Whether a layer bars a glue that is not fused before, or nothing beside it bears it."""
        return glue_ruled_out(seam, self)

    def about_notions(self, seam: SeamPlace) -> list[Entry]:
        """What is known of each notion of a seam."""
        return [self.knowledge.entries[self.garment.cloths[n].entry] for n in seam.notions]

    def glues_left_out(self, seam: SeamPlace) -> frozenset[str]:
        """The fusibles of a seam that some layer of it does not bear."""
        kinds = {n: self.knowledge.entries[self.garment.cloths[n].entry].kind for n in seam.notions}
        glues = frozenset(name for name, kind in kinds.items() if kind in GLUED)
        return glues if glues and self.glue_ruled_out(seam) else frozenset()

    def fused_to(self, seam: SeamPlace) -> list[str]:
        """What the glue of a seam lies on: it is fused to one of those."""
        kinds = {n: self.knowledge.entries[c.entry].kind for n, c in self.garment.cloths.items()}
        return [name for name in beside_glue(seam.seam, kinds) if name in seam.cloths]

    def fuse_iron(self, seam: SeamPlace) -> IronState | None:
        """How the iron is set to fuse the interfacing of a seam to a single piece."""
        found = self.advice.judgement.verdicts.get(Place("seam", seam.name), {})
        iron, touched = fusing_iron(self.about_notions(seam), found), self.fused_to(seam)
        onto = fused_onto(filter(touched.__contains__, seam.cloths), iron, self.bears_alone)
        lying = (self.verdict(self.alone((n, n)), "press.moisture") for n in onto or touched)
        return no_damper(iron, lying)

    def fuse_most(self, seam: SeamPlace) -> float | None:
        """The hottest iron on the flat piece and its glue, °C: the other layers are not in yet."""
        glues = [n for n in seam.notions if self._kind(n) in GLUED]
        flat = [self.iron_most(self.alone((n, *glues))) for n in self.fused_to(seam)]
        return max((most for most in flat if most is not None), default=None)

    def cloth_iron(self, cloth: str) -> IronState | None:
        """How the iron is set for what is made of one cloth alone, lying flat."""
        return self.iron(self.alone((cloth, cloth)))

    def _first(self, seam: SeamPlace) -> str:
        """The cloth that the thread of a seam matches: the first, or what is laid on it."""
        return seen_of(seam.seam, seam.cloths or seam.seam.cloths(), self.garment)
