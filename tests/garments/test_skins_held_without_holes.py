"""What keeps every hole is held by clips, tape or glue, tried on unsewn, and sewn once.

A skirt of a skin with knitted sides, as a maker of one-off garments writes it; the relations are
asked of a waistcoat and of a skirt of film too. All is common practice of the trade.
"""

from __future__ import annotations

import re

import pytest

from advisor.answer.model.answer import Answer
from advisor.order.work import Work
from tests.garments.whole import ordered, places, read, stands

SKIRT = """
garment: Barge skirt
maker: {machine: household, foot lift: 6 mm, overlocker: 4-thread, feet: [standard, zip, walking]}
fabrics:
  hide: {fabric: SKIN, thickness: 0.8 mm}
  side: {fabric: ponte, fibres: {viscose: 68, nylon: 27, elastane: 5}, weight: 340 g/m2}
  lining: {fabric: lining, fibres: {acetate: 100}, weight: 75 g/m2}
  inner: {fabric: cotton twill, fibres: {cotton: 100}, weight: 200 g/m2}
seams:
  - {name: front dart, layers: [hide, hide], length: 9 cm, times: 2}
  - {name: centre back seam, layers: [hide, hide], length: 21 cm, stress: high}
  - {name: exposed zip, layers: [hide, {notion: metal zip}], length: 20 cm, stress: high}
  - {name: back vent, layers: [hide, {notion: low-temperature fusible}, hide], length: 20 cm,
     edge: turned, crosses: centre back seam}
  - {name: back to side panel, layers: [hide, side], length: 62 cm, stress: high, times: 2}
  - {name: waist stay, layers: [hide, {notion: twill tape}], length: 76 cm, shape: curved}
  - {name: waist facing, layers: [hide, {notion: woven fusible interfacing}, inner], length: 76 cm,
     shape: curved, edge: turned, crosses: [front dart, back to side panel]}
  - {name: facing to lining, layers: [inner, lining], length: 82 cm, shape: curved}
  - {name: lining side, layers: [lining, lining], length: 58 cm, times: 2}
  - {name: hem of the hide, layers: [hide], length: 64 cm, edge: hem, crosses: back vent}
  - {name: hem of the sides, layers: [side], length: 14 cm, edge: hem, times: 2}
  - {name: hanging loops, layers: [inner, {notion: satin ribbon}], length: 1 cm, times: 2}
"""
NAPPA = SKIRT.replace("SKIN", "sheep nappa")
SKINS = ["sheep nappa", "suede", "vinyl"]
BASTED = re.compile(r"(?<!no )\bbast(e|ed|ing)\b|(?<!no )\bpin\b", re.IGNORECASE)
ROWS = ("stitch front dart", "join centre back seam", "set exposed zip", "join back to side panel")


def skirt(skin: str) -> Work:
    """The order of the skirt of some skin or film."""
    return ordered(SKIRT.replace("SKIN", skin))


def answer(text: str) -> Answer:
    """All that is told of a skirt."""
    return read(text)


@pytest.mark.parametrize("skin", SKINS)
def test_nothing_that_keeps_holes_is_pinned_or_basted(skin: str) -> None:
    """No step on the hide bastes or pins: not the zip, the vent, the fitting nor what stiffens."""
    work = skirt(skin)
    on_hide = [t for t in work.tasks.values() if t.place is not None and "hide" in t.place.cloths]
    assert len(on_hide) > 15
    told = [d for t in on_hide if "no needle through hide" not in (d := t.step.does)]
    assert [does for does in told if BASTED.search(does)] == []
    assert "clip it shut along the line of exposed zip" in work.tasks["fit"].step.does
    assert "open the basting" not in work.tasks["fit"].step.does


@pytest.mark.parametrize("skin", SKINS)
def test_no_row_goes_into_it_before_the_fitting(skin: str) -> None:
    """A toile is first, darts are taped and seams clipped; each row waits, and has no way back."""
    work = skirt(skin)
    assert work.order[0] == "toile"
    assert stands(work, "tape shut front dart", "fit")
    assert stands(work, "clip centre back seam", "fit")
    for row in ROWS:
        assert stands(work, "fit", row)
        operation = work.tasks[row].operation
        assert operation is not None
        assert operation.undo == "never"


def test_a_tried_pattern_needs_no_toile() -> None:
    """Who has sewn it before sews the darts at once."""
    work = ordered(NAPPA.replace("fabrics:", "pattern: tried\nfabrics:"))
    assert "toile" not in work.order
    assert "tape shut front dart" not in work.order


