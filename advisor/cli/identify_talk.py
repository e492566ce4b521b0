"""Asks about a cloth of unknown fibre, the test that splits best next, until nothing splits it.

Nothing here prints or reads a keyboard: it is given one function that asks and one that tells.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress

from advisor.answer.identified import SAFETY
from advisor.errors import InputError
from advisor.identify.eliminate import FIRST, LABEL, Finding, Proposal, Seen, identify, proposals
from advisor.identify.observed import THREADS, WHOLE, seen_of
from advisor.knowledge.model import Knowledge
from advisor.knowledge.names import plain_name, yes_or_no
from advisor.knowledge.observations import Observation
from advisor.units.sentences import render as in_units

Ask = Callable[[str], str | None]
Tell = Callable[[str], None]
MOST_TRIES = 5
NOT_KNOWN = frozenset(
    {"skip", "unknown", "no idea", "don't know", "dont know", "not sure", "cannot tell", "?"}
)
"""Other words for an empty line."""
ENOUGH = frozenset({"stop", "enough", "done", "quit"})


class _EnoughError(Exception):
    """There are no more answers, or she has had enough."""


def talk(
    ask: Ask, tell: Tell, knowledge: Knowledge, refused: tuple[str, ...]
) -> dict[str, Finding]:
    """Ask until nothing splits what remains; where the answers end, what is known so far.

    Args:
        ask: puts a question and returns a line, None when there are no more.
        tell: says something that needs no answer.
        knowledge: where the tests and the fibres are.
        refused: kinds of test that she will not do, such as `flame`.
    """
    asker = _Asker(ask, tell, knowledge, list(refused))
    tell("Answer with a word or a number; an empty line skips a question, 'stop' ends.")
    with suppress(_EnoughError):
        asker.all()
    return asker.findings()


def help_for(question: str, knowledge: Knowledge) -> str:
    """What a question is good for: which answers leave which fibres."""
    asked = next((o for o in knowledge.observations.values() if question.startswith(o.ask)), None)
    if asked is None:
        return "Yes or no; where you cannot tell, leave it empty, which is the safe answer."
    if asked.id == LABEL:
        return f"{asked.how} Type the fibres as they stand there: cotton 60 polyester 40."
    lines = [asked.how]
    for word, answer in asked.answers.items():
        names = [knowledge.fibres[f].name for f in answer.fibres if f in knowledge.fibres]
        few = f"{', '.join(sorted(names)[:_FEW])}{' and others' if len(names) > _FEW else ''}"
        lines.append(f"  {word}: {f'speaks for {few}' if names else 'rules nothing out'}")
    return "\n".join(lines)


_FEW = 4


class _Asker:
    def __init__(self, ask: Ask, tell: Tell, knowledge: Knowledge, refused: list[str]) -> None:
        self.ask_line = ask
        self.tell = tell
        self.knowledge = knowledge
        self.refused = refused
        self.warned: set[str] = set()
        self.seen: dict[str, list[Seen]] = {WHOLE: []}

    def findings(self) -> dict[str, Finding]:
        """What is known so far; threads that nothing was seen of are left out."""
        known = {t: s for t, s in self.seen.items() if s} or {WHOLE: []}
        return {t: self.finding(t) for t in known}

    def finding(self, threads: str) -> Finding:
        return identify(
            self.seen.get(threads, []), list(self.knowledge.fibres), self.knowledge.observations
        )

    def all(self) -> None:
        question = "Do warp and weft look alike, or is it no weave: yes or no? [yes]"
        alike = yes_or_no(self.line(question), usual=True)
        for _ in range(MOST_TRIES):
            if alike is not None:
                break
            unclear = "Say yes or no; where you are not sure, say no. [yes]"
            alike = yes_or_no(self.line(unclear), usual=True)
        if not alike:
            self.seen = {threads: [] for threads in THREADS}
        for threads in self.seen:
            if threads:
                self.tell(f"Now the {threads} alone.")
            self.some(threads)

    def some(self, threads: str) -> None:
        """Ask about one set of threads, first what is only looked at."""
        asked: set[str] = set()
        for test in FIRST:
            self.put(threads, self.knowledge.observations[test])
            asked.add(test)
        while True:
            finding = self.finding(threads)
            if finding.blend or len(finding.remain) < 2:
                return
            left = proposals(finding, self.knowledge.observations, (*self.refused, *asked))
            if not left:
                return
            for test in self.together(self.gentlest(left), asked):
                self.put(threads, self.knowledge.observations[test])
                asked.add(test)

    def gentlest(self, left: Sequence[Proposal]) -> str:
        """The test to do next: while one that harms nothing parts them, none that can."""
        kinds = {p.test: self.knowledge.observations[p.test].kind for p in left}
        return next((test for test, kind in kinds.items() if kind not in SAFETY), left[0].test)

    def together(self, test: str, asked: set[str]) -> list[str]:
        """One burning snip answers everything about the flame, so it is all asked at once."""
        observations = self.knowledge.observations
        if observations[test].kind != "flame":
            return [test]
        return [o.id for o in observations.values() if o.kind == "flame" and o.id not in asked]

    def put(self, threads: str, observation: Observation) -> None:
        """Ask one thing; an answer that is not understood is asked again."""
        if observation.kind in self.refused or not self.warn(observation.kind):
            return
        words = (
            ""
            if observation.id == LABEL
            else "".join(f"\n  {i}  {word}" for i, word in enumerate(observation.answers, 1))
        )
        self.tell(f"({observation.how})")
        for _ in range(MOST_TRIES):
            text = self.line(f"{observation.ask}{words}\n [skip]")
            if not text or plain_name(text) in NOT_KNOWN:
                return
            try:
                self.seen[threads].append(seen_of(observation, text, self.knowledge))
            except InputError as error:
                self.tell(str(error))
                continue
            self.tell_note(self.seen[threads][-1])
            return

    def tell_note(self, seen: Seen) -> None:
        answer = self.knowledge.observations[seen.test].answers.get(seen.answer)
        if answer and answer.note:
            self.tell(answer.note)

    def warn(self, kind: str) -> bool:
        """Before the first flame or solvent: how to do it safely, and whether she wants to."""
        if kind not in SAFETY or kind in self.warned:
            return True
        self.warned.add(kind)
        for _, _, text in SAFETY[kind]:
            self.tell(f"! {in_units(text, self.knowledge.system)}")
        what = {"flame": "burn a snip", "solvent": "try acetone on a snip"}[kind]
        if yes_or_no(self.line(f"Will you {what} so: yes or no? [no]")):
            return True
        self.refused.append(kind)
        return False

    def line(self, question: str) -> str:
        text = self.ask_line(question)
        if text is None or plain_name(text) in ENOUGH:
            raise _EnoughError
        return text.strip()
