"""How machine and iron are set for a place, out of the verdicts of the sheet.

The order of work uses the picks of the sheet, so that both say the same; only of thread, where
the sheet leaves a choice, it takes what suits most seams. Thread colour is not a verdict: it is
taken to match the first cloth of the seam, and the overlocker's cones to be neutral and to stay
(estimates of how people work). Irons are set in steps of 10 °C, downwards.
"""

from __future__ import annotations

import math
from dataclasses import replace

from advisor.craft.irondial import mark_for
from advisor.engine.advise import Advice
from advisor.engine.claims import Place
from advisor.engine.combine import Verdict
from advisor.engine.conflicts import Conflict
from advisor.engine.judge import Cure
from advisor.engine.valuesets import Span
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Knowledge
from advisor.order.kinds import SeamPlace
from advisor.order.steps import IronState, MachineState

OVERLOCKS = frozenset({"503", "504", "514", "516", "401"})
UNFINISHED = frozenset({"none", "enclosed in the seam", ""})
BY_HAND = frozenset({"pinked", "hand overcast", "edge sealant"})
OVERLOCKER = "overlocker"
IRON_STEP = 10


class Setups:
    """The set-ups of one garment."""

    def __init__(self, advice: Advice, knowledge: Knowledge) -> None:
        self.advice = advice
        self.knowledge = knowledge
        self.garment = advice.judgement.garment
        self.machine_name = self.garment.maker.machine
        self.chosen = chosen_cures(advice)

    def verdict(self, place: Place, aspect: str) -> Verdict | None:
        """The verdict of a place, after the chosen remedy where the place clashes."""
        found = self.advice.judgement.verdicts.get(place, {}).get(aspect)
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
        place = Place("seam", seam.name)
        stitch = self.word(place, "stitch.type", "301")
        if stitch == "hand" or self.machine_name == "hand":
            return None
        foot = self.word(place, "machine.foot", "standard")
        machine = OVERLOCKER if stitch in OVERLOCKS else self.machine_name
        thread = self.thread(seam, machine)
        tension = self.word(place, "stitch.tension", "balanced")
        return MachineState(
            machine, thread, thread, self.word(place, "needle.point", "universal"),
            int(self.pick(place, "needle.size") or 80), foot,
            "single-hole" if foot == "straight-stitch" else "wide", stitch,
            f"{tension}, {self.word(place, 'machine.pressure', 'medium')} pressure",
        )  # fmt: skip

    def rows_machine(self, seam: SeamPlace) -> MachineState | None:
        """How it is set for rows of long stitches that are pulled out again."""
        state = self.seam_machine(seam)
        return None if state is None else replace(
            state, machine=self.machine_name, stitch="301, long", thread_above=self.thread(seam),
            thread_below=self.thread(seam),
        )  # fmt: skip

    def zip_machine(self, seam: SeamPlace) -> MachineState | None:
        """How it is set to sew in a zip."""
        state = self.seam_machine(seam)
        foot = "concealed zip" if seam.kind.id == "concealed-zip" else "zip"
        return None if state is None else replace(state, foot=foot, plate="wide", stitch="301")

    def finish(self, seam: SeamPlace) -> str:
        """The edge finish of a seam; empty where its edges need none."""
        place = Place("seam", seam.name)
        found = self.word(place, "seam.finish")
        sewn = self.word(place, "stitch.type", "301")
        if found in UNFINISHED or (sewn in OVERLOCKS and found == "overlocked"):
            return ""
        return found

    def finish_machine(self, seam: SeamPlace) -> MachineState | None:
        """How a machine is set to neaten the edges; None for hand work."""
        finish, state = self.finish(seam), self.seam_machine(seam)
        if finish in BY_HAND or state is None:
            return None
        if finish == "overlocked" and self.garment.maker.overlocker:
            cones = "neutral cones"
            return replace(state, machine=OVERLOCKER, thread_above=cones, thread_below=cones,
                           foot="overlock", plate="overlock", stitch="overlock",
                           tension="balanced")  # fmt: skip
        if finish in ("overlocked", "zigzag"):
            foot = "standard" if state.foot == "straight-stitch" else state.foot
            return replace(state, plate="wide", stitch="zigzag", foot=foot)
        return state

    def thread(self, seam: SeamPlace, machine: str = "") -> str:
        """The thread in words: fibre, size and the colour that it matches."""
        place = Place("seam", seam.name)
        if machine == OVERLOCKER:
            return "neutral cones"
        fibre = self._shared_thread(place)
        size = self._shared_size(place) or 27
        return f"{fibre} tex {size:g} to match {self.colour_of(seam)}"

    def colour_of(self, seam: SeamPlace) -> str:
        """The first cloth of the garment that has the colour of the seam's first cloth."""
        first = (seam.cloths or seam.seam.cloths())[0]
        colour = self.garment.cloths[first].colour
        if colour:
            alike = [n for n, c in self.garment.cloths.items() if c.colour == colour]
            return min(alike)
        return first

    def _shared_thread(self, place: Place) -> str:
        """Of the thread fibres that suit a seam, the one that suits most seams; then the best."""
        found = self.verdict(place, "thread.fibre")
        if found is None or found.pick is None:
            return "polyester"
        words = found.aspect.words
        options = [i for i in range(len(words)) if getattr(found.advised, "mask", 0) >> i & 1]
        counts = dict.fromkeys(options, 0)
        for other, by_aspect in self.advice.judgement.verdicts.items():
            verdict = by_aspect.get("thread.fibre") if other.scope == "seam" else None
            for i in options if verdict is not None else ():
                counts[i] += getattr(verdict and verdict.advised, "mask", 0) >> i & 1
        best = min(options, key=lambda i: (-counts[i], i), default=None)
        return words[best if best is not None else int(found.pick)]

    def _shared_size(self, place: Place) -> float | None:
        """Of the thread sizes advised for a seam, the one advised for most; then the nearest."""
        found = self.verdict(place, "thread.size")
        if found is None or found.pick is None or not isinstance(found.advised, Span):
            return None
        pick, span = found.pick, found.advised
        others = [
            verdict.advised
            for other, by_aspect in self.advice.judgement.verdicts.items()
            if other.scope == "seam" and (verdict := by_aspect.get("thread.size")) is not None
            and isinstance(verdict.advised, Span)
        ]  # fmt: skip
        sizes = [s for s in found.aspect.steps if span.low <= s <= span.high] or [pick]
        return min(
            sizes,
            key=lambda s: (-sum(o.low <= s <= o.high for o in others), abs(s - pick), s),
        )

    def seam_iron(self, seam: SeamPlace) -> IronState | None:
        """How the iron is set for a seam; None where it is only finger-pressed."""
        return self.iron(Place("seam", seam.name))

    def iron(self, place: Place) -> IronState | None:
        """How the iron is set in a place that allows one."""
        heat = self.pick(place, LIMIT_ASPECT)
        if heat is None:
            heat = self.limit(place)
        if heat is None or heat <= COLD or mark_for(heat) is None:  # no dial goes that low
            return None
        return IronState(
            step_down(heat), self.word(place, "press.moisture", "dry"),
            self.word(place, "press.surface", "padded board"),
        )  # fmt: skip

    def limit(self, place: Place) -> float | None:
        """What the most tender layer of a place bears, °C."""
        found = self.advice.judgement.verdicts.get(place, {}).get(LIMIT_ASPECT)
        if found is None:
            return None
        if found.clash:
            return min(s.claim.span[1] for s in found.clash if s.claim.span)
        return found.allowed.high if isinstance(found.allowed, Span) else None

    def glue_ruled_out(self, seam: SeamPlace) -> bool:
        """Whether a layer of the seam bears no fused interfacing at all."""
        found = self.advice.judgement.verdicts.get(Place("seam", seam.name), {})
        kind = found.get("interfacing.kind")
        return kind is not None and bool(kind.clash)

    def fuse_iron(self, seam: SeamPlace) -> IronState | None:
        """How the iron is set to fuse the interfacing of a seam to a single piece."""
        for name in seam.notions:
            entry = self.knowledge.entries[self.garment.cloths[name].entry]
            if "fusible" not in entry.kind:
                continue
            about = entry.facts.get("fuses at") or {}
            needs = [c.span[0] for c in entry.claims if c.aspect == LIMIT_ASPECT and c.span]
            least = max([float(about.get("min", 0)), *needs])
            found = self.advice.judgement.verdicts.get(Place("seam", seam.name), {})
            verdict = found.get(LIMIT_ASPECT)
            heat = least
            if verdict is not None and verdict.pick is not None:
                heat = max(least, step_down(verdict.pick))
            moisture = str(about.get("moisture", "dry"))
            return IronState(math.ceil(heat), moisture, "hard board") if heat > COLD else None
        return None

    def cloth_iron(self, cloth: str, seams: tuple[SeamPlace, ...]) -> IronState | None:
        """How the iron is set for what is made of one cloth alone."""
        alone = [s for s in seams if set(s.cloths) == {cloth} and not s.notions]
        for seam in sorted(alone, key=lambda s: s.name):  # not as the file lists them
            state = self.seam_iron(seam)
            if state is not None:
                return replace(state, surface="padded board")
        needs = [
            said.claim.span[0]
            for conflict in self.advice.judgement.conflicts for said in conflict.clash
            if said.claim.span and cloth in said.cloths and said.claim.span[0] > COLD
        ]  # fmt: skip
        return IronState(math.ceil(max(needs)), "dry", "padded board") if needs else None


