"""Lets every cloth be shrunk beforehand in the way that the whole garment will be cleaned.

A cloth by itself knows how it may be shrunk; how the garment is cleaned is known only when all of
its cloths have spoken (`assoc-prep-fabrics`: prepare as it will be cared for).
"""

from __future__ import annotations

from typing import Final

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, narrowed
from advisor.claims.valuesets import Choice
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment

SHRINK: Final = "prepare.preshrink"
WASH: Final = "care.wash"
AS_WASHED: Final = "wash as it will be washed"
WET: Final = (AS_WASHED, "soak and dry flat")
NARROW: Final = frozenset({"zip", "tape", "trim", "elastic"})
"""Kinds of what draws a seam up only in a wash; a glue shrinks under the iron all the same."""
STEAMED: Final = "steam"


def shrink_as_cleaned(
    garment: Garment, verdicts: dict[Place, dict[str, Verdict]], knowledge: Knowledge
) -> None:
    """Bring the shrinking of every cloth into line with the washing of the garment.

    What will be washed, and be it by hand, is not only steamed beforehand: a cloth that first meets
    water in the finished garment shrinks, puckers and lets its size go there. A mere question names
    no garment, and there a wash by hand asks for no more than the cloth does by itself.
    """
    _as_its_neighbours(garment, verdicts, knowledge)
    wash = verdicts[Place("garment", garment.name)].get(WASH)
    if wash is None or wash.pick is None:
        return
    washed = wash.aspect.words[int(wash.pick)]
    dry = washed == "do not wash"
    gently = garment.single and (washed == "hand wash" or washed.endswith("very mild"))
    for name, cloth in garment.cloths.items():
        shrink = verdicts[Place("fabric", name)].get(SHRINK)
        if shrink is None or shrink.pick is None or cloth.detachable:
            continue
        words = shrink.aspect.words
        way = words[int(shrink.pick)]
        narrow = knowledge.entries[cloth.entry].kind in NARROW
        if dry and (way == AS_WASHED or (narrow and way in WET)):
            # What never gets wet again is better not wetted now, where anything drier will do.
            left = [word for word in words if word not in WET]
            if not _leaves(shrink, left):
                if way != AS_WASHED:
                    continue
                left = [word for word in words if word != AS_WASHED]
            found = narrowed(shrink, left, "The garment that it goes into is not washed.")
        elif not (dry or gently) and _only_steamed(cloth.entry, shrink, knowledge):
            found = narrowed(shrink, WET, "The garment is washed, and this shrinks with it.")
        else:
            continue
        verdicts[Place("fabric", name)][SHRINK] = found


def _as_its_neighbours(
    garment: Garment, verdicts: dict[Place, dict[str, Verdict]], knowledge: Knowledge
) -> None:
    """A cloth of a garment by itself gets wet first where what it is sewn to is washed first.

    Of such a garment no washing is decided with the rest, but its cloths meet water together.
    """
    shrinks = {n: verdicts[Place("fabric", n)].get(SHRINK) for n in garment.cloths}
    ways = {n: v.aspect.words[int(v.pick)] for n, v in shrinks.items() if v and v.pick is not None}
    for name, cloth in garment.cloths.items():
        shrink = shrinks[name]
        sewn_to = {n for s in garment.seams if name in s.cloths() for n in s.cloths()}
        washed = any(ways.get(n) == AS_WASHED and garment.cloths[n].detachable for n in sewn_to)
        if not (cloth.detachable and washed) or shrink is None:
            continue
        if _only_steamed(cloth.entry, shrink, knowledge):
            found = narrowed(shrink, WET, "What it is sewn to is washed, and this shrinks with it.")
            verdicts[Place("fabric", name)][SHRINK] = found


def _leaves(shrink: Verdict, words: list[str]) -> bool:
    """Whether something other than doing nothing is left of what may be done."""
    done = [shrink.aspect.words.index(word) for word in words if word != "nothing"]
    return isinstance(shrink.allowed, Choice) and any(i in shrink.allowed for i in done)


def _only_steamed(entry: str, shrink: Verdict, knowledge: Knowledge) -> bool:
    """Whether a cloth would only be steamed though it may be wetted; steam shrinks less."""
    words = shrink.aspect.words
    wet = Choice(sum(1 << words.index(word) for word in WET))
    if knowledge.entries[entry].kind != "cloth" or not isinstance(shrink.allowed, Choice):
        return False
    steamed = shrink.pick is not None and words[int(shrink.pick)] == STEAMED
    return steamed and not (shrink.allowed & wet).is_empty
