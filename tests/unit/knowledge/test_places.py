"""Kinds of place and methods as files: what is wrong in one is named with its line."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from advisor.errors import InputError
from advisor.knowledge.place import knowledge_folder
from advisor.overlay.cache import compile_folder

FRENCH = "methods/french-seam.yaml"
WRONG = [
    (FRENCH, "makes: [seam]", "makes: [seem]", 3, "unknown kind of place 'seem'"),
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


@pytest.mark.parametrize(
    ("hem", "words", "most"),
    [
        ("narrow-rolled-hem", "{10 to 15 mm} allowed", 15),
        ("lining-hem", "{2 to 3 cm} allowed", 30),
        ("horsehair-hem", "as deep as the braid is wide", None),
    ],
)
def test_what_a_hem_takes_is_told_by_its_figures(hem: str, words: str, most: float | None) -> None:
    """The words of a hem that takes no more are made of its figures, which stand beside them."""
    turns = compile_folder(knowledge_folder())["places"]["methods"][hem]["turns"]
    assert (words, most) == (turns["deep"], turns.get("most"))
