"""What kept a teacher of dressmaking from sewing a shirt dress, a circle skirt and a wrap dress.

A shirt dress with a lined yoke, a felled sleeve and a collar of unknown fibre; a lined circle skirt
on a hip yoke with pockets and a zip in its sides; a wrap dress with bound edges, a frill, a lace
let in and sheer sleeves. All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.order.kinds import crosses
from tests.garments.whole import changed, places, stands, work

SHIRT, SKIRT, WRAP = "more/lock_keeper_dress", "more/bandmaster_skirt", "more/ferryhouse_wrap"
ALL = (SHIRT, SKIRT, WRAP)


def test_a_pocket_is_in_its_edges_before_the_side_is_basted() -> None:
    """No bag is joined to the two edges of a seam that is basted shut."""
    found = work(SKIRT)
    pocket = ("join in-seam pocket", "press in-seam pocket", "pin up in-seam pocket")
    assert stands(found, *pocket, "baste skirt side", "fit", "join skirt side")


def test_a_sleeve_that_she_wants_felled_is_felled_whatever_its_ease() -> None:
    """Else its cap is left raw: sewn twice and trimmed at the underarm, as an eased one is."""
    found = work(SHIRT)
    assert "sleeve-felled-flat" == places(found)["armhole"].method.id
    steps = ["ease armhole", "join armhole", "trim armhole", "fold armhole", "fell armhole"]
    assert stands(found, "ease armhole", "baste armhole", "fit", *steps[1:], "join side and sleeve")
    plain = changed(SHIRT, ", shape: curved, seam: felled, times: 2", ", shape: curved, times: 2")
    assert "sleeve-set-in-with-ease" == places(plain)["armhole"].method.id


def test_a_yoke_lined_with_another_cloth_takes_the_back_between_its_layers() -> None:
    """Its edges are all enclosed, so nothing is neatened; a sheer in the middle only backs it."""
    found = work(SHIRT)
    assert {"yoke-enclosed"} == {places(found)[n].method.id for n in ("yoke", "shoulder")}
    assert not {"neaten yoke", "neaten shoulder"} & set(found.order)
    old = "[lawn, chambray, {use: chambray, fullness: 1.2}]"
    backed = changed(SHIRT, old, "[chambray, lawn, {use: twill, fullness: 1.2}]")
    assert "yoke-seam" == places(backed)["yoke"].method.id


APART = [
    (SHIRT, "skirt side", "breast pocket"),
    (SHIRT, "hem", "cuff"),
    (SHIRT, "button band", "bust dart"),
    (SHIRT, "side and sleeve", "sleeve placket"),
    (SKIRT, "velvet band", "yoke dart"),
    (SKIRT, "yoke side", "in-seam pocket"),
    (SKIRT, "lining side", "in-seam pocket"),
    (WRAP, "hem", "sleeve casing"),
]


@pytest.mark.parametrize(("garment", "later", "earlier"), APART)
def test_what_has_no_piece_in_common_is_never_said_to_cross(
    garment: str, later: str, earlier: str
) -> None:
    """A reason that is false makes every other one doubtful."""
    found = places(work(garment))
    assert not crosses(found[later], found[earlier])


def test_the_bag_of_a_pocket_brings_no_heat_to_what_has_the_same_cloth() -> None:
    """A yoke lined with the lawn of the bag is pressed when it likes."""
    reasons = [p for p in work(SHIRT).graph.precedences if p.after == "join pocket in the side"]
    assert not {"press shoulder", "press yoke"} & {p.before for p in reasons}


def test_what_is_pressed_hotter_than_the_glue_comes_before_the_band_is_fused() -> None:
    """The band lies on the front itself, so the hot darts and pockets of that are done first."""
    found = work(SHIRT)
    assert stands(found, "press bust dart", "press breast pocket", "fuse button band")
