"""Sentences as they are printed: every quantity in the reader's units, and none left in braces."""

from __future__ import annotations

import re

import pytest

from tests.cli.test_commands import COAT, DRESS, JACKET
from tests.corpus import audit
from tests.typed import typed

COMMANDS = (
    ("sheet", JACKET, "--all"),
    ("sheet", COAT, "--json"),
    ("iron", COAT),
    ("label", DRESS),
    ("order", JACKET),
    ("why", JACKET, "hem frill", "needle.size"),
    ("ask", "wool sweater knit", "silk organza", "--all"),
    ("explain", "jersey"),
    ("explain", "cloths-shrink-unequally"),
    ("identify", "--tests"),
)
FOREIGN = re.compile(r"\d (?:cm|°C|g/m²)(?!\w)")
"""What a reader in inches can measure with nothing of hers."""
DATA = re.compile(r'"(?:citation|note|facts|line|aspect|unit)": .*')


@pytest.mark.parametrize("arguments", COMMANDS, ids=lambda a: " ".join(a[:2]))
@pytest.mark.parametrize("units", ["metric", "us"])
def test_a_printed_sentence_holds_no_brace(arguments: tuple[str, ...], units: str) -> None:
    """Whichever command prints it, a quantity is finished."""
    chosen = () if arguments[0] == "identify" else ("--units", units)
    text = typed(*arguments, *chosen).stdout.decode()
    assert text
    assert [] == re.findall(r"\{\d[^}]*\}", text)


@pytest.mark.parametrize("arguments", COMMANDS[:2], ids=lambda a: " ".join(a[:2]))
def test_a_sheet_in_inches_has_no_metric_length_or_heat(arguments: tuple[str, ...]) -> None:
    """Only stitches stay in mm, for machines are marked so."""
    text = typed(*arguments, "--units", "us").stdout.decode()
    told = "\n".join(line for line in text.splitlines() if not DATA.search(line))
    assert [] == FOREIGN.findall(told)


@pytest.mark.parametrize("system", ["metric", "us"])
def test_all_knowledge_can_be_told_in_both_units(system: str) -> None:
    """No sentence of any file keeps a brace of a quantity."""
    known = audit.knowledge().told(system)
    left = re.findall(r"\{\d[^}]*\}", repr((known.rules, known.remedies, dict(known.entries))))
    assert [] == left
    assert len(known.plain["spoken"]) > 0
