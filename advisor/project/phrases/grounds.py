"""Finds the cloths that a phrase names, whatever the order of its words.

A name counts where all of its words stand in the phrase. The longest name wins, so that "wool
crepe" is that cloth and not any crepe of wool; a name made of nothing but fibres, uses and
qualities ("suiting", "stretch cotton") counts only where no other is there.
"""

from __future__ import annotations

from collections import Counter
from functools import cache, cached_property
from itertools import pairwise
from typing import Any

from msgspec import Struct

from advisor.knowledge.model import Knowledge
from advisor.project.phrases import everyday, lexicon
from advisor.project.phrases.tokens import singulars, words_of
from advisor.project.phrases.weights import WEIGHT_WORDS

TABLE = "spelt names"
"""Where the compiled knowledge holds what `table_of` makes of it."""
LAID_FIRST = frozenset({"embellished", "layered", "coated", "pleated"})
"""Families of cloths whose make, not their ground, decides how they are handled."""


class Name(Struct, frozen=True):
    """A name of the knowledge as words.

    `strong` when it holds a word that only a cloth has; `ways` when it only says how a
    cloth stretches.
    """

    entry: str
    words: tuple[str, ...]
    strong: bool
    ways: bool = False
    cloth: bool = True


class Grounds(Struct, frozen=True):
    """The cloth that a phrase names, further cloths laid on it or named beside it, and the rest."""

    entry: str
    laid: tuple[str, ...]
    name: tuple[str, ...]
    left: tuple[str, ...]


class Names:
    """The names of the knowledge, ready to be looked for in a phrase."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        kept = _kept(knowledge) or table_of(knowledge)
        self.fibre_words = frozenset(kept["fibre words"])
        self.weak = self.fibre_words | general_words()
        self.all = [Name(row[0], tuple(row[1].split()), *row[2:]) for row in kept["names"]]
        self.words = frozenset(word for name in self.all for word in name.words)
        self.whole = frozenset(name.words for name in self.all)
        self.by_word: dict[str, list[Name]] = {}
        for name in self.all:
            self.by_word.setdefault(name.words[0], []).append(name)

    def best(self, words: list[str], *, strong: bool) -> Name | None:
        """The longest name all of whose words are among some; the same for any order of them."""
        have = Counter(words)
        found = [
            name
            for word in have
            for name in self.by_word.get(word, ())
            if name.strong is strong
            and not Counter(name.words) - have
            and (name.cloth or _together(name.words, words))
            and (strong or not _idle(name.words) or _adjoining(name.words, words))
            and not self._taken(name, words)
        ]
        cloths = [name for name in found if name.cloth]
        if cloths:  # a thread beside a cloth is in it
            entries = self.knowledge.entries
            named = {word for name in cloths for word in name.words} - self.weak
            found = [
                name
                for name in found
                if name.cloth
                or (
                    (entries[name.entry].kind != "thread" or named <= set(name.words))
                    and _is_head(name.words, words, named)
                )
            ]
            heads = [name for name in found if not name.cloth]
            found = [n for n in found if not any(self._within(n, head, words) for head in heads)]
        return max(found, key=lambda name: self._key(name, words)) if found else None

    def _taken(self, name: Name, words: list[str]) -> bool:
        """Whether a fibre in a name belongs to another cloth, which stands right behind it.

        "cotton coutil with a satin face" is no cotton satin.
        """
        parts = set(name.words)
        fibres = parts & self.fibre_words
        if not fibres or fibres == parts or _adjoining(name.words, words):
            return False
        return any(
            word in fibres
            and behind not in parts
            and (behind,) in self.whole
            and behind not in self.weak
            for word, behind in pairwise(words)
        )

    def _within(self, cloth: Name, notion: Name, words: list[str]) -> bool:
        """Whether a cloth's name only lends a word to a notion's: "cotton twill tape" is no twill,
        and "velvet piping cord" no velvet cord.
        """
        own, said = set(cloth.words) - self.weak, set(notion.words)
        if not cloth.cloth or not own & said:
            return False
        if own <= said and notion.words[-1] not in own:
            return len(said) > 1
        at = sorted(words.index(word) for word in cloth.words)
        between = {*words[at[0] : at[-1]]} - set(cloth.words)
        return bool(between) and between <= said

    def rivals(self, grounds: Grounds) -> tuple[str, ...]:
        """Other cloths whose name the same words hold as well, sharing some with the one taken."""
        have = Counter((*grounds.name, *grounds.left))
        taken, entries = set(grounds.name), {grounds.entry, *grounds.laid}
        found = (
            name.entry
            for word in have
            for name in self.by_word.get(word, ())
            if name.cloth
            and not Counter(name.words) - have
            and taken & set(name.words)
            and set(name.words) - taken
        )
        return tuple(dict.fromkeys(entry for entry in found if entry not in entries))

    def wholly(self, words: list[str]) -> list[Name]:
        """The names of cloths that are all there: "wet look cloth" behind "denim"."""
        have = Counter(words)
        named = (name for word in have for name in self.by_word.get(word, ()) if name.cloth)
        return [name for name in named if not Counter(name.words) - have]

    def crossing(self, grounds: Grounds) -> tuple[Name, ...]:
        """Whole names that share a word with the one taken, and alone have a word that is left.

        "corded chantilly lace" is chantilly lace, and corded lace too.
        """
        strange = {word for word in grounds.left if word in self.words} - self.weak
        have = Counter((*grounds.name, *grounds.left))
        return tuple(
            name
            for name in (self.all if strange else ())
            if name.cloth and strange & set(name.words) and not Counter(name.words) - have
        )

    def only_of(self, entries: set[str]) -> frozenset[str]:
        """The words that stand in names of some cloths and in no other's: they say nothing more."""
        mine = {word for entry in entries for word in self.of_one(entry)} - self.weak
        return frozenset(word for word in mine if self._named_by[word] <= entries)

    def of_one(self, entry: str) -> frozenset[str]:
        """Every word of the names of one entry: beside one of them the others say nothing more."""
        return frozenset(self._of_entry.get(entry, ()))

    @cached_property
    def _of_entry(self) -> dict[str, set[str]]:
        """The words of all names of an entry."""
        found: dict[str, set[str]] = {}
        for name in self.all:
            found.setdefault(name.entry, set()).update(name.words)
        return found

    @cached_property
    def _named_by(self) -> dict[str, set[str]]:
        """The entries that have a word in some name."""
        found: dict[str, set[str]] = {}
        for entry, words in self._of_entry.items():
            for word in words:
                found.setdefault(word, set()).add(entry)
        return found

    def also_said(self, entries: set[str], words: list[str]) -> frozenset[str]:
        """The words of every further name of some cloths that a phrase holds as a whole."""
        have = Counter(words)
        said = [n for n in self.all if n.entry in entries and not Counter(n.words) - have]
        alone = {name.words[0] for name in said if len(name.words) == 1}
        return frozenset(w for n in said for w in n.words if w in alone or w not in self.weak)

    def _key(
        self, name: Name, words: list[str]
    ) -> tuple[bool, int, int, bool, int, bool, float, str]:
        """How much a name counts for; of two that only say a use or a look, the last does."""
        entry = self.knowledge.entries[name.entry]
        weight = entry.weight[0] if entry.weight else 0.0
        return (
            not name.ways,
            sum(word not in (_USE_WORDS if name.strong else _IDLE) for word in name.words),
            len(name.words),
            name.words == tuple(words),
            0 if name.strong else max(words.index(word) for word in name.words),
            entry.kind == "cloth",
            -weight,
            name.entry,
        )


