"""What a tailor found out of order in a blazer, lined trousers and a short jacket.

All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from tests.garments.whole import changed, places, stands, work

BLAZER, TROUSERS, JACKET = (
    "more/ferryman_blazer",
    "more/conductor_trousers",
    "more/skating_jacket",
)


@pytest.mark.parametrize("garment", [BLAZER, TROUSERS, JACKET])
def test_nothing_chases_itself(garment: str) -> None:
    """Every order can be kept."""
    assert work(garment).cycles == ()


def test_the_tape_of_the_roll_line_is_felled_to_a_canvas_that_is_in() -> None:
    """There is nothing to fell it to before."""
    assert stands(work(BLAZER), "baste front canvas", "tape roll line", "join front facing")


def test_a_front_is_padded_before_the_body_hangs_on_it() -> None:
    """Darts, pockets, canvas, then the seams that join it to the back."""
    steps = ("press front dart", "close flap pocket", "baste front canvas", "pad front canvas")
    assert stands(work(BLAZER), *steps, "shape front canvas", "join shoulder", "join side")


def test_a_flap_is_made_before_the_pocket_that_takes_it_in() -> None:
    """It is caught in the upper row, so the slit waits for it."""
    found = work(BLAZER)
    assert places(found)["flap"].role.id == "pocket-flap"
    steps = ("join flap", "grade flap", "turn flap", "lay the flap at flap pocket")
    assert stands(found, *steps, "stitch the welt of flap pocket", "slash flap pocket")


def test_a_flap_is_no_front_edge() -> None:
    """Neither the neck nor the lining waits for it, and the pocket of the lining has none."""
    found = work(BLAZER)
    assert "lay the flap at inside breast pocket" not in found.order
    because = [p.before for p in found.reasons["close collar seam"]]
    assert "turn flap" not in because
    whys = [item.why for items in found.reasons.values() for item in items]
    assert not any("once flap holds the lining" in why for why in whys)


def test_a_pocket_without_a_flap_takes_none_in() -> None:
    """As a welt pocket alone."""
    found = changed(BLAZER, "name: flap, ", "name: front tab, ")
    assert not any(step.startswith("lay the flap") for step in found.order)


def test_the_vent_of_a_sleeve_waits_for_the_seam_that_it_ends() -> None:
    """It is the lower end of the sleeve seam, and the hem runs over it."""
    found = work(BLAZER)
    top = "stitch across the top of cuff vent"
    assert stands(found, "press sleeve seam", top, "tack cuff vent", "sew sleeve hem")


def test_a_sleeve_head_lies_in_the_cap_before_the_pad() -> None:
    """It is no pad, and no shoulder is sewn to it."""
    found = work(BLAZER)
    assert stands(found, "join armhole", "sew in sleeve head", "sew in shoulder pads")
    told = found.tasks["sew in sleeve head"].step.does
    assert "cap" in told
    assert "shoulder" not in told


@pytest.mark.parametrize("garment", [BLAZER, JACKET])
def test_a_sleeve_is_basted_in_when_it_is_one(garment: str) -> None:
    """Its own seam and the body are closed, and the body is fitted."""
    found = work(garment)
    assert stands(found, "join side", "fit", "baste armhole", "join armhole")
    assert stands(found, "press sleeve seam", "baste armhole")
