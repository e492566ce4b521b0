"""What the six garments must contain of kinds of place, methods, order and fitting.

Each test names the `# MUST:` line of the garment's file that it holds to.
"""

from __future__ import annotations

import re

import pytest

from advisor.answer.core import told_places
from advisor.claims.collect import Place
from advisor.construction.seamwork import seamworks
from tests.garments.whole import (
    BLOUSE,
    FOLDER,
    NAMES,
    RAINCOAT,
    SWIMSUIT,
    TOP,
    TROUSERS,
    TUTU,
    advice,
    aspects,
    changed,
    known,
    places,
    stands,
    work,
)
from tests.typed import typed

JOINED = {"seam.kind", "seam.allowance", "seam.finish"}
PINS = {"pin.kind", "pin.place", "pin.insertion"}
NO_SEAMS = ("fastening", "laid on", "stay", "backing", "dart", "fold")
NEEDLE = {"needle.point", "needle.size", "stitch.type", "machine.foot"}

KINDS = [
    (BLOUSE, "front band", "front-band", "band-folded"),
    (BLOUSE, "collar edge", "faced-edge", "faced-edge-turned"),
    (BLOUSE, "sleeve placket", "placket", "placket-bound"),
    (BLOUSE, "cuff", "cuff", "band-in-two-stages"),
    (BLOUSE, "shoulder", "seam", "french-seam"),
    (BLOUSE, "buttonholes", "buttonhole", "machine-buttonhole"),
    (BLOUSE, "covered buttons", "button", "button-covered"),
    (TUTU, "net row", "gathered-edge", "gathered-over-cord"),
    (TUTU, "ribbon trim", "ribbon", "ribbon-stitched-on"),
    (TUTU, "glued stones", "stones", "stones-glued"),
    (TUTU, "strap", "ties", "strap-of-elastic"),
    (TUTU, "back hooks", "hook", "hooks-sewn-on"),
    (TOP, "front yoke", "yoke", "yoke-enclosed"),
    (TOP, "neck rib", "neckband", "band-stretched-on"),
    (TROUSERS, "patch pocket", "patch-pocket", "patch-pocket-stitched-on"),
    (TROUSERS, "front pocket edge", "set-in-pocket", "slant-pocket"),
    (TROUSERS, "fly zip", "zip", "fly-zip"),
    (TROUSERS, "crotch", "seam", "felled-seam-topstitched"),
    (TROUSERS, "belt loops", "belt-loop", "belt-loops-barred-on"),
    (TROUSERS, "waist button", "button", "button-hammered-on"),
    (SWIMSUIT, "leg elastic", "elastic-edge", "elastic-stretched-on"),
    (RAINCOAT, "side", "seam", "seam-sealed-by-tape"),
    (RAINCOAT, "hood drawcord casing", "casing", "drawcord-in-a-casing"),
    (RAINCOAT, "storm flap", "faced-edge", "faced-edge-turned"),
    (RAINCOAT, "front zip", "zip", "open-ended-zip"),
    (RAINCOAT, "welt pocket", "welt-pocket", "welt-pocket"),
    (RAINCOAT, "facing to lining", "lining-seam", "lining-set-by-machine"),
]


@pytest.mark.parametrize(("garment", "place", "kind", "method"), KINDS)
def test_every_place_is_made_as_what_it_is(
    garment: str, place: str, kind: str, method: str
) -> None:
    """Inferred from name, notions and edge, and made by the method that fits."""
    found = places(work(garment))[place]
    assert (kind, method) == (found.kind.id, found.method.id)


@pytest.mark.parametrize("garment", NAMES)
def test_the_answer_says_as_what_a_place_was_taken(garment: str) -> None:
    """The kind stands in the answer, with what it was inferred from where nobody said it."""
    for told in told_places(advice(garment).judgement):
        assert told.kind in known().places.kinds
        assert bool(told.kind_from) == ("kind" in told.assumed)


@pytest.mark.parametrize("garment", NAMES)
def test_only_seams_are_seams(garment: str) -> None:
    """No kind of seam is asked of what is no seam, and no allowance where nothing is allowed."""
    for name, place in places(work(garment)).items():
        sewn = place.kind.id != "ties"  # a strap is sewn along its length
        if sewn and place.kind.family in (
            "fastening",
            "laid on",
            "stay",
            "backing",
            "dart",
            "fold",
        ):
            assert "seam.kind" not in aspects(garment, name), name
        if not place.kind.allowance:
            assert "seam.allowance" not in aspects(garment, name), name
        if not place.kind.finish and place.kind.id != "faced-edge":
            assert "seam.finish" not in aspects(garment, name), name


