"""Lays a cloth that says `like:` over the one it names: what it does not say itself is lent to it.

Names, fibres, measures, limits and notes are always a cloth's own. Structure, family, kind, weave,
levels of traits, and the ends, width and spacing of a notion are lent one by one. Claims are lent
by aspect and strength: what a file says of an aspect as a should takes the place of the base's
shoulds on it, and leaves its musts alone, so that no guard is lost in silence; what shall be lost
is named under `without`.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from advisor.errors import Problem, nearest
from advisor.knowledge.book import Book, BookItem

FIELDS = ("structure", "family", "kind", "weave", "ends", "wide", "less", "apart")
"""What is lent as a whole where a file does not say it."""


def lay_over_bases(book: Book, below: Book | None = None) -> None:
    """Replace every cloth and notion that says `like` by the whole of it; problems are gathered.

    Args:
        book: what was read; its entries may be like each other.
        below: whole entries that they may be like as well.
    """
    known = below or book
    order = {aspect: i for i, aspect in enumerate(known.aspects)}
    for shelf, others in ((book.fabrics, known.fabrics), (book.notions, known.notions)):
        _Shelf(shelf, others, order, book.problems).lay()


class _Shelf:
    """The entries of one kind while they are laid over each other, bases first."""

    def __init__(
        self,
        items: dict[str, BookItem],
        others: dict[str, BookItem],
        order: dict[str, int],
        problems: list[Problem],
    ) -> None:
        self.items = items
        self.others = others
        self.order = order
        self.problems = problems
        self.whole: dict[str, BookItem] = {}

    def lay(self) -> None:
        for id_ in self.items:
            self._resolved(id_, ())
        self.items.update(self.whole)

    def _resolved(self, id_: str, chain: tuple[str, ...]) -> BookItem | None:
        """The whole of an entry; None where its bases lead nowhere, which is said once."""
        if id_ in self.whole:
            return self.whole[id_]
        if id_ not in self.items:
            return self.others[id_]
        item = self.items[id_]
        like = item.form.like
        if like is None:
            self.whole[id_] = item
            return item
        if like in (*chain, id_):
            ring = " like ".join((*chain, id_, like))
            self._say(item, ("like",), f"the bases go round in a ring: {ring}", ())
            return None
        known = {**self.others, **self.items}
        if like not in known:
            self._say(item, ("like",), f"unknown base '{like}'", tuple(known), like)
            return None
        base = self._resolved(like, (*chain, id_))
        if base is not None:
            self.whole[id_] = self._laid(item, base)
        return base and self.whole[id_]

    def _say(
        self,
        item: BookItem,
        path: tuple[Any, ...],
        text: str,
        known: tuple[str, ...],
        word: str = "",
    ) -> None:
        close = nearest(word, known) if word else ()
        self.problems.append(Problem(text, item.where(*path), None, close))

    def _laid(self, item: BookItem, base: BookItem) -> BookItem:
        self._check_without(item, base)
        gone = frozenset(item.form.without)
        own = item.form
        changes: dict[str, Any] = {
            name: getattr(base.form, name)
            for name in FIELDS
            if hasattr(own, name) and getattr(own, name) is None and name not in gone
        }
        lent: dict[tuple[Any, ...], tuple[BookItem, tuple[Any, ...]]] = {
            (name,): (base, (name,)) for name in changes
        }
        levels = {n: v for n, v in base.form.traits.items() if n not in gone}
        lent |= {("traits", n): (base, ("traits", n)) for n in levels if n not in own.traits}
        changes["traits"] = {**levels, **own.traits}
        if changes["traits"] and not own.traits_sources:
            changes["traits_sources"] = base.form.traits_sources
            lent[("traits sources",)] = (base, ("traits sources",))
        claims = sorted(_claims(item, base, gone), key=lambda said: self._place(*said))
        lent |= {("claims", i): (who, ("claims", j)) for i, (who, j) in enumerate(claims)}
        changes["claims"] = tuple(who.form.claims[j] for who, j in claims)
        form = own.model_copy(update=changes)
        return BookItem(item.id, form, item.document, item.path, item.area, lent)

    def _place(self, who: BookItem, number: int) -> int:
        return self.order.get(who.form.claims[number].aspect, len(self.order))

    def _check_without(self, item: BookItem, base: BookItem) -> None:
        """Whatever is left out has to be there to be left out."""
        claims = base.form.claims
        known = {
            **dict.fromkeys(name for name in FIELDS if getattr(base.form, name, None)),
            **dict.fromkeys(base.form.traits),
            **dict.fromkeys(claim.aspect for claim in claims),
            **dict.fromkeys(f"{claim.aspect} {claim.strength}" for claim in claims),
        }
        for i, word in enumerate(item.form.without):
            if word not in known:
                text = f"there is no '{word}' in {base.id} to do without"
                self._say(item, ("without", i), text, tuple(known), word)


def _claims(item: BookItem, base: BookItem, gone: frozenset[str]) -> Iterator[tuple[BookItem, int]]:
    """Who says each claim of the whole, and as which of the claims there."""
    own: dict[tuple[str, str], list[int]] = {}
    for j, claim in enumerate(item.form.claims):
        own.setdefault((claim.aspect, claim.strength), []).append(j)
    for j, claim in enumerate(base.form.claims):
        key = (claim.aspect, claim.strength)
        if claim.aspect in gone or " ".join(key) in gone:
            continue
        if key in {(c.aspect, c.strength) for c in item.form.claims}:
            yield from ((item, k) for k in own.pop(key, ()))
        else:
            yield base, j
    yield from ((item, k) for group in own.values() for k in group)
