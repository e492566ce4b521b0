"""A gown of mounted lace over two skirts, one of lace and velvet, and one on the bias.

Every claim is common practice of the trade, unless a source stands beside it.
"""

from __future__ import annotations

import pytest

from advisor.answer.gapwords import told_gaps
from advisor.answer.teller import Teller
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, read, stands

GALA = """
garment: Boathouse gala gown
units: metric
fitting: to the body
pattern: tried
maker: {machine: household, overlocker: 3-thread, feet: [standard, concealed zip]}
fabrics:
  guipure: {fabric: corded lace, fibres: {nylon: 70, viscose: 30}, weight: 160 g/m2}
  mikado: {fabric: duchess satin, fibres: {silk: 100}, weight: 165 g/m2}
  veil: {fabric: organza, fibres: {silk: 100}, weight: 26 g/m2}
  worsted: {fabric: wool crepe, fibres: {wool: 100}, weight: 210 g/m2}
  inner: {fabric: habutai, fibres: {silk: 100}, weight: 35 g/m2}
parts:
  bodice: {layers: [inner, mikado, guipure], fitting: to the body}
  sleeves: {layers: [guipure], fitting: loosely}
  skirts: {layers: [worsted, veil], separate: [worsted, veil], fitting: loosely}
seams:
  - {name: mount, layers: [guipure, mikado], kind: underlining, part: bodice}
  - {name: princess seam, layers: [guipure, mikado, mikado, guipure], length: 38 cm,
      shape: curved, times: 4, part: bodice}
  - {name: bodice side, layers: [guipure, mikado, mikado, guipure], length: 21 cm, stress: high,
      times: 2, part: bodice}
  - {name: shoulder, layers: [guipure, mikado, mikado, guipure], length: 9 cm, times: 2,
      part: bodice}
  - {name: inner lining side, layers: [inner, inner], length: 21 cm, times: 2, part: bodice}
  - {name: inner lining shoulder, layers: [inner, inner], length: 9 cm, times: 2, part: bodice}
  - {name: lining armhole, layers: [inner, guipure], length: 42 cm, shape: curved, times: 2,
      part: bodice}
  - {name: neck edge, layers: [guipure, mikado, inner], length: 64 cm, shape: curved,
      edge: turned, part: bodice}
  - {name: sleeve seam, layers: [guipure, guipure], length: 41 cm, times: 2, part: sleeves}
  - {name: armhole, layers: [guipure, mikado, {use: guipure, ease: 20 mm}], length: 42 cm,
      shape: curved, stress: high, times: 2}
  - {name: skirt side, layers: [worsted, worsted], length: 63 cm, times: 2, part: skirts}
  - {name: veil side, layers: [veil, veil], length: 64 cm, times: 2, part: skirts}
  - {name: waist, layers: [guipure, mikado, worsted, {use: veil, fullness: 2.4}], length: 68 cm,
      stress: high, pressed first: [worsted]}
  - {name: centre back zip, layers: [guipure, mikado, {notion: concealed zip}], length: 54 cm,
      crosses: waist}
  - {name: skirt centre back, layers: [worsted, worsted], length: 44 cm, part: skirts}
  - {name: waist stay, layers: [mikado, {notion: petersham ribbon}], length: 68 cm, part: bodice}
  - {name: bodice lining at waist, layers: [inner, worsted], length: 68 cm, part: bodice}
  - {name: skirt hem, layers: [worsted], length: 150 cm, edge: hem, part: skirts}
  - {name: veil hem, layers: [veil], length: 170 cm, edge: hem, part: skirts}
"""
SUPPER = """
garment: Orangery supper dress
units: metric
fitting: to the body
maker: {machine: household, overlocker: 4-thread, feet: [standard, concealed zip]}
fabrics:
  crepe: {fabric: crepe, fibres: {viscose: 97, elastane: 3}, weight: 210 g/m2}
  pelisse: {fabric: stretch velvet, fibres: {polyester: 92, elastane: 8}, weight: 260 g/m2}
  trellis: {fabric: lace, fibres: {nylon: 100}, weight: 110 g/m2}
  lining: {fabric: lining, fibres: {acetate: 100}, weight: 75 g/m2}
seams:
  - {name: bust dart, layers: [crepe], length: 9 cm, times: 2}
  - {name: side panel, layers: [crepe, pelisse], length: 26 cm, shape: curved, times: 4}
  - {name: yoke seam, layers: [trellis, crepe], length: 40 cm, times: 2}
  - {name: shoulder, layers: [trellis, trellis], length: 10 cm, times: 2}
  - {name: bodice side, layers: [pelisse, pelisse], length: 22 cm, times: 2}
  - {name: sleeve seam, layers: [trellis, trellis], length: 40 cm, times: 2}
  - {name: armhole, layers: [trellis, crepe, {use: trellis, ease: 20 mm}], length: 44 cm,
      shape: curved, times: 2}
  - {name: neck edge, layers: [trellis], length: 60 cm, shape: curved, edge: bound}
  - {name: skirt side, layers: [crepe, crepe], length: 64 cm, times: 2}
  - {name: waist, layers: [crepe, crepe], length: 72 cm}
  - {name: centre back zip, layers: [crepe, {notion: concealed zip}], length: 50 cm}
  - {name: centre back, layers: [crepe, crepe], length: 60 cm}
  - {name: lining side, layers: [lining, lining], length: 86 cm, times: 2}
  - {name: lining centre back, layers: [lining, lining], length: 60 cm}
  - {name: lining to yoke, layers: [lining, trellis], length: 80 cm}
  - {name: hem, layers: [crepe], length: 150 cm, edge: hem}
  - {name: lining hem, layers: [lining], length: 140 cm, edge: hem}
"""
SLOPE = """
garment: Regatta slope gown
units: metric
fitting: to the body
pattern: tried
maker: {machine: household, feet: [standard, straight-stitch]}
fabrics:
  pearl: {fabric: charmeuse, fibres: {silk: 100}, weight: 82 g/m2}
  fine: {fabric: organza, fibres: {silk: 100}, weight: 22 g/m2}
seams:
  - {name: bust dart, layers: [pearl], length: 11 cm, times: 2}
  - {name: right side, layers: [pearl, pearl], length: 78 cm, bias: yes}
  - {name: left side below the closing, layers: [pearl, pearl], length: 48 cm, bias: yes}
  - {name: strap, layers: [pearl, pearl], length: 42 cm, times: 2, bias: yes, stress: high}
  - {name: neck binding, layers: [pearl, pearl], length: 84 cm, shape: curved, edge: bound,
      bias: yes}
  - {name: armhole binding, layers: [pearl, pearl], length: 34 cm, shape: curved, edge: bound,
      times: 2, bias: yes}
  - {name: closing facing, layers: [pearl, fine, pearl], length: 30 cm, edge: turned}
  - {name: closing buttons, layers: [pearl, {notion: covered button}], times: 9}
  - {name: gown hem, layers: [pearl], length: 108 cm, edge: hem, shape: curved, bias: yes}
pieces:
  - {name: gown front, fabric: pearl, width: 52 cm, height: 138 cm, grain: bias}
  - {name: closing strip, fabric: pearl, width: 7 cm, height: 34 cm, number: 2}
"""


