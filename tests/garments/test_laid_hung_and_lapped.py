"""What is dry-cleaned, what lies behind part of a garment, and what hangs or laps beside a seam."""

from __future__ import annotations

from advisor.claims.collect import Place
from advisor.decide.advise import advise
from advisor.label.care import care_of
from advisor.project.load import garment_of
from advisor.render.gaveway import gave_way
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, read, stands

LEGS = """garment: Usher's trousers
fitting: to the body
pattern: new
maker: {machine: household, feet: [standard, zip], overlocker: 3-thread}
fabrics:
  cloth: {fabric: suiting, fibres: {linen: 55, wool: 45}, weight: 260 g/m2}
  stripe: {fabric: sateen, fibres: {cotton: 100}, weight: 150 g/m2}
  knee: {fabric: habutai, fibres: {silk: 100}, weight: 50 g/m2}
  strip: {fabric: lawn, fibres: {cotton: 100}, weight: 75 g/m2}
seams:
  - {name: half lining, layers: [cloth, knee], length: 60 cm, kind: underlining, times: 2}
  - {name: half lining hem, layers: [knee], length: 36 cm, edge: hem, times: 2}
  - {name: back dart, layers: [cloth], length: 10 cm, times: 2}
  - {name: fly zip, layers: [cloth, {notion: metal zip}], length: 18 cm, stress: high}
  - {name: outseam, layers: [cloth, cloth], length: 104 cm, times: 2}
  - {name: side stripe, layers: [cloth, stripe], length: 104 cm, kind: ribbon, times: 2}
  - {name: inseam, layers: [cloth, cloth], length: 77 cm, stress: high, times: 2}
  - {name: crotch, layers: [cloth, cloth], length: 62 cm, shape: curved, stress: high}
  - {name: waistband, layers: [cloth, {notion: waistband stiffener}, cloth, strip], length: 80 cm}
  - {name: leg hem, layers: [cloth], length: 42 cm, edge: hem, times: 2}
pieces:
  - {name: front leg, fabric: cloth, width: 33 cm, height: 116 cm, number: 2}
  - {name: back leg, fabric: cloth, width: 39 cm, height: 116 cm, number: 2}
  - {name: half lining, fabric: knee, width: 33 cm, height: 62 cm, number: 2}
  - {name: stripe, fabric: stripe, width: 5 cm, height: 108 cm, number: 2}
  - {name: curtain, fabric: strip, width: 46 cm, height: 10 cm, number: 2, grain: bias}
"""
DAMP = "press.moisture"


def picked(text: str, place: Place, aspect: str) -> str:
    """What is picked of an aspect."""
    every = (v for v in read(text).verdicts if v.aspect == aspect)
    return next(str(v.pick) for v in every if (v.scope, v.place) == (place.scope, place.name))


def does(text: str, step: str) -> str:
    """The words of a step."""
    return ordered(text).tasks[step].step.does


def test_what_is_dry_cleaned_is_not_shrunk_in_the_tub_nor_washed() -> None:
    """The maker's word for one cloth keeps the water from the whole garment, in every view."""
    dry = LEGS.replace("weight: 260 g/m2", "weight: 260 g/m2, care: dry clean only")
    for cloth in ("cloth", "stripe", "strip", "knee"):
        assert "wash" not in picked(dry, Place("fabric", cloth), "prepare.preshrink")
        assert "soak" not in picked(dry, Place("fabric", cloth), "prepare.preshrink")
    assert picked(dry, Place("garment", "Usher's trousers"), "care.wash") == "do not wash"
    assert picked(LEGS, Place("fabric", "stripe"), "prepare.preshrink").startswith("wash")


def test_a_backing_lies_only_behind_the_panel_that_it_is_basted_to() -> None:
    """By its pieces or its name; what names no panel may lie behind all of them."""
    dart, side = Place("seam", "back dart"), Place("seam", "outseam")
    fronts = LEGS.replace("name: half lining, layers", "name: front half lining, layers")
    joined = LEGS.replace(
        "kind: underlining", "kind: underlining, joins: [front leg, half lining]"
    ).replace("layers: [cloth], length: 10 cm", "layers: [cloth], joins: [back leg], length: 10 cm")
    assert picked(LEGS, dart, DAMP) == "dry"
    for text in (fronts, joined):
        assert picked(text, dart, DAMP) == "damp cloth"
        assert picked(text, side, DAMP) == "dry"


def test_a_half_lining_is_not_under_the_iron_at_the_hem_of_the_leg() -> None:
    """It ends at a hem of its own, above; without that it may reach down."""
    hem = Place("seam", "leg hem")
    assert picked(LEGS, hem, DAMP) == "damp cloth"
    assert not any("leg hem" in item.places for item in read(LEGS).instructions)
    whole = LEGS.replace("half lining hem, layers: [knee]", "knee side, layers: [knee, knee]")
    assert picked(whole.replace("36 cm, edge: hem", "36 cm"), hem, DAMP) == "dry"


