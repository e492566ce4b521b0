"""`advisor check FILE --take`: a remedy is written into the project, and its conflict is gone."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.typed import typed

PROJECT = """\
# My jacket
garment: Jacket   # for the summer
fabrics:
  shell: {fabric: linen suiting, fibres: {linen: 100}}
  frill: {fabric: organza, fibres: {nylon: 100}}   # the gift
  pile: {fabric: velvet, fibres: {viscose: 100}}
seams:
  - {name: side, layers: [shell, shell], length: 50 cm}
  # the frill goes on last
  - {name: hem frill, layers: [shell, frill], length: 90 cm}
  - name: collar
    layers:
      - pile
      - {notion: woven fusible interfacing}
      - pile
    length: 40 cm
"""


def run(*words: str) -> tuple[int, str]:
    """The exit code of a command and what it prints, as somebody types it."""
    done = typed(*(["check", *words] if words[0] != "order" else words))
    return done.returncode, done.out


@pytest.fixture
def project(tmp_path: Path) -> Path:
    path = tmp_path / "jacket.yaml"
    path.write_bytes(PROJECT.encode())
    return path


def conflicts(path: Path) -> list[tuple[int, str]]:
    _, text = run(str(path), "--json")
    return [(c["number"], c["place"]) for c in json.loads(text)["conflicts"]]


def test_taking_one_remedy_cures_one_conflict_and_keeps_the_rest(project: Path) -> None:
    """Number 2 is the frill: one key more on its line, every comment where it was."""
    assert [(1, "collar"), (2, "hem frill")] == conflicts(project)
    code, said = run(str(project), "--take", "2")
    assert 1 == code
    assert "pressed first: [shell]" in said
    expected = PROJECT.replace("length: 90 cm}", "length: 90 cm, pressed first: [shell]}")
    assert expected == project.read_text()
    assert [(1, "collar")] == conflicts(project)


def test_the_second_remedy_of_a_conflict_is_taken_by_two_numbers(project: Path) -> None:
    """2.2 is what stands after the first 'or'."""
    _, text = run(str(project), "--json")
    second = json.loads(text)["conflicts"][1]["remedies"][1]
    assert "2.2" == second["take"]
    run(str(project), "--take", "2.2")
    assert "pressing: finger-press" in project.read_text()


def test_taking_all_ends_with_nought(project: Path) -> None:
    """The cheapest set that was offered is written, and nothing is left against the project."""
    _, text = run(str(project), "--json")
    offered = json.loads(text)["cure_all"]
    assert ["1", "2"] == offered["takes"]
    code, _ = run(str(project), "--take", "all")
    assert 0 == code
    assert (0, []) == (run(str(project))[0], conflicts(project))
    assert [line for line in PROJECT.splitlines() if "#" in line] == [
        line for line in project.read_text().splitlines() if "#" in line
    ]


def test_several_numbers_are_taken_at_once(project: Path) -> None:
    """Two conflicts, two remedies, one writing."""
    assert 0 == run(str(project), "--take", "1,2")[0]


def test_an_option_that_is_given_twice_takes_both(project: Path) -> None:
    """The numbers are those of one printing, as with a comma between them."""
    done = typed("check", str(project), "--take", "1", "--take", "2")
    assert 0 == done.returncode
    assert "notion: sew-in interfacing" in project.read_text()
    assert "pressed first: [shell]" in project.read_text()


def test_what_was_taken_is_named_and_what_has_another_number_now(project: Path) -> None:
    """Typed once more the same number means another conflict, and that is said before."""
    done = typed("check", str(project), "--take", "1")
    assert "Taken: the remedy of 1, collar (interfacing)." in done.err
    assert "hem frill (iron) was 2 and is 1 now" in done.err
    again = typed("check", str(project), "--take", "1")
    assert "Taken: the remedy of 1, hem frill (iron)." in again.err
    assert "now" not in again.err


def test_windows_line_ends_and_a_byte_order_mark_stay(project: Path) -> None:
    """What her editor wrote is what she finds."""
    raw = b"\xef\xbb\xbf" + PROJECT.replace("\n", "\r\n").encode()
    project.write_bytes(raw)
    run(str(project), "--take", "all")
    new = project.read_bytes()
    assert new.startswith(b"\xef\xbb\xbf# My jacket\r\n")
    assert new.count(b"\n") == new.count(b"\r\n")
    assert new != raw


@pytest.mark.parametrize("words", ["3", "0", "1.9", "x", "1,1", "", "1.0", "-1", "all,1"])
def test_what_is_not_there_is_refused_and_nothing_is_written(project: Path, words: str) -> None:
    """A slip of the keyboard costs nothing."""
    code, _ = run(str(project), f"--take={words}")
    assert 2 == code
    assert PROJECT == project.read_text()


def test_a_project_without_a_conflict_has_nothing_to_take(project: Path) -> None:
    """Taking twice is told so, and the file stays."""
    run(str(project), "--take", "all")
    cured = project.read_text()
    assert 2 == run(str(project), "--take", "all")[0]
    assert cured == project.read_text()


def test_a_file_that_may_not_be_written_stays_as_it_is(
    project: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A full disk in the middle of writing leaves the whole old file."""

    def full(*_: object, **__: object) -> None:
        raise OSError(28, "no space left on device")

    monkeypatch.setattr("advisor.textio.files._write_new", full)
    assert 2 == run(str(project), "--take", "all")[0]
    assert PROJECT == project.read_text()
    assert [project] == list(project.parent.iterdir())


def test_what_was_saved_meanwhile_is_not_overwritten(
    project: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """She saved in her editor while the remedy was worked out: what she saved stays."""
    from advisor.project import taking

    honest = taking.with_lines
    saved: list[int] = []

    def slow(*words: object) -> str:
        if not saved:
            saved.append(project.write_text(PROJECT + "# saved\n"))
        return honest(*words)  # type: ignore[arg-type]

    monkeypatch.setattr(taking, "with_lines", slow)
    assert 0 == run(str(project), "--take", "all")[0]
    new = project.read_text()
    assert new.endswith("# saved\n")
    assert "pressed first: [shell]" in new


def test_the_order_of_work_does_what_was_taken(project: Path) -> None:
    """The linen is pressed hot before the frill is joined, once the project says so."""
    run(str(project), "--take", "all")
    code, text = run("order", str(project), "--json")
    assert 0 == code
    steps = [row["step"] for row in json.loads(text)["order"]]
    assert steps.index("hot press shell") < steps.index("join hem frill")
