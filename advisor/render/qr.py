"""A text that a phone's camera reads: as a drawing for the page, as blocks for a terminal."""

from __future__ import annotations

from html import escape
from itertools import groupby

_NAMESPACE = "http://www.w3.org/2000/svg"
_QUIET = 4
"""The empty margin of so many modules that ISO/IEC 18004 asks for."""
_HALVES = {(0, 0): "█", (0, 1): "▀", (1, 0): "▄", (1, 1): " "}


def qr_svg(text: str, title: str) -> str:
    """The text as a picture, always dark on white, which is what a camera wants."""
    rows = _rows(text)
    size = len(rows)
    path = "".join(
        f"M{x} {y}h{wide}v1h-{wide}z" for y, row in enumerate(rows) for x, wide in _runs(row)
    )
    return (
        f'<svg xmlns="{_NAMESPACE}" viewBox="0 0 {size} {size}" role="img" class="qr" '
        'shape-rendering="crispEdges">'
        f"<title>{escape(title)}</title><desc>{escape(text)}</desc>"
        f'<rect width="{size}" height="{size}" fill="#fff"/><path d="{path}" fill="#000"/></svg>'
    )


def qr_text(text: str) -> str:
    """The text as half blocks, for light letters on a dark terminal."""
    rows = _rows(text)
    if len(rows) % 2:
        rows.append([0] * len(rows))
    pairs = zip(rows[::2], rows[1::2], strict=True)
    return "\n".join("".join(_HALVES[pair] for pair in zip(*two, strict=True)) for two in pairs)


def grouped(code: str) -> str:
    """A code in two halves, as it is read aloud."""
    return f"{code[:4]}-{code[4:]}" if code else ""


def _rows(text: str) -> list[list[int]]:
    """The modules, 1 for dark, with their margin."""
    import segno

    found = segno.make(text, error="m", micro=False)
    return [[int(bool(module)) for module in row] for row in found.matrix_iter(border=_QUIET)]


def _runs(row: list[int]) -> list[tuple[int, int]]:
    """Where dark modules begin in a row, and how many lie together."""
    found, x = [], 0
    for dark, run in groupby(row):
        wide = len(list(run))
        if dark:
            found.append((x, wide))
        x += wide
    return found
