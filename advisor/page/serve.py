"""Serves the page: on 127.0.0.1, for this machine only, and logging nothing."""

from __future__ import annotations

import socket
from pathlib import Path

import uvicorn

from advisor.errors import InputError
from advisor.knowledge.model import Knowledge
from advisor.page.app import application
from advisor.page.desk import Desk
from advisor.page.folder import Folder

ADDRESS = "127.0.0.1"
PATIENCE_S = 10


class Server:
    """A page that listens, and is served until it is told to end."""

    def __init__(self, port: int, known: Knowledge, folder: Path) -> None:
        """Listen.

        Args:
            port: 0 for any that is free.
            known: what the answers come from.
            folder: where the projects lie.

        Raises:
            InputError: the port is taken or may not be used, or there is no such folder.
        """
        self.desk = Desk(known, Folder(folder))
        self.socket = _listening(port)
        self.port: int = self.socket.getsockname()[1]
        config = uvicorn.Config(
            application(self.desk, self.hosts),
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
        self.uvicorn = uvicorn.Server(config)

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
        self.uvicorn.run(sockets=[self.socket])

    def stop(self) -> None:
        """End after the request that is being answered."""
        self.uvicorn.should_exit = True


def _listening(port: int) -> socket.socket:
    link = socket.socket()
    try:
        link.bind((ADDRESS, port))
        link.listen()
    except (OSError, OverflowError) as error:
        link.close()
        reason = getattr(error, "strerror", None) or "not a port"
        raise InputError(f"cannot listen on port {port}: {reason.lower()}") from None
    return link
