"""Asks for a project in plain words: the questions, and how each answer is understood.

Nothing here prints or reads a keyboard: `interview` is given one function that asks and one that
tells. An answer that is not understood is told why and asked again.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TypeVar

from msgspec import Struct, field

from advisor.errors import InputError, Problem, nearest, shown
from advisor.knowledge.factwords import SEAM_WORDS
from advisor.knowledge.model import Knowledge, Mix
from advisor.project.cloths import read_notion
from advisor.project.facts import read_fact, read_maker_fact, read_word
from advisor.project.names import (
    LONGEST_NAME,
    LONGEST_PHRASE,
    MOST_FABRICS,
    MOST_LAYERS,
    MOST_SEAMS,
    tidy_name,
)
from advisor.project.phrase import Reading, read_phrase
from advisor.units import show_range

T = TypeVar("T")
_NO_MORE = " [no more]"
"""What an empty answer means but to the first of its kind, which cannot be left out."""
_BETWEEN = re.compile(r"\s*[+/&;]\s*|\s+(?:to|and|on|with|onto)\s+", re.IGNORECASE)
MOST_TRIES = 20
"""Answers in a row that are not understood, before it is clear that nobody is there: estimate."""

Ask = Callable[[str], str | None]
"""Puts a question and returns one line of answer, or None when there are no more."""
Tell = Callable[[str], None]

QUESTIONS = {
    "garment": "What do you call the garment?",
    "units": "Which units shall be printed, metric or us? [metric]",
    "machine": "What do you sew on: household, industrial or hand? [not said]",
    "overlocker": "Have you an overlocker: no, 3-thread, 4-thread or 5-thread? [not said]",
    "feet": "Which feet have you? Commas between them: {feet}. [not said]",
    "cloth": "Cloth {n} in a few words, such as 'nylon organza' or 'brocade, fibre unknown'? "
    "[no more]",
    "cloth name": "What shall it be called in this garment? [{name}]",
    "seam": "Seam {n}: what do you call it? [no more]",
    "layers": "Which cloths meet there? Commas between them, the one under the iron first, and a "
    "notion by its name: {cloths}",
    "length": "How long is it, such as 62 cm or 24 in? [not known]",
    "shape": "Is it straight, curved, or has it a corner? [straight]",
    "stress": "How much strain does it take: low, medium or high? [medium]",
}
"""Every question, in the order of asking; in brackets stands what an empty answer means."""


HELP = {
    "garment": "A name for yourself, such as 'black bolero'; it stands at the head of every sheet.",
    "units": "Metric prints cm, g/m2 and °C, us prints inches, oz/yd2 and °F; you may type either.",
    "machine": "A household machine, an industrial one that is faster and presses harder, or by "
    "hand. Not said is taken as a household machine.",
    "overlocker": "A machine that trims and neatens an edge at once, with so many threads; edges "
    "are neatened otherwise where there is none.",
    "feet": "The feet you own. A walking foot carries both layers, a roller foot glides on leather "
    "and film; '? walking foot' tells of one.",
    "cloth": "Fibres, with shares if you know them, the kind of cloth, its weight, in any order: "
    "'cotton 97 elastane 3 denim 340 g/m2'. Say 'fibre unknown' where you do not know; advisor "
    "identify narrows it down. '? organza' tells of a cloth.",
    "cloth name": "A short name of its place in the garment, such as shell, lining or frill; the "
    "seams call it so.",
    "seam": "A place where something is made: shoulder, side, hem, front facing, zip.",
    "layers": "All layers of the stack that lies under the foot, separated by commas, the one that "
    "the iron meets first in front; a cloth twice where it meets itself: shell, shell.",
    "length": "As it is sewn, with its unit. From it thread and gathers are reckoned.",
    "shape": "A curved edge is stayed and clipped, a corner reinforced.",
    "stress": "How hard wear pulls at it: a hem little, a shoulder more, a crotch most.",
}
"""What each question means, for whoever asks."""


def help_for(question: str) -> str:
    """What a question of the interview means."""
    for key in sorted(QUESTIONS, key=lambda name: -len(QUESTIONS[name])):
        if question.startswith(QUESTIONS[key].partition("{")[0]):
            return HELP[key]
    return "Answer in a word or a few."


class ClothAnswer(Struct, frozen=True):
    """A cloth: its name in the garment and the words for it."""

    name: str
    phrase: str
    reading: Reading


class SeamAnswer(Struct, frozen=True):
    """A seam; each layer is a name and whether it is a notion. Empty where nothing was said."""

    name: str
    layers: tuple[tuple[str, bool], ...]
    length: str = ""
    shape: str = ""
    stress: str = ""


class Answers(Struct):
    """Everything that was answered; empty where nothing was said."""

    garment: str = ""
    units: str = "metric"
    machine: str = ""
    overlocker: str = ""
    feet: tuple[str, ...] = ()
    cloths: list[ClothAnswer] = field(default_factory=list)
    seams: list[SeamAnswer] = field(default_factory=list)

    def missing(self) -> list[str]:
        """What a project cannot do without and has not got."""
        have = {
            "a name for the garment": self.garment,
            "a cloth": self.cloths,
            "a seam": self.seams,
        }
        return [what for what, given in have.items() if not given]


class _NoMoreError(Exception):
    """There are no more answers."""


def interview(ask: Ask, tell: Tell, knowledge: Knowledge) -> Answers:
    """Ask everything; where the answers end, what was given so far is returned.

    Raises:
        InputError: the answers ended before there was enough for a project.
    """
    talk = _Interview(ask, tell, knowledge)
    try:
        talk.all()
    except _NoMoreError:
        missing = talk.answers.missing()
        if missing:
            raise InputError(
                f"the answers ended too soon; still needed: {', '.join(missing)}. "
                "No project was written"
            ) from None
    return talk.answers


class _Interview:
    def __init__(self, ask: Ask, tell: Tell, knowledge: Knowledge) -> None:
        self.ask = ask
        self.tell = tell
        self.knowledge = knowledge
        self.answers = Answers()

    def all(self) -> None:
        said = self.answers
        said.garment = self._need("garment", lambda text: _tidy(text, LONGEST_NAME))
        said.units = self._may("units", lambda t: _word("units", t, ("metric", "us"))) or "metric"
        said.machine = self._may("machine", self._maker("machine")) or ""
        said.overlocker = self._may("overlocker", self._maker("overlocker")) or ""
        feet = ", ".join(self.knowledge.aspects["machine.foot"].words)
        said.feet = self._may("feet", self._feet, feet=feet) or ()
        while len(said.cloths) < MOST_FABRICS and self._cloth():
            pass
        while len(said.seams) < MOST_SEAMS and self._seam():
            pass

    def _put(self, key: str, words: dict[str, object]) -> str:
        question = QUESTIONS[key].format(**words)
        answer = self.ask(question.removesuffix(_NO_MORE) if words.get("n") == 1 else question)
        if answer is None:
            raise _NoMoreError
        return answer.strip()

    def _may(self, key: str, read: Callable[[str], T], **words: object) -> T | None:
        """The answer as it was understood, None when it was empty."""
        for _ in range(MOST_TRIES):
            answer = self._put(key, words)
            if not answer:
                return None
            try:
                return read(answer)
            except InputError as error:
                self.tell(str(error))
        raise InputError(f"{MOST_TRIES} answers were not understood. Nothing was written")

    def _need(self, key: str, read: Callable[[str], T], why: str = "", **words: object) -> T:
        for _ in range(MOST_TRIES):
            found = self._may(key, read, **words)
            if found is not None:
                return found
            self.tell(f"This one cannot be left out. {why}".rstrip())
        raise InputError(f"{MOST_TRIES} answers were empty. Nothing was written")

    def _maker(self, key: str) -> Callable[[str], str]:
        return lambda text: str(read_maker_fact(key, text, self.knowledge))

    def _feet(self, text: str) -> tuple[str, ...]:
        feet = [f for f in text.split(",") if f.strip()]
        found = [str(read_maker_fact("foot", foot, self.knowledge)) for foot in feet]
        return tuple(dict.fromkeys(found))

    def _cloth(self) -> bool:
        """Ask for one cloth; False when there are no more."""
        cloths = self.answers.cloths
        if cloths:
            phrase = self._may("cloth", self._understood, n=len(cloths) + 1)
        else:
            phrase = self._need("cloth", self._understood, "A garment has at least one cloth.", n=1)
        if phrase is None:
            return False
        reading = read_phrase(phrase, self.knowledge)
        self.tell(f"Understood: {described(reading, self.knowledge, self.answers.units)}.")
        usual = self._free_name(
            "shell" if not cloths else self.knowledge.entries[reading.entry].name
        )
        cloths.append(ClothAnswer(usual, phrase, reading))  # kept, should the answers end here
        name = self._may("cloth name", self._new_cloth, name=usual) or usual
        cloths[-1] = ClothAnswer(name, phrase, reading)
        return True

    def _understood(self, text: str) -> str:
        phrase = _tidy(text, LONGEST_PHRASE)
        read_phrase(phrase, self.knowledge)
        return phrase

    def _free_name(self, name: str) -> str:
        plain = name.replace(",", " ")
        taken = {cloth.name.casefold() for cloth in self.answers.cloths}
        count = 2
        while name.casefold() in taken:
            name, count = f"{plain} {count}", count + 1
        return name

    def _new_cloth(self, text: str) -> str:
        name = _tidy(text, LONGEST_NAME)
        if "," in name:
            raise InputError(Problem("a comma would look like two cloths", None, "another name"))
        if name.casefold() in {cloth.name.casefold() for cloth in self.answers.cloths[:-1]}:
            raise InputError(Problem(f"{shown(name)} is there already", None, "another name"))
        return name

    def _seam(self) -> bool:
        """Ask for one seam; False when there are no more."""
        seams, n = self.answers.seams, len(self.answers.seams) + 1
        if seams:
            name = self._may("seam", self._new_seam, n=n)
        else:
            name = self._need("seam", self._new_seam, "A garment has at least one seam.", n=n)
        if name is None:
            return False
        cloths = ", ".join(cloth.name for cloth in self.answers.cloths)
        layers = self._need("layers", self._layers, cloths=cloths)
        seams.append(SeamAnswer(name, layers))  # kept, should the answers end in the middle
        length = self._may("length", self._length) or ""
        seams[-1] = SeamAnswer(name, layers, length)
        shape = self._may("shape", lambda text: _word("shape", text, SEAM_WORDS["shape"])) or ""
        seams[-1] = SeamAnswer(name, layers, length, shape)
        stress = self._may("stress", lambda text: _word("stress", text, SEAM_WORDS["stress"]))
        seams[-1] = SeamAnswer(name, layers, length, shape, stress or "")
        return True

    def _new_seam(self, text: str) -> str:
        name = _tidy(text, LONGEST_NAME)
        if name.casefold() in {seam.name.casefold() for seam in self.answers.seams}:
            raise InputError(Problem(f"{shown(name)} is there already", None, "another name"))
        return name

    def _length(self, text: str) -> str:
        # "62" may be millimetres, centimetres or inches; in talk nobody can tell.
        read_fact("length", text, self.knowledge, bare=False)
        return _tidy(text, LONGEST_NAME)

    def _layers(self, text: str) -> tuple[tuple[str, bool], ...]:
        names = [part for part in text.split(",") if part.strip()]
        if len(names) > MOST_LAYERS:
            raise InputError(Problem("too many layers", None, f"at most {MOST_LAYERS}"))
        if len(names) == 1:
            self._refuse_no_commas(names[0])
        found = tuple(self._layer(_tidy(part, LONGEST_NAME)) for part in names)
        if all(notion for _, notion in found):
            raise InputError(
                Problem("no cloth of this garment is among them", None, "at least one cloth")
            )
        return found

    def _refuse_no_commas(self, text: str) -> None:
        """Refuse cloths with another word between them than a comma: "shell to lining"."""
        names = {cloth.name.casefold(): cloth.name for cloth in self.answers.cloths}
        parts = [" ".join(part.split()).casefold() for part in _BETWEEN.split(text)]
        if len(parts) > 1 and all(part in names for part in parts):
            written = ", ".join(names[part] for part in parts)
            raise InputError(
                Problem(f"{shown(text)} is none of the cloths", None, f"commas between: {written}")
            )

    def _layer(self, said: str) -> tuple[str, bool]:
        names = {cloth.name.casefold(): cloth.name for cloth in self.answers.cloths}
        if said.casefold() in names:
            return names[said.casefold()], False
        try:
            entry = self.knowledge.entries[read_notion(said, self.knowledge).entry]
        except InputError:
            entry = None
        if entry is None or entry.kind == "cloth":
            notions = [e.name for e in self.knowledge.entries.values() if e.kind != "cloth"]
            near = nearest(said, [*names.values(), *notions])
            raise InputError(
                Problem(
                    f"{shown(said)} is none of the cloths, and no notion",
                    None,
                    f"some of {', '.join(names.values())}",
                    near,
                )
            )
        return said, True


def described(reading: Reading, knowledge: Knowledge, units: str) -> str:
    """What was understood of a phrase, in a few words."""
    entry = knowledge.entries[reading.entry]
    fibres = " or ".join(dict.fromkeys(_mix_words(mix, knowledge) for mix in reading.mixes))
    if len(reading.mixes) > 1:
        fibres = f"fibre unknown, perhaps {fibres}"
    weight = "weight not said"
    if reading.weight is not None:
        weight = show_range("weight", *reading.weight, "us" if units == "us" else "metric")
    return f"{entry.name}, {fibres}, {weight}"


def _mix_words(mix: Mix, knowledge: Knowledge) -> str:
    names = [(knowledge.fibres[fibre].name, share) for fibre, share in mix]
    if len(names) == 1:
        return names[0][0]
    return " with ".join(n if share is None else f"{n} {share:g} %" for n, share in names)


def _tidy(text: str, longest: int) -> str:
    try:
        return tidy_name(text, longest)
    except ValueError as error:
        raise InputError(f"this {error}") from None


def _word(key: str, text: str, known: tuple[str, ...]) -> str:
    """One of a few words; its beginning is enough where it can be no other."""
    short = [word for word in known if word.startswith(text.strip().casefold())]
    return short[0] if len(short) == 1 else read_word(key, text, known)
