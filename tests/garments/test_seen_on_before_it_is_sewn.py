"""Darts, curves, caps and sleeves that are seen on the body before they are sewn for good.

What is told apart: a pattern that has been tried, one of which nobody says so, and a new one. All
is common practice of the trade.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.answer.gapwords import told_gaps
from advisor.answer.teller import Teller
from advisor.construction.agreement import disagreements
from advisor.decide.advise import advise
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, read, stands
from tests.typed import typed

BLOUSE = """garment: Reading room blouse
fitting: to the body
maker: {machine: household, overlocker: 4-thread, feet: [standard, buttonhole]}
fabrics:
  shell: {fabric: cotton poplin, weight: 120 g/m2, width: 140 cm}
seams:
  - {name: bust dart, layers: [shell], length: 14 cm, times: 2}
  - {name: elbow dart, layers: [shell], length: 8 cm, times: 2}
  - {name: back yoke, layers: [shell, shell], length: 40 cm}
  - {name: shoulder, layers: [shell, shell], length: 12 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 40 cm, times: 2}
  - {name: neck facing, layers: [shell, shell], length: 60 cm, edge: turned, shape: curved}
  - {name: armhole, layers: [shell, {use: shell, fullness: 1.06}], length: 46 cm, times: 2}
  - {name: sleeve seam, layers: [shell, shell], length: 42 cm, times: 2}
  - {name: sleeve hem, layers: [shell], length: 28 cm, edge: hem, times: 2}
  - {name: front buttonholes, fastening: buttonholes, on: shell, number: 6}
  - {name: front buttons, layers: [shell, {notion: shell button}], times: 6}
  - {name: hem, layers: [shell], length: 104 cm, edge: hem}
"""
TO_BODY, TRIED = "fitting: to the body\n", "fitting: to the body\npattern: tried\n"
JACKET = """garment: Tram depot jacket
fitting: to the body
pattern: new
maker: {machine: household, overlocker: 4-thread, feet: [standard, buttonhole]}
fabrics:
  shell: {fabric: wool coating, fibres: {wool: 100}, weight: 420 g/m2, width: 150 cm}
  lining: {fabric: satin, fibres: {silk: 100}, weight: 90 g/m2, width: 140 cm}
seams:
  - {name: front princess, layers: [shell, shell], length: 52 cm, shape: curved, times: 2}
  - {name: shoulder, layers: [shell, shell], length: 12 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 40 cm, times: 2}
  - {name: armhole, layers: [shell, {use: shell, fullness: 1.06}], length: 46 cm, times: 2}
  - {name: sleeve seam, layers: [shell, shell], length: 42 cm, times: 2}
  - {name: sleeve hem, layers: [shell], length: 28 cm, edge: hem, times: 2}
  - {name: front facing, layers: [shell, shell], length: 70 cm, edge: turned, times: 2}
  - {name: hem, layers: [shell], length: 110 cm, edge: hem}
  - {name: lining shoulder, layers: [lining, lining], length: 12 cm, times: 2}
  - {name: lining side, layers: [lining, lining], length: 38 cm, times: 2}
  - {name: lining sleeve seam, layers: [lining, lining], length: 40 cm, times: 2}
  - {name: lining armhole, layers: [lining, lining], length: 46 cm, times: 2}
  - {name: lining to facing, layers: [shell, lining], length: 180 cm, shape: curved}
"""
LINING_ARMHOLE = "  - {name: lining armhole, layers: [lining, lining], length: 46 cm, times: 2}\n"
LINING_SLEEVE = (
    "  - {name: lining sleeve seam, layers: [lining, lining], length: 40 cm, times: 2}\n"
)
LINING_HEM = "  - {name: lining sleeve hem, layers: [lining], length: 26 cm, edge: hem, times: 2}\n"
TOP = """garment: Tide table top
fitting: to the body
pattern: tried
maker: {machine: household, overlocker: 4-thread}
fabrics:
  shell: {fabric: FABRIC, width: 150 cm}
