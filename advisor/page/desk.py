"""What every view works from: the knowledge, the folder, and answers that are not made twice."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable
from threading import Lock
from typing import TYPE_CHECKING, TypeVar

from msgspec import Struct, field
from msgspec.structs import replace

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import WHOLE, Decided, Parts, decide, tell
from advisor.errors import InputError
from advisor.knowledge.model import Knowledge
from advisor.page.folder import Folder
from advisor.project.garment import Garment
from advisor.textio.yamlfile import Document, parse_yaml
from advisor.units.showing import SYSTEMS
from advisor.writing.meanwhile import mark_of

if TYPE_CHECKING:
    from advisor.answer.label import Asked

MOST_KEPT = 32
T = TypeVar("T")
UNITS = ("", *SYSTEMS)


class Read(Struct, frozen=True):
    """A project as it was read: its name, its text, the mark of it, and the garment."""

    name: str
    text: str
    mark: str
    document: Document
    garment: Garment

    @property
    def colours(self) -> dict[str, str]:
        """The colour of each cloth, where one was said."""
        return {name: cloth.colour for name, cloth in self.garment.cloths.items() if cloth.colour}


class Desk(Struct):
    """One maker's desk."""

    known: Knowledge
    folder: Folder
    taken: dict[str, tuple[str, str, tuple[str, ...]]] = field(default_factory=dict)
    """By project: the mark of what a remedy left, the text before it, and the lines written."""
    _answers: OrderedDict[object, Answer] = field(default_factory=OrderedDict)
    _decided: OrderedDict[object, Decided] = field(default_factory=OrderedDict)
    _spoken: OrderedDict[object, Knowledge] = field(default_factory=OrderedDict)
    _lock: Lock = field(default_factory=Lock)

    def read(self, name: str, units: str = "") -> Read:
        """A project of the folder.

        Raises:
            InputError: there is none of that name, or it cannot be read; with every problem.
        """
        from advisor.project.load import garment_of

        text = self.folder.text(name)
        document = parse_yaml(text, name)
        garment = in_units(garment_of(document, self.known), units)
        return Read(name, text, mark_of(text), document, garment)

    def answer(self, read: Read, label: Asked | None = None) -> Answer:
        """The whole answer to a project, kept while its text stays the same."""
        parts = replace(WHOLE, file=read.name, label=label)
        return self._told((read.mark, read.garment.units), read.garment, parts)

    def answer_to(self, garment: Garment, key: tuple[str, ...]) -> Answer:
        """The whole answer to a question; `key` is what was asked."""
        return self._told((key, garment.units), garment, WHOLE)

    def just(self, read: Read) -> tuple[str, ...]:
        """The lines that the last press wrote, where nothing was changed since."""
        kept = self.taken.get(read.name)
        return kept[2] if kept is not None and kept[0] == read.mark else ()

    def know(self, known: Knowledge) -> None:
        """Answer from other knowledge from now on."""
        with self._lock:
            self.known = known
            self._spoken.clear()
            self._answers.clear()
            self._decided.clear()

    def _told(self, key: object, garment: Garment, parts: Parts) -> Answer:
        """The answer; what was decided is kept too, and serves it with a label and without."""
        known = self._in(garment.units)

        def decided() -> Decided:
            return self._kept(self._decided, key, lambda: decide(garment, known, WHOLE))

        return self._kept(self._answers, (key, parts), lambda: tell(decided(), known, parts))

    def _in(self, units: str) -> Knowledge:
        """The knowledge with its sentences in some units, put into them once."""
        return self._kept(self._spoken, units, lambda: self.known.told(units))

    def _kept(self, kept: OrderedDict[object, T], key: object, make: Callable[[], T]) -> T:
        with self._lock:
            if key in kept:
                kept.move_to_end(key)
                return kept[key]
        made = make()
        with self._lock:
            kept[key] = made
            while len(kept) > MOST_KEPT:
                kept.popitem(last=False)
        return made


def in_units(garment: Garment, units: str) -> Garment:
    """The garment printed in other units, where she asked for some.

    Raises:
        InputError: there are no such units.
    """
    if units not in UNITS:
        raise InputError("units are metric or us")
    return replace(garment, units=SYSTEMS[units]) if units else garment
