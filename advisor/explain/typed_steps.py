"""Which steps of the order of work were typed: by number as printed, by name or by their words."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping

from advisor.errors import InputError, Problem, nearest, shown
from advisor.explain.typed import holding, listed, same

_NUMBERS = re.compile(r"(?:steps?|no\.?)?\s*(\d+)(?:\s*(?:-|–|to)\s*(\d+))?\s*[.)]?", re.IGNORECASE)
_CUSTOMARY = re.compile(r"p\d+(?:\s*(?:[-,–]|to)\s*p?\d+)*", re.IGNORECASE)
_MOST = 8


def steps_named(
    words: list[str],
    steps: Mapping[str, str],
    customary: Callable[[], Mapping[str, str]] | None = None,
) -> list[str]:
    """The names of the steps that some words stand for.

    Args:
        words: what was typed: "21", "1-5", "3, 4", "Join shoulder", "join shoulder: shell + shell".
        steps: the steps by their numbers from 1 on, each with its sentence.
        customary: the same of the customary order, whose numbers are printed with a p: "p12".

    Raises:
        InputError: a word that is no step, or may be several; with those.
    """
    found: list[str] = []
    for word in words:
        if customary is not None and _CUSTOMARY.fullmatch(word.strip()):
            found += _named(word.replace("p", "").replace("P", ""), customary())
        else:
            found += _named(word, steps)
    return list(dict.fromkeys(found))


def _named(word: str, steps: Mapping[str, str]) -> list[str]:
    if word in steps:
        return [word]
    parts = [part.strip() for part in word.split(",")]
    if all(_NUMBERS.fullmatch(part) for part in parts):
        return [name for part in parts for name in _numbered(part, list(steps))]
    asked = same(word)
    for names_of in (_own, _sentence):
        if hits := [name for name, does in steps.items() if asked in set(names_of(name, does))]:
            return _one(word, hits)
    if held := list(holding(word, steps)):
        return _one(word, held)
    said = {does.split(":")[0]: name for name, does in steps.items()}
    if held := list(holding(word, said)):
        return _one(word, [said[text] for text in held])
    raise InputError(Problem(f"no step is called {shown(word)}", None, _HOW, nearest(word, steps)))


_HOW = "a step's number, its name or its words as `advisor order` prints them"


def _numbered(part: str, names: list[str]) -> list[str]:
    found = _NUMBERS.fullmatch(part)
    first = int(found[1]) if found else 0
    last = int(found[2] or first) if found else 0
    if not 1 <= first <= last <= len(names):
        raise InputError(
            Problem(f"no step has the number {shown(part)}", None, f"1 to {len(names)}")
        )
    return names[first - 1 : last]


def _own(name: str, _does: str) -> Iterator[str]:
    yield same(name)


def _sentence(_name: str, does: str) -> Iterator[str]:
    """The whole sentence that is printed, and it up to a colon, a comma or a bracket."""
    yield same(does)
    for mark in (":", ",", " (", "."):
        yield same(does.split(mark, maxsplit=1)[0])


def _one(word: str, hits: list[str]) -> list[str]:
    if len(hits) == 1:
        return hits
    shorter = [name for name in hits if same(name) == same(word)]
    if len(shorter) == 1:
        return shorter
    raise InputError(
        Problem(f"{shown(word)} may be several steps", None, f"one of {listed(hits[:_MOST])}")
    )
