"""Everything of one sort that is known: all sources, all methods."""

from __future__ import annotations

from typing import Any

from advisor.knowledge.model import Knowledge, Source
from advisor.render.layout import heading, row


def all_sources(knowledge: Knowledge) -> tuple[list[str], dict[str, Any]]:
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
        data[kind] = [{"id": s.id, "citation": s.citation, "read": s.read} for s in group]
    return lines, {"sources": data}


def all_methods(knowledge: Knowledge) -> tuple[list[str], dict[str, Any]]:
    """Every method under the kind of place that it makes."""
    lines = heading("Ways to make a place, by what is made", 1)
    data: dict[str, Any] = {}
    for kind in knowledge.places.kinds.values():
        methods = [m for m in knowledge.places.methods.values() if kind.id in m.makes]
        lines += heading(kind.name)
        for method in methods:
            lines += row(method.name, method.about, 2, 30)
        data[kind.id] = [{"id": m.id, "name": m.name, "about": m.about} for m in methods]
    return lines, {"methods": data}
