"""The cache is only data, always fresh, whole or absent, and never needed."""

from __future__ import annotations

import json
import os
import shutil
import stat
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from advisor.errors import InputError
from advisor.knowledge.model import Knowledge, from_plain
from advisor.knowledge.place import FOLDER_VARIABLE, knowledge_folder
from advisor.overlay import cache
from advisor.overlay import kept as kept_file
from advisor.overlay.kept import whole_text
from tests.unit.knowledge.small_book import FILES, RULES, small_knowledge, write_book
from tests.unit.overlay.spoiling import NOT_HERS


@pytest.fixture
def kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder for the cache."""
    folder = tmp_path / "kept"
    monkeypatch.setenv(cache.CACHE_VARIABLE, str(folder))
    return folder


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """A folder with the small knowledge."""
    return write_book(tmp_path / "book")


@pytest.fixture
def compiled(monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """The folders that were compiled, one for each time that the cache did not do."""
    real: Callable[..., dict[str, Any]] = cache.compile_folder
    seen: list[Path] = []

    def counting(folder: Path, *rest: Any) -> dict[str, Any]:
        seen.append(folder)
        return real(folder, *rest)

    monkeypatch.setattr(cache, "compile_folder", counting)
    return seen


def the_file(kept: Path) -> Path:
    """The one file of the cache."""
    (found,) = kept.iterdir()
    return found


def test_the_second_time_nothing_is_compiled(kept: Path, book: Path, compiled: list[Path]) -> None:
    """The same knowledge, without reading YAML again."""
    first, second = cache.load_knowledge(book), cache.load_knowledge(book)
    assert 1 == len(compiled)
    assert small_knowledge() == first == second


def test_the_cache_is_json_and_nothing_else(kept: Path, book: Path) -> None:
    """One file of plain data that any reader of JSON can read; no code, nothing beside it."""
    cache.load_knowledge(book)
    head, body = the_file(kept).read_text(encoding="utf-8").split("\n")
    assert {"mark", "sum"} == set(json.loads(head))
    assert cache.compile_folder(book) == json.loads(body)


def _touch(book: Path) -> None:
    path = book / "fabrics/velvet.yaml"
    about = path.stat()
    os.utime(path, ns=(about.st_atime_ns, about.st_mtime_ns + 1))


def _change(book: Path) -> None:
    path = book / "traits.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("slides", "slips about"), "utf-8")


def _same_size_and_time(book: Path) -> None:
    path = book / "traits.yaml"
    about = path.stat()
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("slides", "slipes"), encoding="utf-8")
    os.utime(path, ns=(about.st_atime_ns, about.st_mtime_ns))
    assert (about.st_size, about.st_mtime_ns) == (path.stat().st_size, path.stat().st_mtime_ns)


def _taken_back_in_place(book: Path) -> None:
    path = book / "traits.yaml"
    other = path.with_suffix(".new")
    other.write_bytes(path.read_bytes().replace(b"slides", b"slipes"))
    about = path.stat()
    os.utime(other, ns=(about.st_atime_ns, about.st_mtime_ns))
    other.replace(path)


def _add(book: Path) -> None:
    text = FILES["fabrics/velvet.yaml"].replace("velvet", "plush")
    (book / "fabrics/plush.yaml").write_text(text, encoding="utf-8")


def _remove(book: Path) -> None:
    (book / "rules/stitch/creeps.yaml").unlink()


def _rename(book: Path) -> None:
    text = RULES["rules/stitch/creeps.yaml"].replace("creeps", "crawls")
    (book / "rules/stitch/creeps.yaml").unlink()
    (book / "rules/stitch/crawls.yaml").write_text(text, encoding="utf-8")


@pytest.mark.parametrize(
    "do", [_touch, _change, _same_size_and_time, _taken_back_in_place, _add, _remove, _rename]
)
def test_any_change_of_a_file_compiles_again(
    kept: Path, book: Path, compiled: list[Path], do: Callable[[Path], None]
) -> None:
    """Touched, changed, added, removed, renamed: the answer is that of the files as they are."""
    cache.load_knowledge(book)
    do(book)
    found = cache.load_knowledge(book)
    assert 2 == len(compiled)
    cache.load_knowledge(book)
    assert 2 == len(compiled), "the new one was not kept"
    assert from_plain(cache.compile_folder(book)) == found


def test_an_example_is_no_knowledge(kept: Path, book: Path, compiled: list[Path]) -> None:
    """A demo project that changes does not make the knowledge stale."""
    cache.load_knowledge(book)
    (book / "examples").mkdir()
    (book / "examples/coat.yaml").write_text("garment: coat\n", encoding="utf-8")
    cache.load_knowledge(book)
    assert 1 == len(compiled)


def _other_mark(raw: bytes) -> bytes:
    head, body = raw.split(b"\n")
    return json.dumps({**json.loads(head), "mark": "0" * 40}).encode() + b"\n" + body


def _no_mark(raw: bytes) -> bytes:
    head, body = raw.split(b"\n")
    return json.dumps({"sum": json.loads(head)["sum"]}).encode() + b"\n" + body


def _one_word_changed(raw: bytes) -> bytes:
    assert raw.count(b"slides") == 1
    return raw.replace(b"slides", b"slipes")


def _with(change: Callable[[dict[str, Any]], Any]) -> Callable[[bytes], bytes]:
    def spoil(raw: bytes) -> bytes:
        head, body = raw.split(b"\n")
        data = json.loads(body)
        data = change(data) or data
        return whole_text(json.loads(head)["mark"], data)

    return spoil


SPOILT: dict[str, Callable[[bytes], bytes]] = {
    "another mark": _other_mark,
    "no mark": _no_mark,
    "one word changed": _one_word_changed,
    "another format": _with(lambda data: data.update(format=-1)),
    "no format": _with(lambda data: data.pop("format") and None),
    "a key is missing": _with(lambda data: data.pop("rules") and None),
    "a list": _with(lambda data: [1]),
    "a wrong inside": _with(lambda data: data.update(fibres={"silk": 3})),
}


@pytest.mark.parametrize("spoil", SPOILT.values(), ids=SPOILT.keys())
def test_a_cache_of_another_kind_is_not_read(
    kept: Path, book: Path, compiled: list[Path], spoil: Callable[[bytes], bytes]
) -> None:
    """Another mark, another content, or half of it: made again, and kept."""
    cache.load_knowledge(book)
    path = the_file(kept)
    path.write_bytes(spoil(path.read_bytes()))
    assert small_knowledge() == cache.load_knowledge(book)
    assert 2 == len(compiled)
    cache.load_knowledge(book)
    assert 2 == len(compiled)


def _a_dangling_link(path: Path) -> None:
    path.unlink()
    path.symlink_to(path.with_name("nowhere"))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no owners and pipes")
@pytest.mark.parametrize(
    "spoil",
    [
        *NOT_HERS,
        _a_dangling_link,
    ],
)
def test_a_cache_that_others_could_have_written_is_not_believed(
    kept: Path, book: Path, compiled: list[Path], spoil: Callable[[Path], None]
) -> None:
    """Only an ordinary file of her own counts; what stands there instead is replaced at once."""
    cache.load_knowledge(book)
    path = the_file(kept)
    spoil(path)
    assert small_knowledge() == cache.load_knowledge(book)
    assert 2 == len(compiled)
    assert stat.S_ISREG(path.lstat().st_mode)
    assert not path.stat().st_mode & 0o077
    cache.load_knowledge(book)
    assert 2 == len(compiled)


def test_leftovers_and_old_caches_are_swept(kept: Path, book: Path) -> None:
    """What a killed run left goes after an hour, and only so many folders keep their cache."""
    kept.mkdir()
    for n in range(30):
        (kept / f"knowledge-{n:012x}.json").write_text("{}", encoding="utf-8")
        os.utime(kept / f"knowledge-{n:012x}.json", (n, n))
    for name, age in ((".knowledge-old", 9000), (".knowledge-new", 0), ("hers.txt", 9000)):
        (kept / name).write_text("x", encoding="utf-8")
        os.utime(kept / name, (time.time() - age, time.time() - age))
    cache.load_knowledge(book)
    found = sorted(path.name for path in kept.iterdir())
    assert 12 == len([name for name in found if name.startswith("knowledge-")])
    assert "knowledge-00000000001d.json" in found
    assert {".knowledge-new", "hers.txt"} <= set(found)
    assert ".knowledge-old" not in found


def test_what_a_wheel_carries_is_read_while_its_files_are_the_same(
    kept: Path, book: Path, compiled: list[Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """No YAML is read at the first run; a file that was changed since is, and so is hers."""
    carried = tmp_path / "carried.json"
    carried.write_bytes(cache.shipped_text(book))
    compiled.clear()
    monkeypatch.setattr(cache, "SHIPPED", carried)
    copy = tmp_path / "copy"
    shutil.copytree(book, copy)
    assert small_knowledge() == cache.load_knowledge(copy)
    assert [] == compiled
    _same_size_and_time(copy)
    cache.load_knowledge(copy)
    assert [copy] == compiled
    carried.write_bytes(carried.read_bytes().replace(b"slides", b"slipes"))
    shutil.rmtree(kept)
    assert small_knowledge() == cache.load_knowledge(book)
    assert [copy, book] == compiled


def test_a_long_reading_is_told(kept: Path, book: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is silent for more than half a second, and what is quick says nothing."""
    told: list[str] = []
    cache.load_knowledge(book, slow=lambda: told.append("slow"))
    assert [] == told
    shutil.rmtree(kept)
    real = cache.compile_folder

    def slowly(*words: Any) -> dict[str, Any]:
        time.sleep(0.2)
        return real(*words)

    monkeypatch.setattr(cache, "LONG", 0.05)
    monkeypatch.setattr(cache, "compile_folder", slowly)
    cache.load_knowledge(book, slow=lambda: told.append("slow"))
    assert ["slow"] == told


