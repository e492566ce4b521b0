"""Rows of net on a basque, bones at a waist, mounted panels that are crossed, and a quilted collar.

What lies across a seam waits for its iron, and no knife comes over steel; layers that are mounted
are one piece, and those that are quilted are cut roomy: common practice of workrooms.
"""

from __future__ import annotations

import pytest

from advisor.construction.clothlist import cloths_to_buy
from advisor.construction.roomy import ROOM
from advisor.construction.stack import spots_of
from advisor.decide.advise import advise
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, read, stands, work

MOTH = """garment: Lamp moth's dress
fitting: to the body
pattern: new
maker: {machine: industrial, overlocker: 4-thread}
fabrics:
  base: {fabric: cotton drill, fibres: {cotton: 100}, weight: 220 g/m2}
  face: {fabric: velvet, fibres: {viscose: 82, silk: 18}, weight: 220 g/m2}
  net: {fabric: tulle, fibres: {nylon: 100}, weight: 18 g/m2}
parts:
  bodice: {layers: [base, face], fitting: to the body}
  skirt: {layers: [base, net], separate: [net], fitting: loosely}
seams:
  - {name: mounting, layers: [face, base], length: 90 cm, times: 6, part: bodice, kind: underlining}
  - {name: front princess, layers: [face, base, base, face], length: 33 cm, shape: curved,
     stress: high, times: 2, part: bodice}
  - {name: bodice side, layers: [face, base, base, face], length: 21 cm, stress: high, times: 2,
     part: bodice}
  - {name: bone channels, layers: [base, {notion: boning channel}, {notion: spiral boning}],
     length: 28 cm, times: 8, part: bodice}
  - {name: top edge, layers: [face, base, {notion: bias binding}], length: 80 cm, shape: curved,
     edge: faced, part: bodice}
  - {name: back edge, layers: [face, base, base], length: 28 cm, edge: turned, times: 2,
     part: bodice}
  - {name: braid, layers: [face, base, {notion: braid}], length: 80 cm, part: bodice}
  - {name: hip side, layers: [base, base], length: 14 cm, stress: high, times: 2, part: skirt}
  - {name: net rows, layers: [base, {use: net, fullness: 3}], length: 90 cm, times: 4,
     gathers: {method: hand rows, to: 90 cm}, part: skirt}
  - {name: skirt edge, layers: [net], length: 270 cm, edge: raw, times: 4, part: skirt}
  - {name: waist, layers: [face, base, base], length: 64 cm, shape: curved, stress: high,
     crosses: [front princess, bodice side, hip side]}
  - {name: back hooks, layers: [face, base, base, {notion: hook and eye}], length: 28 cm,
     number: 12}
"""
ROBE = """garment: Lighthouse keeper's robe
fitting: loosely
pattern: tried
fabrics:
  shell: {fabric: jacquard, fibres: {silk: 100}, weight: 140 g/m2, width: 114 cm}
  satin: {fabric: satin, fibres: {acetate: 100}, weight: 120 g/m2, width: 140 cm}
  backing: {fabric: muslin, fibres: {cotton: 100}, weight: 90 g/m2, width: 150 cm}
  wadding: {notion: wadding, fibres: {polyester: 100}, weight: 80 g/m2, width: 150 cm}
seams:
  - {name: collar quilting, layers: [satin, wadding, backing], length: 900 cm, kind: quilting}
  - {name: pocket quilting, layers: [satin, wadding, backing], length: 300 cm, kind: quilting}
  - {name: collar centre back, layers: [satin, wadding, backing, backing, wadding, satin],
     length: 10 cm}
  - {name: collar edge, layers: [satin, wadding, backing, shell], length: 130 cm, shape: curved,
     edge: turned}
  - {name: side, layers: [shell, shell], length: 100 cm, times: 2}
  - {name: sash loops, layers: [shell, shell, shell, shell], length: 8 cm, times: 2}
pieces:
  - {name: collar, fabric: satin, width: 26 cm, height: 142 cm, number: 2}
  - {name: piping strip, fabric: satin, width: 3.5 cm, height: 24 cm, grain: bias}
  - {name: collar wadding, fabric: wadding, width: 26 cm, height: 142 cm, number: 2}
  - {name: collar backing, fabric: backing, width: 26 cm, height: 142 cm, number: 2}
"""


