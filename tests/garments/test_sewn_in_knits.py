"""What a maker of sportswear and children's clothes found impossible, and must not come back.

A leotard of velvet and mesh, a hooded jacket of softshell, dungarees with snaps at the inside leg,
a poncho with taped seams.
All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.answer.seamwords import band_says
from advisor.claims.collect import Place
from advisor.claims.telling import told_lines
from advisor.construction.bulk import picked
from advisor.construction.seamwork import seamworks
from advisor.decide.usedup import used_up
from advisor.order.work import Work
from tests.garments.whole import RAINCOAT, advice, changed, known, places, stands, work

LEOTARD, JACKET, DUNGAREES = "more/trapeze_leotard", "more/towpath_jacket", "more/orchard_dungarees"
FLEECE, SHIRT, PONCHO = "more/crew_fleece", "more/cardigan", "more/ferry_poncho"


def seam(name: str) -> Place:
    """A place by its name."""
    return Place("seam", name)


def told(name: str) -> str:
    """Every thing to do that is told of a garment, as one text."""
    judgement = advice(name).judgement
    return " ".join(
        str(fired.rule.do[i])
        for fired in judgement.gathered.fired
        for i in told_lines(fired, "do", judgement)
    )


def before(found: Work, step: str) -> set[str]:
    """The steps that a step is told to wait for."""
    return {reason.before for reason in found.reasons[step]}


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
    for seam in ("lining side", "lining crotch"):
        assert stands(found, f"join {seam}", f"press {seam}", "join ankle rib")


@pytest.mark.parametrize(("place", "plies"), [("cuff", 3), ("hem band", 3), ("armhole", 2)])
def test_a_folded_band_lies_double_in_its_seam(place: str, plies: int) -> None:
    """The edge and both layers of the rib, at the row that joins them."""
    seams = {work.seam.name: work for work in seamworks(advice(JACKET).judgement, known())}
    assert [plies] == [s.plies for s in seams[place].spots if s.name == "at the stitch line"]


def test_no_tape_is_stuck_to_fleece_nor_to_a_seam_that_leaks_beside_it() -> None:
    """A softshell is lined with fleece; sweatshirt knit lets the rain through anyway."""
    found = work(JACKET)
    assert not [step for step in found.tasks if step.startswith("seal")]
    assert "seal side" in work(RAINCOAT).tasks
    old, new = "name: side, layers: [coat, coat]", "name: side, layers: [coat, mesh]"
    assert "seal side" not in changed(RAINCOAT, old, new).tasks


def test_what_is_not_basted_is_still_matched_at_its_zip() -> None:
    """Clips hold both halves of it on a cloth that keeps every hole."""
    assert stands(work(JACKET), "baste front zip", "set front zip")


def test_a_channel_round_the_face_crosses_no_side_of_the_body() -> None:
    """It lies along the edge that is turned, and is stitched before the hood meets the neck."""
    found = work(JACKET)
    steps = ("turn hood edge", "stitch hood drawcord casing", "join hood to neck")
    assert stands(found, "set hood cord eyelets", *steps)
    assert "fold hood drawcord casing" not in found.tasks
    assert "join side" not in before(found, "stitch hood drawcord casing")


def test_the_lining_of_a_hood_is_not_fitted() -> None:
    """No more than the hood itself."""
    found = work(JACKET)
    assert places(found)["hood lining centre"].role.id == "hood"
    assert "baste hood lining centre" not in found.tasks


def test_a_stripe_of_tape_is_a_trimming_and_crosses_no_pocket_of_another_cloth() -> None:
    """It is stitched along its edges: nothing is trimmed to a zigzag."""
    found = work(JACKET)
    assert places(found)["reflective stripe"].kind.id == "ribbon"
    assert "trim reflective stripe" not in found.tasks
    assert "stitch the window of pocket zip" in found.tasks
    assert "press reflective stripe" not in before(found, "stitch the window of pocket zip")


def test_what_ravels_and_is_washed_is_not_pinked_under_its_lining() -> None:
    """A child's corduroy would ravel in the wash, and an overlocker stands there."""
    for place in ("crotch", "side"):
        assert (
            picked(advice(DUNGAREES).judgement.verdicts[seam(place)], "seam.finish") == "overlocked"
        )


