"""Notions to buy: by the piece, by the length, cut shorter where they are stretched on."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from advisor.construction.bands import Band, bands_of
from advisor.construction.notionlist import (
    BY_LENGTH,
    Lengths,
    NotionBought,
    drawn_by_elastic,
    notions_to_buy,
)
from advisor.construction.widths import Width
from advisor.decide.kit import Need
from advisor.decide.onerow import one_row
from advisor.decide.usedup import used_up
from advisor.errors import InputError
from advisor.order.work import order_of
from tests.unit.construction.build_cases import advised, garment, known

HEAD = """\
garment: Notions
fabrics:
  c: {fabric: lawn, fibres: {cotton: 100}}
seams:
"""


def bought(*lines: str) -> NotionBought:
    """The one notion of these places."""
    made = garment("".join(f"  - {{{line}}}\n" for line in lines), HEAD)
    (found,) = notions_to_buy(made, known())
    return found


def test_elastic_is_cut_shorter_by_what_it_is_stretched() -> None:
    """24 in at 1.15 is 20.87 in; with 18 in and 26 in as they are 103.7 in in all, not 110."""
    elastic = "notion: rubber elastic"
    found = bought(
        f"name: leg, layers: [c, {{{elastic}, stretched: 1.15}}], length: 24 in, times: 2",
        f"name: arm, layers: [c, {{{elastic}}}], length: 18 in, times: 2",
        f"name: neck, layers: [c, {{{elastic}}}], length: 26 in",
    )
    assert found.whole is not None
    assert 103.74 == pytest.approx(found.whole / 25.4, abs=0.01)
    assert [(1, 26), (2, 20.87), (2, 18)] == [
        (each.number, round((each.each or 0) / 25.4, 2)) for each in found.cut
    ]


@pytest.mark.parametrize(
    ("place", "notion", "body", "cut"),
    [
        ("waist casing", "woven elastic", "76 cm", 710),
        ("wrist casing", "braided elastic", "16 cm", 147),
        ("leg casing", "knitted elastic", "52 cm", 495),
        ("waist casing", "woven elastic", "45 cm", 405),
        ("back waist casing", "woven elastic", "32 cm", 320),
    ],
)
def test_an_elastic_is_cut_from_the_body(place: str, notion: str, body: str, cut: float) -> None:
    """5 cm less round a waist, 25 mm a leg, 13 mm a wrist (trade-elastic-lengths).

    Of a child's waist no more than a tenth; across a back as long as is said.
    """
    elastic = f"{{notion: {notion}, body: {body}}}"
    found = bought(f"name: {place}, kind: casing, layers: [c, {elastic}], length: 90 cm")
    assert ((Lengths(1, cut),), False) == (found.cut, found.tried)


def test_an_elastic_that_is_tried_on_is_told_how_much_shorter_is_usual() -> None:
    """Nothing is told of it where the body is not gone round, or its edge alone is known."""
    casing = "layers: [c, {notion: woven elastic}], kind: casing, length: 90 cm"
    assert (50,) == bought(f"name: waist casing, {casing}").less
    assert () == bought(f"name: back waist casing, {casing}").less
    assert () == bought(f"name: thumb loop casing, {casing}").less
    assert (
        ()
        == bought(
            "name: leg, kind: elastic edge, layers: [c, {notion: swimwear elastic}], length: 60 cm"
        ).less
    )


def test_only_an_elastic_is_cut_from_the_body() -> None:
    """A tape stays an edge, whatever the body measures there."""
    with pytest.raises(InputError, match="only an elastic is cut from the body"):
        bought("name: waist, layers: [c, {notion: stay tape, body: 70 cm}], length: 70 cm")


def test_the_place_says_how_long_its_elastic_is_cut() -> None:
    """She sews from the line of the place: 52 cm at 1.3 is 40 cm, and the ends besides."""
    made = garment(
        "  - {name: leg casing, kind: casing, length: 52 cm,\n"
        "     layers: [c, {notion: woven elastic, stretched: 1.3}]}\n",
        HEAD,
    )
    assert [Band("woven elastic", 400.0, 25.0)] == bands_of(made.seams[0], made, known())


def test_a_front_zip_has_two_sides() -> None:
    """Two times of the front are one zip of 72 cm; two pockets have two."""
    front = bought("name: front zip, layers: [c, {notion: moulded zip}], length: 72 cm, times: 2")
    pocket = bought("name: pocket zip, layers: [c, {notion: coil zip}], length: 15 cm, times: 2")
    assert (1, (Lengths(1, 720),), None) == (front.number, front.cut, front.whole)
    assert (2, (Lengths(2, 150),)) == (pocket.number, pocket.cut)


def test_buttons_and_pads_are_counted() -> None:
    """By the times of their place; a row of hooks by its length until a number is said."""
    assert 9 == bought("name: front, layers: [c, {notion: covered button}], times: 9").number
    assert 2 == bought("name: pads, layers: [c, {notion: shoulder pad}], times: 2").number
    hooks = "layers: [c, {notion: hook and eye}], length: 20 cm"
    assert 9 == bought(f"name: back, {hooks}").number
    assert 6 == bought(f"name: back, {hooks}, times: 6").number


@pytest.mark.parametrize(
    ("notion", "length", "number"),
    [
        ("snap", "21 in", 8),
        ("snap", "5 cm", 1),
        ("plastic button", "63 cm", 8),
        ("frog", "60 cm", 1),
    ],
)
def test_a_row_is_counted_by_its_length(notion: str, length: str, number: int) -> None:
    """Seven spaces of 3 in have eight studs; what stands in no row is one, however long."""
    found = bought(f"name: front, layers: [c, {{notion: {notion}}}], length: {length}")
    assert number == found.number
    assert (notion != "frog", number > 1) == (found.spare == 1, found.apart is not None)


def test_buttons_are_as_many_as_the_holes_that_are_counted() -> None:
    """Seven holes, whatever the length; with a button at the waist too nobody can tell."""
    holes = "name: buttonholes, on: c, fastening: buttonholes, number: 7"
    for said in ("", ", length: 30 cm", ", length: 90 cm"):
        line = f"name: front buttons, layers: [c, {{notion: shell button}}]{said}"
        found = bought(holes, line)
        assert (7, None) == (found.number, found.apart)
    waist = "name: waist button, layers: [c, {notion: shell button}]"
    assert 7 + 1 == bought(holes, waist, f"{line.replace('90', '54')}").number


@pytest.mark.parametrize(("word", "spare"), [("hooks", 1), ("snaps", 1), ("buckle", 0)])
def test_one_is_spare_of_what_is_named_by_its_closing_alone(word: str, spare: int) -> None:
    """A hook gets lost; nobody keeps a second buckle."""
    made = advised(f"  - {{name: front, on: c, fastening: {word}, number: 2}}\n", HEAD)
    methods = order_of(made, known()).methods
    (need,) = [n for n in used_up(made.judgement.garment, methods, known()) if n.number]
    assert (2, spare) == (need.number, need.spare)


def test_a_width_is_the_one_that_is_said_or_usual_there() -> None:
    """Elastic is wide at a waist and narrow at a wrist; a ribbon is as wide as she chooses."""
    line = "kind: casing, length: 60 cm, layers: [c, {notion: woven elastic"
    assert Width(25) == bought(f"name: waist, {line}}}]").width
    assert Width(10) == bought(f"name: sleeve wrist, {line}}}]").width
    stay = "length: 66 cm, layers: [c, {notion: stay tape}]"
    assert (Width(6), Width(20)) == (
        bought(f"name: shoulder, {stay}").width,
        bought(f"name: waist stay, {stay}").width,
    )
    assert Width(32, said=True) == bought(f"name: waist, {line}, width: 32 mm}}]").width
    assert Width(4, round=True) == bought("name: a, layers: [c, {notion: drawcord}]").width
    assert Width(None) == bought("name: a, layers: [c, {notion: satin ribbon}]").width
    assert bought("name: a, layers: [c, {notion: coil zip}], length: 20 cm").width is None
    assert Width(None) == bought("name: a, layers: [c, {notion: horn button}], times: 5").width
    button = "layers: [c, {notion: horn button, width: 20 mm}], times: 5"
    assert Width(20, said=True) == bought(f"name: a, {button}").width
    for piece in ("cord lock", "busk", "underwire"):
        assert bought(f"name: a, layers: [c, {{notion: {piece}}}], times: 2").width is None


def test_an_elastic_of_which_no_stretch_is_said_is_tried_on() -> None:
    """Its casing tells no more than what is surely enough; a tape has no such doubt."""
    line = "length: 60 cm, layers: [c, {notion: woven elastic"
    assert bought(f"name: waist, {line}}}]").tried
    assert not bought(f"name: waist, {line}, stretched: 1.1}}]").tried
    assert not bought("name: shoulder, length: 60 cm, layers: [c, {notion: stay tape}]").tried
    stay = "name: shoulder, length: 13 cm, layers: [c, {notion: clear elastic}, c]"
    assert not bought(stay).tried


def test_two_widths_are_two_things_to_buy() -> None:
    """The waist's elastic does not go into the wrists."""
    line = "kind: casing, length: 60 cm, layers: [c, {notion: woven elastic}]"
    made = garment(f"  - {{name: waist, {line}}}\n  - {{name: wrist, {line}, times: 2}}\n", HEAD)
    assert [(("waist",), 600), (("wrist",), 1200)] == [
        (each.places, each.whole) for each in notions_to_buy(made, known())
    ]


