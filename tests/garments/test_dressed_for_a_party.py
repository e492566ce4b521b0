"""A child's party dress of many layers, as a dressmaker for children reads its sheet.

Sash ends, a petticoat with a net tier, linings set in at several edges: common practice.
"""

from __future__ import annotations

import pytest

from advisor.construction.cutting import cuts_of
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, read, stands

DRESS = """
garment: Lampion dress
worn by: child
fitting: to the body
pattern: new
maker: {machine: household, overlocker: 3-thread}
fabrics:
  dupion: {fabric: dupion, fibres: {silk: 100}, weight: 110 g/m2}
  net: {fabric: net, fibres: {nylon: 100}, weight: 40 g/m2}
  lawn: {fabric: lawn, fibres: {cotton: 100}, weight: 75 g/m2}
  satin: {fabric: satin, fibres: {polyester: 100}, weight: 120 g/m2}
parts:
  bodice: {layers: [lawn, dupion], fitting: to the body}
  sleeve: {layers: [dupion], fitting: loosely}
  skirt: {layers: [lawn, net, dupion], separate: [net, dupion], fitting: loosely}
seams:
  - {name: bodice front pleats, layers: [dupion], length: 20 cm, part: bodice,
     pleats: {kind: knife, number: 8, depth: 8 mm, spacing: 16 mm, stitched down: 6 cm}}
  - {name: shoulder, layers: [dupion, dupion], length: 8 cm, times: 2, part: bodice}
  - {name: lining shoulder, layers: [lawn, lawn], length: 8 cm, times: 2, part: bodice}
  - {name: bodice side, layers: [dupion, dupion], length: 13 cm, times: 2, part: bodice}
  - {name: lining side, layers: [lawn, lawn], length: 13 cm, times: 2, part: bodice}
  - {name: neck edge, layers: [dupion, lawn], length: 32 cm, shape: curved, edge: turned}
  - {name: sleeve underarm, layers: [dupion, dupion], length: 9 cm, times: 2, part: sleeve}
  - {name: sleeve elastic casing, layers: [dupion, {notion: knitted elastic, width: 6 mm,
     body: 19 cm}], length: 36 cm, times: 2, part: sleeve}
  - {name: armhole, layers: [dupion, {use: dupion, fullness: 1.5}], length: 31 cm, times: 2,
     shape: curved, gathers: {method: hand rows, to: 31 cm}}
  - {name: lining armhole, layers: [lawn, dupion], length: 31 cm, shape: curved, kind: set lining}
  - {name: sash ends, layers: [satin, satin], length: 30 cm, times: 2, kind: ties}
  - {name: underskirt side, layers: [dupion, dupion], length: 50 cm, times: 2, part: skirt}
  - {name: yoke to net tier, layers: [lawn, {use: net, fullness: 3}], length: 110 cm, part: skirt,
     gathers: {method: hand rows, to: 110 cm}, kind: tier}
  - {name: petticoat side, layers: [lawn, lawn], length: 18 cm, times: 2, part: skirt}
  - {name: waist, layers: [dupion, {use: dupion, fullness: 1.8}, {use: lawn, fullness: 1.5}],
     length: 60 cm, gathers: {method: hand rows, to: 60 cm}, crosses: [bodice side]}
  - {name: lining waist, layers: [lawn, dupion], length: 60 cm, kind: set lining}
  - {name: centre back zip, layers: [dupion, dupion, {notion: concealed zip}], length: 38 cm,
     crosses: [waist]}
  - {name: centre back below zip, layers: [dupion, dupion], length: 36 cm, part: skirt}
  - {name: underskirt hem, layers: [dupion], length: 108 cm, edge: hem, part: skirt}
  - {name: net lower edge, layers: [net], length: 330 cm, edge: raw, part: skirt}
"""
SIDE = "{name: bodice side, layers: [dupion, dupion], length: 13 cm, times: 2, part: bodice"
CAUGHT = DRESS.replace(SIDE, SIDE + ", crosses: [sash ends]")


def _gaps(text: str) -> dict[str, str]:
    return {gap.id: f"{gap.text} {gap.line}" for gap in read(text).missing or ()}


def _does(found: Work, name: str) -> str:
    return found.tasks[name].step.does


