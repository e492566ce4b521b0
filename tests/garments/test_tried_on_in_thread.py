"""A gathered dress that nobody has cut before: basted, tried on, and only then sewn past recall.

All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.answer.gapwords import told_gaps
from advisor.answer.teller import Teller
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import changed, known, ordered, read, stands, work

BEE = "more/beekeeper_frock"
FROCK = """garment: Schoolroom frock
units: metric
fitting: to the body
pattern: new
maker: {machine: household, overlocker: no, feet: [standard, zip, straight-stitch]}
fabrics:
  wool: {fabric: wool flannel, fibres: {wool: 100}, weight: 270 g/m2}
  sleeve: {fabric: georgette, fibres: {silk: 100}, weight: 55 g/m2}
  lining: {fabric: lining, fibres: {acetate: 100}, weight: 80 g/m2}
seams:
  - {name: bodice dart, layers: [wool], length: 14 cm, times: 4}
  - {name: shoulder, layers: [wool, wool], length: 12 cm, times: 2}
  - {name: bodice side, layers: [wool, wool], length: 22 cm, times: 2}
  - {name: bodice lining side, layers: [lining, lining], length: 21 cm, times: 2}
  - {name: neck edge, layers: [wool, lining], length: 42 cm, shape: curved, edge: turned}
  - {name: sleeve seam, layers: [sleeve, sleeve], length: 46 cm, times: 2}
  - {name: cuff, layers: [wool, {use: sleeve, fullness: 2.2}, wool], length: 22 cm, times: 2}
  - {name: armhole, layers: [wool, {use: sleeve, fullness: 1.2}, lining], length: 44 cm, times: 2}
  - {name: skirt side, layers: [wool, wool], length: 84 cm, times: 2}
  - {name: waist, layers: [wool, {use: wool, fullness: 2}], length: 68 cm}
  - {name: back closing, layers: [wool, {notion: hook and eye}], length: 58 cm, times: 16}
  - {name: skirt hem, layers: [wool], length: 136 cm, edge: hem}
pieces:
  - {name: skirt, fabric: wool, finished width: 1.36 m, finished height: 84 cm, hem: 6 cm}
