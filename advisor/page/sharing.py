"""Letting a phone in: what the maker sees of it, and where a guest says the code."""

from __future__ import annotations

from msgspec import Struct
from starlette.requests import Request
from starlette.responses import Response

from advisor.page.door import GUEST_S, Door, NotLetInError
from advisor.page.entrance import ENTER
from advisor.page.shown import Fields, Slip, at, page, see
from advisor.render.qr import grouped, qr_svg

MEANS = (
    (
        "Whoever is let in reads every project of this folder, and ticks steps of the order off. "
        "They change nothing else."
    ),
    (
        "What goes over the network is not encrypted: whoever listens in on it reads the same. "
        "Share at home or in your own workroom, never in a network with strangers in it."
    ),
    "A code lets one phone in, once, for twelve hours. All of it ends when this page ends.",
)
"""What sharing means, said wherever it is offered."""


class Shared(Struct, frozen=True):
    """A page that is shared: its door, its address, and what its guests' cookie is called."""

    door: Door
    address: str
    cookie: str

    def way_in(self) -> str:
        """The address that a phone's camera reads, with the code in it."""
        return f"{self.address}{at(ENTER.strip('/'), code=self.door.code).removeprefix('/')}"


def shared_of(request: Request) -> Shared | None:
    """How this page is shared; None where it is not."""
    found = request.app.state.shared
    assert found is None or isinstance(found, Shared)
    return found


def share(request: Request) -> Response:
    """The code as text and as a picture, and who is in."""
    shared = _shared(request)
    code = shared.door.code
    about = {
        "title": "Let a phone in",
        "means": MEANS,
        "address": shared.address,
        "code": grouped(code),
        "minutes": shared.door.minutes,
        "picture": qr_svg(shared.way_in(), "The address with the code in it") if code else "",
        "guests": shared.door.guests,
    }
    return page(request, "share.html", about)


def change(request: Request, fields: Fields) -> Response:
    """Make another code, or put everybody out."""
    door = _shared(request).door
    if fields.get("do") == "close":
        door.put_out()
    else:
        door.new_code()
    return see("/share")


def enter(request: Request) -> Response:
    """Where a guest says the code; a code in the address is filled in, and used by the button."""
    return _entrance(request, request.query_params.get("code", "")[:40])


def let_in(request: Request, fields: Fields) -> Response:
    """Let in whoever says the code."""
    shared, said = _shared(request), fields.get("code", "")
    try:
        secret = shared.door.enter(said)
    except NotLetInError as error:
        return _entrance(request, "", str(error))
    reply = see("/")
    life = int(GUEST_S)
    reply.set_cookie(shared.cookie, secret, max_age=life, httponly=True, samesite="strict")
    return reply


def _entrance(request: Request, code: str, wrong: str = "") -> Response:
    slips = (Slip(wrong),) if wrong else ()
    about = {"title": "Say the code", "code": code, "slips": slips, "means": MEANS}
    return page(request, "enter.html", about, 403 if wrong else 200)


def _shared(request: Request) -> Shared:
    shared = shared_of(request)
    assert shared is not None  # these views have an address only where the page is shared
    return shared