def _kept(knowledge: Knowledge) -> dict[str, list[Any]] | None:
    """What the compiled knowledge holds of these very names; of others, as one more, nothing."""
    plain = knowledge.plain
    of_names = plain.get("names") is knowledge.names
    return plain.get(TABLE) if of_names and plain["fibre_names"] is knowledge.fibre_names else None


def table_of(knowledge: Knowledge) -> dict[str, list[Any]]:
    """The names as plain data, for the cache of the knowledge: to spell them all takes long."""
    fibre_words = (
        frozenset(
            word for name in knowledge.fibre_names for word in words_of(name) if not word.isdigit()
        )
        | frozenset(lexicon.FIBRE_WORDS)
        | frozenset(lexicon.BLEND_WORDS)
    )
    weak = fibre_words | general_words()
    rows: list[list[Any]] = []
    seen: set[tuple[str, ...]] = set()
    for text, entry in knowledge.names.items():
        words = tuple(words_of(text))
        cloth = knowledge.kind_of(entry) == "cloth"
        key = tuple(sorted(words)) if cloth else words  # a notion's name stands in its order
        if words and key not in seen:
            seen.add(key)
            strong = any(word not in weak for word in words)
            ways = all(word in _WAY_WORDS for word in words)
            rows.append([entry, " ".join(words), strong, ways, cloth])
    return {"fibre words": sorted(fibre_words), "names": rows}


def _together(name: tuple[str, ...], words: list[str]) -> bool:
    """Whether a name's words stand side by side, but for one: "silk with gold thread" is none."""
    at = sorted(place for place, word in enumerate(words) if word in name)
    wanted = Counter(name)
    return any(not wanted - Counter(words[start : start + len(name) + 1]) for start in at)


def _idle(name: tuple[str, ...]) -> bool:
    """Whether a name is made of words that say nothing apart: "toile cloth", "khaki cloth"."""
    return len(name) > 1 and all(word in _IDLE for word in name)


def _adjoining(name: tuple[str, ...], words: list[str]) -> bool:
    """Whether the words of a name stand side by side: "toile tartan cloth" holds no such name."""
    starts = range(len(words) - len(name) + 1)
    return any(sorted(words[at : at + len(name)]) == sorted(name) for at in starts)


def _is_head(name: tuple[str, ...], words: list[str], cloths: set[str]) -> bool:
    """Whether a notion's name stands as it is written with no cloth behind it.

    A "beaded fringe tulle" is tulle, and "cord cotton" is no cotton cord.
    """
    at = [place for place, word in enumerate(words) if word in name]
    in_order = tuple(dict.fromkeys(words[place] for place in at)) == tuple(dict.fromkeys(name))
    return in_order and not any(word in cloths - set(name) for word in words[at[-1] + 1 :])


