"""A boned gown with a gathered sheer sleeve and a pleated wool skirt, as a bridal room reads it.

Every claim is common practice of the trade, unless a source stands beside it.
"""

from __future__ import annotations

import pytest

from advisor.answer.label import Asked
from advisor.answer.model.making import ToldHang
from advisor.answer.pipeline import Parts, answer
from advisor.answer.seamwords import bulk_clause, full_says, warnings
from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.construction.seamwork import SeamWork, seamwork
from advisor.decide.advise import advise
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.render.gaveway import gave_way
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, read, stands

GOWN = """
garment: Lamp room gown
units: metric
fitting: to the body
pattern: new
maker: {machine: household, foot lift: 6 mm}
fabrics:
  satin: {fabric: duchesse satin, fibres: {silk: 100}, weight: 180 g/m2}
  lace: {fabric: corded lace, fibres: {nylon: 70, viscose: 30}, weight: 130 g/m2}
  coutil: {fabric: coutil, fibres: {cotton: 100}, weight: 280 g/m2}
  chiffon: {fabric: chiffon, fibres: {silk: 100}, weight: 35 g/m2}
  crepe: {fabric: wool crepe, fibres: {wool: 100}, weight: 220 g/m2, width: 150 cm}
  lining: {fabric: lining, fibres: {acetate: 100}, weight: 75 g/m2}
parts:
  foundation: {layers: [coutil], fitting: to the body}
  bodice: {layers: [satin, lace], fitting: to the body}
  sleeves: {layers: [chiffon], fitting: loosely}
  skirt: {layers: [lining, crepe], separate: [lining], fitting: loosely}
seams:
  - {name: foundation panel seam, layers: [coutil, coutil], length: 28 cm, shape: curved,
      times: 6, part: foundation}
  - {name: channels, layers: [coutil, {notion: spiral boning}], kind: bone channel, length: 26 cm,
      times: 8, part: foundation}
  - {name: waist stay, layers: [coutil, {notion: petersham ribbon}], length: 74 cm,
      part: foundation}
  - {name: overlay, layers: [lace, satin], kind: underlining, part: bodice}
  - {name: bodice side, layers: [satin, lace, lace, satin], length: 22 cm, stress: high, times: 2,
      part: bodice}
  - {name: neck and top edge, layers: [coutil, satin, lace], length: 88 cm, shape: curved,
      edge: turned}
  - {name: sleeve seam, layers: [chiffon, chiffon], length: 46 cm, times: 2, part: sleeves}
  - {name: armhole, layers: [satin, lace, {use: chiffon, fullness: 1.2}], length: 44 cm,
      shape: curved, stress: high, times: 2, crosses: bodice side}
  - {name: sleeve hem, layers: [chiffon], length: 24 cm, edge: hem, times: 2, part: sleeves}
  - {name: skirt side, layers: [crepe, crepe], length: 106 cm, times: 2, part: skirt}
  - {name: skirt lining side, layers: [lining, lining], length: 100 cm, times: 2, part: skirt}
  - name: pleated waist
    kind: waist
    layers: [lining, satin, lace, crepe]
    length: 72 cm
    stress: high
    pleats: {kind: inverted, number: 8, depth: 4 cm}
    crosses: [bodice side]
  - {name: centre back zip, layers: [satin, lace, {notion: coil zip}], length: 45 cm,
      method: hand-picked zip}
  - {name: hem, layers: [crepe], length: 200 cm, edge: hem, part: skirt}
pieces:
  - {name: bodice front, fabric: satin, width: 50 cm, height: 34 cm}
  - {name: lace front, fabric: lace, width: 50 cm, height: 34 cm}
  - {name: sleeve, fabric: chiffon, width: 44 cm, height: 62 cm, number: 2}
  - {name: skirt panel, fabric: crepe, width: 103 cm, height: 115 cm, number: 2}
  - {name: skirt lining, fabric: lining, width: 66 cm, height: 104 cm, number: 2}
"""
SHIFT = """
garment: Signal box shift
fabrics:
  body: {{fabric: poplin, fibres: {{cotton: 100}}, weight: 120 g/m2, width: 150 cm}}
  pale: {{fabric: habotai, fibres: {{silk: 100}}, weight: 45 g/m2, width: 114 cm}}
seams:
  - {{name: side, layers: [body, body], length: 1 m}}
  - {{name: {seam}, layers: [pale, pale], length: 60 cm}}
  - {{name: facing to lining, layers: [body, pale], length: 60 cm}}
pieces:
  - {{name: front, fabric: body, width: 100 cm, height: 100 cm, number: 2}}
  - {{name: inner front, fabric: pale, width: 50 cm, height: 60 cm, number: 2}}
"""
PLEATS = "depth: 4 cm}"


