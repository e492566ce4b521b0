"""A winter coat with a hairy collar and trousers of stretch corduroy, read by a tailor.

What each test claims is common practice of the trade; both garments are our own.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.answer.label import Asked
from advisor.answer.pipeline import Parts, decide, tell
from advisor.construction.agreement import disagreements
from advisor.decide.advise import advise
from advisor.order.missing import missing
from advisor.project.load import garment_of
from advisor.project.placing import singular_words
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FILES, decided, known, ordered, read, stands

COAT = """
garment: Towpath coat
fabrics:
  coating: {fabric: wool coating, fibres: {FIBRES}, weight: 480 g/m2, care: dry clean only}
  fur: {fabric: fake fur, fibres: {modacrylic: 60, polyester: 40}, weight: 700 g/m2}
  satin: {fabric: satin lining, fibres: {acetate: 60, viscose: 40}, weight: 110 g/m2}
  pocketing: {fabric: cotton twill, fibres: {cotton: 100}, weight: 150 g/m2}
parts:
  body: {layers: [satin, coating], separate: [satin], fitting: to the body}
seams:
  - {name: front interfacing, layers: [coating, {notion: woven fusible interfacing}], times: 2}
  - {name: front edge stay tape, layers: [coating, {notion: stay tape}], length: 95 cm, times: 2}
  - {name: bust dart, layers: [coating, coating], length: 18 cm, times: 2}
  - {name: welt pocket, layers: [coating, coating, pocketing], length: 17 cm, times: 2}
  - {name: centre back, layers: [coating, coating], length: 75 cm}
  - {name: back vent, layers: [coating, coating], length: 32 cm, crosses: centre back}
  - {name: side, layers: [coating, coating], length: 88 cm, times: 2}
  - {name: shoulder, layers: [coating, coating], length: 14 cm, times: 2}
  - {name: sleeve seam, layers: [coating, coating], length: 46 cm, times: 2}
  - name: armhole
    layers: [coating, {use: coating, ease: 35 mm}]
    length: 54 cm
    shape: curved
    times: 2
    crosses: [side, shoulder]
  - {name: shoulder pads, layers: [coating, {notion: shoulder pad}], length: 14 cm, times: 2}
  - {name: collar edge, layers: [coating, fur], length: 130 cm, shape: curved, edge: turned}
  - {name: facing to front, layers: [coating, coating], length: 80 cm, edge: turned, times: 2}
  - {name: sleeve hem, layers: [coating], length: 32 cm, edge: hem, times: 2}
  - {name: coat hem, layers: [coating], length: 135 cm, edge: hem, crosses: [side, back vent]}
  - {name: lining side, layers: [satin, satin], length: 85 cm, times: 2}
  - {name: lining shoulder, layers: [satin, satin], length: 13 cm, times: 2}
  - {name: lining sleeve seam, layers: [satin, satin], length: 44 cm, times: 2}
  - {name: lining armhole, layers: [satin, satin], length: 54 cm, shape: curved, times: 2}
  - {name: lining to facing, layers: [coating, satin], length: 200 cm, left open: 25 cm}
  - {name: lining hem, layers: [satin], length: 132 cm, edge: hem}
"""
WOOL = COAT.replace("FIBRES", "wool: 100")
BLEND = COAT.replace("FIBRES", "wool: 80, polyamide: 20")
TROUSERS = """
garment: Hop-yard trousers
maker: {machine: household, overlocker: 4-thread, feet: [standard, zip, walking]}
fabrics:
  cord: {fabric: corduroy, fibres: {cotton: 97, elastane: 3}, weight: 310 g/m2}
  poplin: {fabric: poplin, fibres: {cotton: 100}, weight: 115 g/m2}
  lining: {fabric: lining, fibres: {viscose: 100}, weight: 80 g/m2}
parts:
  leg: {layers: [lining, cord], separate: [lining], fitting: to the body}
seams:
  - {name: back dart, layers: [cord, cord], length: 12 cm, times: 2}
  - name: slant pocket edge
    layers: [cord, poplin, {notion: stay tape}]
    length: 19 cm
    edge: turned
    times: 2
  - {name: pocket bag, layers: [poplin, poplin], length: 50 cm, shape: curved, times: 2}
  - {name: fly zip, layers: [cord, {notion: metal zip}], length: 18 cm}
  - {name: seat seam, layers: [cord, cord], length: 66 cm, stress: high, crosses: inseam}
  - {name: inseam, layers: [cord, cord], length: 78 cm, times: 2}
  - {name: outseam, layers: [cord, cord], length: 102 cm, times: 2}
  - {name: waistband, layers: [cord, cord, poplin], length: 80 cm, crosses: [outseam, seat seam]}
  - {name: leg hem, layers: [cord], length: 40 cm, edge: hem, times: 2, crosses: [inseam, outseam]}
