"""What a dressmaker at home found wrong in a denim skirt with a bib, straps and a quilted band."""

from __future__ import annotations

from dataclasses import replace

from advisor.construction.backing import backing_of
from advisor.order.overlocking import OVERLOCKER, needle_words, on_the_overlocker
from advisor.order.steps import MachineState
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from advisor.units.sentences import render
from tests.garments.whole import known, ordered, places, read, stands

SKIRT = """
garment: Weighbridge skirt with a bib
units: us
fitting: to the body
maker: {machine: household, overlocker: 4-thread, feet: [standard, zip, walking]}
fabrics:
  denim: {fabric: denim, fibres: {cotton: 100}, weight: 12 oz/yd2, colour: "#243552"}
  cord: {fabric: corduroy, fibres: {cotton: 100}, weight: 8 oz/yd2, colour: "#8a5a2b"}
  quilt: {fabric: quilted cloth, fibres: {cotton: 60, polyester: 40}, weight: 9 oz/yd2}
  rib: {fabric: rib knit, fibres: {cotton: 95, elastane: 5}, weight: 8 oz/yd2}
  lining: {fabric: lining, fibres: {polyester: 100}, weight: 2.2 oz/yd2}
seams:
  - {name: patch pocket, layers: [denim, cord], length: 21 in, shape: corner, times: 2}
  - {name: bib top, layers: [quilt, denim], length: 11 in, edge: turned}
  - name: bib to waistband
    layers: [quilt, denim, {notion: woven fusible interfacing}, denim]
    length: 11 in
  - {name: strap, layers: [denim, denim], length: 32 in, edge: turned, times: 2}
  - {name: rib side panel, layers: [denim, {use: rib, stretched: 1.15}], length: 7 in, times: 4}
  - {name: side, layers: [denim, denim], length: 21 in, times: 2, crosses: [rib side panel]}
  - {name: centre back, layers: [denim, denim], length: 20 in}
  - {name: hem band, layers: [denim, quilt], length: 50 in, crosses: [side, centre back]}
  - {name: lining side, layers: [lining, lining], length: 22 in, times: 2}
  - {name: waist facing to lining, layers: [denim, lining], length: 30 in, shape: curved}
  - {name: hem, layers: [quilt], length: 50 in, edge: hem}
pieces:
  - {name: waistband, fabric: denim, width: 30 in, height: 4 in, number: 2}
  - {name: bib, fabric: quilt, width: 12 in, height: 10 in}
  - {name: hem band, fabric: quilt, width: 26 in, height: 7 in, number: 2}
  - {name: rib panel, fabric: rib, width: 6 in, height: 8 in, number: 2}
"""


def test_no_needle_of_the_sewing_machine_goes_into_the_overlocker() -> None:
    """Denim wants a jeans 100, rib a stretch 90: an overlocker takes 80 or 90 of its own kind."""
    states = [t.step.machine for t in ordered(SKIRT).tasks.values()]
    found = {(s.size, s.point) for s in states if s is not None and s.machine == OVERLOCKER}
    assert found
    assert {size for size, _ in found} <= {80, 90}
    assert all("its manual names" in point for _, point in found)


def test_a_seam_that_an_overlocker_joins_keeps_the_needle_of_the_sheet() -> None:
    """The manual says which kind, and nothing thicker than it takes goes in."""
    joined = MachineState("household", "red", "red", "stretch", 75, "walking", "wide", "514", "a")
    found = on_the_overlocker(joined, known(), "514")
    assert (75, "stretch, of the kind that its manual names") == (found.size, needle_words(found))
    assert 90 == on_the_overlocker(replace(joined, size=100), known(), "514").size


def test_a_band_of_another_cloth_is_joined_before_its_own_edge_is_hemmed() -> None:
    """It is no hem turned up: two cloths meet there, and the band carries the hem."""
    found = ordered(SKIRT)
    assert places(found)["hem band"].method.id == "plain-seam"
    assert stands(found, "join side", "join hem band", "press hem band", "sew hem")
    assert any("hem band as seam" in line for line in found.taken)


def test_a_hem_of_one_cloth_is_turned_up_whatever_its_name() -> None:
    """A facing is no band, and one cloth by itself is no seam."""
    found = ordered(
        SKIRT.replace("layers: [denim, quilt], length: 50 in", "layers: [denim], length: 50 in")
    )
    assert places(found)["hem band"].seam.place == "hem"


def test_what_a_bib_hangs_from_is_basted_before_it_is_tried_on() -> None:
    """Straps that end at a bib carry nothing while that lies apart; it is sewn after."""
    found = ordered(SKIRT)
    band = "bib to waistband"
    assert stands(found, "baste on strap", "fit", f"join {band}")
    assert stands(found, "join side", f"baste {band}", "fit", "set waist facing to lining")


def test_a_waistband_is_not_basted_where_no_bib_hangs_from_straps() -> None:
    """A skirt hangs from its band by itself: it is set once the sides are sure."""
    named = SKIRT.replace("bib to waistband", "waistband").replace("bib", "flap")
    assert "baste waistband" not in ordered(named).tasks


def _told() -> list[str]:
    return [each.text for each in read(SKIRT).instructions]


def test_no_it_is_read_of_the_wrong_cloth() -> None:
    """What takes no iron is named, and nothing is said of a glue that holds of the quilt alone."""
    assert not [text for text in _told() if text.endswith(": it takes no iron.")]
    assert any(text.endswith("lies under the iron: quilt takes no iron.") for text in _told())
    assert not [text for text in _told() if "interfacing, which take no iron" in text]


def test_a_cloth_that_only_asks_for_no_iron_is_not_said_to_bear_none() -> None:
    """It bears a little by its own limit, and is steamed from above."""
    messages = [each.message for each in read(SKIRT).conflicts]
    assert any("quilt asks for no iron" in text for text in messages)
    assert not [text for text in messages if "quilt bears no iron" in text]


def test_a_hot_press_spares_the_pile_that_is_laid_on() -> None:
    """Cord pockets are on the denim by then: a padded board would flatten them."""
    does = ordered(SKIRT).tasks["hot press denim"].step.does
    assert does.endswith("where cord lies on it, over a needle board.")


def test_a_glue_is_bought_for_what_it_may_be_fused_to() -> None:
    """A quilt bears no glue, so its bib is backed by the denim that lies behind it."""
    garment = garment_of(parse_yaml(SKIRT, "p.yaml"), known())
    pieces = backing_of("woven fusible interfacing", garment, known()).pieces
    assert ["waistband"] == [piece.name for piece in pieces]


def test_a_wash_is_as_warm_on_the_sheet_as_on_the_label() -> None:
    """Water is read to the degree; a dial to five."""
    assert "at 86 °F" == render("at {30 °C}", "us")
    assert "at 265 °F" == render("at {130 °C}", "us")


def test_a_panel_of_rib_is_cut_to_what_it_is_stretched_from() -> None:
    """It is no band, and yet shorter than its edge: 7 in at 1.15 is 6 1/16 in."""
    built = {seam.name: seam.built for seam in read(SKIRT).seams}["rib side panel"]
    assert built is not None
    assert any("Cut rib 6 1/16 in long" in line for line in built.build_says)
