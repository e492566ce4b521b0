"""Reads "silk look", "faux fur", "imitation leather": the fibre or skin that a cloth is not."""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from advisor.knowledge.model import Knowledge, Mix
from advisor.project.phrases import lexicon
from advisor.project.phrases.grounds import Grounds, find_grounds, names_of, without
from advisor.project.phrases.shares import fibres_at
from advisor.project.phrases.tokens import singulars

_LOOK = singulars(lexicon.LOOK)
_FILMS = frozenset(lexicon.SURFACES.values())
"""What lies on a cloth: a name of it says a look and likens nothing, as in "wet look"."""
_MADE = frozenset(
    {"polyester", "nylon", "acrylic", "modacrylic", "viscose", "polyurethane", "cotton"}
)
"""Fibres that no skin is of."""
_BESIDE = frozenset({"lined", "lining", "backed", "with", "and", "on", "over"})
_BEFORE = lexicon.SHAM | {"art"}
LIKELY: tuple[Mix, ...] = ((("polyester", 100.0),), (("viscose", 100.0),))
"""What a cloth is made of that only looks like a costlier fibre (common practice)."""


class Looks(Struct, frozen=True):
    """The words that are left, the fibres that are only imitated, and what is told of it.

    `likened` are the cloths that it is only said to be like.
    """

    words: list[str]
    fibres: tuple[str, ...] = ()
    mixes: tuple[Mix, ...] = ()
    note: tuple[str, str] = ("", "")
    likened: frozenset[str] = frozenset()

    def grounded(self, grounds: Grounds) -> Grounds:
        """The cloth itself as the ground; what it is like is no ground, but guards it still."""
        real = [entry for entry in grounds.laid if entry not in self.likened]
        if grounds.entry not in self.likened or not real:
            return grounds
        laid = tuple(sorted({grounds.entry, *grounds.laid} - {real[0]}))
        return replace(grounds, entry=real[0], laid=laid)


def take_looks(words: list[str], knowledge: Knowledge) -> Looks:
    """Take the imitated fibre out of a phrase, or the skin for what imitates it."""
    if not any(word in _LOOK for word in words):
        return Looks(_made_up(words, knowledge))
    whole = find_grounds(words, knowledge)
    laid = (n.words for n in names_of(knowledge).wholly(words) if n.entry in _FILMS)
    said = (whole.name, *laid) if whole is not None else ()
    if whole is not None and (
        whole.entry in lexicon.IMITATED.values()
        or not _LOOK.isdisjoint(word for name in said for word in name)
    ):
        return Looks(words)
    bare = [word for word in words if word not in _LOOK]
    skin = _skin_among(bare, knowledge)
    if skin is not None:
        name, entry = skin
        return Looks([*_plain_name_of(entry, knowledge), *without(bare, name)])
    at, fibres, used = _imitated(words, knowledge)
    if not fibres:
        return Looks(bare, likened=_likened(words, knowledge))
    kept = [word for i, word in enumerate(words) if not at <= i < at + used and word not in _LOOK]
    if find_grounds(kept, knowledge) is None:
        kept += words[at : at + used]  # the cloth that is looked like is the ground
    names = " and ".join(knowledge.fibres[fibre].name for fibre in fibres)
    note = (
        f"it only looks like {names}",
        "handled so that polyester, viscose and what the cloth is sold in all bear it",
    )
    return Looks(kept, fibres, LIKELY, note)


def _made_up(words: list[str], knowledge: Knowledge) -> list[str]:
    """The words, with what imitates a skin where no skin is of its fibre: "poly suede".

    What a skin is lined, backed or worn with is another matter.
    """
    grounds = find_grounds(words, knowledge)
    beside = any(word in _BESIDE for word in words)
    if grounds is None or beside or grounds.entry not in lexicon.IMITATED:
        return words
    fibres = {f for at in range(len(words)) for f in fibres_at(words, at, knowledge)[0]}
    if not fibres & _MADE:
        return words
    return [
        *_plain_name_of(lexicon.IMITATED[grounds.entry], knowledge),
        *without(words, grounds.name),
    ]


def _plain_name_of(entry: str, knowledge: Knowledge) -> tuple[str, ...]:
    """A name of a cloth that no other cloth's name in the phrase can hide."""
    names = [name for name in names_of(knowledge).all if name.entry == entry]
    return max(names, key=lambda name: (name.strong, -len(name.words))).words


def _skin_among(words: list[str], knowledge: Knowledge) -> tuple[tuple[str, ...], str] | None:
    grounds = find_grounds(words, knowledge)
    if grounds is None:
        return None
    if grounds.entry in lexicon.IMITATED:
        return grounds.name, lexicon.IMITATED[grounds.entry]
    # "leather look jersey" is a jersey with a face like leather.
    skins = [n for n in names_of(knowledge).all if n.entry in lexicon.IMITATED]
    said = [n for n in skins if set(n.words) <= set(words)]
    name = max(said, key=lambda n: len(n.words), default=None)
    return (name.words, lexicon.IMITATED[name.entry]) if name else None


def _likened(words: list[str], knowledge: Knowledge) -> frozenset[str]:
    """The cloths named right before "look" or "feel": a "scuba with neoprene feel" is a scuba."""
    before = [words[:at] for at, word in enumerate(words) if word in _LOOK]
    return frozenset(
        name.entry
        for name in names_of(knowledge).all
        for said in before
        if name.cloth and tuple(said[-len(name.words) :]) == name.words
    )


def _imitated(words: list[str], knowledge: Knowledge) -> tuple[int, tuple[str, ...], int]:
    """Where the fibre stands that is imitated: behind "faux", or before "look"."""
    for i, word in enumerate(words):
        if word in _BEFORE and i + 1 < len(words):
            fibres, used = fibres_at(words, i + 1, knowledge)
            if fibres:
                return i + 1, fibres, used
        elif word in _LOOK and i:
            fibres, used = fibres_at(words, i - 1, knowledge)
            if fibres:
                return i - 1, fibres, used
    return 0, (), 0