@pytest.mark.parametrize("place", ["buttonholes", "covered buttons"])
def test_no_seam_pin_or_needle_for_fastenings(place: str) -> None:
    """01 MUST 1: no seam, pin, needle or French seam for buttonholes or covered buttons."""
    assert not (JOINED | PINS | NEEDLE) & aspects(BLOUSE, place)


def test_the_front_band_is_folded() -> None:
    """01 MUST 1: the front band is folded, not a French seam."""
    assert "seam.kind" not in aspects(BLOUSE, "front band")
    assert stands(work(BLOUSE), "fold front band", "stitch front band", "make buttonholes")


@pytest.mark.parametrize("place", ["shoulder", "side"])
def test_a_french_seam_is_closed_after_the_fitting(place: str) -> None:
    """01 MUST 3: fit before any French seam is closed; it is basted for it."""
    steps = [f"baste {place}", "fit", f"join {place}", f"trim {place}", f"enclose {place}"]
    assert stands(work(BLOUSE), *steps)


def test_the_support_is_basted_to_its_pieces_first() -> None:
    """01 MUST 3: organza support is basted to its pieces."""
    found = work(BLOUSE)
    does = found.tasks["baste support"].step.does
    assert "front band, collar edge, collar seam and cuff" in does
    held = [s for s, t in found.tasks.items() if t.place and "support" in t.cloths]
    assert all(stands(found, "baste support", step) for step in held)


def test_the_ease_of_the_cap_is_named() -> None:
    """01 MUST 4: 5 % of 47 cm is 2.35 cm, in ease rows; the cuff's seam is not neatened."""
    found = work(BLOUSE)
    assert "23.5 mm of ease (5 %)" in found.tasks["draw up the ease of armhole"].step.does
    assert stands(found, "ease armhole", "draw up the ease of armhole", "join armhole")
    assert "neaten cuff" not in found.tasks
    assert "seam.finish" not in aspects(BLOUSE, "cuff")


def test_stones_are_glued_last_and_with_a_caution() -> None:
    """02 MUST 1: no seam; glue after all pressing, with small parts and a child in mind."""
    found = work(TUTU)
    assert not (JOINED | PINS | NEEDLE) & aspects(TUTU, "glued stones")
    ironed = [s for s, t in found.tasks.items() if t.op in ("press", "turn", "last-press")]
    assert all(stands(found, step, "glue glued stones") for step in ironed)
    does = found.tasks["glue glued stones"].step.does
    assert "child" in does
    assert "Small parts" in does


def test_the_ribbon_is_laid_on() -> None:
    """02 MUST 1: ribbon is laid on, not joined with an allowance."""
    assert not JOINED & aspects(TUTU, "ribbon trim")
    assert "stitch on ribbon trim" in work(TUTU).tasks


def test_net_is_neither_hemmed_nor_hung_nor_gathered_by_rows() -> None:
    """02 MUST 2: no hem on net or tulle; 5 to 1 is beyond hand rows, in sheet and order alike."""
    found = work(TUTU)
    assert not {"hem", "hang"} & {t.op for t in found.tasks.values()}
    assert "hem" not in found.tasks
    assert "zigzag over a cord for net row" in found.tasks
    told = [
        text
        for made in seamworks(advice(TUTU).judgement, known())
        if made.seam.name == "net row" and made.full
        for text in made.full.says
    ]
    assert any("use a zigzag over a cord" in text for text in told)


def test_a_knit_sleeve_may_be_set_in_flat() -> None:
    """03 MUST 2: before the side seam is closed, as one that is overlocked and has no ease is."""
    flat = changed(TOP, "{name: armhole,", "{name: armhole, method: sleeve set in flat,")
    assert () == flat.cycles
    assert stands(flat, "join armhole", "join side")
    assert stands(work(TOP), "join armhole", "join side")
    eased = changed(
        TOP, "armhole, layers: [body, body]", "armhole, layers: [body, {use: body, ease: 2 cm}]"
    )
    assert stands(eased, "join side", "join armhole")


