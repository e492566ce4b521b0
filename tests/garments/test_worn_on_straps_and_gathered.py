"""A child's dungarees on buttoned straps and a gathered shirt-dress, as a sewing teacher read them.

The one joins a cord to a quilt that asks for no iron, the other a silk that drops of water mark to
a cotton. All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.model.making import ToldBuild
from advisor.claims.edged import edge_cloths
from advisor.construction.notionlist import cut_of
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, read, stands

DUNGAREES = """
garment: Tide-pool dungarees
worn by: child
fitting: loosely
pattern: new
maker: {machine: household, overlocker: 3-thread, feet: [standard, walking]}
fabrics:
  cord: {fabric: needlecord, fibres: {cotton: 100}, weight: 240 g/m2, width: 140 cm}
  quilt: {fabric: quilted cloth, fibres: {polyester: 100}, weight: 170 g/m2, width: 150 cm}
  jersey: {fabric: jersey, fibres: {cotton: 95, elastane: 5}, weight: 190 g/m2, width: 160 cm}
seams:
  - {name: straps, layers: [cord, cord], length: 56 cm, edge: turned, stress: high, times: 2}
  - {name: bib edge, layers: [cord, quilt], length: 70 cm, shape: corner, edge: turned}
  - {name: outer leg, layers: [cord, cord], length: 56 cm, times: 2}
  - {name: inseam, layers: [cord, cord], length: 33 cm, stress: high, times: 2}
  - {name: crotch, layers: [cord, cord], length: 46 cm, shape: curved, stress: high}
  - {name: lining outer leg, layers: [jersey, jersey], length: 54 cm, times: 2}
  - {name: lining inseam, layers: [jersey, jersey], length: 31 cm, times: 2}
  - {name: front waist seam, layers: [cord, quilt, cord, jersey], length: 30 cm, stress: high}
  - name: back waist casing
    layers: [cord, {notion: elastic, width: 25 mm, body: 52 cm}, jersey]
    length: 33 cm
    method: elastic across a part
  - {name: strap buttonholes, on: cord, fastening: buttonholes, number: 2}
  - {name: strap buttons, layers: [cord, quilt, {notion: button}], times: 2, stress: high}
  - {name: leg hem, layers: [cord, jersey], length: 33 cm, edge: hem, times: 2}
pieces:
  - {name: front leg, fabric: cord, width: 28 cm, height: 60 cm, number: 2}
  - {name: back leg, fabric: cord, width: 32 cm, height: 64 cm, number: 2}
  - {name: bib, fabric: cord, width: 26 cm, height: 24 cm}
"""
DRESS = """
garment: Lantern-room dress
fitting: loosely
pattern: tried
maker: {machine: household, overlocker: no, feet: [standard, straight-stitch]}
fabrics:
  silk: {fabric: crepe de chine, fibres: {silk: 100}, weight: 90 g/m2, care: washable}
  firm: {fabric: poplin, fibres: {cotton: 100}, weight: 150 g/m2}
seams:
  - {name: sleeve placket, layers: [silk, silk], length: 14 cm, stress: high, times: 2,
     method: shirt placket}
  - {name: back yoke, layers: [firm, {use: silk, fullness: 1.5}, firm], length: 40 cm,
     gathers: {method: hand rows, to: 40 cm}}
  - {name: front band, layers: [silk, {notion: woven fusible interfacing}, silk], length: 100 cm,
     edge: folded, times: 2}
  - {name: collar edge, layers: [firm, {notion: woven fusible interfacing}, firm], length: 50 cm,
     edge: turned}
  - {name: armhole, layers: [silk, silk], length: 46 cm, shape: curved, stress: high, times: 2}
  - {name: side and sleeve underarm, layers: [silk, silk], length: 120 cm, times: 2}
  - {name: hem, layers: [silk], length: 150 cm, shape: curved, edge: hem}
