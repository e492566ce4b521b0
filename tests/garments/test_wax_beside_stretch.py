"""A waxed gilet with rib panels, and a skirt gathered to a knit that is pulled on.

What melts at a touch of warmth keeps every iron away, what has to stretch is bound by nothing, and
a thread fills the hole of its needle. All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.answer.gapwords import told_gaps
from advisor.answer.seamwords import warnings
from advisor.answer.teller import Teller
from advisor.answer.uncleaned import told_uncleaned
from advisor.claims.collect import Place
from advisor.claims.conflicts import NO_METHOD
from advisor.claims.judgement import Judgement
from advisor.construction.bulk import number, picked
from advisor.construction.hemroom import deep_in_narrow
from advisor.construction.seamwork import seamwork
from advisor.craft.threadsize import suits
from advisor.decide.advise import advise
from advisor.decide.usedup import used_up
from advisor.label.care import staying_lines
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, advice, known, ordered, stands, work

POINT = "needle.point"
GILET = "more/reedcutter_gilet"
SKATER = """
garment: Dress of a pond warden
fitting: to the body
worn by: adult
maker: {machine: household, overlocker: 4-thread}
fabrics:
  body: {fabric: stretch velvet, fibres: {polyester: 92, elastane: 8}, weight: 260 g/m2}
  skirt: {fabric: chiffon, fibres: {silk: 100}, weight: 45 g/m2}
seams:
  - {name: princess, layers: [body, body], length: 46 cm, shape: curved, times: 2}
  - {name: shoulder, layers: [body, body], length: 10 cm, times: 2}
  - {name: side, layers: [body, body], length: 40 cm, times: 2}
  - {name: crotch, layers: [body, body], length: 8 cm}
  - {name: skirt seam, layers: [skirt, skirt], length: 30 cm, times: 2}
  - {name: skirt hem, layers: [skirt], length: 140 cm, edge: hem}
  - {name: skirt gather, layers: [body, {use: skirt, fullness: 1.8}], length: 72 cm}
  - {name: nape hook, on: body, fastening: hook and eye, number: 1}
pieces:
  - {name: centre front, fabric: body, width: 26 cm, height: 66 cm}
  - {name: back, fabric: body, width: 24 cm, height: 66 cm, number: 2}
