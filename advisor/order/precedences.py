"""Which tasks come before which: the templates of the knowledge laid over a garment's tasks."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import partial
from itertools import pairwise
from typing import Final

from advisor.claims.collect import Place
from advisor.claims.mounted import backings
from advisor.knowledge.ordering import SEWN, Pick, PrecedenceRule
from advisor.order.bastedin import as_tried, basted_tasks, both_basted
from advisor.order.easing import cap_out
from advisor.order.felled import felled_over_it
from advisor.order.fitting import FRONT_ZIP
from advisor.order.hosts import stands
from advisor.order.kinds import SeamPlace, below, crosses, crosses_by_custom, feeds, related
from advisor.order.lapels import LAPEL
from advisor.order.namewords import AFTER_HEM
from advisor.order.nearness import clear_of_hem, far_apart
from advisor.order.runsdown import met_under_the_iron
from advisor.order.setups import Setups
from advisor.order.staylaid import LAYS, melts, out_of_reach
from advisor.order.steps import Precedence, Strength
from advisor.order.tasks import Task
from advisor.order.worked_with import bears_less, wholly_fused
from advisor.project.placing import singular_words
from advisor.project.zipping import runs_into

STAGES = "The stages of a place follow one another."
LOOSE = frozenset({"collar", "stand", "cuff-edge", "flap"})
TIES, TURNED = "ties", "faced-edge"
"""What is made up by itself, so that all of its pressing comes before it is sewn on."""
GLUED_TO_THE_BODY = frozenset({"front-band"})
"""Kinds of place whose support is fused to an edge of the body itself, late enough."""
LAID_ON = "laid on"
"""The family of what is stitched to a single piece."""
PRESSED = frozenset({"press", "turn", "fold-under"})
"""Work under the iron that comes after its place is sewn."""
BACKED = "back"
"""The work that bastes a cloth behind the whole of its pieces."""
DRAWN = "draw-in"
"""The work that draws elastic or a cord through what is sewn already."""
FACES = {"embellished": 2, "pile": 1}
"""From which level of a trait a face suffers from handling."""
FACE_WORDS = {"embellished": "the trimmed face", "pile": "the pile"}
_STRENGTHS: dict[str, Strength] = {"must": "must", "should": "should", "may": "may"}


def precedences_of(
    tasks: list[Task], rules: Iterable[PrecedenceRule], setups: Setups
) -> dict[Precedence, int]:
    """Every precedence among the tasks with the place of its template; some may contradict.

    Of two templates of one strength that contradict, the one that stands first goes first.
    """
    weights: dict[Precedence, int] = {}
    basted, picked, of_places = basted_tasks(tasks), _Picked(tasks), _Standing()
    for weight, rule in enumerate(rules):
        firsts, seconds = picked.by(rule.before), picked.by(rule.after)
        found = [
            _precedence(rule, as_tried(a, b, basted), b, setups)
            for a in firsts
            for b in seconds
            if a.id != b.id
            and _joined(rule.where, a, b, setups, of_places)
            and not (rule.before.op == ("any",) and b.op in ("label", a.op))
            and not (rule.before.op == ("any",) and a.op == "label")
            and not (rule.where == "tender" and _in_already(a, b, tasks, setups))
        ]
        for item in found:
            weights.setdefault(item, weight)
    return _in_stages(weights, tasks)


def _in_stages(weights: dict[Precedence, int], tasks: list[Task]) -> dict[Precedence, int]:
    """With the stages of each place in the order of its method, and nothing against that."""
    of: dict[str, list[Task]] = {}
    stage = {task.id: (task.place.name, task.stage) for task in tasks if task.place}
    for task in sorted(tasks, key=lambda t: t.stage):
        if task.place is not None:
            of.setdefault(task.place.name, []).append(task)
    kept = {p: weight for p, weight in weights.items() if not _against(p, stage)}
    pairs = {(p.before, p.after) for p in kept}
    for rows in of.values():
        for first, second in pairwise(rows):
            if (first.id, second.id) not in pairs and first.place is not None:
                name, sources = first.place.method.name, first.place.method.sources
                why = f"Made as {name}, it is worked stage by stage." if name else STAGES
                kept[Precedence(first.id, second.id, why, sources)] = -1
    return kept


def _against(item: Precedence, stage: dict[str, tuple[str, int]]) -> bool:
    """Whether a template turns two stages of one place round."""
    first, second = stage.get(item.before), stage.get(item.after)
    return bool(first and second and first[0] == second[0] and first[1] > second[1])


class _Picked:
    """The tasks that a template may mean, found by their work."""

    def __init__(self, tasks: list[Task]) -> None:
        self._tasks = tasks
        self._of: dict[str, list[tuple[int, Task]]] = {}
        for at, task in enumerate(tasks):
            self._of.setdefault(task.op, []).append((at, task))

    def by(self, pick: Pick) -> list[Task]:
        """The tasks that are picked, in their order."""
        works = {*pick.op, *(SEWN if "sew" in pick.op else ())}
        meant = sorted(row for work in works for row in self._of.get(work, ()))
        some = self._tasks if "any" in pick.op else [task for _, task in meant]
        return [task for task in some if _fits(pick, task)]


def _fits(pick: Pick, task: Task) -> bool:
    if pick.kind and (task.place is None or task.place.role.id not in pick.kind):
        return False
    if pick.place and (task.place is None or task.place.kind.id not in pick.place):
        return False
    return all(tag in task.tags for tag in pick.tag)


def _joined(where: str, a: Task, b: Task, setups: Setups, of_places: _Standing) -> bool:
    """Whether two tasks stand to each other as a template asks."""
    if a.place is not None and b.place is not None and a.place.alone != b.place.alone:
        return False  # what is put on by itself waits for nothing of the rest
    if where == "garment":
        return True
    if where == "same cloth":
        return bool(set(a.cloths) & set(b.cloths))
    if where == "held as one":
        return b.place is not None and set(a.cloths) <= set(b.place.cloths)
    if where == "tender":
        return _hotter(a, b, setups)
    if where == "free of the tender":
        return _free(a, b, setups)
    if a.place is None or b.place is None:
        return where == "drawn up of it" and a.place is not None and b.needy in a.place.full
    return of_places.ask(where, a.place, b.place)


class _Standing:
    """How the places of some tasks stand to each other: asked of many tasks, found out once."""

    def __init__(self) -> None:
        self._found: dict[tuple[str, int, int], bool] = {}

    def ask(self, where: str, a: SeamPlace, b: SeamPlace) -> bool:
        """Whether two places stand to each other as a template asks."""
        key = (where, id(a), id(b))
        if key not in self._found:
            made = where in ("made for it", "made upon it", "its band")
            way = partial(stands, where) if made else RELATIONS.get(where, related)
            self._found[key] = way(a, b)
        return self._found[key]


def _in_a_zips_line(a: SeamPlace, b: SeamPlace) -> bool:
    return not b.one_waits and (runs_into(b.seam, a.seam) or runs_into(a.seam, b.seam))


RELATIONS: Final[dict[str, Callable[[SeamPlace, SeamPlace], bool]]] = {
    "same seam": lambda a, b: a.name == b.name,
    "felled over it": felled_over_it,
    "made of it": lambda a, b: stands("made for it", b, a),
    "fed": feeds,
    "zip line": _in_a_zips_line,
    "below a zip": lambda a, b: below(b, a),
    "custom": lambda a, b: crosses_by_custom(b, a),
    "crossed": lambda a, b: crosses(b, a),
}
"""How two places lie to each other, by the word of a template; else they share a piece."""


def _hotter(hot: Task, joining: Task, setups: Setups) -> bool:
    """Whether a task is done with more heat than the layers bear that another task joins to it."""
    place = joining.place
    if place is None or hot.step.iron is None or _loose(hot) or _walked_round(hot, place):
        return place is None and _backed_beside_the_tender(hot, joining)
    if joining.op in LAYS:
        return hot.needy in place.cloths and bool(melts(hot, joining, setups))
    if joining.op in ("bone", "close-bones"):
        limit = setups.limit(Place("seam", place.name))
        beside = related(hot.place, place) if hot.place else hot.needy in place.cloths
        return beside and limit is not None and limit < hot.step.iron.temperature_c
    if joining.op in ("fuse", "interface") and hot.needy:
        # What is pressed with all that is made of its cloth is not backed yet with what bears less;
        # but a piece is fused while it lies apart, and the press is cooler over the glue.
        fused = hot.needy in setups.fused_to(place) and wholly_fused(hot.needy, setups)
        heat = hot.step.iron.temperature_c
        return fused if joining.op == "fuse" else bears_less(hot.needy, heat, place, setups)
    if place.name in hot.meets or (joining.op == "baste" and place.kind.id != "zip"):
        return place.name in hot.meets  # a tape that is basted in is walked round
    if _same_place(hot, joining):
        # Fused for its own seam: the tender layer is joined by that very seam.
        return hot.op == "fuse" and bool(_cooler(hot, joining, setups))
    laid = place.kind.family == LAID_ON and "flat" not in hot.tags  # the iron keeps off it later
    # What is fused lies apart until it is joined, or is shaped on the glue.
    apart = joining.op == "fuse" and place.kind.id not in GLUED_TO_THE_BODY
    far = hot.place is not None and (laid or far_apart(hot.place, place, setups.garment))
    if apart or far:
        return False
    near = set(hot.cloths) & set(place.lies_on)
    cooler = set(_cooler(hot, joining, setups)) & comes_in(joining)
    return bool(near) and bool(cooler)


def _backed_beside_the_tender(hot: Task, backing: Task) -> bool:
    """Whether a cloth is basted behind its pieces that would spoil them, or be spoilt, in a press.

    Once it is basted all round, neither can be pressed by itself any more.
    """
    if backing.op != BACKED or hot.step.iron is None or not hot.needy:
        return False
    behind = set(backing.cloths)
    return bool(behind & hot.tender) or (hot.needy in behind and bool(hot.meets))


def _in_already(hot: Task, joining: Task, tasks: list[Task], setups: Setups) -> bool:
    """Whether what a joining brings in is joined elsewhere before the place of a hot task anyway.

    The place runs over that seam, so that its iron goes round the tender layer in any case; or
    both were basted for the fitting, and what is basted in is in.
    """
    place, here = hot.place, joining.place
    if place is None or here is None or hot.op not in PRESSED or _same_place(hot, joining):
        return False
    tender = set(_cooler(hot, joining, setups)) & comes_in(joining)
    sewn = (t for t in tasks if t.op in SEWN and t.place and t.place.name != here.name)
    before = (t for t in sewn if t.place and crosses(place, t.place) and _hotter(hot, t, setups))
    if tender & set(here.cloths) and both_basted(hot, joining, tasks):
        return True
    return bool(tender) and any(tender <= set(_cooler(hot, t, setups)) for t in before)


def comes_in(joining: Task) -> frozenset[str]:
    """The layers of a place that a stage brings in: what is drawn through comes after the seam."""
    place = joining.place
    if place is None:
        return frozenset()
    if joining.op == DRAWN:
        return frozenset(place.notions)
    return frozenset(place.cloths if _drawn_later(joining) else place.seam.cloths())


def _drawn_later(joining: Task) -> bool:
    """Whether something is only drawn through what a stage sews."""
    stages = joining.place.method.stages if joining.place else ()
    return joining.op != DRAWN and any(stage.work == DRAWN for stage in stages)


def too_tender(
    hot: Task, joined: Task, setups: Setups, heat: float | None = None
) -> frozenset[str]:
    """The layers that a task joined and that a hotter task should not meet; notions among them.

    It is as hot as its iron starts, or as said.
    """
    if joined.op in LAYS:
        last = hot.place is not None and hot.place.role.last  # no hem lies along what is stayed
        near = not last and borne_near(hot, joined, setups) is not None
        return (melts(hot, joined, setups) if near else frozenset()) - out_of_reach(
            hot, joined, setups
        )
    place, limit, boned = joined.place, borne_near(hot, joined, setups), joined.op == "bone"
    if place is None or hot.step.iron is None:
        return frozenset()
    heat = hot.hottest if heat is None else heat
    if limit is None or limit >= heat:
        return frozenset()
    bones = setups.bones(place)
    if boned:
        return bones
    there = (frozenset(place.seam.cloths()) & comes_in(joined)) - set(hot.cloths) - bones
    there -= setups.glues_left_out(place)
    there &= set(place.cloths) if joined.op == "baste" else there  # a tape there is walked round
    bears = {name: setups.bears_alone(name) for name in there}
    # Where each alone would bear it, it is what is basted behind them, or the place as a whole.
    behind = {name: setups.bears_alone(name) for name in backings(place.seam, setups.garment)}
    lower = [
        frozenset(n for n, most in found.items() if most is not None and most < heat)
        for found in (bears, behind)
    ]
    later = _drawn_later(joined) or (
        joined.op == "baste" and _notion_bears_less(place, heat, setups)
    )
    found = lower[0] or lower[1] or (frozenset() if later else there)
    clear = clear_of_hem(hot.place, place, setups.garment) if hot.place else frozenset()
    return found - clear - out_of_reach(hot, joined, setups)


def _notion_bears_less(place: SeamPlace, heat: float, setups: Setups) -> bool:
    """Whether it is a notion that makes a strap tender, which comes off after a fitting."""
    own = (setups.bears_alone(name) for name in place.notions)
    return place.kind.id == TIES and any(most is not None and most < heat for most in own)


def borne_near(hot: Task, joined: Task, setups: Setups) -> float | None:
    """What the place of a task bears of the iron of another beside it, °C; None clear of it."""
    place = joined.place
    if place is None or hot.place is None or _same_place(hot, joined) or _loose(hot):
        return None
    if not met_under_the_iron(hot.place, place) or far_apart(hot.place, place, setups.garment):
        return None
    boned = joined.op == "bone"
    return setups.limit(Place("seam", place.name)) if boned else setups.bears(place)


def _loose(hot: Task) -> bool:
    """Whether a piece is pressed that is made up by itself, with nothing of the garment near."""
    place = hot.place
    if cap_out(hot):
        return True
    if place is None or LAPEL in singular_words(place.name):
        return False
    return place.kind.id == TIES or (place.kind.id == TURNED and place.role.id in LOOSE)


def _walked_round(hot: Task, place: SeamPlace) -> bool:
    """Whether a zip goes in all the same, while all is flat: at a seam the iron keeps off it.

    One that parts runs down a whole front, and the loose pieces are pressed hot before it, as they
    are before one whose place holds a tender cloth.
    """
    early = bool(hot.needy) and (place.method.id == FRONT_ZIP or place.name in hot.meets)
    return place.kind.id == "zip" and not early


def _same_place(a: Task, b: Task) -> bool:
    return a.place is not None and b.place is not None and a.place.name == b.place.name


def _cooler(hot: Task, joining: Task, setups: Setups) -> list[str]:
    """The layers of a joining that bear less than the hot task gives, and are not in that."""
    if joining.place is None or hot.step.iron is None:
        return []
    limit = setups.bears(joining.place)
    if limit is None or limit >= hot.step.iron.temperature_c:
        return []
    own = set(hot.cloths) if not _same_place(hot, joining) else set()
    place, heat = joining.place, hot.step.iron.temperature_c
    glued = place.notions if joining.op == "fuse" else setups.comes_in(place)
    met = [name for name in (*place.cloths, *glued) if name not in own]
    bears = {name: setups.bears_alone(name) for name in met}
    tender = [name for name, most in bears.items() if most is not None and most < heat]
    return tender or [name for name in place.cloths if name not in own]


def _free(sewing: Task, hot: Task, setups: Setups) -> bool:
    """Whether what is sewn holds the needy cloth and nothing tender, so that it bears the press."""
    place = sewing.place
    if place is None or not hot.needy or hot.needy not in place.cloths:
        return False
    if place.role.last or place.role.id in AFTER_HEM:
        return False
    cooler = hot.tender & set(place.cloths) or _cooler(hot, sewing, setups)
    most, iron = setups.bears(place), hot.step.iron
    borne = most is None or iron is None or most >= iron.temperature_c  # its glue bears less, too
    return borne and not cooler and place.unit != "both"


def _delicate(task: Task, setups: Setups) -> str:
    """What has pile or sequins in a place, in words: it is named, for its neighbours have none."""
    found = []
    for name in task.place.cloths if task.place else ():
        traits = setups.knowledge.entries[setups.garment.cloths[name].entry].traits
        own = setups.garment.cloths[name].traits
        levels = {trait: (own.get(trait) or traits.get(trait, (0, 0)))[1] for trait in FACES}
        worst = next((trait for trait, least in FACES.items() if levels[trait] >= least), "")
        if worst:
            found.append(f"{FACE_WORDS[worst]} of {name}")
    return " and ".join(found) or "A tender face"


def _precedence(rule: PrecedenceRule, a: Task, b: Task, setups: Setups) -> Precedence:
    tender = sorted(melts(a, b, setups) or a.tender & set(b.cloths)) or _cooler(a, b, setups)
    if b.op == BACKED and not tender:
        tender = sorted(a.tender)
    words = {
        "before": a.place.name if a.place else a.id,
        "after": b.place.name if b.place else b.id,
        "tender": " and ".join(tender) or "a layer",
        "needy": a.needy or b.needy,
        "bears": "bear" if len(tender) > 1 else "bears",
        "delicate": _delicate(b, setups),
    }
    why = rule.why.format_map(words)
    why = why[:1].upper() + why[1:]
    return Precedence(a.id, b.id, why, rule.sources, _STRENGTHS[rule.strength])
