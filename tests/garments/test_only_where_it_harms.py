"""What was forbidden, feared or asked for beyond its reason; where the reason holds, it stays.

All is common practice of the trade: a band is fused flat, a knit lies flat without a hard press, a
toggle is of many stuffs, a child's cord is short.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from msgspec.structs import replace

from advisor.answer.label import Asked
from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import WHOLE, decide, tell
from advisor.order.work import order_of
from advisor.project.load import garment_of
from advisor.project.quick import asked_garment
from advisor.textio.yamlfile import parse_yaml
from advisor.writing.remedies import take_remedies
from tests.typed import shipped

BAND = """\
garment: Kiosk skirt
fabrics:
  shell: {SHELL}
  lining: {fabric: lining, fibres: {acetate: 100}}
seams:
  - {name: side, layers: [shell, shell], length: 60 cm, times: 2}
  - {name: waistband, layers: [LAYERS], length: 76 cm}
  - {name: hem, layers: [shell], length: 130 cm, edge: hem}
"""
WOOL = "fabric: wool flannel, fibres: {wool: 100}, weight: 280 g/m2"
ASKED = replace(WHOLE, label=Asked())
GLUE = "{notion: woven fusible interfacing}"
JACKET = """\
garment: Tea jacket
fabrics:
  shell: {fabric: wool flannel, fibres: {wool: 100}, weight: 280 g/m2}
  other: {CLOTH}
seams:
  - {name: yoke seam, layers: [shell, other], length: 40 cm}
"""
WINDCHEATER = """\
garment: Pavilion jacket
fabrics:
  shell: {fabric: taffeta, fibres: {nylon: 100}}
  soft: {CLOTH}
seams:
  - {name: front edge, layers: [shell, soft], length: 60 cm, edge: turned}
"""
COAT = """\
garment: Harbour coat
fabrics:
  shell: {fabric: canvas, fibres: {cotton: 100}, weight: 300 g/m2}
  closing: {notion: TOGGLE}
seams:
  - {name: side, layers: [shell, shell], length: 60 cm}
  - {name: front toggles, kind: fastening, fastening: toggles, layers: [shell, closing], number: 3}
"""
PUDDLE = """\
garment: Puddle jacket
worn by: WEARER
fabrics:
  shell: {fabric: canvas, fibres: {cotton: 100}, weight: 240 g/m2}
seams:
  - {name: side, layers: [shell, shell], length: 40 cm, times: 2}
  - {name: waist casing, kind: casing, layers: [shell, {notion: drawcord}], length: 80 cm}
  - {name: hem, layers: [shell], length: 90 cm, edge: hem}
"""
PINAFORE = """\
garment: Schoolroom pinafore
fabrics:
  skirt: {fabric: wool flannel, fibres: {wool: 100}, weight: 260 g/m2}
  panel: {fabric: ponte, fibres: {viscose: 65, nylon: 30, elastane: 5}, weight: 300 g/m2}
seams:
  - {name: side, layers: [skirt, skirt], length: 66 cm, times: 2}
  - {name: panel seam, layers: [skirt, panel], length: 24 cm}
