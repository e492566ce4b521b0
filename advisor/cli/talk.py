"""Questions and remarks at the terminal: on stderr, so that stdout stays an answer."""

from __future__ import annotations

import sys

from advisor.cli.output import say
from advisor.cli.window import talked
from advisor.errors import visible

LONGEST_ANSWER = 1000


def ask(question: str) -> str | None:
    """One line of answer; None at the end of the answers."""
    from advisor.errors import InputError

    print(f"{talked(visible(question))} ", end="", file=sys.stderr, flush=True)
    try:
        line = sys.stdin.readline(LONGEST_ANSWER) if sys.stdin is not None else ""
    except UnicodeDecodeError:
        raise InputError("the answers are not UTF-8 text") from None
    if not line:
        say("")
        return None
    if len(line) == LONGEST_ANSWER and not line.endswith("\n"):
        raise InputError(f"an answer has at most {LONGEST_ANSWER} letters")
    return line


def tell(text: str) -> None:
    """Say something that needs no answer."""
    say(text)
