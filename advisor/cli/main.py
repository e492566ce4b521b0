"""The entry point: a plain question at once, all else by its options, one way to end badly.

0 nothing against it, 1 a conflict was found, 2 wrong usage or unreadable input, 3 our fault,
130 interrupted. Data go to stdout, talk to stderr.
"""

from __future__ import annotations

import errno
import gc
import os
import sys

from advisor.cli.question import answer, plain_question
from advisor.errors import Exit, InputError


def run() -> None:
    """The entry point: no traceback ever reaches the maker."""
    try:
        fabrics = plain_question(sys.argv[1:])
        code = _at_once(fabrics) if fabrics else _by_options()
    except InputError as error:
        print(error, file=sys.stderr)
        code = Exit.USAGE
    except KeyboardInterrupt:
        code = Exit.INTERRUPTED
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        code = Exit.CLEAR
    except Exception as error:  # noqa: BLE001 - the last net: no traceback reaches the maker
        code = _usage(error)
    sys.exit(int(code or 0))


def _at_once(fabrics: list[str]) -> int:
    """One answer and out: nothing lives long enough to be worth collecting."""
    gc.disable()
    return answer(fabrics)


def _by_options() -> int:
    """Whatever has options, and every other command."""
    import typer

    from advisor.cli.app import app

    try:
        return int(app(standalone_mode=False) or 0)
    except typer.Abort:
        raise KeyboardInterrupt from None


def _usage(error: Exception) -> int:
    """Wrong usage as the option parser found it; anything else is our fault."""
    show = getattr(error, "show", None)
    if show is not None:
        show()
        return Exit.USAGE
    if isinstance(error, OSError) and error.errno == errno.ENOSPC:
        print("the answer could not be written: no space left on device", file=sys.stderr)
        return Exit.USAGE
    if os.environ.get("ADVISOR_DEBUG"):
        raise error
    print(
        f"Something went wrong inside the advisor ({type(error).__name__}: {error}). That is our "
        "fault. Set ADVISOR_DEBUG=1 and run it again to see where.",
        file=sys.stderr,
    )
    return Exit.FAULT
