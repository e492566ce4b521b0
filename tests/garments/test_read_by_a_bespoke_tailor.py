"""A pleated skirt with a leather band and a lined coat with a pile collar: read by a tailor.

What each test claims is common practice of the trade; the two garments are our own.
"""

from __future__ import annotations

import pytest

from advisor.answer.model.answer import Answer
from advisor.construction.agreement import disagreements
from advisor.construction.fullness import fullness_of
from advisor.decide.advise import advise
from advisor.order.missing import missing
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, read, stands

SKIRT = """
garment: Signal skirt
fitting: to the body
pattern: new
fabrics:
  flannel: {fabric: wool flannel, fibres: {wool: 100}, weight: 300 g/m2, colour: "#3a3f45"}
  band: {fabric: goatskin, colour: "#5a2a17"}
  silk: {fabric: dupion, fibres: {silk: 100}, weight: 110 g/m2, colour: "#e8d9b5", width: 140 cm}
  lining: {fabric: lining, fibres: {viscose: 100}, weight: 85 g/m2, width: 140 cm}
seams:
  - name: skirt pleats
    layers: [flannel]
    length: 96 cm
    kind: pleat
    pleats: {kind: knife, number: 12, depth: 4 cm, hip: 96 cm, waist: 72 cm}
  - {name: side, layers: [flannel, flannel], length: 62 cm, times: 2}
  - {name: side zip, layers: [flannel, {notion: coil zip}], length: 20 cm}
  - name: waistband
    layers: [band, {notion: sew-in interfacing}, flannel, silk]
    length: 72 cm
  - {name: waist hook, layers: [band, {notion: hook and bar}], times: 1}
  - {name: hem, layers: [flannel], length: 192 cm, edge: hem}
pieces:
  - {name: skirt panel, fabric: flannel, width: 98 cm, height: 66 cm, number: 2}
  - {name: pocket facing, fabric: flannel, width: 14 cm, height: 24 cm}
  - {name: waistband, fabric: band, width: 76 cm, height: 8 cm}
  - {name: waistband facing, fabric: silk, width: 76 cm, height: 5 cm}
"""
COAT = """
garment: Weir keeper's coat
fitting: to the body
pattern: new
fabrics:
  tweed: {fabric: tweed, fibres: {wool: 100}, weight: 380 g/m2, width: 150 cm}
  collar: {fabric: velvet, fibres: {viscose: 100}, weight: 240 g/m2}
  suede: {fabric: suede, colour: "#5a3a20"}
  melton: wool 100 melton 400 g/m2
  lining: {fabric: lining, fibres: {acetate: 100}, weight: 80 g/m2}
seams:
  - {name: front canvas, layers: [tweed, {notion: hair canvas}], kind: canvas, times: 2}
  - {name: welt pocket, layers: [tweed, suede], kind: welt pocket, length: 15 cm, times: 2}
  - {name: elbow patch, layers: [tweed, suede], length: 52 cm, kind: applique, times: 2}
  - {name: shoulder, layers: [tweed, tweed], length: 14 cm, times: 2}
  - {name: side, layers: [tweed, tweed], length: 46 cm, times: 2}
  - {name: sleeve seam, layers: [tweed, tweed], length: 44 cm, times: 2}
  - {name: front facing, layers: [tweed, tweed], length: 70 cm, edge: turned, times: 2}
  - {name: collar edge, layers: [collar, {notion: hair canvas}, melton], edge: turned}
  - {name: collar seam, layers: [tweed, collar], length: 42 cm, shape: curved}
  - {name: armhole, layers: [tweed, tweed], length: 50 cm, shape: curved, times: 2}
  - {name: lining side, layers: [lining, lining], length: 44 cm, times: 2}
  - {name: facing to lining, layers: [tweed, lining], length: 150 cm, shape: curved}
  - {name: hem, layers: [tweed], length: 104 cm, edge: hem}
"""
BAG = "pocket-without-a-bag"


def cautions(answer: Answer) -> str:
    """All cautions of an answer in one text."""
    return " ".join(caution.text for caution in answer.cautions)


@pytest.mark.parametrize("text", [SKIRT, COAT], ids=["skirt", "coat"])
def test_nothing_is_washed_apart_that_is_never_washed(text: str) -> None:
    """A skin and a tailored wool are rubbed; where colour comes off another cloth is taken."""
    told = cautions(read(text))
    assert "wash it apart" not in told
    assert "take another cloth or lay one between" in told


def test_a_cloth_that_will_be_washed_is_still_washed_apart_first() -> None:
    """Indigo beside a pale cotton goes on being washed until no colour comes."""
    text = """
garment: Quay apron
fabrics:
  body: {fabric: cotton denim, colour: "#1d2a44"}
  frill: {fabric: cotton poplin, colour: "#f4f0e6"}
seams:
  - {name: frill seam, layers: [body, frill], length: 60 cm}
"""
    told = cautions(read(text))
    assert "wash it apart until no colour comes" in told
    assert "this garment is not washed" not in told


def test_pleats_from_hip_to_waist_are_tried_on_before_they_are_stitched() -> None:
    """Folds and sides are basted, tried at hip and waist, and only then stitched and pressed."""
    found = ordered(SKIRT)
    first = ("lay skirt pleats", "baste side", "fit", "stitch down skirt pleats")
    assert stands(found, *first, "press skirt pleats", "join side")


