"""Ways in which a kept file stops being an ordinary one of her own."""

from __future__ import annotations

import os
from pathlib import Path

import pytest


def others_may_write(path: Path) -> None:
    """Let anybody write to it."""
    path.chmod(0o622)


def of_somebody_else(path: Path) -> None:
    """Give it away."""
    if os.geteuid() != 0:
        pytest.skip("only root may give a file away")
    os.chown(path, 65534, -1)


def a_link(path: Path) -> None:
    """Put a link to it in its place."""
    path.rename(path.with_name("elsewhere"))
    path.symlink_to(path.with_name("elsewhere"))


def a_pipe(path: Path) -> None:
    """Put a pipe in its place."""
    path.unlink()
    os.mkfifo(path)


NOT_HERS = (others_may_write, of_somebody_else, a_link, a_pipe)
