"""The heat as data, as words, as pictures of letters and as drawings."""

from __future__ import annotations

import json
import xml.etree.ElementTree as ET
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from advisor.answer.heat import LEAST_WAIT_S, with_shorter_remedies
from advisor.answer.model.answer import Answer
from advisor.answer.model.plan import ToldIronSetting
from advisor.answer.model.told import ToldClaim, ToldConflict, ToldLayer, ToldRemedy
from advisor.answer.pipeline import Parts, answer
from advisor.answer.press_clause import minutes, press_clauses, seconds, times_in_words, wait_words
from advisor.project.quick import quick_garment
from advisor.render.heat_picture import at, course, picture
from advisor.render.heat_svg import drawing, nearest_svg
from advisor.render.heat_text import heat_lines, table
from tests.told import heat_answer, heat_row, written
from tests.typed import shipped as known

KEYS = {
    "place",
    "sole_c",
    "cloth",
    "moisture",
    "layers",
    "glue_line",
    "touch_safe_after_s",
}


@cache
def _told(*phrases: str) -> Answer:
    layers = [{"notion": p[1:]} if p.startswith("+") else p for p in phrases]
    garment = quick_garment(list(layers), known())
    return answer(garment, known(), Parts(heat=True, ways=True))


def told(*phrases: str) -> dict[str, Any]:
    """The whole answer to one seam, as it is written."""
    return written(_told(*phrases))


CLASH = ("pure linen suiting 240 g/m2", "nylon organza 30 g/m2")


def clash() -> dict[str, Any]:
    return told(*CLASH)


def way(data: dict[str, Any], name: str) -> dict[str, Any]:
    return next(r for r in data["heat"] if r["way"] == name)


def test_rows_have_the_shape_of_the_contract() -> None:
    """Place, sole, cloth, moisture, layers with bands by second, glue line and touch."""
    rows = json.loads(json.dumps(clash()["heat"]))
    assert rows
    for row in rows:
        assert set(row) >= KEYS
        low, mid, high = row["sole_c"]
        assert low < mid < high
        for layer in row["layers"]:
            assert ["1", "2", "5", "10", "20"] == list(layer["at_s"])
            for band in layer["at_s"].values():
                assert band == sorted(band)
            reached = layer["reaches_limit_s"]
            assert reached is None or len(reached) == 3
    assert rows[0]["way"] == "advised"


def test_the_layers_are_the_project_s_from_the_iron_down() -> None:
    """No press cloth and no board stand among them; turned over, they stand the other way."""
    data = clash()
    names = [x["name"] for x in way(data, "advised")["layers"]]
    assert ["pure linen suiting", "nylon organza"] == names
    assert names[::-1] == [x["name"] for x in way(data, "turned")["layers"]]


def test_no_layer_s_limit_is_above_what_the_report_allows() -> None:
    """The rows carry the limits of the verdicts and never a higher one."""
    data = clash()
    allowed = next(v for v in data["verdicts"] if v["aspect"] == "press.temperature")
    assert allowed["limit"] == min(x["limit_c"] for x in data["heat"][0]["layers"])


def test_a_cloth_delays_and_does_not_protect() -> None:
    """At the mark that linen wants nylon is past its limit, with a cloth as well, only later."""
    data = clash()
    bare = way(data, "wanted")["layers"][1]["reaches_limit_s"]
    laid = way(data, "wanted cloth")["layers"][1]["reaches_limit_s"]
    assert bare[0] < laid[0]
    assert bare[1] < laid[1] < 60.0
    text = " ".join(" ".join(heat_lines(_told(*CLASH))).split())
    assert "A cloth delays, it does not protect: at three dots the nylon organza below" in text
    assert "computed, not measured" in text.lower()


def test_the_kinder_side_keeps_the_tender_layer_from_the_iron() -> None:
    """With linen towards the iron the nylon has more time."""
    side = clash()["heat"][0]["kinder_side"]
    assert (True, "pure linen suiting") == (side["as_laid"], side["iron_on"])
    turned = told("nylon organza 30 g/m2", "pure linen suiting 240 g/m2")["heat"][0]["kinder_side"]
    assert (False, "pure linen suiting") == (turned["as_laid"], turned["iron_on"])


