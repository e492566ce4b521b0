"""The commonest cloth of a fibre or a make that was named alone, and the others to choose from."""

from __future__ import annotations

from dataclasses import dataclass

from advisor.knowledge.model import Knowledge
from advisor.project.phrases.composition import Note
from advisor.project.phrases.lexicon import FAMILIES, KNIT_FAMILIES

_KNIT = frozenset({"knit", "knitted"})
_OTHERS = 4
_MESH = "mesh"
_SPOKEN = {
    "swimwear": "swim-knit",
    "swimsuit": "swim-knit",
    "legging": "swim-knit",
    "activewear": "swim-knit",
    "shirt": "poplin",
    "suit": "suiting",
    "coat": "coating",
    "veil": "tulle",
    "veiling": "tulle",
    "yoga": "swim-knit",
    "raincoat": "showerproof",
    "scrub": "poplin",
    "stretch": "stretch-woven",
    "pocketing": "poplin",
    "jogging": "sweatshirt-knit",
    "compression": "swim-knit",
    "cycling": "swim-knit",
    "rash": "swim-knit",
    "awning": "canvas",
    "sharkskin": "suiting",
    "tent": "showerproof",
    "umbrella": "showerproof",
    "batik": "poplin",
    "ikat": "poplin",
    "khadi": "poplin",
    "kasuri": "poplin",
}
"""Words that name a whole family of cloths (common practice)."""


@dataclass(frozen=True, slots=True)
class FamilyPick:
    """The cloth that was taken, and the sentence that says so."""

    entry: str
    note: Note


def family_of(words: list[str], fibres: tuple[str, ...], knowledge: Knowledge) -> FamilyPick | None:
    """The cloth that a fibre or a make alone is taken for; None where nothing says which."""
    knit = any(word in _KNIT for word in words)
    spoken = next((entry for word, entry in _SPOKEN.items() if word in words), None)
    fibre = next((f for f in FAMILIES if f in fibres), None)
    if fibre is None and not knit and spoken is None:
        return None
    if knit:
        entry = KNIT_FAMILIES.get(fibre or "", KNIT_FAMILIES[""])
    else:
        entry = spoken if fibre is None and spoken else FAMILIES[fibre or ""]
    if entry not in knowledge.entries:
        return None
    said = " ".join(words)
    others = _others(entry, fibre, knowledge)
    effect = f"taken as {knowledge.entries[entry].name}, the commonest"
    if others:
        effect += f"; others are {', '.join(others)}"
    return FamilyPick(entry, (f"'{said}' names no one cloth", effect))


def _others(entry: str, fibre: str | None, knowledge: Knowledge) -> list[str]:
    if fibre is None:
        family = knowledge.entries[entry].family
        return [e.name for e in knowledge.fabrics() if e.family == family and e.id != entry][
            :_OTHERS
        ]
    sold = [e for e in knowledge.fabrics() if e.id != entry and e.mixes[0][0][0] == fibre]
    return [e.name for e in sold][:_OTHERS]
