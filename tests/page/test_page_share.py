"""A page that is shared: who gets in, by what, and that a guest reads and ticks and no more."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from starlette.testclient import TestClient

from advisor.errors import InputError
from advisor.knowledge.model import Knowledge
from advisor.page.app import application, guest_application
from advisor.page.desk import Desk
from advisor.page.door import (
    CODE_S,
    GUEST_S,
    MINUTE_S,
    MOST_GUESTS,
    SIGNS,
    WRONG_A_CODE,
    WRONG_A_MINUTE,
    Door,
    NotLetInError,
)
from advisor.page.folder import Folder
from advisor.page.network import share_address
from advisor.page.sharing import Shared
from advisor.render.qr import qr_svg, qr_text
from tests.page.conftest import HOST, ORIGIN
from tests.page.reading import field, root_of, said

NET = "192.168.1.5:8123"
PHONE = ("192.168.1.7", 50000)
COOKIE = "advisor_guest_8123"
BAG = "/project/bag.yaml"


@dataclass
class Clock:
    """A clock that goes when it is told to."""

    now: float = 1000.0

    def __call__(self) -> float:
        """What it shows, s."""
        return self.now


@dataclass
class Home:
    """A shared page: the maker's client, a way to open a phone's, the door, and its clock."""

    maker: TestClient
    phone: Callable[..., TestClient]
    door: Door
    clock: Clock


@pytest.fixture
def home(small_folder: Path, known: Knowledge) -> Home:
    clock, desk = Clock(), Desk(known, Folder(small_folder))
    shared = Shared(Door(clock), f"http://{NET}/", COOKIE)

    def client(app: object, host: str, peer: tuple[str, int]) -> TestClient:
        return TestClient(
            app,  # type: ignore[arg-type]
            base_url=f"http://{host}",
            headers={"Host": host, "Origin": f"http://{host}"},
            follow_redirects=False,
            client=peer,
        )

    guests = guest_application(desk, lambda: (NET,), shared)
    return Home(
        client(application(desk, lambda: (HOST,), shared), HOST, ("127.0.0.1", 1)),
        lambda host=NET, peer=PHONE: client(guests, host, peer),
        shared.door,
        clock,
    )


def let_in(home: Home) -> TestClient:
    """A phone that is in."""
    phone = home.phone()
    assert 303 == phone.post("/enter", data={"code": home.door.new_code()}).status_code
    return phone


def test_strangers_find_the_entrance_and_nothing_else(home: Home, small_folder: Path) -> None:
    """Every page leads to the form for the code, and no post of a stranger does anything."""
    before = (small_folder / "bag.yaml").read_bytes()
    phone = home.phone()
    for way in ("/", BAG, f"{BAG}/order", f"{BAG}/edit", "/share", "/no"):
        reply = phone.get(way)
        assert (303, "/enter") == (reply.status_code, reply.headers["location"])
    for way in (f"{BAG}/order", f"{BAG}/take", "/new", "/share"):
        assert 403 == phone.post(way, data={"tick": "x", "do": "code"}).status_code
    assert "bag" not in phone.get("/enter").text
    phone.cookies.set(COOKIE, "x" * 43)
    assert 303 == phone.get("/").status_code
    assert before == (small_folder / "bag.yaml").read_bytes()
    assert "" == home.door.code


def test_a_code_lets_one_phone_in_once(home: Home) -> None:
    """Its picture leads to the form with the code filled in; looking there does not use it up."""
    home.maker.post("/share", data={"do": "code"})
    page = home.maker.get("/share").text
    code = home.door.code
    assert f"{code[:4]}-{code[4:]}" in said(page)
    words = next(e for e in root_of(page).iter() if e.tag.endswith("}desc")).text or ""
    phone = home.phone()
    shown = phone.get(words.removeprefix(f"http://{NET}"))
    assert code == field(shown.text, "code")
    reply = phone.post("/enter", data={"code": f" {code[:4].lower()}-{code[4:].lower()} "})
    assert (303, "/") == (reply.status_code, reply.headers["location"])
    cookie = reply.headers["set-cookie"]
    assert {"HttpOnly", "SameSite=strict", "Path=/"} <= set(cookie.split("; "))
    assert code not in cookie
    assert 200 == phone.get(BAG).status_code
    assert "1 phone is in" in said(home.maker.get("/share").text)
    second = home.phone().post("/enter", data={"code": code})
    assert 403 == second.status_code
    assert "set-cookie" not in second.headers
    assert "lets nobody in" in said(second.text)


def test_a_guest_reads_and_ticks(home: Home, small_folder: Path) -> None:
    """All of a project is there to read, and a tick is written as the maker's would be."""
    phone = let_in(home)
    for view in ("", "/sheet", "/places", "/iron", "/order", "/label", "/booklet"):
        assert 200 == phone.get(f"{BAG}{view}").status_code
    root = root_of(phone.get(f"{BAG}/order").text)
    step = next(str(e.get("value")) for e in root.iter("button") if e.get("name") == "tick")
    assert 303 == phone.post(f"{BAG}/order", data={"tick": step}).status_code
    assert step in (small_folder / "bag.yaml").read_text("utf-8").partition("done:")[2]


