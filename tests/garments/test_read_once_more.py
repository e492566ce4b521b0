"""What a cutter and a teacher found when they read the sheets once more, and must not come back.

A lined dress, a coat with pads and horn buttons, and a bodice with cups and rivets. All is common
practice of the trade.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.answer.conflicts import told_conflicts
from advisor.answer.teller import Teller
from advisor.answer.unknowns import told_unknowns
from advisor.claims.collect import Place
from advisor.construction.bulk import picked
from advisor.construction.seamwork import FINE, seamworks
from advisor.decide.advise import advise
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import advice, changed, known, ordered, places, stands, work
from tests.typed import typed

KNIT = """
garment: Sample
fabrics: {film: {fabric: power mesh}}
seams: [{name: side, layers: [film, film], length: 20 cm}]
"""
ELASTIC = """
garment: Sample
fabrics:
  shell: {fabric: wool coating, fibres: {wool: 100}}
  waist elastic: {notion: woven elastic}
seams:
  - {name: side, layers: [shell, shell], length: 20 cm}
  - {name: waist casing, layers: [shell, waist elastic], length: 60 cm}
"""
CLEAR = """
garment: Sample
fabrics: {shell: {fabric: wool coating, fibres: {wool: 100}}}
seams:
  - {name: side, layers: [shell, shell], length: 70 cm}
  - {name: shoulder, layers: [shell, {notion: clear elastic}, shell], length: 14 cm}
"""
THING = """
garment: Sample
fabrics: {shell: {fabric: poplin, fibres: {cotton: 100}}}
seams:
  - {name: shoulder, layers: [shell, shell], length: 14 cm}
  - {name: THING, layers: [shell, {notion: THING}]}
