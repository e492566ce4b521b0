"""`advisor page`: the same answers in a browser, for this machine and whom the maker lets in."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli import common
from advisor.cli.output import say

if TYPE_CHECKING:
    from advisor.page.sharing import Shared

FREQUENT = 100_000
"""New things until the young ones are looked through; an answer makes a few times as many."""
NEEDED = ("starlette", "uvicorn", "python_multipart", "jinja2", "segno")


def page(
    folder: Annotated[Path, typer.Argument(help="The folder of your projects.")] = Path(),
    port: Annotated[
        int, typer.Option(min=0, max=65535, help="The port to listen on; 0 for any free one.")
    ] = 0,
    share: Annotated[
        bool,
        typer.Option(
            "--share",
            help="Let a phone on the same network in by a one-time code, to read and tick only.",
        ),
    ] = False,
    address: Annotated[
        str,
        typer.Option(help="With --share: this machine's address there, where it is not found."),
    ] = "",
) -> None:
    """Serve a local web page over the projects of a folder, until Ctrl-C."""
    _check_installed()
    from advisor.errors import InputError
    from advisor.page.network import share_address
    from advisor.page.serve import Server

    if address and not share:
        raise InputError("--address goes with --share: without it nobody on the network is let in")
    share_at = share_address(address) if share else ""
    server = Server(port, common.knowledge(), folder, share_at)
    print(server.url, flush=True)
    say("Open this address in a browser on this machine. Ctrl-C ends it.")
    if server.shared is not None:
        _tell_shared(server.shared, server.url)
    _collect_seldom()
    server.serve()


def _collect_seldom() -> None:
    """What is known by now stays, and is not to be looked through for garbage at each answer."""
    import gc

    gc.freeze()
    gc.set_threshold(FREQUENT)


def _tell_shared(shared: Shared, url: str) -> None:
    """Say what sharing means, and how the first phone gets in."""
    from advisor.page.sharing import MEANS
    from advisor.render.qr import grouped, qr_text

    code = shared.door.new_code()
    say("\nThe page is shared on this network.")
    for text in MEANS:
        say(f"- {text}")
    if sys.stderr is not None and sys.stderr.isatty():
        say(f"\n{qr_text(shared.way_in())}")
    say(f"\nOn the phone open {shared.address} and type the code {grouped(code)}")
    say(f"It serves once, for {shared.door.minutes} minutes. More codes: {url}share")


def _check_installed() -> None:
    """Say what is missing, in words that can be typed."""
    from importlib.util import find_spec

    from advisor.errors import InputError

    missing = [name.replace("_", "-") for name in NEEDED if find_spec(name) is None]
    if missing:
        names = " ".join(missing)
        raise InputError(f"the page needs what is not installed here; type: pip install {names}")
