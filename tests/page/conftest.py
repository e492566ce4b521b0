"""A page over a folder of its own, asked without a network, and a server for a real browser."""

from __future__ import annotations

import shutil
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright
from starlette.testclient import TestClient

from advisor.knowledge.model import Knowledge
from advisor.page.app import application
from advisor.page.desk import Desk
from advisor.page.folder import Folder
from advisor.page.serve import ADDRESS, Server
from tests.typed import shipped

CHECKOUT = Path(__file__).resolve().parents[2]
HOST = "127.0.0.1:8000"
ORIGIN = f"http://{HOST}"


@pytest.fixture(scope="session")
def known() -> Knowledge:
    return shipped()


def project_folder(place: Path) -> Path:
    """A maker's folder with one project in it."""
    mine = place / "mine"
    mine.mkdir()
    shutil.copy(CHECKOUT / "knowledge/examples/bandstand-jacket.yaml", mine / "jacket.yaml")
    return mine


def client_of(folder: Path, known: Knowledge) -> TestClient:
    """The page over a folder; it follows no redirect by itself."""
    return TestClient(
        application(Desk(known, Folder(folder)), lambda: (HOST,)),
        base_url=ORIGIN,
        headers={"Host": HOST, "Origin": ORIGIN},
        follow_redirects=False,
        raise_server_exceptions=False,
    )


SMALL = """garment: Bag
fabrics:
  out: {fabric: cotton poplin}
  in: {fabric: cotton lawn}
seams:
  - {name: side, layers: [out, out], length: 30 cm}
  - {name: mouth, layers: [out, in], length: 60 cm}
"""
"""A project that is answered soon, for what is no matter of cloths."""
CASE = """garment: Case
fabrics:
  shell: {fabric: linen suiting, colour: "#27455f"}
  frill: {fabric: organza, fibres: {nylon: 100}}
seams:
  - {name: side, layers: [shell, shell], length: 30 cm}
  - {name: hem frill, layers: [shell, {use: frill, fullness: 2}], length: 60 cm, allowance: 15 mm}
pieces:
  - {name: body, fabric: shell, width: 40 cm, height: 50 cm, number: 2}
results: [{seam: side, result: needle 80 leaves no holes, works: yes}]
"""
"""A small one with whatever a page may show: a clash, remedies, a lay, a result, drawings."""


@pytest.fixture
def small_folder(tmp_path: Path) -> Path:
    mine = tmp_path / "small"
    mine.mkdir()
    (mine / "bag.yaml").write_text(SMALL, encoding="utf-8")
    return mine


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return project_folder(tmp_path)


@pytest.fixture
def client(folder: Path, known: Knowledge) -> TestClient:
    return client_of(folder, known)


@pytest.fixture(scope="module")
def browser(chromium: str) -> Iterator[Browser]:
    """The installed browser, started once."""
    with sync_playwright() as driver:
        found = driver.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        yield found
        found.close()


@pytest.fixture
def server(folder: Path, known: Knowledge) -> Iterator[Server]:
    """The same page on a free port, for one test."""
    with serving(folder, known) as found:
        yield found


@pytest.fixture(scope="module")
def read_server(known: Knowledge, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """A page for tests that write nothing."""
    folder = project_folder(tmp_path_factory.mktemp("read"))
    (folder / "case.yaml").write_text(CASE, encoding="utf-8")
    with serving(folder, known) as found:
        yield found


@contextmanager
def serving(folder: Path, known: Knowledge) -> Iterator[Server]:
    """The same page on a free port, shared on another one of this machine alone."""
    found = Server(0, known, folder, ADDRESS)
    thread = threading.Thread(target=found.serve)
    thread.start()
    while not (found.uvicorn.started and found.guests and found.guests.started):
        time.sleep(0.01)
    yield found
    found.stop()
    thread.join()