"""
FACING = """  - {name: facing to lining, layers: [taffeta, lining], length: 60 cm, shape: curved}
  - {name: sleeve seam,"""


def frock(old: str = "", new: str = "") -> Work:
    """The order of the frock, some words of it changed."""
    assert old in FROCK
    return ordered(FROCK.replace(old, new) if old else FROCK)


def gaps(text: str) -> list[str]:
    """What is told to be missing of a project."""
    garment = garment_of(parse_yaml(text, "p.yaml"), known())
    return [gap.id for gap in told_gaps(Teller(garment, known()))]


@pytest.mark.parametrize("place", ["cuff", "armhole", "waist"])
def test_rows_lie_flat_until_their_edge_is_joined(place: str) -> None:
    """They are stitched while the piece is flat, and drawn up in the step before the joining."""
    found = frock()
    assert "nothing is drawn up yet" in found.tasks[f"gather {place}"].step.does
    drawn = found.order.index(f"draw up {place}")
    assert f"join {place}" == found.order[drawn + 1]
    assert "draw the rows up only now" in found.tasks[f"draw up {place}"].step.does
    assert stands(found, "fit", f"gather {place}", f"draw up {place}")


def test_ease_is_drawn_up_when_the_cap_is_pinned_in() -> None:
    """And steam shrinks it only then."""
    found = frock("{use: sleeve, fullness: 1.2}, lining", "{use: wool, fullness: 1.05}")
    steps = [f"{work} armhole" for work in ("ease", "draw up the ease of", "baste", "join")]
    assert stands(found, *steps)
    assert "leave them flat" in found.tasks["ease armhole"].step.does


def test_a_cord_is_drawn_when_the_edge_is_joined() -> None:
    """The cloth is pushed together on it only then."""
    found = frock("{use: wool, fullness: 2}]", "{use: wool, fullness: 5}]")
    steps = ("zigzag over a cord for waist", "draw up waist", "join waist")
    assert stands(found, *steps)
    assert "push" not in found.tasks[steps[0]].step.does
    assert "push the cloth together" in found.tasks[steps[1]].step.does


def test_work_may_stop_while_the_rows_lie_flat() -> None:
    """What is drawn up is joined in the same sitting; rows that are only stitched wait."""
    firsts = {(c.first, c.second) for c in frock().couples}
    assert ("draw up waist", "join waist") in firsts
    assert "gather waist" not in {first for first, _ in firsts}


def test_darts_of_a_new_pattern_are_tried_on_in_thread() -> None:
    """Where the waist is basted for the fitting, so is all that shapes the bodice above it."""
    for found in (frock(), work(BEE)):
        darts = "baste bodice dart", "fit", "stitch bodice dart", "press bodice dart"
        assert stands(found, *darts)
        assert stands(found, "baste bodice side", "fit", "join bodice side")
        assert "bodice dart" in found.tasks["fit"].step.does


def test_darts_of_a_tried_pattern_are_sewn_at_once() -> None:
    """Nothing of it is left to find out."""
    found = frock("pattern: new", "pattern: tried")
    assert "baste bodice dart" not in found.order
    assert stands(found, "stitch bodice dart", "press bodice dart", "fit")


def test_the_lining_is_sewn_as_the_shell_was_fitted() -> None:
    """A correction is marked on it before it has any holes."""
    found = work(BEE)
    assert stands(found, "fit", "stitch bodice lining dart", "join bodice lining side")
    tried = changed(BEE, "pattern: new", "pattern: tried")
    assert stands(tried, "stitch bodice lining dart", "fit")


def test_the_skirt_is_closed_and_the_back_pinned_for_the_fitting() -> None:
    """What hangs open tells nothing."""
    found = work(BEE)
    assert stands(found, "join skirt side", "press skirt side", "baste waist", "fit")
    assert "pin it shut along the line of centre back zip" in found.tasks["fit"].step.does
    assert "pin it shut along the line of back closing" in frock().tasks["fit"].step.does


def test_nothing_is_cut_off_a_shoulder_before_the_fitting() -> None:
    """Pinked edges wait for it; what is only overcast keeps its whole allowance."""
    assert stands(frock(), "fit", "neaten shoulder")
    whole = work(BEE)
    assert stands(whole, "neaten shoulder", "fit")
    assert "nothing trimmed off" in whole.tasks["neaten shoulder"].step.does


def test_a_lining_of_the_bodice_is_far_from_the_hem_of_the_skirt() -> None:
    """A lining of which nobody says where it ends may hang down to it, and then it is warned of."""

    def near(found: Work) -> set[str]:
        return {name for step, names in found.hot_near for name in names if "hem" in step}

    assert not near(frock())
    assert {"lining"} == near(frock("bodice lining side", "lining side"))
    assert {"lining"} == near(frock("length: 84 cm, times: 2", "length: 20 cm, times: 2"))


def test_a_waist_is_thinned_where_a_zip_is_set_over_it() -> None:
    """Before the zip, and after the fitting; hooks cross no seam in it."""
    found = work(BEE)
    assert stands(found, "fit", "join waist", "thin waist", "set centre back zip")
    assert "centre back zip" in found.tasks["thin waist"].step.does
    assert "thin waist" not in frock().order


def test_a_lining_is_graded_before_it_is_felled_to_the_zip() -> None:
    """No scissors come to its allowances once both of its edges are held."""
    found = changed(BEE, "  - {name: sleeve seam,", FACING)
    assert stands(found, "set facing to lining", "grade facing to lining")
    assert stands(found, "grade facing to lining", "fell the lining to centre back zip")


def test_a_yoke_of_two_layers_is_trimmed_after_a_fitting_to_the_body() -> None:
    """What hangs loosely is not fitted there."""
    close = work("more/ticket_shirt_dress")
    assert stands(close, "join back yoke", "fit", "grade back yoke")
    loose = work("more/lawn_shirt")
    assert stands(loose, "grade yoke", "fit")


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("", "", "60 mm deep"),
        (", hem: 6 cm", "", "4 to 5 cm deep"),
        ("length: 136 cm,", "length: 136 cm, shape: curved,", "2 to 3 cm deep"),
    ],
)
def test_a_hem_is_as_deep_as_it_is_cut(old: str, new: str, told: str) -> None:
    """In every view; on a curve so deep a hem does not lie."""
    assert old in FROCK
    told_places = read(FROCK.replace(old, new) if old else FROCK).seams
    assert told in next(place.made for place in told_places if place.name == "skirt hem")


def test_the_edges_of_a_hooked_back_and_the_darts_of_the_lining_are_asked_for() -> None:
    """Each until it is written."""
    edge = "  - {name: back edge facing, layers: [wool, wool], edge: turned, times: 2}\n"
    dart = "  - {name: bodice lining dart, layers: [lining], times: 4}\n"
    assert {"back-edges-not-finished", "lining-without-darts"} <= set(gaps(FROCK))
    written = FROCK.replace("seams:\n", f"seams:\n{edge}{dart}")
    assert not {"back-edges-not-finished", "lining-without-darts"} & set(gaps(written))
