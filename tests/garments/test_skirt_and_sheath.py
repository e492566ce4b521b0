"""A circle skirt over a net petticoat, and a lined sheath below a sheer yoke, read at the table."""

from __future__ import annotations

import re

from advisor.order.work import Work
from tests.garments.whole import ordered, read

SKIRT = """
garment: Harvest supper skirt
fitting: to the body
pattern: new
maker: {machine: household, overlocker: 4-thread, feet: [standard, zip, walking]}
fabrics:
  wool: {fabric: wool flannel, fibres: {wool: 100}, weight: 260 g/m2, width: 150 cm}
  plush: {fabric: velvet, fibres: {viscose: 82, silk: 18}, weight: 240 g/m2, width: 112 cm}
  lining: {fabric: lining, fibres: {cupro: 100}, weight: 80 g/m2, width: 140 cm}
  basque: {fabric: cotton sateen, fibres: {cotton: 97, elastane: 3}, weight: 180 g/m2}
  net: {fabric: net, fibres: {nylon: 100}, weight: 40 g/m2, width: 140 cm}
  canvas: {fabric: hair canvas, weight: 190 g/m2, width: 90 cm}
seams:
  - {name: side seam, layers: [wool, wool], length: 48 cm, allowance: 20 mm, times: 2}
  - {name: pocket bag to skirt, layers: [wool, lining], length: 20 cm, times: 4}
  - {name: pocket bag edge, layers: [lining, lining], length: 46 cm, shape: curved, times: 2}
  - {name: side zip, layers: [wool, {notion: coil zip}], length: 20 cm, stress: high}
  - {name: basque seam, layers: [basque, basque], length: 20 cm}
  - {name: basque opening, layers: [basque], length: 20 cm, edge: turned, times: 2}
  - {name: net widths, layers: [net, net], length: 45 cm, times: 3}
  - {name: net tier, layers: [basque, {use: net, fullness: 3}], length: 102 cm}
  - {name: tier binding, layers: [basque, net, lining], length: 102 cm, edge: bound}
  - {name: petticoat to waist, layers: [wool, basque], length: 71 cm, shape: curved}
  - name: waistband
    layers: [plush, canvas, wool, basque]
    length: 71 cm
    shape: curved
    stress: high
    crosses: [side seam, basque seam]
  - {name: waistband top edge, layers: [plush, canvas, lining], length: 75 cm, edge: turned}
  - {name: waistband ends, layers: [plush, canvas, lining], length: 5 cm, edge: turned, times: 2}
  - {name: waistband facing, layers: [plush, lining], length: 71 cm, stitched by: hand}
  - {name: waist hook, on: plush, fastening: hook and bar, number: 2, stress: high}
  - {name: hem, layers: [wool], length: 500 cm, shape: curved, edge: hem, crosses: side seam}
pieces:
  - {name: half circle, fabric: wool, width: 83 cm, height: 166 cm, number: 2}
  - {name: waistband, fabric: plush, width: 80 cm, height: 7 cm}
  - {name: waistband facing, fabric: lining, width: 80 cm, height: 7 cm}
  - {name: pocket bag, fabric: lining, width: 20 cm, height: 30 cm, number: 4}
  - {name: tier binding, fabric: lining, width: 4 cm, height: 106 cm, grain: bias}
  - {name: net tier, fabric: net, finished width: 102 cm, finished height: 45 cm, fullness: 3}
"""
SHEATH = """
garment: Reading room sheath
fitting: to the body
pattern: new
maker: {machine: household, overlocker: no, feet: [standard, zip, concealed zip]}
fabrics:
  silk: {fabric: silk dupion, fibres: {silk: 100}, weight: 130 g/m2, width: 137 cm}
  sheer: {fabric: organza, fibres: {silk: 100}, weight: 28 g/m2, width: 110 cm}
  lining: {fabric: lining, fibres: {acetate: 100}, weight: 75 g/m2, width: 140 cm}
  strip: {fabric: satin, fibres: {silk: 100}, weight: 16 momme, width: 114 cm}
  stay: {fabric: cotton batiste, fibres: {cotton: 100}, weight: 70 g/m2, width: 140 cm}
seams:
  - {name: back waist dart, layers: [silk, silk], length: 32 cm, times: 2}
  - {name: front princess, layers: [silk, silk], length: 96 cm, shape: curved, times: 2}
  - {name: side, layers: [silk, silk], length: 86 cm, allowance: 25 mm, times: 2}
  - name: centre back zip
    layers: [silk, stay, {notion: concealed zip}]
    length: 45 cm
    stress: high
  - {name: centre back seam, layers: [silk, silk], length: 28 cm, allowance: 25 mm}
  - name: back vent
    layers: [silk, stay, silk]
    length: 20 cm
    shape: corner
    edge: folded
    crosses: centre back seam
  - {name: yoke shoulder, layers: [sheer, sheer], length: 11 cm, seam: French, times: 2}
  - name: front yoke seam
    layers: [silk, sheer]
    length: 36 cm
    shape: curved
    crosses: front princess
  - {name: back yoke seam, layers: [silk, sheer], length: 17 cm, shape: curved, times: 2}
  - name: neckline
    layers: [sheer, strip]
    length: 44 cm
    shape: curved
    edge: bound
    crosses: yoke shoulder
  - name: lower armhole
    layers: [silk, lining]
    length: 22 cm
    shape: curved
    edge: turned
    times: 2
    crosses: side
  - {name: lining princess, layers: [lining, lining], length: 90 cm, shape: curved, times: 2}
  - {name: lining side, layers: [lining, lining], length: 80 cm, times: 2}
  - {name: lining centre back, layers: [lining, lining], length: 26 cm}
  - {name: lining to yoke seam, layers: [silk, sheer, lining], length: 70 cm, shape: curved}
  - name: lining to zip
    layers: [lining, {notion: concealed zip}]
    length: 45 cm
    times: 2
    stitched by: hand
  - {name: hem, layers: [silk], length: 100 cm, edge: hem, stitched by: hand, crosses: side}
  - {name: lining hem, layers: [lining], length: 98 cm, edge: hem}
"""


