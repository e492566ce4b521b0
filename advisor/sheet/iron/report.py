"""The iron across layers: each layer's range, what they have in common, and a picture of it.

A picture is drawn with letters alone, so that it can be read without colour and aloud.
"""

from __future__ import annotations

from typing import Any

from advisor.craft.irondial import MARKS, mark_for, overshoot, steam_possible
from advisor.engine.claims import Place
from advisor.engine.judge import Judgement
from advisor.engine.speakers import Said
from advisor.engine.valuesets import Span
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Knowledge
from advisor.project.garment import Garment
from advisor.sheet.layout import heading, row, wrap
from advisor.sheet.wording import degrees, difference, who_text
from advisor.units import System

_FROM, _TO, _STEP = 20, 210, 5


def iron_report(judgement: Judgement, knowledge: Knowledge) -> list[dict[str, Any]]:
    """For every seam, and for the last press: the layers' ranges and what is left of them.

    Returns:
        `[{"place", "layers": [{"name", "limit_c", "start_c", "needs_c", "why", "sources",
        "published"}], "range_c": [low, high], "mark", "overshoot_k", "steam"}]`
    """
    rows = []
    for place, by_aspect in judgement.verdicts.items():
        verdict = by_aspect.get(LIMIT_ASPECT)
        if verdict is None or not isinstance(verdict.allowed, Span):
            continue
        said = [*verdict.because, *verdict.given_up]
        names = _names(judgement.garment, place)
        limit = verdict.allowed.high
        mark = mark_for(limit)
        rows.append({
            "place": place.name, "scope": place.scope,
            "layers": [_layer(name, said, judgement.garment, knowledge) for name in names],
            "range_c": [max(verdict.allowed.low, COLD), limit], "pick_c": verdict.pick,
            "conflict": bool(verdict.clash), "mark": mark.name if mark else None,
            "overshoot_k": overshoot(limit), "steam": steam_possible(limit),
        })  # fmt: skip
    return rows


def _names(garment: Garment, place: Place) -> list[str]:
    for seam in garment.seams:
        if place.scope == "seam" and seam.name == place.name:
            return list(seam.cloths())
    return sorted(garment.cloths)


def _layer(name: str, said: list[Said], garment: Garment, knowledge: Knowledge) -> dict[str, Any]:
    """The range of one layer: its lowest ceiling, its highest need, and who says so."""
    own = [s for s in said if name in s.cloths and s.claim.span]
    lids = [s for s in own if s.claim.strength == "must" and s.claim.risk != "result"]
    lid = min(lids, key=lambda s: (s.claim.span or (0, 999))[1], default=None)
    needs = [s.claim.span[0] for s in own if s.claim.span and s.claim.strength == "must"]
    starts = [s.claim.best for s in lids if s.claim.best is not None]
    fibres = {f for mix in garment.cloths[name].mixes for f, _ in mix}
    published = [
        {"fibre": f, "max_c": c.max, "sources": list(c.sources), "note": c.note, "counts": c.good}
        for f in sorted(fibres) for c in knowledge.fibres[f].ceilings
    ]  # fmt: skip
    limit = (lid.claim.span or (COLD, COLD))[1] if lid else COLD
    return {
        "name": name, "limit_c": limit, "start_c": min([limit, *starts]),
        "needs_c": max([n for n in needs if n > COLD], default=None),
        "who": who_text(lid) if lid else name, "why": lid.claim.why if lid else "",
        "sources": list(lid.claim.sources) if lid else [], "published": published,
    }  # fmt: skip


def render_iron(
    rows: list[dict[str, Any]], report: dict[str, Any], knowledge: Knowledge
) -> list[str]:
    """The lines for every place: layers, common range, picture, and how to press."""
    units: System = "us" if report["units"] == "us" else "metric"
    lines: list[str] = []
    for place in rows:
        lines += heading(str(place["place"]))
        for layer in place["layers"]:
            lines += _layer_lines(layer, units, knowledge)
        lines += ["", *picture(place, units), ""]
        lines += _common(place, units)
        lines += _how(place, report)
    return lines


def _layer_lines(layer: dict[str, Any], units: System, knowledge: Knowledge) -> list[str]:
    bears, why = layer_texts(layer, units, knowledge)
    return row(layer["name"], f"{bears}. {why}", 2, 22)


