"""A page over a folder of its own, asked without a network, and a server for a real browser."""

from __future__ import annotations

import shutil
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from advisor.knowledge.model import Knowledge
from advisor.overlay.cache import load_knowledge
from advisor.page.app import application
from advisor.page.desk import Desk
from advisor.page.folder import Folder
from advisor.page.serve import Server

CHECKOUT = Path(__file__).resolve().parents[2]
HOST = "127.0.0.1:8000"
ORIGIN = f"http://{HOST}"


@pytest.fixture(scope="session")
def known() -> Knowledge:
    return load_knowledge()


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


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return project_folder(tmp_path)


@pytest.fixture
def client(folder: Path, known: Knowledge) -> TestClient:
    return client_of(folder, known)


@pytest.fixture
def server(folder: Path, known: Knowledge) -> Iterator[Server]:
    """The same page on a free port."""
    found = Server(0, known, folder)
    thread = threading.Thread(target=found.serve)
    thread.start()
    while not found.uvicorn.started:
        time.sleep(0.01)
    yield found
    found.stop()
    thread.join()
