"""Reads what a maker says that she saw: `burn.residue=hard black bead`, `weft smell=vinegar`."""

from __future__ import annotations

from advisor.errors import InputError, Problem, nearest, shown
from advisor.identify.eliminate import LABEL, Seen
from advisor.knowledge.model import Knowledge
from advisor.knowledge.names import plain_name
from advisor.knowledge.observations import Observation
from advisor.project.phrase import read_fibres

WHOLE = ""
THREADS = ("warp", "weft")
LONGEST = 200


def read_saw(text: str, knowledge: Knowledge) -> tuple[str, str, str]:
    """Which threads were looked at (`warp`, `weft`, or nothing for all), the test and the answer.

    Raises:
        InputError: with what was not understood and the nearest names.
    """
    name, equals, answer = text[: LONGEST + 1].partition("=")
    if not equals or not answer.strip() or len(text) > LONGEST:
        wanted = "a test and what was seen, as in 'burn.smell=vinegar'"
        raise InputError(Problem(f"not understood: {shown(text)}", None, wanted))
    words = plain_name(name).split()
    threads = words.pop(0) if words and words[0] in THREADS else WHOLE
    observation = find_observation(" ".join(words), knowledge)
    return threads, observation.id, answer.strip()


def find_observation(name: str, knowledge: Knowledge) -> Observation:
    """The observation of a name: its id, its last part, or its title.

    Raises:
        InputError: there is none; with the nearest names.
    """
    names: dict[str, Observation] = {}
    for observation in knowledge.observations.values():
        for known in (observation.id, observation.id.rpartition(".")[2], observation.title):
            names.setdefault(plain_name(known), observation)
    found = names.get(plain_name(name))
    if found is None:
        close = nearest(name, names)
        listed = f"one of {', '.join(knowledge.observations)}"
        raise InputError(
            Problem(f"unknown test {shown(name)}", None, None if close else listed, close)
        )
    return found


def read_answer(observation: Observation, text: str) -> str:
    """The answer that a word, an alias or a number of the list stands for.

    Raises:
        InputError: none does; with the nearest names.
    """
    listed = list(observation.answers)
    plain = plain_name(text)
    if plain.isascii() and plain.isdigit() and 1 <= int(plain[:4]) <= len(listed):
        return listed[int(plain) - 1]
    names = {plain_name(word): word for word in listed}
    for answer in observation.answers.values():
        for also in answer.also:
            names.setdefault(plain_name(also), answer.word)
    found = names.get(plain)
    if found is None:
        close = tuple(dict.fromkeys(names[n] for n in nearest(plain, names)))
        expected = None if close else f"one of {', '.join(listed)}"
        raise InputError(
            Problem(f"{observation.title}: unknown answer {shown(text)}", None, expected, close)
        )
    return found


def seen_of(observation: Observation, text: str, knowledge: Knowledge) -> Seen:
    """What an answer to a test says: of a label the fibres that it names.

    Raises:
        InputError: the answer is none, or names no fibres that are known.
    """
    if observation.id == LABEL:
        return Seen(LABEL, text, read_label(text, knowledge))
    return Seen(observation.id, read_answer(observation, text))


def read_label(text: str, knowledge: Knowledge) -> tuple[tuple[str, float | None], ...]:
    """The fibres that a label names; nothing where there is no label.

    Raises:
        InputError: a fibre is not known, or the shares do not make 100.
    """
    observation = knowledge.observations["label"]
    answer = observation.answers["no label"]
    if plain_name(text) in {plain_name(word) for word in (answer.word, *answer.also)}:
        return ()
    return read_fibres(text, knowledge)
