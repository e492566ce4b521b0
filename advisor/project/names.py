"""What may be a name in a project, and how many things a project may hold.

The bounds are estimates: far beyond any garment, and small enough to answer at once.
"""

from __future__ import annotations

LONGEST_NAME = 80
LONGEST_PHRASE = 200
MOST_FABRICS = 60
MOST_LAYERS = 12
MOST_SEAMS = 200
MOST_IN_ALL = 800
"""Layers of all places together: so many are answered within half a minute."""
MOST_PIECES = 300
MOST_TIERS = 8


def tidy_name(text: str, longest: int = LONGEST_NAME) -> str:
    """A name: some printable text on one line, spaces made single.

    Raises:
        ValueError: saying what is wrong with it.
    """
    tidy = " ".join(text.split())
    if not tidy:
        raise ValueError("must not be empty")
    if len(tidy) > longest:
        raise ValueError(f"is too long: at most {longest} letters")
    if not tidy.isprintable():
        raise ValueError("holds a character that cannot be printed")
    return tidy