def test_a_width_said_of_a_notion_among_the_cloths_holds_in_every_place() -> None:
    """Six millimetres are no slip of the pen there, as they are of a cloth."""
    head = HEAD.replace("seams:", "  e: {notion: braided elastic, width: 6 mm}\nseams:")
    made = garment("  - {name: waist, layers: [c, e], length: 60 cm}\n", head)
    assert [Width(6, said=True)] == [each.width for each in notions_to_buy(made, known())]
    with pytest.raises(InputError, match="no width in a place"):
        garment("  - {name: side, layers: [c, {use: c, width: 6 mm}]}\n", HEAD)
    with pytest.raises(InputError, match="2 cm to 4 m"):
        garment("  - {name: side, layers: [c, c]}\n", HEAD.replace("}}", "}, width: 6 mm}"))


def test_a_length_that_nobody_said_is_not_added_up() -> None:
    """The lengths that are said are kept, the whole is not known."""
    ribbon = "layers: [c, {notion: satin ribbon}]"
    found = bought(f"name: a, {ribbon}, length: 40 cm", f"name: b, {ribbon}")
    assert ((Lengths(1, 400), Lengths(1, None)), None) == (found.cut, found.whole)


def test_elastic_that_gathers_is_bought() -> None:
    """As long as the edge that it draws to, where no place names an elastic."""
    line = "name: yoke, layers: [c, {use: c, fullness: 1.3}], length: 36 cm"
    drawn = garment(f"  - {{{line}, gathers: {{method: elastic, to: 36 cm}}}}\n", HEAD)
    found = drawn_by_elastic(drawn, known())
    assert found is not None
    assert (360, ("yoke",)) == (found.whole, found.places)
    assert drawn_by_elastic(garment(f"  - {{{line}}}\n", HEAD), known()) is None


