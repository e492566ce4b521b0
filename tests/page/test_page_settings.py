"""Settings of a project: what is written, that the rest stays, and that each press is undone."""

from __future__ import annotations

from pathlib import Path

import pytest
from starlette.testclient import TestClient

from advisor.knowledge.model import Knowledge
from advisor.page.desk import Desk
from tests.page.conftest import SMALL, client_of
from tests.page.reading import field, root_of, said

SETTINGS = "/project/bag.yaml/settings"
NOTED = SMALL.replace("fabrics:", "# hers\nfabrics:  # bought in spring", 1)
FULL = NOTED.replace(
    "# hers", "worn by: child  # a gift\nmaker: {machine: industrial, feet: [zip foot]}\n# hers"
)


@pytest.fixture
def client(small_folder: Path, known: Knowledge) -> TestClient:
    (small_folder / "bag.yaml").write_text(NOTED, encoding="utf-8")
    return client_of(small_folder, known)


def chosen(page: str) -> dict[str, str]:
    """What the form holds, as a browser would send it."""
    held: dict[str, str] = {}
    for element in root_of(page).iter():
        name = str(element.get("name"))
        if element.tag == "select":
            held[name] = next(str(o.get("value")) for o in element if o.get("selected"))
        elif element.get("type") == "checkbox" and element.get("checked"):
            held[name] = "yes"
    return {**held, "foot lift": field(page, "foot lift"), "mark": field(page, "mark")}


def press(client: TestClient, **form: str) -> int:
    """What comes of a press on the page as it is now, with a few choices changed."""
    now = chosen(client.get(SETTINGS).text)
    sent = {**now, **{key.replace("_", " "): value for key, value in form.items()}}
    return client.post(
        SETTINGS, data={k: v for k, v in sent.items() if v != "unticked"}
    ).status_code


def test_settings_are_written_read_again_and_taken_back(
    client: TestClient, small_folder: Path
) -> None:
    """Only what was changed is written; comments stay; the last press is undone."""
    file = small_folder / "bag.yaml"
    assert 303 == press(client)
    assert NOTED == file.read_text(encoding="utf-8")
    assert 303 == press(client, units="us", worn_by="child", machine="household", foot_zip="yes")
    text = file.read_text(encoding="utf-8")
    assert NOTED.splitlines() == [x for x in text.splitlines() if x in NOTED.splitlines()]
    assert {"units: us", "worn by: child"} <= set(text.splitlines())
    page = client.get(SETTINGS).text
    assert "Written into the project: units: us; worn by: child" in said(page)
    now = chosen(page)
    assert ("us", "child", "household", "yes") == (
        *(now[key] for key in ("units", "worn by", "machine", "foot zip")),
    )
    reply = client.post("/project/bag.yaml/undo", data={"back": "settings"})
    assert SETTINGS == reply.headers["location"]
    assert NOTED == file.read_text(encoding="utf-8")


def test_what_stands_in_the_file_is_shown_changed_and_taken_out(
    client: TestClient, small_folder: Path
) -> None:
    """Words said in another way are recognised; nothing of the maker left takes her away."""
    file = small_folder / "bag.yaml"
    file.write_text(FULL, encoding="utf-8")
    assert 303 == press(client)
    assert FULL == file.read_text(encoding="utf-8")
    assert 303 == press(client, foot_lift="7 mm", overlocker="no")
    assert "foot lift: 7 mm" in file.read_text(encoding="utf-8")
    assert 303 == press(client, foot_lift="", overlocker="", machine="", foot_zip="unticked")
    left = file.read_text(encoding="utf-8")
    assert "maker" not in left
    assert "worn by: child  # a gift" in left


@pytest.mark.parametrize(
    ("form", "words"),
    [
        ({"foot_lift": "7"}, "foot lift"),
        ({"machine": "treadle"}, "treadle"),
        ({"fitting": "sometimes"}, "to the body"),
        ({"mark": "older"}, "changed"),
    ],
)
def test_what_is_no_setting_is_refused_and_nothing_is_written(
    client: TestClient, small_folder: Path, form: dict[str, str], words: str
) -> None:
    """The form stays as it was filled in."""
    now = chosen(client.get(SETTINGS).text)
    sent = {**now, **{key.replace("_", " "): value for key, value in form.items()}, "units": "us"}
    reply = client.post(SETTINGS, data=sent)
    assert 400 == reply.status_code
    alert = next(e for e in root_of(reply.text).iter("div") if e.get("role") == "alert")
    assert words in "".join(alert.itertext())
    assert "us" == chosen(reply.text)["units"]
    assert NOTED == (small_folder / "bag.yaml").read_text(encoding="utf-8")


def test_settings_are_shown_without_an_answer(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The page shows what the file says, so nothing of the garment is decided for it."""
    asked: list[object] = []
    monkeypatch.setattr(Desk, "answer", lambda _, read: asked.append(read))
    assert 200 == client.get(SETTINGS).status_code
    assert [] == asked
