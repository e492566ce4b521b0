"""`advisor quote` and what she keeps for it, as they are typed."""

from __future__ import annotations

from pathlib import Path

from tests.typed import Done, typed

PROJECT = """garment: Scarf
fabrics:
  silk: {fabric: chiffon, fibres: {silk: 100}, width: 140 cm}
seams:
  - {name: hem, layers: [silk], length: 300 cm, edge: hem}
pieces:
  - {name: scarf, fabric: silk, width: 50 cm, height: 150 cm}
"""


def run(own: Path, *words: str) -> Done:
    return typed(*words, env={"ADVISOR_OWN": str(own)})


def test_prices_and_times_of_her_own_folder_make_the_quote(tmp_path: Path) -> None:
    """A price, an hour and a finished garment are kept, and the quote counts them."""
    own, file, page = tmp_path / "own", tmp_path / "scarf.yaml", tmp_path / "quote.html"
    file.write_text(PROJECT, encoding="utf-8")
    own.mkdir()
    (own / "quote.yaml").write_text(
        "# mine\nhour: 20\nprices:\n  chiffon: 30 per m\n  reel: 3\n", encoding="utf-8"
    )
    assert 0 == run(own, "learn", "price", "chiffon", "32 per m").returncode
    took = run(own, "learn", "took", str(file), "6 h")
    assert 0 == took.returncode, took.err
    text = (own / "quote.yaml").read_text("utf-8")
    assert text.startswith('# mine\nhour: 20\nprices:\n  chiffon: "32 per m"\n  reel: 3\n')
    assert "took: 360 min" in text
    told = run(own, "quote", str(file))
    assert 0 == told.returncode, told.err
    assert "at 32.00 per m" in told.out
    assert "Corrected by 1 garment" in told.out
    assert 0 == run(own, "quote", str(file), "--html", str(page)).returncode
    assert "Agreed:" in page.read_text("utf-8")
    both = run(own, "quote", str(file), "--html", "-", "--json")
    assert 2 == both.returncode
    wrong = run(own, "learn", "price", "chiffon", "dear")
    assert 2 == wrong.returncode
    assert "is no price" in wrong.err
