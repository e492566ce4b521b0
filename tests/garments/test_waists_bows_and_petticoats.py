"""Waists on a ribbon, bows that are sewn on last, cloths on the bias by their words, petticoats."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from advisor.construction.notionlist import notions_to_buy
from advisor.construction.twice import zip_that_crosses_nothing
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.project.together import ribbon_at_the_waist
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands

TWO_SKIRTS = """
garment: Tollhouse skirt
pattern: new
fabrics:
  taffeta: silk taffeta
  over: silk organza
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: skirt side, layers: [taffeta, taffeta], length: 70 cm, times: 2}
  - {name: over side, layers: [over, over], length: 70 cm, times: 2}
  - {name: lining side, layers: [lining, lining], length: 66 cm, times: 2}
  - {name: side zip, layers: [taffeta, {notion: concealed zip}], length: 22 cm}
  - {name: waist, layers: [taffeta, over, lining, {notion: petersham}], length: 72 cm}
  - {name: skirt hem, layers: [taffeta], length: 180 cm, edge: hem}
"""
SHOULDER = "  - {name: shoulder, layers: [taffeta, taffeta], length: 10 cm, times: 2}\n"
GOWN = """
garment: Weir gown
pattern: new
fabrics:
  satin: {fabric: silk satin, fibres: {silk: 100}}
  tulle: nylon tulle
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: shoulder, layers: [satin, satin], length: 10 cm, times: 2}
  - {name: bodice side seam, layers: [satin, satin], length: 22 cm, times: 2}
  - {name: skirt side seam, layers: [satin, satin], length: 60 cm, times: 2}
  - {name: skirt lining side, layers: [lining, lining], length: 58 cm, times: 2}
  - {name: waist, layers: [satin, {use: satin, fullness: 2}, lining], length: 70 cm}
  - {name: back zip, layers: [satin, {notion: concealed zip}], length: 45 cm}
  - {name: waist bow, layers: [satin, satin], length: 40 cm}
  - {name: waist rosette, layers: [tulle], length: 60 cm}
  - {name: skirt hem, layers: [satin], length: 300 cm, edge: hem}
"""
SLIP = """
garment: Quay skirt
pattern: new
fabrics:
  crepe: WORDS
seams:
  - {name: skirt side, layers: [crepe, crepe], length: 70 cm, times: 2}
  - {name: side zip, layers: [crepe, {notion: concealed zip}], length: 22 cm}
  - {name: waist facing, layers: [crepe, crepe], length: 72 cm, edge: turned}
  - {name: hem, layers: [crepe], length: 180 cm, edge: hem}
"""
PIECES = """pieces:
  - {name: front, fabric: crepe, width: 60 cm, height: 75 cm, grain: bias}
  - {name: back, fabric: crepe, width: 60 cm, height: 75 cm, grain: GRAIN}
"""
GRANARY = """
garment: Granary skirt
pattern: new
fabrics:
  wool: wool suiting
  band: wool gabardine
seams:
  - {name: skirt side, layers: [wool, wool], length: 100 cm, times: 2}
  - {name: waist cartridge pleats, layers: [{use: wool, fullness: 3}, band], length: 72 cm}
  - {name: waistband, layers: [band, band], length: 72 cm}
  - {name: waist hook, layers: [band, {notion: hook and eye}]}
  - {name: skirt hem, layers: [wool], length: 300 cm, edge: hem}
"""
PETTICOAT = """
garment: Bastion dress
pattern: new
fabrics:
  wool: {fabric: wool crepe, fibres: {wool: 100}}
  under: {fabric: lining, fibres: {acetate: 100}}
seams:
  - {name: shoulder, layers: [wool, wool], length: 10 cm, times: 2}
  - {name: bodice side seam, layers: [wool, wool], length: 22 cm, times: 2}
  - {name: skirt side seam, layers: [wool, wool], length: 60 cm, times: 2}
  - {name: petticoat side seam, layers: [under, under], length: 50 cm, times: 2}
  - {name: waist, layers: [wool, wool, under], length: 70 cm}
  - {name: back zip, layers: [wool, {notion: concealed zip}], length: 45 cm}
  - {name: skirt hem, layers: [wool], length: 200 cm, edge: hem}
  - {name: petticoat hem, layers: [under], length: 300 cm, edge: hem}
"""
STAYED = """
garment: Bandbox bodice
fabrics:
  base: cotton coutil
seams:
  - {name: bodice side, layers: [base, base], length: 24 cm, times: 2}
  - {name: waist, layers: [base, base, {notion: grosgrain ribbon}], length: 60 cm}
  - {name: waist stay, layers: [base, {notion: grosgrain ribbon}], length: 60 cm}
  - name: waist stay hooks
    layers: [base, {notion: grosgrain ribbon}, {notion: hook and eye}]
    length: 60 cm
    number: 2
