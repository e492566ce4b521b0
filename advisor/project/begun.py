"""Begins a project from a garment of the usual kind: its places stand, name and cloths are asked.

A template is a project file of the plainest form: one cloth a line below `fabrics:`, one place a
line below `seams:`. An empty answer keeps what stands there, and where the answers end the rest
stays as it is; so nothing typed is the template itself.
"""

from __future__ import annotations

import contextlib
import re
from collections.abc import Callable
from typing import TypeVar

from advisor.errors import InputError, nearest, shown
from advisor.knowledge.model import Knowledge
from advisor.project.facts import read_maker_fact, read_word
from advisor.project.names import LONGEST_NAME, LONGEST_PHRASE, tidy_name
from advisor.project.phrase import read_phrase
from advisor.project.start import HELP as INTERVIEW_HELP
from advisor.project.start import MOST_TRIES, Ask, Tell, described
from advisor.textio.flow import quoted

T = TypeVar("T")

HEADS = ("garment", "units", "fitting")
ASKED = {
    "garment": "What do you call the garment? [{now}]",
    "units": "Which units shall be printed, metric or us? [{now}]",
    "fitting": "How is it fitted: to the body, loosely or not at all? [{now}]",
    "machine": "What do you sew on: household, industrial or hand? [household]",
    "overlocker": "Have you an overlocker: no, 3-thread, 4-thread or 5-thread? [{now}]",
    "cloth": "{name}: which cloth is it? [{now}]",
    "strike": "Its places are {places}. Which do you not make? A cloth strikes all of its places. "
    "Commas between them. [none]",
}
HELP = {
    **{key: INTERVIEW_HELP[key] for key in ("garment", "units", "machine", "overlocker")},
    "fitting": "To the body: fitted on her before the seams are closed for good, so no step past "
    "recall comes before it. Loosely: tried on once. Not at all: it needs no fitting, as a cape.",
    "cloth": "The word in front is a cloth's name in this garment: shell is the outer cloth, the "
    "others are what they say. Answer with the cloth that you have: " + INTERVIEW_HELP["cloth"],
    "strike": "A place is where something is made: a seam, a hem, a dart, a zip. Name those that "
    "your garment has not, as they are printed; or a cloth, such as lining, and all of its places "
    "go with it. An empty line makes all of them.",
}
"""What each question means, for whoever asks."""
WORDS = {
    "units": ("metric", "us"),
    "fitting": ("to the body", "loosely", "not at all"),
}
_CLOTH = re.compile(r"^  ([^:{#]+): ([^{#]+)$")
_PLACE = re.compile(r"^  - \{name: ([^,]+), layers: \[(.*?)\]|^  - \{name: ([^,]+), on: ([^,]+),")


def help_for(question: str) -> str:
    """What a question about a usual garment means."""
    for key, words in ASKED.items():
        parts = [re.escape(part) for part in re.split(r"\{\w+\}", words)]
        if re.fullmatch(".*".join(parts), question):
            return HELP[key]
    return "Answer in a word or a few."


class _EndError(Exception):
    """There are no more answers."""


def begun(template: str, ask: Ask, tell: Tell, knowledge: Knowledge) -> str:
    """The text of a project that goes like a template, with what was answered put in.

    Raises:
        InputError: too many answers in a row that are not understood.
    """
    work = _Beginning(template.splitlines(), ask, tell, knowledge)
    with contextlib.suppress(_EndError):
        work.all()
    return "\n".join(work.lines) + "\n"


