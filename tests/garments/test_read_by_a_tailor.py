"""What a half-lined jacket of thick cloth and a child's coat of velvet have to get right.

All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from advisor.answer.ordernotes import keep_off
from advisor.claims.collect import Place
from advisor.claims.valuesets import Span
from advisor.knowledge.model import LIMIT_ASPECT
from advisor.order.work import Work
from tests.garments.whole import FOLDER, advice, changed, ordered, places, stands, work
from tests.typed import typed

JACKET = "more/lamproom_jacket"
COAT = """garment: Sledging coat
fitting: loosely
pattern: new
worn by: child
maker: {machine: household, overlocker: no}
fabrics:
  velvet: {fabric: velveteen, fibres: {cotton: 100}, weight: 260 g/m2}
  fur: {fabric: faux fur, fibres: {acrylic: 100}, weight: 500 g/m2}
  net: {fabric: tulle, fibres: {nylon: 100}}
seams:
  - {name: shoulder, layers: [velvet, velvet], length: 8 cm, times: 2}
  - {name: side, layers: [velvet, velvet], length: 40 cm, times: 2}
  - {name: sleeve seam, layers: [velvet, velvet], length: 27 cm, times: 2}
  - {name: sleeve frill, layers: [velvet, {use: net, fullness: 2}], length: 20 cm, times: 2}
  - {name: armhole, layers: [velvet, {use: velvet, ease: 14 mm}], length: 32 cm, times: 2}
  - {name: collar edge, layers: [fur, velvet], length: 44 cm, shape: curved, edge: turned}
  - {name: buttons, layers: [velvet, {notion: glass button}], times: 3}
"""


@cache
def coat(old: str = "", new: str = "") -> Work:
    """The order of the coat, some words of it changed."""
    assert old in COAT
    return ordered(COAT.replace(old, new) if old else COAT)


@cache
def sheet(command: str = "sheet") -> str:
    """What is printed of the jacket."""
    return " ".join(typed(command, str(FOLDER / f"{JACKET}.yaml")).out.split())


def hottest(place: str) -> float:
    """The hottest iron that a place of the jacket is told."""
    verdict = advice(JACKET).judgement.verdicts[Place("seam", place)][LIMIT_ASPECT]
    assert isinstance(verdict.advised, Span)
    return verdict.advised.high


def test_a_half_lining_is_hemmed_in_the_flat_before_it_is_set() -> None:
    """No hem of the shell says where it ends; a lining that falls as far waits for that."""
    found = work(JACKET)
    assert "part-lining-hem" == places(found)["yoke lining hem"].method.id
    assert stands(found, "press yoke lining hem", "set facing to lining", "sew hem")
    assert "thumb" not in found.tasks["sew yoke lining hem"].step.does
    whole = changed(JACKET, "yoke lining hem", "lining hem")
    assert stands(whole, "set facing to lining", "press hem", "sew lining hem")


def test_a_half_lining_is_hemmed_before_it_is_mounted() -> None:
    """As in the front of trousers, where it hangs to the knee and is caught in the seams."""
    hem = "  - {name: yoke lining hem"
    mounted = "  - {name: front lining, layers: [wool, lining], kind: underlining}\n"
    found = changed(JACKET, hem, mounted + hem)
    assert stands(found, "press yoke lining hem", "baste front lining")


def test_what_shows_below_a_half_lining_is_finished_as_in_an_unlined_coat() -> None:
    """Nothing says that a lining covers it; the sleeves are lined, and so are the shoulders."""
    seams = {
        s.name: str(s.facts.get("lined", "no")) for s in advice(JACKET).judgement.garment.seams
    }
    assert ("no", "no") == (seams["centre back"], seams["side"])
    assert ("yes", "yes", "yes") == (seams["shoulder"], seams["sleeve seam"], seams["armhole"])
    assert "bind or overcast every edge of the shell that shows below it" in sheet()


@pytest.mark.parametrize(
    ("old", "new"), [("", ""), ("strip", "edging"), ("  - {name: hem strip", "  #")]
)
def test_a_thin_cloth_in_the_hem_of_a_thick_one_binds_it(old: str, new: str) -> None:
    """By its name, by its pieces, or because it is thin and lies nowhere else."""
    found = changed(JACKET, old, new) if old else work(JACKET)
    assert "bound-hem" == places(found)["hem"].method.id


def test_a_thin_cloth_that_has_seams_of_its_own_binds_nothing() -> None:
    """An overlay is hemmed in its own way."""
    seam = "  - {name: veil side, layers: [edging, edging], length: 40 cm}\n  - {name: hem,"
    text = (FOLDER / f"{JACKET}.yaml").read_text(encoding="utf-8").replace("strip", "edging")
    text = text.replace("  - {name: hem edging", "  #").replace("  - {name: hem,", seam)
    found = ordered(text)
    assert "bound-hem" != places(found)["hem"].method.id


def test_what_takes_rings_is_covered_at_every_damp_press_near_it() -> None:
    """Silk bears the heat of the wool, and not its damp cloth; it is steamed through a dry one."""
    found = work(JACKET)
    damp = dict(found.damp_near)
    for step in ("turn front facing", "press armhole", "press hem"):
        assert "breast" in damp[step]
    pressed = found.tasks["press side"].step.iron
    assert pressed is not None
    assert "dry" == pressed.moisture  # the bag of lining lies in it
    assert any("breast" in row.keep_off for row in keep_off(found, "metric"))
    assert "through a dry cloth" in found.tasks["shrink breast"].how
    cotton = changed(
        JACKET, "{fabric: shantung, fibres: {silk: 100}", "{fabric: poplin, fibres: {cotton: 100}"
    )
    assert not cotton.damp_near


def test_a_seam_is_pressed_as_gently_as_the_pocket_bag_that_lies_in_it() -> None:
    """No towel comes between the seam and a bag that is sewn into it."""
    assert (110.0, 150.0) == (hottest("side"), hottest("sleeve seam"))
    assert "lining" not in dict(work(JACKET).hot_near).get("press side", ())
    assert stands(work(JACKET), "hot press wool", "join pockets in the side seams")


def test_a_start_above_one_dot_is_not_called_one_dot() -> None:
    """One dot is at most 110 °C everywhere else."""
    assert "start just above one dot, 120 °C" in sheet()
    assert "one dot, 120 °C" not in sheet().replace("just above one dot", "")


def test_a_bound_buttonhole_says_its_stitch_and_what_lies_behind() -> None:
    """Its corners hold by the short stitch alone."""
    assert "bound buttonhole, its rows at 1.5 to 2 mm, on a front that is interfaced" in sheet()


def test_a_glass_button_is_no_metal() -> None:
    """It breaks, and on a child that is told; no zip's words and no bleach that eats metal."""
    told = sheet() + sheet("label")
    assert "glass button" in told
    assert not any(words in told for words in ("Bleach eats metal", "from the tape side"))


