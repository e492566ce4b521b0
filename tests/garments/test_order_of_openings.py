"""When what is cut into a piece is cut, and what lies between two layers before they are closed.

A dress with a keyhole, plackets, loops and a ruff, and small cases beside it. All is common
practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldVerdict
from advisor.order.work import Work
from tests.garments.whole import FOLDER, changed, known, ordered, read, stands, work

DRESS, BLAZER, TROUSERS = (
    "more/glasshouse_dress",
    "more/ferryman_blazer",
    "more/conductor_trousers",
)
COAT = """
garment: Ferry coat
fitting: to the body
maker: {machine: household, overlocker: 4-thread}
fabrics: {coating: wool coating 420 g/m2, pocketing: cotton pocketing}
seams:
  - {name: shoulder dart, layers: [coating], length: 14 cm, times: 2}
  - {name: bound buttonholes, on: coating, method: bound buttonhole, number: 4}
  - {name: pocket flaps, layers: [coating, coating], length: 17 cm, edge: turned, times: 2}
  - {name: jetted pocket, layers: [coating, pocketing], length: 17 cm, times: 2}
  - {name: centre back, layers: [coating, coating], length: 80 cm}
  - {name: back vent, layers: [coating, coating], length: 32 cm}
  - {name: raglan seam, layers: [coating, coating], length: 38 cm, shape: curved, times: 4}
  - {name: side, layers: [coating, coating], length: 70 cm, times: 2}
  - {name: sleeve seam, layers: [coating, coating], length: 46 cm, times: 2}
  - {name: front facing, layers: [coating, coating], length: 105 cm, edge: turned, times: 2}
  - {name: hem, layers: [coating], length: 150 cm, edge: hem}
"""


def _why(found: Work, before: str, after: str) -> str:
    return " ".join(p.why for p in found.reasons.get(after, ()) if p.before == before)


@pytest.mark.parametrize(
    "cut", ["slash jetted pocket", "slash bound buttonholes", "clip back vent"]
)
def test_nothing_is_cut_into_a_fitted_piece_before_its_place_is_known(cut: str) -> None:
    """What runs over it is only basted, the shell is tried on, and the place marked anew."""
    found = ordered(COAT)
    assert stands(found, "baste raglan seam", "baste side", "fit", cut)
    assert "join raglan seam" not in found.order[: found.order.index("fit")]
    told = found.tasks["fit"].step.does
    assert "mark anew where bound buttonholes, jetted pocket and back vent will lie" in told


def test_no_row_is_sewn_round_a_slit_before_its_place_is_known() -> None:
    """Rows say where it lies, and leave their holes."""
    found = ordered(COAT)
    assert stands(found, "fit", "stitch the welt of jetted pocket", "slash jetted pocket")
    assert "turn bound buttonholes" not in [p.before for p in found.reasons["join pocket flaps"]]
    assert "confirmed on the body" in _why(found, "fit", "stay the slit of jetted pocket")


@pytest.mark.parametrize("said", ["fitting: to the body\npattern: tried", "fitting: loosely"])
def test_where_the_place_is_known_it_is_cut_flat_and_early(said: str) -> None:
    """A pattern that was tried, or a coat that hangs loose, says where a pocket lies."""
    found = ordered(COAT.replace("fitting: to the body", said))
    assert stands(found, "slash jetted pocket", "fit")
    assert "mark anew" not in found.tasks["fit"].step.does


def test_a_placket_waits_for_the_fitting_and_the_sleeve_seam_for_it() -> None:
    """It is slashed and bound in the flat sleeve, when the sleeve has been held to the arm."""
    found = work(DRESS)
    assert () == found.cycles
    assert stands(found, "fit", "slash sleeve placket", "close sleeve placket", "join sleeve seam")
    assert "pin the seam of the sleeve together, and the sleeve in" in found.tasks["fit"].step.does
    assert "pin the seam" not in ordered(COAT).tasks["fit"].step.does
    tower = changed(DRESS, "name: sleeve placket,", "name: sleeve placket, method: shirt placket,")
    steps = ("slash sleeve placket", "bind the back edge of sleeve placket", "join sleeve seam")
    assert stands(tower, "fit", *steps)


def test_a_front_is_basted_to_its_back_tried_and_taken_off_again() -> None:
    """Its pockets are cut and its canvas padded on the table, so no shoulder is sewn before."""
    found = work(BLAZER)
    steps = ("fit", "slash flap pocket", "baste front canvas", "shape front canvas")
    assert stands(found, "baste shoulder", "baste side", *steps, "join shoulder")


def test_a_bag_that_two_pockets_share_chases_nothing() -> None:
    """The side is basted without it, and sewn when the pocket behind is cut and closed."""
    found = work(TROUSERS)
    assert () == found.cycles
    steps = ("fit", "slash back pocket", "close pocket bag", "join outseam")
    assert stands(found, "baste outseam", *steps)


RAGLAN = """
garment: Net loft smock
fitting: to the body
maker: {machine: household, overlocker: 4-thread}
fabrics: {twill: cotton twill 200 g/m2}
seams:
  - {name: raglan seam, layers: [twill, twill], length: 38 cm, times: 4}
  - {name: side, layers: [twill, twill], length: 60 cm, times: 2}
  - {name: sleeve seam, layers: [twill, twill], length: 44 cm, times: 2}
  - {name: hem, layers: [twill], length: 110 cm, edge: hem}
