"""A dress whose shoulders are rolled into a yoke of two layers, the outer one of unknown fibre.

The market dress of a lock-keeper: viscose below, a found crepe over cotton voile as its yoke, and a
linen collar that wants a hotter iron than either the crepe or its own interfacing bears.
"""

from __future__ import annotations

from advisor.answer.instructions import instruction_text
from advisor.claims.collect import Place
from advisor.claims.workarounds import ALONE, Instruction
from advisor.construction.agreement import disagreements
from advisor.decide.advise import advise
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, read, stands

DRESS = """
garment: Lock-keeper's market dress
fitting: loosely
pattern: new
maker: {machine: household}
fabrics:
  body: {fabric: challis, fibres: {viscose: 100}, weight: 120 g/m2, colour: "#4a5d3a"}
  crisp: {fabric: handkerchief linen, fibres: {linen: 100}, weight: 130 g/m2, colour: "#e9e2cf"}
  second: {fabric: voile, fibres: {cotton: 100}, weight: 72 g/m2, colour: "#f4f1ea"}
  found: {fabric: crepe, fibres: unknown, colour: "#804030"}
seams:
  - {name: back yoke, layers: [found, {use: body, fullness: 1.25}, second], length: 38 cm}
  - {name: shoulder, layers: [body, found, second], length: 12 cm, times: 2}
  - {name: collar edge, layers: [crisp, {notion: sew-in interfacing}, crisp], length: 48 cm,
     shape: corner, edge: turned}
  - {name: collar stand, layers: [crisp, {notion: sew-in interfacing}, found, second, crisp],
     length: 39 cm, shape: curved}
  - {name: side, layers: [body, body], length: 40 cm, times: 2}
  - {name: sleeve underarm, layers: [body, body], length: 40 cm, times: 2}
  - {name: cuff, layers: [crisp, {notion: sew-in interfacing}, {use: body, fullness: 1.3}],
     length: 23 cm, times: 2}
  - {name: armhole, layers: [body, {use: body, ease: 15 mm}], length: 45 cm, shape: curved,
     times: 2}
  - {name: waist, layers: [body, {use: body, fullness: 1.5}], length: 80 cm}
  - {name: hem, layers: [body], length: 120 cm, edge: hem}
pieces:
  - {name: skirt, fabric: body, finished width: 80 cm, finished height: 70 cm, fullness: 1.5}
  - {name: bodice back, fabric: body, width: 60 cm, height: 34 cm}
"""


def dress() -> Work:
    """The order of work of the dress."""
    return ordered(DRESS)


def test_the_body_is_drawn_out_in_the_step_that_rolls_it_up() -> None:
    """Nothing of another place can be sewn or tried on while the body lies rolled in its yoke."""
    rolled = dress().tasks["join shoulder"].step.does
    at = [
        rolled.index(words) for words in ("Roll the body up", "join", "grade", "draw the body out")
    ]
    assert sorted(at) == at
    steps = [t.id for t in dress().tasks.values() if t.place and t.place.name == "shoulder"]
    assert {"join shoulder", "press shoulder"} == set(steps)


def test_a_shoulder_is_pressed_while_its_fronts_lie_flat() -> None:
    """The yoke is on the back already, so its crepe is no reason to close the sides before it."""
    assert stands(dress(), "turn back yoke", "join shoulder", "press shoulder", "join side", "fit")
    assert ("press side", "join shoulder") not in {
        (p.before, p.after) for p in dress().graph.precedences
    }


def test_what_is_graded_is_not_said_to_be_changed_still() -> None:
    """The side is let out at the fitting, though the same cloth is drawn into yoke and cuff."""
    assert "Try on and correct: side may still be changed." == dress().tasks["fit"].step.does
    assert stands(dress(), "join side", "fit", "neaten side")


def test_the_inner_layer_of_a_yoke_is_no_underlining() -> None:
    """It lies behind the crepe in the neck seam as well, and is sewn there as its own layer."""
    assert "baste second" not in dress().order
    mounted = DRESS.replace("[found, {use: body, fullness: 1.25}, second]", "[found, second, body]")
    mounted = mounted.replace("[body, found, second]", "[body, second, found]")
    assert "baste second" in ordered(mounted).order


