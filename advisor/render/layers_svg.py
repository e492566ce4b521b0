"""A place cut through: its layers from the iron down, the stitching, and the allowance beyond it.

The colours are those of the project; nothing depends on them, for each layer is named beside its
band and the description says the same in words.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from html import escape

from advisor.answer.model.told import ToldPlace
from advisor.units import System, show

_NAMESPACE = "http://www.w3.org/2000/svg"
_LEFT, _CLOTH, _ROW, _TOP = 132.0, 120.0, 16.0, 16.0
_PER_MM, _LEAST, _MOST = 3.0, 12.0, 108.0
_LONGEST = 22
_COLOUR = re.compile(r"#[0-9a-fA-F]{6}")


def layers_svg(place: ToldPlace, units: System, colours: Mapping[str, str]) -> str:
    """The cross-section of a place.

    Args:
        place: with its layers from the iron down.
        units: of the numbers that are printed.
        colours: six digits after a # by cloth; what is none is left white.
    """
    allowance = _allowance(place)
    beyond = min(max((allowance or 0.0) * _PER_MM, _LEAST), _MOST) if allowance else 0.0
    width = _LEFT + _CLOTH + _MOST + 4  # all places on one scale
    bottom = _TOP + _ROW * len(place.layers)
    height = bottom + (20 if allowance else 4)
    parts = [
        (
            f'<svg xmlns="{_NAMESPACE}" viewBox="0 0 {width:g} {height:g}" role="img" '
            'class="layers" font-size="11">'
        ),
        f"<title>{escape(f'{place.name}: its layers')}</title>",
        f"<desc>{escape(layers_words(place, units))}</desc>",
        '<text x="0" y="10">the iron lies here</text>',
        f'<path d="M{_LEFT:g} 9h{_CLOTH:g}" stroke="currentColor" stroke-width="3"/>',
    ]
    for i, name in enumerate(place.layers):
        parts += _band(name, _TOP + _ROW * i, _CLOTH + beyond, colours.get(name, ""))
    if allowance:
        parts += _stitching(bottom, beyond, show("length", allowance, units))
    return "".join([*parts, "</svg>"])


def layers_words(place: ToldPlace, units: System) -> str:
    """The same in words: layers, stitching, how thick it gets."""
    text = f"From the iron down: {', '.join(place.layers)}."
    allowance = _allowance(place)
    if allowance:
        text += f" Stitched {show('length', allowance, units)} from the edge."
    if place.built is not None and place.built.build:
        text += f" {place.built.build[:1].upper()}{place.built.build[1:].rstrip('.')}."
    return text


def _allowance(place: ToldPlace) -> float | None:
    return place.built.allowance_mm if place.built is not None else None


def _band(name: str, top: float, long: float, colour: str) -> list[str]:
    fill = colour if _COLOUR.fullmatch(colour) else "none"
    short = name if len(name) <= _LONGEST else f"{name[: _LONGEST - 1]}…"
    return [
        f"<g><title>{escape(name)}</title>",
        f'<text x="0" y="{top + 11:g}">{escape(short)}</text>',
        (
            f'<rect x="{_LEFT:g}" y="{top + 2:g}" width="{long:g}" height="11" fill="{fill}" '
            'stroke="currentColor"/></g>'
        ),
    ]


def _stitching(bottom: float, beyond: float, said: str) -> list[str]:
    at, end = _LEFT + _CLOTH, _LEFT + _CLOTH + beyond
    return [
        (
            f'<path d="M{at:g} {_TOP - 4:g}V{bottom + 4:g}" stroke="currentColor" stroke-width="2" '
            'stroke-dasharray="4 3"/>'
        ),
        f'<path d="M{at:g} {bottom + 6:g}H{end:g}" stroke="currentColor"/>',
        (
            f'<text x="{end:g}" y="{bottom + 17:g}" text-anchor="end">'
            f"{escape(f'allowance {said}')}</text>"
        ),
    ]
