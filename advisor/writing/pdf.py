"""A page to print as a PDF file, set by a browser that is installed here and prints by itself.

The page is our own, stands by itself in one file and allows no script; the browser gets an empty
folder of its own for its habits, and no name leads it to any other machine.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import tempfile
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from threading import Lock
from typing import Final

from advisor.errors import InputError, Problem

BROWSERS: Final = ("chromium", "chromium-browser", "headless_shell")
OWN: Final = "ADVISOR_CHROMIUM"
PATIENCE_S: Final = 90.0
_FLAGS: Final = (
    "--headless",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
    "--no-default-browser-check",
    "--no-pdf-header-footer",
    "--host-resolver-rules=MAP * ~NOTFOUND",
)
_DAY: Final = re.compile(rb"(/(?:CreationDate|ModDate) \(D:)\d{14}\+00'00'\)")
_ONE_AT_A_TIME: Final = Lock()


def browser(around: Mapping[str, str] = os.environ) -> str:
    """The browser that prints: what ADVISOR_CHROMIUM names, else the first found; or nothing."""
    names = [name for name in (around.get(OWN, ""), *BROWSERS) if name]
    return next((found for name in names if (found := shutil.which(name))), "")


def must_print() -> str:
    """The browser that prints.

    Raises:
        InputError: there is none, with what to do instead.
    """
    found = browser()
    if not found:
        known = (
            "chromium on the path, or its path in ADVISOR_CHROMIUM; or write the page with "
            "--html and print it from your own browser to a PDF file"
        )
        raise InputError(Problem("no browser that prints by itself was found", None, known))
    return found


def pdf_of(page: str, day: date) -> bytes:
    """A whole page as a PDF file, on the paper that its style asks for, dated by the day alone.

    Raises:
        InputError: there is no browser that prints by itself, or it printed nothing.
    """
    program = must_print()
    with _ONE_AT_A_TIME, tempfile.TemporaryDirectory(prefix="advisor-print-") as scratch:
        folder = Path(scratch)
        (folder / "page.html").write_text(page, encoding="utf-8")
        _print(program, folder)
        out = folder / "page.pdf"
        raw = out.read_bytes() if out.is_file() else b""
    if not raw.startswith(b"%PDF-"):
        raise InputError(f"{Path(program).name} printed nothing; write the page and print it there")
    # The second of printing is nothing that anybody asked for, and would part two equal runs.
    return _DAY.sub(rb"\g<1>" + f"{day:%Y%m%d}000000+00'00')".encode(), raw)


def _print(program: str, folder: Path) -> None:
    # The browser shuts itself in, which it cannot where everything is allowed to its user.
    alone = ["--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else []
    command = [
        program,
        *_FLAGS,
        *alone,
        f"--user-data-dir={folder / 'habits'}",
        f"--print-to-pdf={folder / 'page.pdf'}",
        (folder / "page.html").as_uri(),
    ]
    with subprocess.Popen(
        command,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        start_new_session=True,
    ) as run:
        try:
            run.wait(PATIENCE_S)
        except subprocess.TimeoutExpired:
            _end(run)
            name = Path(program).name
            raise InputError(f"{name} printed nothing within {PATIENCE_S:g} s") from None
        except BaseException:
            _end(run)
            raise


def _end(run: subprocess.Popen[bytes]) -> None:
    """End a browser with all that it started."""
    import signal

    if hasattr(os, "killpg"):
        os.killpg(run.pid, signal.SIGKILL)
    else:
        run.kill()
