"""A trimming called after where it lies, a lining that is felled, and the side on which a zip lies.

All of it is common practice. The dress and the overall are of our own invention.
"""

from __future__ import annotations

import pytest

from advisor.order.work import Work
from tests.garments.whole import ordered, places, read, stands

DRESS = """garment: Ferry dress
fitting: to the body
fabrics:
  shell: {fabric: crepe, fibres: {viscose: 100}}
  sheer: {fabric: georgette, fibres: {polyester: 100}}
  lining: {fabric: lining, fibres: {acetate: 100}}
  white: {fabric: pique, fibres: {cotton: 100}}
parts:
  bodice: {layers: [lining, shell], separate: lining}
  skirt: {layers: [lining, shell], separate: lining}
seams:
  - {name: shoulder, layers: [shell, shell], length: 11 cm, times: 2, part: bodice}
  - {name: collar edge, layers: [white, {notion: woven fusible interfacing}, white],
     length: 50 cm, edge: turned}
  - {name: collar seam, layers: [shell, white, white, lining], length: 40 cm, shape: curved,
     part: bodice}
  - {name: RIGHT bodice side, layers: [shell, shell], length: 21 cm, part: bodice}
  - {name: RIGHT skirt side, layers: [shell, shell], length: 60 cm, part: skirt}
  - {name: LEFT skirt side below the zip, layers: [shell, shell], length: 45 cm, part: skirt}
  - {name: waist, layers: [shell, {use: shell, fullness: 1.6}], length: 70 cm,
     gathers: {method: hand rows}, crosses: [RIGHT bodice side, RIGHT skirt side]}
  - {name: side zip, layers: [shell, {notion: concealed zip}], length: 34 cm, crosses: waist}
  - {name: sleeve underarm, layers: [sheer, sheer], length: 40 cm, times: 2}
  - {name: cuff, layers: [shell, {notion: woven fusible interfacing}, shell, {use: sheer,
     fullness: 1.5}], length: 20 cm, times: 2, gathers: {method: hand rows}}
  - {name: armhole, layers: [shell, {use: sheer, fullness: 1.2}], length: 44 cm, shape: curved,
     times: 2, part: bodice}
  - {name: lining side, layers: [lining, lining], length: 20 cm, part: bodice}
  - {name: lining waist, layers: [lining, {use: lining, fullness: 1.2}], length: 70 cm}
  - {name: lining felled at the armhole, layers: [shell, sheer, lining], length: 44 cm, times: 2,
     part: bodice}
  - {name: lining felled to the zip, layers: [lining, {notion: concealed zip}], length: 68 cm}
  - {name: lining hem, layers: [lining], length: 110 cm, edge: hem, part: skirt}
  - {name: hem, layers: [shell], length: 130 cm, edge: hem, part: skirt}
pieces:
  - {name: skirt, fabric: shell, width: 60 cm, height: 70 cm, number: 2}
  - {name: skirt lining, fabric: lining, width: 58 cm, height: HIGH cm, number: 2}
"""

OVERALL = """garment: Sandpit overall
worn by: child
fitting: loosely
fabrics:
  cord: {fabric: needlecord, fibres: {cotton: 100}}
  lining: {fabric: lawn, fibres: {cotton: 100}}
  crest: {notion: ric-rac, fibres: {polyester: 100}}
parts:
  bodice: {layers: [lining, cord]}
  skirt: {layers: [cord]}
seams:
  - {name: bodice side, layers: [cord, cord], length: 10 cm, times: 2, part: bodice}
  - {name: lining side, layers: [lining, lining], length: 10 cm, times: 2, part: bodice}
  - {name: straps, kind: strap or ties, layers: [cord, lining], length: 40 cm, times: 2,
     part: bodice}
  - {name: top edge, layers: [cord, lining], length: 76 cm, shape: curved, edge: turned,
     part: bodice}
  - {name: strap buttonholes, layers: [cord, lining], number: 4, part: bodice}
  - {name: bib buttons, layers: [cord, lining, {notion: plastic button}], number: 2, part: bodice}
  - {name: pocket hem, layers: [cord], length: 13 cm, edge: hem, times: 2}
  - {name: pocket TRIM, layers: [cord, {use: crest}], length: 13 cm, times: 2}
  - {name: patch pocket, layers: [cord, cord], length: 42 cm, times: 2, part: skirt}
  - {name: skirt side, layers: [cord, cord], length: 38 cm, times: 2, part: skirt}
  - {name: hem TRIM, layers: [cord, {use: crest}], length: 91 cm, part: skirt}
  - {name: waist, layers: [cord, {use: cord, fullness: 1.4}], length: 58 cm,
     gathers: {method: hand rows}}
  - {name: lining felled at the waist, layers: [cord, lining], length: 58 cm, part: bodice}
  - {name: hem, layers: [cord], length: 91 cm, edge: hem, part: skirt}
pieces:
  - {name: skirt front, fabric: cord, width: 45 cm, height: 44 cm}
"""


def dress(right: str = "right", left: str = "left", high: int = 66) -> Work:
    text = DRESS.replace("RIGHT", right).replace("LEFT", left)
    return ordered(text.replace("HIGH", str(high)))


def overall(trim: str = "ric-rac") -> Work:
    return ordered(OVERALL.replace("TRIM", trim))


@pytest.mark.parametrize(("right", "left"), [("right", "left"), ("left", "right")])
def test_the_seam_below_a_zip_says_on_which_side_it_lies(right: str, left: str) -> None:
    """The other side has no zip: it is closed before the waist that runs over it."""
    found = dress(right, left)
    sides = (f"join {right} bodice side", f"join {right} skirt side")
    below = f"join {left} skirt side below the zip"
    assert all(stands(found, side, "join waist", "set side zip", below) for side in sides)


