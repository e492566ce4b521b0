"""Reads a maker's words for a cloth: fibres, with or without shares, a fabric, a weight.

`"nylon organza"`, `"cotton 97 elastane 3 denim 340 g/m2"`, `"brocade, fibre unknown"`.
The longest known name wins, so that "wool crepe" is that cloth and not any crepe of wool.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from advisor.errors import InputError, Problem, nearest
from advisor.knowledge.model import Entry, Knowledge, Mix
from advisor.knowledge.names import plain_name
from advisor.project.garment import Cloth
from advisor.units import parse

_WEIGHT = re.compile(
    r"(\d+(?:[.,]\d+)?)\s*"
    r"(g\s*/\s*m(?:2|²|\^2)|gsm|grams?|oz(?:\s*/\s*yd(?:2|²|\^2))?|ounces?|momme|mm(?=\s|$))",
    re.IGNORECASE,
)
_UNKNOWN = re.compile(r"\b(?:(?:unknown|mystery)\s+fib(?:re|er)s?|fib(?:re|er)s?\s+unknown)\b")
_NUMBER = re.compile(r"^\d+(?:[.,]\d+)?%?$")
_FILLERS = frozenset({"a", "an", "and", "the", "of", "with", "in", "%", "fabric", "cloth", "/"})
SHADES = {
    "black": "dark",
    "navy": "dark",
    "brown": "dark",
    "burgundy": "dark",
    "charcoal": "dark",
    "dark": "dark",
    "white": "pale",
    "ivory": "pale",
    "cream": "pale",
    "pale": "pale",
    "beige": "pale",
    "pastel": "pale",
    "red": "",
    "blue": "",
    "green": "",
    "grey": "",
    "gray": "",
    "pink": "",
    "purple": "",
    "orange": "",
    "yellow": "",
    "gold": "",
    "silver": "",
    "printed": "",
    "plain": "",
    "coloured": "",
    "colored": "",
}
"""Colour words and the shade that they surely mean; most mean none for certain."""
_LONGEST = 200
_MOST_WORDS = 6


@dataclass(frozen=True, slots=True)
class Reading:
    """What a phrase says; `from_name` when the fibre was only part of the cloth's own name."""

    entry: str
    fibres: Mix
    fibre_unknown: bool
    weight: float | None
    shade: str = ""
    from_name: bool = False


def read_phrase(text: str, knowledge: Knowledge) -> Reading:
    """Understand a phrase.

    Raises:
        InputError: with what was not understood and the nearest names.
    """
    if not text.strip() or len(text) > _LONGEST:
        raise _refuse(text[:40], "a fabric is named in a few words, such as 'nylon organza'")
    rest, weight = _take_weight(text)
    unknown = bool(_UNKNOWN.search(rest.casefold()))
    words = _words(_UNKNOWN.sub(" ", plain_name(rest)))
    entry, left, inside = _take_entry(words, text, knowledge)
    shades = [SHADES[word] for word in left if word in SHADES]
    before = [word for word in left if word not in _FILLERS and word not in SHADES]
    fibres = _fibres(before, text, knowledge)
    from_name = not fibres and not unknown
    if from_name:
        fibres = _fibres_of_name(inside, knowledge.entries[entry], knowledge)
    shade = next((s for s in shades if s), "")
    return Reading(entry, fibres, unknown, weight, shade, from_name)


def read_fibres(text: str, knowledge: Knowledge) -> Mix:
    """Fibres with or without shares, and nothing else: "silk", "cotton 97 elastane 3".

    Raises:
        InputError: with what was not understood and the nearest names.
    """
    words = _words(plain_name(text)) if len(text) <= _LONGEST else []
    if not words:
        raise _refuse(text[:40], "fibres, such as 'silk' or 'cotton 97 elastane 3'")
    mix = _fibres([word for word in words if word not in _FILLERS], text, knowledge)
    if not mix:
        raise _refuse(text[:40], "fibres, such as 'silk' or 'cotton 97 elastane 3'")
    return mix


def short_name(text: str) -> str:
    """A phrase without its weight, to call the cloth by."""
    return " ".join(_take_weight(text)[0].strip(" ,;").split())


def cloth_of(name: str, reading: Reading, knowledge: Knowledge) -> Cloth:
    """The cloth that a phrase stands for, with everything assumed named."""
    cloth = make_cloth(
        name,
        knowledge.entries[reading.entry],
        (reading.fibres,) if reading.fibres else (),
        None if reading.weight is None else (reading.weight, reading.weight),
    )
    return replace(cloth, shade=reading.shade) if reading.shade else cloth


def make_cloth(
    name: str, entry: Entry, mixes: tuple[Mix, ...], weight: tuple[float, float] | None
) -> Cloth:
    """A cloth of an entry; what is not given is what the entry is sold in and as."""
    assumed = []
    if not mixes:
        mixes = entry.mixes
        assumed.append("fibre")
    if weight is None:
        weight = entry.weight
        assumed.append("weight")
    return Cloth(name, entry.id, mixes, weight, entry.thickness, assumed=tuple(assumed))


