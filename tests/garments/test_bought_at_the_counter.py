"""The list of a whole garment, read at the counter: is it all there, in its unit, and enough?"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.model.needed import ToldNeed
from advisor.answer.pipeline import Decided, Parts, answer, tell
from advisor.claims.collect import Place
from advisor.decide.evaluate import judge
from advisor.project.load import garment_of, load_project
from advisor.render.bought_words import bought_text
from advisor.render.printed.only import render_only
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import RAINCOAT, SWIMSUIT, TROUSERS, advice, known, work

QUEEN, CULOTTES, JACKET = "more/chapel_queen", "more/steward_culottes", "more/linen_jacket"
COAT = Path(__file__).parents[2] / "knowledge" / "examples" / "lantern-parade-coat.yaml"


@cache
def told(garment: str) -> Answer:
    """All that is told of a garment, with its list."""
    decided = Decided(advice(garment), None, work(garment))
    return tell(decided, known(), Parts(shopping=True, order=True))


def row(garment: str, item: str) -> ToldNeed:
    """The one row of a list whose name begins so."""
    (found,) = [each for each in told(garment).kit or () if each.item.startswith(item)]
    return found


@pytest.mark.parametrize(
    ("garment", "item", "text"),
    [
        (
            CULOTTES,
            "knitted elastic",
            (
                "40 cm, 25 mm wide as is usual (1 of 34 cm, and 25 mm more for its ends; no "
                "stretch is said, so try it on before you cut it)"
            ),
        ),
        (CULOTTES, "concealed zip", "1 of 23 cm, or the next longer that the shop has"),
        (
            RAINCOAT,
            "drawcord",
            "1.1 m, 4 mm thick as is usual (1 of 70 cm, and 36 cm more for its ends)",
        ),
        (
            SWIMSUIT,
            "rubber elastic",
            (
                "3 1/8 yd, 3/8 in wide as is usual (1 of 26 in, 2 of 20 7/8 in, 2 of 18 in, "
                "103 3/4 in together, and 1 in more on each for its ends)"
            ),
        ),
        (
            JACKET,
            "woven fusible",
            "no less than 72 cm; write its pieces to have it reckoned",
        ),
    ],
)
def test_a_length_is_bought_with_its_ends_as_shops_cut_it(
    garment: str, item: str, text: str
) -> None:
    """Lengths as they lie finished, what their ends take, and the tenth of a metre above both."""
    found = told(garment)
    assert text == bought_text(row(garment, item), "us" if found.units == "us" else "metric")


def test_sealing_tape_runs_past_both_ends_of_every_seam() -> None:
    """The order lays it a finger past each end: seven runs, 40 mm each; none over a mesh."""
    tape = row(RAINCOAT, "seam sealing tape")
    assert tape.length_mm is not None
    assert 40.0 == tape.ends_mm
    assert tape.length_mm + 7 * 40 <= (tape.buy_mm or 0.0)
    assert "hood to neck" not in tape.for_


def test_what_is_laced_is_laced_with_something() -> None:
    """Grommets do not close a back; where the project names no cord, as long as 24 holes want it.

    They stand 30 mm apart as usual, and the opening is reckoned 150 mm wide.
    """
    cord = row(QUEEN, "lacing cord")
    ((number, long),) = cord.cut_mm
    assert (1, pytest.approx(24 * (150**2 + 30**2) ** 0.5, abs=1)) == (number, long)
    assert 600.0 == cord.ends_mm


def test_both_edges_of_an_open_seam_are_bound() -> None:
    """Two outseams of 100 cm, two edges each, a tenth for joins; none for the fly, which is not."""
    strip = row(TROUSERS, "bias strip")
    assert (("outseam",), pytest.approx(4 * 1000 * 1.1)) == (strip.for_, strip.length_mm)


def test_the_free_edge_of_a_facing_is_bound_too() -> None:
    """The order wraps it in a strip, so there is one to wrap it in."""
    assert "front facing" in row(JACKET, "bias strip").for_


def test_a_cloth_without_a_piece_is_on_the_list() -> None:
    """Nobody leaves the shop without it because nobody said its pieces."""
    found = answer(load_project(COAT, known()), known(), Parts(shopping=True))
    printed = " ".join(render_only(found, "cloth").split())
    assert "not reckoned. gift, rib, glow, sparks: no piece is said" in printed
    none = " ".join(render_only(told(JACKET), "cloth").split())
    assert "not reckoned. linen, binding: no piece is said" in none


CORDED = """
garment: Corded frill
fabrics: {cloth: {fabric: lawn, fibres: {cotton: 100}}}
seams:
  - {name: frill, kind: gathered edge, layers: [cloth, {use: cloth, fullness: 4}], length: 50 cm,
     times: 2, method: gathered over a cord}
"""


def test_a_cord_to_gather_over_is_as_long_as_the_cloth_before() -> None:
    """Two edges of 50 cm, gathered 4 to 1: 2 m each, and 20 cm to hold."""
    found = answer(
        garment_of(parse_yaml(CORDED, "corded.yaml"), known()), known(), Parts(shopping=True)
    )
    (cord,) = [each for each in found.kit or () if each.item.startswith("strong smooth cord")]
    assert (4000.0, 4400.0) == (cord.length_mm, cord.buy_mm)


def test_an_elastic_in_the_back_alone_is_not_lapped_into_a_ring() -> None:
    """Its ends are stitched across the channel where it ends."""
    (step,) = [
        t.step.does
        for t in work(CULOTTES).tasks.values()
        if t.op == "draw-in" and t.place is not None and t.place.name == "back waist elastic"
    ]
    assert "stitch one end of it across at the end of the channel" in step
    assert "ring" not in step


def test_a_needle_is_one_that_shops_keep() -> None:
    """Denim on velvet bears 80 and 90 alike, so nobody is sent for an 85."""
    text = (
        "garment: Denim and velvet\nfabrics: {denim: cotton denim, velvet: cotton velvet}\n"
        "seams: [{name: side, layers: [denim, velvet]}]\n"
    )
    made = garment_of(parse_yaml(text, "needle.yaml"), known())
    verdict = judge(made, known()).verdicts[Place("seam", "side")]["needle.size"]
    assert verdict.pick in (80.0, 90.0)


def test_what_does_not_agree_stands_beside_the_cloth_that_it_makes_short() -> None:
    """Two sleeves, and a piece that has the width of one: the list where she buys says so."""
    text = """
garment: Quayside blouse
fabrics: {cloth: {fabric: cotton poplin, width: 140 cm}, puff: {fabric: organza, width: 140 cm}}
seams:
  - {name: puff, layers: [cloth, {use: puff, fullness: 2}], length: 40 cm, times: 2}
pieces:
  - {name: back, fabric: cloth, width: 50 cm, height: 60 cm}
  - {name: puff, fabric: puff, finished width: WIDE, finished height: 25 cm, fullness: 2, number: 2}
"""

    def listed(wide: str) -> str:
        garment = garment_of(parse_yaml(text.replace("WIDE", wide), "project.yaml"), known())
        parts = Parts(shopping=True, order=True)
        return " ".join(render_only(answer(garment, known(), parts), "shopping").split())

    short = listed("40 cm")
    assert "Before you buy, for it does not agree: puff, 2 times, asks of puff" in short
    assert "For 40 cm each write finished width: 80 cm" in short
    assert "does not agree" not in listed("80 cm")
