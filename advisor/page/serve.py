"""The server of the page: for this machine only, and for nobody who only seems to be on it.

It listens on 127.0.0.1. A request is answered only under the names of this machine, so that a
foreign page whose name is made to point here gets nothing, and a form only from this page itself.
Nothing is read from or written to the disk for a request, and nothing of it is logged.
"""

from __future__ import annotations

from collections.abc import Mapping
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from socketserver import TCPServer
from typing import Any

from advisor.errors import InputError
from advisor.knowledge.model import Knowledge
from advisor.page import forms
from advisor.page.answers import ANSWERS
from advisor.page.posted import read_fields
from advisor.render.printed.html import document

ADDRESS = "127.0.0.1"
MOST_BYTES = 200_000
"""What a form may send: far more than any project, little enough to answer at once."""
PATIENCE_S = 15.0
_HEADERS = {
    "Content-Type": "text/html; charset=utf-8",
    "Content-Security-Policy": (
        "default-src 'none'; style-src 'unsafe-inline'; form-action 'self'; base-uri 'none'; "
        "frame-ancestors 'none'"
    ),
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cache-Control": "no-store",
    "Connection": "close",
}


class Server(ThreadingHTTPServer):
    """A server that knows the knowledge and the names it may be called by."""

    daemon_threads = True
    allow_reuse_address = False

    def __init__(self, port: int, known: Knowledge) -> None:
        """Listen.

        Args:
            port: 0 for any that is free.
            known: what the answers come from.

        Raises:
            InputError: the port is taken or may not be used.
        """
        self.known = known
        try:
            super().__init__((ADDRESS, port), Handler)
        except (OSError, OverflowError) as error:
            reason = getattr(error, "strerror", None) or "not a port"
            raise InputError(f"cannot listen on port {port}: {reason.lower()}") from None

    def server_bind(self) -> None:
        """Bind without asking the network what this machine is called."""
        TCPServer.server_bind(self)
        self.server_name, self.server_port = ADDRESS, self.server_address[1]

    @property
    def url(self) -> str:
        """Where the page is."""
        return f"http://{ADDRESS}:{self.server_port}/"

    def hosts(self) -> tuple[str, ...]:
        """The names under which it answers."""
        names = (f"{ADDRESS}:{self.server_port}", f"localhost:{self.server_port}")
        return names if self.server_port != 80 else (*names, ADDRESS, "localhost")

    def handle_error(self, request: Any, client_address: Any) -> None:
        """Keep quiet about a visitor who went away."""


class Handler(BaseHTTPRequestHandler):
    """One request."""

    server: Server
    timeout = PATIENCE_S
    server_version = "page"
    sys_version = ""
    protocol_version = "HTTP/1.1"
    error_message_format = "%(code)d %(message)s\n"

    def do_GET(self) -> None:
        """The forms, and nothing else."""
        if self._foreign():
            return
        if self.path.partition("?")[0] == "/":
            self._send(HTTPStatus.OK, "Sewing advice", forms.home({}))
        elif self.path.strip("/") in ANSWERS:
            self._see_home()
        else:
            self._say(HTTPStatus.NOT_FOUND, "There is no such page")

    def do_HEAD(self) -> None:
        """As for GET, without the page."""
        self.do_GET()

    def do_POST(self) -> None:
        """An answer to one of the forms."""
        about = self.path.strip("/")
        if self._foreign():
            return
        if about not in ANSWERS:
            self._say(HTTPStatus.NOT_FOUND, "There is no such page")
            return
        body = self._body()
        if body is not None:
            self._answer(about, body)

    def _answer(self, about: str, body: bytes) -> None:
        fields: Mapping[str, str] = {}
        try:
            fields = read_fields(self.headers.get("Content-Type", ""), body)
            answer = ANSWERS[about](fields, self.server.known)
        except InputError as error:
            main = forms.home(fields, error.problems, about)
            self._send(HTTPStatus.BAD_REQUEST, "This could not be used", main)
        except Exception as error:  # noqa: BLE001 - a fault of ours ends one answer, not the page
            self._say(
                HTTPStatus.INTERNAL_SERVER_ERROR,
                "Something went wrong inside the advisor",
                f"That is our fault ({type(error).__name__}). The command line says more.",
            )
        else:
            main = forms.with_way_back(answer.main)
            self._send(HTTPStatus.OK, answer.title, main, answer.units)

    def _foreign(self) -> bool:
        """Whether a request came under another name or from another page; it is told so."""
        hosts = self.server.hosts()
        names = self.headers.get_all("Host") or []
        origin = self.headers.get("Origin")
        mine = len(names) == 1 and names[0].lower() in hosts
        if mine and (origin is None or origin.lower() in {f"http://{h}" for h in hosts}):
            return False
        self._say(
            HTTPStatus.FORBIDDEN,
            "Not for this address",
            "This page answers only under the address that was printed.",
        )
        return True

    def _body(self) -> bytes | None:
        """What was posted; None when it was refused."""
        length = self.headers.get("Content-Length", "")
        if not (length.isascii() and length.isdigit() and len(length) < 12):
            self._say(HTTPStatus.LENGTH_REQUIRED, "The length of the form is missing")
            return None
        if int(length) > MOST_BYTES:
            self._say(
                HTTPStatus.REQUEST_ENTITY_TOO_LARGE,
                "This is too large",
                f"A form may hold {MOST_BYTES:,} bytes.",
            )
            return None
        body = self.rfile.read(int(length))
        if len(body) < int(length):
            self._say(HTTPStatus.BAD_REQUEST, "The form did not arrive whole")
            return None
        return body

    def _see_home(self) -> None:
        self.send_response(HTTPStatus.SEE_OTHER)
        self.send_header("Location", "/")
        self.send_header("Content-Length", "0")
        self.end_headers()

    def _say(self, status: HTTPStatus, title: str, text: str = "") -> None:
        self.close_connection = True
        self._send(status, title, forms.message(title, text or "Go back and try another way."))

    def _send(self, status: HTTPStatus, title: str, main: str, units: str = "metric") -> None:
        raw = document(title, main, units).encode("utf-8")
        self.send_response(status)
        for name, value in _HEADERS.items():
            self.send_header(name, value)
        self.send_header("Content-Length", str(len(raw)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(raw)

    def log_message(self, format: str, *args: Any) -> None:  # noqa: A002 - the base names it
        """Log nothing: what somebody sews is her own affair."""