"""


def test_a_raglan_seam_is_neatened_once_the_fitting_has_left_it() -> None:
    """Its edges are cut and neatened as one, and what runs over their end is basted till then."""
    found = ordered(RAGLAN)
    steps = ("press raglan seam", "baste side", "fit", "neaten raglan seam", "join side")
    assert stands(found, *steps)
    assert "raglan seam, side, sleeve seam may still" in found.tasks["fit"].step.does


def test_a_ruff_is_sewn_on_before_the_band_closes_over_it() -> None:
    """And the keyhole before both, for they run over its open end."""
    found = work(DRESS)
    assert stands(found, "turn keyhole", "join neck ruff", "join neck band", "close neck band")
    cuffed = changed(
        DRESS,
        "  - {name: cuff,",
        "  - {name: cuff frill, layers: [crepe, {use: ruffle, fullness: 2}], length: 22 cm}\n"
        "  - {name: cuff,",
    )
    assert stands(cuffed, "join cuff frill", "join cuff", "close cuff")
    assert not any(step.startswith("neaten cuff frill") for step in cuffed.order)


def test_a_collar_without_a_seam_of_its_own_name_runs_over_what_ends_at_the_neck() -> None:
    """It is set to the whole neck, whatever it is called; the slit is made in the flat piece."""
    found = changed(DRESS, "name: neck band,", "name: stand collar,")
    assert stands(found, "turn keyhole", "press shoulder", "join stand collar")


def test_loops_lie_in_the_edge_before_anything_closes_over_it() -> None:
    """Each at its own edge: those of a cuff wait for no neck."""
    found = work(DRESS)
    assert stands(found, "baste on neck button loop", "face keyhole", "join neck band")
    assert stands(found, "baste on cuff button loops", "join cuff")
    told = " ".join(p.why for p in found.reasons["join neck ruff"])
    assert "cuff button loops" not in told


def test_no_reason_speaks_of_a_seam_that_runs_over_a_dart() -> None:
    """A dart is pressed before a pocket is sewn near it, which need not lie over its end."""
    told = _why(work(DRESS), "press bust dart", "stitch on breast patch pocket")
    assert "before breast patch pocket is sewn to its piece" in told
    assert "cross" not in told


def test_an_edge_that_is_only_cut_asks_for_no_needle_and_lies_in_one_ply() -> None:
    """Nothing is pinned, basted or sewn there; the hem beside it keeps its needle."""
    found = read(
        """
garment: Net skirt
fabrics: {net: nylon net, lawn: cotton lawn}
seams:
  - {name: lawn hem, layers: [lawn], length: 180 cm, edge: hem}
  - {name: net hem, layers: [net], length: 300 cm, edge: hem}