def test_what_is_assumed_and_what_dominates_is_said() -> None:
    """Each layer says what moves it most; a weight not given is named."""
    row = told("pure linen suiting", "nylon organza")["heat"][0]
    assert "weight" in row["assumed"]["pure linen suiting"]
    assert any(x["dominated_by"] for x in row["layers"])


def test_every_source_of_a_row_is_in_the_report() -> None:
    """What the numbers rest on can be looked up."""
    data = clash()
    listed = {s["id"] for s in data["sources"]}
    cited = {s.split(" ")[0] for r in (*data["heat"], *data["cautions"]) for s in r["sources"]}
    assert cited <= listed


def test_hot_metal_is_waited_for_and_never_cleared() -> None:
    """A metal zip asks for a wait; its least end is never nothing."""
    data = told("cotton denim 400 g/m2", "+metal zip")
    wait = data["heat"][0]["touch_safe_after_s"]
    assert wait == sorted(wait)
    assert wait[0] >= LEAST_WAIT_S
    assert wait[2] > 60.0
    texts = " ".join(c["text"] for c in data["cautions"] if c["area"] == "heat")
    assert f"The metal zip stays hot after a press of 10 s: {wait_words(wait)}" in texts
    for word in ("pin", "Steam", "board"):
        assert word in texts


def test_a_fusible_tells_when_its_glue_is_hot() -> None:
    """Need, the maker's time, the setting, the band of seconds, and whose figures they are."""
    phrases = ("cotton lawn 80 g/m2", "+woven fusible interfacing")
    data = told(*phrases)
    glue = data["heat"][0]["glue_line"]
    assert (130.0, 12.0) == (glue["need_c"], glue["maker_s"])
    assert glue["setting_c"] <= 150.0
    assert "maker" in glue["note"]
    assert "Maker's figures" in " ".join(heat_lines(_told(*phrases)))


@pytest.mark.parametrize(
    ("value", "words"),
    [(0.4, "a touch of under a second"), (1.99, "1 s"), (4.9, "4 s"), (12.0, "12 s")],
)
def test_a_time_is_never_rounded_up(value: float, words: str) -> None:
    """Seconds of a press are cut off."""
    assert words == seconds(value)


@pytest.mark.parametrize(
    ("value", "words"), [(10.0, "10 s"), (11.0, "20 s"), (90.0, "90 s"), (121.0, "3 minutes")]
)
def test_a_wait_is_never_rounded_down(value: float, words: str) -> None:
    """Seconds and minutes of waiting are rounded up."""
    assert words == minutes(value)


def shortened(most: float | None, low: float | None = None, high: float | None = None) -> list[str]:
    """The clause of a seam with a computed budget and a rule's dwell."""
    rows = [heat_row(place="hem", way="advised", press_at_most_s=most)]
    ruled = None if high is None and low is None else (low, high)
    return press_clauses(heat_answer(rows, dwell=ruled), "hem")


def test_the_press_line_gets_a_clause_only_where_time_must_be_cut() -> None:
    """Four seconds are said, a minute is not, and a rule that is stricter stays alone."""
    assert ["Computed: short touches, at most 4 s at a time, lift, let cool."] == shortened(4.9)
    assert ["Computed: at most 5 s at a time, lift, let cool."] == shortened(5.9)
    assert [] == shortened(None)
    assert [] == shortened(40.0)
    assert [] == shortened(4.9, 0.0, 4.0)
    here = "Computed: here no more than 4 s at a time, lift, let cool"
    assert [f"{here}."] == shortened(4.9, 0.0, 10.0)
    several = [f"{here}; the rest in several touches."]
    assert several == shortened(4.9, 10.0, 16.0)
    assert [] == press_clauses(heat_answer([]), "hem")


