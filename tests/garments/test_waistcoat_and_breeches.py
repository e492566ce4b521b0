"""What a theatre cutter found wrong in a waistcoat with fall-front breeches and in a laced bodice.

All is common practice of the trade; the garments are read once.
"""

from __future__ import annotations

from pathlib import Path

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import WHOLE, decide, tell
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, decided, known, ordered, told
from tests.typed import typed

TOLL = FOLDER / "more" / "toll_keeper.yaml"
LACED = """
garment: Laced bodice over a skirt, with an apron
fitting: to the body
pattern: new
maker: {machine: household, feet: [standard, zip]}
fabrics:
  serge: {fabric: serge, fibres: {wool: 100}, weight: 300 g/m2}
  dupion: {fabric: dupion, fibres: {silk: 100}, weight: 95 g/m2}
  drill: {fabric: cotton twill, fibres: {cotton: 100}, weight: 250 g/m2}
  lawn: {fabric: lawn, fibres: {cotton: 100}, weight: 70 g/m2}
  satin: {fabric: satin, fibres: {polyester: 100}, weight: 110 g/m2}
  ribbon: {notion: satin ribbon, fibres: {polyester: 100}}
parts:
  skirt: {layers: [serge], fitting: loosely}
  bodice: {layers: [drill, dupion]}
  apron: {layers: [lawn], fitting: not at all}
seams:
  - {name: skirt side, layers: [serge, serge], length: 90 cm, times: 2, part: skirt}
  - {name: skirt waistband, layers: [serge, {use: serge, fullness: 2}, drill],
     length: 76 cm, kind: waistband, part: skirt}
  - {name: ribbon rows, layers: [serge, {use: ribbon, width: 25 mm}],
     length: 152 cm, kind: ribbon, times: 2, part: skirt}
  - {name: bodice backing, layers: [dupion, drill], length: 40 cm, kind: underlining, part: bodice}
  - {name: panel seam, layers: [dupion, satin, {notion: piping cord}, dupion],
     length: 36 cm, shape: curved, stress: high, times: 4, part: bodice}
  - {name: bodice side, layers: [dupion, drill, drill, dupion],
     length: 24 cm, stress: high, times: 2, part: bodice}
  - {name: lacing edge, layers: [dupion, drill, dupion],
     length: 38 cm, edge: turned, times: 2, part: bodice}
  - {name: eyelets, layers: [dupion, drill, dupion, {notion: grommet}], times: 16, part: bodice}
  - {name: front lacing, on: dupion, fastening: lacing, number: 1, part: bodice}
  - {name: apron hem, layers: [lawn], length: 150 cm, edge: hem, part: apron}
  - {name: apron waist, layers: [{use: ribbon, width: 50 mm}, {use: lawn, fullness: 2}],
     length: 50 cm, kind: waistband, part: apron}
pieces:
  - {name: skirt panel, fabric: serge, width: 80 cm, height: 100 cm, number: 2}
  - {name: piping cover, fabric: satin, width: 4 cm, height: 40 cm, number: 4, grain: bias}
"""


def _steps(file: Path) -> list[str]:
    work = decided(file).work
    assert work is not None
    return list(work.plan.order)


def _laced() -> list[str]:
    return list(ordered(LACED).plan.order)


def _laced_told() -> Answer:
    garment = garment_of(parse_yaml(LACED, "laced.yaml"), known())
    return tell(decide(garment, known(), WHOLE), known(), WHOLE)


def _before(order: list[str], *steps: str) -> bool:
    found = [order.index(step) for step in steps]
    return found == sorted(found)


def test_a_fall_is_finished_before_its_band() -> None:
    """Stayed at the foot of its slits, faced, clipped, turned and barred; then the band."""
    works = ("stay the foot of", "face", "clip", "turn", "bar")
    assert _before(_steps(TOLL), *(f"{w} fall edge" for w in works), "join breeches waistband")


