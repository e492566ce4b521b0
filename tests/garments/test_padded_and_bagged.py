"""A padded overall for a small child: quilted coated nylon, a bagged lining, ribs and snaps.

Wadding out of the allowances, shell and lining each whole before they are joined, and no sealing of
what is full of rows: common practice.
"""

from __future__ import annotations

import pytest

from advisor.construction.stack import spots_of
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, read, stands

OVERALL = """
garment: Snowgate overall
worn by: child
fitting: loosely
pattern: new
maker: {machine: household, overlocker: 4-thread, foot lift: 8 mm, feet: [standard, walking, zip]}
fabrics:
  outer: {fabric: nylon taffeta coated, fibres: {nylon: 100}, weight: 90 g/m2}
  wadding: {fabric: wadding, fibres: {polyester: 100}, weight: 120 g/m2}
  fleece: {fabric: fleece, fibres: {polyester: 100}, weight: 220 g/m2}
  jersey: {fabric: jersey, fibres: {cotton: 95, elastane: 5}, weight: 180 g/m2}
  rib: {fabric: rib knit, fibres: {cotton: 95, elastane: 5}, weight: 280 g/m2}
  knee: {fabric: canvas, fibres: {nylon: 100}, weight: 280 g/m2}
parts:
  body: {layers: [fleece, wadding, outer], fitting: loosely}
  legs: {layers: [jersey, wadding, outer], fitting: loosely}
  sleeves: {layers: [jersey, wadding, outer], fitting: loosely}
  hood: {layers: [fleece, outer], fitting: not at all}
seams:
  - {name: quilting, layers: [outer, wadding], length: 40 cm, times: 16}
  - {name: knee patches, layers: [outer, wadding, knee], length: 62 cm, shape: corner, times: 2,
     kind: applique, part: legs}
  - {name: shoulder, layers: [outer, wadding, wadding, outer], length: 9 cm, times: 2}
  - {name: armhole, layers: [outer, wadding, wadding, outer], length: 34 cm, shape: curved,
     times: 2}
  - {name: side and sleeve, layers: [outer, wadding, wadding, outer], length: 92 cm, times: 2,
     crosses: [armhole]}
  - {name: seat seam, layers: [outer, wadding, wadding, outer], length: 24 cm, shape: curved,
     kind: crotch}
  - {name: front zip, layers: [outer, wadding, {notion: moulded zip}], length: 42 cm,
     part: body}
  - {name: wrist cuff, layers: [outer, jersey, {use: rib, stretched: 1.25}], length: 20 cm,
     times: 2, part: sleeves}
  - {name: ankle cuff, layers: [outer, jersey, {use: rib, stretched: 1.25}], length: 26 cm,
     times: 2,
     part: legs}
  - {name: lining sides, layers: [fleece, fleece], length: 34 cm, times: 2, part: body,
     left open: 15 cm}
  - {name: lining of legs to body, layers: [fleece, jersey], length: 60 cm, part: body}
  - {name: lining sleeve seam, layers: [jersey, jersey], length: 28 cm, times: 2, part: sleeves}
  - {name: lining armhole, layers: [fleece, jersey], length: 34 cm, times: 2, part: body}
  - {name: front edge and lining, layers: [outer, fleece], length: 42 cm, times: 2, edge: turned,
     part: body}
  - {name: neck rib collar, layers: [outer, fleece, {use: rib, stretched: 1.1}], length: 34 cm,
     shape: curved, part: body}
  - {name: hood centre, layers: [outer, outer], length: 40 cm, shape: curved, times: 2, part: hood}
  - {name: hood edge, layers: [outer, fleece], length: 48 cm, edge: turned, part: hood}
pieces:
  - {name: hood lining, fabric: fleece, width: 24 cm, height: 32 cm, number: 2}
"""
RUN = "side and sleeve, layers: [outer, wadding, wadding, outer], length: 92 cm"
LEG = """\
outside leg, layers: [outer, wadding, wadding, outer], length: 46 cm, times: 2, kind: side}
  - {name: side and sleeve, layers: [outer, wadding, wadding, outer], length: 46 cm"""
APART = OVERALL.replace(RUN, LEG)
SINGLE = OVERALL.replace(
    "  - {name: quilting, layers: [outer, wadding], length: 40 cm, times: 16}\n", ""
)


@pytest.mark.parametrize("text", [OVERALL, APART], ids=["in one run", "in two"])
def test_shell_and_lining_are_whole_before_they_are_joined(text: str) -> None:
    """The sides of the shell were joined after collar and front were sewn to the lining."""
    found = ordered(text)
    closing = ["join side and sleeve"] + ["join outside leg"] * ("outside leg" in text)
    joining = ("wrist cuff", "ankle cuff", "neck rib collar", "front edge and lining")
    for side in closing:
        for edge in joining:
            assert stands(found, side, f"join {edge}")
    assert stands(found, "join lining sides", "join front edge and lining")


