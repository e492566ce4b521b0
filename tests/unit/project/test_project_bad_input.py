"""Whatever is wrong with a project is said once, clearly, with its place, and never a surprise."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from advisor.errors import InputError
from advisor.project.garment import Garment
from advisor.project.load import load_project
from tests.unit.project import project_cases as cases

# What stands in the sound project, what stands there instead, the text at which the fault is to
# be shown, and two parts of the line that is printed.
ONE_FAULT = [
    ("fabric: satin", "fabric: sattin", "sattin", "not understood: 'sattin'", "'satin'"),
    ("fabric: organza,", "fabric: {organza: 1},", "{organza: 1}", "'fabric': must be text", ""),
    ("stress: low", "stres: low", "stres:", "unknown key 'stres'", "'stress'"),
    ("units: metric", "units: imperial", "imperial", "unknown word 'imperial'", "metric, us"),
    ("{acetate: 100}", "{acetate: 60, viscose: 30}", "{acet", "shares that make 100", "make 90"),
    ("{acetate: 100}", "{acetate: 60, rayon: 20, viscose: 20}", "{acet", "each fibre once", ""),
    ("{acetate: 100}", "{acetatt: 100}", "acetatt:", "unknown fibre 'acetatt'", "'acetate'"),
    ("{acetate: 100}", "{acetate: much}", "much", "'acetate': 'much' is no share", "percent"),
    ("{acetate: 100}", "[]", "[]", "'fibres': must not be empty", ""),
    ("{acetate: 100}", "{}", "{}", "'fibres': must not be empty", ""),
    ("{acetate: 100}", "acetatt", "acetatt", "not understood: 'acetatt'", "'acetate'"),
    ("fibres: [nylon, silk]", "fibres: [nylon, slik]", "slik", "not understood: 'slik'", "'silk'"),
    ("240 g/m2", "4 g/m2", "4 g/m2", "'weight': '4 g/m2' cannot be right", "5 to 3000 g/m²"),
    ("240 g/m2", "3001", "3001", "'weight': '3001' cannot be right", "5 to 3000 g/m²"),
    ("240 g/m2", "-240 g/m2", "-240", "'weight': ", "more than 0"),
    ("240 g/m2", ".nan", ".nan", ".nan is not a number", ""),
    ("240 g/m2", "-.inf", "-.inf", "-.inf is not a number", ""),
    ("240 g/m2", "nan", "nan", "'weight': 'nan' is not a weight", "no number"),
    ("240 g/m2", "inf", "inf", "'weight': 'inf' is not a weight", "no number"),
    ("240 g/m2", "1e999", "1e999", "too large", ""),
    ("240 g/m2", "240 mm2", "240 mm2", "the unit 'mm2' is not known", "momme"),
    ('"#27455f", care: washable}', "#27455f\n    }", " #27455f", "'colour': nothing", "quotes"),
    ('"#27455f"', '"#2745"', '"#2745"', "'#2745' is no colour code", "six digits"),
    ("  gift:", "  frill:", "frill:", "the key 'frill' is here and already on line 11", ""),
    ("  gift:", "  Frill:", "Frill:", "the name 'Frill' is too like 'frill'", "capitals"),
    ("name: cuff", "name: Shoulder", "Shoulder", "a second seam called 'Shoulder'", "line 15"),
    (
        "[shell, shell], length: 13",
        "[shel, shell], length: 13",
        "shel,",
        "no fabric of this project is called 'shel'",
        "'shell'",
    ),
    ("[shell, shell], length: 13", "[], length: 13", "[]", "'layers': must not be empty", ""),
    ("layers: [shell, shell], ", "", "{name: shoulder", "'shoulder' has no 'layers'", ""),
    (
        "[shell, shell], length: 13",
        "[{notion: coil zip}], length: 13",
        "[{notion",
        "this seam names no fabric of the project",
        "shell",
    ),
    (
        "[shell, shell], length: 13",
        "[coil zip, shell], length: 13",
        "coil zip",
        "no fabric of this",
        "{notion: coil zip}",
    ),
    ("[shell, shell], length: 13", "[5, shell], length: 13", "5,", "must be text", "not 5"),
    (
        "woven fusible interfacing",
        "woven fusable interfacing",
        "woven",
        "unknown notion 'woven fusable interfacing'",
        "'woven fusible interfacing'",
    ),
    ("fullness: 2.5", "fullness: 0.5", "0.5", "'fullness': '0.5' cannot be right", "to 6"),
    ("fullness: 2.5", "fullness: 6.5", "6.5", "'fullness': '6.5' cannot be right", "to 6"),
    ("stretched: 1.2", "stretched: 0.9", "0.9", "'stretched': '0.9' cannot be right", "to 2"),
    ("stretched: 1.2", "stretched: 2.1", "2.1", "'stretched': '2.1' cannot be right", "to 2"),
    ("use: frill, ", "", "{fullness", "this layer has neither 'use' nor 'notion'", "one of"),
    ("use: frill, ", "use: frill, notion: coil zip, ", "{use", "both 'use' and 'notion'", "one of"),
    ("length: 13 cm", "length: -13 cm", "-13", "'length': ", "below 0"),
    ("length: 13 cm", "length: 0", "0", "'length': '0' cannot be right", "50 m"),
    ("length: 13 cm", "length: 51 m", "51 m", "'length': '51 m' cannot be right", "50 m"),
    ("length: 13 cm", "length: .inf", ".inf", ".inf is not a number", ""),
    ("allowance: 15 mm", "allowance: 2 mm", "2 mm", "'allowance': '2 mm' cannot be", "3 to 50"),
    ("allowance: 15 mm", "allowance: 51 mm", "51 mm", "'allowance': '51 mm' cannot", "3 to 50"),
    ("allowance: 15 mm", "allowance: [15]", "[15]", "'allowance': must be a word", "list"),
    ("allowance: 15 mm", "allowance: true", "true", "'allowance': 'yes' is not a length", ""),
    ("finish: zigzag", "finish: zigzagged", "zigzagged", "'finish': unknown word", "'zigzag'"),
    (
        "stitch: 301",
        "stitch: 999",
        "999",
        "'stitch': unknown word '999'",
        "straight lockstitch (301), narrow zigzag (304)",
    ),
    ("needle size: US 10", "needle size: 200", "200", "'needle size': '200'", "55 to 130"),
    ("edge: turned", "edge: hemm", "hemm", "'edge': unknown word 'hemm'", "faced, bound, raw"),
    ("shape: curved", "shape: curvy", "curvy", "'shape': unknown word 'curvy'", "'curved'"),
    ("machine: household", "machine: loom", "loom", "'machine': unknown word 'loom'", "hand"),
    (
        "overlocker: 4-thread",
        "overlocker: 9-thread",
        "9-thread",
        "'overlocker': unknown word",
        "'4-thread'",
    ),
    ("zip, walking]", "zip, wlking]", "wlking", "'feet': unknown word 'wlking'", "'walking'"),
    ("foot lift: 6 mm", "foot lift: 6 m", "6 m", "'foot lift': '6 m' cannot be right", "40 mm"),
    (
        "{pin marks: some}",
        "{pinmarks: some}",
        "pinmarks",
        "unknown trait 'pinmarks'",
        "'pin marks'",
    ),
    (
        "{pin marks: some}",
        "{pin marks: plenty}",
        "plenty",
        "'pin marks': unknown word 'plenty'",
        "some, yes",
    ),
    ("care: washable", "care: wash", "wash", "'care': unknown word 'wash'", "'washable'"),
    ("garment: Bandstand jacket", "garment: ''", "''", "'garment': must not be empty", ""),
    ("garment: Bandstand jacket", 'garment: "a\\e[31mb"', '"a', "'garment': holds", "printed"),
    ("garment: Bandstand jacket", "garment: [a]", "[a]", "'garment': must be text", "a list"),
]


@pytest.mark.parametrize(("old", "new", "at", "message", "inside"), ONE_FAULT)
def test_one_fault_is_one_line(old: str, new: str, at: str, message: str, inside: str) -> None:
    """A fault is one problem, at its line and column, with what was expected or meant."""
    text = cases.changed(old, new)
    # The fault is where the change was made, or a little before it where something was left out.
    place = text.find(at, cases.SOUND.index(old) if at in new else 0)
    if at not in new:
        place = text.rfind(at, 0, cases.SOUND.index(old) + len(at))
    line, column = text.count("\n", 0, place) + 1, place - text.rfind("\n", 0, place)
    found = cases.problems(text)
    assert 1 == len(found), [str(problem) for problem in found]
    printed = str(found[0])
    assert printed.startswith(f"p.yaml:{line}:{column}: "), (line, column, printed)
    assert message in printed
    assert inside in printed
    assert "\n" not in printed


@pytest.mark.parametrize(
    ("said", "inside"),
    [
        ("{fabric: silk organza, fibres: [nylon, silk]}", "the words for the fabric say silk"),
        ("{fabric: nylon organza, fibres: {silk: 100}}", "the words for the fabric say nylon"),
        ("{fabric: 'organza, fibre unknown', fibres: {silk: 100}}", "the fibre is unknown"),
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
    said = (
        "'length': the number '13' has no unit. "
        "Expected a unit after it (cm or in), as in 'length: 13 in'."
    )
    assert [f"p.yaml:15:54: {said}"] == [str(problem) for problem in found]


def test_all_faults_are_named_at_once_in_the_order_of_the_file() -> None:
    """Wrong keys, unknown names and impossible numbers are reported together."""
    text = cases.SOUND
    for old, new in [
        ("machine: household", "mashine: household"),
        ("fabric: satin", "fabric: sattin"),
        ("240 g/m2", "4 g/m2"),
        ("length: 13 cm", "length: 51 m"),
        ("stress: low", "stress: lw"),
        ("use: cuff", "use: cuf"),
    ]:
        text = text.replace(old, new)
    found = cases.problems(text)
    assert [4, 9, 10, 15, 23, 24] == [problem.where.line for problem in found if problem.where]


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "this file is empty"),
        (b"  \n# nothing\n", "empty"),
        (b"--- \n", "empty"),
        (b"just words\n", "this is not a project file"),
        (b"- a\n- b\n", "this is not a project file"),
        (b"garment: g\x00\n", "binary"),
        (b"\x89PNG\r\n\x1a\n\x00\x00", "this is a picture"),
        (b"\xff\xd8\xff\xe0\x00\x10JFIF", "this is a picture"),
        (b"\x00\x00\x00\x18ftypheic", "this is a picture"),
        (b"%PDF-1.7\n", "this is a PDF"),
        (b"PK\x03\x04\x14", "this is a packed file"),
        (b"<html><body>", "this is a web page"),
        (b"garment: g\x00", "binary"),
        (b"garment: caf\xe9\n", "not UTF-8"),
        ("garment: g\n".encode("utf-16"), "UTF-16"),
        (b"garment: g\n" * 5_000_000, "too large"),
        (b"a: " + b"[" * 5000 + b"]" * 5000, "nested too deeply"),
        (b"a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n", "is not read"),
        (
            b"garment: g\ngarment: h\nfabrics: {a: calico}\nseams: [{name: s, layers: [a]}]\n",
            "already on line 1",
        ),
        (b"garment: g\n\tfabrics: x\n", "tab"),
        (b"garment: !!python/object:os.system g\n", "tag"),
        (b"garment: g\nseams: [{name: s, layers: [a]}]\n", "missing key 'fabrics'"),
        (b"garment: g\nfabrics: {a: calico}\n", "missing key 'seams'"),
        (b"garment: g\nfabrics: {}\nseams: []\n", "must not be empty"),
        (b"garment: g\nfabrics: {5: calico}\nseams: [{name: s, layers: [5]}]\n", "not text"),
    ],
    ids=lambda value: str(value)[:24] if isinstance(value, bytes) else "",
)
def test_a_file_that_is_no_project_is_refused(tmp_path: Path, content: bytes, message: str) -> None:
    """Empty, binary, huge, deep, ambiguous or otherwise unusable files end in a clear message."""
    file = tmp_path / "p.yaml"
    file.write_bytes(content)
    with pytest.raises(InputError) as caught:
        load_project(file, cases.knowledge())
    lines = str(caught.value).splitlines()
    assert any(message in line for line in lines), lines
    assert all(line.startswith(str(file)) for line in lines)


@pytest.mark.parametrize(
    ("line", "write"),
    [
        ("length: 40", "length: 40 cm"),
        ("allowance: 15", "allowance: 15 mm"),
        ("pleats: {kind: box, number: 3, depth: 9}", "depth: 9 cm"),
    ],
)
def test_a_bare_number_is_refused_with_the_line_to_write(line: str, write: str) -> None:
    """40 may be 40 mm or 40 cm, so it is never taken in silence."""
    text = f"garment: g\nfabrics: {{a: calico}}\nseams: [{{name: s, layers: [a], {line}}}]\n"
    said = [str(problem) for problem in cases.problems(text)]
    assert any(f"as in '{write}'" in problem for problem in said), said


def test_places_that_are_no_file_are_refused(tmp_path: Path) -> None:
    """A folder, a missing file and a pipe end in a clear message, and nothing waits for them."""
    os.mkfifo(tmp_path / "pipe")
    for path, message in [
        (tmp_path, "folder"),
        (tmp_path / "none.yaml", "no such file"),
        (tmp_path / "pipe", "not an ordinary file"),
        (Path("a\0b"), "cannot be read"),
        (Path("x" * 5000), "cannot be read"),
    ]:
        with pytest.raises(InputError) as caught:
            load_project(path, cases.knowledge())
        assert 1 == len(caught.value.problems)
        assert message in str(caught.value)


def test_a_project_has_bounds() -> None:
    """Thousands of seams are refused at once."""
    seams = "\n".join(f"  - {{name: s{i}, layers: [a]}}" for i in range(3000))
    found = cases.problems(f"garment: g\nfabrics: {{a: calico}}\nseams:\n{seams}\n")
    assert ["may have at most 200 entries" in str(problem) for problem in found] == [True]


def test_a_project_has_no_more_layers_than_are_answered_in_time() -> None:
    """Each place may have twelve, but not two hundred places as many: one message, in words."""
    seams = "".join(
        f"  - {{name: s{n}, layers: [{', '.join(['a', 'b'] * 6)}], length: 30 cm}}\n"
        for n in range(70)
    )
    text = f"garment: G\nfabrics: {{a: cotton lawn, b: silk organza}}\nseams:\n{seams}"
    found = [str(problem) for problem in cases.problems(text)]
    assert ["840 layers in all places together" in line for line in found] == [True]


def outcome(text: str) -> Any:
    """A garment, or the problems; anything else that is raised fails the test."""
    try:
        return cases.garment(text)
    except InputError as error:
        return error


PIECES = [
    "garment",
    "fabrics",
    "seams",
    "layers",
    "use",
    "notion",
    "fibres",
    "unknown",
    "{",
    "}",
    "[",
    "]",
    ": ",
    ", ",
    "\n",
    "\n  ",
    "- ",
    "nylon organza",
    "shell",
    "100",
    "-1",
    ".nan",
    "1e400",
    '"',
    "'",
    "#",
    "&a",
    "*a",
    "!!int",
    "|",
    ">",
    "~",
    "true",
    "\t",
    "\ud800",
    "\u202e",
    "é",
    "0x1",
    "weight: ",
    "12 oz",
    "name: s",
    "? ",
    "%",
    "@",
    "---\n",
    "...\n",
    "\\",
    "<<: ",
]


@given(st.lists(st.sampled_from(PIECES) | st.text(max_size=4), max_size=40).map("".join))
def test_no_text_is_a_surprise(text: str) -> None:
    """Text of any kind is a garment or an input error."""
    assert isinstance(outcome(text), Garment | InputError)


@given(
    st.lists(
        st.tuples(
            st.integers(0, len(cases.SOUND)),
            st.integers(0, 12),
            st.sampled_from(PIECES) | st.text(max_size=3),
        ),
        min_size=1,
        max_size=4,
    )
)
def test_no_slip_in_a_sound_project_is_a_surprise(edits: list[tuple[int, int, str]]) -> None:
    """A sound project with a few places typed over is a garment or an input error."""
    text = cases.SOUND
    for at, length, piece in edits:
        text = text[:at] + piece + text[at + length :]
    assert isinstance(outcome(text), Garment | InputError)


VALUES: st.SearchStrategy[Any] = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=6)
    | st.sampled_from(["shell", "nylon organza", "unknown", "12 mm", "coil zip", "hand", "301"]),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.text(max_size=4) | st.sampled_from(["use", "notion", "silk"]), inner, max_size=3
        )
    ),
    max_leaves=5,
)


@given(st.data())
def test_no_value_in_any_place_is_a_surprise(data: st.DataObject) -> None:
    """Whatever value stands under any key, the answer is a garment or an input error."""
    import json

    from advisor.textio.yamlfile import parse_yaml

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