"""


def changed(text: str, old: str, new: str) -> str:
    assert old in text
    return text.replace(old, new)


def does(found: Work) -> dict[str, str]:
    return {name: task.step.does for name, task in found.tasks.items()}


def lines(found: Answer) -> list[str]:
    return [each.text for each in found.advice]


def _built(text: str, place: str) -> ToldBuild:
    (built,) = [each.built for each in read(text).seams if each.name == place]
    assert built is not None
    return built


def pick(found: Answer, place: str, aspect: str) -> object:
    (verdict,) = [v for v in found.verdicts if (v.place, v.aspect) == (place, aspect)]
    return verdict.pick


def test_holes_in_a_strap_lie_on_no_edge_that_only_shares_its_cloth() -> None:
    """The strap is cord and cord; only the buttons are sewn through the quilt of the bib."""
    made = garment_of(parse_yaml(DUNGAREES, "dungarees.yaml"), known())
    (holes,) = [s for s in made.seams if s.name == "strap buttonholes"]
    assert () == edge_cloths(holes, made)
    assert not [c for c in read(DUNGAREES).conflicts if "strap buttonholes" in c.place]


def test_holes_that_are_called_after_an_edge_go_through_what_faces_it() -> None:
    text = changed(DUNGAREES, "strap buttonholes", "bib buttonholes")
    made = garment_of(parse_yaml(text, "dungarees.yaml"), known())
    (holes,) = [s for s in made.seams if s.name == "bib buttonholes"]
    assert ("quilt",) == edge_cloths(holes, made)


def test_a_word_of_place_alone_makes_no_hole_one_of_a_strap() -> None:
    """Straps in front are no reason to forget what faces the edge that the front closes by."""
    text = changed(DUNGAREES, "name: straps", "name: bib straps")
    text = changed(text, "strap buttonholes", "bib buttonholes")
    made = garment_of(parse_yaml(text, "dungarees.yaml"), known())
    (holes,) = [s for s in made.seams if s.name == "bib buttonholes"]
    assert ("quilt",) == edge_cloths(holes, made)


def test_holes_in_a_lined_strap_go_through_its_lining() -> None:
    text = changed(
        DUNGAREES, "{name: straps, layers: [cord, cord]", "{name: straps, layers: [cord, jersey]"
    )
    made = garment_of(parse_yaml(text, "dungarees.yaml"), known())
    (holes,) = [s for s in made.seams if s.name == "strap buttonholes"]
    assert ("jersey",) == edge_cloths(holes, made)


def _elastic(text: str, name: str) -> float | None:
    made = garment_of(parse_yaml(text, "dungarees.yaml"), known())
    (seam,) = [s for s in made.seams if s.name == name]
    return cut_of(seam, "elastic", known().entries[made.cloths["elastic"].entry])


@pytest.mark.parametrize(
    ("body", "cut"), [("52 cm", 260.0), ("24 cm", 240.0)], ids=["all round", "of the part"]
)
def test_an_elastic_across_a_back_lies_round_half_of_the_body(body: str, cut: float) -> None:
    """52 cm round the child are 26 cm behind; what is less than the channel is the part's own."""
    text = changed(DUNGAREES, "body: 52 cm", f"body: {body}")
    assert cut == _elastic(text, "back waist casing")


def test_the_sheet_says_of_how_much_of_the_body_it_is_cut() -> None:
    says = _built(DUNGAREES, "back waist casing").band_says
    assert "Cut elastic 26 cm long, round half of the body that is said" in says


@pytest.mark.parametrize(("body", "slack"), [("36 cm", True), ("28 cm", False)])
def test_an_elastic_as_long_as_its_channel_is_flagged(body: str, slack: bool) -> None:
    """Round a leg the whole is meant: 36 cm in a channel of 33 draw nothing in."""
    hem = "{name: leg hem, layers: [cord, jersey], length: 33 cm, edge: hem, times: 2}"
    casing = (
        "{name: leg casing, layers: [cord, {notion: elastic, body: %s}], length: 33 cm, times: 2}"
    )
    found = read(changed(DUNGAREES, hem, casing % body)).checks or ()
    assert slack is any("draws nothing in" in each.text for each in found)


def test_the_bib_hangs_on_the_trousers_when_they_are_tried_on() -> None:
    """However loose: what hangs from its straps is measured with the bib basted on."""
    found = ordered(DUNGAREES)
    assert stands(found, "baste on straps", "fit", "join front waist seam")
    thinned = "unpick the wadding at front waist seam"
    assert stands(found, "baste front waist seam", "fit", thinned, "join front waist seam")
    assert "baste the ends of the elastic over back waist casing" in does(found)["fit"]


def test_an_elastic_over_a_seat_is_stitched_across_between_closed_sides() -> None:
    """No iron that presses the legs meets it, and no seam is left to take in its ends."""
    found = ordered(DUNGAREES)
    assert stands(found, "press outer leg", "join crotch", "thread back waist casing")
    assert "in the ditch of the seam there" in does(found)["thread back waist casing"]


def test_an_elastic_in_a_back_between_open_sides_is_taken_in_by_them() -> None:
    text = (
        "garment: Smock\nfabrics: {cloth: cotton poplin}\nseams:\n"
        "  - {name: back elastic, layers: [cloth, {notion: elastic}], length: 30 cm}\n"
        "  - {name: side, layers: [cloth, cloth], length: 50 cm, times: 2}\n"
    )
    found = ordered(text)
    assert stands(found, "draw through back elastic", "join side")
    assert "seams that take them in" in does(found)["draw through back elastic"]


