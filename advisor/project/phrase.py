"""A maker's words for a cloth, and the cloth that they stand for.

`"nylon organza"`, `"cotton 97 elastane 3 denim 340 g/m2"`, `"brocade, fibre unknown"`. How the
words are read stands in `advisor.project.phrases`.
"""

from __future__ import annotations

from msgspec.structs import replace

from advisor.errors import nearest
from advisor.knowledge.model import Entry, Knowledge, Mix
from advisor.project.garment import Cloth
from advisor.project.phrases.abroad import in_english
from advisor.project.phrases.lexicon import FILLERS
from advisor.project.phrases.reading import LONGEST, Reading, read_phrase, refuse
from advisor.project.phrases.shares import read_shares as _read_shares
from advisor.project.phrases.shares import refuse_shares, take_ratio
from advisor.project.phrases.tokens import words_of
from advisor.project.phrases.weights import take_weight

__all__ = [
    "Reading",
    "check_shares",
    "cloth_of",
    "make_cloth",
    "read_fibres",
    "read_phrase",
    "short_name",
]


def read_fibres(text: str, knowledge: Knowledge) -> Mix:
    """Fibres with or without shares, and nothing else: "silk", "cotton 97 elastane 3".

    Raises:
        InputError: with what was not understood and the nearest names.
    """
    rest, ratio = take_ratio(text[:LONGEST])
    words = [word for word in in_english(words_of(rest)) if word not in FILLERS]
    if not words or len(text) > LONGEST:
        raise refuse(text[:40], "fibres, such as 'silk' or 'cotton 97 elastane 3'")
    said = _read_shares(words, ratio, knowledge)
    strange = [word for word in said.left if word not in ("pure", "all")]
    if strange:
        known = nearest(strange[0], [*knowledge.fibre_names, "unknown"])
        raise refuse(strange[0], f"a fibre in '{text.strip()}'", known)
    if not said.shares:
        raise refuse(text[:40], "fibres, such as 'silk' or 'cotton 97 elastane 3'")
    check_shares(list(said.shares), text)
    return said.shares


def short_name(text: str) -> str:
    """A phrase without its weight, to call the cloth by."""
    return " ".join(take_weight(text)[0].strip(" ,;").split()) or text.strip()


def cloth_of(name: str, reading: Reading, knowledge: Knowledge) -> Cloth:
    """The cloth that a phrase stands for, with everything assumed named."""
    cloth = make_cloth(
        name,
        knowledge.entries[reading.entry],
        reading.mixes if reading.fibres else (),
        reading.weight,
    )
    assumed = cloth.assumed
    if reading.fibres and not reading.stated:
        assumed = (*assumed, "shares")
    if reading.weight_in_words:
        assumed = (*assumed, "weight")
    return replace(
        cloth,
        mixes=reading.mixes,
        shade=reading.shade,
        traits=dict(reading.traits),
        laid=reading.laid,
        notes=reading.notes,
        assumed=assumed,
        fibre_unknown=reading.fibre_unknown,
        named=frozenset() if reading.fibre_unknown else reading.named,
    )


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


def check_shares(shares: list[tuple[str, float | None]], text: str) -> None:
    """Refuse shares that are missing for some, out of range, doubled or do not make 100.

    Raises:
        InputError: saying which.
    """
    given = [share for _, share in shares if share is not None]
    names = [fibre for fibre, _ in shares]
    if len(set(names)) < len(names):
        raise refuse_shares(text.strip(), "each fibre once")
    if not given:
        return
    if len(given) < len(shares):
        raise refuse_shares(text.strip(), "a share for every fibre, or for none")
    total = sum(given)
    if any(share <= 0 for share in given):
        raise refuse_shares(
            text.strip(), "shares above 0; a fibre of which there is none is left out"
        )
    if abs(total - 100) > 0.5:
        raise refuse_shares(text.strip(), f"shares that make 100; these make {total:g}")
