"""A dance leotard and a jacket with its skirt, as a maker for the stage reads them.

All is common practice of the trade.
"""

from __future__ import annotations

from itertools import pairwise

from tests.garments.whole import ordered, read

LEOTARD = """garment: Regatta leotard with a skirt
fitting: to the body
pattern: tried
maker: {machine: household, overlocker: 4-thread, feet: [standard, walking, overlock]}
fabrics:
  pile: {fabric: stretch velvet, fibres: {polyester: 90, elastane: 10}, weight: 260 g/m2,
     width: 150 cm}
  trunk: {fabric: swim knit, fibres: {nylon: 80, elastane: 20}, weight: 190 g/m2, width: 150 cm}
  mesh: {fabric: power mesh, fibres: {nylon: 85, elastane: 15}, weight: 100 g/m2, width: 150 cm}
  float: {fabric: chiffon, fibres: {polyester: 100}, weight: 60 g/m2, width: 140 cm}
seams:
  - {name: back inset, layers: [pile, mesh], length: 50 cm, shape: curved, stress: high,
     joins: [bodice back, back inset]}
  - {name: shoulder, layers: [pile, pile], length: 8 cm, stress: high, times: 2,
     joins: [bodice front, bodice back]}
  - {name: side, layers: [pile, pile], length: 22 cm, stress: high, times: 2,
     joins: [bodice front, bodice back]}
  - {name: armhole, layers: [pile, mesh], length: 42 cm, shape: curved, stress: high, times: 2,
     joins: [bodice front, bodice back, sleeve]}
  - {name: sleeve seam, layers: [mesh, mesh], length: 44 cm, times: 2}
  - {name: trunk side, layers: [trunk, trunk], length: 12 cm, stress: high, times: 2,
     joins: [trunk front, trunk back]}
  - {name: crotch, layers: [trunk, trunk], length: 7 cm, stress: high, joins: [trunk front,
     trunk back]}
  - {name: bodice to trunk, layers: [pile, trunk], length: 74 cm, stress: high,
     joins: [bodice front, bodice back, trunk front, trunk back]}
  - {name: leg elastic, layers: [trunk, {notion: knitted elastic, stretched: 1.15,
     width: 8 mm}], length: 56 cm, edge: folded, times: 2}
  - {name: neck elastic, layers: [pile, {notion: clear elastic, stretched: 1.05}],
     length: 60 cm, edge: folded}
  - {name: back strap, layers: [pile, {notion: strap elastic}], length: 24 cm, times: 2,
     stress: high}
  - {name: skirt seam, layers: [float, float], length: 46 cm, times: 2}
  - {name: skirt hem, layers: [float], length: 320 cm, edge: hem, shape: curved}
  - {name: skirt to hip, layers: [pile, trunk, {use: float, fullness: 1.5}], length: 74 cm,
     stress: high}
  - {name: stones, layers: [pile, {notion: textile glue}, {notion: glass stone}], times: 200}
"""
JACKET = """garment: Harvest-fair jacket and skirt
fitting: to the body
pattern: new
maker: {machine: household, overlocker: no}
fabrics:
  silk: {fabric: striped taffeta, fibres: {silk: 100}, weight: 100 g/m2, width: 140 cm,
     repeat: 5 cm}
  cotton: {fabric: calico, fibres: {cotton: 100}, weight: 140 g/m2, width: 150 cm}
  lace: {fabric: all-over lace, fibres: {nylon: 70, cotton: 30}, weight: 90 g/m2, width: 90 cm}
parts:
  bodice: {layers: [cotton, silk, lace], fitting: to the body}
  skirt: {layers: [silk], fitting: loosely}
seams:
  - {name: mounting, layers: [silk, cotton], length: 240 cm, kind: underlining, part: bodice}
  - {name: back seam, layers: [silk, cotton, silk, cotton], length: 40 cm, shape: curved,
     part: bodice, joins: [bodice back]}
  - {name: piped side back, layers: [silk, cotton, {notion: piping cord}, silk, silk, cotton],
     length: 34 cm, shape: curved, times: 2, part: bodice, joins: [bodice back, bodice front]}
  - {name: shoulder, layers: [silk, cotton, silk, cotton], length: 13 cm, times: 2,
     part: bodice, joins: [bodice front, bodice back]}
  - {name: front edge, layers: [silk, cotton], length: 44 cm, edge: turned, times: 2,
     part: bodice}
  - {name: front hooks, layers: [silk, cotton, {notion: hook and eye}], fastening: hooks,
     number: 14, part: bodice}
  - {name: boning channel, layers: [cotton, {notion: boning}], length: 24 cm, times: 5,
     part: bodice}
  - {name: piped armhole, layers: [silk, cotton, {notion: piping cord}, silk, silk, cotton],
     length: 44 cm, shape: curved, times: 2, part: bodice, joins: [bodice front, bodice back,
     sleeve]}
  - {name: sleeve seam, layers: [silk, cotton, silk, cotton], length: 30 cm, times: 2,
     part: bodice}
  - {name: sleeve flounce, layers: [silk, cotton, {use: lace, fullness: 2.5}], length: 28 cm,
     times: 2, part: bodice}
  - {name: jacket hem, layers: [silk, cotton], length: 88 cm, edge: faced, part: bodice}
  - {name: skirt panel seam, layers: [silk, silk], length: 100 cm, times: 3, part: skirt,
     joins: [skirt panel]}
  - {name: skirt placket, layers: [silk, silk], length: 24 cm, part: skirt, kind: placket}
  - {name: skirt waistband, layers: [silk, {notion: waistband stiffener}, {use: silk,
     fullness: 4}], length: 72 cm, part: skirt}
  - {name: waist hook, layers: [silk, {notion: hook and bar}], fastening: hooks, number: 2,
     part: skirt}
  - {name: skirt hem facing, layers: [silk, cotton], length: 340 cm, edge: faced, part: skirt}
  - {name: pleated frill, layers: [silk, silk], length: 340 cm, part: skirt, pleats: {kind: box,
     number: 60, depth: 3 cm, face: 6 cm}}
pieces:
  - {name: bodice front, fabric: silk, width: 32 cm, height: 50 cm, number: 2, matched: yes}
  - {name: bodice back, fabric: silk, width: 20 cm, height: 48 cm, number: 2, matched: yes}
  - {name: sleeve, fabric: silk, width: 38 cm, height: 38 cm, number: 2}
  - {name: skirt panel, fabric: silk, width: 122 cm, height: 106 cm, number: 3, matched: yes}
  - {name: frill strip, fabric: silk, finished width: 340 cm, finished height: 14 cm,
     fullness: 3, hem: 1 cm}
"""


