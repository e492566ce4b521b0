"""What stands beside a cloth's name and changes it: its back, a fibre on no file, "knit"."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.knowledge.model import Entry, Knowledge
from advisor.project.phrases.composition import Note
from advisor.project.phrases.grounds import LAID_FIRST, Grounds, names_of
from advisor.project.phrases.lexicon import KNIT_FAMILIES, PATTERNS, UNFILED_FIBRES
from advisor.project.phrases.shares import fibres_at
from advisor.project.phrases.tokens import singulars

_BACKED = (["backed"], ["back"])
_KNIT = frozenset({"knit", "knitted"})
_DRAWN = singulars(PATTERNS)


def take_backing(words: list[str], knowledge: Knowledge) -> tuple[list[str], tuple[str, ...]]:
    """The words without "cotton backed", and the fibre that the cloth has on its back.

    Its face may be of anything that the cloth is sold in, so the fibre names neither the cloth
    ("cotton satin" is another) nor what it is all of.
    """
    if not any([word] in _BACKED for word in words):
        return words, ()
    names = names_of(knowledge).whole
    for at in range(len(words) - 1):
        fibres, used = fibres_at(words, at, knowledge)
        behind = at + used
        if not fibres or words[behind : behind + 1] not in _BACKED:
            continue
        if not any(tuple(words[at : behind + more]) in names for more in (1, 2)):
            return words[:at] + words[behind + 1 :], fibres
    return words, ()


def take_unfiled(words: list[str]) -> tuple[list[str], tuple[Note, ...]]:
    """The words without the fibres that no file here has, each with what follows from it.

    A "banana print" is no fibre, and "banana silk" is no silk.
    """
    if any(word in _DRAWN for word in words):
        return words, ()
    found = [word for word in dict.fromkeys(words) if word in UNFILED_FIBRES]
    notes = tuple(
        (f"'{word}' is a fibre that is not on file", "treated as one that nobody knows")
        for word in found
    )
    so_called = {
        at + 1 for at, word in enumerate(words) if word in found and words[at + 1 :][:1] == ["silk"]
    }
    kept = [word for at, word in enumerate(words) if at not in so_called and word not in found]
    return kept, notes


def as_knit(
    grounds: Grounds, words: list[str], knowledge: Knowledge
) -> tuple[Grounds, tuple[Note, ...]]:
    """The knit that a woven cloth's name is said of: "ottoman knit" is a knit with such a face."""
    entry = knowledge.entries[grounds.entry]
    if not _is_ground(entry) or not any(word in _KNIT for word in grounds.left):
        return grounds, ()
    fibres = [fibre for at in range(len(words)) for fibre in fibres_at(words, at, knowledge)[0]]
    knit = next((KNIT_FAMILIES[f] for f in fibres if f in KNIT_FAMILIES), KNIT_FAMILIES[""])
    knit_name = knowledge.entries[knit].name
    said = f"{entry.name} is a woven cloth, and a knit is asked for"
    note = (said, f"taken as {knit_name}, and guarded as {entry.name} too")
    return replace(grounds, entry=knit, laid=tuple(sorted({*grounds.laid, entry.id}))), (note,)


def names_a_knit(entry: Entry, knit: Entry) -> bool:
    """Whether a cloth only lends its name to a knit: nothing of its own is laid on it.

    Whoever says what the knit is made of has said it of the whole.
    """
    return knit.structure == "knit" and _is_ground(entry)


def _is_ground(entry: Entry) -> bool:
    return (
        entry.kind == "cloth"
        and entry.structure == "woven"
        and entry.family not in {*LAID_FIRST, "piles"}
    )