def test_a_top_without_buttonholes_has_none() -> None:
    """03 MUST 3: nothing is a buttonhole there."""
    assert all(p.kind.id != "buttonhole" for p in places(work(TOP)).values())


@pytest.mark.parametrize("place", ["belt loops", "waist button", "patch pocket"])
def test_loops_button_and_pocket_are_no_bound_seams(place: str) -> None:
    """04 MUST 1: belt loops, waist button and pocket are not 'bound' seams."""
    assert not {"seam.kind", "seam.finish"} & aspects(TROUSERS, place)


@pytest.mark.parametrize("said", ["crosses: crotch", "kind: inseam, crosses: crotch"])
def test_what_she_says_crosses_wins(said: str) -> None:
    """04 MUST 2: the inseam after the crotch, and no CANNOT BE."""
    found = changed(TROUSERS, "crosses: crotch", said)
    assert () == found.cycles
    assert stands(found, "fell crotch", "join inseam")


def test_crossing_nothing_is_a_word_too() -> None:
    """04 MUST 2: `crosses: []` leaves the table nothing to say of the two."""
    found = changed(TROUSERS, "crosses: crotch", "crosses: []")
    pairs = {
        (p.before, p.after)
        for p in found.graph.precedences
        if p.strength == "must" and p.after == "join inseam"
    }
    assert () == found.cycles
    assert not [pair for pair in pairs if pair[0].endswith("crotch")]


@pytest.mark.parametrize("garment", [TROUSERS, "cases/waistband_over_felled_seat"])
def test_a_band_over_a_felled_seam_has_six_plies(garment: str) -> None:
    """04 MUST 2, case: only the trousers carry the four plies: 4 + 1 + 1 = 6, not 12."""
    found = {w.seam.name: w for w in seamworks(advice(garment).judgement, known())}
    spots = {s.name: s.plies for s in found["waistband"].spots if s.name.startswith("where")}
    over = "where it crosses crotch" if garment == TROUSERS else "where it crosses seat"
    assert 6.0 == spots[over]


def test_a_felled_crotch_is_not_graded() -> None:
    """04 MUST 3: never graded or clipped; the zip is set once the front crotch is started."""
    found = work(TROUSERS)
    assert "grade crotch" not in found.tasks
    assert stands(found, "start the crotch below fly zip", "set fly zip", "join crotch")
    assert stands(found, "fit", "set fly zip", "join waistband")


def test_a_swimsuit_is_neither_hemmed_nor_hung() -> None:
    """05 MUST 2: no hem, no hanging; nothing is neatened before its elastic is on."""
    found = work(SWIMSUIT)
    assert not {"hem", "hem-edge", "hang"} & {t.op for t in found.tasks.values()}
    assert not [s for s in found.tasks if s.startswith("neaten") and "elastic" in s]


@pytest.mark.parametrize("edge", ["leg elastic", "armhole elastic", "neck elastic"])
def test_lining_is_basted_to_shell_before_elastic(edge: str) -> None:
    """05 MUST 3: at all openings, with both whole by then."""
    steps = ["join lining side", f"baste layers at {edge}", f"stretch on {edge}", f"turn in {edge}"]
    assert stands(work(SWIMSUIT), *steps)


@pytest.mark.parametrize("place", ["shoulder", "side", "armhole", "hood centre"])
def test_seams_of_coated_cloth_are_sealed(place: str) -> None:
    """06 MUST 1: sealed on the coated side after stitching, as steps of the order."""
    assert stands(work(RAINCOAT), f"join {place}", f"trim {place}", f"seal {place}")


def test_rows_under_a_mesh_are_sealed_with_a_liquid() -> None:
    """06 MUST 1: the hood holds its mesh at the neck, to which no tape sticks."""
    found = work(RAINCOAT)
    assert stands(found, "join hood to neck", "neaten hood to neck", "seal hood to neck")
    assert "trim hood to neck" not in found.tasks
    assert "seam sealer" in found.tasks["seal hood to neck"].step.does


def test_a_seam_tape_in_coated_cloth_is_not_taken_for_a_stay_without_a_word() -> None:
    """Case: the seam is sealed all the same, and what the tape was taken for is told."""
    found = work("cases/seam_tape_is_not_stay_tape")
    assert stands(found, "join side", "seal side")
    assert any("'side': seam tape is taken for a woven stay" in text for text in found.remarks)


