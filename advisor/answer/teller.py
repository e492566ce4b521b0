"""What every part of an answer needs to tell: the maker's units, and who has been cited."""

from __future__ import annotations

from collections.abc import Iterable

from advisor.answer.model.told import ToldSource
from advisor.knowledge.model import Knowledge
from advisor.knowledge.standing import GOOD_KINDS, RANKS
from advisor.project.garment import Garment
from advisor.units.sentences import render


class Teller:
    """Turns sentences into the maker's units and keeps the sources in the order of citing."""

    def __init__(self, garment: Garment, knowledge: Knowledge) -> None:
        self.garment = garment
        self.knowledge = knowledge
        self.units = garment.units
        self._cited: dict[str, None] = {}

    def say(self, text: str) -> str:
        """A sentence with its quantities in the maker's units."""
        return render(text, self.units)

    def cite(self, sources: Iterable[str]) -> tuple[str, ...]:
        """Note sources as cited, each perhaps with a place behind its id; gives them back."""
        said = tuple(sources)
        for text in said:
            self._cited[text.split(" ", 1)[0]] = None
        return said

    def sources(self) -> tuple[ToldSource, ...]:
        """Everything cited so far that the knowledge has, in the order of citing."""
        return tuple(
            told_source(id_, self.knowledge) for id_ in self._cited if id_ in self.knowledge.sources
        )


def told_source(id_: str, knowledge: Knowledge) -> ToldSource:
    """A source as it is told; a work that was only remembered stands no higher than memory."""
    source = knowledge.sources[id_]
    read = None if source.read in ("whole", "part") else source.read
    rank = source.rank if source.kind in GOOD_KINDS else RANKS[source.kind]
    return ToldSource(id_, source.citation, source.kind, read, rank)
