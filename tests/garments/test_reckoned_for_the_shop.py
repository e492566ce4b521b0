"""What a tailor and a dressmaker reckon by hand before they go to the shop, against the list."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.answer.model.needed import ToldNeed
from advisor.answer.pipeline import Parts, answer
from advisor.project.load import garment_of
from advisor.render.bought_words import bought_text
from advisor.render.printed.only import render_only
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, known, told

COAT = FOLDER / "more" / "wharfinger_overcoat.yaml"
KILT, FLEECE, TOP = (
    FOLDER / "more" / f"{name}.yaml" for name in ("kilt", "crew_fleece", "leggings")
)


def rows(item: str) -> list[ToldNeed]:
    """The rows of the coat's list that are called so."""
    return [each for each in told(COAT).kit or () if each.item == item]


def test_cloth_and_canvas_of_an_overcoat_are_bought_as_by_hand() -> None:
    """Coat 230 cm by hand, shrunk 4 % and squared; canvas 63 cm twice, for 96 is over its width."""
    cloth = told(COAT).cloth or ()
    buy = {row.fabric: row.buy_mm for row in cloth}
    assert (2500.0, 1400.0) == (buy["coat"], buy["hair canvas"])
    (canvas,) = [row for row in cloth if row.fabric == "hair canvas"]
    assert "front (2 of 48 cm × 63 cm)" in " ".join(canvas.says)


def test_an_elastic_is_listed_and_sewn_as_the_wrist_asks() -> None:
    """17 cm less 13 mm, twice, 25 mm more on each; the line of the place says the same."""
    (elastic,) = rows("braided elastic")
    assert (((2, 157.0),), 25.0, 400.0) == (elastic.cut_mm, elastic.ends_mm, elastic.buy_mm)
    assert "try it on" not in bought_text(elastic, "metric")
    printed = " ".join(render_only(told(COAT), "seams").split())
    assert "Cut braided elastic 15.7 cm long and 25 mm more for its ends" in printed


@pytest.mark.parametrize("file", [COAT, KILT, FLEECE])
def test_stay_tape_is_one_row(file: Path) -> None:
    """Named here and advised there, it is cut from one length."""
    (tape,) = [row for row in told(file).kit or () if row.item == "stay tape"]
    cut = sum((number or 0) * (each or 0) + (number or 0) * 30 for number, each in tape.cut_mm)
    assert tape.buy_mm is not None
    assert cut <= tape.buy_mm < cut + 100.1


def test_a_hem_in_two_rows_asks_for_one_twin_needle() -> None:
    """Its size stands on one row; the other says where its second thread comes from."""
    twin = [row.item for row in told(TOP).kit or () if "twin" in row.item]
    assert ["stretch twin 75"] == [item for item in twin if not item.startswith("second spool")]


def test_a_strip_is_told_as_a_tape_is_measured() -> None:
    """Two side seams of 26 in, two edges each, a tenth for joins: 114.4 in, which is 3 1/4 yd.

    The square gives all of that: 117 in of 32 mm, two corners and the joins besides.
    """
    text = (
        "garment: Quay skirt\nunits: us\nfabrics: {twill: cotton twill}\nseams:\n"
        "  - {name: side, layers: [twill, twill], length: 26 in, times: 2, finish: bound}\n"
    )
    made = garment_of(parse_yaml(text, "skirt.yaml"), known())
    found = answer(made, known(), Parts(shopping=True))
    (strip,) = [row.strip for row in found.kit or () if row.strip is not None]
    printed = " ".join(render_only(found, "kit").split())
    assert "3 1/4 yd of it 1 to 1 1/4 in wide" in printed
    assert strip.square_mm is not None
    side, wide, join = strip.square_mm + 0.5, 32, 12
    assert 117 * 25.4 * wide + 2 * wide**2 <= side**2 - 2 * join * side


@pytest.mark.parametrize(("name", "number"), [("waist hook", 1), ("back hooks", None)])
def test_a_waist_hook_is_one(name: str, number: int | None) -> None:
    """Nobody has to count what is called one; of hooks she says how many."""
    text = (
        "garment: Quay skirt\nfabrics: {twill: cotton twill}\nseams:\n"
        f"  - {{name: {name}, kind: fastening, fastening: hook and eye, on: twill}}\n"
    )
    found = answer(
        garment_of(parse_yaml(text, "s.yaml"), known()), known(), Parts(shopping=True, order=True)
    )
    (hook,) = [row for row in found.kit or () if row.item.startswith("hook")]
    assert (number, 1 if number else 0) == (hook.number, hook.spare)
