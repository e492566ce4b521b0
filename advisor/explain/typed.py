"""What was typed, by what it is known as: whatever is printed as a name may be typed back.

An aspect goes by its id, its title, the label of its row on the screen and the heading of its part
of the sheet; a place by its own name, "garment" or "whole", and a cloth's name of the trade.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

from msgspec import Struct

from advisor.knowledge.names import KEPT, plain_name
from advisor.project.phrases.tokens import words_of
from advisor.render.screen.ask import CUTTING, SETTINGS

if TYPE_CHECKING:
    from advisor.answer.model.answer import Answer
    from advisor.knowledge.model import Aspect, Knowledge

ROWS: Mapping[str, tuple[str, ...]] = {
    **dict(SETTINGS),
    **dict(CUTTING),
    "iron": ("press.temperature",),
    "heat": ("press.temperature",),
    "dot": ("press.temperature",),
    "press": ("press.temperature", *dict(SETTINGS)["press"]),
    "last press": ("press.temperature", *dict(SETTINGS)["press"]),
    "machine": ("machine.foot", "machine.pressure"),
    "marking": ("mark.method",),
    "preshrink": ("prepare.preshrink",),
    "finish": ("seam.finish",),
    "tension": ("stitch.tension",),
    "point": ("needle.point",),
}
"""Labels and headings that are printed over one or several aspects."""
WHOLE = frozenset(
    {"garment", "whole", "whole garment", "the whole garment", "the garment", "last press", "care"}
)
"""How the whole garment is called on sheets and screens."""


class Option(Struct, frozen=True):
    """One answer that an aspect may have, as it is told."""

    aspect: str
    word: str
    label: str


@lru_cache(maxsize=KEPT)
def same(word: str) -> str:
    """A name with nothing but its words: capitals, accents, hyphens and plurals make no odds."""
    return " ".join(words_of(word))


def aspects_named(word: str, knowledge: Knowledge) -> tuple[str, ...]:
    """The aspects that a word stands for, none where it stands for none."""
    if word in knowledge.aspects:
        return (word,)
    asked = same(word)
    rows = {same(label): ids for label, ids in ROWS.items()}
    if asked in rows:
        return tuple(id_ for id_ in rows[asked] if id_ in knowledge.aspects)
    for names_of in (_full, _group, _last):
        if found := [id_ for id_, a in knowledge.aspects.items() if asked in names_of(a)]:
            return tuple(found)
    return ()


def _full(aspect: Aspect) -> tuple[str, ...]:
    return same(aspect.title), same(aspect.id), same(aspect.id.replace(".", " "))


def _group(aspect: Aspect) -> tuple[str, ...]:
    return (same(aspect.id.split(".")[0]),)


def _last(aspect: Aspect) -> tuple[str, ...]:
    return (same(aspect.id.split(".")[1]),)


def aspect_names(knowledge: Knowledge) -> list[str]:
    """Every word that stands for an aspect, for a suggestion."""
    return [*knowledge.aspects, *(a.title for a in knowledge.aspects.values()), *ROWS]


def places_named(word: str, answer: Answer, knowledge: Knowledge) -> tuple[str, ...]:
    """The places of a garment that a word stands for: by its name, the whole, a cloth's name."""
    places = list(dict.fromkeys(v.place for v in answer.verdicts))
    if word in places:
        return (word,)
    asked = same(word)
    if found := [place for place in places if same(place) == asked]:
        return tuple(found)
    if asked in map(same, WHOLE):
        return (answer.garment,) if answer.garment in places else ()
    entry = knowledge.names.get(plain_name(word), word)
    cloths = [layer.name for layer in answer.layers if entry == layer.fabric]
    return tuple(place for place in places if place in cloths)


def options(knowledge: Knowledge) -> list[Option]:
    """Every answer of every aspect."""
    return [
        Option(aspect.id, word, aspect.labels.get(word, word))
        for aspect in knowledge.aspects.values()
        for word in aspect.words
    ]


def options_named(word: str, knowledge: Knowledge) -> list[Option]:
    """The answers that a word names: the word itself, its label, or "walking foot" for walking."""
    if not _NAMED or _NAMED[0][0] is not knowledge.aspects:
        _NAMED[:] = [(knowledge.aspects, _all_named(knowledge))]
    return list(_NAMED[0][1].get(same(word), ()))


_NAMED: list[tuple[object, dict[str, list[Option]]]] = []


def _all_named(knowledge: Knowledge) -> dict[str, list[Option]]:
    found: dict[str, list[Option]] = {}
    for option in options(knowledge):
        for name in sorted(_option_names(option, knowledge)):
            found.setdefault(name, []).append(option)
    return found


def _option_names(option: Option, knowledge: Knowledge) -> set[str]:
    noun = same(knowledge.aspects[option.aspect].title).rsplit(" ", 1)[-1]
    group = same(option.aspect.split(".")[0])
    named = {same(option.word), same(option.label)}
    return named | {f"{name} {n}" for name in named for n in (noun, group, "edge", "seam")}


def holding(word: str, names: Iterable[str]) -> tuple[str, ...]:
    """The names that hold every word of what was typed, the shortest first."""
    asked = set(words_of(word))
    found = [name for name in dict.fromkeys(names) if asked and asked <= set(words_of(name))]
    return tuple(sorted(found, key=lambda name: (len(name), name)))


def listed(names: Sequence[str]) -> str:
    """Names in quotes, as they may be typed."""
    return ", ".join(f"'{name}'" for name in names)