"""
KNEE = "  - {name: knee lining, layers: [lining, cord], length: 60 cm, times: 2}\n"
LINED = TROUSERS + KNEE
LEGS = ("outseam", "inseam", "seat seam")
LATER = frozenset(
    {
        "baste",
        "dart",
        "join",
        "lay-on",
        "trim",
        "zip",
        "neaten-early",
        "tape",
        "fit",
        "baste-backing",
    }
)
"""Work that is done on a piece once it is no longer flat and bare."""
STRIPS = frozenset({"waistband", "band", "hem"})
"""Words of an interfacing that is cut when the length of what it backs is settled."""


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.stem)
def test_an_interfacing_is_fused_before_its_cloth_is_worked_on(path: Path) -> None:
    """In every garment at hand: no dart, seam, pocket or fitting comes before the glue."""
    work = decided(path).work
    assert work is not None
    at = {name: k for k, name in enumerate(work.order)}
    for fuse in work.tasks.values():
        place = fuse.place
        if fuse.op != "fuse" or place is None or place.kind.id != "interfacing":
            continue
        if STRIPS & set(singular_words(place.name)):
            continue
        before = [t for t in work.tasks.values() if t.op in LATER and at[t.id] < at[fuse.id]]
        assert [] == [t.id for t in before if set(t.cloths) & set(place.cloths)]


def test_the_front_of_a_coat_is_fused_before_its_dart_is_basted() -> None:
    """A glue on a front that is slashed already welds the slit to the board."""
    steps = ("fuse front interfacing", "baste bust dart", "fit", "slash welt pocket")
    assert stands(ordered(WOOL), *steps)


def test_a_lining_is_felled_and_levelled_when_the_coat_is_turned() -> None:
    """Inside out nothing of it hangs, so neither vent, sleeve nor hem is finished there."""
    found, turned = ordered(WOOL), "set lining to facing"
    assert stands(found, turned, "sew lining hem")
    assert stands(found, turned, "fell the lining round back vent")
    assert stands(found, turned, "fell the lining at sleeve hem")


def test_a_gap_is_asked_about_where_the_lining_hangs_free() -> None:
    """Through an open lower edge the whole coat is turned; bagged to its hem, it needs the gap."""
    for text, gaps in ((WOOL, 1), (WOOL.replace(", left open: 25 cm", ""), 0)):
        garment = garment_of(parse_yaml(text, "project.yaml"), known())
        told = disagreements(advise(garment, known()).judgement, known())
        assert gaps == sum(one.id == "needless gap" for one in told)


def test_the_halves_of_a_shawl_collar_are_asked_to_be_joined() -> None:
    """Cut twice, it meets at centre back; once there is a seam nothing is asked."""
    pieces = "pieces:\n  - {name: collar, fabric: fur, width: 20 cm, height: 80 cm, number: 2}\n"
    seam = "  - {name: collar centre back, layers: [fur, fur], length: 20 cm}\n"
    shawl = WOOL.replace("collar edge", "shawl collar edge")
    for text, asked in ((shawl + pieces, 1), (shawl + seam + pieces, 0), (WOOL + pieces, 0)):
        garment = garment_of(parse_yaml(text, "project.yaml"), known())
        told = disagreements(advise(garment, known()).judgement, known())
        assert asked == sum(one.id == "halves" for one in told)


def test_a_sleeve_is_hemmed_where_it_hangs() -> None:
    """Its length is judged from the armhole, and its ease is shrunk away before it is set."""
    found = ordered(WOOL)
    assert stands(found, "shrink the ease of armhole", "join armhole", "sew sleeve hem")


def test_a_slit_is_turned_as_soon_as_it_is_cut() -> None:
    """Its raw corners ravel while other seams are sewn."""
    order = ordered(WOOL).order
    assert order.index("turn welt pocket") == 1 + order.index("slash welt pocket")


def test_pads_are_in_at_the_fitting() -> None:
    """A shoulder that is fitted flat has no room for its pad."""
    assert "pin shoulder pads in" in ordered(WOOL).tasks["fit"].step.does


def test_no_false_reason_is_given_for_a_tape_or_a_lining() -> None:
    """A front edge meets no shoulder, and pads hang on the armhole of the shell."""
    pairs = {(p.before, p.after) for p in ordered(WOOL).graph.precedences}
    assert ("press shoulder", "tape front edge stay tape") not in pairs
    assert ("neaten lining armhole", "sew in shoulder pads") not in pairs


def test_a_front_edge_is_taped_over_the_edge_of_its_canvas() -> None:
    """The canvas is cut out of the allowance after the fitting, and the tape holds its edge."""
    canvas = "  - {name: chest canvas, layers: [coating, {notion: hair canvas}], times: 2}\n"
    steps = ("baste chest canvas", "trim chest canvas", "tape front edge stay tape")
    assert stands(ordered(WOOL + canvas), "fit", *steps[1:], "join facing to front")
    assert stands(ordered(WOOL + canvas), *steps)


def test_milled_edges_lie_raw_under_a_lining() -> None:
    """Pinking there is an hour for nothing; the lining's own edges ravel."""
    steps = [name for name in ordered(WOOL).order if name.startswith("neaten")]
    assert steps
    assert all("lining" in name for name in steps)


