"""Whatever is wrong with a project is said once, clearly, with its place, and never a surprise."""

from __future__ import annotations

import importlib.util
import os
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from advisor.errors import InputError
from advisor.project.garment import Garment
from advisor.project.load import load_project


def _cases() -> ModuleType:
    path = Path(__file__).with_name("project_cases.py")
    spec = importlib.util.spec_from_file_location("project_cases", path)
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


cases = _cases()

# What stands in the sound project, what stands there instead, and the one line that is printed.
ONE_FAULT = [
    ("fabric: satin", "fabric: sattin", "p.yaml:10:20: not understood: 'sattin'.", "'satin'"),
    ("fabric: organza,", "fabric: {organza: 1},", "p.yaml:11:19: 'fabric': must be text", ""),
    ("stress: low", "stres: low", "p.yaml:23:81: unknown key 'stres'.", "'stress'"),
    ("units: metric", "units: imperial", "p.yaml:2:8: 'units': unknown word 'imperial'.", "us"),
    ("{acetate: 100}", "{acetate: 60, viscose: 30}", "p.yaml:10:35: ", "these make 90"),
    ("{acetate: 100}", "{acetate: 60, rayon: 20, viscose: 20}", "p.yaml:10:35: ", "each fibre"),
    ("{acetate: 100}", "{acetat: 100}", "p.yaml:10:36: unknown fibre 'acetat'.", "'acetate'"),
    ("{acetate: 100}", "{acetate: much}", "p.yaml:10:45: 'acetate': 'much' is no share.", "percent"),
    ("{acetate: 100}", "[]", "p.yaml:10:35: ", "empty"),
    ("fibres: [nylon, silk]", "fibres: [nylon, slik]", "p.yaml:11:44: ", "'silk'"),
    ("240 g/m2", "4 g/m2", "p.yaml:9:41: 'weight': '4 g/m2' cannot be right.", "5 to 3000"),
    ("240 g/m2", "3001", "p.yaml:9:41: 'weight': '3001' cannot be right.", "5 to 3000"),
    ("240 g/m2", "-240 g/m2", "p.yaml:9:41: 'weight': ", "more than 0"),
    ("240 g/m2", ".nan", "p.yaml:9:41: .nan is not a number", ""),
    ("240 g/m2", "nan", "p.yaml:9:41: 'weight': ", "no number"),
    ("240 g/m2", "inf", "p.yaml:9:41: 'weight': ", "no number"),
    ("240 g/m2", "1e999", "p.yaml:9:41: ", "too large"),
    ("240 g/m2", "240 mm2", "p.yaml:9:41: 'weight': ", "the unit 'mm2' is not known"),
    ('"#27455f"', "#27455f,\n    shade: dark", "p.yaml:9:", "quotes"),
    ('"#27455f"', '"#2745"', "p.yaml:9:59: 'colour': '#2745' is no colour code.", "six digits"),
    ("  gift:", "  frill:", "p.yaml:13:3: the key 'frill' is here and already on line 11", ""),
    ("  gift:", "  Frill:", "p.yaml:13:3: the name 'Frill' is too like 'frill'.", "capitals"),
    ("name: cuff", "name: Shoulder", "p.yaml:24:12: a second seam called 'Shoulder'", "line 15"),
    ("[shell, shell], length: 13", "[shel, shell], length: 13", "p.yaml:15:31: no fabric of this "
     "project is called 'shel'.", "'shell'"),
    ("[shell, shell], length: 13", "[], length: 13", "p.yaml:15:30: 'layers': must not be empty", ""),
    ("layers: [shell, shell], ", "", "p.yaml:15:5: missing key 'layers'", ""),
    ("[shell, shell], length: 13", "[{notion: coil zip}], length: 13", "p.yaml:15:30: this seam "
     "names no fabric of the project.", "shell"),
    ("[shell, shell], length: 13", "[coil zip, shell], length: 13", "p.yaml:15:31: no fabric",
     "{notion: coil zip}"),
    ("[shell, shell], length: 13", "[5, shell], length: 13", "p.yaml:15:31: ", "text"),
    ("woven fusible interfacing", "woven fusable interfacing", "p.yaml:17:30: unknown notion "
     "'woven fusable interfacing'.", "'woven fusible interfacing'"),
    ("fullness: 2.5", "fullness: 0.5", "p.yaml:23:57: 'fullness': '0.5' cannot be right.", "to 6"),
    ("fullness: 2.5", "fullness: 6.5", "p.yaml:23:57: 'fullness': '6.5' cannot be right.", "to 6"),
    ("stretched: 1.2", "stretched: 0.9", "p.yaml:24:52: 'stretched': '0.9' cannot", "to 2"),
    ("stretched: 1.2", "stretched: 2.1", "p.yaml:24:52: 'stretched': '2.1' cannot", "to 2"),
    ("use: frill, ", "", "p.yaml:23:38: this layer has neither 'use' nor 'notion'.", ""),
    ("length: 13 cm", "length: -13 cm", "p.yaml:15:54: 'length': ", "at least 0"),
    ("length: 13 cm", "length: 0", "p.yaml:15:54: 'length': '0' cannot be right.", "50 m"),
    ("length: 13 cm", "length: 51 m", "p.yaml:15:54: 'length': '51 m' cannot be right.", "50 m"),
    ("length: 13 cm", "length: .inf", "p.yaml:15:54: .inf is not a number", ""),
    ("allowance: 15 mm", "allowance: 2 mm", "p.yaml:15:72: 'allowance': '2 mm' cannot", "3 to 50"),
    ("allowance: 15 mm", "allowance: 51 mm", "p.yaml:15:72: 'allowance': '51 mm' cannot", "3 to"),
    ("allowance: 15 mm", "allowance: [15]", "p.yaml:15:72: 'allowance': must be a word", ""),
    ("finish: zigzag", "finish: zigzagged", "p.yaml:15:87: 'finish': unknown word", "'zigzag'"),
    ("stitch: 301", "stitch: 999", "p.yaml:22:13: 'stitch': unknown word '999'.", "301"),
    ("needle size: US 10", "needle size: 200", "p.yaml:21:18: 'needle size': '200'", "55 to 130"),
    ("shape: curved", "shape: curvy", "p.yaml:19:12: 'shape': unknown word", "'curved'"),
    ("machine: household", "machine: loom", "p.yaml:4:12: 'machine': unknown word 'loom'.", "hand"),
    ("overlocker: 4-thread", "overlocker: 9-thread", "p.yaml:6:15: 'overlocker': ", "'4-thread'"),
    ("zip, walking]", "zip, wlking]", "p.yaml:7:25: 'feet': unknown word", "'walking'"),
    ("foot lift: 6 mm", "foot lift: 6 m", "p.yaml:5:14: 'foot lift': '6 m' cannot", "40 mm"),
    ("{pin marks: some}", "{pinmarks: some}", "p.yaml:11:80: unknown trait 'pinmarks'.", "'pin m"),
    ("{pin marks: some}", "{pin marks: plenty}", "p.yaml:11:91: 'pin marks': unknown", "some, yes"),
    ("care: washable", "care: wash", "p.yaml:9:76: 'care': unknown word", "'washable'"),
    ("garment: Bandstand jacket", "garment: ''", "p.yaml:1:10: 'garment': must not be empty", ""),
    ("garment: Bandstand jacket", 'garment: "a\\e[31mb"', "p.yaml:1:10: 'garment': ", "printed"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "start", "inside"), ONE_FAULT)
