"""What a maker of knits and sports clothes found wrong, and must not come back.

A hooded jacket with a zip and its facing tape, a shirt with a taped neck, a wrapped dress with an
elastic waist. All is common practice of the trade.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.claims.collect import Place
from advisor.construction.bulk import number
from advisor.construction.notionlist import notions_to_buy
from advisor.decide.advise import advise
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands
from tests.typed import typed

HOODED = """garment: Rowing jacket
fitting: loosely
maker: {overlocker: 4-thread}
fabrics:
  fleece: {fabric: sweatshirt fleece, fibres: {cotton: 80, polyester: 20}, weight: 300 g/m2}
  rib: {fabric: rib knit, fibres: {cotton: 95, elastane: 5}, weight: 330 g/m2}
  lining: {fabric: jersey, fibres: {cotton: 100}, weight: 160 g/m2}
  tape: {fabric: twill tape, fibres: {cotton: 100}}
seams:
  - {name: patch pocket, layers: [fleece, fleece], length: 56 cm, times: 2}
  - {name: shoulder, layers: [fleece, fleece], length: 14 cm, times: 2}
  - {name: armhole, layers: [fleece, fleece], length: 52 cm, shape: curved, times: 2}
  - {name: side, layers: [fleece, fleece], length: 44 cm, times: 2}
  - {name: sleeve seam, layers: [fleece, fleece], length: 46 cm, times: 2}
  - {name: cuff, layers: [fleece, {use: rib, stretched: 1.25}], length: 26 cm, times: 2}
  - {name: hem band, layers: [fleece, {use: rib, stretched: 1.15}], length: 104 cm}
  - {name: hood seam, layers: [fleece, fleece], length: 48 cm, shape: curved}
  - {name: hood lining seam, layers: [lining, lining], length: 48 cm, shape: curved}
  - {name: hood edge, layers: [fleece, lining], length: 66 cm, edge: turned}
  - {name: hood to neck, layers: [fleece, lining, fleece], length: 50 cm, shape: curved}
  - {name: front zip, layers: [fleece, {notion: open-ended zip}], length: 62 cm, times: 2}
  - {name: neck tape, layers: [tape, fleece], length: 50 cm, shape: curved}
"""
TAPED = {
    "zip among its layers": "{name: zip facing tape, layers: [tape, {notion: open-ended zip}, "
    "fleece], length: 62 cm, times: 2}",
    "called a stay": "{name: zip facing tape, kind: stay tape, layers: [tape, fleece], "
    "length: 62 cm, times: 2}",
}
"""Two ways in which she wrote the tape over the zip."""


def garment(text: str) -> Garment:
    """A project that stands here as text."""
    return garment_of(parse_yaml(text, "project.yaml"), known())


@pytest.mark.parametrize("written", TAPED)
def test_a_tape_that_faces_a_zip_is_sewn_over_it(written: str) -> None:
    """One zip is set and bought; its tape is covered when it is in."""
    text = f"{HOODED}  - {TAPED[written]}\n"
    found = ordered(text)
    assert stands(found, "join hem band", "set front zip", "sew on zip facing tape")
    assert ["set front zip"] == [step for step in found.order if step.startswith("set front")]
    assert "set zip facing tape" not in found.order
    zips = [b for b in notions_to_buy(garment(text), known()) if "zip" in b.name]
    assert [1] == [bought.number for bought in zips]


def test_a_neck_tape_covers_the_seam_of_the_hood() -> None:
    """It hides the allowances, so it can only be sewn when they are there."""
    assert stands(ordered(HOODED), "join hood to neck", "press hood to neck", "sew on neck tape")


def test_a_tape_of_a_neck_that_nothing_is_joined_to_stays_its_line() -> None:
    """A facing turns it, and the tape lies under that."""
    faced = HOODED.replace(
        "{name: hood to neck, layers: [fleece, lining, fleece], length: 50 cm, shape: curved}",
        "{name: neck facing, layers: [fleece, fleece], length: 50 cm, edge: turned}",
    )
    found = ordered(faced)
    assert "tape-sewn-along" == places(found)["neck tape"].method.id
    assert stands(found, "tape neck tape", "join neck facing")


TRIMMED = (
    HOODED.replace(
        "  tape: {",
        "  nylon: {fabric: ripstop, fibres: {nylon: 100}, weight: 75 g/m2, "
        "traits: {coated: yes}}\n  net: {fabric: mesh, fibres: {polyester: 100}}\n  tape: {",
    )
    .replace("patch pocket, layers: [fleece, fleece]", "patch pocket, layers: [nylon, net, fleece]")
    .replace("shoulder, layers: [fleece, fleece]", "shoulder, layers: [nylon, nylon]")
    + """  - {name: yoke seam, layers: [nylon, fleece], length: 24 cm, times: 2, topstitch: 2}
  - {name: pocket edge, layers: [nylon, net], length: 17 cm, edge: turned, times: 2}
