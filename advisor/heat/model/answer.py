"""The result of the heat model for the sheet: one question per place, one small answer each.

The shape of :meth:`HeatAnswer.as_json` is the contract of the sheet's ``heat`` list.  The
answer is guidance on top of the limits: a caller may lower a limit or shorten a time by it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from advisor.heat.model.bands import SAMPLES, SEED, Study, Times, study
from advisor.heat.model.cooling import HardPart, seconds_to_cool, with_part
from advisor.heat.model.fusing import Glue, GlueLine, glue_line
from advisor.heat.model.materials import Range
from advisor.heat.model.rhythm import budget
from advisor.heat.model.solve import ASKED
from advisor.heat.model.stack import Stack

USUAL_PRESS_S = 10.0  # how long a press is assumed to last where nobody says: estimate


@dataclass(frozen=True, slots=True)
class Question:
    """A place on the garment under the iron.

    ``parts`` are hard parts with the name of the layer that each sits in; ``press_s`` the
    planned press, after which they are touched.
    """

    place: str
    stack: Stack
    moisture: str = "dry"
    glue: Glue | None = None
    parts: tuple[tuple[str, HardPart], ...] = ()
    press_s: float = USUAL_PRESS_S


@dataclass(frozen=True, slots=True)
class LayerHeat:
    """A layer's hottest temperature at each asked second, and the time to its limit."""

    name: str
    limit_c: float | None
    at_s: tuple[tuple[float, Range], ...]
    reaches_limit_s: Times | None
    dominated_by: str | None


@dataclass(frozen=True, slots=True)
class HeatAnswer:
    """All that the model says of one place."""

    place: str
    sole: Range
    cloth: str | None
    moisture: str
    layers: tuple[LayerHeat, ...]
    glue: GlueLine | None
    touch_safe_after: Range | None
    press_at_most_s: float | None
    limited_by: str | None

    def as_json(self) -> dict[str, Any]:
        """The answer as plain data; temperatures in degrees C to one decimal, None is null."""
        safe = self.touch_safe_after
        return {
            "place": self.place,
            "sole_c": _rounded(self.sole),
            "cloth": self.cloth,
            "moisture": self.moisture,
            "layers": [_layer_json(layer) for layer in self.layers],
            "glue_line": None if self.glue is None else _glue_json(self.glue),
            "touch_safe_after_s": None if safe is None else _rounded(safe),
            "press_at_most_s": self.press_at_most_s,
            "limited_by": self.limited_by,
        }


def answers(
    questions: Sequence[Question], *, samples: int = SAMPLES, seed: int = SEED
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


def _answer(looked_at: Study, stack: int, question: Question, touch: Range | None) -> HeatAnswer:
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


def _touch(looked_at: Study, stack: int, with_parts: range, question: Question) -> Range | None:
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


def _rounded(band: Range) -> list[float]:
    return [round(band.low, 1), round(band.mid, 1), round(band.high, 1)]


def _layer_json(layer: LayerHeat) -> dict[str, Any]:
    reaches = layer.reaches_limit_s
    return {
        "name": layer.name,
        "limit_c": layer.limit_c,
        "at_s": {f"{second:g}": _rounded(band) for second, band in layer.at_s},
        "reaches_limit_s": None if reaches is None else reaches.as_list(),
        "dominated_by": layer.dominated_by,
    }


def _glue_json(glue: GlueLine) -> dict[str, Any]:
    return {
        "need_c": glue.need_c,
        "hot_after_s": glue.hot_after.as_list(),
        "press_s": None if glue.press_s is None else round(glue.press_s, 1),
        "spoils": list(glue.spoils),
        "over_limit": glue.over_limit,
        "does_it": glue.does_it,
    }


def times_in_words(times: Times) -> str:
    """A band of seconds as a phrase: "about 3 s (2 to 5)", "about 9 s (6 or longer)"."""
    if times.low is None:
        return "not within a minute"
    low = _seconds(times.low)
    if times.mid is None:
        return f"{low} s at the soonest"
    until = f"{low} or longer" if times.high is None else f"{low} to {_seconds(times.high)}"
    return f"about {_seconds(times.mid)} s ({until})"


def _seconds(value: float) -> str:
    """Whole seconds from three up, tenths below; cut off, never rounded up."""
    return f"{int(value)}" if value >= 3.0 else f"{int(value * 10.0) / 10.0:g}"
