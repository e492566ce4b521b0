"""What is longer than the window goes through a pager, from its first line; a pipe gets all."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

from advisor.cli.window import Window, paged

LONG = "".join(f"line {k}\n" for k in range(30))


@pytest.fixture
def pager(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A pager that keeps what it is given."""
    kept = tmp_path / "kept"
    script = f"import sys; open({str(kept)!r}, 'w').write(sys.stdin.read())"
    monkeypatch.setenv("PAGER", f'{sys.executable} -c "{script}"')
    return kept


@pytest.mark.parametrize(
    ("window", "shown"),
    [
        (Window(80, 24, person=True), True),
        (Window(80, 31, person=True), False),
        (Window(80, 24, person=False), False),
    ],
)
def test_a_person_with_a_short_window_gets_the_pager(
    window: Window, *, shown: bool, pager: Path
) -> None:
    """Nobody else does."""
    assert shown == paged(LONG, window)
    assert shown == pager.exists()
    assert not shown or LONG == pager.read_text("utf-8")


@pytest.mark.parametrize("name", ["cat", "no-such-pager-here"])
def test_no_pager_is_no_reason_to_say_nothing(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Then the text is printed as it is."""
    monkeypatch.setitem(os.environ, "PAGER", name)
    assert not paged(LONG, Window(80, 24, person=True))