seams:
  - {name: shoulder, layers: [shell, shell], length: 12 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 40 cm, times: 2}
  - {name: neckband, layers: [shell, {use: shell, stretched: 1.1}], length: 38 cm, shape: curved}
  - {name: armhole, layers: [shell, shell], length: 42 cm, shape: curved, times: 2}
  - {name: sleeve seam, layers: [shell, shell], length: 42 cm, times: 2}
  - {name: sleeve hem, layers: [shell], length: 20 cm, edge: hem, times: 2}
  - {name: hem, layers: [shell], length: 96 cm, edge: hem}
"""
NECK = "no-way-for-the-head"


def gaps(text: str) -> list[str]:
    """What is told to be missing of a project."""
    return [
        g.id for g in told_gaps(Teller(garment_of(parse_yaml(text, "p.yaml"), known()), known()))
    ]


def says(found: Work, step: str) -> str:
    """The sentence of a step."""
    return found.tasks[step].step.does


@pytest.mark.parametrize("pattern", ["", "pattern: new\n"])
def test_a_dart_is_seen_on_before_it_is_sewn(pattern: str) -> None:
    """Of a new pattern, and of one of which nobody says that it has been tried."""
    found = ordered(BLOUSE.replace(TO_BODY, TO_BODY + pattern))
    assert stands(found, "baste bust dart", "fit", "stitch bust dart", "press bust dart")
    assert "baste elbow dart" not in found.order
    assert () == found.cycles


def test_a_dart_of_a_tried_pattern_is_sewn_at_once() -> None:
    """It is sewn and pressed on the flat piece."""
    found = ordered(BLOUSE.replace(TO_BODY, TRIED))
    assert "baste bust dart" not in found.order
    assert stands(found, "stitch bust dart", "press bust dart", "fit")


def test_a_dart_at_the_bust_ends_in_no_yoke_of_the_back() -> None:
    """That is joined before the fitting all the same."""
    assert "baste back yoke" not in ordered(BLOUSE).order


def test_a_sleeve_is_hemmed_when_it_has_been_seen_hanging() -> None:
    """A tried pattern has its length, and is hemmed before it is set in, as published."""
    new = ordered(BLOUSE)
    assert stands(new, "fit", "join armhole", "sew sleeve hem")
    assert stands(ordered(BLOUSE.replace(TO_BODY, TRIED)), "sew sleeve hem", "join armhole")


def test_a_cuff_waits_for_the_armhole_too() -> None:
    """A cuff set on is the end of the sleeve as much as its hem."""
    hem = "{name: sleeve hem, layers: [shell], length: 28 cm, edge: hem, times: 2}"
    cuff = "{name: cuff, layers: [shell, shell, shell], length: 24 cm, times: 2}"
    assert hem in BLOUSE
    assert stands(ordered(BLOUSE.replace(hem, cuff)), "fit", "join armhole", "join cuff")


def test_a_hollow_edge_is_clipped_once_before_it_is_sewn_and_after_it_was_seen_on() -> None:
    """It is stay-stitched first, basted without a clip, and the round edge notched at last."""
    found = ordered(JACKET)
    steps = ("baste", "clip", "join", "press", "notch")
    first, *others = (f"{step} front princess" for step in steps)
    assert stands(found, "stay-stitch front princess", first, "fit", *others)
    assert "not clipped yet" in says(found, first)
    tried = ordered(JACKET.replace("pattern: new", "pattern: tried"))
    assert stands(tried, *others[:3], "fit", others[3])
    assert first not in tried.order


@pytest.mark.parametrize("lining", ["", ", lining"])
def test_the_ease_of_a_wool_cap_is_shrunk_whatever_lies_in_its_armhole(lining: str) -> None:
    """It is out of the armhole then, and steamed by itself."""
    eased = "{use: shell, fullness: 1.06}"
    found = ordered(JACKET.replace(eased, eased + lining))
    assert "shrink the ease of armhole" in found.order
    assert stands(found, "join armhole", "sew sleeve hem")
    iron = found.tasks["shrink the ease of armhole"].step.iron
    assert iron is not None
    assert "dry" != iron.moisture


def test_a_firm_wool_that_is_shrunk_in_is_not_told_to_avoid_ease() -> None:
    """It says how it is eased instead."""
    told = read(JACKET)
    avoid = next(v for v in told.verdicts if v.aspect == "design.avoids" and v.place == "shell")
    assert "ease" not in avoid.text


@pytest.mark.parametrize(
    ("left", "missing"),
    [
        ("", []),
        (LINING_ARMHOLE, ["lining-sleeve-not-set"]),
        (LINING_SLEEVE, ["sleeve-not-closed"]),
    ],
)
def test_what_sets_and_closes_the_sleeve_of_a_lining_is_asked_for(
    left: str, missing: list[str]
) -> None:
    """By whichever of its two seams stands nowhere."""
    known_gaps = set(gaps(JACKET))
    found = gaps(JACKET.replace(left, "") if left else JACKET)
    assert missing == [gap for gap in found if gap not in known_gaps]


def test_a_lining_sleeve_that_is_only_hemmed_lacks_both_its_seams() -> None:
    """Nothing closes it, and nothing sets it in."""
    found = gaps(JACKET.replace(LINING_ARMHOLE, "").replace(LINING_SLEEVE, LINING_HEM))
    assert {"lining-sleeve-not-closed", "lining-sleeve-not-set"} <= set(found)


@pytest.mark.parametrize(
    ("fabric", "length", "asked"),
    [
        ("ponte", 38, True),
        ("ponte", 44, False),
        ("interlock", 38, False),
        ("interlock", 30, True),
        ("cotton poplin", 44, True),
    ],
)
def test_a_head_passes_a_knit_neck_as_far_as_that_gives(
    fabric: str, length: int, *, asked: bool
) -> None:
    """By its length and by the stretch of its firmest cloth."""
    text = TOP.replace("FABRIC", fabric).replace("length: 38 cm", f"length: {length} cm")
    assert asked == (NECK in gaps(text))


def test_a_firm_knit_that_she_found_to_give_is_taken_at_her_word() -> None:
    """What she has seen on a scrap goes before the table."""
    text = TOP.replace("FABRIC", "ponte, traits: {stretch: great}")
    assert NECK not in gaps(text)


def test_the_rows_of_a_cap_are_told_alike_in_sheet_and_order(tmp_path: Path) -> None:
    """The machine sews them, so no sheet speaks of rows by hand."""
    (tmp_path / "p.yaml").write_text(BLOUSE, encoding="utf-8")
    sheet = " ".join(typed("sheet", str(tmp_path / "p.yaml")).stdout.decode().split())
    assert "by long rows" in sheet
    assert "by hand rows" not in sheet


def test_an_elastic_told_beside_its_empty_channel_is_one_place_with_it() -> None:
    """Else two channels are made and one of them stays empty; at another edge it is left alone."""
    hem = "{name: sleeve hem, layers: [shell], length: 28 cm, edge: hem, times: 2}"
    channel = "{name: wrist casing, layers: [shell, shell], length: 24 cm, times: 2}"
    drawn = "{name: wrist elastic, layers: [shell, {notion: braided elastic}], length: 20 cm}"

    def twice(text: str) -> list[str]:
        garment = garment_of(parse_yaml(text, "p.yaml"), known())
        found = disagreements(advise(garment, known()).judgement, known())
        return [d.place for d in found if d.id == "said-twice"]

    both = BLOUSE.replace(hem, f"{channel}\n  - {drawn}")
    assert ["wrist elastic"] == twice(both)
    assert [] == twice(both.replace("wrist elastic", "waist elastic"))
    assert [] == twice(BLOUSE.replace(hem, drawn))
