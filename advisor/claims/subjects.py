"""What is true of one layer: its traits, fibres and measures, ready to be asked.

Every answer has three values, because a fibre may be unknown: it is so for every candidate, for
some, or for none.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import IntEnum
from typing import Any

from msgspec import Struct

from advisor.knowledge.model import Entry, Fibre, Knowledge, Mix
from advisor.project.garment import Cloth, Use
from advisor.project.mainfibre import vouched_for


class Truth(IntEnum):
    """Ordered so that `all` is the least and `any` the greatest."""

    NO = 0
    MAYBE = 1
    YES = 2


class Subject(Struct):
    """A cloth, as used in one place."""

    cloth: Cloth
    entry: Entry
    levels: dict[str, tuple[int, int]]
    words: dict[str, str]
    numbers: dict[str, tuple[float, float]]
    fibres: tuple[tuple[Fibre, float | None], ...]

    @property
    def name(self) -> str:
        """The maker's name for the cloth."""
        return self.cloth.name


def subject_of(cloth: Cloth, use: Use | None, knowledge: Knowledge) -> Subject:
    """Everything that can be asked of a cloth in a place.

    Args:
        cloth: the cloth.
        use: how it goes into a seam; None for the cloth by itself.
        knowledge: where its entry and fibres are looked up.
    """
    entry = knowledge.entries[cloth.entry]
    numbers: dict[str, tuple[float, float]] = {}
    if cloth.weight:
        numbers["weight"] = cloth.weight
    if cloth.thickness:
        numbers["thickness"] = cloth.thickness
    fullness, stretched = (use.fullness, use.stretched) if use else (1.0, 1.0)
    numbers["fullness"] = (fullness, fullness)
    numbers["stretched"] = (stretched, stretched)
    words = {
        "structure": entry.structure,
        "weave": entry.weave,
        "family": entry.family,
        "fabric": entry.id,
        "notion": entry.id if entry.kind != "cloth" else "",
        "kind": entry.kind,
        "shade": cloth.shade,
        "care": cloth.care,
        "fibre known": "yes" if cloth.fibre_known else "no",
        "main fibre known": "yes" if vouched_for(cloth) else "no",
        "detachable": "yes" if cloth.detachable else "no",
        "unwashed": "yes" if cloth.unwashed else "no",
        "trims": "yes" if cloth.trims else "no",
    }
    return Subject(
        cloth,
        entry,
        _levels(cloth, entry, knowledge),
        words,
        numbers,
        tuple((knowledge.fibres[f], s) for mix in cloth.mixes for f, s in mix),
    )


def _levels(cloth: Cloth, entry: Entry, knowledge: Knowledge) -> dict[str, tuple[int, int]]:
    """Lowest and highest possible level of each trait: the cloth's own, raised by its fibres."""
    levels = dict(entry.traits)
    per_mix = [_fibre_levels(mix, knowledge) for mix in cloth.mixes]
    for name in {trait for mix in per_mix for trait in mix}:
        low, high = levels.get(name, (0, 0))
        given = [mix.get(name, 0) for mix in per_mix]
        levels[name] = (max(low, min(given)), max(high, *given))
    levels.update(cloth.traits)
    return levels


def _fibre_levels(mix: Mix, knowledge: Knowledge) -> dict[str, int]:
    levels: dict[str, int] = {}
    for fibre, _ in mix:
        for trait, level in knowledge.fibres[fibre].traits.items():
            levels[trait] = max(level, levels.get(trait, 0))
    return levels


def has_fibre(subject: Subject, ids: list[str], how: str) -> Truth:
    """Whether the cloth has any of some fibres, is mostly of them, or of nothing else."""
    answers = [_mix_has(mix, ids, how) for mix in subject.cloth.mixes]
    if min(answers) == max(answers):
        return answers[0]
    return Truth.MAYBE


def _mix_has(mix: Mix, ids: list[str], how: str) -> Truth:
    inside = [(fibre, share) for fibre, share in mix if fibre in ids]
    if how == "any":
        return Truth.YES if inside else Truth.NO
    if len(inside) == len(mix):
        return Truth.YES
    if how == "only" or not inside:
        return Truth.NO
    if any(share is None for _, share in mix):
        return Truth.MAYBE
    return Truth.YES if sum(share or 0.0 for _, share in inside) >= 50 else Truth.NO


def of_several(words: Sequence[str], wanted: list[str]) -> Truth:
    """Whether a cloth of several shades is of those that are asked: part of it may be."""
    answers = {Truth.YES if word in wanted else Truth.NO for word in words}
    return answers.pop() if len(answers) == 1 else Truth.MAYBE


def has_group(subject: Subject, groups: list[str], knowledge_fibres: dict[str, Fibre]) -> Truth:
    """Whether any share of the cloth belongs to one of some fibre groups."""
    answers = [
        Truth.YES if any(knowledge_fibres[f].group in groups for f, _ in mix) else Truth.NO
        for mix in subject.cloth.mixes
    ]
    return answers[0] if min(answers) == max(answers) else Truth.MAYBE


def in_number(span: tuple[float, float] | None, test: list[Any]) -> Truth:
    """Whether a measure passes a test; an assumed span counts by its middle, else as a maybe."""
    if span is None:
        return Truth.MAYBE
    low, high, low_open, high_open = test

    def passes(value: float) -> bool:
        above: bool = value > low if low_open else value >= low
        below: bool = value < high if high_open else value <= high
        return above and below

    if passes((span[0] + span[1]) / 2):
        return Truth.YES
    overlaps = span[1] >= low and span[0] <= high and span[0] != span[1]
    return Truth.MAYBE if overlaps else Truth.NO
