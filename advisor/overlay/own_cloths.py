"""Turns a maker's own cloth into the form of a cloth: the known one, changed, with her results.

A good setting becomes a wish that is heard before the handbook's; a bad one becomes a limit of
this cloth. Neither can widen a safety limit: that takes a written reason, which is kept beside.
"""

from __future__ import annotations

from typing import Any

from advisor.errors import Problem, nearest
from advisor.knowledge import schema, schema_own
from advisor.knowledge.book import Book, BookItem
from advisor.knowledge.likeness import FIELDS
from advisor.knowledge.vocabulary import parse_mix

SOURCE = "own-test"
HEAT = "press.temperature"
HEAT_STEP = 5.0
"""How far below an iron that spoilt a cloth its limit is set, °C: design choice."""


def cloth_of(
    item: BookItem, known: BookItem, book: Book
) -> tuple[BookItem, list[list[Any]], list[Problem]]:
    """The whole form of a cloth of hers, what she loosens, and why results were left out.

    Args:
        item: the entry with her `OwnClothForm`.
        known: the cloth that it is like.
        book: where aspects and fibres are looked up.
    """
    form: schema_own.OwnClothForm = item.form
    base = known.form
    problems: list[Problem] = []
    claims: list[schema.ClaimForm] = []
    loosened: list[list[Any]] = []
    spoilt: list[tuple[str, Any]] = []
    for i, raw in enumerate(form.results):
        result = _result(raw, i, item, problems)
        if result is not None:
            made = _claims_of(result, (item, i), book, problems)
            claims += made
            heard = {c.aspect for c in made if c.strength == "should" and result.reason}
            loosened += [[a, v, result.reason] for a, v in result.good.items() if a in heard]
            told = {c.aspect for c in made}
            spoilt += [(a, v) for a, v in result.bad.items() if a in told and _is_read(a, v, book)]
    # A reason sets a limit of others aside, and never what she has seen spoil the cloth.
    loosened = [row for row in loosened if not _seen_to_spoil(row[0], row[1], spoilt, book)]
    changes: dict[str, Any] = {
        "id": form.id,
        "name": form.name,
        "also": form.also,
        "like": form.like,
        "without": (),
        "traits": {**base.traits, **form.traits},
        "traits_sources": (*base.traits_sources, *((SOURCE,) if form.traits else ())),
        "claims": (*base.claims, *form.claims, *claims),
        "notes": (*base.notes, *form.notes),
    }
    if form.fibres:
        changes["sold_in"] = schema.SoldIn(fibres=(form.fibres,), sources=(SOURCE,))
        if parse_mix(form.fibres) is None:
            problems.append(Problem(f"'{form.fibres}' is no mix of fibres", item.where("fibres")))
            changes.pop("sold_in")
    for key in ("weight", "thickness"):
        value = getattr(form, key)
        if value:
            changes[key] = schema.SpanForm(min=value, max=value, sources=(SOURCE,))
    whole = base.model_copy(update=changes)
    return BookItem(form.id, whole, item.document, lent=_lent(known, form)), loosened, problems


def _is_read(aspect: str, value: Any, book: Book) -> bool:
    """Whether a setting is one that its aspect has; what is not was refused, and says nothing."""
    return not _good(book.aspects[aspect].form, value)[0]


def _seen_to_spoil(aspect: str, good: Any, spoilt: list[tuple[str, Any]], book: Book) -> bool:
    """Whether she has seen as little, or less, of a setting spoil the cloth, before or after."""
    about = book.aspects[aspect].form
    bad = [value for other, value in spoilt if other == aspect]
    if about.kind == "range":
        return any(value <= good for value in bad)
    if about.kind == "options":
        return good in bad
    return any(about.words.index(str(value)) <= about.words.index(str(good)) for value in bad)


def _lent(known: BookItem, form: schema_own.OwnClothForm) -> dict[tuple[Any, ...], Any]:
    """What she leaves as it is with the cloth that hers is like."""
    ways: list[tuple[Any, ...]] = [(name,) for name in FIELDS]
    ways += [("traits", name) for name in known.form.traits if name not in form.traits]
    ways += [("claims", i) for i in range(len(known.form.claims))]
    ways += [] if form.traits else [("traits sources",)]
    return {way: (known, way) for way in ways}


def _result(
    raw: Any, i: int, item: BookItem, problems: list[Problem]
) -> schema_own.OwnResultForm | None:
    from pydantic import ValidationError

    try:
        return schema_own.OwnResultForm.model_validate(raw)
    except ValidationError as error:
        first = error.errors()[0]
        path = ".".join(str(step) for step in first["loc"])
        problems.append(
            Problem(
                f"a result is not understood: {path}: {first['msg'].lower()}",
                item.where("results", i),
            )
        )
        return None


def _claims_of(
    result: schema_own.OwnResultForm, at: tuple[BookItem, int], book: Book, problems: list[Problem]
) -> list[schema.ClaimForm]:
    item, i = at
    when = f" of {result.on}" if result.on else ""
    made = []
    for word, settings in (("good", result.good), ("bad", result.bad)):
        for aspect, value in settings.items():
            where = item.where("results", i, word, aspect)
            if aspect not in book.aspects:
                close = nearest(aspect, book.aspects)
                problems.append(Problem(f"unknown aspect '{aspect}'", where, None, close))
                continue
            about = book.aspects[aspect].form
            fault, fields = _good(about, value) if word == "good" else _bad(aspect, about, value)
            if fault:
                problems.append(Problem(f"{aspect}: {fault}", where))
                continue
            note = f" {result.note}" if result.note else ""
            why = (
                f"Your own test{when}: {value:g}"
                if isinstance(value, float)
                else (f"Your own test{when}: {value}")
            )
            fields |= {"aspect": aspect, "why": f"{why} was {word}.{note}", "sources": (SOURCE,)}
            made.append(schema.ClaimForm.model_validate(fields))
    return made


def _good(about: Any, value: Any) -> tuple[str, dict[str, Any]]:
    """A setting that was good, as a wish."""
    words = about.options if about.kind == "options" else about.words
    if about.kind != "range" and str(value) not in words:
        return f"'{value}' is not one of {', '.join(words)}", {}
    if about.kind == "range" and not (
        isinstance(value, float) and (about.low or 0) <= value <= (about.high or 1e9)
    ):
        return f"{value} is no number from {about.low:g} to {about.high:g}", {}
    if about.kind == "options":
        return "", {"of": (str(value),), "best": str(value), "strength": "should"}
    return "", {"min": value, "max": value, "best": value, "strength": "should"}


def _bad(aspect: str, about: Any, value: Any) -> tuple[str, dict[str, Any]]:
    """A setting that spoilt the cloth, as a limit of it."""
    fault, _ = _good(about, value)
    if fault:
        return fault, {}
    must = {"strength": "must", "risk": "damage"}
    if about.kind == "options":
        return "", {"not": (str(value),), **must}
    if aspect == HEAT:
        return "", {"max": max(float(value) - HEAT_STEP, 20.0), **must}
    if about.kind == "scale" and about.words.index(str(value)) > 0:
        return "", {"max": about.words[about.words.index(str(value)) - 1], **must}
    return "a bad number does not say which side is better; note what was good", {}
