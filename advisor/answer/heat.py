"""The heat through the layers as it is told: a row a place and a way of pressing, and what burns.

The first row of a place is the press as advised. Temperatures are °C, times s, bands (least,
likely, most). A time that is None does not come within a minute by this calculation, which is no
permission: the limits stand. The computed seconds only ever shorten.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

from advisor.answer.core import WORST_KINDS
from advisor.answer.model.heat import (
    ToldFusing,
    ToldGlue,
    ToldHeat,
    ToldKinderSide,
    ToldLayerHeat,
)
from advisor.answer.model.told import ToldCaution, ToldConflict, ToldVerdict
from advisor.answer.press_clause import LONG_S, budget, seconds, wait_words
from advisor.answer.teller import Teller
from advisor.craft.irondial import MARKS
from advisor.heat.gluing import FLAT, GRADES, IN_SEAM, Fused, best_of
from advisor.heat.layers import assumed_of
from advisor.heat.questions import PRESS_S, Heat
from advisor.heat.stacks import Bed, Press

if TYPE_CHECKING:
    from advisor.heat.model.dialogue import HeatAnswer, LayerHeat
    from advisor.heat.model.materials import Range

LEAST_WAIT_S = 10.0
"""Nothing that was under an iron is called safe to touch sooner than this: estimate."""
SOURCES = (
    "derived",
    "estimate",
    "morton-hearle-2008",
    "baxter-1946",
    "schuhmeister",
    "iec-60311",
    "memory",
)
"""What the computed numbers rest on, as the heat model names it."""
BY_MODEL = "computed, not measured"
_FINE = ("metal yarn", "glass bead")
"""Parts that cool with the cloth they are in; only the full answer speaks of them."""


def told_heat(heat: Heat, teller: Teller) -> tuple[ToldHeat, ...]:
    """All rows, place by place in the order of the project."""
    rows: list[ToldHeat] = []
    for seam in teller.garment.seams:
        bed = next((b for b in heat.beds if seam.name in b.places), None)
        if bed is not None:
            rows += _of_place(seam.name, bed, heat, teller)
    return tuple(rows)


def _of_place(place: str, bed: Bed, heat: Heat, teller: Teller) -> Iterator[ToldHeat]:
    ways = heat.ways(bed)
    taken = {
        name: found
        for name in dict.fromkeys(bed.cloths)
        if (found := tuple(assumed_of(teller.garment.cloths[name], teller.knowledge)))
    }
    for at, (press, answer) in enumerate(ways.values()):
        row = _row(place, press, answer, taken, teller)
        if at == 0:
            row = replace(
                row,
                glue_line=_glue(place, heat.fused, teller),
                kinder_side=_kinder(bed, ways),
                rest_s=_rest(bed, heat),
            )
        yield row


def _row(
    place: str,
    press: Press,
    answer: HeatAnswer,
    taken: dict[str, tuple[str, ...]],
    teller: Teller,
) -> ToldHeat:
    apart = {x.name for x in press.stack.layers if x.role in ("press cloth", "board", "part")}
    return ToldHeat(
        place=place,
        way=press.way,
        sole_c=_ends(answer.sole),
        mark=MARKS[press.setting.dots - 1].name,
        wanted_by=press.setting.wanted_by,
        cloth=None if press.cloth == "none" else press.cloth,
        moisture=press.moisture,
        layers=tuple(_layer(x) for x in answer.layers if x.name not in apart),
        touch_safe_after_s=_wait(answer.touch_safe_after),
        hard_parts=tuple(_hard(press)),
        press_at_most_s=answer.press_at_most_s,
        limited_by=answer.limited_by,
        assumed=taken,
        computed=BY_MODEL,
        sources=teller.cite(SOURCES),
    )


def _layer(layer: LayerHeat) -> ToldLayerHeat:
    reaches = layer.reaches_limit_s
    times = None if reaches is None else reaches.as_list()
    return ToldLayerHeat(
        name=layer.name,
        limit_c=layer.limit_c,
        at_s={f"{second:g}": _ends(band) for second, band in layer.at_s},
        reaches_limit_s=None if times is None else tuple(times),
        dominated_by=layer.dominated_by,
    )


def _ends(band: Range) -> tuple[float, float, float]:
    return (round(band.low, 1), round(band.mid, 1), round(band.high, 1))


def _hard(press: Press) -> list[str]:
    """What is hard in a stack, by the maker's name for it, or what it is in which cloth."""
    return [f"{part} in {layer}" if part in _FINE else layer for layer, part in press.parts]