def test_cloth_is_sewn_and_tried_on_as_before() -> None:
    """The same of a woven cloth sews its darts before the fitting, and asks for no toile."""
    work = skirt("wool gabardine")
    assert "toile" not in work.order
    assert stands(work, "stitch front dart", "fit")


def test_a_glue_that_nothing_bears_is_not_fused() -> None:
    """The vent holds only hide, which bears no iron so long: she settles what is held there."""
    work = ordered(NAPPA)
    assert "fuse back vent" not in work.order
    step = work.tasks["interface back vent"].step.does
    assert step.startswith("Settle first what backs back vent instead of the low-temperature")
    vents = [c for c in answer(NAPPA).conflicts if c.place == "back vent"]
    assert [c.aspect for c in vents] == ["press.dwell"]
    assert all("basted" not in r.text for c in vents for r in c.remedies)


def test_what_check_fuses_first_the_order_fuses() -> None:
    """The glue of the facing goes onto the cotton while it is flat, as the first remedy has it."""
    work = ordered(NAPPA)
    assert "interface waist facing" not in work.order
    assert "woven fusible interfacing onto inner" in work.tasks["fuse waist facing"].step.does


def test_a_hem_that_is_left_as_cut_goes_under_no_foot() -> None:
    """Plies that meet at an edge that nobody sews stop no machine; at a turned one they may."""
    assert all(c.place != "hem of the hide" for c in answer(NAPPA).conflicts)
    assert places(ordered(NAPPA))["hem of the hide"].method.id == "hem-left-raw"


def test_no_skin_is_perforated_for_strength() -> None:
    """Closer stitches tear it: a thread or a tape, where a woven may take more stitches."""
    built = [seam.built for seam in answer(NAPPA).seams if seam.built is not None]
    told = [line for each in built for line in each.build_warns]
    assert any("asks for about" in line for line in told)
    assert all("shorten the stitch" not in line for line in told)


def test_an_exposed_zip_shows_in_a_window() -> None:
    """Its corners are clipped once the seam below is sewn, and it lies behind the edges."""
    work = ordered(NAPPA)
    assert places(work)["exposed zip"].method.id == "exposed-zip"
    assert stands(
        work,
        "press centre back seam",
        "clip the corners of exposed zip",
        "turn back exposed zip",
        "set exposed zip",
    )


def test_a_skirt_has_its_tape_in_the_waist() -> None:
    """It is sewn flat over the seams and under the facing; a bodice keeps its inner belt."""
    work = ordered(NAPPA)
    assert places(work)["waist stay"].method.id == "waist-tape-in-the-seam"
    assert stands(work, "press back to side panel", "tape waist stay", "join waist facing")
    dress = NAPPA.replace(
        "seams:\n", "seams:\n  - {name: shoulder, layers: [side, side], length: 12 cm, times: 2}\n"
    )
    assert places(ordered(dress))["waist stay"].method.id == "waist-stay-tacked"


def test_loops_of_a_skirt_hang_at_its_sides() -> None:
    """No skirt has a neck."""
    does = ordered(NAPPA).tasks["baste on hanging loops"].step.does
    assert "at each side of the waist" in does
    assert "neck" not in does
    sides = "  - {name: facing side, layers: [inner, inner], length: 6 cm, times: 2}\n"
    work = ordered(NAPPA.replace("seams:\n", f"seams:\n{sides}"))
    assert stands(work, "press facing side", "baste on hanging loops", "join waist facing")


def test_a_raw_edge_is_cut_level_with_the_fold_beside_it() -> None:
    """The turned hem comes first and is told how it ends; of layers that only hang it is silent."""
    work = ordered(NAPPA)
    assert stands(work, "hang", "sew hem of the sides", "cut hem of the hide")
    assert "level with the finished fold of hem of the sides" in (
        work.tasks["cut hem of the hide"].step.does
    )
    assert "turn the hem in behind it" in work.tasks["sew hem of the sides"].step.does
    loose = NAPPA.replace(
        "name: back to side panel, layers: [hide, side]",
        "name: back to side panel, layers: [side, side]",
    )
    assert "level with" not in ordered(loose).tasks["cut hem of the hide"].step.does


def test_what_is_never_washed_has_its_tapes_steamed() -> None:
    """A tape shrinks in water that it never meets; a glue shrinks under the iron all the same."""
    told = {v.place: v.text for v in answer(NAPPA).verdicts if v.aspect == "prepare.preshrink"}
    assert ("steam", "steam") == (told["twill tape"], told["metal zip"])
    assert "soak and dry flat" == told["woven fusible interfacing"]