"""
DRESS, COAT, BODICE = "more/harbour_dress", "more/bothy_coat", "more/quay_bodice"


def test_an_edge_turned_to_its_lining_is_turned_while_the_bodice_is_open() -> None:
    """It ends beside the zip and not over it, and the waist shuts the bodice."""
    found = work(DRESS)
    assert stands(found, "turn neck edge", "join waist", "set centre back zip")
    assert stands(found, "turn armhole edge", "join waist")


def test_neck_and_armholes_are_turned_while_the_sides_are_open() -> None:
    """What is turned all in one is drawn through the shoulders; closed sides would hold it."""
    found = work(DRESS)
    steps = ("join shoulder", "baste bodice side", "fit", "turn armhole edge", "join bodice side")
    assert stands(found, *steps)
    assert stands(found, "turn neck edge", "join bodice side")
    assert stands(found, "join skirt side", "fit")


def test_an_armhole_that_is_turned_alone_runs_over_its_side() -> None:
    """With a bound neck there is an opening to turn it through, so it is sewn as a ring."""
    found = changed(
        DRESS, "{name: neck edge, layers: [shell, lining]", "{name: top, layers: [shell]"
    )
    assert stands(found, "join bodice side", "join armhole edge")


def test_the_lining_is_felled_to_the_zip_of_a_dress_whose_neck_is_turned_to_it() -> None:
    """A faced edge of shell and lining makes a lined garment as a lining seam does."""
    found = work(DRESS)
    assert stands(found, "set centre back zip", "fell the lining to centre back zip", "sew hem")


def test_a_collar_is_made_up_and_turned_before_it_is_set() -> None:
    """The place that is just called a collar, its edge turned, is no seam to the neck."""
    found = work(COAT)
    assert places(found)["collar"].kind.id == "faced-edge"
    assert places(found)["attach collar"].kind.id == "collar"
    assert stands(found, "join collar", "grade collar", "turn collar", "join attach collar")


def test_horn_buttons_and_pads_keep_no_coat_from_the_cleaner() -> None:
    """Coats are cleaned with both."""
    assert not told_conflicts(advice(COAT), Teller(advice(COAT).judgement.garment, known()))


def test_elastic_that_may_be_of_rubber_is_bought_of_another_fibre() -> None:
    """Rubber keeps a wool coat from the cleaner; elastane in its place does not."""
    garment = garment_of(parse_yaml(ELASTIC, "project.yaml"), known())
    found = told_conflicts(advise(garment, known()), Teller(garment, known()))
    clash = next(one for one in found if one.aspect == "care.method")
    bought = "Buy elastic of 75 % polyester, 25 % elastane instead of the waist elastic"
    assert clash.remedies[0].text.startswith(bought)


def test_where_nothing_cures_it_is_said_what_to_find_out() -> None:
    """A laminate may be of a film that no solvent may reach: ask what it is made of."""
    panelled = ELASTIC.replace("{notion: woven elastic}", "laminated cotton")
    panelled = panelled.replace("waist elastic", "panel").replace("waist casing", "yoke")
    garment = garment_of(parse_yaml(panelled, "project.yaml"), known())
    found = told_conflicts(advise(garment, known()), Teller(garment, known()))
    clash = next(one for one in found if one.aspect == "care.method")
    assert not clash.remedies
    assert "find out what the panel is made of" in clash.no_cure


def test_clear_elastic_sewn_into_a_wool_coat_leaves_no_way_to_clean_it() -> None:
    """It is a film, which the solvent eats, and nobody takes it out of a shoulder again."""
    garment = garment_of(parse_yaml(CLEAR, "project.yaml"), known())
    found = told_conflicts(advise(garment, known()), Teller(garment, known()))
    (clash,) = [one for one in found if one.aspect.startswith("care.")]
    assert "clear elastic cannot be dry cleaned" in clash.message
    assert not clash.remedies


@pytest.mark.parametrize(
    ("thing", "cleaning", "wash"),
    [
        ("shell button", "F mild", "40 very mild"),
        ("horn button", "P mild", "hand wash"),
        ("wooden button", "F mild", "hand wash"),
        ("shoulder pad", "F normal", "hand wash"),
        ("bra cup", "F mild", "30 very mild"),
    ],
)
def test_what_is_sewn_on_or_in_bears_what_it_is_made_of(
    thing: str, cleaning: str, wash: str
) -> None:
    """Shell is washed, horn is cleaned with its coat; foam breaks up in perchloroethylene."""
    garment = garment_of(parse_yaml(THING.replace("THING", thing), "project.yaml"), known())
    verdicts = advise(garment, known()).judgement.verdicts[Place("garment", "Sample")]
    assert picked(verdicts, "care.professional") == cleaning
    assert picked(verdicts, "care.wash") == wash


def test_cups_are_caught_in_by_hand_when_the_bodice_has_been_tried_on() -> None:
    """They lie where the body wants them, and no foot comes near."""
    found = work(BODICE)
    assert places(found)["bra cups"].method.id == "cups-caught-in"
    assert stands(found, "fit", "catch in bra cups")


@pytest.mark.parametrize("place", ["bra cups", "rivets"])
def test_nothing_that_no_machine_sews_is_too_thick_for_its_foot(place: str) -> None:
    """A foot lift is asked for where a foot comes down."""
    (found,) = [w for w in seamworks(advice(BODICE).judgement, known()) if w.seam.name == place]
    assert found.no_foot
    assert (found.room, found.lift, found.fine_needle) == (FINE, None, None)


def test_a_buttonhole_goes_under_the_foot() -> None:
    """It is worked by machine, however little else is asked of the place."""
    (found,) = [
        w for w in seamworks(advice(COAT).judgement, known()) if w.seam.name == "buttonholes"
    ]
    assert not found.no_foot
    assert found.lift


def test_no_iron_is_never_told_as_a_temperature() -> None:
    """The coldest limit means that no iron comes near."""
    garment = garment_of(parse_yaml(KNIT, "project.yaml"), known())
    told = told_unknowns(advise(garment, known()).judgement, Teller(garment, known()))
    effects = [one.effect for one in told if "instead of" in one.effect]
    assert effects
    assert all("instead of no iron" in effect for effect in effects)


def test_a_lining_with_its_own_seam_at_the_zip_is_not_felled_there_again() -> None:
    """Who names the joint of lining and zip is told it once; without it, it is felled."""
    text = (
        "garment: Shift\nfabrics: {wool: wool crepe, lining: viscose lining}\nseams:\n"
        "  - {name: centre back, layers: [wool, wool], length: 95 cm}\n"
        "  - {name: back zip, layers: [wool, {notion: concealed zip}], length: 50 cm}\n"
        "  - {name: JOINT, layers: [lining, wool], length: 100 cm}\n"
    )
    felled = {}
    for joint in ("lining to zip", "facing to lining"):
        steps = ordered(text.replace("JOINT", joint)).order
        felled[joint] = "fell the lining to back zip" in steps
    assert {"lining to zip": False, "facing to lining": True} == felled


@pytest.mark.parametrize("wrist", ["sleeve hem", "lower sleeve cuff"])
def test_a_wrist_that_is_finished_leaves_the_lower_edge_to_hem(wrist: str) -> None:
    """What closes a sleeve is no hem of the garment."""
    text = f"""
