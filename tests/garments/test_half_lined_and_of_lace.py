"""Trousers whose fronts are lined to the knee, and a knit top with a yoke and sleeves of lace.

What a sewing teacher asks of both. All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.answer.press_clause import longest_press, press_clauses
from advisor.errors import InputError
from advisor.order.missing import missing
from advisor.order.nearness import clear_of_hem
from advisor.order.seamplaces import seam_places
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, read, stands

HEAT = "press.temperature"
FERRYMAN = """
garment: Ferryman's trousers
fitting: to the body
maker: {machine: household, overlocker: 4-thread}
fabrics:
  serge: {fabric: gabardine, fibres: {polyester: 60, viscose: 40}, weight: 250 g/m2, width: 150 cm}
  slip: {fabric: lining, fibres: {acetate: 100}, weight: 70 g/m2, width: 140 cm}
  stiffening: {fabric: fusible interfacing, width: 90 cm}
seams:
  - {name: front lining basted, layers: [serge, slip], length: 58 cm, times: 2}
  - {name: lining knee hem, layers: [slip], length: 31 cm, edge: hem, times: 2}
  - {name: side seam, layers: [serge, slip, serge], length: 100 cm, times: 2}
  - {name: inside leg, layers: [serge, slip, serge], length: 75 cm, times: 2}
  - {name: seat seam, layers: [serge, serge], length: 64 cm, shape: curved, stress: high}
  - {name: waistband, layers: [serge, stiffening, serge], length: 80 cm, stress: high}
  - {name: waistband hook, layers: [serge, stiffening, serge, {notion: hook and eye}], times: 1}
  - {name: leg hem, layers: [serge], length: 44 cm, edge: hem, times: 2}
pieces:
  - {name: front, fabric: serge, width: 32 cm, height: 110 cm, number: 2}
  - {name: back, fabric: serge, width: 38 cm, height: 110 cm, number: 2}
  - {name: front lining, fabric: slip, width: 32 cm, height: 60 cm, number: 2}
"""

LAMPLIT = """
garment: Lamplit top
maker: {machine: household, overlocker: 4-thread, feet: [walking]}
fabrics:
  knit: {fabric: jersey, fibres: {viscose: 95, elastane: 5}, weight: 210 g/m2, width: 160 cm}
  net: {fabric: lace, fibres: {nylon: 85, viscose: 15}, weight: 90 g/m2, width: 130 cm}
seams:
  - {name: front yoke seam, layers: [net, knit], length: 40 cm, shape: curved}
  - {name: shoulder, layers: [net, net], length: 11 cm, times: 2}
  - {name: back keyhole, layers: [net, knit], length: 13 cm, edge: bound}
  - {name: armhole, layers: [knit, {use: net, fullness: 1.03}], length: 44 cm, shape: curved, stress: high, times: 2}
  - {name: sleeve seam, layers: [net, net], length: 45 cm, times: 2}
  - {name: side, layers: [knit, knit], length: 41 cm, times: 2}
  - {name: scalloped sleeve edge, layers: [net], length: 26 cm, edge: raw, times: 2}
  - {name: hem, layers: [knit], length: 100 cm, edge: hem}
  - {name: neck button, layers: [net, knit, {notion: button}], times: 1}
"""  # noqa: E501


def long_lined(text: str = FERRYMAN) -> str:
    return text.replace("height: 60 cm", "height: 108 cm")


def hottest(text: str, place: str) -> float:
    """The iron that a place is pressed with at most, °C."""
    found = (v.high for v in read(text).verdicts if (v.place, v.aspect) == (place, HEAT))
    return next(high for high in found if isinstance(high, float))


def asked(text: str) -> set[str]:
    """What seems to be missing, by the rule that asks for it."""
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    return {gap.rule.id for gap in missing(garment, known())}


def test_a_half_lining_is_told_by_its_pieces() -> None:
    """Its hem is sewn while it is loose, and the leg's hem says nothing of its length."""
    found = ordered(FERRYMAN)
    assert stands(found, "sew lining knee hem", "baste front lining basted", "join side seam")
    assert "thumb" not in found.tasks["sew lining knee hem"].step.does
    assert "thumb" in ordered(long_lined()).tasks["sew lining knee hem"].step.does


def test_what_is_basted_to_its_piece_is_no_seam() -> None:
    """Both are neatened as one, and once."""
    found = places(ordered(FERRYMAN))["front lining basted"]
    assert (found.kind.id, found.method.id) == ("underlining", "part-lining-held")
    own = [name for name in ordered(FERRYMAN).tasks if name.endswith("front lining basted")]
    assert own == ["baste front lining basted"]


def test_no_iron_at_the_leg_meets_a_lining_that_ends_at_the_knee() -> None:
    """One that is as long as the leg does lie there; and none lies behind a band that is fused."""
    answer = read(FERRYMAN)
    assert not [item for item in answer.instructions if "leg hem" in item.places]
    assert hottest(FERRYMAN, "leg hem") > hottest(long_lined(), "leg hem")
    assert not answer.conflicts
    assert read(long_lined()).conflicts


def test_a_band_takes_a_hook_or_two_and_no_row_of_them() -> None:
    down = FERRYMAN.replace("name: waistband hook", "name: back hooks")
    assert places(ordered(FERRYMAN))["waistband hook"].method.id == "hook-at-a-band"
    assert places(ordered(down))["back hooks"].method.id == "hooks-sewn-on"


def test_what_is_used_is_of_what_is_bought() -> None:
    """The area of the pieces by that of the cloth, its selvages and what it loses included."""
    row = next(row for row in read(FERRYMAN).cloth or () if row.fabric == "serge")
    area = 2 * 320 * 1100 + 2 * 380 * 1100
    assert row.buy_mm is not None
    assert row.used_percent is not None
    assert abs(row.used_percent - 100 * area / (row.buy_mm * 1500)) <= 1


