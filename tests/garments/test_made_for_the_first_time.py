"""A laced bodice and a coat of which nobody has tried the pattern: what is basted, and what waits.

All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from advisor.answer.model.answer import Answer
from advisor.claims.collect import Place
from advisor.claims.valuesets import Span
from advisor.construction.agreement import disagreements
from advisor.construction.laced import cords
from advisor.decide.advise import advise
from advisor.knowledge.model import LIMIT_ASPECT
from advisor.order.missing import missing
from advisor.order.work import Work, order_of
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, advice, changed, known, places, stands, told, work
from tests.typed import typed

CAPTAIN = "more/lantern_captain"
FILE = FOLDER / f"{CAPTAIN}.yaml"
COAT = """garment: Toll keeper's coat
fitting: to the body
pattern: new
maker: {machine: household}
fabrics:
  coat: {fabric: wool coating, fibres: {wool: 100}, weight: 440 g/m2}
  skin: {fabric: goatskin, thickness: 0.9 mm}
  lining: {fabric: lining, fibres: {viscose: 100}, weight: 80 g/m2}
seams:
  - {name: front canvas, layers: [coat, {notion: hair canvas}], length: 60 cm, kind: canvas}
  - {name: side back, layers: [coat, coat], length: 50 cm, shape: curved, times: 2}
  - {name: skirt pleats, layers: [coat], length: 50 cm, kind: pleat, times: 2}
  - {name: shoulder, layers: [coat, coat], length: 13 cm, times: 2}
  - {name: sleeve seam, layers: [coat, coat], length: 62 cm, shape: curved, times: 2}
  - {name: armhole, layers: [coat, {use: coat, ease: 30 mm}], length: 50 cm, shape: curved}
  - {name: cuff, layers: [coat, skin], length: 30 cm, times: 2}
  - {name: front facing, layers: [coat, coat], length: 90 cm, shape: curved, edge: turned, times: 2}
  - {name: facing to lining, layers: [coat, lining], length: 180 cm}
pieces:
  - {name: lining front, fabric: lining, width: 46 cm, height: 100 cm, number: 2}
  - {name: lining back, fabric: lining, width: 45 cm, height: 100 cm, number: 2}
