"""What kept a teacher of dressmaking from sewing a shirt dress, a circle skirt and a wrap dress.

A shirt dress with a lined yoke, a felled sleeve and a collar of unknown fibre; a lined circle skirt
on a hip yoke with pockets and a zip in its sides; a wrap dress with bound edges, a frill, a lace
let in and sheer sleeves. All is common practice of the trade.
"""

from __future__ import annotations

import re

import pytest

from advisor.answer.pipeline import answer
from advisor.order.kinds import crosses
from tests.garments.whole import FOLDER, advice, changed, known, places, stands, work
from tests.typed import typed

SHIRT, SKIRT, WRAP = "more/lock_keeper_dress", "more/bandmaster_skirt", "more/ferryhouse_wrap"
ALL = (SHIRT, SKIRT, WRAP)


def test_a_pocket_is_in_its_edges_before_the_side_is_basted() -> None:
    """No bag is joined to the two edges of a seam that is basted shut."""
    found = work(SKIRT)
    pocket = ("join in-seam pocket", "press in-seam pocket", "pin up in-seam pocket")
    assert stands(found, *pocket, "baste skirt side", "fit", "join skirt side")


def test_a_sleeve_that_she_wants_felled_is_felled_whatever_its_ease() -> None:
    """Unsaid it is set in flat all the same: side and sleeve are one seam (sewing-shirts-ch6)."""
    found = work(SHIRT)
    assert "sleeve-felled-flat" == places(found)["armhole"].method.id
    steps = ["ease armhole", "join armhole", "trim armhole", "fold armhole", "fell armhole"]
    assert stands(found, "ease armhole", "baste armhole", "fit", *steps[1:], "join side and sleeve")
    plain = changed(SHIRT, ", shape: curved, seam: felled, times: 2", ", shape: curved, times: 2")
    assert "sleeve-set-in-flat" == places(plain)["armhole"].method.id


def test_a_yoke_lined_with_another_cloth_takes_the_back_between_its_layers() -> None:
    """Its edges are all enclosed, so nothing is neatened; a sheer in the middle only backs it."""
    found = work(SHIRT)
    made = [places(found)[name].method.id for name in ("yoke", "shoulder")]
    assert ["yoke-enclosed", "shoulder-into-a-yoke"] == made
    assert "Roll the body up" in found.tasks["join shoulder"].step.does
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
    (WRAP, "sleeve casing", "bodice side"),
    (WRAP, "sleeve casing", "skirt side"),
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


def test_a_waist_that_she_fits_to_the_body_is_tried_on_in_a_loose_dress() -> None:
    """What she says of one place goes before what is said of the whole."""
    found = work(SHIRT)
    assert stands(found, "baste waist seam", "fit", "join waist seam")
    assert "waist seam" in found.tasks["fit"].step.does
    loose = changed(SHIRT, ", fitting: to the body}", "}")
    assert "baste waist seam" not in loose.order


def test_two_allowances_that_are_neatened_as_one_are_neither_graded_nor_clipped() -> None:
    """A clip would run through the edge; a sleeve that is gathered in is trimmed by its finish."""
    found = work(WRAP)
    assert "neaten armhole" in found.order
    assert "grade armhole" not in found.order
    assert "grade hip yoke seam" not in work(SKIRT).order


def test_a_binding_is_sewn_on_with_a_straight_row() -> None:
    """A zigzag in the ditch shows, and the bias edge is held by the strip."""
    for step in ("join neck binding", "stitch down neck binding"):
        state = work(WRAP).tasks[step].step.machine
        assert state is not None
        assert "301" == state.stitch


def test_a_channel_is_pressed_empty_and_every_view_says_so() -> None:
    """Elastic bears no iron, but it is not in yet when the casing is folded."""
    iron = work(WRAP).tasks["fold sleeve casing"].step.iron
    assert iron is not None
    assert "no iron here" not in work(WRAP).tasks["fold sleeve casing"].step.does
    told = [one for one in advice(WRAP).judgement.instructions if one.kind == "part"]
    elastic = [one for one in told if "braided elastic" in one.tender]
    assert [frozenset({"voile"})] == [one.needy for one in elastic]


@pytest.mark.parametrize("garment", ALL)
def test_a_full_edge_is_gathered_or_eased_and_never_both(garment: str) -> None:
    """One edge is drawn up by rows or eased by a stitch."""
    found, tasks = work(garment), answer(advice(garment).judgement.garment, known()).advice
    eased = {task.place for task in tasks if "run an ease stitch" in task.text}
    assert not eased & {name for name, place in places(found).items() if place.full}


def test_the_edges_of_a_bag_are_neatened_once_the_seam_is_run_round_it() -> None:
    """They fray inside the skirt, and before that they are not yet one edge; nothing shuts them."""
    for garment, pocket in ((SHIRT, "pocket in the side"), (SKIRT, "in-seam pocket")):
        found = work(garment)
        assert stands(found, "join skirt side", f"neaten {pocket}", "sew hem")
        assert "enclosed" not in found.tasks[f"neaten {pocket}"].step.does


def test_a_button_is_marked_through_a_buttonhole_only_where_there_is_one() -> None:
    """The button inside a wrap dress has none on the list: it is said, and not taken for made."""
    assert "through the buttonholes" in work(SHIRT).tasks["fasten buttons"].step.does
    said = work(WRAP).tasks["fasten inside button"].step.does
    assert "none is named" in said
    assert "through the buttonholes" not in said


def test_a_band_on_petersham_asks_for_no_tape() -> None:
    """The tape is in it; how much that carries is not known, and not taken for enough."""
    said = " ".join(typed("sheet", str(FOLDER / f"{SKIRT}.yaml")).out.split())
    band = said[said.index(" waistband (") : said.index(" waist hook (")]
    assert "let tape, a stay or a lining take the pull" not in band
    assert "Strength not known (the petersham in it takes the pull)" in band


@pytest.mark.parametrize(
    ("most", "cloths"),
    [
        ("at most 4 s", ("acrylic jersey", "polyester satin")),
        ("at most 4 s", ("bamboo jersey", "stretch sateen")),
        ("at most 3 s", ("goat suede", "linen")),
    ],
)
def test_a_question_and_its_iron_give_one_time(most: str, cloths: tuple[str, ...]) -> None:
    """A rule says 5 s where the heat allows 4 s: the less is told, and nothing beside it."""
    for view in ("ask", "iron"):
        told = " ".join(typed(view, *cloths).out.split("SET FOR")[1].split())
        assert {most} == set(re.findall(r"at most \d+ s", told))


def test_a_strap_is_no_shoulder_and_is_pressed_with_nothing_near_it() -> None:
    """It is made up by itself: no lace is covered, and no seam has to be pressed before it."""
    found = work("more/sundress")
    strap = places(found)["shoulder strap"]
    assert "strap" == strap.role.id
    assert not any(crosses(strap, other) for other in places(found).values())
    assert "turn shoulder strap" not in dict(found.hot_near)


def test_what_is_stayed_or_stitched_by_machine_has_its_thread_set() -> None:
    """The point of a slit is stayed on the machine, and belt loops are stitched along."""
    for garment, step in ((SHIRT, "slash sleeve placket"), ("04_trousers", "fold belt loops")):
        assert work(garment).tasks[step].step.machine is not None


def test_a_yoke_is_finished_before_anything_is_tried_on() -> None:
    """Nobody lets a garment out at its yoke, and in front of it the shoulders are sewn."""
    found = work(SHIRT)
    assert stands(found, "join yoke", "grade yoke", "turn yoke", "join shoulder", "fit")
