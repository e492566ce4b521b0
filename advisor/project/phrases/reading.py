"""Understands a phrase for one cloth: ground, what is laid on it, fibres, weight, colour, use.

What is not known is left out and said where that can do no harm, and refused where it could: where
the word may be a slip of a fibre or of a cloth, where it takes something away, or where too little
of the phrase is left. A word left out never narrows what the cloth may be made of.
"""

from __future__ import annotations

import re

from msgspec import Struct, field
from msgspec.structs import replace

from advisor.errors import InputError, Problem, shown
from advisor.knowledge.model import Knowledge, Mix
from advisor.project.phrases import lexicon
from advisor.project.phrases.abroad import in_english
from advisor.project.phrases.beside import as_knit, names_a_knit, take_backing, take_unfiled
from advisor.project.phrases.composition import (
    Note,
    as_tender,
    possible_mixes,
    stretching,
    with_part,
)
from advisor.project.phrases.families import CUT_UP, family_of
from advisor.project.phrases.grounds import (
    LAID_FIRST,
    Grounds,
    Name,
    find_grounds,
    general_words,
    head_last,
    names_of,
    without,
)
from advisor.project.phrases.looks import Looks, take_looks
from advisor.project.phrases.shading import shade_in
from advisor.project.phrases.shares import HALF, Fibres, fibres_at, read_shares, said_of, take_ratio
from advisor.project.phrases.spacing import respaced
from advisor.project.phrases.spoken import plain_words
from advisor.project.phrases.suggestions import likest, may_be, meant_by, whole_slip
from advisor.project.phrases.tokens import singulars, words_of
from advisor.project.phrases.traits import traits_of
from advisor.project.phrases.weights import Weight, size_in, take_weight, weight_in_words

LONGEST = 200
_MOST_UNKNOWN = 2
_SURFACES = {words_of(word)[0]: entry for word, entry in lexicon.SURFACES.items()}
_WAYS = re.compile(r"\b([24])[\s-]*ways?\b", re.IGNORECASE)
_WAY_WORDS = {"2": "two", "4": "four"}
_RIB = re.compile(r"\d\s?x\s?\d")
_NOT = lexicon.NOT
_ELASTANE = ("elastane",)
_UNSURE = singulars(lexicon.UNSURE)


class Reading(Struct, frozen=True):
    """What a phrase says of a cloth.

    `fibres` is what was said of them, in the words' own order; `mixes` what the cloth may be made
    of. `stated` when shares were said. `traits` are levels that the words raise, `laid` entries
    whose guards hold as well, `notes` what was assumed or left out, `named` the fibres in its name.
    """

    entry: str
    mixes: tuple[Mix, ...]
    fibres: Mix = ()
    stated: bool = False
    fibre_unknown: bool = False
    weight: Weight | None = None
    weight_in_words: bool = False
    shade: str = ""
    laid: tuple[str, ...] = ()
    traits: dict[str, tuple[int, int]] = field(default_factory=dict)
    notes: tuple[Note, ...] = ()
    named: frozenset[str] = frozenset()


def read_phrase(text: str, knowledge: Knowledge) -> Reading:
    """Understand a phrase.

    Raises:
        InputError: with what was not understood and the nearest names.
    """
    if not text.strip() or len(text) > LONGEST:
        raise refuse(text[:40], "a fabric in a few words, such as 'nylon organza'")
    return _Phrase(text, knowledge).read()


def refuse(word: str, expected: str, known: tuple[str, ...] = ()) -> InputError:
    """The refusal of a word or phrase, with what would be understood."""
    return InputError(Problem(f"not understood: {shown(word)}", None, expected, known))