def test_sides_legs_and_seat_of_an_untried_pattern_are_basted() -> None:
    """They are sewn only when they have been tried on."""
    for seam in ("waistcoat side", "leg seams", "seat seam"):
        assert _before(_steps(TOLL), f"baste {seam}", "fit", f"join {seam}")
    assert "stitch again seat seam" in _steps(TOLL)


def test_a_pocket_is_cut_while_its_front_lies_flat() -> None:
    """After the fitting the basting is opened, and the side is joined behind the pocket."""
    assert _before(_steps(TOLL), "fit", "slash welt pocket", "join waistcoat side")
    text = " ".join(typed("order", str(TOLL)).out.split())
    assert "open the basting of waistcoat side, leg seams and seat seam" in text


def test_no_hem_is_levelled_where_edges_are_faced_and_legs_end_in_bands() -> None:
    """The knee bands come after the legs, and no lower edge is turned up."""
    assert "hem" not in _steps(TOLL)
    assert _before(_steps(TOLL), "press leg seams", "join knee band")


def test_a_buttonhole_takes_no_more_heat_than_its_edge() -> None:
    """The acetate behind the edge lies under the iron, though the hole names the damask alone."""
    found = {v.place: v for v in told(TOLL).verdicts if v.aspect == "press.temperature"}
    high = found["front buttonholes"].high
    assert isinstance(high, float)
    assert high <= 110.0 == found["waistcoat front edge"].high


def test_heavy_pile_has_one_needle_in_all_its_seams() -> None:
    """The heavier seam of two plies of pile gets no finer one."""
    found = {v.place: v.pick for v in told(TOLL).verdicts if v.aspect == "needle.size"}
    assert found["leg seams"] == found["seat seam"] == found["fall edge"] == 90.0


def test_what_no_place_joins_or_closes_is_named() -> None:
    """Two halves of a back, armholes and a knee band."""
    gaps = {gap.id for gap in told(TOLL).missing or ()}
    assert {"back-in-two-halves", "armhole-not-finished", "leg-band-not-closed"} <= gaps


def test_one_repeat_is_bought_to_place_a_pattern() -> None:
    """Two fronts side by side take it as well; an interfacing longer than wide is turned."""
    text = " ".join(typed("sheet", str(TOLL), "--only", "shopping").out.split())
    assert "One repeat of 24 cm is in it" in text
    assert "cannot be laid out" not in text
    assert "cinch" not in text


def test_a_backing_holds_in_its_own_part() -> None:
    """Drill in the band of a skirt is basted to no silk: serge may be damped there."""
    assert not [c for c in _laced_told().conflicts if c.place == "skirt waistband"]


def test_a_loaded_seam_has_the_thread_of_its_backing() -> None:
    """Silk on drill that is laced is sewn with a thread that holds."""
    found = {v.place: v.pick for v in _laced_told().verdicts if v.aspect == "thread.size"}
    assert found["bodice side"] is not None
    assert 30.0 <= float(found["bodice side"]) <= 35.0


def test_piping_is_made_before_it_is_basted_on() -> None:
    """Cord and bias strip are given, so the cord is covered first."""
    assert _before(_laced(), "cover the cord of panel seam", "baste piping to panel seam")


def test_eyelets_come_after_the_last_press() -> None:
    """No iron lies flat on them; one cord is bought for the lacing."""
    assert _before(_laced(), "last press", "set eyelets", "lace up front lacing")
    cords = [need for need in _laced_told().kit or () if need.item.startswith("lacing cord")]
    assert [need.for_ for need in cords] == [("front lacing",)]


def test_an_apron_is_hemmed_and_pressed_before_its_ribbon() -> None:
    """Its hem runs up both sides into the band, and the ribbon bears no iron for cotton."""
    assert _before(_laced(), "press apron hem", "join apron waist")
    assert "close the ends of apron waist" not in _laced()


def test_ribbon_round_a_skirt_goes_on_before_its_last_seam() -> None:
    """The others are joined first, for it runs over them in one length."""
    work = ordered(LACED)
    assert "all but one of skirt side" in work.tasks["stitch on ribbon rows"].step.does
    assert "over the ends of ribbon rows" in work.tasks["join skirt side"].step.does
