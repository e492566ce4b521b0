"""The result of the heat model for the sheet: one question per place, one small answer each.

The answer is guidance on top of the limits: a caller may lower a limit or shorten a time by it.
"""

from __future__ import annotations

from collections.abc import Sequence

from advisor.heat.model.bands import SAMPLES, SEED, Study, study
from advisor.heat.model.cooling import seconds_to_cool, with_part
from advisor.heat.model.dialogue import USUAL_PRESS_S, HeatAnswer, HeatQuestion, LayerHeat
from advisor.heat.model.fusing import glue_line
from advisor.heat.model.materials import Range
from advisor.heat.model.rhythm import budget
from advisor.heat.model.solve import ASKED


def answers(
    questions: Sequence[HeatQuestion], *, samples: int = SAMPLES, seed: int = SEED
) -> tuple[HeatAnswer, ...]:
    """The answers to a whole garment's questions, solved in one vectorised call."""
    if not questions:
        return ()
    stacks = [q.stack for q in questions]
    extra = [with_part(q.stack, name, part) for q in questions for name, part in q.parts]
    looked_at = study([*stacks, *extra], samples=samples, seed=seed)
    after = len(stacks)
    found = []
    for i, question in enumerate(questions):
        where = range(after, after + len(question.parts))
        found.append(_answer(looked_at, i, question, _touch(looked_at, i, where, question)))
        after += len(question.parts)
    return tuple(found)


def _answer(
    looked_at: Study, stack: int, question: HeatQuestion, touch: Range | None
) -> HeatAnswer:
    shown = [
        _layer(looked_at, stack, place)
        for place, layer in enumerate(question.stack.layers)
        if layer.role != "board"
    ]
    cloths = [x.name for x in question.stack.layers if x.role == "press cloth"]
    longest = budget(looked_at, stack)
    return HeatAnswer(
        question.place,
        question.stack.sole,
        cloths[0] if cloths else None,
        question.moisture,
        tuple(shown),
        None if question.glue is None else glue_line(looked_at, stack, question.glue),
        touch,
        None if longest is None else int(longest[0] * 10.0) / 10.0,
        None if longest is None else longest[1],
    )


def _layer(looked_at: Study, stack: int, place: int) -> LayerHeat:
    layer = looked_at.stacks[stack].layers[place]
    reaches = None
    if layer.limit_c is not None:
        reaches = looked_at.seconds(stack, place, layer.limit_c)
    when = reaches.mid if reaches is not None and reaches.mid else USUAL_PRESS_S
    first = next(iter(looked_at.dominant(stack, place, when)), None)
    return LayerHeat(
        layer.name,
        layer.limit_c,
        tuple((second, looked_at.temperature(stack, place, second)) for second in ASKED),
        reaches,
        first[0] if first is not None and first[1] > 0.0 else None,
    )


def _touch(looked_at: Study, stack: int, with_parts: range, question: HeatQuestion) -> Range | None:
    """The longest wait over all hard parts, or None where there is none.

    Soonest and likely: the part's own temperature after one press.  Cautious end: as hot as
    the hottest of its layer, as after many presses in one place.
    """
    waits = []
    for own, (name, part) in zip(with_parts, question.parts, strict=True):
        alone = looked_at.temperature(
            own, looked_at.stacks[own].place_of(part.name), question.press_s
        )
        layer = looked_at.temperature(stack, question.stack.place_of(name), question.press_s)
        hot = Range(alone.low, alone.mid, max(alone.high, layer.high))
        waits.append(seconds_to_cool(part, hot, room_c=question.stack.ambient_c))
    if not waits:
        return None
    return Range(max(w.low for w in waits), max(w.mid for w in waits), max(w.high for w in waits))
