"""A lined yoke, a flap and a glue on a pile: what a shirt maker found wrong, as common practice."""

from __future__ import annotations

from advisor.order.work import Work
from tests.garments.whole import advice, aspects, changed, stands, work

SHIRT = "more/ferry_overshirt"


def _beds(found: Work) -> set[str]:
    """What lies under the pieces that are fused."""
    fused = (task.step for task in found.tasks.values() if task.op == "fuse")
    return {step.iron.surface for step in fused if step.iron is not None}


def test_no_glue_is_pressed_onto_a_pile_that_lies_on_a_hard_board() -> None:
    """Its own sheet forbids the board; a plain cloth is fused on a firm bed all the same."""
    assert {"needle board"} == _beds(work(SHIRT))
    assert {"hard board"} == _beds(changed(SHIRT, "shell: needlecord", "shell: cotton poplin"))


def test_edges_that_a_yoke_shuts_in_are_not_neatened() -> None:
    """Nor is a finish told for them; the sides have one."""
    for place in ("back yoke", "shoulder"):
        assert "turned" == next(
            s.facts["edge"] for s in advice(SHIRT).judgement.garment.seams if s.name == place
        )
        assert "seam.finish" not in aspects(SHIRT, place)
    assert "seam.finish" in aspects(SHIRT, "side")


def test_a_flap_is_sewn_on_above_its_patch_pocket() -> None:
    """When it is made up and the pocket is on, and before the side closes the piece."""
    steps = ("turn pocket flap", "sew on pocket flap", "join side")
    assert stands(work(SHIRT), *steps)
    assert stands(work(SHIRT), "stitch on chest pocket", "sew on pocket flap")


def test_a_flap_that_a_slit_takes_in_is_not_sewn_on_by_itself() -> None:
    """The upper row of the welt holds it."""
    found = changed(SHIRT, "name: chest pocket", "name: welt pocket")
    assert stands(found, "turn pocket flap", "lay the flap at welt pocket")
    assert "sew on pocket flap" not in found.tasks
