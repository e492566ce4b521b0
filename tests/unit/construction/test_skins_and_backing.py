"""Skins are bought by area, and an interfacing by the pieces that it backs."""

from __future__ import annotations

import pytest

from advisor.answer.buyingwords import told_cloth
from advisor.answer.model.making import ToldCloth
from advisor.answer.teller import Teller
from advisor.construction.clothlist import Bought, cloths_to_buy
from advisor.construction.costing import costs_of
from advisor.construction.notionlist import notions_to_buy
from advisor.craft.skins import SQUARE_FOOT, to_buy
from advisor.knowledge.pricing import Quoting, read_price
from tests.unit.construction.build_cases import judged, known

HEAD = """\
garment: Jerkin
units: UNITS
fabrics:
  tweed: {fabric: wool tweed, fibres: {wool: 100}, width: 150 cm}
  nappa: {fabric: sheep nappa}
  lawn: {fabric: cotton lawn}
seams:
  - {name: yoke, layers: [tweed, nappa], length: 26 cm, times: 2}
"""
SKINS = "  - {name: yoke, fabric: nappa, width: 26 cm, height: 18 cm, number: 2}\n"
FUSED = "layers: [tweed, {notion: woven fusible interfacing}, tweed]"


def bought(seams: str, pieces: str, units: str = "metric") -> dict[str, tuple[Bought, ToldCloth]]:
    """What is bought, by its cloth."""
    judgement = judged(f"{seams}pieces:\n{pieces}", HEAD.replace("UNITS", units))
    teller = Teller(judgement.garment, known())
    return {b.cloth: (b, told_cloth(b, teller)) for b in cloths_to_buy(judgement, known())}


def backed(*seams: str, pieces: str) -> Bought:
    """What is bought of the one interfacing of some places."""
    lines = "".join(f"  - {{{seam}, {FUSED}}}\n" for seam in seams)
    return bought(lines, pieces)["woven fusible interfacing"][0]


def cut(name: str, size: str = "width: 12 cm, height: 60 cm", number: int = 1) -> str:
    """A piece of the tweed."""
    return f"  - {{name: {name}, fabric: tweed, {size}, number: {number}}}\n"


def test_a_third_of_a_skin_is_lost() -> None:
    """Two square feet of pieces are cut from three; a little more from three and a quarter."""
    assert pytest.approx(3 * SQUARE_FOOT) == to_buy(2 * SQUARE_FOOT)
    assert pytest.approx(3.25 * SQUARE_FOOT) == to_buy(2.01 * SQUARE_FOOT)
    with pytest.raises(ValueError, match="area"):
        to_buy(0.0)


def test_skins_are_bought_by_the_square_foot() -> None:
    """2 × 26 × 18 cm are 936 cm²: 1404 cm² with what is lost, 1.51 sq ft, so 1 3/4."""
    row, told = bought("", SKINS)["nappa"]
    assert row.length is None
    assert told.buy_mm is None
    assert ("0.16 m² (1 3/4 sq ft)", 0.16) == (told.buy, told.area_m2)
    assert "1 3/4 sq ft" == bought("", SKINS, "us")["nappa"][1].buy
    assert "each piece lies within one skin" in told.says[0].casefold()
    assert "yoke is 26 cm × 18 cm" in told.says[0]


def test_skins_cost_by_the_area() -> None:
    """1 3/4 sq ft at 8 are 14; without a unit a price is for what the maker's shops measure by."""
    for units, price in (("metric", "8 per sq ft"), ("us", "8"), ("us", "8 per sq ft")):
        judgement = judged(f"pieces:\n{SKINS}", HEAD.replace("UNITS", units))
        quote = Quoting(prices={"nappa": read_price(price)})
        rows = costs_of(judgement, cloths_to_buy(judgement, known()), [], quote, known())
        assert 1400 == next(row.cents for row in rows if row.name == "nappa")


def test_a_price_without_a_unit_is_for_a_yard_where_yards_are_bought() -> None:
    """A yard at 9 costs 9."""
    judgement = judged(f"pieces:\n{cut('back', 'width: 50 cm, height: 80 cm')}", us())
    quote = Quoting(prices={"tweed": read_price("9")})
    (row,) = cloths_to_buy(judgement, known())
    cents = next(line.cents for line in costs_of(judgement, [row], [], quote, known()))
    assert row.buy_us is not None
    assert round(row.buy_us / 914.4 * 900) == cents


def us() -> str:
    """The jerkin in yards."""
    return HEAD.replace("UNITS", "us")


def test_an_interfacing_is_as_large_as_what_it_backs() -> None:
    """Two facings of 60 cm: 60 and what shrinks and squares, so 70 cm; both collars are one."""
    row = backed("name: front facing, times: 2, edge: turned", pieces=cut("front facing", number=2))
    assert (True, 2, 700.0) == (row.backs, row.pieces, row.buy_metric)
    row = backed("name: collar edge, edge: turned", pieces=cut("collar", number=2))
    assert 1 == row.pieces
    row = backed("name: front band, edge: folded", pieces=cut("front band", number=2))
    assert 2 == row.pieces


def test_the_piece_is_the_one_that_the_place_is_named_after() -> None:
    """A front facing backs no front; two places of one piece back it once."""
    both = cut("front", number=2) + cut("front facing", number=2)
    row = backed("name: front facing, times: 2, edge: turned", pieces=both)
    assert ["front facing"] == [one.name for one in row.cuts]
    row = backed(
        "name: collar edge, edge: turned", "name: collar seam", pieces=cut("collar", number=2)
    )
    assert 1 == row.pieces