def test_a_guest_changes_nothing_else(home: Home, small_folder: Path) -> None:
    """There is no address for it, no link to one and no form, and no broken text is shown."""
    phone = let_in(home)
    before = (small_folder / "bag.yaml").read_bytes()
    form = {"take": "1", "mark": "", "text": "x", "name": "bandstand-jacket", "do": "close"}
    for way in (
        f"{BAG}/take",
        f"{BAG}/undo",
        f"{BAG}/edit",
        f"{BAG}/parts",
        f"{BAG}/settings",
        "/new",
    ):
        assert 404 == phone.post(way, data=form).status_code
    for way in ("/share", "/identify", "/learn"):
        assert 404 == phone.post(way, data=form).status_code
    ways = (f"{BAG}/edit", f"{BAG}/compare", "/new", "/learn", "/share", "/ask?cloths=lawn")
    for way in ways:
        assert 404 == phone.get(way).status_code
    for way in ("/", BAG, f"{BAG}/sheet", f"{BAG}/order", f"{BAG}/iron"):
        root = root_of(phone.get(way).text)
        posts = {e.get("action") for e in root.iter("form") if e.get("method") == "post"}
        assert posts <= {f"{BAG}/order"}
        links = {str(e.get("href")) for e in root.iter("a")}
        assert {w for w in links if w.startswith("/") and 200 != phone.get(w).status_code} == set()
    (small_folder / "broken.yaml").write_text("garment: [my own words\n", encoding="utf-8")
    shown = phone.get("/project/broken.yaml")
    assert 400 == shown.status_code
    assert "my own words" not in shown.text
    assert before == (small_folder / "bag.yaml").read_bytes()


def test_names_and_pages_are_held_as_at_the_machine(home: Home) -> None:
    """Another name, another page's form, or somebody far away gets nothing, in or not."""
    phone = let_in(home)
    for host in ("evil.example", HOST, "192.168.1.5"):
        assert 403 == phone.get("/", headers={"Host": host}).status_code
    for origin in ("http://evil.example", ORIGIN, "null"):
        reply = phone.post(f"{BAG}/order", data={"tick": "x"}, headers={"Origin": origin})
        assert 403 == reply.status_code
    for peer in (("8.8.8.8", 1), ("::1", 1), ("nobody", 1)):
        assert 403 == home.phone(peer=peer).get("/enter").status_code
    assert 403 == home.maker.get("/", headers={"Host": NET}).status_code


