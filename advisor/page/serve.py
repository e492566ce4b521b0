"""Serves the page: on 127.0.0.1 for this machine, where it is shared on one more; logs nothing."""

from __future__ import annotations

import socket
import threading
from pathlib import Path

import uvicorn

from advisor.errors import InputError
from advisor.knowledge.model import Knowledge
from advisor.page.app import application, guest_application
from advisor.page.desk import Desk
from advisor.page.door import Door
from advisor.page.folder import Folder
from advisor.page.guard import App
from advisor.page.sharing import Shared

ADDRESS = "127.0.0.1"
PATIENCE_S = 10


class Server:
    """A page that listens, and is served until it is told to end.

    Where it is shared, guests have a listener and a server of their own, so that the maker is
    answered whatever they do, and no request from the network comes to what changes a project.
    """

    def __init__(self, port: int, known: Knowledge, folder: Path, share_at: str = "") -> None:
        """Listen.

        Args:
            port: 0 for any that is free.
            known: what the answers come from.
            folder: where the projects lie.
            share_at: an address of this machine on its network, where the page is shared there.

        Raises:
            InputError: the port is taken or may not be used, or there is no such folder.
        """
        self.desk = Desk(known, Folder(folder))
        self.socket = _listening(ADDRESS, port)
        self.port: int = self.socket.getsockname()[1]
        self.shared: Shared | None = None
        self.guests: uvicorn.Server | None = None
        if share_at:
            self._share(share_at, port)
        self.uvicorn = _serving(application(self.desk, self.hosts, self.shared))

    def _share(self, address: str, port: int) -> None:
        self._guest_socket = _listening(address, port)
        at = f"{address}:{self._guest_socket.getsockname()[1]}"
        hosts = (at,) if not at.endswith(":80") else (at, address)
        cookie = f"advisor_guest_{self._guest_socket.getsockname()[1]}"
        self.shared = Shared(Door(), f"http://{at}/", cookie)
        self.guests = _serving(guest_application(self.desk, lambda: hosts, self.shared))

    @property
    def url(self) -> str:
        """Where the page is."""
        return f"http://{ADDRESS}:{self.port}/"

    def hosts(self) -> tuple[str, ...]:
        """The names under which it answers."""
        names = (f"{ADDRESS}:{self.port}", f"localhost:{self.port}")
        return names if self.port != 80 else (*names, ADDRESS, "localhost")

    def serve(self) -> None:
        """Answer until interrupted or told to stop."""
        if self.guests is None:
            self.uvicorn.run(sockets=[self.socket])
            return
        beside = threading.Thread(target=self.guests.run, args=([self._guest_socket],))
        beside.start()
        try:
            self.uvicorn.run(sockets=[self.socket])
        finally:
            self.guests.should_exit = True
            beside.join()

    def stop(self) -> None:
        """End after the request that is being answered."""
        self.uvicorn.should_exit = True


def _serving(app: App) -> uvicorn.Server:
    config = uvicorn.Config(
        app,
        log_config=None,
        access_log=False,
        server_header=False,
        date_header=False,
        proxy_headers=False,
        lifespan="off",
        ws="none",
        http="h11",
        loop="asyncio",
        timeout_keep_alive=PATIENCE_S,
        timeout_graceful_shutdown=1,
        limit_concurrency=100,
    )
    return uvicorn.Server(config)


def _listening(address: str, port: int) -> socket.socket:
    link = socket.socket()
    try:
        link.bind((address, port))
        link.listen()
    except (OSError, OverflowError) as error:
        link.close()
        reason = getattr(error, "strerror", None) or "not a port"
        where = f"port {port}" if address == ADDRESS else f"{address}, port {port}"
        raise InputError(f"cannot listen on {where}: {reason.lower()}") from None
    return link