"""


def _read(text: str) -> Garment:
    return garment_of(parse_yaml(text, "project.yaml"), known())


def _said(text: str, step: str) -> str:
    return ordered(text).tasks[step].step.does


@pytest.mark.parametrize("ribbon", ["petersham", "grosgrain ribbon"])
def test_skirts_in_one_another_are_faced_with_one_ribbon(ribbon: str) -> None:
    """Each is closed first; then all are basted together, and the ribbon is turned inside."""
    text = TWO_SKIRTS.replace("petersham", ribbon)
    work = ordered(text)
    assert "waist-faced-with-ribbon" == places(work)["waist"].method.id
    assert stands(work, "join lining side", "hang together at waist", "join waist")
    assert stands(work, "join over side", "hang together at waist", "turn and catch waist")


def test_skirts_are_faced_whichever_way_their_layers_stand() -> None:
    """The ribbon named first is the same ribbon."""
    layers = "[taffeta, over, lining, {notion: petersham}]"
    turned = TWO_SKIRTS.replace(layers, "[{notion: petersham}, lining, over, taffeta]")
    assert "waist-faced-with-ribbon" == places(ordered(turned))["waist"].method.id


def test_a_waist_below_a_bodice_is_a_seam() -> None:
    """What joins a bodice to its skirt is no upper edge, ribbon or not."""
    work = ordered(TWO_SKIRTS.replace("seams:\n", "seams:\n" + SHOULDER))
    assert "seam" == places(work)["waist"].kind.id


@pytest.mark.parametrize("name", ["waist bow", "waist rosette"])
def test_a_bow_is_made_up_by_itself_and_sewn_on_when_all_is_pressed(name: str) -> None:
    """It is no waist that is basted and tried on, and no zip runs over it."""
    work = ordered(GOWN)
    assert stands(work, f"make up {name}", "last press", f"sew on {name}")
    assert not {f"baste {name}", f"thin {name}"} & set(work.order)


def test_a_neck_bow_is_tied_and_no_bow_that_is_sewn_on() -> None:
    """Its neck takes it in as a collar."""
    work = ordered(GOWN.replace("waist bow", "neck bow"))
    assert "bow" != places(work)["neck bow"].kind.id


@pytest.mark.parametrize(
    ("words", "pieces", "hangs"),
    [
        ("silk crepe de chine cut on the bias", "", True),
        ("bias cut silk crepe de chine", "", True),
        ("silk crepe de chine", PIECES.replace("GRAIN", "bias"), True),
        ("silk crepe de chine", PIECES.replace("GRAIN", "lengthwise"), False),
        ("silk crepe de chine", "", False),
    ],
)
def test_bias_sides_hang_before_they_are_tried_on(words: str, pieces: str, *, hangs: bool) -> None:
    """Said by the place, by its cloth or by all of its pieces: it drops all the same."""
    work = ordered(SLIP.replace("WORDS", words) + pieces)
    assert hangs == ("hang the basted seams" in work.order)


def test_what_the_place_says_of_the_bias_goes_first() -> None:
    """A seam that is said to lie on the straight grain hangs for nothing."""
    text = SLIP.replace("WORDS", "bias cut silk crepe de chine")
    straight = text.replace("length: 70 cm,", "length: 70 cm, bias: no,")
    assert "no" == next(s for s in _read(straight).seams if s.name == "skirt side").facts["bias"]


def test_a_waist_is_basted_without_the_lining_that_waits() -> None:
    """Its sides are sewn after the fitting, so it is not in."""
    assert "the lining left out" in _said(GOWN, "baste waist")


def test_a_waist_is_pressed_to_a_side() -> None:
    """Up into the bodice, or away from what is gathered."""
    assert "away from the gathers" in _said(GOWN, "press waist")
    flat = GOWN.replace("{use: satin, fullness: 2}", "satin")
    assert "up into the bodice" in _said(flat, "press waist")


def test_cartridge_pleats_are_whipped_to_a_finished_band() -> None:
    """Rows by hand, drawn up last, whipped on; nothing of them is trimmed or pressed flat."""
    work = ordered(GRANARY)
    name = "waist cartridge pleats"
    assert stands(work, "turn through waistband", f"draw up {name}", f"whip {name}")
    assert stands(work, "press skirt side", f"run rows for {name}", f"whip {name}", "sew skirt hem")
    done = {f"{verb} {name}" for verb in ("press", "trim", "grade", "neaten")}
    assert not done & set(work.order)


def test_a_petticoat_of_lining_is_a_skirt_of_its_own() -> None:
    """It is closed before the fitting, ends by the skirt's hem, and is tacked to nothing."""
    work = ordered(PETTICOAT)
    assert "shell" == places(work)["petticoat side seam"].unit
    assert stands(work, "press skirt hem", "sew petticoat hem")
    assert "above the finished edge of skirt hem" in _said(PETTICOAT, "sew petticoat hem")
    assert "chain petticoat hem" not in work.order


def test_a_ribbon_that_places_name_again_is_bought_once() -> None:
    """The seam that a stay lies on and the hooks at its ends take no length of their own."""
    ribbon = next(n for n in notions_to_buy(_read(STAYED), known()) if "ribbon" in n.name)
    assert 600.0 == ribbon.whole


def test_a_zip_that_crosses_nothing_is_asked_about() -> None:
    """Right above or below the waist only, which its name says; else it is asked."""

    def asked(text: str) -> list[str]:
        return [d.place for d in zip_that_crosses_nothing(_read(text), known())]

    none = GOWN.replace("length: 45 cm}", "length: 45 cm, crosses: []}")
    assert [] == asked(GOWN)
    assert ["back zip"] == asked(none)
    assert [] == asked(none.replace("back zip", "skirt back zip"))


def test_a_ribbon_by_itself_is_no_band() -> None:
    """It faces what hangs from it: without a cloth there is nothing that it ends."""
    garment = garment_of(parse_yaml(TWO_SKIRTS, "project.yaml"), known())
    entries = {name: known().entries[cloth.entry] for name, cloth in garment.cloths.items()}
    waist = next(seam for seam in garment.seams if seam.name == "waist")
    alone = replace(waist, uses=waist.uses[-1:])
    assert ribbon_at_the_waist(waist, entries) == alone.uses[0].cloth
    assert not ribbon_at_the_waist(alone, entries)