"""


@cache
def coat(old: str = "", new: str = "") -> Work:
    """The order of the coat, some words of it changed."""
    assert old in COAT
    garment = garment_of(parse_yaml(COAT.replace(old, new) if old else COAT, "p.yaml"), known())
    return order_of(advise(garment, known()), known())


def answer() -> Answer:
    """All that is told of the captain."""
    return told(Path(FILE))


def words_of(found: Work, step: str) -> str:
    """What a step says."""
    return found.tasks[step].step.does


@pytest.mark.parametrize("place", ["mounting", "bones", "bodice side", "back lacing"])
def test_what_lies_on_a_tender_face_is_as_tender(place: str) -> None:
    """A channel that names its backing alone lies on the face that is basted to it."""
    verdict = advice(CAPTAIN).judgement.verdicts[Place("seam", place)][LIMIT_ASPECT]
    assert isinstance(verdict.advised, Span)
    assert 110 == verdict.advised.high
    row = next(row for row in answer().iron or () if row.place == place)
    assert 110 == row.advised_c
    assert "face" in {layer.name for layer in row.layers}


def test_the_iron_names_the_face_of_a_channel() -> None:
    """Whoever asks for one place is told the face that she cannot see in its layers."""
    out = " ".join(typed("iron", str(FILE), "bones").out.split())
    assert "never above 110 °C" in out
    assert "It lies on face, to which it is basted." in out


@pytest.mark.parametrize("seam", ["bodice panel", "bodice side", "skirt waist"])
def test_a_new_bodice_is_basted_and_tried_on(seam: str) -> None:
    """Under channels a seam is taken in no more, so it is sewn when it is sure."""
    found = work(CAPTAIN)
    assert stands(found, f"baste {seam}", "fit", f"join {seam}")


def test_channels_come_when_their_seams_are_sure() -> None:
    """Fitted, sewn twice, pressed; then channels and bones, and all is sewn before they shut."""
    found = work(CAPTAIN)
    twice = "stitch again bodice panel"
    assert stands(found, "fit", "join bodice panel", twice, "join bones", "insert bones in bones")
    assert stands(found, "stitch again bodice side", "insert bones in bones")
    assert stands(found, "neaten skirt waist", "close bones", "join neck edge")
    says = words_of(found, "fit")
    assert "hold back lacing shut by strips of firm cloth with eyelets" in says
    assert "once more when the bones are in, before their channels are closed" in says


def test_bones_of_a_tried_pattern_are_tried_on_in_their_channels() -> None:
    """What has been cut before is sewn first, as a handbook of corsets has it."""
    found = changed(CAPTAIN, "pattern: new", "pattern: tried")
    assert stands(found, "join bodice panel", "join bones", "insert bones in bones", "fit")
    assert "baste bodice panel" not in found.order
    assert "once more when the bones are in" not in words_of(found, "fit")


def test_a_gusset_is_let_in_before_the_side_is_closed() -> None:
    """It ends in side and armhole, which run over its ends; a point in a slit has a patch."""
    found = work(CAPTAIN)
    assert "arm-gusset" == places(found)["underarm gusset"].role.id
    assert stands(found, "join underarm gusset", "neaten underarm gusset", "join bodice side")
    out = " ".join(typed("sheet", "--all", str(FILE)).out.split())
    assert "a small square of a firm thin cloth" in out


def test_a_lacing_has_two_edges() -> None:
    """Eleven holes stand along 30 cm, and as many opposite; the cord goes through them all."""
    garment = advice(CAPTAIN).judgement.garment
    seam = next(s for s in garment.seams if s.name == "back lacing")
    number, length = cords(seam, garment, known())
    assert 1 == number
    assert length is not None
    assert 22 * 150 < length
    out = " ".join(typed("check", str(FILE)).out.split())
    assert "taken as 22 (11 on each edge)" in out
    assert "write times: 22" in out
    shopping = " ".join(typed("sheet", str(FILE), "--only", "shopping").out.split())
    assert "grommet (back lacing). Buy: 22" in shopping


def test_a_deep_hem_and_a_rolled_one_do_not_agree() -> None:
    """4 cm is turned up below the piece, and a narrow rolled hem takes 15 mm."""
    found = [d for d in disagreements(advice(CAPTAIN).judgement, known()) if d.id == "hem"]
    assert [[40.0, 15.0]] == [[f.value for f in d.figures] for d in found]
    out = " ".join(typed("check", str(FILE)).out.split())
    assert "skirt hem is made a narrow rolled hem, which takes at most 15 mm" in out


def test_a_hem_that_is_deep_agrees_with_its_piece() -> None:
    """Whoever names a deep one has no rolled one."""
    text = FILE.read_text(encoding="utf-8").replace("edge: hem}", "edge: hem, method: blind hem}")
    judgement = advise(garment_of(parse_yaml(text, "p.yaml"), known()), known()).judgement
    assert "hem" not in {d.id for d in disagreements(judgement, known())}


def test_rows_of_net_lie_on_the_face_of_their_yoke() -> None:
    """Net frays nowhere: no knife, no cotton thread, and metres of it are drawn up by stretches."""
    found = work(CAPTAIN)
    assert "gathered-rows-on-a-face" == places(found)["net rows"].method.id
    assert "neaten net rows" not in found.order
    assert "at each quarter" in words_of(found, "gather net rows")
    state = found.tasks["gather net rows"].step.machine
    assert state is not None
    assert "polyester" in state.thread_above
    seam = next(s for s in answer().seams if s.name == "net rows")
    assert "rows gathered onto a face" == seam.method


def test_one_row_of_net_is_joined_as_ever() -> None:
    """A single frill lies at the edge of its yoke, whose allowance frays."""
    found = changed(CAPTAIN, "length: 92 cm, times: 3", "length: 92 cm")
    assert "gathered-rows-on-a-face" != places(found)["net rows"].method.id
    assert "neaten net rows" in found.order


def test_the_needle_of_an_edge_goes_through_its_backing() -> None:
    """Through face, coutil and binding it is no finer than in the seams beside it."""
    verdicts = advice(CAPTAIN).judgement.verdicts
    edge, panel = (
        verdicts[Place("seam", name)]["needle.size"].pick for name in ("neck edge", "bodice panel")
    )
    assert edge is not None
    assert panel is not None
    assert panel <= edge


def test_what_hangs_from_nothing_is_asked_for() -> None:
    """A yoke that is joined to nothing, a skirt that opens nowhere."""
    gaps = {gap.rule.id: gap for gap in missing(advice(CAPTAIN).judgement.garment, known())}
    assert {"joined-to-nothing", "skirt-not-opened"} <= set(gaps)
    assert ("skirt",) == gaps["skirt-not-opened"].cloths


def test_a_lining_in_pieces_needs_its_seams() -> None:
    """It is cut, and only its edge stands in the file."""
    garment = garment_of(parse_yaml(COAT, "p.yaml"), known())
    gaps = {gap.rule.id: gap for gap in missing(garment, known())}
    assert ("lining",) == gaps["lining-without-seams"].cloths
    side = "  - {name: lining side, layers: [lining, lining], length: 50 cm, times: 2}\npieces:"
    whole = garment_of(parse_yaml(COAT.replace("pieces:", side), "p.yaml"), known())
    assert "lining-without-seams" not in {gap.rule.id for gap in missing(whole, known())}


def test_the_seam_that_shapes_a_new_coat_is_basted() -> None:
    """Canvas lies in the fronts; the side back is clear of it, and what it takes in is tried on."""
    found = coat()
    assert stands(found, "baste side back", "baste shoulder", "fit", "join side back")
    assert "neaten side back" not in found.order  # milled, and shut in by the lining
    assert "side back, shoulder may still be changed" in words_of(found, "fit")


def test_a_tried_coat_is_sewn_and_tried_on() -> None:
    """Nobody bastes what has been cut before."""
    found = coat("pattern: new", "pattern: tried")
    assert stands(found, "join side back", "fit")
    assert "baste side back" not in found.order


def test_a_cuff_of_skin_is_measured_on_the_sleeve() -> None:
    """Each hole stays in a skin, and a fold of it is twice as thick as it need be."""
    found = coat()
    assert "cuff-with-cut-edges" == places(found)["cuff"].method.id
    assert stands(found, "fit", "baste armhole", "close to a ring cuff", "stitch on cuff")
    assert "round the fitted sleeve" in words_of(found, "close to a ring cuff")
    assert not any("old the inner edge of cuff" in task.step.does for task in found.tasks.values())
    plain = coat("[coat, skin]", "[coat, coat]")
    assert "band-in-two-stages" == places(plain)["cuff"].method.id


def test_a_thick_cloth_is_stay_stitched_down_the_body_only_where_it_is_clipped() -> None:
    """The curve of a milled coating keeps its line; its armhole is stretched in the hand.

    The hollow edge between two panels is clipped before it is sewn, and the row ends the clips.
    """
    order = coat().order
    assert stands(coat(), "stay-stitch side back", "clip side back", "join side back")
    assert "stay-stitch side" not in coat("side back", "side").order
    assert "stay-stitch sleeve seam" not in order
    assert "stay-stitch armhole" in order


def test_pleats_are_made_of_what_takes_no_crease(tmp_path: Path) -> None:
    """What is advised against and made all the same is told how."""
    path = tmp_path / "coat.yaml"
    path.write_text(COAT, encoding="utf-8")
    out = " ".join(typed("sheet", str(path)).out.split())
    assert "Avoid: pressed pleats" in out
    assert "Pleats are laid here though the cloth takes none that are sharp" in out
