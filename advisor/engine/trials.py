"""The fewest scrap tests: each different stack of layers once, with the settings to try on it."""

from __future__ import annotations

from dataclasses import dataclass

from advisor.engine.advise import Judgement
from advisor.engine.claims import Fired


@dataclass(frozen=True, slots=True)
class Trial:
    """A sandwich to sew and press on scraps: layers, places it stands for, what to look for."""

    layers: tuple[str, ...]
    places: tuple[str, ...]
    look_for: tuple[str, ...]


def find_trials(judgement: Judgement) -> list[Trial]:
    """One trial for each different set of layers, most layers first."""
    stacks: dict[tuple[str, ...], list[str]] = {}
    for seam in judgement.garment.seams:
        stacks.setdefault(tuple(use.cloth for use in seam.uses), []).append(seam.name)
    trials = [
        Trial(layers, tuple(places), _look_for(judgement, places))
        for layers, places in stacks.items()
    ]
    return sorted(trials, key=lambda t: (-len(set(t.layers)), t.layers))


def _look_for(judgement: Judgement, places: list[str]) -> tuple[str, ...]:
    """What the rules that fired here, or on a layer of here, want tried; the weightiest first."""
    garment = judgement.garment
    cloths = {c for seam in garment.seams if seam.name in places for c in seam.cloths()}
    found = [
        text
        for fired in sorted(judgement.gathered.fired, key=weight_of)
        for text in fired.rule.tests
        if (fired.certain or guards(fired))
        and (
            fired.place.name in places
            or (fired.place.scope == "fabric" and set(fired.cloths) <= cloths)
        )
    ]
    return tuple(dict.fromkeys(found))


def guards(fired: Fired) -> bool:
    """Whether a rule keeps from harm; then it speaks even where its condition only may hold."""
    rule = fired.rule
    return bool(rule.cautions) or any(
        c.strength == "must" and c.risk != "result" for c in rule.claims
    )


def weight_of(fired: Fired) -> tuple[int, int, str]:
    """How much it matters, least first: harm, then what meets in a seam, then how special it is."""
    rule = fired.rule
    kinds = {caution["kind"] for caution in rule.cautions}
    harm = any(c.strength == "must" and c.risk != "result" for c in rule.claims)
    grave = 0 if harm or kinds - {"damage"} else 1 if rule.claims or kinds else 2
    together = 0 if rule.shape in ("pair", "garment pair") else 1
    late = 2 if rule.area == "care" else 0  # the cleaner comes after the sewing
    return (grave + together + late, -len(fired.facts), rule.id)