def test_a_code_and_a_guest_have_their_time(home: Home) -> None:
    """A code is refused after ten minutes, and a guest after twelve hours or when put out."""
    code = home.door.new_code()
    home.clock.now += CODE_S
    assert 403 == home.phone().post("/enter", data={"code": code}).status_code
    assert "no code that lets anybody in" in said(home.maker.get("/share").text)
    phone = let_in(home)
    home.clock.now += GUEST_S - 1
    assert 200 == phone.get("/").status_code
    home.clock.now += 1
    assert 303 == phone.get("/").status_code
    phone, other = let_in(home), home.door.new_code()
    home.maker.post("/share", data={"do": "close"})
    assert 303 == phone.get("/").status_code
    assert 403 == home.phone().post("/enter", data={"code": other}).status_code


def test_guessing_is_slowed_and_voids_the_code() -> None:
    """After five wrong ones in a minute even the right one waits; after twenty it is void."""
    clock = Clock()
    door = Door(clock)
    code = door.new_code()
    for _ in range(WRONG_A_MINUTE):
        with pytest.raises(NotLetInError, match="lets nobody in"):
            door.enter("AAAA-AAAA")
    with pytest.raises(NotLetInError, match="Wait a minute"):
        door.enter(code)
    clock.now += MINUTE_S
    assert door.knows(door.enter(code))
    code = door.new_code()
    for _ in range(WRONG_A_CODE):
        clock.now += MINUTE_S / WRONG_A_MINUTE + 1
        with pytest.raises(NotLetInError):
            door.enter("")
    clock.now += MINUTE_S
    with pytest.raises(NotLetInError, match="lets nobody in"):
        door.enter(code)


def test_a_code_cannot_be_guessed_at_all_but_by_luck() -> None:
    """Twenty guesses hit one of all codes less than once in ten thousand million times."""
    found = {Door().new_code() for _ in range(200)}
    assert 200 == len(found)
    assert all(set(code) <= set(SIGNS) for code in found)
    assert WRONG_A_CODE / len(SIGNS) ** len(found.pop()) < 1e-10


def test_no_more_are_let_in_than_a_workroom_holds() -> None:
    """Beyond that the code still stands, for when somebody leaves."""
    door = Door(Clock())
    for _ in range(MOST_GUESTS):
        door.enter(door.new_code())
    code = door.new_code()
    with pytest.raises(NotLetInError, match="the most"):
        door.enter(code)
    assert code == door.code


def test_without_sharing_there_is_nothing_of_it(client: TestClient) -> None:
    """Off by default: no link, no address."""
    assert "Let a phone in" not in client.get("/").text
    for way in ("/share", "/enter"):
        assert 404 == client.get(way).status_code


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("8.8.8.8", "from the internet"),
        ("0.0.0.0", "not one address"),
        ("224.0.0.1", "not one address"),
        ("::1", "no address here"),
        ("name", "no address here"),
    ],
)
def test_only_an_address_of_the_own_network_is_shared(said: str, why: str) -> None:
    """All addresses at once, one that the internet reaches, or none at all are refused."""
    with pytest.raises(InputError, match=why):
        share_address(said)


def test_both_pictures_of_a_code_show_the_same_modules() -> None:
    """The drawing and the blocks of the terminal are dark at the same places."""
    drawing = ET.fromstring(qr_svg("http://192.168.1.5/", "x"))
    path = next(str(e.get("d")) for e in drawing.iter() if e.tag.endswith("}path"))
    dark = {
        (int(x) + i, int(y))
        for x, y, wide in re.findall(r"M(\d+) (\d+)h(\d+)v1", path)
        for i in range(int(wide))
    }
    halves = {"█": (), "▀": (1,), "▄": (0,), " ": (0, 1)}
    blocks = {
        (x, 2 * row + half)
        for row, line in enumerate(qr_text("http://192.168.1.5/").splitlines())
        for x, sign in enumerate(line)
        for half in halves[sign]
    }
    assert blocks == dark
    assert len(dark) > 200
