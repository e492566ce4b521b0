"""What an iron is kept cool for is not too hot at it; what a seam takes in has its row as well."""

from __future__ import annotations

import pytest

from advisor.answer.pipeline import WHOLE, answer
from advisor.project.quick import quick_garment
from tests.garments.whole import FILES, advice, known, ordered, read, work

NAMES = [str(p.parent.name + "/" + p.stem) for p in FILES if p.parent.name == "more"]
ZIPPED = """
garment: Weigh-house skirt
fitting: to the body
fabrics: {noil: {fabric: silk noil, weight: 150 g/m2}}
seams:
  - {name: side, layers: [noil, noil], length: 60 cm, times: 2}
  - {name: centre back, layers: [noil, noil], length: 60 cm}
  - {name: back zip, layers: [noil, {notion: concealed zip}], length: 20 cm}
  - {name: waist facing, layers: [noil, noil], length: 72 cm, edge: turned}
  - {name: hem, layers: [noil], length: 100 cm, edge: hem}
"""


def test_a_zip_is_not_told_to_be_too_tender_for_what_it_bears() -> None:
    """Its press is turned no hotter than 110 °C, which it bears, and that alone is said."""
    found = ordered(ZIPPED)
    assert {"concealed zip"} == dict(found.capped)["press centre back"]
    assert "press centre back" not in dict(found.hot_near)
    told = [row.text for row in read(ZIPPED).work.keep_off]  # type: ignore[union-attr]
    assert any("then no hotter than 110 °C" in text for text in told)
    assert not any("110 °C, too hot for" in text for text in told)


@pytest.mark.parametrize("name", NAMES)
def test_nothing_kept_cool_enough_is_warned_of_as_well(name: str) -> None:
    """Of one press one thing is said of one layer: how hot it may be, or that it is too hot."""
    found, entries = work(name), advice(name).judgement.garment.cloths
    for step, kept in found.capped:
        assert not kept & dict(found.hot_near).get(step, frozenset()), step
        assert kept <= entries.keys()


def test_what_the_sheet_lays_in_a_seam_shows_why_no_iron_comes_there() -> None:
    """The elastic that is advised for a stretch lace is a layer that nobody named."""
    made = quick_garment(["silk noil", "stretch lace"], known())
    (row, *_) = answer(made, known(), WHOLE).iron or ()
    assert row.advised_c == 20
    assert ("clear elastic", 20) in [(layer.name, layer.limit_c) for layer in row.layers]
    plain = answer(quick_garment(["silk noil", "cupro lining"], known()), known(), WHOLE).iron or ()
    assert ["silk noil", "cupro lining"] == [layer.name for layer in plain[0].layers]


CAMISOLE = """
garment: Regatta camisole dress
fabrics:
  shell: {fabric: linen suiting, fibres: {linen: 100}, weight: 190 g/m2}
  lace: {fabric: lace, fibres: {nylon: 100}}
seams:
  - {name: under bust, layers: [shell, lace], length: 40 cm, shape: curved}
  - {name: side, layers: [shell, shell], length: 80 cm, times: 2}
  - {name: top edge, layers: [lace, {notion: lingerie elastic}], length: 60 cm, shape: curved}
  - {name: strap sliders, layers: [shell, {notion: ring and slider}], times: 2}
  - {name: hem, layers: [shell], length: 150 cm, edge: hem}
"""


@pytest.mark.parametrize(("side", "warned"), [("80 cm", False), ("30 cm", True)])
def test_a_hem_is_clear_of_what_lies_at_the_bust(side: str, warned: bool) -> None:
    """A long side seam keeps the iron at the hem away from lace at the bust; a short one not."""
    answer = read(CAMISOLE.replace("80 cm", side))
    assert answer.work is not None
    (hem,) = (step for step in answer.work.order if step.step == "press hem")
    assert any("lace" in words for words in hem.warn) == warned
