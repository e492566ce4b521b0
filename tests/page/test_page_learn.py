"""What she keeps of her own on the page: written as by the command, and used at once."""

from __future__ import annotations

from pathlib import Path

import pytest
from starlette.testclient import TestClient

from advisor.knowledge.model import Knowledge
from tests.page.conftest import client_of
from tests.page.reading import root_of, said

LEARN = "/learn"


@pytest.fixture
def own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Her own folder, which is not there yet."""
    monkeypatch.setenv("ADVISOR_OWN", str(tmp_path / "own"))
    return tmp_path / "own"


@pytest.fixture
def client(own: Path, small_folder: Path, known: Knowledge) -> TestClient:
    return client_of(small_folder, known)


def test_a_cloth_is_kept_tried_and_answered_from(client: TestClient, own: Path) -> None:
    """Her cloth is understood in a question at once, and so is what she found on it."""
    assert 400 == client.get("/ask?cloths=moss+stuff").status_code
    form = {"form": "cloth", "name": "moss stuff", "like": "silk velvet 280 g/m2", "also": ""}
    assert f"{LEARN}?done=cloth" == client.post(LEARN, data=form).headers["location"]
    assert "It is kept" in said(client.get(f"{LEARN}?done=cloth").text)
    assert 200 == client.get("/ask?cloths=moss+stuff").status_code
    before = said(client.get("/ask?cloths=moss+stuff").text)
    form = {"form": "result", "of": "moss stuff", "good": "needle.size=65", "note": "no holes"}
    assert 303 == client.post(LEARN, data=form).status_code
    after = said(client.get("/ask?cloths=moss+stuff").text)
    assert before != after
    assert "needle 65" in after
    text = (own / "fabrics" / "moss-stuff.yaml").read_text("utf-8")
    assert "good: {needle.size: 65}" in text
    assert "moss stuff" in said(client.get(LEARN).text).split("What you have kept")[1]
    again = client.post(LEARN, data={"form": "cloth", "name": "moss stuff", "like": "lawn"})
    assert 400 == again.status_code
    assert "already" in said(again.text)
    assert text == (own / "fabrics" / "moss-stuff.yaml").read_text("utf-8")


def test_a_reel_is_kept(client: TestClient, own: Path) -> None:
    """It stands among what is kept, in her own folder and nowhere else."""
    form = {"form": "thread", "name": "navy", "colour": "#1b2a4a", "size": "tex 27"}
    assert 303 == client.post(LEARN, data=form).status_code
    assert "thread: navy" in said(client.get(LEARN).text)
    assert ["threads.yaml"] == sorted(p.name for p in own.iterdir())


@pytest.mark.parametrize(
    ("form", "words"),
    [
        ({"form": "cloth", "name": "x y", "like": "organzza"}, "organza"),
        ({"form": "cloth", "name": "--", "like": "lawn"}, "makes no name"),
        ({"form": "result", "of": "x", "good": "needle.size=70"}, "no cloth of yours yet"),
        ({"form": "result", "of": "x", "like": "lawn"}, "at least one setting"),
        ({"form": "result", "of": "x", "like": "lawn", "good": "needle.siz=70"}, "needle.size"),
        ({"form": "thread", "name": "navy", "size": "texx 27"}, "not a thread size"),
        ({"form": "thread", "colour": "#1b2a4a"}, "needs a name"),
        ({"form": "none"}, "no such form"),
    ],
)
def test_what_cannot_be_kept_is_said_and_nothing_is_written(
    client: TestClient, own: Path, form: dict[str, str], words: str
) -> None:
    """The message of the command line, what was typed still there, and no way of the machine."""
    reply = client.post(LEARN, data=form)
    assert 400 == reply.status_code
    assert words in said(reply.text)
    assert str(own) not in reply.text
    assert not list(own.rglob("*.yaml"))
    if form["form"] != "none":
        held = [e.get("value") for e in root_of(reply.text).iter("input")]
        assert {value for value in form.values() if value} <= set(held)
