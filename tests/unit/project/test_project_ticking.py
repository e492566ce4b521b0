"""Ticks in a project file, and what a project says of its order: read, refused, kept."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.errors import InputError
from advisor.project.load import garment_of
from advisor.project.ticking import tick_file, ticked
from advisor.project.wished import Added, Pinned
from advisor.project.wishes import minutes_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

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
    assert ["cut shell", "mark shell"] == parse_yaml(new, "x").data["done"]


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
    return garment_of(parse_yaml(HEAD + order, "coat.yaml"), shipped())


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
        garment_of(parse_yaml(text, "coat.yaml"), shipped())
    assert "'armhole'" in str(caught.value)


BODY = (
    "garment: Coat\nfabrics: {shell: gabardine}\nseams:\n- {name: side, layers: [shell, shell]}\n"
)
LISTS = {
    "no list": "",
    "lines": "done:\n  - cut shell\n  - mark shell\n",
    "lines without indent": "done:\n- cut shell # a\n# b\n- mark shell\n",
    "quoted key": '"done":\n  - cut shell\n  - "mark shell"\n',
    "brackets": "done: [cut shell, mark shell]  # so far\n",
    "brackets on lines": "done: [ # a, b\n  cut shell, # one\n  'mark shell', # two\n  ]\n",
    "empty brackets": "done: []   # none\n",
    "nothing yet": "done:\nunits: us\n",
    "null": "done: ~ # none\n",
    "before another key": "done:\n  - cut shell\n\n# the units\nunits: us\n\n\n",
    "comment of the next key": "done:\n  - cut shell\n# the units\nunits: us\n",
    "document end": "units: us\n...\n",
    "document end and remark": "units: us\n\n...   \n# all\n\n",
    "last words kept": "units: us\nnote: |+\n  text\n\n\n",
    "no line end": "units: us",
    "folded item": "done:\n  - cut\n    shell\n  - mark shell\n",
    "twice": "done:\n  - cut shell\n  - cut shell\n",
}
STEPS = ["cut shell", "mark shell", "press side", 'say "x", é: [y]', "yes"]


def _data(text: str) -> dict[str, object]:
    data = parse_yaml(text.removeprefix("\ufeff"), "p.yaml").data
    return {str(key): value for key, value in data.items() if key != "done" or value}


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
@pytest.mark.parametrize("flow", [False, True])
@pytest.mark.parametrize("written", LISTS.values(), ids=LISTS.keys())
def test_any_shape_of_the_list_takes_and_loses_every_tick(
    written: str, flow: bool, ends: str
) -> None:
    """Ticked one by one and taken away again, only the list changes, whatever its shape."""
    text = BODY + written
    if flow:
        text = (
            '{"garment": Coat, fabrics: {shell: gabardine},\n seams: [{name: side}] # s\n}\n...\n'
        )
    text = text.replace("\n", ends)
    rest = {key: value for key, value in _data(text).items() if key != "done"}
    comments = [line for line in text.split(ends) if line.lstrip().startswith("#")]
    for k in (1, 2, 5, 4, 2, 1, 0, 3, 0):
        text = ticked(text, STEPS[:k])
        assert {**rest, **({"done": STEPS[:k]} if k else {})} == _data(text)
        assert text.count("\n") == text.count(ends)
        assert [c for c in comments if c not in text.split(ends)] == []


@pytest.mark.parametrize("tail", ["", "\n", "\n\n\n", "# end\n\n", "...\n", "\n...\n# x\n"])
def test_the_last_lines_stay(tail: str) -> None:
    """Blank lines, remarks and the mark of the end stand behind the new ticks as before."""
    new = ticked(BODY + tail, ["cut shell"])
    if "#" not in tail.partition("...")[0]:
        assert f"{BODY}done:\n  - cut shell\n{tail}" == new
    assert ticked(new, []) == BODY + tail


def test_the_file_keeps_mark_mode_and_link(tmp_path: Path) -> None:
    """A byte order mark, permissions and a link stay; a second name is told."""
    real = tmp_path / "real.yaml"
    real.write_bytes(("\ufeff" + BODY).replace("\n", "\r\n").encode())
    real.chmod(0o640)
    (tmp_path / "coat.yaml").symlink_to(real)
    assert () == tick_file(tmp_path / "coat.yaml", ["cut shell"])
    added = "\ufeff" + BODY + "done:\n  - cut shell\n"
    assert added.replace("\n", "\r\n").encode() == real.read_bytes()
    assert 0o640 == real.stat().st_mode & 0o777
    assert (tmp_path / "coat.yaml").is_symlink()
    (tmp_path / "second.yaml").hardlink_to(real)
    (note,) = tick_file(real, ["mark shell"])
    assert "hard link" in note
    assert b"mark shell" not in (tmp_path / "second.yaml").read_bytes()
    assert ["coat.yaml", "real.yaml", "second.yaml"] == sorted(p.name for p in tmp_path.iterdir())
