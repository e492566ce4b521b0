"""Numeric tables stand as they were when somebody last read them against their sources."""

from __future__ import annotations

from advisor.textio.yamlfile import read_yaml
from tests.corpus import audit, pins


def test_no_number_has_slipped() -> None:
    """Every number of the knowledge and the formulas is the one that was pinned."""
    lines = pins.changed(read_yaml(pins.FILE).data)
    hint = "read them against their sources, then: python -m tests.corpus.pins --write"
    assert [] == lines, audit.report([*lines, hint])


def test_a_slip_of_a_digit_shows() -> None:
    """Swapping two digits, or moving a number to another key, changes the checksum."""
    wool = {"iron": [{"max": 148}], "density": {"value": 1.31}}
    slipped = {"iron": [{"max": 184}], "density": {"value": 1.31}}
    moved = {"iron": [{"min": 148}], "density": {"value": 1.31}}
    assert 3 == len({pins.checksum(t) for t in (wool, slipped, moved)})


def test_words_do_not_matter() -> None:
    """A reworded reason leaves the checksum as it is."""
    one = {"claims": [{"max": 80, "why": "It leaves holes."}]}
    other = {"claims": [{"max": 80, "why": "Bigger ones leave holes."}]}
    assert pins.checksum(one) == pins.checksum(other)


def test_every_shelf_is_pinned() -> None:
    """Fibres, cloths, notions, aspects, machines, rules and formulas all have pins."""
    kept = read_yaml(pins.FILE).data
    with_numbers = {
        "aspects",
        "fibres",
        "fabrics",
        "notions",
        "rules",
        "machines",
        "formulas",
    }
    assert with_numbers <= set(kept) <= {*pins.SHELVES, "formulas"}
    assert set(audit.book().fibres) == set(kept["fibres"])
