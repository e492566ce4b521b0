from __future__ import annotations

import os
import time
from pathlib import Path

import pytest

from advisor.errors import InputError, Where
from advisor.textio.yamlfile import MOST_BYTES, MOST_LEVELS, Document, parse_yaml, read_yaml

PROJECT = """\
# a comment
garment: Bandstand jacket
fabrics:
  shell: {fabric: linen suiting, fibres: {linen: 100}}
seams:
  - name: hem frill
    layers: [shell, {use: frill, fullness: 2.5}]
"""


def refusal(text: str) -> str:
    """Return what is said about a text that must be refused."""
    with pytest.raises(InputError) as caught:
        parse_yaml(text, "p.yaml")
    return str(caught.value)


def refused_file(path: Path) -> str:
    """Return what is said about a file that must be refused, without its folder."""
    with pytest.raises(InputError) as caught:
        read_yaml(path)
    return str(caught.value).replace(f"{path.parent}{os.sep}", "")


def test_a_file_becomes_plain_data(tmp_path: Path) -> None:
    """A file is read into dicts, lists, words and numbers."""
    path = tmp_path / "p.yaml"
    path.write_text(PROJECT, encoding="utf-8")
    document = read_yaml(path)
    assert document.file == str(path)
    assert document.data == {
        "garment": "Bandstand jacket",
        "fabrics": {"shell": {"fabric": "linen suiting", "fibres": {"linen": 100}}},
        "seams": [{"name": "hem frill", "layers": ["shell", {"use": "frill", "fullness": 2.5}]}],
    }


@pytest.mark.parametrize(
    ("steps", "value", "key"),
    [
        (("garment",), (2, 10), (2, 1)),
        (("fabrics", "shell"), (4, 10), (4, 3)),
        (("fabrics", "shell", "fibres", "linen"), (4, 50), (4, 43)),
        (("seams", 0), (6, 5), (6, 5)),
        (("seams", 0, "layers", 1, "fullness"), (7, 44), (7, 34)),
        (("seams", 0, "layers", 1, "colour", "hue"), (7, 21), (7, 21)),
        (("seams", 9), (6, 3), (6, 3)),
        ((), (2, 1), (2, 1)),
    ],
)
def test_every_key_and_value_has_its_place(
    steps: tuple[str | int, ...], value: tuple[int, int], key: tuple[int, int]
) -> None:
    """Places count from 1; a way that leads nowhere gives the deepest thing that exists."""
    document = parse_yaml(PROJECT, "p.yaml")
    assert Where("p.yaml", *value) == document.where(*steps)
    assert Where("p.yaml", *key) == document.where_key(*steps)


def test_positions_know_what_is_in_the_file() -> None:
    """A way is in the positions exactly when a value stands there."""
    positions = parse_yaml(PROJECT, "p.yaml").positions
    assert ("seams", 0, "name") in positions
    assert ("seams", 1) not in positions


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("no", "no"),
        ("on", "on"),
        ("yes", "yes"),
        ("2024-01-01", "2024-01-01"),
        ("12:30", "12:30"),
        ("1_000", "1_000"),
        ("0x1F", "0x1F"),
        ("0o17", "0o17"),
        ("5/8 in", "5/8 in"),
        ("true", True),
        ("False", False),
        ("~", None),
        ("null", None),
        ("", None),
        ("7", 7),
        ("-7", -7),
        ("2.5", 2.5),
        (".5", 0.5),
        ("1e3", 1000.0),
        ("'7'", "7"),
        ('"true"', "true"),
        ("''", ""),
        ('"#27455f"', "#27455f"),
        ("|\n  two\n  lines\n", "two\nlines\n"),
        (">\n  one\n  line\n", "one line\n"),
    ],
)
def test_words_and_numbers_are_those_of_yaml_1_2(written: str, expected: object) -> None:
    """Only plain numbers, true, false and null are more than text; quotes make text."""
    found = parse_yaml(f"a: {written}", "p.yaml").data["a"]
    assert (type(expected), expected) == (type(found), found)


def test_an_old_version_line_changes_nothing() -> None:
    """Even under '%YAML 1.1' the word no is a word."""
    assert parse_yaml("%YAML 1.1\n---\na: no\n", "p.yaml").data == {"a": "no"}


