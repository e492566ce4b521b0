"""What the care of a whole becomes once the fibre of a notion is known that bounds it by a guess.

A tie that may be polypropylene writes "do not iron" on a whole skirt. The strict label stands until
somebody asks; what asking allows is told beside it.
"""

from __future__ import annotations

from dataclasses import dataclass

from advisor.claims.judgement import Judgement
from advisor.decide.unknowns import as_if, find_ruling
from advisor.knowledge.model import Knowledge, Mix
from advisor.label.care import CareLine, staying_lines


@dataclass(frozen=True, slots=True)
class OnceKnown:
    """The lines that change where a notion is of one of some fibres."""

    cloth: str
    mixes: tuple[Mix, ...]
    lines: tuple[CareLine, ...]


def once_known(judgement: Judgement, knowledge: Knowledge) -> tuple[OnceKnown, ...]:
    """What each answer would change of the label; answers that change the same are put together."""
    now = {line.aspect: line.word for line in staying_lines(judgement, knowledge)}
    found = []
    for one in find_ruling(judgement, knowledge):
        alike: dict[tuple[str | None, ...], tuple[list[Mix], tuple[CareLine, ...]]] = {}
        for mix, _ in one.candidates:
            lines = staying_lines(as_if(judgement, one.cloth, mix, knowledge), knowledge)
            mixes, _ = alike.setdefault(tuple(line.word for line in lines), ([], lines))
            mixes.append(mix)
        for mixes, lines in alike.values():
            changed = tuple(line for line in lines if line.word != now.get(line.aspect))
            if changed:
                found.append(OnceKnown(one.cloth, tuple(mixes), changed))
    return tuple(found)