def test_one_fault_is_one_line(old: str, new: str, start: str, inside: str) -> None:
    """A fault is one problem, at its line and column, with what was expected or meant."""
    found = cases.problems(cases.changed(old, new))
    assert 1 == len(found), [str(problem) for problem in found]
    line = str(found[0])
    assert line.startswith(start), line
    assert inside in line
    assert "\n" not in line


@pytest.mark.parametrize(
    ("said", "inside"),
    [
        ("{fabric: silk organza, fibres: [nylon, silk]}", ""),
        ("{fabric: nylon organza, fibres: {silk: 100}}", "the words for the fabric say nylon"),
        ("{fabric: 'organza, fibre unknown', fibres: {silk: 100}}", "say that the fibre is unknown"),
        ("{fabric: organza 20 g/m2, weight: 40 g/m2}", "given twice"),
        ("{fabric: organza 20 g/m2, weight: 20 g/m2}", ""),
        ("{fabric: linen suiting, fibres: {polyester: 55, viscose: 45}}", ""),
    ],
)
def test_a_cloth_may_not_contradict_itself(said: str, inside: str) -> None:
    """What is said twice of a cloth must agree; a fibre in a cloth's own name is no such claim."""
    found = cases.problems(
        f"garment: g\nfabrics:\n  a: {said}\nseams: [{{name: s, layers: [a, a]}}]\n"
    )
    assert [inside in str(problem) for problem in found] == [True] * bool(inside)


