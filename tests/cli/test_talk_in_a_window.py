"""Talk at a terminal: a remark, a question and a refusal are as wide as the window."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

pty = pytest.importorskip("pty")


def seen(width: int, folder: Path, *typed: str) -> list[str]:
    """What a terminal of some width shows of a command that is told nothing."""
    ours, theirs = pty.openpty()
    env = {**os.environ, "COLUMNS": str(width), "LINES": "24"}
    command = [sys.executable, "-m", "advisor", *typed]
    with subprocess.Popen(
        command, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=theirs,
        env=env, cwd=folder,
    ) as running:  # fmt: skip
        os.close(theirs)
        shown = b""
        while True:
            try:
                part = os.read(ours, 65536)
            except OSError:  # the other end was closed
                break
            if not part:
                break
            shown += part
        running.wait(60)
    os.close(ours)
    return shown.decode("utf-8").replace("\r", "").split("\n")


@pytest.fixture(scope="module", autouse=True)
def _read_before(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """The knowledge is read anew once, and said to be; here only what is always said counts.

    It is kept where no other test can sweep it away, or it would be read and told anew.
    """
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("ADVISOR_CACHE", str(tmp_path_factory.mktemp("kept")))
        seen(80, tmp_path_factory.mktemp("first"), "fabrics", "poplin")
        yield


@pytest.mark.parametrize("width", [60, 80])
@pytest.mark.parametrize(
    "typed",
    [("start", "mine.yaml"), ("ask", "gabardeen"), ("sheet", "there-is-no-such-file.yaml")],
    ids=lambda typed: typed[0],
)
def test_talk_is_no_wider_than_the_window(
    width: int, typed: tuple[str, ...], tmp_path: Path
) -> None:
    """Lines are broken between words, and every word is still there."""
    lines = seen(width, tmp_path, *typed)
    assert max(map(len, lines)) <= width
    assert " ".join(lines).split() == " ".join(seen(400, tmp_path, *typed)).split()