def test_a_buttoned_strap_is_backed_while_open_and_sewn_in_behind_last() -> None:
    """Its other end is buttoned on, where the body shows it."""
    found = ordered(DUNGAREES)
    assert stands(found, "back the holes of straps", "join straps", "turn through straps")
    assert stands(found, "thread back waist casing", "sew in the ends of straps")
    assert does(found)["fasten strap buttons"].startswith("Try it on again")


def test_straps_without_holes_are_still_caught_in_the_edge_of_the_bib() -> None:
    text = changed(DUNGAREES, "strap buttonholes, on: cord", "fly buttonholes, on: cord")
    text = changed(text, "strap buttons", "fly buttons")
    found = ordered(text)
    assert "back the holes of straps" not in found.tasks
    assert stands(found, "sew in the ends of straps", "join bib edge")
    assert does(found)["fasten fly buttons"].startswith("Close the edge")


def test_a_taped_seam_of_cord_and_jersey_is_a_lockstitch() -> None:
    """The needle is that of the heaviest cloth; a zigzag through four plies grins open."""
    found = read(DUNGAREES)
    assert ("301", 90) == (
        pick(found, "front waist seam", "stitch.type"),
        pick(found, "front waist seam", "needle.size"),
    )
    assert "504" == pick(found, "lining inseam", "stitch.type")


def test_no_iron_at_the_ankle_meets_what_is_at_the_waist() -> None:
    found = ordered(DUNGAREES)
    assert "press leg hem" not in dict(found.hot_near)


def test_straight_legs_with_a_knit_lining_are_not_hung() -> None:
    """The cord sets the line of the hem; legs of the knit itself still drop."""
    assert "hang" not in ordered(DUNGAREES).tasks
    knit = changed(
        DUNGAREES, "{name: leg hem, layers: [cord, jersey]", "{name: leg hem, layers: [jersey]"
    )
    assert "hang" in ordered(knit).tasks


def test_a_seat_is_sewn_twice_and_a_childs_is_not_cut_to_be_let_out() -> None:
    found, seat = ordered(DUNGAREES), "at the centre back of the seat"
    assert "seat-sewn-twice" == places(found)["crotch"].method.id
    assert not [text for text in lines(read(DUNGAREES)) if seat in text]
    grown = changed(DUNGAREES, "worn by: child\n", "")
    assert [text for text in lines(read(grown)) if seat in text]


def test_what_has_no_shoulders_has_none_to_stay() -> None:
    stay = "Stay the shoulder seams"
    assert not [text for text in lines(read(DUNGAREES)) if text.startswith(stay)]
    top = changed(DUNGAREES, "lining inseam", "lining shoulder")
    assert [text for text in lines(read(top)) if text.startswith(stay)]


def test_a_little_on_a_firm_cloth_drags_at_no_seam() -> None:
    """A skirt that small weighs some 330 g; a cord of 240 g/m2 wants no stay for it."""
    weight = read(DUNGAREES).weight
    assert weight is not None
    assert weight.hangs
    assert not [hang.place for hang in weight.hangs if hang.heavy]


def test_a_glue_is_no_damper_than_the_silk_that_it_lies_on() -> None:
    """The sheet lets it give way there; on the cotton it has its moisture."""
    steps = ordered(DRESS).tasks
    irons = {name: steps[f"fuse {name}"].step.iron for name in ("front band", "collar edge")}
    wet = {name: iron.moisture for name, iron in irons.items() if iron is not None}
    assert {"front band": "dry", "collar edge": "damp cloth"} == wet


def test_a_curved_edge_of_washed_silk_is_shut_in_and_not_pinked() -> None:
    found = read(DRESS)
    assert ("mock French", "enclosed in the seam") == (
        pick(found, "armhole", "seam.kind"),
        pick(found, "armhole", "seam.finish"),
    )


def test_a_slippery_cloth_is_gathered_by_three_rows_and_a_steady_one_by_two() -> None:
    rows, drawn = "gather back yoke", "draw up back yoke"
    assert "three gathering rows" in does(ordered(DRESS))[rows]
    assert "pull out the row that shows" in does(ordered(DRESS))[drawn]
    steady = changed(DRESS, "{use: silk, fullness: 1.5}", "{use: firm, fullness: 1.5}")
    assert "two gathering rows" in does(ordered(steady))[rows]


def test_the_top_of_a_slit_is_held_before_it_is_cut() -> None:
    assert stands(ordered(DRESS), "stay-stitch the slit of sleeve placket", "slash sleeve placket")


def test_no_placket_is_told_of_an_allowance_that_it_has_not() -> None:
    built = _built(DRESS, "sleeve placket")
    assert not [s for s in (*built.build_says, *built.build_warns) if "part from" in s]