"""


def _picked(text: str, place: str, aspect: str) -> str:
    found = advise(garment_of(parse_yaml(text, "p.yaml"), known()), known())
    return picked(found.judgement.verdicts[Place("seam", place)], aspect)


def _judged(text: str) -> Judgement:
    return advise(garment_of(parse_yaml(text, "p.yaml"), known()), known()).judgement


def _teller(text: str) -> Teller:
    return Teller(garment_of(parse_yaml(text, "p.yaml"), known()), known())


def _of_gilet(place: str, aspect: str) -> str:
    return picked(advice(GILET).judgement.verdicts[Place("seam", place)], aspect)


def _gilet(old: str, new: str) -> str:
    text = (FOLDER / f"{GILET}.yaml").read_text(encoding="utf-8")
    assert old in text
    return text.replace(old, new)


def _gaps(text: str) -> set[str]:
    return {
        gap.id for gap in told_gaps(Teller(garment_of(parse_yaml(text, "p"), known()), known()))
    }


def test_a_seam_that_has_to_stretch_is_bound_by_nothing() -> None:
    """The skirt of chiffon is gathered for the hips: both edges go under stitches that give."""
    assert _picked(SKATER, "skirt gather", "seam.finish") == "overlocked"
    assert _picked(SKATER, "skirt gather", "seam.kind") == "plain"


def test_a_firm_body_keeps_the_binding() -> None:
    """Of woven velvet nothing stretches, and the edges are bound against the sheer."""
    firm = SKATER.replace("stretch velvet, fibres: {polyester: 92, elastane: 8}", "velvet")
    assert _picked(firm, "skirt gather", "seam.finish") == "bound"


def test_a_knit_with_elastane_gets_its_needle_beside_a_sheer() -> None:
    """A universal point skips in it; the chiffon bears a fine stretch needle."""
    assert _picked(SKATER, "skirt gather", "needle.point") == "stretch"
    found = advise(garment_of(parse_yaml(SKATER, "p.yaml"), known()), known())
    assert number(found.judgement.verdicts[Place("seam", "skirt gather")], "needle.size") == 75


def test_a_film_keeps_its_own_point() -> None:
    """A rounded one tears its coat; a universal one goes between the loops of the knit too."""
    jersey = "jersey, fibres: {viscose: 92, elastane: 8}"
    knit = SKATER.replace("stretch velvet, fibres: {polyester: 92, elastane: 8}", jersey)
    film = knit.replace("chiffon, fibres: {silk: 100}", "laminated cotton").replace("1.8", "1")
    assert _picked(film, "skirt gather", POINT) == "universal"
    assert _picked(knit, "skirt gather", POINT) == "stretch"


def test_two_halves_of_a_back_are_joined_by_no_princess_or_side() -> None:
    """Seams beside the middle say nothing of the middle, nor does a short crotch."""
    assert "back-in-two-halves" in _gaps(SKATER)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("{name: princess, layers: [body, body]", "{name: back panel, layers: [body, body]"),
        (
            "{name: crotch, layers: [body, body], length: 8",
            "{name: crotch, layers: [body, body], length: 60",
        ),
        ("nape hook", "back hooks"),
    ],
)
def test_what_may_join_the_halves_keeps_it_quiet(old: str, new: str) -> None:
    """A seam of the back, the long seam of trousers, or hooks down the back."""
    assert old in SKATER
    assert "back-in-two-halves" not in _gaps(SKATER.replace(old, new))


def test_no_iron_comes_to_a_bag_that_hangs_on_wax() -> None:
    """It melts under whatever lies on it; a bag on a plain cloth is pressed as its cloth bears."""
    assert work(GILET).tasks["press pocket bag"].step.iron is None
    plain = ordered(_gilet("fabric: waxed cotton", "fabric: cotton canvas"))
    assert plain.tasks["press pocket bag"].step.iron is not None


def test_a_taped_seam_of_wax_and_rib_is_straight_and_off_the_overlocker() -> None:
    """It need not stretch, each hole of a zigzag leaks, and wax clogs the loopers."""
    assert _of_gilet("side panel", "seam.support") == "stay tape"
    assert _of_gilet("side panel", "stitch.type") == "301"
    assert _of_gilet("side panel", "seam.finish") == "none"
    assert _of_gilet("armhole band", "stitch.type") == "304"  # stretched on, it has to give


@pytest.mark.parametrize("place", ["pocket zip", "side panel", "facing to lining", "front zip"])
def test_the_thread_of_wax_fills_the_hole_of_its_needle(place: str) -> None:
    """A fine thread in the needle of a heavy cloth leaves a row of open holes."""
    verdicts = advice(GILET).judgement.verdicts[Place("seam", place)]
    tex, needle = number(verdicts, "thread.size"), number(verdicts, "needle.size")
    assert tex is not None
    assert needle is not None
    assert suits(tex, needle)
    assert tex >= 40


@pytest.mark.parametrize("called", ["hem cord channel", "hem drawcord channel"])
def test_a_channel_along_the_hem_is_the_hem(called: str) -> None:
    """Nothing is levelled and turned up once its cord is in."""
    found = ordered(_gilet("hem cord channel", called))
    assert all(task.op != "hem-edge" for task in found.tasks.values())
    assert f"draw through {called}" in found.tasks


def test_a_channel_at_the_waist_is_no_hem() -> None:
    """The lower edge is still to be turned up."""
    found = ordered(_gilet("hem cord channel", "waist cord channel"))
    assert any(task.op == "hem-edge" for task in found.tasks.values())


def test_the_rows_are_waxed_when_all_is_sewn() -> None:
    """Every hole that a needle makes afterwards leaks again; no other cloth has rows to wax."""
    found = work(GILET)
    assert stands(found, "set facing to lining", "wax the rows", "last press")
    assert "wax the rows" not in ordered(SKATER).tasks


def test_wax_for_the_rows_is_bought_and_no_tape() -> None:
    """Once for all of them; of a plain canvas none is."""
    found = work(GILET)
    bought = [
        need.item for need in used_up(advice(GILET).judgement.garment, found.methods, known())
    ]
    assert sum("reproofing wax" in name for name in bought) == 1
    assert not any("tape" in name or "sealer" in name for name in bought)


def test_the_foot_that_lifts_less_is_named() -> None:
    """Two machines lift by two figures, and the sheet says which."""
    judged = advice(GILET).judgement
    seams = {seam.name: seam for seam in judged.garment.seams}
    told = warnings(seamwork(seams["lining side"], judged, known()), "metric")
    assert any("the foot of the overlocker lifts" in text for text in told)


def test_a_piece_with_too_little_below_it_is_told() -> None:
    """A narrow rolled hem takes more than it; one that is cut for it says nothing."""
    skirt = "  - {name: skirt, fabric: skirt, width: 74 cm, height: 30 cm, number: 2, hem: 4 mm}\n"
    (found,) = deep_in_narrow(_judged(SKATER + skirt), known())
    assert found.figures[0].value == 4
    assert "at least" in found.figures[1].what
    fit = SKATER + skirt.replace("4 mm", "12 mm")
    assert not list(deep_in_narrow(_judged(fit), known()))


def test_a_sheer_of_silk_is_washed_by_hand() -> None:
    """In the drum it snags on the hook and chafes."""
    lines = staying_lines(_judged(SKATER), known())
    assert next(line.word for line in lines if line.aspect == "care.wash") == "hand wash"


def test_wax_and_skin_are_both_wiped() -> None:
    """Neither is washed nor cleaned, and neither needs it."""
    skin = _gilet("rib: {fabric: rib knit, fibres: {wool: 70, nylon: 30}", "rib: {fabric: leather")
    assert NO_METHOD not in {c.aspect for c in _judged(skin).conflicts}


def test_the_bag_is_neatened_before_the_front_is_tried_on() -> None:
    """It hangs free then, and the front lies flat."""
    assert stands(work(GILET), "close pocket bag", "neaten pocket bag", "fit", "set front zip")


def test_rain_comes_in_through_a_zip_that_only_a_facing_lies_behind() -> None:
    """A facing is sewn to its tape and keeps nothing out; a flap does."""
    text = (FOLDER / f"{GILET}.yaml").read_text(encoding="utf-8")
    assert "zip-lets-rain-through" in _gaps(text)
    flap = "  - {name: storm flap, layers: [wax, wax], length: 60 cm, edge: turned}\n"
    with_flap = _gilet("  - {name: front zip", f"{flap}  - {{name: front zip")
    assert "zip-lets-rain-through" not in _gaps(with_flap)


def test_only_a_notion_that_is_a_button_has_a_loop() -> None:
    """Of an elastic nobody asks for its loop, nor says that it bars a wash that it bears."""
    layers = "[body, {notion: swimwear elastic, stretched: 1.15}]"
    leg = f"  - {{name: leg elastic, layers: {layers}, length: 60 cm, edge: folded}}\n"
    text = SKATER.replace("pieces:\n", leg + "pieces:\n")
    (row,) = told_uncleaned(_judged(text), _teller(text))
    assert "loop" not in row.effect
    assert "bars dry cleaning the whole;" in row.effect


def test_the_label_names_who_surely_rules_it() -> None:
    """The wax forbids the iron whatever a webbing may be made of."""
    loop = "  - {name: hanging loop, layers: [wax, {notion: webbing}], length: 3 cm}\npieces:\n"
    lines = staying_lines(_judged(_gilet("pieces:\n", loop)), known())
    iron = next(line for line in lines if line.aspect == "care.iron")
    assert iron.setters[0].cloths == {"wax"}
