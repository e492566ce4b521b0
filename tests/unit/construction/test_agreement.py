"""Quantities that check each other: each disagreement is told with both numbers, and no other."""

from __future__ import annotations

import pytest

from advisor.answer.checkwords import told_checks
from advisor.answer.teller import Teller
from tests.unit.construction.build_cases import judged, known

HEAD = """\
garment: Figures
fabrics:
  o: {fabric: organza, fibres: {silk: 100}, width: 110 cm}
  shell: {fabric: gabardine, fibres: {wool: 100}, width: 150 cm}
  rib: {fabric: rib knit, fibres: {cotton: 100}, width: 90 cm}
"""
WAIST = "  - {name: waist, layers: [o, {use: o, fullness: 3}], length: 70 cm}\n"
HEM = "  - {name: hem, layers: [o], length: 100 cm, edge: hem}\n"
SKIRT = (
    "pieces: [{name: skirt, fabric: o, finished width: 70 cm, finished height: 100 cm, fullness: 2"
)


def told(
    seams: str, pieces: str = "", units: str = "metric", *, unused: bool = False
) -> list[tuple[str, str, str]]:
    """What does not agree in these places and pieces; cloths without pieces only if asked."""
    judgement = judged(f"{seams}{pieces}", f"units: {units}\n{HEAD}seams:\n")
    found = told_checks(judgement, Teller(judgement.garment, known()))
    return [(c.id, c.place, c.text) for c in found if unused or c.id != "unused"]


def test_fullness_of_seam_piece_and_hem() -> None:
    """3 to 1 asked, 2 to 1 given, and a hem of 100 cm: all three are told."""
    ((id_, place, text),) = told(WAIST + HEM, SKIRT + ", hem: 1 cm}]")
    assert ("fullness", "waist") == (id_, place)
    for said in ("3 to 1, that is 210 cm", "2 to 1, that is 140 cm", "hem is said to be 100 cm"):
        assert said in text
    ((_, _, us),) = told(WAIST, SKIRT + "}]", "us")
    assert "82 11/16 in" in us


def test_a_piece_drawn_up_at_both_edges_has_two_fullnesses() -> None:
    """A puff of 128 cm: 1.6 to 1 above, and 2.46 to 1 at a cuff of 52, or narrower below."""
    seams = (
        "  - {name: armhole, layers: [shell, {use: o, fullness: 1.6}], length: 40 cm, times: 2}\n"
        "  - {name: cuff, layers: [shell, {use: o, fullness: FULL}], length: 26 cm, times: 2}\n"
    )
    puff = SKIRT.replace("skirt", "puff").replace("70", "80").replace("ss: 2", "ss: 1.6")
    puff += ", number: 2"
    assert [] == told(seams.replace("FULL", "2.46"), puff + "}]")
    ((id_, place, text),) = told(seams.replace("FULL", "2"), puff + "}]")
    assert ("both edges", "cuff") == (id_, place)
    assert "asks of o 104 cm" in text
    assert "which agrees with armhole, has 128 cm, drawn up to cuff that is 2.46 to 1" in text
    assert [] == told(seams.replace("FULL", "2"), puff + ", narrow end: 65 cm}]")


def test_a_piece_as_wide_as_one_of_its_panels_is_told_what_its_width_is() -> None:
    """The fullness is the same in both, so that nobody is asked to write it anew."""
    waist = WAIST.replace("fullness: 3", "fullness: 2")
    piece = SKIRT.replace("width: 70 cm", "width: 35 cm")
    ((id_, place, text),) = told(waist, piece + ", number: 2}]")
    assert ("width", "waist") == (id_, place)
    assert "the finished width of the piece is that of the whole place" in text
    assert "write the same fullness" not in text


def test_a_hem_that_agrees_with_what_was_meant_says_so_too() -> None:
    """Two panels of 35 cm each for a waist of 70, and a hem that is as wide as both."""
    waist = WAIST.replace("fullness: 3", "fullness: 2")
    piece = SKIRT.replace("width: 70 cm", "width: 35 cm") + ", hem: 1 cm, number: 2}]"
    (id_, _, text), (other, _, _) = told(waist + HEM.replace("100 cm", "140 cm"), piece)
    assert ("width", "widths") == (id_, other)  # nor does a place join the two panels
    assert "For 35 cm each write finished width: 70 cm" in text
    (id_, _, text), (other, _, _) = told(waist + HEM, piece)
    assert ("fullness", "widths") == (id_, other)
    assert "each write" not in text


PUFF = "  - {name: puff, layers: [shell, {use: o, fullness: 2}], length: 40 cm, times: 2}\n"
SLEEVES = (
    "pieces: [{{name: sleeve, fabric: o, finished width: {}, finished height: 30 cm, fullness: 2, "
    "number: 2}}]"
)


def test_a_place_that_is_there_twice_asks_for_both() -> None:
    """Two sleeves of 40 cm take the 80 cm of two pieces; half of that is what is told."""
    assert [] == told(PUFF, SLEEVES.format("80 cm"))
    ((id_, place, text),) = told(PUFF, SLEEVES.format("40 cm"))
    assert ("width", "puff") == (id_, place)
    for said in (
        "puff, 2 times, asks of o 2 to 1, that is 160 cm",
        "of all 2 pieces together: 40 cm makes each 20 cm",
        "For 40 cm each write finished width: 80 cm",
    ):
        assert said in text


