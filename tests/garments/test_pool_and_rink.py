"""A lined pool suit with a bra inside and a stretch dress with stones, read by a dancewear maker.

All is common practice of the trade.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.answer.model.answer import Answer
from advisor.claims.collect import Place
from advisor.construction.clothlist import SQUARED, cloths_to_buy
from advisor.construction.cutting import on_cloth
from advisor.construction.notionlist import drawn_by_elastic, notions_to_buy
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.errors import InputError
from advisor.order.cycles import settled
from advisor.order.steps import Precedence
from advisor.order.work import Work
from advisor.project.garment import Garment
from advisor.project.load import garment_of, load_project
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FILES, known, ordered, places, read, stands

SUIT = """
garment: Reed-bed training suit
fitting: to the body
maker: {machine: household, overlocker: 4-thread, feet: [standard, walking, overlock]}
fabrics:
  face: {fabric: swim knit, fibres: {nylon: 80, elastane: 20}, weight: 190 g/m2, width: 150 cm}
  mesh: {fabric: powermesh, fibres: {nylon: 82, elastane: 18}, weight: 120 g/m2, width: 150 cm}
parts:
  suit: {layers: [mesh, face], fitting: to the body}
  inner bra: {layers: [mesh], fitting: to the body, separate: [mesh]}
seams:
  - {name: side ruching, layers: [{use: face, fullness: 1.4}, {notion: clear elastic,
    width: 6 mm}], length: 24 cm, times: 2, gathers: {method: elastic, to: 24 cm}}
  - {name: side, layers: [face, mesh, mesh, face],
    length: 24 cm, stress: high, times: 2, crosses: side ruching, part: suit}
  - {name: crotch, layers: [face, mesh, mesh, face], length: 8 cm, stress: high, part: suit}
  - {name: shoulder, layers: [face, mesh, mesh, face],
    length: 4 cm, stress: high, times: 2, part: suit}
  - {name: inner bra side, layers: [mesh, mesh],
    length: 11 cm, stress: high, times: 2, part: inner bra}
  - {name: inner bra band, layers: [mesh, {notion: plush elastic, width: 15 mm,
    stretched: 1.1}], length: 66 cm, edge: elastic, stress: high, part: inner bra}
  - {name: neck edge, layers: [face, mesh, mesh, {notion: fold-over elastic, width: 20 mm,
    stretched: 1.1}], length: 58 cm, shape: curved, edge: bound, stress: high, part: suit}
  - {name: leg elastic, layers: [face, mesh, {notion: swimwear elastic, width: 8 mm,
    stretched: 1.1}], length: 54 cm, shape: curved, edge: folded, stress: high, times: 2,
    part: suit}
  - {name: back straps, layers: [face, mesh, {notion: strap elastic, width: 15 mm}],
    length: 36 cm, stress: high, times: 2}
pieces:
  - {name: front, fabric: face, width: 44 cm, height: 78 cm}
  - {name: back, fabric: face, width: 42 cm, height: 70 cm}
  - {name: lining, fabric: mesh, width: 44 cm, height: 70 cm, number: 2}
kit: {needles: [stretch 75], pins: [sewing clips]}
"""
DRESS = """
garment: Hoarfrost show dress
fitting: to the body
maker: {machine: household, overlocker: 4-thread, feet: [standard, straight-stitch, walking,
    overlock]}
fabrics:
  plush: {fabric: stretch velvet, fibres: {polyester: 92, elastane: 8}, weight: 270 g/m2,
    width: 150 cm}
  veil: {fabric: stretch mesh, fibres: {nylon: 90, elastane: 10}, weight: 90 g/m2, width: 150 cm}
  chiffon: {fabric: chiffon, fibres: {polyester: 100}, weight: 70 g/m2, width: 150 cm}
seams:
  - {name: shoulder, layers: [veil, veil], length: 9 cm, times: 2}
  - {name: front yoke, layers: [plush, veil], length: 40 cm, shape: curved, stress: high}
  - {name: centre back, layers: [plush, plush], length: 20 cm, stress: high}
  - {name: side, layers: [plush, plush], length: 22 cm, stress: high, times: 2}
  - {name: sleeve seam, layers: [veil, veil], length: 44 cm, times: 2}
  - {name: armhole, layers: [veil, veil], length: 38 cm, shape: curved, stress: high, times: 2}
  - {name: wrist edge, layers: [veil, {notion: clear elastic, width: 6 mm, stretched: 1.1}],
    length: 17 cm, edge: folded, times: 2}
  - {name: neck binding, layers: [veil, {use: veil, stretched: 1.1}],
    length: 36 cm, shape: curved, edge: bound}
  - {name: waist, layers: [plush, {use: chiffon, fullness: 1.4}], length: 64 cm, stress: high}
  - {name: skirt hem, layers: [chiffon], length: 280 cm, shape: curved, edge: hem}
  - {name: yoke stones, layers: [veil, {notion: glass stone}, {notion: textile glue}],
    times: 1440, stress: low}