def test_the_ends_of_a_sash_are_laid_in_the_seam_that_takes_them_in() -> None:
    """A raw end was to be sewn in with a seam that had been closed five steps before."""
    found = ordered(CAUGHT)
    steps = ("join sash ends", "turn through sash ends", "lay in sash ends", "join bodice side")
    assert stands(found, *steps)
    assert "on the edges of bodice side" in _does(found, "lay in sash ends")
    assert "sash-end-in-no-seam" not in _gaps(CAUGHT)


def test_where_no_seam_takes_the_ends_of_a_sash_in_that_is_asked() -> None:
    """Until it is known they are made before any side is closed."""
    found = ordered(DRESS)
    assert stands(found, "turn through sash ends", "join bodice side")
    assert "lay in sash ends" not in found.tasks
    assert "crosses: [sash ends]" in _gaps(DRESS)["sash-end-in-no-seam"]


def test_a_whole_sash_hangs_from_no_seam() -> None:
    """One that is tied round is closed all round by itself."""
    whole = DRESS.replace("length: 30 cm, times: 2, kind: ties", "length: 150 cm, kind: ties")
    assert "close the gap of sash ends" in ordered(whole).tasks
    assert "sash-end-in-no-seam" not in _gaps(whole)


def test_the_sides_above_a_tier_are_pressed_before_its_net_comes() -> None:
    """They hold nothing of the net, so no side runs on over it: damp and hot, then the net."""
    found = ordered(DRESS)
    assert stands(found, "join petticoat side", "press petticoat side", "join yoke to net tier")
    whole = DRESS.replace(
        "petticoat side, layers: [lawn, lawn]", "petticoat side, layers: [lawn, net]"
    )
    assert stands(ordered(whole), "join yoke to net tier", "join petticoat side")


def test_what_hangs_under_the_fastening_has_to_open_and_a_ring_to_be_closed() -> None:
    """The zip held the silk alone, and the net of a tier had no seam."""
    told = _gaps(DRESS)
    assert "lawn opens nowhere" in told["layer-not-opened"]
    assert "layers: [net, net]" in told["ring-not-closed"]
    slit = "  - {name: petticoat slit, layers: [lawn, lawn], length: 14 cm, kind: placket}\n"
    ring = "  - {name: net side, layers: [net, net], length: 30 cm, times: 2, part: skirt}\n"
    assert not {"layer-not-opened", "ring-not-closed"} & set(_gaps(DRESS + slit + ring))


def test_a_lining_is_felled_over_a_sleeve_and_a_waist_and_each_step_of_it_is_told_once() -> None:
    """No machine reaches a child's armhole from inside; the waist was turned under three times."""
    found = ordered(DRESS)
    for edge in ("armhole", "waist"):
        assert "by hand" in _does(found, f"fell lining {edge}")
        works = {task.op for task in found.tasks.values() if task.id.endswith(f"lining {edge}")}
        assert not {"understitch", "finish-by-hand", "fell-hem"} & works
    assert stands(found, "join armhole", "fell lining armhole")
    bare = DRESS.replace("{use: dupion, fullness: 1.5}", "lawn").replace(
        "gathers: {method: hand rows, to: 31 cm}", "edge: turned"
    )
    assert "fell lining armhole" not in ordered(bare).tasks


@pytest.mark.parametrize("edges", [("neck",), ("neck", "front"), ("front", "neck", "waist")])
def test_the_steps_of_a_lining_belong_to_one_of_its_edges(edges: tuple[str, ...]) -> None:
    """Its lower edge is felled once, and not where it is sewn to a waist; it is caught up once."""
    lining = "  - {{name: lining {}, layers: [lawn, dupion], length: 40 cm, kind: set lining}}\n"
    rows = (r for r in DRESS.splitlines() if "kind: set lining" not in r and "neck edge" not in r)
    text = "\n".join(rows) + "\n"
    found = ordered(text + "".join(lining.format(edge) for edge in edges))
    felled = [task for task in found.tasks.values() if task.op == "fell-hem"]
    caught = [task for task in found.tasks.values() if task.id.startswith("catch lining")]
    assert len(felled) == ("waist" not in edges)
    assert len(caught) == 1
    assert not caught[0].id.endswith("waist")


