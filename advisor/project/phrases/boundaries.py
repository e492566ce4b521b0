"""Finds where one cloth ends and the next begins: in one argument, or in words without quotes.

A comma, a plus, "and", "with", "lined with", "over", "under" and "on" part two cloths where a
cloth stands on either side; "jersey with 5 % elastane" and "embroidery on tulle" stay one.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import dropwhile

from advisor.knowledge.model import Knowledge
from advisor.project.phrases import lexicon
from advisor.project.phrases.composition import Note
from advisor.project.phrases.families import CUT_UP, WORN_KNITS
from advisor.project.phrases.grounds import LAID_FIRST, Grounds, find_grounds
from advisor.project.phrases.shares import fibres_at
from advisor.project.phrases.tokens import singulars, words_of
from advisor.project.phrases.weights import take_weight

_PARTS = re.compile(
    r"(\s*[,;+&\n|]\s*|\s+[/–—-]\s+|(?<=[^\d\s])\s+x\s+(?=\D)|(?<!\S)w/\s*"
    r"|\s*(?<![\w-])(?:(?:fully )?lined (?:with|in)"
    r"|(?:trimmed|edged|faced|underlined|interlined|overlaid) with|sewn to|next to|with|and|plus"
    r"|then|to|over|vs\.?|versus|under|underneath|beneath|behind|onto|into|on|against)(?![\w-])\s*)",
    re.IGNORECASE,
)
_BELOW = frozenset({"under", "underneath", "beneath", "behind"})
_ONTO = frozenset({"over", "on", "onto", "against", *_BELOW})
_JOINING = frozenset({"with", "w/"})
_LISTING = frozenset({",", ";", "+", "|", ""})
"""Marks between the things of a list; nothing stands for the end of a line."""
_OPENING = frozenset({"and", "&", "a", "an", "the", "my", "some"})
_SURFACES = frozenset(words_of(word)[0] for word in lexicon.SURFACES)
_MOTIFS = singulars(lexicon.PATTERNS)
"""What is on a cloth and is none: "an embroidered edge"."""
_SAID_OF_IT = singulars(lexicon.FILLERS | lexicon.QUALITIES | frozenset(lexicon.SHADES)) | _MOTIFS
_LIKENESS = frozenset({"look", "looks", "feel", "touch", "hand", "handle", "handfeel", "effect"})
"""How what is said of a cloth ends, where it is only like another."""
_APART = frozenset({"plus", "then", "sewn to", "next to"})
_MOST_WORDS = 40
_TIE = "\u02d0"
"""A letter to the pattern above, which nobody types between two words."""
_TIED: list[tuple[object, re.Pattern[str]]] = []


def split_cloths(text: str, knowledge: Knowledge) -> list[str]:
    """The cloths that one argument names, the upper first; one where it names one."""
    if "unknown" in text.casefold() and "," in text and len(_PARTS.findall(text)) == 1:
        return [text]
    first, *rest = (piece.replace(_TIE, " ") for piece in _PARTS.split(_tied(text, knowledge)))
    found = [first] if first else []
    turned = False
    for between, piece in zip(rest[::2], rest[1::2], strict=True):
        mark = between.strip().casefold()
        if not piece:
            continue
        if found and mark in _JOINING and _likens(piece):
            # "scuba with a neoprene feel" is one cloth, and read as a neoprene feel scuba.
            found[-1] = f"{_opened(piece)} {found[-1]}"
            continue
        if found and not _part_here(found[-1], mark, piece, knowledge):
            found[-1] += between + piece
            continue
        turned = turned or mark in _BELOW
        found.append(piece)
    ordered = found[::-1] if turned and len(found) == 2 else found
    return [_opened(cloth) for cloth in ordered] if len(ordered) > 1 else ordered or [text]


def _tied(text: str, knowledge: Knowledge) -> str:
    """The text with the names that hold a word which parts cloths tied: "fold over elastic"."""
    if not _PARTS.search(text):
        return text
    held = _TIED[0] if _TIED else None
    if held is None or held[0] is not knowledge.names:
        names = sorted((n for n in knowledge.names if _PARTS.search(n)), key=len, reverse=True)
        pattern = "|".join(re.escape(name) for name in names)
        held = (knowledge.names, re.compile(rf"\b(?:{pattern})s?\b", re.IGNORECASE))
        _TIED[:] = [held]
    return held[1].sub(lambda name: name[0].replace(" ", _TIE), text)


def _likens(piece: str) -> bool:
    """Whether a piece says only what a cloth is like."""
    return (words_of(piece) or [""])[-1] in _LIKENESS


def _opened(cloth: str) -> str:
    """A cloth's words without the "and a" that they open with."""
    return " ".join(_bare(cloth.split())) or cloth


