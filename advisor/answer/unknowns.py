"""The cheapest test of a cloth of unknown fibre, as a sentence and as data."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from advisor.answer import wording
from advisor.decide.unknowns import Unknown
from advisor.knowledge.model import Knowledge
from advisor.units import System

if TYPE_CHECKING:
    from advisor.identify.cheapest import CheapestTest

_ACTS = {
    "flame": "a snip burnt as `advisor identify` tells, {title}",
    "solvent": "a drop of acetone on a snip as `advisor identify` tells",
}
_MOST_ANSWERS = 2
HARDLY_HOTTER = 5.0
"""°C: no iron is set finer than that, so nobody burns a snip for less."""


def cheapest(unknown: Unknown, effect: str, knowledge: Knowledge, units: System) -> dict[str, Any]:
    """The keys that the test adds to what is told of an unknown cloth; none where it frees nothing.

    Args:
        unknown: the cloth with its candidates.
        effect: what is said so far of what knowing would free.
        knowledge: where the tests are.
        units: the maker's.
    """
    from advisor.identify.cheapest import cheapest_test

    found = cheapest_test(unknown, knowledge.observations)
    if found is None or all(f.limit - unknown.limit <= HARDLY_HOTTER for f in found.freed):
        return {}
    text = _sentence(found, knowledge, units)
    rows = [
        {"answers": list(f.answers), "may_be": [dict(mix) for mix in f.mixes], "limit_c": f.limit}
        for f in found.freed
    ]
    return {"effect": f"{effect}. {text}", "test": {"id": found.test, "text": text, "frees": rows}}


def _sentence(found: CheapestTest, knowledge: Knowledge, units: System) -> str:
    about = knowledge.observations[found.test]
    act = _ACTS.get(about.kind, "{title}").format(title=about.title)
    answers = [
        f"'{freed.answers[0]}' leaves {_names(freed.mixes, knowledge)}, "
        f"{wording.degrees(freed.limit, units)}"
        for freed in found.freed[:_MOST_ANSWERS]
    ]
    return f"Ask first; else {act}: {'; '.join(answers)}"


def _names(mixes: tuple[Any, ...], knowledge: Knowledge) -> str:
    return " or ".join(wording.mix_text(mix, knowledge) for mix in mixes)