def test_a_row_of_pleats_is_laid_in_a_block_that_is_cut_and_stayed_afterwards() -> None:
    """The neck and armholes of a front were stay-stitched before eight pleats were taken in it."""
    found = ordered(DRESS)
    cut = "cut to the pattern bodice front pleats"
    assert stands(found, "lay bodice front pleats", "press bodice front pleats", cut)
    for step in ("stay-stitch neck edge", "join shoulder", "join bodice side"):
        assert stands(found, cut, step)
    few = ordered(DRESS.replace("number: 8", "number: 2"))
    assert cut not in few.tasks


def test_a_sash_is_folded_along_its_length() -> None:
    """One of 9 by 75 cm was laid as 12 by 153: folded across its length."""
    said = "finished width: {}, finished height: {}, doubled: yes"
    for wide, high in ((90.0, 750.0), (750.0, 90.0)):
        piece = said.format(f"{wide:.0f} mm", f"{high:.0f} mm")
        text = f"{DRESS}pieces:\n  - {{name: sash end, fabric: satin, {piece}}}\n"
        garment = garment_of(parse_yaml(text, "p.yaml"), known())
        (cut,) = cuts_of(garment.plan.pieces[0], 1500.0)
        assert {cut.width, cut.height} == {780.0, 210.0}


def test_elastic_of_rubber_alone_is_swapped_for_one_that_is_cleaned_with_the_silk() -> None:
    """Only where a packet may hold another fibre was any cure offered."""
    for elastic in ("knitted", "braided"):
        told = read(DRESS.replace("knitted elastic", f"{elastic} elastic"))
        care = next(c for c in told.conflicts if c.aspect.startswith("care."))
        assert any("knitted elastic of" in remedy.text for remedy in care.remedies)


def test_what_is_gathered_at_a_waist_is_slit_and_closed_before_it_is_tried_on() -> None:
    """Its side waited for a slit that no fitting moves, and so hung open at the fitting."""
    sheer = "  over: {fabric: organza, fibres: {nylon: 100}}\nparts:"
    full = "{use: lawn, fullness: 1.5}"
    places = """\
  - {name: overskirt side, layers: [over, over], length: 50 cm, times: 2, seam: French, part: skirt}
  - {name: overskirt back slit, layers: [over, over], length: 14 cm, kind: placket, part: skirt}
"""
    text = DRESS.replace("parts:", sheer) + places
    text = text.replace(full, f"{{use: over, fullness: 2.2}}, {full}")
    text = text.replace("layers: [lawn, net, dupion]", "layers: [lawn, net, dupion, over]")
    found = ordered(text)
    assert stands(found, "slash overskirt back slit", "press overskirt side", "fit")
    flat = ordered(text.replace("fullness: 2.2", "fullness: 1"))
    assert stands(flat, "fit", "slash overskirt back slit")


def test_rows_take_the_needle_of_their_seam_where_the_edge_bears_it() -> None:
    """A universal needle was set for the rows of a net that is joined with a sharp one."""
    found = ordered(DRESS)
    rows, seam = (
        found.tasks[f"{work} yoke to net tier"].step.machine for work in ("gather", "join")
    )
    assert rows is not None
    assert seam is not None
    assert seam.point == rows.point


def test_every_full_layer_of_a_waist_is_told_with_its_width() -> None:
    """Of three the third was cut off: the lawn of a petticoat stood nowhere."""
    full = "{use: lawn, fullness: 1.5}"
    waist = next(
        s
        for s in read(DRESS.replace(full, f"{{use: net, fullness: 2}}, {full}")).seams
        if s.name == "waist"
    )
    assert waist.built is not None
    told = [says for says in waist.built.build_says if says.startswith("Here too")]
    assert 1 == len(told)
    assert "lawn 1.5 to 1" in told[0]


def test_a_collar_between_neck_and_lining_is_basted_on_before_they_are_joined() -> None:
    """Its two halves were sewn in with no step that laid them there."""
    inside = "{notion: sew-in interfacing}"
    made = f"""\
  - {{name: collar edge, layers: [lawn, {inside}, lawn], length: 40 cm, times: 2, shape: curved,
     edge: turned, part: bodice}}
"""
    neck = "neck edge, layers: [dupion, lawn"
    found = ordered(DRESS.replace(neck, f"{neck}, lawn, lawn") + made)
    steps = ("turn collar edge", "lay the collar in neck edge", "join neck edge")
    assert stands(found, *steps)
    assert "lay the collar in neck edge" not in ordered(DRESS).tasks
