"""The entrance for those on the same network: until they are let in, there is nothing else."""

from __future__ import annotations

from http import HTTPStatus
from ipaddress import AddressValueError, IPv4Address

from starlette.requests import Request
from starlette.responses import PlainTextResponse, RedirectResponse, Response

from advisor.page.door import Door
from advisor.page.guard import App, Receive, Scope, Send

ENTER = "/enter"


class Entrance:
    """An application behind a door; strangers find the form for the code, and style sheets."""

    def __init__(self, app: App, door: Door, cookie: str) -> None:
        """Stand before an application.

        Args:
            app: what answers those who are in.
            door: who is in.
            cookie: what the secret of those who are in is called.
        """
        self.app = app
        self.door = door
        self.cookie = cookie

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request, or show the way to the entrance."""
        refused = self._refused(scope) if scope["type"] == "http" else None
        await (refused or self.app)(scope, receive, send)

    def _refused(self, scope: Scope) -> Response | None:
        if not _near(scope):
            return PlainTextResponse("Only the same network is let in.\n", HTTPStatus.FORBIDDEN)
        request = Request(scope)
        path = request.url.path
        if path == ENTER or path.startswith("/static/"):
            return None
        if self.door.knows(request.cookies.get(self.cookie, "")):
            return None
        if request.method == "POST":
            return PlainTextResponse("Nobody is in by this request.\n", HTTPStatus.FORBIDDEN)
        return RedirectResponse(ENTER, HTTPStatus.SEE_OTHER)


def _near(scope: Scope) -> bool:
    """Whether a request comes from an address that no route of the internet leads to."""
    client = scope.get("client")
    try:
        return client is not None and not IPv4Address(client[0]).is_global
    except AddressValueError:
        return False