def does(text: str, step: str) -> str:
    return ordered(text).tasks[step].step.does


def pick(text: str, place: str, aspect: str) -> object:
    verdicts = (v for v in read(text).verdicts if (v.place, v.aspect) == (place, aspect))
    return next(verdicts).pick


def hottest(text: str, place: str) -> float:
    wanted = (place, "press.temperature")
    (found,) = (v for v in read(text).verdicts if (v.place, v.aspect) == wanted)
    return float(found.high or 0)


AT_WAIST = "bodice lining at waist, layers: [inner, worsted]"


@pytest.mark.parametrize(
    "called",
    [
        AT_WAIST,
        "bodice lining at waist, layers: [worsted, inner]",
        "waist of the lining, layers: [inner, mikado]",
    ],
)
def test_a_lining_that_ends_at_the_waist_is_felled_over_it(called: str) -> None:
    """Sewn in by machine before the waist it would be pressed and shut in with all of that."""
    text = GALA.replace(AT_WAIST, called)
    name = called.split(",", maxsplit=1)[0]
    found = ordered(text)
    assert "lining-felled-over-a-seam" == places(found)[name].method.id
    assert f"join {name}" not in found.order
    assert stands(found, "join waist", "set centre back zip", "tack in waist stay", f"fell {name}")
    assert 110 >= hottest(text, name), "its fold lies on the lace of the waist"


