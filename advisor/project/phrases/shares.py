"""Reads fibres and their shares in any usual form: "cotton 97 elastane 3", "70/30", "pure silk"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec import Struct

from advisor.errors import InputError, Problem, shown
from advisor.knowledge.model import Knowledge
from advisor.project.phrases import lexicon
from advisor.project.phrases.grounds import general_words, names_of
from advisor.project.phrases.pairing import PARTS, Share, paired
from advisor.project.phrases.suggestions import slip_of
from advisor.project.phrases.tokens import singulars, words_of

_RATIO = re.compile(
    r"(?<![\w./])(\d{1,2}(?:\.\d+)?)\s*%?\s*[/:-]\s*(\d{1,2}(?:\.\d+)?)\s*%?"
    r"(?:\s*[/:-]\s*(\d{1,2}(?:\.\d+)?)\s*%?)?(?![\w/])"
)
_NUMBER = re.compile(r"\d+(?:[.,]\d+)?%?")
_ALL, _SLACK = 100.0, 0.5
HALF = 50.0
_UNNAMED = ""
"""A fibre that a label gives a share to in a word that names none."""
_OTHER = singulars(lexicon.OTHER)
_BLEND = singulars(lexicon.BLEND)
_STRETCH = singulars(lexicon.STRETCH)


class Fibres(Struct, frozen=True):
    """What is said of the fibres: with shares or without, and what was said beside them.

    `whole` when the shares make 100; `blend` when something else is mixed in; `left` are the words
    that are neither fibre nor share, one that has a share of its own among them.
    """

    shares: tuple[Share, ...] = ()
    whole: bool = False
    blend: bool = False
    either: tuple[str, ...] = ()
    left: tuple[str, ...] = ()


def take_ratio(text: str) -> tuple[str, tuple[float, ...]]:
    """The phrase without "70/30", and its numbers; nothing where they do not make 100."""
    for found in _RATIO.finditer(text):
        numbers = tuple(float(part) for part in found.groups() if part)
        if abs(sum(numbers) - _ALL) <= _SLACK:
            return f"{text[: found.start()]} {text[found.end() :]}", numbers
    return text, ()


def said_of(words: list[str]) -> float:
    """What all shares in some words come to, per cent; 0 where there are none."""
    return sum(
        float(word.rstrip("%").replace(",", ".")) for word in words if _NUMBER.fullmatch(word)
    )


def read_shares(
    words: list[str],
    ratio: tuple[float, ...],
    knowledge: Knowledge,
    phrase: Sequence[str] = (),
) -> Fibres:
    """The fibres among some words; `phrase` are all words, with the name that stands between them.

    Raises:
        InputError: shares that cannot be of one cloth.
    """
    items, left = _items(_said_once(words, knowledge), knowledge)
    fibres = [item for item in items if isinstance(item, str)]
    numbers = [item for item in items if not isinstance(item, str)]
    blend = any(word in _BLEND for word in left)
    pure = any(word in lexicon.PURE for word in left)
    names = list(dict.fromkeys(fibres))
    if len(names) == 1 and len(ratio) == 2 and _STRETCH & {*words, *phrase}:
        ratio = tuple(sorted(ratio, reverse=True))  # a stretch satin 95/5 has 5 % elastane
        names.append("elastane")
    if ratio and not numbers and 0 < len(names) <= len(ratio):
        return _checked(tuple(zip(names, ratio, strict=False)), left, blend=blend)
    if numbers and not fibres:
        said = " ".join(f"{number:g}" for number in numbers)
        expected = f"a fibre beside its share in {shown(' '.join(words))}"
        if len(numbers) == 1 and numbers[0] >= _WEIGHT:
            expected = f"its unit, where it is a weight: '{said} g/m2'; or {expected}"
        raise InputError(Problem(f"not understood: {shown(said)}", None, expected))
    if numbers:
        return _checked(paired(items, _ends([*phrase] or words, knowledge)), left, blend=blend)
    if pure and len(names) == 1 and not blend:
        return Fibres(((names[0], _ALL),), whole=True, left=left)
    return Fibres(tuple((name, None) for name in names), blend=blend, left=left)


def _said_once(words: list[str], knowledge: Knowledge) -> list[str]:
    """The words without a fibre that has no share where it has one elsewhere: "wool, 70 % wool"."""
    shared = [
        any(
            _NUMBER.fullmatch(other)
            for other in (*words[max(at - 1, 0) : at], *words[at + 1 : at + 2])
        )
        for at in range(len(words))
    ]
    again = {word for word, has in zip(words, shared, strict=True) if has}
    return [
        word
        for at, word in enumerate(words)
        if shared[at] or word not in again or not fibres_at(words, at, knowledge)[0]
    ]


def _items(words: list[str], knowledge: Knowledge) -> tuple[list[str | float], tuple[str, ...]]:
    """Fibres and numbers in their order, and the words that are neither."""
    items: list[str | float] = []
    left: list[str] = []
    at = 0
    while at < len(words):
        word = words[at]
        if _NUMBER.fullmatch(word):
            items.append(float(word.rstrip("%").replace(",", ".")))
            at += 1
            continue
        found, used = fibres_at(words, at, knowledge)
        if found:
            items += found
        elif _has_share(words, at, items, knowledge):
            items.append(_UNNAMED)
            left += [] if word in _OTHER else [word]
        else:
            left.append(word)
        at += used
    return items, tuple(left)


def _has_share(words: list[str], at: int, items: list[str | float], knowledge: Knowledge) -> bool:
    """Whether a word that names no fibre stands where a label names one: "95 % cotton, 5 % other".

    A word that may be a slip of a fibre's name is none of these.
    """
    behind = bool(_NUMBER.fullmatch(words[at - 1])) if at else False
    before = at + 1 < len(words) and bool(_NUMBER.fullmatch(words[at + 1]))
    first = bool(items) and not isinstance(items[0], str)
    if not items or not (behind if first else before):
        return False
    word = words[at]
    if word in _OTHER:
        return True
    strange = word not in general_words() and word not in names_of(knowledge).words
    return strange and word.isalpha() and not slip_of(word, knowledge)


_INDEX: list[tuple[object, dict[tuple[str, ...], str]]] = []


def _index(knowledge: Knowledge) -> dict[tuple[str, ...], str]:
    if not _INDEX or _INDEX[0][0] is not knowledge.fibre_names:
        index = {tuple(words_of(name)): id_ for name, id_ in knowledge.fibre_names.items()}
        _INDEX[:] = [(knowledge.fibre_names, index)]
    return _INDEX[0][1]


def fibres_at(words: list[str], at: int, knowledge: Knowledge) -> tuple[tuple[str, ...], int]:
    """The fibres that the words from a place on name, and how many words that takes."""
    index = _index(knowledge)
    for length in (4, 3, 2, 1):
        fibre = index.get(tuple(words[at : at + length]))
        if fibre and at + length <= len(words):
            return (fibre,), length
    if words[at] in lexicon.BLEND_WORDS:
        return lexicon.BLEND_WORDS[words[at]], 1
    fibre = lexicon.FIBRE_WORDS.get(words[at])
    return ((fibre,), 1) if fibre else ((), 1)


_WEIGHT = 20.0
"""What a number alone hardly is below, where it means a weight, g/m²: estimate."""


def _ends(words: list[str], knowledge: Knowledge) -> tuple[bool, bool]:
    """Whether a fibre stands right before the first number, and one right behind the last."""
    numbers = [at for at, word in enumerate(words) if _NUMBER.fullmatch(word)]
    spans, at = [], 0
    while at < len(words):
        found, used = fibres_at(words, at, knowledge)
        spans += [(at, at + used)] if found else []
        at += used
    before, behind = numbers[0], numbers[-1] + 1
    return any(end == before for _, end in spans), any(start == behind for start, _ in spans)


def _checked(shares: tuple[Share, ...], left: tuple[str, ...], *, blend: bool) -> Fibres:
    """Shares that make 100, the last one worked out where only one is missing."""
    text = ", ".join(
        f"{fibre or 'other'} {share:g}" if share else fibre or "other" for fibre, share in shares
    )
    total = sum(share for _, share in shares if share is not None)
    open_ = [fibre for fibre, share in shares if share is None]
    if len({fibre for fibre, _ in shares}) < len(shares):
        raise refuse_shares(text, "each fibre once")
    if any(share is not None and share <= 0 for _, share in shares):
        raise refuse_shares(text, "shares above 0")
    if total > _ALL + _SLACK:
        raise refuse_shares(text, f"shares that make 100; these make {total:g}")
    named = tuple((fibre, None) for fibre, _ in shares if fibre)
    if len(named) < len(shares):
        return Fibres(named, blend=True, left=left)
    if len(open_) == 1 and total < _ALL - _SLACK:
        shares = tuple((fibre, _ALL - total if share is None else share) for fibre, share in shares)
        return Fibres(shares, whole=True, left=left)
    if open_ and total > _ALL - _SLACK:
        raise refuse_shares(text, "a share for every fibre, or for none")
    if open_:
        return Fibres(tuple((fibre, None) for fibre, _ in shares), blend=True, left=left)
    if total >= _ALL - _SLACK:
        return Fibres(shares, whole=True, left=left)
    if total >= HALF and len(shares) > 1:
        raise refuse_shares(text, f"shares that make 100; these make {total:g}")
    # What is left to 100 is something else, and may be as tender as anything.
    rest = blend or not {fibre for fibre, _ in shares} <= PARTS
    return Fibres(tuple((fibre, None) for fibre, _ in shares), blend=rest, left=left)


def refuse_shares(text: str, expected: str) -> InputError:
    """The refusal of shares that do not fit."""
    return InputError(Problem(f"not understood: {shown(text)}", None, expected))
