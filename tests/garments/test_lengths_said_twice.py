"""A length said for a place and again for its piece, and layers of which only some are cut."""

from __future__ import annotations

import pytest

from tests.garments.whole import read

SKIRT = """\
garment: Lock keeper skirt
fabrics:
  poplin: {fabric: cotton poplin, width: 140 cm}
  net: {fabric: nylon tulle, width: 150 cm}
pieces:
  - {name: waistband, fabric: poplin, finished width: BAND, finished height: 4 cm, doubled: yes}
  - {name: hem frill, fabric: poplin, finished width: FRILL, finished height: 20 cm, fullness: 2}
  - {name: petticoat, fabric: net, finished width: 72 cm, finished height: 50 cm, fullness: 3MORE}
seams:
  - {name: waistband, layers: [poplin, poplin], length: 72 cm}
  - {name: hem frill, layers: [poplin, {use: poplin, fullness: 2}], length: 115 cm}
  - {name: waist, layers: [poplin, NET], length: 72 cm}
"""
LAYER = "{use: net, fullness: 3}"


def checks(
    band: str = "75 cm", frill: str = "116 cm", layers: int = 1, more: str = ""
) -> dict[str, tuple[str, tuple[float, ...]]]:
    """What does not agree, by its id."""
    net = ", ".join([LAYER] * layers)
    text = SKIRT.replace("BAND", band).replace("FRILL", frill).replace("NET", net)
    found = read(text.replace("MORE", more)).checks or ()
    return {each.id: (each.text, each.values) for each in found}


def test_what_agrees_is_not_told() -> None:
    """A lap of 3 cm and a frill that is 1 cm off are no slip."""
    assert not checks().keys() & {"band", "drawn up", "layers"}


def test_a_frill_is_told_with_both_lengths() -> None:
    """121 cm of the piece against 115 of its place: within a twentieth, and a slip all the same."""
    text, values = checks(frill="121 cm")["drawn up"]
    assert (1150.0, 1210.0) == values
    assert "115 cm" in text
    assert "121 cm" in text


@pytest.mark.parametrize(("band", "told"), [("79 cm", True), ("70 cm", True), ("71.5 cm", False)])
def test_a_waistband_is_as_long_as_its_waist_and_a_lap(band: str, told: bool) -> None:
    """72 cm: 7 cm over is more than any lap, 2 cm under does not reach round."""
    assert told == ("band" in checks(band=band))


def test_two_layers_ask_for_two_pieces() -> None:
    """One petticoat is cut and two layers are sewn in; folded double it is two."""
    assert "2 layers of net, and petticoat gives 1" in checks(layers=2)["layers"][0]
    assert "layers" not in checks(layers=2, more=", doubled: yes")


VEST = """\
garment: Osier vest
fabrics:
  twill: {fabric: cotton twill, width: 150 cm}
  lawn: {fabric: cotton lawn, width: 140 cm}
pieces:
  - {name: vest back, fabric: twill, width: 50 cm, height: 60 cm}
  - {name: lining back, fabric: lawn, width: 50 cm, height: 60 cm}MORE
seams:
  - {name: neck, layers: [twill, lawn], length: 60 cm, edge: bound}
"""


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ("", True),
        ("\n  - {name: strip, fabric: lawn, width: 4 cm, height: 66 cm, grain: bias}", False),
    ],
)
def test_a_strip_that_binds_is_cut_from_something(more: str, told: bool) -> None:
    """The lining binds the neck, and of its pieces none is a strip: it would be bought short."""
    found = [
        each for each in read(VEST.replace("MORE", more)).checks or () if each.id == "no strip"
    ]
    assert told == bool(found)


def test_a_tape_of_hooks_is_as_long_as_its_place() -> None:
    """One piece of 45 cm; a row of single hooks on the same length is counted."""
    hooks = "\n  - {name: HOOKS, kind: fastening, layers: [twill, {notion: NOTION}], length: 45 cm}"
    text = VEST.replace("MORE", "") + hooks.strip("\n").replace("HOOKS", "back hooks") + "\n"
    tape, row = (
        next(need for need in read(text.replace("NOTION", name)).kit or () if name in need.item)
        for name in ("hook-and-eye tape", "hook and eye")
    )
    assert ((1, 450.0),) == tape.cut_mm
    assert not row.cut_mm
