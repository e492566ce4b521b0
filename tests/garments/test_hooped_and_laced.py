"""Steel that goes in last, the tool that cuts it, the holes of a lacing and its cord."""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.model.needed import ToldNeed
from advisor.answer.pipeline import Parts, answer
from advisor.claims.collect import Place
from advisor.claims.valuesets import Choice
from advisor.decide.advise import advise
from advisor.order.work import Work, order_of
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, stands

HEAD = """garment: Small case
fitting: to the body
worn by: {who}
maker: {{machine: household, overlocker: 4-thread}}
fabrics:
  drill: {{fabric: drill, fibres: {{cotton: 100}}, weight: 200 g/m2}}
  face: {{fabric: taffeta, fibres: {{silk: 100}}, weight: 90 g/m2, colour: gold}}
  coutil: {{fabric: coutil, fibres: {{cotton: 100}}, weight: 260 g/m2}}
  velvet: {{fabric: velvet, fibres: {{viscose: 100}}, weight: 260 g/m2, colour: black}}
  lining: {{fabric: lining, fibres: {{viscose: 100}}, weight: 80 g/m2}}
seams:
"""


@cache
def garment(*rows: str, who: str = "adult") -> Garment:
    """A garment of a few places, and the cloths that lie in them."""
    said = "\n".join(f"  - {{name: {row}}}" for row in rows)
    lines = HEAD.format(who=who).splitlines()
    kept = [line for line in lines if "{fabric: " not in line or line.split(":")[0].strip() in said]
    return garment_of(parse_yaml("\n".join([*kept, said, ""]), "p.yaml"), known())


@cache
def worked(*rows: str, who: str = "adult") -> Work:
    """Its order of work."""
    return order_of(advise(garment(*rows, who=who), known()), known())


@cache
def bought(*rows: str) -> tuple[ToldNeed, ...]:
    """What is bought for it."""
    return tuple(answer(garment(*rows), known(), Parts(shopping=True)).kit or ())


HOOPED = (
    "skirt side, layers: [drill, drill], length: 96 cm, times: 3",
    (
        "hoop channel, layers: [drill, drill, {notion: hoop steel}], length: 110 cm, "
        "kind: bone channel, method: hoop in a channel, times: 3"
    ),
    "skirt hem, layers: [drill], length: 216 cm, edge: hem",
)


def test_a_hoop_goes_in_after_the_sides_and_is_shut_in_after_the_hot_hem() -> None:
    """Its channel runs over sides that are closed; no iron and no knife meets the steel."""
    work = worked(*HOOPED)
    steel = "slide the steel into hoop channel"
    assert stands(work, "press skirt side", "stitch hoop channel", steel, "fit")
    assert stands(work, steel, "press skirt hem", "close hoop channel")
    assert stands(work, "neaten skirt side", steel)


MOUNT = "mounting, layers: [face, coutil], kind: underlining"
PANELS = (
    "panel seams, layers: [face, coutil, coutil, face], length: 34 cm, shape: curved, times: 8, "
    "stress: high"
)
BONES = "bones, layers: [face, coutil, {{notion: {}}}], kind: bone channel, length: 30 cm, times: 8"


@pytest.mark.parametrize("kind", ["seam", "boned seam"])
def test_no_knife_comes_beside_a_bone(kind: str) -> None:
    """The edges are neatened singly before the panels are joined, so before any channel."""
    work = worked(MOUNT, f"{PANELS}, kind: {kind}", BONES.format("spiral boning"))
    assert stands(work, "neaten panel seams", "join bones", "insert bones in bones")


COAT = (
    MOUNT,
    PANELS,
    BONES.format("spiral boning"),
    "coat front, layers: [velvet, face, coutil], length: 40 cm, stress: high, times: 2",
    "shoulder, layers: [velvet, velvet], length: 13 cm, times: 2",
    "coat lining, layers: [velvet, lining], length: 210 cm, kind: set lining",
    "top edge, layers: [face, coutil, lining], length: 58 cm, shape: curved, edge: bound",
    "armhole, layers: [velvet, velvet], length: 50 cm, shape: curved, stress: high, times: 2",
    "sleeve seam, layers: [velvet, velvet], length: 46 cm, times: 2",
    "centre back closing, layers: [velvet, lining, {notion: hook-and-loop tape}], length: 70 cm",
    "lower edge, layers: [velvet], length: 150 cm, edge: hem",
)


