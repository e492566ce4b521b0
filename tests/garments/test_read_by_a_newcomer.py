"""What a newcomer stumbled over: it stands in what is printed without any option."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from tests.garments.whole import FOLDER
from tests.typed import typed

KIOSK = FOLDER / "more" / "kiosk_tunic.yaml"


@cache
def printed(*words: str) -> str:
    """What a command prints of the tunic, on one line."""
    return " ".join(typed(words[0], str(KIOSK), *words[1:]).out.split())


def changed(folder: Path, old: str, new: str) -> Path:
    """The tunic with some words of its file changed."""
    text = KIOSK.read_text("utf-8")
    assert old in text
    file = folder / "tunic.yaml"
    file.write_text(text.replace(old, new), "utf-8")
    return file


def said(*words: str) -> str:
    """What a command prints, on one line."""
    return " ".join(typed(*words).out.split())


@pytest.mark.parametrize(
    "words", [("sheet",), ("sheet", "--screen"), ("sheet", "--all"), ("check",)]
)
def test_what_had_to_give_way_stands_in_each_view(words: tuple[str, ...]) -> None:
    """The gravest of it: a needle that is fine for the cloth breaks in it."""
    text = printed(*words)
    assert "HAD TO GIVE WAY" in text
    assert "hem frill: body wanted needle at least 90 (US 14); set: needle 70 (US 10)." in text
    assert "wanted thread tex 35 to 105; set: tex 24." in text


def test_nothing_is_said_to_stand_where_it_does_not(tmp_path: Path) -> None:
    """The line that points to a heading is printed where that heading is, and nowhere else."""
    for words in (("check",), ("sheet", "--all")):
        assert "under 'had to give way' below" in printed(*words)
    seams = KIOSK.read_text("utf-8").partition("seams:\n")[2]
    shoulders = "  - {name: shoulder, layers: [body, body], length: 13 cm, times: 2}\n"
    file = changed(tmp_path, seams, shoulders)
    for more in ((), ("--all",), ("--screen",)):
        assert "give way" not in said("sheet", str(file), *more).casefold()
    assert "give way" not in said("check", str(file)).casefold()


def test_a_full_layer_is_told_with_the_length_that_is_cut() -> None:
    """Twice as full as 90 cm is 180 cm, and nobody has to reckon it."""
    cut = "ut frill 180 cm long for 90 cm"
    for words in (("sheet",), ("sheet", "--screen"), ("sheet", "--only", "shopping")):
        assert cut in printed(*words)


@pytest.mark.parametrize(
    ("body", "frill", "warned"),
    [
        ("colour: indigo", "colour: white", "rub the dark one hard with a damp white cloth"),
        ("thickness: 0.8 mm", "colour: pink", "rub the dark one hard with a damp white cloth"),
        ("colour: indigo", "colour: navy", ""),
        ("colour: white", "colour: white", ""),
    ],
)
def test_loose_dye_beside_a_paler_cloth_is_told(
    body: str, frill: str, warned: str, tmp_path: Path
) -> None:
    """Also where nobody says how dark the denim is; and not where all is dark or all is pale."""
    file = changed(tmp_path, "colour: white", frill)
    text = file.read_text("utf-8").replace("colour: pink", frill).replace("colour: indigo", body)
    file.write_text(text, "utf-8")
    sheet = said("sheet", str(file))
    assert (warned in sheet) if warned else ("Loose dye goes" not in sheet)


def test_a_strong_colour_beside_white_is_rubbed_first(tmp_path: Path) -> None:
    """Red beside white runs, whatever the cloth is."""
    file = changed(tmp_path, "{fabric: denim, colour: indigo", "{fabric: poplin, colour: red")
    assert "A strong colour beside a pale one may run" in said("sheet", str(file))


def test_who_wants_an_edge_overlocked_without_an_overlocker_is_told_so(tmp_path: Path) -> None:
    """In a sentence, and as what it is: nothing shows, it cannot be done."""
    file = changed(
        tmp_path, "length: 46 cm, times: 2", "length: 46 cm, times: 2, finish: overlocked"
    )
    text = said("check", str(file))
    assert (
        "side: It will not work. Edge finish: you want overlocked. You have no overlocker." in text
    )
    assert "you asks" not in text
    assert "cone" not in said("sheet", str(file), "--only", "shopping")


def test_an_overlocker_that_is_used_is_no_missing_one(tmp_path: Path) -> None:
    """Who names none and has an edge overlocked has one; thread and order count on it."""
    file = changed(tmp_path, "  overlocker: no\n", "")
    wanted = file.read_text("utf-8").replace(
        "length: 46 cm, times: 2", "length: 46 cm, times: 2, finish: overlocked"
    )
    file.write_text(wanted, "utf-8")
    sheet = said("sheet", str(file))
    assert "your overlocker is not named: taken as four-thread overlocker" in sheet
    assert "taken as no overlocker" not in sheet
    assert "Set overlocker" in said("order", str(file))
    assert "cones for the overlocker" in said("sheet", str(file), "--only", "shopping")


def test_interfacing_is_measured_and_not_counted(tmp_path: Path) -> None:
    """It is no button."""
    file = changed(tmp_path, "interfacing}], length: 60 cm", "interfacing}]")
    text = said("sheet", str(file), "--only", "shopping")
    assert "iron-on interfacing (front interfacing). Buy: measure it, for no length" in text


def test_a_cloth_that_lies_in_no_place_is_told(tmp_path: Path) -> None:
    """It was written down and forgotten, and it rules the last press all the same."""
    file = changed(tmp_path, "seams:\n", "  spare: {fabric: corduroy}\nseams:\n")
    assert "spare lies in no place: it is counted" in said("sheet", str(file))
    assert "lies in no place" not in printed("sheet")
