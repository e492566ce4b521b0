"""What the head of a workroom found out of order, and must not come back.

Trousers with a fly and a kick tape, a boned gown with a gathered skirt, a lapped coat with a hood,
a lined skirt with a vent, a jacket with a trim round its edges. All is common practice.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from advisor.claims.collect import Place
from advisor.decide.advise import advise
from advisor.order.kinds import crosses
from advisor.order.setups import Setups
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import changed, known, ordered, places, stands, work
from tests.typed import typed

TROUSERS, GOWN = "more/station_trousers", "more/lamplight_gown"
CORSELET = "name: corselet seams, layers: [coutil, coutil]"
CLOTHS = """garment: Sample
fabrics:
  wool: {fabric: crepe, fibres: {wool: 100}}
  lining: {fabric: lining, fibres: {viscose: 100}}
  suede: {fabric: suede}
  silk: {fabric: habutai, fibres: {silk: 100}}
  lawn: {fabric: cotton lawn}
  cord: {fabric: corduroy, fibres: {cotton: 100}}
seams:
"""
SKIRT = (
    "front darts, kind: dart, layers: [wool], length: 9 cm",
    "centre back, layers: [wool, wool], length: 25 cm",
    "back vent, layers: [wool, wool], length: 18 cm, edge: folded",
    "side, layers: [wool, wool], length: 58 cm",
    "lining side, layers: [lining, lining], length: 54 cm",
    "VENT, layers: [wool, lining], length: 18 cm",
    "waistband, layers: [wool, wool, lining], length: 72 cm",
    "hem, layers: [wool], length: 96 cm, edge: hem",
    "lining hem, layers: [lining], length: 96 cm, edge: hem",
)
HOOD = (
    "shoulder, layers: [suede, suede], length: 10 cm",
    "side, layers: [suede, suede], length: 40 cm, seam: lapped",
    "hood centre, layers: [suede, suede], length: 38 cm, shape: curved, seam: lapped",
    "hood edge, layers: [suede, lawn], length: 54 cm, edge: turned",
    "hood to neck, layers: [suede, suede, lawn], length: 36 cm, shape: curved",
)
JACKET = (
    "side, layers: [wool, wool], length: 40 cm",
    "shoulder, layers: [wool, wool], length: 12 cm",
    "collar edge, layers: [wool, wool], length: 46 cm, edge: turned",
    "front edge, layers: [wool, silk], length: 58 cm, edge: turned",
    "TRIM, layers: [wool, {notion: fringe}], length: LONG",
    "lining seams, layers: [silk, silk], length: 40 cm, times: 4",
    "hem, layers: [wool], length: 100 cm, edge: hem",
    "hooks, kind: fastening, fastening: hook, on: wool, number: 5",
)


@cache
def made(*lines: str) -> Work:
    """The order of a small garment, its places as lines of a project."""
    text = CLOTHS + "".join(f"  - {{name: {line}}}\n" for line in lines)
    return ordered(text)


def skirt(vent: str = "lining to vent") -> Work:
    """A lined skirt with a vent."""
    return made(*(line.replace("VENT", vent) for line in SKIRT))


def jacket(trim: str = "fringe trim", length: str = "180 cm") -> Work:
    """A jacket with a trim."""
    return made(*(line.replace("TRIM", trim).replace("LONG", length) for line in JACKET))


def test_a_fly_is_set_in_the_flat_fronts() -> None:
    """Trousers are fitted at seat and sides, never at the fly, so it waits for no fitting."""
    found = work(TROUSERS)
    assert () == found.cycles
    assert stands(found, "set fly zip", "bar fly zip", "join outseam", "join inseam")
    assert stands(found, "join inseam", "join crotch", "fit", "join waistband")


def test_a_kick_tape_is_sewn_to_the_hem_of_closed_legs() -> None:
    """Where the fold lies is known when the length is fitted."""
    found = work(TROUSERS)
    assert found.methods["kick tape"].id == "hem-taped-inside"
    assert stands(found, "join inseam", "fit", "stitch on kick tape", "sew hem")


def test_the_waist_is_drawn_up_when_both_parts_are_whole() -> None:
    """Rows are broken at every cross seam, so those are joined and pressed."""
    found = work(GOWN)
    assert () == found.cycles
    for seam in ("bodice seams", "skirt seams"):
        steps = (f"join {seam}", f"press {seam}", "baste waist seam", "gather waist seam")
        assert stands(found, *steps, "join waist seam")


def test_sides_are_sewn_before_a_skirt_is_gathered() -> None:
    """Rows over an open seam would be caught by it."""
    found = made(
        "side, layers: [lawn, lawn], length: 60 cm, times: 2",
        "waistband, layers: [lawn, {use: lawn, fullness: 2}], length: 70 cm",
    )
    assert stands(found, "join side", "press side", "gather waistband", "join waistband")


@pytest.mark.parametrize("bones", ["spiral boning", "boning"])
def test_bones_are_in_before_the_second_end_is_shut(bones: str) -> None:
    """The underskirt is the waist of the corselet; no iron kept off a bone opens it again."""
    found = changed(GOWN, "notion: spiral boning", f"notion: {bones}")
    assert () == found.cycles
    assert stands(found, "press boning", "insert bones in boning", "join underskirt to corselet")


def test_bones_are_in_before_the_lower_edge_of_a_corset_is_shut() -> None:
    """Its top edge may be shut before: one end is enough to slide them in."""
    found = made(
        "panel, layers: [cord, cord], length: 30 cm, shape: curved",
        "channels, kind: boning, layers: [cord, {notion: spiral boning}], length: 28 cm, times: 8",
        "top edge, layers: [cord, lawn], length: 80 cm, edge: turned",
        "lower edge, layers: [cord, lawn], length: 80 cm, edge: turned",
    )
    assert () == found.cycles
    assert stands(found, "join panel", "insert bones in channels", "join lower edge")


def test_a_channel_that_meets_the_top_edge_is_run_over_by_it() -> None:
    """Whoever of the two names the other: nobody stitches a channel through a turned edge."""
    text = "length: 32 cm, times: 10"
    found = changed(GOWN, text, f"{text}, crosses: [top edge]")
    assert stands(found, "join boning", "join top edge", "turn top edge")
    there = places(found)
    assert crosses(there["top edge"], there["boning"])
    assert not crosses(there["boning"], there["top edge"])


@pytest.mark.parametrize(("bones", "most"), [("spiral boning", 150), ("boning", 110)])
def test_steel_takes_more_heat_than_plastic(bones: str, most: float) -> None:
    """What softens is told apart from what only holds the heat."""
    text = CLOTHS.replace("suede: {fabric: suede}", f"suede: {{notion: {bones}}}")
    text += "  - {name: channels, kind: boning, layers: [lawn, suede], length: 20 cm}\n"
    judged = advise(garment_of(parse_yaml(text, "project.yaml"), known()), known())
    assert Setups(judged, known()).limit(Place("seam", "channels")) == most


def test_a_second_row_comes_before_channels_and_whatever_ends_the_seam() -> None:
    """And the allowance is left whole where the cloth rules out to cut it down.

    Coutil is felled unless she says otherwise, as a published corset is: here she does.
    """
    found = changed(GOWN, CORSELET, CORSELET + ", seam: double-stitched")
    again = "stitch again corselet seams"
    assert stands(found, "fit", again, "join boning", "insert bones in boning", "join top edge")
    assert "trim corselet seams" not in found.tasks
    assert "neaten corselet seams" in found.tasks


def test_channels_come_over_felled_seams() -> None:
    """What nobody has cut before is basted, tried on and felled; then the channels lie over it."""
    found = work(GOWN)
    steps = "fit", "join corselet seams", "fell corselet seams", "join boning"
    assert stands(found, "baste corselet seams", *steps, "insert bones in boning", "join top edge")


def test_a_hood_is_turned_before_it_is_set() -> None:
    """With its neck sewn in, the edge of the face cannot be turned."""
    found = made(*HOOD)
    assert stands(found, "lap hood centre", "join hood edge", "turn hood edge", "join hood to neck")


def test_a_lapped_seam_has_its_upper_allowance_cut_away() -> None:
    """Past recall: after the fitting where it is fitted, at once where nothing fits it."""
    found = made(*HOOD)
    cut = "cut away the upper layer at"
    assert stands(found, "clip side", "fit", f"{cut} side", "lap side")
    operation = found.tasks[f"{cut} side"].operation
    assert operation is not None
    assert (operation.undo, operation.let_out) == ("never", False)
    assert stands(found, f"{cut} hood centre", "lap hood centre")


def test_a_lining_is_pressed_before_an_edge_shuts_it_in() -> None:
    """A silk is a lining where its own seams are the lining's, whatever it is called."""
    found = jacket()
    assert "shuts in the lining" in found.tasks["join front edge"].tags
    assert "shuts in the lining" not in found.tasks["join collar edge"].tags
    assert stands(found, "join lining seams", "press lining seams", "join front edge")


