"""What the care of a whole becomes once the fibre of a notion is known that bounds it by a guess.

A tie that may be polypropylene writes "do not iron" on a whole skirt, a toggle that may be leather
leaves no way to clean a coat. The strict label stands until somebody asks; what asking allows is
told beside it.
"""

from __future__ import annotations

from msgspec import Struct

from advisor.claims.judgement import Judgement
from advisor.decide.unknowns import as_if, find_ruling
from advisor.knowledge.model import Knowledge, Mix
from advisor.label.care import NEVER, CareLine, staying_lines


class OnceKnown(Struct, frozen=True):
    """The lines that change where a notion is of one of some fibres."""

    cloth: str
    mixes: tuple[Mix, ...]
    lines: tuple[CareLine, ...]


def once_known(judgement: Judgement, knowledge: Knowledge) -> tuple[OnceKnown, ...]:
    """What each answer would change of the label; answers that change the same are put together."""
    ruling = [one.cloth for one in find_ruling(judgement, knowledge)]
    asked = dict.fromkeys((*ruling, *uncleaned_by(judgement, knowledge)))
    return tuple(one for cloth in asked for one in answers_of(cloth, judgement, knowledge))


def answers_of(cloth: str, judgement: Judgement, knowledge: Knowledge) -> tuple[OnceKnown, ...]:
    """What each answer about one notion would change of the label."""
    now = {line.aspect: line.word for line in staying_lines(judgement, knowledge)}
    alike: dict[tuple[str | None, ...], tuple[list[Mix], tuple[CareLine, ...]]] = {}
    for mix in judgement.garment.cloths[cloth].mixes:
        lines = staying_lines(as_if(judgement, cloth, mix, knowledge), knowledge)
        mixes, _ = alike.setdefault(tuple(line.word for line in lines), ([], lines))
        mixes.append(mix)
    found = []
    for mixes, lines in alike.values():
        changed = tuple(line for line in lines if line.word != now.get(line.aspect))
        if changed:
            found.append(OnceKnown(cloth, tuple(mixes), changed))
    return tuple(found)


def uncleaned_by(judgement: Judgement, knowledge: Knowledge) -> tuple[str, ...]:
    """The notions of unknown fibre that forbid to wash or to clean the whole, by a guess."""
    lines = [line for line in staying_lines(judgement, knowledge) if line.aspect in NEVER]
    barred = (line for line in lines if line.word == NEVER[line.aspect])
    guessed = {n for line in barred for s in line.setters if not s.certain for n in s.cloths}
    cloths = judgement.garment.cloths
    return tuple(
        name for name in sorted(guessed) if knowledge.entries[cloths[name].entry].kind != "cloth"
    )
