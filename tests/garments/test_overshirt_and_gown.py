"""A lined yoke, a flap, a glue on a pile, bands at a neck: found wrong by a reader of two orders.

What is right instead is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.order.work import Work
from tests.garments.whole import FOLDER, advice, aspects, changed, ordered, stands, work

SHIRT, GOWN = "more/ferry_overshirt", "more/bellringer_gown"
DRAWN = "draw up back to yoke"


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


def _said(found: Work, step: str) -> str:
    return found.tasks[step].step.does


def test_a_binding_of_the_neck_takes_in_the_ends_of_the_bands() -> None:
    """So they are on, graded and pressed before; their lower ends wait for the hem."""
    steps = ("join front bands", "grade front bands", "press front bands", "join neck", "sew hem")
    assert stands(work(GOWN), *steps, "close the ends of front bands")


def test_what_is_gathered_is_drawn_up_to_a_length() -> None:
    """That of the other edge, in figures where the project has it."""
    assert "draw the rows up only now, to 44 cm, and spread" in _said(work(GOWN), DRAWN)
    unsaid = changed(GOWN, "yoke lining], length: 44 cm", "yoke lining]")
    assert "only now, to the length of the other" in _said(unsaid, DRAWN)


def test_the_head_of_a_sleeve_is_not_stayed() -> None:
    """It has to ease; the armhole that it is set into is stayed, and so is a neck."""
    assert "not the head of a sleeve" in _said(work(GOWN), "stay-stitch sleeve head")
    assert "head of a sleeve" not in _said(work(GOWN), "stay-stitch neck")


def _pocketed(layers: str) -> Work:
    """The gown with a pocket on it."""
    side = "  - {name: side,"
    leather = "  hide: {fabric: lamb nappa, weight: 500 g/m2}\nseams:\n"
    row = f"  - {{name: patch pocket, layers: [{layers}], length: 44 cm, shape: corner}}\n{side}"
    text = (FOLDER / f"{GOWN}.yaml").read_text(encoding="utf-8")
    text = text.replace("seams:\n", leather).replace(side, row)
    return ordered(text)


@pytest.mark.parametrize("layers", ["twill, hide", "hide, twill"])
def test_a_pocket_of_leather_is_turned_by_no_iron(layers: str) -> None:
    """It is cut to size, whichever layer is written first; one of twill is turned under."""
    found = _pocketed(layers)
    assert stands(found, "cut out patch pocket", "stitch on patch pocket")
    assert "turn under patch pocket" not in found.tasks
    assert "turn under patch pocket" in _pocketed("twill, twill").tasks


def test_edges_are_turned_at_the_heat_of_the_gentler_cloth_where_nothing_tells_them_apart() -> None:
    """Both are found in other places, so either may be the pocket."""
    loose = _pocketed("twill, band").tasks["turn under patch pocket"].step.iron
    twill = _pocketed("twill, twill").tasks["turn under patch pocket"].step.iron
    assert loose is not None
    assert twill is not None
    assert loose.temperature_c <= twill.temperature_c
    assert "needle board" == loose.surface != twill.surface
