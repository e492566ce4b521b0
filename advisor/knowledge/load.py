"""Reads every knowledge file, fits it to its form, and keeps where each value stands.

All problems are gathered; nothing is raised before every file has been looked at.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any, TypeVar

from advisor.errors import InputError, Problem, Where
from advisor.knowledge import (
    gaps,
    glossary,
    labels,
    ordering,
    places,
    schema,
    schema_gaps,
    schema_notions,
    schema_places,
    schema_registers,
    workshop,
)
from advisor.knowledge.book import Book, BookItem
from advisor.knowledge.form import Form
from advisor.knowledge.likeness import lay_over_bases
from advisor.textio.validation import problems_from_validation
from advisor.textio.yamlfile import Document, Positions, read_yaml

F = TypeVar("F", bound=Form)


REGISTERS: dict[str, type[Form]] = {
    "sources": schema.SourceForm,
    "aspects": schema.AspectForm,
    "traits": schema.TraitForm,
    "words": schema.WordsForm,
    "fibres": schema.FibreForm,
    "remedies": schema_registers.RemedyForm,
    "machines": schema_registers.MachineForm,
    "seams": schema_registers.SeamClassForm,
    "kit": schema_registers.ToolForm,
    "places": schema_places.PlaceKindForm,
    "observations": schema_registers.ObservationForm,
    "labels": schema_registers.MarketForm,
    "cleaning": schema_registers.CleaningForm,
    "glossary": schema_registers.TermForm,
    "gaps": schema_gaps.GapForm,
}
"""Files that hold many entries, by name, with the form of one entry."""
OPTIONAL = frozenset(
    {
        *("words", "observations"),
        *workshop.FILES,
        *labels.FILES,
        *places.FILES,
        *glossary.FILES,
        *gaps.FILES,
    }
)
"""Registers that a folder may do without."""


def files_of(folder: Path) -> list[Path]:
    """Every knowledge file of a folder in a fixed order; the examples are not knowledge."""
    paths = [(name, folder / f"{name}.yaml") for name in REGISTERS]
    registers = [path for name, path in paths if name not in OPTIONAL or path.is_file()]
    single = [
        *sorted((folder / "fabrics").glob("*.yaml")),
        *sorted((folder / "notions").glob("*.yaml")),
        *sorted((folder / "rules").glob("*/*.yaml")),
        *sorted((folder / "methods").glob("*.yaml")),
    ]
    return [*registers, *single]


def read_book(folder: Path) -> Book:
    """Read a whole knowledge folder.

    Raises:
        InputError: where the folder is no knowledge folder; problems inside it are gathered.
    """
    if not (folder / "aspects.yaml").is_file():
        message = f"no knowledge here: {folder} has no aspects.yaml"
        raise InputError((Problem(message, Where(str(folder), None, None)),))
    book = Book()
    for path in files_of(folder):
        try:
            document = read_yaml(path)
        except InputError as error:
            book.problems.extend(error.problems)
            continue
        if path.parent == folder:
            _register(book, path.stem, document)
        else:
            _single(book, path, document)
    _read_order(book, folder)
    lay_over_bases(book)
    return book


def _read_order(book: Book, folder: Path) -> None:
    """The order of work is one form; a folder may do without it."""
    path = folder / ordering.FILE
    if not path.is_file():
        return
    from advisor.knowledge.schema_order import OrderForm

    try:
        document = read_yaml(path)
    except InputError as error:
        book.problems.extend(error.problems)
        return
    form = _fit(book, OrderForm, document.data, document, ())
    if form is not None:
        book.order = BookItem("order", form, document)


def _register(book: Book, name: str, document: Document) -> None:
    shelf: dict[str, BookItem] = getattr(book, name)
    if not isinstance(document.data, dict):
        book.problems.append(Problem(f"{name}.yaml is a mapping of ids", document.where()))
        return
    for id_, raw in document.data.items():
        form = _fit(book, REGISTERS[name], raw, document, (id_,))
        if form is not None:
            shelf[id_] = BookItem(id_, form, document, (id_,))


def _single(book: Book, path: Path, document: Document) -> None:
    kind, model, area = _kind_of(path)
    form = _fit(book, model, document.data, document, ())
    if form is None:
        return
    id_ = form.id
    shelf: dict[str, BookItem] = getattr(book, kind)
    if id_ != path.stem:
        text = f"the id '{id_}' and the file name '{path.stem}' differ"
        book.problems.append(Problem(text, document.where("id")))
    if id_ in shelf:
        text = f"'{id_}' stands in two files: {shelf[id_].document.file}"
        book.problems.append(Problem(text, document.where("id")))
    shelf[id_] = BookItem(id_, form, document, (), area)


def _kind_of(path: Path) -> tuple[str, type[Any], str]:
    if path.parent.name == "fabrics":
        return "fabrics", schema.FabricForm, ""
    if path.parent.name == "notions":
        return "notions", schema_notions.NotionForm, ""
    if path.parent.name == "methods":
        return "methods", schema_places.MethodForm, ""
    return "rules", schema.RuleForm, path.parent.name


def _fit(
    book: Book, model: type[F], raw: Any, document: Document, path: tuple[Any, ...]
) -> F | None:
    from pydantic import ValidationError

    try:
        return model.model_validate(raw)
    except ValidationError as error:
        book.problems.extend(
            problems_from_validation(
                error, raw, _below(document.positions, path), document.file, model=model
            )
        )
        return None


def _below(positions: Positions, path: tuple[Any, ...]) -> Positions:
    """The positions of one entry of a register, as if it were a file of its own."""
    n = len(path)
    if not n:
        return positions
    keys = {steps[n:]: place for steps, place in positions.keys.items() if steps[:n] == path}
    values = {steps[n:]: place for steps, place in positions.values.items() if steps[:n] == path}
    return Positions(keys, values)
