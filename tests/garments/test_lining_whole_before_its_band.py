"""A lining is made up whole before a band takes it in, and where it covers all no iron comes last.

A dressing gown with a ready-quilted lining, as a maker of one-off garments writes it. All is
common practice of the trade.
"""

from __future__ import annotations

from tests.garments.whole import ordered, places, stands

GOWN = """
garment: Lockkeeper's gown
maker: {machine: household, foot lift: 6 mm, overlocker: no, feet: [standard, walking]}
fabrics:
  face: {fabric: brocade, fibres: unknown, width: 90 cm}
  band: {fabric: crepe-back satin, fibres: {polyester: 100}, weight: 160 g/m2, width: 145 cm}
  wadded: {fabric: quilted cloth, fibres: {cotton: 60, polyester: 40}, weight: 220 g/m2}
seams:
  - {name: shoulder, layers: [face, face], length: 15 cm, times: 2}
  - {name: patch pocket, layers: [face, face], length: 56 cm, shape: corner, stress: high, times: 2}
  - {name: belt loop, layers: [face, {notion: satin ribbon}], length: 2 cm, stress: high, times: 2}
  - {name: armhole, layers: [face, face], length: 52 cm, stress: high, times: 2, crosses: shoulder}
  - {name: side, layers: [face, face], length: 88 cm, times: 2, crosses: armhole}
  - {name: sleeve seam, layers: [face, face], length: 38 cm, times: 2, crosses: armhole}
  - {name: lining shoulder, layers: [wadded, wadded], length: 15 cm, times: 2}
  - {name: lining armhole, layers: [wadded, wadded], length: 52 cm, times: 2}
  - {name: lining side, layers: [wadded, wadded], length: 86 cm, times: 2, crosses: lining armhole}
  - {name: lining sleeve seam, layers: [wadded, wadded], length: 38 cm, times: 2}
  - {name: shawl band, layers: [face, wadded, {notion: sew-in interfacing}, band], length: 270 cm,
     shape: curved, stress: high, crosses: [shoulder]}
  - {name: hem, layers: [face], length: 150 cm, edge: hem, crosses: side}
  - {name: lining hem, layers: [wadded, face], length: 148 cm}
"""
OWN = ("lining shoulder", "lining armhole", "lining side", "lining sleeve seam")


def test_the_lining_is_whole_before_the_band() -> None:
    """Each of its seams is joined and pressed before the band, and both hems are."""
    work = ordered(GOWN)
    for seam in OWN:
        assert stands(work, f"join {seam}", f"press {seam}", "join shawl band")
    assert stands(work, "press hem", "join shawl band")
    assert stands(work, "press lining hem", "join shawl band")


def test_it_is_tried_on_in_its_shell() -> None:
    """No band is basted with a lining in it that nobody has sewn yet."""
    work = ordered(GOWN)
    assert "baste shawl band" not in work.order
    assert "shawl band" not in work.tasks["fit"].step.does


def test_shell_and_lining_set_their_sleeves_alike() -> None:
    """A side that runs over its armhole says that the sleeve is set in flat, and closed after."""
    work = ordered(GOWN)
    assert stands(work, "join armhole", "join sleeve seam")
    assert stands(work, "join lining armhole", "join lining sleeve seam")
    said = GOWN.replace(
        "layers: [wadded, wadded], length: 86 cm, times: 2, crosses: lining armhole",
        "layers: [wadded, wadded], length: 86 cm, times: 2",
    )
    assert "lining armhole" not in (places(ordered(said))["lining sleeve seam"].crosses or ())


def test_no_iron_comes_last_where_the_lining_lies_behind_all() -> None:
    """There is no part of it where no lining lies under the iron: it hangs."""
    last = ordered(GOWN).tasks["last press"]
    assert last.step.iron is None
    assert last.step.does.startswith("Hang the whole garment up")
    assert "part by part" not in last.step.does


def test_the_label_is_in_before_the_band_closes_the_lining() -> None:
    """It is sewn to the lining alone."""
    work = ordered(GOWN)
    assert stands(
        work, work.order[0], next(n for n in work.order if "label" in n), "join shawl band"
    )


def test_what_is_laid_on_a_cloth_that_keeps_holes_waits_for_the_fitting() -> None:
    """Pocket and loop are taped on there; the pocket is sewn flat, with the side still open."""
    work = ordered(GOWN)
    assert "tape patch pocket and belt loop on" in work.tasks["fit"].step.does
    assert stands(work, "baste side", "fit", "stitch on patch pocket", "join side")
    assert stands(work, "fit", "bar on belt loop")
    assert "firm cloth behind it" in work.tasks["stitch on patch pocket"].step.does
    tried = ordered(GOWN.replace("fabrics:", "pattern: tried\nfabrics:"))
    assert stands(tried, "stitch on patch pocket", "join side", "fit")


def test_a_pocket_on_a_cloth_that_keeps_no_hole_is_sewn_flat_at_once() -> None:
    """As before: it can be moved."""
    work = ordered(
        GOWN.replace(
            "face: {fabric: brocade, fibres: unknown",
            "face: {fabric: flannel, fibres: {cotton: 100}",
        )
    )
    assert stands(work, "stitch on patch pocket", "join side", "fit")


def test_a_loop_of_ribbon_is_cut_and_not_folded() -> None:
    """Ribbon has edges of its own."""
    work = ordered(GOWN)
    assert places(work)["belt loop"].method.id == "belt-loops-of-ribbon"
    assert not any("fold" in name and "loop" in name for name in work.order)


SKIRT = """
garment: Ferry ticket skirt
fabrics:
  outer: {fabric: wool flannel, width: 150 cm}
  lining: {fabric: cupro lining, width: 140 cm}
  zip: {fabric: nylon concealed zip}
parts:
  skirt: {layers: [outer], fitting: to the body}
  lining: {layers: [lining]}
seams:
  - {name: side seam, layers: [outer, outer], length: 62 cm}
  - {name: centre back seam, layers: [outer, outer], length: 62 cm}
  - {name: zip, layers: [outer, zip], length: 20 cm}
  - {name: lining side seam, layers: [lining, lining], length: 60 cm}
  - {name: waistband, layers: [outer, outer], length: 74 cm}
  - {name: hem, layers: [outer], length: 96 cm}
  - {name: lining hem, layers: [lining], length: 94 cm}
"""


def test_a_lining_is_closed_before_it_hangs_though_no_band_names_it() -> None:
    """A part called lining is put on with its skirt, and its sides are sewn before that hangs."""
    work = ordered(SKIRT)
    assert stands(work, "join lining side seam", "hang the lining at waistband")
    named = ordered(
        SKIRT.replace(
            "{name: waistband, layers: [outer,", "{name: waistband, layers: [lining, outer,"
        )
    )
    assert stands(named, "join lining side seam", "hang the lining at waistband")