def test_a_bare_number_says_too_little_in_us_units() -> None:
    """Where inches are printed, a number without a unit is refused and not taken for mm."""
    us = cases.SOUND.replace("units: metric", "units: us")
    assert [] == [str(p) for p in cases.problems(us)]
    found = cases.problems(us.replace("length: 13 cm", "length: 13"))
    assert ["p.yaml:15:54: 'length': the number '13' has no unit. Expected a unit after it: "
            "cm or in."] == [str(p) for p in found]  # fmt: skip


def test_all_faults_are_named_at_once_in_the_order_of_the_file() -> None:
    """Wrong keys, unknown names and impossible numbers are reported together."""
    text = cases.SOUND
    for old, new in [
        ("machine: household", "mashine: household"), ("fabric: satin", "fabric: sattin"),
        ("240 g/m2", "4 g/m2"), ("length: 13 cm", "length: 51 m"), ("stress: low", "stress: lw"),
        ("use: cuff", "use: cuf"),
    ]:  # fmt: skip
        text = text.replace(old, new)
    found = cases.problems(text)
    assert [4, 9, 10, 15, 23, 24] == [problem.where.line for problem in found if problem.where]


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "this file is empty"),
        (b"  \n# nothing\n", "empty"),
        (b"--- \n", "empty"),
        (b"just words\n", "must be a group of keys"),
        (b"- a\n- b\n", "must be a group of keys"),
        (b"garment: g\x00\n", "binary"),
        (b"\x89PNG\r\n\x1a\n\x00\x00", "binary"),
        (b"garment: caf\xe9\n", "not UTF-8"),
        ("garment: g\n".encode("utf-16"), "UTF-16"),
        (b"garment: g\n" * 5_000_000, "too large"),
        (b"a: " + b"[" * 5000 + b"]" * 5000, "nested too deeply"),
        (b"a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n", "is not read"),
        (b"garment: g\ngarment: h\nfabrics: {a: calico}\nseams: [{name: s, layers: [a]}]\n",
         "already on line 1"),
        (b"garment: g\n\tfabrics: x\n", "tab"),
        (b"garment: !!python/object:os.system g\n", "tag"),
        (b"garment: g\nseams: [{name: s, layers: [a]}]\n", "missing key 'fabrics'"),
        (b"garment: g\nfabrics: {a: calico}\n", "missing key 'seams'"),
        (b"garment: g\nfabrics: {}\nseams: []\n", "must not be empty"),
        (b"garment: g\nfabrics: {5: calico}\nseams: [{name: s, layers: [5]}]\n", "not text"),
    ],
    ids=lambda value: str(value)[:24] if isinstance(value, bytes) else "",
)  # fmt: skip
def test_a_file_that_is_no_project_is_refused(tmp_path: Path, content: bytes, message: str) -> None:
    """Empty, binary, huge, deep, ambiguous or otherwise unusable files end in a clear message."""
    file = tmp_path / "p.yaml"
    file.write_bytes(content)
    with pytest.raises(InputError) as caught:
        load_project(file, cases.knowledge())
    lines = str(caught.value).splitlines()
    assert any(message in line for line in lines), lines
    assert all(line.startswith(str(file)) for line in lines)


