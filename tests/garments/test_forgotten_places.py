"""What a garment file does not say and an expert would notice at once: told, and no more than that.

A sleeve without its seam, a collar that is joined to no neck, a band that nothing closes. What is
told of the garments at hand was read one by one: each is truly missing there. All is common
practice of the trade.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.answer.gapwords import told_gaps
from advisor.answer.model.told import ToldGap
from advisor.answer.teller import Teller
from advisor.construction.agreement import disagreements
from advisor.decide.advise import advise
from advisor.project.garment import Garment
from advisor.project.load import garment_of, load_project
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FILES, FOLDER, known, ordered, work
from tests.typed import typed

TEMPLATES = sorted((FOLDER.parents[1] / "knowledge" / "templates").glob("*.yaml"))
DRESS = FOLDER / "more" / "orangery_dress.yaml"
SLEEVE, SHOULDERS, HEM = "sleeve-not-closed", "lining-without-shoulders", "lining-without-hem"
COLLAR, END, HOLES = "collar-not-set", "sleeve-end-not-finished", "buttons-without-holes"
ARMHOLES, WRIST = "lining-without-armholes", "lining-ends-at-a-cuff"
MISSING = {
    "bias_dress_with_lace_bodice": ["cloths-mounted-nowhere", "armhole-not-finished"],
    "lightship_parka": ["sleeve-lining-ends-nowhere"],
    "weir_jacket": ["lining-panels-not-joined"],
    "clock_keeper_coat": ["collar-with-nothing-inside"],
    "03_knit_yoke": ["no-way-for-the-head"],
    "04_trousers": ["waist-button-without-a-hole"],
    "06_raincoat": [SLEEVE, SHOULDERS, ARMHOLES],
    "seam_tape_is_not_stay_tape": [SLEEVE, SHOULDERS, ARMHOLES],
    "cotton_trousers_elastic_is_ordinary": ["lower-edge-below-its-band-not-finished"],
    "aerial_catsuit": [END],
    "bandstand_frock": ["skirt-not-opened", "back-edges-not-finished"],
    "bias_gown": [SHOULDERS],
    "kiosk_tunic": [SHOULDERS],
    "lamproom_jacket": [COLLAR, "lining-sleeve-not-set", END],
    "lantern_captain": ["skirt-not-opened", "joined-to-nothing"],
    "lamp_trimmer_pinafore": ["neck-not-finished"],
    "boned_satin": ["nothing-holds-it-up"],
    "bothy_coat": [HEM, "armhole-not-finished"],
    "chapel_queen": [SHOULDERS, ARMHOLES],
    "child_raincoat": [SHOULDERS],
    "coat": [SLEEVE, SHOULDERS],
    "dress": [SHOULDERS, HEM],
    "evening_dress": [HEM],
    "ferry_overshirt": ["cuff-not-closed"],
    "bandstand-jacket": [WRIST],
    "gasworks_blouson": [WRIST],
    "harbour_dress": [SHOULDERS, HEM],
    "orangery_dress": ["no-way-in", SLEEVE, COLLAR, SHOULDERS, ARMHOLES],
    "overblouse": [HOLES],
    "quilted_jacket": [END, "lower-edge-not-finished"],
    "saltmarsh_smock": ["zip-at-the-chin-of-a-child", "zip-lets-rain-through"],
    "skating_jacket": [WRIST],
    "smoking_jacket": [SHOULDERS, ARMHOLES],
    "reedcutter_gilet": ["zip-lets-rain-through"],
    "regatta_gown": ["nothing-holds-it-up"],
    "sorrel_wedding": [SHOULDERS, ARMHOLES],
    "stage_gown": [HEM],
    "toll_keeper": ["back-in-two-halves", "leg-band-not-closed", "armhole-not-finished"],
    "towpath_coat": ["collar-with-nothing-inside"],
    "trapeze_leotard": ["buttons-without-loops"],
}
"""What is truly missing in the garments at hand, the gravest first; in the others nothing is."""
WOVEN = """
garment: Sample
fitting: to the body
fabrics: {cloth: {fabric: poplin, fibres: {cotton: 100}}, net: {fabric: jersey}}
seams:
"""
SKIRT = """\
  - {name: skirt side, layers: [cloth, cloth], length: 60 cm, times: 2}
  - {name: hem, layers: [cloth], length: 120 cm, edge: hem}