@pytest.mark.parametrize(
    ("trim", "length", "last"),
    [
        ("fringe trim", "180 cm", True),
        ("fringe round the front", "60 cm", True),
        ("fringe trim", "40 cm", False),
        ("fringe rows", "180 cm", False),
    ],
)
def test_a_trim_round_the_edges_is_sewn_on_when_they_are_finished(
    trim: str, length: str, last: bool
) -> None:
    """By hand, before the hooks; a short one on one piece is sewn while that lies flat."""
    found = jacket(trim, length)
    step = next(t.id for t in found.tasks.values() if t.op == "lay-on")
    edges = ("turn collar edge", "turn front edge", "sew hem")
    assert last == all(stands(found, edge, step) for edge in edges)
    assert last == (found.tasks[step].step.machine is None)
    assert stands(found, step, "fasten hooks")


@pytest.mark.parametrize("vent", ["lining to vent", "lining felled round the vent"])
def test_a_lining_is_felled_along_a_vent_and_makes_none_of_its_own(vent: str) -> None:
    """It hangs first, and its hem is sewn."""
    found = skirt(vent)
    assert found.methods[vent].id == "lining-felled-at-a-vent"
    assert f"clip {vent}" not in found.tasks
    steps = ("hang the lining at waistband", f"turn under {vent}", f"fell {vent}")
    assert stands(found, "join lining side", *steps)
    assert stands(found, "sew hem", "sew lining hem", f"fell {vent}")
    assert stands(found, "clip back vent", f"turn under {vent}")


