"""Answers of the heat model that are worked out once, however often a garment is asked about.

A page asks anew after each change, and most presses are then what they were; the seams of one
garment are often of the same layers too. An answer depends on its question alone, to the last
digit (`tests/unit/heat/test_heat_answer.py`), so that a kept one is the one that would come.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Sequence
from dataclasses import replace
from threading import Lock
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from advisor.heat.model.answer import HeatAnswer, Question

MOST: Final = 2000
"""Answers that are kept: those of some forty garments of twelve places."""
_Key = tuple["Question", int]
_KEPT: OrderedDict[_Key, HeatAnswer] = OrderedDict()
_LOCK: Final = Lock()


def answers_once(questions: Sequence[Question], samples: int) -> tuple[HeatAnswer, ...]:
    """The answers to some questions, of which only those are worked out that are new.

    Args:
        questions: in any order, several of them alike.
        samples: draws of all uncertain properties together.
    """
    from advisor.heat.model.answer import answers

    keys: list[_Key] = [(replace(question, place=""), samples) for question in questions]
    with _LOCK:
        found = {key: _KEPT[key] for key in keys if key in _KEPT}
    new = [key for key in dict.fromkeys(keys) if key not in found]
    found |= zip(new, answers([key[0] for key in new], samples=samples), strict=True)
    with _LOCK:
        for key in found:
            _KEPT[key] = found[key]
            _KEPT.move_to_end(key)
        while len(_KEPT) > MOST:
            _KEPT.popitem(last=False)
    return tuple(
        replace(found[key], place=question.place)
        for key, question in zip(keys, questions, strict=True)
    )
