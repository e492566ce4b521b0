"""Sentences of the knowledge in the reader's units, and the check that they can be."""

from __future__ import annotations

import copy
from pathlib import Path

import pytest

from advisor.errors import InputError
from advisor.knowledge import spoken
from advisor.knowledge.model import from_plain
from advisor.overlay.cache import compile_folder
from tests.unit.knowledge.small_book import FILES, rule, write_book

RULE = rule("stitch", "warms", "{seam: {shape: curved}}", more='do: ["Hold it {20 cm} off."]\n')


def test_a_reader_gets_the_sentences_in_her_units(tmp_path: Path) -> None:
    """Metric by default; the same knowledge told in inches, and back."""
    known = from_plain(compile_folder(write_book(tmp_path, RULE)))
    us = known.told("us")

    def done(knowledge: object) -> tuple[str, ...]:
        return next(r.do for r in knowledge.rules if r.id == "warms")  # type: ignore[attr-defined]

    assert ("Hold it 20 cm off.",) == done(known)
    assert ("Hold it 8 in off.",) == done(us)
    assert ("Hold it 20 cm off.",) == done(us.told("metric"))
    assert known is known.told("metric")


def test_the_compiled_data_is_left_as_it_is(tmp_path: Path) -> None:
    """Telling copies what it changes, so that the other units can still be told."""
    raw = compile_folder(write_book(tmp_path, RULE))
    before = copy.deepcopy(raw)
    spoken.in_units(raw, "us")
    assert before == raw
    assert ["tests", "do"] == [way[2] for way in raw[spoken.WAYS]]


BARE = {
    "a rule": (RULE | {}, "{20 cm}", "20 cm", "warms.yaml:", "{20 cm}"),
    "a note": (
        {"fabrics/velvet.yaml": FILES["fabrics/velvet.yaml"]},
        "",
        "notes: [{text: Keep 6 mm off., sources: [habit]}]\n",
        "velvet.yaml:",
        "{6 mm}",
    ),
}


@pytest.mark.parametrize("case", BARE)
def test_a_bare_quantity_is_refused_with_its_place(tmp_path: Path, case: str) -> None:
    """File, line and column, and how it is written."""
    files, old, new, place, right = BARE[case]
    wrong = {k: v.replace(old, new) if old else v + new for k, v in files.items()}
    with pytest.raises(InputError) as raised:
        compile_folder(write_book(tmp_path, wrong))
    (found,) = raised.value.problems
    assert place in str(found)
    assert right in str(found)


def test_a_makers_own_notes_stay_as_she_wrote_them(tmp_path: Path) -> None:
    """She knows which tape she used."""
    own = tmp_path / "own"
    (own / "fabrics").mkdir(parents=True)
    note = "notes: [{text: Keep 6 mm off., sources: [own-test]}]"
    text = f"id: mine\nname: mine\nlike: velvet\n{note}\n"
    (own / "fabrics/mine.yaml").write_text(text, encoding="utf-8")
    known = from_plain(compile_folder(write_book(tmp_path / "book"), own)).told("us")
    assert "Keep 6 mm off." == known.entries["mine"].facts["notes"][0]["text"]