def test_a_collar_is_turned_before_it_is_pressed_hot_for_the_last_time() -> None:
    """Its edge is set with it, before the cuff and the crepe come to what is made of the linen."""
    steps = ["join collar edge", "grade collar edge", "turn collar edge", "hot press crisp"]
    assert stands(dress(), *steps, "join the stand of collar stand")
    assert stands(dress(), "hot press crisp", "join cuff")


def test_what_is_basted_to_a_cloth_lowers_its_hot_press() -> None:
    """The interfacing bears 150 °C, at which linen is still pressed."""
    hot = dress().tasks["hot press crisp"]
    assert 150.0 == hot.at_most
    assert hot.step.iron is not None
    assert 140 <= hot.step.iron.temperature_c <= 150


def test_bare_pieces_are_pressed_before_an_interfacing_that_bears_too_little() -> None:
    """One of acetate bears 110 °C, which does nothing for linen."""
    tender = DRESS.replace(
        "  found: {", "  firm: {notion: sew-in interfacing, fibres: {acetate: 100}}\n  found: {"
    )
    found = ordered(tender.replace("{notion: sew-in interfacing}", "firm"))
    assert (found.tasks["hot press crisp"].at_most or 0.0) > 150
    for place in ("collar edge", "collar stand", "cuff"):
        assert stands(found, "hot press crisp", f"interface {place}")


def test_a_back_yoke_is_not_held_against_the_skirt() -> None:
    """The bodice back of the same cloth is called after it."""
    garment = garment_of(parse_yaml(DRESS, "project.yaml"), known())
    told = disagreements(advise(garment, known()).judgement, known())
    assert "back yoke" not in {one.place for one in told}


def test_five_plies_at_the_neck_take_no_finer_needle_than_the_collar() -> None:
    """The voile among them wants a 65 where it lies in two."""
    needles = {
        v.place: v.pick for v in read(DRESS).verdicts if v.aspect == "needle.size" and v.pick
    }
    assert 70 == needles["collar stand"] == needles["collar edge"]


def test_light_viscose_is_neatened_on_a_zigzag_machine() -> None:
    """Nobody overcasts five metres by hand beside a machine that swings."""
    assert "(zigzag)" in dress().tasks["neaten side"].step.does


def test_an_unknown_cloth_is_asked_after_before_its_length_is_tried() -> None:
    """What is known is not."""
    assert "what found may be made of" in dress().tasks["try the lengths"].step.does
    named = ordered(DRESS.replace("fibres: unknown", "fibres: {silk: 100}"))
    tried = named.tasks.get("try the lengths")
    assert tried is None or "may be made of" not in tried.step.does


def test_of_two_tender_layers_the_coolest_is_said_to_bear_so_little() -> None:
    """One of two bears more than the other, so what is told is not what both bear."""
    made = garment_of(parse_yaml(DRESS, "dress.yaml"), known())
    place = Place("seam", "collar stand")
    pair = Instruction(ALONE, frozenset({"crisp"}), frozenset({"found", "body"}), (place,), 110.0)
    assert (
        "Press the crisp pieces by themselves before body and found, of which the coolest bears "
        "110 °C, are joined."
    ) == instruction_text(pair, made, known(), "metric")


def test_what_is_interfaced_in_one_place_only_waits_for_the_hot_press() -> None:
    """The rest of the linen is pressed as hot as it likes, before the interfacing is basted in."""
    pocket = (
        "  - {name: pocket, kind: patch pocket, layers: [crisp, crisp], length: 40 cm}\nseams:\n"
    )
    found = ordered(DRESS.replace("seams:\n", "seams:\n" + pocket.removesuffix("seams:\n")))
    assert 150 < (found.tasks["hot press crisp"].at_most or 0.0)
    assert stands(found, "hot press crisp", "interface collar edge")
