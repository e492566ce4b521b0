"""What a theatre cutter would not have cut from, in four garments, and must not come back.

A pleated kilt, a hooded gilet, a sheer blouse over a vest and a quilted smoking jacket. All is
common practice of the trade unless a line says otherwise.
"""

from __future__ import annotations

import pytest

from advisor.answer.conflicts import told_conflicts
from advisor.answer.core import told_tasks
from advisor.answer.ordernotes import keep_off
from advisor.answer.teller import Teller
from advisor.claims.collect import Place
from advisor.claims.speakers import OVERLOCKS
from advisor.construction.bulk import picked
from advisor.construction.notionlist import notions_to_buy
from advisor.construction.seamwork import seamworks
from tests.garments.whole import FOLDER, advice, aspects, known, places, read, stands, work

SUNDRESS = "more/sundress"
KILT, GILET, BLOUSE, JACKET = "more/kilt", "more/gilet", "more/overblouse", "more/smoking_jacket"
ALL = (KILT, GILET, BLOUSE, JACKET)


def told(garment: str) -> list[str]:
    """Everything to do at a garment."""
    judgement = advice(garment).judgement
    return [task.text for task in told_tasks(judgement, Teller(judgement.garment, known()))]


def test_canvas_is_shaped_while_the_front_lies_open() -> None:
    """No steam comes to a finished velvet front for the sake of what lies behind it."""
    assert stands(work(JACKET), "pad front canvas", "shape front canvas", "join shawl collar edge")


@pytest.mark.parametrize("garment", [BLOUSE, JACKET])
def test_ease_is_shrunk_away_only_in_wool(garment: str) -> None:
    """Organza keeps the fullness that is put into it, and steam spoils a pile."""
    found = work(garment)
    assert not [step for step in found.tasks if step.startswith("shrink the ease")]


def test_where_nothing_is_ironed_at_last_no_iron_is_spoken_of() -> None:
    """A part that wants heat is pressed before it is joined, and that is all; a jersey wants none.

    A cotton knit lies flat without a press, a poplin does not.
    """
    for garment in (GILET, JACKET):
        assert not [text for text in told(garment) if "in the last press touch" in text]
    line = "Press hood before it is joined: the finished garment takes no iron."
    assert line not in told(GILET)
    text = (FOLDER / f"{GILET}.yaml").read_text(encoding="utf-8")
    jersey = "fabric: jersey, fibres: {cotton: 95, elastane: 5}, weight: 200 g/m2"
    assert jersey in text
    woven = read(text.replace(jersey, "fabric: poplin, fibres: {cotton: 100}, weight: 120 g/m2"))
    assert line in [task.text for task in woven.advice]


def test_eyelets_are_set_before_the_channel_is_made() -> None:
    """In the one layer that the cord comes out of, and not once more inside the channel."""
    found = work(GILET)
    assert places(found)["hood cord eyelets"].method.id == "eyelets-for-a-cord"
    assert stands(
        found,
        "set hood cord eyelets",
        "join hood edge",
        "stitch hood cord casing",
        "draw through hood cord casing",
        "thread cord ends",
    )
    assert "make the openings of hood cord casing" not in found.tasks


def test_a_stay_goes_over_pleats_that_are_laid() -> None:
    """It holds them as they lie."""
    assert stands(work(KILT), "lay back pleats", "press back pleats", "tape hip stay")


def test_a_lining_is_sewn_before_it_is_basted_in() -> None:
    """Though the maker's list of what the band crosses leaves its side seam out."""
    assert stands(
        work(KILT), "join lining side", "press lining side", "hang the lining at waistband"
    )


def test_a_band_at_the_armhole_goes_over_the_closed_side() -> None:
    """It is a ring, and so is the armhole by then."""
    assert stands(work(BLOUSE), "join vest side", "join vest armhole")


@pytest.mark.parametrize("garment", [GILET, JACKET])
def test_nothing_that_may_be_cleaned_is_called_uncleanable(garment: str) -> None:
    """The gilet is washed, clear elastic and all; pads are cleaned with their coat."""
    judgement = advice(garment).judgement
    found = told_conflicts(advice(garment), Teller(judgement.garment, known()))
    assert not [clash for clash in found if clash.aspect.startswith("care.")]


def test_what_is_seamed_in_is_never_made_to_come_off() -> None:
    """A yoke holds the garment together."""
    for garment in ALL:
        for cures in advice(garment).cures.values():
            loose = {c.words["loose"] for c in cures if c.remedy == "make-detachable"}
            assert not loose & {"tab", "clear elastic", "organza", "velvet", "tartan"}, garment