def test_a_second_row_is_sewn_while_the_bones_can_still_be_drawn_out() -> None:
    """It waits for the fitting, at which they are in; then the channels are shut."""
    work = worked(*COAT)
    assert stands(work, "insert bones in bones", "fit", "stitch again coat front", "close bones")
    assert stands(work, "fit", "stitch again panel seams", "close bones")


def test_a_second_row_is_sewn_before_the_lining_is_set() -> None:
    """Afterwards nobody comes to the inside of the seam."""
    assert stands(worked(*COAT), "fit", "stitch again coat front", "set coat lining")


LACING = "front lacing, layers: [face, coutil, {notion: grommet}], kind: lacing, number: 24"
EYELETS = "front eyelets, layers: [face, coutil, {notion: grommet}], number: 24, length: 36 cm"
CORD = "front lacing, layers: [face, {notion: lacing cord}], kind: lacing, length: 36 cm"


def test_a_lacing_with_grommets_has_its_holes_made() -> None:
    """Pierced and set, then laced."""
    work = worked(MOUNT, f"{LACING}, length: 36 cm")
    assert stands(work, "set the holes of front lacing", "lace up front lacing")


def test_a_lacing_on_a_cloth_has_its_holes_made() -> None:
    """No grommet is named anywhere; where another place sets them none is made twice."""
    said = "front lacing, on: face, fastening: lacing, length: 36 cm"
    assert stands(worked(MOUNT, said), "make the holes of front lacing", "lace up front lacing")
    apart = worked(MOUNT, EYELETS, CORD).order
    assert "make the holes of front lacing" not in apart
    assert apart.index("set front eyelets") < apart.index("lace up front lacing")


@pytest.mark.parametrize("rows", [(f"{LACING}, length: 36 cm",), (EYELETS, CORD), (EYELETS,)])
def test_one_cord_is_bought_as_long_as_its_holes_ask_for(rows: tuple[str, ...]) -> None:
    """24 holes 36/11 cm apart, the opening 15 cm wide: 24 times 15.35 cm, and 60 cm of ends."""
    cords = [need for need in bought(MOUNT, *rows) if need.item.startswith("lacing cord")]
    assert [round(need.cut_mm[0][1] or 0) for need in cords] == [3685]
    assert cords[0].ends_mm == 600


def test_no_holes_are_made_to_lace_the_neck_of_a_child() -> None:
    """Also where the project names only the grommets, and no cord."""
    neck = LACING.replace("front lacing", "neck lacing")
    assert "set the holes of neck lacing" in worked(MOUNT, neck).order
    child = worked(MOUNT, neck, who="child").order
    assert "settle neck lacing" in child
    assert not [step for step in child if step.startswith(("set the holes", "lace up"))]


@pytest.mark.parametrize(
    ("bone", "tool"),
    [
        ("spiral boning", "side cutters"),
        ("flat steel boning", "bolt cutters"),
        ("hoop steel", "bolt cutters"),
        ("plastic boning", "old shears"),
    ],
)
def test_each_bone_is_cut_with_its_own_tool(bone: str, tool: str) -> None:
    """Shears are spoilt by steel, and it flies."""
    found = advise(garment(MOUNT, BONES.format(bone)), known()).judgement
    *_, name = found.garment.cloths
    said = found.verdicts[Place("fabric", name)]["cut.tool"]
    assert isinstance(said.advised, Choice)
    assert {said.aspect.words[i] for i in said.advised.options()} == {tool}


def test_each_spiral_has_two_tips() -> None:
    """A pair for each bone; a flat steel comes with its ends."""
    tips = [n for n in bought(MOUNT, BONES.format("spiral boning")) if "tips" in n.item]
    assert [need.number for need in tips] == [8]
    assert not [n for n in bought(MOUNT, BONES.format("flat steel boning")) if "tips" in n.item]