def test_a_side_that_a_part_has_no_seam_for_is_that_of_the_zip() -> None:
    """Nobody has to write what is below it."""
    text = DRESS.replace("LEFT skirt side below the zip", "left skirt side").replace(
        "RIGHT", "right"
    )
    found = ordered(text.replace("HIGH", "66"))
    assert stands(found, "join right bodice side", "join waist", "set side zip")


def test_a_lining_felled_to_a_zip_is_no_second_zip() -> None:
    """It is sewn by hand to the tape that is there."""
    found = dress()
    assert "lining-felled-to-a-zip" == places(found)["lining felled to the zip"].method.id
    text = DRESS.replace("RIGHT", "right").replace("LEFT", "left").replace("HIGH", "66")
    assert [1] == [row.number for row in read(text).kit or () if row.item == "concealed zip"]


def test_a_lining_felled_at_an_armhole_is_felled_over_its_seam() -> None:
    """Also where its layers name both cloths of that seam."""
    found = dress()
    place = places(found)["lining felled at the armhole"]
    assert "lining-felled-over-a-seam" == place.method.id
    assert "join lining felled at the armhole" not in found.order


@pytest.mark.parametrize(("high", "role"), [(66, "hem"), (45, "part-lining-hem")])
def test_a_lining_much_shorter_than_its_shell_is_a_half_lining(high: int, role: str) -> None:
    """No chain reaches from hem to hem."""
    found = dress(high=high)
    assert role == places(found)["lining hem"].role.id
    assert (role == "hem") == ("chain lining hem" in found.order)


def test_no_glue_is_fused_to_the_sheer_that_a_cuff_takes_in() -> None:
    """The firm cloth takes it, dry where drops would mark that."""
    text = DRESS.replace("RIGHT", "right").replace("LEFT", "left").replace("HIGH", "66")
    said = [i.text for i in read(text).instructions or () if i.text.startswith("Fuse")]
    assert any("to the flat shell" in one and ", dry, " in one for one in said)
    assert not any("sheer" in one for one in said)


def test_a_cloth_is_pressed_hot_before_it_is_fused_where_all_of_it_is() -> None:
    """Afterwards no hot press is left for it."""
    assert stands(dress(), "hot press white", "fuse collar edge")


@pytest.mark.parametrize("trim", ["ric-rac", "rickrack", "crest"])
def test_what_is_called_after_a_pocket_or_a_hem_is_still_a_trimming(trim: str) -> None:
    """It has no bags, and is sewn on while its piece lies flat."""
    found = overall(trim)
    for where in ("pocket", "hem"):
        assert "wavy-braid-stitched-on" == places(found)[f"{where} {trim}"].method.id
    assert stands(found, f"stitch on pocket {trim}", "stitch on patch pocket")
    assert stands(found, f"stitch on hem {trim}", "join skirt side", "sew hem")
    assert "down its middle" in found.tasks[f"stitch on hem {trim}"].step.does


TRIMS = ("ric-rac", "braid", "lace edging", "satin ribbon", "velvet ribbon", "grosgrain ribbon")
WHERE = ("pocket", "hem", "collar", "cuff", "neck", "sleeve", "yoke", "flap", "waist", "armhole")


@pytest.mark.parametrize("trim", TRIMS)
@pytest.mark.parametrize("where", WHERE)
def test_every_trimming_at_every_place_is_laid_on(trim: str, where: str) -> None:
    """Whatever the word of the place means by itself."""
    text = OVERALL.replace("ric-rac, fibres: {polyester: 100}", trim).replace("hem TRIM", "TRIM")
    text = text.replace("name: TRIM,", f"name: {where} {trim},").replace("TRIM", "crest")
    assert "ribbon" == places(ordered(text))[f"{where} {trim}"].kind.id


def test_a_pocket_is_hemmed_once_and_by_itself() -> None:
    """It hangs on no form to be levelled, and no lining ends there."""
    found = overall()
    assert stands(found, "sew pocket hem", "press under the edges of patch pocket")
    assert not {"fell the lining at pocket hem", "fell the lining at hem"} & {*found.order}


def test_buttons_of_a_bib_go_through_the_holes_of_its_straps() -> None:
    """Two holes for each button let the straps grow with the child."""
    found = overall()
    assert stands(found, "make strap buttonholes", "fasten bib buttons")
    told = read(OVERALL.replace("TRIM", "ric-rac"))
    assert not [c for c in told.checks or () if "buttons" in c.id]


def test_a_turned_edge_of_pile_is_steamed_beside_a_cotton_lining() -> None:
    """Nothing there would be kept drier, so the iron is used."""
    found = overall()
    assert "fingers" not in found.tasks["press top edge"].step.does
    assert found.tasks["press top edge"].step.iron is not None


@pytest.mark.parametrize(
    ("old", "new"),
    [("length: 40 cm, shape: curved", "length: 62 cm, shape: curved"), ("side zip", "back zip")],
)
def test_a_closed_neck_through_which_no_head_passes_is_asked_about(old: str, new: str) -> None:
    """A side zip lets no head through; a wider neck, or one that opens behind, does."""
    text = DRESS.replace("RIGHT", "right").replace("LEFT", "left").replace("HIGH", "66")
    told = {gap.id for gap in read(text).missing or ()}
    assert "no-way-for-the-head" in told
    assert "no-way-for-the-head" not in {
        gap.id for gap in read(text.replace(old, new)).missing or ()
    }
