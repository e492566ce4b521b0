"""Lets in only what this machine's own page asks for, and says what a browser may do with it.

A request is answered only under the names of this machine, so that a foreign page whose name is
made to point here gets nothing; a form only from this page itself. What is posted is read whole,
within a size and a time, before anything looks at it. It is plain ASGI, so that nothing of a
framework stands before it.
"""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable, MutableMapping
from http import HTTPStatus
from typing import Any

Scope = MutableMapping[str, Any]
Message = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
App = Callable[[Scope, Receive, Send], Awaitable[None]]

MOST_BYTES = 1_500_000
"""What a form may send: the largest project that is read, with its letters spelled for a form."""
PATIENCE_S = 15.0
METHODS = ("GET", "HEAD", "POST")
POLICY = (
    b"default-src 'none'; style-src 'self'; script-src 'self'; form-action 'self'; "
    b"base-uri 'none'; "
    b"frame-ancestors 'none'"
)
HEADERS: tuple[tuple[bytes, bytes], ...] = (
    (b"content-security-policy", POLICY),
    (b"x-content-type-options", b"nosniff"),
    (b"x-frame-options", b"DENY"),
    (b"referrer-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"permissions-policy", b"camera=(), microphone=(), geolocation=()"),
    (b"cache-control", b"no-store"),
)


class _RefusedError(Exception):
    def __init__(self, status: HTTPStatus, text: str) -> None:
        self.status = status
        self.text = text


class Guard:
    """The page behind its checks."""

    def __init__(self, app: App, hosts: Callable[[], tuple[str, ...]]) -> None:
        """Stand before an application.

        Args:
            app: what answers.
            hosts: the names, with the port, under which it answers.
        """
        self.app = app
        self.hosts = hosts

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request, or refuse it."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return

        async def with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                message["headers"] = [*message.get("headers", ()), *HEADERS]
            await send(message)

        try:
            self._check(scope)
            body = await _body(scope, receive) if scope["method"] == "POST" else b""
        except _RefusedError as refused:
            await _say(refused, with_headers)
            return
        await self.app(scope, _replayed(body, receive), with_headers)

    def _check(self, scope: Scope) -> None:
        """Refuse what comes under another name, from another page, or in another way."""
        hosts = self.hosts()
        found = _headers(scope)
        names, origins = found.get(b"host", []), found.get(b"origin", [])
        if scope["method"] not in METHODS:
            raise _RefusedError(HTTPStatus.METHOD_NOT_ALLOWED, "This page is read and posted to.")
        if len(names) != 1 or names[0].lower() not in hosts:
            raise _FOREIGN
        own = {f"http://{host}" for host in hosts}
        posted = scope["method"] == "POST"
        if len(origins) > 1 or any(o.lower() not in own for o in origins):
            raise _FOREIGN
        if posted and not origins:
            raise _FOREIGN
        site = found.get(b"sec-fetch-site", ["none"])
        way = found.get(b"sec-fetch-mode", ["navigate"])
        if site[0] not in ("none", "same-origin") and (posted or way[0] != "navigate"):
            raise _FOREIGN


_FOREIGN = _RefusedError(
    HTTPStatus.FORBIDDEN, "This page answers only under the address that was printed."
)


def _headers(scope: Scope) -> dict[bytes, list[str]]:
    found: dict[bytes, list[str]] = {}
    for name, value in scope["headers"]:
        found.setdefault(name.lower(), []).append(value.decode("latin-1"))
    return found


async def _body(scope: Scope, receive: Receive) -> bytes:
    """What was posted, whole."""
    length = _headers(scope).get(b"content-length", [])
    if len(length) != 1 or not (length[0].isascii() and length[0].isdigit()):
        raise _RefusedError(HTTPStatus.LENGTH_REQUIRED, "The length of the form is missing.")
    if len(length[0]) > 12 or int(length[0]) > MOST_BYTES:
        raise _too_large()
    try:
        async with asyncio.timeout(PATIENCE_S):
            return await _read(receive)
    except TimeoutError:
        raise _RefusedError(HTTPStatus.REQUEST_TIMEOUT, "The form came too slowly.") from None


async def _read(receive: Receive) -> bytes:
    parts = bytearray()
    while True:
        message = await receive()
        if message["type"] != "http.request":
            raise _RefusedError(HTTPStatus.BAD_REQUEST, "The form did not arrive whole.")
        parts += message.get("body", b"")
        if len(parts) > MOST_BYTES:
            raise _too_large()
        if not message.get("more_body", False):
            return bytes(parts)


def _too_large() -> _RefusedError:
    text = f"This is too large: a form may hold {MOST_BYTES:,} bytes."
    return _RefusedError(HTTPStatus.REQUEST_ENTITY_TOO_LARGE, text)


def _replayed(body: bytes, receive: Receive) -> Receive:
    """The body that was read already, and after it whatever comes."""
    told = False

    async def again() -> Message:
        nonlocal told
        if told:
            return await receive()
        told = True
        return {"type": "http.request", "body": body, "more_body": False}

    return again


async def _say(refused: _RefusedError, send: Send) -> None:
    raw = f"{refused.text}\n".encode()
    headers = [
        (b"content-type", b"text/plain; charset=utf-8"),
        (b"content-length", str(len(raw)).encode()),
        (b"connection", b"close"),
    ]
    await send({"type": "http.response.start", "status": refused.status, "headers": headers})
    await send({"type": "http.response.body", "body": raw})
