"""Out of a judged garment, the pieces of work that it needs: one task for each step.

The templates of `operations.yaml` say what work there is and when; this room answers the facts
that they ask of cloths and seams, and fills in names, set-ups and minutes. Nothing here decides
an order.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import partial

from advisor.claims.byparts import PARTS
from advisor.claims.collect import Place
from advisor.claims.hungup import HUNG, crushed, hanging_with
from advisor.claims.judgement import Advice
from advisor.claims.lifted import LIFTED, lifted_text
from advisor.claims.linedup import matched_at
from advisor.claims.workarounds import gone_round, piled_trims
from advisor.construction.notionlist import is_sheet
from advisor.construction.roomy import room_words
from advisor.craft.irondial import step_down
from advisor.knowledge.model import Entry, Knowledge
from advisor.knowledge.ordering import Operation
from advisor.order.backed import boned_after, bones_cut
from advisor.order.basting import as_basted
from advisor.order.cures import heat_pairs
from advisor.order.damp import shrunk
from advisor.order.drawnup import listed
from advisor.order.eachpressed import each_pressed
from advisor.order.facings import facing_machine
from advisor.order.facts import Facts
from advisor.order.flatsleeve import ONE_ROW, as_one_row
from advisor.order.gluewords import over_glue
from advisor.order.hungapart import APART, hung_apart
from advisor.order.kinds import SeamPlace
from advisor.order.layering import with_linings_hung
from advisor.order.pieces import as_cut, grain_words, tucked
from advisor.order.recall import marked
from advisor.order.seamplaces import seam_places
from advisor.order.setups import Setups
from advisor.order.steamwords import STEAMED, held_off, off_alone, steamed_alone
from advisor.order.step_words import (
    WITH_LINING,
    by_parts,
    no_last_iron,
    step_words,
    tuck_words,
)
from advisor.order.steps import IronState, MachineState, Step
from advisor.order.swings import (
    buttonhole_machine,
    straight_machine,
    topstitching_machine,
    twin_machine,
    zigzag_machine,
)
from advisor.order.tags import tags_of
from advisor.order.tasknames import each_named
from advisor.order.tasks import Task
from advisor.order.trying import what_to_find_out, what_to_fit
from advisor.order.underiron import POCKET, under_iron
from advisor.order.unsettled import with_unsettled
from advisor.order.worked_with import iron_with

USUAL_LENGTH = 500.0
"""The length of a seam that nobody measured, mm: estimate."""
LOCKSTITCHED = frozenset({"dart", "pleat", "understitch"})
"""Work that no overlocker does, whatever the stitch of the seam."""
CHAINSTITCH = "401"
"""Sewn without a knife, so that it may sew a hem."""
CAUGHT_IN = "clear-elastic"
"""What is overlocked into a shoulder with the seam, as no other elastic is."""
TAPE = "tape"
STEAM = "steam"
PILE_BOARD = "needle board"
TRIED_BONED = frozenset({"fit-boned", "baste-bones"})
PLEATS_SET = (
    " Press or steam its basted pleats with it, as sharp or as soft as they are to be, and let "
    "them lie until they are cold."
)
"""What is pressed alone is pressed with its folds in it: that is all the setting they get."""
FROM_BEHIND = " held off its back while it hangs, and no hand on it until it is dry"
LEFT_HANGING = "Hang the {} up and let the creases drop: no iron comes on it now"
LOCK_NOTIONS = ("zip", "elastic", "hook-and-loop", "button")
LOCK_WORDS = ("casing", "channel", "topstitch")


def tasks_and_facts(advice: Advice, knowledge: Knowledge) -> tuple[list[Task], Facts]:
    """The same, with the facts of the garment that they rest on."""
    maker = _Maker(advice, knowledge)
    return maker.all(), maker.facts


class _Maker:
    def __init__(self, advice: Advice, knowledge: Knowledge) -> None:
        self.garment = advice.judgement.garment
        self.judgement = advice.judgement
        self.knowledge = knowledge
        self.setups = Setups(advice, knowledge)
        places = with_linings_hung(seam_places(self.garment, knowledge))
        self.facts = Facts(self.garment, knowledge, self.setups, places)
        self.places = self.facts.places
        self.tender: dict[str, frozenset[str]] = {}
        for _, needy, tender in heat_pairs(advice, knowledge):
            for name in needy:
                # What it shares no seam with is never under the iron where it is pressed.
                met = frozenset(c for p in self.places if name in p.cloths for c in p.cloths)
                if met & tender:
                    self.tender[name] = self.tender.get(name, frozenset()) | (tender & met)

    def all(self) -> list[Task]:
        found: list[Task] = []
        for operation in self.knowledge.order.operations.values():
            if operation.scope == "garment":
                found += self._garment(operation)
            elif operation.scope == "cloth":
                names = sorted(self.garment.cloths)
                found += [task for name in names for task in self._cloth(operation, name)]
        for place in self.places:
            found += self._stages(place)
        return each_named(found)

    def _garment(self, op: Operation) -> Iterator[Task]:
        if not self.facts.hold(op.when, self.facts.of_garment):
            return
        if op.id in TRIED_BONED and not boned_after(self.places, self.facts.fitting):
            return
        name = self.garment.name
        text = what_to_fit(self.places, self.facts) if op.id == "fit" else ""
        text = APART if op.id == "hang" and hung_apart(self.facts) else text
        text = what_to_find_out(self.facts) if op.id == "try-lengths" else text
        text = bones_cut(self.facts) if op.id == "baste-bones" else text
        text = as_cut(self.garment) if op.id == "toile" else text
        iron, limit = None, None
        if op.iron == "last":
            each = each_pressed(self.garment, self.places, self.setups)
            own = (each, None, None)
            text, iron, limit = own if each else self._last_press(Place("garment", name))
        does = op.does.format(name=name, how=text, cloths="")
        step = Step(op.verb, does, None, iron, op.minutes.each, op.rank)
        said = {"last", "not fastening"} if op.id == "hem-edge" else set()
        tags = frozenset(said | {"before last press"})
        yield Task(step, op, tags=tags, cloths=tuple(sorted(self.garment.cloths)), at_most=limit)

    def _last_press(self, whole: Place) -> tuple[str, IronState | None, float | None]:
        """How the whole is pressed at last, how the iron is set for that, and its limit."""
        parted = next((i for i in self.judgement.instructions if i.kind == PARTS), None)
        hung = [n for i in self.judgement.instructions if i.kind == HUNG for n in sorted(i.tender)]
        left = LEFT_HANGING.format(listed(hung)) if hung else ""
        if parted is not None and parted.most is not None:
            surface = self.setups.word(whole, "press.surface", "padded board")
            cool = IronState(step_down(parted.most), "dry", surface)
            text = by_parts(parted.needy, parted.tender, hung)
            return f"{left}. {text}" if hung else text, cool, parted.most
        iron, beside = self.setups.iron(whole), self._beside(whole, frozenset(hung))
        if iron is None:
            rest = self.setups.iron_most(whole) is not None  # something else is there
            none = no_last_iron(self.garment, self.knowledge, self.setups.bears_alone)
            smooth = f". {none.replace('whole garment', 'rest')}" if rest else ""
            return f"{left}{smooth}" if hung else none, None, None
        round_them = f", and go round the {listed(beside)} with the iron" if beside else ""
        apart = next((i for i in self.judgement.instructions if i.kind == LIFTED), None)
        what, where = "the rest" if hung else "the whole garment", ""
        if hung:
            where = f", where no {' or '.join(hung)} lies under the iron"
        what = what if apart is None else WITH_LINING
        text = f"Press {what} once more, {iron.moisture}{where}{round_them}"
        text = f"{left}. {text}" if hung else text
        if apart is not None:
            text += f". Then press {lifted_text(apart, self.garment.units)}"
        return text, iron, self.setups.iron_most(whole)

    def _beside(self, whole: Place, hung: frozenset[str]) -> list[str]:
        """The parts that the last press goes round."""
        found = gone_round(whole, self.judgement.verdicts, self.judgement.gathered.beside)
        tender = frozenset(name for item in found for name in item.tender)
        tender |= {*piled_trims(self.garment, self.knowledge)}
        return sorted(tender - hanging_with(hung, self.garment))

    def _cloth(self, op: Operation, name: str) -> Iterator[Task]:
        entry = self.knowledge.entries[self.garment.cloths[name].entry]
        if not self.facts.hold(op.when, lambda fact: self._of_cloth(fact, name, entry)):
            return
        if op.id == "cut" and entry.kind != "cloth" and not is_sheet(entry):
            return
        if op.id == "tuck":
            yield from self._tucks(op, name)
            return
        if self._left_out(name):
            return
        tender = self.tender.get(name, frozenset())
        iron, rank, limit = None, op.rank, None
        meets = [p for p in self.places if name in p.cloths and tender & set(p.cloths)]
        if op.iron == "cloth":
            iron, limit = iron_with(name, self.places, tender, self.setups)
            if iron is None:
                return
            rank = min((p.role.stage for p in meets), default=rank) - 3
        absent = sorted(tender - _in_a_pocket(meets)) or sorted(tender)
        how = listed(absent) + (" is" if len(absent) == 1 else " are")
        if op.iron == "none":
            how = self._how_cloth(op.id, name)
        alone = iron is not None and op.iron == "cloth"
        glue = over_glue(name, iron.temperature_c, self.facts) if iron and alone else ""
        steamed = alone and steamed_alone(name, self.setups)
        does = (STEAMED if steamed else op.does).format(name=name, how=how, cloths=name)
        if iron is not None and alone:
            does = self._with_care(does, name, glue, tender)
            does = off_alone(does, name, self.setups) if steamed else does
        step = Step(
            f"{STEAM if steamed else op.verb} {name}",
            does,
            None,
            iron,
            op.minutes.each,
            rank,
        )
        yield Task(
            step,
            op,
            None,
            (name,),
            frozenset({"before last press"}),
            how,
            name if tender else "",
            tender,
            frozenset(p.name for p in meets),
            limit,
            glue=glue,
        )

    def _with_care(self, does: str, name: str, glue: str, absent: frozenset[str]) -> str:
        """How a cloth is pressed by itself, with what lies on it or is folded in it by then."""
        does = does.rstrip(".") + glue
        if piled := [n for n in self._piled_on(name) if n not in absent]:
            does += f"; where {listed(piled)} lies on it, over a {PILE_BOARD}"
        pleats = any(name in p.full for p in self.places if p.seam.making.pleats)
        return f"{does}.{PLEATS_SET * pleats}"

    def _piled_on(self, name: str) -> list[str]:
        """The cloths of a pile that are laid on a cloth and would be flattened under the iron."""
        laid = (p for p in self.places if p.kind.family == "laid on" and name in p.cloths)
        word = self.setups.word
        boards = [p for p in laid if word(Place("seam", p.name), "press.surface") == PILE_BOARD]
        return sorted({c for p in boards for c in p.cloths} - {name})

    def _tucks(self, op: Operation, cloth: str) -> Iterator[Task]:
        """One step for each piece of a cloth that has tucks."""
        iron, machine = self.setups.cloth_iron(cloth), self.setups.cloth_machine(cloth)
        for piece in tucked(self.garment, cloth):
            text = tuck_words(op, piece, self.garment, ironed=iron is not None)
            count = piece.tucks.number * (piece.number or 1) if piece.tucks else 0
            minutes = op.minutes.each + op.minutes.per_metre * count * piece.height / 1000
            step = Step(f"{op.verb} {piece.name}", text, machine, iron, round(minutes, 1), op.rank)
            limit = self.setups.cloth_most(cloth) if iron else None
            yield Task(step, op, None, (cloth,), frozenset({"before last press"}), at_most=limit)

    def _left_out(self, name: str) -> bool:
        """Whether a notion is in no seam that bears it, so that nobody need cut it."""
        places = [p for p in self.places if name in p.notions]
        return bool(places) and all(name in self.facts.ruled_out(p) for p in places)

    def _of_cloth(self, fact: str, name: str, entry: Entry) -> bool:
        if fact == "cloth":
            return entry.kind == "cloth"
        if fact == "shrinks first":
            way = self.setups.word(Place("fabric", name), "prepare.preshrink", "nothing")
            return way != "nothing"
        if fact == "held as one with another":
            return bool(self.facts.backs(name))
        return fact == "wants heat before it meets a tender cloth" and name in self.tender

    def _how_cloth(self, op: str, name: str) -> str:
        place = Place("fabric", name)
        if op == "shrink":
            way = self.setups.word(place, "prepare.preshrink")
            entry = self.knowledge.entries[self.garment.cloths[name].entry]
            held = way == STEAM and crushed(entry)
            return f"{way}{FROM_BEHIND}" if held else shrunk(way, name, self.setups)
        if op == "back":
            return listed([place.name for place in self.facts.backs(name)])
        if op == "mark":
            return self.setups.word(place, "mark.method", "as you can see it")
        grain = self.setups.word(place, "cut.grain")
        words = [
            self.setups.word(place, "cut.lay"),
            grain_words(self.garment, name, grain),
            self.setups.word(place, "cut.direction"),
            self.setups.word(place, "cut.tool"),
            room_words(name, self.garment),
        ]
        usual = ("either way", "", "any way")
        if seams := matched_at(self.garment, name):
            words.append(f"matched at {listed(list(seams))}")
        return ", ".join(word for word in words if word not in usual) or "as the pattern lies"

    def _stages(self, place: SeamPlace) -> list[Task]:
        """The steps of a place in the order of its method, what is done to single pieces first."""
        works = self.knowledge.order.operations
        listed = self.facts.listed(place)
        held = any(op.id == "baste" and self.facts.wanted(op, place) for op in listed)
        if self.facts.fitting.basted(place) and not held:
            listed.insert(len(place.kind.prepares) + self._taped_first(place), works["baste"])
        listed = with_unsettled(as_basted(listed, place, self.facts), place, self.facts)
        chosen = [op for op in listed if self.facts.wanted(op, place)]
        past = [self.facts.fitting.past_recall(place, op) for op in chosen]
        return [self._stage(op, place, k, past[: k + 1]) for k, op in enumerate(chosen)]

    @staticmethod
    def _taped_first(place: SeamPlace) -> bool:
        """Whether a method lays a tape along one edge before the two are basted together."""
        return place.method.stages[0].work == TAPE if place.method.stages else False

    def _stage(self, op: Operation, place: SeamPlace, k: int, past: list[bool]) -> Task:
        machine, (iron, most) = self._machine(op, place), self._iron(op, place)
        rank = place.role.stage + op.rank + (320 if place.unit == "lining" else 0)
        if op.rank < -100:  # flat work on single pieces comes before all joining
            rank = 300 + op.rank
        rank = min(rank, 899 if place.role.last else 870) if place.op != "fasten" else rank
        length = float(place.seam.facts.get("length", USUAL_LENGTH)) * place.seam.making.times
        minutes = op.minutes.each + op.minutes.per_metre * length / 1000
        text = step_words(op, place, self.facts, ironed=iron is not None)
        if iron is not None and op.iron == "seam":
            text = held_off(text, under_iron(op, place, self.places, self.setups), self.setups)
        step = Step(f"{op.verb} {place.name}", text, machine, iron, round(minutes, 1), rank)
        some = {"stay-stitch": self.setups.stayed, "clear": self.facts.hard}
        cloths = some[op.id](place) if op.id in some else place.seam.cloths()
        finish = self.setups.finish(place) if op.id.startswith("neaten") else ""
        return Task(
            step,
            marked(op, machine, finish, frozenset(self.facts.entry(c).structure for c in cloths)),
            place,
            cloths,
            tags_of(op, place, self.facts, past),
            finish,
            at_most=most if iron else None,
            stage=k,
        )

    def _machine(self, op: Operation, place: SeamPlace) -> MachineState | None:
        makers: dict[str, Callable[[SeamPlace], MachineState | None]] = {
            "seam": self.setups.seam_machine,
            "rows": self.setups.rows_machine,
            "finish": self.setups.finish_machine,
            "zip": self.setups.zip_machine,
            "lock": self.setups.lock_machine,
            "zigzag": partial(zigzag_machine, self.setups),
            "facing": partial(facing_machine, self.facts),
            "straight": partial(straight_machine, self.setups),
            "twin": partial(twin_machine, self.setups),
            "thick": partial(topstitching_machine, self.setups),
            "buttonhole": partial(buttonhole_machine, self.setups),
        }
        maker = makers.get(op.machine)
        if op.id == "stay-stitch":
            maker = self.setups.stay_machine
        elif op.machine == "seam" and self._locked(op, place):
            maker = self.setups.lock_machine
        if maker is not None and op.id in ONE_ROW:
            return as_one_row(maker, place, self.places)
        return maker(place) if maker else None

    def _locked(self, op: Operation, place: SeamPlace) -> bool:
        """Whether it is sewn on the lockstitch machine whatever stitch the seam has."""
        entries = [self.facts.entry(name) for name in place.notions]
        kinds = {entry.kind for entry in entries if entry.id != CAUGHT_IN}
        named = any(word in place.name.casefold() for word in LOCK_WORDS)
        stitch = self.setups.word(Place("seam", place.name), "stitch.type")
        hemmed = op.id == "hem" and stitch != CHAINSTITCH
        return op.id in LOCKSTITCHED or hemmed or named or bool(kinds & set(LOCK_NOTIONS))

    def _iron(self, op: Operation, place: SeamPlace) -> tuple[IronState | None, float | None]:
        """How the iron is set, and the hottest that it may be."""
        if op.iron == "fuse":
            return self.setups.fuse_iron(place), self.setups.fuse_most(place)
        pressed = under_iron(op, place, self.places, self.setups)
        iron = self.setups.iron(pressed) if op.iron == "seam" else None
        return iron, self.setups.iron_most(pressed)


def _in_a_pocket(meets: Iterable[SeamPlace]) -> frozenset[str]:
    """What a pocket holds that is made up apart, and that may be in by the time of a hot press."""
    return frozenset(n for p in meets if p.kind.id == POCKET for n in p.cloths)
