"""A guard goes with its zip, ends with their strap, bones with their channels: none is a second.

Written as makers write them; what is made there and when is common practice.
"""

from __future__ import annotations

import pytest

from advisor.construction.notionlist import notions_to_buy
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, read, stands

TROUSERS = """garment: Weighbridge trousers
fitting: to the body
fabrics:
  cord: {fabric: corduroy, fibres: {cotton: 100}}
  poplin: {fabric: poplin, fibres: {cotton: 100}}
seams:
  - {name: front crotch, layers: [cord, cord], length: 30 cm}
  - {name: fly facing interfacing, layers: [cord, {notion: knit fusible interfacing}], length: 9 cm}
  - {name: fly zip, layers: [cord, {notion: metal zip}], length: 18 cm}
  - {name: fly shield, layers: [cord, poplin], length: 22 cm, edge: turned}
  - {name: inseam, layers: [cord, cord], length: 78 cm, times: 2}
  - {name: outseam, layers: [cord, cord], length: 102 cm, times: 2}
  - {name: waistband, layers: [cord, cord], length: 80 cm}
  - {name: leg hem, layers: [cord], length: 40 cm, edge: hem, times: 2}
"""
SLIP = """garment: Bellfounder's slip
fitting: to the body
fabrics:
  satin: {fabric: satin, fibres: {silk: 100}, weight: 80 g/m2}
  georgette: {fabric: georgette, fibres: {silk: 100}, weight: 60 g/m2}
seams:
  - {name: side seam, layers: [satin, satin], length: 90 cm, times: 2}
  - {name: neck edge, layers: [satin, georgette], length: 70 cm, edge: turned}
  - {name: underarm edge, layers: [satin, georgette], length: 22 cm, edge: turned, times: 2}
  - {name: strap, layers: [satin, satin], length: 42 cm, times: 2}
  - {name: strap joining, layers: [satin, satin, georgette], length: 2 cm, times: 4}
  - {name: hem, layers: [satin], length: 180 cm, edge: hem}
"""
BODICE = """garment: Millwright's bodice
fitting: to the body
pattern: tried
fabrics:
  coutil: {fabric: coutil, fibres: {cotton: 100}}
seams:
  - {name: side seam, layers: [coutil, coutil], length: 24 cm, times: 2}
  - {name: bone channels, layers: [coutil, {notion: boning channel}], length: 28 cm, times: 8}
  - {name: bones, layers: [coutil, {notion: spiral steel boning}], length: 26 cm, times: 8}
  - {name: centre back zip, layers: [coutil, {notion: metal zip}], length: 24 cm}
  - {name: lower edge, layers: [coutil, {notion: bias binding}], length: 80 cm}
"""
CALLED = {
    TROUSERS: ("fly shield", ("fly guard", "fly zip guard", "zip guard", "fly zip shield")),
    SLIP: ("strap joining", ("strap ends", "attach straps", "straps to neck edge", "strap joins")),
    BODICE: ("bones", ("steel bones", "spiral boning", "boning", "bones in the channels")),
}
GOES_WITH = {TROUSERS: "fly zip", SLIP: "strap", BODICE: "bone channels"}


@pytest.mark.parametrize("text", CALLED)
def test_it_goes_with_its_place_however_it_is_called(text: str) -> None:
    """By what it is called after, or by what lies in it."""
    name, names = CALLED[text]
    for called in (name, *names):
        found = places(ordered(text.replace(f"name: {name},", f"name: {called},")))
        belongs = found[called].seam.companion
        assert belongs is not None, called
        assert (GOES_WITH[text],) == belongs.hosts


def test_a_guard_is_turned_before_the_one_zip_is_set() -> None:
    """One crotch started, one zip set and bought, and its guard made before."""
    found = ordered(TROUSERS)
    assert "faced-edge" == places(found)["fly shield"].kind.id
    assert stands(found, "turn fly shield", "set fly zip")
    assert not {"set fly shield", "bar fly shield"} & {*found.order}
    garment = garment_of(parse_yaml(TROUSERS, "project.yaml"), known())
    zips = [row for row in notions_to_buy(garment, known()) if "zip" in row.name]
    assert [("metal zip", 1)] == [(row.name, row.number) for row in zips]


def test_a_guard_beside_no_zip_is_what_its_name_says() -> None:
    """The only fly that is there may be told so: it is set as a zip, and bought."""
    alone = TROUSERS.replace(
        "  - {name: fly zip, layers: [cord, {notion: metal zip}], length: 18 cm}\n", ""
    )
    assert "zip" == places(ordered(alone))["fly shield"].kind.id


def test_no_interfacing_is_pinned_shut() -> None:
    """It only lies behind what closes: the fitting is held shut along no line of it."""
    assert "fly facing interfacing" not in ordered(TROUSERS).tasks["fit"].step.does


def test_a_strap_is_made_once_and_sewn_on_where_another_place_says() -> None:
    """Sewn, turned and then sewn on with the layers that lie there; never basted as a seam."""
    found = ordered(SLIP)
    assert stands(found, "turn through strap", "baste on strap joining", "fit")
    assert stands(found, "fit", "sew on strap joining")
    never = {"join strap joining", "turn through strap joining", "sew in the ends of strap"}
    assert not (never | {"baste strap"}) & {*found.order}
    whole = ordered(SLIP.replace("name: strap joining,", "name: strap joining, kind: seam,"))
    assert "sew in the ends of strap" in whole.order


def test_what_hangs_is_carried_by_the_strap_alone() -> None:
    """Its ends carry what it carries, and that is not counted twice."""
    piece = "pieces:\n  - {name: front, fabric: satin, width: 60 cm, height: 100 cm, number: 2}\n"
    weight = read(SLIP + piece).weight
    assert weight is not None
    assert {"strap"} == {row.place for row in weight.hangs}


def test_bones_go_into_the_channels_that_are_there() -> None:
    """One row of channels, sewn and pressed empty; one press, and the bones after it."""
    found = ordered(BODICE)
    steps = ("join bone channels", "press bone channels", "insert bones in bones", "close bones")
    assert stands(found, *steps)
    assert not {"join bones", "press bones"} & {*found.order}
    assert "the channels left empty" in found.tasks["join bone channels"].step.does
    assert "into bone channels, " in found.tasks["insert bones in bones"].step.does


def test_bones_of_their_own_channels_stay_what_they_were() -> None:
    """Beside no empty channel bones are channel and bone in one."""
    alone = "\n".join(row for row in BODICE.splitlines() if "name: bone channels" not in row)
    assert stands(ordered(alone), "join bones", "press bones", "insert bones in bones")


def test_a_cord_of_no_place_is_told_the_name_that_would_say_whose_it_is() -> None:
    """As long as another place and of a cloth of it; and by that name it belongs there."""
    row = "  - {name: side piping, layers: [satin, {notion: piping cord}], length: 70 cm}\n"
    text = SLIP.replace("  - {name: hem,", f"{row}  - {{name: hem,")
    loose = text.replace("name: side seam,", "name: long seam,")
    found = next(seam for seam in read(loose).seams if seam.name == "side piping")
    assert "called 'neck edge piping' it would be that of neck edge" in found.guess
    named = places(ordered(loose.replace("name: side piping", "name: neck edge piping")))
    belongs = named["neck edge piping"].seam.companion
    assert belongs is not None
    assert ("neck edge",) == belongs.hosts