def test_a_lining_that_hangs_on_below_the_waist_is_not_felled_there() -> None:
    """The near miss: it has a hem of its own."""
    hem = "  - {name: lining hem, layers: [inner], length: 120 cm, edge: hem}\n"
    assert "lining-seam" != places(ordered(GALA + hem))["bodice lining at waist"].kind.id


def test_the_ends_of_a_stay_come_out_of_the_lining() -> None:
    """Felled all round, its hook could not be reached."""
    gap = "but for 30 mm beside the opening, where the ends of waist stay come out"
    assert gap in does(GALA, "fell bodice lining at waist")
    bare = GALA.replace("name: waist stay,", "name: inner bust tape, kind: stay tape,")
    assert "beside the opening" not in does(bare, "fell bodice lining at waist")


def test_a_mounted_shaping_seam_is_overcast_clipped_and_opened() -> None:
    """Bound to one side, eight plies make a ridge round the bust; the satin hides what is open.

    Its hollow edge is clipped before it is sewn, as a single cloth's is, and the round one notched
    after; but satin keeps holes, so it is basted, and clipped when it has been seen on.
    """
    found = ordered(GALA)
    assert "hand overcast" == pick(GALA, "princess seam", "seam.finish")
    steps = [f"{step} princess seam" for step in ("clip", "join", "press", "notch")]
    assert stands(found, "baste princess seam", "fit", *steps, "join shoulder")
    assert "laid onto" not in does(GALA, "press princess seam")
    assert not {"trim princess seam", "grade princess seam"} & set(found.order)


def test_the_waist_that_carries_skirts_and_a_stay_keeps_its_allowances() -> None:
    """Mounted lace is no sheer to be trimmed to a second row."""
    assert "plain" == pick(GALA, "waist", "seam.kind")
    assert "trimmed and double-stitched" != pick(GALA, "waist", "seam.finish")


def test_a_mounted_seam_is_told_its_allowance() -> None:
    """Its face leaves it open; what is basted behind it ravels."""
    assert 15 <= float(str(pick(GALA, "princess seam", "seam.allowance")))


def test_the_skirt_of_a_lined_bodice_is_seen_inside() -> None:
    """A part without a seam of the lining is not covered; one that has such seams is.

    Told of a heavy crepe: a light one is overlocked under a lining too, where an overlocker is.
    """
    heavy = GALA.replace("weight: 210 g/m2", "weight: 280 g/m2")
    assert "pinked" != pick(heavy, "skirt side", "seam.finish")
    apart = heavy.replace(", part: bodice", ", part: skirts")
    assert "pinked" == pick(apart, "skirt side", "seam.finish")


def test_bare_lace_is_sewn_before_anything_of_it_is_cut_off() -> None:
    """Motif over motif, then both layers are cut back; of the lower one nothing is left to show."""
    found = ordered(GALA)
    assert "lace-seam-lapped" == places(found)["sleeve seam"].method.id
    cut = "cut away both layers at sleeve seam"
    assert stands(found, "lap sleeve seam", "join sleeve seam", cut, "join armhole")
    assert "lower one" in does(GALA, cut)


