"""Printing into a PDF file by a browser: what it is told, and what is said where it fails."""

from __future__ import annotations

import contextlib
import os
import re
import subprocess
import sys
import time
from datetime import date
from pathlib import Path

import pytest

from advisor.errors import InputError
from advisor.knowledge.model import Knowledge
from advisor.writing import pdf
from advisor.writing.pdf import OWN, browser, pdf_of
from tests.page.conftest import CHECKOUT, SMALL, client_of
from tests.page.reading import root_of

DAY = date(2026, 3, 1)
PRINTS = """#!/bin/sh
for word in "$@"; do
  case "$word" in
    --print-to-pdf=*) out="${word#*=}" ;;
    file:*) page="${word#file://}" ;;
  esac
done
printf '%%PDF-1.4\n/CreationDate (D:20200102030405+00'"'00')\\n" >"$out"
cat "$page" >>"$out"
"""


def program(place: Path, script: str) -> str:
    """A program that stands for a browser."""
    found = place / "prints"
    found.write_text(script, encoding="utf-8")
    found.chmod(0o755)
    return str(found)


def ended(number: int) -> bool:
    """Whether a process is gone, or is but a name that nobody asked after, within ten seconds."""
    about = Path("/proc") / str(number) / "stat"
    for _ in range(100):
        with contextlib.suppress(OSError):
            if about.read_text().rpartition(")")[2].split()[0] != "Z":
                time.sleep(0.1)
                continue
        return True
    return False


def test_a_page_is_handed_over_and_dated_by_its_day(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The browser that she names prints the page; two runs of one day are equal."""
    monkeypatch.setenv(OWN, program(tmp_path, PRINTS))
    raw = pdf_of("<p>cosy</p>", DAY)
    assert b"%PDF-1.4\n/CreationDate (D:20260301000000+00'00')\n<p>cosy</p>" == raw


def test_nothing_printed_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A program that prints nothing gets one message and leaves nothing behind."""
    monkeypatch.setenv(OWN, program(tmp_path, "#!/bin/sh\nexit 1\n"))
    with pytest.raises(InputError, match="prints printed nothing; write the page"):
        pdf_of("x", DAY)


def test_one_that_does_not_end_is_ended(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With all that it started, after a while."""
    told = tmp_path / "pid"
    script = f"#!/bin/sh\nsleep 600 &\necho $! >{told}\nwait\n"
    monkeypatch.setenv(OWN, program(tmp_path, script))
    monkeypatch.setattr(pdf, "PATIENCE_S", 2.0)
    with pytest.raises(InputError, match="printed nothing within 2 s"):
        pdf_of("x", DAY)
    started = int(told.read_text())
    assert ended(started)


def test_hers_goes_before_what_is_found(tmp_path: Path) -> None:
    """What is named and not there is passed over."""
    own = program(tmp_path, PRINTS)
    assert own == browser({OWN: own})
    assert browser({OWN: str(tmp_path / "none")}) == browser({})


def test_the_page_saves_its_booklet(
    small_folder: Path, known: Knowledge, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With a browser there is a link that saves it, on the paper that was set; else there is none.

    A garment's name becomes no more than a plain name of a file.
    """
    named = SMALL.replace("garment: Bag", "garment: '\"; x=\"/../Bäg'")
    (small_folder / "bag.yaml").write_text(named, encoding="utf-8")
    client = client_of(small_folder, known)
    monkeypatch.setenv(OWN, program(tmp_path, PRINTS))
    root = root_of(client.get("/project/bag.yaml/booklet?paper=letter").text)
    way = next(str(e.get("href")) for e in root.iter("a") if e.get("download"))
    reply = client.get(way)
    assert (200, "application/pdf") == (reply.status_code, reply.headers["content-type"])
    assert reply.content.startswith(b"%PDF-")
    assert b"@page{size:letter" in reply.content
    kept = reply.headers["content-disposition"].removeprefix('attachment; filename="')
    assert re.fullmatch(r'[A-Za-z0-9-]+\.pdf"', kept)
    monkeypatch.setattr("advisor.page.printing.browser", lambda: "")
    bare = root_of(client.get("/project/bag.yaml/booklet").text)
    assert [] == [e for e in bare.iter("a") if e.get("download")]


def test_without_a_browser_the_command_says_what_to_do(tmp_path: Path) -> None:
    """One message, nothing written, and how to come by a PDF all the same."""
    (tmp_path / "bag.yaml").write_text(SMALL, encoding="utf-8")
    run = subprocess.run(
        [sys.executable, "-m", "advisor", "sheet", "bag.yaml", "--booklet", "bag.pdf"],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(CHECKOUT), "PATH": str(tmp_path), OWN: ""},
    )
    assert (2, "") == (run.returncode, run.stdout)
    assert "no browser that prints by itself was found" in run.stderr
    assert ["bag.yaml"] == [p.name for p in tmp_path.iterdir()]