def test_no_seam_over_a_backing_is_told_to_be_pressed_before_the_backing_is_in() -> None:
    """A dart is sewn through what is basted already; the flat piece is pressed before that."""
    alone = [i for i in read(LEGS).instructions if "knee" in i.tender]
    assert {p for item in alone if item.kind == "alone" for p in item.places} == {"half lining"}


def test_damp_that_gave_way_is_told_beside_the_needle() -> None:
    """And not what a cloth's own other fibre keeps from it."""
    told = [item.parts[0].text for item in gave_way(read(LEGS)).items]
    assert any("cloth wanted at least damp cloth; set: dry" in text for text in told)
    assert not any("(linen) wanted iron" in text for text in told)


def test_a_stripe_along_the_seam_of_a_leg_crosses_none() -> None:
    """It lies on its own seam from waist to hem, so no seam waits open for it."""
    for step in ("join outseam", "join inseam", "stitch on side stripe"):
        assert "the last of them" not in does(LEGS, step)
        assert "runs over them" not in does(LEGS, step)


def test_a_seat_is_sewn_twice_whatever_it_is_called() -> None:
    """Crotch, rise and seat are one seam."""
    for name in ("crotch", "rise", "seat seam"):
        assert f"stitch again {name}" in ordered(LEGS.replace("crotch", name)).order


def test_a_curtain_hangs_below_a_band_and_its_stiffener_is_sewn_in() -> None:
    """A band that faces itself has its last layer hanging; one of two cloths is faced by it."""
    close = does(LEGS, "close waistband")
    assert "hang free" in close
    assert "catch its fold" in close
    assert "no allowances" in does(LEGS, "stiffen waistband")
    assert "stiffener" not in does(LEGS, "join waistband")
    half = "  - {name: waistband, fabric: cloth, width: 46 cm, height: 9 cm, number: 4}\n"
    halves = ordered(LEGS + half)
    assert stands(halves, "join the halves of waistband", "join waistband")
    assert "join the halves of waistband" not in ordered(LEGS + half.replace("46", "86")).order
    faced = LEGS.replace("stiffener}, cloth, strip]", "stiffener}, strip]")
    assert "hang free" not in does(faced, "close waistband")
    assert "stiffen waistband" in ordered(faced).order


def test_darts_of_a_new_pattern_wait_for_the_body_with_the_sides() -> None:
    """Where the seat and the sides of trousers are only basted to be tried on, so are the darts."""
    tried = "baste back dart", "fit", "stitch back dart", "press back dart", "join outseam"
    assert stands(ordered(LEGS), *tried)
    welt = "layers: [cloth, cloth], length: 14 cm, shape: corner, times: 2}\n  - {name: fly zip"
    cut = ordered(LEGS.replace("{name: fly zip", "{name: back welt pocket, " + welt))
    assert stands(cut, "fit", "press back dart", "stitch the welt of back welt pocket")
    tried_before = ordered(LEGS.replace("pattern: new", "pattern: tried"))
    assert stands(tried_before, "press back dart", "fit")


CAPE = """garment: Ferry wrap jacket
fitting: loosely
pattern: new
maker: {machine: household, feet: [standard, walking]}
fabrics:
  shell: {fabric: boiled wool, fibres: {wool: 100}, weight: 380 g/m2}
  edge: {fabric: goatskin}
  silk: {fabric: habutai, fibres: {silk: 100}, weight: 45 g/m2}
seams:
  - {name: shoulder, layers: [shell, shell], length: 14 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 44 cm, times: 2}
  - {name: armhole, layers: [shell, shell], length: 50 cm, times: 2, crosses: [shoulder, side]}
  - {name: sleeve seam, layers: [shell, shell], length: 36 cm, times: 2}
  - {name: collar seam, layers: [shell, shell], length: 46 cm, shape: curved}
  - {name: front edge binding, layers: [shell, silk, edge], length: 64 cm, edge: bound, times: 2}
  - {name: hem binding, layers: [shell, edge], length: 116 cm, edge: bound}
  - {name: lining side, layers: [silk, silk], length: 40 cm, times: 2}
  - {name: lining shoulder, layers: [silk, silk], length: 13 cm, times: 2}
  - {name: lining hem, layers: [silk], length: 112 cm, edge: hem}
"""


def test_a_lining_is_hemmed_and_basted_in_before_an_edge_binds_its_end() -> None:
    """The binding of a front takes in the end of the hem; that of a neck does not."""
    bind = "bind front edge binding"
    steps = "press lining hem", "lay the lining in at front edge binding", bind
    assert stands(ordered(CAPE), *steps)
    neck = ordered(CAPE.replace("front edge binding", "neck binding"))
    assert "press lining hem" not in neck.graph.forced_before("bind neck binding")


