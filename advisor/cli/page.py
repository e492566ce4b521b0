"""`advisor page`: the same answers in a browser, for this machine alone."""

from __future__ import annotations

from typing import Annotated

import typer

from advisor.cli import common
from advisor.cli.output import say


def page(
    port: Annotated[
        int, typer.Option(min=0, max=65535, help="The port to listen on; 0 for any free one.")
    ] = 0,
) -> None:
    """Serve a local web page that answers as the commands do, until Ctrl-C."""
    from advisor.page.serve import Server

    with Server(port, common.knowledge()) as server:
        print(server.url, flush=True)
        say("Open this address in a browser on this machine. Ctrl-C ends it.")
        server.serve_forever(poll_interval=0.2)