"""
)
"""The same with a yoke and pockets of a coated cloth, the top of a pocket faced with net."""


@pytest.mark.parametrize("text", [HOODED, TRIMMED], ids=["one cloth", "coated pockets"])
def test_a_patch_pocket_is_sewn_to_a_flat_front(text: str) -> None:
    """No shoulder, no hood and no basting hangs on it, however hot those are pressed."""
    found = ordered(text)
    first = found.order.index("press patch pocket")
    after = ("join shoulder", "join hood to neck", "baste side", "join side")
    assert all(first < found.order.index(step) for step in after)


def test_the_turned_top_of_a_patch_pocket_is_a_faced_edge() -> None:
    """No second bag hangs from it, and it is faced before the pocket is turned under."""
    found = ordered(TRIMMED)
    top = places(found)["pocket edge"]
    assert ("faced-edge", "pocket-edge") == (top.kind.id, top.role.id)
    pocket = "press under the edges of patch pocket"
    assert stands(found, "join pocket edge", "turn pocket edge", pocket, "stitch on patch pocket")
    assert not any(step.startswith("close pocket") for step in found.order)


def test_coated_trimmings_make_no_raincoat_of_fleece() -> None:
    """Rain comes in through the body, so no row of yoke and pockets is sealed or kept from pins."""
    found = ordered(TRIMMED)
    assert not [s for s in found.order if s.startswith(("seal", "clip", "brush", "trim shoulder"))]
    coat = ordered(
        TRIMMED.replace("side, layers: [fleece, fleece]", "side, layers: [nylon, nylon]")
    )
    assert "seal shoulder" in coat.order


DRESS = """garment: Weir dress
units: us
fitting: to the body
maker: {overlocker: 4-thread}
fabrics:
  jersey: {fabric: jersey, fibres: {viscose: 95, elastane: 5}, weight: 6.5 oz/yd2}
  chiffon: {fabric: chiffon, fibres: {silk: 100}, weight: 8 momme}
  net: {fabric: mesh, fibres: {nylon: 85, elastane: 15}, weight: 3 oz/yd2}
  satin: {fabric: satin, fibres: {polyester: 100}, weight: 4 oz/yd2}
seams:
  - {name: shoulder, layers: [jersey, {notion: clear elastic}, jersey], length: 4.5 in, times: 2}
  - {name: net shoulder, layers: [net, net], length: 4.5 in, times: 2}
  - {name: wrap edge, layers: [jersey, {notion: clear elastic}, net], length: 24 in, times: 2,
     edge: turned, bias: yes}
  - {name: underbust gathers, kind: gathers, layers: [jersey, {use: jersey, fullness: 1.5}],
     length: 5 in, times: 2}
  - {name: side, layers: [jersey, jersey], length: 9 in, times: 2}
  - {name: net side, layers: [net, net], length: 9 in, times: 2}
  - {name: armhole, layers: [jersey, net, {use: chiffon, fullness: 1.2}], length: 18 in,
     shape: curved, stress: high, times: 2}
  - {name: skirt side, layers: [chiffon, chiffon], length: 26 in, times: 2}
  - {name: underskirt side, layers: [jersey, jersey], length: 24 in, times: 2}
  - {name: waist, layers: [jersey, net, jersey, {use: chiffon, fullness: 2}], length: 29 in,
     stress: high, crosses: [side, skirt side]}
  - {name: waist elastic, layers: [jersey, {notion: elastic, body: 28 in}], length: 29 in}
  - {name: underskirt hem, layers: [jersey], length: 62 in, edge: hem}
  - {name: belt loop, layers: [satin], number: 2}