def judged(text: str) -> Judgement:
    return advise(garment_of(parse_yaml(text, "project.yaml"), known()), known()).judgement


def built(text: str, place: str) -> SeamWork:
    judgement = judged(text)
    seam = next(s for s in judgement.garment.seams if s.name == place)
    return seamwork(seam, judgement, known())


def hung(text: str) -> ToldHang:
    weight = read(text).weight
    assert weight is not None
    return next(hang for hang in weight.hangs if hang.place == "pleated waist")


def words_of(found: Work, step: str) -> str:
    return found.tasks[step].step.does


@pytest.mark.parametrize("work", ["insert bones in channels", "close channels"])
def test_the_hot_press_of_the_backing_comes_before_its_bones(work: str) -> None:
    """A bone bears less than cotton wants, and nobody irons over one that is shut in."""
    assert stands(ordered(GOWN), "join channels", "hot press coutil", work)


def test_a_boned_foundation_is_tried_on_once_more() -> None:
    """A step of its own, between bones slid in and channels closed; not where none follow.

    Of a known pattern its felled seams are sewn before, and can no more be let out.
    """
    found = ordered(GOWN)
    assert stands(found, "insert bones in channels", "try on with bones", "close channels")
    tried = ordered(GOWN.replace("pattern: new", "pattern: tried"))
    assert "try on with bones" not in tried.order
    assert stands(tried, "fell foundation panel seam", "insert bones in channels", "fit")
    assert "foundation panel seam" not in words_of(tried, "fit")


def test_pleats_are_set_by_the_press_of_their_cloth_alone() -> None:
    """Beside acetate and silk nothing sets wool, so the folds are laid before its own press."""
    found = ordered(GOWN)
    assert stands(found, "press skirt side", "fold pleated waist", "hot press crepe")
    assert stands(found, "hot press crepe", "join pleated waist")
    assert "its basted pleats with it" in words_of(found, "hot press crepe")
    assert "pleats" not in words_of(found, "hot press coutil")


def test_a_gathered_sleeve_belongs_to_its_garment() -> None:
    """Drawn up at the armhole it is no frill worn apart: its seam closes it, and no gap is told."""
    assert places(ordered(GOWN))["sleeve seam"].alone == ""
    assert "armhole" not in {gap.place for gap in read(GOWN).missing or ()}
    bare = GOWN.replace("name: sleeve seam", "name: sleeve trimming")
    assert "armhole" in {gap.place for gap in read(bare).missing or ()}


def test_a_sleeve_is_gathered_over_its_cap() -> None:
    """Below the notches it lies smooth under the arm; a frill is gathered all along."""
    assert "over the cap of chiffon, from notch to notch" in words_of(
        ordered(GOWN), "gather armhole"
    )
    frill = ordered(GOWN.replace("name: armhole", "name: armhole frill"))
    assert "broken at every cross seam" in words_of(frill, "gather armhole frill")


def test_the_distance_that_the_sheet_prints_can_be_typed() -> None:
    """Without a face, spacing is from one pleat to the next, and the rest stays flat."""
    found = built(GOWN, "pleated waist")
    assert "200 cm long for 72 cm" in " ".join(full_says(found, "metric"))
    assert "90 mm from pleat to pleat" in " ".join(full_says(found, "metric"))
    typed = GOWN.replace(PLEATS, "depth: 4 cm, spacing: 90 mm}")
    assert built(typed, "pleated waist").full == found.full
    near = built(GOWN.replace(PLEATS, "depth: 4 cm, spacing: 85 mm}"), "pleated waist")
    assert near.full is not None
    assert "the rest stays flat" in " ".join(near.full.says)


def test_lace_on_a_firm_cloth_is_sewn_straight() -> None:
    """The satin carries the stitches; a zigzag only lets the seam gape."""
    verdicts = judged(GOWN).verdicts[Place("seam", "bodice side")]
    stitch = verdicts["stitch.type"]
    assert stitch.pick is not None
    assert known().aspects["stitch.type"].words[int(stitch.pick)] == "301"
    assert stands(ordered(GOWN), "join bodice side", "stitch again bodice side")


def test_a_crossing_is_told_in_whole_plies_and_asks_for_no_needle_that_spoils() -> None:
    """Nobody counts a fifth of a ply; satin and lace are one panel there, and chiffon bears 80."""
    found = built(GOWN, "armhole")
    assert found.fine_needle is None
    assert not warnings(found, "metric")
    assert "6 plies where it crosses bodice side" in bulk_clause(found, "metric")


