"""The first screen of an answer: short, at any width, the worst first, nothing grave left out."""

from __future__ import annotations

from functools import cache
from itertools import combinations

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import answer
from advisor.project.quick import quick_garment
from advisor.render.screen.ask import LINES, ROOMS, ask_screen, ask_text
from advisor.render.screen.blocks import Block, Columns, Heading, Para, Rows, Title
from advisor.render.screen.draw import NARROW, drawn
from tests.typed import shipped as known

CLOTHS = (
    "silk organza",
    "linen suiting",
    "cotton velveteen",
    "acetate satin",
    "viscose jersey",
    "wool coating",
    "cotton denim",
    "nylon tulle",
    "polyester chiffon",
    "sequin fabric",
)
PAIRS = list(combinations(CLOTHS, 2))[:40]


@cache
def told(*cloths: str) -> Answer:
    return answer(quick_garment(list(cloths), known()), known())


@pytest.mark.parametrize("pair", PAIRS, ids=" + ".join)
def test_two_cloths_are_answered_on_one_screen(pair: tuple[str, str]) -> None:
    """24 to 40 lines of 80 columns, also where a clash has to be told first."""
    text = ask_text(told(*pair), 80)
    lines = text.splitlines()
    assert max(map(len, lines)) <= 80
    assert 24 <= len(lines) <= LINES


@pytest.mark.parametrize("width", [60, 80, 120])
def test_no_line_is_longer_than_the_window(width: int) -> None:
    """Words wrap; none is broken and none runs out of the window."""
    text = ask_text(told("cotton velveteen", "acetate satin"), width)
    assert max(map(len, text.splitlines())) <= width
    wanted = [
        word
        for seam in told("cotton velveteen", "acetate satin").irons[:1]
        for word in seam.text.split()
    ]
    assert all(word in text.split() or f"{word}" in text for word in wanted)


def test_a_very_narrow_window_is_taken_as_a_narrow_one() -> None:
    """Nothing is squeezed beyond reading."""
    assert ask_text(told("silk organza"), 5) == ask_text(told("silk organza"), NARROW)


@pytest.mark.parametrize("room", ROOMS)
def test_no_clash_no_setting_and_no_danger_to_eyes_is_left_out(room: object) -> None:
    """However close the screen is set, these stand on it."""
    one = told("cotton velveteen", "acetate satin")
    text = " ".join(drawn(ask_screen(one, room), 100).split())  # type: ignore[arg-type]
    for conflict in one.conflicts:
        assert " ".join(conflict.message.split()) in text
    assert one.irons[0].text in text
    for caution in one.cautions:
        if caution.kind == "eye" and not caution.general:
            assert caution.text in text


def test_the_clash_comes_before_what_is_set() -> None:
    """What can go wrong is read first, with what to do instead."""
    text = ask_text(told("cotton velveteen", "acetate satin"), 80)
    assert text.index("acetate satin bears") < text.index("SET FOR") < text.index("PREPARE")
    assert text.index("   do  ") < text.index("SET FOR")


def test_the_iron_is_a_setting_and_not_only_a_limit() -> None:
    """One dot is a band that reaches beyond 110 °C, so its low end is set."""
    iron = told("nylon tulle").irons[0]
    assert ("one dot", True) == (iron.mark, iron.low_end)
    assert iron.start_c <= iron.most_c <= iron.limit_c == 110.0
    assert "one dot, at its low end" in ask_text(told("nylon tulle"), 80)


def test_an_iron_that_starts_a_dot_lower_is_not_told_to_be_set_at_the_higher_one() -> None:
    """110 °C is one dot: who reads two dots first would set them, and have steam at once."""
    screen = ask_text(told("poplin"), 80)
    assert "iron      start at one dot, 110 °C; at most two dots" in screen
    assert "steam" not in screen.split("PREPARE")[0]


def test_where_no_dot_is_cool_enough_the_fingers_are_told() -> None:
    """No temperature is printed as a setting where no iron may come."""
    (iron,) = [i for i in told("sequin fabric").irons if i.scope == "seam"]
    assert iron.mark is None
    assert iron.text.startswith("no iron")


def test_a_part_that_goes_in_afterwards_is_named_where_it_keeps_the_iron_off() -> None:
    """The cloth is pressed before its elastic is in, so "no iron" is said of the elastic alone."""
    text = " ".join(ask_text(told("viscose challis", "elastic"), 80).split())
    assert "no iron over the elastic: it bears 93 °C" in text
    assert "Press the viscose challis before the elastic goes in" in text


def test_what_is_done_because_two_cloths_meet_is_told_before_what_each_asks_for() -> None:
    """The rib is cut short for the knit beside it: that is what she asked, not a new needle."""
    text = " ".join(ask_text(told("rib knit", "sweatshirt knit"), 80).split())
    assert " do Cut the rib two thirds to three quarters as long as its edge" in text


@pytest.mark.parametrize("pair", [("swim knit", "swimwear elastic"), ("lace", "silk organza")])
def test_no_trifle_stands_before_what_the_pair_is_sewn_by(pair: tuple[str, str]) -> None:
    """Nobody pleats a swimsuit, and a rough nail comes after the basting of a lace."""
    text = ask_text(told(*pair), 80)
    assert "pleats" not in text.split("PREPARE")[1].split("avoid")[0]
    assert "rough nail" not in text


def test_of_many_stitches_that_would_have_done_the_first_few_are_told() -> None:
    """What gave way is said in a line; overlock stitches that she has no machine for fill two."""
    lost = " ".join(
        ask_text(told("cotton jersey", "coil zip"), 80).split("Had to give way:")[1].split()
    )
    assert lost.startswith("cotton jersey wanted narrow zigzag (304) or straight stretch stitch")
    assert "or the like" in lost
    assert "(514)" not in lost


def test_what_holds_for_any_sewing_is_told_once_and_in_one_place() -> None:
    """The usual care stands in its own row, and its long form is not among what to mind."""
    one = told("silk organza", "linen suiting")
    text = ask_text(one, 80)
    usual = [c for c in one.cautions if c.general]
    assert usual
    flat = " ".join(text.split())
    for caution in usual:
        assert 1 == flat.count(caution.general)
        assert caution.text not in flat or caution.text == caution.general


def test_blocks_are_drawn_with_their_parts() -> None:
    """Each kind of block is drawn, and nothing in it can command a terminal."""
    blocks: list[Block] = [
        Title("T\x1b[31m", "state"),
        Heading("head"),
        Para("para", True, " 1 "),
        Rows((("label", "text"),)),
        Columns(("", "a", "b"), (("row", "x", "y"),)),
    ]
    text = drawn(blocks, 60)
    assert "\x1b" not in text
    for word in ("T", "state", "HEAD", " 1 para", "label", "text", "row", "x", "y"):
        assert word in text


def test_emphasis_is_added_and_no_word_changes() -> None:
    """A terminal gets emphasis around the very same words."""
    import re

    one = told("silk organza", "linen suiting")
    plain, bright = ask_text(one, 80), ask_text(one, 80, colour=True)
    assert "\x1b[" in bright
    assert plain.split() == re.sub(r"\x1b\[[0-9;]*m", "", bright).split()


def test_what_is_written_for_the_very_cloth_comes_first_and_no_rule_fills_the_room() -> None:
    """Tartan is told of its bars at once, and the second thing of a rule waits for other rules."""
    text = " ".join(ask_text(told("tartan")).split())
    assert "do Buy one repeat more" in text
    assert "If its line shows" not in text
    cord = " ".join(ask_text(told("bedford cord")).split())
    assert "Slip strips of brown paper" in cord
    assert "bias strips" in cord
