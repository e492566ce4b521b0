"""What the corpus tests look at: every value with its sources, and faults as printed lines.

Each check gives a list of sentences, empty where the knowledge is sound, so that a failing test
names what to mend.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher
from functools import cache
from pathlib import Path
from typing import Any

from advisor.craft.thickness import least_thickness
from advisor.decide.evaluate import judge
from advisor.knowledge.book import Book, BookItem
from advisor.knowledge.load import read_book
from advisor.knowledge.model import LIMIT_ASPECT, Entry, Knowledge, Mix
from advisor.knowledge.names import plain_name, source_id
from advisor.knowledge.place import knowledge_folder
from advisor.project.garment import Garment, Seam, Use
from advisor.project.phrase import make_cloth
from tests.typed import shipped

SHELVES = (
    "fibres",
    "fabrics",
    "notions",
    "rules",
    "remedies",
    "machines",
    "observations",
    "seams",
    "kit",
    "labels",
    "cleaning",
)


@dataclass(frozen=True)
class Value:
    """A value, or a group of values, that names its own sources."""

    shelf: str
    entry: str
    path: tuple[Any, ...]
    sources: tuple[str, ...]


@cache
def book() -> Book:
    return read_book(knowledge_folder())


@cache
def knowledge() -> Knowledge:
    return shipped()


def values() -> list[Value]:
    """Every place of the knowledge that names sources."""
    found = []
    for shelf in SHELVES:
        for id_, item in getattr(book(), shelf).items():
            raw = item.form.model_dump(mode="json", by_alias=True, exclude_defaults=True)
            found += [Value(shelf, id_, path, said) for path, said in _sourced(raw, ())]
    return found


def _sourced(raw: Any, path: tuple[Any, ...]) -> Iterator[tuple[tuple[Any, ...], tuple[str, ...]]]:
    if isinstance(raw, dict):
        for key, inner in raw.items():
            if key in ("sources", "traits sources"):
                yield (*path, key), tuple(inner)
            else:
                yield from _sourced(inner, (*path, key))
    elif isinstance(raw, list):
        for i, inner in enumerate(raw):
            yield from _sourced(inner, (*path, i))


# A number or a choice under one of these keys is a value; it or what holds it names a source.
_VALUE_KEYS = frozenset(
    {"value", "min", "max", "at", "from", "to", "of", "not", "best", "text", "fibres", "traits"}
)


def values_without_source() -> list[str]:
    """Values for which neither they nor the rule, remedy or machine around them name a source."""
    lines = []
    for shelf in SHELVES:
        for id_, item in getattr(book(), shelf).items():
            raw = item.form.model_dump(mode="json", by_alias=True, exclude_defaults=True)
            raw.pop("examples", None)
            lines += [f"{shelf} {id_}: {'.'.join(map(str, p))}" for p in _bare(raw, (), False)]
    return lines


def _bare(raw: Any, path: tuple[Any, ...], covered: bool) -> Iterator[tuple[Any, ...]]:
    if isinstance(raw, list):
        for i, inner in enumerate(raw):
            yield from _bare(inner, (*path, i), covered)
        return
    if not isinstance(raw, dict):
        return
    here = covered or bool(raw.get("sources"))
    for key, inner in raw.items():
        if key == "traits":
            if not raw.get("traits sources"):
                yield (*path, key)
        elif key in _VALUE_KEYS and not here:
            yield (*path, key)
        elif key not in ("sources", "traits sources", "when", "price", "needs", "change"):
            yield from _bare(inner, (*path, key), here)


def is_weak(source: str) -> bool:
    """Whether a source is no more than memory or our own estimate; a fact of the trade is more."""
    form = book().sources[source_id(source)].form
    if form.kind == "common-practice":
        return False
    return form.kind in ("memory", "estimate") or form.read == "memory"


def weak_values() -> list[Value]:
    """Values that rest on memory or estimate alone."""
    return [v for v in values() if all(is_weak(s) for s in v.sources)]


def unused_sources(checkout: Path) -> list[str]:
    """Sources that no value, no formula and no published check names."""
    used = {source_id(s) for v in values() for s in v.sources}
    words: set[str] = set()
    register = knowledge_folder() / "sources.yaml"
    files = [
        *checkout.glob("advisor/**/*.py"),
        *checkout.glob("tests/**/*.py"),
        *checkout.glob("tests/**/*.yaml"),
        *knowledge_folder().glob("*.yaml"),
        *knowledge_folder().glob("methods/*.yaml"),
    ]
    for path in files:
        if path != register and path.parent.name != "corpus":
            words |= set(re.findall(r"[a-z0-9]+(?:-[a-z0-9]+)*", path.read_text("utf-8").lower()))
    return sorted(set(book().sources) - used - words)


def rules_alike() -> list[str]:
    """Pairs of rules that say one thing: the same condition and claims, or the same sentence."""
    rules = knowledge().rules
    lines = []
    seen: dict[Any, str] = {}
    for rule in rules:
        for claim in rule.claims:
            key = (rule.shape, str(rule.parts), claim.aspect, claim.span, claim.mask, claim.on)
            other = seen.setdefault(key, rule.id)
            if other != rule.id:
                lines.append(f"{other} and {rule.id} both claim {claim.aspect} of the same layers")
    for i, one in enumerate(rules):
        for two in rules[i + 1 :]:
            same = _alike(one.claim, two.claim) or set(one.do) & set(two.do)
            lines += [f"{one.id} and {two.id} say the same"] if same else []
    return lines


def _alike(one: str, other: str) -> bool:
    # The quick bound first: comparing every pair letter by letter would take seconds.
    match = SequenceMatcher(None, one, other, autojunk=False)
    return match.real_quick_ratio() > 0.9 and match.quick_ratio() > 0.9 and match.ratio() > 0.9


def alone(entry: Entry, mixes: tuple[Mix, ...]) -> Garment:
    """A garment of one cloth sewn to itself."""
    cloth = make_cloth(entry.id, entry, mixes, None)
    return Garment(entry.id, {entry.id: cloth}, (Seam("seam", (Use(entry.id), Use(entry.id))),))


def readings(entry: Entry) -> list[tuple[Mix, ...]]:
    """A cloth as sold, and in each of its fibres."""
    return list(dict.fromkeys([entry.mixes, *((mix,) for mix in entry.mixes)]))


def self_conflicts() -> list[str]:
    """Cloths that clash with themselves and do not say why in their limits."""
    lines = []
    for entry in knowledge().fabrics():
        for mixes in readings(entry):
            for conflict in judge(alone(entry, mixes), knowledge()).conflicts:
                if "conflict" in str(entry.facts.get("limits", "")):
                    continue
                claims = " against ".join(s.claim.origin for s in conflict.clash)
                lines.append(f"{entry.id} {mixes}: {conflict.aspect}, {claims}")
    return lines


def strictest(mixes: tuple[Mix, ...]) -> float:
    """The lowest published ceiling of good standing of all fibres that may be there, °C."""
    limits = []
    for fibre in {f for mix in mixes for f, _ in mix}:
        ceilings = knowledge().fibres[fibre].ceilings
        limits.append(min([c.max for c in ceilings if c.good] or [c.max for c in ceilings]))
    return min(limits)


def iron_limits_too_high() -> list[str]:
    """Cloths that may be ironed hotter than one of their fibres is published to bear."""
    lines = []
    for entry in knowledge().fabrics():
        for mixes in readings(entry):
            for place, by_aspect in judge(alone(entry, mixes), knowledge()).verdicts.items():
                verdict = by_aspect.get(LIMIT_ASPECT)
                high = getattr(verdict.allowed, "high", 0.0) if verdict else 0.0
                if place.scope == "seam" and high > strictest(mixes):
                    lines.append(f"{entry.id} {mixes}: {high} over {strictest(mixes)}")
    return lines


def names_of_two() -> list[str]:
    """Names that stand for two things; a cloth may be called by the one fibre that it is of."""
    lines = []
    for items in (book().entries(), book().fibres):
        owners = _owners(items)
        lines += [f"'{n}': {', '.join(sorted(ids))}" for n, ids in owners.items() if len(ids) > 1]
    cloths, fibres = _owners(book().entries()), _owners(book().fibres)
    for name in sorted(set(cloths) & set(fibres)):
        fibre, cloth = next(iter(fibres[name])), next(iter(cloths[name]))
        mixes = knowledge().entries[cloth].mixes
        if fibre not in {f for f, _ in mixes[0]}:
            lines.append(f"'{name}': the cloth {cloth} and the fibre {fibre}, but it is {mixes[0]}")
    return lines


def _owners(items: dict[str, BookItem]) -> dict[str, set[str]]:
    owners: dict[str, set[str]] = defaultdict(set)
    for id_, item in items.items():
        for name in (id_, item.form.name, *item.form.also):
            owners[plain_name(name)].add(id_)
    return owners


def traits_without_rule() -> list[str]:
    """Traits that no condition asks for."""
    asked: set[str] = set()
    pending: list[Any] = [rule.parts for rule in knowledge().rules]
    while pending:
        part = pending.pop()
        if isinstance(part, dict):
            pending += part.values()
        elif isinstance(part, list):
            if part and part[0] == "trait":
                asked.add(part[1])
            pending += part
    return sorted(set(knowledge().traits) - asked)


def kind_of_packing(entry: Entry) -> str:
    """Which row of the table of plausible packings a cloth belongs to."""
    if entry.structure in ("skin", "film", "net", "nonwoven", "composite"):
        return entry.structure
    pile = entry.traits.get("pile", (0, 0))[1]
    if pile:
        return "deep pile" if pile > 1 else "pile"
    bulky = entry.traits.get("bulky", (0, 0))[1] > 1
    if bulky or entry.family in ("layered", "embellished", "pleated"):
        return "lofty"
    return entry.structure


def packings(entry: Entry) -> tuple[float, ...]:
    """The share of fibre at the thin, the middle and the thick end; a figure above 1 is kept."""
    density = _density(entry)
    if not (entry.weight and entry.thickness and density):
        return ()
    pairs = zip(entry.weight, entry.thickness, strict=True)
    ends = [(w, t) for w, t in pairs]
    ends.append((sum(entry.weight) / 2, sum(entry.thickness) / 2))
    return tuple(_packing(weight, density, thickness) for weight, thickness in ends)


def _packing(weight: float, density: float, thickness: float) -> float:
    share = least_thickness(weight, density) / thickness
    return share if share <= 1 else 9.9


def _density(entry: Entry) -> float | None:
    """The mean density of the fibres that a cloth is sold in, g/cm³."""
    found = [d for mix in entry.mixes if (d := _density_of(mix)) is not None]
    return sum(found) / len(found) if found else None


def _density_of(mix: Mix) -> float | None:
    volume = 0.0
    for fibre, share in mix:
        number: dict[str, Any] = knowledge().fibres[fibre].facts.get("density") or {}
        ends = [number[key] for key in ("value", "min", "max") if key in number]
        if not ends:
            return None
        volume += (share or 100 / len(mix)) / 100 / (sum(ends) / len(ends))
    return 1 / volume


def report(lines: Iterable[str]) -> str:
    """Faults as a failing test prints them."""
    return "\n".join(lines)