def _bare(words: Sequence[str]) -> list[str]:
    return list(dropwhile(lambda word: word.casefold() in _OPENING, words))


def _part_here(before: str, mark: str, after: str, knowledge: Knowledge) -> bool:
    """Whether a mark parts two cloths, and not a cloth and what is said of it."""
    if _is_cloth(after, mark, knowledge) or (mark not in _LISTING and _is_cut_up(after)):
        # "black wool with a satin lining" are two; "jersey with wool" is one.
        lined = mark in _JOINING | _APART or mark.endswith(" with")
        lined = lined or mark.startswith(("lined", "fully"))
        # A fibre before a comma is a cloth too; shares and weights before it are said of one.
        lined = lined or (mark in _LISTING and not any(c.isdigit() for c in before))
        named = _is_cloth(before, mark, knowledge) or _is_cut_up(before)
        return named or (lined and _has_fibre(before, knowledge))
    if mark.startswith(("lined", "fully")):
        return _has_fibre(after, knowledge)
    if (mark in _LISTING | _APART or mark.endswith(" with")) and all(
        _only_a_fibre(piece, knowledge) for piece in (before, after)
    ):
        return True
    weighed = take_weight(before)[1] is not None and take_weight(after)[1] is not None
    return weighed and _has_fibre(before, knowledge, named=True) and _has_fibre(after, knowledge)


def _is_cut_up(piece: str) -> bool:
    """Whether a piece is an old curtain and nothing else."""
    return CUT_UP.issuperset(said := {*words_of(piece)} - _SAID_OF_IT) and bool(said)


def _is_cloth(piece: str, mark: str, knowledge: Knowledge) -> bool:
    """Whether a piece names a cloth by itself; a fibre alone does only beside "over"."""
    words = words_of(take_weight(piece)[0])
    if all(word in _SURFACES or word in _MOTIFS for word in words):
        return False
    grounds = find_grounds(words, knowledge)
    if grounds is not None:
        entry = knowledge.entries[grounds.entry]
        if entry.kind == "thread":  # "boucle with metallic thread" is one cloth
            return False
        skin = entry.structure == "skin"
        fibre = " ".join(grounds.name) in knowledge.fibre_names  # as camel hair is
        named = not fibre and any(not _is_fibre([word], 0, knowledge) for word in grounds.name)
        return named or skin or mark == "over"
    return mark in _ONTO and _has_fibre(piece, knowledge)


def _has_fibre(piece: str, knowledge: Knowledge, *, named: bool = False) -> bool:
    """Whether a piece names a fibre, or a cloth too where that is asked for."""
    words = words_of(take_weight(piece)[0])
    if any(_is_fibre(words, at, knowledge) for at in range(len(words))):
        return True
    return named and find_grounds(words, knowledge) is not None


def _is_fibre(words: list[str], at: int, knowledge: Knowledge) -> bool:
    return bool(fibres_at(words, at, knowledge)[0])


def join_words(words: Sequence[str], knowledge: Knowledge) -> list[str]:
    """The cloths of words that came without quotes: each ends with the name of a cloth.

    What stands alone as a cloth stays as it is; a fibre goes with the cloth behind it. Fibres
    alone are a cloth each: the shell takes the quotes off "silk" "wool".
    """
    if len(words) > _MOST_WORDS or any(" " in word.strip() for word in words):
        return list(words)
    if all(_stands(word, knowledge) for word in words):
        return _notions_joined(words, knowledge)
    if _fibres_alone(words, knowledge):
        return list(words)
    if any(word.strip()[-1:] in _LISTING for word in words[:-1]):  # she parts them herself
        return [" ".join(words)]
    worn = _worn(words, knowledge)
    found: list[list[str]] = []
    open_: list[str] = []
    at = 0
    while at < len(words):
        length = 1 if at in worn else _name_at(words, at, knowledge)
        if length and open_ and _not_of(open_, words[at : at + length], knowledge):
            found.append(open_)
            open_ = []
        open_ += words[at : at + max(length, 1)]
        at += max(length, 1)
        if length:
            weighed = _weight_at(words, at) if not _weight_at(words, 0) else 0
            found.append([*open_, *words[at : at + weighed]])
            at += weighed
            open_ = []
    if (
        open_
        and found
        and not any(_is_fibre(words_of(word) or [""], 0, knowledge) for word in open_)
    ):
        found[-1] += open_
    elif open_:
        found.append(open_)
    bare = [_bare(group) for group in found]
    return [" ".join(group) for group in bare if group]


