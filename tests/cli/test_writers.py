"""Nothing is lost: writers at once, writers killed, full and locked disks, with real processes.

`ADVISOR_KILLS` and `ADVISOR_WRITERS` ask for more rounds than a run of all tests has time for.
"""

from __future__ import annotations

import contextlib
import json
import os
import random
import resource
import subprocess
import sys
import time
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from advisor.textio.locking import locked
from advisor.textio.yamlfile import parse_yaml, read_yaml
from tests.typed import typed
from tests.unit.knowledge.small_book import write_book

CHECKOUT = Path(__file__).resolve().parents[2]
JACKET = CHECKOUT / "knowledge/examples/bandstand-jacket.yaml"
KILLS = int(os.environ.get("ADVISOR_KILLS", "12"))
ROUNDS = int(os.environ.get("ADVISOR_WRITERS", "1"))
AT_ONCE = 8


def began(
    *words: str,
    before: Callable[[], None] | None = None,
    env: Mapping[str, str] | None = None,
) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, *words],
        cwd=CHECKOUT,
        env={**os.environ, **(env or {})},
        preexec_fn=before,  # noqa: PLW1509 - a limit for the child alone; no threads here
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        encoding="utf-8",
    )


def ended(process: subprocess.Popen[str]) -> tuple[int, str]:
    _, told = process.communicate(timeout=240)
    return process.returncode, told


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


APRON = """\
garment: Apron
fabrics: {cloth: cotton poplin}
seams:
  - {name: side, layers: [cloth, cloth], length: 60 cm}
  - {name: waist, layers: [cloth, cloth], length: 70 cm}
  - {name: pocket, layers: [cloth, cloth], length: 40 cm}
"""


@pytest.fixture(scope="module", autouse=True)
def _knowledge_read() -> None:
    """The knowledge is compiled and kept: whoever comes first tells of the reading, and waits."""
    assert ended(began("-m", "advisor", "fabrics", "velvet"))[0] == 0


@pytest.mark.parametrize("turn", range(ROUNDS))
def test_ticks_at_once_are_all_kept(tmp_path: Path, turn: int) -> None:
    """Eight runs tick a step each at the same time; the file holds all eight."""
    file = tmp_path / "apron.yaml"
    file.write_text(APRON, "utf-8")
    told = json.loads(typed("order", str(file), "--json").out)
    steps = [row["step"] for row in told["order"]][:AT_ONCE]
    assert AT_ONCE == len(steps)
    running = [began("-m", "advisor", "order", str(file), "--tick", step) for step in steps]
    told_all = [ended(process) for process in running]
    assert [(0, "")] * AT_ONCE == told_all, told_all
    assert sorted(steps) == sorted(read_yaml(file).data["done"])
    assert file.read_text("utf-8").startswith(APRON)
    assert ["apron.yaml"] == names(tmp_path)


