"""Reading a folder: every file is looked at, and every problem is kept with its place."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.errors import InputError, Problem
from advisor.knowledge import load
from advisor.knowledge.load import files_of, read_book
from advisor.knowledge.place import knowledge_folder
from advisor.overlay.cache import compile_folder
from advisor.textio.yamlfile import read_yaml
from tests.unit.knowledge.small_book import FILES, RULES, rule, write_book


def told(problems: list[Problem], file: str) -> list[str]:
    """The problems of one file, without the folder."""
    return [str(p) for p in problems if p.where and p.where.file.endswith(file)]


def test_a_folder_without_aspects_is_no_knowledge(tmp_path: Path) -> None:
    """Another folder is refused as a whole, by name."""
    with pytest.raises(InputError, match="no knowledge here"):
        read_book(tmp_path)


def test_every_file_lands_on_its_shelf(tmp_path: Path) -> None:
    """Registers hold many entries, single files one; the area of a rule is its folder."""
    book = read_book(write_book(tmp_path))
    assert [] == book.problems
    assert {"suiting", "organza", "velvet", "lining", "jersey"} == set(book.fabrics)
    assert {"iron-on", "cool-fusible", "braid"} == set(book.notions)
    assert set(book.entries()) == set(book.fabrics) | set(book.notions)
    assert len(RULES) == len(book.rules)
    assert "stitch" == book.rules["creeps"].area
    assert {"norm", "page", "habit", "guess"} == set(book.sources)


def test_the_files_of_a_folder_have_a_fixed_order(tmp_path: Path) -> None:
    """However the disk lists them; examples are no knowledge."""
    write_book(tmp_path, {"examples/coat.yaml": "garment: coat\n"})
    names = [str(path.relative_to(tmp_path)) for path in files_of(tmp_path)]
    assert set(FILES | RULES) == set(names)
    fabrics = [name for name in names if name.startswith("fabrics/")]
    assert sorted(fabrics) == fabrics


def test_a_missing_register_is_told(tmp_path: Path) -> None:
    """Knowledge without its machines is not complete."""
    problems = read_book(write_book(tmp_path, {"machines.yaml": None})).problems
    assert any("no such file" in text for text in told(problems, "machines.yaml"))


def test_an_extra_key_is_refused_with_the_nearest_right_one(tmp_path: Path) -> None:
    """A misspelt key would be silence; it is a problem at its own line and column."""
    text = FILES["fabrics/velvet.yaml"].replace("structure: woven", "structur: woven")
    problems = read_book(write_book(tmp_path, {"fabrics/velvet.yaml": text})).problems
    shown = told(problems, "velvet.yaml")
    assert any("velvet.yaml:4:1: " in line and "structur" in line for line in shown)
    assert any("'structure'" in line for line in shown)


def test_a_wrong_word_of_a_form_is_told_with_its_place(tmp_path: Path) -> None:
    """A family that does not exist is named, at the value."""
    text = FILES["fabrics/velvet.yaml"].replace("family: piles", "family: piels")
    problems = read_book(write_book(tmp_path, {"fabrics/velvet.yaml": text})).problems
    (found,) = told(problems, "velvet.yaml")
    assert "velvet.yaml:3:9: " in found
    assert "piles" in found


def test_a_mistake_in_a_register_stands_at_its_line(tmp_path: Path) -> None:
    """Positions count from the top of the file, not of the entry."""
    text = FILES["traits.yaml"].replace("words: [no, yes]", "words: [no]")
    (found,) = told(read_book(write_book(tmp_path, {"traits.yaml": text})).problems, "traits.yaml")
    assert "traits.yaml:4:" in found


def test_a_register_is_a_mapping(tmp_path: Path) -> None:
    """A list of fibres has no ids."""
    problems = read_book(write_book(tmp_path, {"fibres.yaml": "- silk\n"})).problems
    assert any("fibres.yaml is a mapping of ids" in text for text in told(problems, "fibres.yaml"))


def test_the_id_is_the_name_of_the_file(tmp_path: Path) -> None:
    """Who looks for a fabric finds it by its file."""
    text = FILES["fabrics/velvet.yaml"].replace("id: velvet", "id: velours")
    problems = read_book(write_book(tmp_path, {"fabrics/velvet.yaml": text})).problems
    (found,) = told(problems, "velvet.yaml")
    assert "the id 'velours' and the file name 'velvet' differ" in found


def test_an_id_stands_in_one_file(tmp_path: Path) -> None:
    """The same rule in two areas is told with the other file."""
    twice = rule("press", "creeps", "{seam: {shape: curved}}", more="do: [Clip it.]\n")
    (found,) = told(read_book(write_book(tmp_path, {**twice})).problems, "creeps.yaml")
    assert "'creeps' stands in two files" in found
    assert "rules/press/creeps.yaml" in found


def test_a_rule_without_a_near_miss_is_refused(tmp_path: Path) -> None:
    """A rule proves itself both ways."""
    text = RULES["rules/stitch/creeps.yaml"].replace("  quiet: [{layers: [suiting]}]\n", "")
    problems = read_book(write_book(tmp_path, {"rules/stitch/creeps.yaml": text})).problems
    (found,) = told(problems, "creeps.yaml")
    assert "quiet" in found


def test_what_was_parsed_is_not_changed_by_compiling(monkeypatch: pytest.MonkeyPatch) -> None:
    """The tests parse a file once and compile it often; each time it has to be what it says."""
    fresh = {path: read_yaml(path) for path in files_of(knowledge_folder())}
    monkeypatch.setattr(load, "read_yaml", lambda path: fresh.get(path) or read_yaml(path))
    compile_folder(knowledge_folder())
    assert fresh == {path: read_yaml(path) for path in fresh}