_LAST: list[tuple[object, Names]] = []


def names_of(knowledge: Knowledge) -> Names:
    """The names of some knowledge, made once."""
    if not _LAST or _LAST[0][0] is not knowledge.names:
        _LAST[:] = [(knowledge.names, Names(knowledge))]
    return _LAST[0][1]


_WAY_WORDS = singulars(lexicon.STRETCH | lexicon.WAYS)
_USE_WORDS = singulars(lexicon.USES | lexicon.FABRIC_WORDS | everyday.USES)
_RAISED = {"brushed"}
_IDLE = _USE_WORDS | singulars(
    lexicon.PATTERNS | lexicon.QUALITIES - _RAISED | frozenset(lexicon.SHADES)
)
"""Words of uses and looks, of which a name may be made that is none beside another."""


@cache
def general_words() -> frozenset[str]:
    """Every word that says something of a cloth without naming it."""
    lists = (
        lexicon.USES, lexicon.FABRIC_WORDS, lexicon.FILLERS, lexicon.QUALITIES, lexicon.STRETCH,
        lexicon.WAYS, lexicon.LOOK, lexicon.BLEND, lexicon.PATTERNS, lexicon.PURE, lexicon.UNSURE,
        frozenset(lexicon.SHADES), WEIGHT_WORDS,
    )  # fmt: skip
    return singulars(frozenset().union(*lists))


def find_grounds(words: list[str], knowledge: Knowledge) -> Grounds | None:
    """The cloths that some words name; None where they name none."""
    names = names_of(knowledge)
    first = names.best(words, strong=True)
    if first is None:
        first = names.best(words, strong=False)
        if first is None:
            return None
        return Grounds(first.entry, (), first.words, tuple(without(words, first.words)))
    found, used, left = [first.entry], list(first.words), without(words, first.words)
    while (name := names.best(left, strong=True)) is not None:
        if knowledge.entries[name.entry].kind != "cloth":
            break
        found.append(name.entry)
        used += name.words
        left = without(left, name.words)
    entry = _primary(list(dict.fromkeys(found)), knowledge)
    laid = tuple(sorted(set(found) - {entry}))
    own = names.only_of(set(found)) | names.also_said(set(found), words)
    again = [word for word in left if word in own]
    used, left = [*used, *again], [word for word in left if word not in again]
    grounds = Grounds(entry, laid, tuple(used), tuple(left))
    more = names.crossing(grounds)
    also = {name.entry for name in more} - {entry}
    said = frozenset(word for name in more for word in name.words)
    rest = tuple(word for word in left if word not in said)
    return Grounds(entry, tuple(sorted({*laid, *also})), (*used, *said.difference(used)), rest)


def head_last(text: str, knowledge: Knowledge) -> str:
    """The words of a list, which names the thing first: "zip, metal" is a metal zip."""
    parts = [part for part in text.split(",") if part.strip()]
    if len(parts) < 2:
        return text
    turned = " ".join(reversed(parts))
    found = find_grounds(words_of(turned), knowledge)
    return text if found is None or knowledge.kind_of(found.entry) == "cloth" else turned


def _primary(found: list[str], knowledge: Knowledge) -> str:
    """Whose advice is followed: a make before a ground, the longer name before the shorter.

    A notion whose name is the longest stays one: of foam shoulder pads the foam is no cloth.
    """
    if knowledge.kind_of(found[0]) != "cloth":
        return found[0]
    making = [i for i in found if i in _PUCKERED or knowledge.entries[i].family in LAID_FIRST]
    grounds = [id_ for id_ in found if id_ not in _FIGURING]
    return (making or grounds or found)[0]


_PUCKERED = frozenset({"plisse"})
"""Cloths whose name says what was done to a ground for good: "plisse voile"."""
_FIGURING = frozenset({"jacquard"})
"""Cloths whose name says how a ground is figured where another cloth is named: "satin jacquard"."""


def without(words: list[str], taken: tuple[str, ...]) -> list[str]:
    """The words less those that are taken, each as often as it is taken.

    Of a word that stands there twice that goes which the others are beside, or else one that has
    no share: in "wool 80 % nylon 20 % wool coating" the coating is the last wool.
    """
    size = len(taken)
    runs = [at for at in range(len(words) - size + 1) if tuple(words[at : at + size]) == taken]
    if taken and runs:
        at = min(runs, key=lambda run: size == 1 and _by_a_share(words, run))
        return [*words[:at], *words[at + size :]]
    gone: set[int] = set()
    for word in taken:
        places = [at for at, other in enumerate(words) if other == word and at not in gone]
        gone |= {min(places, key=lambda at: _by_a_share(words, at))} if places else set()
    return [word for at, word in enumerate(words) if at not in gone]


def _by_a_share(words: list[str], at: int) -> bool:
    """Whether a number stands beside a word."""
    return any(
        word[:1].isdigit() for word in (*words[max(at - 1, 0) : at], *words[at + 1 : at + 2])
    )
