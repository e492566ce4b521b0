"""Pockets, knees and gussets of trousers; tabs, bones and the neck of a bodice; cuffs and sealing.

What a theatre cutter and a teacher found in orders of work. All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache

import pytest

from advisor.order.work import Work
from tests.garments.whole import ordered, places, stands

TROUSERS = """
garment: Lighting hand's trousers
fitting: to the body
fabrics:
  cloth: {fabric: tweed, fibres: {wool: 100}, weight: 380 g/m2}
  knee: {fabric: waxed cotton, fibres: {cotton: 100}, weight: 280 g/m2}
  gusset: {fabric: softshell, fibres: {polyester: 94, elastane: 6}, weight: 300 g/m2}
  half lining: {fabric: satin, fibres: {acetate: 100}, weight: 110 g/m2}
  pocketing: {fabric: ticking, fibres: {cotton: 100}, weight: 220 g/m2}
seams:
  - {name: knee patch, layers: [cloth, knee], length: 90 cm, kind: cloth laid on, times: 2}
  - {name: front half lining, layers: [cloth, half lining], kind: underlining, times: 2}
  - {name: back welt pocket, layers: [cloth, pocketing], length: 14 cm, kind: welt pocket}
  - {name: slant pocket edge, layers: [cloth, pocketing], length: 18 cm, edge: turned, times: 2}
  - {name: pocket bag, layers: [pocketing, pocketing], length: 45 cm, times: 2}
  - {name: fly zip, layers: [cloth, {notion: metal zip}], length: 18 cm}
  - {name: outseam, layers: [cloth, cloth], length: 108 cm, times: 2}
  - {name: inseam, layers: [cloth, cloth], length: 78 cm, times: 2}
  - {name: crotch gusset, layers: [cloth, gusset], length: 44 cm, shape: corner}
  - {name: crotch, layers: [cloth, cloth], length: 62 cm, shape: curved}
  - {name: waistband, layers: [cloth, cloth], length: 84 cm}
  - {name: brace buttons, layers: [cloth, {notion: metal button}], times: 6}
  - {name: hem, layers: [cloth], length: 44 cm, edge: hem, times: 2}
"""
BODICE = """
garment: Ferryman's sister, boned
fitting: to the body
fabrics:
  face: {fabric: velveteen, fibres: {cotton: 100}, weight: 290 g/m2}
  strength: {fabric: coutil, fibres: {cotton: 100}, weight: 300 g/m2}
  stomacher: {fabric: taffeta, fibres: {silk: 100}, weight: 90 g/m2}
  tabs: {fabric: leather, weight: 500 g/m2}
  lining: {fabric: linen, fibres: {linen: 100}, weight: 150 g/m2}
seams:
  - {name: body backing, layers: [face, strength], kind: underlining}
  - {name: bone channels, layers: [strength, lining, {notion: spiral boning}], kind: boning}
  - {name: side back seam, layers: [face, strength, strength, face], length: 32 cm, times: 2}
  - {name: stomacher seam, layers: [face, strength, strength, stomacher], length: 34 cm, times: 2}
  - {name: shoulder strap seam, layers: [face, strength, strength, face], length: 7 cm, times: 2}
  - {name: waist tabs, layers: [face, strength, tabs], length: 72 cm}
  - {name: neck edge, layers: [face, lining], length: 80 cm, shape: curved, edge: turned}
  - {name: lining side, layers: [lining, lining], length: 30 cm, times: 2}
"""
TOP = """
garment: Allotment top
fitting: loosely
fabrics:
  body: {fabric: sweatshirt knit}
  pocket: {fabric: laminated cotton}
seams:
  - {name: shoulder, layers: [body, body], length: 12 cm}
  - {name: patch pocket, layers: [pocket, body], length: 48 cm, shape: corner}
  - {name: side, layers: [body, body], length: 40 cm, times: 2}
  - {name: hem, layers: [body], length: 100 cm, edge: hem}
"""
BLOUSE = """
garment: Choir blouse
fitting: loosely
fabrics: {linen: linen suiting 180 g/m2}
seams:
  - {name: shoulder, layers: [linen, linen], length: 12 cm}
  - {name: side, layers: [linen, linen], length: 50 cm, times: 2}
  - {name: sleeve seam, layers: [linen, linen], length: 45 cm, times: 2}
  - {name: armhole, layers: [linen, linen], length: 50 cm, shape: curved, times: 2}
  - {name: sleeve cuff, layers: [linen, {use: linen, fullness: 1.3}], length: 24 cm, times: 2}
  - {name: hem, layers: [linen], length: 100 cm, edge: hem}