def test_a_touch_too_short_to_count_is_told() -> None:
    """Under two seconds is a touch, unless the setting says that the mark's low end is set."""
    rows = [heat_row(place="hem", way="advised", press_at_most_s=1.2)]
    plain = heat_answer(rows)
    assert ["Computed: under 2 s at a time, so touch and lift, and let cool."] == press_clauses(
        plain, "hem"
    )
    low = ToldIronSetting("hem", "seam", "two dots", True, 140.0, 150.0, 150.0, "two dots, low end")
    assert [] == press_clauses(replace(plain, irons=(low,)), "hem")


ROW = heat_row(
    place="hem",
    way="advised",
    mark="two dots",
    wanted_by=[],
    cloth=None,
    moisture="dry",
    sole_c=[105.0, 130.0, 155.0],
    layers=[
        {
            "name": "shell",
            "limit_c": 200.0,
            "reaches_limit_s": None,
            "dominated_by": None,
            "at_s": {
                "1": [50.2, 60.0, 70.1],
                "2": [60.0, 70.0, 80.0],
                "5": [80.0, 90.0, 99.0],
                "10": [90.0, 100.0, 110.0],
                "20": [100.0, 110.0, 120.0],
            },
        },
        {
            "name": "net",
            "limit_c": 80.0,
            "reaches_limit_s": [8.0, 15.0, None],
            "dominated_by": None,
            "at_s": {
                "1": [20.0, 22.0, 24.0],
                "2": [22.0, 25.0, 30.0],
                "5": [30.0, 40.0, 50.0],
                "10": [50.0, 60.0, 85.0],
                "20": [70.0, 100.0, 110.0],
            },
        },
    ],
)


def test_the_table_rounds_outwards() -> None:
    """The least is cut off, the most rounded up, and a limit that is met says when."""
    head, shell, net = table(ROW, "metric")
    assert " ".join(head.split()) == "°C after 1 s 2 s 5 s 10 s 20 s at its limit"
    assert shell.split()[:3] == ["a", "shell", "50-60-71"]
    assert shell.endswith("not in 60 s")
    assert net.endswith("8-15-60+ s")
    assert "122-140-159" in table(ROW, "us")[1]


def test_the_picture_is_read_without_colour() -> None:
    """A letter a layer, a capital past its limit, a line of dashes at the limit in sight."""
    lines = picture(ROW, "metric")
    drawn = "\n".join(lines)
    assert "limit b 80 °C" in drawn
    assert "limit a" not in drawn
    assert "B" in drawn.split("a shell")[0]
    assert "A" not in drawn.split("a shell")[0]
    assert max(map(len, lines)) <= 96


def test_the_course_starts_in_the_room_and_is_straight_between() -> None:
    """20 °C at first, and half way between two computed seconds half way between their degrees."""
    points = course(ROW.layers[1])
    assert (0.0, 20.0) == points[0]
    assert at(points, 15.0) == pytest.approx(80.0)
    assert at(points, 99.0) == 100.0


def test_the_drawing_is_sound_and_says_itself_in_words() -> None:
    """One svg, well formed, with title and description, a line and a band for each layer."""
    drawn = ET.fromstring(drawing(ROW, "hem"))
    spaces = {"s": "http://www.w3.org/2000/svg"}
    assert len(drawn.findall("s:polyline", spaces)) == len(drawn.findall("s:polygon", spaces)) == 2
    assert "net at 100 (70 to 110) after 20 s, limit 80 °C, reached after 8 s at the soonest" in (
        drawn.findtext("s:desc", "", spaces)
    )
    assert "limit b 80 °C" in [t.text for t in drawn.findall("s:text", spaces)]
    assert nearest_svg([]) == ""


def test_the_printed_sheet_draws_the_row_soonest_at_a_limit_and_no_unused_mark() -> None:
    """Of three rows the soonest that may be used is drawn; where none is near, nothing is."""
    plain = next(row for row in _told(*CLASH).heat or () if row.way == "bare")
    rows = [
        replace(plain, place="late", wanted_by=(), press_at_most_s=9.0),
        replace(plain, place="soon", wanted_by=(), press_at_most_s=4.0),
        replace(plain, place="unused", wanted_by=("linen",), press_at_most_s=1.0),
    ]
    assert (ET.fromstring(nearest_svg(rows))[0].text or "").startswith("soon:")
    assert "" == nearest_svg([replace(plain, press_at_most_s=None)])


