"""The page against those who are not its maker: other names, other pages, other folders."""

from __future__ import annotations

import http.client
import os
import shutil
import signal
import socket
import subprocess
import sys
from pathlib import Path
from urllib.parse import quote

import pytest
from starlette.testclient import TestClient

from advisor.errors import InputError
from advisor.knowledge.model import Knowledge
from advisor.page import guard
from advisor.page.folder import Folder
from advisor.page.serve import ADDRESS, Server
from advisor.writing.meanwhile import mark_of
from tests.page.conftest import CHECKOUT, HOST, ORIGIN, client_of
from tests.page.reading import root_of, said

JACKET = "/project/jacket.yaml"
BAG = "/project/bag.yaml"
HOSTILE = "<script>alert(1)</script>\"'&amp;]]></textarea></style>"


@pytest.mark.parametrize(
    "host", ["evil.example", f"evil.example@{HOST}", "127.0.0.1", "127.0.0.1:1"]
)
def test_another_name_gets_nothing(client: TestClient, host: str) -> None:
    """A foreign name that is made to point here is refused, and so is a wrong port."""
    reply = client.get("/", headers={"Host": host})
    assert 403 == reply.status_code
    assert "<" not in reply.text


@pytest.mark.parametrize(
    "origin", ["http://evil.example", "null", f"https://{HOST}", "", f"{ORIGIN}.x"]
)
def test_a_form_on_another_page_is_refused(client: TestClient, folder: Path, origin: str) -> None:
    """Only this page's own forms are answered, and a post without an origin is none of them."""
    before = (folder / "jacket.yaml").read_bytes()
    form = {"take": "1", "mark": mark_of(before.decode())}
    reply = client.post(f"{JACKET}/take", data=form, headers={"Origin": origin})
    assert 403 == reply.status_code
    assert before == (folder / "jacket.yaml").read_bytes()


def test_a_post_without_an_origin_is_refused(folder: Path, known: Knowledge) -> None:
    """A browser always sends one."""
    client = client_of(folder, known)
    del client.headers["Origin"]
    assert 200 == client.get("/").status_code
    assert 403 == client.post("/examples", data={"name": "bandstand-jacket"}).status_code
    assert ["jacket.yaml"] == [p.name for p in folder.iterdir()]


def test_another_site_may_link_here_and_no_more(client: TestClient) -> None:
    """A link is followed; a picture, a frame or a script of another site gets nothing."""
    crossed = {"Sec-Fetch-Site": "cross-site"}
    assert 200 == client.get("/", headers={**crossed, "Sec-Fetch-Mode": "navigate"}).status_code
    for way in ("no-cors", "cors"):
        reply = client.get("/", headers={**crossed, "Sec-Fetch-Mode": way})
        assert 403 == reply.status_code


@pytest.mark.parametrize(
    "name",
    [
        "../secret.yaml",
        "..%2Fsecret.yaml",
        "%2e%2e%2fsecret.yaml",
        "..%5csecret.yaml",
        "%2Fetc%2Fpasswd",
        "out.yaml",
        "outfolder.yaml",
        ".hidden.yaml",
        "notes.txt",
        "sub%2Finner.yaml",
        "jacket.yaml%00.txt",
        "jacket.yaml%00",
        "inner.yaml",
    ],
)
def test_nothing_outside_the_folder_is_read_or_written(
    client: TestClient, folder: Path, name: str
) -> None:
    """Neither a way up, nor a link that leads out, nor what is no project is reached."""
    secret = folder.parent / "secret.yaml"
    shutil.copy(folder / "jacket.yaml", secret)
    before = secret.read_bytes()
    (folder / "out.yaml").symlink_to(secret)
    (folder / "outfolder.yaml").symlink_to(folder.parent)
    (folder / ".hidden.yaml").write_bytes(before)
    (folder / "notes.txt").write_bytes(before)
    (folder / "sub").mkdir()
    (folder / "sub" / "inner.yaml").write_bytes(before)
    (folder / "inner.yaml").symlink_to(folder / "sub" / "inner.yaml")
    for view in ("", "/sheet", "/order", "/label", "/booklet", "/edit"):
        reply = client.get(f"/project/{name}{view}")
        assert 404 == reply.status_code
        assert "Bandstand" not in reply.text
    for view in ("/edit", "/order", "/take", "/undo"):
        form = {"text": "x", "mark": "", "tick": "x", "take": "1"}
        assert client.post(f"/project/{name}{view}", data=form).status_code in (400, 404)
    assert before == secret.read_bytes()
    assert "out" not in said(client.get("/").text).split("Your projects")[1].split("Begin")[0]


def test_a_link_within_the_folder_is_a_project(small_folder: Path, known: Knowledge) -> None:
    """A second name of a project, in the same folder, is hers to use."""
    (small_folder / "again.yaml").symlink_to(small_folder / "bag.yaml")
    assert 200 == client_of(small_folder, known).get("/project/again.yaml").status_code


