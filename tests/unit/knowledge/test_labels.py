"""The register of labels: complete for every fibre, notion and answer, and checked by line."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from advisor.knowledge.labels import CARE
from advisor.knowledge.load import read_book
from advisor.knowledge.place import knowledge_folder
from advisor.knowledge.vocabulary import check_book
from tests.typed import shipped as known

MARKETS = ("eu", "us")


@pytest.mark.parametrize("market", MARKETS)
def test_every_fibre_has_a_name_or_a_reason(market: str) -> None:
    """Each fibre of the knowledge is named on each market, or it says why there is no name."""
    names = known().labels.market(market).names
    assert set(known().fibres) == set(names)
    assert all(bool(name.say) != bool(name.none) for name in names.values())
    assert all(name.sources for name in names.values())


@pytest.mark.parametrize("market", MARKETS)
def test_every_answer_of_care_has_words(market: str) -> None:
    """Each answer of each care aspect has words of the market, in the fixed order of processes."""
    care = known().labels.market(market).care
    assert list(CARE) == list(care)
    for aspect in CARE:
        assert set(known().aspects[aspect].words) == set(care[aspect].words)


def problems(tmp_path: Path, old: str, new: str) -> list[str]:
    """What the check says after one change in the labels."""
    folder = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), folder)
    path = folder / "labels.yaml"
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), "utf-8")
    found = check_book(read_book(folder))
    return [str(p) for p in found if p.where and p.where.file.endswith("labels.yaml")]


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("    cotton: {say", "    coton: {say", "unknown fibre 'coton'"),
        ("    cotton: {say", "    coton: {say", "no entry for the fibre cotton"),
        (
            "care.wash:\n      words:\n        60 normal",
            "care.wash:\n      words:\n        60 hot",
            "'60 hot' is no answer of care.wash",
        ),
        ("[eu-1007-2011 Annex I 5]", "[nowhere]", "unknown source 'nowhere'"),
        ("    thread: {text", "    tread: {text", "no entry for the notion kind thread"),
    ],
)
def test_a_wrong_word_is_found(tmp_path: Path, old: str, new: str, says: str) -> None:
    """A misspelt fibre, answer, source or notion kind is named with its file."""
    assert any(says in line for line in problems(tmp_path, old, new))