@pytest.mark.parametrize("turn", range(ROUNDS))
def test_what_is_learnt_at_once_is_all_kept(tmp_path: Path, turn: int) -> None:
    """Eight runs write names and results at the same time; every one of them is there."""
    own = tmp_path / "own"
    where = {"ADVISOR_OWN": str(own), "ADVISOR_KNOWLEDGE": str(write_book(tmp_path / "shipped"))}
    words = ("learn", "cloth", "green velvet", "--like", "silk velvet")
    assert 0 == typed(*words, env=where).returncode
    running = []
    for n in range(AT_ONCE // 2):
        means = ["name", f"my stuff {n}", "suiting"]
        found = ["result", "green velvet", "--good", f"needle.size={60 + 5 * n}"]
        running += [began("-m", "advisor", "learn", *w, env=where) for w in (means, found)]
    told_all = [ended(process) for process in running]
    assert [0] * AT_ONCE == [code for code, _ in told_all], told_all
    assert {f"my stuff {n}" for n in range(AT_ONCE // 2)} == set(read_yaml(own / "names.yaml").data)
    results = read_yaml(own / "fabrics/green-velvet.yaml").data["results"]
    assert {60, 65, 70, 75} == {row["good"]["needle.size"] for row in results}
    assert ["fabrics", "names.yaml"] == names(own)


WRITER = """
import itertools, sys
from pathlib import Path
from advisor.project.ticking import tick_file
path = Path(sys.argv[1])
print("ready", flush=True)
for n in itertools.count():
    tick_file(path, [f"step {n % 7}"], [f"step {(n + 3) % 7}"])
"""


def test_a_writer_killed_at_any_moment_leaves_a_whole_file(tmp_path: Path) -> None:
    """The file is the old one or the new one, and the next run sweeps what was left behind."""
    chance = random.Random(16)
    file = tmp_path / "coat.yaml"
    body = "garment: Coat\n" + "# a long remark\n" * 4000 + "fabrics: {shell: gabardine}\n"
    file.write_text(body, "utf-8")
    for _ in range(KILLS):
        writer = began("-c", WRITER, str(file))
        assert writer.stdout is not None
        assert writer.stdout.readline() == "ready\n"
        time.sleep(chance.random() * 0.05)
        writer.kill()
        writer.communicate()
        text = file.read_text("utf-8")
        assert text.startswith(body)
        done = parse_yaml(text, "coat.yaml").data.get("done", [])
        assert len(done) == len(set(done)) <= 7
    (tmp_path / "hers.part").write_text("x", "utf-8")
    script = (
        "import sys; from pathlib import Path; from advisor.project.ticking import tick_file;"
        "tick_file(Path(sys.argv[1]), ['last step'])"
    )
    assert (0, "") == ended(began("-c", script, str(file)))
    assert ["coat.yaml", "hers.part"] == names(tmp_path)


def test_a_run_that_cannot_wait_says_so(tmp_path: Path) -> None:
    """Another writer holds the file: nothing is written, and it is told."""
    file = tmp_path / "jacket.yaml"
    file.write_bytes(JACKET.read_bytes())
    script = (
        "import sys; import advisor.textio.locking as l; l.WAIT = 0.2;"
        "from advisor.cli.main import ended; sys.exit(ended(sys.argv[1:]))"
    )
    with locked(file):
        code, told = ended(began("-c", script, "order", str(file), "--tick", "join shoulder"))
    assert (2, True) == (code, "another run is writing this; nothing was written" in told)
    assert JACKET.read_bytes() == file.read_bytes()


def test_a_disk_without_room_keeps_the_old_file(tmp_path: Path) -> None:
    """The file cannot grow: one sentence, exit 2, the old file, and nothing beside it."""
    file = tmp_path / "jacket.yaml"
    file.write_bytes(JACKET.read_bytes())
    room = file.stat().st_size

    def small() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (room, room))

    words = ("-m", "advisor", "order", str(file), "--tick", "join shoulder")
    code, told = ended(began(*words, before=small))
    assert 2 == code
    assert told == f"{file}: cannot write this file: this file would be too large for this disk\n"
    assert JACKET.read_bytes() == file.read_bytes()
    assert ["jacket.yaml"] == names(tmp_path)


def _fill(path: Path) -> None:
    with path.open("wb", buffering=0) as filler, contextlib.suppress(OSError):
        while True:
            filler.write(b"x" * 512)


def test_a_full_disk_is_told(tmp_path: Path) -> None:
    """A file system that is really full: exit 2, and what was there stays."""
    disk = tmp_path / "disk"
    disk.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(disk)]
    try:
        mounted = subprocess.run(mount, capture_output=True, check=False).returncode == 0
    except OSError:
        mounted = False
    if not mounted:
        pytest.skip("no small file system may be mounted here")
    try:
        file = disk / "jacket.yaml"
        file.write_bytes(JACKET.read_bytes())
        _fill(disk / "filler")
        for words in (
            ["order", str(file), "--tick", "join shoulder"],
            ["sheet", str(file), "--html", str(disk / "sheet.html")],
        ):
            code, told = ended(began("-m", "advisor", *words))
            assert (2, True) == (code, "the disk is full" in told), told
        assert JACKET.read_bytes() == file.read_bytes()
        assert ["filler", "jacket.yaml"] == names(disk)
    finally:
        subprocess.run(["umount", str(disk)], check=True)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["cloth", "", "--like", "silk velvet"], "makes no name"),
        (["cloth", "x" * 300, "--like", "silk velvet"], "makes no name"),
        (["cloth", "x" + " ! " * 100, "--like", "silk velvet"], "too long"),
        (["cloth", "a\u200bb", "--like", "silk velvet"], "cannot be printed"),
        (["cloth", "plush", "--also", "", "--like", "silk velvet"], "must not be empty"),
        (["name", "", "suiting"], "must not be empty"),
        (["name", "y" * 200, "suiting"], "too long"),
        (["name", "mine", ""], "must not be empty"),
        (["result", "plush", "--good", "needle.size=nan", "--like", "silk velvet"], "nothing was"),
        (["result", "latin", "--good", "needle.size=70"], "UTF-8"),
        (["result", "pipe", "--good", "needle.size=70"], "not an ordinary file"),
        (["rule", "none.yaml"], "no such file"),
    ],
)
def test_learn_refuses_in_words(tmp_path: Path, words: list[str], told: str) -> None:
    """Empty, long and unprintable names, and odd things in her folder: exit 2, nothing written."""
    own = tmp_path / "own"
    (own / "fabrics").mkdir(parents=True)
    (own / "fabrics/latin.yaml").write_bytes("id: latin\nname: Grün\n".encode("latin-1"))
    os.mkfifo(own / "fabrics/pipe.yaml")
    (own / "fabrics/gone.yaml").symlink_to(own / "nowhere.yaml")
    before = names(own / "fabrics")
    shipped = str(write_book(tmp_path / "shipped"))
    done = typed("learn", *words, env={"ADVISOR_OWN": str(own), "ADVISOR_KNOWLEDGE": shipped})
    assert (2, True) == (done.returncode, told in done.err), done.err
    assert before == names(own / "fabrics")
    assert ["fabrics"] == names(own)