class _Phrase:
    def __init__(self, text: str, knowledge: Knowledge) -> None:
        self.text = text.strip()
        self.knowledge = knowledge
        self.notes: list[Note] = []
        self.unsure = False
        self.words: list[str] = []
        self.parts: tuple[str, ...] = ()
        self.also: tuple[str, ...] = ()

    def read(self) -> Reading:
        rest, weight, aside = take_weight(self.text)
        rest, ratio = take_ratio(_WAYS.sub(lambda way: f" {_WAY_WORDS[way[1]]} way ", rest))
        for measure in aside:
            self.notes.append((f"'{measure}' is taken for a thickness or a size", _NO_MEASURE))
        words, unknown = plain_words(" ".join(words_of(head_last(rest, self.knowledge))))
        words, unfiled = take_unfiled(self._plainly(words))
        self.notes += unfiled
        self.unsure = unknown = unknown or bool(unfiled)
        unknown = unknown or any(word in _UNSURE for word in words)
        looks = take_looks(words, self.knowledge)
        self.words = words = looks.words
        shared = bool(ratio) or any(word[0].isdigit() or word in lexicon.PURE for word in words)
        grounds = self._grounds(words, shared=shared) or self._family(words, ratio)
        grounds, knit = as_knit(looks.grounded(grounds), words, self.knowledge)
        self.notes += knit
        fibres = (
            self._beside(grounds, ratio)
            if shared
            else read_shares(list(grounds.left), (), self.knowledge)
        )
        # Else the fibres in the cloth's own name count too: a share may be theirs.
        if fibres is None or (fibres.shares and not fibres.whole):
            grounds, fibres = self._with_shares(words, grounds, ratio)
        if ratio and not fibres.whole:
            self._left_out(("/".join(f"{part:g}" for part in ratio),))
        return self._reading(grounds, fibres, looks, weight, unknown=unknown)

    def _plainly(self, words: list[str]) -> list[str]:
        """The words in English, spaced as names are, each fibre by one name; a back put aside."""
        named = (name.words for name in names_of(self.knowledge).all)
        words = respaced(in_english(words, named), self.knowledge)
        words = [lexicon.SAME_WORD.get(word, word) for word in words]
        words, self.parts = take_backing(words, self.knowledge)
        if any(word in lexicon.METAL_WOVEN for word in words):
            self.parts += ("metallic-film",)
        return words

    def _with_shares(
        self, words: list[str], grounds: Grounds, ratio: tuple[float, ...]
    ) -> tuple[Grounds, Fibres]:
        """The shares with the fibres of the cloth's name; a name put together from afar with a
        fibre that has its own share is given up where the shares make no sense with it.
        """
        try:
            return grounds, self._shares(self._about_fibres(words, grounds), ratio)
        except InputError:
            other = find_grounds(self._unshared(words), self.knowledge)
            if other is None:
                raise
            other = replace(other, left=tuple(without(words, other.name)))
            fibres = self._beside(other, ratio)
            if fibres is None:
                raise
            return other, fibres

    def _shares(self, words: list[str], ratio: tuple[float, ...]) -> Fibres:
        return read_shares(words, ratio, self.knowledge, self.words)

    def _beside(self, grounds: Grounds, ratio: tuple[float, ...]) -> Fibres | None:
        """What stands beside the cloth's name, where its shares make a whole by themselves."""
        try:
            found = self._shares(list(grounds.left), ratio)
        except InputError:
            return None
        return found if found.whole else None

    def _grounds(self, words: list[str], *, shared: bool) -> Grounds | None:
        """The cloths named; elastane that has a share of its own is no part of a name."""
        if shared:
            bare = [w for w in words if fibres_at([w], 0, self.knowledge)[0] != _ELASTANE]
            found = find_grounds(bare, self.knowledge)
            if found is not None:
                return replace(found, left=tuple(without(words, found.name)))
        found = find_grounds(words, self.knowledge)
        return found and self._sold_so(words, found)

    def _sold_so(self, words: list[str], found: Grounds) -> Grounds:
        """The cloth under its plain name where only that is sold of all its fibres.

        A "poly viscose twill" is a twill of both, and no viscose twill with polyester in it.
        """
        bare = [word for word in words if not self._is_fibre(word)]
        fibres = {f for at in range(len(words)) for f in fibres_at(words, at, self.knowledge)[0]}
        plain = find_grounds(bare, self.knowledge) if len(fibres) > 1 else None
        if plain is None or not any(self._is_fibre(word) for word in found.name):
            return found
        both = ({f for f, _ in mix} >= fibres for mix in self.knowledge.entries[plain.entry].mixes)
        own = self.knowledge.entries[found.entry].mixes
        if not any(both) or any({f for f, _ in mix} >= fibres for mix in own):
            return found
        return replace(plain, left=tuple(without(words, plain.name)))

    def _unshared(self, words: list[str]) -> list[str]:
        """The words without the fibres that have a share before or behind them."""
        numbered = {
            at
            for at, word in enumerate(words)
            if self._is_fibre(word)
            and any(other[:1].isdigit() for other in (words[at - 1 : at] + words[at + 1 : at + 2]))
        }
        return [word for at, word in enumerate(words) if at not in numbered]

    def _about_fibres(self, words: list[str], grounds: Grounds) -> list[str]:
        """The words with the fibres that stand in the cloth's own name: a share may be theirs."""
        if any(word in _LOOK for word in grounds.name):  # "vegan leather" holds no leather
            return without(words, grounds.name)
        named = [word for word in grounds.name if not self._is_fibre(word)]
        return without(words, tuple(named))

    def _is_fibre(self, word: str) -> bool:
        return bool(fibres_at([word], 0, self.knowledge)[0])

    def _family(self, words: list[str], ratio: tuple[float, ...]) -> Grounds:
        """The commonest cloth of a fibre, a use or a make that was named alone."""
        surfaces = [word for word in words if _SURFACES.get(word)]
        shares = read_shares(words, ratio, self.knowledge).shares
        if shares and 0 < said_of(words) < HALF:
            raise refuse(self.text, "the cloth itself, or the fibre that most of it is of")
        if surfaces and lexicon.TENDER_PARTS.issuperset(fibre for fibre, _ in shares):
            return Grounds(_SURFACES[surfaces[0]], (), (surfaces[0],), tuple(words))
        taken = family_of(words, shares, self.knowledge)
        if taken is None or (self.unsure and not shares and not CUT_UP.isdisjoint(words)):
            raise self._no_fabric(words)
        self.notes.append(taken.note)
        self.also = taken.also
        return Grounds(taken.entry, (), (), tuple(words))

    def _no_fabric(self, words: list[str]) -> InputError:
        expected = "a fabric that the knowledge has; `advisor fabrics` lists them"
        if self.unsure:
            expected = (
                f"what it looks like too, such as 'satin, {_NOT_KNOWN}' or 'knit, {_NOT_KNOWN}'"
            )
        known = () if self.unsure else likest(" ".join(words) or self.text, self.knowledge)
        return refuse(self.text, expected, known)

    def _reading(
        self, grounds: Grounds, said: Fibres, looks: Looks, weight: Weight | None, *, unknown: bool
    ) -> Reading:
        entry = self.knowledge.entries[grounds.entry]
        if weight and entry.kind != "cloth" and (size := size_in(self.text)):
            self.notes.append((f"'{size}' is taken for a thickness or a size", _NO_MEASURE))
            weight = None
        left = [word for word in said.left if word != "or"]
        if "or" in said.left and not said.whole and len(said.shares) > 1:
            said = Fibres(
                said.shares, either=tuple(fibre for fibre, _ in said.shares), left=said.left
            )
        laid = self._laid(grounds, left)
        missing = self._not_understood(left, grounds)
        if missing and not METALLIC.isdisjoint(left):
            self.parts += ("metallic-film",)  # gold and a shop's own word: mostly a metallic yarn
            self.notes.append(_MAY_GLITTER)
        narrowed = not (unknown or missing or looks.fibres) or said.whole
        mixes = self._mixes((entry.id, *laid), said, left, narrowed=narrowed)
        named = self._named(grounds, said)
        mixes = tuple(sorted(mixes, key=lambda mix: not named <= {fibre for fibre, _ in mix}))
        if looks.fibres:
            mixes = tuple(dict.fromkeys([*mixes, *looks.mixes]))
            self.notes.append(looks.note)
        if not said.whole:
            mixes = self._with_rivals(mixes, grounds)
        usual = weight_in_words(left, entry.weight)
        traits = traits_of(entry, [self.knowledge.entries[i] for i in laid], left, self.knowledge)
        return Reading(
            stretching(entry.id, said.shares),
            mixes,
            said.shares,
            said.whole,
            unknown,
            weight or usual,
            weight is None and usual is not None,
            shade_in(left),
            laid,
            traits,
            tuple(dict.fromkeys(self.notes)),
            named,
        )

    def _with_rivals(self, mixes: tuple[Mix, ...], grounds: Grounds) -> tuple[Mix, ...]:
        """The mixes with those of any tenderer cloth that the same words name."""
        for id_ in (*names_of(self.knowledge).rivals(grounds), *self.also):
            other = self.knowledge.entries[id_]
            if not as_tender(mixes, other.mixes, self.knowledge):
                mixes = tuple(dict.fromkeys([*mixes, *other.mixes]))
                self.notes.append(
                    (f"it may be {other.name} too", f"pressed as tenderly as {other.name}")
                )
        return mixes

    def _mixes(
        self, entries: tuple[str, ...], said: Fibres, left: list[str], *, narrowed: bool
    ) -> tuple[Mix, ...]:
        """What the cloth may be of; of several entries together, unless shares fix it."""
        stretch = any(word in _STRETCH for word in left)
        found: dict[Mix, None] = {}
        for id_ in entries[:1] if said.whole else entries:
            entry = self.knowledge.entries[id_]
            mixes, notes = possible_mixes(entry, said, self.knowledge, stretch=stretch)
            found |= dict.fromkeys(mixes if narrowed else (*mixes, *entry.mixes))
            self.notes += notes
        for fibre in self.parts:
            found = dict.fromkeys([*(with_part(mix, fibre) for mix in found), *found])
        return tuple(found)

    def _named(self, grounds: Grounds, said: Fibres) -> frozenset[str]:
        """The fibres that are said or stand in the cloth's own name: a mix of them is likelier.

        They are no share and narrow nothing: "double brushed poly" is likelier polyester.
        """
        if said.either or any(word in _LOOK for word in grounds.name):
            return frozenset()
        spoken = {fibre for fibre, _ in said.shares}
        names = (fibres_at([word], 0, self.knowledge)[0] for word in grounds.name)
        return frozenset(spoken or (fibre for found in names for fibre in found))

    def _laid(self, grounds: Grounds, left: list[str]) -> tuple[str, ...]:
        """Everything whose guards hold beside the entry's own."""
        found = dict.fromkeys(grounds.laid)
        for word in left:
            id_ = _SURFACES.get(word, "")
            if id_ in self.knowledge.entries and id_ != grounds.entry:
                found[id_] = None
        found |= dict.fromkeys(sorted({n.entry for n in self._films(left)} - {grounds.entry}))
        entry = self.knowledge.entries[grounds.entry]
        about = [self.knowledge.entries[id_] for id_ in grounds.laid]
        both = [other.name for other in about if not names_a_knit(other, entry)]
        if both and entry.family not in LAID_FIRST:
            names = " and ".join(both)
            effect = f"taken as one cloth, {entry.name}, that is guarded as {names} too"
            said = f"two cloths are named in '{self.text}'"
            self.notes.append((said, f"{effect}; put a comma between two cloths"))
        return tuple(found)

    def _films(self, left: list[str]) -> list[Name]:
        """The whole names of what lies on a cloth, among the words beside its own: "wet look"."""
        return [name for name in names_of(self.knowledge).wholly(left) if name.entry in _LAID]

    def _not_understood(self, left: list[str], grounds: Grounds) -> bool:
        """Whether something was left out that nobody knows.

        Raises:
            InputError: it may matter.
        """
        if taking := [word for word in left if word in _NOT]:
            expected = "what the cloth is, and not what it is not"
            raise refuse(" ".join(left[left.index(taking[0]) :]), expected)
        strange = [w for w in left if w not in _known_words() and w not in _SURFACES and w != "or"]
        laid = {word for name in self._films(left) for word in name.words}
        strange = [word for word in strange if not _RIB.fullmatch(word) and word not in laid]
        if notion := self.knowledge.entries[grounds.entry].kind != "cloth":
            own = names_of(self.knowledge).of_one(grounds.entry)
            strange = [word for word in strange if word not in own]
        for word in strange:
            if any(letter.isdigit() for letter in word) or not word.isprintable():
                raise refuse(word, f"a fibre, a fabric or a weight in '{self.text}'")
            if close := meant_by(word, self.words, self.knowledge, notions=notion):
                raise refuse(word, f"a fibre, a fabric or a weight in '{self.text}'", close)
        if len(strange) > _MOST_UNKNOWN or (strange and not grounds.name):
            raise refuse(
                " ".join(strange),
                f"a fibre, a fabric or a weight in '{self.text}'; {_OWN}",
                whole_slip(self.text, self.knowledge) or may_be(strange[0], self.knowledge),
            )
        self._left_out(tuple(strange))
        return bool(strange)

    def _left_out(self, words: tuple[str, ...]) -> None:
        for word in words:
            meant = "".join(f" ({name}?)" for name in may_be(word, self.knowledge))
            effect = "left out; if it names a fibre, a coating or a finish, say that in other words"
            self.notes.append((f"'{word}' not understood{meant}", effect))


_LAID = frozenset(_SURFACES.values())
METALLIC = frozenset({"gold", "golden", "silver", "copper", "bronze", "brass", "metallic"})
"""Colours that a metallic yarn has."""
_STRETCH = singulars(lexicon.STRETCH)
_LOOK = singulars(lexicon.LOOK)
_NO_MEASURE = "not used; a project file has `thickness:` for it"
_NOT_KNOWN = "fibre unknown"
_MAY_GLITTER = (
    "a metal's colour stands beside a word that is not understood",
    "taken as with a metallic yarn",
)
_OWN = "a maker's or shop's own word says nothing here, so name the fibre or the make behind it"
_KNOWN: list[frozenset[str]] = []


def _known_words() -> frozenset[str]:
    if not _KNOWN:
        _KNOWN.append(general_words())
    return _KNOWN[0]