def test_what_was_not_meant_of_each_is_not_taken_for_it() -> None:
    """60 cm is neither all of it nor one of two."""
    ((id_, _, text),) = told(PUFF.replace("40 cm", "44 cm"), SLEEVES.format("60 cm"))
    assert "width" == id_
    assert "each write" not in text


def test_pleats_of_a_pair_against_its_two_pieces() -> None:
    """Cuffs pleated twice take what both pieces have, whether said as cut or as finished."""
    seam = (
        "  - {name: cuff, layers: [o, shell], length: 42 cm, times: 2, "
        "pleats: {kind: knife, number: 10, depth: 2 cm, waist: 42 cm}}\n"
    )
    other = "{name: band, fabric: o, width: 90 cm, height: 8 cm}]"
    piece = "pieces: [{{name: sleeve, fabric: shell, width: {}, height: 60 cm, number: 2}}, "
    assert [] == told(seam, piece.format("85 cm") + other)
    ((id_, _, text),) = told(seam, piece.format("43 cm") + other)
    assert "pleats" == id_
    assert "take 164 cm" in text


def test_fullness_that_agrees_is_not_told() -> None:
    """The same 2 to 1 in both, and a hem of 140 cm."""
    seams = WAIST.replace("fullness: 3", "fullness: 2") + HEM.replace("100 cm", "140 cm")
    assert [] == told(seams, SKIRT + "}]")


def test_pleats_against_their_piece() -> None:
    """Pleats that take 264 cm do not come from 100 cm; from two of 135 cm they do."""
    seam = (
        "  - {name: waist, layers: [o, shell], length: 84 cm, "
        "pleats: {kind: knife, number: 21, depth: 4 cm, hip: 96 cm, waist: 84 cm}}\n"
    )
    other = "{name: band, fabric: o, width: 90 cm, height: 8 cm}]"
    piece = "pieces: [{{name: skirt, fabric: shell, width: {}, height: 60 cm, number: 2}}, "
    ((id_, _, text),) = told(seam, piece.format("50 cm") + other)
    assert "pleats" == id_
    assert "take 264 cm" in text
    assert "94 cm" in text
    assert [] == told(seam, piece.format("135 cm") + other)


@pytest.mark.parametrize(("wide", "number"), [("47 cm", 0), ("52 cm", 1), ("42 cm", 1)])
def test_a_rib_that_is_stretched_on(wide: str, number: int) -> None:
    """52 cm at 1.15 asks for 45.2 cm and seams: 47 agree, 52 and 42 do not."""
    seam = "  - {name: neck rib, layers: [o, {use: rib, stretched: 1.15}], length: 52 cm}\n"
    pieces = (
        f"pieces: [{{name: rib, fabric: rib, width: {wide}, height: 6 cm}}, "
        "{name: yoke, fabric: o, width: 40 cm, height: 20 cm}]"
    )
    found = told(seam, pieces)
    assert number == len(found)
    assert all("45.2 cm" in text for _, _, text in found)


def test_buttons_and_buttonholes_are_counted() -> None:
    """Nine holes and eight buttons are told; nine and nine are not."""
    holes = "  - {name: buttonholes, layers: [o, o], length: 2 cm, times: 9}\n"
    buttons = "  - {name: buttons, layers: [o, {notion: plastic button}], times: %d}\n"
    ((_, _, text),) = told(holes + buttons % 8)
    assert text.startswith("9 buttonholes, 8 buttons")
    assert [] == told(holes + buttons % 9)


def test_a_cloth_that_no_piece_uses() -> None:
    """Where pieces are given it is told; where none is, nothing is."""
    seam = "  - {name: side, layers: [o, shell], length: 1 m}\n"
    piece = "pieces: [{name: a, fabric: o, width: 40 cm, height: 20 cm}]"
    assert [("unused", "shell"), ("unused", "rib")] == [
        (id_, place) for id_, place, _ in told(seam, piece, unused=True)
    ]
    assert [] == told(seam, unused=True)


def test_a_bias_piece_that_its_cloth_cannot_hold() -> None:
    """Both widths are told."""
    seam = "  - {name: side, layers: [o, o], length: 1 m}\n"
    piece = "pieces: [{name: skirt, fabric: o, width: 100 cm, height: 112 cm, grain: bias}]"
    ((id_, _, text),) = told(seam, piece)
    assert "too-wide" == id_
    assert "149.9 cm" in text
    assert "106.9 cm" in text


@pytest.mark.parametrize(("name", "told_of"), [("facing to lining", False), ("lining side", True)])
def test_what_joins_a_lining_to_its_shell_may_hold_both(name: str, *, told_of: bool) -> None:
    """It is called after the lining, and is no seam of it."""
    parts = "parts: {shell: {layers: [shell]}, lining: {layers: [o]}}\n"
    seam = f"  - {{name: {name}, layers: [shell, o], length: 60 cm}}\n"
    found = {id_ for id_, _, _ in told(seam, parts)}
    assert told_of == ("part-layers" in found)
