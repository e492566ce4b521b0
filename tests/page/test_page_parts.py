"""Choosing part by part: what is written, that comments stay, and that each press is undone."""

from __future__ import annotations

from pathlib import Path

import pytest
from starlette.testclient import TestClient

from advisor.knowledge.model import Knowledge
from advisor.textio.editing import edited
from tests.page.conftest import SMALL, client_of
from tests.page.reading import field, root_of, said

PARTS = "/project/bag.yaml/parts"
NOTED = SMALL.replace("seams:", "# my own words\nseams:  # from the top down")


@pytest.fixture
def client(small_folder: Path, known: Knowledge) -> TestClient:
    (small_folder / "bag.yaml").write_text(NOTED, encoding="utf-8")
    return client_of(small_folder, known)


def press(client: TestClient, **form: str) -> int:
    """What comes of a press on the page as it is now."""
    mark = field(client.get(PARTS).text, "mark")
    return client.post(PARTS, data={"mark": mark, **form}).status_code


def test_a_cloth_and_a_place_are_chosen_and_taken_back(
    client: TestClient, small_folder: Path
) -> None:
    """Each is written below what is there, comments and all; taking back restores the file."""
    file = small_folder / "bag.yaml"
    assert 303 == press(client, do="cloth", name="trim", phrase="silk organza")
    assert 303 == press(client, do="place", place="flap", layer1="out", layer2="trim", notion="zip")
    text = file.read_text(encoding="utf-8")
    assert NOTED.splitlines() == [x for x in text.splitlines() if x in NOTED.splitlines()]
    assert text.endswith("  - {name: flap, layers: [out, trim, {notion: zip}]}\n")
    page = client.get(PARTS).text
    assert "out, trim, zip" in said(page)
    assert "Written into the project: flap: out, trim, zip" in said(page)
    assert 303 == press(client, do="cloth", name="trim", phrase="cotton lawn")
    assert "silk" not in file.read_text(encoding="utf-8")
    for away in ({"no-place": "flap"}, {"no-cloth": "trim"}):
        assert 303 == press(client, **away)
    assert NOTED == file.read_text(encoding="utf-8")
    reply = client.post("/project/bag.yaml/undo", data={"back": "parts"})
    assert PARTS == reply.headers["location"]
    assert "trim: cotton lawn" in file.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("form", "words"),
    [
        ({"do": "cloth", "name": "trim", "phrase": "organzza"}, "organza"),
        ({"do": "cloth", "name": "", "phrase": "lawn"}, "what you call the cloth"),
        ({"do": "place", "place": "flap"}, "which cloths lie there"),
        ({"do": "place", "place": "flap", "layer1": "outt"}, "out"),
        ({"do": "place", "place": "side", "layer1": "out"}, "side"),
        ({"no-cloth": "in"}, "in"),
        ({"no-place": "nowhere"}, "there is no place"),
        ({"do": "x"}, "no such change"),
        ({"do": "part"}, "what you call the part"),
        ({"do": "part", "called": "bag", "lies1": "outt"}, "out"),
        ({"do": "place", "place": "rim", "layer1": "out", "length": "30"}, "length"),
        ({"no-part": "bag"}, "there is no part"),
    ],
)
def test_what_makes_no_project_is_refused_with_the_choice_still_there(
    client: TestClient, small_folder: Path, form: dict[str, str], words: str
) -> None:
    """Nothing is written, and what was typed stands in its field."""
    mark = field(client.get(PARTS).text, "mark")
    reply = client.post(PARTS, data={"mark": mark, **form})
    assert 400 == reply.status_code
    alert = next(e for e in root_of(reply.text).iter("div") if e.get("role") == "alert")
    assert words in "".join(alert.itertext())
    assert NOTED == (small_folder / "bag.yaml").read_text(encoding="utf-8")
    for key in set(form) & {"name", "phrase", "place"}:
        assert form[key] == field(reply.text, key)


def test_a_press_on_an_older_page_writes_nothing(client: TestClient, small_folder: Path) -> None:
    """What another page or program wrote meanwhile stays."""
    form = {"mark": field(client.get(PARTS).text, "mark"), "no-place": "side"}
    (small_folder / "bag.yaml").write_text(NOTED + "# later\n", encoding="utf-8")
    assert 400 == client.post(PARTS, data=form).status_code
    assert NOTED + "# later\n" == (small_folder / "bag.yaml").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("a:\n  - {b: 1}  # one\nc: 2\n", "a:\n  - {b: 1}  # one\n  - {b: 2}\nc: 2\n"),
        ("a: [{b: 1}]\n", "a: [{b: 1}, {b: 2}]\n"),
        ("a:\n- b: 1\n  d: 3\n", "a:\n- b: 1\n  d: 3\n- {b: 2}\n"),
        ("a:\r\n  - {b: 1}", "a:\r\n  - {b: 1}\r\n  - {b: 2}"),
    ],
)
def test_an_entry_more_goes_below_the_last(before: str, after: str) -> None:
    """In the shape of the list, its comments and line ends kept."""
    assert after == edited(before, [(("a", 1), {"b": 2})], "x.yaml")


def test_parts_and_the_facts_of_a_place_are_chosen(client: TestClient, small_folder: Path) -> None:
    """A part is written, shown, replaced and taken out; a place gets its kind, length and part."""
    file = small_folder / "bag.yaml"
    cloth = {"name": "trim", "phrase": "silk organza", "colour": "#aa2233", "width": "140 cm"}
    assert 303 == press(client, do="cloth", **cloth)
    assert 'trim: {fabric: silk organza, colour: "#aa2233", width: 140 cm}' in file.read_text()
    part = {"called": "bag", "lies1": "in", "lies2": "out", "free": "in", "fitting": "not at all"}
    assert 303 == press(client, do="part", **part)
    assert "parts: {bag: {layers: [in, out], separate: [in], fitting: not at all}}" in (
        file.read_text()
    )
    assert "bag in, out; separate in; fitting not at all" in said(client.get(PARTS).text)
    about = {"kind": "hem", "length": "30 cm", "shape": "curved", "part": "bag"}
    assert 303 == press(client, do="place", place="rim", layer1="out", **about)
    assert "{name: rim, layers: [out], kind: hem, length: 30 cm, shape: curved, part: bag}" in (
        file.read_text()
    )
    assert 303 == press(client, do="part", called="bag", lies1="out")
    assert "parts: {bag: {layers: [out]}}" in file.read_text()
    assert 400 == press(client, **{"no-part": "bag"})  # a place still belongs to it
    assert 303 == press(client, **{"no-place": "rim"})
    assert 303 == press(client, **{"no-part": "bag"})
    assert 303 == press(client, **{"no-cloth": "trim"})
    assert NOTED == file.read_text(encoding="utf-8")