DEEP = f"p.yaml:1:{{}}: nested too deeply: at most {MOST_LEVELS} levels"
REFUSED = [
    ("", "p.yaml: this file is empty"),
    (" \n\n", "p.yaml: this file is empty"),
    ("# only\n", "p.yaml: this file is empty: nothing is written in it"),
    ("---\n", "p.yaml: this file is empty: nothing is written in it"),
    ("a: 1\nb: 2\na: 3\n", "p.yaml:3:1: the key 'a' is here and already on line 1"),
    ("a: {b: 1, b: 2}", "p.yaml:1:11: the key 'b' is here and already on line 1"),
    ("a: &x 1\n", "p.yaml:1:4: the anchor '&x' is not read; write the value out"),
    ("a: *x\n", "p.yaml:1:4: the alias '*x' is not read; write the value out"),
    ("a: !!str 5\n", "p.yaml:1:4: the tag '!!str' is not read; leave it out"),
    ("a: !mine {x: 1}", "p.yaml:1:4: the tag '!mine' is not read; leave it out"),
    ("a: 1\n---\nb: 2\n", "p.yaml:2:1: a second document ('---'); only one is read from a file"),
    ("1: 2\n", "p.yaml:1:1: the key 1 is not text; put it in quotes if it is meant"),
    ("true: 2\n", "p.yaml:1:1: the key true is not text; put it in quotes if it is meant"),
    ("? [a]\n: 1\n", "p.yaml:1:3: a key must be a word, not a list or a group"),
    ("a: .nan\n", "p.yaml:1:4: .nan is not a number that can be used"),
    ("a: -.INF\n", "p.yaml:1:4: -.INF is not a number that can be used"),
    ("a: 1e999\n", "p.yaml:1:4: this number is too long or too large"),
    ("a: " + "9" * 5000, "p.yaml:1:4: this number is too long or too large"),
    ("[" * 100_000, DEEP.format(1001)),
    ("{a: " * 5_000, DEEP.format(161)),
    ("- " * 5_000, DEEP.format(81)),
    ("a:\n\tb: 1\n", "p.yaml:2:1: a tab is used for indentation; use spaces"),
    (
        "a: b: c\n",
        (
            "p.yaml:1:5: a second ': ' on one line, or a line indented too far; "
            "put quotes round text that holds ': '"
        ),
    ),
    (
        "a:\n  - b\n c: d\n",
        "p.yaml:3:2: this line does not fit the lines above it; check its indentation",
    ),
    ("a: 'x\n", "p.yaml:1:4: a quotation mark is opened and never closed"),
    ("a: [1, 2\n", "p.yaml:1:4: a list opened with '[' is not closed, or lacks a comma"),
    ("a: {b: 1\n", "p.yaml:1:4: a group opened with '{' is not closed, or lacks a comma"),
    ("- a\nb\n", "p.yaml:3:1: a key without ':' after it"),
    ("a: - b\n", "p.yaml:1:4: a list may not begin here; put it on its own lines"),
    (
        'a: "\\q"\n',
        "p.yaml:1:5: a '\\' in double quotes begins no sign that is known; use single quotes",
    ),
    ("a: {b\n", "p.yaml:1:4: a group opened with '{' is not closed, or lacks a comma"),
    ("a: @x\n", "p.yaml:1:4: a word may not begin with this character; put it in quotes"),
    ("a\x00b", "p.yaml:1:2: a character that is not text (U+0000)"),
    ("a: 1\nb: \x1b[31m", "p.yaml:2:4: a character that is not text (U+001B)"),
]


@pytest.mark.parametrize(("text", "expected"), REFUSED, ids=range(len(REFUSED)))
def test_what_is_not_plain_data_is_refused_at_its_place(text: str, expected: str) -> None:
    """Each thing that is not read says so with line and column."""
    assert expected == refusal(text)


def test_all_problems_of_a_file_are_told_at_once() -> None:
    """Three faults in one file are three problems, in the order of the file."""
    assert refusal("a: &x 1\na: .inf\nb: !t 2\n").split("\n") == [
        "p.yaml:1:4: the anchor '&x' is not read; write the value out",
        "p.yaml:2:1: the key 'a' is here and already on line 1",
        "p.yaml:2:4: .inf is not a number that can be used",
        "p.yaml:3:4: the tag '!t' is not read; leave it out",
    ]


def test_an_alias_bomb_is_never_unfolded() -> None:
    """Aliases of aliases are refused one by one; nothing grows."""
    rows = ["a0: &a0 [x, x]"]
    rows += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 20)]
    assert "and 171 more" in refusal("\n".join(rows))


