"""What must hold for words beside any cloth's name."""

from __future__ import annotations

from functools import cache

from hypothesis import given
from hypothesis import strategies as st

from advisor.errors import InputError
from advisor.knowledge.model import Knowledge
from advisor.overlay.cache import load_knowledge
from advisor.project.phrase import Reading, read_phrase
from advisor.project.phrases import everyday, lexicon


@cache
def knowledge() -> Knowledge:
    """The knowledge that is shipped."""
    return load_knowledge()


_FIBRES = lexicon.FIBRE_WORDS.keys() | lexicon.SAME_WORD.keys()
WORDS = sorted(
    frozenset().union(
        everyday.COLOURS,
        everyday.PATTERNS,
        everyday.USES,
        everyday.QUALITIES,
        everyday.FILLERS,
        lexicon.USES,
        lexicon.PATTERNS,
        lexicon.QUALITIES,
        lexicon.FILLERS,
        lexicon.SHADES,
    )
    - _FIBRES
)


def names() -> list[str]:
    """Every name of a cloth."""
    entries = knowledge().entries
    return sorted(n for n, id_ in knowledge().names.items() if entries[id_].kind == "cloth")


def limit(reading: Reading) -> float:
    """The most heat that whatever the cloth may be of bears."""
    fibres = knowledge().fibres
    return min(fibres[fibre].limit for mix in reading.mixes for fibre, _ in mix)


@given(st.sampled_from(WORDS), st.sampled_from(names()), st.booleans())
def test_a_word_of_use_or_look_never_raises_the_limit(word: str, name: str, before: bool) -> None:
    """A colour, a pattern, a use or a filler beside a name leaves the cloth as tender as it was."""
    try:
        reading = read_phrase(f"{word} {name}" if before else f"{name} {word}", knowledge())
    except InputError:
        return
    assert limit(reading) <= limit(read_phrase(name, knowledge()))


@given(st.sampled_from(sorted(lexicon.BLEND)), st.sampled_from(names()), st.booleans())
def test_a_word_of_a_mixture_never_raises_the_limit(word: str, name: str, before: bool) -> None:
    """Half, mostly or nearly a silk satin is no silk satin: the rest may be as tender as any."""
    try:
        reading = read_phrase(f"{word} {name}" if before else f"{name} {word}", knowledge())
    except InputError:
        return
    assert limit(reading) <= limit(read_phrase(name, knowledge()))


CLOTHS = (
    *(("wool", "coating"), ("wool", "flannel"), ("cotton", "denim"), ("cotton", "poplin")),
    *(("silk", "satin"), ("linen", "suiting"), ("viscose", "jersey"), ("polyester", "crepe")),
)
OTHERS = ("nylon", "elastane", "polyester", "cotton", "viscose", "acrylic")
FORMS = (
    "{a} {p} % {b} {q} % {cloth}",
    "{a} {p} % {b} {q} % {a} {cloth}",
    "{a} {p} {b} {q} {a} {cloth}",
    "{p} % {a} {q} % {b} {cloth}",
    "{p} % {a} {q} % {b} {a} {cloth}",
    "{a} {cloth} {p} % {a} {q} % {b}",
    "{a} {cloth} {a} {p} % {b} {q} %",
    "{cloth} {a} {p}% {b} {q}%",
    "{cloth} {q}% {b} {p}% {a}",
    "{a} {p} % {b} {cloth}",
    "{a} {q} % {b} {cloth}",
)
"""Ways to say that a cloth is `p` of one fibre and `q` of another, its own fibre said again."""


@given(
    st.sampled_from(CLOTHS),
    st.sampled_from(OTHERS),
    st.integers(min_value=51, max_value=97),
    st.sampled_from(FORMS),
)
def test_a_share_never_goes_to_the_other_fibre(
    cloth: tuple[str, str], other: str, share: int, form: str
) -> None:
    """Name before share or share before name, and the fibre of the cloth's name once more."""
    main, name = cloth
    if main == other:
        return
    text = form.format(a=main, b=other, p=share, q=100 - share, cloth=name)
    mixes = read_phrase(text, knowledge()).mixes
    assert {main: share, other: 100 - share} == dict(mixes[0]), text
