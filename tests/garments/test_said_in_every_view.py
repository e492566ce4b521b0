"""What one view of a garment says no other view leaves out or says otherwise."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.garments.whole import ordered
from tests.typed import typed

BANDS = """
garment: Lock gate trousers
fabrics:
  cloth: {fabric: corduroy, fibres: {cotton: 100}, weight: 400 g/m2}
  rib: {fabric: rib knit, fibres: {cotton: 95, elastane: 5}}
seams:
  - {name: waistband, kind: band, stress: high, length: 80 cm,
     layers: [cloth, {use: rib, stretched: 1.25}, {notion: woven elastic, stretched: 1.25}]}
"""
"""A band of a knit with an elastic in it, thick enough for a warning of its own."""
STRETCHED = """
garment: Ferry deck leggings
maker: {overlocker: 4-thread}
fabrics:
  cloth: {fabric: jersey, fibres: {cotton: 95, elastane: 5}}
seams:
  - {name: side, layers: [cloth, cloth], length: 90 cm, stress: high}
"""
FINE_AND_PLAIN = """
garment: Toll bridge overblouse
fabrics:
  thin: {fabric: chiffon, fibres: {silk: 100}}
  firm: {fabric: poplin, fibres: {cotton: 100}}
seams:
  - {name: sleeve seam, layers: [thin, thin], length: 40 cm}
  - {name: side, layers: [firm, firm], length: 50 cm}
"""
ROUNDED = """
garment: Towline trousers
fitting: loosely
fabrics:
  cloth: {fabric: gabardine, fibres: {wool: 98, elastane: 2}}
  lining: {fabric: lining, fibres: {cupro: 100}}
seams:
  - {name: outseam, layers: [cloth, cloth], length: 100 cm}
  - {name: waist facing to lining, layers: [cloth, lining], length: 70 cm, edge: turned}
  - {name: hem, layers: [cloth], length: 46 cm, edge: hem}
  - {name: lining hem, layers: [lining], length: 46 cm, edge: hem}
"""
SKIN = """
garment: Lock keeper jerkin
fabrics:
  skin: {fabric: leather}
seams:
  - {name: side, layers: [skin, skin], length: 50 cm}
pieces:
  - {name: back, fabric: skin, width: 60 cm, height: 58 cm}
  - {name: strap, fabric: skin, width: 3 cm, height: 70 cm, number: 2}
"""
CHECKED = """
garment: Ticket office blouse
fabrics:
  check: {fabric: gingham, fibres: {cotton: 100}, colour: black and white}
  cuffs: {fabric: poplin, fibres: {cotton: 100}, colour: ivory}
seams:
  - {name: side, layers: [check, check], length: 50 cm}
  - {name: cuff, layers: [cuffs, check], length: 20 cm}
"""
COATED = """
garment: Weir keeper apron
kit: {pins: [dressmaking pins]}
fabrics:
  shell: {fabric: waxed cotton}
  thin: {fabric: lining, fibres: {polyester: 100}}
seams:
  - {name: side, layers: [shell, shell], length: 50 cm}
  - {name: edge, layers: [shell, thin], length: 50 cm, edge: turned}
  - {name: flap snaps, layers: [shell, {notion: set snap}, thin], number: 4}
"""
PATCHED = """
garment: Toll collector waistcoat
fitting: loosely
fabrics:
  tweed: {fabric: tweed, fibres: {wool: 100}}
  suede: {fabric: suede}
seams:
  - {name: welt pocket, layers: [tweed, suede], length: 12 cm, times: 2}
  - {name: shoulder, layers: [tweed, tweed], length: 12 cm, times: 2}
  - {name: side, layers: [tweed, tweed], length: 40 cm, times: 2}
"""
VELVET = """
garment: Lamp room capelet
fitting: loosely
fabrics:
  pile: {fabric: velvet, fibres: {acetate: 100}, weight: 250 g/m2}
  firm: {fabric: denim, fibres: {cotton: 100}}
seams:
  - {name: side, layers: [pile, pile], length: 50 cm}
  - {name: tab snaps, kind: fastening, fastening: snaps, number: 4,
     layers: [pile, pile, {notion: set snap}]}
  - {name: front buttons, layers: [firm, firm, {notion: button}], number: 4}
  - {name: yoke, layers: [firm, pile], length: 50 cm}
