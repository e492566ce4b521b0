"""The application: every command under its name, and one way to end badly.

0 nothing against it, 1 a conflict was found, 2 wrong usage or unreadable input, 3 our fault,
130 interrupted. Data go to stdout, talk to stderr.
"""

from __future__ import annotations

import os
import sys

import typer

from advisor.cli.ask import ask
from advisor.cli.check import check
from advisor.cli.explain import explain
from advisor.cli.fabrics import fabrics
from advisor.cli.iron import iron
from advisor.cli.sheet import sheet
from advisor.cli.start import start
from advisor.cli.why import why
from advisor.errors import Exit, InputError

app = typer.Typer(
    name="advisor", no_args_is_help=True, pretty_exceptions_enable=False, rich_markup_mode=None,
    help="Take several unlike cloths through one garment without spoiling any of them.",
)  # fmt: skip
for command in (ask, sheet, iron, check, why, explain, fabrics, start):
    app.command()(command)


def run() -> None:
    """The entry point: no traceback ever reaches the maker."""
    try:
        code = app(standalone_mode=False)
    except InputError as error:
        print(error, file=sys.stderr)
        code = Exit.USAGE
    except (KeyboardInterrupt, typer.Abort):
        code = Exit.INTERRUPTED
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        code = Exit.CLEAR
    except Exception as error:  # noqa: BLE001 - the last net: no traceback reaches the maker
        code = _usage(error)
    sys.exit(int(code or 0))


def _usage(error: Exception) -> int:
    """Wrong usage as the option parser found it; anything else is our fault."""
    show = getattr(error, "show", None)
    if show is not None:
        show()
        return Exit.USAGE
    if os.environ.get("ADVISOR_DEBUG"):
        raise error
    print(
        f"Something went wrong inside the advisor ({type(error).__name__}: {error}). That is our "
        "fault. Set ADVISOR_DEBUG=1 and run it again to see where.", file=sys.stderr,
    )  # fmt: skip
    return Exit.FAULT
