"""What a teacher saw in sheets: what a place is taken for, how it is made, and how it is set.

Dungarees, a slip, a waistcoat, a fleece, a circle skirt and a boned bodice, each as small as the
fault allows. All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.conflicts import told_conflicts
from advisor.answer.teller import Teller
from advisor.claims.collect import Place
from advisor.claims.judgement import Advice
from advisor.claims.telling import told_lines
from advisor.claims.valuesets import Choice
from advisor.construction.agreement import disagreements
from advisor.construction.notionlist import notions_to_buy
from advisor.decide.advise import advise
from advisor.order.steps import MachineState
from advisor.order.work import Work, order_of
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, places, stands

DUNGAREES = """
garment: Ferry dungarees
maker: {machine: household, overlocker: 4-thread}
fabrics:
  cord: {fabric: corduroy, fibres: {cotton: 98, elastane: 2}, weight: 300 g/m2}
  print: {fabric: poplin, fibres: unknown}
seams:
  - {name: chest pocket, layers: [cord, cord], length: 40 cm}
  - {name: bib edge, layers: [cord, print], length: 80 cm, edge: turned}
  - {name: straps, layers: [cord, cord], length: 90 cm, edge: turned, times: 2}
  - {name: bib buttons, layers: [cord, print, {notion: metal button}], times: 2}
  - {name: outside leg, layers: [cord, cord], length: 84 cm, times: 2}
  - {name: hip opening, layers: [cord, cord], length: 18 cm, times: 2}
  - {name: hip buttonholes, on: cord, fastening: buttonholes, number: 4}
"""
SLIP = """
garment: Moth slip
maker: {machine: household, overlocker: no}
fabrics:
  silk: {fabric: charmeuse, fibres: {silk: 100}}
  lace: {fabric: lace, fibres: {nylon: 90, elastane: 10}}
seams:
  - {name: bust dart, layers: [lace], length: 8 cm, times: 2}
  - {name: side, layers: [silk, silk], length: 70 cm, bias: yes, times: 2}
  - {name: top edge, layers: [lace, {notion: lingerie elastic}], length: 60 cm, shape: curved}
  - {name: hem lace, layers: [silk, lace], length: 150 cm, edge: hem}
"""
WAISTCOAT = """
garment: Chapel waistcoat
maker: {machine: household, overlocker: no}
fabrics:
  tweed: {fabric: tweed, fibres: {wool: 100}, weight: 340 g/m2}
  back: {fabric: habutai, fibres: {silk: 100}, weight: 10 momme}
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: front dart, layers: [tweed], length: 22 cm, times: 2}
  - {name: welt pocket, layers: [tweed, lining], length: 11 cm, times: 2}
  - {name: front facing, layers: [tweed, tweed], length: 62 cm, edge: turned, times: 2}
  - {name: armhole facing, layers: [tweed, tweed], length: 50 cm, edge: turned, times: 2}
  - {name: centre back, layers: [back, back], length: 50 cm}
  - {name: shoulder, layers: [tweed, back], length: 12 cm, times: 2}
  - {name: facing to lining, layers: [tweed, lining], length: 55 cm, times: 2}
  - {name: hem, layers: [tweed, lining], length: 60 cm, edge: turned}
"""
FLEECE = """
garment: Ranger's fleece
maker: {machine: household, overlocker: 4-thread}
fabrics:
  fleece: {fabric: fleece, fibres: {polyester: 100}, weight: 280 g/m2}
  rib: {fabric: rib knit, fibres: {cotton: 95, elastane: 5}}
seams:
  - {name: side, layers: [fleece, fleece], length: 50 cm, times: 2}
  - {name: cuff, layers: [fleece, {use: rib, stretched: 1.3}], length: 26 cm, times: 2}
  - {name: front zip, layers: [fleece, {notion: moulded zip}, fleece], length: 65 cm}
"""
SKIRT = """
garment: Bandstand skirt
maker: {machine: household, overlocker: no}
fabrics: {taffeta: {fabric: taffeta, fibres: {polyester: 100}}}
seams:
  - {name: side, layers: [taffeta, taffeta], length: 66 cm, times: 2}
  - {name: waistband, layers: [taffeta, taffeta], length: 68 cm}
  - {name: hem, layers: [taffeta], length: 420 cm, shape: curved, edge: hem}
