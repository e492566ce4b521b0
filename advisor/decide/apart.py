"""Judgements that are kept while a garment is asked about again: of it, and of a few of its cloths.

The order of work and the search for what an unknown fibre would allow judge single cloths apart
from the garment, over and over. A judgement hangs on its garment and the knowledge alone, so that
an equal garment's is taken as it is; after a change on the page most are.
"""

from __future__ import annotations

from collections import OrderedDict
from threading import Lock
from typing import Final

from msgspec.structs import replace

from advisor.claims.judgement import Judgement
from advisor.decide.evaluate import judge
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.wished import Wishes

MOST_SEAMS: Final = 200
MOST_EACH: Final = 12
MOST_GARMENTS: Final = 4
_Key = tuple[object, ...]


class _Kept:
    """Judgements by one knowledge; another, as when she taught something, empties it."""

    def __init__(self) -> None:
        self.knowledge: Knowledge | None = None
        self.found: OrderedDict[_Key, list[tuple[Garment, Judgement]]] = OrderedDict()
        self.whole: OrderedDict[str, Judgement] = OrderedDict()
        self.lock = Lock()

    def _know(self, knowledge: Knowledge) -> None:
        if self.knowledge is not knowledge:
            self.knowledge = knowledge
            self.found.clear()
            self.whole.clear()

    def last(self, garment: Garment, knowledge: Knowledge) -> Judgement | None:
        """The last judgement of a garment of this name."""
        with self.lock:
            self._know(knowledge)
            return self.whole.get(garment.name)

    def keep_last(self, judgement: Judgement, knowledge: Knowledge) -> None:
        """Keep the judgement of a whole garment, and let go of the oldest."""
        with self.lock:
            if self.knowledge is knowledge:
                self.whole[judgement.garment.name] = judgement
                self.whole.move_to_end(judgement.garment.name)
                while len(self.whole) > MOST_GARMENTS:
                    self.whole.popitem(last=False)

    def of(self, key: _Key, garment: Garment, knowledge: Knowledge) -> Judgement | None:
        """The judgement of an equal garment."""
        with self.lock:
            self._know(knowledge)
            return next((j for known, j in self.found.get(key, ()) if known == garment), None)

    def keep(self, key: _Key, garment: Garment, knowledge: Knowledge, judgement: Judgement) -> None:
        """Keep a judgement, and let go of the oldest where there are too many."""
        with self.lock:
            if self.knowledge is not knowledge:
                return
            self.found[key] = [*self.found.get(key, ()), (garment, judgement)][-MOST_EACH:]
            self.found.move_to_end(key)
            while len(self.found) > MOST_SEAMS:
                self.found.popitem(last=False)


_KEPT: Final = _Kept()


def of_one_seam(garment: Garment, seam: Seam) -> Garment:
    """A garment as if it had one seam only, which runs over no other, and the cloths of that seam.

    Nothing that another cloth says is heard in a seam that it is not in.
    """
    cloths = {name: garment.cloths[name] for name in seam.cloths()}
    seam = replace(seam, making=replace(seam.making, crosses=()))
    return replace(garment, cloths=cloths, seams=(seam,))


def judge_apart(
    garment: Garment, knowledge: Knowledge, before: Judgement | None = None
) -> Judgement:
    """What `evaluate.judge` says of a garment of one seam; the judgement is not to be changed.

    What is wished of the order of work changes no judgement, and is left out: a step that is ticked
    lets every one stand.
    """
    garment = replace(garment, wishes=Wishes())
    seam = garment.seams[0]
    key = (garment.name, garment.units, seam.name, seam.uses, *garment.cloths)
    kept = _KEPT.of(key, garment, knowledge)
    if kept is not None:
        return kept
    found = judge(garment, knowledge, before)
    _KEPT.keep(key, garment, knowledge, found)
    return found


def judge_again(garment: Garment, knowledge: Knowledge) -> Judgement:
    """What `evaluate.judge` says of a garment, with what it was before the last change at hand."""
    found = judge(garment, knowledge, _KEPT.last(garment, knowledge))
    if found.gathered.asker is not None:
        found.gathered.asker.stand_alone()
    _KEPT.keep_last(found, knowledge)
    return found