"""


@cache
def order(text: str, old: str = "", new: str = "") -> Work:
    """The order of work of a project, with some words of it changed."""
    assert old in text
    return ordered(text.replace(old, new))


def does(found: Work, step: str) -> str:
    """What a step says."""
    return found.tasks[step].step.does


def test_a_closed_bag_is_pressed_as_its_front_bears() -> None:
    """A cotton bag hangs on wool that is backed with acetate: no cotton heat comes there."""
    bag = order(TROUSERS).tasks["press pocket bag"]
    assert bag.at_most is not None
    assert bag.at_most <= 110
    assert bag.step.iron is not None
    assert bag.step.iron.temperature_c <= 110


def test_a_bag_on_a_plain_front_is_pressed_as_that_wool_bears() -> None:
    """Without the backing the wool of the front sets the limit, and not the cotton of the bag."""
    backing = (
        "  - {name: front half lining, layers: [cloth, half lining], kind: underlining, times: 2}\n"
    )
    bag = order(TROUSERS, backing, "").tasks["press pocket bag"]
    assert bag.at_most == 150


@pytest.mark.parametrize("seam", ["slant pocket edge", "outseam", "inseam"])
def test_no_pressing_is_hotter_than_the_backing_behind_it_bears(seam: str) -> None:
    """Acetate that is basted behind the wool lies under every iron; cotton there bears more."""
    acetate, cotton = order(TROUSERS), order(TROUSERS, "{acetate: 100}", "{cotton: 100}")
    for found, most in ((acetate, 110.0), (cotton, 150.0)):
        named = found.tasks.get(f"press {seam}") or found.tasks[f"turn {seam}"]
        assert named.at_most == most
        assert "half lining" not in dict(found.hot_near).get(named.id, ())


@pytest.mark.parametrize("seam", ["inseam", "crotch"])
def test_a_gusset_is_set_into_open_seams(seam: str) -> None:
    """However tender it is, the seams that end in a gusset are closed over it afterwards."""
    found = order(TROUSERS)
    assert stands(found, "join crotch gusset", "press crotch gusset", f"join {seam}")
    assert "gusset" in dict(found.hot_near)[f"press {seam}"]


def test_a_gusset_by_itself_is_the_crotch() -> None:
    """A body that has no other seam between the legs is closed and fitted there."""
    legs = [
        line for line in TROUSERS.splitlines() if "name: inseam" in line or "name: crotch," in line
    ]
    text = TROUSERS
    for line in legs:
        text = text.replace(line + "\n", "")
    assert "crotch" == places(order(text))["crotch gusset"].role.id
    assert "gusset" == places(order(TROUSERS))["crotch gusset"].role.id


def test_a_knee_patch_meets_no_pocket_and_no_fly() -> None:
    """Only the long seams of the leg run over its edges."""
    found = order(TROUSERS).graph.precedences
    met = {
        p.after.split(maxsplit=1)[-1] for p in found if "knee patch" in p.why and "cross" in p.why
    }
    met |= {
        p.after.split(maxsplit=1)[-1] for p in found if p.why.startswith("Knee patch is finished")
    }
    assert met
    assert met <= {"outseam", "inseam"}


def test_brace_buttons_go_through_the_loops_of_the_braces() -> None:
    """No buttonhole is made for them."""
    text = does(order(TROUSERS), "fasten brace buttons")
    assert "buttonhole" not in text
    assert "in pairs" in text


@pytest.mark.parametrize("seam", ["side back seam", "stomacher seam", "shoulder strap seam"])
def test_a_neck_is_faced_when_the_seams_that_end_in_it_are_joined(seam: str) -> None:
    """What the iron would like does not go before the way of building."""
    found = order(BODICE)
    assert stands(found, f"join {seam}", f"press {seam}", "join neck edge")


def test_tabs_of_a_cloth_of_their_own_are_joined_to_the_waist() -> None:
    """They are no strap, and below them nothing is left to hem."""
    found = order(BODICE)
    assert "seam" == places(found)["waist tabs"].kind.id
    assert stands(found, "join side back seam", "join waist tabs")
    assert not {"hem", "baste on waist tabs", "turn through waist tabs"} & set(found.order)


def test_tabs_made_of_one_cloth_are_still_made_up() -> None:
    """Those that draw a waist in have no cloth that is called after them, or none but it."""
    found = order(BODICE, "layers: [face, strength, tabs]", "layers: [tabs, tabs]")
    assert "ties" == places(found)["waist tabs"].kind.id
    assert "hem" in found.order


def test_the_seam_of_a_strap_joins_it() -> None:
    """It is sewn and pressed flat, not turned as a tube."""
    found = order(BODICE)
    assert ("seam", "shoulder") == (
        places(found)["shoulder strap seam"].kind.id,
        places(found)["shoulder strap seam"].role.id,
    )
    assert "ties" == places(order(BODICE, "shoulder strap seam", "strap"))["strap"].kind.id


def test_channels_stay_open_for_every_hot_pressing_beside_them() -> None:
    """Bones that are tried on are drawn out again before the neck is pressed hot."""
    found = order(BODICE)
    iron = found.tasks["turn neck edge"].step.iron
    assert iron is not None
    assert iron.temperature_c >= 150
    assert stands(found, "turn neck edge", "close bone channels")


def test_a_coated_pocket_on_a_plain_knit_is_not_sealed() -> None:
    """The knit lets the rain through beside it; on a coat of the same cloth it is sealed."""
    assert "seal patch pocket" not in order(TOP).order
    coat = order(TOP, "body: {fabric: sweatshirt knit}", "body: {fabric: laminated cotton}")
    assert "seal patch pocket" in coat.order


def test_a_cuff_without_an_opening_is_a_ring() -> None:
    """A wide gathered one lets the hand through; a narrow one needs an opening, named or not."""
    wide, narrow = order(BLOUSE), order(BLOUSE, "length: 24 cm", "length: 19 cm")
    assert stands(wide, "join sleeve seam", "close to a ring sleeve cuff", "join sleeve cuff")
    assert "close the ends of sleeve cuff" not in wide.order
    assert "close the ends of sleeve cuff" in narrow.order
    slit = "  - {name: sleeve placket, layers: [linen, linen], length: 9 cm, times: 2}\n"
    opened = order(BLOUSE, "  - {name: sleeve cuff", f"{slit}  - {{name: sleeve cuff")
    assert "close the ends of sleeve cuff" in opened.order
