"""Cross-checks of a book: every word in an entry has to be known somewhere else.

Forms see one entry at a time; this room sees them all. It reports problems and compiles nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial
from typing import Any

from advisor.errors import Problem, nearest
from advisor.knowledge import schema
from advisor.knowledge.book import Book, BookItem
from advisor.knowledge.check_places import check_places
from advisor.knowledge.gaps import check_gaps
from advisor.knowledge.glossary import check_glossary
from advisor.knowledge.labels import check_labels
from advisor.knowledge.names import plain_name
from advisor.knowledge.observations import check_observations
from advisor.knowledge.ordering import check_order
from advisor.knowledge.telling import check_told
from advisor.knowledge.when import ROLES, Reader
from advisor.knowledge.workshop import check_workshop

CHANGES = (
    "press apart",
    "fuse first",
    "swap notion",
    "buy of",
    "drop notion",
    "finger-press",
    "hand-sew",
    "free choice",
    "get foot",
    "detach",
    "lessen bulk",
)
"""What a remedy may do; the engine has one function for each."""


def check_book(book: Book) -> list[Problem]:
    """Every problem of the words of a book, on top of those met while reading it."""
    checker = _WordChecker(book)
    checker.run()
    workshop = check_workshop(book.seams, book.kit, book.aspects, book.sources)
    places = check_places(book)
    glossary = check_glossary(book.glossary, book.sources)
    gaps = check_gaps(book)
    order = check_order(book.order, book.sources)
    found = [*book.problems, *checker.problems, *order, *workshop, *places, *glossary, *gaps]
    return list(dict.fromkeys(found))  # a line that several entries borrow is wrong once


def reader_of(book: Book) -> Reader:
    """The reader of conditions for the vocabulary of this book."""
    options = {id_: item.form.options for id_, item in book.aspects.items()}
    return Reader(
        {id_: item.form.words for id_, item in book.traits.items()},
        book.fibres,
        book.entries(),
        weaves_of(book),
        options,
        book.places,
    )


def weaves_of(book: Book) -> tuple[str, ...]:
    """The weaves that a cloth may have: as declared, or those in use where nothing is declared."""
    if "weave" in book.words:
        return tuple(book.words["weave"].form.words)
    return tuple(sorted({i.form.weave for i in book.entries().values() if i.form.weave}))


def parse_mix(text: str) -> list[tuple[str, float]] | None:
    """Read `cotton 97 elastane 3` or `silk`; None where shares do not sum to 100."""
    words = text.split()
    if len(words) == 1:
        return [(words[0], 100.0)]
    if len(words) % 2:
        return None
    try:
        mix = [(words[i], float(words[i + 1])) for i in range(0, len(words), 2)]
    except ValueError:
        return None
    total = sum(float(share) for _, share in mix)
    return mix if abs(total - 100) < 0.01 else None


class _WordChecker:
    def __init__(self, book: Book) -> None:
        self.book = book
        self.reader = reader_of(book)
        self.problems: list[Problem] = []

    def say(
        self, item: BookItem, path: tuple[Any, ...], text: str, known: Iterable[str] = ()
    ) -> None:
        """Report a problem at a path of an entry."""
        word = text.split("'")[1] if "'" in text else ""
        close = nearest(word, list(known)) if word else ()
        self.problems.append(Problem(text, item.where(*path), None, close))

    def run(self) -> None:
        for item in self.book.aspects.values():
            self._usual(item)
        for item in self.book.fibres.values():
            self._fibre(item)
        for item in self.book.entries().values():
            self._entry(item)
        for item in self.book.rules.values():
            self._rule(item)
        for item in self.book.machines.values():
            self._claims(item, item.form.claims)
        for item in self.book.remedies.values():
            self._remedy(item)
        check_observations(self.book, self.say, self._sources)
        check_labels(self.book, self.say, self._sources)
        for item in self.book.cleaning.values():
            self._cleaning(item)
        self._names()

    def _usual(self, item: BookItem) -> None:
        """What is usually taken is an option of the aspect, on somebody's word."""
        form = item.form
        for word in form.usually:
            if word not in form.options:
                self.say(item, ("usually",), f"'{word}' is no option of {item.id}", form.options)
        if form.usually and not form.usually_sources:
            self.say(item, ("usually",), "what is usual needs `usually sources`")
        if form.usually and not form.usually_why:
            self.say(item, ("usually",), "what is usual needs `usually why`")
        self._sources(item, ("usually sources",), form.usually_sources)

    def _remedy(self, item: BookItem) -> None:
        form = item.form
        self._sources(item, ("sources",), form.sources)
        for i, cured in enumerate(form.cures):
            if not any(aspect.startswith(cured) for aspect in self.book.aspects):
                known = self.book.aspects
                self.say(item, ("cures", i), f"unknown aspect '{cured}'", known)
        done = form.change.get("do")
        if done not in CHANGES:
            self.say(item, ("change", "do"), f"unknown change '{done}'", CHANGES)
        to = form.change.get("to")
        known = {**self.book.entries(), **self.book.fibres}
        if to is not None and to not in known:
            self.say(item, ("change", "to"), f"unknown cloth, notion or fibre '{to}'", known)

    def _cleaning(self, item: BookItem) -> None:
        if item.id not in self.book.fibres:
            self.say(item, (), f"unknown fibre '{item.id}'", self.book.fibres)
        self._claims(item, item.form.bears, "bears")

    def _sources(self, item: BookItem, path: tuple[Any, ...], ids: Iterable[str]) -> None:
        self.problems += item.uncited(path, ids, self.book.sources)

    def _fibre(self, item: BookItem) -> None:
        form = item.form
        if not form.iron:
            self.say(item, ("iron",), "a fibre needs at least one iron ceiling")
        for key in ("iron", "softens", "sticks", "melts", "scorches", "regain", "notes"):
            for i, value in enumerate(getattr(form, key)):
                self._sources(item, (key, i), value.sources)
        for key in ("density", "specific heat", "conductivity"):
            value = getattr(form, key.replace(" ", "_"))
            if value is not None:
                self._sources(item, (key,), value.sources)
        self._traits(item, form)
        self._claims(item, form.claims)

    def _entry(self, item: BookItem) -> None:
        form = item.form
        weaves = weaves_of(self.book)
        if form.weave is not None and form.weave not in weaves:
            self.say(item, ("weave",), f"unknown weave '{form.weave}'", weaves)
        self._sources(item, ("sold in",), form.sold_in.sources)
        self._bought(item, form)
        for i, text in enumerate(form.sold_in.fibres):
            path = ("sold in", "fibres", i)
            mix = parse_mix(text)
            if mix is None:
                self.say(item, path, f"the shares of '{text}' do not sum to 100")
                continue
            for fibre, _ in mix:
                if fibre not in self.book.fibres:
                    self.say(item, path, f"unknown fibre '{fibre}'", self.book.fibres)
        for key in ("weight", "thickness"):
            span = getattr(form, key)
            if span is not None:
                self._sources(item, (key,), span.sources)
                if span.min > span.max:
                    self.say(item, (key,), f"the {key} starts above its end")
        self._traits(item, form)
        self._claims(item, form.claims)
        for i, note in enumerate(form.notes):
            self._sources(item, ("notes", i), note.sources)

    def _bought(self, item: BookItem, form: Any) -> None:
        for key in ("ends", "wide", "less", "apart"):
            self._sources(item, (key,), getattr(getattr(form, key, None), "sources", ()))

    def _traits(self, item: BookItem, form: Any) -> None:
        traits = self.book.traits
        for name, level in form.traits.items():
            if name not in traits:
                self.say(item, ("traits", name), f"unknown trait '{name}'", traits)
            elif level != "unknown" and level not in traits[name].form.words:
                words = traits[name].form.words
                self.say(item, ("traits", name), f"'{level}' is no level of {name}", words)
        if form.traits and not form.traits_sources:
            self.say(item, ("traits",), "traits need `traits sources`")
        self._sources(item, ("traits sources",), form.traits_sources)

    def _claims(self, item: BookItem, claims: Iterable[Any], key: str = "claims") -> None:
        for i, claim in enumerate(claims):
            self._claim(item, claim, (key, i))

    def _claim(self, item: BookItem, claim: schema.ClaimForm, path: tuple[Any, ...]) -> None:
        aspects = self.book.aspects
        if claim.aspect not in aspects:
            self.say(item, (*path, "aspect"), f"unknown aspect '{claim.aspect}'", aspects)
            return
        form = aspects[claim.aspect].form
        if form.kind == "options":
            self._options(item, claim, form, path)
        else:
            self._bounds(item, claim, form, path)
        if claim.risk and claim.strength != "must":
            self.say(item, (*path, "risk"), "only a `must` has a risk")
        if claim.strength == "may" and claim.for_ not in (None, "habit"):
            self.say(item, (*path, "for"), "a `may` is a habit")
        if not claim.sources and not isinstance(item.form, schema.RuleForm):
            self.say(item, path, "a claim needs `sources`")
        if not claim.why and not isinstance(item.form, schema.RuleForm):
            self.say(item, path, "a claim needs `why`")
        self._sources(item, (*path, "sources"), claim.sources)

    def _options(
        self,
        item: BookItem,
        claim: schema.ClaimForm,
        form: schema.AspectForm,
        path: tuple[Any, ...],
    ) -> None:
        words = [*(claim.of or ()), *(claim.not_ or ())]
        if form.allows and claim.max is not None:
            words.append(str(claim.max))
        elif claim.min is not None or claim.max is not None:
            text = f"{claim.aspect} has options: write `of` or `not`, no `min` or `max`"
            self.say(item, path, text)
        if not words:
            self.say(item, path, f"a claim on {claim.aspect} needs `of` or `not`")
        if claim.best is not None:
            words.append(str(claim.best))
        for word in words:
            if word not in form.options:
                self.say(item, path, f"'{word}' is no option of {claim.aspect}", form.options)

    def _bounds(
        self,
        item: BookItem,
        claim: schema.ClaimForm,
        form: schema.AspectForm,
        path: tuple[Any, ...],
    ) -> None:
        if claim.of or claim.not_:
            self.say(item, path, f"{claim.aspect} is a {form.kind}: write `min` or `max`")
        if claim.min is None and claim.max is None:
            self.say(item, path, f"a claim on {claim.aspect} needs `min` or `max`")
        for value in (claim.min, claim.max, claim.best):
            if value is None:
                continue
            if form.kind == "scale" and str(value) not in form.words:
                self.say(item, path, f"'{value}' is no word of {claim.aspect}", form.words)
            if form.kind == "range" and not self._number_fits(value, form):
                text = f"{claim.aspect} takes a number from {form.low:g} to {form.high:g}"
                self.say(item, path, text)
        low, high = claim.min, claim.max
        if isinstance(low, float) and isinstance(high, float) and low > high:
            self.say(item, path, "`min` is above `max`")

    @staticmethod
    def _number_fits(value: Any, form: schema.AspectForm) -> bool:
        low, high = form.low or 0.0, form.high or 0.0
        return isinstance(value, float) and low <= value <= high

    def _rule(self, item: BookItem) -> None:
        form = item.form
        roles = [key for key in form.when if key in ROLES]

        def fail(path: tuple[Any, ...], text: str, known: Iterable[str]) -> None:
            self.say(item, ("when", *path), text, known)

        for key in form.when:
            if key not in ROLES:
                self.say(item, ("when", key), f"unknown part '{key}' of `when`", ROLES)
        main = [key for key in roles if key not in ("seam", "maker")]
        if len(main) > 1:
            self.say(item, ("when",), "`when` has one of layer, pair, every, some, garment pair")
        for key in roles:
            read_role(self.reader, key, form.when[key], fail)
        self._sources(item, ("sources",), form.sources)
        self._claims(item, form.then, "then")
        forms = {id_: aspect.form for id_, aspect in self.book.aspects.items()}
        check_told(forms, form, partial(self.say, item))
        for i, caution in enumerate(form.cautions):
            self._sources(item, ("cautions", i), caution.sources)
        if not (form.then or form.do or form.cautions or form.tests):
            self.say(item, (), "a rule has to say something: then, do, cautions or tests")

    def _names(self) -> None:
        """A name stands for one thing only."""
        for shelf in (self.book.entries(), self.book.fibres):
            seen: dict[str, str] = {}
            for item in shelf.values():
                for name in {item.id.replace("-", " "), item.form.name, *item.form.also}:
                    key = plain_name(name)
                    if seen.setdefault(key, item.id) != item.id:
                        text = f"the name '{name}' also stands for {seen[key]}"
                        self.say(item, ("also",), text)


def read_role(reader: Reader, role: str, raw: Any, fail: Any) -> Any:
    """Compile one part of a `when` by its role."""
    if role in ("pair", "garment pair"):
        if not isinstance(raw, list) or len(raw) != 2:
            fail((role,), f"`{role}` takes a list of two conditions", ())
            return [["all"], ["all"]]
        return [reader.layer(part, (role, i), fail) for i, part in enumerate(raw)]
    if role == "seam":
        return reader.seam(raw, (role,), fail)
    if role == "maker":
        return reader.maker(raw, (role,), fail)
    return reader.layer(raw, (role,), fail)