def test_wadding_is_cut_out_of_the_allowances_once_and_counted_in_no_seam() -> None:
    """Twenty-four plies of 146 mm were told where two quilted seams cross."""
    found = ordered(OVERALL)
    clear = "clear the allowances of quilting"
    for name in ("shoulder", "armhole", "side and sleeve", "seat seam"):
        assert stands(found, "quilt quilting", "cut to the pattern quilting", clear, f"join {name}")
        assert "wadding" not in found.tasks[f"join {name}"].step.does
    garment = garment_of(parse_yaml(OVERALL, "p.yaml"), known())
    seams = {seam.name: seam for seam in garment.seams}
    for seam in seams.values():
        if seam.place in ("", "seam"):
            spots = spots_of(seam, garment, known(), {})
            assert all(spot.plies <= 8 for spot in spots), seam.name
    quilted = spots_of(seams["quilting"], garment, known(), {})
    assert quilted[0].plies == 2


def test_what_is_quilted_is_not_sealed_and_is_basted_in_its_allowance() -> None:
    """Its coated side is shut in, and sixteen rows of holes stay open all the same."""
    quilted, single = ordered(OVERALL), ordered(SINGLE)
    assert not any(task.op == "seal" for task in quilted.tasks.values())
    assert any(task.op == "seal" for task in single.tasks.values())
    basted = [t.step.does for t in quilted.tasks.values() if t.op == "baste" and t.place]
    assert any("inside its allowance" in does for does in basted)
    assert not any("leaks" in does for does in basted)


def test_loose_wadding_is_left_dry_and_its_lining_is_named_only_where_there_is_one() -> None:
    """Soaked by itself it lumps; where nothing backs it, that is asked."""
    bare = ordered(OVERALL)
    assert "shrink wadding" not in bare.tasks
    assert "lining" not in bare.tasks["baste quilting"].step.does
    assert "quilting-without-a-backing" in {gap.id for gap in read(OVERALL).missing or ()}
    backed = OVERALL.replace(
        "layers: [outer, wadding], length", "layers: [outer, wadding, fleece], length"
    )
    assert "lining face down" in ordered(backed).tasks["baste quilting"].step.does
    assert "quilting-without-a-backing" not in {gap.id for gap in read(backed).missing or ()}


def test_a_fraying_patch_is_turned_under_before_it_is_laid_on() -> None:
    """The edges of canvas were stitched raw to the knee."""
    assert stands(ordered(OVERALL), "turn under knee patches", "stitch on knee patches")
    skin = OVERALL.replace(
        "{fabric: canvas, fibres: {nylon: 100}, weight: 280 g/m2}", "{fabric: leather}"
    )
    assert "turn under knee patches" not in ordered(skin).tasks


def test_a_cuff_is_no_layer_of_its_part_and_a_seam_joins_two_parts() -> None:
    """Five such lines were told of a file with nothing wrong in it; a strange cloth still is."""
    assert not [c for c in read(OVERALL).checks or () if c.id == "part-layers"]
    odd = OVERALL.replace("hood centre, layers: [outer, outer]", "hood centre, layers: [rib, rib]")
    assert ["hood centre"] == [c.place for c in read(odd).checks or () if c.id == "part-layers"]


def test_what_the_lining_lacks_is_asked_and_no_length_is_doubted() -> None:
    """Shoulders, legs and a hood of the lining stood nowhere; a zip as long as its edge is."""
    told = {gap.id for gap in read(OVERALL).missing or ()}
    asked = ("lining-without-shoulders", "lining-without-legs", "hood-lining-not-joined")
    assert {*asked, "zip-at-the-chin-of-a-child"} <= told
    assert not {"zip-longer-than-its-seam", "zip-lets-rain-through"} & told
    grown = {
        gap.id for gap in read(OVERALL.replace("worn by: child", "worn by: adult")).missing or ()
    }
    assert "zip-at-the-chin-of-a-child" not in grown


def test_what_is_quilted_lies_behind_no_hood_whose_part_has_none_of_it() -> None:
    """The iron at a hood of two cloths was warned of wadding that lies in the body alone."""
    assert "press hood centre" not in dict(ordered(OVERALL).hot_near)
    padded = OVERALL.replace(
        "hood: {layers: [fleece, outer]", "hood: {layers: [fleece, wadding, outer]"
    )
    assert "wadding" in dict(ordered(padded).hot_near)["press hood centre"]