"""


@cache
def printed(text: str, *words: str) -> str:
    """What a command prints of a project that stands here as text, on one line."""
    with TemporaryDirectory() as folder:
        file = Path(folder) / "project.yaml"
        file.write_text(text, encoding="utf-8")
        return " ".join(typed(words[0], str(file), *words[1:]).out.split())


def test_each_band_has_its_cut_length_whatever_else_is_told() -> None:
    """80 cm at 1.25 is 64 cm: of the knit, and of the elastic in it, on both lists."""
    for view in (("sheet",), ("sheet", "--only", "shopping")):
        told = printed(BANDS, *view)
        assert "Cut rib 64 cm long" in told
        assert "Cut woven elastic 64 cm long and 25 mm more for its ends" in told


def test_dressmaking_pins_are_among_what_a_workroom_has() -> None:
    """A place is pinned with them and another with fine ones: the list knows both kinds."""
    told = printed(FINE_AND_PLAIN, "sheet", "--only", "shopping")
    assert "fine silk pins" in told
    assert "dressmaking pins" in told[told.index("AS IN ANY WORKROOM") :]


def test_one_place_is_pinned_with_one_kind_of_pin() -> None:
    """A pile says from which side it is pinned, and leaves the kind of pin to the cloths."""
    told = printed(VELVET, "sheet", "--all")
    assert "Pin from the back" in told
    assert "very fine pins" not in told


def test_no_iron_goes_round_what_hangs_from_the_last_press() -> None:
    """The pile hangs then, and its snaps with it; a button on the firm cloth is gone round."""
    assert "go round the button with the iron" in printed(VELVET, "order")
    for view in ("sheet", "order", "iron"):
        assert "set snap with the iron" not in printed(VELVET, view)


def test_what_an_overlocker_joins_is_past_recall() -> None:
    """Its knife takes the allowance, and the second row comes after the allowance is trimmed."""
    told = printed(STRETCHED, "order")
    assert "[ ]!Join side" in told
    assert "join by overlocker" in told[told.index("No way back") : told.index("A mistake costs")]
    assert "[ ] Join side" in printed(
        STRETCHED.replace("overlocker: 4-thread", "overlocker: no"), "order"
    )


def test_the_rounding_of_a_unit_is_no_danger() -> None:
    """300 °F is 149 °C: a hem of 150 is set cooler, within the limit, and nothing is warned of."""
    hems = [
        (task.step.iron.temperature_c, task.at_most)
        for task in ordered(ROUNDED).tasks.values()
        if task.id == "press lining hem" and task.step.iron is not None
    ]
    assert [(145, 149)] == hems
    assert "too hot" not in printed(ROUNDED, "order")


def test_the_largest_piece_tells_how_large_a_skin_has_to_be() -> None:
    """A long strip fits across a skin that a broad back does not fit into: both are named."""
    told = printed(SKIN, "sheet", "--only", "shopping")
    assert "back is 60 cm × 58 cm and strap is 30 mm × 70 cm" in told


def test_a_cloth_of_two_colours_is_dark_and_pale() -> None:
    """Its dye is feared beside a pale cloth; its thread is the darker colour in every view."""
    sheet = printed(CHECKED, "sheet")
    assert "wash it apart until no colour comes. (check, cuffs)" in sheet
    for view in (("sheet",), ("sheet", "--only", "shopping"), ("order",)):
        assert "to match the darker colour of check" in printed(CHECKED, *view)


def test_nothing_is_basted_where_each_hole_stays() -> None:
    """No pins go into a waxed cloth, so neither a place nor the list has it basted instead."""
    sheet = printed(COATED, "sheet")
    assert "no pins in the cloth" in sheet
    assert "Baste long seams of a slippery" not in printed(COATED, "sheet", "--all")
    assert "sewing clips (or hand basting)" not in sheet


def test_heat_and_damp_of_one_pressing_are_one_warning() -> None:
    """Both harm the suede at the same places and one towel keeps both off: it is said once."""
    for view in ("order", "iron"):
        told = printed(PATCHED, view).casefold()
        assert 1 == told.count("suede is in when side is pressed")
        assert "too hot for it, and under a damp cloth, and water leaves rings on it: cover" in told


def test_what_is_computed_of_a_press_is_said_where_that_press_is_told() -> None:
    """Side is pressed as shoulder is, for as long: the sheet gives the one setting and one time."""
    told = printed(PATCHED, "sheet")
    side = told[told.index("side (tweed + tweed)") : told.index("THE WHOLE GARMENT")]
    shoulder = told[told.index("shoulder (tweed + tweed)") : told.index("side (tweed + tweed)")]
    assert "Computed: at most" in shoulder
    assert "press as in shoulder" in side
    assert "Computed" not in side