def test_the_weight_hangs_from_the_bodice_and_its_stay() -> None:
    """The lining hangs there and carries nothing; a stay of the project takes the weight."""
    told = hung(GOWN)
    assert told.carrier == "satin"
    assert "waist stay has to take the weight" in told.text
    assert (
        "let a stay of tape take it"
        in hung(GOWN.replace("name: waist stay", "name: inside ribbon")).text
    )


def test_what_a_sheet_leaves_out_that_gave_way_is_counted() -> None:
    """A sheet with little room sends its reader to the check, and a whole list to nowhere."""
    answer = read(GOWN)
    short, whole = gave_way(answer, 1), gave_way(answer)
    assert short.close == f"{len(whole.items) - 1} more: advisor check FILE."
    assert not whole.close


def test_what_lines_a_garment_is_its_main_lining_whatever_it_is_called() -> None:
    """However light, it is told apart on the label: its seams are those of a lining."""
    named = SHIFT.format(seam="lining side")
    garment = garment_of(parse_yaml(named, "project.yaml"), known())
    asked = Parts(label=Asked("eu", "metric", frozenset()))
    label = answer(garment, known(), asked).label
    assert label is not None
    assert label.whole is None
    other = garment_of(parse_yaml(SHIFT.format(seam="pocket side"), "project.yaml"), known())
    beside = answer(other, known(), asked).label
    assert beside is not None
    assert beside.whole is not None


def gaps(text: str) -> set[str]:
    return {gap.id for gap in read(text).missing or ()}


CLOSED, ENDED = "foundation-not-closed", "foundation-edge-not-finished"
HOOKS = "  - {name: inside hooks, layers: [coutil, {notion: hook and eye}], part: foundation}\n"
BOUND = (
    "  - {name: base, layers: [coutil, {notion: bias binding}], length: 74 cm, part: foundation}\n"
)


@pytest.mark.parametrize(
    ("more", "told"), [("", {CLOSED, ENDED}), (HOOKS, {ENDED}), (BOUND, {CLOSED})]
)
def test_a_foundation_of_its_own_closes_and_ends_somewhere(more: str, told: set[str]) -> None:
    """The zip of the bodice holds none of it, and the waist runs past it."""
    assert gaps(GOWN.replace("pieces:\n", f"{more}pieces:\n")) & {CLOSED, ENDED} == told


def test_a_foundation_in_the_seams_of_the_gown_is_closed_with_it() -> None:
    """Named as one layer of the bodice, it goes where that goes."""
    one = GOWN.replace(
        "  bodice: {layers: [satin, lace]", "  bodice: {layers: [coutil, satin, lace]"
    )
    assert not gaps(one) & {CLOSED, ENDED}


BOLERO = """
garment: Signal box bolero
fabrics:
  pile: {fabric: velvet, fibres: {viscose: 82, silk: 18}, weight: 240 g/m2}
  brocade: {fabric: brocade, fibres: {polyester: 62, cotton: 30, metallic-film: 8}}
seams:
  - {name: front facing, layers: [brocade, {notion: sew-in interfacing}, pile], length: 52 cm,
      edge: turned, times: 2}
  - {name: armhole, layers: [pile, {use: pile, ease: 20 mm}], length: 44 cm, times: 2}
pieces:
  - {name: front, fabric: pile, width: 30 cm, height: 44 cm, number: 2}
  - {name: facing, fabric: brocade, width: 11 cm, height: 50 cm, number: 2}
"""


def test_one_needle_suits_velvet_and_brocade() -> None:
    """80: the table has it for velvet, and a middling brocade takes it; 90 is for a heavy one."""
    needle = judged(BOLERO).verdicts[Place("seam", "front facing")]["needle.size"]
    assert needle.pick == 80


def test_an_interfacing_that_is_there_once_backs_the_facing_alone() -> None:
    """Of a front and its facing it is cut by one, and bought for one."""
    bought = {row.fabric: row for row in read(BOLERO).cloth or ()}
    assert bought["sew-in interfacing"].pieces == 2
    assert bought["sew-in interfacing"].buy_mm == 600


def test_ease_in_pile_is_written_where_it_is_reckoned() -> None:
    """The length to cut comes of the ease that is said, so that is what is to be changed."""
    told = " ".join(task.text for task in read(BOLERO).advice)
    assert "write here what is left" in told