def test_every_curved_edge_of_a_turned_neck_is_stayed() -> None:
    """A princess seam holds the same cloths, and stays no neck."""
    assert "mikado and inner" in does(GALA, "stay-stitch neck edge")


def test_no_bone_is_spoken_of_where_there_is_none() -> None:
    """The second row of a mounted seam runs beside bones only where the bodice has some."""
    assert "bone" not in does(GALA, "stitch again bodice side")
    bones = "  - {name: bones, layers: [mikado, {notion: spiral boning}], length: 20 cm}\n"
    assert "bone" in does(GALA + bones, "stitch again bodice side")


def test_what_ends_above_the_waist_is_not_near_the_hem() -> None:
    """The iron at the hem of a long skirt meets no lace, nor a zip of the bodice."""
    near = dict(ordered(GALA).hot_near)
    assert not near.get("press skirt hem", frozenset())
    assert "trellis" not in dict(ordered(SUPPER).hot_near).get("press skirt side", frozenset())


def test_a_lining_that_ends_at_a_yoke_is_felled_over_its_seam() -> None:
    """It is closed as a body before; no machine comes along a yoke of lace."""
    found = ordered(SUPPER)
    assert "lining-felled-over-a-seam" == places(found)["lining to yoke"].method.id
    assert stands(found, "join lining centre back", "join lining side", "fell lining to yoke")
    garment = garment_of(parse_yaml(SUPPER, "project.yaml"), known())
    missing = [gap.id for gap in told_gaps(Teller(garment, known()))]
    assert "lining-without-armholes" in missing


def test_a_side_of_another_cloth_is_closed_before_the_sleeve_goes_in() -> None:
    """The armhole runs over its end, though it names no velvet."""
    found = ordered(SUPPER)
    assert stands(found, "join bodice side", "baste armhole", "join armhole")
    assert "press bodice side" in found.graph.forced_before("baste armhole")


def test_on_the_bias_dart_and_closing_wait_until_it_has_hung() -> None:
    """Who has cut it before knows its shape, and not how far this cloth drops."""
    found = ordered(SLOPE)
    hung = "hang the basted seams"
    assert stands(found, "baste bust dart", hung, "fit", "stitch bust dart")
    assert stands(found, hung, "fit", "join closing facing")
    straight = ordered(SLOPE.replace(", bias: yes", "").replace(", grain: bias", ""))
    assert stands(straight, "stitch bust dart", "fit")


def test_both_rows_of_a_french_seam_give_on_the_bias() -> None:
    """A straight first row snaps as the second one gives."""
    found = ordered(SLOPE)
    machines = [found.tasks[f"{work} right side"].step.machine for work in ("join", "enclose")]
    assert ["304", "304"] == [m.stitch for m in machines if m is not None]


def test_the_sheet_names_the_pieces_that_lie_on_the_bias() -> None:
    """As the order does; the rest keeps the grain of its cloth."""
    (grain,) = (
        v.text for v in read(SLOPE).verdicts if (v.place, v.aspect) == ("pearl", "cut.grain")
    )
    assert "lengthwise grain, gown front on the bias" == grain


def test_strap_ends_go_in_when_every_edge_that_they_meet_is_done() -> None:
    """At the top of the front neck and armhole meet."""
    found = ordered(SLOPE)
    ends = "sew in the ends of strap"
    assert stands(found, "stitch down neck binding", ends)
    assert stands(found, "stitch down armhole binding", ends)


def test_a_seam_below_a_closing_ends_there() -> None:
    """It reaches no armhole, so that nothing there waits for it."""
    found = ordered(SLOPE)
    assert "press left side below the closing" not in found.graph.forced_before(
        "join armhole binding"
    )
    assert "press right side" in found.graph.forced_before("join armhole binding")


def test_no_strength_is_asked_along_a_strap() -> None:
    """Its seam lies in the pull, which opens no stitch of it."""
    told = " ".join(str(row) for row in read(SLOPE).seams or ())
    assert "this place asks for about" not in told
