"""Turns a checked book into plain data: lists, numbers and words that JSON can hold.

What is decided here once is not decided again on every run: sets become spans and bit masks,
conditions become small trees, and each fibre gets its iron limit.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from advisor.knowledge import schema, spoken
from advisor.knowledge.book import Book, BookItem
from advisor.knowledge.form import Form
from advisor.knowledge.gaps import compile_gaps
from advisor.knowledge.glossary import compile_glossary
from advisor.knowledge.labels import compile_labels
from advisor.knowledge.likeness import FIELDS
from advisor.knowledge.model import FORMAT
from advisor.knowledge.names import plain_name, source_id
from advisor.knowledge.observations import compile_observation
from advisor.knowledge.ordering import compile_order
from advisor.knowledge.places import compile_places
from advisor.knowledge.purposes import ends_of
from advisor.knowledge.standing import GOOD_KINDS, RANKS
from advisor.knowledge.telling import compile_told
from advisor.knowledge.vocabulary import parse_mix, read_role, reader_of
from advisor.knowledge.when import ROLES, Reader
from advisor.knowledge.workshop import compile_workshop

HIGHEST_LABEL = 200.0
"""Three marks on a care label up to ISO 3758:2012, °C; no limit goes above it."""


def to_plain(book: Book) -> dict[str, Any]:
    """Compile a book without problems.

    Returns:
        what `model.from_plain` reads.
    """
    compiler = _Compiler(book)
    plain = {
        "format": FORMAT,
        "sources": {id_: compiler.source(item) for id_, item in book.sources.items()},
        "aspects": {id_: _aspect(item.form) for id_, item in book.aspects.items()},
        "traits": {id_: [i.form.words, i.form.means] for id_, i in book.traits.items()},
        "fibres": {id_: compiler.fibre(item) for id_, item in book.fibres.items()},
        "entries": {id_: compiler.entry(item) for id_, item in sorted(book.entries().items())},
        "rules": [compiler.rule(item) for _, item in sorted(book.rules.items())],
        "remedies": [_remedy(item) for _, item in sorted(book.remedies.items())],
        "machines": {id_: compiler.machine(item) for id_, item in book.machines.items()},
        "order": compile_order(book.order),
        "places": compile_places(book.places, book.methods),
        "workshop": compile_workshop(book.seams, book.kit),
        "glossary": compile_glossary(book.glossary),
        "gaps": compile_gaps(book.gaps),
        "observations": {
            id_: compile_observation(item.form, book.fibres, compiler.published)
            for id_, item in book.observations.items()
        },
        "labels": compile_labels(book.labels, book.cleaning, compiler.claim),
        "names": _names(book.entries().values()),
        "fibre_names": _names(book.fibres.values()),
    }
    return {**plain, spoken.WAYS: spoken.ways(plain)}


def _names(items: Iterable[BookItem]) -> dict[str, str]:
    names: dict[str, str] = {}
    for item in items:
        for name in (item.id, item.form.name, *item.form.also):
            names[plain_name(name)] = item.id
    return names


def _aspect(form: schema.AspectForm) -> dict[str, Any]:
    words = form.words or form.options
    scale = form.kind == "scale"
    return {
        "title": form.title,
        "kind": form.kind,
        "scopes": form.scope,
        "unit": form.unit or "",
        "low": 0.0 if scale else form.low or 0.0,
        "high": float(len(words) - 1) if scale else form.high or 0.0,
        "steps": form.steps,
        "prefer": form.prefer,
        "usual": form.usual,
        "words": words,
        "labels": form.labels,
        "excluded": form.lists == "excluded",
        "usually": [form.options.index(word) for word in form.usually],
        "usually_sources": form.usually_sources,
        "usually_why": form.usually_why or "",
        "ties": form.ties,
        "ends": [form.for_.get("at least", ""), form.for_.get("at most", "")],
        "asked_of": form.asked_of,
        "milder_safe": form.milder == "safe",
        "several": form.chosen == "several",
    }


def _remedy(item: BookItem) -> dict[str, Any]:
    form = item.form
    return {
        "id": item.id,
        "text": form.text,
        "then": form.then,
        "cures": form.cures,
        "needs": form.needs,
        "change": form.change,
        "effort": form.price.effort,
        "look": form.price.look,
        "earlier": form.earlier,
        "sources": form.sources,
    }


class _Compiler:
    def __init__(self, book: Book) -> None:
        self.book = book
        self.reader: Reader = reader_of(book)

    def source(self, item: BookItem) -> list[Any]:
        form = item.form
        citation = ", ".join(part for part in (form.title, form.by, form.year) if part)
        good = form.kind in GOOD_KINDS and form.read != "memory"
        rank = RANKS[form.kind] if form.read != "memory" else RANKS["memory"]
        place = [form.where or "", form.nowhere or ""]
        return [citation, form.kind, form.read, form.note or "", rank, good, *place]

    def rank(self, sources: Iterable[str]) -> int:
        """The standing of the best of some sources; 0 is a standard."""
        ranks = [self.source(self.book.sources[source_id(text)])[4] for text in sources]
        return min(ranks, default=RANKS["memory"])

    def good(self, sources: Iterable[str]) -> bool:
        """Whether one of the sources is of good standing."""
        return any(self.source(self.book.sources[source_id(text)])[5] for text in sources)

    def published(self, sources: Iterable[str]) -> bool:
        """Whether one of the sources is more than memory or an estimate."""
        return self.rank(sources) < RANKS["memory"]

    def claim(self, form: schema.ClaimForm, why: str, sources: tuple[str, ...]) -> list[Any]:
        """One row: aspect, span, mask, best, strength, risk, why, sources, rank, on, ends."""
        aspect = self.book.aspects[form.aspect].form
        said = form.sources or sources
        span, mask, best = _set_of(form, aspect)
        risk = form.risk or ("damage" if form.strength == "must" else "")
        return [
            form.aspect,
            span,
            mask,
            best,
            form.strength,
            risk,
            form.why or why,
            list(said),
            self.rank(said),
            form.on or "",
            ends_of(form, aspect, _bounds(span, aspect)),
        ]

    def levels(self, traits: dict[str, str]) -> dict[str, list[int]]:
        """Trait levels as pairs; an unknown one may be anything."""
        pairs: dict[str, list[int]] = {}
        for name, level in traits.items():
            words = self.book.traits[name].form.words
            if level == "unknown":
                pairs[name] = [0, len(words) - 1]
            else:
                pairs[name] = [words.index(level), words.index(level)]
        return pairs

    def fibre(self, item: BookItem) -> dict[str, Any]:
        form = item.form
        ceilings = [[c.max, c.sources, c.note, self.good(c.sources)] for c in form.iron]
        every = [min(c[0], HIGHEST_LABEL) for c in ceilings]
        best = [min(c[0], HIGHEST_LABEL) for c in ceilings if c[3]]
        limit = min(best or every)
        return {
            "name": form.name,
            "group": form.group,
            "ceilings": ceilings,
            "limit": limit,
            "start": min([limit, *every]),
            "traits": {name: pair[1] for name, pair in self.levels(form.traits).items()},
            "claims": [self.claim(c, "", ()) for c in form.claims],
            "facts": _facts(form, ("iron", "claims", "traits", "name", "group")),
        }

    def entry(self, item: BookItem) -> dict[str, Any]:
        form = item.form
        return {
            "name": form.name,
            "also": form.also,
            "kind": getattr(form, "kind", "cloth"),
            "family": getattr(form, "family", ""),
            "structure": form.structure,
            "weave": form.weave or "",
            "mixes": [parse_mix(text) for text in form.sold_in.fibres],
            "sold_sources": form.sold_in.sources,
            "weight": [form.weight.min, form.weight.max] if form.weight else None,
            "thickness": [form.thickness.min, form.thickness.max] if form.thickness else None,
            "traits": self.levels(form.traits),
            "claims": [self.claim(c, "", ()) for c in form.claims],
            "facts": _facts(
                form,
                (
                    "weight",
                    "thickness",
                    "traits sources",
                    "limits",
                    "notes",
                    "fuses at",
                    "sold in",
                    "sold by",
                    "ends",
                    "wide",
                    "less",
                    "apart",
                ),
                keep=True,
            )
            | self.loosened(item.id)
            | _lent(item),
        }

    def loosened(self, id_: str) -> dict[str, Any]:
        """What a maker lets her own cloth bear beyond a limit, with her reason."""
        rows = []
        for aspect, value, reason in self.book.loosened.get(id_, ()):
            form = self.book.aspects[aspect].form
            words = form.words or form.options
            at = float(value) if form.kind == "range" else float(words.index(str(value)))
            rows.append([aspect, at, reason])
        return {"loosened": rows} if rows else {}

    def rule(self, item: BookItem) -> dict[str, Any]:
        form = item.form
        roles = [role for role in ROLES if role in form.when]
        parts = {role: read_role(self.reader, role, form.when[role], _never) for role in roles}
        main = [role for role in roles if role not in ("seam", "maker")]
        claims = [self.claim(c, form.claim, form.sources) for c in form.then]
        aspects = {id_: aspect.form for id_, aspect in self.book.aspects.items()}
        return {
            "id": item.id,
            "area": item.area,
            "claim": form.claim,
            "why": form.why,
            "shape": main[0] if main else "seam",
            "parts": parts,
            "claims": claims,
            "do": [_text(line) for line in form.do],
            "cautions": [
                {"kind": c.kind, "text": c.text, "sources": c.sources or form.sources}
                for c in form.cautions
            ],
            "tests": [_text(line) for line in form.tests],
            "told": compile_told(aspects, item.area, form, claims),
            "limits": form.limits or "",
            "sources": form.sources,
            "general": form.general or "",
        }

    def machine(self, item: BookItem) -> dict[str, Any]:
        form = item.form
        return {
            "name": form.name,
            "claims": [self.claim(c, "", ()) for c in form.claims],
            "stitches": form.stitches,
            "foot_lift": form.foot_lift.value if form.foot_lift else None,
        }


def _text(line: str | schema.LineForm) -> str:
    return line if isinstance(line, str) else line.text


def _lent(item: BookItem) -> dict[str, Any]:
    """Whom an entry is like, and by whom each thing is said that it does not say itself.

    Claims are named by their number, traits and the rest by their name.
    """
    if not item.lent:
        return {}
    ways = [("claims", i) for i in range(len(item.form.claims))]
    ways += [("traits", name) for name in item.form.traits]
    others = [(name,) for name in (*FIELDS, "traits sources")]
    said = {str(way[-1]): item.said_by(*way) for way in (*ways, *others)}
    return {
        "like": item.form.like,
        "lent": {name: who for name, who in said.items() if who != item.id},
    }


def _never(path: tuple[Any, ...], text: str, _known: Iterable[str]) -> None:
    raise AssertionError(f"compiled a condition that was not checked: {path} {text}")


def _facts(form: Form, names: tuple[str, ...], *, keep: bool = False) -> dict[str, Any]:
    """The facts that are only shown, as they stand in the file."""
    dumped = form.model_dump(mode="json", by_alias=True, exclude_defaults=True)
    return {key: value for key, value in dumped.items() if (key in names) == keep}


def _set_of(
    form: schema.ClaimForm, aspect: schema.AspectForm
) -> tuple[list[float] | None, int, float | None]:
    if aspect.kind == "options":
        option = None if form.best is None else float(aspect.options.index(str(form.best)))
        return None, _mask(form, aspect), option
    words = aspect.words
    scale = aspect.kind == "scale"

    def number(value: Any, default: float) -> float:
        if value is None:
            return default
        return float(words.index(str(value))) if scale else float(value)

    low = 0.0 if scale else aspect.low or 0.0
    high = float(len(words) - 1) if scale else aspect.high or 0.0
    best = None if form.best is None else number(form.best, 0.0)
    return [number(form.min, low), number(form.max, high)], 0, best


def _bounds(span: list[float] | None, aspect: schema.AspectForm) -> tuple[bool, bool]:
    """Whether the lower and the upper end of a span bound anything."""
    if span is None:
        return (False, False)
    full = [0.0, len(aspect.words) - 1.0] if aspect.kind == "scale" else [aspect.low, aspect.high]
    return (span[0] > (full[0] or 0.0), span[1] < (full[1] or 0.0))


def _mask(form: schema.ClaimForm, aspect: schema.AspectForm) -> int:
    full = (1 << len(aspect.options)) - 1
    mask = full
    if form.of is not None:
        mask &= _bits(form.of, aspect.options)
    if form.not_ is not None:
        mask &= ~_bits(form.not_, aspect.options)
    if form.max is not None:
        mask &= _bits(_milder(str(form.max), aspect), aspect.options)
    return full & ~mask if aspect.lists == "excluded" else mask


def _bits(words: Iterable[str], options: tuple[str, ...]) -> int:
    return sum(1 << options.index(word) for word in set(words))


def _milder(word: str, aspect: schema.AspectForm) -> set[str]:
    """An option and everything that is milder, by the order that the aspect declares."""
    reached = {word}
    queue = [word]
    while queue:
        for milder in aspect.allows.get(queue.pop(), ()):
            if milder not in reached:
                reached.add(milder)
                queue.append(milder)
    return reached
