"""The arithmetic of a fibre label: order, small amounts, whole percent, the flame test."""

from __future__ import annotations

import pytest

from advisor.craft.fibrelabel import (
    Share,
    Small,
    content,
    content_text,
    whole_percents,
    without_test,
)

US = Small(5, "other fiber", "other fibers", frozenset({"spandex", "wool"}))

# Labels that the rules and their guides print as examples, with the source of each.
PUBLISHED = [
    ("cfr-16-303 303.3", US, {"acetate": 96, "spandex": 4}, "96% acetate, 4% spandex"),
    ("cfr-16-303 303.24", US, {"rayon": 60, "nylon": 40}, "60% rayon, 40% nylon"),
    ("cfr-16-303 303.24", US, {"rayon": 30, "cotton": 70}, "70% cotton, 30% rayon"),
    ("ftc-threading", US, {"cotton": 45, "polyester": 55}, "55% polyester, 45% cotton"),
    ("ftc-threading", US, {"rayon": 65, "polyester": 35}, "65% rayon, 35% polyester"),
    ("ftc-threading", US, {"cotton": 100}, "100% cotton"),
    (
        "eu-textile-guide",
        None,
        {"nylon": 5, "polyester": 15, "cotton": 80},
        "80% cotton, 15% polyester, 5% nylon",
    ),
]


def shares(mix: dict[str, float]) -> list[Share]:
    return [Share(name, name, percent) for name, percent in mix.items()]


@pytest.mark.parametrize(("source", "small", "mix", "label"), PUBLISHED)
def test_published_labels(
    source: str, small: Small | None, mix: dict[str, float], label: str
) -> None:
    """A mix is written as the example of the rule or its guide writes it."""
    assert source
    assert label == content_text(content(shares(mix), small), "")


@pytest.mark.parametrize(
    ("mix", "label"),
    [
        ({"cotton": 97, "polyester": 3}, "97% cotton, 3% other fiber"),
        ({"cotton": 94, "polyester": 3, "silk": 3}, "94% cotton, 6% other fibers"),
        ({"cotton": 95, "polyester": 5}, "95% cotton, 5% polyester"),
        ({"cotton": 98, "wool": 2}, "98% cotton, 2% wool"),
    ],
)
def test_small_amounts_of_the_us(mix: dict[str, float], label: str) -> None:
    """Under 5 % a fibre is other fiber, unless it is wool or has a use (cfr-16-303 303.3)."""
    assert label == content_text(content(shares(mix), US), "")


def test_every_fibre_of_small_amounts_is_counted() -> None:
    """What stands for the small amounts comes last and knows which fibres it counts."""
    lines = content(shares({"cotton": 94, "polyester": 3, "silk": 3}), US)
    assert ("polyester", "silk") == lines[-1].fibres
    assert lines[-1].others


def test_a_market_without_small_amounts_names_every_fibre() -> None:
    """Where the market has no rule for small amounts, each fibre stands by itself."""
    assert "97% cotton, 3% silk" == content_text(content(shares({"cotton": 97, "silk": 3})), "")


def test_fibres_of_one_name_are_one_entry() -> None:
    """Two nylons are written as one nylon, with both weights."""
    mix = [Share("wool", "wool", 55), Share("nylon-6", "nylon", 25), Share("nylon-66", "nylon", 20)]
    assert "55 % wool, 45 % nylon" == content_text(content(mix), " ")


@pytest.mark.parametrize(
    ("weights", "figures"),
    [
        ([33.4, 33.3, 33.3], [34, 33, 33]),
        ([50.2, 49.4, 0.4], [50, 49, 1]),
        ([99.6, 0.4], [99, 1]),
        ([66.7, 33.3], [67, 33]),
        ([0.2, 0.2, 99.6], [1, 1, 98]),
    ],
)
def test_whole_percents(weights: list[float], figures: list[int]) -> None:
    """Figures make 100, keep the order of the weights, and nothing that is there becomes 0."""
    assert figures == whole_percents(weights)


@pytest.mark.parametrize("mix", [{}, {"cotton": 0.0}, {"cotton": 60.0, "silk": 20.0}])
def test_a_content_that_is_none(mix: dict[str, float]) -> None:
    """No shares, a share of nought, or shares that do not make 100 are refused."""
    with pytest.raises(ValueError, match="shares"):
        content(shares(mix))


# 16 CFR 1610.1(d): plain cloth of 2.6 oz/yd2 or more, or of some fibres only (cfr-16-1610).
SPARED = ("polyester", "wool", "nylon")
FLAME = [
    ({"cotton"}, 88.2, False, True),
    ({"cotton"}, 88.1, False, False),
    ({"cotton"}, 300.0, True, False),
    ({"polyester", "wool"}, 30.0, True, True),
    ({"polyester", "elastane"}, 60.0, False, False),
    ({"silk"}, None, False, False),
]


@pytest.mark.parametrize(("fibres", "weight", "raised", "spared"), FLAME)
def test_who_is_spared_the_flame_test(
    fibres: set[str], weight: float | None, raised: bool, spared: bool
) -> None:
    """Weight spares plain cloth only, the named fibres spare any; what is not known spares none."""
    assert spared == without_test(fibres, weight, raised=raised, spared=SPARED, heavy=88.2)
