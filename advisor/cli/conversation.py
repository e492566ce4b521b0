"""A talk that can go back, explain itself, and be taken up again where it was broken off.

What is asked follows from the answers alone, so the answers are all that is kept: to go back is
to ask again without the last, and to go on later is to ask again with those of the draft, both
without a word until the first question that has no answer yet.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import TypeVar

from advisor.cli import talk
from advisor.knowledge.names import yes_or_no

T = TypeVar("T")
Ask = Callable[[str], str | None]
Tell = Callable[[str], None]
BACK = frozenset({"back", "<"})
HINT = (
    "An empty line skips a question, 'back' or '<' goes back to the one before, '?' tells what is "
    "meant, '? word' what a word means; Ctrl-C keeps your answers for later."
)
_FIRST_LINE = "# Answers to advisor, kept until the questions are answered; one a line."
_MOST_KEPT = 2000
_MOST_NAMES = 9
MOST_TRIES = 5
"""After so many answers that say neither yes nor no the draft is left as it is."""


class _BackError(Exception):
    """The question before is wanted again."""


@dataclass
class Conversation:
    """One talk, with its answers so far.

    Attributes:
        explain: what is told of a question, and of a word in it ("" where none was named).
        draft: where the answers are kept until the talk has ended; None keeps nothing.
        ask, tell: the terminal.
    """

    explain: Callable[[str, str], str]
    draft: Path | None = None
    ask: Ask = talk.ask
    tell: Tell = talk.tell
    answers: list[str] = field(default_factory=list)
    _at: int = 0
    _last: str = ""

    def held(self, asked: Callable[[Ask, Tell], T]) -> T:
        """What comes of the talk; where it is cut off, the draft stays."""
        self._take_up()
        self.tell(HINT)
        while True:
            self._at, self._last = 0, ""
            try:
                found = asked(self._next, self._say)
            except _BackError:
                continue
            return found

    @property
    def kept(self) -> bool:
        """Whether there are answers to go on with."""
        return self.draft is not None and bool(_kept(self.draft))

    def over(self) -> None:
        """Drop the draft: what was asked for is written."""
        if self.draft is not None and _kept(self.draft) is not None:
            self.draft.unlink(missing_ok=True)

    def _say(self, text: str) -> None:
        if self._at >= len(self.answers):
            self.tell(text)

    def _next(self, question: str) -> str | None:
        if question == self._last and self._at:  # the answer was not understood, or was none
            self._at -= 1
            del self.answers[self._at :]
        if self._at < len(self.answers):
            self._at += 1
            self._last = question
            return self.answers[self._at - 1]
        return self._typed(question)

    def _typed(self, question: str) -> str | None:
        while True:
            line = self.ask(question)
            if line is None:
                return None
            word = line.strip()
            if word.startswith("?"):
                self.tell(self.explain(question, word.lstrip("? ")))
            elif word.casefold() in BACK:
                self._go_back()
            else:
                break
        self.answers.append(line.rstrip("\n"))
        self._at, self._last = len(self.answers), question
        self._keep()
        return line

    def _go_back(self) -> None:
        if not self.answers:
            self.tell("This is the first question.")
            return
        was = self.answers.pop()
        self.tell(
            f"Back; you had answered {was!r}." if was.strip() else "Back; you had skipped it."
        )
        raise _BackError

    def _take_up(self) -> None:
        """The answers of the draft, if there is one and she wants to go on with it."""
        self._find_place()
        kept = _kept(self.draft) if self.draft else None
        if not kept:
            return
        word = "answer" if len(kept) == 1 else "answers"
        self.tell(f"A draft of {len(kept)} {word} is kept in {self.draft}.")
        for _ in range(MOST_TRIES):
            typed = self.ask("Go on where you left off: yes or no? [yes]")
            if typed is None:
                return
            said = yes_or_no(typed, usual=True)
            if said is not None:
                self.answers = kept if said else []
                return
            self.tell("Say yes or no.")
        self.draft = None  # what is answered now shall not be written over it

    def _find_place(self) -> None:
        """Leave a file that is no draft of ours alone, and keep the answers beside it."""
        wished = self.draft
        if wished is None or _kept(wished) is not None:
            return
        beside = (wished.with_name(f"{wished.name}{n}") for n in range(2, _MOST_NAMES))
        self.draft = next((path for path in beside if _kept(path) is not None), None)
        where = f"are kept in {self.draft}" if self.draft else "cannot be kept"
        self.tell(
            f"{wished} is no draft of the advisor's, and is left alone. Your answers {where}."
        )

    def _keep(self) -> None:
        """Write the answers down; a place that cannot be written to is no reason to stop asking."""
        from advisor.errors import InputError
        from advisor.textio.files import write_whole

        if self.draft is None:
            return
        try:
            text = "\n".join([_FIRST_LINE, *self.answers]) + "\n"
            write_whole(self.draft, text, replace=True, only=_FIRST_LINE)
        except InputError:
            self.draft = None
            self.tell("Your answers cannot be kept here while you give them.")


def _kept(draft: Path) -> list[str] | None:
    """The answers of a draft; none where nothing has its name, None where that is no file of ours.

    A link is none either: what it points at belongs to somebody else.
    """
    from advisor.textio.files import may_replace

    if not may_replace(draft, _FIRST_LINE):
        return None
    try:
        lines = draft.read_text("utf-8").splitlines()
    except FileNotFoundError:
        return []
    except (OSError, ValueError):
        return None
    return lines[1:] if len(lines) <= _MOST_KEPT else None


def explained(known: object, about: Callable[[str], str]) -> Callable[[str, str], str]:
    """How a question and a word in it are explained, out of the knowledge."""

    def explain(question: str, word: str) -> str:
        from advisor.errors import InputError
        from advisor.explain.about import explain as tell
        from advisor.knowledge.model import Knowledge

        if not word or not isinstance(known, Knowledge):
            return about(question)
        try:
            lines, _ = tell(word, known, "metric")
        except InputError as error:
            said_there = word.casefold() in question.casefold()
            return about(question) if said_there else str(error)
        return "\n".join(lines[:_MOST_LINES])

    return explain


_MOST_LINES = 9