@pytest.mark.parametrize("rows", ["net rows", "soft layers"])
def test_rows_across_a_seam_wait_for_its_iron_and_come_before_the_waist(rows: str) -> None:
    """They lie over the whole seam, so that no hot iron comes to it and no knife either."""
    found = ordered(MOTH.replace("name: net rows", f"name: {rows}"))
    steps = ("join hip side", "press hip side", f"join {rows}", "baste waist", "join waist")
    assert stands(found, *steps)
    assert found.order.index("neaten hip side") < found.order.index(f"join {rows}")
    assert "press hip side" not in dict(found.hot_near)
    assert stands(found, "join waist", "cut skirt edge")


def test_no_knife_and_no_row_comes_over_a_channel_with_its_bones_in() -> None:
    """The waist is told to cross what runs into it, and the channels are not among that."""
    found = ordered(MOTH)
    bones = found.order.index("insert bones in bone channels")
    late = [found.tasks[step] for step in found.order[bones:]]
    waist = {task.op for task in late if task.place and task.place.name == "waist"}
    assert not waist
    assert "drawn back clear" in found.tasks["neaten waist"].step.does


def test_an_opening_is_finished_before_the_waist_and_a_trim_after_its_edge() -> None:
    """The edges of the back run beside the channels, and over none of them."""
    found = ordered(MOTH)
    assert stands(found, "turn back edge", "join waist")
    assert stands(found, "turn top edge", "sew on braid")
    shorter = ordered(
        MOTH.replace("{notion: braid}], length: 80 cm", "{notion: braid}], length: 50 cm")
    )
    assert "edge-trim" != places(shorter)["braid"].role.id


@pytest.mark.parametrize(
    "panels", ["[face, base, base, face]", "[base, face, face, base]", "[face, base, face, base]"]
)
def test_a_mounted_panel_is_counted_once_where_it_is_crossed(panels: str) -> None:
    """Two layers and their opened allowances are four plies, and the basque is the fifth."""
    text = MOTH.replace("[face, base, base, face]", panels)
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    waist = next(seam for seam in garment.seams if seam.name == "waist")
    spots = {spot.name: spot.plies for spot in spots_of(waist, garment, known(), {})}
    assert 5 == spots["where it crosses front princess"]
    closed = spots_of(waist, garment, known(), {"front princess": "overlocked"})
    assert 7 == {s.name: s.plies for s in closed}["where it crosses front princess"]


def test_two_quiltings_of_different_pieces_do_not_wait_for_each_other() -> None:
    """Nor is the wadding forgotten where the rest is cut, nor the room that quilting takes."""
    found = ordered(ROBE)
    assert not found.cycles
    assert "cut wadding" in found.order
    assert "3 cm larger all round" in found.tasks["cut satin"].step.does
    assert "collar " in found.tasks["cut satin"].step.does
    assert "laid onto" not in found.tasks["press collar centre back"].step.does


def test_what_is_quilted_is_bought_with_room() -> None:
    """Each piece that lies in a quilting is larger, and the strip that pipes an edge is not."""
    garment = garment_of(parse_yaml(ROBE, "project.yaml"), known())
    bought = {b.cloth: b for b in cloths_to_buy(advise(garment, known()).judgement, known())}
    cuts = {cut.name: cut for cut in bought["satin"].cuts}
    assert cuts["collar"].width >= 260 + 2 * ROOM
    assert cuts["collar"].height >= 1420 + 2 * ROOM
    assert 35 == cuts["piping strip"].width


def test_silk_before_wadding_is_not_washed_and_a_hidden_backing_clashes_with_nothing() -> None:
    """It would come out creased, and no iron comes near wadding; the backing is never seen."""
    told = read(ROBE)
    wash = next(v for v in told.verdicts if v.aspect == "care.wash" and v.scope == "garment")
    assert "do not wash" == wash.pick
    assert not [c for c in told.conflicts if "backing" in c.between]


def test_loops_for_a_sash_are_no_sash() -> None:
    """They are made as belt loops are, and have no point."""
    assert "belt-loop" == places(ordered(ROBE))["sash loops"].kind.id


def test_a_zip_over_a_thinned_waist_and_a_sleeve_with_a_slit_run_in_no_circle() -> None:
    """The zip waits with the waist that it runs over, and the seam of the sleeve with its slit."""
    gown, blouson = work("more/regatta_gown"), work("more/gasworks_blouson")
    assert () == gown.cycles == blouson.cycles
    assert stands(gown, "baste centre back", "fit", "join waist", "thin waist")
    assert stands(gown, "thin waist", "set centre back zip", "join centre back")
    assert stands(blouson, "baste sleeve seam", "fit", "bind sleeve slit", "join sleeve seam")
    assert "pin the seam of the sleeve" not in blouson.tasks["fit"].step.does
