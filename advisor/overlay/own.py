"""A maker's own knowledge, laid over the shipped one: her cloths, names, rules and test results.

Her folder holds `fabrics/<id>.yaml` (a cloth like a known one, with her results, or a whole form),
`notions/`, `rules/<area>/`, `sources.yaml` and `names.yaml` (another name and the entry it means).
Whatever is wrong in it is left out and named; the shipped entries are never replaced, so that no
file of hers can loosen a limit in silence.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from pathlib import Path

from advisor.errors import InputError, Problem, nearest
from advisor.knowledge import load, schema, schema_own
from advisor.knowledge.book import Book, BookItem
from advisor.knowledge.likeness import lay_over_bases
from advisor.knowledge.names import plain_name
from advisor.knowledge.vocabulary import check_book
from advisor.overlay import own_cloths
from advisor.textio.yamlfile import Document, parse_yaml, read_yaml

NAMES = "names.yaml"
SHELVES = ("sources", "fabrics", "notions", "rules")


def overlay(book: Book, folder: Path, changes: Mapping[Path, str] | None = None) -> list[Problem]:
    """Add what is sound in a maker's folder to a book, and return why the rest was left out.

    Args:
        book: the shipped knowledge, to be added to.
        folder: hers.
        changes: texts that count instead of the files of these paths, to try them before they
            are written.
    """
    layer = _Layer(book, folder, changes or {})
    layer.read()
    layer.drop_what_is_wrong()
    return layer.left_out


class _Layer:
    def __init__(self, book: Book, folder: Path, changes: Mapping[Path, str]) -> None:
        self.book = book
        self.folder = folder
        self.changes = changes
        self.left_out: list[Problem] = []
        self.added: list[tuple[str, BookItem]] = []

    def read(self) -> None:
        own = schema.SourceForm(title="Your own test", kind="own-test", read="whole")
        self.book.sources.setdefault(
            own_cloths.SOURCE, BookItem(own_cloths.SOURCE, own, _nowhere())
        )
        if not self.folder.is_dir() and not self.changes:
            return
        plain = Book()
        for path in self._files():
            document = self._document(path)
            if document is None:
                continue
            if path.parent.name == "fabrics" and "like" in _keys(document):
                self._cloth(path, document)
            elif path.parent == self.folder:
                load._register(plain, path.stem, document)
            else:
                load._single(plain, path, document)
        lay_over_bases(plain, self.book)
        self.left_out += plain.problems
        bad = {str(p.where.file) for p in plain.problems if p.where}
        for shelf in SHELVES:
            for item in getattr(plain, shelf).values():
                if item.document.file not in bad or shelf == "sources":
                    self._add(shelf, item)
        self._names()

    def _files(self) -> list[Path]:
        sources = self.folder / "sources.yaml"
        found = {*load.files_of(self.folder), *self.changes}
        single = sorted(path for path in found if path.parent != self.folder)
        return [sources, *single] if sources.is_file() else single

    def _document(self, path: Path) -> Document | None:
        try:
            if path in self.changes:
                return parse_yaml(self.changes[path], str(path))
            return read_yaml(path)
        except InputError as error:
            self.left_out += error.problems
            return None

    def _cloth(self, path: Path, document: Document) -> None:
        reader = Book()
        form = load._fit(reader, schema_own.OwnClothForm, document.data, document, ())
        self.left_out += reader.problems
        if form is None:
            return
        item = BookItem(form.id, form, document)
        if form.id != path.stem:
            text = f"the id '{form.id}' and the file name '{path.stem}' differ"
            self.left_out.append(Problem(text, item.where("id")))
            return
        base = self.book.entries().get(form.like)
        if base is None or form.like not in self.book.fabrics:
            close = nearest(form.like, self.book.fabrics)
            text = f"unknown cloth '{form.like}'"
            self.left_out.append(Problem(text, item.where("like"), None, close))
            return
        whole, loosened, problems = own_cloths.cloth_of(item, base, self.book)
        self.left_out += problems
        if self._add("fabrics", whole) and loosened:
            self.book.loosened[whole.id] = loosened

    def _add(self, shelf: str, item: BookItem) -> bool:
        """Add an entry of hers; a name that is taken leaves the whole entry out."""
        taken = self._taken()
        if item.id in getattr(self.book, shelf):
            text = f"'{item.id}' is there already; give yours another id"
            self.left_out.append(Problem(text, item.where("id")))
            return False
        if shelf in ("fabrics", "notions"):
            for name in (item.id, item.form.name, *item.form.also):
                owner = taken.get(plain_name(name))
                if owner:
                    text = f"'{name}' means {owner} already; give yours another name"
                    self.left_out.append(Problem(text, item.where("name")))
                    return False
        getattr(self.book, shelf)[item.id] = item
        self.added.append((shelf, item))
        return True

    def _taken(self) -> dict[str, str]:
        items = {**self.book.entries(), **self.book.fibres}
        return {
            plain_name(name): item.id
            for item in items.values()
            for name in (item.id, item.form.name, *item.form.also)
        }

    def _names(self) -> None:
        """Other names for known entries."""
        path = self.folder / NAMES
        there = path in self.changes or path.exists()
        document = self._document(path) if there else None
        if document is None:
            return
        if not isinstance(document.data, dict):
            text = "names.yaml is a mapping of names to what they mean"
            self.left_out.append(Problem(text, document.where()))
            return
        for name, said in document.data.items():
            taken = self._taken()
            target = taken.get(plain_name(str(said)))
            item = self.book.entries().get(target or "")
            if item is None:
                close = nearest(str(said), taken)
                text = f"'{name}' means '{said}', which is not known"
                self.left_out.append(Problem(text, document.where(name), None, close))
            elif plain_name(str(name)) in taken:
                text = f"'{name}' means {taken[plain_name(str(name))]} already"
                self.left_out.append(Problem(text, document.where_key(name)))
            else:
                shelf = self.book.fabrics if target in self.book.fabrics else self.book.notions
                form = item.form.model_copy(update={"also": (*item.form.also, str(name))})
                shelf[item.id] = replace(item, form=form)

    def drop_what_is_wrong(self) -> None:
        """Take out every entry of hers in which the cross-check finds a fault."""
        while self.added:
            problems = [p for p in check_book(self.book) if p.where and self._is_hers(p.where.file)]
            bad = {item.document.file for _, item in self.added} & {
                p.where.file for p in problems if p.where
            }
            if not bad:
                return
            self.left_out += problems
            for shelf, item in self.added:
                if item.document.file in bad:
                    getattr(self.book, shelf).pop(item.id, None)
                    self.book.loosened.pop(item.id, None)
            self.added = [(s, item) for s, item in self.added if item.document.file not in bad]

    def _is_hers(self, file: str) -> bool:
        return Path(file).is_relative_to(self.folder)


def _keys(document: Document) -> tuple[str, ...]:
    return tuple(document.data) if isinstance(document.data, dict) else ()


def _nowhere() -> Document:
    from advisor.textio.yamlfile import Positions

    return Document({}, Positions({}, {}), "")


def in_words(problems: Iterable[Problem]) -> list[str]:
    """The problems as lines, each once."""
    return list(dict.fromkeys(str(problem) for problem in problems))