"""
BAND = "  - {name: waistband, layers: [cloth, cloth], length: 72 cm}\n"
SIDE_ZIP = "  - {name: side zip, layers: [cloth, {notion: coil zip}], length: 20 cm}\n"
BACK_ZIP = "  - {name: back zip, layers: [cloth, {notion: coil zip}], length: 20 cm}\n"
TOP = """\
  - {name: shoulder, layers: [cloth, cloth], length: 12 cm, times: 2}
  - {name: side, layers: [cloth, cloth], length: 40 cm, times: 2}
  - {name: front buttonholes, fastening: buttonholes, on: cloth, number: 6}
  - {name: front buttons, layers: [cloth, {notion: shell button}], times: 6}
  - {name: hem, layers: [cloth], length: 100 cm, edge: hem}
"""
NECK = "  - {name: neck binding, layers: [cloth, {notion: bias binding}], length: 50 cm}\n"
ARMS = "  - {name: armhole facing, layers: [cloth, cloth], length: 46 cm, edge: turned}\n"


def gaps(garment: Garment) -> tuple[ToldGap, ...]:
    """What is told to be missing of a garment."""
    return told_gaps(Teller(garment, known()))


def ids(places: str) -> list[str]:
    """The same of a woven garment of a few places."""
    return [gap.id for gap in gaps(garment_of(parse_yaml(WOVEN + places, "p.yaml"), known()))]


@pytest.mark.parametrize("path", [*TEMPLATES, *FILES], ids=lambda path: path.stem)
def test_of_the_garments_at_hand_that_is_told_which_is_truly_missing(path: Path) -> None:
    """And of what a maker may begin from, nothing is."""
    told = [gap.id for gap in gaps(load_project(path, known()))]
    assert told == (MISSING.get(path.stem, []) if path not in TEMPLATES else [])


@pytest.mark.parametrize("name", sorted(MISSING))
def test_each_line_that_is_told_can_be_written_and_ends_what_it_is_told_for(name: str) -> None:
    """It goes below `seams:` as it stands."""
    path = next(path for path in FILES if path.stem == name)
    text = path.read_text(encoding="utf-8")
    for gap in gaps(load_project(path, known())):
        mended = text.replace("\nseams:\n", f"\nseams:\n  - {gap.line}\n")
        left = gaps(garment_of(parse_yaml(mended, "p.yaml"), known()))
        assert mended != text
        assert (gap.id, gap.place) not in [(other.id, other.place) for other in left]


@pytest.mark.parametrize(
    ("forgotten", "places", "filled"),
    [
        ("no-way-in", SKIRT + BAND, SIDE_ZIP),
        ("waistband-not-closed", SKIRT + BAND + SIDE_ZIP, "  - {name: waist hook, on: cloth}\n"),
        (
            "nothing-below-the-zip",
            SKIRT + BACK_ZIP,
            "  - {name: centre back, layers: [cloth, cloth], length: 40 cm}\n",
        ),
        ("neck-not-finished", TOP + ARMS, NECK),
        (
            SLEEVE,
            TOP + NECK + "  - {name: raglan seams, layers: [cloth, cloth], times: 4}\n",
            "  - {name: underarm, layers: [cloth, cloth], length: 40 cm, times: 2}\n",
        ),
        (
            "cuff-not-closed",
            (
                "  - {name: sleeve slit, layers: [cloth], length: 8 cm, times: 2}\n"
                "  - {name: cuff, layers: [cloth, cloth], length: 22 cm, times: 2}\n"
                "  - {name: front buttons, layers: [cloth, {notion: shell button}], times: 6}\n"
            ),
            "  - {name: cuff buttons, layers: [cloth, {notion: shell button}], times: 2}\n",
        ),
        ("armhole-not-finished", TOP + NECK, ARMS),
        (
            "lower-edge-not-finished",
            TOP.replace("hem, layers: [cloth], length: 100 cm, edge: hem", "tuck, layers: [cloth]"),
            "  - {name: lower edge binding, layers: [cloth, {notion: bias binding}]}\n",
        ),
        (
            "waist-not-finished",
            "  - {name: inseam, layers: [cloth, cloth], length: 70 cm, times: 2}\n",
            "  - {name: waist facing, layers: [cloth, cloth], edge: turned}\n",
        ),
        (
            HOLES,
            TOP.replace("  - {name: front buttonholes, fastening: buttonholes, on: cloth,", "#"),
            "  - {name: front loops, fastening: loops, on: cloth, number: 6}\n",
        ),
    ],
)
def test_a_place_that_is_missing_is_told_until_it_is_written(
    forgotten: str, places: str, filled: str
) -> None:
    """By any of the ways in which it may be made."""
    assert forgotten in ids(places)
    assert forgotten not in ids(places + filled)


def test_cloth_that_stretches_needs_no_opening() -> None:
    """A dress of jersey goes over the head."""
    assert "no-way-in" in ids(SKIRT + BAND)
    assert "no-way-in" not in ids((SKIRT + BAND).replace("cloth", "net"))


@pytest.mark.parametrize(("length", "long"), [(55, []), (75, ["zip-longer-than-its-seam"])])
def test_a_zip_is_no_longer_than_the_line_that_it_lies_in(length: int, long: list[str]) -> None:
    """A skirt of 60 cm has no zip of 75."""
    places = SKIRT + SIDE_ZIP.replace("20", str(length))
    assert long == [id_ for id_ in ids(places) if id_ == "zip-longer-than-its-seam"]


def test_a_zip_is_measured_by_the_seams_of_its_own_part() -> None:
    """The long coat above it has longer ones."""
    parts = "parts: {coat: {layers: [cloth]}, skirt: {layers: [cloth]}}\nseams:"
    text = WOVEN.replace("seams:", parts) + (
        "  - {name: coat side, layers: [cloth, cloth], length: 96 cm, times: 2, part: coat}\n"
        "  - {name: gores, layers: [cloth, cloth], length: 62 cm, times: 6, part: skirt}\n"
        "  - {name: skirt zip, layers: [cloth, {notion: coil zip}], length: 70 cm, part: skirt}\n"
    )
    told = gaps(garment_of(parse_yaml(text, "p.yaml"), known()))
    assert "zip-longer-than-its-seam" in [gap.id for gap in told]
    shorter = gaps(garment_of(parse_yaml(text.replace("70 cm", "20 cm"), "p.yaml"), known()))
    assert "zip-longer-than-its-seam" not in [gap.id for gap in shorter]


def test_the_lining_of_a_coat_is_felled_to_no_zip_of_a_skirt_without_one() -> None:
    """The layers of the skirt name no lining; where they do, it is."""
    text = WOVEN.replace("net:", "inside: {fabric: lining}, net:").replace(
        "seams:", "parts: {coat: {layers: [inside, cloth]}, skirt: {layers: [cloth]}}\nseams:"
    ) + (
        "  - {name: coat side, layers: [cloth, cloth], length: 60 cm, part: coat}\n"
        "  - {name: lining side, layers: [inside, inside], length: 58 cm, part: coat}\n"
        "  - {name: facing to lining, layers: [cloth, inside], length: 150 cm, part: coat}\n"
        "  - {name: skirt side, layers: [cloth, cloth], length: 60 cm, part: skirt}\n"
        "  - {name: skirt side zip, layers: [cloth, {notion: coil zip}], length: 20 cm, "
        "part: skirt}\n"
    )
    lined = text.replace("skirt: {layers: [cloth]}", "skirt: {layers: [inside, cloth]}")
    felled = "fell the lining to skirt side zip"
    found, other = (ordered(said).order for said in (text, lined))
    assert felled not in found
    assert felled in other


def test_a_closing_of_another_part_closes_no_waistband() -> None:
    """The buttons of a jacket, where its skirt is told as a part of its own."""
    parts = (
        SKIRT
        + BAND.replace("}", ", part: skirt}")
        + ("  - {name: front buttons, layers: [cloth, {notion: shell button}], part: jacket}\n")
    )
    text = WOVEN.replace("seams:", "parts: {skirt: {}, jacket: {}}\nseams:") + parts
    told = [gap.id for gap in gaps(garment_of(parse_yaml(text, "p.yaml"), known()))]
    assert "waistband-not-closed" in told


def test_of_two_parts_with_shoulders_each_has_a_neck_of_its_own() -> None:
    """The collar of a cape finishes no neck of the tunic beneath it."""
    tunic = (TOP + ARMS).replace("}\n", ", part: tunic}\n")
    cape = (
        "  - {name: cape shoulder, layers: [cloth, cloth], length: 40 cm, part: cape}\n"
        "  - {name: cape collar, layers: [cloth, cloth], length: 44 cm, part: cape}\n"
    )
    parts = "parts: {tunic: {layers: [cloth]}, cape: {layers: [cloth]}}\nseams:"
    text = WOVEN.replace("seams:", parts) + tunic + cape
    told = list(gaps(garment_of(parse_yaml(text, "p.yaml"), known())))
    assert [gap.place for gap in told if gap.id == "neck-not-finished"] == ["shoulder"]


def test_frogs_and_holes_of_a_coat_close_no_fly_of_its_breeches() -> None:
    """But a button of their own closes their waistband, whatever the coat is called."""
    parts = "parts: {coat: {layers: [cloth]}, breeches: {layers: [cloth]}}\nseams:"
    text = WOVEN.replace("seams:", parts) + (
        "  - {name: coat side, layers: [cloth, cloth], length: 70 cm, part: coat}\n"
        "  - {name: coat frogs, layers: [cloth, {notion: frog}], times: 5, part: coat}\n"
        "  - {name: breeches inseam, layers: [cloth, cloth], length: 44 cm, part: breeches}\n"
        "  - {name: fly buttons, layers: [cloth, {notion: shell button}], part: breeches}\n"
        "  - {name: breeches waistband, layers: [cloth, cloth], length: 82 cm, part: breeches}\n"
        "  - {name: knee hem, layers: [cloth], edge: hem, part: breeches}\n"
    )
    told = gaps(garment_of(parse_yaml(text, "p.yaml"), known()))
    assert [(gap.id, gap.place) for gap in told] == [(HOLES, "fly buttons")]


def test_the_hem_of_a_dress_hems_no_shorts_under_it() -> None:
    """Nor does that of the shorts hem the dress."""
    parts = "parts: {dress: {layers: [cloth]}, shorts: {layers: [cloth]}}\nseams:"
    dress = (TOP + NECK + ARMS).replace("}\n", ", part: dress}\n")
    shorts = (
        "  - {name: inseam, layers: [cloth, cloth], length: 14 cm, part: shorts}\n"
        "  - {name: waist casing, layers: [cloth, {notion: woven elastic}], part: shorts}\n"
    )
    text = WOVEN.replace("seams:", parts) + dress + shorts
    told = gaps(garment_of(parse_yaml(text, "p.yaml"), known()))
    assert [(gap.id, gap.place) for gap in told] == [
        ("lower-edge-below-its-band-not-finished", "inseam")
    ]
    hemmed = text + f"  - {told[0].line}\n"
    assert gaps(garment_of(parse_yaml(hemmed, "p.yaml"), known())) == ()


def test_the_bag_of_a_pocket_is_no_layer_of_its_part() -> None:
    """That is no disagreement."""
    text = WOVEN.replace("seams:", "parts: {skirt: {layers: [cloth]}}\nseams:") + (
        "  - {name: slant pockets, layers: [cloth, net], length: 18 cm, part: skirt}\n"
    )
    garment = garment_of(parse_yaml(text, "p.yaml"), known())
    assert not disagreements(advise(garment, known()).judgement, known())


def test_what_is_missing_is_no_clash_and_sheet_and_check_tell_it_alike() -> None:
    """With the line to write, the gravest first, and the exit code of a garment without a clash."""
    check, sheet = typed("check", str(DRESS)), typed("sheet", str(DRESS))
    screen = typed("sheet", "--screen", str(DRESS))
    assert (0, 0) == (check.returncode, sheet.returncode)
    order = " ".join(typed("order", str(DRESS)).out.split())
    assert "missing at side, armhole, collar edge, lining side has no steps here" in order
    for run in (check, sheet, screen):
        words = " ".join(run.out.split())
        assert words.index("nothing lets the wearer in") < words.index("no seam closes it")
        assert "Write: {name: sleeve seam, layers: [crepe, crepe], times: 2}" in words


def test_a_lining_that_is_longer_than_its_bodice_ends_at_the_hem() -> None:
    """It is felled there, and not at the waist far above its edge, so nothing is missing."""
    steps = work("more/orangery_dress").order
    assert "fell the lining at hem" in steps
    assert not [step for step in steps if step.startswith("fell the lower edge")]