@pytest.mark.parametrize(("shell", "inner"), [("wool", "lining"), ("cord", "lawn")])
def test_a_hem_under_a_lining_is_sewn_to_the_outer_cloth_alone(shell: str, inner: str) -> None:
    """The lining falls to it, whatever cloth it is of."""
    found = made(
        f"side, layers: [{shell}, {shell}], length: 60 cm",
        f"lining side, layers: [{inner}, {inner}], length: 60 cm",
        f"hem, layers: [{shell}, {inner}], length: 90 cm, edge: hem",
    )
    assert f"+ {inner}" not in found.tasks["sew hem"].step.does
    assert stands(found, "sew hem", "press hem", "fell the lining at hem")


def test_a_hem_of_one_cloth_has_no_lining_to_fell() -> None:
    """Nor has one that the lining has apart."""
    assert "fell the lining at hem" not in skirt().tasks


def test_the_waist_edge_of_a_skirt_is_stayed_first() -> None:
    """It is cut on a curve; its lining only hangs in the band, and the band is not stayed."""
    found = skirt()
    stay = found.tasks["stay-stitch waistband"]
    assert stay.cloths == ("wool",)
    assert "the edge of the garment only" in stay.step.does
    assert stands(found, "stay-stitch waistband", "stitch front darts", "join side")
    knit = made("waistband, layers: [suede, suede], length: 70 cm")
    assert "stay-stitch waistband" not in knit.tasks