def test_a_lapped_armhole_is_cut_only_when_its_sleeve_has_been_tried_on() -> None:
    """Its upper edge is cut at the seam line, and no sleeve can be moved after that.

    Under a lining boiled wool is lapped only where the place says so: it is pressed open there.
    """
    cut = "cut away the upper layer at armhole"
    assert "join armhole" in ordered(CAPE).order
    found = ordered(CAPE.replace("{name: armhole,", "{name: armhole, seam: lapped,"))
    assert stands(found, "join sleeve seam", "baste armhole", "fit", cut, "lap armhole")
    assert "armhole" in found.tasks["fit"].step.does


def test_a_strip_of_skin_is_bound_on_with_cut_edges_in_one_row() -> None:
    """No fold of leather is felled, and it keeps every hole; a woven strip is turned under."""
    leather = does(CAPE, "bind hem binding")
    assert "nothing turned under" in leather
    assert "one row" in leather
    woven = ordered(CAPE.replace("edge: {fabric: goatskin}", "edge: {fabric: cotton lawn}"))
    assert "stitch down hem binding" in woven.order


def test_a_lining_of_the_body_that_is_held_at_its_fronts_alone_is_asked_for() -> None:
    """Its neck and its armholes hang loose until a place holds them."""
    asked = {gap.id for gap in read(CAPE).missing or ()}
    assert {"lining-loose-at-the-neck", "lining-without-armholes"} <= asked
    held = CAPE.replace("collar seam, layers: [shell,", "collar seam, layers: [shell, silk,")
    held = held.replace("armhole, layers: [shell,", "armhole, layers: [shell, silk,")
    asked = {gap.id for gap in read(held).missing or ()}
    assert not {"lining-loose-at-the-neck", "lining-without-armholes"} & asked


def test_what_is_stitched_on_from_the_face_is_sewn_in_its_own_colour() -> None:
    """The thread of a stripe is bought and threaded to match the stripe, not the leg."""
    machine = ordered(LEGS).tasks["stitch on side stripe"].step.machine
    assert machine is not None
    assert "to match stripe" in machine.thread_above
    assert any("stripe" in thread.matches for thread in read(LEGS).thread or ())


def test_a_cloth_lighter_than_its_kind_takes_the_low_end_of_needle_and_thread() -> None:
    """Twill of 130 g/m2 for a bag is no twill for trousers; of 250 it is sewn as ever."""
    twill = "fabrics:\n  bag: {{fabric: cotton twill, fibres: {{cotton: 100}}, weight: {} g/m2}}"
    bag = "\n  - {name: pocket bag, layers: [bag, bag], length: 48 cm, times: 2}\npieces:"
    place, found = Place("seam", "pocket bag"), []
    for grams in (130, 250):
        text = LEGS.replace("fabrics:", twill.format(grams)).replace("\npieces:", bag)
        found.append(tuple(float(picked(text, place, a)) for a in ("needle.size", "thread.size")))
    assert found == [(80.0, 27.0), (90.0, 40.0)]


def test_the_limit_of_the_iron_is_laid_to_what_surely_sets_it() -> None:
    """Silk and wool are there; that the tape of a zip is polyester is only possible."""
    garment = garment_of(parse_yaml(LEGS, "p.yaml"), known())
    care = care_of(advise(garment, known()).judgement, known())
    iron = next(line for line in care.lines if line.aspect == "care.iron")
    assert iron.setters[0].certain
    assert not iron.setters[0].cloths <= {"metal zip"}


def test_loops_and_patches_of_a_toggle_are_bought_with_it() -> None:
    """A wooden toggle that is named brings neither its loop nor what lies behind it."""
    toggles = "  - {name: front toggles, layers: [shell, {notion: wooden toggle}], number: 3}\n"
    bought = " ".join(row.item for row in read(CAPE + toggles).kit or ())
    assert "for loops" in bought
    assert "patches of firm cloth" in bought


BOUND = """
garment: Lighthouse keeper's sundress
fitting: to the body
pattern: new
maker: {machine: household}
fabrics:
  shell: {fabric: cotton pique, weight: 180 g/m2}
  lining: {fabric: viscose lining}
  strip: {fabric: cotton poplin}
seams:
  - {name: side, layers: [shell, shell], length: 40 cm, times: 2}
  - {name: shoulder, layers: [shell, shell], length: 8 cm, times: 2}
  - {name: lining side, layers: [lining, lining], length: 40 cm, times: 2}
  - {name: lining shoulder, layers: [lining, lining], length: 8 cm, times: 2}
  - {name: armhole facing to lining, layers: [shell, lining], length: 44 cm, shape: curved,
     edge: turned, times: 2}
  - {name: neck binding, layers: [shell, lining, strip], length: 62 cm, shape: curved, edge: bound}
  - {name: hem, layers: [shell], length: 120 cm, edge: hem}
"""


def test_a_lining_is_made_up_and_turned_before_it_is_bound_in() -> None:
    """Nobody lays flat pieces in a garment before it is tried on, or turns what is basted shut."""
    found = ordered(BOUND)
    laid = "lay the lining in at neck binding"
    assert stands(found, "fit", "join lining side", laid, "join neck binding")
    assert stands(found, "join lining shoulder", laid)
    assert stands(found, "turn armhole facing to lining", laid)
