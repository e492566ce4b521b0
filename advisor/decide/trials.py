"""The fewest scrap tests: each different stack of layers and settings once.

Two seams are one sandwich where layers, fullness, needle, thread, stitch and press are all the
same; nothing less would show what the other seam does.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from advisor.claims.collect import Fired, Place
from advisor.claims.judgement import Judgement
from advisor.claims.telling import told_lines
from advisor.project.garment import Seam

TRIED = (
    "needle.size",
    "needle.point",
    "thread.fibre",
    "thread.size",
    "stitch.type",
    "stitch.length",
    "press.temperature",
    "press.moisture",
    "press.cloth",
)
"""What a scrap test tries: needle, thread, stitch and press."""


@dataclass(frozen=True, slots=True)
class Trial:
    """A sandwich to sew and press on scraps: layers, places it stands for, what to look for."""

    layers: tuple[str, ...]
    places: tuple[str, ...]
    look_for: tuple[str, ...]
    settings: tuple[float | None, ...] = field(default=(), compare=False)


def find_trials(judgement: Judgement) -> list[Trial]:
    """One trial for each different set of layers and settings, most layers first."""
    stacks: dict[tuple[object, ...], list[Seam]] = {}
    for seam in judgement.garment.seams:
        stacks.setdefault((seam.uses, settings_of(seam, judgement)), []).append(seam)
    trials = []
    for seams in stacks.values():
        layers = tuple(use.cloth for use in seams[0].uses)
        places = [seam.name for seam in seams]
        settings = settings_of(seams[0], judgement)
        trials.append(Trial(layers, tuple(places), _look_for(judgement, places), settings))
    return sorted(trials, key=lambda t: (-len(set(t.layers)), t.layers))


def settings_of(seam: Seam, judgement: Judgement) -> tuple[float | None, ...]:
    """What is set for a seam, in the order of `TRIED`; None where nobody says anything."""
    verdicts = judgement.verdicts[Place("seam", seam.name)]
    return tuple(verdicts[a].pick if a in verdicts else None for a in TRIED)


def _look_for(judgement: Judgement, places: list[str]) -> tuple[str, ...]:
    """What the rules that fired here, or on a layer of here, want tried; the weightiest first."""
    garment = judgement.garment
    cloths = {c for seam in garment.seams if seam.name in places for c in seam.cloths()}
    here = frozenset(places)
    found = [
        fired.rule.tests[i]
        for fired in sorted(judgement.gathered.fired, key=weight_of)
        if (fired.certain or guards(fired))
        and (
            fired.place.name in places
            or (fired.place.scope != "seam" and set(fired.cloths) <= cloths)
        )
        for i in told_lines(fired, "tests", judgement, here)
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
