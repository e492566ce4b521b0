"""No word for a cloth loosens what guards it: over all cloths, their names, and all fibres."""

from __future__ import annotations

import pytest

from advisor.claims.speakers import cloth_says
from advisor.errors import InputError
from advisor.knowledge.model import LIMIT_ASPECT, Entry, Mix
from advisor.project.garment import Cloth
from advisor.project.phrase import cloth_of, make_cloth, read_phrase
from tests.typed import shipped as knowledge

Bounds = tuple[float, float, float]
_ASPECTS = (LIMIT_ASPECT, "press.moisture", "press.dwell")
_OPEN = 1000.0
_WITH_ALIASES = ("cotton", "linen")
"""The fibres that bear most; the others are tried with the first name of each cloth."""


def bounds(cloth: Cloth) -> Bounds:
    """The hottest iron, wettest press and longest dwell that a cloth's guards let it have."""
    said = [word.claim for word in cloth_says(cloth, knowledge())]
    tops = [
        min((c.span[1] for c in said if c.aspect == a and c.span and c.guards), default=_OPEN)
        for a in _ASPECTS
    ]
    return (tops[0], tops[1], tops[2])


def unknown(entry: Entry) -> Bounds:
    """What a cloth bears while nobody has said of what it is."""
    return bounds(make_cloth("it", entry, (), None))


def looser(phrase: str, entry: Entry | None = None) -> str:
    """A line where a phrase lets a cloth bear more than its entry of unknown fibre."""
    reading = read_phrase(phrase, knowledge())
    own = entry or knowledge().entries[reading.entry]
    now, before = bounds(cloth_of("it", reading, knowledge())), unknown(own)
    if all(a <= b for a, b in zip(now, before, strict=True)):
        return ""
    return f"{phrase}: {now} where {own.id} of unknown fibre has {before}"


def pure_on_file(entry: Entry, fibre: str) -> bool:
    """Whether the cloth of that fibre alone is on file on more than memory."""
    pure: Mix = ((fibre, 100.0),)
    kinds = {knowledge().sources[s.split(" ", 1)[0]].kind for s in entry.sold_sources}
    return pure in entry.mixes and bool(kinds - {"memory", "estimate"})


def cloth_names() -> list[tuple[str, str]]:
    """Every name of every cloth with its id."""
    return [(name, e.id) for e in knowledge().fabrics() for name in (e.name, *e.also)]


def test_no_name_loosens_its_cloth() -> None:
    """Whatever a cloth is called, it bears no more than the same cloth of unknown fibre."""
    names = cloth_names()
    assert len(names) > 600
    entries = knowledge().entries
    assert [] == [line for name, id_ in names if (line := looser(name, entries[id_]))]


@pytest.mark.parametrize("fibre", sorted(knowledge().fibres))
def test_no_leading_fibre_loosens_a_cloth(fibre: str) -> None:
    """A fibre put before a cloth raises no bound, unless that pure cloth is on file."""
    lines = []
    for entry in knowledge().fabrics():
        if pure_on_file(entry, fibre):
            continue
        for name in (entry.name, *(entry.also if fibre in _WITH_ALIASES else ())):
            phrase = f"{knowledge().fibres[fibre].name} {name}"
            try:
                reading = read_phrase(phrase, knowledge())
            except InputError:
                continue
            taken = knowledge().entries[reading.entry]
            if not pure_on_file(taken, fibre):
                lines.append(looser(phrase))
    assert len(lines) > 50
    assert [] == [line for line in lines if line]


def test_word_order_does_not_matter() -> None:
    """A name read backwards is the same cloth of the same mixes."""
    wrong = []
    for name, _ in cloth_names():
        if any(letter.isdigit() for letter in name):
            continue
        there, back = (
            read_phrase(name, knowledge()),
            read_phrase(" ".join(reversed(name.replace("-", " ").split())), knowledge()),
        )
        if (there.entry, there.mixes) != (back.entry, back.mixes):
            wrong.append(f"{name}: {there.entry} and {back.entry}")
    assert [] == wrong


def test_a_word_that_nobody_knows_raises_nothing() -> None:
    """A word left out is said, and the cloth bears no more than without it."""
    wrong = []
    for entry in knowledge().fabrics():
        phrase = f"qworzzik {entry.name}"
        reading = read_phrase(phrase, knowledge())
        if not any("qworzzik" in fact for fact, _ in reading.notes):
            wrong.append(f"{phrase}: not said")
        wrong.append(looser(phrase))
    assert [] == [line for line in wrong if line]


def test_what_is_always_there_stays() -> None:
    """Film, coat and elastane stay whatever fibre and share is named."""
    for phrase, part in (
        ("silk lame", "metallic-film"),
        ("cotton 100 lame", "metallic-film"),
        ("cotton stretch denim", "elastane"),
        ("100% cotton stretch denim", "elastane"),
        ("cotton 100 vinyl", "chlorofibre"),
    ):
        mixes = read_phrase(phrase, knowledge()).mixes
        assert all(any(fibre == part for fibre, _ in mix) for mix in mixes), phrase


def test_only_a_share_fixes_a_mix() -> None:
    """Linen suiting may hold cotton or viscose; 100 %, pure and all say that it does not."""
    assert len(read_phrase("linen suiting", knowledge()).mixes) > 1
    for phrase in ("100% linen suiting", "pure linen suiting", "all linen suiting"):
        assert ((("linen", 100.0),),) == read_phrase(phrase, knowledge()).mixes
