"""The entry point: a plain question at once, all else by its options, one way to end badly.

0 nothing against it, 1 a conflict was found, 2 wrong usage or unreadable input, 3 our fault,
130 interrupted. Data go to stdout, talk to stderr.
"""

from __future__ import annotations

import errno
import os
import sys
from collections.abc import Callable

from advisor.cli.front import said_at_once
from advisor.errors import Exit, InputError

COMPLETING = "_ADVISOR_COMPLETE"
"""Set by the shell where the tab key was pressed."""
LIVING_LONG = frozenset({"page", "start", "identify"})
"""Commands that go on after an answer."""
MANY = 1_000_000
"""New things until their garbage is looked for; an answer of twelve places makes fewer."""


def run() -> None:
    """The entry point: no traceback ever reaches the maker.

    One answer and out: hardly anything lives long enough to be looked through for garbage, neither
    while it is made nor when the process ends.
    """
    import gc

    words = sys.argv[1:]
    if not LIVING_LONG.intersection(words[:1]):
        gc.set_threshold(MANY)
    code = ended(words)
    gc.freeze()
    sys.exit(code)


def ended(words: list[str]) -> int:
    """Answer what was typed, and return the exit code, whatever happens."""
    from advisor.cli.output import say

    try:
        return int(_answered(words) or 0)
    except InputError as error:
        from advisor.cli.usage import with_cloths_asked

        say(with_cloths_asked(error, words))
        return Exit.USAGE
    except KeyboardInterrupt:
        return Exit.INTERRUPTED
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return Exit.CLEAR
    except Exception as error:  # noqa: BLE001 - the last net: no traceback reaches the maker
        return _usage(error, words, say)


def _answered(words: list[str]) -> int:
    from advisor.cli.output import print_text, say

    if COMPLETING in os.environ:  # the shell asks what the tab key may go on with
        return _by_options(words)
    if words[:1] == ["help"]:
        words = [*words[1:], "--help"]
    said = said_at_once(words)
    if said is not None and not words:
        say(said.rstrip("\n"))
        return Exit.USAGE
    if said is not None:
        print_text(said)
        return Exit.CLEAR
    from advisor.cli.question import plain_question, tell

    fabrics = plain_question(words)
    return tell(fabrics) if fabrics else _by_options(words)


def _by_options(words: list[str]) -> int:
    """Whatever has options, and every other command."""
    import typer

    from advisor.cli.app import app

    try:
        return int(app(words, prog_name="advisor", standalone_mode=False) or 0)
    except typer.Abort:
        raise KeyboardInterrupt from None
    except SystemExit:
        if COMPLETING in os.environ:
            raise
        raise BrokenPipeError from None  # the parser's way to end where nobody reads on


def _usage(error: Exception, words: list[str], say: Callable[[str], None]) -> int:
    """Wrong usage as the option parser found it; anything else is our fault."""
    show = getattr(error, "show", None)
    if show is not None:
        from advisor.cli.usage import wrong_usage

        say(_help_of(show) or wrong_usage(error, words))
        return Exit.USAGE
    if isinstance(error, OSError) and error.errno == errno.ENOSPC:
        say("the answer could not be written: no space left on device")
        return Exit.USAGE
    if os.environ.get("ADVISOR_DEBUG"):
        raise error
    from advisor.cli.report import tell_fault

    say(tell_fault(error))
    return Exit.FAULT


def _help_of(show: Callable[..., None]) -> str:
    """The help that is shown where a group of commands is typed alone; nothing of a fault."""
    import io

    told = io.StringIO()
    show(file=told)
    text = told.getvalue().rstrip("\n")
    return "" if "Error: " in text else text
