"""What she states of a cloth's fibres stays, whatever is laid on it."""

from __future__ import annotations

import pytest

from advisor.knowledge.model import Mix
from advisor.project.cloths import read_cloth
from advisor.project.findings import Findings
from advisor.project.phrases.composition import always_in
from tests.typed import shipped

COATS = ("coated", "waterproof", "showerproof", "PU-coated", "laminated", "sequinned", "quilted")
GROUND = "polyester"
"""A fibre that many of the cloths are sold in; where it contradicts a name, that is refused."""


def _mixes(words: str, ground: str = GROUND) -> tuple[Mix, ...]:
    findings = Findings()
    said = {"fabric": words, "fibres": {ground: 100}}
    cloth = read_cloth("cloth", said, (), findings, shipped())
    return () if cloth is None or findings.problems else cloth.mixes


@pytest.mark.parametrize("coat", COATS)
def test_a_coat_adds_no_other_ground_to_a_stated_fibre(coat: str) -> None:
    """Over all cloths: no mix without her fibre, and none with a ground that she did not state."""
    knowledge = shipped()
    parts = {part for entry in knowledge.entries.values() for part in always_in(entry)}
    read = 0
    for entry in knowledge.entries.values():
        if entry.kind != "cloth":
            continue
        for words in (f"{coat} {entry.name}", f"{entry.name} {coat}"):
            for mix in _mixes(words):
                fibres = {fibre for fibre, _ in mix}
                assert {GROUND} == fibres - parts, (words, mix)
                read += 1
    assert read > len(COATS)


@pytest.mark.parametrize(
    "words",
    ["nylon taffeta coated", "coated taffeta", "coated nylon taffeta", "waterproof nylon taffeta"],
)
def test_coated_taffeta_of_stated_nylon_is_nylon(words: str) -> None:
    """Acetone and weak wet acetate were feared of a cloth stated as nylon alone."""
    assert ((("nylon", 100.0),),) == _mixes(words, "nylon")