def test_the_names_in_a_drawing_are_escaped() -> None:
    """A place is called whatever its maker likes."""
    drawn = drawing(ROW, "cuff <left>")
    assert "cuff &lt;left&gt;" in drawn
    assert "<left>" not in drawn


def test_a_harmless_place_is_one_paragraph_and_no_leave() -> None:
    """Where nothing comes near a limit no table is printed, and the limits still stand."""
    calm = replace(ROW, layers=ROW.layers[:1])
    hot = replace(ROW, place="cuff", press_at_most_s=8.0, limited_by="net")
    data = heat_answer([calm, hot], places={"hem": ("shell", "net"), "cuff": ("shell", "net")})
    text = "\n".join(heat_lines(data))
    calm_part = text.split("  hem: shell")[1].split("\n\n")[0]
    assert "the limits and the times of the" in calm_part
    assert "°C after" not in calm_part
    assert "At most 8 s at a time: then net may be at its limit." in text


def test_a_remedy_that_keeps_the_iron_on_says_how_long() -> None:
    """Pressing earlier or softer shortens the press where the model says so; others stay."""
    ids = (("press-before-joining", True), ("sew-in-instead", False))
    remedies = tuple(ToldRemedy("Do.", id=i, earlier=early, then="So.") for i, early in ids)
    conflict = ToldConflict(
        number=1,
        id="x",
        aspect="press.temperature",
        aspects=("press.temperature",),
        place="hem",
        places=("hem",),
        scope="seam",
        severity="damage",
        between=(),
        message="It clashes.",
        because=(),
        remedies=remedies,
    )
    (after,) = with_shorter_remedies((conflict,), (replace(ROW, press_at_most_s=4.9),))
    first, second = after.remedies
    assert [4.9, None] == [first.press_at_most_s, second.press_at_most_s]
    assert first.then == "So. At most 4 s at a time (computed, not measured)."
    assert second.then == "So."


def test_a_clash_of_the_heat_says_what_was_computed() -> None:
    """The glue's need, the setting and the temperature that it comes to, as computed."""
    data = told(
        "pure wool coating 500 g/m2", "+woven fusible interfacing", "pure wool coating 500 g/m2"
    )
    message = next(c["message"] for c in data["conflicts"] if "the glue of the" in c["message"])
    assert "it wants 130 °C, and with the iron at 150 °C" in message
    assert message.endswith("(computed, not measured).")


def test_steam_without_a_press_cloth_is_compared_dry() -> None:
    """Both sides of the comparison are dry, the one bare and the other through a named cloth."""
    text = " ".join(" ".join(heat_lines(_told("cotton chambray 140 g/m2"))).split())
    assert "with (cotton cloth, dry)" in text
    assert "None" not in text


def test_no_heat_no_section() -> None:
    """Where no iron touches anything, nothing is said."""
    assert [] == heat_lines(heat_answer([]))


def test_the_seconds_of_a_glue_are_for_fusing_and_not_for_the_seam() -> None:
    """It is fused to the flat piece, so no touch of the seam has to be as long."""
    plain = heat_answer([heat_row(place="hem", way="advised", press_at_most_s=6.4)])
    (dwell,) = heat_answer([], dwell=(10.0, 16.0)).verdicts
    claim = ToldClaim("web", "10 to 16 s", "should", "", "", True, (), ())
    for kind, word in (("fusible", "once it is fused, at most 6 s"), ("cloth", "several touches")):
        layer = ToldLayer("web", "web", kind, {}, (), None, "web", ())
        answer = replace(plain, layers=(layer,), verdicts=(replace(dwell, because=(claim,)),))
        (text,) = press_clauses(replace(answer), "hem")
        assert word in text


def test_words_for_times() -> None:
    """Bands of seconds as a maker reads them; never rounded up."""
    assert times_in_words((2.04, 3.96, 5.5)) == "about 3 s (2 to 5)"
    assert times_in_words((1.27, 6.0, None)) == "about 6 s (1.2 or longer)"
    assert times_in_words((40.0, None, None)) == "40 s at the soonest"
    assert times_in_words(None) == "not within a minute"