def test_a_new_pattern_is_tried_in_a_toile_however_loosely_it_fits() -> None:
    """Only what is not fitted at all goes without."""
    assert "toile" in coat().order
    assert "toile" not in coat("fitting: loosely", "fitting: not at all").order


def test_a_side_of_a_pile_is_basted_to_be_tried_on() -> None:
    """A row that is taken out stays as a line in it; a plain cloth is sewn."""
    assert stands(coat(), "baste side", "fit", "join side")
    plain = "{fabric: poplin, fibres: {cotton: 100}"
    assert stands(coat("{fabric: velveteen, fibres: {cotton: 100}", plain), "join side", "fit")


def test_a_frill_of_a_sleeve_waits_for_no_iron_at_the_armhole() -> None:
    """It lies at the end of a long sleeve; at that of a short one the iron may reach it."""
    assert "tier" == places(coat())["sleeve frill"].role.id
    step = ("press armhole", "join sleeve frill")
    assert step not in {(p.before, p.after) for p in coat().graph.precedences}
    short = coat("length: 27 cm", "length: 9 cm")
    assert step in {(p.before, p.after) for p in short.graph.precedences}


def told(text: str, command: str, folder: Path) -> str:
    """What a command prints of the coat."""
    path = folder / "p.yaml"
    path.write_text(text, encoding="utf-8")
    return " ".join(typed(command, str(path)).out.split())


def test_a_coat_of_velvet_is_told_what_it_avoids(tmp_path: Path) -> None:
    """Ease that a pile does not take, glass on a child, and a name that no label may take over."""
    said = told(COAT, "sheet", tmp_path)
    assert "Take ease out of the pattern before the pile is cut" in said
    assert "Glass breaks in a fall" in said
    label = told(COAT, "label", tmp_path)
    assert "'fur' is your own word for what holds no fur" in label
    plain = COAT.replace("fur:", "collar:").replace("[fur,", "[collar,").replace("child", "adult")
    assert "your own word" not in told(plain, "label", tmp_path)
    assert "Glass breaks" not in told(plain, "sheet", tmp_path)


def test_a_strip_and_a_pocket_are_given_no_advice_on_bodies() -> None:
    """No slip is worn under a binding, and no shield sewn into a pocket."""
    assert not any(words in sheet() for words in ("plan a slip", "dress shields"))
    trims = {c.name for c in advice(JACKET).judgement.garment.cloths.values() if c.trims}
    assert {"breast", "strip"} <= trims
    assert not {"wool", "velvet"} & trims