"""
    )
    assert ["lawn hem"] == [v.place for v in found.verdicts if v.aspect == "needle.size"]
    assert [] == [
        v.aspect
        for v in found.verdicts
        if v.place == "net hem" and v.aspect.startswith(("pin.", "thread.", "stitch."))
    ]
    built = {p.name: p.built for p in found.seams}["net hem"]
    assert built is not None
    assert 1.0 == built.plies


def test_what_is_pressed_before_something_is_drawn_in_says_so_beside_its_press() -> None:
    """The sheet tells the iron of the filled channel, the order that of its empty fold."""
    drawn = [
        method
        for method in known().places.methods.values()
        if {"fold-under", "draw-in"} <= {stage.work for stage in method.stages}
    ]
    assert [] == [m.id for m in drawn if "pressed first and empty" not in m.says]
    assert "elastic-in-a-casing" in [m.id for m in drawn]


def test_the_flap_over_a_laid_on_pocket_is_said_once() -> None:
    """Every method of such a pocket has it as one piece of work, on the sewn pocket."""
    made = [m for m in known().places.methods.values() if "patch-pocket" in m.makes]
    works = [[stage.work for stage in method.stages] for method in made]
    assert all("flap-over" in found for found in works)
    assert all(found.index("lay-on") < found.index("flap-over") for found in works)


CREPE = """
garment: Boathouse dress
maker: {machine: household, overlocker: 4-thread}
fabrics: {crepe: wool crepe 280 g/m2, lining: viscose lining}
seams:
  - {name: side, layers: [crepe, crepe], length: 40 cm, times: 2}
  - {name: waist, layers: [crepe, {use: crepe, fullness: 1.5}], length: 70 cm}
  - {name: lining side, layers: [lining, lining], length: 100 cm, times: 2}
  - {name: neck, layers: [crepe, lining], length: 60 cm, edge: turned}
  - {name: hem, layers: [crepe], length: 200 cm, edge: hem}
"""


def test_one_cloth_is_finished_alike_in_one_garment() -> None:
    """Its gathered waist may not be pinked, so its sides are overlocked with it, and say why.

    A crepe under 250 g/m2 is overlocked under its lining anyhow, where an overlocker is at hand.
    """
    side = _finish(read(CREPE), "side")
    assert "overlocked" == side.pick
    assert any("Waist is overlocked" in claim.why for claim in side.because)
    plain = CREPE.replace(", {use: crepe, fullness: 1.5}]", ", crepe]")
    assert "pinked" == _finish(read(plain), "side").pick == _finish(read(plain), "waist").pick
    said = CREPE.replace("name: side,", "name: side, finish: pinked,")
    assert "pinked" == _finish(read(said), "side").pick
    light = plain.replace("280 g/m2", "220 g/m2")
    assert "overlocked" == _finish(read(light), "side").pick


def _finish(answer: Answer, place: str) -> ToldVerdict:
    [found] = [v for v in answer.verdicts if (v.place, v.aspect) == (place, "seam.finish")]
    return found


FUR = """
garment: Lamplighter's cape
maker: {machine: household}
fabrics: {fur: polyester faux fur, melton: wool melton 500 g/m2}
seams:
  - {name: side, layers: [fur, fur], length: 60 cm, times: 2}
  - {name: collar edge, layers: [fur, melton], length: 60 cm, edge: turned}
  - {name: collar seam, layers: [melton, fur], length: 46 cm, shape: curved}
  - {name: hem, layers: [melton], length: 200 cm, edge: hem}
"""


def test_fur_is_shorn_off_its_allowances_and_its_hairs_are_freed() -> None:
    """On the flat piece before the seam, and before anything is sewn over the seam."""
    found = ordered(FUR)
    shorn, freed = "shear the pile at collar edge", "free the hairs of collar edge"
    assert stands(found, "cut fur", shorn, "join collar edge", "turn collar edge", freed)
    assert stands(found, freed, "join collar seam")
    assert "the pile of fur off" in found.tasks[shorn].step.does
    assert "shear the pile at hem" not in found.order


def test_a_side_of_fur_is_tried_on_before_its_pile_is_shorn() -> None:
    """A bald strip that is let out shows."""
    found = ordered(FUR.replace("maker:", "fitting: to the body\nmaker:"))
    assert () == found.cycles
    assert stands(found, "baste side", "fit", "shear the pile at side", "join side")


QUILT = """
garment: Ropewalk waistcoat
fitting: to the body
maker: {machine: household, overlocker: 4-thread}
fabrics: {quilt: quilted nylon}
seams:
  - {name: side, layers: [quilt, quilt], length: 40 cm, times: 2}
  - {name: shoulder, layers: [quilt, quilt], length: 12 cm, times: 2}