@pytest.mark.parametrize("name", ["../x", "a/b", "/etc/x", ".x", "x\0", "", " ", "-x", "x" * 200])
def test_a_new_project_gets_no_name_that_leads_out(folder: Path, name: str) -> None:
    """A name is letters, digits and a few signs, and never a way."""
    with pytest.raises(InputError):
        Folder(folder).add(name, "garment: x\n")
    assert ["jacket.yaml"] == [p.name for p in folder.iterdir()]
    assert not (folder.parent / "x.yaml").exists()


def test_no_path_of_the_machine_is_shown(small_folder: Path, known: Knowledge) -> None:
    """Neither an answer nor a message names a folder of this machine."""
    client, folder = client_of(small_folder, known), small_folder
    (folder / "binary.yaml").write_bytes(b"\xff\xfe\x00")
    (folder / "broken.yaml").write_text("garment: [x\n", encoding="utf-8")
    replies = [
        client.get(way)
        for way in ("/", BAG, "/project/binary.yaml", "/project/broken.yaml", "/project/no.yaml")
    ]
    replies += [
        client.post(f"{BAG}/take", data={"take": "1", "mark": "old"}),
        client.post(f"{BAG}/order", data={"tick": "no"}),
        client.post(
            "/new", data={"garment": "x", "cloths": "lawn", "places": "a: lawn", "file": "bag"}
        ),
    ]
    assert {200, 400, 404} == {reply.status_code for reply in replies}
    for reply in replies:
        assert str(folder) not in reply.text
        assert str(CHECKOUT) not in reply.text


def test_markup_in_every_field_stays_text(client: TestClient, folder: Path) -> None:
    """Names in a project, in a question and in a file's name become no element anywhere."""
    quoted = HOSTILE.replace("'", "''")
    text = (
        f"garment: '{quoted}'\nfabrics:\n  '{quoted}': {{fabric: linen suiting}}\n"
        f"  other: {{fabric: organza, fibres: {{nylon: 100}}}}\nseams:\n"
        f"  - {{name: '{quoted}', layers: ['{quoted}', other]}}\n"
    )
    (folder / "h.yaml").write_text(text, encoding="utf-8")
    (folder / "<b>&.yaml").write_text(text, encoding="utf-8")
    ways = [f"/project/h.yaml{v}" for v in ("", "/sheet", "/places", "/iron", "/order", "/label")]
    ways += ["/project/h.yaml/settings", "/project/h.yaml/parts"]
    ways += ["/project/h.yaml/booklet", "/project/h.yaml/edit", "/", "/project/%3Cb%3E&.yaml"]
    ways += [
        f"/project/h.yaml/{view}place={quote(HOSTILE)}"
        for view in ("iron?", "why?aspect=press.temperature&", "why?aspect=x&")
    ]
    ways += [f"/{x}={quote(HOSTILE)}" for x in ("ask?cloths", "about?name", "fabrics?word")]
    ways += [f"/identify?{x}={quote(HOSTILE)}" for x in ("saw", "label", "skip", "refuse")]
    for way in ways:
        reply = client.get(way)
        every = [(e.tag.rpartition("}")[2], e) for e in root_of(reply.text).iter()]
        ours = [tag for tag, e in every if e.get("src") == "/static/awake.js" and not e.text]
        found = [tag for tag, _ in every if tag in ("script", "style", "img")]
        assert ours == found, way
        assert reply.status_code in (200, 400, 404)
    assert HOSTILE in said(client.get("/project/h.yaml/sheet").text)
    assert "<b>&.yaml" in said(client.get("/").text)


def test_a_name_cannot_leave_the_string_of_a_style(client: TestClient, folder: Path) -> None:
    """What a garment is called stands in the margin of the paper as text and as nothing else."""
    name = '";}*{x:url(http://evil.example)}/*\\\n<'
    text = f"garment: {name!r}\nfabrics: {{a: lawn}}\nseams: [{{name: s, layers: [a, a]}}]\n"
    text = text.replace(
        repr(name), '"' + name.replace("\\", "\\\\").replace('"', '\\"').replace("\n", " ") + '"'
    )
    (folder / "h.yaml").write_text(text, encoding="utf-8")
    reply = client.get("/project/h.yaml/booklet.css")
    assert 200 == reply.status_code
    inside = reply.text.split('content:"')[1].split('"')[0]
    assert set() == set(inside) & set("{};:*/<()\n")
    assert "text/css" in reply.headers["content-type"]


def test_what_is_not_seen_is_spelled_out(client: TestClient) -> None:
    """A sign that turns the direction of reading stands on no page as itself."""
    turned = quote("x\u202ey")
    reply = client.get(f"/about?name={turned}")
    assert "\u202e" not in said(reply.text)
    assert "\\u202e" in said(reply.text)


def test_other_pages_and_methods_do_not_exist(client: TestClient) -> None:
    """Nothing is served but the pages and their style."""
    for way in ("/advisor/page/serve.py", "/static/../page/serve.py", "/static/base.html", "/.git"):
        assert 404 == client.get(way).status_code
    for method in ("PUT", "DELETE", "OPTIONS", "TRACE", "PATCH"):
        assert 405 == client.request(method, "/").status_code