def _wait(wait: Range | None) -> tuple[float, float, float] | None:
    """The wait before a hard part is touched; never nothing, whatever the calculation says."""
    if wait is None:
        return None
    low, mid, high = (round(max(LEAST_WAIT_S, x), 1) for x in (wait.low, wait.mid, wait.high))
    return (low, mid, high)


def _rest(bed: Bed, heat: Heat) -> tuple[float | None, ...] | None:
    rest = heat.rests.get(bed)
    times = None if rest is None else rest.as_list()
    return None if times is None else tuple(times)


def _kinder(bed: Bed, ways: dict[str, tuple[Press, HeatAnswer]]) -> ToldKinderSide | None:
    """Which side to press from, by the longer time until the first layer is at its limit."""
    if "turned" not in ways:
        return None
    press, other = ways["turned"]
    usual = "bare" if "bare" in ways else "advised"
    as_laid = ways["wanted" if press.setting is bed.wanted else usual][1]
    here, there = as_laid.press_at_most_s, other.press_at_most_s
    if here == there:
        return None
    laid = here is None or (there is not None and here > there)
    top, bottom = bed.cloths[0], bed.cloths[-1]
    mark = MARKS[press.setting.dots - 1].name
    return ToldKinderSide(top if laid else bottom, laid, here, there, mark)


def _glue(place: str, fused: tuple[Fused, ...], teller: Teller) -> ToldGlue | None:
    """What becomes of the glue of a place's fusible: as it lies in the seam, and flat before."""
    groups: dict[str, list[Fused]] = {}
    for one in fused:
        if one.trial.place == place:
            groups.setdefault(one.trial.fusible, []).append(one)
    found = []
    for group in groups.values():
        seam, flat = best_of(group, IN_SEAM), best_of(group, (FLAT,))
        usual = [f for f in group if f.trial.way == FLAT and f is not flat]
        found.append(
            ToldGlue(
                _fused(seam, teller),
                _fused(flat, teller),
                _fused(usual[0], teller) if usual else None,
            )
        )
    worst = (g for g in sorted(found, key=_grade))
    return next(worst, None)


def _grade(glue: ToldGlue) -> int:
    return -GRADES.index(glue.seam.grade if glue.seam else "no")


def _fused(one: Fused | None, teller: Teller) -> ToldFusing | None:
    if one is None or one.answer.glue is None:
        return None
    trial, glue = one.trial, one.answer.glue
    times = glue.hot_after.as_list()
    return ToldFusing(
        fusible=trial.fusible,
        way=trial.way,
        through=trial.through,
        onto=trial.neighbour,
        need_c=trial.need_c,
        maker_s=trial.maker_s,
        setting_c=trial.limit,
        sole_c=_ends(glue.sole),
        cloth=None if trial.cloth == "none" else trial.cloth,
        moisture=trial.moisture,
        hot_after_s=None if times is None else tuple(times),
        press_s=None if glue.press_s is None else round(glue.press_s, 1),
        spoils=tuple(glue.spoils),
        over_limit=glue.over_limit,
        does_it=glue.does_it,
        grade=one.grade,
        sources=teller.cite(trial.sources),
        note="the maker's figures are of the press, not of the glue line",
    )


