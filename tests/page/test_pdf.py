"""Printing into a PDF file by a browser: what it is told, and what is said where it fails."""

from __future__ import annotations

import os
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest

from advisor.errors import InputError
from advisor.writing import pdf
from advisor.writing.pdf import OWN, browser, pdf_of
from tests.page.conftest import CHECKOUT, SMALL

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
    monkeypatch.setattr(pdf, "PATIENCE_S", 1.0)
    with pytest.raises(InputError, match="printed nothing within 1 s"):
        pdf_of("x", DAY)
    started = Path("/proc") / told.read_text().strip() / "stat"
    assert not started.exists() or " Z " in started.read_text()


def test_hers_goes_before_what_is_found(tmp_path: Path) -> None:
    """What is named and not there is passed over."""
    own = program(tmp_path, PRINTS)
    assert own == browser({OWN: own})
    assert browser({OWN: str(tmp_path / "none")}) == browser({})


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