garment: Sample
fabrics: {{lawn: {{fabric: lawn, fibres: {{cotton: 100}}}}}}
seams:
  - {{name: side, layers: [lawn, lawn], length: 50 cm, times: 2}}
  - {{name: {wrist}, layers: [lawn], length: 24 cm, times: 2}}
"""
    found = ordered(text)
    assert any(task.op == "hem-edge" for task in found.tasks.values())


@pytest.mark.parametrize("end", ["waist rib", "welt"])
def test_a_rib_at_the_waist_of_a_jacket_is_its_lower_edge(end: str) -> None:
    """Nothing is left to level and hem; of leggings the same rib is the upper edge."""
    text = f"""
garment: Sample
fabrics: {{fleece: {{fabric: fleece, fibres: {{polyester: 100}}}}, rib: {{fabric: rib knit}}}}
seams:
  - {{name: shoulder, layers: [fleece, fleece], length: 15 cm, times: 2}}
  - {{name: side, layers: [fleece, fleece], length: 50 cm, times: 2}}
  - {{name: {end}, layers: [fleece, {{use: rib, stretched: 1.2}}], length: 100 cm}}
"""
    legs = text.replace("name: shoulder", "name: inseam")
    for said, hemmed in ((text, False), (legs, True)):
        found = ordered(said)
        assert hemmed == any(task.op == "hem-edge" for task in found.tasks.values())


@pytest.mark.parametrize(
    ("place", "method"),
    [
        ("{name: edge, layers: [wool, lining], length: 60 cm}", "lining set by hand"),
        ("{name: zip, layers: [wool, {notion: coil zip}], length: 40 cm}", "hand-picked zip"),
        ("{name: hem, layers: [wool], edge: hem, length: 90 cm}", "hand-rolled hem"),
    ],
)
def test_what_a_method_sews_by_hand_needs_no_foot_and_no_machine_needle(
    place: str, method: str
) -> None:
    """Whatever machine she has; and what she says of the stitching goes before the method."""
    wool = "wool: {fabric: gabardine, fibres: {wool: 100}}"
    lining = "lining: {fabric: lining, fibres: {viscose: 100}}"
    head = f"garment: Sample\nfabrics: {{{wool}, {lining}}}\nseams:\n"
    asked = {}
    for more in ("", ", stitched by: machine"):
        text = f"{head}  - {place[:-1]}, method: {method}{more}}}\n"
        garment = garment_of(parse_yaml(text, "project.yaml"), known())
        verdicts = advise(garment, known()).judgement.verdicts
        asked[more] = {a for p, found in verdicts.items() if p.scope == "seam" for a in found}
    assert not {"machine.foot", "needle.size"} & asked[""]
    assert {"machine.foot", "needle.size"} <= asked[", stitched by: machine"]


@pytest.mark.parametrize(("place", "caught"), [("side", False), ("armhole", True)])
def test_a_lining_is_caught_at_the_shoulder_where_there_is_one(place: str, caught: bool) -> None:
    """A skirt has neither shoulder nor underarm, whatever its lining is joined to."""
    text = (
        "garment: Sample\nfabrics: {wool: wool crepe, lining: viscose lining}\nseams:\n"
        f"  - {{name: {place}, layers: [wool, wool], length: 50 cm}}\n"
        "  - {name: back zip, layers: [wool, {notion: concealed zip}], length: 20 cm}\n"
        "  - {name: lining to facing, layers: [lining, wool], length: 40 cm}\n"
    )
    assert caught == ("catch lining to facing" in ordered(text).order)


def sheet_of(text: str, folder: Path, *more: str) -> str:
    """The sheet of a project, its lines joined."""
    file = folder / "project.yaml"
    file.write_text(text, encoding="utf-8")
    return " ".join(typed("sheet", str(file), *more).out.split())


def test_pile_is_sheared_off_the_allowances_on_the_plain_sheet(tmp_path: Path) -> None:
    """Nothing else opens a seam of fur, so it is no lesser thing."""
    text = "garment: Sample\nfabrics: {fur: faux fur, wool: wool coating}\nseams:\n"
    text += "  - {name: side, layers: [fur, fur], length: 70 cm}\n"
    assert "Shear deep pile off its own allowances" in sheet_of(text, tmp_path)


@pytest.mark.parametrize(("care", "tried"), [("dry clean only", False), ("washable", True)])
def test_no_scrap_is_washed_where_the_whole_never_is(
    care: str, tried: bool, tmp_path: Path
) -> None:
    """Its own cloth may be washable: it hangs together with one that is not."""
    text = (
        "garment: Sample\nfabrics:\n"
        f"  main: {{fabric: cotton poplin, fibres: {{cotton: 100}}, care: {care}}}\n"
        "  satin: {fabric: satin, fibres: {polyester: 100}, care: washable}\nseams:\n"
        "  - {name: yoke, layers: [main, satin], length: 40 cm}\n"
        "  - {name: stones, layers: [satin, {notion: glass stone}], times: 5}\n"
    )
    assert tried == ("Wash the glued scrap" in sheet_of(text, tmp_path, "--all"))


@pytest.mark.parametrize(("shell", "clean"), [("nylon", False), ("cotton", True)])
def test_what_is_said_to_be_fused_first_still_needs_a_cloth_that_bears_it(
    shell: str, clean: bool
) -> None:
    """Her own line moves the press; it makes no nylon bear 130 °C."""
    text = f"""
