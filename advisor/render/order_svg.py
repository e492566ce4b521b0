"""The order of work as a line: a sign for each step, and a stroke where the set-up changes.

A square is sewn on a machine, a triangle is pressed, a circle is done by hand; what is done is
filled. The same stands in words in its description.
"""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from advisor.answer.model.order import ToldStep

_NAMESPACE = "http://www.w3.org/2000/svg"
_STEP, _ROW, _MANY = 22.0, 34.0, 16
KEY = (
    "Square: at a machine. Triangle: at the iron. Circle: by hand. Filled: done. Upright stroke: "
    "the set-up changes there. Double line: something is left half-done, so do not stop there."
)


def order_svg(steps: Sequence[ToldStep]) -> str:
    """The line of the order, in rows that fit a narrow screen."""
    rows = (len(steps) + _MANY - 1) // _MANY or 1
    width, height = _STEP * _MANY, _ROW * rows
    parts = [
        (
            f'<svg xmlns="{_NAMESPACE}" viewBox="-3 0 {width + 6:g} {height:g}" role="img" '
            'class="order" font-size="8">'
        ),
        f"<title>The order of work as a line</title><desc>{escape(order_words(steps))}</desc>",
    ]
    for i, step in enumerate(steps):
        parts += _sign(step, i, last=i == len(steps) - 1)
    return "".join([*parts, "</svg>"])


def order_words(steps: Sequence[ToldStep]) -> str:
    """The line in words: how many of which kind, where the set-up changes, where to stop."""
    kinds = [_kind(step) for step in steps]
    done = sum(step.done for step in steps)
    changes = [str(step.number) for step in steps if step.change]
    many = f"{len(steps)} steps"
    many += f", {done} done" if done else ""
    told = (
        f"{kinds.count('machine')} at a machine, {kinds.count('iron')} at the iron, "
        f"{kinds.count('hand')} by hand"
    )
    changed = f" The set-up changes before {', '.join(changes)}." if changes else ""
    half = [str(step.number) for step in steps if not step.stop]
    stuck = f" Do not stop after {', '.join(half)}." if half else ""
    return f"{many}: {told}.{changed}{stuck}"


def _kind(step: ToldStep) -> str:
    if step.machine is not None:
        return "machine"
    return "iron" if step.iron is not None else "hand"


def _sign(step: ToldStep, i: int, *, last: bool) -> list[str]:
    row, column = divmod(i, _MANY)
    x, y = _STEP * column + _STEP / 2, _ROW * row + 16
    fill = "currentColor" if step.done else "none"
    pen = f'fill="{fill}" stroke="currentColor"'
    shapes = {
        "machine": f'<rect x="{x - 5:g}" y="{y - 5:g}" width="10" height="10" {pen}/>',
        "iron": f'<path d="M{x - 6:g} {y + 5:g}h12l-6-11z" {pen}/>',
        "hand": f'<circle cx="{x:g}" cy="{y:g}" r="5" {pen}/>',
    }
    parts = [f"<g><title>{escape(f'{i + 1}. {step.does}')}</title>", shapes[_kind(step)]]
    if column < _MANY - 1 and not last:
        parts += [_link(x, y + by) for by in ((0.0,) if step.stop else (-1.5, 1.5))]
    if step.change:
        at = f"M{x - _STEP / 2:g} {y - 11:g}v22"
        parts.append(f'<path d="{at}" stroke="currentColor" stroke-width="2"/>')
    number = f'<text x="{x:g}" y="{y + 15:g}" text-anchor="middle">{i + 1}</text></g>'
    return [*parts, number]


def _link(x: float, y: float) -> str:
    return f'<path d="M{x + 7:g} {y:g}h{_STEP - 14:g}" stroke="currentColor"/>'
