"""A cord at hood or neck of a child's garment strangles: every view says so before all else."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.typed import Done, typed

TOP = """
garment: Pond-dipping top, age five
worn by: child
fitting: loosely
maker: {machine: household, overlocker: 4-thread}
fabrics:
  body: {fabric: sweatshirt knit, fibres: {cotton: 100}, weight: 280 g/m2, width: 160 cm}
  peak: {fabric: laminated cotton, fibres: {cotton: 100}, weight: 200 g/m2, width: 140 cm}
seams:
  - {name: patch pocket, layers: [peak, body], length: 48 cm, shape: corner, stress: high}
  - {name: hood centre, layers: [body, body], length: 42 cm, shape: curved}
  - {name: hood cord, layers: [body, {notion: drawcord}], length: 56 cm}
"""
VIEWS = ("check", "sheet", "order", "iron", "label")


def _typed(folder: Path, text: str, view: str, *words: str) -> Done:
    file = folder / "top.yaml"
    file.write_text(text, encoding="utf-8")
    return typed(view, str(file), *words)


def _out(folder: Path, text: str, view: str, *words: str) -> str:
    return " ".join(_typed(folder, text, view, *words).out.split())


def test_it_is_the_first_conflict_and_hurts(tmp_path: Path) -> None:
    """Before what only shows, with a remedy that was tried."""
    for view in ("check", "sheet"):
        assert "1 hood cord: It hurts you. The project puts drawcord here." in _out(
            tmp_path, TOP, view
        )
    assert "soft elastic instead of the drawcord" in _out(tmp_path, TOP, "check")


def test_every_view_ends_alike(tmp_path: Path) -> None:
    """A garment that clashes nowhere else clashes for the cord, whoever asks."""
    alone = "\n".join(line for line in TOP.splitlines() if "patch pocket" not in line)
    assert {_typed(tmp_path, alone, view).returncode for view in VIEWS} == {1}


def test_the_order_neither_draws_it_in_nor_makes_its_holes(tmp_path: Path) -> None:
    """It says what instead; an adult's is drawn in as ever."""
    child = _out(tmp_path, TOP, "order")
    assert "Draw no cord into hood cord" in child
    assert "knot or stop its ends" not in child
    assert "eyelets or buttonholes of hood cord" not in child
    adult = _out(tmp_path, TOP.replace("child", "adult"), "order")
    assert "Draw the cord through hood cord and knot or stop its ends" in adult


def test_it_is_not_bought_before_that_is_settled(tmp_path: Path) -> None:
    """Neither on the list nor in the few lines of the sheet."""
    for words in ((), ("--only", "shopping")):
        child = _out(tmp_path, TOP, "sheet", *words)
        assert "ot to be bought before number 1 of what can go wrong is settled" in child
        assert "36 cm more for its ends" not in child
    adult = _out(tmp_path, TOP.replace("child", "adult"), "sheet", "--only", "shopping")
    assert "36 cm more for its ends" in adult


@pytest.mark.parametrize(
    ("place", "hurts"),
    [
        ("hood casing", True),
        ("neckline drawstring", True),
        ("drawcord channel", True),  # nobody says where, and it has a hood
        ("waist cord", False),
        ("hem drawcord", False),
    ],
)
def test_where_it_lies_is_read_from_its_name(tmp_path: Path, place: str, hurts: bool) -> None:
    """A cord of which nobody says where it lies is the hood's, where there is one."""
    text = TOP.replace("name: hood cord", f"name: {place}")
    assert (f"{place}: It hurts you" in _out(tmp_path, text, "check")) == hurts


def test_elastic_in_its_place_leaves_no_danger(tmp_path: Path) -> None:
    """The remedy is written, and the clash is gone."""
    assert "knitted elastic" in _out(tmp_path, TOP, "check", "--take", "1")
    after = (tmp_path / "top.yaml").read_text(encoding="utf-8")
    assert "notion: drawcord" not in after
    assert "It hurts you" not in _out(tmp_path, after, "check")


def test_a_lock_is_not_threaded_on_a_cord_that_is_ruled_out(tmp_path: Path) -> None:
    """It clashes by itself, for nothing but a cord runs in it."""
    text = TOP.replace("notion: drawcord}], length: 56 cm", "notion: cord lock}], times: 2")
    assert "1 hood cord: It hurts you" in _out(tmp_path, text, "check")
    order = _out(tmp_path, text, "order")
    assert "Leave hood cord off" in order
    assert "Thread hood cord on the cord" not in order


WAIST = TOP.replace("hood cord", "waist cord").replace("hood centre", "back")
LOCK = "{notion: drawcord}, {notion: cord lock}"


def test_a_lock_on_its_waist_cord_hurts_and_is_left_off(tmp_path: Path) -> None:
    """The cord stays, without a lump at its ends; an adult's lock is threaded on."""
    locked = WAIST.replace("{notion: drawcord}", LOCK)
    assert "It hurts you. The project puts drawcord here. A lock on a child's cord" in _out(
        tmp_path, locked, "check"
    )
    taken = _out(tmp_path, locked, "check", "--take", "1")
    assert "It hurts you" not in taken
    assert "cord lock" not in (tmp_path / "top.yaml").read_text(encoding="utf-8")
    adult = _out(tmp_path, locked.replace("child", "adult"), "check")
    assert "A lock on a child's cord" not in adult


def test_a_lock_with_a_place_of_its_own_is_no_button_afterwards(tmp_path: Path) -> None:
    """Nothing would be left to fasten with: it is told and not turned into something else."""
    alone = WAIST.replace("{notion: drawcord}", "{notion: cord lock}")
    alone = alone.replace("name: waist cord,", "name: waist cord lock, kind: button,")
    told = _out(tmp_path, alone, "check")
    assert "A lock on a child's cord" in told
    assert "Leave the cord lock off" not in told
    assert "Leave waist cord lock off" in _out(tmp_path, alone, "order")
