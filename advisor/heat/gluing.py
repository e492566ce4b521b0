"""Fusibles under the iron: which ways of fusing are asked of the heat model, and when none does.

A fusible is tried as it lies in the project's stack (from the iron down), the same stack turned
over, and flat on its neighbour before anything else is joined, with the iron on the fusible.
Each with the moisture that is soonest of what the verdicts leave, flat also with the advised one,
at the hottest setting that every layer of that way bears; hotter is never tried. The cloths hold
the water of an ordinary room, even in a dry press: it delays the glue (the soonest end is that of
cloth pressed dry before). What the glue
needs is the maker's figure in the notion's entry, which is of the press and not of the glue line,
and is said to be so.

The cautious end is the latest time. A clash is reported only where even the soonest end does not
come within the longest dwell, that is the soonest of the band without its corners, where all that
is uncertain falls out well at once: then no single luck and no patience helps.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.conflicts import Conflict
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import HEAT, Said
from advisor.claims.valuesets import Span
from advisor.construction.bulk import picked
from advisor.heat.model.stack import Stack, sole_at
from advisor.heat.stacks import fusibles_in, layer_limits, plies, pressed, setting_for
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Claim, Knowledge
from advisor.project.garment import Seam
from advisor.units import System, show, show_range

if TYPE_CHECKING:
    from advisor.heat.model.dialogue import HeatAnswer

FLOWS_C = 110.0
"""The least that any source gives for a fusing glue of the usual kind: fusing-trade-page."""
LONGEST_DWELL = 30.0
"""As long as anybody holds an iron on one spot, s: the top of the dwell aspect, estimate."""
INTERFACING = "interfacing.kind"
IN_SEAM = ("as laid", "turned over")
FLAT = "flat, before joining"
HOTTEST_IRON = 200.0


class FusingTrial(Struct, frozen=True):
    """One way of fusing: its stack, which joint is the glue line, and the heat that it gets."""

    place: str
    fusible: str
    way: str
    through: str
    neighbour: str
    limit: float
    cloth: str
    moisture: str
    stack: Stack
    joint: int
    need_c: float
    maker_s: float
    sources: tuple[str, ...]


class Fused(Struct, frozen=True):
    """What the model says of one trial."""

    trial: FusingTrial
    answer: HeatAnswer

    @property
    def soonest(self) -> float | None:
        """Seconds until the glue is hot at the usual soonest, or None within a minute."""
        return None if self.answer.glue is None else self.answer.glue.usual.low

    @property
    def grade(self) -> str:
        """How sure it is within the longest dwell: sure is by the cautious end of the band."""
        glue = self.answer.glue
        if glue is None:
            return "no"
        ends = (glue.hot_after.high, glue.usual.mid, glue.usual.low)
        words = ("sure", "likely", "perhaps")
        return next(
            (w for w, s in zip(words, ends, strict=True) if s is not None and s <= LONGEST_DWELL),
            "no",
        )

    @property
    def hopeless(self) -> bool:
        """Whether even the usual hottest end never comes near to where any glue flows."""
        glue = self.answer.glue
        flows = min(self.trial.need_c, FLOWS_C)
        return self.grade == "no" and (glue is None or glue.usual_at_20_s.high < flows)


_SHY_FAMILIES = ("piles", "skins", "coated", "embellished", "sheers", "lace")
_GLUE_SHY = ("pile", "embellished", "coated", "sheer", "press marks")
GRADES = ("sure", "likely", "perhaps", "no")


def trials_of(judgement: Judgement, knowledge: Knowledge) -> list[FusingTrial]:
    """Every way of fusing every fusible of the garment, the same stack once."""
    seen: dict[tuple[object, ...], None] = {}
    found: list[FusingTrial] = []
    for seam in judgement.garment.seams:
        for trial in seam_trials(seam, judgement, knowledge):
            key = (trial.fusible, trial.way, trial.moisture, trial.cloth, trial.stack)
            if key not in seen or trial.way in IN_SEAM:
                found.append(trial)
            seen[key] = None
    return found


def seam_trials(seam: Seam, judgement: Judgement, knowledge: Knowledge) -> list[FusingTrial]:
    """The ways of fusing the fusibles of one seam, where an iron may touch it at all."""
    verdict = judgement.verdicts.get(Place("seam", seam.name), {}).get(LIMIT_ASPECT)
    if verdict is None or not isinstance(verdict.allowed, Span) or len(seam.uses) < 2:
        return []
    table = _Table(seam, verdict, judgement, knowledge)
    return [
        trial
        for at in fusibles_in(judgement.garment, knowledge, seam)
        for way, order, joint in table.orders(at)
        for moisture in table.moistures(way)
        if (trial := table.trial(way, order, joint, at, moisture)) is not None
    ]


class _Table:
    """One seam with its fusibles, and what the verdicts say of how it is pressed."""

    def __init__(
        self, seam: Seam, verdict: Verdict, judgement: Judgement, knowledge: Knowledge
    ) -> None:
        self.seam = seam
        self.garment = judgement.garment
        self.knowledge = knowledge
        self.cloths = tuple(use.cloth for use in seam.uses)
        self.limits = layer_limits(verdict, self.cloths)
        by_aspect = judgement.verdicts[Place("seam", seam.name)]
        self.laid = picked(by_aspect, "press.cloth") or "none"
        words = _left(by_aspect.get("press.moisture"))
        self.soonest = next(w for w in ("dry", "steam", "damp cloth") if w in words)
        self.usual = picked(by_aspect, "press.moisture") or self.soonest

    def moistures(self, way: str) -> tuple[str, ...]:
        """The moistures to try: the soonest, and flat also the advised one."""
        both = (self.soonest, self.usual) if way == FLAT else (self.soonest,)
        return tuple(dict.fromkeys(both))

    def orders(self, at: int) -> list[tuple[str, tuple[str, ...], int]]:
        """The orders of layers to try, each with the joint that is the glue line."""
        cloths = self.cloths
        back = len(cloths) - 1 - at
        beside = [cloths[i] for i in (at - 1, at + 1) if 0 <= i < len(cloths)]
        bed = min(
            beside,
            key=lambda n: (self.too_cool(n, cloths[at]), self.shyness(n), -(self.limits[n] or 0.0)),
        )
        tried = [
            ("as laid", cloths, max(at - 1, 0)),
            ("turned over", cloths[::-1], max(back - 1, 0)),
            (FLAT, (cloths[at], bed), 0),
        ]
        return [o for i, o in enumerate(tried) if o[1:] not in [x[1:] for x in tried[:i]]]

    def too_cool(self, name: str, fusible: str) -> bool:
        """Whether a cloth bears less heat than a glue needs: nobody fuses it to that one."""
        entry = self.knowledge.entries[self.garment.cloths[fusible].entry]
        least = (entry.facts.get("fuses at") or {}).get("min", 0.0)
        return (self.limits[name] or 0.0) < float(least)

    def shyness(self, name: str) -> int:
        """How little a cloth takes to glue: pile, sequins, a film, or cloth that shows it."""
        cloth = self.garment.cloths[name]
        entry = self.knowledge.entries[cloth.entry]
        levels = {**entry.traits, **cloth.traits}
        shy = sum(levels.get(trait, (0, 0))[1] for trait in _GLUE_SHY)
        return shy + 10 * (entry.family in _SHY_FAMILIES)

    def trial(
        self, way: str, order: tuple[str, ...], joint: int, at: int, moisture: str
    ) -> FusingTrial | None:
        """One way of fusing, at the hottest setting that all layers of it bear."""
        fusible = self.cloths[at]
        glue = self.knowledge.entries[self.garment.cloths[fusible].entry].facts.get("fuses at")
        limit = min((x for name in order if (x := self.limits[name]) is not None), default=COLD)
        if not glue or setting_for(limit) is None:
            return None
        cloth = "cotton cloth" if (self.laid, moisture) == ("none", "damp cloth") else self.laid
        if moisture == "dry" and way in IN_SEAM:
            cloth = "none"  # the soonest dry way; a cloth only delays
        own = plies(
            order,
            tuple(self.limits[n] for n in order),
            self.garment,
            self.knowledge,
            moist=True,
        )
        stack = pressed(own, sole_at(min(limit, HOTTEST_IRON)), cloth, moisture)
        above = sum(layer.role == "press cloth" for layer in stack.layers)
        return FusingTrial(
            self.seam.name,
            fusible,
            way,
            ", ".join(order[: order.index(fusible)]),
            order[-1] if way == FLAT else "",
            limit,
            cloth,
            moisture,
            stack,
            above + joint,
            float(glue.get("min") or glue.get("max")),
            float(glue.get("seconds") or 0.0),
            tuple(glue.get("sources", ())),
        )


def _left(moisture: Verdict | None) -> tuple[str, ...]:
    """The moistures that the musts leave; dry where nobody speaks of it."""
    if moisture is None or not isinstance(moisture.allowed, Span) or moisture.allowed.is_empty:
        return ("dry",)
    low, high = int(moisture.allowed.low), int(moisture.allowed.high)
    return moisture.aspect.words[low : high + 1]


def best_of(tried: list[Fused], ways: tuple[str, ...]) -> Fused | None:
    """The surest and then soonest of some ways of one fusible in one place."""
    fitting = [f for f in tried if f.trial.way in ways]
    return min(
        fitting,
        key=lambda f: (
            GRADES.index(f.grade),
            f.soonest if f.soonest is not None else 1e9,
            ways.index(f.trial.way),
            f.trial.moisture,
        ),
        default=None,
    )


def clash_of(best: Fused, units: System) -> Conflict:
    """The clash of a glue that wants heat with the layers that do not let it through."""
    trial = best.trial
    face = _face(trial)
    sources = tuple(dict.fromkeys((*trial.sources, "derived", "estimate")))
    hotter = (min(trial.limit + 1.0, 209.0), 210.0)
    needs = _must(hotter, "result", _too_cool(best, units), sources)
    whole = "No layer gets a hotter iron than it bears."
    bears = _must((COLD, trial.limit), "damage", whole, ("derived",))
    far = frozenset(trial.through.split(", ")) if trial.through else frozenset((face,))
    clash = (
        Said(f"{trial.fusible} through {face}", needs, (), True, frozenset((trial.fusible,))),
        Said(face, bears, (), True, far),
    )
    return Conflict(LIMIT_ASPECT, Place("seam", trial.place), clash, "result")


def _face(trial: FusingTrial) -> str:
    """What the heat goes through to a glue."""
    return trial.through or trial.neighbour or trial.fusible


def _must(span: tuple[float, float], risk: str, why: str, sources: tuple[str, ...]) -> Claim:
    return Claim(LIMIT_ASPECT, span, 0, None, "must", risk, why, sources, 3, HEAT)


def _too_cool(best: Fused, units: System) -> str:
    """How far a glue stays from what it wants, with the hottest iron that its layers bear."""
    trial, glue = best.trial, best.answer.glue
    layer = next(x for x in best.answer.layers if x.name == trial.fusible)
    after = dict(layer.at_s)[20.0] if glue is None else glue.usual_at_20_s
    wants, limit = (show("temperature", c, units) for c in (trial.need_c, trial.limit))
    comes_to = show_range("temperature", after.low, after.high, units)
    return (
        f"Through {_face(trial)} the glue of the {trial.fusible} does not get hot: it wants "
        f"{wants}, and with the iron at {limit}, the most that every layer here bears, the "
        f"{trial.fusible} is likely at {comes_to} after 20 s (computed, not measured)."
    )
