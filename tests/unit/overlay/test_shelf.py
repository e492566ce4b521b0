"""Answers on the disk: the same to the last digit, believed only where whole, never needed."""

from __future__ import annotations

import json
import os
import stat
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from advisor.overlay import shelf as shelf_file
from advisor.overlay.kept import mark_of, whole_text
from advisor.overlay.places import CACHE_VARIABLE
from advisor.overlay.shelf import AnswerShelf, heat_shelf
from tests.unit.overlay.spoiling import NOT_HERS

CHECKOUT = Path(__file__).resolve().parents[3]
SAID: dict[str, Any] = {"degrees": [0.1 + 0.2, 1e-17, 110], "cloth": None, "name": "Stoff ß"}


@pytest.fixture
def workings(tmp_path: Path) -> Path:
    """A folder with the code that works answers out."""
    folder = tmp_path / "workings"
    folder.mkdir()
    (folder / "model.py").write_text("ONE = 1\n", encoding="utf-8")
    return folder


@pytest.fixture
def shelf(tmp_path: Path, workings: Path) -> AnswerShelf:
    """A shelf with one answer on it."""
    made = AnswerShelf(tmp_path / "kept", workings, "numpy")
    made.keep({"how hot": SAID})
    return made


def the_file(shelf: AnswerShelf) -> Path:
    (found,) = shelf.folder.iterdir()
    return found


def test_what_is_kept_comes_back_to_the_last_digit(shelf: AnswerShelf, workings: Path) -> None:
    """By another run too; a question that was not asked has no answer."""
    again = AnswerShelf(shelf.folder, workings, "numpy")
    assert SAID == again.fetch("how hot")
    assert again.fetch("how cold") is None
    assert 0o600 == stat.S_IMODE(the_file(shelf).stat().st_mode)


def test_other_code_has_other_answers(shelf: AnswerShelf, workings: Path) -> None:
    """A line of the workings changed, a module more, another library: nothing of it is believed."""
    for folder, library in ((workings, "pydantic"), (CHECKOUT / "tests/unit/overlay", "numpy")):
        assert AnswerShelf(shelf.folder, folder, library).fetch("how hot") is None
    (workings / "model.py").write_text("ONE = 2\n", encoding="utf-8")
    assert AnswerShelf(shelf.folder, workings, "numpy").fetch("how hot") is None
    (workings / "model.py").write_text("ONE = 1\n", encoding="utf-8")
    assert SAID == AnswerShelf(shelf.folder, workings, "numpy").fetch("how hot")
    (workings / "more.py").write_text("", encoding="utf-8")
    assert AnswerShelf(shelf.folder, workings, "numpy").fetch("how hot") is None


def test_where_nothing_tells_the_code_nothing_is_kept(tmp_path: Path, workings: Path) -> None:
    """Without the library, and with code that cannot be read."""
    (workings / "folder.py").mkdir()
    for library in ("numpy", "no_such_library_at_all"):
        silent = AnswerShelf(tmp_path / "kept", workings, library)
        silent.keep({"how hot": SAID})
        assert silent.fetch("how hot") is None
    assert not (tmp_path / "kept").exists()


def _one_digit(path: Path) -> None:
    raw = path.read_bytes()
    assert 1 == raw.count(b"110")
    path.write_bytes(raw.replace(b"110", b"200"))


def _of_another_question(path: Path) -> None:
    path.write_bytes(whole_text(mark_of({"asked": "how cold"}), SAID))


def _half(path: Path) -> None:
    path.write_bytes(path.read_bytes()[:-5])


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no owners and pipes")
@pytest.mark.parametrize(
    "spoil",
    [
        _one_digit,
        _of_another_question,
        _half,
        *NOT_HERS,
    ],
)
def test_what_is_spoilt_is_not_believed_and_written_anew(
    shelf: AnswerShelf, spoil: Callable[[Path], None]
) -> None:
    """A digit changed, another's file, a link, a pipe: not there, and replaced when it is kept."""
    path = the_file(shelf)
    spoil(path)
    assert shelf.fetch("how hot") is None
    shelf.keep({"how hot": SAID})
    assert SAID == shelf.fetch("how hot")
    assert stat.S_ISREG(path.lstat().st_mode)


