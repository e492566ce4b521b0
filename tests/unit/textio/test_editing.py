"""A change of one value leaves every other sign of a file as it was."""

from __future__ import annotations

import pytest

from advisor.errors import InputError
from advisor.textio.editing import edited
from advisor.textio.yamlfile import parse_yaml

FLOW = """\
# hers
top: 1   # a note
seams:
  - {name: a, layers: [x, {notion: y}, z], finish: none}   # beside
  - {name: b, layers: [x]}
"""
BLOCK = """\
seams:
  - name: a   # the first
    layers:
      - x
      # between
      - {notion: y}

  - finish: none
    name: b
    layers: [x]
last: 2
"""


@pytest.mark.parametrize(
    ("text", "steps", "value", "expected"),
    [
        (FLOW, ("seams", 1, "pressing"), "glide", "{name: b, layers: [x], pressing: glide}"),
        (FLOW, ("seams", 0, "finish"), None, "{notion: y}, z]}   # beside"),
        (FLOW, ("seams", 0, "name"), None, "- {layers: [x"),
        (FLOW, ("seams", 0, "finish"), "zigzag", "finish: zigzag}   # beside"),
        (FLOW, ("seams", 0, "layers", 1), {"notion": "w"}, "[x, {notion: w}, z]"),
        (FLOW, ("seams", 0, "layers", 1), None, "layers: [x, z]"),
        (FLOW, ("seams", 0, "layers", 2), None, "layers: [x, {notion: y}]"),
        (FLOW, ("top",), 3, "top: 3   # a note"),
        (BLOCK, ("seams", 0, "pressing"), "glide", "{notion: y}\n    pressing: glide\n\n  - fin"),
        (BLOCK, ("seams", 0, "layers", 0), None, "layers:\n      # between\n      - {notion"),
        (BLOCK, ("seams", 1, "finish"), None, "  - name: b\n    layers: [x]\n"),
        (BLOCK, ("seams", 1, "layers"), ["y"], "layers: [y]\nlast: 2"),
        (BLOCK, ("new",), "yes", "last: 2\nnew: yes\n"),
    ],
)
def test_only_the_value_is_changed(
    text: str, steps: tuple[str | int, ...], value: object, expected: str
) -> None:
    """The words asked for stand there, and no comment and no other line is lost."""
    new = edited(text, [(steps, value)], "p.yaml")
    assert expected in new
    comments = [line.partition("#")[2] for line in text.splitlines() if "#" in line]
    assert comments == [line.partition("#")[2] for line in new.splitlines() if "#" in line]
    assert parse_yaml(new, "p.yaml").data != parse_yaml(text, "p.yaml").data


def test_windows_line_ends_stay() -> None:
    """A file with CRLF keeps it on every line, the new one included."""
    new = edited(BLOCK.replace("\n", "\r\n"), [(("seams", 0, "pressing"), "glide")], "p.yaml")
    assert "    pressing: glide\r\n" in new
    assert new.count("\n") == new.count("\r\n")


def test_a_file_without_a_last_line_end_is_added_to() -> None:
    """The new key stands on a line of its own."""
    assert "a: 1\nb: 2" == edited("a: 1", [(("b",), 2)], "p.yaml")


def test_what_is_so_already_is_left_alone() -> None:
    """Not even a space is moved where nothing changes."""
    assert FLOW == edited(FLOW, [(("seams", 0, "finish"), "none"), (("gone",), None)], "p.yaml")


def test_a_way_that_leads_nowhere_is_refused() -> None:
    """There is no third seam and nothing below a word."""
    for steps in (("seams", 2, "name"), ("top", "x"), ("nowhere", "x")):
        with pytest.raises((InputError, IndexError)):
            edited(FLOW, [(steps, "a")], "p.yaml")


def test_the_only_key_of_a_group_is_taken_away() -> None:
    """What cannot be cut out of the text goes the long way, and comments are kept."""
    new = edited("# hers\na: {b: 1}\n", [(("a", "b"), None)], "p.yaml")
    assert {"a": {}} == parse_yaml(new, "p.yaml").data
    assert new.startswith("# hers\n")