@pytest.mark.parametrize(
    "content",
    [b"", b"{", b"\x00\xff\xfe garbage", b"null", b"[]", b'"text"', b"[" * 100_000, b"\xff" * 100],
    ids=["empty", "cut", "binary", "null", "list", "text", "deep", "not utf-8"],
)
def test_a_corrupt_cache_is_made_again(
    kept: Path, book: Path, compiled: list[Path], content: bytes
) -> None:
    """Whatever stands there, the answer is right and the file is mended."""
    cache.load_knowledge(book)
    the_file(kept).write_bytes(content)
    assert small_knowledge() == cache.load_knowledge(book)
    assert small_knowledge() == cache.load_knowledge(book)
    assert 2 == len(compiled)


def test_a_cache_cut_anywhere_is_made_again(kept: Path, book: Path) -> None:
    """A file that lost its end never passes for a whole one."""
    cache.load_knowledge(book)
    path = the_file(kept)
    whole = path.read_bytes()
    for part in (1, len(whole) // 3, len(whole) // 2, len(whole) - 1):
        path.write_bytes(whole[:part])
        assert small_knowledge() == cache.load_knowledge(book)
        assert len(whole) == path.stat().st_size


def test_a_cache_far_too_large_is_not_read(
    kept: Path, book: Path, compiled: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Something else that stands in its place is not swallowed."""
    cache.load_knowledge(book)
    monkeypatch.setattr(kept_file, "MOST_BYTES", 100)
    assert small_knowledge() == cache.load_knowledge(book)
    assert 2 == len(compiled)


def test_a_cache_that_cannot_be_written_changes_nothing(
    tmp_path: Path, book: Path, compiled: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where a file is in the way of the folder the knowledge is compiled each time, and no more."""
    blocked = tmp_path / "file"
    blocked.write_text("in the way", encoding="utf-8")
    monkeypatch.setenv(cache.CACHE_VARIABLE, str(blocked / "kept"))
    assert small_knowledge() == cache.load_knowledge(book)
    assert small_knowledge() == cache.load_knowledge(book)
    assert 2 == len(compiled)
    assert "in the way" == blocked.read_text(encoding="utf-8")


def test_a_folder_in_place_of_the_file_changes_nothing(kept: Path, book: Path) -> None:
    """It cannot be read nor replaced; the answer is right, and nothing is left behind."""
    cache.load_knowledge(book)
    path = the_file(kept)
    path.unlink()
    path.mkdir()
    (path / "something").write_text("x", encoding="utf-8")
    assert small_knowledge() == cache.load_knowledge(book)
    assert [path] == list(kept.iterdir())


def test_a_writing_that_fails_leaves_the_old_file_whole(
    kept: Path, book: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Written beside and moved into place: a failure half way leaves no half file behind."""
    cache.load_knowledge(book)
    path = the_file(kept)
    whole = path.read_bytes()
    _change(book)

    def fails(*_: object, **__: object) -> None:
        raise OSError("the disk is full")

    monkeypatch.setattr(os, "fdopen", fails)
    found = cache.load_knowledge(book)
    assert small_knowledge().entries == found.entries
    assert whole == path.read_bytes()
    assert [path] == list(kept.iterdir())


def test_knowledge_with_problems_is_not_kept(kept: Path, book: Path) -> None:
    """What was refused is refused again, and the last good one is not used for it."""
    cache.load_knowledge(book)
    path = book / "fabrics/velvet.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("pile: short", "piel: short"), "utf-8")
    for _ in range(2):
        with pytest.raises(InputError, match="piel"):
            cache.load_knowledge(book)


def test_each_folder_has_a_file_of_its_own(kept: Path, tmp_path: Path, book: Path) -> None:
    """Two knowledge folders do not push each other out."""
    other = write_book(tmp_path / "other")
    _add(other)
    assert "plush" not in cache.load_knowledge(book).entries
    assert "plush" in cache.load_knowledge(other).entries
    assert "plush" not in cache.load_knowledge(book).entries
    assert 2 == len(list(kept.iterdir()))


def test_a_folder_that_is_named_is_read(book: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """ADVISOR_KNOWLEDGE names the folder, and a folder that is no knowledge is refused."""
    monkeypatch.setenv(FOLDER_VARIABLE, str(book))
    assert book == knowledge_folder()
    monkeypatch.setenv(FOLDER_VARIABLE, str(book / "rules"))
    with pytest.raises(InputError, match="no knowledge here"):
        cache.load_knowledge()


def test_two_at_once_both_answer_and_leave_one_whole_file(kept: Path, book: Path) -> None:
    """Four processes start on an empty cache together: each has the answer, the file is whole."""
    code = (
        "import sys; from pathlib import Path; from advisor.overlay.cache import load_knowledge;"
        "k = load_knowledge(Path(sys.argv[1])); print(len(k.rules), *sorted(k.entries))"
    )
    running = [
        subprocess.Popen(
            [sys.executable, "-c", code, str(book)],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            cwd=Path(__file__).parents[3],
        )
        for _ in range(4)
    ]
    answers = [process.communicate(timeout=60) for process in running]
    known: Knowledge = small_knowledge()
    expected = " ".join([str(len(known.rules)), *sorted(known.entries)]) + "\n"
    assert [(expected, "")] * 4 == answers
    assert known == cache.load_knowledge(book)
    assert 1 == len(list(kept.iterdir()))
