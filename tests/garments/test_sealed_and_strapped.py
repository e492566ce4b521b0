"""A child's smock against the rain, and a pinafore on straps, as a sewing teacher read them.

The smock is all coated cloth but for its rib and the jersey of its hood; the pinafore joins a cloth
that wants a hot press to a glue and a knit that bear none. All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from advisor.answer.seamwords import warnings
from advisor.claims.collect import Place
from advisor.claims.judgement import Advice
from advisor.construction.agreement import disagreements
from advisor.construction.bulk import number
from advisor.construction.clothlist import cloths_to_buy
from advisor.construction.seamwork import seamworks
from advisor.decide.advise import advise
from advisor.order.work import Work, order_of
from advisor.project.load import garment_of, load_project
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, known, places, stands, told
from tests.typed import typed

FILE = FOLDER / "more" / "saltmarsh_smock.yaml"
PINAFORE = """
garment: Reading-room pinafore
fitting: to the body
fabrics:
  cord: {fabric: corduroy, fibres: {cotton: 100}, weight: 210 g/m2}
  skirt: {fabric: wool flannel, fibres: {wool: 100}, weight: 260 g/m2}
  panel: {fabric: ponte, fibres: {viscose: 65, nylon: 30, elastane: 5}, weight: 300 g/m2}
  lining: {fabric: lining, fibres: {polyester: 100}, weight: 70 g/m2}
parts:
  bodice: {layers: [lining, cord, panel], fitting: to the body}
  skirt part: {layers: [lining, skirt], separate: [lining], fitting: loosely}
seams:
  - {name: front pleats, layers: [skirt], length: 44 cm, kind: pleat,
     pleats: {kind: box, number: 4, depth: 5 cm}}
  - {name: panel seam, layers: [cord, panel], length: 24 cm, shape: curved, times: 4, part: bodice}
  - {name: skirt side, layers: [skirt, skirt], length: 66 cm, times: 2, part: skirt part}
  - {name: waist seam, layers: [cord, skirt], length: 84 cm, part: bodice}
  - {name: centre back zip, layers: [skirt, {notion: coil zip}], length: 40 cm, part: skirt part}
  - {name: straps, layers: [cord, {notion: woven fusible interfacing}, cord], length: 52 cm,
     edge: turned, times: 2}
  - {name: bib edge, layers: [cord, {notion: woven fusible interfacing}, lining], length: 70 cm,
     edge: turned, part: bodice}
  - {name: lining side, layers: [lining, lining], length: 86 cm, times: 2}
  - {name: lining hem, layers: [lining], length: 118 cm, edge: hem}
  - {name: hem, layers: [skirt], length: 130 cm, edge: hem, part: skirt part}
pieces:
  - {name: skirt front, fabric: skirt, width: 87 cm, height: 72 cm}
  - {name: skirt back, fabric: skirt, width: 36 cm, height: 72 cm, number: 2}
