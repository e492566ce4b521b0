"""What a shirtmaker found wrong in a shirt of unlike cloths and in a faced dress with tiers.

Each test is a relation that such a garment has to keep; all are common practice of the trade.
"""

from __future__ import annotations

from itertools import permutations

import pytest

from advisor.construction.agreement import disagreements
from advisor.decide.advise import advise
from advisor.project.buttons import half_for_show, holes_of, number_of_holes
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands

SHIRT = """
garment: Weigh-house shirt
fitting: to the body
pattern: new
maker: {machine: household, overlocker: 4-thread}
fabrics:
  body: {fabric: cotton lawn, fibres: {cotton: 100}, weight: 75 g/m2}
  sheer: {fabric: organza, fibres: {polyester: 100}, weight: 35 g/m2}
  crisp: {fabric: handkerchief linen, fibres: {linen: 100}, weight: 140 g/m2}
  stiff: {notion: woven fusible interfacing}
seams:
  - {name: front button band, layers: [body, stiff, body], length: 72 cm, edge: folded, times: 2}
  - {name: back yoke, layers: [body, body, body], length: 44 cm}
  - {name: shoulder, layers: [body, body, body], length: 15 cm, times: 2}
  - {name: collar edge, layers: [crisp, stiff, crisp], length: 60 cm, shape: corner, edge: turned}
  - {name: collar stand, layers: [crisp, stiff, crisp, crisp, stiff, crisp], length: 42 cm,
     shape: curved}
  - {name: neck seam, layers: [crisp, stiff, body, crisp], length: 40 cm, shape: curved,
     crosses: [shoulder, front button band]}
  - {name: sleeve placket, layers: [crisp, sheer], length: 14 cm, times: 2}
  - {name: armhole, layers: [body, {use: sheer, ease: 10 mm}], length: 48 cm, shape: curved,
     times: 2, crosses: [shoulder]}
  - {name: side, layers: [body, body], length: 46 cm, times: 2}
  - {name: sleeve underarm, layers: [sheer, sheer], length: 46 cm, times: 2, seam: French}
  - {name: cuff edge, layers: [crisp, stiff, crisp], length: 36 cm, shape: corner, edge: turned,
     times: 2}
  - {name: cuff, layers: [crisp, stiff, sheer, crisp], length: 24 cm, times: 2}
  - {name: shirt-tail hem, layers: [body], length: 120 cm, shape: curved, edge: hem}
  - {name: front buttonholes, layers: [body, stiff, body], fastening: buttonholes, number: 7}
  - {name: stand buttonhole, layers: [crisp, stiff, crisp], fastening: buttonholes, number: 1}
  - {name: cuff buttonholes, layers: [crisp, stiff, crisp], fastening: buttonholes, number: 2}
  - {name: placket buttonholes, layers: [crisp, sheer, crisp], fastening: buttonholes, number: 2}
  - {name: front buttons, layers: [body, stiff, body, {notion: shell button}], fastening: buttons,
     number: 8}
  - {name: cuff buttons, layers: [crisp, stiff, crisp, {notion: shell button}], fastening: buttons,
     number: 4}
"""
DRESS = """
garment: Gleaner's dress
fitting: to the body
pattern: new
maker: {machine: household, overlocker: 4-thread}
fabrics:
  crepe: {fabric: crepe, fibres: {viscose: 100}, weight: 130 g/m2}
  satin: {fabric: satin, fibres: {acetate: 100}, weight: 120 g/m2}
  tier: {fabric: georgette, fibres: {polyester: 100}, weight: 75 g/m2}
  pocketing: {fabric: cotton voile, fibres: {cotton: 100}, weight: 70 g/m2}
  support: {notion: low-temperature fusible}
seams:
  - {name: shoulder, layers: [crepe, crepe], length: 13 cm, times: 2}
  - {name: collar edge, layers: [crepe, support, satin], length: 58 cm, shape: corner, edge: turned}
  - {name: neck seam, layers: [crepe, crepe, support, satin, satin], length: 42 cm, shape: curved,
     edge: turned, crosses: shoulder}
  - {name: front facing, layers: [crepe, support, satin], length: 118 cm, edge: turned, times: 2,
     crosses: [waist seam]}
  - {name: bodice side, layers: [crepe, crepe], length: 20 cm, times: 2}
  - {name: skirt side, layers: [crepe, crepe], length: 40 cm, times: 2}
  - {name: side-seam pocket, layers: [crepe, pocketing], length: 18 cm, times: 2}
  - {name: pocket bag, layers: [pocketing, pocketing], length: 55 cm, shape: curved, times: 2}
  - {name: waist seam, layers: [crepe, {use: crepe, fullness: 1.4}], length: 90 cm,
     crosses: [bodice side, skirt side]}
  - {name: waist casing, layers: [crepe, crepe, {notion: knitted elastic, width: 10 mm}],
     length: 90 cm, kind: casing}
  - {name: lower tier, layers: [crepe, {use: tier, fullness: 1.6}], length: 189 cm}
  - {name: tier hem, layers: [tier], length: 300 cm, edge: hem}
  - {name: buttonholes, layers: [crepe, support, satin], fastening: buttonholes, number: 12}
  - {name: buttons, layers: [crepe, support, satin, {notion: covered button}], fastening: buttons,
     number: 12}
"""


