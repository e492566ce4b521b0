"""A place may belong to another: its piping, its lining, the rows on it, the seam of its ring.

Written as makers write them; what is made there and when is common practice. None is a second
collar, cuff, pocket, tab or zip, and a `kind:` of hers goes before all of it.
"""

from __future__ import annotations

import pytest

from advisor.construction.notionlist import notions_to_buy
from advisor.project.load import garment_of
from advisor.render.answers import render_check
from advisor.render.screen.sheet import sheet_text
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands
from tests.garments.whole import read as telling

GOWN = """garment: Steward's dressing gown
fitting: loosely
fabrics:
  shell: {fabric: brocade, fibres: {polyester: 100}}
  satin: {fabric: satin, fibres: {polyester: 100}}
  pile: {fabric: velvet, fibres: {cotton: 100}}
  lawn: {fabric: lawn, fibres: {cotton: 100}}
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: shoulder, layers: [shell, shell], length: 15 cm, times: 2}
  - {name: back neck stay, layers: [shell, {notion: stay tape}], length: 20 cm}
  - {name: patch pocket lining, layers: [shell, lawn], length: 68 cm, edge: turned, times: 2}
  - {name: patch pocket, layers: [shell, shell, lawn], length: 56 cm, times: 2}
  - {name: armhole, layers: [shell, shell], length: 52 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 88 cm, times: 2}
  - {name: sleeve seam, layers: [shell, shell], length: 38 cm, times: 2}
  - {name: cuff seam, layers: [pile, pile], length: 14 cm, times: 2}
  - {name: cuff, layers: [shell, pile], length: 40 cm, times: 2}
  - {name: lining shoulder, layers: [lining, lining], length: 15 cm, times: 2}
  - {name: lining side, layers: [lining, lining], length: 86 cm, times: 2}
  - {name: band centre back, layers: [satin, satin], length: 12 cm}
  - {name: shawl band, layers: [shell, lining, satin], length: 270 cm}
  - {name: band inner edge, layers: [satin, lining], length: 270 cm, edge: folded}
  - {name: hem, layers: [shell], length: 150 cm, edge: hem}
"""
SKIRT = """garment: Quay skirt
fabrics:
  skin: {fabric: nappa}
  ponte: {fabric: ponte, fibres: {viscose: 68, nylon: 27, elastane: 5}}
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: front to side panel, layers: [skin, ponte], length: 62 cm, times: 2}
  - {name: back to side panel, layers: [skin, ponte], length: 62 cm, times: 2}
  - {name: panel topstitching, layers: [skin, ponte, skin], length: 62 cm, times: 4}
  - {name: centre back, layers: [skin, skin], length: 40 cm}
  - {name: back zip, layers: [skin, {notion: metal zip}], length: 20 cm}
  - {name: waist facing, layers: [skin, skin], length: 76 cm, edge: turned}
  - {name: lining side, layers: [lining, lining], length: 58 cm, times: 2}
  - {name: lining to zip, layers: [lining, {notion: metal zip}], length: 20 cm, times: 2}
  - {name: hem, layers: [skin], length: 90 cm, edge: hem}
"""
DOUBLET = """garment: Beadle's doublet
fitting: to the body
fabrics:
  shell: {fabric: brocade, fibres: {polyester: 100}}
  silk: {fabric: taffeta, fibres: {silk: 100}}
  lining: {fabric: calico, fibres: {cotton: 100}}
seams:
  - {name: side, layers: [shell, shell], length: 24 cm, times: 2}
  - {name: shoulder, layers: [shell, shell], length: 13 cm, times: 2}
  - {name: collar edge, layers: [shell, lining], length: 54 cm, edge: turned}
  - {name: collar piping, layers: [shell, silk, {notion: piping cord}, shell], length: 54 cm}
  - {name: collar seam, layers: [shell, shell, lining], length: 44 cm}
  - {name: armhole, layers: [shell, shell, lining], length: 48 cm, times: 2}
  - {name: armhole lining, layers: [shell, lining], length: 48 cm, times: 2, stitched by: hand}
  - {name: tab edge, layers: [shell, lining], length: 36 cm, times: 8, edge: turned}
  - {name: tab piping, layers: [shell, silk, {notion: piping cord}], length: 36 cm, times: 8}
  - {name: waist seam, layers: [shell, shell, lining], length: 92 cm}
"""
ON, ROWS = "stitch on patch pocket", "topstitch panel topstitching"
CLOAK = """garment: Pilot's cloak
fabrics:
  shell: {fabric: velvet, fibres: {cotton: 100}}
  satin: {fabric: satin, fibres: {polyester: 100}}
seams:
  - {name: side, layers: [shell, shell], length: 140 cm, times: 2}
  - {name: hand slits, layers: [shell, shell], length: 28 cm, times: 2, edge: faced}
  - {name: lining side, layers: [satin, satin], length: 136 cm, times: 2}
  - {name: lining round slits, layers: [shell, satin], length: 56 cm, times: 2, stitched by: hand}
  - {name: hem, layers: [shell], length: 380 cm, edge: hem}
"""
BELONGING = [
    (
        GOWN,
        "patch pocket lining",
        "faced-edge",
        "turn patch pocket lining",
        "stitch on patch pocket",
    ),
    (GOWN, "cuff seam", "seam", "press cuff seam", "join cuff"),
    (GOWN, "band centre back", "seam", "press band centre back", "join shawl band"),
    (GOWN, "band inner edge", "inner-edge", "join shawl band", "fell band inner edge"),
    (
        SKIRT,
        "panel topstitching",
        "topstitching",
        "press back to side panel",
        "topstitch panel topstitching",
    ),
    (SKIRT, "lining to zip", "lining-seam", "set back zip", "fell lining to zip"),
    (DOUBLET, "collar piping", "piping", "baste on collar piping", "join collar edge"),
    (DOUBLET, "tab piping", "piping", "baste on tab piping", "join tab edge"),
    (CLOAK, "lining round slits", "lining-seam", "turn hand slits", "fell lining round slits"),
    (DOUBLET, "armhole lining", "lining-seam", "press armhole", "fell armhole lining"),
]


