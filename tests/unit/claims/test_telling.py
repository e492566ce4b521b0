"""What is told once everything is decided, at real cloths."""

from __future__ import annotations

from typing import Any

from advisor.claims.collect import Fired
from advisor.claims.judgement import Judgement
from advisor.claims.telling import told_lines
from advisor.decide.evaluate import judge
from advisor.project.quick import quick_garment
from tests.typed import shipped as known


def asked(*layers: Any, seam: dict[str, Any] | None = None) -> Judgement:
    return judge(quick_garment(list(layers), known(), seam), known())


def fired(judgement: Judgement, rule: str) -> Fired:
    return next(f for f in judgement.gathered.fired if f.rule.id == rule)


def texts(judgement: Judgement, kind: str) -> str:
    """Every line of a kind that is told, in one text."""
    lines = []
    for one in judgement.gathered.fired:
        said = getattr(one.rule, kind)
        lines += [str(said[i]) for i in told_lines(one, kind, judgement)]
    return " ".join(lines)


def test_nothing_is_pressed_open_where_no_iron_comes() -> None:
    """Vinyl keeps the iron away, and says itself how its seams are held."""
    with_iron, without = asked("boiled wool"), asked("boiled wool", "vinyl")
    assert "Press each seam flat as stitched" in texts(with_iron, "do")
    assert "Press each seam flat as stitched" not in texts(without, "do")
    assert "where no iron may go" in texts(without, "do")


def test_nobody_pins_where_clips_are_told() -> None:
    """Leather is clipped; its own reason is told all the same."""
    leather = asked("leather")
    assert "pin" not in texts(leather, "tests").lower().split()
    assert told_lines(fired(leather, "holes-in-skin-and-film"), "do", leather) == [0]


def test_what_a_machine_does_is_told_where_a_machine_sews() -> None:
    """By hand there is no plate that a needle could strike."""
    plate = "single-hole plate"
    assert plate in texts(asked("silk chiffon"), "do")
    by_hand = asked("silk chiffon", seam={"stitched by": "hand"})
    assert plate not in texts(by_hand, "do")
    assert plate not in texts(by_hand, "cautions")


def test_a_scrap_is_fused_where_a_fusible_is_left() -> None:
    """Poplin takes one; a pile takes none."""
    assert "fusible" in texts(asked("poplin", {"notion": "fusible interfacing"}), "do")
    velvet = asked("silk velvet", {"notion": "fusible interfacing"})
    assert "Fuse" not in texts(velvet, "tests")


def test_an_injury_is_warned_of_while_its_act_can_happen() -> None:
    """A burn is warned of at any iron; where none is used on any seam there is none."""
    assert "hot or cooling iron" in texts(asked("poplin"), "cautions")
    assert "hot or cooling iron" not in texts(asked("vinyl"), "cautions")
