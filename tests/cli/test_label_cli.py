"""`advisor label` as it is typed: its words, its status, its data, and what it refuses.

The printed words are compared with tests/cli/expected. After a change that is meant, write them
anew with ADVISOR_WRITE_EXPECTED=1, and read the difference before it is committed.
"""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from tests.typed import typed

CHECKOUT = Path(__file__).resolve().parents[2]
EXPECTED = Path(__file__).parent / "expected"
JACKET = "knowledge/examples/bandstand-jacket.yaml"
COAT = "knowledge/examples/lantern-parade-coat.yaml"
DRESS = "knowledge/examples/allotment-apron-dress.yaml"
MOST_LINES = 80
WIDTH = 96


PRINTED = {
    "label-dress": (0, DRESS),
    "label-jacket": (1, JACKET),
    "label-coat": (1, COAT),
    "label-dress-us": (0, DRESS, "--market", "us"),
    "label-coat-us": (1, COAT, "--market", "us", "--units", "us"),
}


@pytest.mark.parametrize("name", PRINTED)
def test_prints_the_expected_words(name: str) -> None:
    """The label of each demo holds just the expected words, and ends with its status."""
    status, *arguments = PRINTED[name]
    done = typed("label", *map(str, arguments))
    path = EXPECTED / f"{name}.txt"
    if os.environ.get("ADVISOR_WRITE_EXPECTED"):
        path.write_bytes(done.stdout)
    assert done.stdout.decode() == path.read_text(encoding="utf-8")
    assert (done.returncode, done.stderr) == (status, b"")
    lines = done.stdout.decode().splitlines()
    assert len(lines) <= MOST_LINES
    assert max(map(len, lines)) <= WIDTH


def test_json_has_the_label_beside_the_usual_keys() -> None:
    """With --json the label stands in the answer, every source of it listed."""
    data = json.loads(typed("label", COAT, "--json").stdout)
    assert {"schema", "garment", "layers", "verdicts", "conflicts", "sources"} <= set(data)
    label = data["label"]
    assert (label["market"], label["ready"]) == ("eu", False)
    assert ["gift"] == [name for lack in label["missing"] for name in lack["cloths"]]
    assert all(sum(e["percent"] for e in part["entries"]) == 100 for part in label["content"])
    order = [line["aspect"] for line in label["care"]["lines"]]
    wanted = ["care.wash", "care.bleach", "care.dry", "care.iron", "care.professional"]
    assert wanted == order
    listed = {source["id"] for source in data["sources"]}
    assert {s.split(" ")[0] for duty in label["duties"] for s in duty["sources"]} <= listed


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ((DRESS, "--market", "mars"), "eu or us"),
        (("nowhere.yaml",), "no such file"),
        ((), "a project file is missing"),
    ],
)
def test_wrong_use_gets_one_clear_message(arguments: tuple[str, ...], words: str) -> None:
    """Wrong use ends with 2, says what was wrong, and prints no label."""
    done = typed("label", *arguments)
    assert done.returncode == 2
    assert words in done.stderr.decode()
    assert done.stdout == b""
