"""What a project says of building and cutting: read, or refused with line and column."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.claims.speakers import machine_says
from advisor.errors import InputError
from advisor.project.making import Flounce, Gathers, Kit, Piece, Result, Tiers, Tucks
from advisor.project.planning import settings_kit
from tests.typed import shipped
from tests.unit.project import project_cases as cases

BASE = """\
garment: Skirt
fabrics:
  denim: {fabric: denim, width: 150 cm, repeat: 10 cm, shrinks: 3 %, selvage: 1 cm}
  lawn: {fabric: lawn, width: 110 cm}
seams:
  - {name: side, layers: [denim, denim], length: 70 cm, times: 2}
"""
SHAPED = BASE + "pieces: [{name: a, fabric: lawn, "
SEAM = "  - {name: waist, layers: [denim, lawn], length: 80 cm, "


def test_a_bolt_is_read() -> None:
    """Width, repeat and selvage in mm, shrinkage as a share."""
    bolt = cases.garment(BASE).plan.bolts["denim"]
    assert (1500.0, 100.0, 10.0, 0.03) == (bolt.width, bolt.repeat, bolt.selvage, bolt.shrinks)


def test_gathers_are_read_and_the_strip_makes_the_fullness() -> None:
    """A strip of 30 cm that became 20 is 1.5 to 1; what was planned is kept."""
    text = (
        f"{BASE}  - name: frill\n    layers: [denim, {{use: lawn, fullness: 2}}]\n"
        "    gathers: {method: overlock, strip: {flat: 30 cm, gathered: 20 cm}}\n"
    )
    seam = cases.garment(text).seams[1]
    assert Gathers("overlock", None, 300.0, 200.0, 2.0) == seam.making.gathers
    assert [1.0, 1.5] == [use.fullness for use in seam.uses]


def test_pleats_make_the_fullness() -> None:
    """10 knife pleats of 2 cm on 80 cm: (8 + 4) / 8."""
    seam = cases.garment(BASE + SEAM + "pleats: {kind: knife, number: 10, depth: 2 cm}}\n").seams[1]
    assert 1.5 == seam.uses[1].fullness


def test_a_foot_on_which_nothing_turns_is_taken() -> None:
    """What came with the machine is no slip; it is owned, and no seam is sewn with it."""
    garment = cases.garment(BASE + "kit: {feet: [Buttonhole foot, walking foot, blind hem]}\n")
    assert ("buttonhole", "walking", "blind hem") == garment.maker.feet
    (said,) = (
        said.claim
        for said in machine_says(garment, shipped())
        if said.claim.aspect == "machine.foot"
    )
    words = shipped().aspects["machine.foot"].words
    assert {"standard", "walking"} == {w for i, w in enumerate(words) if said.mask >> i & 1}


def piece(words: str) -> Piece:
    """The one piece of lawn with these words."""
    (found,) = cases.garment(f"{BASE}pieces: [{{name: a, fabric: lawn, {words}}}]\n").plan.pieces
    return found


def test_tucks_are_read() -> None:
    """Depth, number and spacing in mm; without a spacing they are spread over the piece."""
    said = "width: 20 cm, height: 9 cm, tucks: {depth: 1 cm, number: 6"
    assert Tucks(10.0, 6, 20.0) == piece(said + ", spacing: 2 cm}").tucks
    assert Tucks(10.0, 4, 50.0) == piece(said.replace("6", "4") + "}").tucks
    assert 200.0 == piece(said + "}").width


def test_a_flounce_is_read() -> None:
    """A seam and a depth; one full circle where nothing else is said."""
    assert Flounce(500.0, 120.0) == piece("flounce: {seam: 50 cm, depth: 12 cm}").flounce
    half = piece("flounce: {seam: 50 cm, depth: 12 cm, pieces: 2, turn: 0.5}, number: 2")
    assert (Flounce(500.0, 120.0, 2, 0.5), 2) == (half.flounce, half.number)


def test_tiers_are_read() -> None:
    """They share the finished height, or have their own; 1.5 to 1 where nothing is said."""
    wide = "finished width: 70 cm, "
    assert (
        Tiers((200.0,) * 3, 1.5) == piece(wide + "finished height: 60 cm, tiers: {number: 3}").tiers
    )
    own = piece(wide + "tiers: {heights: [20 cm, 25 cm], fullness: 2}")
    assert (Tiers((200.0, 250.0), 2.0), 450.0) == (own.tiers, own.height)


def test_a_ruffle_may_be_folded_double() -> None:
    """It is said of a piece with finished sizes."""
    assert piece("finished width: 20 cm, finished height: 4 cm, fullness: 2, doubled: yes").doubled


def test_kit_and_results_are_read() -> None:
    """Lists of words, and what a scrap showed."""
    text = BASE + (
        "kit: {feet: [zip], needles: [Sharp 70]}\n"
        "results: [{seam: side, result: it puckers, works: no}]\n"
    )
    garment = cases.garment(text)
    assert ("zip",) == garment.maker.feet
    assert ("sharp 70",) == garment.plan.kit.needles
    assert (Result("side", "it puckers", works=False),) == garment.plan.results


BAD = {
    "fullness below 1": (
        BASE + "  - {name: w, layers: [denim, {use: lawn, fullness: 0.8}]}\n",
        7,
        53,
        "'fullness': '0.8' cannot be right",
    ),
    "negative length": (
        BASE + "  - {name: w, layers: [denim, lawn], length: -3 cm}\n",
        7,
        46,
        "below 0",
    ),
    "pleat deeper than its spacing": (
        BASE + SEAM + "pleats: {kind: knife, number: 10, depth: 33 cm}}\n",
        7,
        98,
        "330 mm is deeper than the spacing allows",
    ),
    "box pleat deeper than half its spacing": (
        BASE + SEAM + "pleats: {kind: box, number: 10, depth: 5 cm}}\n",
        7,
        96,
        "50 mm is deeper than the spacing allows",
    ),
    "spacing for which there is no room": (
        BASE + SEAM + "pleats: {kind: knife, number: 10, depth: 1 cm, spacing: 9 cm}}\n",
        7,
        113,
        "none stands 90 mm from the next",
    ),
    "pleats without a seam length": (
        BASE
        + "  - {name: w, layers: [denim, lawn], pleats: {kind: box, number: 3, depth: 9 mm}}\n",
        7,
        66,
        "pleats need their face, or the length",
    ),
    "strip that grew": (
        BASE + "  - {name: w, layers: [denim, {use: lawn, fullness: 2}], "
        "gathers: {strip: {flat: 10 cm, gathered: 20 cm}}}\n",
        7,
        99,
        "a strip cannot be longer gathered",
    ),
    "gathers of nothing": (
        BASE + SEAM + "gathers: {method: elastic}}\n",
        7,
        66,
        "no layer of this seam has any",
    ),
    "unknown crossing": (
        BASE + SEAM + "crosses: [sids]}\n",
        7,
        67,
        "no seam of this project is called 'sids'",
    ),
    "crossing itself": (BASE + SEAM + "crosses: waist}\n", 7, 66, "cannot cross itself"),
    "panel wider than the cloth": (
        BASE + "pieces:\n  - {name: front, fabric: lawn, width: 120 cm, height: 50 cm}\n",
        8,
        40,
        "1200 mm wide as cut: wider than the cloth 'lawn'",
    ),
    "finished panel wider than the cloth": (
        BASE + "pieces:\n  - {name: f, fabric: lawn, finished width: 108 cm, "
        "finished height: 5 cm}\n",
        8,
        45,
        "1110 mm wide as cut",
    ),
    "full panels wider than the cloth": (
        BASE + "pieces:\n  - {name: f, fabric: lawn, finished width: 1 m, fullness: 3, "
        "number: 2, finished height: 5 cm}\n",
        8,
        45,
        "1530 mm wide as cut",
    ),
    "selvages that leave nothing": (
        BASE.replace("selvage: 1 cm", "selvage: 10 cm").replace("150 cm", "15 cm"),
        3,
        78,
        "the selvages leave nothing",
    ),
    "a piece of no fabric": (
        BASE + "pieces: [{name: a, fabric: lawm, width: 5 cm, height: 5 cm}]\n",
        7,
        28,
        "no fabric of this project is called 'lawm'",
    ),
    "a piece without sizes": (
        BASE + "pieces: [{name: a, fabric: lawn}]\n",
        7,
        10,
        "has no size",
    ),
    "a piece with half its sizes": (
        BASE + "pieces: [{name: a, fabric: lawn, width: 5 cm}]\n",
        7,
        10,
        "has no 'height'",
    ),
    "both kinds of sizes": (
        BASE + "pieces: [{name: a, fabric: lawn, width: 5 cm, height: 5 cm, finished width: 9}]\n",
        7,
        77,
        "cut sizes and finished ones",
    ),
    "half a piece": (
        BASE + "pieces: [{name: a, fabric: lawn, width: 5 cm, height: 5 cm, number: 1.5}]\n",
        7,
        69,
        "no whole number",
    ),
    "a narrow end that is wide": (
        BASE + "pieces: [{name: a, fabric: lawn, width: 5 cm, height: 5 cm, narrow end: 6 cm}]\n",
        7,
        73,
        "the narrow end is wider",
    ),
    "a tuck deeper than its spacing": (
        BASE + "pieces: [{name: a, fabric: lawn, width: 9 cm, height: 9 cm, "
        "tucks: {depth: 2 cm, number: 3, spacing: 1 cm}}]\n",
        7,
        76,
        "a tuck 20 mm deep is deeper than its spacing",
    ),
    "tucks that do not fit their piece": (
        SHAPED + "width: 9 cm, height: 9 cm, tucks: {depth: 1 cm, number: 6, spacing: 2 cm}}]\n",
        7,
        90,
        "6 tucks 20 mm apart take 110 mm: more than the piece, 90 mm",
    ),
    "spread tucks that lie over each other": (
        SHAPED + "width: 9 cm, height: 9 cm, tucks: {depth: 2 cm, number: 6}}]\n",
        7,
        76,
        "a tuck 20 mm deep is deeper than its spacing",
    ),
    "a flounce wider than the cloth": (
        SHAPED + "flounce: {seam: 2 m, depth: 40 cm}}]\n",
        7,
        62,
        "1446.2 mm across: wider than the cloth 'lawn'",
    ),
    "a flounce that closes up": (
        SHAPED + "flounce: {seam: 2 cm, depth: 4 cm}}]\n",
        7,
        50,
        "its allowance of 15 mm closes it",
    ),
    "a flounce of more than a circle": (
        SHAPED + "flounce: {seam: 20 cm, depth: 4 cm, turn: 2}}]\n",
        7,
        76,
        "from 0.05 to 1",
    ),
    "a flounce with sizes": (
        SHAPED + "width: 5 cm, flounce: {seam: 20 cm, depth: 4 cm}}]\n",
        7,
        41,
        "a flounce has its size from its seam",
    ),
    "tucks and gathers at once": (
        SHAPED + "finished width: 9 cm, finished height: 9 cm, fullness: 2, "
        "tucks: {depth: 1 cm, number: 2}}]\n",
        7,
        89,
        "this piece has tucks and fullness at once",
    ),
    "tiers of no height": (
        SHAPED + "finished width: 9 cm, tiers: {number: 2}}]\n",
        7,
        10,
        "this piece has no 'finished height'",
    ),
    "tiers with a height that is none": (
        SHAPED + "finished width: 9 cm, tiers: {heights: [3 cm, x]}}]\n",
        7,
        80,
        "'x' is not a length",
    ),
    "tiers of no number": (
        SHAPED + "finished width: 9 cm, finished height: 9 cm, tiers: {fullness: 2}}]\n",
        7,
        86,
        "neither a number nor heights",
    ),
    "tiers with heights and a whole height": (
        SHAPED + "finished width: 9 cm, finished height: 9 cm, tiers: {heights: [3 cm, 4 cm]}}]\n",
        7,
        73,
        "the heights of the tiers tell this already",
    ),
    "tiers as cut": (
        SHAPED + "width: 9 cm, height: 9 cm, tiers: {number: 2}}]\n",
        7,
        41,
        "tiers are reckoned from a finished width",
    ),
    "a doubled ruffle with a hem": (
        SHAPED + "finished width: 9 cm, finished height: 9 cm, doubled: yes, hem: 1 cm}]\n",
        7,
        98,
        "folded double is reckoned from finished sizes and has no hem",
    ),
    "a result of no seam": (
        BASE + "results: [{seam: sid, result: fine}]\n",
        7,
        18,
        "no seam of this project",
    ),
    "an unknown foot": (BASE + "kit: {feet: [walkng]}\n", 7, 14, "unknown word 'walkng'"),
}


@pytest.mark.parametrize("name", BAD)
def test_bad_numbers_are_refused_with_their_place(name: str) -> None:
    """One problem, where it stands, in plain words."""
    text, line, column, words = BAD[name]
    (problem,) = cases.problems(text)
    assert problem.where is not None
    assert (line, column) == (problem.where.line, problem.where.column)
    assert words in str(problem)


def test_without_units_an_inch_project_wants_them() -> None:
    """In us units a bare number may be anything."""
    text = BASE.replace("garment: Skirt", "garment: Skirt\nunits: us")
    text += "pieces: [{name: a, fabric: lawn, width: 5, height: 5 in}]\n"
    (problem,) = cases.problems(text)
    assert "has no unit" in str(problem)


def test_the_settings_file_holds_the_kit_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What the project does not say of her kit comes from there; what it says goes before."""
    path = tmp_path / "kit.yaml"
    path.write_text("feet: [walking, zip]\nneedles: [sharp 70]\n", encoding="utf-8")
    monkeypatch.setenv("ADVISOR_SETTINGS", str(path))
    garment = cases.garment(BASE + "kit: {needles: [universal 80]}\n")
    assert ("walking", "zip") == garment.maker.feet
    assert Kit(("walking", "zip"), ("universal 80",)) == garment.plan.kit


def test_a_wrong_settings_file_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its own name, line and column, not the project's."""
    path = tmp_path / "kit.yaml"
    path.write_text("feet: [walkin]\npres: [ham]\n", encoding="utf-8")
    monkeypatch.setenv("ADVISOR_SETTINGS", str(path))
    with pytest.raises(InputError) as caught:
        settings_kit(cases.knowledge())
    assert {(1, 8), (2, 1)} == {
        (p.where.line, p.where.column) for p in caught.value.problems if p.where
    }
    assert "kit.yaml" in str(caught.value)


def test_no_settings_file_is_no_kit(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nobody has to have one."""
    monkeypatch.setenv("ADVISOR_SETTINGS", str(tmp_path / "none.yaml"))
    assert Kit() == settings_kit(cases.knowledge())
