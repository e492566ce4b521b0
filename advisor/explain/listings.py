"""Everything of one sort that is known: sources, methods, places, aspects, trade words, rules."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from advisor.knowledge.model import Knowledge, Source
from advisor.records import picked
from advisor.render.layout import heading, row, wrap

Told = tuple[list[str], dict[str, Any]]
"""What is told of something: lines, and the same as data."""


def all_sources(knowledge: Knowledge) -> Told:
    """Every source under its kind."""
    kinds: dict[str, list[Source]] = {}
    for source in knowledge.sources.values():
        kinds.setdefault(source.kind, []).append(source)
    lines = heading("Sources by kind, best standing first", 1)
    data = {}
    for kind, group in sorted(kinds.items(), key=lambda kv: (min(s.rank for s in kv[1]), kv[0])):
        lines += heading(f"{kind} ({len(group)})")
        for source in group:
            lines += row(source.id, source.citation, 2, 28)
        data[kind] = [picked(s, "id citation read") for s in group]
    return lines, {"sources": data}


def all_methods(knowledge: Knowledge) -> Told:
    """Every method under the kind of place that it makes."""
    lines = heading("Ways to make a place, by what is made", 1)
    data: dict[str, Any] = {}
    for kind in knowledge.places.kinds.values():
        methods = [m for m in knowledge.places.methods.values() if kind.id in m.makes]
        lines += heading(kind.name)
        for method in methods:
            lines += row(method.name, method.about, 2, 30)
        data[kind.id] = [picked(m, "id name about") for m in methods]
    return lines, {"methods": data}


def all_places(knowledge: Knowledge) -> Told:
    """Every kind of place that a garment may have."""
    lines = heading("Kinds of place in a garment", 1)
    for kind in knowledge.places.kinds.values():
        lines += row(kind.name, kind.means, 2, 20)
    return lines, {"places": [picked(k, "id name") for k in knowledge.places.kinds.values()]}


def all_aspects(knowledge: Knowledge) -> Told:
    """Every aspect: what is decided, where, and how much is to choose from."""
    lines = heading("What is decided, for a cloth, a seam or the whole garment", 1)
    lines += wrap("advisor why FILE PLACE takes the names and the ids alike.", "  ")
    data = []
    for aspect in knowledge.aspects.values():
        told = [aspect.labels.get(word, word) for word in aspect.words]
        answers = ", ".join(told) or f"{aspect.low:g} to {aspect.high:g} {aspect.unit}"
        lines += row(aspect.title, f"{aspect.id} ({', '.join(aspect.scopes)}): {answers}", 2, 26)
        data.append({"id": aspect.id, "title": aspect.title, "answers": list(aspect.words)})
    return lines, {"aspects": data}


def all_words(knowledge: Knowledge) -> Told:
    """Every trade word with its meaning and who says so."""
    lines = heading("Trade words", 1)
    terms = knowledge.registers.glossary.values()
    for term in terms:
        also = f" Also {', '.join(term.also)}." if term.also else ""
        lines += row(term.name, f"{term.means}{also} [{', '.join(term.sources)}]", 2, 20)
    return lines, {"words": [picked(t, "name means sources") for t in terms]}


def all_rules(knowledge: Knowledge) -> Told:
    """Every rule under what it is about."""
    lines = heading("Rules by what they are about", 1)
    areas: dict[str, list[tuple[str, str]]] = {}
    for rule in knowledge.rules:
        areas.setdefault(rule.area, []).append((rule.id, rule.claim))
    for area, rules in sorted(areas.items()):
        lines += heading(f"{area} ({len(rules)})")
        for id_, claim in rules:
            lines += row(id_, claim, 2, 30)
    return lines, {"rules": {area: [id_ for id_, _ in rules] for area, rules in areas.items()}}


def all_fibres(knowledge: Knowledge) -> Told:
    """Every fibre with its other names."""
    lines = heading("Fibres", 1)
    fibres = knowledge.fibres.values()
    for fibre in fibres:
        also = ", ".join(fibre.facts.get("also", []))
        lines += row(fibre.name, f"{fibre.group}{'; also ' + also if also else ''}", 2, 20)
    return lines, {"fibres": [picked(f, "id name") for f in fibres]}


LISTS: Mapping[str, Callable[[Knowledge], Told]] = {
    "sources": all_sources,
    "methods": all_methods,
    "places": all_places,
    "aspects": all_aspects,
    "words": all_words,
    "rules": all_rules,
    "fibres": all_fibres,
}
"""What can be listed as a whole, by the word for it."""