def test_what_nobody_has_settled_is_told_as_a_question() -> None:
    """The cloth does not bear its glue: the order says what to settle, and no remedy as taken."""
    (step,) = (
        t.step.does
        for t in ordered(BLEND).tasks.values()
        if t.op == "interface" and t.place is not None and t.place.name == "front interfacing"
    )
    assert step.startswith("Settle first what backs front interfacing")


def test_a_remedy_suits_the_weight_of_its_cloth() -> None:
    """Organza holds no front of 480 g; it does one of 200 g."""
    for text, wanted in ((BLEND, "canvas-instead"), (BLEND.replace("480", "200"), "organza")):
        first = next(c for c in read(text).conflicts if c.place == "front interfacing")
        offered = [str(one.id) for one in first.remedies]
        assert offered[0].startswith(wanted)
        assert ("organza-instead" in offered) == (wanted == "organza")


def test_legs_that_are_fitted_to_the_body_are_basted() -> None:
    """Outseam, inseam and seat are tried on in thread; a pattern that is tried is sewn at once."""
    found = ordered(TROUSERS)
    for name in LEGS:
        assert stands(found, f"baste {name}", "fit", f"join {name}")
        assert name in found.tasks["fit"].step.does
    tried = ordered(TROUSERS.replace("maker:", "pattern: tried\nmaker:"))
    assert not any(f"baste {name}" in tried.order for name in LEGS)


def test_legs_are_overlocked_flat_and_nothing_is_trimmed() -> None:
    """Inside a closed leg no overlocker reaches, and the seat keeps what is let out."""
    found = ordered(TROUSERS)
    for name in LEGS:
        assert stands(found, f"neaten {name}", f"baste {name}")
        assert "nothing trimmed off" in found.tasks[f"neaten {name}"].step.does


def test_a_dart_of_woven_pile_is_made_flat_and_left_whole() -> None:
    """Its cut edges would ravel; pocket and outseam come after it."""
    found = ordered(TROUSERS)
    assert not any(step.startswith("cut open") for step in found.order)
    first = next(s for s in ("baste back dart", "stitch back dart") if s in found.order)
    assert stands(found, first, "join slant pocket edge", "baste outseam")


def test_a_knee_lining_hangs_free_below() -> None:
    """It is held at waist and sides, whatever kind she calls it, and joined by no seam."""
    said = LINED.replace("knee lining, layers", "knee lining, kind: underlining, layers")
    for text in (LINED, said):
        found = ordered(text)
        assert "join knee lining" not in found.order
        assert "let the lower edge hang free" in found.tasks["baste knee lining"].step.does
        garment = garment_of(parse_yaml(text, "project.yaml"), known())
        told = disagreements(advise(garment, known()).judgement, known())
        assert not any(one.id == "unended" for one in told)


def test_a_waist_button_wants_its_hole_though_a_hook_is_there() -> None:
    """The hook takes the strain and the button closes the overlap; a hole of its own fills it."""
    hook = "  - {name: waistband hook, on: cord, fastening: hooks, number: 1}\n"
    button = "  - {name: waist button, layers: [cord, cord, {notion: plastic button}]}\n"
    hole = "  - {name: waist buttonhole, on: cord, fastening: buttonholes, number: 1}\n"
    for text, wanted in ((hook + button, 1), (hook + button + hole, 0)):
        garment = garment_of(parse_yaml(TROUSERS + text, "project.yaml"), known())
        found = [one.rule.id for one in missing(garment, known())]
        assert wanted == found.count("waist-button-without-a-hole")


def test_a_tape_that_is_named_is_bought_once() -> None:
    """The tape of the pocket is among its layers; without it the method buys one."""
    for text, extra in ((TROUSERS, 0), (TROUSERS.replace(", {notion: stay tape}", ""), 1)):
        kit = read(text).kit or ()
        assert extra == sum(one.item == "stay tape for pocket edges" for one in kit)


def test_a_label_says_first_what_to_ask_and_why_it_is_cooler() -> None:
    """Elastane bears a little less than two dots, so a label of marks has to say one."""
    garment = garment_of(parse_yaml(TROUSERS, "project.yaml"), known())
    parts = Parts(label=Asked("eu"))
    told = tell(decide(garment, known(), parts), known(), parts).label
    assert told is not None
    assert any("Ask what stay tape is made of before" in text for text in told.care.once_known)
    pure = TROUSERS.replace("notion: stay tape", "notion: pure cotton stay tape")
    garment = garment_of(parse_yaml(pure, "project.yaml"), known())
    cool = tell(decide(garment, known(), parts), known(), parts).label
    assert cool is not None
    (line,) = (one for one in cool.care.lines if one.aspect == "care.iron")
    assert any("It bears 149 °C, less than the mark of 150 °C" in s.why for s in line.set_by)
