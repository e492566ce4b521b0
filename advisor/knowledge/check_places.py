"""Cross-checks of kinds of place and methods: every word that they name has to stand somewhere."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from advisor.errors import Problem, nearest
from advisor.knowledge.book import Book, BookItem
from advisor.knowledge.places import plain_word

FIELDS = frozenset({"name", "cloths", "how", "leave", "opened", "below", "marked"})
"""What the sentence of a stage may name in braces."""
GATHERS = ("hand rows", "gathering foot", "overlock", "elastic")


def check_places(book: Book) -> list[Problem]:
    """Every word of `places.yaml` and of the methods that names nothing."""
    return _PlaceChecker(book).run() if book.places or book.methods else []


class _PlaceChecker:
    def __init__(self, book: Book) -> None:
        self.book = book
        self.problems: list[Problem] = []
        order = book.order.form if book.order else None
        works = order.operations.items() if order else ()
        self.verbs = {id_: op.verb for id_, op in works if op.scope == "seam"}
        self.works = set(self.verbs)
        self.roles = set(order.kinds) if order else set()
        self.notions = {*book.notions, *(item.form.kind for item in book.notions.values())}

    def run(self) -> list[Problem]:
        for item in self.book.places.values():
            self._kind(item)
        self._precedences()
        names: dict[str, str] = {}
        for item in self.book.methods.values():
            self._method(item)
            for name in {plain_word(n) for n in (item.id, item.form.name, *item.form.also)}:
                if name in names:
                    text = f"'{name}' is the name of two methods, of {names[name]} too"
                    self.problems.append(Problem(text, item.where("name")))
                names[name] = item.id
        return self.problems

    def _precedences(self) -> None:
        """The kinds of place that the order of work names."""
        item = self.book.order
        if item is None:
            return
        for id_, rule in item.form.precedences.items():
            for side in ("before", "after"):
                path, named = ("precedences", id_, side, "place"), getattr(rule, side).place
                self._known(item, path, named, self.book.places, "kind of place")

    def _kind(self, item: BookItem) -> None:
        form = item.form
        self._known(item, ("sources",), _cited(form.sources), self.book.sources, "source")
        self._known(item, ("notions",), form.notions, self.notions, "notion")
        self._known(item, ("prepares",), form.prepares, self.works, "piece of work on a place")
        self._known(item, ("usual",), [form.usual], self.book.methods, "method")
        usual = self.book.methods.get(form.usual)
        if usual is not None and item.id not in usual.form.makes:
            text = f"the method '{form.usual}' does not make a {form.name}"
            self.problems.append(Problem(text, item.where("usual")))

    def _method(self, item: BookItem) -> None:
        form, fits = item.form, item.form.fits
        options = {k: self.book.aspects[f"{k}.kind"].form.options for k in ("seam", "hem")}
        self._known(item, ("sources",), _cited(form.sources), self.book.sources, "source")
        self._known(item, ("makes",), form.makes, self.book.places, "kind of place")
        self._known(item, ("fits", "seam"), fits.seam, options["seam"], "option of seam.kind")
        self._known(item, ("fits", "hem"), fits.hem, options["hem"], "option of hem.kind")
        self._known(item, ("fits", "notions"), fits.notions, self.notions, "notion")
        self._known(item, ("fits", "roles"), fits.roles, self.roles, "kind of seam")
        self._known(item, ("crossed by",), form.crossed_by, self.roles, "kind of seam")
        self._known(item, ("fits", "gathers"), fits.gathers, GATHERS, "way to gather")
        for i, thing in enumerate(form.buys):
            self._known(item, ("buys", i, "unless"), thing.unless, self.book.methods, "method")
        verbs: set[str] = set()
        for i, stage in enumerate(form.stages):
            verb = stage.verb or self.verbs.get(stage.work, "")
            if verb in verbs and not stage.work.startswith("neaten"):
                text = f"two stages are called '{verb}'; a step needs a name of its own"
                self.problems.append(Problem(text, item.where("stages", i)))
            verbs.add(verb)
            self._known(item, ("stages", i, "work"), [stage.work], self.works, "piece of work")
            self._sentence(item, i, stage.does or "")

    def _sentence(self, item: BookItem, i: int, text: str) -> None:
        named = {part.split("}", 1)[0] for part in text.split("{")[1:]}
        self._known(item, ("stages", i, "does"), sorted(named), FIELDS, "word in braces")

    def _known(
        self,
        item: BookItem,
        path: tuple[Any, ...],
        words: Sequence[str],
        known: Iterable[str],
        what: str,
    ) -> None:
        names = sorted(known)
        for word in words:
            if (
                names and word not in names
            ):  # an empty register could not be read, which is said already
                text = f"unknown {what} '{word}'"
                self.problems.append(Problem(text, item.where(*path), None, nearest(word, names)))


def _cited(sources: Sequence[str]) -> list[str]:
    return [text.split(" ", 1)[0] for text in sources]