@pytest.mark.parametrize("levels", [1, MOST_LEVELS])
def test_forty_levels_are_read(levels: int) -> None:
    """Nesting is refused only beyond the limit."""
    data = parse_yaml("[" * levels + "x" + "]" * levels, "p.yaml").data
    for _ in range(levels):
        assert len(data) == 1
        data = data[0]
    assert data == "x"


def test_a_file_that_is_not_there_is_named(tmp_path: Path) -> None:
    """Missing files, folders and impossible names are problems, not tracebacks."""
    (tmp_path / "text").write_text("a: 1", encoding="utf-8")
    assert refused_file(tmp_path / "gone.yaml") == "gone.yaml: no such file"
    assert refused_file(tmp_path / "text" / "p.yaml").endswith("p.yaml: no such file")
    assert refused_file(tmp_path / ("x" * 5000)).endswith("(File name too long)")
    assert "cannot be read" in refused_file(tmp_path / "a\0b")
    folder = tmp_path / "folder"
    folder.mkdir()
    assert refused_file(folder) == "folder: this is a folder, not a file"


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with names")
def test_a_pipe_does_not_keep_us_waiting(tmp_path: Path) -> None:
    """A named pipe without a writer is refused at once."""
    os.mkfifo(tmp_path / "pipe")
    assert refused_file(tmp_path / "pipe") == "pipe: this is not an ordinary file"


@pytest.mark.parametrize(
    ("raw", "expected"),
    [
        (b"", "p: this file is empty"),
        (b"a: 1\nb: \xff\n", "p:2:4: not UTF-8 text; save the file as UTF-8"),
        ("é: é".encode() + b"\xe9", "p:1:5: not UTF-8 text; save the file as UTF-8"),
        ("a: 1".encode("utf-16"), "p: this file is UTF-16; save it as UTF-8"),
        (b"a: 1\n\x00\x01", "p:2:1: this is a binary file, not text"),
        (b"a: " + b"x" * MOST_BYTES, "p: too large: at most 1 MB"),
    ],
    ids=["empty", "byte", "latin", "utf16", "binary", "large"],
)
def test_bytes_that_are_not_text_are_refused(tmp_path: Path, raw: bytes, expected: str) -> None:
    """Size and encoding are checked before anything is read as YAML."""
    path = tmp_path / "p"
    path.write_bytes(raw)
    assert expected == refused_file(path)


def test_a_byte_order_mark_and_windows_line_ends_are_accepted(tmp_path: Path) -> None:
    """What an editor adds unasked changes neither data nor places."""
    path = tmp_path / "p.yaml"
    path.write_bytes("\ufeffa: é\r\nb: 2\r\n".encode())
    document: Document = read_yaml(path)
    assert document.data == {"a": "é", "b": 2}
    assert (Where(str(path), 1, 1), Where(str(path), 2, 4)) == (
        document.where_key("a"),
        document.where("b"),
    )


@pytest.mark.parametrize(
    "row",
    [
        "a: b: c\n",
        "[",
        "{a: ",
        "- ",
        "a:\n",
        '"',
        "&",
        "k: [1,\n",
        "a: b\n",
        "? ",
        "é: ü\n",
    ],
)
def test_a_megabyte_of_junk_is_refused_at_once(row: str) -> None:
    """The largest text that is read at all costs a second at most, whatever it holds."""
    text = (row * (MOST_BYTES // len(row.encode())))[:MOST_BYTES]
    begun = time.process_time()
    assert refusal(text).startswith("p.yaml")
    assert time.process_time() - begun < 2


@pytest.mark.parametrize(
    "text",
    [
        "%",
        "%TAG",
        "- : : -",
        "a: ``",
        "?",
        "!",
        "&",
        "*",
        "|",
        ">",
        "\\",
        '"\\xZZ"',
        "{,}",
        "[,]",
        'a: "\\ud800"',
        "%YAML 9.9\n---\na: 1",
        "...",
        "---\n...\n---",
        "\ufeff\ufeff",
        "- \n -",
    ],
)
def test_odd_text_ends_in_data_or_in_a_problem(text: str) -> None:
    """No text, however odd, is answered with a traceback."""
    try:
        said = parse_yaml(text, "p.yaml").file
    except InputError as error:
        said = str(error)
    assert said.startswith("p.yaml")
