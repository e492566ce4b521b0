"""What two readers who had never seen the advisor found wrong in its orders: common practice.

A band is closed over what ends in it; a loop is no slit; a cord lies beside the needle; a whole
length is neither washed nor steamed before its scrap.
"""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.pipeline import Parts, answer
from advisor.claims.collect import Place
from advisor.construction.bulk import picked
from advisor.decide.advise import advise
from advisor.order.work import Work
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands, work

CULOTTES = "more/steward_culottes"
HEAD = """garment: Small case
maker: {machine: household, overlocker: 4-thread}
fabrics:
  wool: {fabric: barathea, fibres: {wool: 100}}
  satin: {fabric: satin, fibres: {silk: 100}}
  linen: {fabric: linen suiting, fibres: {linen: 100}}
  ponte: {fabric: ponte, fibres: {viscose: 65, nylon: 30, elastane: 5}, weight: 300 g/m2}
  mesh: {fabric: mesh, fibres: {nylon: 85, elastane: 15}, weight: 80 g/m2}
  lawn: {fabric: lawn, fibres: {cotton: 100}, weight: 70 g/m2}
seams:
"""


@cache
def small(*rows: str) -> Work:
    """The order of a garment of a few places."""
    text = HEAD + "\n".join(f"  - {row}" for row in rows) + "\n"
    return ordered(text)


def test_a_waistband_is_closed_over_whatever_ends_in_it() -> None:
    """The overlay, the concealed zip and the neatened crotch all come before it."""
    found = work(CULOTTES)
    for step in ("join overlay to waist", "set side zip", "neaten crotch", "neaten pocket bag"):
        assert stands(found, step, "join waistband"), step


def test_a_turn_up_is_folded_out() -> None:
    """A blind hem turns it the other way."""
    found = work(CULOTTES)
    assert "turn-up-folded" == places(found)["turn-up"].method.id


@pytest.mark.parametrize("name", ["button loops", "rouleau loops"])
def test_loops_are_caught_in_the_edge_and_nothing_is_cut(name: str) -> None:
    """Also in a cloth in which no machine works a buttonhole."""
    facing = "{name: front facing, layers: [wool, wool], length: 60 cm, edge: turned}"
    found = small(facing, f"{{name: {name}, on: satin, number: 9}}")
    assert "button-loops-caught-in" == places(found)[name].method.id
    assert stands(found, f"baste on {name}", "join front facing")


def test_a_piped_edge_is_sewn_beside_its_cord_and_turned_to_show_it() -> None:
    """No needle meets the cord, so four plies of lawn are four plies."""
    row = "{name: neck edge, layers: [lawn, lawn, {notion: piping cord}, lawn, lawn]"
    found = small(f"{row}, length: 42 cm, shape: curved, edge: turned}}")
    steps = ("baste piping to neck edge", "join neck edge", "turn neck edge")
    assert stands(found, *steps)
    assert "stands on the edge" in found.tasks["turn neck edge"].step.does
    judged = advise(found_garment(f"{row}, length: 42 cm, edge: turned}}"), known()).judgement
    assert not [c for c in judged.conflicts if c.place == Place("seam", "neck edge")]


def found_garment(row: str) -> Garment:
    return garment_of(parse_yaml(f"{HEAD}  - {row}\n", "p.yaml"), known())


def test_a_length_is_tried_before_it_is_shrunk() -> None:
    """What marks or shrinks is seen on a corner of it."""
    found = work(CULOTTES)
    assert all(stands(found, "try the lengths", s) for s in found.order if s.startswith("shrink "))


def test_the_edges_of_a_pocket_are_turned_at_its_own_heat() -> None:
    """The knit below it is not there yet, whichever of the two is written first."""
    for layers in ("linen, ponte", "ponte, linen"):
        _turned_hotter_than_sewn(f"{{name: patch pocket, layers: [{layers}], shape: corner}}")


def _turned_hotter_than_sewn(row: str) -> None:
    found = small(row, "{name: side, layers: [ponte, ponte], length: 50 cm}")
    loose = found.tasks["turn under patch pocket"].step.iron
    sewn = found.tasks["press patch pocket"].step.iron
    assert loose is not None
    assert sewn is not None
    assert loose.temperature_c > sewn.temperature_c


def test_the_knife_leaves_no_second_row_to_sew() -> None:
    """What an overlock joined has no allowance left to stitch and trim."""
    row = "{name: armhole, layers: [ponte, mesh], length: 46 cm, shape: curved, stress: high}"
    verdicts = advise(found_garment(row), known()).judgement.verdicts[Place("seam", "armhole")]
    assert "504" == picked(verdicts, "stitch.type")
    assert "overlocked" == picked(verdicts, "seam.kind")
    assert "overlocked" == picked(verdicts, "seam.finish")


def test_a_side_with_a_slit_is_a_side() -> None:
    """What it only has as well does not say what it is."""
    found = small("{name: side with arm slit, layers: [linen, linen], length: 110 cm}")
    assert "seam" == places(found)["side with arm slit"].kind.id
    assert "join side with arm slit" in found.tasks


@pytest.mark.parametrize(
    "row",
    [
        "{name: braid trim, layers: [{notion: braid}, wool], length: 150 cm}",
        "{name: hem, layers: [wool], length: 200 cm, edge: hem, method: catch-stitched hem}",
    ],
)
def test_what_is_made_by_hand_is_told_no_machine(row: str) -> None:
    """No needle of a machine, no foot and no height under it, and none to buy."""
    found = answer(found_garment(row), known(), Parts(shopping=True, order=True))
    (place,) = found.seams
    told = {v.aspect: v.text for v in found.verdicts if (v.scope, v.place) == ("seam", place.name)}
    assert told["stitch.type"].startswith("by hand")
    assert not {"needle.size", "needle.point", "machine.foot", "stitch.tension"} & told.keys()
    assert not [n.item for n in found.kit or () if n.group in ("needles", "foot")]