class _Beginning:
    def __init__(self, lines: list[str], ask: Ask, tell: Tell, knowledge: Knowledge) -> None:
        self.lines = lines
        self.ask = ask
        self.tell = tell
        self.knowledge = knowledge

    def all(self) -> None:
        for head in HEADS:
            self._head(head)
        self._maker("machine", "household")
        self._maker("overlocker", self._maker_now("overlocker") or "not said")
        for at, line in enumerate(self.lines):
            found = _CLOTH.match(line)
            if found is not None:
                self._cloth(at, *found.groups())
        self._strike()

    def _put(self, key: str, read: Callable[[str], T], **words: str) -> T | None:
        """An answer as it was understood, None where it was empty."""
        for _ in range(MOST_TRIES):
            answer = self.ask(ASKED[key].format(**words))
            if answer is None:
                raise _EndError
            if not answer.strip():
                return None
            try:
                return read(answer.strip())
            except (InputError, ValueError) as error:
                self.tell(str(error))
        raise InputError(f"{MOST_TRIES} answers were not understood. Nothing was written")

    def _head(self, key: str) -> None:
        at = next((i for i, line in enumerate(self.lines) if line.startswith(f"{key}: ")), None)
        now = "not at all" if at is None else self.lines[at].partition(": ")[2]
        if key in WORDS:
            said = self._put(key, lambda text: read_word(key, text, WORDS[key]), now=now)
        else:
            said = self._put(key, lambda text: tidy_name(text, LONGEST_NAME), now=now)
        if said is not None and at is not None:
            self.lines[at] = f"{key}: {said if key in WORDS else quoted(said)}"
        elif said is not None and said != now:
            self.lines.insert(self._at("maker: "), f"{key}: {said}")

    def _at(self, start: str) -> int:
        return next(i for i, line in enumerate(self.lines) if line.startswith(start))

    def _maker_now(self, key: str) -> str:
        found = re.search(rf"\b{key}: ([^,}}]+)", self.lines[self._at("maker: ")])
        return found.group(1) if found else ""

    def _maker(self, key: str, now: str) -> None:
        said = self._put(key, lambda text: str(read_maker_fact(key, text, self.knowledge)), now=now)
        if said is None:
            return
        at, has = self._at("maker: "), self._maker_now(key)
        old, new = (f"{key}: {has}", f"{key}: {said or 'no'}")
        line = self.lines[at]
        self.lines[at] = line.replace(old, new) if has else line.replace("{", f"{{{new}, ", 1)

    def _cloth(self, at: int, name: str, now: str) -> None:
        def read(text: str) -> str:
            phrase = tidy_name(text, LONGEST_PHRASE)
            reading = read_phrase(phrase, self.knowledge)
            self.tell(f"Understood: {described(reading, self.knowledge, 'metric')}.")
            return phrase

        said = self._put("cloth", read, name=name, now=now)
        if said is not None:
            self.lines[at] = f"  {name}: {quoted(said)}"

    def _strike(self) -> None:
        """Leave out the places that she does not make, and a cloth with all of its places."""
        struck = self._put("strike", self._named, places=", ".join(self._places().values()))
        for at in sorted(struck or (), reverse=True):
            del self.lines[at]

    def _places(self) -> dict[int, str]:
        """Each place with the line that it stands in."""
        found = {i: _PLACE.match(line) for i, line in enumerate(self.lines)}
        return {i: (m.group(1) or m.group(3)) for i, m in found.items() if m}

    def _layers(self, at: int) -> frozenset[str]:
        found = _PLACE.match(self.lines[at])
        said = (found.group(2) or found.group(4) or "") if found else ""
        return frozenset(re.findall(r"(?<![\w:])(?:use: )?([\w-]+)", said))

    def _named(self, answer: str) -> frozenset[int]:
        places, found = self._places(), set()
        cloths = {m.group(1): i for i, line in enumerate(self.lines) if (m := _CLOTH.match(line))}
        for word in (part.strip() for part in answer.split(",") if part.strip()):
            mine = {i for i, name in places.items() if name == word}
            if word in cloths:
                mine = {i for i in places if word in self._layers(i)} | {cloths[word]}
            if not mine:
                near = nearest(word, [*places.values(), *cloths])
                hint = f"; did you mean {' or '.join(near)}?" if near else ""
                raise InputError(f"{shown(word)} is no place of it{hint}")
            found |= mine
        if found >= set(places):
            raise InputError("a garment has at least one place")
        return frozenset(found)
