"""What `advisor sheet` says of building and buying, a section by itself.

The printed words are compared with tests/cli/expected; ADVISOR_WRITE_EXPECTED=1 writes them anew.
"""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from tests.typed import Done, typed

CHECKOUT = Path(__file__).resolve().parents[2]
EXPECTED = Path(__file__).parent / "expected"
JACKET = "knowledge/examples/bandstand-jacket.yaml"
COAT = "knowledge/examples/lantern-parade-coat.yaml"


def advisor(*words: str) -> Done:
    return typed(*words, env={"ADVISOR_SETTINGS": os.devnull})


PRINTED = {
    "only-shopping-jacket": ("sheet", JACKET, "--only", "shopping"),
    "only-shopping-coat-us": ("sheet", COAT, "--only", "shopping", "--units", "us"),
    "only-seams-jacket": ("sheet", JACKET, "--only", "seams"),
    "only-tests-jacket": ("sheet", JACKET, "--only", "tests"),
    "why-bulk": ("why", JACKET, "armhole", "seam.bulk"),
}


@pytest.mark.parametrize("name", PRINTED)
def test_prints_the_expected_words(name: str) -> None:
    """A section holds just what the expected file does."""
    done = advisor(*PRINTED[name])
    path = EXPECTED / f"{name}.txt"
    if os.environ.get("ADVISOR_WRITE_EXPECTED"):
        path.write_bytes(done.stdout)
    assert done.stdout.decode() == path.read_text(encoding="utf-8")
    assert done.stderr == b""


def test_an_unknown_section_is_refused() -> None:
    """With the nearest name, and status 2."""
    done = advisor("sheet", JACKET, "--only", "shoping")
    assert 2 == done.returncode
    assert b"Did you mean 'shopping'?" in done.stderr


PINAFORE = """\
garment: Pinafore
maker: {machine: household}
fabrics:
  lawn: {fabric: lawn, fibres: {cotton: 100}, weight: 75 g/m2, width: 140 cm, colour: white}
  pile: {fabric: velvet, fibres: {cotton: 100}, width: 140 cm}
  coat: {fabric: coating, fibres: {wool: 100}, weight: 500 g/m2}
seams:
  - {name: side, layers: [lawn, lawn], length: 60 cm}
  - {name: yoke, layers: [pile, lawn], length: 40 cm}
  - {name: coat side, layers: [coat, coat], length: 80 cm, times: 2, finish: Hong Kong, allowance: 15 mm}
pieces:
  - {name: bodice, fabric: lawn, finished width: 30 cm, finished height: 25 cm, tucks: {depth: 1 cm, number: 6, spacing: 25 mm}}
  - {name: yoke, fabric: pile, width: 30 cm, height: 12 cm, tucks: {depth: 5 mm, number: 4}}
  - {name: collar, fabric: lawn, flounce: {seam: 50 cm, depth: 12 cm, pieces: 2, turn: 0.5}, hem: 5 mm, allowance: 1 cm}
  - {name: skirt, fabric: lawn, finished width: 70 cm, finished height: 60 cm, tiers: {number: 2}, hem: 2 cm}
"""  # noqa: E501 - one piece a line, as a maker writes it
SAID = {
    "tucks": "6 tucks 10 mm deep take 12 cm: first fold 10.8 cm from the cut edge, then 45 mm from "
    "fold to fold, stitched 10 mm from each fold",
    "cut size of tucks": "bodice (lawn). Cut: 1 of 45 cm wide × 28 cm long",
    "a cloth that crushes": "Caution: pile avoids tucks",
    "flounce": "radius 76 mm for the inner edge, 86 mm for its seam line, 21.1 cm for the outer",
    "rings": "2 × half circle, each from a piece of 42.2 cm × 21.1 cm",
    "its edges": "Staystitch or tape the inner edge before you clip it",
    "tier": "skirt, tier 2 (lawn). Cut: 2 of 81.8 cm wide × 33.5 cm long, 1.5 to 1 on 105 cm",
    "strip": "bias strip, Hong Kong (coat side). Cut: 3.6 m of it 21.5 mm wide",
}


@pytest.fixture(scope="module")
def pinafore(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A project of tucks, a flounce, tiers and bound edges."""
    path = tmp_path_factory.mktemp("pinafore") / "pinafore.yaml"
    path.write_text(PINAFORE, encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def shopping(pinafore: Path) -> str:
    """Its shopping list, lines joined."""
    done = advisor("sheet", str(pinafore), "--only", "shopping")
    assert (0, b"") == (done.returncode, done.stderr)
    return " ".join(done.stdout.decode().split())


@pytest.mark.parametrize("what", SAID)
def test_shapes_are_told_with_their_marks(shopping: str, what: str) -> None:
    """Sizes to cut, where to fold and draw, and what to mind."""
    assert SAID[what] in shopping


def test_the_close_sheet_tells_of_shapes_too(pinafore: Path) -> None:
    """The marks stand among what to buy, and the data hold them in mm."""
    text = " ".join(advisor("sheet", str(pinafore)).stdout.decode().split())
    assert "Collar: 2 × half circle, each from a piece of 42.2 cm × 21.1 cm; radius 76 mm" in text
    data = json.loads(advisor("sheet", str(pinafore), "--json").stdout)
    rows = {row["name"]: row for row in data["cut"]}
    assert (45.0, 107.5) == (
        rows["bodice"]["tucks"]["fold_to_fold_mm"],
        rows["bodice"]["tucks"]["first_fold_mm"],
    )
    assert rows["collar"]["ring"]["cut_outer_mm"] == pytest.approx(210.9, abs=0.3)
    assert ["bodice"] == [n for row in data["thread"] for n in row["tucks"] if n == "bodice"]


def test_a_tuck_that_is_too_deep_is_one_clear_error(tmp_path: Path) -> None:
    """Its line, what is wrong and what would do; status 2 and nothing printed."""
    path = tmp_path / "deep.yaml"
    path.write_text(PINAFORE.replace("spacing: 25 mm", "spacing: 8 mm"), encoding="utf-8")
    done = advisor("sheet", str(path))
    assert (2, b"") == (done.returncode, done.stdout)
    said = done.stderr.decode()
    assert "a tuck 10 mm deep is deeper than its spacing. Expected at most 8 mm" in said
    assert f"deep.yaml:{PINAFORE[: PINAFORE.index('- {name: bodice')].count(chr(10)) + 1}:" in said