def _notions_joined(words: Sequence[str], knowledge: Knowledge) -> list[str]:
    """Cloths of a word each, but for two that name a notion: "velvet satin ribbon" are two."""
    joined: list[str] | None = None
    for at in range(len(words) - 1) if len(words) > 2 else ():
        name = " ".join(words[at : at + 2])
        grounds = find_grounds(words_of(name), knowledge)
        if grounds is None or grounds.left or grounds.laid:
            continue
        parted = [*words[:at], name, *words[at + 2 :]]
        if knowledge.kind_of(grounds.entry) != "cloth":
            return parted
        if _entry(words[at + 1], knowledge) == grounds.entry:
            joined = joined or parted
    return joined or list(words)


def _entry(word: str, knowledge: Knowledge) -> str:
    """The cloth that a word names, as "lining" of "satin lining" names the same; "" for none."""
    grounds = find_grounds(words_of(word), knowledge)
    return "" if grounds is None else grounds.entry


def _not_of(open_: Sequence[str], name: Sequence[str], knowledge: Knowledge) -> bool:
    """Whether fibres before a notion's name are a cloth, as the notion is sold in none of them."""
    grounds = find_grounds(words_of(" ".join(name)), knowledge)
    said = words_of(" ".join(_bare(open_)))
    fibres = [fibre for at in range(len(said)) for fibre in fibres_at(said, at, knowledge)[0]]
    if grounds is None or not fibres or knowledge.entries[grounds.entry].kind == "cloth":
        return False
    sold = {fibre for mix in knowledge.entries[grounds.entry].mixes for fibre, _ in mix}
    return sold.isdisjoint(fibres)


def _weight_at(words: Sequence[str], at: int) -> int:
    """How many words from a place on are a weight: "200gsm", "200 gsm"; 0 where none are."""
    for length in (1, 2):
        said = " ".join(words[at : at + length])
        rest, weight, _ = take_weight(said)
        if weight is not None and not rest.strip():
            return length
    return 0


def _worn(words: Sequence[str], knowledge: Knowledge) -> list[int]:
    """Where a knitted garment stands among cloths that are no knit: "hoodie denim" are two."""
    grounds = (find_grounds(words_of(word), knowledge) for word in words)
    makes = {knowledge.entries[found.entry].structure for found in grounds if found is not None}
    if not makes or "knit" in makes:
        return []
    return [at for at, word in enumerate(words) if WORN_KNITS & {*words_of(word)}]


def _fibres_alone(words: Sequence[str], knowledge: Knowledge) -> bool:
    """Whether each word is a fibre, and they are no name together, as "poly cotton" is."""
    said = words_of(" ".join(words))
    grounds = find_grounds(said, knowledge)
    named = grounds is not None and sorted(grounds.name) == sorted(said)
    fibres = all(_is_fibre(words_of(word) or [""], 0, knowledge) for word in words)
    return fibres and not named


def _only_a_fibre(piece: str, knowledge: Knowledge) -> bool:
    """Whether a piece is the name of a fibre that is a cloth too, and nothing else."""
    words = words_of(piece)
    found, used = fibres_at(words, 0, knowledge) if words else ((), 0)
    return used == len(words) and len(found) == 1 and found[0] in lexicon.FAMILIES


def _stands(word: str, knowledge: Knowledge) -> bool:
    return _is_cloth(word, "", knowledge)


def _name_at(words: Sequence[str], at: int, knowledge: Knowledge) -> int:
    """How many words from a place on make the longest name of a cloth; 0 where none do."""
    for length in range(min(4, len(words) - at), 0, -1):
        some = words_of(" ".join(words[at : at + length]))
        grounds = find_grounds(some, knowledge)
        whole = grounds is not None and sorted(grounds.name) == sorted(some)
        if grounds is None or not whole or _laid_beside(grounds, knowledge):
            continue
        behind = words_of(" ".join(words[at + length : at + length + 1]))
        skin = knowledge.entries[grounds.entry].structure == "skin"
        likened = not lexicon.LOOK.isdisjoint(behind)
        if not all(_is_fibre([word], 0, knowledge) for word in some) or (skin and not likened):
            return length
    return 0


def _laid_beside(grounds: Grounds, knowledge: Knowledge) -> bool:
    """Whether a name is put together from two cloths: "organza wool crepe" is no one cloth."""
    family = knowledge.entries[grounds.entry].family
    others = {knowledge.entries[id_].family for id_ in grounds.laid} - {family}
    return bool(others) and family not in LAID_FIRST


def cloths_said(arguments: Sequence[str], knowledge: Knowledge) -> tuple[list[str], Note | None]:
    """The cloths of the arguments of a question, and what was taken for them where it differs."""
    joined = join_words(arguments, knowledge)
    cloths = [cloth for text in joined for cloth in split_cloths(text, knowledge)]
    if cloths == list(arguments):
        return cloths, None
    said = " ".join(arguments)
    taken = " | ".join(cloths)
    return cloths, (
        f"your words '{said}'",
        f"read as {taken} (a comma parts two cloths)",
    )
