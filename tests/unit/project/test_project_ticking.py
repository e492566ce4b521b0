"""Ticks in a project file, and what a project says of its order: read, refused, kept."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.errors import InputError
from advisor.overlay.cache import load_knowledge
from advisor.project.load import garment_of
from advisor.project.ticking import tick_file, ticked
from advisor.project.wished import Added, Pinned
from advisor.project.wishes import minutes_of
from advisor.textio.yamlfile import parse_yaml

HEAD = """\
# My coat.
garment:   Coat   # two spaces kept
fabrics: {shell: {fabric:  gabardine}}   # in one line
seams:
    - {name: side,   layers: [shell, shell]}
"""


def test_the_first_tick_is_two_lines_more() -> None:
    """Everything the maker wrote stays byte for byte."""
    assert f"{HEAD}done:\n  - cut shell\n" == ticked(HEAD, ["cut shell"])


def test_a_second_tick_is_one_line_more() -> None:
    """Behind the others, with their indent, and comments between them stay."""
    before = f"{HEAD}done:\n- cut shell   # at night\n# then\n\nunits: us\n"
    after = f"{HEAD}done:\n- cut shell   # at night\n# then\n- mark shell\n\nunits: us\n"
    assert after == ticked(before, ["cut shell", "mark shell"])


def test_a_tick_taken_away_takes_its_line() -> None:
    """And the last one takes the key as well."""
    both = ticked(HEAD, ["cut shell", "mark shell"])
    assert ticked(HEAD, ["mark shell"]) == ticked(both, ["mark shell"])
    assert ticked(both, []) == HEAD


def test_a_list_in_one_line_is_kept_readable() -> None:
    """Where it is no list of lines, comments are kept and the data are right."""
    new = ticked(f"{HEAD}done: [cut shell]  # so far\n", ["cut shell", "mark shell"])
    assert "# two spaces kept" in new
    assert ["cut shell", "mark shell"] == parse_yaml(new, "x").data["done"]  # type: ignore[index,call-overload]


def test_line_ends_and_odd_names_stay() -> None:
    """Windows line ends stay, and a name that YAML would misread is quoted."""
    new = ticked(HEAD.replace("\n", "\r\n"), ["yes", "press a: b # c"])
    assert 'done:\r\n  - "yes"\r\n  - "press a: b # c"\r\n' in new


def test_a_file_is_written_whole(tmp_path: Path) -> None:
    """The file holds the tick afterwards."""
    file = tmp_path / "coat.yaml"
    file.write_text(HEAD, "utf-8")
    tick_file(file, ["cut shell"])
    assert f"{HEAD}done:\n  - cut shell\n" == file.read_text("utf-8")


def test_a_file_that_is_not_there_is_refused(tmp_path: Path) -> None:
    """With a sentence, not a traceback."""
    with pytest.raises(InputError):
        tick_file(tmp_path / "none.yaml", ["cut shell"])


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("90", 90.0),
        ("90min", 90.0),
        ("90 min", 90.0),
        ("1.5 h", 90.0),
        ("1 h 30 min", 90.0),
        (45, 45.0),
    ],
)
def test_a_length_of_time_is_read(text: object, minutes: float) -> None:
    """Minutes and hours, apart or together."""
    assert minutes == minutes_of(text)


@pytest.mark.parametrize("text", ["", "0", "-5 min", "long", "90 weeks", "min", "nan", "1e9"])
def test_what_is_no_length_of_time_is_refused(text: str) -> None:
    """Nothing, nought, too much and nonsense."""
    with pytest.raises((ValueError, KeyError)):
        minutes_of(text)


def garment(order: str):  # type: ignore[no-untyped-def]
    return garment_of(parse_yaml(HEAD + order, "coat.yaml"), load_knowledge())


def test_wishes_are_read() -> None:
    """All that a project may say of its order."""
    wishes = garment(
        "order:\n  add: [{step: bead, after: press side, before: [fit], minutes: 1 h}]\n"
        "  drop: [fit]\n  tie: [[join side, press side]]\n  pin: [{step: cut shell, at: 3}]\n"
        "  after: {label: [cut shell]}\n  costs: {foot: 5, needle: 0}\n  sitting: 2 h\n"
        "done: [cut shell]\n"
    ).wishes
    assert (Added("bead", ("press side",), ("fit",), 60.0),) == wishes.add
    assert (("fit",), (("join side", "press side"),)) == (wishes.drop, wishes.tie)
    assert (Pinned("cut shell", at=3),) == wishes.pin
    assert (("cut shell", "label"),) == wishes.after
    assert ({"foot": 5.0, "needle": 0.0}, 120.0) == (wishes.costs, wishes.sitting)
    assert ("cut shell",) == wishes.done


@pytest.mark.parametrize(
    ("order", "message"),
    [
        ("order: {costs: {fot: 5}}\n", "no change of set-up is called 'fot'"),
        ("order: {costs: {foot: long}}\n", "'long' is no length of time"),
        ("order: {sitting: soon}\n", "'soon' is no length of time"),
        ("order: {tie: [[join side]]}\n", "tie"),
        ("order: {pins: []}\n", "pins"),
        ("order: {pin: [{step: cut shell, at: 0}]}\n", "at"),
        ("done: {cut shell: yes}\n", "done"),
    ],
)
def test_a_wrong_wish_is_refused_with_its_line(order: str, message: str) -> None:
    """The line, and what was wrong."""
    with pytest.raises(InputError) as caught:
        garment(order)
    assert message in str(caught.value)
    assert "coat.yaml:6:" in str(caught.value)


def test_an_unknown_kind_of_seam_is_refused() -> None:
    """With the nearest kind."""
    text = HEAD.replace("{name: side,", "{name: side, kind: armhol,")
    with pytest.raises(InputError) as caught:
        garment_of(parse_yaml(text, "coat.yaml"), load_knowledge())
    assert "'armhole'" in str(caught.value)
