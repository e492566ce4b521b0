"""Nothing is written again and again: a base lends it, or a rule says it of a trait."""

from __future__ import annotations

from collections import Counter, defaultdict

from advisor.knowledge.book import BookItem
from tests.corpus import audit

MOST_FILES = 6
"""In so many files a claim may stand word for word; a seventh would be edited past one day."""


def statements() -> dict[str, list[BookItem]]:
    """Every claim of a cloth or notion (what it says, how strongly and why) with its writers."""
    found: dict[str, list[BookItem]] = defaultdict(list)
    for item in audit.book().entries().values():
        for i, claim in enumerate(item.form.claims):
            if item.said_by("claims", i) == item.id:
                said = claim.model_dump_json(exclude={"sources"}, exclude_defaults=True)
                found[said].append(item)
    return found


def where_it_belongs(writers: list[BookItem]) -> str:
    """To whom a claim could be left: the base of most writers, or a rule on a shared trait."""
    bases = Counter(item.form.like or item.id for item in writers)
    shared = set.intersection(*(set(item.form.traits.items()) for item in writers))
    traits = ", ".join(f"{name}: {level}" for name, level in sorted(shared))
    base = f"in the base {bases.most_common(1)[0][0]}"
    return f"{base}, or in a rule on `{traits}`" if traits else base


def test_no_claim_stands_in_a_seventh_file() -> None:
    """A claim that more than six files write word for word is told, and where it would belong."""
    lines = [
        f"{said} stands in {', '.join(item.id for item in writers)}; "
        f"say it once {where_it_belongs(writers)}"
        for said, writers in statements().items()
        if len(writers) > MOST_FILES
    ]
    assert "" == audit.report(lines)


def test_nothing_is_said_that_the_base_lends() -> None:
    """A cloth that is like another writes only what differs from it."""
    entries = audit.book().entries()
    lines = []
    for item in entries.values():
        base = entries.get(item.form.like or "")
        if base is None:
            continue
        own = _groups(item, {i for i, _ in enumerate(item.form.claims) if _own(item, i)})
        lent = _groups(base, set(range(len(base.form.claims))))
        lines += [
            f"{item.id}: {aspect} as a {strength} is the same in {base.id}"
            for (aspect, strength), said in own.items()
            if lent.get((aspect, strength)) == said
        ]
        lines += [
            f"{item.id}: the trait '{name}' is the same in {base.id}"
            for name, level in item.form.traits.items()
            if item.said_by("traits", name) == item.id and base.form.traits.get(name) == level
        ]
    assert "" == audit.report(lines)


def _own(item: BookItem, number: int) -> bool:
    return item.said_by("claims", number) == item.id


def _groups(item: BookItem, numbers: set[int]) -> dict[tuple[str, str], list[str]]:
    found: dict[tuple[str, str], list[str]] = defaultdict(list)
    for i in sorted(numbers):
        claim = item.form.claims[i]
        found[claim.aspect, claim.strength].append(claim.model_dump_json())
    return found
