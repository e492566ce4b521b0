"""The rules that speak on one cloth when nothing else lies beside it."""

from __future__ import annotations

from advisor.claims.collect import gather
from advisor.claims.speakers import Said
from advisor.errors import InputError
from advisor.knowledge.model import Entry, Knowledge
from advisor.project.quick import quick_garment


def said_by_rules(entry: Entry, knowledge: Knowledge) -> list[Said]:
    """What rules say of an entry sewn to itself, each once, in the order of the aspects."""
    kind = "fabric" if entry.kind == "cloth" else "notion"
    try:
        garment = quick_garment([{kind: entry.name}, {kind: entry.name}], knowledge)
    except InputError:
        return []
    found: dict[tuple[str, str, str], Said] = {}
    for by_aspect in gather(garment, knowledge).said.values():
        for said in (one for group in by_aspect.values() for one in group):
            if said.claim.origin.startswith("rule "):
                found.setdefault((said.claim.aspect, said.claim.origin, said.claim.why), said)
    order = {aspect: i for i, aspect in enumerate(knowledge.aspects)}
    return sorted(found.values(), key=lambda said: (order[said.claim.aspect], said.key))
