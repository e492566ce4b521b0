"""Commands as they are typed, in the process of the tests: libraries and knowledge stay loaded.

What needs a process of its own (signals, two writers at once, a broken pipe, what a first run
imports, the seed of hashing) starts one; `typed_apart` is for the last.
"""

from __future__ import annotations

import contextlib
import io
import os
import subprocess
import sys
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, TextIO
from unittest import mock

from advisor.cli.main import ended
from advisor.knowledge.model import Knowledge
from advisor.overlay.cache import load_knowledge

CHECKOUT = Path(__file__).resolve().parents[1]
OF_KNOWLEDGE = {"ADVISOR_OWN", "ADVISOR_KNOWLEDGE", "ADVISOR_CACHE"}
"""Variables with which a command has to find and read its knowledge by itself."""


@dataclass(frozen=True, slots=True)
class Done:
    """How a command ended, and the bytes that it wrote."""

    returncode: int
    stdout: bytes
    stderr: bytes

    @property
    def out(self) -> str:
        """What it printed, as text."""
        return self.stdout.decode("utf-8")

    @property
    def err(self) -> str:
        """What it said, as text."""
        return self.stderr.decode("utf-8")


def typed(
    *words: str, text: str = "", folder: Path = CHECKOUT, env: Mapping[str, str] | None = None
) -> Done:
    """Type a command: 80 columns wide, its streams as bytes, nothing of it left behind.

    `text` is what is piped in, `folder` where it is typed, `env` what the environment holds
    besides.
    """
    out, err = _stream(), _stream()
    once = words[:1] != ("manual",)  # which makes the parser itself, to read the helps from it
    with (
        _place(folder, env or {}, once=once),
        _streams(words, _stream(text.encode("utf-8")), out, err),
    ):
        try:
            code = ended(list(words))
        except SystemExit as left:  # the tab key is answered so
            code = left.code if isinstance(left.code, int) else 1
    return Done(int(code), _written(out), _written(err))


def typed_apart(
    *words: str, python: tuple[str, ...] = (), env: Mapping[str, str] | None = None
) -> Done:
    """The same in a process of its own, as a maker runs it."""
    done = subprocess.run(
        [sys.executable, *python, "-m", "advisor", *words],
        cwd=CHECKOUT,
        env={**os.environ, "PYTHONPATH": str(CHECKOUT), "COLUMNS": "80", **(env or {})},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        timeout=600,
        check=False,
    )
    return Done(done.returncode, done.stdout, done.stderr)


def _stream(holds: bytes = b"") -> io.TextIOWrapper:
    return io.TextIOWrapper(io.BytesIO(holds), encoding="utf-8")


def _written(stream: io.TextIOWrapper) -> bytes:
    stream.flush()
    held = stream.buffer
    assert isinstance(held, io.BytesIO)
    return held.getvalue()


@contextlib.contextmanager
def _place(folder: Path, variables: Mapping[str, str], *, once: bool = True) -> Iterator[None]:
    with contextlib.ExitStack() as set_up:
        set_up.enter_context(mock.patch.dict(os.environ, {"COLUMNS": "80", **variables}))
        set_up.enter_context(contextlib.chdir(folder))
        if once:
            set_up.enter_context(mock.patch("advisor.cli.app.app", parser()))
        if not OF_KNOWLEDGE & set(variables):
            known = mock.patch("advisor.overlay.cache.load_knowledge", _known_already)
            set_up.enter_context(known)
        yield


@cache
def parser() -> Any:
    """The option parser, which is the same for every command and long in the making."""
    from typer.main import get_command

    from advisor.cli.app import app

    return get_command(app)


@cache
def shipped() -> Knowledge:
    """The shipped knowledge, read once."""
    return load_knowledge()


def _known_already(*, slow: Callable[[], None] | None = None) -> Knowledge:
    return shipped()


@contextlib.contextmanager
def _streams(words: tuple[str, ...], read: TextIO, out: TextIO, err: TextIO) -> Iterator[None]:
    with (
        mock.patch.object(sys, "argv", ["advisor", *words]),
        mock.patch.object(sys, "stdin", read),
        contextlib.redirect_stdout(out),
        contextlib.redirect_stderr(err),
    ):
        yield
