"""Colours: how light they are, and which are dark or pale."""

from __future__ import annotations

import pytest

from advisor.answer.pipeline import answer
from advisor.errors import InputError
from advisor.project.colours import lightness, read_colour
from advisor.project.phrase import read_phrase
from advisor.project.quick import asked_garment
from advisor.render.screen.ask import ask_text
from tests.typed import shipped


@pytest.mark.parametrize(
    ("code", "light"),
    # L* of the sRGB primaries and greys under D65, by the formulas of CIE 15 and IEC 61966-2-1.
    [
        ("#000000", 0.0),
        ("#ffffff", 100.0),
        ("#ff0000", 53.24),
        ("#00ff00", 87.73),
        ("#0000ff", 32.30),
        ("#777777", 50.03),
        ("#fff", 100.0),
    ],
)
def test_lightness_is_that_of_the_standard(code: str, light: float) -> None:
    """Black is 0, white 100, and the primaries lie where the standard puts them."""
    assert light == pytest.approx(lightness(code), abs=0.01)


@pytest.mark.parametrize(
    ("written", "shade"),
    [
        ("#27455f", "dark"),
        ("#F5F5DC", "pale"),
        ("#777777", "middle"),
        ("navy", "dark"),
        ("Pale blue", "pale"),
        ("rust", ""),
        ("red", "middle"),
        ("dark red", "dark"),
        ("deep purple", "dark"),
        ("light blue", "pale"),
        ("pale brown", "pale"),
        ("pink", ""),
        ("light brown", ""),
        ("black and white", "dark and pale"),
    ],
)
def test_a_colour_tells_its_shade_or_nothing(written: str, shade: str) -> None:
    """Digits always tell dark, middle or pale; words only where they are sure."""
    assert shade == read_colour(written)[1]


@pytest.mark.parametrize("written", ["#12", "#12345g", "#", "#1234567"])
def test_a_broken_code_is_refused(written: str) -> None:
    """A code of the wrong length or digits is no colour."""
    with pytest.raises(InputError):
        read_colour(written)


@pytest.mark.parametrize(
    ("phrase", "shade"),
    [
        ("red silk dupion", "middle"),
        ("dark red silk dupion", "dark"),
        ("deep purple velvet", "dark"),
        ("light blue denim", "pale"),
        ("light brown wool", ""),
        ("breton stripe jersey, navy and white", "dark and pale"),
        ("royal oxford shirting", ""),
        ("yellow silk dupion", ""),
    ],
)
def test_a_colour_in_a_phrase_tells_what_it_tells_by_itself(phrase: str, shade: str) -> None:
    """A strong colour is strong wherever it is said; of two both count, for the dye of one."""
    assert shade == read_phrase(phrase, shipped()).shade


@pytest.mark.parametrize(
    "pair",
    [("red silk dupion", "ivory silk organza"), ("navy pure wool melton", "cream silk habotai")],
    ids=" + ".join,
)
def test_a_strong_colour_beside_a_pale_one_is_warned_of(pair: tuple[str, str]) -> None:
    """On the first screen: nothing else there says that the dye may run."""
    told = answer(asked_garment(pair, shipped()), shipped())
    assert "A strong colour beside a pale one may run" in " ".join(ask_text(told).split())