def _refuse(word: str, expected: str, known: tuple[str, ...] = ()) -> InputError:
    return InputError((Problem(f"not understood: '{word}'", None, expected, known),))


def _take_weight(text: str) -> tuple[str, float | None]:
    found = _WEIGHT.search(text)
    if found is None:
        return text, None
    unit = found.group(2).casefold()
    spelled = f"{found.group(1)} {'momme' if unit == 'mm' else unit}"
    try:
        weight = parse("weight", spelled)
    except ValueError as error:
        raise _refuse(found.group(0), str(error)) from None
    if not 5 <= weight <= 3000:
        raise _refuse(found.group(0).strip(), "a weight from 5 to 3000 g/m2")
    return text[: found.start()] + " " + text[found.end() :], weight


def _words(text: str) -> list[str]:
    return re.sub(r"[,;:()+&/]", " ", text).split()


def _take_entry(
    words: list[str], text: str, knowledge: Knowledge
) -> tuple[str, list[str], list[str]]:
    """The entry with the longest name; on a tie the last one named, as English puts it."""
    for length in range(min(_MOST_WORDS, len(words)), 0, -1):
        for start in range(len(words) - length, -1, -1):
            name = " ".join(words[start : start + length])
            entry = knowledge.names.get(name) or knowledge.names.get(name.removesuffix("s"))
            if entry:
                rest = words[:start] + words[start + length :]
                return entry, rest, words[start : start + length]
    raise _no_fabric(words, text, knowledge)


def _no_fabric(words: list[str], text: str, knowledge: Knowledge) -> InputError:
    """A fibre alone is no cloth: say which cloths it is sold as; else the nearest names."""
    fibre = next((knowledge.fibre_names[w] for w in words if w in knowledge.fibre_names), None)
    if fibre and all(w in knowledge.fibre_names or w in _FILLERS for w in words):
        sold = [
            e.name
            for e in knowledge.fabrics()
            if fibre == e.mixes[0][0][0] or fibre in plain_name(e.name)
        ]
        expected = f"the cloth as well as the fibre, such as {', '.join(sold[:6])}"
        return _refuse(text.strip(), expected)
    names = list(knowledge.names)
    bare = [w for w in words if w not in knowledge.fibre_names and w not in _FILLERS]
    close = (*nearest(" ".join(bare), names)[:2], *nearest(" ".join(words), names)[:1])
    known = tuple(dict.fromkeys(close)) or nearest(words[-1] if words else text, names)
    return _refuse(
        text.strip(), "a fabric that the knowledge has; `advisor fabrics` lists them", known
    )


def _fibres(words: list[str], text: str, knowledge: Knowledge) -> Mix:
    """Fibres with shares, the number before or after its fibre but always on the same side."""
    found: list[tuple[str, float | None]] = []
    number: float | None = None
    number_first = bool(words) and bool(_NUMBER.match(words[0]))
    at = 0
    while at < len(words):
        if _NUMBER.match(words[at]):
            number = float(words[at].rstrip("%").replace(",", "."))
            if not number_first and found and found[-1][1] is None:
                found[-1] = (found[-1][0], number)
                number = None
            elif not number_first:
                raise _refuse(words[at], "a share stands beside its fibre: 'cotton 97 elastane 3'")
            at += 1
            continue
        fibre, used = _fibre_at(words, at, text, knowledge)
        found.append((fibre, number))
        number = None
        at += used
    check_shares(found, text)
    return tuple(found)


def _fibre_at(words: list[str], at: int, text: str, knowledge: Knowledge) -> tuple[str, int]:
    for length in (3, 2, 1):
        name = " ".join(words[at : at + length])
        if name in knowledge.fibre_names and at + length <= len(words):
            return knowledge.fibre_names[name], length
    known = nearest(words[at], [*knowledge.fibre_names, *knowledge.names])
    raise _refuse(words[at], f"a fibre, a fabric or a weight in '{text.strip()}'", known)


def check_shares(shares: list[tuple[str, float | None]], text: str) -> None:
    """Refuse shares that are missing for some, out of range, doubled or do not make 100.

    Raises:
        InputError: saying which.
    """
    given = [share for _, share in shares if share is not None]
    names = [fibre for fibre, _ in shares]
    if len(set(names)) < len(names):
        raise _refuse(text.strip(), "each fibre once")
    if not given:
        return
    if len(given) < len(shares):
        raise _refuse(text.strip(), "a share for every fibre, or for none")
    total = sum(given)
    if any(not 0 < share <= 100 for share in given) or abs(total - 100) > 0.5:
        raise _refuse(text.strip(), f"shares that make 100; these make {total:g}")


def _fibres_of_name(words: list[str], entry: Entry, knowledge: Knowledge) -> Mix:
    """A fibre in the cloth's own name counts: who says linen suiting says linen."""
    sold = {fibre for mix in entry.mixes for fibre, _ in mix}
    for word in words:
        fibre = knowledge.fibre_names.get(word)
        if fibre in sold and fibre is not None:
            return ((fibre, 100.0),)
    return ()
