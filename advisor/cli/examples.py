"""What may be typed, a few lines for each command, told at the end of its help."""

from __future__ import annotations

from collections.abc import Mapping

EXAMPLES: Mapping[str, tuple[str, ...]] = {
    "ask": (
        'ask "nylon organza" "linen suiting"',
        'ask "silk chiffon, satin lining" --more',
    ),
    "explain": (
        "explain velvet",
        "explain words",
        'explain "Hong Kong"',
    ),
    "fabrics": (
        "fabrics sheer",
        "fabrics wool",
    ),
    "why": (
        'why coat.yaml "hem frill" iron',
        "why coat.yaml shell grain",
        "why coat.yaml 21 order",
    ),
    "quote": (
        "quote coat.yaml",
        "quote coat.yaml --customer",
        "quote coat.yaml --html quote.html",
    ),
    "order": (
        "order coat.yaml",
        'order coat.yaml --tick 21 --tick "press side"',
        "order coat.yaml --sitting 90min",
    ),
    "sheet": (
        "sheet coat.yaml",
        "sheet coat.yaml --html coat.html",
        "sheet coat.yaml --only shopping",
    ),
    "iron": (
        'iron "wool crepe" "acetate lining"',
        "iron coat.yaml",
        'iron coat.yaml "hem frill"',
    ),
    "check": (
        "check coat.yaml",
        "check coat.yaml --take 1",
    ),
    "label": ("label coat.yaml --market eu",),
    "start": ("start coat.yaml", "start dress.yaml --like lined-dress"),
    "identify": ("identify",),
    "example": (
        "example",
        "example bandstand-jacket",
    ),
    "schema": ("schema project",),
    "page": ("page",),
    "manual": (
        "manual",
        "manual --man > advisor.1",
    ),
}
"""Lines that work as typed beside a project called coat.yaml."""


def examples(command: str) -> str:
    """The end of a command's help."""
    return "Examples: " + "; ".join(f"advisor {line}" for line in EXAMPLES[command])
