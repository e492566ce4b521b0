from __future__ import annotations

import errno
import os
import stat
from pathlib import Path
from typing import NoReturn

import pytest

from advisor.errors import InputError
from advisor.textio.files import write_whole


def names(folder: Path) -> list[str]:
    """Return the names in a folder, hidden ones included."""
    return sorted(path.name for path in folder.iterdir())


def refusal(path: Path, text: str = "new", *, replace: bool) -> str:
    """Return why a file is not written, without its folder."""
    with pytest.raises(InputError) as caught:
        write_whole(path, text, replace=replace)
    return str(caught.value).replace(f"{path.parent}{os.sep}", "")


@pytest.mark.parametrize("replace", [True, False])
def test_a_new_file_holds_exactly_the_text(tmp_path: Path, replace: bool) -> None:
    """The text is written as UTF-8 with its own line ends, and nothing else is left there."""
    write_whole(tmp_path / "sheet.txt", "110 °C\r\nend\n", replace=replace)
    assert (tmp_path / "sheet.txt").read_bytes() == b"110 \xc2\xb0C\r\nend\n"
    assert names(tmp_path) == ["sheet.txt"]


def test_a_file_is_overwritten_only_when_asked(tmp_path: Path) -> None:
    """Without leave the old text stays; with leave the new text replaces it."""
    path = tmp_path / "sheet.txt"
    path.write_text("old", encoding="utf-8")
    assert refusal(path, replace=False) == (
        "sheet.txt: there is a file of this name already; it is not overwritten unless asked"
    )
    assert path.read_text(encoding="utf-8") == "old"
    write_whole(path, "new", replace=True)
    assert path.read_text(encoding="utf-8") == "new"
    assert names(tmp_path) == ["sheet.txt"]


def test_a_file_that_appears_meanwhile_is_not_overwritten(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Somebody else's file of the same name, made while ours was written, survives."""
    path = tmp_path / "sheet.txt"
    link = Path.hardlink_to

    def late(self: Path, target: Path) -> None:
        path.write_text("theirs", encoding="utf-8")
        link(self, target)

    monkeypatch.setattr(Path, "hardlink_to", late)
    assert "already" in refusal(path, replace=False)
    assert (path.read_text(encoding="utf-8"), names(tmp_path)) == ("theirs", ["sheet.txt"])


@pytest.mark.parametrize("theirs", [False, True])
def test_a_disk_without_hard_links_is_written_as_safely(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, theirs: bool
) -> None:
    """Where links do not exist the file is claimed by being made, and still never overwritten."""
    path = tmp_path / "sheet.txt"

    def no_links(self: Path, target: Path) -> NoReturn:
        if theirs:
            path.write_text("theirs", encoding="utf-8")
        raise OSError(errno.EPERM, "")

    monkeypatch.setattr(Path, "hardlink_to", no_links)
    if theirs:
        assert "already" in refusal(path, replace=False)
    else:
        write_whole(path, "new", replace=False)
    assert path.read_text(encoding="utf-8") == ("theirs" if theirs else "new")
    assert names(tmp_path) == ["sheet.txt"]


@pytest.mark.parametrize("replace", [True, False])
@pytest.mark.parametrize("fault", [OSError(errno.ENOSPC, ""), KeyboardInterrupt()])
def test_a_failure_leaves_the_folder_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fault: BaseException, replace: bool
) -> None:
    """A full disk or an interruption leaves the old file and no other."""
    path = tmp_path / "sheet.txt"
    if replace:
        path.write_text("old", encoding="utf-8")
    before = names(tmp_path)

    def fail(_: int) -> NoReturn:
        raise fault

    monkeypatch.setattr(os, "fsync", fail)
    with pytest.raises((InputError, KeyboardInterrupt)) as caught:
        write_whole(path, "new", replace=replace)
    if isinstance(fault, OSError):
        assert str(caught.value) == f"{path}: cannot write this file: the disk is full"
    assert before == names(tmp_path)
    assert not replace or path.read_text(encoding="utf-8") == "old"


