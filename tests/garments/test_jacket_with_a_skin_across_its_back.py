"""A tailored jacket of flannel with a piece of skin across its back, canvas, pads and a lining.

All is common practice of the trade.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.order.missing import missing
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, changed, known, ordered, read, stands, work

JACKET = "more/ropewalk_jacket"


def text_of() -> str:
    """What the maker wrote."""
    return Path(FOLDER / f"{JACKET}.yaml").read_text(encoding="utf-8")


def said(found: Work, step: str) -> str:
    """The sentence of a step."""
    return found.tasks[step].step.does


def test_a_cap_is_drawn_up_to_an_armhole_that_is_there() -> None:
    """Its shoulder and side are joined; shrunk out of the armhole, it takes damp for any skin."""
    found = work(JACKET)
    cap = ("draw up the ease of armhole", "shrink the ease of armhole", "baste armhole")
    assert stands(found, "join shoulder", "join side", *cap, "join armhole")
    near = {name for name, _ in (*found.hot_near, *found.damp_near)}
    assert cap[1] not in near
    assert "press side" in near
    assert "shoulder pads pinned in" in said(found, "baste armhole")


def test_a_sleeve_is_hemmed_once_it_hangs_and_is_pressed_before_its_lining() -> None:
    """Wool takes the damp cloth that the lining, which is felled afterwards, would not."""
    found = work(JACKET)
    steps = ("fit", "join armhole", "sew sleeve hem", "press sleeve hem")
    assert stands(found, *steps, "fell the lining at sleeve hem")
    for hem in ("press sleeve hem", "press jacket hem"):
        iron = found.tasks[hem].step.iron
        assert iron is not None
        assert iron.moisture == "damp cloth"


@pytest.mark.parametrize("name", ["rider to back", "yoke to back"])
def test_a_skin_across_the_back_is_clipped_for_the_fitting(name: str) -> None:
    """Its holes stay: it is sewn once, after the fitting, and before the back is closed in."""
    found = changed(JACKET, "rider to back", name)
    steps = (f"clip {name}", "fit", f"join {name}", f"topstitch {name}", "join shoulder")
    assert stands(found, *steps, "join side", "join armhole")
    pinked = next(step for step in found.order if step.startswith("neaten") and name in step)
    assert "hide left as it is cut" in said(found, pinked)


def test_the_tape_lies_over_the_canvas_and_a_front_with_canvas_is_not_understitched() -> None:
    """A lapel may turn there, and above its break the row would be seen."""
    found = work(JACKET)
    assert stands(found, "pad front canvas", "trim front canvas", "tape front edge", "join side")
    assert "over the trimmed edge of the canvas" in said(found, "tape front edge")
    assert "understitch front edge" not in found.order
    lines = [line for line in text_of().splitlines() if "name: front canvas" not in line]
    assert "understitch front edge" in ordered("\n".join(lines)).order


def test_melton_has_a_nap_and_no_pile() -> None:
    """It comes in no later for that, and is told as no velvet."""
    reasons = {p.why for p in work(JACKET).graph.precedences}
    assert not [reason for reason in reasons if "pile of under" in reason]
    assert "Velvet is hung up" not in repr(read(text_of()))


def test_a_lining_hangs_nothing_on_a_front() -> None:
    """Pockets wait for the shoulder of the shell alone, and what a pocket holds is in already."""
    found = work(JACKET)
    pockets = [p for p in found.graph.precedences if "pocket" in p.before]
    assert not [p for p in pockets if p.after == "join lining shoulder" and "hangs" in p.why]
    assert "hide is not in yet" in said(found, "hot press serge")


def test_buttons_for_show_need_no_hole_by_their_method() -> None:
    """Others are asked for their holes once."""
    asked = text_of().replace(", method: button for show", "")
    for text, times in ((text_of(), 0), (asked, 1)):
        gaps = missing(garment_of(parse_yaml(text, "p.yaml"), known()), known())
        assert [gap.place.name for gap in gaps].count("cuff buttons") == times


def test_a_welt_is_made_up_and_a_hole_tried_first() -> None:
    """A welt has no seam to roll inside."""
    found = work(JACKET)
    assert "fold it, press it by itself" in said(found, "stitch the welt of chest welt pocket")
    assert "press the welt and the ends of the slit flat" in said(found, "turn chest welt pocket")
    assert "trial of the same layers" in said(found, "work front buttonholes")
