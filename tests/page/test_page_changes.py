"""What the page writes: remedies, ticks, texts and new projects, and that two tabs lose nothing."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from starlette.testclient import TestClient

from advisor.answer.pipeline import Decided, decide
from tests.page.reading import field, root_of, said

JACKET = "/project/jacket.yaml"


def test_a_remedy_is_taken_by_one_press_and_taken_back(client: TestClient, folder: Path) -> None:
    """The file then says what the command line would have written; taking it back restores it."""
    file = folder / "jacket.yaml"
    before = file.read_text(encoding="utf-8")
    page = client.get(JACKET).text
    assert "What can go wrong" in said(page)
    reply = client.post(f"{JACKET}/take", data={"take": "1", "mark": field(page, "mark")})
    assert (303, JACKET) == (reply.status_code, reply.headers["location"])
    assert before != file.read_text(encoding="utf-8")
    cured = said(client.get(JACKET).text)
    assert "Nothing here contradicts itself" in cured
    assert "Written into the project:" in cured
    assert 303 == client.post(f"{JACKET}/undo").status_code
    assert before == file.read_text(encoding="utf-8")
    assert 400 == client.post(f"{JACKET}/undo").status_code


def test_a_remedy_of_an_older_page_is_refused(client: TestClient, folder: Path) -> None:
    """Its number may mean another by now, so nothing is written."""
    file = folder / "jacket.yaml"
    mark = field(client.get(JACKET).text, "mark")
    changed = file.read_text(encoding="utf-8") + "# mine\n"
    file.write_text(changed, encoding="utf-8")
    for form in ({"take": "1", "mark": mark}, {"take": "1"}, {"take": "99", "mark": mark}):
        reply = client.post(f"{JACKET}/take", data=form)
        assert 400 == reply.status_code
        assert changed == file.read_text(encoding="utf-8")


def test_taking_back_never_loses_what_was_written_since(client: TestClient, folder: Path) -> None:
    """A file that was changed after the remedy stays as it is."""
    file = folder / "jacket.yaml"
    mark = field(client.get(JACKET).text, "mark")
    client.post(f"{JACKET}/take", data={"take": "1", "mark": mark})
    changed = file.read_text(encoding="utf-8") + "# mine\n"
    file.write_text(changed, encoding="utf-8")
    assert 400 == client.post(f"{JACKET}/undo").status_code
    assert changed == file.read_text(encoding="utf-8")


def test_steps_are_ticked_and_two_tabs_keep_both(client: TestClient, folder: Path) -> None:
    """Each press adds its own step; pressing again takes that one away."""
    root = root_of(client.get(f"{JACKET}/order").text)
    one, other = [str(e.get("value")) for e in root.iter("button") if e.get("name") == "tick"][:2]
    for step in (one, other):
        reply = client.post(f"{JACKET}/order", data={"tick": step})
        assert (303, f"{JACKET}/order#next") == (reply.status_code, reply.headers["location"])
    text = (folder / "jacket.yaml").read_text(encoding="utf-8")
    assert one in text.partition("done:")[2]
    assert other in text.partition("done:")[2]
    assert 303 == client.post(f"{JACKET}/order", data={"untick": one}).status_code
    done = (folder / "jacket.yaml").read_text(encoding="utf-8").partition("done:")[2]
    assert one not in done.split("\n  - ")
    assert other in done
    assert "2 done" not in said(client.get(f"{JACKET}/order").text)
    assert 400 == client.post(f"{JACKET}/order", data={"tick": "no such step"}).status_code


def test_a_text_is_saved_whole_and_its_line_ends_kept(client: TestClient, folder: Path) -> None:
    """What was typed stands in the file, comments and all; a form's own line ends do not."""
    page = client.get(f"{JACKET}/edit").text
    text = field(page, "text")
    assert (folder / "jacket.yaml").read_text(encoding="utf-8") == text
    new = f"# first of all\n{text}".replace("\n", "\r\n")
    reply = client.post(f"{JACKET}/edit", data={"text": new, "mark": field(page, "mark")})
    assert 303 == reply.status_code
    assert f"# first of all\n{text}" == (folder / "jacket.yaml").read_bytes().decode()
    (folder / "dos.yaml").write_bytes(text.replace("\n", "\r\n").encode())
    page = client.get("/project/dos.yaml/edit").text
    form = {"text": f"# x\r\n{text}", "mark": field(page, "mark")}
    assert 303 == client.post("/project/dos.yaml/edit", data=form).status_code
    assert f"# x\n{text}".replace("\n", "\r\n").encode() == (folder / "dos.yaml").read_bytes()


def test_a_text_of_an_older_tab_is_not_written_over_a_newer(
    client: TestClient, folder: Path
) -> None:
    """Both texts are shown, hers still in the field; saving again is her own choice."""
    file = folder / "jacket.yaml"
    first = client.get(f"{JACKET}/edit").text
    text, mark = field(first, "text"), field(first, "mark")
    client.post(f"{JACKET}/edit", data={"text": f"# tab one\n{text}", "mark": mark})
    second = client.post(f"{JACKET}/edit", data={"text": f"# tab two\n{text}", "mark": mark})
    assert 409 == second.status_code
    assert file.read_text(encoding="utf-8").startswith("# tab one\n")
    assert field(second.text, "text").startswith("# tab two\n")
    assert "# tab one" in "".join(next(root_of(second.text).iter("pre")).itertext())
    form = {"text": f"# tab two\n{text}", "mark": field(second.text, "mark")}
    assert 303 == client.post(f"{JACKET}/edit", data=form).status_code
    assert file.read_text(encoding="utf-8").startswith("# tab two\n")