def test_pleats_are_not_told_to_be_gathered() -> None:
    """They are laid, counted with three plies, and stitched down as far as the maker says."""
    (pleats,) = [
        w for w in seamworks(advice(KILT).judgement, known()) if w.seam.name == "back pleats"
    ]
    assert pleats.spot is not None
    assert (pleats.spot.plies, pleats.spot.name) == (3.0, "on a pleat")
    assert pleats.full is not None
    assert any("stitch each pleat down" in text.casefold() for text in pleats.full.says)
    assert not [text for text in told(KILT) if "two rows" in text or "Gather " in text]


def test_a_raw_edge_is_one_ply() -> None:
    """Nothing is turned up there, and it meets no like of its own."""
    (hem,) = [w for w in seamworks(advice(KILT).judgement, known()) if w.seam.name == "hem"]
    assert [use.cloth for use in hem.seam.uses] == ["tartan"]


def test_sheet_and_order_sew_a_place_with_one_stitch() -> None:
    """Clear elastic is overlocked into a shoulder, a channel is lockstitched, in both views."""
    for garment, place in ((GILET, "shoulder"), (BLOUSE, "vest shoulder")):
        verdicts = advice(garment).judgement.verdicts[Place("seam", place)]
        state = work(garment).tasks[f"join {place}"].step.machine
        assert state is not None
        assert state.stitch == picked(verdicts, "stitch.type") == "514"
    verdicts = advice(GILET).judgement.verdicts[Place("seam", "hood cord casing")]
    state = work(GILET).tasks["stitch hood cord casing"].step.machine
    assert state is not None
    assert state.stitch == picked(verdicts, "stitch.type")
    assert state.stitch not in OVERLOCKS


def test_a_bound_edge_has_no_allowance() -> None:
    """Its cut edge is the finished edge."""
    for garment, place in ((BLOUSE, "neck binding"), (GILET, "armhole binding")):
        assert not aspects(garment, place) & {"seam.allowance", "seam.finish"}


def test_only_what_is_too_tender_is_named() -> None:
    """Cotton bears 200 °C; of the quilted layers it is the wadding that does not."""
    assert {row.keep_off for row in keep_off(work(JACKET), "metric")} == {("fill",)}


@pytest.mark.parametrize("place", ["frogs", "shoulder pads"])
def test_no_iron_is_named_where_fingers_press(place: str) -> None:
    """A pick of the fingers and a temperature contradict each other."""
    verdicts = advice(JACKET).judgement.verdicts[Place("seam", place)]
    assert picked(verdicts, "press.motion") == "finger-press"
    assert verdicts["press.temperature"].pick == 20.0


def test_a_cord_is_longer_than_its_channel() -> None:
    """There is something to hold, to knot and to lock at each end."""
    bought = notions_to_buy(advice(GILET).judgement.garment, known())
    (cord,) = [one for one in bought if one.name == "drawcord"]
    assert (660.0, 360.0) == (cord.whole, cord.ends)
    assert cord.bought == 660.0 + 360.0


def test_wadding_is_cleared_from_the_allowances_and_not_bought_by_the_length() -> None:
    """It is cut to its pieces like a cloth."""
    assert any(
        text.startswith("Take the wadding out of every seam allowance") for text in told(JACKET)
    )
    bought = notions_to_buy(advice(JACKET).judgement.garment, known())
    (fill,) = [one for one in bought if one.name == "fill"]
    assert (fill.number, fill.cut, fill.whole) == (None, (), None)


def test_parts_without_a_cloth_in_common_wait_for_nothing_of_each_other() -> None:
    """A vest that hangs free under a sheer has its own armhole."""
    found = places(work(BLOUSE))
    from advisor.order.kinds import crosses

    assert not crosses(found["organza armhole"], found["vest side"])


def test_shirring_is_rows_on_a_flat_piece() -> None:
    """Elastic thread is wound on the bobbin; it is drawn into no channel and sewn straight."""
    found = work(SUNDRESS)
    assert places(found)["shirred back"].method.id == "shirred-in-rows"
    assert stands(found, "shirr shirred back", "join bodice side", "join waist") or stands(
        found, "shirr shirred back", "join waist", "join bodice side"
    )
    verdicts = advice(SUNDRESS).judgement.verdicts[Place("seam", "shirred back")]
    assert picked(verdicts, "stitch.type") == "301"
    assert "draw up shirred back" not in found.tasks  # rubber bears less than steam has


def test_the_side_of_a_tier_is_a_seam_and_no_gather() -> None:
    """A part has seams of its own before it is joined to anything."""
    assert places(work(SUNDRESS))["first tier side"].kind.id == "seam"
    assert places(work(SUNDRESS))["second tier"].kind.id == "gathered-edge"


def test_a_facing_round_the_body_comes_after_its_sides() -> None:
    """The facing of a strapped bodice runs over the side seams; that of a neck does not."""
    assert stands(work(SUNDRESS), "join bodice side", "join bodice facing", "turn bodice facing")