"""


def test_wadding_is_cut_out_after_the_fitting_and_before_its_edges_are_neatened() -> None:
    """What is cut out cannot be let out; what an edge is sewn over cannot be cut out."""
    found = ordered(QUILT)
    assert () == found.cycles
    out = "unpick the wadding at"
    assert stands(found, "baste side", "fit", f"{out} side", "join side")
    early = (f"{out} shoulder", "neaten shoulder", "join shoulder")
    assert stands(found, "baste shoulder", "fit", *early)


def test_real_fur_keeps_its_hair() -> None:
    """It is pushed out of the seam, and freed from it afterwards."""
    found = ordered(FUR.replace("polyester faux fur", "fur"))
    assert not any(step.startswith("shear") for step in found.order)
    assert stands(found, "join collar edge", "free the hairs of collar edge")


def test_pleats_are_left_soft_above_the_edge_and_laid_again_over_the_hem() -> None:
    """Or the straight edge is hemmed before them: handbooks have both, and both are told."""
    found = work(DRESS)
    over = "press the folds over skirt hem"
    assert stands(found, "press knife pleats", "fit", "sew skirt hem", "press skirt hem", over)
    told = found.tasks["press knife pleats"].step.does
    assert "leave the folds soft for 20 cm above the edge" in told
    assert "hemmed before its pleats are laid" in told
    assert "knife pleats" in found.tasks[over].step.does


@pytest.mark.parametrize("garment", ["more/kilt", "more/conductor_trousers", "more/shirt"])
def test_pleats_that_end_above_the_hem_or_at_a_selvedge_are_pressed_at_once(garment: str) -> None:
    """Of a waist, of a yoke, and of a kilt whose edge is cut or woven and not turned up."""
    found = work(garment)
    assert not any(step.startswith("press the folds over") for step in found.order)
    assert not any("leave the folds soft" in task.step.does for task in found.tasks.values())


def test_a_frill_that_lies_between_two_layers_has_no_edge_to_neaten() -> None:
    """Neither in the order nor on the sheet; one that hangs free has."""
    text = (FOLDER / f"{DRESS}.yaml").read_text(encoding="utf-8")
    frill = "  - {name: skirt ruffle, layers: [crepe, {use: ruffle, fullness: 2}], length: 200 cm}"
    told = read(f"{text}{frill}\n")
    finished = {v.place for v in told.verdicts if v.aspect == "seam.finish"}
    assert "neck ruff" not in finished
    assert {"shoulder", "skirt ruffle"} <= finished
    assert not any(step.startswith("neaten neck ruff") for step in work(DRESS).order)


def test_a_collar_is_on_before_the_facing_of_its_neck_closes_over_it() -> None:
    """It lies between the two, and is closed over both when that is turned."""
    facing = "  - {name: neck facing, layers: [crepe, crepe], length: 40 cm, edge: turned}\n"
    found = changed(DRESS, "  - {name: sleeve seam", f"{facing}  - {{name: sleeve seam")
    steps = ("join neck band", "join neck facing", "turn neck facing", "close neck band")
    assert () == found.cycles
    assert stands(found, *steps)


def test_a_keyhole_that_is_told_as_its_facing_is_cut_as_well() -> None:
    """It is a faced slit, whatever it is called: loops first, in its flat piece.

    No head comes in without it, so it is open for the fitting; the toile has told its place.
    """
    old = "  - {name: keyhole, layers: [crepe, backing], length: 12 cm}"
    new = "  - {name: keyhole facing, layers: [crepe, backing], length: 30 cm, edge: turned}"
    found = changed(DRESS, old, new)
    steps = ("toile", "baste on neck button loop", "face keyhole facing", "slash keyhole facing")
    assert stands(found, *steps, "turn keyhole facing", "join shoulder", "fit", "join neck ruff")
