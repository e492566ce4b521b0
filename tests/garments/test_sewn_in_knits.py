"""What a maker of sportswear and children's clothes found impossible, and must not come back.

A leotard of velvet and mesh, a hooded jacket of softshell, dungarees with snaps at the inside leg.
All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.construction.seamwork import seamworks
from tests.garments.whole import advice, changed, known, places, stands, work

LEOTARD, JACKET, DUNGAREES = "more/trapeze_leotard", "more/towpath_jacket", "more/orchard_dungarees"
FLEECE, SHIRT = "more/crew_fleece", "more/cardigan"


@pytest.mark.parametrize("garment", [LEOTARD, JACKET, DUNGAREES])
def test_each_order_can_be_kept(garment: str) -> None:
    """Nothing chases itself."""
    assert work(garment).cycles == ()


def test_a_knit_stretched_to_the_lower_edge_is_a_band_and_no_hem() -> None:
    """Nothing is turned up, and nothing hangs for a day to be levelled."""
    found = work(JACKET)
    assert places(found)["hem band"].method.id == "band-stretched-on"
    assert not any(task.op in ("hem", "hem-edge", "hang") for task in found.tasks.values())


@pytest.mark.parametrize(("garment", "band"), [(JACKET, "hem band"), (FLEECE, "waist rib")])
def test_the_ends_of_a_band_stay_open_for_the_zip(garment: str, band: str) -> None:
    """The zip takes them in; closed and turned they could not lie between tape and facing."""
    found = work(garment)
    assert f"close the ends of {band}" not in found.tasks
    assert "the zip takes them in" in found.tasks[f"fold {band}"].step.does
    assert stands(found, f"fold {band}", f"join {band}", "set front zip")


def test_buttons_still_leave_a_band_with_closed_ends() -> None:
    """No zip takes them in there."""
    assert "close the ends of rib welt at the bottom" in work(SHIRT).tasks


def test_a_rib_at_a_leg_that_snaps_open_is_no_ring() -> None:
    """Snaps along the inside leg open the ankle; without them its ends are joined."""
    assert "close the ends of ankle rib" in work(DUNGAREES).tasks
    snaps = (
        "  - {name: inside leg snaps, kind: fastening, "
        "layers: [cord, print, {notion: set snap}], number: 7}\n"
    )
    assert "to a ring" in changed(DUNGAREES, snaps, "").tasks["make up ankle rib"].step.does


def test_a_zip_at_the_front_opens_no_leg() -> None:
    """The ankles of a zipped suit are rings."""
    new = "name: ankle rib, layers"
    found = changed(FLEECE, "name: cuff, layers", new)
    assert "to a ring" in found.tasks["make up ankle rib"].step.does


def test_the_lining_is_whole_before_a_rib_takes_it_in() -> None:
    """Whatever its cloth is called: a jersey lines as well."""
    found = work(DUNGAREES)
    assert stands(found, "join lining side", "press lining crotch", "join ankle rib")


@pytest.mark.parametrize(("place", "plies"), [("cuff", 3), ("hem band", 3), ("armhole", 2)])
def test_a_folded_band_lies_double_in_its_seam(place: str, plies: int) -> None:
    """The edge and both layers of the rib, at the row that joins them."""
    seams = {work.seam.name: work for work in seamworks(advice(JACKET).judgement, known())}
    assert [plies] == [s.plies for s in seams[place].spots if s.name == "at the stitch line"]