def test_cutting_buttonholes_and_slashing_are_told_as_past_recall(tmp_path: Path) -> None:
    """A legend that leaves scissors out is no legend."""
    file = tmp_path / "project.yaml"
    text = CLOTHS + (
        "  - {name: sleeve placket, layers: [lawn, lawn], length: 10 cm}\n"
        "  - {name: buttonholes, kind: fastening, fastening: buttonholes, on: lawn, number: 6}\n"
    )
    file.write_text(text, encoding="utf-8")
    told = " ".join(typed("order", str(file)).out.split())
    assert "slash" in told[told.index("No way back") : told.index("A mistake costs")]
    assert "cut buttonholes" in told
    assert "[ ]!Work buttonholes" in told


def test_no_placket_of_the_front_meets_a_sleeve() -> None:
    """That of a sleeve ends at its cuff, and is finished before the sleeve is closed round it."""
    found = made(
        "front placket, layers: [lawn, lawn], length: 100 cm",
        "sleeve placket, layers: [lawn, lawn], length: 10 cm",
        "sleeve underarm, layers: [lawn, lawn], length: 42 cm",
        "cuff, layers: [lawn, lawn], length: 22 cm",
    )
    there = places(found)
    for seam in ("sleeve underarm", "cuff"):
        assert not crosses(there[seam], there["front placket"])
    assert crosses(there["cuff"], there["sleeve placket"])
    assert stands(found, "close sleeve placket", "join sleeve underarm")


@pytest.mark.parametrize(
    ("darts", "more", "met"),
    [
        ("back darts", "waistband", False),
        ("bust darts", "shoulder", True),
        ("front darts", "shoulder", True),
        ("waist darts", "shoulder", False),
    ],
)
def test_a_dart_meets_the_edge_that_it_runs_from(darts: str, more: str, met: bool) -> None:
    """Those of a skirt run to the waist; a bodice has some that run to the side."""
    found = made(
        f"{darts}, layers: [lawn], kind: dart, length: 10 cm",
        "side, layers: [lawn, lawn], length: 50 cm",
        f"{more}, layers: [lawn, lawn], length: 30 cm",
        "waist facing, layers: [lawn, lawn], length: 70 cm, edge: turned",
    )
    there = places(found)
    assert met == crosses(there["side"], there[darts])
    assert crosses(there["waist facing"], there[darts])


def test_a_lining_yoke_of_an_underskirt_is_felled_to_no_zip() -> None:
    """It hangs from the corselet, and the zip is in the taffeta."""
    assert "fell the lining to concealed zip" not in work(GOWN).tasks
    assert places(work(GOWN))["tulle to yoke"].unit == "both"


def test_the_seam_below_a_zip_waits_among_the_others() -> None:
    """Where it is no place of its own it is told at both."""
    found = work(GOWN)
    assert "the one below concealed zip waits" in found.tasks["join skirt seams"].step.does
    assert "waits" not in found.tasks["join bodice seams"].step.does
    closed = "close the seam below concealed zip"
    assert "skirt seams" in found.tasks[closed].step.does
    assert stands(found, "set concealed zip", closed, "sew hem")
    assert f"{closed}" not in work("more/harbour_dress").tasks


def test_what_suffers_from_handling_is_named() -> None:
    """The wool that is sewn before it has no pile."""
    found = made(
        "hood centre, layers: [wool, wool], length: 38 cm",
        "patch pocket, layers: [wool, cord], length: 40 cm",
    )
    reasons = {p.why for step in found.reasons.values() for p in step}
    assert any("The pile of cord suffers from every handling" in why for why in reasons)
    assert not any("sequins" in why for why in reasons)
