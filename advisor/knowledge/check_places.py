"""Cross-checks of kinds of place and methods: every word that they name has to stand somewhere."""

from __future__ import annotations

from advisor.errors import Problem
from advisor.knowledge.book import Book, BookItem
from advisor.knowledge.ordering import NEVER, NO_ACT
from advisor.knowledge.places import WAYS_TO_GATHER, plain_word
from advisor.units.sentences import QUANTITY

FIELDS = frozenset(
    {
        "name",
        "cloths",
        "how",
        "leave",
        "between",
        "foot",
        "hung",
        "facing",
        "opened",
        "below",
        "marked",
        "hang",
        "round",
        "host",
        "channels",
    }
)
"""What the sentence of a stage may name in braces."""


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
        self.acts = {id_: op.act for id_, op in works}
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
                self.problems += item.unknown(path, named, self.book.places, "kind of place")

    def _kind(self, item: BookItem) -> None:
        form = item.form
        self.problems += item.uncited(("sources",), form.sources, self.book.sources)
        self.problems += item.unknown(("notions",), form.notions, self.notions, "notion")
        work = "piece of work on a place"
        self.problems += item.unknown(("prepares",), form.prepares, self.works, work)
        self.problems += item.unknown(("usual",), [form.usual], self.book.methods, "method")
        usual = self.book.methods.get(form.usual)
        if usual is not None and item.id not in usual.form.makes:
            text = f"the method '{form.usual}' does not make a {form.name}"
            self.problems.append(Problem(text, item.where("usual")))

    def _method(self, item: BookItem) -> None:
        form, fits, book = item.form, item.form.fits, self.book
        self.problems += item.uncited(("sources",), form.sources, book.sources)
        self.problems += item.unknown(("makes",), form.makes, book.places, "kind of place")
        for key in ("seam", "hem"):
            options, what = book.aspects[f"{key}.kind"].form.options, f"option of {key}.kind"
            self.problems += item.unknown(("fits", key), getattr(fits, key), options, what)
        self.problems += item.unknown(("fits", "notions"), fits.notions, self.notions, "notion")
        self.problems += item.unknown(("fits", "roles"), fits.roles, self.roles, "kind of seam")
        self.problems += item.unknown(("crossed by",), form.crossed_by, self.roles, "kind of seam")
        self.problems += item.unknown(
            ("fits", "gathers"), fits.gathers, WAYS_TO_GATHER, "way to gather"
        )
        for i, thing in enumerate(form.buys):
            at = ("buys", i, "unless")
            self.problems += item.unknown(at, thing.unless, book.methods, "method")
        verbs: set[str] = set()
        for i, stage in enumerate(form.stages):
            verb = stage.verb or self.verbs.get(stage.work, "")
            if verb in verbs and not stage.work.startswith("neaten"):
                text = f"two stages are called '{verb}'; a step needs a name of its own"
                self.problems.append(Problem(text, item.where("stages", i)))
            verbs.add(verb)
            at = ("stages", i, "work")
            self.problems += item.unknown(at, [stage.work], self.works, "piece of work")
            for text in (stage.does, stage.does_by_hand):
                self._sentence(item, i, text or "")
            if stage.undo == NEVER and not (stage.act or self.acts.get(stage.work)):
                self.problems.append(Problem(NO_ACT, item.where("stages", i, "undo")))

    def _sentence(self, item: BookItem, i: int, text: str) -> None:
        named = {part.split("}", 1)[0] for part in QUANTITY.sub("", text).split("{")[1:]}
        self.problems += item.unknown(
            ("stages", i, "does"), sorted(named), FIELDS, "word in braces"
        )
