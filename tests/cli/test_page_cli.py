"""The page as a file: written whole or not at all, never over another unless asked."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.typed import typed

CHECKOUT = Path(__file__).resolve().parents[2]
DRESS = str(CHECKOUT / "knowledge/examples/allotment-apron-dress.yaml")


def test_a_sheet_is_written_once_and_replaced_only_when_asked(tmp_path: Path) -> None:
    """The file is whole; a second run leaves it alone with 2, --replace writes it anew."""
    page = tmp_path / "dress.html"
    first = typed("sheet", DRESS, "--html", str(page))
    assert (0, "") == (first.returncode, first.out)
    whole = page.read_text(encoding="utf-8")
    assert whole.startswith("<!DOCTYPE html>\n")
    assert whole.endswith("</html>\n")
    mine = "<!doctype html>mine"
    page.write_text(mine, encoding="utf-8")
    second = typed("sheet", DRESS, "--html", str(page))
    assert 2 == second.returncode
    assert "--replace overwrites it" in second.err
    assert mine == page.read_text(encoding="utf-8")
    assert 0 == typed("sheet", DRESS, "--html", str(page), "--replace").returncode
    assert whole == page.read_text(encoding="utf-8")
    assert [page] == list(tmp_path.iterdir())


def test_a_dash_means_stdout() -> None:
    """A question's page goes to stdout, and a clash still ends with 1."""
    done = typed("ask", "nylon organza", "linen suiting", "--html", "-")
    assert 1 == done.returncode
    assert done.out.startswith("<!DOCTYPE html>\n")
    assert "" == done.err


@pytest.mark.parametrize("other", ["--json", "--all"])
def test_a_page_goes_with_no_other_form(other: str) -> None:
    """One answer has one form."""
    done = typed("ask", "cotton lawn", "--html", "-", other)
    assert (2, "") == (done.returncode, done.out)
    assert "--html goes with none of" in done.err


def test_a_folder_that_is_not_there_gets_one_message(tmp_path: Path) -> None:
    """A place that cannot be written to ends with 2, without a traceback."""
    done = typed("ask", "cotton lawn", "--html", str(tmp_path / "no" / "x.html"))
    assert (2, "") == (done.returncode, done.out)
    assert "no such folder" in done.err
    assert "Traceback" not in done.err


@pytest.mark.parametrize("form", ["--html", "--booklet", "--pdf"])
def test_a_project_is_never_lost_for_a_page_of_it(tmp_path: Path, form: str) -> None:
    """What is no page or print stays, asked for or not."""
    project = tmp_path / "dress.yaml"
    project.write_bytes(Path(DRESS).read_bytes())
    done = typed("sheet", str(project), form, str(project), "--replace")
    assert (2, "") == (done.returncode, done.out)
    assert "name another file" in done.err
    assert project.read_bytes() == Path(DRESS).read_bytes()


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with names")
@pytest.mark.parametrize("form", ["--html", "--booklet"])
def test_a_pipe_in_the_way_is_refused_and_not_waited_for(tmp_path: Path, form: str) -> None:
    """Nobody writes into it, so whoever reads it would wait for ever."""
    os.mkfifo(tmp_path / "pipe")
    done = typed("sheet", DRESS, form, str(tmp_path / "pipe"), "--replace")
    assert (2, "") == (done.returncode, done.out)
    assert "Traceback" not in done.err