def at(text: str, step: str) -> int:
    """The place of a step in the order of a project."""
    return ordered(text).order.index(step)


def does(text: str, step: str) -> str:
    """What a step says."""
    return ordered(text).tasks[step].step.does


def test_a_film_that_is_advised_in_a_seam_keeps_the_iron_off_it() -> None:
    """Clear elastic in a shoulder: no iron there, and its cloth is steamed before it is laid."""
    work = ordered(LEOTARD)
    laid = [name for name in work.order if name.startswith("stay ")]
    assert {"stay shoulder", "stay bodice to trunk"} <= set(laid)
    for name in laid:
        seam = name.removeprefix("stay ")
        assert at(LEOTARD, "steam pile") < at(LEOTARD, name)
        assert work.tasks[f"press {seam}"].step.iron is None
    iron = {v.place: v.text for v in read(LEOTARD).verdicts if v.aspect == "press.temperature"}
    assert iron["shoulder"].startswith("no iron")


def test_what_is_basted_in_is_told_near_the_iron() -> None:
    """Mesh and trunk that are basted in lie beside the side that is steamed after the fitting."""
    near = dict(ordered(LEOTARD).hot_near)
    assert {"mesh", "trunk"} <= near["press side"]
    reasons = ordered(LEOTARD).reasons
    assert not any("comes in here" in p.why for p in reasons.get("join back inset", ()))


def test_an_inset_goes_into_the_flat_piece() -> None:
    """Before the shoulders and the sides are closed, pressed hot later or not."""
    for later in ("join shoulder", "join side"):
        assert at(LEOTARD, "join back inset") < at(LEOTARD, later)


def test_two_rings_are_joined_when_both_are_closed() -> None:
    """The pieces tell that a seam joins two rings, whatever it is called."""
    for side in ("join side", "join trunk side"):
        assert at(LEOTARD, side) < at(LEOTARD, "join bodice to trunk")
    for side in ("baste side", "baste trunk side"):
        assert at(LEOTARD, side) < at(LEOTARD, "baste bodice to trunk")


def test_a_strap_of_elastic_is_pinned_tried_and_barred() -> None:
    """It is bought ready: neither sewn to a tube nor caught in a side seam."""
    steps = [name for name in ordered(LEOTARD).order if name.endswith("back strap")]
    assert ["pin on back strap", "bar the ends of back strap"] == steps
    assert at(LEOTARD, "pin on back strap") < at(LEOTARD, "fit")
    assert at(LEOTARD, "fit") < at(LEOTARD, "bar the ends of back strap")
    two = LEOTARD.replace("[pile, {notion: strap elastic}]", "[pile, pile]")
    assert "join back strap" in ordered(two).order


def test_a_close_stretch_garment_is_basted_in_rows_that_give() -> None:
    """A hand thread snaps as it is pulled on; beside a pile the row lies in the allowance."""
    for task in ordered(LEOTARD).tasks.values():
        if task.op == "baste" and task.place is not None and task.place.kind.id == "seam":
            assert "zigzag that gives" in task.step.does
            pile = "pile" in task.place.cloths
            assert pile == ("just inside its allowance" in task.step.does), task.id