def test_a_lace_edge_of_a_sleeve_crosses_the_sleeve_alone() -> None:
    """It is cut before the sleeve is set in."""
    found = ordered(LAMPLIT)
    cut = next(name for name in found.tasks if name.endswith("scalloped sleeve edge"))
    assert stands(found, "join sleeve seam", cut, "join armhole")
    assert "side" not in found.tasks[cut].step.does.replace("inside", "")


def test_two_cloths_bear_as_long_a_press_whichever_is_named_first() -> None:
    answer = read(LAMPLIT)
    assert longest_press(answer, "armhole") == longest_press(answer, "front yoke seam")
    assert press_clauses(answer, "armhole") == press_clauses(answer, "front yoke seam")


def test_no_buttonhole_is_asked_for_in_a_lace() -> None:
    """A loop it is; a cloth that bears a hole is asked for one as before."""
    found = asked(LAMPLIT)
    assert "buttons-without-loops" in found
    assert "buttons-without-holes" not in found
    plain = LAMPLIT.replace("layers: [net, knit, {notion", "layers: [knit, knit, {notion")
    assert "buttons-without-holes" in asked(plain)


def test_a_sleeve_is_set_in_without_being_clipped_or_opened() -> None:
    assert "Clip or notch first" not in str(read(LAMPLIT))
    assert "Clip or notch first" in str(read(LAMPLIT.replace("armhole", "panel seam")))


def test_lace_at_the_neck_is_clear_of_an_iron_at_the_hem() -> None:
    told = [i.text for i in read(LAMPLIT).instructions if i.text.startswith("Net is in when")]
    assert not [text for text in told if "hem" in text]


def test_a_share_of_nought_is_named_as_what_is_wrong() -> None:
    text = LAMPLIT.replace("{nylon: 85,", "{nylon: 85, elastane: 0,")
    with pytest.raises(InputError, match="above 0"):
        garment_of(parse_yaml(text, "project.yaml"), known())


def test_the_edges_of_a_fly_are_pressed_before_its_zip_is_in() -> None:
    fly = FERRYMAN.replace(
        "  - {name: waistband,",
        "  - {name: fly zip, layers: [serge, serge, {notion: zip}], length: 18 cm}\n"
        "  - {name: waistband,",
        1,
    )
    step = ordered(fly).tasks["face fly zip"].step
    assert step.iron is not None
    assert "press both edges before the zip goes in" in step.does


def test_elastane_in_a_woven_is_told_whatever_the_cloth_is_called() -> None:
    """Which way it gives, and that it rests before it is cut."""
    elastic = FERRYMAN.replace("viscose: 40", "viscose: 36, elastane: 4")
    assert "its give goes round the body" in str(read(elastic))
    assert "its give goes round the body" not in str(read(FERRYMAN))


def test_a_coat_weight_twill_is_pinned_with_what_every_workroom_has() -> None:
    found = (v for v in read(FERRYMAN).verdicts if (v.place, v.aspect) == ("seat seam", "pin.kind"))
    assert next(found).text == "dressmaking pins"


SLEEVES_ALONE = """
garment: Bell ringer's jacket
fabrics:
  gab: {fabric: gabardine, fibres: {wool: 100}}
  slip: {fabric: lining, fibres: {cupro: 100}}
seams:
  - {name: shoulder, layers: [gab, gab], length: 13 cm, times: 2}
  - {name: side, layers: [gab, gab], length: 40 cm, times: 2}
  - {name: sleeve seam, layers: [gab, gab], length: 44 cm, times: 2}
  - {name: armhole, layers: [gab, gab], length: 50 cm, times: 2}
  - {name: sleeve lining seam, layers: [slip, slip], length: 42 cm, times: 2}
"""


def test_a_lining_of_the_sleeves_leaves_the_body_in_sight() -> None:
    """Its shoulder and side show inside, so their edges are finished for that."""
    garment = read(SLEEVES_ALONE)
    covered = {s.name for s in garment.seams if s.facts.get("lined") == "yes"}
    assert {"sleeve seam", "armhole"} <= covered
    assert not {"shoulder", "side"} & covered
    whole = (
        SLEEVES_ALONE + "  - {name: lining side, layers: [slip, slip], length: 38 cm, times: 2}\n"
    )
    assert {"shoulder", "side"} <= {
        s.name for s in read(whole).seams if s.facts.get("lined") == "yes"
    }


FLOUNCED = """
garment: Tide table skirt
fabrics:
  wool: {fabric: wool suiting, fibres: {wool: 100}}
  frill: {fabric: satin, fibres: {acetate: 100}}
seams:
  - {name: skirt side, layers: [wool, wool], length: 70 cm, times: 2}
  - {name: flounce seam, layers: [frill, frill], length: 20 cm, times: 2}
  - {name: hem, layers: [wool], length: 140 cm, edge: hem}
pieces:
  - {name: skirt front, fabric: wool, width: 70 cm, height: 72 cm}
  - {name: PIECE, fabric: frill, width: 70 cm, height: 20 cm}
"""


def test_a_short_piece_that_lines_nothing_is_not_clear_of_the_hem() -> None:
    """A flounce may lie at the hem: only a lining is told to end above it by its pieces."""

    def clear(piece: str) -> frozenset[str]:
        garment = garment_of(parse_yaml(FLOUNCED.replace("PIECE", piece), "project.yaml"), known())
        found = {place.name: place for place in seam_places(garment, known())}
        return clear_of_hem(found["hem"], found["flounce seam"], garment)

    assert clear("skirt flounce") == frozenset()
    assert clear("skirt lining") == {"frill"}