def test_pleats_of_one_width_are_laid_as_before() -> None:
    """Where nothing is taken in to the waist, there is nothing in them to be fitted."""
    found = ordered(SKIRT.replace("waist: 72 cm", "waist: 96 cm"))
    assert stands(found, "lay skirt pleats", "press skirt pleats", "fit")


def test_a_length_that_is_the_hip_is_not_counted_twice() -> None:
    """12 pleats of 8 cm and 96 cm of hip are 192 cm; what the waist takes in is in them."""
    garment = garment_of(parse_yaml(SKIRT, "project.yaml"), known())
    full = fullness_of(garment.seams[0], garment, known())
    assert full is not None
    assert (full.cut, full.finished) == (1920.0, 720.0)
    assert any("is the hip's" in text for text in full.says)


def agreeing(text: str) -> list[str]:
    """What does not agree in a project, by its kind."""
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    return [one.id for one in disagreements(advise(garment, known()).judgement, known())]


def test_panels_too_short_for_their_pleats_are_told() -> None:
    """Though a pocket is faced with the same cloth: the panel is called after the skirt."""
    assert "pleats" not in agreeing(SKIRT)
    assert "pleats" in agreeing(SKIRT.replace("width: 98 cm", "width: 70 cm"))


def test_the_shell_is_hemmed_before_a_tender_lining_is_hung() -> None:
    """Wool is pressed hotter than acetate bears, so the lining comes in over a finished hem."""
    found = ordered(COAT)
    assert stands(found, "sew hem", "press hem", "set facing to lining", "fell the lining at hem")
    assert all("lining" not in near for step, near in found.hot_near if step == "press hem")


def test_the_undercollar_is_padded_before_its_edge_is_sewn() -> None:
    """Canvas is padded to it by hand and cut out of the seam that the machine sews."""
    steps = ("baste collar edge", "pad the undercollar of collar edge", "join collar edge")
    found = ordered(COAT)
    assert stands(found, *steps[:2], "trim the canvas of collar edge", steps[2])
    assert "interface collar edge" not in found.order


def gaps(text: str) -> list[str]:
    """What a project seems to have forgotten, by the rule that says so."""
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    return [gap.rule.id for gap in missing(garment, known())]


def test_a_pocket_of_skin_and_tweed_asks_for_its_bag() -> None:
    """Neither is cut as a bag; a thin cloth among the layers or a bag of its own fills the gap."""
    assert BAG in gaps(COAT)
    assert BAG not in gaps(COAT.replace("[tweed, suede], kind", "[tweed, suede, lining], kind"))
    assert BAG not in gaps(
        COAT + "  - {name: pocket bag, layers: [lining, lining], length: 40 cm}\n"
    )


def test_an_elbow_patch_waits_for_no_side_of_the_body() -> None:
    """It goes onto the flat sleeve: before the seam of that, and not before the side."""
    found = ordered(COAT)
    assert stands(found, "stitch on elbow patch", "join sleeve seam")
    after = {p.after for p in found.graph.precedences if p.before == "stitch on elbow patch"}
    assert "baste side" not in after


def test_a_bar_lies_on_the_underlap() -> None:
    """A hook and a bar close edges that lap; nothing of them just meets."""
    told = ordered(SKIRT).tasks["fasten waist hook"].step.does
    assert "on the underlap" in told
    assert "eye" not in told


def test_a_hem_far_below_the_band_keeps_its_heat() -> None:
    """No iron at the hem reaches a waistband 62 cm above it; in a short peplum it may."""
    near = dict(ordered(SKIRT).hot_near)
    assert "band" not in near.get("press hem", frozenset())
    short = dict(ordered(SKIRT.replace("length: 62 cm", "length: 15 cm")).hot_near)
    assert "band" in short["press hem"]


def test_no_basting_goes_into_a_skin() -> None:
    """Its holes stay, so what stiffens a leather band is held to it by clips or a touch of glue."""
    told = ordered(SKIRT).tasks["interface waistband"].step.does
    assert "no needle through band" in told
    cloth = ordered(SKIRT.replace("fabric: goatskin", "fabric: wool flannel"))
    assert "no needle" not in cloth.tasks["interface waistband"].step.does


def test_a_lining_wider_than_its_waist_asks_what_takes_it_in() -> None:
    """124 cm do not go onto 72 cm by themselves; darts or pleats of the lining answer it."""
    lining = "  - {name: lining panel, fabric: lining, width: 62 cm, height: 60 cm, number: 2}\n"
    places = (
        "  - {name: lining side, layers: [lining, lining], length: 58 cm, times: 2}\n"
        "  - {name: lining to waist, layers: [flannel, lining], length: 72 cm}\n"
    )
    wide = SKIRT.replace("pieces:\n", places + "pieces:\n") + lining
    dart = "  - {name: lining dart, layers: [lining], length: 10 cm, times: 4}\npieces:\n"
    assert "lining width" in agreeing(wide)
    assert "lining width" not in agreeing(wide.replace("pieces:\n", dart))
    assert "lining width" not in agreeing(wide.replace("width: 62 cm", "width: 38 cm"))


def test_a_pocket_is_cut_before_the_back_hangs_on_the_front() -> None:
    """It is turned on the flat forepart, but where its skin could not bear the press after it."""
    plain = ordered(COAT.replace("[tweed, suede], kind: welt", "[tweed, tweed], kind: welt"))
    assert stands(plain, "fit", "slash welt pocket", "close welt pocket", "join shoulder")
    assert stands(ordered(COAT), "press shoulder", "stitch the welt of welt pocket")
