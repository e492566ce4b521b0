"""`advisor page`: the same answers in a browser, for this machine alone."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from advisor.cli import common
from advisor.cli.output import say

NEEDED = ("starlette", "uvicorn", "python_multipart", "jinja2")


def page(
    folder: Annotated[Path, typer.Argument(help="The folder of your projects.")] = Path(),
    port: Annotated[
        int, typer.Option(min=0, max=65535, help="The port to listen on; 0 for any free one.")
    ] = 0,
) -> None:
    """Serve a local web page over the projects of a folder, until Ctrl-C."""
    _check_installed()
    from advisor.page.serve import Server

    server = Server(port, common.knowledge(), folder)
    print(server.url, flush=True)
    say("Open this address in a browser on this machine. Ctrl-C ends it.")
    server.serve()


def _check_installed() -> None:
    """Say what is missing, in words that can be typed."""
    from importlib.util import find_spec

    from advisor.errors import InputError

    missing = [name.replace("_", "-") for name in NEEDED if find_spec(name) is None]
    if missing:
        names = " ".join(missing)
        raise InputError(f"the page needs what is not installed here; type: pip install {names}")