garment: Sample
fabrics: {{shell: {{fabric: taffeta, fibres: {{{shell}: 100}}}}, lining: lining}}
seams:
  - name: front facing
    layers: [shell, {{notion: woven fusible interfacing}}, shell]
    edge: turned
    fused first: woven fusible interfacing
"""
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    clashes = advise(garment, known()).judgement.conflicts
    assert clean == (not [c for c in clashes if c.aspect == "press.temperature"])


def test_a_glue_is_fused_to_no_layer_that_it_does_not_touch() -> None:
    """Wool flannel that may hold nylon bears 110 °C; that the lining bears more is no help."""
    text = """
garment: Sample
fabrics:
  wool: {fabric: wool flannel}
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: side, layers: [wool, wool], length: 90 cm}
  - {name: waistband, layers: [wool, {notion: woven fusible interfacing}, wool, lining]}
"""
    found = ordered(text)
    assert not [step for step in found.tasks if step.startswith("fuse")]


@pytest.mark.parametrize(
    ("fibres", "shrunk"),
    [("{wool: 100}", True), ("{wool: 60, acrylic: 40}", False), ("{cotton: 100}", False)],
)
def test_ease_is_shrunk_only_where_heat_and_moisture_may_come(fibres: str, shrunk: bool) -> None:
    """Wool draws together under steam; acrylic bags, and at one dot an iron drips."""
    text = f"""
garment: Sample
fabrics: {{shell: {{fabric: flannel, fibres: {fibres}, weight: 300 g/m2}}}}
seams:
  - {{name: side, layers: [shell, shell], length: 40 cm, times: 2}}
  - {{name: armhole, layers: [shell, {{use: shell, ease: 30 mm}}], length: 50 cm, shape: curved}}
"""
    found = ordered(text)
    steps = [task.step.does for task in found.tasks.values()]
    assert shrunk == any("shrink its ease" in text for text in steps)


def test_the_neck_is_closed_once_the_facing_that_meets_the_collar_is_turned() -> None:
    """It covers the inside of the neck seam."""
    text = """
