"""The heat through the layers as plain data: the `heat` list of the report, and its short clauses.

One row a place and a way of pressing; the first of a place is the press as advised. Temperatures
are °C, times s, bands [least, likely, most]. A time that is null does not come within a minute by
this calculation, which is no permission: the limits stand. The computed seconds only ever shorten.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from advisor.answer.citing import add_sources
from advisor.answer.press_clause import LONG_S, budget, seconds, wait_words
from advisor.claims.judgement import Advice
from advisor.craft.irondial import MARKS
from advisor.decide.gluing import advise_with_heat
from advisor.heat.gluing import FLAT, IN_SEAM, Fused, best_of
from advisor.heat.layers import assumed_of
from advisor.heat.questions import PRESS_S, Heat
from advisor.heat.stacks import Bed, Press, fusibles_in
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment

if TYPE_CHECKING:
    from advisor.heat.model.answer import HeatAnswer
    from advisor.heat.model.materials import Range

LEAST_WAIT_S = 10.0
"""Nothing that was under an iron is called safe to touch sooner than this: estimate."""
SOURCES = (
    "derived",
    "estimate",
    "morton-hearle-2008",
    "baxter-1946",
    "schuhmeister",
    "soleplate-dot-page",
    "iec-60311",
    "memory",
)
"""What the computed numbers rest on, as the heat model names it."""
BY_MODEL = "computed, not measured"
_FINE = ("metal yarn", "glass bead")
"""Parts that cool with the cloth they are in; only the full answer speaks of them."""


def heat_of(advice: Advice, knowledge: Knowledge, *, full: bool = True) -> tuple[Advice, Heat]:
    """The advice with the clashes that only the heat shows, and the heat; numpy comes in here."""
    return advise_with_heat(advice, knowledge, full=full)


def with_heat_clashes(advice: Advice, knowledge: Knowledge) -> Advice:
    """The advice with the clashes that only the heat shows; cheap where nothing is fused."""
    garment = advice.judgement.garment
    if not any(fusibles_in(garment, knowledge, seam) for seam in garment.seams):
        return advice
    return advise_with_heat(advice, knowledge, full=False)[0]


def add_heat(report: dict[str, Any], heat: Heat, garment: Garment, knowledge: Knowledge) -> None:
    """Put the heat into a report: its rows, what burns, what a remedy's setting still asks for."""
    report["heat"] = heat_rows(heat, garment, knowledge)
    kinds = list(dict.fromkeys(c["kind"] for c in report["cautions"]))
    order = {kind: i for i, kind in enumerate([*kinds, *(["burn"] if "burn" not in kinds else [])])}
    told = [*_burns(report, heat), *report["cautions"]]
    report["cautions"] = sorted(told, key=lambda c: order[c["kind"]])
    shorten_remedies(report)
    cited = [s for row in (*report["heat"], *report["cautions"]) for s in row["sources"]]
    add_sources(report, cited, knowledge)


def heat_rows(heat: Heat, garment: Garment, knowledge: Knowledge) -> list[dict[str, Any]]:
    """All rows, seam by seam in the order of the project."""
    rows = []
    for seam in garment.seams:
        bed = next((b for b in heat.beds if seam.name in b.places), None)
        if bed is None:
            continue
        ways = heat.ways(bed)
        for press, answer in ways.values():
            row = _row(seam.name, press, answer)
            names = dict.fromkeys(bed.cloths)
            said = {n: list(assumed_of(garment.cloths[n], knowledge)) for n in names}
            row["assumed"] = {name: taken for name, taken in said.items() if taken}
            rows.append(row)
        if ways:
            rows[-len(ways)]["glue_line"] = _glue(seam.name, heat.fused)
            rows[-len(ways)]["kinder_side"] = _kinder(bed, ways)
            rows[-len(ways)]["rest_s"] = _rest(bed, heat)
    return rows


def _row(place: str, press: Press, answer: HeatAnswer) -> dict[str, Any]:
    plain = answer.as_json()
    apart = {x.name for x in press.stack.layers if x.role in ("press cloth", "board", "part")}
    return {
        "place": place,
        "way": press.way,
        "sole_c": plain["sole_c"],
        "mark": MARKS[press.setting.dots - 1].name,
        "wanted_by": list(press.setting.wanted_by),
        "cloth": None if press.cloth == "none" else press.cloth,
        "moisture": press.moisture,
        "layers": [x for x in plain["layers"] if x["name"] not in apart],
        "glue_line": None,
        "touch_safe_after_s": _wait(answer.touch_safe_after),
        "hard_parts": _hard(press),
        "press_at_most_s": answer.press_at_most_s,
        "limited_by": answer.limited_by,
        "assumed": {},
        "computed": BY_MODEL,
        "sources": list(SOURCES),
    }


def _ends(band: Range) -> list[float]:
    return [round(x, 1) for x in (band.low, band.mid, band.high)]


def _hard(press: Press) -> list[str]:
    """What is hard in a stack, by the maker's name for it, or what it is in which cloth."""
    return [f"{part} in {layer}" if part in _FINE else layer for layer, part in press.parts]


def _wait(wait: Range | None) -> list[float] | None:
    """The wait before a hard part is touched; never nothing, whatever the calculation says."""
    if wait is None:
        return None
    return [round(max(LEAST_WAIT_S, x), 1) for x in (wait.low, wait.mid, wait.high)]