"""
KNOT = """
garment: Knotted tunic
fabrics:
  cloth: {fabric: gabardine}
seams:
  - {name: back dart, kind: dart, layers: [cloth], length: 12 cm}
  - {name: patch pocket, layers: [cloth], length: 40 cm}
  - {name: side, layers: [cloth, cloth], length: 60 cm}
  - {name: hem, layers: [cloth], length: 90 cm, edge: hem}
"""


def garment(text: str) -> Garment:
    """The garment of a text."""
    return garment_of(parse_yaml(text, "project.yaml"), known())


def changed(text: str, old: str, new: str) -> str:
    """A text with some of its words changed."""
    assert old in text
    return text.replace(old, new)


def does(work: Work) -> dict[str, str]:
    """What each step says."""
    return {name: task.step.does for name, task in work.tasks.items()}


def pick(found: Answer, place: str, aspect: str) -> object:
    """What was picked at a place."""
    (verdict,) = [v for v in found.verdicts if (v.place, v.aspect) == (place, aspect)]
    return verdict.pick


def built(found: Answer, place: str) -> str:
    """All that is said of how a place is built."""
    (seam,) = [seam for seam in found.seams if seam.name == place]
    return repr(seam.built)


def advised(found: Answer) -> str:
    """All that is said to be done."""
    return " ".join(told.text for told in found.advice)


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_cloth_is_bought_for_its_tallest_piece_with_square_ends_and_shrinkage(file: Path) -> None:
    judgement = judge(load_project(file, known()), known())
    for row in cloths_to_buy(judgement, known()):
        upright = [piece for cut in row.cuts if not (piece := on_cloth(cut)).bias]
        sizes = [min(p.length_mm, p.width_mm) if p.any_grain else p.length_mm for p in upright]
        if row.buy_metric is not None and sizes:
            assert row.buy_metric >= (max(sizes) + SQUARED) / (1 - row.shrinks) - 1e-6, row.cloth


def test_a_mesh_as_long_as_its_piece_is_bought_longer() -> None:
    judgement = advise(garment(SUIT), known()).judgement
    (mesh,) = (row for row in cloths_to_buy(judgement, known()) if row.cloth == "mesh")
    assert 800.0 == mesh.buy_metric


@pytest.mark.parametrize("piece", ["yoke", "shoulder", "waistband", "cuff", "neck", "bodice"])
def test_stones_lie_on_any_piece_that_they_are_called_after(piece: str) -> None:
    work = ordered(changed(DRESS, "yoke stones", f"{piece} stones"))
    assert () == work.cycles
    assert stands(work, "join armhole", "last press", f"glue {piece} stones")


def test_stones_are_counted_by_the_gross_and_some_bought_to_spare() -> None:
    bought = {each.name: each for each in notions_to_buy(garment(DRESS), known())}
    assert (1440, 72) == (bought["glass stone"].number, bought["glass stone"].spare)
    with pytest.raises(InputError, match="1 to 400"):
        garment(changed(DRESS, "length: 9 cm, times: 2", "length: 9 cm, times: 401"))


def test_a_side_is_ruched_flat_before_it_is_joined_or_basted() -> None:
    work = ordered(SUIT)
    assert "elastic-edge" != places(work)["side ruching"].kind.id
    assert stands(work, "ruche side ruching", "baste side", "fit", "join side")
    assert ["ruche side ruching"] == [name for name in work.order if name.endswith("side ruching")]
    assert "no rows" in does(work)["ruche side ruching"]


def test_the_elastic_that_ruches_is_bought_once_and_asks_for_no_rows() -> None:
    assert drawn_by_elastic(garment(SUIT), known()) is None
    assert "two rows" not in advised(read(SUIT))


@pytest.mark.parametrize("edge", ["neck edge", "armhole edge"])
def test_what_hangs_inside_is_finished_before_its_edge_is_bound(edge: str) -> None:
    work = ordered(changed(SUIT, "neck edge", edge))
    last = f"sew on {edge}"
    for first in ("join inner bra side", "zigzag again inner bra band"):
        assert stands(work, first, f"baste layers at {edge}", last)


def test_a_strap_of_what_stretches_is_no_belt() -> None:
    work = ordered(SUIT)
    assert "strap-caught-in-the-side" != places(work)["back straps"].method.id
    woven = changed(SUIT, "[face, mesh, {notion: strap elastic, width: 15 mm}]", "[firm, firm]")
    woven = changed(woven, "parts:", "  firm: {fabric: gabardine, fibres: {wool: 100}}\nparts:")
    assert "strap-caught-in-the-side" == places(ordered(woven))["back straps"].method.id


def test_a_wrapped_edge_is_neither_clipped_nor_given_an_allowance() -> None:
    assert "Clip an" not in built(read(SUIT), "neck edge")
    assert "none" in {s.name: s.allowance_as for s in read(SUIT).seams}["neck edge"]


def test_pins_that_she_has_are_taken_where_they_do_as_well() -> None:
    bare = changed(SUIT, "[face, mesh, {notion: swimwear", "[face, {notion: swimwear")
    assert "sewing clips" == pick(read(bare), "leg elastic", "pin.kind")
    without = changed(bare, ", pins: [sewing clips]", "")
    assert "ball-point pins" == pick(read(without), "leg elastic", "pin.kind")


def test_every_row_comes_out_of_a_waist_that_stretches_and_its_basting_too() -> None:
    said = does(ordered(DRESS))
    assert "pull out every row" in said["draw up waist"]
    assert "take the basting out" in said["gather waist"]
    firm = changed(DRESS, "[plush, {use: chiffon", "[chiffon, {use: chiffon")
    assert "the row that shows" in does(ordered(firm))["draw up waist"]


def test_an_elastic_that_is_lapped_into_a_ring_takes_no_long_ends() -> None:
    bought = notions_to_buy(garment(DRESS), known())
    assert [25.0] == [each.ends for each in bought if each.name == "clear elastic"]


def test_a_mesh_that_binds_its_own_edge_is_cut_to_its_stretch() -> None:
    assert "Cut veil 32.7 cm long" in built(read(DRESS), "neck binding")


def test_two_seams_of_one_pile_are_pressed_alike_with_nothing_between() -> None:
    judgement = advise(garment(DRESS), known()).judgement
    back, side = (judgement.verdicts[Place("seam", name)] for name in ("centre back", "side"))
    for aspect in ("press.temperature", "press.motion", "press.moisture"):
        assert back[aspect].pick == side[aspect].pick
    assert "press.cloth" not in side


def test_a_ribbon_is_hooked_only_where_something_opens() -> None:
    assert "hooked at the opening" not in advised(read(DRESS))


def test_what_goes_to_the_pool_is_bought_proof_against_chlorine() -> None:
    assert "chlorine" in advised(read(SUIT))


@pytest.mark.parametrize(
    ("first", "second", "remedies"),
    [
        ("join side", "sew hem", ("Say which seams 'hem' crosses, and leave 'side' out.",)),
        ("stitch on patch pocket", "join side", ()),  # a list of seams says nothing of a pocket
        ("stitch back dart", "join side", ()),
    ],
)
def test_a_word_on_what_crosses_is_offered_only_where_it_ends_the_circle(
    first: str, second: str, remedies: tuple[str, ...]
) -> None:
    tasks = ordered(KNOT).tasks
    items = [Precedence(first, second), Precedence(second, first)]
    _, _, (found,) = settled([tasks[first], tasks[second]], items, dict.fromkeys(items, 0))
    assert remedies == found.remedies


def test_pins_are_hers_however_she_spells_them() -> None:
    """`ballpoint pins` are the ball-point pins that the kit knows, and are not bought again."""
    text = """
garment: Slipway vest
fabrics: {body: cotton jersey}
kit: {pins: [ballpoint pins]}
seams:
  - {name: side, layers: [body, body], length: 40 cm}
"""
    found = garment_of(parse_yaml(text, "vest.yaml"), known())
    assert found.plan.kit.pins == ("ball-point pins",)


@pytest.mark.parametrize(
    ("kit", "picked"), [("pins", "sewing clips"), ("dressmaking pins", "dressmaking pins")]
)
def test_a_kit_that_only_says_pins_picks_none(kit: str, picked: str) -> None:
    """Which stands first in a register decides nothing: only pins that are named are picked."""
    text = f"""
garment: Slipway sash
fabrics: {{face: stretch denim}}
kit: {{pins: [{kit}]}}
seams:
  - {{name: side, layers: [face, face], length: 40 cm}}
"""
    found = judge(garment_of(parse_yaml(text, "sash.yaml"), known()), known())
    verdict = found.verdicts[Place("seam", "side")]["pin.kind"]
    assert verdict.pick is not None
    assert verdict.aspect.words[int(verdict.pick)] == picked
