"""The first screen for any two cloths: it fits, and no word on it is said twice or in another unit.

Pairs are drawn from forty unlike cloths so that each meets two others; `ADVISOR_PAIRS=all` tries
every pair of them.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import combinations

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Parts, answer
from advisor.cli.output import with_units
from advisor.project.quick import asked_garment
from advisor.render.screen.ask import LINES, ROOMS, ask_screen, ask_text
from advisor.render.screen.blocks import Block, Columns, Para, Rows
from tests.typed import CHECKOUT, typed
from tests.typed import shipped as known

CLOTHS = (
    "silk organza", "linen suiting", "silk velvet", "acetate satin", "nylon tulle", "leather",
    "faux leather", "sequinned tulle", "wool crepe", "cotton poplin", "viscose jersey",
    "silk charmeuse", "polyester chiffon", "denim", "wool coating", "corduroy", "lace", "brocade",
    "lame", "fleece", "faux fur", "scuba", "silk habotai", "cotton lawn", "rayon challis",
    "polyester lining", "waxed cotton", "vinyl", "suede", "beaded lace", "mohair", "tweed",
    "power mesh", "swim knit", "taffeta", "boiled wool", "pleated polyester", "devore",
    "glitter tulle", "cork fabric",
)  # fmt: skip
FIRST = (
    ("denim", "wool coating"), ("denim", "mohair"), ("denim", "devore"), ("silk velvet", "denim"),
    ("wool crepe", "cork fabric"), ("wool crepe", "waxed cotton"), ("taffeta", "boiled wool"),
    ("cotton lawn", "rayon challis"),
)  # fmt: skip
"""Pairs of which much is to be said."""
FEWEST = 24
WRONG = {
    "a word twice": re.compile(r"\b([A-Za-z]+) \1\b"),
    "one choice twice": re.compile(r"(?:^|[,;:] )(\w[\w' -]*) or \1(?: in |$|[,.;])"),
    "spaces": re.compile(r"\S {2,}\S| [.,;:)]|\( "),
    "marks": re.compile(r"\.\.|,,|;;|[.,;:] ?[.,;](?!\w)"),
}
METRIC = re.compile(r"\d (?:°C|cm|g/m²|m|kg|g)(?![\w²])")
CLOSED = ("do", "try first", "mind", "always")
"""Rows that are whole sentences."""


def _pairs() -> list[tuple[str, str]]:
    if os.environ.get("ADVISOR_PAIRS") == "all":
        return list(combinations(CLOTHS, 2))
    many = len(CLOTHS)
    return [*FIRST, *((one, CLOTHS[(at * 7 + 9) % many]) for at, one in enumerate(CLOTHS))]


PAIRS = [pair for pair in _pairs() if pair[0] != pair[1]]


@cache
def _told(pair: tuple[str, str], units: str) -> Answer:
    garment = with_units(asked_garment(pair, known()), units)
    return answer(garment, known(), Parts(timed=False))


def _texts(blocks: Sequence[Block]) -> Iterator[tuple[str, str]]:
    """Each text of a screen by itself, with the label that it stands behind."""
    for block in blocks:
        match block:
            case Para(text):
                yield "", text
            case Rows(rows):
                label = ""
                for own, text in rows:
                    label = own or label
                    yield label, text
            case Columns(_, rows):
                yield from ((label, cell) for label, *cells in rows for cell in cells)


@pytest.mark.parametrize("pair", PAIRS, ids=" + ".join)
@pytest.mark.parametrize("units", ["metric", "us"])
def test_two_cloths_fit_one_screen(pair: tuple[str, str], units: str) -> None:
    """24 to 40 lines of 80 columns, also where a clash has to be told."""
    lines = ask_text(_told(pair, units)).splitlines()
    assert FEWEST <= len(lines) <= LINES


@pytest.mark.parametrize("pair", PAIRS, ids=" + ".join)
@pytest.mark.parametrize("units", ["metric", "us"])
def test_nothing_reads_oddly(pair: tuple[str, str], units: str) -> None:
    """No word twice, no choice that is another's part, no slip of a mark or a unit."""
    texts = list(_texts(ask_screen(_told(pair, units), ROOMS[0])))
    wrong = [
        (what, text) for _, text in texts for what, found in WRONG.items() if found.search(text)
    ]
    foreign = [text for _, text in texts if units == "us" and METRIC.search(text)]
    unended = [text for label, text in texts if label in CLOSED and not text.endswith((".", "?"))]
    assert ([], [], []) == (wrong, foreign, unended)


@pytest.mark.parametrize("text", ["pins or pins in the allowance", "in in all", "so ,", "end.."])
def test_the_search_finds_what_reads_oddly(text: str) -> None:
    """What was seen once is found again."""
    assert any(found.search(text) for found in WRONG.values())


def test_a_longest_stitch_is_a_least_number_to_the_inch() -> None:
    """The shorter a stitch, the more of them: at most 2.5 mm is at least 10 per inch."""
    pair = ("wool crepe", "cork fabric")
    assert "wanted stitch at most 2.5 mm" in ask_text(_told(pair, "metric"))
    assert "wanted stitch at least 10 stitches per inch" in ask_text(_told(pair, "us"))


@pytest.mark.parametrize("name", ["kilt", "bothy_coat", "lined_trousers", "quay_bodice"])
def test_each_line_of_the_shopping_list_ends(name: str) -> None:
    """Thread that is not counted, what the cloths rule out and what is not bought yet, too."""
    file = CHECKOUT / "tests" / "garments" / "more" / f"{name}.yaml"
    text = typed("sheet", str(file), "--only", "shopping").out
    listed = text.split("ON WHOSE WORD")[0]
    items = re.sub(r"\n {3,}", " ", listed).splitlines()
    ended = re.compile(r"[.?](?: ?\[.*\])?$")
    assert [] == [line for line in items if line[:2] == "  " and not ended.search(line)]