def test_a_slip_is_shown_at_its_line_with_the_text_still_there(
    client: TestClient, folder: Path
) -> None:
    """Nothing is written until she says so; the line of the slip is quoted."""
    file = folder / "jacket.yaml"
    before = file.read_text(encoding="utf-8")
    mark = field(client.get(f"{JACKET}/edit").text, "mark")
    wrong = before.replace("linen suiting", "linen suitng")
    reply = client.post(f"{JACKET}/edit", data={"text": wrong, "mark": mark})
    line = next(i for i, x in enumerate(wrong.splitlines(), 1) if "suitng" in x)
    assert 400 == reply.status_code
    assert f"Line {line}:" in said(reply.text)
    quoted = [e for e in root_of(reply.text).iter("code") if e.get("class") == "quoted"]
    assert "linen suitng" in "".join(quoted[0].itertext())
    assert wrong == field(reply.text, "text")
    assert before == file.read_text(encoding="utf-8")
    form = {"text": wrong, "mark": field(reply.text, "mark"), "anyway": "yes"}
    assert f"{JACKET}/edit" == client.post(f"{JACKET}/edit", data=form).headers["location"]
    assert wrong == file.read_text(encoding="utf-8")
    for view in ("", "/sheet", "/order", "/booklet"):
        shown = client.get(f"{JACKET}{view}")
        assert 400 == shown.status_code
        assert f"Line {line}:" in said(shown.text)
        assert wrong == field(shown.text, "text")


def test_a_text_that_begins_with_an_empty_line_keeps_it(client: TestClient, folder: Path) -> None:
    """A browser drops the first line end in a text field, and the page makes up for it."""
    text = "\n\n" + (folder / "jacket.yaml").read_text(encoding="utf-8")
    (folder / "jacket.yaml").write_text(text, encoding="utf-8")
    assert text == field(client.get(f"{JACKET}/edit").text, "text")


def test_a_project_is_begun_and_an_example_copied(client: TestClient, folder: Path) -> None:
    """Both are written into the folder, never over what is there."""
    form = {
        "garment": "Small bag",
        "cloths": "out: linen suiting\r\nin: acetate satin",
        "places": "mouth: out, in",
    }
    assert "/project/small-bag.yaml" == client.post("/new", data=form).headers["location"]
    assert "Small bag" in said(client.get("/project/small-bag.yaml").text)
    again = client.post("/new", data=form)
    assert 400 == again.status_code
    assert "not overwritten" in said(again.text)
    assert "out: linen suiting\nin: acetate satin" == field(again.text, "cloths")
    for wrong in ({"cloths": "out: organzza"}, {"places": "mouth"}, {"file": "../x"}):
        assert 400 == client.post("/new", data={**form, "file": "b", **wrong}).status_code
    copied = client.post("/examples", data={"name": "bandstand-jacket"})
    assert "/project/bandstand-jacket.yaml" == copied.headers["location"]
    assert 400 == client.post("/examples", data={"name": "../fibres"}).status_code
    names = ["bandstand-jacket.yaml", "jacket.yaml", "small-bag.yaml"]
    assert names == sorted(p.name for p in folder.iterdir())


def test_a_fibre_that_was_found_is_written_into_a_project(client: TestClient, folder: Path) -> None:
    """What remains stands at the cloth that she names."""
    text = "garment: Bag\nfabrics:\n  out: {fabric: brocade}\nseams:\n"
    text += "  - {name: mouth, layers: [out, out]}\n"
    (folder / "bag.yaml").write_text(text, encoding="utf-8")
    form = {"project": "bag.yaml", "fabric": "out", "saw": "label=silk 55 viscose 45"}
    assert 303 == client.post("/identify", data=form).status_code
    written = (folder / "bag.yaml").read_text(encoding="utf-8")
    assert "silk: 55" in written
    assert 400 == client.post("/identify", data={**form, "fabric": "none"}).status_code


def test_a_garment_is_decided_once_until_its_file_changes(
    client: TestClient, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Sheet, order, label and booklet come from one decision; another text is decided anew."""
    calls: list[object] = []

    def counted(*about: Any) -> Decided:
        calls.append(about)
        return decide(*about)

    monkeypatch.setattr("advisor.page.desk.decide", counted)
    for view in ("", "/sheet", "/order", "/label", "/label?market=us", "/booklet"):
        assert 200 == client.get(f"{JACKET}{view}").status_code
    assert 1 == len(calls)
    with (folder / "jacket.yaml").open("a", encoding="utf-8") as file:
        file.write("# changed\n")
    assert 200 == client.get(JACKET).status_code
    assert 2 == len(calls)
