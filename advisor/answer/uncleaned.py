"""What is asked of a notion that, by a guess of its stuff, leaves no way to clean the garment."""

from __future__ import annotations

from advisor.answer import wording
from advisor.answer.model.told import ToldUnknown
from advisor.answer.teller import Teller
from advisor.claims.judgement import Judgement
from advisor.label.known import OnceKnown, answers_of, uncleaned_by
from advisor.label.whole import verdict_of

EITHER = "washing or cleaning of the whole"
WAYS = {"care.wash": "washing the whole", "care.professional": "dry cleaning the whole"}
"""What a line of care frees, as a sheet says what is barred until then."""


def told_uncleaned(judgement: Judgement, teller: Teller) -> tuple[ToldUnknown, ...]:
    """A row for each such notion: what it may be, and what the garment bears once that is known."""
    names = uncleaned_by(judgement, teller.knowledge)
    return tuple(row for name in names for row in _row(name, judgement, teller))


def _row(name: str, judgement: Judgement, teller: Teller) -> tuple[ToldUnknown, ...]:
    cloth = judgement.garment.cloths[name]
    answers = answers_of(name, judgement, teller.knowledge)
    if not answers:
        return ()
    effect = "; ".join(_freed(one, teller) for one in answers)
    freed = {line.aspect for one in answers for line in one.lines if line.word is not None}
    barred = wording.or_listed([way for aspect, way in WAYS.items() if aspect in freed] or [EITHER])
    loop = ", and its loop" if teller.knowledge.entries[cloth.entry].kind == "button" else ""
    fact = f"{name}: {wording.made_of_text(cloth, teller.knowledge)}"
    return (
        ToldUnknown(
            fact,
            teller.say(
                f"it bars {barred}; {effect}. Of what is the {name}{loop}? Ask before you buy it "
                "and write its stuff before its name, or let it come off"
            ),
            short=f"of what the {name} is: until then it bars {barred}",
        ),
    )


def _freed(one: OnceKnown, teller: Teller) -> str:
    """What one answer allows, in the words of the sheet."""
    knowledge = teller.knowledge
    stuffs = wording.or_listed([wording.mix_text(mix, knowledge) for mix in one.mixes])
    lines = [line for line in one.lines if line.word is not None]
    words = []
    for line in lines:
        aspect = knowledge.aspects[line.aspect]
        text = wording.verdict_text(verdict_of(line, aspect), teller.units)
        words.append(f"{aspect.title} {text}")
    return f"if it is {stuffs}: {', '.join(words)}"