def test_a_place_that_cannot_be_written_to_changes_nothing(tmp_path: Path, workings: Path) -> None:
    """A file in the way of the folder: nothing is kept, nothing is said, nothing is lost."""
    (tmp_path / "file").write_text("in the way", encoding="utf-8")
    blocked = AnswerShelf(tmp_path / "file" / "kept", workings, "numpy")
    blocked.keep({"how hot": SAID, "how cold": SAID})
    assert blocked.fetch("how hot") is None
    assert "in the way" == (tmp_path / "file").read_text(encoding="utf-8")


def test_the_oldest_go_and_so_do_leftovers(
    shelf: AnswerShelf, monkeypatch: pytest.MonkeyPatch
) -> None:
    """No more stay than there is room for, and nothing of hers beside them is touched."""
    monkeypatch.setattr(shelf_file, "MOST", 5)
    monkeypatch.setattr(shelf_file, "ROOM", 2)
    os.utime(the_file(shelf), (1, 1))
    for name, age in ((".knowledge-old", 9000.0), (".knowledge-new", 0.0), ("hers.txt", 9000.0)):
        (shelf.folder / name).write_text("x", encoding="utf-8")
        os.utime(shelf.folder / name, (time.time() - age, time.time() - age))
    shelf.keep({str(n): SAID for n in range(6)})
    assert SAID == shelf.fetch("how hot"), "seven are within the room"
    shelf.keep({"one more": SAID})
    assert shelf.fetch("how hot") is None
    assert SAID == shelf.fetch("one more")
    names = {path.name for path in shelf.folder.iterdir()}
    assert 5 == len([name for name in names if name.startswith("heat-")])
    assert {".knowledge-new", "hers.txt"} == {n for n in names if not n.startswith("heat-")}


BUSY = """
import sys
from pathlib import Path
from advisor.overlay.shelf import AnswerShelf
shelf = AnswerShelf(Path(sys.argv[1]), Path(sys.argv[2]), "numpy")
for turn in range(60):
    for n in range(5):
        found = shelf.fetch(str(n))
        assert found is None or found == {"n": [n] * 400}, found
    shelf.keep({str(n): {"n": [n] * 400} for n in range(5)})
print("fine")
"""


def test_many_at_once_read_whole_answers_or_none(tmp_path: Path, workings: Path) -> None:
    """Four processes write and read the same answers; none ever sees half of one."""
    words = [sys.executable, "-c", BUSY, str(tmp_path / "kept"), str(workings)]
    running = [
        subprocess.Popen(words, cwd=CHECKOUT, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        for _ in range(4)
    ]
    told = [process.communicate(timeout=240) for process in running]
    assert [(b"fine\n", b"")] * 4 == told
    assert 5 == len(list((tmp_path / "kept").iterdir()))


def test_the_heat_model_rests_on_its_own_modules_alone(tmp_path: Path) -> None:
    """Else the checksum over them would not tell that something else had changed."""
    model = CHECKOUT / "advisor/heat/model"
    lines = [
        line.split()[1]
        for path in model.glob("*.py")
        for line in path.read_text(encoding="utf-8").splitlines()
        if line.strip().startswith(("from advisor", "import advisor"))
    ]
    assert lines
    assert all(name.startswith("advisor.heat.model.") for name in lines)


def test_the_shelf_of_the_heat_model(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It lies in the user's cache folder, and knows the model's code."""
    monkeypatch.setenv(CACHE_VARIABLE, str(tmp_path))
    shelf = heat_shelf()
    shelf.keep({"how hot": SAID})
    assert SAID == heat_shelf().fetch("how hot")
    head, body = the_file(shelf).read_text(encoding="utf-8").split("\n")
    assert tmp_path / "heat" == the_file(shelf).parent
    assert {"mark", "sum"} == set(json.loads(head))
    assert SAID == json.loads(body)
