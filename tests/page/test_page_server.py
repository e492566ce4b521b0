"""The local page: it answers as the commands do, and only this machine."""

from __future__ import annotations

import http.client
import os
import re
import signal
import socket
import subprocess
import sys
import threading
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlencode
from xml.etree import ElementTree as ET

import pytest

from advisor.errors import InputError
from advisor.overlay.cache import load_knowledge
from advisor.page.posted import read_fields
from advisor.page.serve import ADDRESS, MOST_BYTES, Server

CHECKOUT = Path(__file__).resolve().parents[2]
FORM = "application/x-www-form-urlencoded"
PROJECT = """garment: Small bag
fabrics:
  out: {fabric: linen suiting}
  in: {fabric: lining, fibres: {acetate: 100}}
seams:
  - {name: mouth, layers: [out, in]}
"""
Reply = tuple[int, str, dict[str, str]]


@pytest.fixture(scope="module")
def server() -> Iterator[Server]:
    """A page on a free port."""
    with Server(0, load_knowledge()) as found:
        thread = threading.Thread(target=found.serve_forever, kwargs={"poll_interval": 0.05})
        thread.start()
        yield found
        found.shutdown()
        thread.join()


def send(
    server: Server, method: str, path: str, body: bytes | None = None, **headers: str
) -> Reply:
    """Status, page and headers of one request."""
    link = http.client.HTTPConnection(ADDRESS, server.server_port, timeout=60)
    named = {key.replace("_", "-"): value for key, value in headers.items()}
    link.request(method, path, body, named)
    reply = link.getresponse()
    found = reply.read().decode("utf-8")
    link.close()
    return reply.status, found, {key.lower(): value for key, value in reply.getheaders()}


def post(server: Server, path: str, **fields: str) -> Reply:
    """The reply to a form."""
    return send(server, "POST", path, urlencode(fields).encode(), Content_Type=FORM)


def upload(name: str, raw: bytes) -> tuple[bytes, str]:
    """A form with a file in it, and its content type."""
    head = f'Content-Disposition: form-data; name="{name}"; filename="x.yaml"\r\n\r\n'.encode()
    return b"--edge\r\n" + head + raw + b"\r\n--edge--\r\n", "multipart/form-data; boundary=edge"


def main_of(page: str) -> ET.Element:
    """The page, which has to be well-formed."""
    return ET.fromstring(page.partition("\n")[2])


def said(page: str) -> str:
    """The words of the body."""
    body = main_of(page).find("body")
    assert body is not None
    return " ".join("".join(body.itertext()).split())


def test_the_first_page_holds_three_forms(server: Server) -> None:
    """To ask, to make a sheet and to check the iron; every field has its label."""
    status, page, headers = send(server, "GET", "/")
    root = main_of(page)
    assert 200 == status
    assert ["/ask", "/sheet", "/iron"] == [f.get("action") for f in root.iter("form")]
    fields = [e for e in root.iter() if e.tag in ("textarea", "input", "select")]
    labels = {e.get("for") for e in root.iter("label")}
    assert fields
    assert {e.get("id") for e in fields} == labels
    assert "default-src 'none'" in headers["content-security-policy"]
    assert "no-store" == headers["cache-control"]
    assert "nosniff" == headers["x-content-type-options"]


def test_a_question_is_answered(server: Server) -> None:
    """Linen and nylon organza clash under the iron, and the page says what to do instead."""
    status, page, _ = post(server, "/ask", cloths="nylon organza\r\nlinen suiting 240 g/m2")
    assert 200 == status
    assert "nylon organza" in said(page)
    assert "It shows." in said(page)
    assert "Do instead" in said(page)


def test_a_pasted_project_becomes_its_sheet(server: Server) -> None:
    """The sheet has the project's name as its heading and the seam as a row."""
    status, page, _ = post(server, "/sheet", project=PROJECT.replace("\n", "\r\n"), units="us")
    root = main_of(page)
    assert 200 == status
    assert "Small bag" == root.findtext("body/main/h1")
    assert "°F" in said(page)
    assert "mouth" in [e.text.strip() for e in root.iter("th") if e.text]


