"""An unknown cloth on the sheet: what knowing it would free, and the test that frees most."""

from __future__ import annotations

from typing import Any

from advisor.project.quick import quick_garment
from tests.told import data_of
from tests.typed import shipped as knowledge


def unknown(phrase: str) -> dict[str, Any]:
    told = data_of(quick_garment([phrase], knowledge()), knowledge())
    return next(row for row in told["unknowns"] if "limit_c" in row)


def test_it_is_said_what_knowing_would_free() -> None:
    """An unknown brocade: hotter if it is silk, and by how much."""
    row = unknown("brocade, fibre unknown")
    assert 110 == row["limit_c"]
    assert "silk: 150 °C instead of 110 °C" in row["effect"]


def test_one_test_is_named_with_what_each_answer_frees() -> None:
    """The test is one of those that `identify` knows, and each answer frees what it says."""
    row = unknown("brocade, fibre unknown")
    observation = knowledge().observations[row["test"]["id"]]
    assert row["test"]["text"] in row["effect"]
    assert row["test"]["frees"]
    for freed in row["test"]["frees"]:
        assert freed["limit_c"] > row["limit_c"]
        assert set(freed["answers"]) <= set(observation.answers)


def test_a_dangerous_test_points_to_how_it_is_done() -> None:
    """A flame or a solvent is named only with where its safety stands, and after asking."""
    for phrase in ("brocade, fibre unknown", "satin, fibre unknown", "lining, fibre unknown"):
        text = unknown(phrase)["test"]["text"]
        assert text.startswith("Ask first")
        assert "advisor identify" in text


def test_nothing_to_free_names_no_test() -> None:
    """Where every candidate bears the same iron, no test is proposed."""
    row = unknown("sequinned, fibre unknown")
    assert "test" not in row
    assert "every candidate bears the same iron" in row["effect"]