def test_stones_are_glued_over_a_sheet_clear_of_what_rubs() -> None:
    """And glue, stone and cloth are among the trials on scraps."""
    said = does(LEOTARD, "glue stones")
    for word in ("sheet", "seams", "elastic", "underarm", "inner leg", "over a form"):
        assert word in said
    assert any("Glue stones to a scrap" in str(trial) for trial in read(LEOTARD).tests)


def test_no_tape_shuts_a_seam_that_has_to_stretch() -> None:
    """A strip that takes the strain is told for cloths that do not give, and carry something."""
    strip = "take the strain and not the light edge"
    assert not any(strip in task.text for task in read(LEOTARD).advice)


def test_an_iron_is_no_hotter_than_what_is_in_beside_it() -> None:
    """Lace in the end of a sleeve and bones in their channels set the most of the seams there."""
    work = ordered(JACKET)
    bones = at(JACKET, "insert bones in boning channel")
    for name, tender in work.capped:
        task = work.tasks[name]
        assert task.at_most == 110.0
        assert task.step.iron is not None
        assert task.step.iron.temperature_c <= 110
        if "boning" in tender:
            assert bones < work.order.index(name)
    assert {"press jacket hem", "turn jacket hem"} <= {name for name, _ in work.capped}
    assert work.tasks["press boning channel"].at_most == 110.0


def test_a_sleeve_is_tried_in_before_its_armhole_is_past_recall() -> None:
    """A piped armhole is basted over its piping, the sleeve in it, and sewn after the fitting."""
    work = ordered(JACKET)
    assert not work.cycles
    for early in ("join sleeve seam", "baste piping to piped armhole", "baste piped armhole"):
        assert at(JACKET, early) < at(JACKET, "fit")
    for late in ("join piped armhole", "join sleeve flounce"):
        assert at(JACKET, "fit") < at(JACKET, late)
    assert "piped armhole" in does(JACKET, "fit")


def test_two_garments_of_one_file_are_each_worked_in_one_run() -> None:
    """After the fitting the jacket is done as far as it goes, then the skirt."""
    work = ordered(JACKET)
    after = work.order[work.order.index("fit") + 1 :]
    found = (work.tasks[name].place for name in after)
    parts = [place.seam.part for place in found if place is not None]
    changes = sum(a != b for a, b in pairwise(parts))
    assert ["bodice", "skirt"] == list(dict.fromkeys(parts))
    assert changes == 1


def test_a_bodice_and_a_skirt_with_one_waist_are_one_garment() -> None:
    """A waist seam joins them, so nothing is put on by itself."""
    waist = "  - {name: waist, layers: [silk, silk], length: 72 cm, part: bodice}\npieces:"
    work = ordered(JACKET.replace("pieces:", waist))
    assert all(not task.place.alone for task in work.tasks.values() if task.place is not None)


def test_a_faced_hem_is_levelled_after_the_waistband() -> None:
    """What hangs from a band is marked level when it hangs."""
    assert at(JACKET, "close skirt waistband") < at(JACKET, "level skirt hem facing")
    assert at(JACKET, "level skirt hem facing") < at(JACKET, "join skirt hem facing")


def test_a_frill_of_strips_is_joined_and_hemmed_before_it_is_pleated() -> None:
    """And the seams of the skirt's widths are none of its own."""
    said = does(JACKET, "fold pleated frill")
    assert "strips joined into one length" in said
    assert "hemmed by 10 mm" in said
    reasons = ordered(JACKET).reasons.get("fold pleated frill", ())
    assert not any("run on over skirt panel seam" in p.why for p in reasons)
    seam = "  - {name: frill seam, layers: [silk, silk], times: 8, part: skirt}\npieces:"
    own = JACKET.replace("pieces:", seam)
    assert "strips joined" not in does(own, "fold pleated frill")


def test_a_flounce_waits_for_no_seam_of_the_body() -> None:
    """What lies at the end of a sleeve is sewn to no piece of the side back."""
    for name in ("gather sleeve flounce", "join sleeve flounce"):
        for reason in ordered(JACKET).reasons.get(name, ()):
            assert reason.before != "baste piping to piped side back"


def test_a_matched_cloth_is_cut_single_and_told_where_it_meets() -> None:
    """On a fold nobody sees whether the lines of the lower layer lie on those above."""
    cut = does(JACKET, "cut silk")
    assert "single layer" in cut
    assert "matched at back seam, piped side back, shoulder and skirt panel seam" in cut
    told = read(JACKET)
    assert any("Match silk line on line" in task.text for task in told.advice)
    plain = JACKET.replace(", matched: yes", "")
    assert "matched at" not in does(plain, "cut silk")


def test_a_slit_is_offered_the_seam_that_runs_up_beside_it() -> None:
    """Whole silk need not be slashed where a seam of the skirt ends in the band."""
    assert "leave the upper end of skirt panel seam open" in does(JACKET, "slash skirt placket")
    alone = JACKET.replace("  - {name: skirt panel seam,", "  - {name: hip ease line,")
    assert "hip ease line" not in does(
        alone.replace("length: 100 cm, times: 3", "length: 12 cm"), "slash skirt placket"
    )