"""


@cache
def smock() -> Advice:
    return advise(load_project(FILE, known()), known())


@cache
def pinafore(old: str = "", new: str = "") -> Advice:
    """The advice on the pinafore, with some words of it changed."""
    text = PINAFORE.replace(old, new) if old else PINAFORE
    assert not old or text != PINAFORE
    return advise(garment_of(parse_yaml(text, "project.yaml"), known()), known())


@cache
def of_smock() -> Work:
    return order_of(smock(), known())


@cache
def of_pinafore(old: str = "", new: str = "") -> Work:
    """Its order of work, with some words of it changed."""
    return order_of(pinafore(old, new), known())


def _does(work: Work, step: str) -> str:
    return work.tasks[step].step.does


def _typed(folder: Path, worn_by: str) -> str:
    """The sheet of the smock as it is worn by somebody."""
    text = FILE.read_text(encoding="utf-8").replace("worn by: child", f"worn by: {worn_by}")
    file = folder / "smock.yaml"
    file.write_text(text, encoding="utf-8")
    return " ".join(typed("sheet", str(file), "--all").out.split())


def test_no_line_tells_how_a_childs_cord_is_knotted_or_shrunk(tmp_path: Path) -> None:
    """Of an adult's it is told how long it is cut; a child's is neither cut nor washed."""
    adult, child = _typed(tmp_path, "adult"), _typed(tmp_path, "child")
    assert "to knot and for a lock" in adult
    assert "to knot and for a lock" not in child
    prepared = {v.place for v in told(FILE).verdicts if v.aspect == "prepare.preshrink"}
    assert "snug" in prepared
    assert "drawcord" not in prepared
    assert "shrink drawcord" not in of_smock().tasks
    assert "shrink snug" in of_smock().tasks


@pytest.mark.parametrize(
    ("seam", "thing"),
    [
        ("yoke seam", "seam sealer"),
        ("shoulder", "sealing tape"),
        ("armhole", "seam sealer"),
        ("side and sleeve", "seam sealer"),
        ("hood centre", "sealing tape"),
        ("hood to neck", "seam sealer"),
        ("patch pocket", "seam sealer"),
        ("reflective band", "seam sealer"),
    ],
)
def test_every_row_that_rain_comes_through_is_sealed_in_every_view(seam: str, thing: str) -> None:
    """However the seam is made: a tape where all of it is coated and flat, else a liquid."""
    (made,) = [s.made for s in told(FILE).seams if s.name == seam]
    assert "sealed on the coated side" in made
    assert thing in _does(of_smock(), f"seal {seam}")
    bought = [need for need in told(FILE).kit or () if thing in need.item]
    assert any(seam in need.for_ for need in bought)


def test_what_a_tape_lies_over_has_no_bound_edges() -> None:
    """The sheet tells of no finish where the order trims and tapes; where it binds, it does."""
    asked = {(v.place, v.aspect) for v in told(FILE).verdicts}
    assert ("shoulder", "seam.finish") not in asked
    assert ("yoke seam", "seam.finish") in asked
    assert "neaten yoke seam" in of_smock().tasks


def test_a_curve_of_coated_cloth_is_not_felled() -> None:
    """The hood is curved; the long straight side is felled."""
    made = {name: place.method.id for name, place in places(of_smock()).items()}
    assert "seam-sealed-by-tape" == made["hood centre"]
    assert "felled-seam" == made["side and sleeve"]


def test_what_is_laid_on_goes_on_while_its_piece_lies_flat() -> None:
    """No iron at a cuff or a hem keeps a pocket or a band waiting until the body is closed."""
    found = of_smock()
    for laid in ("stitch on patch pocket", "stitch on reflective band"):
        assert stands(found, laid, "join side and sleeve")


def test_a_hood_lies_apart_until_it_is_sewn_on() -> None:
    """Neither yoke nor pocket waits for the iron at its edge; the seam at the neck waits for it."""
    for step in ("join yoke seam", "stitch on patch pocket"):
        waits = (reason.before for reason in of_smock().reasons.get(step, ()))
        assert [] == [name for name in waits if "hood" in name]
    assert stands(of_smock(), "turn hood edge", "join hood to neck")


def test_a_band_has_one_allowance_and_its_pieces_are_joined() -> None:
    """As cut: 340 mm and 2 x 7, twice 60 mm and 2 x 7; two of them make 680 mm."""
    bought = {b.cloth: b for b in cloths_to_buy(smock().judgement, known())}
    cut = {(c.name, c.width, c.height) for c in bought["ribbing"].cuts}
    assert {("cuff", 194.0, 134.0), ("hem band", 354.0, 134.0)} == cut
    assert stands(of_smock(), "join the pieces of hem band", "fold hem band", "join hem band")
    assert "join the pieces of cuff" not in of_smock().tasks


def test_what_is_never_shrunk_first_is_bought_without_shrinking() -> None:
    """The laminate is prepared in no way; the jersey is washed, and shrinks."""
    bought = {b.cloth: b.shrinks for b in cloths_to_buy(smock().judgement, known())}
    assert 0.0 == bought["shoulders"]
    assert bought["snug"] > 0


def test_a_zip_without_a_flap_lets_the_rain_in() -> None:
    """It is told with the line that mends it; on a child its teeth lie bare at the chin as well."""
    asked = ["zip-at-the-chin-of-a-child", "zip-lets-rain-through"]
    assert asked == [gap.id for gap in told(FILE).missing or ()]


def test_thread_is_called_after_the_same_cloth_in_every_view() -> None:
    """Two cloths are of one colour: the reel is called after one, however the file has them."""
    machine = of_smock().tasks["join yoke seam"].step.machine
    assert machine is not None
    named = machine.thread_above.rpartition("to match ")[2]
    assert named in {row.matches[0] for row in told(FILE).thread or ()}


def test_no_way_to_more_strength_goes_against_the_advice() -> None:
    """Neither a stitch below the advised one, nor a thread thicker than the layers take."""
    seams = {work.seam.name: work for work in seamworks(_pulled().judgement, known())}
    lines = " ".join(warnings(seams["armhole"], "metric"))
    assert "let tape or a stay take the pull" in lines
    assert "a stronger thread" not in lines
    assert "shorten the stitch" not in " ".join(warnings(seams["front zip"], "metric"))


@cache
def _pulled() -> Advice:
    """The smock with its armhole and its zip under strain."""
    text = FILE.read_text(encoding="utf-8").replace("shape: curved, times: 2,", "stress: high,")
    text = text.replace("length: 46 cm}", "length: 46 cm, stress: high}")
    return advise(garment_of(parse_yaml(text, "project.yaml"), known()), known())


def test_a_piece_is_fused_flat_and_the_hot_press_spares_the_glue() -> None:
    """It lies apart until it is joined; what is fused at 150 degrees never lies under 180."""
    found = of_pinafore()
    assert stands(found, "fuse bib edge", "join bib edge")
    assert stands(found, "fuse straps", "join straps")
    assert "is fused to it, at most 15" in found.tasks["hot press cord"].step.does


def test_no_iron_at_the_hem_comes_near_a_short_zip() -> None:
    """40 cm of a side of 66; one of 60 cm ends too near to the hem to say so."""
    near = {name for name, tender in of_pinafore().hot_near if "coil zip" in tender}
    long = {
        name
        for name, tender in of_pinafore("length: 40 cm, part", "length: 60 cm, part").hot_near
        if "coil zip" in tender
    }
    assert "press hem" not in near
    assert "press hem" in long


def test_straps_are_basted_on_for_the_fitting() -> None:
    """The pinafore hangs from them; a dress with shoulders does not."""
    found = of_pinafore()
    assert stands(found, "baste on straps", "fit", "sew in the ends of straps")
    shoulder = (
        "{name: shoulder, layers: [cord, cord], length: 8 cm, times: 2}\n  - {name: skirt side"
    )
    dress = of_pinafore("{name: skirt side", shoulder)
    assert "baste on straps" not in dress.tasks


def test_a_free_lining_has_its_opening_finished() -> None:
    """The zip is set in the skirt alone, as the layers tell."""
    does = _does(of_pinafore(), "finish the free opening at centre back zip")
    assert does.startswith("Finish the opening of lining at centre back zip by itself")
    joined = of_pinafore("separate: [lining], ", "")
    assert "finish the free opening at centre back zip" not in joined.tasks


def test_a_fusible_is_told_its_cloth_and_a_stay_its_edge() -> None:
    """Onto the cord and not the lining; along the knit that gives."""
    assert "woven fusible interfacing onto cord, " in _does(of_pinafore(), "fuse bib edge")
    assert "on one of its edges only, that of panel, " in _does(of_pinafore(), "stay panel seam")


def test_a_light_corduroy_beside_a_double_knit_takes_the_needle_of_both() -> None:
    """80 NM is best for the one and borne by the other."""
    verdicts = pinafore().judgement.verdicts[Place("seam", "panel seam")]
    assert 80 == number(verdicts, "needle.size")


def test_pleats_are_held_against_the_piece_of_their_half() -> None:
    """They take up 124 cm, and the front has 84 cm without its seams; the back has no pleat."""
    (found,) = [d for d in disagreements(pinafore().judgement, known()) if d.id == "pleats"]
    assert [1240.0, 840.0] == [figure.value for figure in found.figures]
