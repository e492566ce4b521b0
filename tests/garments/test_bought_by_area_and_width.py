"""A pinafore of corduroy and suede over a voile blouse, at the counter: in which unit, how wide."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from advisor.answer.model.answer import Answer
from advisor.answer.model.needed import ToldNeed
from advisor.render.bought_words import bought_text
from advisor.render.printed.only import render_only
from tests.garments.whole import told

PINAFORE = Path(__file__).parent / "more" / "lamp_trimmer_pinafore.yaml"


@cache
def pinafore() -> Answer:
    """All that is told of it."""
    return told(PINAFORE)


def rows(item: str) -> list[ToldNeed]:
    """The rows of its list whose name begins so."""
    return [each for each in pinafore().kit or () if each.item.startswith(item)]


def printed(part: str) -> str:
    """A part of the sheet as one line."""
    return " ".join(render_only(pinafore(), part).split())


def test_suede_is_bought_by_the_square_foot() -> None:
    """1080 + 560 + 512 cm² are 2.32 sq ft, 3.47 with what is lost; a strap is 90 cm long."""
    text = printed("cloth")
    assert "suede. Buy: 0.33 m² (3 1/2 sq ft)" in text
    assert "every" not in text.split("suede.")[1].split("blouse")[0]
    assert "strap is 60 mm × 90 cm" in text


def test_interfacing_is_reckoned_from_the_waistband_and_the_flaps() -> None:
    """A band of 80 × 9 cm and two of the four flaps below it: 17 cm, so 20 cm."""
    row = next(row for row in pinafore().cloth or () if row.fabric == "woven fusible interfacing")
    assert ("20 cm", 3) == (row.buy, row.pieces)
    cut = "waistband (1 of 80 cm × 90 mm), flap (2 of 16 cm × 80 mm)"
    assert f"by what it backs: {cut}." in " ".join(row.says)


def test_the_elastic_of_the_waist_is_not_that_of_the_wrists() -> None:
    """25 mm and 10 mm; the waist's is tried on, the wrists' stretch is said."""
    assert [
        (
            "40 cm, 25 mm wide as is usual (1 of 32 cm, and 25 mm more for its ends; no stretch is "
            "said, so try it on before you cut it)"
        ),
        (
            "50 cm, 10 mm wide as is usual (2 of 20 cm, 40 cm together, and 25 mm more on each for "
            "its ends)"
        ),
    ] == [bought_text(row, "metric") for row in rows("woven elastic")]


def test_the_row_of_buttons_has_as_many_as_it_has_holes() -> None:
    """Seven holes on 54 cm, of whose buttons only the length is said, and one to spare."""
    (row,) = rows("shell button")
    assert "7, as large as you choose, and 1 to spare" == bought_text(row, "metric")
    assert not [check for check in pinafore().checks or () if check.id == "buttons"]


def test_each_colour_is_sewn_with_one_reel() -> None:
    """Corduroy and suede, of one colour to any eye, share a reel, and no second size is bought."""
    colours = [row.colour for row in pinafore().thread or ()]
    assert sorted(colours) == sorted(set(colours))
    assert 2 == len(colours)


def test_the_channel_is_a_little_wider_than_its_elastic() -> None:
    """28 to 31 mm for 25, 13 to 16 for 10: so it neither rolls nor twists."""
    made = {place.name: place.made for place in pinafore().seams}
    assert (
        "the channel 28 to 31 mm wide for woven elastic of the usual 25 mm"
        in made["back waist elastic"]
    )
    assert (
        "the channel 13 to 16 mm wide for woven elastic of the usual 10 mm" in made["sleeve wrist"]
    )