def test_places_that_are_no_file_are_refused(tmp_path: Path) -> None:
    """A folder, a missing file and a pipe end in a clear message, and nothing waits for them."""
    os.mkfifo(tmp_path / "pipe")
    for path, message in [
        (tmp_path, "folder"), (tmp_path / "none.yaml", "no such file"),
        (tmp_path / "pipe", "not an ordinary file"), (Path("a\0b"), "cannot be read"),
        (Path("x" * 5000), "cannot be read"),
    ]:  # fmt: skip
        with pytest.raises(InputError) as caught:
            load_project(path, cases.knowledge())
        assert 1 == len(caught.value.problems)
        assert message in str(caught.value)


def test_a_project_has_bounds() -> None:
    """Thousands of seams are refused at once."""
    seams = "\n".join(f"  - {{name: s{i}, layers: [a]}}" for i in range(3000))
    found = cases.problems(f"garment: g\nfabrics: {{a: calico}}\nseams:\n{seams}\n")
    assert ["may have at most 200 entries" in str(problem) for problem in found] == [True]


def outcome(text: str) -> Any:
    """A garment, or the problems; anything else that is raised fails the test."""
    try:
        return cases.garment(text)
    except InputError as error:
        assert str(error)
        str(error).encode("utf-8", "backslashreplace")
        return error


PIECES = [
    "garment", "fabrics", "seams", "layers", "use", "notion", "fibres", "unknown", "{", "}", "[",
    "]", ": ", ", ", "\n", "\n  ", "- ", "nylon organza", "shell", "100", "-1", ".nan", "1e400",
    '"', "'", "#", "&a", "*a", "!!int", "|", ">", "~", "true", "\t", "\ud800", "\u202e", "é", "0x1",
    "weight: ", "12 oz", "name: s", "? ", "%", "@", "---\n", "...\n", "\\", "<<: ",
]  # fmt: skip


@given(st.lists(st.sampled_from(PIECES) | st.text(max_size=4), max_size=40).map("".join))
def test_no_text_is_a_surprise(text: str) -> None:
    """Text of any kind is a garment or an input error."""
    assert isinstance(outcome(text), Garment | InputError)


@given(
    st.lists(
        st.tuples(
            st.integers(0, len(cases.SOUND)), st.integers(0, 12),
            st.sampled_from(PIECES) | st.text(max_size=3),
        ),
        min_size=1, max_size=4,
    )
)  # fmt: skip
def test_no_slip_in_a_sound_project_is_a_surprise(edits: list[tuple[int, int, str]]) -> None:
    """A sound project with a few places typed over is a garment or an input error."""
    text = cases.SOUND
    for at, length, piece in edits:
        text = text[:at] + piece + text[at + length :]
    assert isinstance(outcome(text), Garment | InputError)


VALUES: st.SearchStrategy[Any] = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=6)
    | st.sampled_from(["shell", "nylon organza", "unknown", "12 mm", "coil zip", "hand", "301"]),
    lambda inner: st.lists(inner, max_size=3)
    | st.dictionaries(st.text(max_size=4) | st.sampled_from(["use", "notion", "silk"]), inner,
                      max_size=3),
    max_leaves=5,
)  # fmt: skip


@given(st.data())
def test_no_value_in_any_place_is_a_surprise(data: st.DataObject) -> None:
    """Whatever value stands under any key, the answer is a garment or an input error."""
    import json

    from advisor.yamlfile import parse_yaml

    project = parse_yaml(cases.SOUND, "p.yaml").data
    here = project
    while True:
        keys = list(here) if isinstance(here, dict) else list(range(len(here)))
        key = data.draw(st.sampled_from(keys))
        if not isinstance(here[key], dict | list) or not here[key] or data.draw(st.booleans()):
            here[key] = data.draw(VALUES)
            break
        here = here[key]
    assert isinstance(outcome(json.dumps(project)), Garment | InputError)