"""
WITHOUT = DRESS.replace(
    "  - {name: waist elastic, layers: [jersey, {notion: elastic, body: 28 in}], length: 29 in}\n",
    "",
)


@pytest.mark.parametrize("kind", ["", "kind: wrap edge, "])
def test_a_lapped_front_is_finished_before_the_waist_takes_it_in(kind: str) -> None:
    """It is too short to run down the skirt, so its end lies in the waist."""
    found = ordered(DRESS.replace("{name: wrap edge, ", f"{{name: wrap edge, {kind}"))
    assert stands(found, "fit", "join wrap edge", "turn wrap edge", "join waist")


def test_clear_elastic_in_a_lapped_edge_is_laid_in_and_the_edge_understitched() -> None:
    """It is sewn along the line before the facing, and the facing is held inside."""
    found = ordered(DRESS)
    assert stands(found, "tape wrap edge", "join wrap edge", "understitch wrap edge")
    assert "a little shorter" in found.tasks["tape wrap edge"].step.does


@pytest.mark.parametrize("seam", ["shoulder", "underbust gathers", "underskirt side", "side"])
def test_what_the_knife_cuts_waits_for_the_fitting(seam: str) -> None:
    """Fitted to the body, an overlocked seam is basted first, whatever lies in it."""
    assert stands(ordered(DRESS), f"baste {seam}", "fit", f"join {seam}")


def test_rows_are_stitched_when_the_basting_is_out() -> None:
    """What is drawn up on a basting thread is opened again before it is gathered."""
    assert stands(ordered(DRESS), "fit", "gather underbust gathers", "draw up underbust gathers")


def test_gathers_of_a_front_and_a_side_below_the_waist_share_no_piece() -> None:
    """Neither waits for the other."""
    found = ordered(DRESS)
    before = {p.before for p in found.reasons["join underskirt side"]}
    assert not {step for step in before if "underbust" in step}


def test_elastic_lies_on_the_seam_of_a_waist() -> None:
    """No edge is left there to fold: it goes onto the allowances, then the loops over it."""
    found = ordered(DRESS)
    loops = "bar on belt loop"
    assert stands(found, "join waist", "neaten waist", "zigzag on waist elastic", loops)
    assert "fold waist elastic" not in found.order


@pytest.mark.parametrize("text", [DRESS, WITHOUT], ids=["elastic", "no opening"])
def test_no_rigid_tape_keeps_a_waist_from_going_over_the_body(text: str) -> None:
    """The elastic holds the measure, and a knit with no opening has to stretch."""
    assert "stay waist" not in ordered(text.replace("wrap edge", "front edge")).order


def test_no_rigid_tape_lies_in_the_armhole_of_a_knit_with_a_gathered_sleeve() -> None:
    """The gathers give with the bodice."""
    assert "stay tape" not in ordered(DRESS).tasks["stay armhole"].step.does


def test_an_iron_at_the_hem_is_far_from_what_ends_at_the_waist() -> None:
    """Nothing that is sewn in the bodice alone is guarded there."""
    found = ordered(DRESS)
    assert "press underskirt hem" in found.order
    near = dict(found.hot_near).get("press underskirt hem", frozenset())
    assert not near & {"net", "clear elastic", "elastic"}


def test_a_lapped_front_is_pinned_for_the_fitting() -> None:
    """So are the edges that a zip closes later, however loose the garment is."""
    assert "lap the fronts and pin them" in ordered(DRESS).tasks["fit"].step.does
    assert "pin it shut along the line of front zip" in ordered(HOODED).tasks["fit"].step.does


def test_more_plies_take_no_finer_needle() -> None:
    """A seam of two fleeces and a jersey is sewn as one of two fleeces is."""
    verdicts = advise(garment(HOODED), known()).judgement.verdicts
    picks = [
        number(verdicts[Place("seam", name)], "needle.size") for name in ("armhole", "hood to neck")
    ]
    assert picks[0] == picks[1]


def test_an_overlocked_sleeve_without_ease_goes_in_flat() -> None:
    """Then side and sleeve are closed in one run, and pressed after it."""
    found = ordered(HOODED)
    assert stands(found, "fit", "join armhole", "join side", "press side")
    assert stands(found, "join armhole", "join sleeve seam", "press side")
    assert "the row of side run on into the sleeve" in found.tasks["join sleeve seam"].step.does
    assert "neaten armhole" not in found.order


@pytest.mark.parametrize(
    "eased",
    [
        (
            "armhole, layers: [fleece, fleece]",
            "armhole, layers: [fleece, {use: fleece, ease: 2 cm}]",
        ),
        ("fabric: sweatshirt fleece, fibres: {cotton: 80, polyester: 20}", "fabric: poplin"),
    ],
    ids=["with ease", "woven"],
)
def test_any_other_sleeve_goes_into_a_closed_armhole(eased: tuple[str, str]) -> None:
    """Ease, or a cloth that gives none, asks for a whole armhole."""
    found = ordered(HOODED.replace(*eased))
    assert stands(found, "join side", "join armhole")


@pytest.mark.parametrize("metres", ["48 cm", "40 cm", "33 cm", "71 cm"])
def test_thread_for_the_overlocker_alone_has_no_bobbin(tmp_path: Path, metres: str) -> None:
    """What rounding leaves over is no length of thread."""
    file = tmp_path / "hooded.yaml"
    text = HOODED.replace("[lining, lining], length: 48 cm", f"[lining, lining], length: {metres}")
    coloured = text.replace("weight: 160 g/m2}", 'weight: 160 g/m2, colour: "#e3b23c"}')
    file.write_text(coloured, "utf-8")
    page = " ".join(typed("sheet", str(file), "--only", "shopping").out.split())
    row = page.split("to match lining")[1].split("of it comes off")[0]
    assert "looper" in row
    assert "bobbin" not in row


def test_an_edge_that_she_stays_for_its_zip_is_not_stayed_again() -> None:
    """An interfacing called after the zip, or as long as it on the same cloth, holds the edge."""
    assert "stay the opening of front zip" in ordered(HOODED).order
    for name in ("zip edge stay", "front strip"):
        line = f"  - {{name: {name}, kind: interfacing, layers: [fleece, {{notion: knit fusible "
        stayed = f"{HOODED}{line}interfacing}}], length: 62 cm, times: 2}}\n"
        assert "stay the opening of front zip" not in ordered(stayed).order


def test_what_no_machine_bastes_is_basted_by_hand() -> None:
    """The others are basted in a zigzag that gives, with another needle."""
    found = ordered(DRESS)
    assert "by hand along its line" in found.tasks["baste net side"].step.does
    assert "machine zigzag" in found.tasks["baste side"].step.does
    loose = ordered(HOODED).tasks["baste side"].step.does
    assert "by hand" not in loose


def test_a_band_at_the_foot_is_pressed_far_from_the_cord_of_the_hood() -> None:
    """The cord waits for what is pressed at the neck and not for the rib at the hem."""
    corded = HOODED + (
        "  - {name: hood drawcord, kind: casing, layers: [fleece, lining, {notion: drawcord}], "
        "length: 66 cm}\n"
    )
    found = ordered(corded)
    reasons = {p.before for p in found.reasons["draw through hood drawcord"]}
    assert "press hem band" not in reasons


def test_the_edge_of_a_front_that_no_facing_takes_in_is_neatened_before_its_zip() -> None:
    """The sheet says how, so the order has a step for it."""
    found = ordered(HOODED)
    assert stands(found, "neaten front zip", "baste front zip", "set front zip")
    faced = HOODED.replace(
        "[fleece, {notion: open-ended zip}]", "[fleece, {notion: open-ended zip}, fleece]"
    )
    assert "neaten front zip" not in ordered(faced).order