def chosen_cures(advice: Advice) -> dict[tuple[str, str], Cure]:
    """For each conflict the remedy that the order carries out: the cheapest that means earlier."""
    earlier = ("press-before-joining", "fuse-before-joining")
    chosen: dict[tuple[str, str], Cure] = {}
    for key, cures in advice.cures.items():
        best = next((cure for cure in cures if cure.remedy in earlier), None)
        best = best or next(iter(cures), None)
        if best is not None:
            chosen[key] = best
    return chosen


def heat_pairs(
    advice: Advice, knowledge: Knowledge
) -> list[tuple[Conflict, frozenset[str], frozenset[str]]]:
    """Conflicts cured by pressing earlier, each with who wants the heat and who cannot bear it."""
    pairs = []
    chosen = chosen_cures(advice)
    for conflict in advice.judgement.conflicts:
        cure = chosen.get(conflict.key)
        if cure is None or cure.remedy != "press-before-joining":
            continue
        after = cure.after.garment
        apart = [seam.apart for seam in after.seams if seam.name == conflict.place.name]
        needy = after.apart if conflict.place.scope == "garment" else frozenset().union(*apart)
        harmed = [s.cloths for s in conflict.clash if s.claim.risk != "result"]
        # A zip or a button is walked round with the iron; a cloth cannot be.
        tender = frozenset(
            name for name in frozenset().union(*harmed) - needy
            if knowledge.entries[after.cloths[name].entry].kind == "cloth"
        )  # fmt: skip
        if not tender:
            continue
        pairs.append((conflict, needy, tender))
    return pairs


def step_down(heat: float) -> int:
    """A setting of the dial that is no hotter."""
    return int(heat // IRON_STEP * IRON_STEP)