def test_a_chosen_file_becomes_its_sheet(server: Server) -> None:
    """A file is read as it was sent, with a mark of its byte order or without."""
    for start in (b"", b"\xef\xbb\xbf"):
        body, kind = upload("file", start + PROJECT.encode())
        status, page, _ = send(server, "POST", "/sheet", body, Content_Type=kind)
        assert 200 == status
        assert "Small bag" == main_of(page).findtext("body/main/h1")


def test_the_iron_is_checked(server: Server) -> None:
    """What each layer bears stands in a table and a drawing."""
    status, page, _ = post(server, "/iron", cloths="cotton velveteen\nacetate satin")
    root = main_of(page)
    assert 200 == status
    heads = [e.text for e in root.iter("th") if e.get("scope") == "row"]
    assert ["cotton velveteen", "acetate satin"] == heads
    assert any(e.tag.endswith("}svg") for e in root.iter())
    assert "at most 110 °C" in said(page)


WRONG = {
    "a fabric nobody knows": ("/ask", {"cloths": "nylon organzza"}, "organza"),
    "no cloth": ("/ask", {"cloths": " \n"}, "name at least one cloth"),
    "no iron cloth": ("/iron", {}, "name at least one cloth"),
    "too many": ("/ask", {"cloths": "lawn\n" * 13}, "at most 12 cloths"),
    "too long": ("/ask", {"cloths": "l" * 201}, "at most 200 letters"),
    "no project": ("/sheet", {"project": ""}, "paste a project"),
    "no seams": ("/sheet", {"project": "garment: x\n"}, "missing key 'seams'"),
    "no YAML": ("/sheet", {"project": "garment: [x\n"}, "project:"),
    "units": ("/ask", {"cloths": "lawn", "units": "cubits"}, "metric or us"),
    "markup": ("/ask", {"cloths": "<script>alert(1)</script>"}, "<script>alert(1)</script>"),
}


@pytest.mark.parametrize("case", WRONG)
def test_what_cannot_be_used_is_said_above_the_form(server: Server, case: str) -> None:
    """The message of the command line, in words; what was typed is still in the form."""
    path, fields, words = WRONG[case]
    status, page, _ = post(server, path, **fields)
    root = main_of(page)
    assert 400 == status
    errors = next(e for e in root.iter("div") if e.get("role") == "alert")
    assert words in "".join(errors.itertext())
    assert "Traceback" not in page
    typed = fields.get("cloths", fields.get("project", "")).strip()
    assert typed in "".join("".join(a.itertext()) for a in root.iter("textarea"))
    assert "script" not in [e.tag for e in root.iter()]


def test_no_path_of_the_machine_is_shown(server: Server) -> None:
    """Neither an answer nor a message names a folder of this machine."""
    replies = [
        send(server, "GET", "/"),
        post(server, "/sheet", project="garment: x"),
        post(server, "/sheet", project="/etc/passwd"),
        post(server, "/sheet", project=PROJECT),
        send(server, "GET", "/../../etc/passwd"),
        send(server, "GET", "/%2e%2e/knowledge"),
    ]
    for _, page, _ in replies:
        shown = page.replace("/etc/passwd", "")
        assert str(CHECKOUT) not in shown
        assert str(Path.home()) + "/" not in shown
        assert "root:" not in shown


@pytest.mark.parametrize(
    "host", ["evil.example", "evil.example:{port}", "127.0.0.1", "127.0.0.1:1", "localhost.:{port}"]
)
def test_another_name_gets_nothing(server: Server, host: str) -> None:
    """A foreign name that is made to point here is refused, and so is a wrong port."""
    status, page, _ = send(server, "GET", "/", Host=host.format(port=server.server_port))
    assert 403 == status
    assert "<form" not in page


def test_the_names_of_this_machine_are_answered(server: Server) -> None:
    """127.0.0.1 and localhost, with the port."""
    for name in ("127.0.0.1", "localhost", "LOCALHOST"):
        assert 200 == send(server, "GET", "/", Host=f"{name}:{server.server_port}")[0]