def test_places_that_cannot_be_written_are_said_plainly(tmp_path: Path) -> None:
    """Each kind of impossible place has its own words."""
    (tmp_path / "file").write_text("", encoding="utf-8")
    (tmp_path / "folder").mkdir()
    start = "cannot write this file: "
    for replace in (True, False):
        gone = refusal(tmp_path / "gone" / "a", replace=replace)
        assert gone == f"a: {start}no such folder"
        inside = refusal(tmp_path / "file" / "a", replace=replace)
        assert inside == f"a: {start}a part of this path is a file, not a folder"
        folder = refusal(tmp_path / "folder", replace=replace)
        assert folder == f"folder: {start}this is a folder, not a file"
        assert refusal(tmp_path / ("x" * 300), replace=replace).endswith("this name is too long")
        assert "not a usable file name" in refusal(tmp_path / "a\0b", replace=replace)
    assert names(tmp_path) == ["file", "folder"]


def test_text_that_utf8_cannot_hold_is_refused(tmp_path: Path) -> None:
    """Half a character is refused before a file is made."""
    assert "UTF-8 cannot write" in refusal(tmp_path / "a", "\ud800", replace=True)
    assert names(tmp_path) == []


@pytest.mark.skipif(os.name != "posix", reason="needs permissions as POSIX has them")
@pytest.mark.skipif(hasattr(os, "geteuid") and os.geteuid() == 0, reason="root may write anywhere")
def test_permissions_are_respected(tmp_path: Path) -> None:
    """Neither a closed folder nor a file that its owner closed is written to."""
    path = tmp_path / "closed" / "a"
    path.parent.mkdir()
    path.write_text("old", encoding="utf-8")
    path.chmod(0o400)
    assert refusal(path, replace=True).endswith("this place may not be written to")
    path.parent.chmod(0o500)
    assert refusal(path.parent / "b", replace=False).endswith("this place may not be written to")
    path.parent.chmod(0o700)
    assert path.read_text(encoding="utf-8") == "old"


@pytest.mark.skipif(os.name != "posix", reason="needs permissions as POSIX has them")
def test_a_replaced_file_keeps_its_permissions(tmp_path: Path) -> None:
    """A file that only its owner may read stays so."""
    path = tmp_path / "private"
    path.write_text("old", encoding="utf-8")
    path.chmod(0o600)
    write_whole(path, "new", replace=True)
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


@pytest.mark.skipif(os.name != "posix", reason="needs links and devices")
def test_a_link_stays_a_link_and_its_file_changes(tmp_path: Path) -> None:
    """Writing through a link changes what it points at; a ring of links is refused."""
    (tmp_path / "real").mkdir()
    target = tmp_path / "real" / "sheet.txt"
    target.write_text("old", encoding="utf-8")
    link = tmp_path / "link"
    link.symlink_to(target)
    assert "already" in refusal(link, replace=False)
    write_whole(link, "new", replace=True)
    assert (True, "new") == (link.is_symlink(), target.read_text(encoding="utf-8"))
    assert (["link", "real"], ["sheet.txt"]) == (names(tmp_path), names(tmp_path / "real"))
    ring = tmp_path / "ring"
    ring.symlink_to(ring)
    assert "cannot write this file" in refusal(ring, replace=True)


@pytest.mark.skipif(os.name != "posix", reason="needs links and devices")
def test_a_link_that_points_nowhere_is_not_replaced_unasked(tmp_path: Path) -> None:
    """A dangling link is a name that is taken."""
    link = tmp_path / "link"
    link.symlink_to(tmp_path / "gone")
    assert "already" in refusal(link, replace=False)
    write_whole(link, "new", replace=True)
    assert (True, ["gone", "link"]) == (link.is_symlink(), names(tmp_path))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with names")
def test_a_pipe_or_device_is_never_swapped_for_a_file(tmp_path: Path) -> None:
    """What is not an ordinary file stays what it is."""
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    assert refusal(pipe, replace=True).endswith("this is not an ordinary file")
    assert (True, ["pipe"]) == (pipe.is_fifo(), names(tmp_path))