def _rest(bed: Bed, heat: Heat) -> list[float | None] | None:
    rest = heat.rests.get(bed)
    return None if rest is None else rest.as_list()


def _kinder(bed: Bed, ways: dict[str, tuple[Press, HeatAnswer]]) -> dict[str, Any] | None:
    """Which side to press from, by the longer time until the first layer is at its limit."""
    if "turned" not in ways:
        return None
    press, other = ways["turned"]
    as_laid = ways[
        "wanted" if press.setting is bed.wanted else "bare" if "bare" in ways else "advised"
    ][1]
    here, there = as_laid.press_at_most_s, other.press_at_most_s
    if here == there:
        return None
    laid = here is None or (there is not None and here > there)
    top, bottom = bed.cloths[0], bed.cloths[-1]
    return {
        "iron_on": top if laid else bottom,
        "as_laid": laid,
        "as_laid_s": here,
        "turned_s": there,
        "mark": MARKS[press.setting.dots - 1].name,
    }


def _glue(place: str, fused: tuple[Fused, ...]) -> dict[str, Any] | None:
    """What becomes of the glue of a place's fusible: as it lies in the seam, and flat before."""
    own = [f for f in fused if f.trial.place == place]
    if not own:
        return None
    groups: dict[str, list[Fused]] = {}
    for one in own:
        groups.setdefault(one.trial.fusible, []).append(one)
    found = []
    for group in groups.values():
        seam, flat = best_of(group, IN_SEAM), best_of(group, (FLAT,))
        usual = [f for f in group if f.trial.way == FLAT and f is not flat]
        found.append(
            {
                **(_fused(seam) or {}),
                "flat": _fused(flat),
                "flat_as_advised": _fused(usual[0]) if usual else None,
            }
        )
    order = ("no", "perhaps", "likely", "sure")
    return min(found, key=lambda g: order.index(g.get("grade", "no")))


def _fused(one: Fused | None) -> dict[str, Any] | None:
    if one is None or one.answer.glue is None:
        return None
    trial, glue = one.trial, one.answer.glue
    return {
        "fusible": trial.fusible,
        "way": trial.way,
        "through": trial.through,
        "onto": trial.neighbour,
        "need_c": trial.need_c,
        "maker_s": trial.maker_s,
        "setting_c": trial.limit,
        "sole_c": _ends(glue.sole),
        "cloth": None if trial.cloth == "none" else trial.cloth,
        "moisture": trial.moisture,
        "hot_after_s": glue.hot_after.as_list(),
        "press_s": None if glue.press_s is None else round(glue.press_s, 1),
        "spoils": list(glue.spoils),
        "over_limit": glue.over_limit,
        "does_it": glue.does_it,
        "grade": one.grade,
        "sources": list(trial.sources),
        "note": "the maker's figures are of the press, not of the glue line",
    }


def _burns(report: dict[str, Any], heat: Heat) -> list[dict[str, Any]]:
    """What burns the hands: the wait for metal in the seams, and on a full answer the rest."""
    from advisor.heat.model.burns import CAUTIONS

    longest: dict[str, tuple[list[float], dict[str, None]]] = {}
    for press, answer in heat.rows:
        wait = _wait(answer.touch_safe_after)
        if wait is not None and (heat.loose or any(p not in _FINE for _, p in press.parts)):
            parts = " and ".join(_hard(press))
            most, places = longest.get(parts, (wait, {}))
            longest[parts] = (max(most, wait, key=max), places | dict.fromkeys(press.places))
    rows = [
        _caution(
            "metal-after-the-iron",
            f"The {parts} stays hot after a press of {PRESS_S:.0f} s: {wait_words(most)} "
            f"({BY_MODEL}); then touch it with the back of a finger first.",
            list(places),
            ["derived", "estimate", "iso-13732-1", "insulation-vendor-table"],
        )
        for parts, (most, places) in longest.items()
    ]
    if not heat.loose:
        return rows
    aided = any("20 minutes" in c["text"] for c in report["cautions"])
    waits = "; ".join(
        f"a {name} left in the seam {wait_words(_wait(wait) or [LEAST_WAIT_S] * 3)}"
        for name, wait in heat.loose.items()
    )
    text = f"Hot after a press of {PRESS_S:.0f} s: {waits} ({BY_MODEL})."
    rows.append(_caution("pin-after-the-iron", text, [], ["derived", "estimate", "iso-13732-1"]))
    rows += [
        _caution(c.id, c.text, [], list(c.sources))
        for c in CAUTIONS
        if not (aided and c.id == "first-aid")
    ]
    return rows


def _caution(id_: str, text: str, about: list[str], sources: list[str]) -> dict[str, Any]:
    return {
        "id": id_,
        "area": "heat",
        "kind": "burn",
        "text": text,
        "about": about,
        "sources": sources,
    }


def shorten_remedies(report: dict[str, Any]) -> None:
    """A remedy that keeps the iron on the tender layer says how long it may lie there."""
    for conflict in report["conflicts"]:
        rows = [r for r in report["heat"] if r["place"] == conflict["place"]]
        longest = budget(rows)
        if longest is None or longest >= LONG_S or not conflict["aspect"].startswith("press."):
            continue
        for remedy in conflict["remedies"]:
            if remedy["earlier"] or remedy["id"] == "settle-for-a-softer-press":
                remedy["then"] += f" At most {seconds(longest)} at a time ({BY_MODEL})."
                remedy["press_at_most_s"] = longest