"""


@cache
def told(text: str) -> Answer:
    known = shipped()
    return tell(decide(garment_of(parse_yaml(text, "test"), known), known, ASKED), known, ASKED)


def band(shell: str = WOOL, layers: str = f"shell, lining, {GLUE}, shell") -> str:
    return BAND.replace("SHELL", shell).replace("LAYERS", layers)


def clashes(text: str) -> list[tuple[str, str]]:
    return [(one.place, one.aspect) for one in told(text).conflicts]


def test_a_band_is_fused_to_its_shell_before_the_lining_is_there() -> None:
    """As a question has it: no clash, and the glue goes onto the wool."""
    answer = told(band())
    assert [] == clashes(band())
    (fused,) = [one for one in answer.instructions if one.kind == "fused"]
    assert (("woven fusible interfacing",), ("shell",)) == (fused.needy, fused.tender)
    assert "before it is joined" in fused.text


@pytest.mark.parametrize(
    "text",
    [
        band("fabric: taffeta, fibres: {nylon: 100}"),
        band(layers=f"shell, lining, {GLUE}, lining"),
    ],
)
def test_a_glue_that_nothing_beside_it_bears_stays_a_clash(text: str) -> None:
    """Nylon melts under it as acetate does, and between two linings no shell takes it."""
    assert "waistband" in [place for place, _ in clashes(text)]


@pytest.mark.parametrize("fibres", ["{acetate: 100}", "{silk: 100}", "{viscose: 100}", "unknown"])
@pytest.mark.parametrize("cloth", ["satin", "crepe"])
def test_what_may_ring_stays_dry_beside_wool(cloth: str, fibres: str) -> None:
    """Acetate, silk and viscose do, and of a cloth of unknown fibre nobody knows."""
    found = told(JACKET.replace("CLOTH", f"fabric: {cloth}, fibres: {fibres}")).conflicts
    assert any("press.moisture" in one.aspects for one in found)


@pytest.mark.parametrize("cloth", ["jersey", "interlock", "rib knit"])
def test_a_cotton_knit_needs_no_hard_press(cloth: str) -> None:
    """Its loops hang out, and one dot smooths it well enough beside nylon."""
    about = f"fabric: {cloth}, fibres: {{cotton: 100}}"
    assert [] == clashes(WINDCHEATER.replace("CLOTH", about))


@pytest.mark.parametrize(
    "about",
    ["fabric: poplin, fibres: {cotton: 100}", "fabric: linen suiting, fibres: {linen: 100}"],
)
def test_a_woven_that_creases_still_needs_its_iron(about: str) -> None:
    """A poplin turned to nylon shows every fold that one dot leaves in."""
    found = clashes(WINDCHEATER.replace("CLOTH", about))
    assert ("front edge", "press.temperature") in found


def test_the_sheet_asks_what_a_toggle_is_of() -> None:
    """By a guess it may be leather, which alone forbids to wash and to clean the coat."""
    rows = [one for one in told(COAT.replace("TOGGLE", "toggle")).unknowns if "closing" in one.fact]
    (row,) = rows
    assert "Of what is the closing" in row.effect
    assert "if it is wood or horn, polyester or metal wire: washing by hand" in row.effect
    label = told(COAT.replace("TOGGLE", "toggle")).label
    assert label is not None
    assert any("Ask what closing is made of" in text for text in label.care.once_known)


@pytest.mark.parametrize("said", ["wooden toggle", "plastic toggle", "horn toggle"])
def test_a_toggle_that_is_named_is_treated_as_that(said: str) -> None:
    """Wood is washed by hand, plastic as the cloth is; nothing is left to ask."""
    answer = told(COAT.replace("TOGGLE", said))
    assert answer.label is not None
    assert answer.label.care.cleaning == "some"
    assert not [one for one in answer.unknowns if "closing" in one.fact]


def test_a_toggle_of_leather_still_leaves_no_care() -> None:
    """What is known is not asked, and stays forbidden."""
    label = told(COAT.replace("TOGGLE", "leather toggle")).label
    assert label is not None
    assert label.care.cleaning == "none"


@pytest.mark.parametrize(("wearer", "ends"), [("child", 150.0), ("adult", 360.0)])
def test_a_childs_cord_is_bought_no_longer_than_it_may_hang(wearer: str, ends: float) -> None:
    """Three inches at each end (16 CFR 1120), and a hand's length for a grown wearer."""
    garment = garment_of(parse_yaml(PUDDLE.replace("WEARER", wearer), "test"), shipped())
    work = order_of(decide(garment, shipped(), WHOLE).advice, shipped())
    (does,) = [t.step.does for t in work.tasks.values() if "cord through" in t.step.does]
    assert ("without a knot" in does, "knot or stop" in does) == (wearer == "child", ends > 300)
    kit = told(PUDDLE.replace("WEARER", wearer)).kit or ()
    assert [ends] == [one.ends_mm for one in kit if one.item == "drawcord"]


def test_a_childs_cord_has_a_length_to_cut() -> None:
    """The sheet says how much may come out at each end."""
    cut = "at most 75 mm more at each end"
    assert any(cut in one.text for one in told(PUDDLE.replace("WEARER", "child")).advice)


def test_a_remedy_that_is_offered_can_be_written(tmp_path: Path) -> None:
    """Organza put into a yoke is its interfacing, and no garment that the yoke shuts in."""
    file = tmp_path / "top.yaml"
    text = (
        "garment: Sparkle top\nfabrics:\n  foil: {fabric: foil knit}\nseams:\n"
        "  - {name: yoke, layers: [foil, {notion: fusible wadding}, foil], length: 40 cm}\n"
    )
    for which in range(1, len(told(text).conflicts[0].remedies) + 1):
        file.write_text(text)
        assert take_remedies(file, f"1.{which}", shipped()).lines


def test_sheet_and_label_press_alike() -> None:
    """No steam on the label, the steam off on the sheet, whose last press is dry."""
    answer = told(PINAFORE)
    assert answer.label is not None
    (line,) = [one for one in answer.label.care.lines if one.aspect == "care.iron"]
    assert "Iron at most 110 °C, without steam" in str(line.line)
    assert "damp" not in str(line.line)
    whole = {one.aspect: one.text for one in answer.verdicts if one.scope == "garment"}
    assert ("dry", "at 110 °C, the steam off") == (
        whole["press.moisture"],
        whole["care.iron"],
    )


@pytest.mark.parametrize(
    ("cloth", "prepared"),
    [("cotton denim", "wash as it will be washed"), ("merino jersey", "steam")],
)
def test_no_dye_is_fixed_where_nothing_is_washed(cloth: str, prepared: str) -> None:
    """What salt and vinegar do not do is told of a cloth that is washed before it is cut."""
    known = shipped()
    garment = asked_garment([cloth, "clear elastic"], known)
    answer = tell(decide(garment, known, WHOLE), known, WHOLE)
    picks = [v.pick for v in answer.verdicts if (v.place, v.aspect) == (cloth, "prepare.preshrink")]
    assert picks == [prepared]
    assert any("vinegar" in c.text for c in answer.cautions) == (prepared != "steam")