def test_straps_are_sewn_in_after_the_fitting() -> None:
    """Their length is taken on the body."""
    assert stands(work(TUTU), "fit", "last press")
    gown = changed(TUTU, "{notion: knitted elastic}", "bodice")
    assert stands(gown, "turn through strap", "fit", "sew in the ends of strap")


def test_nothing_pierces_coated_cloth_that_need_not() -> None:
    """06 MUST 2: no stay-stitching, no basting on coated cloth: clips hold it."""
    found = work(RAINCOAT)
    assert "stay-stitch" not in {t.op for t in found.tasks.values()}
    assert stands(found, "clip side", "fit", "join side")


def test_casing_and_flap_have_their_place() -> None:
    """06 MUST 2: the casing after the hood centre, the storm flap before the zip."""
    found = work(RAINCOAT)
    assert stands(found, "seal hood centre", "stitch hood drawcord casing")
    assert stands(found, "turn storm flap", "set front zip")
    assert "fasten storm flap" not in found.tasks


@pytest.mark.parametrize("garment", NAMES)
def test_nothing_past_recall_comes_before_the_fitting(garment: str) -> None:
    """What cannot be let out again waits for the fitting that concerns it."""
    found = work(garment)
    past = [s for s, t in found.tasks.items() if "past recall" in t.tags]
    assert "fit" in found.order
    assert past
    assert all(stands(found, "fit", step) for step in past)
    assert () == found.cycles


@pytest.mark.parametrize("garment", NAMES)
def test_stages_stand_once_and_in_order(garment: str) -> None:
    """Each place is made in the order of its method."""
    found = work(garment)
    for name in places(found):
        here = [found.tasks[s] for s in found.order]
        stages = [t.stage for t in here if t.place and t.place.name == name]
        assert stages == sorted(set(stages)), name


def test_a_word_on_two_places_wins_over_custom() -> None:
    """`order: after:` turns a table round where nothing but custom stands against it."""
    said = "order:\n  after: {press hood centre: [set front zip]}\nkit:"
    found = changed(RAINCOAT, "kit:", said)
    assert () == found.cycles
    assert stands(found, "set front zip", "press hood centre")


def test_a_word_that_cloth_forbids_is_refused_with_the_reason() -> None:
    """What would close a seam before it is sewn is told, and the rest planned."""
    found = changed(RAINCOAT, "kit:", "order:\n  after: {cut coat: [join side]}\nkit:")
    assert 1 == len(found.cycles)
    assert ("join side", "cut coat") == (
        found.cycles[0].given_up.before,
        found.cycles[0].given_up.after,
    )


def test_a_finger_pressed_place_has_no_iron() -> None:
    """Case: the remedy that the tool offers is kept by the order too."""
    found = work("cases/finger_press_clears_its_conflict")
    steps = [t for t in found.tasks.values() if t.place and t.op == "press"]
    verdicts = advice("cases/finger_press_clears_its_conflict").judgement.verdicts
    assert "press.motion" in verdicts[Place("seam", "a")]
    assert steps
    assert all(t.step.iron is None for t in steps)


@pytest.mark.parametrize(
    "case", ["cotton_dress_nylon_zip_is_ordinary", "cotton_trousers_elastic_is_ordinary"]
)
def test_what_is_ordinary_is_no_conflict_of_the_order(case: str) -> None:
    """Cases: the casing is pressed before the elastic is in; the zip goes in after the side."""
    found = work(f"cases/{case}")
    assert () == found.cycles
    if "elastic" in case:
        assert stands(found, "fold waist casing", "draw through waist casing")


@pytest.mark.parametrize(
    ("garment", "place"),
    [(BLOUSE, "buttonholes"), (BLOUSE, "covered buttons"), (TUTU, "glued stones")],
)
def test_the_sheet_says_no_more_than_is_asked(garment: str, place: str) -> None:
    """01 MUST 1, 02 MUST 1: neither pins nor needle nor a seam on the sheet's line of the place."""
    file = str(FOLDER / f"{garment}.yaml")
    told = typed("sheet", file).out
    start = told.index(f"  {place} (")
    line = re.split(r"\n  (?! )", told[start:])[0]
    words = ("Pin:", "needle", "Machine:", "Seam:", "Strength")
    assert "Press" in line
    assert not [word for word in words if word in line]
