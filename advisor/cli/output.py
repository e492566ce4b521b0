"""Knowledge in, text or data out: what an answer needs and no option parser has a part in."""

from __future__ import annotations

import sys
from collections.abc import Callable
from typing import TYPE_CHECKING

from advisor.errors import json_escape, visible

if TYPE_CHECKING:
    from advisor.answer.model.answer import Answer
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment


def knowledge() -> Knowledge:
    """The knowledge, from the cache when it is fresh; what is printed then fits the window.

    What the heat model says is kept beside it from now on.
    """
    from advisor.cli.window import window
    from advisor.heat.kept import keep_on
    from advisor.overlay.cache import load_knowledge
    from advisor.overlay.shelf import heat_shelf

    keep_on(heat_shelf())

    where = window()
    if where.person:
        from advisor.render.layout import fit_window

        fit_window(where.width)
    known = load_knowledge(slow=_tell_slow)
    for line in known.left_out:
        say(f"left out of your own knowledge: {line}")
    return known


def _tell_slow() -> None:
    say("Reading the knowledge anew; this takes a moment, and only once.")


def with_units(garment: Garment, units: str | None) -> Garment:
    """The garment printed in other units."""
    from msgspec.structs import replace

    from advisor.errors import InputError
    from advisor.units.showing import SYSTEMS

    if units is None:
        return garment
    if units not in SYSTEMS:
        raise InputError(f"unknown units '{units}': metric or us")
    return replace(garment, units=SYSTEMS[units])


def print_answer(answer: Answer) -> None:
    """An answer as data on stdout."""
    from advisor.records import as_data

    print_json(as_data(answer))


def print_json(data: object) -> None:
    """Data on stdout, the same bytes every time."""
    import json

    # In JSON an escape means the character itself, so the data stay what they are.
    _put(visible(json.dumps(data, ensure_ascii=False, indent=1), json_escape) + "\n")


def print_text(text: str) -> None:
    """Text on stdout as UTF-8, whatever the locale says; nowhere where stdout is closed.

    A file name that is not UTF-8 is printed with its odd bytes as escapes, as JSON writes them,
    and so is whatever a terminal would obey or nobody can see.

    Raises:
        InputError: it cannot be written, as on a full disk.
    """
    from advisor.cli.window import paged, window

    shown = visible(text)
    if not paged(shown, window()):
        _put(shown)


def print_fitted(text_of: Callable[[int, bool], str]) -> None:
    """A screen made for the width of the window, with emphasis where it shows.

    One that is longer than the window begins at its top, where the worst stands.
    """
    from advisor.cli.window import paged, window

    where = window()
    text = text_of(where.width, where.colour)
    if not paged(text, where):
        _put(text)


def say(text: str) -> None:
    """A remark on stderr, with nothing in it that a terminal would obey."""
    from advisor.cli.window import talked

    if sys.stderr is not None:
        print(talked(visible(text)), file=sys.stderr)


def _put(text: str) -> None:
    if sys.stdout is None:
        return
    plain = text.encode("utf-8", "backslashreplace")
    try:
        if hasattr(sys.stdout, "buffer"):
            sys.stdout.buffer.write(plain)
        else:  # a program that gathers what is printed
            sys.stdout.write(plain.decode())
        sys.stdout.flush()
    except BrokenPipeError:
        raise
    except OSError as error:
        from advisor.errors import InputError

        reason = (error.strerror or "no reason given").lower()
        raise InputError(f"the answer could not be written: {reason}") from None
