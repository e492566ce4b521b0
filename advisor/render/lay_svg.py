"""The lay of the pieces on a cloth, to scale: the cloth lies along the picture, grain with it.

Every outline bears the number of its line in the list that says the same in words.
"""

from __future__ import annotations

from html import escape

from advisor.answer.model.making import ToldCloth, ToldLaid, ToldLies
from advisor.units import System, show

_NAMESPACE = "http://www.w3.org/2000/svg"
_WIDE, _HIGH, _EDGE, _BELOW = 340.0, 130.0, 15.0, 30.0
_LEAST = 12.0
"""A number needs so much room on each side, in units of the drawing."""


def lay_svg(row: ToldCloth, units: System) -> str:
    """The lay of a cloth; nothing where it cannot be laid out."""
    laid = row.laid
    if laid is None:
        return ""
    scale = min((_WIDE - 4) / laid.length_mm, _HIGH / _across(laid))
    bottom = _EDGE + _across(laid) * scale
    parts = [
        (
            f'<svg xmlns="{_NAMESPACE}" viewBox="-2 0 {_WIDE:g} {bottom + _BELOW:g}" role="img" '
            'class="lay" font-size="11">'
        ),
        f"<title>{escape(f'{row.fabric}: how its pieces are laid')}</title>",
        f"<desc>{escape(lay_words(laid))}</desc>",
    ]
    parts += _cloth(laid, scale)
    for number, lies in enumerate(laid.pieces, 1):
        parts += _piece(number, lies, scale)
    parts += _grain(laid.length_mm * scale, bottom, show("length", laid.length_mm, units), row)
    return "".join([*parts, "</svg>"])


def lay_words(laid: ToldLaid) -> str:
    """The same in words, piece by piece."""
    listed = "; ".join(f"{i}. {lies.text}" for i, lies in enumerate(laid.pieces, 1))
    return f"{laid.text} {listed}."


def _across(laid: ToldLaid) -> float:
    """How much of the cloth's width is drawn, mm: half where it is folded all along."""
    return laid.usable_mm / (2 if all(lies.folded for lies in laid.pieces) else 1)


def _cloth(laid: ToldLaid, scale: float) -> list[str]:
    """The stretches of the cloth, and what its upper edge is."""
    opens = min((x.along_mm[0] for x in laid.pieces if not x.folded), default=laid.length_mm)
    found = []
    stretches = [(0.0, opens, 2), (opens, laid.length_mm, 1)]
    for begin, end, layers in stretches:
        if end <= begin:
            continue
        x, wide, high = begin * scale, (end - begin) * scale, laid.usable_mm / layers * scale
        found.append(
            f'<rect x="{x:.1f}" y="{_EDGE:g}" width="{wide:.1f}" height="{high:.1f}" '
            'fill="none" stroke="currentColor" stroke-width="0.8"/>'
        )
        if layers == 2:
            found.append(
                f'<path d="M{x:.1f} {_EDGE:g}h{wide:.1f}" stroke="currentColor" '
                'stroke-width="3" stroke-dasharray="7 3"/>'
            )
    name = "fold" if laid.pieces[0].folded else "edge"
    return [*found, f'<text x="0" y="{_EDGE - 4:g}">{name}</text>']


def _piece(number: int, lies: ToldLies, scale: float) -> list[str]:
    """The outlines of some pieces that lie together, with their number where there is room."""
    parts = [f"<g><title>{escape(lies.text)}</title>"]
    for outline in lies.outlines_mm:
        corners = [(along * scale, _EDGE + across * scale) for across, along in outline]
        points = " ".join(f"{x:.1f},{y:.1f}" for x, y in corners)
        parts.append(
            f'<polygon points="{points}" fill="currentColor" fill-opacity="0.08" '
            'stroke="currentColor" stroke-width="1.4"/>'
        )
        x = sum(x for x, _ in corners) / len(corners)
        y = sum(y for _, y in corners) / len(corners)
        if min(_size([c[0] for c in corners]), _size([c[1] for c in corners])) >= _LEAST:
            parts.append(f'<text x="{x:.1f}" y="{y + 4:.1f}" text-anchor="middle">{number}</text>')
    return [*parts, "</g>"]


def _size(values: list[float]) -> float:
    return max(values) - min(values)


def _grain(long: float, bottom: float, said: str, row: ToldCloth) -> list[str]:
    """The grain as an arrow along the cloth; with one head where all pieces look one way."""
    y = bottom + 9
    back = "" if row.one_way else f"M6 {y - 4:g}L0 {y:g}L6 {y + 4:g}"
    path = f"M0 {y:g}H{long:.1f}M{long - 6:.1f} {y - 4:g}L{long:.1f} {y:g}L{long - 6:.1f} {y + 4:g}"
    name = "grain, one way" if row.one_way else "grain"
    return [
        f'<path d="{path}{back}" fill="none" stroke="currentColor" stroke-width="1.2"/>',
        f'<text x="0" y="{y + 16:g}">{name}, {escape(said)}</text>',
    ]