def layer_texts(layer: dict[str, Any], units: System, knowledge: Knowledge) -> tuple[str, str]:
    """What a layer bears, and why and on whose word."""
    limit = layer["limit_c"]
    bears = "no iron on it" if limit <= COLD else f"at most {degrees(limit, units)}"
    if layer["needs_c"]:
        bears += f", takes a press from {degrees(layer['needs_c'], units)}"
    if layer["start_c"] < limit and layer["start_c"] > COLD:
        lower = sorted({
            p["sources"][0].split(" ", 1)[0] for p in layer["published"]
            if p["max_c"] <= layer["start_c"] and p["sources"]
        })  # fmt: skip
        bears += f"; start at {degrees(layer['start_c'], units)}, as {', '.join(lower)} says"
    words = ", ".join(dict.fromkeys(
        f"{s} ({knowledge.sources[s.split(' ', 1)[0]].kind})" for s in layer["sources"]
    ))  # fmt: skip
    who = "" if layer["who"] == layer["name"] else f"{layer['who']}: "
    return bears, f"{who}{layer['why']} [{words}]"


def picture(place: dict[str, Any], units: System) -> list[str]:
    """The layers' ranges on one scale: `=` bears, `#` bears and takes a press, `|` the limit."""
    cells = (_TO - _FROM) // _STEP + 1

    def at(celsius: float) -> int:
        return max(0, min(cells - 1, int((celsius - _FROM) // _STEP)))

    def bar(limit: float, need: float | None) -> str:
        chars = [" "] * cells
        for i in range(at(limit) + 1):
            warm = need is not None and i >= at(need)
            chars[i] = "#" if warm else "="
        chars[at(limit)] = "|"
        if need is not None and need > limit:
            chars[at(need)] = "#"
        return "".join(chars).rstrip()

    scale = [" "] * (cells + 6)
    for mark in (20, *(int(m.ceiling) for m in MARKS)):
        text = degrees(float(mark), units).split()[0]
        scale[at(mark) : at(mark) + len(text)] = text
    lines = [" " * 24 + "".join(scale).rstrip() + (" °F" if units == "us" else " °C")]
    for layer in place["layers"]:
        name = str(layer["name"])[:21]
        lines.append(f"  {name:<22}{bar(layer['limit_c'], layer['needs_c'])}")
    low, high = place["range_c"]
    lines.append(f"  {'all layers':<22}{bar(high, low if low > COLD else None)}")
    lines.append("  = bears   # takes a press   | its limit")
    return lines


def _common(place: dict[str, Any], units: System) -> list[str]:
    return wrap(common_text(place, units), "  ")


def common_text(place: dict[str, Any], units: System) -> str:
    """What the layers bear together, and what the mark on the dial means by it."""
    high = place["range_c"][1]
    if high <= COLD:
        return "All layers together: no iron. Finger-press, roll or clap it flat."
    mark = place["mark"]
    if mark is None:
        text = f"All layers together: at most {degrees(high, units)}, which is below one dot: a "
        return text + "household iron is too hot for it. Finger-press."
    text = f"All layers together: at most {degrees(high, units)}: {mark}. "
    ceiling = next(m for m in MARKS if m.name == mark)
    text += (
        f"A mark is a band, about {degrees(ceiling.band[0], units).split()[0]} to "
        f"{degrees(ceiling.band[1], units)}, and the sole overshoots by "
        f"{difference(10, units).split()[0]} to {difference(40, units)} when it first "
        "heats: wait until the lamp has gone out twice."
    )
    if place["overshoot_k"]:
        above = f"{difference(place['overshoot_k'], units)} above this limit"
        text += f" The band reaches {above}: set the mark's low end."
    text += (
        f" Labels up to 2012 mean {degrees(ceiling.ceiling, units)} by it, those from 2023 "
        f"{degrees(ceiling.ceiling_2023, units)}; the lower one counts here."
    )
    if not place["steam"]:
        text += " At one dot an iron gives no proper steam and drips."
    return text


def _how(place: dict[str, Any], report: dict[str, Any]) -> list[str]:
    text = how_text(place, report)
    return row("press", text, 2, 8) if text else []


def how_text(place: dict[str, Any], report: dict[str, Any]) -> str:
    """The rest of the press at a place: moisture, side, cloth, surface, motion, time."""
    from advisor.sheet.lines import by_place, line_parts

    verdicts = by_place(report).get((place["scope"], place["place"]), {})
    aspects = ("press.moisture", "press.side", "press.cloth", "press.surface", "press.motion",
               "press.dwell")  # fmt: skip
    return "; ".join(text for text, _ in line_parts(verdicts, aspects))
