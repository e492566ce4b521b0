"""What each seam is in the garment: its kind, told by its name, and which seams it crosses.

A name says what a maker means better than any fact of the seam, so the words of the kinds are
looked for in it, in the order of the knowledge; a project may say `kind:` instead, name the
panels that a seam joins, and the seams that it crosses.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from advisor.knowledge.model import Entry, Knowledge
from advisor.knowledge.ordering import SeamKind
from advisor.project.garment import Garment, Seam

Unit = Literal["shell", "lining", "both"]
HALVES = frozenset({"front", "back"})
"""Words of a name that say on which half of the garment a seam lies."""
FASTENERS = ("button", "hook-and-loop")
GATHERED = 1.1
"""The fullness from which an edge is gathered and not only eased: estimate."""


@dataclass(frozen=True, slots=True)
class SeamPlace:
    """A seam with its kind and the part of the garment that it belongs to.

    `cloths` leaves the notions out; `panels` and `crosses` are None where nobody said them.
    """

    seam: Seam
    kind: SeamKind
    unit: Unit
    cloths: tuple[str, ...]
    notions: tuple[str, ...]
    panels: frozenset[str] | None
    crosses: frozenset[str] | None

    @property
    def name(self) -> str:
        """The name of the seam."""
        return self.seam.name

    @property
    def binds(self) -> bool:
        """Whether it sews a strip over an edge, at the neck or elsewhere."""
        neck = self.kind.id == "neckband" and "binding" in _words(self.name)
        return self.kind.id == "binding" or neck

    def said(self, fact: str) -> str:
        """What the project says of a fact of the seam; empty where it does not."""
        return str(self.seam.facts.get(fact, ""))

    @property
    def full(self) -> tuple[str, ...]:
        """The cloths that are gathered or pleated into it."""
        uses = [use.cloth for use in self.seam.uses if use.fullness > GATHERED]
        return tuple(dict.fromkeys(uses))


def seam_places(garment: Garment, knowledge: Knowledge) -> tuple[SeamPlace, ...]:
    """Every seam of a garment with what it is."""
    return tuple(_place(seam, garment, knowledge) for seam in garment.seams)


def crosses(later: SeamPlace, earlier: SeamPlace) -> bool:
    """Whether one seam runs over the end of another, as the project says or the kinds have it."""
    if later.name == earlier.name:
        return False
    if later.crosses is not None:
        return earlier.name in later.crosses
    if earlier.kind.id not in later.kind.crosses or not same_unit(later, earlier):
        return False
    return _share_panels(later, earlier)


def related(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether two seams lie on the same pieces, as far as anybody can tell."""
    if one.name == other.name or not same_unit(one, other) or not _share_panels(one, other):
        return False
    said = one.panels is not None and other.panels is not None
    return said or bool(set(one.cloths) & set(other.cloths))


def same_unit(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether both belong to the shell, or both to the lining; a mixed seam belongs to both."""
    return one.unit == other.unit or "both" in (one.unit, other.unit)


def _share_panels(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether two seams may lie on one piece, by their panels or by front and back in names."""
    if one.panels is not None and other.panels is not None:
        return bool(one.panels & other.panels)
    ours, theirs = (HALVES & set(_words(place.name)) for place in (one, other))
    return not ours or not theirs or bool(ours & theirs)


def _place(seam: Seam, garment: Garment, knowledge: Knowledge) -> SeamPlace:
    entries = {name: knowledge.entries[garment.cloths[name].entry] for name in seam.cloths()}
    cloths = tuple(name for name, entry in entries.items() if entry.kind == "cloth")
    notions = tuple(name for name, entry in entries.items() if entry.kind != "cloth")
    unit = _unit(seam, {name: entries[name] for name in cloths})
    kinds = knowledge.order.kinds
    wished = garment.wishes.kinds.get(seam.name)
    kind = kinds[wished] if wished in kinds else _guess(seam, unit, entries.values(), kinds)
    panels = garment.wishes.joins.get(seam.name)
    said = seam.making.crosses
    return SeamPlace(
        seam,
        kind,
        unit,
        cloths,
        notions,
        frozenset(panels) if panels else None,
        frozenset(said) if said else None,
    )


def _unit(seam: Seam, cloths: dict[str, Entry]) -> Unit:
    lined = [
        name
        for name, entry in cloths.items()
        if entry.family == "linings" or "lining" in _words(name)
    ]
    if _words(seam.name)[:1] == ("lining",) or (lined and len(lined) == len(cloths)):
        return "lining"
    return "both" if lined else "shell"


def _guess(
    seam: Seam, unit: Unit, entries: Iterable[Entry], kinds: dict[str, SeamKind]
) -> SeamKind:
    about = list(entries)
    cloths = [entry for entry in about if entry.kind == "cloth"]
    words = _words(seam.name)
    if unit == "lining" and words[:1] == ("lining",):
        words = words[1:]
    found = next((k for k in kinds.values() if any(_holds(words, w) for w in k.words)), None)
    hemmed = found is not None and found.op == "hem"
    if seam.facts.get("edge") == "hem" and len(seam.cloths()) == 1 and not hemmed:
        found = kinds.get("hem", found)  # said outright; a name only hints
    if len(cloths) == 1 and any(entry.kind in FASTENERS for entry in about):
        return kinds.get("fastening", kinds["plain"])  # a part of it lies on the one cloth
    if any(entry.id == "boning" for entry in about):
        found = found or kinds.get("bone-channel")
    if any(entry.kind == "zip" for entry in about):
        hidden = any("concealed" in entry.id for entry in about)
        found = kinds.get("concealed-zip" if hidden else "zip", found)
    if found is None and unit == "both" and "lining" in words:
        found = kinds.get("set-lining")
    return found or kinds.get(_by_shape(seam, about)) or kinds["plain"]


def _by_shape(seam: Seam, entries: list[Entry]) -> str:
    """A kind for a name that says nothing."""
    edge = seam.facts.get("edge")
    if edge == "hem":
        return "hem"
    if any(use.fullness > GATHERED for use in seam.uses):
        return "tier"
    if any(entry.kind in FASTENERS for entry in entries):
        return "fastening"
    return "facing" if edge == "turned" else "plain"


def _words(name: str) -> tuple[str, ...]:
    plain = "".join(c if c.isalnum() else " " for c in name.casefold())
    return tuple(_single(word) for word in plain.split() if not word.isdigit())


def _single(word: str) -> str:
    """A plural as one of it, as far as sewing words need it."""
    if len(word) > 3 and word.endswith("s") and not word.endswith("ss"):
        return word[:-1]
    return word


def _holds(words: tuple[str, ...], phrase: str) -> bool:
    wanted = _words(phrase)
    return any(words[i : i + len(wanted)] == wanted for i in range(len(words)))
