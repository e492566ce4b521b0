"""What is drawn together and hangs out at a place: a cord in its channel, a lacing, ties."""

from __future__ import annotations

from typing import Final

from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.waisttabs import is_tied

HANGS_OUT: Final = frozenset({"ties", "ribbon"})
"""Kinds of place that may be ties, if they are called so."""
LACED: Final = "lacing"
"""The kind of place that a cord goes through, also where the project names none."""
CORDS: Final = ("drawcord", "lacing-cord", "cord-lock")
"""Notions that say of their place that a cord runs in it: a cord before the lock on it."""


def drawn_by(seam: Seam, garment: Garment, knowledge: Knowledge) -> tuple[str, str]:
    """What is drawn in or tied at a place, and why it counts as a cord; two "" where nothing is."""
    names = sorted(seam.cloths())  # the same cord, whichever way the stack lies
    entries = {name: knowledge.entries[garment.cloths[name].entry] for name in names}
    cords = (name for id_ in CORDS for name, entry in entries.items() if entry.id == id_)
    if cord := next(cords, ""):
        return cord, f"The project puts {cord} here."
    if seam.place == LACED:
        return seam.name, "It is laced."
    if seam.place not in HANGS_OUT or not is_tied(f"{seam.name} {seam.fastening}"):
        return "", ""
    bought = (name for name, entry in entries.items() if entry.kind != "cloth")
    return next(bought, seam.name), "It is tied."
