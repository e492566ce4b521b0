"""What a teacher and a costume maker would not have let pass, and must not come back.

A student's cardigan and cape, and a gown for the stage. All is common practice of the trade.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.claims.collect import Place
from advisor.construction.bulk import picked
from advisor.decide.together import cure_all
from advisor.project.load import load_project
from tests.garments.whole import FOLDER, advice, aspects, known, places, stands, work
from tests.typed import typed

CARDIGAN, CAPE, GOWN = "more/cardigan", "more/boiled_cape", "more/stage_gown"


def test_a_rib_stretched_to_an_edge_is_a_band_and_no_pocket() -> None:
    """Whatever it is called: nothing of a welt of rib is slashed."""
    found = work(CARDIGAN)
    for name in ("rib welt at the bottom", "pocket tops"):
        assert places(found)[name].method.id == "band-stretched-on"
    assert not [step for step in found.tasks if "slash" in step]


def test_a_band_of_an_open_front_is_joined_to_no_ring() -> None:
    """Neck and lower band have two ends there; a cuff has none."""
    does = {task.id: task.step.does for task in work(CARDIGAN).tasks.values()}
    for name in ("neck band", "rib welt at the bottom", "pocket tops"):
        assert f"close the ends of {name}" in does
    assert "to a ring" in does["make up rib cuffs"]


def test_a_lower_band_closes_the_edge_and_comes_after_the_side() -> None:
    """Nothing is levelled and hemmed below it."""
    found = work(CARDIGAN)
    assert stands(found, "join sleeve and side in one", "join rib welt at the bottom")
    assert "hem the lower edge" not in found.tasks
    assert not [step for step in found.tasks if step.startswith("level")]


def test_what_a_sleeve_hangs_from_is_basted_before_it_is_tried_on() -> None:
    """The seam of side and sleeve does not exist before the raglans are joined."""
    found = work(CARDIGAN)
    for raglan in ("front raglan seam", "back raglan seam"):
        assert stands(found, f"baste {raglan}", "baste sleeve and side in one", "fit")


def test_no_glue_is_melted_on_what_does_not_bear_its_heat() -> None:
    """The order says what the sheet says: something is basted in instead."""
    does = {task.id: task for task in work(CARDIGAN).tasks.values()}
    assert not [step for step in does if step.startswith("fuse")]
    assert "interface button band" in does


@pytest.mark.parametrize("place", ["patch pockets"])
def test_what_is_stitched_flat_is_sewn_by_no_overlocker(place: str) -> None:
    """Its knife would cut the pocket off."""
    verdicts = advice(CARDIGAN).judgement.verdicts[Place("seam", place)]
    assert picked(verdicts, "stitch.type") not in ("503", "504", "514", "516")


@pytest.mark.parametrize("place", ["slit corner patch", "toggle leather tabs"])
def test_leather_is_laid_on_with_a_straight_row(place: str) -> None:
    """A zigzag is a line to tear along, and basting leaves its holes."""
    found = work(CAPE)
    assert places(found)[place].method.id == "applique-edge-stitched"
    state = found.tasks[f"stitch on {place}"].step.machine
    verdicts = advice(CAPE).judgement.verdicts[Place("seam", place)]
    assert state is not None
    assert state.stitch == picked(verdicts, "stitch.type") == "301"


def test_nothing_is_offered_to_be_fused_to_velvet() -> None:
    """A clash that stands rules the glue out there, whatever heat the velvet bears."""
    for cures in advice(CAPE).cures.values():
        for cure in cures:
            assert cure.words.get("neighbour") != "collar lining", cure.remedy


@pytest.mark.parametrize("garment", [CARDIGAN, CAPE])
def test_remedies_of_a_file_with_on_are_written(tmp_path: Path, garment: str) -> None:
    """A place that says `on:` and no layers is read where remedies are written."""
    file = tmp_path / "g.yaml"
    file.write_bytes((FOLDER / f"{garment}.yaml").read_bytes())
    done = typed("check", str(file), "--take", "all")
    assert 0 == done.returncode, done.err
    assert not advise_again(file)


def advise_again(file: Path) -> tuple[object, ...]:
    """The conflicts of a file as it is now."""
    from advisor.decide.advise import advise

    return advise(load_project(file, known()), known()).judgement.conflicts


def test_a_backing_is_pressed_before_it_is_basted_to_what_bears_less() -> None:
    """And afterwards nothing on the mounted piece is pressed hotter than its face bears."""
    found = work(GOWN)
    assert stands(found, "hot press coutil", "baste bodice mounting")
    iron = found.tasks["press bone channels"].step.iron
    assert iron is not None
    assert iron.temperature_c <= 110


def test_what_is_laid_on_is_sewn_before_the_bones_go_in() -> None:
    """No machine stitch crosses a bone."""
    found = work(GOWN)
    bone = next(step for step in found.order if found.tasks[step].op == "bone")
    for name in ("lace applique", "sequin motif on the bodice"):
        assert stands(found, f"stitch on {name}", bone, "fit")


def test_feathers_are_sewn_on_when_nothing_is_pressed_any_more() -> None:
    """Heat and steam mat the flues, and a hem is pressed as well."""
    found = work(GOWN)
    assert stands(found, "sew horsehair hem", "last press", "sew on feather neck")


def test_a_full_edge_is_drawn_up_before_it_is_basted() -> None:
    """Four times the waist cannot be basted to it flat."""
    assert work(GOWN).tasks["baste waist"].step.does.startswith("Draw waist up roughly")


def test_a_stone_of_glass_is_no_fibre_of_glass() -> None:
    """It neither splinters in the wash nor is cut with a mask on."""
    judgement = advice(GOWN).judgement
    assert not [f for f in judgement.gathered.fired if f.rule.id == "glass-fibre-splinters"]
    assert "seam.allowance" not in aspects(GOWN, "glass stones")


def test_all_that_clashes_there_can_be_cured() -> None:
    """The cheapest set of remedies leaves nothing."""
    for garment in (CARDIGAN, CAPE, GOWN):
        found = advice(garment)
        assert not found.judgement.conflicts or cure_all(found, known()) is not None, garment
