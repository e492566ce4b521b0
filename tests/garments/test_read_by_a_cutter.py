"""What a cutter found wrong when six more garments were read from the first line to the last.

A lined skirt, a shirt, a bias gown with an underlined bodice, a child's raincoat, a corset and a
bagged cape. Each test is a relation that such a garment has to keep; all are common practice of
the trade.
"""

from __future__ import annotations

import pytest

from advisor.claims.collect import Place
from advisor.construction.finishing import finishing_of
from advisor.decide.usedup import used_up
from advisor.order.steps import MachineState
from advisor.project.garment import Seam
from tests.garments.whole import advice, changed, places, stands, work

SKIRT, SHIRT, GOWN = "more/lined_skirt", "more/shirt", "more/bias_gown"
RAINCOAT, CORSET, CAPE = "more/child_raincoat", "more/corset", "more/cape"
ALL = (SKIRT, SHIRT, GOWN, RAINCOAT, CORSET, CAPE)


def picked(garment: str, place: str, aspect: str, scope: str = "seam") -> str:
    """The word that was picked for a place."""
    found = advice(garment).judgement.verdicts[Place(scope, place)][aspect]
    return "" if found.pick is None else found.aspect.words[int(found.pick)]


def seam(garment: str, name: str) -> Seam:
    """A place as it was read."""
    return next(s for s in advice(garment).judgement.garment.seams if s.name == name)


@pytest.mark.parametrize("garment", ALL)
def test_nothing_chases_itself_and_nothing_clashes(garment: str) -> None:
    """Six ordinary garments: no circle in the order, and no conflict that is none."""
    assert () == work(garment).cycles
    assert () == advice(garment).judgement.conflicts


@pytest.mark.parametrize("garment", ALL)
def test_the_allowance_has_room_for_the_finish(garment: str) -> None:
    """What is cut and what the finish needs is one number wherever nobody fixed another."""
    judgement = advice(garment).judgement
    for each in judgement.garment.seams:
        verdicts = judgement.verdicts[Place("seam", each.name)]
        found = finishing_of(each, judgement.garment, verdicts)
        assert found is None or found.own or found.short <= 0, each.name


@pytest.mark.parametrize(
    ("garment", "place"),
    [(SKIRT, "side"), (SKIRT, "lining side"), (GOWN, "bodice side"), (CORSET, "panel")],
)
def test_a_lining_covers_plain_seams(garment: str, place: str) -> None:
    """No French seam and no bound edge lies between a shell and its lining."""
    assert "yes" == seam(garment, place).facts["lined"]
    assert "lined" in seam(garment, place).assumed
    assert picked(garment, place, "seam.kind") in ("plain", "double-stitched")
    assert picked(garment, place, "seam.finish") in ("zigzag", "hand overcast", "pinked")


def test_what_hangs_below_its_lining_is_not_covered() -> None:
    """The lining of a bodice ends long before the bias skirt does; its edges are shut in.

    Where the zip lies in the side itself, no allowance there can be turned into a French seam.
    """
    assert "lined" not in seam(GOWN, "skirt side").facts
    behind = changed(GOWN, "{name: side zip,", "{name: centre back zip,")
    assert "french-seam" == places(behind)["skirt side"].method.id
    assert "plain" == picked(GOWN, "skirt side", "seam.kind")


def test_a_project_may_say_that_it_is_not_lined() -> None:
    """What is said goes before what is inferred."""
    said = changed(SKIRT, "{name: side,", "{name: side, lined: no,")
    assert "no" == places(said)["side"].seam.facts["lined"]


def test_a_shirt_is_built_flat() -> None:
    """The yoke takes the body between its layers; side and sleeve are one run."""
    found = work(SHIRT)
    made = [places(found)[name].method.id for name in ("yoke", "shoulder")]
    assert ["yoke-enclosed", "shoulder-into-a-yoke"] == made
    assert "collar-with-stand" == places(found)["collar stand"].method.id
    assert stands(found, "join yoke", "join shoulder", "join the stand of collar stand")
    assert stands(found, "turn collar edge", "join the stand of collar stand")
    assert stands(found, "baste side and sleeve", "fit", "join armhole", "join side and sleeve")
    assert stands(found, "fell armhole", "join side and sleeve", "join cuff")


