"""What markets ask of a label, and what fibres bear in cleaning: checked, compiled, light.

`labels.yaml` and `cleaning.yaml` are registers that a folder may do without. The values here carry
no pydantic, so that a warm start reads them from the cache.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from msgspec import Struct, field

from advisor.records import from_data

FILES = ("labels", "cleaning")
CARE = ("care.wash", "care.bleach", "care.dry", "care.iron", "care.professional")
"""The order of a care label: ISO 3758 and the table of care symbols."""
Say = Callable[[Any, tuple[Any, ...], str, Iterable[str]], None]


class Told(Struct, frozen=True):
    """A sentence with the sources that it rests on."""

    text: str
    sources: tuple[str, ...]


class FibreName(Struct, frozen=True):
    """The name of a fibre in a market; "" where there is none, and then `none` says why."""

    say: str
    none: str
    sources: tuple[str, ...]


class SmallAmounts(Struct, frozen=True):
    """Amounts below `below` percent stand together, unless the fibre is in `named`."""

    below: float
    one: str
    more: str
    named: frozenset[str]
    note: str
    sources: tuple[str, ...]


class Trims(Told, frozen=True):
    """Parts that count as trimmings where a maker names them by one of these words."""

    words: tuple[str, ...]


class AnimalParts(Struct, frozen=True):
    """Parts of animals that are no textile: of these fibres, and perhaps of these notions."""

    phrase: str
    fibres: frozenset[str]
    may_be: frozenset[str]
    note: str
    sources: tuple[str, ...]


class FlameTest(Told, frozen=True):
    """Which fibres are spared the flame test, and plain cloths from which weight, g/m2."""

    spared: frozenset[str]
    plain_from: float


class CareWords(Struct, frozen=True):
    """A market's words for each answer of a care aspect, and for one that nobody knows."""

    words: dict[str, str]
    unknown: str
    sources: tuple[str, ...]


class Market(Struct, frozen=True):
    """What one market asks of the label of a garment."""

    id: str
    name: str
    authority: Told
    closing: str
    joint: str
    names: dict[str, FibreName]
    small_amounts: SmallAmounts | None
    whole: tuple[Told, ...]
    parts: tuple[Told, ...]
    pile: Told
    decoration: Told
    wool: Told | None
    not_counted: dict[str, Told]
    fillings: frozenset[str]
    trims: Trims | None
    animal: AnimalParts
    unknown: tuple[Told, ...]
    care: dict[str, CareWords]
    no_steam: str
    duties: tuple[Told, ...]
    spared: tuple[Told, ...]
    basis: Told
    flammability: FlameTest | None
    children: Told
    adults: Told


class LabelKnowledge(Struct, frozen=True):
    """The markets as plain data, and for each fibre what it bears in cleaning, as rows of a claim.

    A market is built when it is asked for: most commands ask for none.
    """

    plain: dict[str, Any] = field(default_factory=dict)
    bears: dict[str, list[list[Any]]] = field(default_factory=dict)

    def market(self, id_: str) -> Market:
        """The market of an id.

        Raises:
            KeyError: the knowledge has no such market.
        """
        return from_data(Market, self.plain[id_], id=id_)


def check_labels(book: Any, say: Say, sources: Callable[..., None]) -> None:
    """Report words of the labels that nothing else knows, and fibres without a name.

    Args:
        book: the whole book.
        say: reports a problem of an entry at a path.
        sources: checks the source ids at a path.
    """
    kinds = {item.form.kind for item in book.notions.values()}
    for item in book.labels.values():
        form = item.form
        for path, ids in _sourced(form.model_dump(by_alias=True), ()):
            sources(item, path, ids)
        for fibre, name in form.names.items():
            if fibre not in book.fibres:
                say(item, ("names", fibre), f"unknown fibre '{fibre}'", book.fibres)
            if (name.say is None) == (name.none is None):
                say(item, ("names", fibre), "a name has either `say` or `none`", ())
        _missing(item, say, "names", "fibre", set(book.fibres) - set(form.names))
        _missing(item, say, "not counted", "notion kind", kinds - set(form.not_counted))
        _missing(item, say, "care", "care aspect", set(CARE) - set(form.care))
        _check_words(item, say, book)


def _missing(item: Any, say: Say, key: str, what: str, ids: Iterable[str]) -> None:
    for id_ in sorted(ids):
        say(item, (key,), f"no entry for the {what} {id_}", ())


def _check_words(item: Any, say: Say, book: Any) -> None:
    form = item.form
    for aspect, about in form.care.items():
        if aspect not in CARE or aspect not in book.aspects:
            say(item, ("care", aspect), f"unknown care aspect '{aspect}'", CARE)
            continue
        known = book.aspects[aspect].form
        words = {*known.words, *known.options}
        for word in sorted(words ^ set(about.words)):
            text = f"'{word}' is no answer of {aspect}, or has no words here"
            say(item, ("care", aspect, "words"), text, words)
    named: list[tuple[str, Iterable[str], Any]] = [
        ("small amounts", form.small_amounts.named if form.small_amounts else (), book.fibres),
        ("animal", form.animal.fibres, book.fibres),
        ("animal", form.animal.may_be, book.notions),
        ("fillings", form.fillings, book.notions),
        ("flammability", form.flammability.spared if form.flammability else (), book.fibres),
    ]
    for key, ids, known_ids in named:
        for id_ in ids:
            if id_ not in known_ids:
                say(item, (key,), f"unknown fibre or notion '{id_}'", known_ids)


def _sourced(raw: Any, path: tuple[Any, ...]) -> Iterable[tuple[tuple[Any, ...], tuple[str, ...]]]:
    if isinstance(raw, Mapping):
        for key, inner in raw.items():
            if key == "sources":
                yield (*path, key), tuple(inner)
            else:
                yield from _sourced(inner, (*path, key))
    elif isinstance(raw, list | tuple):
        for i, inner in enumerate(raw):
            yield from _sourced(inner, (*path, i))


def compile_labels(
    markets: Mapping[str, Any], cleaning: Mapping[str, Any], claim: Callable[..., list[Any]]
) -> dict[str, Any]:
    """The markets as plain data, and what each fibre bears as rows of a claim."""
    return {
        "markets": {id_: item.form.model_dump(mode="json") for id_, item in markets.items()},
        "bears": {
            id_: [claim(row, "", ()) for row in item.form.bears] for id_, item in cleaning.items()
        },
    }


def labels_from_plain(raw: dict[str, Any]) -> LabelKnowledge:
    """What `compile_labels` gave, as light values."""
    return LabelKnowledge(raw.get("markets", {}), raw.get("bears", {}))
