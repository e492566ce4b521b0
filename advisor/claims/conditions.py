"""Asks a compiled condition of a layer, a seam or a maker, and says what made it true.

The trees are those that `knowledge.when` makes. `test` answers quickly; `facts` is called only
for a rule that has fired, and gives the leaves that hold.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from advisor.claims.subjects import Subject, Truth, has_fibre, has_group, in_number, of_several
from advisor.knowledge import nouns
from advisor.knowledge.factwords import SEAM_USUAL
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Maker, Seam
from advisor.project.headwords import speaks_of
from advisor.project.phrases.shading import BOTH
from advisor.project.placing import singular_words


class Fact(Struct, frozen=True):
    """Something true of the input: whose, which fact, and what it is."""

    who: str
    fact: str
    value: str
    certain: bool = True


NOTHING = (0, 0)
"""The lowest level of a trait, which is what nobody mentions."""
# The names of this inner loop are looked up once, not a hundred thousand times.
NO, MAYBE, YES = Truth.NO, Truth.MAYBE, Truth.YES
OPPOSITE = (YES, MAYBE, NO)


def test_layer(  # noqa: C901, PLR0911, PLR0912 - one return a kind of node
    tree: list[Any], subject: Subject, knowledge: Knowledge
) -> Truth:
    """Whether a condition holds of a layer."""
    kind = tree[0]
    if kind == "trait":
        low, high = subject.levels.get(tree[1], NOTHING)
        if tree[2] <= low and high <= tree[3]:
            return YES
        return NO if high < tree[2] or low > tree[3] else MAYBE
    if kind == "word":
        word = subject.words.get(tree[1], "")
        if word in tree[2]:
            return YES
        return of_several(word.split(BOTH), tree[2]) if BOTH in word else NO
    if kind == "all":
        found = YES
        for i in range(1, len(tree)):
            answer = test_layer(tree[i], subject, knowledge)
            if answer is NO:
                return NO
            if answer is MAYBE:
                found = MAYBE
        return found
    if kind == "any":
        found = NO
        for i in range(1, len(tree)):
            answer = test_layer(tree[i], subject, knowledge)
            if answer is YES:
                return YES
            if answer is MAYBE:
                found = MAYBE
        return found
    if kind == "not":
        return OPPOSITE[test_layer(tree[1], subject, knowledge)]
    if kind == "fibre":
        return has_fibre(subject, tree[1], tree[2])
    if kind == "group":
        return has_group(subject, tree[1], knowledge.fibres)
    return in_number(subject.numbers.get(tree[1]), tree[2:])


def layer_facts(tree: list[Any], subject: Subject, knowledge: Knowledge) -> list[Fact]:
    """The leaves of a condition that hold of a layer, `not` left out."""
    kind = tree[0]
    if kind in ("all", "any"):
        return [f for part in tree[1:] for f in layer_facts(part, subject, knowledge)]
    if kind == "not":
        return []
    truth = test_layer(tree, subject, knowledge)
    if truth is Truth.NO:
        return []
    name, value = _leaf_value(tree, subject, knowledge)
    return [Fact(subject.name, name, value, truth is Truth.YES)]


def _leaf_value(tree: list[Any], subject: Subject, knowledge: Knowledge) -> tuple[str, str]:
    kind, name = tree[0], tree[1]
    if kind == "trait":
        words = knowledge.traits[name]
        low, high = subject.levels.get(name, (0, 0))
        return name, words[low] if low == high else f"{words[low]} to {words[high]}"
    if kind == "word":
        return name, subject.words.get(name, "")
    if kind == "number":
        least, most = subject.numbers.get(name, (0.0, 0.0))
        return name, f"{least:g}" if least == most else f"{least:g} to {most:g}"
    wanted = tree[1]
    held = [
        fibre.name
        for fibre, _ in subject.fibres
        if (fibre.group if kind == "group" else fibre.id) in wanted
    ]
    return "fibre", " or ".join(dict.fromkeys(held))


def test_facts(tree: list[Any], facts: dict[str, Any]) -> Truth:
    """Whether a condition holds of the facts of a seam or of the maker."""
    kind = tree[0]
    if kind == "word":
        return Truth.YES if facts.get(tree[1], "") in tree[2] else Truth.NO
    if kind == "number":
        value = facts.get(tree[1])
        return in_number(None if value is None else (value, value), tree[2:])
    if kind == "not":
        return Truth(2 - test_facts(tree[1], facts))
    answers = [test_facts(part, facts) for part in tree[1:]]
    if kind == "all":
        return min(answers, default=Truth.YES)
    return max(answers, default=Truth.NO)


def facts_of(tree: list[Any], facts: dict[str, Any], who: str) -> list[Fact]:
    """The leaves that hold of a seam or of the maker."""
    kind = tree[0]
    if kind in ("all", "any"):
        return [f for part in tree[1:] for f in facts_of(part, facts, who)]
    if kind == "not" or test_facts(tree, facts) is Truth.NO:
        return []
    value = facts.get(tree[1], "")
    return [Fact(who, tree[1], f"{value:g}" if isinstance(value, float) else str(value))]


def _carries(seam: Seam, stress: str) -> bool:
    """Whether the garment hangs from a place; of a seam that is only asked about nobody knows."""
    if stress == "low" or not seam.place:
        return stress != "low"
    words = set(singular_words(seam.name))
    if seam.place == "lining-seam" or words & {"lining", "cinch"}:
        return False  # the shell carries; a lining only hangs in it, a cinch only draws it in
    return bool(nouns.CARRYING & words) or (stress == "high" and not nouns.BESIDE_THE_LOAD & words)


def seam_facts(seam: Seam) -> dict[str, Any]:
    """Everything that can be asked of a seam."""
    facts: dict[str, Any] = {**SEAM_USUAL, **seam.facts}
    facts["layers"] = float(len(seam.uses))
    facts["carries weight"] = "yes" if _carries(seam, str(facts["stress"])) else "no"
    facts["place"] = seam.place
    facts["facing seen"] = "yes" if speaks_of(seam.name, nouns.SEEN_FACINGS) else "no"
    facts["allowance given"] = "yes" if "allowance" in seam.facts else "no"
    facts["laid in pleats"] = "no" if seam.making.pleats is None else "yes"
    facts["plies"] = sum((use.fullness for use in seam.uses), 0.0)
    if seam.by_hand:
        facts["stitched by"] = "hand"
    return facts


def maker_facts(maker: Maker) -> dict[str, Any]:
    """Everything that can be asked of the maker's machines, and of whom she sews for."""
    return {
        "machine": maker.machine,
        "overlocker": "yes" if maker.overlocker else "no",
        "worn by": maker.worn_by,
    }
