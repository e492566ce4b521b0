"""Asks the heat model about a whole garment: one vectorised call for all presses and fusibles."""

from __future__ import annotations

from msgspec import Struct

from advisor.claims.judgement import Judgement
from advisor.heat.gluing import Fused, FusingTrial, trials_of
from advisor.heat.kept import answers_once, rests_once
from advisor.heat.model.dialogue import Glue, HeatAnswer, HeatQuestion, Times
from advisor.heat.model.hardparts import PARTS
from advisor.heat.model.materials import Range
from advisor.heat.stacks import Bed, Press, presses
from advisor.knowledge.model import Knowledge

SAMPLES = 8
"""Draws of all uncertain properties together, besides ends and corners: design-choice."""
PRESS_S = 10.0
"""How long a press is taken to last where the place itself asks for no shorter one: estimate."""
LOOSE_PARTS = ("pin", "metal button")


class Heat(Struct, frozen=True):
    """All that the model says of a garment.

    `rests` gives for each bed how long it cools after a press of PRESS_S seconds; `loose` the
    wait for a pin or button left in at the hottest setting of the garment, s.
    """

    beds: tuple[Bed, ...]
    rows: tuple[tuple[Press, HeatAnswer], ...]
    fused: tuple[Fused, ...]
    rests: dict[Bed, Times]
    loose: dict[str, Range]

    def ways(self, bed: Bed) -> dict[str, tuple[Press, HeatAnswer]]:
        """The presses of one bed by their way."""
        return {p.way: (p, a) for p, a in self.rows if p.places == bed.places}


def heat_of_garment(judgement: Judgement, knowledge: Knowledge, *, full: bool = True) -> Heat:
    """Ask everything about a garment.

    `full` also asks what a cloth does, the other side, cooling, and loose metal; else only what
    the sheet's press lines need.
    """
    found, asked = presses(judgement, knowledge, full=full)
    trials = trials_of(judgement, knowledge)
    questions = [
        HeatQuestion(
            p.places[0],
            p.stack,
            p.moisture,
            parts=tuple((layer, PARTS[part]) for layer, part in p.parts),
            press_s=PRESS_S,
        )
        for p in asked
    ]
    hottest = max(
        (p for p in asked if p.way in ("advised", "dried out")),
        key=lambda p: (p.setting.dots, p.way),
        default=None,
    )
    loose = LOOSE_PARTS if full and hottest is not None else ()
    extra = []
    if hottest is not None:
        top = next(x for x in hottest.stack.layers if x.role not in ("press cloth", "board"))
        extra = [
            HeatQuestion(part, hottest.stack, hottest.moisture, parts=((top.name, PARTS[part]),))
            for part in loose
        ]
    said = answers_once([*questions, *map(_question, trials), *extra], SAMPLES)
    rows = tuple(zip(asked, said[: len(asked)], strict=True))
    fused = tuple(
        Fused(t, a)
        for t, a in zip(trials, said[len(asked) : len(asked) + len(trials)], strict=True)
    )
    waits = {a.place: a.touch_safe_after for a in said[len(asked) + len(trials) :]}
    return Heat(
        tuple(found),
        rows,
        fused,
        _rests(found, asked) if full else {},
        {name: wait for name, wait in waits.items() if wait is not None},
    )


def _question(trial: FusingTrial) -> HeatQuestion:
    glue = Glue(trial.joint, trial.need_c)
    return HeatQuestion(trial.place, trial.stack, trial.moisture, glue)


def _rests(found: list[Bed], asked: list[Press]) -> dict[Bed, Times]:
    first = {p.places: p.stack for p in asked if p.way in ("advised", "dried out")}
    beds = [bed for bed in found if bed.places in first]
    if not beds:
        return {}
    return dict(zip(beds, rests_once([first[b.places] for b in beds], PRESS_S), strict=True))


def ask_trials(trials: list[FusingTrial]) -> list[Fused]:
    """The model's word on some ways of fusing, for a remedy that is being checked."""
    said = answers_once([_question(t) for t in trials], SAMPLES)
    return [Fused(t, a) for t, a in zip(trials, said, strict=True)]
