"""Facts of the trade, common practice, each found in what is said of a fitting garment.

That darts come before the seams that cross them is a matter of the order of work.
"""

from __future__ import annotations

import re
from typing import Any

import pytest

from advisor.project.quick import quick_garment
from advisor.units import parse
from tests.told import data_of
from tests.typed import shipped as knowledge

Ask = dict[str, Any]
FACTS: list[tuple[str, Ask, dict[str, Any]]] = [
    (
        "half an inch is usual, a quarter convenient",
        {"layers": ["cotton poplin"]},
        {"why": "half inch usual quarter convenient choice"},
    ),
    (
        "brocade for a close fit is cut on grain",
        {"layers": ["silk brocade"]},
        {
            "pick": ("cut.grain", "lengthwise"),
            "why": "close fit grain not distort bias only stretch",
        },
    ),
    (
        "a pin is turned as it goes into brocade",
        {"layers": ["silk brocade"]},
        {"pick": ("pin.insertion", "turned as it goes in"), "why": "parts yarns not push"},
    ),
    (
        "weights do instead of pins",
        {"layers": ["silk brocade"]},
        {"pick": ("cut.hold", "weights"), "why": "weights instead pins"},
    ),
    (
        "thread matches each cloth",
        {"layers": ["wool suiting", "acetate lining"]},
        {"do": "match thread each cloth another colour re-thread"},
    ),
    (
        "the lining is stitched as the shell is",
        {"layers": ["wool suiting", "acetate lining"]},
        {"do": "lining as shell correction both"},
    ),
    (
        "every seam is pressed flat before the next crosses it",
        {"layers": ["cotton poplin"]},
        {"do": "press every seam flat before crosses"},
    ),
    (
        "curved seams are clipped before turning",
        {"layers": ["cotton poplin"], "seam": {"shape": "curved", "edge": "turned"}},
        {"do": "snip|clip inward curves notch"},
    ),
    (
        "an enclosed edge is pressed so that the join lies on the edge",
        {"layers": ["cotton poplin"], "seam": {"edge": "turned"}},
        {"do": "turning roll join"},
    ),
    (
        "overlocking trims as it goes, before or after assembly",
        {"layers": ["cotton poplin"], "maker": {"overlocker": "4-thread"}},
        {"do": "overlock before assembly after trims"},
    ),
    (
        "pleats are stitched down before they are pressed",
        {"layers": ["wool suiting", {"fabric": "wool suiting", "fullness": 2.5}]},
        {"do": "pleats stitch first press"},
    ),
    (
        "each cloth gathers differently under a gathering foot",
        {"layers": ["cotton poplin", {"fabric": "cotton lawn", "fullness": 2}]},
        {"test": "strip gathering foot differently"},
    ),
    (
        "stitching over pins risks a broken needle",
        {"layers": ["cotton poplin"]},
        {"caution": "pins broken|break"},
    ),
    (
        "a seam at the hip moves and needs strength",
        {"layers": ["linen suiting"], "seam": {"stress": "high"}},
        {"do": "hip moves strength"},
    ),
    (
        "an invisible zip wants its own foot",
        {"layers": ["cotton poplin", {"notion": "invisible zip"}]},
        {"pick": ("machine.foot", "concealed zip")},
    ),
    (
        "an invisible zip wants a cool press",
        {"layers": ["cotton poplin", {"notion": "invisible zip"}]},
        {"do": "concealed zip cool iron"},
    ),
]


def told(layers: list[Any], seam: Any = None, maker: Any = None) -> dict[str, Any]:
    """Everything that the tool says of a garment of one seam."""
    return data_of(quick_garment(layers, knowledge(), seam, maker), knowledge())


def lines_of(answer: dict[str, Any], part: str) -> list[str]:
    if part == "do":
        return [row["text"] for row in answer["advice"]]
    if part == "test":
        return [line for row in answer["tests"] for line in row["look_for"]]
    if part == "caution":
        return [row["text"] for row in answer["cautions"]]
    return [said["why"] for v in answer["verdicts"] for said in v["because"]]


@pytest.mark.parametrize(("fact", "ask", "found"), FACTS, ids=[f[0] for f in FACTS])
def test_facts_of_the_trade(fact: str, ask: Ask, found: dict[str, Any]) -> None:
    """What every workroom knows is in the verdicts, things to do, cautions or tests."""
    answer = told(ask["layers"], ask.get("seam"), ask.get("maker"))
    for part, wanted in found.items():
        if part == "pick":
            aspect, option = wanted
            picks = {v["pick"] for v in answer["verdicts"] if v["aspect"] == aspect}
            assert {option} == picks
            continue
        words = [re.compile(rf"\b(?:{w})", re.IGNORECASE) for w in wanted.split()]
        lines = lines_of(answer, part)
        assert any(all(w.search(line) for w in words) for line in lines), f"{fact}: {lines}"


@pytest.mark.parametrize("allowance", ["1/2 in", "1/4 in", "5/8 in", "10 mm"])
def test_the_maker_chooses_her_allowance(allowance: str) -> None:
    """A usual or a convenient allowance, or her own, is kept and raises no conflict."""
    answer = told(["cotton poplin"], {"allowance": allowance})
    picks = [v["pick"] for v in answer["verdicts"] if v["aspect"] == "seam.allowance"]
    assert [pytest.approx(parse("length", allowance))] == picks
    assert [] == answer["conflicts"]
