"""A sheer blouse and the slip under it in one file: two garments that nothing joins.

What a sewing teacher asks of them: each its care and its iron, the strap made before its slider
goes on, the collar made once, the loops only for the row that is as many. All is common practice.
"""

from __future__ import annotations

from functools import cache

from advisor.answer.label import Asked
from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Parts, answer
from advisor.order.missing import missing
from advisor.order.work import Work
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.render.label_text import render_label
from advisor.render.printed.compact import render_sheet
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, read, stands

LANTERN = """
garment: Lantern blouse and slip
fitting: loosely
pattern: tried
maker: {machine: household, overlocker: no, feet: [standard, straight-stitch, edge]}
fabrics:
  voile: {fabric: chiffon, fibres: {silk: 100}, weight: 40 g/m2}
  satin: {fabric: satin, fibres: {acetate: 100}, weight: 110 g/m2}
  support: {fabric: organza, fibres: {silk: 100}}
  edging: {notion: lace edging, fibres: {nylon: 100}}
parts:
  blouse: {layers: [voile], fitting: loosely}
  slip: {layers: [satin], separate: [satin], fitting: to the body}
seams:
  - {name: button loops, layers: [voile], length: 5 cm, times: 6, part: blouse}
  - {name: back opening facing, layers: [voile, voile], length: 40 cm, edge: turned, part: blouse}
  - {name: shoulder, layers: [voile, voile], length: 12 cm, seam: french, times: 2, part: blouse}
  - {name: side, layers: [voile, voile], length: 44 cm, seam: french, times: 2, part: blouse}
  - {name: sleeve placket, layers: [voile, voile], length: 12 cm, edge: bound, times: 2, part: blouse}
  - {name: sleeve seam, layers: [voile, voile], length: 44 cm, seam: french, times: 2, part: blouse}
  - {name: cuff, layers: [support, voile, {use: voile, fullness: 1.6}], length: 21 cm, edge: folded, times: 2, part: blouse}
  - {name: armhole, layers: [voile, {use: voile, ease: 25 mm}], length: 46 cm, shape: curved, times: 2, part: blouse}
  - {name: bow seam, layers: [voile, voile], length: 200 cm, edge: turned, shape: corner, part: blouse}
  - {name: neck to bow collar, layers: [voile, voile], length: 38 cm, shape: curved, edge: folded, crosses: shoulder, part: blouse}
  - {name: cuff buttons, "on": voile, fastening: shell button, number: 2, times: 2, part: blouse}
  - {name: back buttons, "on": voile, fastening: shell button, number: 6, part: blouse}
  - {name: blouse hem, layers: [voile], length: 104 cm, edge: hem, part: blouse}
  - {name: slip side, layers: [satin, satin], length: 60 cm, bias: yes, times: 2, seam: french, part: slip}
  - {name: slip bust dart, layers: [satin, satin], length: 8 cm, times: 2, part: slip}
  - {name: slip top edge, layers: [satin, satin], length: 84 cm, shape: curved, edge: bound, part: slip}
  - {name: slip lace, layers: [edging, satin], length: 40 cm, shape: curved, part: slip}
  - {name: slip straps, layers: [satin, {notion: rings and sliders}], length: 40 cm, times: 2, part: slip}
  - {name: slip hem, layers: [satin], length: 110 cm, edge: hem, bias: yes, part: slip}
"""  # noqa: E501


def lantern(text: str = LANTERN) -> Garment:
    return garment_of(parse_yaml(text, "project.yaml"), known())


@cache
def made() -> Work:
    return ordered(LANTERN)


@cache
def labelled() -> Answer:
    return answer(lantern(), known(), Parts(label=Asked()))


def before(first: str, second: str) -> bool:
    return stands(made(), first, second)


def test_each_of_two_garments_is_cleaned_in_its_own_way() -> None:
    """Both may be washed by hand, so no label says that nothing cleans them."""
    label = labelled().label
    assert label is not None
    assert ["blouse", "slip"] == [part.cloth for part in label.care.apart]
    assert "some" == label.care.cleaning == label.care.apart[0].cleaning
    text = render_label(labelled())
    assert "Neither washing" not in text
    assert "comes off" not in text


def test_each_of_two_garments_has_a_last_press_of_its_own() -> None:
    """Acetate and silk bear different irons, and the fastenings are gone round."""
    does = made().tasks["last press"].step.does
    assert "blouse at most 150 °C, dry, round the shell button" in does
    assert "slip at most 110 °C" in does


def test_a_strap_is_made_before_its_slider_goes_on_and_both_are_tried_on() -> None:
    """Its ends are sewn in when it has been fitted and the edge is finished."""
    ties = places(made())["slip straps"]
    assert "strap-turned-with-its-slider" == ties.method.id
    for first, second in (
        ("join slip straps", "turn through slip straps"),
        ("turn through slip straps", "thread slip straps"),
        ("baste on slip straps", "fit"),
        ("stitch down slip top edge", "sew in the ends of slip straps"),
    ):
        assert before(first, second), (first, second)


def test_lace_is_sewn_to_an_edge_that_is_closed_and_bound() -> None:
    """Before that there is no finished edge to butt it to."""
    assert before("join slip side", "stitch on slip lace")
    assert before("stitch down slip top edge", "stitch on slip lace")


