"""Kinds of place and methods as files: what is wrong in one is named with its line."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from advisor.errors import InputError
from advisor.knowledge.place import knowledge_folder
from advisor.overlay.cache import compile_folder
from tests.garments.whole import known

FRENCH = "methods/french-seam.yaml"
WRONG = [
    (FRENCH, "makes: [seam, yoke]", "makes: [seem, yoke]", 3, "unknown kind of place 'seem'"),
    (FRENCH, "  - work: trim\n", "  - work: trimm\n", 29, "unknown piece of work 'trimm'"),
    (FRENCH, "  seam: [French]", "  seam: [Frensh]", 6, "unknown option of seam.kind 'Frensh'"),
    (FRENCH, "verb: enclose", "verb: join", 36, "two stages are called 'join'"),
    (FRENCH, "of {name} to", "of {nme} to", 30, "unknown word in braces 'nme'"),
    (FRENCH, "when: [[tried on]]", "when: [[tryed on]]", 22, "tryed on"),
    (FRENCH, "name: French seam", "name: felled", 2, ""),
    ("places.yaml", "usual: plain-seam", "usual: plain-dart", 27, "does not make a seam"),
    ("places.yaml", "notions: [zip]", "notions: [zipp]", 0, "unknown notion 'zipp'"),
    (
        "methods/lining-hem.yaml",
        "  allowed:",
        '  deep: "{2 cm} deep"\n  allowed:',
        0,
        "say how deep it is turned",
    ),
    ("operations.yaml", "place: [belt-loop]", "place: [beltloop]", 0, "unknown kind of place"),
]


@pytest.mark.parametrize(("file", "old", "new", "line", "message"), WRONG)
def test_a_word_that_names_nothing_is_told_with_its_line(
    file: str, old: str, new: str, line: int, message: str, tmp_path: Path
) -> None:
    """File, line, column and the nearest word; a name that is free is no fault."""
    folder = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), folder)
    path = folder / file
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), "utf-8")
    if not message:
        assert compile_folder(folder)["places"]["methods"]["french-seam"]["name"] == "felled"
        return
    with pytest.raises(InputError) as caught:
        compile_folder(folder)
    found = [p for p in caught.value.problems if message in f"{p.message} {p}"]
    assert found
    where = found[0].where
    assert where is not None
    assert Path(where.file).name == path.name
    assert where.line == line or (line == 0 and (where.line or 0) > 1)
    assert (where.column or 0) >= 1


def test_a_hem_that_is_measured_has_its_figures() -> None:
    """What is usual, what it takes at most, or words where something else measures it."""
    methods = known().places.methods
    turns = [m.turns for m in methods.values() if m.turns]
    assert all(bool(t.deep) + bool(t.usual) + bool(t.allowed) == 1 for t in turns)
    worded = {m.id for m in methods.values() if m.turns and m.turns.deep}
    assert {"faced-hem", "horsehair-hem", "wide-double-hem"} == worded