def garment(text: str) -> Garment:
    """A garment as it is read."""
    return garment_of(parse_yaml(text, "project.yaml"), known())


def clashes(text: str) -> list[str]:
    """The aspects of what clashes in it."""
    return [c.aspect for c in advise(garment(text), known()).judgement.conflicts]


@pytest.mark.parametrize("name", ["neck seam", "collar seam"])
def test_a_stand_is_set_once(name: str) -> None:
    """A stand and the seam that sets it are one neck seam: nothing is joined or neatened twice."""
    found = ordered(SHIRT.replace("name: neck seam", f"name: {name}"))
    steps = (f"join {name}", f"press {name}", f"edgestitch {name}")
    assert stands(found, "turn collar edge", "make up collar stand", "turn collar stand", *steps)
    assert not {f"neaten {name}", "edgestitch collar stand", f"fuse {name}"} & set(found.order)


def test_a_stand_by_itself_is_made_and_set_in_one_place() -> None:
    """Where no other place sets it, the stand is joined to the neck as ever."""
    lines = [row for row in SHIRT.split("\n  - ") if not row.startswith("{name: neck seam")]
    found = ordered("\n  - ".join(lines))
    assert "collar-with-stand" == places(found)["collar stand"].method.id


@pytest.mark.parametrize("kind", ["", ", kind: faced edge"])
def test_a_cuff_is_made_up_before_it_is_closed_over_the_sleeve(kind: str) -> None:
    """Its own edge is sewn and turned first, and closes its ends: it is no second cuff."""
    found = ordered(SHIRT.replace("name: cuff edge", f"name: cuff edge{kind}"))
    assert "faced-edge" == places(found)["cuff edge"].kind.id
    assert stands(found, "join cuff edge", "grade cuff edge", "turn cuff edge", "join cuff")
    assert not {"close the ends of cuff", "fuse cuff"} & set(found.order)


@pytest.mark.parametrize("layers", [*permutations(["crisp", "stiff", "sheer", "crisp"], 4)][::4])
def test_the_support_of_a_cuff_is_fused_to_the_cuff(layers: tuple[str, ...]) -> None:
    """In whatever order its layers are told: the sheer is only caught in the seam."""
    told = SHIRT.replace("[crisp, stiff, sheer, crisp]", f"[{', '.join(layers)}]")
    assert "interfacing.kind" not in clashes(told)


def test_a_cuff_of_sheer_alone_still_clashes() -> None:
    """Nothing of it bears the glue."""
    told = SHIRT.replace("[crisp, stiff, sheer, crisp]", "[sheer, stiff, sheer, sheer]")
    assert "interfacing.kind" in clashes(told)


def test_a_button_is_sewn_on_long_after_its_place_is_fused() -> None:
    """What goes in at last keeps no glue cool: shell bears 110 °C, and the glue wants 130."""
    assert [] == clashes(SHIRT)


def test_holes_of_a_stand_and_a_placket_go_with_the_buttons_beside_them() -> None:
    """Eight buttons down a front and its stand, four at the cuffs and their plackets."""
    shirt = garment(SHIRT)
    rows = {s.name: s for s in shirt.seams}
    assert 8 == number_of_holes(rows["front buttons"], shirt)
    assert 4 == number_of_holes(rows["cuff buttons"], shirt)
    named = {hole.name for hole in holes_of(rows["cuff buttons"], shirt)}
    assert {"cuff buttonholes", "placket buttonholes"} == named
    assert not half_for_show(rows["cuff buttons"], 2)


def test_a_shirt_sleeve_is_set_in_flat() -> None:
    """Then side and sleeve are closed in one run, with one thread, over a placket that is done."""
    found = ordered(SHIRT)
    run = ("join side", "join sleeve underarm", "trim side", "enclose side", "join cuff")
    assert stands(found, "stitch on the upper band of sleeve placket", *run)
    assert stands(found, "join armhole", *run)
    assert stands(found, "enclose side", "enclose sleeve underarm", "press side")
    assert found.order.index("join sleeve underarm") == found.order.index("join side") + 1
    states = [found.tasks[f"join {name}"].step.machine for name in ("side", "sleeve underarm")]
    assert states[0] == states[1]


def test_a_high_cap_or_her_own_word_sets_it_in_the_round() -> None:
    """More ease than is fed in flat, or an armhole that is said to run over the side."""
    for old, new in (("ease: 10 mm", "ease: 30 mm"), ("crosses: [shoulder]}", "crosses: [side]}")):
        assert stands(ordered(SHIRT.replace(old, new)), "join side", "join armhole")