def test_a_fault_of_ours_tells_nothing_of_the_machine(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The page says that it is our fault, and shows no trace."""

    def broken(*_: object) -> None:
        raise ZeroDivisionError(str(CHECKOUT))

    monkeypatch.setattr("advisor.page.desk.Desk.read", broken)
    reply = client.get(JACKET)
    assert 500 == reply.status_code
    assert "That is our fault (ZeroDivisionError)" in said(reply.text)
    assert str(CHECKOUT) not in reply.text
    assert "default-src 'none'" in reply.headers["content-security-policy"]


def raw(server: Server, head: str, body: bytes = b"") -> bytes:
    """The beginning of the reply to bytes as they are."""
    with socket.create_connection((ADDRESS, server.port), timeout=20) as link:
        link.sendall(head.encode("latin-1") + body)
        return link.recv(300)


def posted(server: Server, extra: str) -> str:
    host = f"127.0.0.1:{server.port}"
    return f"POST /new HTTP/1.1\r\nHost: {host}\r\nOrigin: http://{host}\r\n{extra}\r\n\r\n"


def test_too_much_is_refused_unread(server: Server) -> None:
    """A form larger than any project is refused by its length alone."""
    assert b" 413 " in raw(server, posted(server, f"Content-Length: {guard.MOST_BYTES + 1}"))


@pytest.mark.parametrize(
    ("extra", "status"),
    [
        ("Content-Length: x", b" 400 "),
        ("Content-Length: -1", b" 400 "),
        ("Transfer-Encoding: chunked", b" 411 "),
        ("Content-Length: 1\r\nContent-Length: 2", b" 400 "),
        ("Content-Length: 1\r\nHost: evil.example", b" 400 "),
    ],
)
def test_a_length_that_is_none_is_refused(server: Server, extra: str, status: bytes) -> None:
    """What is no plain length, a stream without one, or a second host, is refused."""
    assert status in raw(server, posted(server, extra))


def test_a_slow_form_is_given_up(server: Server, monkeypatch: pytest.MonkeyPatch) -> None:
    """Who sends a letter now and then does not hold the page for ever."""
    monkeypatch.setattr(guard, "PATIENCE_S", 0.2)
    assert b" 408 " in raw(server, posted(server, "Content-Length: 1000"), b"a=1")


def test_fifty_questions_at_once_are_all_answered(server: Server) -> None:
    """Each gets its page, none an error."""
    links = []
    for _ in range(50):
        link = http.client.HTTPConnection(ADDRESS, server.port, timeout=60)
        link.request("GET", "/fabrics?word=slippery")
        links.append(link)
    assert [200] * 50 == [link.getresponse().status for link in links]
    for link in links:
        link.close()


def test_a_taken_port_is_said(folder: Path, known: Knowledge) -> None:
    """A port that somebody listens on gets one clear message."""
    with socket.socket() as other:
        other.bind((ADDRESS, 0))
        other.listen()
        with pytest.raises(InputError, match="cannot listen on port"):
            Server(other.getsockname()[1], known, folder)


def command(*arguments: str, **more: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-m", "advisor", "page", *arguments],
        cwd=CHECKOUT,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": str(CHECKOUT), **more},
    )


def test_the_command_prints_its_address_and_ends_with_130(folder: Path) -> None:
    """It prints the address, answers there with the folder, and ends cleanly on Ctrl-C."""
    run = command(str(folder))
    try:
        assert run.stdout is not None
        address = run.stdout.readline().strip()
        assert address.startswith("http://127.0.0.1:")
        link = http.client.HTTPConnection("127.0.0.1", int(address.strip("/").split(":")[2]), 30)
        link.request("GET", "/")
        reply = link.getresponse()
        assert 200 == reply.status
        assert b"jacket.yaml" in reply.read()
        link.close()
        run.send_signal(signal.SIGINT)
        out, error = run.communicate(timeout=30)
        assert 130 == run.returncode
        assert "" == out
        assert "Traceback" not in error
    finally:
        run.kill()
        run.wait()


def test_a_folder_that_is_none_ends_with_2(tmp_path: Path) -> None:
    """One clear message, nothing served."""
    run = command(str(tmp_path / "none"))
    out, error = run.communicate(timeout=60)
    assert (2, "") == (run.returncode, out)
    assert "no such folder" in error


def test_what_is_missing_is_said_with_what_to_type(tmp_path: Path) -> None:
    """Without the libraries of the page the command says how to install them."""
    hidden = tmp_path / "sitecustomize.py"
    hidden.write_text(
        "import importlib.util as u\nkept = u.find_spec\n"
        "u.find_spec = lambda n, p=None: None if n == 'starlette' else kept(n, p)\n",
        encoding="utf-8",
    )
    run = command(str(tmp_path), PYTHONPATH=f"{tmp_path}{os.pathsep}{CHECKOUT}")
    out, error = run.communicate(timeout=60)
    assert (2, "") == (run.returncode, out)
    assert "pip install starlette" in error