def test_a_form_on_another_page_is_refused(server: Server) -> None:
    """Only this page's own forms are answered."""
    body = urlencode({"cloths": "lawn"}).encode()
    for origin in ("http://evil.example", "null", "https://127.0.0.1"):
        reply = send(server, "POST", "/ask", body, Content_Type=FORM, Origin=origin)
        assert 403 == reply[0]
    own = f"http://127.0.0.1:{server.server_port}"
    assert 200 == send(server, "POST", "/ask", body, Content_Type=FORM, Origin=own)[0]


def test_too_much_is_refused_unread(server: Server) -> None:
    """A form larger than any project is refused by its length alone."""
    with socket.create_connection((ADDRESS, server.server_port), timeout=20) as link:
        link.sendall(
            f"POST /sheet HTTP/1.1\r\nHost: 127.0.0.1:{server.server_port}\r\n"
            f"Content-Type: {FORM}\r\nContent-Length: {MOST_BYTES + 1}\r\n\r\n".encode()
        )
        assert b" 413 " in link.recv(200)


@pytest.mark.parametrize("length", ["-1", "x", "9" * 30, "\uff11"])
def test_a_length_that_is_none_is_refused(server: Server, length: str) -> None:
    """What is no length in plain digits is refused."""
    with socket.create_connection((ADDRESS, server.server_port), timeout=20) as link:
        link.sendall(
            f"POST /ask HTTP/1.1\r\nHost: 127.0.0.1:{server.server_port}\r\n"
            f"Content-Length: {length}\r\n\r\n".encode()
        )
        assert b" 411 " in link.recv(200)


def test_other_pages_and_methods_do_not_exist(server: Server) -> None:
    """Nothing is served but the forms and their answers."""
    assert 404 == send(server, "GET", "/advisor/page/serve.py")[0]
    assert 404 == post(server, "/check", cloths="lawn")[0]
    assert 501 == send(server, "PUT", "/")[0]
    assert 303 == send(server, "GET", "/ask")[0]


def test_binary_is_no_project(server: Server) -> None:
    """A file that is no text gets one clear message."""
    body, kind = upload("file", b"\x00\xff\xfe")
    status, page, _ = send(server, "POST", "/sheet", body, Content_Type=kind)
    assert 400 == status
    assert "UTF-8" in said(page)


@pytest.mark.parametrize(
    ("kind", "body"),
    [
        ("multipart/form-data", b"x"),
        ("multipart/form-data; boundary=", b"--\r\n"),
        (FORM, b"a=%ff"),
        (FORM, b"\xff"),
        (FORM, b"&".join([b"a=1"] * 99)),
    ],
)
def test_what_is_no_form_is_refused(kind: str, body: bytes) -> None:
    """Broken forms are an input error, not a fault."""
    with pytest.raises(InputError):
        read_fields(kind, body)


def test_a_taken_port_is_said() -> None:
    """A port that somebody listens on gets one clear message."""
    with socket.socket() as other:
        other.bind((ADDRESS, 0))
        other.listen()
        with pytest.raises(InputError, match="cannot listen on port"):
            Server(other.getsockname()[1], load_knowledge())


def test_the_command_prints_its_address_and_ends_with_130() -> None:
    """It prints the address, answers there, opens nothing, and ends cleanly on Ctrl-C."""
    command = subprocess.Popen(
        [sys.executable, "-m", "advisor", "page"],
        cwd=CHECKOUT,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": str(CHECKOUT)},
    )
    try:
        assert command.stdout is not None
        address = re.fullmatch(r"http://127\.0\.0\.1:(\d+)/\n", command.stdout.readline())
        assert address
        link = http.client.HTTPConnection("127.0.0.1", int(address[1]), timeout=30)
        link.request("GET", "/")
        assert 200 == link.getresponse().status
        link.close()
        command.send_signal(signal.SIGINT)
        out, error = command.communicate(timeout=30)
        assert 130 == command.returncode
        assert "" == out
        assert "Traceback" not in error
    finally:
        command.kill()
        command.wait()
