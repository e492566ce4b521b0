"""Every kind of seam has a class of the standards, every substitute is a known word."""

from __future__ import annotations

from advisor.knowledge.workshop import Workshop, workshop_from_plain
from tests.typed import shipped

KNOWN = shipped()


def test_every_kind_of_seam_is_placed_in_the_standards() -> None:
    """Where no class was found, a note says so."""
    kinds = KNOWN.aspects["seam.kind"].words
    assert set(kinds) == set(KNOWN.workshop.classes)
    assert all(c.iso or c.astm or c.note for c in KNOWN.workshop.classes.values())


ASTM = {
    "plain": "SSa-1",
    "double-stitched": "SSa-2",
    "French": "SSae-2",
    "felled": "LSc",
    "lapped": "LSa",
}
"""class-seam-notes (SSa, SSae with 301), fed-std-751a-ls (LSa, LSc)."""


def test_classes_are_those_of_the_sources() -> None:
    """A French seam is SSae-2 and not SSe, which is the enclosed edge of a collar."""
    assert ASTM == {kind: KNOWN.workshop.classes[kind].astm for kind in ASTM}


def test_a_number_of_iso_4916_is_from_memory() -> None:
    """The standard itself was not read, so every number says so."""
    for named in KNOWN.workshop.classes.values():
        assert not named.iso or "memory" in named.iso_sources


def test_no_tool_does_instead_of_itself() -> None:
    """And each is called for by a word of its aspect."""
    for (aspect, word), tool in KNOWN.workshop.tools.items():
        assert word in KNOWN.aspects[aspect].words
        assert word not in {other.word for other in tool.instead}


def test_a_folder_may_do_without_them() -> None:
    """Nothing compiled is an empty workshop."""
    assert Workshop() == workshop_from_plain({})