def test_an_underlining_is_basted_once() -> None:
    """A backing that has a place of its own is not basted to its pieces a second time."""
    found = work(GOWN)
    assert "baste organza" not in found.tasks
    assert stands(found, "baste bodice underlining", "stitch bust dart")
    assert "French" != picked(GOWN, "waist", "seam.kind")


def test_a_curved_edge_turned_to_its_lining_is_clipped() -> None:
    """Neck and armholes are graded and clipped before they are turned."""
    steps = ("set", "grade", "understitch", "turn")
    assert stands(work(GOWN), *(f"{verb} neck and armhole to lining" for verb in steps))


@pytest.mark.parametrize("garment", [GOWN, SKIRT])
def test_one_foot_for_a_zip(garment: str) -> None:
    """The order takes the foot that the sheet names."""
    name = next(n for n, p in places(work(garment)).items() if p.kind.id == "zip")
    machine = work(garment).tasks[f"set {name}"].step.machine
    assert isinstance(machine, MachineState)
    assert picked(garment, name, "machine.foot") == machine.foot


def test_silk_is_prepared_as_it_is_cleaned() -> None:
    """01 MUST 2: what will be washed, be it ever so gently, is not only steamed before."""
    care = advice(GOWN).judgement.verdicts[Place("garment", "Moth-watcher's gown")]["care.wash"]
    assert care.pick is not None
    assert "do not wash" != care.aspect.words[int(care.pick)]
    for name in ("satin", "organza", "lining"):
        assert picked(GOWN, name, "prepare.preshrink", "fabric") != "steam"


def test_a_vent_is_no_slit() -> None:
    """A skirt's vent follows the seam above it; nothing is slashed or bound."""
    found = work(SKIRT)
    assert "vent-lapped" == places(found)["back vent"].method.id
    assert stands(found, "join centre back", "clip back vent", "sew hem")


def test_a_raincoat_keeps_its_holes_shut() -> None:
    """A reflective strip and a pocket are laid on, and their rows are sealed from behind."""
    found = work(RAINCOAT)
    assert "ribbon" == places(found)["reflective strip"].kind.id
    assert stands(found, "stitch on patch pocket", "seal patch pocket")
    assert stands(found, "stitch on reflective strip", "seal reflective strip")


def test_elastic_in_a_casing_minds_no_stitch() -> None:
    """It runs loose there, so the row is sewn as the cloth asks, straight."""
    assert "301" == picked(RAINCOAT, "hood edge casing", "stitch.type")


def test_a_hood_is_not_tried_on_and_side_and_sleeve_come_after_the_raglan() -> None:
    """The hood is made up by itself; the raglan seams lie flat until the sides are closed."""
    found = work(RAINCOAT)
    assert "clip hood centre" not in found.tasks
    assert stands(found, "seal raglan", "join side and sleeve", "stitch sleeve casing")


def test_a_corset_has_a_busk_and_metal_eyelets() -> None:
    """The busk is set, not slid in; `notion: eyelet` is metal, never embroidered cloth."""
    found = work(CORSET)
    assert "grommet" == advice(CORSET).judgement.garment.cloths["eyelet"].entry
    assert stands(found, "join panel", "join bone channels", "insert bones in bone channels")
    assert "insert bones in busk" not in found.tasks
    assert stands(found, "stitch down top binding", "set lacing eyelets")


def test_a_bagged_edge_is_graded_before_it_is_turned() -> None:
    """Clip and grade while scissors still reach."""
    steps = ("bag", "grade", "turn through", "close the opening of")
    assert stands(work(CAPE), *(f"{verb} bag the lining" for verb in steps))


def test_a_twin_needle_is_bought_once() -> None:
    """A hem of two rows calls for the needle that sews them, however many hems there are."""
    leggings = "more/leggings"
    needs = used_up(advice(leggings).judgement.garment, work(leggings).methods)
    twin = [need for need in needs if "twin needle" in need.item]
    assert [1] == [need.number for need in twin]