@pytest.mark.parametrize(("text", "place", "kind", "first", "then"), BELONGING)
def test_what_belongs_to_a_place_is_made_for_it_or_upon_it(
    text: str, place: str, kind: str, first: str, then: str
) -> None:
    """A kind of its own, before the place that it is made for, after the one that it lies on."""
    found = ordered(text)
    assert kind == places(found)[place].kind.id
    assert stands(found, first, then)
    assert not found.cycles


@pytest.mark.parametrize("text", [GOWN, SKIRT, DOUBLET, CLOAK])
def test_a_kind_of_hers_goes_before_what_a_name_seems_to_mean(text: str) -> None:
    """Whatever she writes, it is told as hers and belongs to nothing."""
    for _, place, *_ in (row for row in BELONGING if row[0] == text):
        found = places(ordered(text.replace(f"name: {place},", f"name: {place}, kind: seam,")))
        assert (None, "") == (found[place].seam.companion, found[place].seam.placed_by)


def test_nothing_is_made_or_bought_twice() -> None:
    """One ring, one inner edge, one lining of the pocket; and the one zip that is there."""
    gown, skirt = ordered(GOWN), garment_of(parse_yaml(SKIRT, "project.yaml"), known())
    assert not {"close to a ring cuff", "close band inner edge", "line patch pocket"} & {
        *gown.order
    }
    zips = [row for row in notions_to_buy(skirt, known()) if row.name == "metal zip"]
    assert [(1, ("back zip",))] == [(row.number, row.places) for row in zips]


def test_what_only_a_name_tells_is_said_early_on_sheet_and_check() -> None:
    """In one line with the way out; and nothing is said where the file leaves no doubt."""
    told = telling(GOWN)
    line = "cuff seam as the seam of cuff"
    for text in (render_check(told), sheet_text(told)):
        assert line in " ".join(text.split())
        assert "say kind: where that is wrong" in " ".join(text.split())
    sure = GOWN.replace("name: cuff seam,", "name: cuff seam, kind: seam,")
    assert "cuff seam as" not in " ".join(render_check(telling(sure)).split())


def test_a_cord_that_belongs_nowhere_is_asked_about() -> None:
    """Piping with no place of its name is a place by itself, and the sheet says so."""
    text = DOUBLET.replace("name: collar piping", "name: gusset piping")
    found = next(seam for seam in telling(text).seams if seam.name == "gusset piping")
    assert found.guess.endswith("of no other place")