def test_no_row_is_sewn_in_what_is_fused_or_eased() -> None:
    """Stay-stitching goes into cut edges that give: no fused stand, and no head of a sleeve."""
    found = ordered(SHIRT)
    assert "stay-stitch collar stand" not in found.order
    assert ("body",) == tuple(found.tasks["stay-stitch armhole"].cloths)
    assert ("body",) == tuple(found.tasks["stay-stitch neck seam"].cloths)


def test_the_iron_at_the_hem_is_clear_of_the_armhole() -> None:
    """A side of 46 cm lies between them."""
    found = ordered(SHIRT)
    assert "sheer" not in dict(found.hot_near).get("press shirt-tail hem", ())


@pytest.mark.parametrize("name", ["neck seam", "collar seam"])
def test_a_collar_is_turned_before_it_is_set(name: str) -> None:
    """Joined first it lies inside out in the neck."""
    found = ordered(DRESS.replace("name: neck seam", f"name: {name}"))
    steps = ("join collar edge", "grade collar edge", "turn collar edge")
    assert stands(found, *steps, f"join {name}")
    assert f"fuse {name}" not in found.order


@pytest.mark.parametrize("crossed", ["", ", crosses: [front facing]"])
def test_a_hem_is_pressed_as_the_facing_bears_that_ends_in_it(crossed: str) -> None:
    """A front facing that is as long as the front lies under the iron at its foot."""
    found = ordered(DRESS.replace("edge: hem}", f"edge: hem{crossed}}}"))
    assert "satin" in dict(found.hot_near)["press tier hem"]
    assert "the foot of front facing" in found.tasks["sew tier hem"].step.does


def test_a_waist_is_neatened_before_its_channel_is_sewn() -> None:
    """The channel lies over the edges of the seam."""
    assert stands(ordered(DRESS), "neaten waist seam", "fold waist casing", "stitch waist casing")


def test_a_seam_is_run_on_round_the_bag_of_its_pocket() -> None:
    """Both bags hang flat from their edges until the side is joined, which closes them as well."""
    found = ordered(DRESS)
    run = ("join side-seam pocket", "join skirt side", "run round pocket bag", "press skirt side")
    assert stands(found, *run, "gather waist seam")
    assert "skirt side" in found.tasks["run round pocket bag"].step.does


def test_a_bag_behind_a_turned_opening_is_closed_by_itself() -> None:
    """No seam runs round it, and it is closed before the side."""
    slanted = DRESS.replace("{name: side-seam pocket,", "{name: slant pocket, edge: turned,")
    assert stands(ordered(slanted), "close pocket bag", "join skirt side")


def test_a_row_of_buttons_that_is_told_no_place_closes_the_body() -> None:
    """At the fitting it is pinned shut along its line."""
    assert "pin it shut along the line of buttons" in ordered(DRESS).tasks["fit"].step.does


def test_a_placket_that_is_buttoned_has_bands() -> None:
    """A bound slit is bound with a strip of 6 mm, which holds no buttonhole."""
    assert "placket-tower" == places(ordered(SHIRT))["sleeve placket"].method.id
    bare = SHIRT.replace("name: placket buttonholes", "name: second cuff buttonholes")
    assert "placket-bound" == places(ordered(bare))["sleeve placket"].method.id


def test_a_band_that_is_cut_by_itself_is_joined() -> None:
    """A piece of its own is sewn to the front edge, and finished before the neck ends it."""
    piece = "pieces:\n  - {name: band, fabric: body, width: 8 cm, height: 76 cm, number: 2}\n"
    found = ordered(SHIRT + piece)
    band = ("join front button band", "fold front button band", "stitch front button band")
    assert stands(found, *band, "join neck seam", "sew shirt-tail hem")
    assert "join front button band" not in ordered(SHIRT).order


@pytest.mark.parametrize(("number", "told"), [(1, False), (8, True)])
def test_a_pleat_in_the_middle_of_a_piece_need_not_span_it(number: int, told: bool) -> None:
    """It takes no more than the piece has: only what takes more cannot be laid."""
    wide = f"length: {4 * number} cm, pleats: {{kind: box, number: {number}, depth: 20 mm}}"
    row = f"  - {{name: back pleat, layers: [body], {wide}}}\n"
    piece = "pieces:\n  - {name: back, fabric: body, width: 60 cm, height: 72 cm}\n"
    judgement = advise(garment(SHIRT + row + piece), known()).judgement
    assert told == ("back pleat" in {one.place for one in disagreements(judgement, known())})


def test_a_skirt_is_closed_before_its_waist_is_basted_to_be_tried_on() -> None:
    """A bust dart, which waits for the fitting, reaches no pocket in the side of the skirt."""
    dart = "  - {name: bust dart, layers: [crepe], length: 9 cm, times: 2, kind: dart}\n"
    found = ordered(DRESS + dart)
    assert stands(found, "join skirt side", "baste waist seam", "fit", "stitch bust dart")
