"""The fewest scrap tests: each different stack of layers and settings once, and cloths alone.

Two seams are one sandwich where layers, fullness, needle, thread, stitch and press are all the
same; nothing less would show what the other seam does. What a length has to show before it is cut
(dye, shrinking, which way it shades) is tried on the cloth by itself.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from advisor.claims.collect import Fired, Place
from advisor.claims.glued import GLUES
from advisor.claims.judgement import Judgement
from advisor.claims.telling import told_lines
from advisor.knowledge.model import Rule
from advisor.project.garment import Seam
from advisor.project.mainfibre import vouched_for

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
OF_THE_LENGTH = frozenset({"prepare", "cut", "care"})
"""Areas of rules whose tests show something of a cloth, and nothing of the seams it lies in."""


UNVOUCHED = "main fibre known"
"""The fact on which a test rests that comes first, for nothing else is known of the cloth."""
UNSEWN, STONES = "safety", "stones"
"""The area of rules whose tests are made where nothing is sewn, and the kind of place: of glue."""
VERY_FEW = 3
"""A rule that names no more cloths than these is about just them."""
OF_SEWING = frozenset({"stitch", "stack", "seam", "pin", "press"})
"""Areas of rules whose tests are sewn and pressed: nothing for a rivet or a button."""


@dataclass(frozen=True, slots=True)
class Trial:
    """A sandwich to sew and press on scraps: layers, places it stands for, what to look for.

    Without places it is no sandwich: each of the layers is tried by itself.
    """

    layers: tuple[str, ...]
    places: tuple[str, ...]
    look_for: tuple[str, ...]
    settings: tuple[float | None, ...] = field(default=(), compare=False)


def find_trials(judgement: Judgement) -> list[Trial]:
    """One trial for each set of layers and settings, most layers first; then the cloths alone."""
    stacks: dict[tuple[object, ...], list[Seam]] = {}
    rules = _weightiest(judgement)
    for seam in filter(lambda seam: _tried(seam, judgement, rules), judgement.garment.seams):
        stacks.setdefault((seam.uses, settings_of(seam, judgement)), []).append(seam)
    trials = []
    for seams in stacks.values():
        layers = tuple(use.cloth for use in seams[0].uses)
        places = [seam.name for seam in seams]
        settings = settings_of(seams[0], judgement)
        look_for = _look_for(judgement, places, rules)
        trials.append(Trial(layers, tuple(places), look_for, settings))
    trials = sorted(trials, key=lambda t: (-len(set(t.layers)), t.layers))
    return trials + _of_cloths(judgement, rules)


def _of_cloths(judgement: Judgement, rules: list[Fired]) -> list[Trial]:
    """What the lengths are tried for before they are cut; cloths with the same tests together.

    Those of which nobody knows the fibre stand first, for a close sheet has room for a few.
    """
    asked: dict[tuple[str, ...], list[str]] = {}
    for name in judgement.garment.cloths:
        own = [f for f in rules if _of_length(f) and f.cloths == (name,)]
        own.sort(key=lambda f: not any(fact.fact == UNVOUCHED for fact in f.facts))
        tests = [f.rule.tests[i] for f in own for i in told_lines(f, "tests", judgement)]
        if tests:
            asked.setdefault(tuple(dict.fromkeys(tests)), []).append(name)
    cloths = judgement.garment.cloths
    found = [Trial(tuple(names), (), tests) for tests, names in asked.items()]
    return sorted(found, key=lambda t: all(vouched_for(cloths[name]) for name in t.layers))


def _of_length(fired: Fired) -> bool:
    return fired.place.scope == "fabric" and fired.rule.area in OF_THE_LENGTH


def _weightiest(judgement: Judgement) -> list[Fired]:
    """The rules of which the tests are told, the weightiest first; a glue's before all.

    What is fused is fused before anything is stitched, so that is tried first too.
    """
    found = [f for f in judgement.gathered.fired if f.certain or guards(f)]
    return sorted(found, key=lambda f: (not _of_a_glue(f), weight_of(f)))


def _of_a_glue(fired: Fired) -> bool:
    return any(fact.fact == "kind" and fact.value in GLUES for fact in fired.facts)


def _tried(seam: Seam, judgement: Judgement, rules: list[Fired]) -> bool:
    """Whether a scrap of it shows anything: what no machine sews only where a rule asks for it."""
    noted = any(result.seam == seam.name for result in judgement.garment.plan.results)
    return noted or _sewn(seam.name, judgement) or bool(_look_for(judgement, [seam.name], rules))


def _sewn(place: str, judgement: Judgement) -> bool:
    return "stitch.type" in judgement.verdicts[Place("seam", place)]


def settings_of(seam: Seam, judgement: Judgement) -> tuple[float | None, ...]:
    """What is set for a seam, in the order of `TRIED`; None where nobody says anything."""
    verdicts = judgement.verdicts[Place("seam", seam.name)]
    return tuple(verdicts[a].pick if a in verdicts else None for a in TRIED)


def _look_for(judgement: Judgement, places: list[str], rules: list[Fired]) -> tuple[str, ...]:
    """What the rules that fired here, or on a layer of here, want tried; the weightiest first."""
    garment = judgement.garment
    # What a cloth has to show in a seam is shown in a seam: not by a rivet, and not by a button.
    sewn = {name for name in places if _sewn(name, judgement)}
    cloths = {c for seam in garment.seams if seam.name in sewn for c in seam.cloths()}
    here = frozenset(places)
    glued = (s for s in garment.seams if s.name in here and s.place == STONES)
    laid = {c for seam in glued for c in seam.cloths()} | cloths
    found = [
        fired.rule.tests[i]
        for fired in rules
        if _fired_at(fired, here, sewn)
        or (
            fired.place.scope != "seam"
            and set(fired.cloths) <= (laid if fired.rule.area == UNSEWN else cloths)
            and not _of_length(fired)
        )
        for i in told_lines(fired, "tests", judgement, here)
    ]
    return tuple(dict.fromkeys(found))


def _fired_at(fired: Fired, places: frozenset[str], sewn: set[str]) -> bool:
    """Whether a rule is about one of some places, and its tests can be made there."""
    at = fired.place.name
    here = fired.place.scope == "seam" and at in places
    return here and (at in sewn or fired.rule.area not in OF_SEWING)


def guards(fired: Fired) -> bool:
    """Whether a rule keeps from harm; then it speaks even where its condition only may hold."""
    rule = fired.rule
    return bool(rule.cautions) or any(
        c.strength == "must" and c.risk != "result" for c in rule.claims
    )


def of_two_cloths(rule: Rule) -> bool:
    """Whether a rule speaks because two cloths meet, or are in one garment."""
    return rule.shape in ("pair", "garment pair")


def _of_few(tree: Any) -> bool:
    """Whether a condition asks for one cloth of very few: the rule is written for just that."""
    if not isinstance(tree, (list, tuple)) or not tree or tree[0] == "not":
        return False
    if tree[:2] == ["word", "fabric"]:
        return len(tree[2]) <= VERY_FEW
    return any(_of_few(part) for part in tree)


def weight_of(fired: Fired) -> tuple[int, int, str]:
    """How much it matters, least first: harm, then what meets in a seam, then how special it is."""
    rule = fired.rule
    kinds = {caution["kind"] for caution in rule.cautions}
    harm = any(c.strength == "must" and c.risk != "result" for c in rule.claims)
    grave = 0 if harm or kinds - {"damage"} else 1 if rule.claims or kinds else 2
    together = 0 if of_two_cloths(rule) else 1
    late = 2 if rule.area == "care" else 0  # the cleaner comes after the sewing
    named = any(fact.fact == "fabric" for fact in fired.facts)
    own = named and any(_of_few(part) for part in rule.parts.values())
    return (grave + together + late - 2 * own, -len(fired.facts), rule.id)
