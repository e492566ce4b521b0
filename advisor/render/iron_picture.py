"""The layers' iron ranges on one temperature scale, drawn so that no colour is needed.

An open bar is what a cloth bears, the hatched part of it is where it also takes a press, the
thick stroke its limit; a need beyond the limit stands alone as a diamond. The same is said in
words in the description of the drawing.
"""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from msgspec import Struct

from advisor.answer.model.heat import ToldIron
from advisor.answer.wording import degrees, no_iron
from advisor.craft.irondial import MARKS
from advisor.units import System

_FROM, _TO = 20.0, 230.0
_LEFT, _WIDTH, _ROW, _TOP = 96.0, 340.0, 13.0, 28.0
_LONGEST = 17
_NAMESPACE = "http://www.w3.org/2000/svg"


class Bar(Struct, frozen=True):
    """What a layer bears and, where it needs a hot press, from what on, °C."""

    name: str
    limit_c: float
    needs_c: float | None


def layers_of(rows: Sequence[ToldIron]) -> list[Bar]:
    """Each cloth of all places once, with its strictest limit, and the whole garment last."""
    found: dict[str, Bar] = {}
    for place in rows:
        for layer in place.layers:
            old = found.get(layer.name)
            if old is None or layer.limit_c < old.limit_c:
                found[layer.name] = Bar(layer.name, layer.limit_c, layer.needs_c)
    whole = [_together(place) for place in rows if place.scope == "garment"]
    return [found[name] for name in sorted(found)] + whole[:1]


def layers_at(place: ToldIron) -> list[Bar]:
    """The layers of one place, and what they have in common."""
    own = [Bar(x.name, x.limit_c, x.needs_c) for x in place.layers]
    return [*own, _together(place)]


def _together(place: ToldIron) -> Bar:
    low, high = place.range_c
    return Bar("all together", high, None if no_iron(low) else low)


def iron_svg(layers: Sequence[Bar], name: str, units: System) -> str:
    """A drawing of layers, to stand inside a page.

    Args:
        layers: from the iron downwards.
        name: what the drawing is called.
        units: of the numbers that are printed.
    """
    height = _TOP + _ROW * len(layers) + 2
    said = "; ".join(_words(layer, units) for layer in layers)
    box = f"0 0 {_WIDTH:g} {height:g}"
    parts = [
        f'<svg xmlns="{_NAMESPACE}" viewBox="{box}" role="img" font-size="10.6">',
        f"<title>{escape(name)}</title><desc>{escape(said)}.</desc>",
        *_marks(height, units),
    ]
    for i, layer in enumerate(layers):
        parts += _bar(layer, _TOP + _ROW * i, units)
    return "".join([*parts, "</svg>"])


def _words(layer: Bar, units: System) -> str:
    limit, need = layer.limit_c, layer.needs_c
    text = "no iron" if no_iron(limit) else f"at most {degrees(limit, units)}"
    if need is not None:
        text += f", takes a press from {degrees(need, units)}"
    return f"{layer.name}: {text}"


def _x(celsius: float) -> float:
    share = (min(max(celsius, _FROM), _TO) - _FROM) / (_TO - _FROM)
    return round(_LEFT + share * (_WIDTH - _LEFT - 2), 1)


def _marks(height: float, units: System) -> list[str]:
    """A line for each mark of the dial, with its dots and its label ceiling."""
    parts = []
    for mark in MARKS:
        x = _x(mark.ceiling)
        dots = "●" * mark.dots
        parts.append(
            f'<text x="{x:g}" y="10" text-anchor="middle" font-size="8">{dots}</text>'
            f'<text x="{x:g}" y="22" text-anchor="middle">{degrees(mark.ceiling, units)}</text>'
            f'<path d="M{x:g} 25V{height:g}" stroke="currentColor" stroke-width=".6" '
            'stroke-dasharray="1.5 2.5"/>'
        )
    return parts


def _bar(layer: Bar, top: float, units: System) -> list[str]:
    limit, need = float(layer.limit_c), layer.needs_c
    whole = str(layer.name)
    short = whole if len(whole) <= _LONGEST else whole[: _LONGEST - 1] + "…"
    start, end, middle = _x(_FROM), _x(limit), top + 6
    parts = [
        f"<g><title>{escape(_words(layer, units))}</title>",
        f'<text x="0" y="{top + 10:g}">{escape(short)}</text>',
    ]
    if not no_iron(limit):
        parts.append(
            f'<rect x="{start:g}" y="{top + 2:g}" width="{end - start:g}" height="8" fill="none" '
            'stroke="currentColor" stroke-width=".8"/>'
        )
        if need is not None and need <= limit:
            parts.append(_hatch(_x(need), end, top))
    parts.append(f'<path d="M{end:g} {top:g}v12" stroke="currentColor" stroke-width="2.6"/>')
    if need is not None and need > limit:
        x = _x(need)
        diamond = f"M{x:g} {top + 1:g}l5 5-5 5-5-5z"
        parts.append(f'<path d="{diamond}" fill="none" stroke="currentColor"/>')
    text = "no iron" if no_iron(limit) else degrees(limit, units).split()[0]
    parts.append(f'<text x="{end + 4:g}" y="{middle + 4:g}" class="halo">{text}</text></g>')
    return parts


def _hatch(left: float, right: float, top: float) -> str:
    """Slanted strokes, which no printer turns into a plain grey."""
    strokes = "".join(f"M{x:g} {top + 10:g}l4-8" for x in _steps(left, max(left, right - 4.0), 4.0))
    line = f"M{left:g} {top + 2:g}v8{strokes}"
    return f'<path d="{line}" fill="none" stroke="currentColor" stroke-width="1"/>'


def _steps(left: float, right: float, step: float) -> list[float]:
    count = int((right - left) / step)
    return [round(left + i * step, 1) for i in range(count + 1)]