def at(found: Work, step: str) -> int:
    """Where a step stands; the place after the last one where there is none."""
    return found.order.index(step) if step in found.order else len(found.order)


def of(found: Work, place: str) -> list[str]:
    """The steps of a place."""
    return [name for name in found.order if (p := found.tasks[name].place) and p.name == place]


def words(found: Work) -> str:
    """All that the steps say."""
    return " ".join(found.tasks[name].step.does for name in found.order)


def test_plain_net_is_lapped_and_nothing_of_it_is_cut() -> None:
    """It has no motifs to cut round and does not ravel: two rows hold it."""
    found = ordered(SKIRT)
    assert ["lap net widths", "topstitch net widths"] == of(found, "net widths")
    assert "motifs" not in words(found)
    lace = SKIRT.replace("fabric: net, fibres: {nylon: 100}", "fabric: lace, fibres: {cotton: 100}")
    laced = ordered(lace.replace("length: 45 cm, times: 3}", "length: 45 cm, seam: lapped}"))
    assert "round its motifs" in words(laced)


def test_the_open_end_of_a_seam_is_turned_in_and_not_slashed() -> None:
    """Its edge is said to be turned; a slit of the same cloth is cut all the same."""
    found = ordered(SKIRT)
    assert ["turn in basque opening", "stitch down basque opening"] == of(found, "basque opening")
    seam = found.tasks["join basque seam"].step.does
    assert "as far as the mark where basque opening begins" in seam
    slit = ordered(SKIRT.replace("basque opening", "basque slit"))
    assert any("slash" in name for name in of(slit, "basque slit"))


def test_the_outline_of_a_bag_is_no_second_pocket() -> None:
    """It is sewn in one run with the side, when its halves hang on the edges of the skirt."""
    found = ordered(SKIRT)
    assert "join pocket bag edge" not in found.order
    assert at(found, "join pocket bag to skirt") < at(found, "run round pocket bag edge")
    assert at(found, "join side seam") < at(found, "run round pocket bag edge") < len(found.order)


def test_a_band_is_made_once_whatever_edges_of_it_are_told() -> None:
    """Set, faced along its top, closed at its ends, turned, felled; its canvas goes in once."""
    found = ordered(SKIRT)
    sewn = [
        *("join petticoat to waist", "join waistband", "join waistband top edge"),
        *("close waistband ends", "turn waistband ends", "fell waistband facing"),
    ]
    assert sewn == sorted(sewn, key=lambda name: at(found, name))
    assert set(sewn) <= set(found.order)
    assert 1 == sum(name.startswith("interface waistband") for name in found.order)
    assert not [
        name for name in of(found, "waistband") if name.startswith(("face", "close", "turn"))
    ]
    join = found.tasks["join waistband"].step.does
    assert all(cloth in join for cloth in ("plush", "wool", "basque"))


def test_a_cloth_called_lining_lines_only_where_something_says_so() -> None:
    """Of bags, a binding and a facing none is hung in; a seam of its own makes it a lining."""
    assert "the lining in the garment" not in words(ordered(SKIRT)).casefold()
    own = "  - {name: lining side, layers: [lining, lining], length: 60 cm, times: 2}\n"
    lined = SKIRT.replace("  - {name: side zip", f"{own}  - {{name: side zip").replace(
        "  - {name: pocket bag, fabric: lining, width: 20 cm, height: 30 cm, number: 4}\n", ""
    )
    assert "lining in the garment" in words(ordered(lined)).casefold()


def test_no_fold_holds_what_is_wider_than_half_of_the_cloth() -> None:
    """A half circle of 83 cm is cut singly of 150 cm, and on the fold of 180 cm."""
    for width, single in (("150 cm", True), ("180 cm", False)):
        text = SKIRT.replace("260 g/m2, width: 150 cm", f"260 g/m2, width: {width}")
        lay = next(
            v.pick
            for v in read(text).verdicts
            if v.scope == "fabric" and v.place == "wool" and v.aspect == "cut.lay"
        )
        assert single == str(lay).startswith("single")