def test_nothing_stiffens_a_band_that_is_stretched_on() -> None:
    """Neither tape nor interfacing: the rib holds the edge that it is stretched to."""
    for garment, band in ((DUNGAREES, "ankle rib"), (SHIRT, "neck band"), (SHIRT, "rib cuffs")):
        assert "seam.support" not in advice(garment).judgement.verdicts[seam(band)]


def test_no_elastic_is_feared_where_no_iron_reaches_it() -> None:
    """Round the face it lies far from sides, sleeves and hem; that of the neck is taped cold."""
    feared = dict(work("more/child_raincoat").hot_near)
    assert not feared.keys() & {"press hem", "press side and sleeve", "press sleeve casing"}
    assert work("more/child_raincoat").tasks["press hood to neck"].step.iron is None


def test_the_teeth_of_a_zip_are_no_wire() -> None:
    """What bends and breaks in a machine is wire in a cloth or a braid."""
    said = advice(JACKET).judgement.gathered.said[Place("garment", "Towpath hooded jacket")]
    wires = [s for s in said["care.wash"] if s.claim.origin == "rule metal-wire-in-the-wash"]
    assert not [s for s in wires if set(s.cloths) & {"open-ended zip", "water-resistant zip"}]


@pytest.mark.parametrize("garment", [LEOTARD, "05_swimsuit"])
def test_elastic_is_zigzagged_to_its_edge_in_sheet_and_order(garment: str) -> None:
    """It is turned in and stitched again; no overlocker is told where none is used."""
    found = advice(garment).judgement.verdicts[seam("leg elastic")]
    state = work(garment).tasks["stretch on leg elastic"].step.machine
    assert state is not None
    assert "304" == picked(found, "stitch.type") == state.stitch


def test_nothing_is_told_of_what_is_not_there() -> None:
    """No organza behind a lining that stretches, no interfacing, and no channel to be widened."""
    words = told(LEOTARD)
    assert "Underline the pieces" not in words
    assert "Baste the interfacing" not in words
    suit = told("05_swimsuit") + words
    assert "Make the casing" not in suit
    assert "Make the casing" in told(DUNGAREES)


@pytest.mark.parametrize(
    ("garment", "place", "length"), [(JACKET, "cuff", 200), (SHIRT, "neck band", 368)]
)
def test_a_band_is_told_to_be_cut_as_it_is_stretched(
    garment: str, place: str, length: float
) -> None:
    """Its edge divided by its stretch; no share that contradicts what the project says."""
    seams = {work.seam.name: work for work in seamworks(advice(garment).judgement, known())}
    (band,) = seams[place].bands
    assert pytest.approx(length, abs=0.5) == band.length
    assert band_says(seams[place], "metric").startswith(f"Cut {band.cloth} ")
    assert "two thirds to three quarters" not in told(garment)


def test_what_is_sealed_with_the_tape_that_is_named_buys_no_second_tape() -> None:
    """The shoulder names its tape; one is bought for the hood centre, none sticks to its fleece."""
    tasks = work(PONCHO).tasks.values()
    methods = {t.place.name: t.place.method for t in tasks if t.place is not None}
    garment = advice(PONCHO).judgement.garment
    (tape,) = [n for n in used_up(garment, methods, known()) if "sealing tape" in n.item]
    (sealer,) = [n for n in used_up(garment, methods, known()) if "seam sealer" in n.item]
    assert ("hood centre",) == tape.places
    assert 2 * 440.0 == tape.length
    assert "hood to neck" in sealer.places


def test_as_many_are_bought_as_there_are_at_each_of_two_places() -> None:
    """Four snaps at each of two sides are eight."""
    (snaps,) = [s for s in advice(PONCHO).judgement.garment.seams if s.name == "side snaps"]
    assert 8 == snaps.making.times


def test_a_peak_is_made_with_its_hood() -> None:
    """It waits for no shoulder, and lies in the edge that the channel follows."""
    found = work(PONCHO)
    assert stands(found, "turn hood peak", "fold hood edge casing", "join hood to neck")
    assert "seal shoulder" not in before(found, "join hood peak")