def test_a_collar_with_ties_is_made_up_once_after_the_fitting() -> None:
    """The long seam of its ties makes it up; nothing is trimmed before the shoulders are fitted."""
    assert "make up neck to bow collar" not in made().tasks
    assert before("turn bow seam", "join neck to bow collar")


def test_loops_go_under_the_facing_of_the_opening_alone() -> None:
    """The edge of a collar takes in no loops of buttons."""
    rules = {(p.before, p.after) for found in made().reasons.values() for p in found}
    assert ("baste on button loops", "join back opening facing") in rules
    assert ("baste on button loops", "join bow seam") not in rules


def test_loops_are_those_of_the_row_that_is_as_many() -> None:
    """Six at the back and four at the cuffs: nothing is left to button the cuffs through."""
    gaps = {gap.place.name: gap.rule.id for gap in missing(lantern(), known())}
    assert "buttons-left-over" == gaps["cuff buttons"]
    assert "back buttons" not in gaps
    assert "at the loops" in made().tasks["fasten back buttons"].step.does
    assert "at the loops" not in made().tasks["fasten cuff buttons"].step.does
    five = lantern(LANTERN.replace("times: 6, part", "times: 5, part"))
    assert "cuff buttons" not in {gap.place.name for gap in missing(five, known())}


def test_a_bound_placket_is_slashed_before_it_is_bound() -> None:
    """A slit has no edge before it is cut; that of a whole front has one."""
    assert before("slash sleeve placket", "bind sleeve placket")
    front = LANTERN.replace("sleeve placket", "front placket")
    assert "placket" != next(s for s in lantern(front).seams if s.name == "front placket").place


def test_a_sheer_over_a_garment_of_its_own_is_not_told_to_be_underlined() -> None:
    """What hangs beneath it by itself is no lining; joined in one part it is."""
    assert "underline it" not in text_of(LANTERN)
    dress = LANTERN.replace("separate: [satin], ", "").replace("part: slip", "part: blouse")
    dress = dress.replace("layers: [voile], fitting", "layers: [satin, voile], fitting")
    dress = dress.replace("  slip: {layers: [satin], fitting: to the body}\n", "")
    assert "underline it" in text_of(dress)


def test_a_dart_that_pins_mark_is_basted_by_hand() -> None:
    """It has no allowance for a pin to go in; where pins leave nothing the fold is pinned."""
    assert "baste the fold by hand along its line" in text_of(LANTERN)
    assert "Pin the fold across its line" not in text_of(LANTERN)
    twill = LANTERN.replace(
        "{fabric: satin, fibres: {acetate: 100}, weight: 110 g/m2}", "cotton twill"
    )
    assert "Pin the fold across its line" in text_of(twill)


def test_a_french_seam_is_told_from_its_line_whatever_is_allowed() -> None:
    """Nine, three and six make up fifteen millimetres and no other allowance."""
    text = text_of(LANTERN)
    assert "6 mm outside the seam line" in text
    assert "at 9 mm" not in text


def test_an_armhole_is_trimmed_to_its_second_row_once() -> None:
    """Where the finish is a second row all round, none is sewn under the arm before that."""
    assert "neaten armhole" in made().tasks
    assert "trim armhole" not in made().tasks
    wool = LANTERN.replace(
        "{fabric: chiffon, fibres: {silk: 100}, weight: 40 g/m2}", "wool flannel"
    )
    assert "trim armhole" in ordered(wool).tasks


def test_what_is_washed_with_its_blouse_is_wetted_before_it_is_cut() -> None:
    """Steam alone shrinks the support less than the first wash of the cuff will."""
    picks = {v.place: v for v in read(LANTERN).verdicts if v.aspect == "prepare.preshrink"}
    assert "wash as it will be washed" == picks["voile"].pick
    assert picks["support"].pick in ("wash as it will be washed", "soak and dry flat")


HALVES = """pieces:
  - {name: front, fabric: voile, width: 56 cm, height: 68 cm}
  - {name: back, fabric: voile, width: 30 cm, height: 70 cm, number: 2}
"""


def test_a_back_in_halves_is_joined_below_an_opening_that_ends_above_the_hem() -> None:
    """40 of 70 cm: asked for, until a seam is told or it opens all the way down."""
    seam = "  - {name: centre back, layers: [voile, voile], length: 30 cm, part: blouse}\n"
    whole = LANTERN.replace("length: 40 cm, edge: turned", "length: 69 cm, edge: turned")
    for text, asked in ((LANTERN, True), (LANTERN + seam, False), (whole, False)):
        gaps = {gap.rule.id for gap in missing(lantern(text + HALVES), known())}
        assert asked == ("back-open-below-its-opening" in gaps)


def test_a_hem_closes_over_no_facing_that_ends_above_it() -> None:
    """An opening shorter than the side below its armhole reaches no hem."""
    assert "foot of" not in made().tasks["sew blouse hem"].step.does
    whole = LANTERN.replace("length: 40 cm, edge: turned", "length: 69 cm, edge: turned")
    assert "foot of back opening facing" in ordered(whole).tasks["sew blouse hem"].step.does


def text_of(text: str) -> str:
    return " ".join(render_sheet(read(text)).split())
