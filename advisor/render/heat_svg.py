"""Temperature against time as a drawing of plain strings, readable without colour.

Each layer has a line of its own dash and a letter at its end, its band a pale field, its limit a
thin rule with the same letter; the same is said in words in the description. It reads the rows
of the report's `heat` and no more, so that it can stand in any page.
"""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from advisor.answer.model.heat import ToldHeat, ToldLayerHeat
from advisor.answer.wording import degrees
from advisor.render.heat_picture import LAST_S, ROOM_C, course, letters
from advisor.units import System

_NAMESPACE = "http://www.w3.org/2000/svg"
_LEFT, _RIGHT, _TOP, _WIDTH, _HEIGHT = 34.0, 86.0, 22.0, 240.0, 120.0
_NEAR_K = 15.0
"""A limit this close above the hottest end of a band is drawn too, K."""
_DASHES = ("", "6 2", "2 2", "8 2 2 2", "1 3", "10 3")
_TICKS = (0, 1, 2, 5, 10, 20)


def nearest_svg(rows: Sequence[ToldHeat], units: System = "metric") -> str:
    """The drawing of the row that is soonest at a limit; nothing where none comes to one."""
    near = [r for r in rows if r.press_at_most_s is not None and not r.wanted_by]
    if not near:
        return ""
    worst = min(near, key=lambda r: (r.press_at_most_s, r.place, r.way))
    return drawing(worst, worst.place, units)


def drawing(one: ToldHeat, name: str, units: System = "metric") -> str:
    """One row as an `svg`: likely courses with their bands, and every limit in sight."""
    top = top_of(one)
    letter_of = letters(one)
    width, height = _LEFT + _WIDTH + _RIGHT, _TOP + _HEIGHT + 26.0
    parts = [
        f'<svg xmlns="{_NAMESPACE}" viewBox="0 0 {width:g} {height:g}" role="img" font-size="8">',
        f"<title>{escape(title(one, name, units))}</title>",
        f"<desc>{escape(words(one, units))}</desc>",
        f'<text x="0" y="8">{escape(title(one, name, units))}</text>',
        *_axes(top, units),
    ]
    for i, (letter, layer) in enumerate(zip(letter_of, one.layers, strict=True)):
        parts += _layer(letter, layer, _DASHES[i % len(_DASHES)], top)
    parts += _limits(one, top, units)
    named = zip(letter_of, one.layers, strict=True)
    key = ", ".join(f"{letter} {layer.name}" for letter, layer in named)
    parts.append(f'<text x="{_LEFT:g}" y="{height - 3:g}">{escape(key)} (computed)</text>')
    return "\n".join([*parts, "</svg>"])


def top_of(one: ToldHeat) -> float:
    """The upper end of the drawing, °C: over the hottest end of every band and the limits near."""
    hottest = max(course(layer, 2)[-1][1] for layer in one.layers)
    limits = [float(x.limit_c) for x in one.layers if x.limit_c is not None]
    return float(max([hottest, *(x for x in limits if x <= hottest + _NEAR_K)]) + 5.0)


def title(one: ToldHeat, name: str, units: System) -> str:
    """What a drawing is called: the place and how it is pressed."""
    low, _, high = one.sole_c
    laid = "no press cloth" if one.cloth is None else f"through a {one.cloth}"
    wet = {"dry": "", "damp cloth": ", damp", "steam": ", steam"}[one.moisture]
    not_so = "; not to be used" if one.wanted_by else ""
    band = f"{degrees(low, units).split()[0]} to {degrees(high, units)}"
    return f"{name}: {one.mark}, {band}, {laid}{wet}{not_so}"


def words(one: ToldHeat, units: System) -> str:
    """The drawing in words: how hot each layer is at the end, its limit, and when it is there."""
    told = []
    for layer in one.layers:
        low, mid, high = (degrees(x, units).split()[0] for x in layer.at_s["20"])
        text = f"{layer.name} at {mid} ({low} to {high}) after 20 s"
        if layer.limit_c is not None:
            text += f", limit {degrees(layer.limit_c, units)}"
        if layer.reaches_limit_s:
            text += f", reached after {layer.reaches_limit_s[0]:g} s at the soonest"
        told.append(text)
    unit = "°F" if units == "us" else "°C"
    return f"Computed temperatures in {unit}. {'; '.join(told)}."


def _x(second: float) -> float:
    return _LEFT + _WIDTH * second / LAST_S


def _y(celsius: float, top: float) -> float:
    return _TOP + _HEIGHT * (top - min(celsius, top)) / (top - ROOM_C)


def _axes(top: float, units: System) -> list[str]:
    bottom = _TOP + _HEIGHT
    corner = f"M{_LEFT:g} {_TOP:g}V{bottom:g}H{_LEFT + _WIDTH:g}"
    parts = [f'<path d="{corner}" fill="none" stroke="currentColor"/>']
    parts += [
        f'<text x="{_x(second):.1f}" y="{bottom + 10:g}" text-anchor="middle">{second}</text>'
        for second in _TICKS
    ]
    parts.append(f'<text x="{_LEFT + _WIDTH + 8:g}" y="{bottom + 10:g}">s</text>')
    parts += [
        f'<text x="{_LEFT - 3:g}" y="{_y(mark, top) + 3:.1f}" text-anchor="end">'
        f"{degrees(mark, units).split()[0]}</text>"
        for mark in (ROOM_C, *range(50, int(top), 50))
    ]
    unit = "°F" if units == "us" else "°C"
    return [*parts, f'<text x="{_LEFT + 3:g}" y="{_TOP - 1:g}">{unit}</text>']


def _layer(letter: str, layer: ToldLayerHeat, dash: str, top: float) -> list[str]:
    """A layer's band and its likely course, with its letter at the end."""
    least, likely, most = (course(layer, end) for end in range(3))

    def points(of: list[tuple[float, float]]) -> str:
        return " ".join(f"{_x(s):.1f},{_y(c, top):.1f}" for s, c in of)

    style = 'fill="none" stroke="currentColor" stroke-width="1.4"'
    style += f' stroke-dasharray="{dash}"' if dash else ""
    end = _y(likely[-1][1], top)
    return [
        f'<polygon points="{points(most + least[::-1])}" fill="currentColor" opacity="0.1"/>',
        f'<polyline points="{points(likely)}" {style}/>',
        f'<text x="{_LEFT + _WIDTH + 3:g}" y="{end + 3:.1f}">{letter}</text>',
    ]


def _limits(one: ToldHeat, top: float, units: System) -> list[str]:
    """A rule for every limit in sight, with the letters of the layers that have it."""
    whose: dict[float, str] = {}
    for letter, layer in zip(letters(one), one.layers, strict=True):
        limit = layer.limit_c
        if limit is not None and ROOM_C < limit <= top:
            whose[limit] = f"{whose.get(limit, '')}{letter} "
    parts = []
    for limit, who in whose.items():
        at, end = _y(limit, top), _LEFT + _WIDTH + 12
        told = escape(f"limit {who}{degrees(limit, units)}")
        parts += [
            f'<path d="M{_LEFT:g} {at:.1f}H{end:g}" stroke="currentColor" stroke-width="0.6"/>',
            f'<text x="{end + 2:g}" y="{at + 3:.1f}">{told}</text>',
        ]
    return parts