def test_what_hangs_behind_a_hem_is_lifted_from_its_iron() -> None:
    """A net below a skirt, a lining that ends above the hem: no seam holds both."""
    assert {"net"} == dict(ordered(SKIRT).hung_low)["press hem"]
    sheath = ordered(SHEATH)
    assert {"lining"} == dict(sheath.capped)["press hem"]
    assert sheath.tasks["press hem"].hottest == 110
    cotton = SHEATH.replace("fabric: lining, fibres: {acetate: 100}", "fabric: cotton lawn")
    assert not ordered(cotton.replace("silk dupion, fibres: {silk: 100}", "linen suiting")).hung_low


def test_the_band_is_fastened_before_the_length_is_taken() -> None:
    """A hem is levelled on the wearer."""
    found = ordered(SKIRT)
    fastened = next(k for k, name in enumerate(found.order) if "waist hook" in name)
    assert fastened < at(found, "hang") < at(found, "sew hem")


def test_a_binding_finishes_the_edges_that_it_binds() -> None:
    """It takes the place of overlocking, and is on before the petticoat is hung."""
    found = ordered(SKIRT)
    assert "neaten net tier" not in found.order
    assert at(found, "join net tier") < at(found, "stitch down tier binding")
    assert at(found, "stitch down tier binding") < at(found, "join petticoat to waist")


def test_an_edge_is_stay_stitched_once() -> None:
    """Where a band or a lining is sewn along a seam, its row is that of the seam."""
    assert "stay-stitch waistband" not in ordered(SKIRT).order
    stayed = ordered(SHEATH).tasks["stay-stitch lining to yoke seam"]
    assert ("lining",) == stayed.cloths


def test_all_that_hangs_from_a_band_is_weighed() -> None:
    """The half circles are no skirt by their name, and nothing else carries them."""
    told = [int(mass) for mass in re.findall(r"carries (\d+) g", repr(read(SKIRT)))]
    assert 700 < max(told)


def test_a_backing_has_its_hot_press_before_it_is_basted() -> None:
    """Held to silk all round it cannot be pressed by itself any more."""
    found = ordered(SHEATH)
    assert at(found, "hot press stay") < at(found, "baste stay") < len(found.order)


def test_an_armhole_below_a_sheer_yoke_is_turned_in_the_round() -> None:
    """No shoulder of its cloth lets a half be drawn out: both sides are closed before it."""
    found = ordered(SHEATH)
    assert at(found, "join side") < at(found, "join lower armhole")
    assert at(found, "join lining side") < at(found, "join lower armhole") < len(found.order)
    assert "through its shoulder" not in words(found)


def test_a_seam_is_left_whole_until_its_lining_is_in() -> None:
    """Nothing is trimmed off the yoke seams before the lining is sewn into them."""
    found = ordered(SHEATH)
    cut = ("neaten", "grade", "trim")
    seams = [*of(found, "front yoke seam"), *of(found, "back yoke seam")]
    assert seams
    assert not [name for name in seams if name.startswith(cut)]
    assert "grade lining to yoke seam" in found.order
    unlined = SHEATH.replace("[silk, sheer, lining]", "[silk, lining]")
    assert [name for name in of(ordered(unlined), "front yoke seam") if name.startswith(cut)]


def test_a_lining_that_ends_at_a_yoke_is_caught_at_no_shoulder() -> None:
    """It reaches none."""
    assert "at the shoulders" not in words(ordered(SHEATH))


def test_a_princess_line_is_clipped_after_the_fitting() -> None:
    """A straight seam is not."""
    found = ordered(SHEATH)
    assert at(found, "fit") < at(found, "clip front princess") < len(found.order)
    assert "clip side" not in found.order


def test_a_zip_has_one_support() -> None:
    """The stay among its layers is that; a lining felled to its tape wants none."""
    supports = {v.place for v in read(SHEATH).verdicts if v.aspect == "seam.support"}
    assert not {"centre back zip", "lining to zip"} & supports
    bare = SHEATH.replace(
        "[silk, stay, {notion: concealed zip}]", "[silk, {notion: concealed zip}]"
    )
    other = {v.place for v in read(bare).verdicts if v.aspect == "seam.support"}
    assert "centre back zip" in other


def test_a_dart_at_the_waist_runs_into_no_neckline() -> None:
    """Neither by rule nor by custom."""
    found = ordered(SHEATH)
    edges = {(p.before, p.after) for reasons in found.reasons.values() for p in reasons}
    assert not [pair for pair in edges if "waist dart" in pair[0] and "neckline" in pair[1]]


def test_the_allowances_of_a_sheer_lie_on_the_firm_cloth() -> None:
    """They would be seen through the yoke; of two firm cloths nothing is said."""
    found = ordered(SHEATH)
    assert "both allowances laid onto silk" in found.tasks["press front yoke seam"].step.does
    assert "laid onto" not in found.tasks["press side"].step.does


def test_the_label_is_in_before_the_facing_of_the_band_is_felled() -> None:
    """No needle comes behind the facing once it is closed."""
    found = ordered(SKIRT)
    assert at(found, "label") < at(found, "fell waistband facing") < len(found.order)