garment: Sample
fabrics: {tweed: {fabric: tweed, fibres: {wool: 100}}}
seams:
  - {name: shoulder, layers: [tweed, tweed], length: 13 cm, times: 2}
  - {name: side, layers: [tweed, tweed], length: 60 cm, times: 2}
  - {name: collar, layers: [tweed, tweed], length: 48 cm, shape: curved, edge: turned}
  - {name: attach collar, layers: [tweed, tweed], length: 44 cm, shape: curved}
  - {name: front facing, layers: [tweed, tweed], length: 90 cm, edge: turned}
"""
    found = ordered(text)
    assert stands(found, "join attach collar", "close attach collar")
    assert stands(found, "turn front facing", "close attach collar")


def test_a_fusing_step_says_how_long_each_spot_is_held() -> None:
    """The glue melts through in that time, and in no shorter one."""
    found = work("more/shirt")
    steps = [t.step.does for t in found.tasks.values() if t.op == "fuse"]
    assert steps
    assert all("s in each spot without gliding" in does for does in steps)


def test_armholes_of_a_bagged_waistcoat_are_turned_while_its_sides_are_open() -> None:
    """Sewn round with closed sides they come out as tubes; the fronts go through the shoulders."""
    found = work("more/ringers_waistcoat")
    assert stands(found, "join shoulder", "turn armhole edge", "join side")


def test_what_ends_in_the_seam_under_the_bust_is_closed_before_it() -> None:
    """The seam between the cups runs into it as a centre seam runs into a waist."""
    text = """
garment: Sample
fabrics: {silk: {fabric: crepe de chine, fibres: {silk: 100}}}
seams:
  - {name: under bust, layers: [silk, silk], length: 70 cm}
  - {name: centre front, layers: [silk, silk], length: 14 cm}
  - {name: bodice side, layers: [silk, silk], length: 12 cm, times: 2}
"""
    found = ordered(text)
    assert stands(found, "join centre front", "join under bust")


def test_the_bags_of_a_pocket_in_a_seam_are_sewn_round_with_that_seam() -> None:
    """Sewn round before it they would shut the pocket; and nothing of the seam is trimmed there."""
    text = """
garment: Sample
fabrics: {poplin: {fabric: poplin, fibres: {cotton: 100}}}
seams:
  - {name: side pocket, layers: [poplin, poplin], length: 46 cm, times: 2}
  - {name: side, layers: [poplin, poplin], length: 90 cm, times: 2}
"""
    found = ordered(text)
    assert stands(found, "understitch side pocket", "pin up side pocket", "join side")
    assert not {"grade side pocket", "close side pocket"} & set(found.order)


def test_one_side_stays_open_where_its_zip_goes() -> None:
    """Nobody gets in otherwise; a concealed zip goes in first, and its seam is closed after it."""
    text = """
garment: Sample
fabrics: {wool: {fabric: gabardine, fibres: {wool: 100}}}
seams:
  - {name: side, layers: [wool, wool], length: 60 cm, times: 2}
  - {name: side zip, layers: [wool, {notion: coil zip}], length: 20 cm}
  - {name: hem, layers: [wool], edge: hem, length: 110 cm}
"""
    for said, gap in ((text, True), (text.replace("coil zip", "concealed zip"), False)):
        joined = ordered(said).tasks["join side"].step.does
        assert gap == ("one of them stays open for 20 cm, where side zip goes" in joined), joined


@pytest.mark.parametrize("inside", ["inner", "lining"])
def test_a_lining_is_whole_before_it_is_basted_to_its_elastic_edge(inside: str) -> None:
    """Whatever its cloth is called: afterwards its sides are shut in."""
    text = f"""
garment: Sample
fabrics:
  outer: {{fabric: swim knit, fibres: {{nylon: 80, elastane: 20}}}}
  {inside}: {{fabric: power mesh}}
seams:
  - {{name: side, layers: [outer, outer], length: 30 cm, times: 2}}
  - {{name: crotch, layers: [outer, {inside}, outer], length: 8 cm}}
  - {{name: lining side, layers: [{inside}, {inside}], length: 30 cm, times: 2}}
  - {{name: leg elastic, layers: [outer, {inside}, {{notion: rubber elastic}}], edge: folded}}
"""
    found = ordered(text)
    assert stands(found, "join lining side", "baste layers at leg elastic")