def test_a_canvas_lies_on_the_front_and_not_on_its_facing() -> None:
    """Two fronts of 32 cm are bought for, and not two facings of 12."""
    both = cut("front", "width: 32 cm, height: 60 cm", 2) + cut("front facing", number=2)
    line = "layers: [tweed, {notion: hair canvas}, tweed]"
    seam = f"  - {{name: front facing, times: 2, edge: turned, {line}}}\n"
    row = bought(seam, both)["hair canvas"][0]
    assert [("front", 2, 320)] == [(one.name, one.number, one.width) for one in row.cuts]


@pytest.mark.parametrize(("kind", "high"), [("canvas", 630), ("faced edge", 1150)])
def test_a_canvas_ends_where_its_place_does(kind: str, high: float) -> None:
    """60 cm of it and 3 to trim, not the 115 of the coat; the length of an edge says nothing."""
    piece = cut("front", "width: 48 cm, height: 115 cm", 2)
    line = "layers: [tweed, {notion: hair canvas}], length: 60 cm"
    seam = f"  - {{name: front canvas, kind: {kind}, times: 2, {line}}}\n"
    row = bought(seam, piece)["hair canvas"][0]
    assert [("front", 2, high)] == [(one.name, one.number, one.height) for one in row.cuts]


def test_a_canvas_is_as_long_as_the_longest_of_its_places() -> None:
    """A lapel of 40 cm takes nothing from the chest of 60."""
    piece = cut("front", "width: 48 cm, height: 115 cm", 2)
    line = "kind: canvas, times: 2, layers: [tweed, {notion: hair canvas}]"
    seams = "".join(
        f"  - {{name: {name}, {line}, length: {long} cm}}\n"
        for name, long in (("front canvas", 60), ("front lapel canvas", 40))
    )
    row = bought(seams, piece)["hair canvas"][0]
    assert [("front", 630)] == [(one.name, one.height) for one in row.cuts]


def test_what_is_quilted_is_backed_all_over() -> None:
    """The length of a quilting is that of its rows, and no measure of the wadding."""
    pieces = cut("front", number=2) + cut("back")
    seam = "  - {name: quilting, kind: quilting, layers: [tweed, {notion: wadding}], length: 9 m}\n"
    row = bought(seam, pieces)["wadding"][0]
    assert [("front", 2), ("back", 1)] == [(one.name, one.number) for one in row.cuts]
    judgement = judged(seam, HEAD.replace("UNITS", "metric"))
    (wadding,) = notions_to_buy(judgement.garment, known())
    assert wadding.least is None


def test_wadding_lies_once_between_its_layers_and_is_as_roomy_as_they() -> None:
    """One back for shell and lining, 3 cm larger all round; a plain front has none."""
    pieces = cut("back") + cut("lining back").replace("tweed", "lawn") + cut("front", number=2)
    layers = "[tweed, {notion: wadding}, lawn]"
    seam = f"  - {{name: back quilting, kind: quilting, layers: {layers}, length: 9 m}}\n"
    rows = bought(seam, pieces)
    assert [("back", 1)] == [(one.name, one.number) for one in rows["wadding"][0].cuts]
    (wad,) = rows["wadding"][0].cuts
    (back,) = [one for one in rows["tweed"][0].cuts if one.name == "back"]
    assert (back.width, back.height) == (wad.width, wad.height)


def test_what_no_piece_is_called_after_is_said_to_be_missing() -> None:
    """Nobody believes that the interfacing of the hem is in it."""
    judgement_pieces = cut("collar", number=2)
    row = backed("name: collar edge, edge: turned", "name: pocket flap", pieces=judgement_pieces)
    assert ("pocket flap",) == row.without
    assert "woven fusible interfacing" not in bought(
        f"  - {{name: pocket flap, {FUSED}}}\n", judgement_pieces
    )


def test_a_width_that_a_place_says_of_its_interfacing_holds() -> None:
    """Two facings of 50 cm lie side by side on 112 cm, and one above the other on 90."""
    pieces = cut("front facing", "width: 50 cm, height: 60 cm", 2)
    for said, length in ((", width: 112 cm", 700.0), ("", 1300.0)):
        line = f"layers: [tweed, {{notion: woven fusible interfacing{said}}}, tweed], times: 2"
        found = bought(f"  - {{name: front facing, {line}}}\n", pieces)
        assert length == found["woven fusible interfacing"][0].buy_metric


def test_pieces_that_are_said_go_first() -> None:
    """Her own pieces of the interfacing are what is bought."""
    own = "  - {name: strip, fabric: woven fusible interfacing, width: 5 cm, height: 30 cm}\n"
    row = backed("name: collar edge, edge: turned", pieces=cut("collar", number=2) + own)
    assert (["strip"], False) == ([one.name for one in row.cuts], row.backs)


def test_a_half_and_a_facing_of_one_side_are_of_their_place() -> None:
    """A band is cut in halves, and the facing of a waist in front and back: each is backed."""
    half = cut("band half", "width: 26 cm, height: 140 cm", 2)
    row = backed("name: shawl band, length: 270 cm", pieces=half)
    assert [("band half", 2)] == [(one.name, one.number) for one in row.cuts]
    both = cut("front facing") + cut("back facing", number=2) + cut("armhole facing")
    row = backed("name: waist facing, edge: turned", pieces=both)
    assert ["front facing", "back facing"] == [one.name for one in row.cuts]


def test_a_vent_is_backed_by_a_strip_of_its_own_length() -> None:
    """20 cm and 3 to trim, and not the 66 cm of the back beside it."""
    piece = cut("back", "width: 24 cm, height: 66 cm", 2)
    row = backed("name: back vent, kind: placket, length: 20 cm", pieces=piece)
    assert [("back vent", 1, 80, 230)] == [
        (one.name, one.number, one.width, one.height) for one in row.cuts
    ]
