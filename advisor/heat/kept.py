"""Answers of the heat model that are worked out once, however often a garment is asked about.

A page asks anew after each change, and most presses are then what they were; the seams of one
garment are often of the same layers too. An answer depends on its question alone, to the last
digit (`tests/unit/heat/test_heat_answer.py`), so that a kept one is the one that would come.
Where a shelf is given (`overlay/shelf.py` has one on the disk) the next command finds them too.
This is the only module of the engine that brings numpy in, and only when something is worked out.
"""

from __future__ import annotations

import contextlib
import os
from collections import OrderedDict
from collections.abc import Callable, Mapping, Sequence
from threading import Lock
from typing import Any, Final, Protocol

from msgspec.structs import replace

from advisor.heat.model.dialogue import HeatAnswer, HeatQuestion, Times
from advisor.heat.model.stack import Stack
from advisor.records import as_mapping, from_data

MOST: Final = 2000
"""Answers that are kept: those of some forty garments of twelve places."""
MOST_AT_ONCE: Final = 48
"""Questions that are worked out together: more are no quicker each, and only take more memory."""
Worked = HeatAnswer | Times
_KEPT: OrderedDict[str, Worked] = OrderedDict()
_LOCK: Final = Lock()
_UNFIT: Final = (KeyError, TypeError, ValueError, AttributeError)


class Shelf(Protocol):
    """Where answers outlive this run; what it says of a question was once laid on it."""

    def fetch(self, asked: str) -> dict[str, Any] | None:
        """The answer to a question, or None where it is not there."""

    def keep(self, found: Mapping[str, dict[str, Any]]) -> None:
        """Lay some answers on it, each by its question."""


class _Beside:
    """The shelf in use; none until one is given."""

    shelf: Shelf | None = None


def keep_on(shelf: Shelf | None) -> None:
    """Look for answers on this shelf from now on, and lay new ones there."""
    _Beside.shelf = shelf


def answers_once(questions: Sequence[HeatQuestion], samples: int) -> tuple[HeatAnswer, ...]:
    """The answers to some questions, of which only those are worked out that are new.

    Args:
        questions: in any order, several of them alike.
        samples: draws of all uncertain properties together.
    """
    asked = [replace(question, place="") for question in questions]
    keys = [repr((question, samples)) for question in asked]
    named = dict(zip(keys, asked, strict=True))

    def work_out(new: list[str]) -> Sequence[HeatAnswer]:
        from advisor.heat.model.answer import answers

        return answers([named[key] for key in new], samples=samples)

    found: dict[str, HeatAnswer] = _once(list(named), work_out, HeatAnswer)
    return tuple(
        replace(found[key], place=question.place)
        for key, question in zip(keys, questions, strict=True)
    )


def rests_once(stacks: Sequence[Stack], press_s: float) -> tuple[Times, ...]:
    """How long some stacks rest after a press, of which only those are worked out that are new."""
    keys = [repr(("rest", stack, press_s)) for stack in stacks]
    named = dict(zip(keys, stacks, strict=True))

    def work_out(new: list[str]) -> Sequence[Times]:
        from advisor.heat.model.rhythm import rests_after

        return rests_after([named[key] for key in new], press_s)

    found: dict[str, Times] = _once(list(named), work_out, Times)
    return tuple(found[key] for key in keys)


def _once(
    keys: list[str],
    work_out: Callable[[list[str]], Sequence[Any]],
    kind: type[Worked],
) -> dict[str, Any]:
    """What is asked for: as it is kept here, as it lies on the shelf, or worked out."""
    with _LOCK:
        found = {key: _KEPT[key] for key in keys if key in _KEPT}
    found |= _fetched([key for key in keys if key not in found], kind)
    new = [key for key in keys if key not in found]
    if new:
        # Set before numpy comes in: on small matrices its threads only wait for each other.
        os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
        made: dict[str, Any] = {}
        for at in range(0, len(new), MOST_AT_ONCE):
            some = new[at : at + MOST_AT_ONCE]
            made |= dict(zip(some, work_out(some), strict=True))
        found |= made
        if _Beside.shelf is not None:
            _Beside.shelf.keep({key: as_mapping(one) for key, one in made.items()})
    with _LOCK:
        for key in keys:
            _KEPT[key] = found[key]
            _KEPT.move_to_end(key)
        while len(_KEPT) > MOST:
            _KEPT.popitem(last=False)
    return found


def _fetched(keys: list[str], kind: type[Worked]) -> dict[str, Any]:
    """What lies on the shelf and is an answer; data of another shape are none."""
    if _Beside.shelf is None:
        return {}
    found = {}
    for key in keys:
        data = _Beside.shelf.fetch(key)
        if data is not None:
            with contextlib.suppress(*_UNFIT):
                found[key] = from_data(kind, data)
    return found
