"""Observations on cloth of unknown fibre: cross-checks, and what they are compiled to.

The compiled form names every fibre of a group, so that whoever eliminates needs no groups.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from msgspec import Struct

from advisor.records import from_data

Say = Callable[[Any, tuple[Any, ...], str, Iterable[str]], None]


class PossibleAnswer(Struct, frozen=True):
    """One answer; `fibres` are those that can give it, none where it is only a hint."""

    word: str
    also: tuple[str, ...]
    fibres: frozenset[str]
    sources: tuple[str, ...]
    published: bool
    note: str
    vague: bool = False


class Observation(Struct, frozen=True):
    """A question with its answers. `named` are all fibres that some answer names."""

    id: str
    title: str
    ask: str
    how: str
    kind: str
    cost: int
    after: str
    answers: dict[str, PossibleAnswer]
    named: frozenset[str]


def check_observations(book: Any, say: Say, sources: Callable[..., None]) -> None:
    """Report words of the observations that nothing else knows.

    Args:
        book: the whole book, with `observations` and `fibres`.
        say: reports a problem of an entry at a path.
        sources: checks the source ids at a path.
    """
    groups = {item.form.group for item in book.fibres.values()}
    for item in book.observations.values():
        form = item.form
        if form.after and form.after not in book.observations:
            say(item, ("after",), f"unknown observation '{form.after}'", book.observations)
        for word, answer in form.answers.items():
            path = ("answers", word)
            sources(item, path, answer.sources)
            for fibre in answer.fibres:
                if fibre not in book.fibres:
                    say(item, (*path, "fibres"), f"unknown fibre '{fibre}'", book.fibres)
            for group in answer.groups:
                if group not in groups:
                    say(item, (*path, "groups"), f"no fibre is of the group '{group}'", groups)


def compile_observation(
    form: Any, fibres: dict[str, Any], published: Callable[[Iterable[str]], bool]
) -> dict[str, Any]:
    """An observation as plain data.

    Args:
        form: the form of one entry.
        fibres: the fibre items of the book, for their groups.
        published: whether one of some sources is more than memory.
    """
    rows = {}
    for word, answer in form.answers.items():
        named = [
            id_
            for id_, item in fibres.items()
            if id_ in answer.fibres or item.form.group in answer.groups
        ]
        about = {"word": word, "fibres": named, "published": published(answer.sources)}
        rows[word] = answer.model_dump(mode="json") | about
    plain: dict[str, Any] = form.model_dump(mode="json")
    return plain | {"answers": rows}


def observation_from(id_: str, raw: dict[str, Any]) -> Observation:
    """An observation from its compiled data."""
    named = {fibre for row in raw["answers"].values() for fibre in row["fibres"]}
    return from_data(Observation, raw, id=id_, named=sorted(named))
