"""What is answered before anything is loaded: the version, and the help that lists the commands.

The option parser and what it imports take far longer than these few lines of text. The table is
held against the commands themselves by `tests/cli/test_front.py`.
"""

from __future__ import annotations

import textwrap
from collections.abc import Mapping, Sequence

from advisor import __version__

HELP = "Take several unlike cloths through one garment without spoiling any of them."
COMMANDS: Mapping[str, str] = {
    "ask": "Say how to handle some cloths together, layer upon layer in the order given.",
    "sheet": "Print the handling sheet of a project: what can go wrong, then what to set, then "
    "why.",
    "iron": "Show how the iron is set, place by place; with a place's name, that place as at the "
    "board.",
    "check": "List what cannot be reconciled, with what to do instead; ends with 1 when there is "
    "any.",
    "order": "Print the whole order of work as a checklist, from shrinking the cloth to the label.",
    "label": "Write the fibre content and care for a label; says what keeps it from being honest "
    "yet.",
    "quote": "Reckon what a garment costs in cloth, thread, notions and hours, with its range.",
    "why": "Show why an answer is what it is: each claim, its facts, and on whose word.",
    "explain": "Show everything known about an entry, with all published values and where they "
    "disagree.",
    "fabrics": "List the cloths and notions that a word fits, or all of them.",
    "start": "Ask what is sewn from which cloths, and write a project file to go on from.",
    "identify": "Find out safely what a cloth may be made of; asks, unless told with --saw what "
    "was seen.",
    "page": "Serve a local web page over the projects of a folder, until Ctrl-C.",
    "example": "Copy one of the example projects into this folder, to try every command on.",
    "schema": "Print the JSON Schema of what `--json` writes, or of a file that you write.",
    "manual": "Print the whole manual: every command with its options and examples.",
    "learn": "Write down your own cloths, names, rules, thread, prices, times and test results.",
}
"""Every command and what it does, in the order of the help."""

_WIDTH = 80
_COLUMN = 12


def said_at_once(words: Sequence[str]) -> str | None:
    """The answer to `--version`, `--help` or nothing at all; None where more is asked."""
    if list(words) in (["--version"], ["-V"]):
        return f"advisor {__version__}\n"
    if list(words) in ([], ["-h"], ["--help"]):
        return help_text()
    return None


def help_text() -> str:
    """What the commands are, and how to hear more of each."""
    lines = ["Usage: advisor COMMAND [OPTIONS] ...", "", f"  {HELP}", "", "Commands:"]
    for name, does in COMMANDS.items():
        lines += textwrap.wrap(
            f"  {name:<{_COLUMN - 2}}{does}", _WIDTH, subsequent_indent=" " * _COLUMN
        )
    lines += [
        "",
        "Options:",
        "  -h, --help  Show this, or after a command its own options.",
        "  --version   Show the version.",
        "  --install-completion, --show-completion",
        "              Complete commands in your shell by the tab key.",
    ]
    return "\n".join(lines) + "\n"