"""
BODICE = """
garment: Lantern dress
maker: {machine: household, overlocker: no}
fabrics:
  satin: {fabric: duchesse satin, fibres: {polyester: 100}, weight: 210 g/m2}
  chiffon: {fabric: chiffon, fibres: {silk: 100}, weight: 6 momme}
  mount: {fabric: coutil, fibres: {cotton: 100}}
seams:
  - {name: bodice mounting, layers: [satin, mount]}
  - {name: bodice side, layers: [satin, mount, mount, satin], length: 24 cm, times: 2}
  - {name: bones, layers: [mount, {notion: boning}], length: 24 cm, times: 8}
  - {name: chiffon side, layers: [chiffon, chiffon], length: 105 cm, times: 2}
  - {name: waist, layers: [satin, mount, satin, {use: chiffon, fullness: 2}], length: 70 cm}
  - {name: back zip, layers: [satin, {notion: concealed zip}], length: 45 cm}
"""


@cache
def seen(text: str) -> Advice:
    """The advice on a garment."""
    return advise(garment_of(parse_yaml(text, "project.yaml"), known()), known())


@cache
def made(text: str) -> Work:
    """Its order of work."""
    return order_of(seen(text), known())


def picked(text: str, place: str, aspect: str) -> object:
    """The number or the word that is picked at a place."""
    found = seen(text).judgement.verdicts[Place("seam", place)][aspect]
    assert found.pick is not None
    return found.aspect.words[int(found.pick)] if found.aspect.words else found.pick


def left(text: str, place: Place, aspect: str) -> set[str]:
    """The options that are left in a place."""
    found = seen(text).judgement.verdicts[place][aspect]
    assert isinstance(found.advised, Choice)
    return {found.aspect.words[i] for i in found.advised.options()}


def told(text: str) -> str:
    """Every thing to do that is told of a garment, as one text."""
    judgement = seen(text).judgement
    return " ".join(
        str(fired.rule.do[i])
        for fired in judgement.gathered.fired
        for i in told_lines(fired, "do", judgement)
    )


def asked(text: str, place: str) -> set[str]:
    """What is asked at a place."""
    return set(seen(text).judgement.verdicts[Place("seam", place)])


def test_a_thick_and_a_thin_cloth_meet_in_the_middle_of_what_both_like() -> None:
    """Corduroy likes 90 and poplin 70; no taste of one of them breaks the tie."""
    assert picked(DUNGAREES, "bib edge", "needle.size") == 80.0
    assert picked(DUNGAREES, "outside leg", "needle.size") == 90.0


@pytest.mark.parametrize("name", ["lace hem", "hem lace", "lace edge"])
def test_lace_is_lapped_on_its_edge_and_faced_by_nothing(name: str) -> None:
    """It would be hidden inside a faced hem; the cloth behind it is cut away."""
    found = made(SLIP.replace("hem lace", name))
    assert places(found)[name].method.id == "lace-lapped-on"
    assert stands(found, f"lap {name}", f"press {name}", f"cut away behind {name}")


def test_a_lace_skirt_over_its_lining_is_hemmed_as_it_was() -> None:
    """The lace is its shell there, and what is turned is turned."""
    lined = SLIP.replace("hem lace, layers: [silk, lace]", "hem, layers: [silk, lace]")
    assert places(made(lined))["hem"].kind.id == "hem"
    turned = SLIP.replace("150 cm, edge: hem", "150 cm, edge: turned")
    assert places(made(turned))["hem lace"].kind.id == "faced-edge"


def test_lingerie_elastic_is_sewn_on_and_drawn_through_nothing() -> None:
    """A casing would show through lace."""
    place = places(made(SLIP))["top edge"]
    assert (place.kind.id, place.method.id) == ("elastic-edge", "edging-elastic-on")


def test_lace_with_elastane_gives() -> None:
    """It takes a stretch or a ballpoint needle, and no straight seam."""
    assert seen(SLIP).judgement.garment.cloths["lace"].entry == "stretch-lace"
    assert picked(SLIP, "bust dart", "needle.point") in ("stretch", "ballpoint")
    assert picked(SLIP, "top edge", "needle.size") == 75.0
    rigid = SLIP.replace("{nylon: 90, elastane: 10}", "{nylon: 100}")
    assert seen(rigid).judgement.garment.cloths["lace"].entry == "lace"


def test_an_opening_is_left_open() -> None:
    """It is no seam that is joined, pressed and overlocked shut."""
    place = places(made(DUNGAREES))["hip opening"]
    assert (place.kind.id, place.method.id) == ("placket", "opening-in-a-seam")
    assert "join hip opening" not in made(DUNGAREES).order
    assert stands(made(DUNGAREES), "face the edges of hip opening", "join outside leg")
    assert "hip opening as placket" in " ".join(made(DUNGAREES).taken)


@pytest.mark.parametrize(
    ("name", "notion", "kind"),
    [
        ("armhole opening", "", "seam"),
        ("pocket opening", "", "set-in-pocket"),
        ("back opening", ", {notion: snap}", "snap"),
        ("sleeve opening", "", "placket"),
        ("side zip opening", ", {notion: coil zip}", "zip"),
    ],
)
def test_not_every_opening_is_a_slit(name: str, notion: str, kind: str) -> None:
    """What fastens it, or the part that goes through it, says more."""
    found = made(
        DUNGAREES.replace("hip opening, layers: [cord, cord]", f"{name}, layers: [cord{notion}]")
    )
    assert places(found)[name].kind.id == kind


def test_a_pocket_on_a_bib_is_laid_on() -> None:
    """No bag hangs behind it."""
    assert places(made(DUNGAREES))["chest pocket"].method.id == "patch-pocket-stitched-on"


def test_a_hem_that_is_said_to_be_turned_to_its_lining_is_turned() -> None:
    """What the maker wrote goes before what the name means."""
    assert places(made(WAISTCOAT))["hem"].method.id == "faced-edge-turned"
    alone = WAISTCOAT.replace("hem, layers: [tweed, lining]", "hem, layers: [tweed]")
    assert places(made(alone))["hem"].kind.id == "hem"


def test_a_seam_behind_a_lining_that_is_set_to_its_facing_is_plain() -> None:
    """The lining has no seams of its own here; it is joined all round.

    The silk is pinked; the tweed beside it frays past any points, and is overcast flat by hand.
    """
    seams = seen(WAISTCOAT).judgement.garment.seams
    assert all(s.facts["lined"] == "yes" for s in seams if s.name in ("shoulder", "centre back"))
    assert picked(WAISTCOAT, "centre back", "seam.kind") == "plain"
    assert picked(WAISTCOAT, "centre back", "seam.finish") == "pinked"
    assert picked(WAISTCOAT, "shoulder", "seam.finish") == "hand overcast"


def test_no_clip_holds_the_line_of_a_dart() -> None:
    """Its jaws reach an edge and no further."""
    assert "sewing clips" not in left(WAISTCOAT, Place("seam", "front dart"), "pin.kind")
    assert "sewing clips" in left(WAISTCOAT, Place("seam", "front facing"), "pin.kind")


def test_a_slit_pocket_has_no_allowance_and_no_edge() -> None:
    """Its rows lie a welt apart, and it is slashed between them."""
    assert places(made(WAISTCOAT))["welt pocket"].method.id == "welt-pocket"
    assert not {"seam.allowance", "seam.finish"} & asked(WAISTCOAT, "welt pocket")


def test_a_thick_facing_is_replaced_only_where_nobody_sees_it() -> None:
    """A front facing carries the buttonholes, and a strap has none."""
    fired = seen(WAISTCOAT).judgement.gathered.fired
    where = {f.place.name for f in fired if f.rule.id == "facing-as-thick-as-its-edge"}
    assert where == {"armhole facing"}
    assert "narrow bias facing" not in told(DUNGAREES)


def test_nothing_of_a_sheer_is_told_where_a_lining_covers_it() -> None:
    """The silk back of a waistcoat is no sheer that anybody looks through."""
    assert "of a sheer" not in told(WAISTCOAT)
    assert "never towards the sheer" not in told(WAISTCOAT)
    assert "Before any of it is washed" not in told(WAISTCOAT)


def test_a_rib_is_not_pressed_hot() -> None:
    """Its cotton wishes for heat; flattened by an iron it is a rib no longer."""
    assert not told_conflicts(seen(FLEECE), Teller(seen(FLEECE).judgement.garment, known()))
    assert not any("hot" in step and "rib" in step for step in made(FLEECE).order)
    shirt = FLEECE.replace(
        "fabric: rib knit, fibres: {cotton: 95, elastane: 5}",
        "fabric: poplin, fibres: {cotton: 100}",
    )
    assert told_conflicts(seen(shirt), Teller(seen(shirt).judgement.garment, known()))


def test_fleece_is_not_both_topstitched_and_kept_from_it() -> None:
    """Its file says that topstitching holds the seams flat."""
    assert "topstitching" in left(FLEECE, Place("fabric", "fleece"), "design.avoids")


def test_a_zip_lies_on_an_allowance_of_its_own_width() -> None:
    """An overlocked seam beside it takes half of that."""
    assert picked(FLEECE, "front zip", "seam.allowance") == 15.0
    assert picked(FLEECE, "side", "seam.allowance") == 7.0


def test_taffeta_is_sewn_with_thread_of_its_kind() -> None:
    """Soft thread is for the silk one."""
    assert picked(SKIRT, "side", "thread.fibre") in ("polyester", "core-spun polyester")
    silk = SKIRT.replace("polyester: 100", "silk: 100")
    assert picked(silk, "side", "thread.fibre") == "silk"


@pytest.mark.parametrize(
    ("old", "new", "hangs"),
    [
        ("", "", True),
        ("420 cm", "160 cm", False),
        ("shape: curved, ", "", False),
        ("edge: hem", "edge: hem, bias: no", False),
        ("[taffeta, taffeta], length: 68 cm", "[taffeta, {use: taffeta, fullness: 6}]", False),
    ],
)
def test_a_circle_hangs_before_it_is_hemmed(old: str, new: str, hangs: bool) -> None:
    """Most of its edge lies on the bias, and it is said that this was inferred."""
    found = made(SKIRT.replace(old, new))
    assert ("hang" in found.order) == hangs
    assert ("taken for that of a circle" in " ".join(found.taken)) == hangs
    if hangs:
        assert stands(found, "hang", "sew hem")


def test_the_rows_of_a_french_seam_lie_in_its_allowance() -> None:
    """Whatever that is, the first row lies 6 mm outside the line on which the second is sewn."""
    assert picked(BODICE, "chiffon side", "seam.allowance") == 15.0
    assert "6 mm outside the seam line, trim to 3 mm, press, turn, and stitch on the line" in told(
        BODICE
    )


def test_a_concealed_zip_is_bought_longer_than_its_opening() -> None:
    """Its slider stays below the end of the row."""
    bought = {b.name: b for b in notions_to_buy(seen(BODICE).judgement.garment, known())}
    assert bought["concealed zip"].cut[0].each == 480.0


def test_what_is_stitched_on_a_chiffon_alone_takes_its_needle_and_thread() -> None:
    """The seam with the satin takes thicker ones."""
    tasks = made(BODICE).tasks
    rows, seam = (tasks[step].step.machine for step in ("gather waist", "join waist"))
    assert isinstance(rows, MachineState)
    assert isinstance(seam, MachineState)
    assert rows.size <= 65 < seam.size
    assert "tex 24" in rows.thread_above


def test_buttons_are_counted_against_holes_of_like_name() -> None:
    """Buttons of a bib take the strap buckles."""
    found = disagreements(seen(DUNGAREES).judgement, known())
    texts = [d.text for d in found if d.id == "buttons"]
    assert texts == ["there are 4, and no buttons of a like name, only 2 bib buttons"]
    both = DUNGAREES.replace(
        "  - {name: outside",
        "  - {name: hip buttons, layers: [cord, {notion: metal button}], times: 4}\n"
        "  - {name: outside",
    )
    assert not [d for d in disagreements(seen(both).judgement, known()) if d.id == "buttons"]


def test_what_is_hammered_on_calls_for_goggles() -> None:
    """Told in the order and among the cautions alike, and what is sewn on is not hammered."""
    cautions = [
        c for f in seen(DUNGAREES).judgement.gathered.fired for c in f.rule.cautions if f.certain
    ]
    assert any("goggles" in str(c["text"]) and c["kind"] == "eye" for c in cautions)
    assert places(made(DUNGAREES))["bib buttons"].method.id == "button-hammered-on"
    blazer = DUNGAREES.replace("bib buttons", "front buttons")
    assert places(made(blazer))["front buttons"].method.id == "button-sewn-on"


def test_a_boned_bodice_is_offered_a_waist_stay() -> None:
    """Bones keep it smooth and hold nothing up."""
    assert "waist stay of grosgrain ribbon" in told(BODICE)
    assert "waist stay" not in told(SKIRT)