def with_burns(
    cautions: tuple[ToldCaution, ...], heat: Heat, teller: Teller
) -> tuple[ToldCaution, ...]:
    """The cautions with what burns the hands, the gravest kinds first."""
    own = tuple(c for c in cautions if c.id == "own-limit")
    rest = [c for c in cautions if c.id != "own-limit"]
    told = [*_burns(cautions, heat, teller), *rest]
    return (*own, *sorted(told, key=lambda c: WORST_KINDS.index(c.kind)))


def _burns(cautions: tuple[ToldCaution, ...], heat: Heat, teller: Teller) -> list[ToldCaution]:
    """The wait for metal in the seams, and on a full answer the rest."""
    from advisor.heat.model.burns import CAUTIONS

    rows = _metal(heat, teller)
    if not heat.loose:
        return rows
    aided = any("20 minutes" in c.text for c in cautions)
    waits = "; ".join(
        f"a {name} left in the seam {wait_words(_wait(wait) or (LEAST_WAIT_S,) * 3)}"
        for name, wait in heat.loose.items()
    )
    text = f"Hot after a press of {PRESS_S:.0f} s: {waits} ({BY_MODEL})."
    sources = ("derived", "estimate", "iso-13732-1")
    rows.append(_burn("pin-after-the-iron", text, (), sources, teller))
    rows += [
        _burn(c.id, c.text, (), tuple(c.sources), teller)
        for c in CAUTIONS
        if not (aided and c.id == "first-aid")
    ]
    return rows


def _metal(heat: Heat, teller: Teller) -> list[ToldCaution]:
    longest: dict[str, tuple[tuple[float, ...], dict[str, None]]] = {}
    for press, answer in heat.rows:
        wait = _wait(answer.touch_safe_after)
        if wait is not None and (heat.loose or any(p not in _FINE for _, p in press.parts)):
            parts = " and ".join(_hard(press))
            most, places = longest.get(parts, (wait, {}))
            longest[parts] = (max(most, wait, key=max), places | dict.fromkeys(press.places))
    sources = ("derived", "estimate", "iso-13732-1", "insulation-vendor-table")
    return [
        _burn(
            "metal-after-the-iron",
            f"The {parts} stays hot after a press of {PRESS_S:.0f} s: {wait_words(most)} "
            f"({BY_MODEL}); then touch it with the back of a finger first.",
            tuple(places),
            sources,
            teller,
        )
        for parts, (most, places) in longest.items()
    ]


def _burn(
    id_: str, text: str, about: tuple[str, ...], sources: tuple[str, ...], teller: Teller
) -> ToldCaution:
    return ToldCaution(id_, "heat", "burn", teller.say(text), about, teller.cite(sources))


def with_shorter_remedies(
    conflicts: tuple[ToldConflict, ...],
    heat: tuple[ToldHeat, ...],
    verdicts: Iterable[ToldVerdict] = (),
) -> tuple[ToldConflict, ...]:
    """A remedy that keeps the iron on the tender layer says how long it may lie there.

    Nothing is said where a rule, which stands at the press, gives as little or less.
    """
    ruled = {
        verdict.place: verdict.high
        for verdict in verdicts
        if (verdict.aspect, verdict.scope) == ("press.dwell", "seam")
    }
    return tuple(_shortened(one, heat, ruled.get(one.place)) for one in conflicts)


def _shortened(
    conflict: ToldConflict, heat: tuple[ToldHeat, ...], ruled: float | str | None
) -> ToldConflict:
    longest = budget([row for row in heat if row.place == conflict.place])
    if longest is not None and isinstance(ruled, float) and ruled <= longest:
        return conflict
    if longest is None or longest >= LONG_S or not conflict.aspect.startswith("press."):
        return conflict
    said = f" At most {seconds(longest)} at a time ({BY_MODEL})."
    remedies = tuple(
        replace(r, then=f"{r.then or ''}{said}".strip(), press_at_most_s=longest)
        if r.earlier or r.id == "settle-for-a-softer-press"
        else r
        for r in conflict.remedies
    )
    return replace(conflict, remedies=remedies)