def test_bones_are_shorter_than_their_channels() -> None:
    """Two channels of 30 cm take two of 28.8 cm, and each material tells how it bends."""
    line = "name: channel, layers: [c, {notion: boning}], length: 30 cm, times: 2"
    found = bought(line)
    assert ((Lengths(2, 288),), 576) == (found.cut, found.whole)
    assert {"steel": 37.5, "plastic": 25.0} == {
        of: pytest.approx(radius) for of, _, radius in found.bends
    }


@pytest.mark.parametrize(
    ("notion", "length", "ends"),
    [
        ("knitted elastic", 650.0, 25.0),
        ("drawcord", 650.0, 360.0),
        ("satin ribbon", 650.0, 30.0),
        ("hoop steel", 650.0, 100.0),
        ("fusible stay tape", 650.0, 30.0),
        ("hook-and-loop tape", 650.0, 0.0),
    ],
)
def test_ends_are_bought_besides(notion: str, length: float, ends: float) -> None:
    """What is lapped, knotted, turned or caught is cut on top of the finished length."""
    found = bought(f"name: a, layers: [c, {{notion: {notion}}}], length: 65 cm, times: 2")
    assert (2 * length, ends) == (found.whole, found.ends)
    assert 2 * (length + ends) == found.bought


def test_what_is_cut_like_a_cloth_tells_its_longest_place() -> None:
    """Interfacing has no length of its own; its piece is no shorter than the place it backs."""
    line = "layers: [c, {notion: hair canvas}, c]"
    found = bought(f"name: a, {line}, length: 40 cm", f"name: b, {line}, length: 62 cm")
    assert (None, None, 620.0) == (found.bought, found.number, found.least)


def test_one_tube_does_for_every_place() -> None:
    """Glue is neither measured nor cut to pieces."""
    line = "layers: [c, {notion: textile glue}], length: 40 cm"
    found = bought(f"name: a, {line}, times: 3")
    assert (1, None) == (found.number, found.least)


def test_every_notion_that_is_sold_by_the_length_says_what_its_ends_take() -> None:
    """Nought is said as well; a bone is shorter than its channel and says nothing."""
    for entry in known().entries.values():
        by_length = entry.facts.get("sold by", "length") == "length"
        if entry.kind in BY_LENGTH - {"bone"} and by_length:
            assert "ends" in entry.facts, entry.id


def test_one_notion_is_one_row_of_the_list() -> None:
    """Tape that a place names and tape that another is advised are bought as one length."""
    named = Need(
        "in the seam",
        "tape",
        "",
        "stay-tape",
        ("hip",),
        "missing",
        length=540.0,
        cut=(Lengths(1, 540.0),),
        ends=30.0,
        width=Width(6.0),
    )
    advised = replace(
        named,
        item="stay tape",
        word="stay tape",
        places=("neck",),
        length=300.0,
        cut=(Lengths(2, 150.0),),
    )
    (row,) = one_row([advised, named], known())
    assert ("tape", ("neck", "hip"), 840.0) == (row.item, row.places, row.length)
    assert ((Lengths(1, 540.0), Lengths(2, 150.0)), 930.0) == (row.cut, row.bought)
    unsaid = replace(advised, length=None, cut=(Lengths(1, None),))
    assert None is one_row([unsaid, named], known())[0].bought
    other = replace(named, width=Width(12.0, said=True))
    assert 2 == len(one_row([advised, other], known()))
    sealing = replace(named, word="seam sealing tape or seam sealant", width=None)
    assert 1 == len(one_row([replace(named, word="sealing-tape"), sealing], known()))
    assert 2 == len(one_row([named, sealing], known()))
