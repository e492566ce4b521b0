"""The iron across layers in words and letters, the same for a terminal and for a page.

A picture is drawn with letters alone, so that it can be read without colour and aloud.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from advisor.answer.model.answer import Answer
from advisor.answer.model.heat import ToldIron, ToldLayerIron
from advisor.answer.wording import degrees, difference, no_iron
from advisor.craft.irondial import MARKS, mark_for
from advisor.render.layout import heading, row, wrap
from advisor.render.lines import PRESSING, by_place, line_parts
from advisor.units import System

_FROM, _TO, _STEP = 20, 210, 5


def render_iron(rows: Sequence[ToldIron], report: Answer) -> list[str]:
    """The lines for every place: layers, common range, picture, and how to press."""
    kinds = source_kinds(report)
    units = report.units
    lines: list[str] = []
    told: set[str | None] = set()
    for places in alike(rows):
        first = places[0]
        lines += heading(", ".join(str(place.place) for place in places))
        for layer in first.layers:
            bears, why = layer_texts(layer, units, kinds)
            again = f"{layer.name}: {why}"
            said = f"{bears}." if again in told else f"{bears}. {why}"
            lines += row(layer.name, said, 2, 22)
            told.add(again)
        lines += ["", *picture(first, units), ""]
        lines += wrap(common_text(first, units, told=first.mark in told), "  ")
        told.add(first.mark)
        for text, names in presses(places, report):
            lines += row("press", f"{names}: {text}" if names else text, 2, 8)
    return lines


def alike(rows: Iterable[ToldIron]) -> list[list[ToldIron]]:
    """The places gathered whose layers lie alike and bear the same."""
    found: dict[str, list[ToldIron]] = {}
    for place in rows:
        # The last press is of all layers at once and is told by itself.
        found.setdefault(repr(replace(place, place="")), []).append(place)
    return list(found.values())


def presses(places: Sequence[ToldIron], report: Answer) -> list[tuple[str, str]]:
    """Each way of pressing some places, with the names of those that have it if not all do."""
    ways: dict[str, list[str]] = {}
    for place in places:
        text = how_text(place, report)
        if text:
            ways.setdefault(text, []).append(str(place.place))
    return [
        (text, "" if len(names) == len(places) else ", ".join(names))
        for text, names in ways.items()
    ]


def source_kinds(report: Answer) -> dict[str, str]:
    """The kind of each source that is cited."""
    return {source.id: source.kind for source in report.sources}


def layer_texts(layer: ToldLayerIron, units: System, kinds: Mapping[str, str]) -> tuple[str, str]:
    """What a layer bears, and why and on whose word; `kinds` are those of the sources."""
    limit = layer.limit_c
    bears = "no iron on it" if no_iron(limit) else f"at most {degrees(limit, units)}"
    if layer.needs_c:
        bears += f", takes a press from {degrees(layer.needs_c, units)}"
    if layer.start_c < limit and not no_iron(layer.start_c):
        lower = _gentler(layer)
        bears += f"; start at {degrees(layer.start_c, units)}, as {', '.join(lower)} says"
    words = ", ".join(dict.fromkeys(f"{s} ({kinds[s.split(' ', 1)[0]]})" for s in layer.sources))
    who = "" if layer.who == layer.name else f"{layer.who}: "
    return bears, f"{who}{layer.why} [{words}]"


def cited(layer: ToldLayerIron) -> set[str]:
    """The ids of the sources that the texts of a layer name."""
    return {*_gentler(layer), *(text.split(" ", 1)[0] for text in layer.sources)}


def _gentler(layer: ToldLayerIron) -> list[str]:
    """Who publishes a limit as low as where to start."""
    lower = [p for p in layer.published if p.max_c <= layer.start_c and p.sources]
    return sorted({p.sources[0].split(" ", 1)[0] for p in lower})


def picture(place: ToldIron, units: System) -> list[str]:
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
    for layer in place.layers:
        name = str(layer.name)[:21]
        lines.append(f"  {name:<22}{bar(layer.limit_c, layer.needs_c)}")
    low, high = place.range_c
    lines.append(f"  {'all layers':<22}{bar(high, None if no_iron(low) else low)}")
    lines.append("  = bears   # takes a press   | its limit")
    return lines


def common_text(place: ToldIron, units: System, *, told: bool = False) -> str:
    """What the layers bear together, and what the mark on the dial means by it.

    `told` is for a mark of which all that has been said before.
    """
    high = place.range_c[1]
    if no_iron(high):
        return "All layers together: no iron. Finger-press, roll or clap it flat."
    mark = place.mark
    if mark is None:
        text = f"All layers together: at most {degrees(high, units)}, which is below one dot: a "
        return text + "household iron is too hot for it. Finger-press."
    if mark_for(place.advised_c) is None:
        less = f"no more than {degrees(place.advised_c, units)} is advised and no mark is so low"
        wish = "none is advised" if no_iron(place.advised_c) else less
        return f"All layers together bear {degrees(high, units)} at most, but {wish}: no iron."
    text = f"All layers together: at most {degrees(high, units)}: {mark}"
    if told:
        low = ", at the low end of the mark" if place.overshoot_k else ""
        return f"{text}{low}. What was said of this mark above holds here too."
    text += ". "
    ceiling = next(m for m in MARKS if m.name == mark)
    text += (
        f"A mark is a band, about {degrees(ceiling.band[0], units).split()[0]} to "
        f"{degrees(ceiling.band[1], units)}, and the sole overshoots by "
        f"{difference(10, units).split()[0]} to {difference(40, units)} when it first "
        "heats: wait until the lamp has gone out twice."
    )
    if place.overshoot_k:
        above = f"{difference(place.overshoot_k, units)} above this limit"
        text += f" The band reaches {above}: set the mark's low end."
    text += (
        f" Labels up to 2012 mean {degrees(ceiling.ceiling, units)} by it, those from 2023 "
        f"{degrees(ceiling.ceiling_2023, units)}; the lower one counts here."
    )
    if not place.steam:
        text += " At one dot an iron gives no proper steam and drips."
    return text


def how_text(place: ToldIron, report: Answer) -> str:
    """The rest of the press at a place: moisture, side, cloth, surface, motion, time."""
    verdicts = by_place(report).get((place.scope, place.place), {})
    return "; ".join(text for text, _ in line_parts(verdicts, PRESSING))
