"""The heat through the layers in words, tables and pictures of letters, for the iron's answer.

The same stack is told once for all its places; where nothing comes near a limit, in one line.
Least values are rounded down and most values up; a limit and a time are never rounded up.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from advisor.answer.model.answer import Answer
from advisor.answer.model.heat import ToldFusing, ToldGlue, ToldHeat, ToldLayerHeat
from advisor.answer.press_clause import LONG_S, budget, seconds, times_in_words, wait_words
from advisor.answer.wording import degrees
from advisor.heat.gluing import FLOWS_C
from advisor.heat.questions import PRESS_S
from advisor.render.heat_picture import letters, picture
from advisor.render.layout import heading, row, wrap
from advisor.units import System, fahrenheit

ASKED = ("1", "2", "5", "10", "20")
COOL_C = 40.0
"""Where a layer has set and is safe to move, as the heat model counts it: estimate."""
_COLUMN = 9
_NAME = 19
_CELL = 12
_SURE = {
    "sure": "the glue is at {} in time",
    "likely": "the glue is very likely at {} in time",
    "perhaps": "the glue may be at {} in time or not, a scrap decides",
    "no": "the glue is not at {} within 30 s",
}
_HANGS_ON = {
    "sole temperature": "the iron's own temperature",
    "contact with the sole": "how closely the sole lies on the cloth",
    "contact between layers": "how closely the layers lie on each other",
    "steam": "how much steam goes in",
    "vapour going down": "where the vapour of the damp cloth goes",
}
INTRO = (
    "Computed, not measured: no published measurements between layers under a hand iron were "
    "found. Three numbers are the least, the likely and the most. The model can shorten a time "
    "and never lifts a limit; where it finds no danger it gives no leave. Test on scraps."
)

LAST = (
    "The last press of the whole garment has no table: no order of layers is known for it. Its "
    "limits hold, and a seam under it is told below."
)


def heat_lines(report: Answer) -> list[str]:
    """The whole section; nothing where no iron touches anything."""
    units = report.units
    places: dict[str, list[ToldHeat]] = {}
    for one in report.heat or ():
        places.setdefault(one.place, []).append(one)
    if not places:
        return []
    groups: dict[str, list[str]] = {}
    for place, rows in places.items():
        groups.setdefault(_same(rows), []).append(place)
    lines = heading("Heat through the layers") + wrap(INTRO, "  ")
    if len(report.seams) > 1:
        lines += wrap(LAST, "  ")
    drawn = _worth_drawing([places[names[0]] for names in groups.values()])
    for names in groups.values():
        rows = places[names[0]]
        lines += _place(names, rows, report, units, draw=rows[0].place in drawn)
    return lines


def _worth_drawing(groups: list[list[ToldHeat]]) -> set[str]:
    """The places where a layer is likely to come to its limit in some way; at least the worst."""
    likely = {
        rows[0].place
        for rows in groups
        if any(
            x.reaches_limit_s and x.reaches_limit_s[1] is not None
            for x in _drawn({r.way: r for r in rows}, rows[0]).layers
        )
    }
    if likely:
        return likely
    worst = min(
        groups,
        key=lambda rows: min(
            (r.press_at_most_s for r in rows if r.press_at_most_s is not None), default=1e9
        ),
    )
    return {worst[0].place}


def _same(rows: list[ToldHeat]) -> str:
    """What makes two places alike: all but their names."""
    return repr([replace(r, place="") for r in rows])


def _place(
    names: list[str], rows: list[ToldHeat], report: Answer, units: System, *, draw: bool
) -> list[str]:
    ways = {r.way: r for r in rows}
    stack = next(s.layers for s in report.seams if s.name == names[0])
    title = f"{', '.join(names)}: {' + '.join(stack)}"
    if _harmless(rows) and not draw:
        return ["", *wrap(f"{title}. {_nothing(rows, units)}", "  ", "    ")]
    first = rows[0]
    lines = ["", *wrap(title, "  ", "    ")]
    tables = [first]
    if "wanted" in ways and ways["wanted"] is not first and draw:
        tables.append(ways["wanted"])
    for one in tables:
        lines += [*wrap(_heading(one, units), "  ", "    "), *table(one, units)]
    if draw:
        drawn = _drawn(ways, first)
        if drawn not in tables:
            lines += wrap(_heading(drawn, units), "  ", "    ")
        lines += ["", *picture(drawn, units), ""]
    for label, text in _notes(ways, rows, report, units):
        lines += row(label, text, 2, _COLUMN)
    return lines


def _harmless(rows: list[ToldHeat]) -> bool:
    """Whether no layer comes to its limit in any way but by an overshooting iron."""
    if rows[0].glue_line or rows[0].hard_parts:
        return False
    return all(
        layer.reaches_limit_s is None
        for r in rows
        if r.way not in ("unsettled", "turned")
        for layer in r.layers
    )


def _nothing(rows: list[ToldHeat], units: System) -> str:
    text = (
        f"{_heading(rows[0], units).rstrip(':')}: by this model no layer comes to its limit "
        "within a minute; the limits and the times of the sheet stand."
    )
    return " ".join([text, *_hasty(rows)])


def _hasty(rows: list[ToldHeat]) -> list[str]:
    """What an iron that has just come up shortens."""
    one = next((r for r in rows if r.way == "unsettled"), None)
    if one is None or one.press_at_most_s is None or one.press_at_most_s >= LONG_S:
        return []
    longest, who = seconds(one.press_at_most_s), one.limited_by
    return [f"If the iron has only just come up: at most {longest} ({who})."]


def _heading(one: ToldHeat, units: System) -> str:
    low, _, high = one.sole_c
    sole = f"{degrees(low, units).split()[0]} to {_up(high, units)}"
    through = "no press cloth" if one.cloth is None else f"through a {one.cloth}"
    if one.cloth and one.moisture == "damp cloth":
        through = f"through a damp {one.cloth}"
    elif one.moisture == "steam":
        through += ", with steam"
    if one.wanted_by:
        who = " and ".join(one.wanted_by)
        return f"If it stood at {one.mark} ({sole}), as {who} wants, {through}; not to be used:"
    return f"At {one.mark} ({sole}), {through}:"


def _up(celsius: float, units: System) -> str:
    value = fahrenheit(celsius) if units == "us" else celsius
    return f"{math.ceil(value - 1e-9)} {'°F' if units == 'us' else '°C'}"


def table(one: ToldHeat, units: System) -> list[str]:
    """Temperatures of each layer after so many seconds, and when it is at its limit."""
    unit = "°F" if units == "us" else "°C"
    head = f"    {f'{unit} after':<{_NAME}}" + "".join(f"{s + ' s':<{_CELL}}" for s in ASKED)
    lines = [head + "at its limit"]
    for letter, layer in zip(letters(one), one.layers, strict=True):
        name = f"{letter} {layer.name}"[: _NAME - 1]
        cells = "".join(f"{_band(layer.at_s[s], units):<{_CELL}}" for s in ASKED)
        lines.append(f"    {name:<{_NAME}}{cells}{_limit(layer)}".rstrip())
    return lines


def _band(band: Sequence[float], units: System) -> str:
    low, mid, high = (fahrenheit(x) if units == "us" else x for x in band)
    return f"{math.floor(low + 1e-9)}-{round(mid)}-{math.ceil(high - 1e-9)}"


def _limit(layer: ToldLayerHeat) -> str:
    if layer.limit_c is None:
        return "limit not known"
    if layer.reaches_limit_s is None:
        return "not in 60 s"
    low, mid, high = layer.reaches_limit_s
    if low is None:
        return "not in 60 s"
    if mid is None:
        return f"from {_short(low)} s"
    return f"{_short(low)}-{_short(mid)}-{'60+' if high is None else _short(high)} s"


def _short(value: float) -> str:
    return f"{int(value)}" if value >= 1.0 else "0.5" if value >= 0.5 else "<0.5"


def _drawn(ways: dict[str, ToldHeat], first: ToldHeat) -> ToldHeat:
    """The way that shows the danger best: the wanted mark, no cloth, else as advised."""
    for way in ("wanted", "bare"):
        one = ways.get(way)
        if one is not None and any(x.reaches_limit_s for x in one.layers):
            return one
    return first


def _notes(
    ways: dict[str, ToldHeat], rows: list[ToldHeat], report: Answer, units: System
) -> list[tuple[str, str]]:
    first = rows[0]
    notes = [("cloth", text) for text in _delays(ways, units)]
    notes.append(("time", _time(rows)))
    if first.rest_s:
        notes.append(("rhythm", _rhythm(rows, report, units)))
    if first.kinder_side:
        notes.append(("side", _side(first)))
    if first.glue_line:
        notes += [("fuse", text) for text in _glue(first.glue_line, units)]
    if first.touch_safe_after_s:
        notes.append(("hands", _hands(first)))
    unsure = _unsure(ways.get("wanted") or first)
    return [*notes, ("unsure", unsure)] if unsure else notes


def _delays(ways: dict[str, ToldHeat], units: System) -> list[str]:
    """What a press cloth does for the layer that is first at its limit."""
    bare, laid = ways.get("wanted"), ways.get("wanted cloth")
    if bare is None or laid is None:
        dry = [ways[w] for w in ("bare", "dried out", "cloth", "advised") if w in ways]
        dry = [r for r in dry if r.moisture == "dry"]
        bare = next((r for r in dry if r.cloth is None), None)
        laid = next((r for r in dry if r.cloth is not None), None)
    if bare is None or laid is None or bare.limited_by is None:
        return []
    place = next(i for i, x in enumerate(bare.layers) if x.name == bare.limited_by)
    tender = bare.layers[place]
    if tender.limit_c is None:
        return []
    limit = degrees(tender.limit_c, units)

    def told(one: ToldHeat) -> str:
        return times_in_words(one.layers[place].reaches_limit_s)

    below = " below" if place else ""
    text = (
        f"A cloth delays, it does not protect: at {bare.mark} the {tender.name}{below} "
        f"reaches {limit} after {told(bare)} without, "
        f"{told(laid)} with ({laid.cloth}, dry)."
    )
    return [text]


def _time(rows: list[ToldHeat]) -> str:
    if not any(r.way in ("advised", "dried out") for r in rows):
        return "No iron on this place: no dial mark is low enough."
    settled = budget(rows)
    if settled is None:
        text = "As advised no layer comes to its limit within a minute; the sheet's times stand."
    else:
        who = next(r.limited_by for r in rows if r.press_at_most_s == settled)
        text = f"At most {seconds(settled)} at a time: then {who} may be at its limit."
    return " ".join([text, *_hasty(rows)])


def _rhythm(rows: list[ToldHeat], report: Answer, units: System) -> str:
    ruled = [
        v.high
        for v in report.verdicts
        if v.place == rows[0].place and v.aspect == "press.dwell" and isinstance(v.high, float)
    ]
    # The iron may always have just come up, so the shorter time makes the rhythm.
    hasty = [r.press_at_most_s for r in rows if r.way == "unsettled"]
    longest = min(x for x in (PRESS_S, *ruled, budget(rows), *hasty) if x is not None)
    _, mid, high = rows[0].rest_s or (None, None, None)
    about = "more than 5 minutes" if mid is None else f"about {-int(-max(mid, 5.0) // 5) * 5} s"
    most = " or more" if high is None else f" (up to {-int(-max(high, 5.0) // 5) * 5} s)"
    until = about if mid is None else about + most
    cool = degrees(COOL_C, units)
    return f"Press {seconds(longest)}, lift, let it cool {until} to below {cool}, then again."


def _side(first: ToldHeat) -> str:
    kind = first.kinder_side
    if kind is None:
        return ""
    better, worse = kind.as_laid_s, kind.turned_s
    if not kind.as_laid:
        better, worse = worse, better
    return (
        f"Kinder with the iron on {kind.iron_on}: bare at {kind.mark} {_soonest(better)}, "
        f"the other way round {_soonest(worse)}."
    )


def _soonest(second: float | None) -> str:
    if second is None:
        return "no layer comes to its limit within a minute"
    when = "in under a second" if second < 1.0 else f"after {seconds(second)} at the soonest"
    return f"a layer is at its limit {when}"


def _glue(glue: ToldGlue, units: System) -> list[str]:
    """What becomes of the glue in this seam, and flat before joining."""
    texts = []
    seam = glue.seam
    if seam is not None:
        face = f"through {seam.through}" if seam.through else "with the iron on it"
        texts.append(f"{seam.fusible} {face}, {seam.way}: {_fused(seam, units)}")
    flat = glue.flat_as_advised or glue.flat
    if flat:
        texts.append(f"Flat on {flat.onto} before joining: {_fused(flat, units)}")
        better = glue.flat
        if better is not None and better is not flat:
            texts[-1] += (
                f" {better.moisture.capitalize()} is sooner: {times_in_words(better.hot_after_s)}."
            )
    maker = seam or glue.flat
    if maker is None:
        return texts
    texts.append(
        f"Maker's figures, {degrees(maker.need_c, units)} for {maker.maker_s:g} s, are of "
        "the press and not of the glue line; most glues begin to flow at about "
        f"{degrees(FLOWS_C, units)} (fusing-trade-page). Hold at least as long, let it cool flat."
    )
    return texts


def _fused(one: ToldFusing, units: System) -> str:
    laid = one.cloth or "no cloth"
    wet = {"dry": "dry", "damp cloth": "damp", "steam": "with steam"}[one.moisture]
    how = f"iron at {degrees(one.setting_c, units)}, {laid}, {wet}"
    text = f"{_SURE[one.grade].format(degrees(one.need_c, units))} ({how}): "
    text += f"{times_in_words(one.hot_after_s)}."
    if one.spoils:
        text += f" By then {' and '.join(dict.fromkeys(one.spoils))} may be at its limit."
    return text


def _hands(first: ToldHeat) -> str:
    parts = " and ".join(dict.fromkeys(first.hard_parts))
    waits = wait_words(first.touch_safe_after_s or ())
    return f"The {parts} stays hot after the press: {waits}."


def _unsure(one: ToldHeat) -> str:
    """What the numbers hang on most, and what was taken for granted."""
    hangs = [
        _HANGS_ON.get(x.dominated_by, f"the {x.dominated_by}") for x in one.layers if x.dominated_by
    ]
    text = f"Hangs most on {' and '.join(dict.fromkeys(hangs))}." if hangs else ""
    taken = [f"{name} ({', '.join(said)})" for name, said in one.assumed.items()]
    return f"{text} Taken for granted: {'; '.join(taken)}.".strip() if taken else text
