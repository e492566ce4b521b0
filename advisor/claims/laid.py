"""What the rules about a cloth that lies on another say of the iron: it guards there as well."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from advisor.claims.conditions import test_layer
from advisor.claims.speakers import HEAT_ASPECTS, Said, held_back
from advisor.claims.subjects import subject_of
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Cloth


def laid_says(cloth: Cloth, knowledge: Knowledge) -> Iterator[Said]:
    """Only what keeps from harm, whatever the cloth that is laid on is of; no wish of its own."""
    for other in cloth.laid:
        lone = replace(cloth, entry=other, mixes=knowledge.entries[other].mixes, laid=())
        subject = subject_of(lone, None, knowledge)
        for rule in knowledge.index.worth_asking([subject.words]):
            if rule.parts.keys() != {"layer"} or not test_layer(
                rule.parts["layer"], subject, knowledge
            ):
                continue
            heard = (c for c in rule.claims if c.aspect in HEAT_ASPECTS)
            held = (held_back(claim, knowledge.aspects[claim.aspect]) for claim in heard)
            yield from (Said(cloth.name, c, (), False, frozenset((cloth.name,))) for c in held if c)
