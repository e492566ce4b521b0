"""What a theatre cutter and a couture dressmaker found impossible, and must not come back.

A boned ball dress with a sheer overlay and a petticoat of its own, a slip gown on the bias with
lace let in, and a laced costume of velvet and brocade. All is common practice of the trade.
"""

from __future__ import annotations

import re

import pytest

from advisor.errors import InputError
from advisor.order.work import Work
from advisor.project.facts import read_maker_fact
from tests.garments.whole import FOLDER, changed, known, ordered, places, stands, work
from tests.typed import typed

BALL, SLIP, HERALD = "more/boathouse_ball", "more/larkspur_slip", "more/midwinter_herald"
QUEEN, QUINCE, BRIDE = "more/chapel_queen", "more/quince_dress", "more/sorrel_wedding"


def _before(found: Work, before: str, after: str) -> list[str]:
    """Why one step stands right before another."""
    return [item.why for item in found.reasons.get(after, ()) if item.before == before]


@pytest.mark.parametrize("garment", [BALL, SLIP, HERALD, QUEEN, QUINCE, BRIDE])
def test_nothing_chases_itself(garment: str) -> None:
    """Every order can be kept."""
    assert work(garment).cycles == ()


def test_the_widths_of_a_petticoat_are_lapped_before_they_are_drawn_up() -> None:
    """Gathers run over the ends of the lapped seams, which no fitting changes: it is not basted."""
    found = work(BALL)
    lapped = ("lap tulle seams", "topstitch tulle seams")
    assert stands(found, *lapped, "gather tulle to yoke", "join tulle to yoke")
    assert "baste tulle seams" not in found.order


def test_widths_of_a_plain_cloth_are_joined_before_they_are_drawn_up() -> None:
    """Not of a sheer alone; and what shapes the bodice is still tried on."""
    found = ordered("""
garment: Sample
fitting: to the body
fabrics: {cloth: cotton poplin, frill: cotton lawn}
seams:
  - {name: bodice seams, layers: [cloth, cloth], length: 34 cm, shape: curved, times: 4}
  - {name: bodice side, layers: [cloth, cloth], length: 20 cm, times: 2}
  - {name: skirt seams, layers: [cloth, cloth], length: 90 cm, seam: French, times: 4}
  - {name: frill seams, layers: [frill, frill], length: 20 cm, times: 3}
  - {name: waist, layers: [cloth, {use: cloth, fullness: 2}], length: 70 cm}
  - {name: hem frill, layers: [cloth, {use: frill, fullness: 2}], length: 300 cm}
""")
    assert stands(found, "press frill seams", "gather hem frill", "join hem frill")
    assert stands(found, "enclose skirt seams", "gather waist", "join waist")
    assert "baste skirt seams" not in found.order
    assert stands(found, "join bodice seams", "fit")


def test_a_petticoat_that_is_put_on_by_itself_ends_in_no_seam_of_the_dress() -> None:
    """Its yoke is not closed for the waist of the dress, which the petticoat never meets."""
    found, at = work(BALL), places(work(BALL))
    assert "petticoat" == at["tulle to yoke"].alone == at["tulle seams"].alone
    assert "" == at["waist"].alone == at["bodice side"].alone
    assert not [
        w
        for step in found.order
        for w in _before(found, "press tulle to yoke", step)
        if "waist" in w
    ]


def test_no_seam_runs_over_one_in_quite_another_cloth() -> None:
    """The sides of a sheer overlay and the panels below it meet first at waist and top edge."""
    found = work(BALL)
    reasons = [item.why for items in found.reasons.values() for item in items]
    assert not [why for why in reasons if why.startswith("Bodice princess") and "chiffon" in why]
    assert [
        why for why in reasons if "bodice princess" in why.lower() and "bone channels" in why
    ] or (stands(found, "press bodice princess", "join bone channels"))


def test_a_piped_seam_of_the_body_comes_before_what_runs_over_its_ends() -> None:
    """However cool its brocade is pressed: shoulder, side, armhole, neck and waist end it."""
    found = work(HERALD)
    piped = (
        "baste piping to piped front seam",
        "baste piped front seam",
        "fit",
        "join piped front seam",
    )
    assert stands(found, *piped)
    for later in ("join shoulder", "join side", "join armhole", "join collar frill", "join waist"):
        assert stands(found, "neaten piped front seam", later)


def test_a_stay_is_no_seam_whatever_strip_it_is_cut_of() -> None:
    """A strip of organza at the neck is laid before anything hangs from that."""
    found = work(SLIP)
    assert "stay-tape" == places(found)["neck stay"].kind.id
    assert "join neck stay" not in found.order
    assert stands(found, "tape neck stay", "baste side", "join neck and armhole edge")


def test_a_godet_ends_at_the_hem_alone() -> None:
    """Nothing at the neck or in the sides waits for it."""
    first = "Godet is sewn first, for "
    why = {i.why for i in work(SLIP).graph.precedences if i.why.startswith(first)}
    assert {"lace at the hem", "veil hem"} == {
        text.removeprefix(first).partition(" is sewn ")[0] for text in why
    }


def test_what_hangs_from_straps_is_turned_over_closed_sides() -> None:
    """There is no shoulder through which it could be turned while they are open."""
    found = work(SLIP)
    edge = "neck and armhole edge"
    assert "top-edge" == places(found)[edge].role.id
    steps = (
        "set side zip",
        "join side",
        f"join {edge}",
        f"turn {edge}",
        "fell the lining to side zip",
    )
    assert stands(found, *steps)
    assert stands(found, "press lining side", f"join {edge}")


def test_a_channel_is_pressed_before_anything_is_drawn_into_it() -> None:
    """The cotton takes its own iron then, and the tulle that it would melt is not joined yet."""
    found = work(BALL)
    folded = found.tasks["fold yoke elastic"].step
    assert folded.iron is not None
    assert "no iron" not in folded.does
    assert stands(found, "fold yoke elastic", "join tulle to yoke", "stitch yoke elastic")


def test_bones_lie_on_the_backing_and_never_through_the_shell() -> None:
    """The channel is sewn when shell and backing are one, so what is off a seam is sewn before."""
    found = work(BALL)
    assert "the shell held clear" in found.tasks["join bone channels"].step.does
    assert "sewn to the backing before" in found.tasks["baste bodice mounting"].step.does
    assert "shell" not in work("more/lamplight_gown").tasks["join boning"].step.does


def test_bones_at_the_back_wait_for_no_sleeve() -> None:
    """Only what a channel lies along or crosses is sewn before: basted in they are fitted."""
    found = work(HERALD)
    assert stands(found, "baste the bones in", "fit", "insert bones in bones at the back")
    assert stands(found, "insert bones in bones at the back", "join armhole")


def test_what_is_mounted_is_stay_stitched_as_one() -> None:
    """Shell and backing were basted together before."""
    step = work(BALL).tasks["stay-stitch bodice princess"].step.does
    assert "satin with mount" in step


def test_several_cloths_are_drawn_up_each_by_itself() -> None:
    """Rows through two of them give both the same fullness; one is named as before."""
    assert "along chiffon and lining, each by itself" in work(BALL).tasks["gather waist"].step.does
    assert "itself" not in work(HERALD).tasks["gather waist"].step.does


def test_strung_sequins_are_sewn_on_by_hand() -> None:
    """No machine is set for what a needle breaks on."""
    found = work(HERALD)
    assert "by hand" in found.tasks["sew on sequin trim on the front"].step.does
    assert found.tasks["sew on sequin trim on the front"].step.machine is None


def test_what_ends_a_sleeve_runs_over_no_seam_of_the_body() -> None:
    """A frill at the wrist waits for no panel of the front."""
    found = work(HERALD)
    reasons = [item for items in found.reasons.values() for item in items]
    sewn = [i for i in reasons if not i.before.startswith("stay-stitch")]
    meet = [i for i in sewn if "front seam" in i.before and "wrist frill" in i.after]
    assert [] == meet
    assert [i for i in reasons if i.why.startswith("Piped front seam is sewn or basted before")]


def test_a_petticoat_stands_alone_though_its_net_is_on_the_sleeves_as_well() -> None:
    """A frill of the same net at the cuff joins no petticoat to a bodice."""
    at = places(work(QUEEN))
    assert "petticoat" == at["petticoat frill"].alone == at["petticoat waistband"].alone
    assert "" == at["sleeve cuff frill"].alone == at["waist"].alone


def test_what_is_laid_on_a_bodice_comes_while_it_lies_flat() -> None:
    """A stomacher is sewn to the front before shoulder and side, and before any bone is in."""
    found = work(QUEEN)
    assert "applied" == places(found)["stomacher"].role.id
    assert stands(found, "stitch on stomacher", "insert bones in bodice bones")
    assert stands(found, "press stomacher", "join shoulder", "join bodice side", "join waist")


def test_eyelets_that_lace_a_back_are_no_way_out_for_a_cord() -> None:
    """A cord in the petticoat, or two dozen of them, is no reason to set them in one layer."""
    found = work(QUEEN)
    assert "grommets-set" == places(found)["back eyelets"].method.id
    assert stands(found, "turn neck edge", "set back eyelets")


def test_a_hoop_is_steel_and_no_elastic() -> None:
    """Its channel is pressed empty, and its ends are joined in a sleeve."""
    found = work(QUEEN)
    steps = [found.tasks[s].step.does for s in found.order if s.endswith("hoop channels")]
    assert 4 == len(steps)
    assert not [step for step in steps if "elastic" in step]
    assert "sleeve" in found.tasks["slide the steel into hoop channels"].step.does


def test_lace_on_a_cloth_or_let_into_it_is_no_seam() -> None:
    """It is laid flat, and cut out behind once it is fitted; at the waist it covers the seam."""
    found = work(QUINCE)
    assert stands(found, "stitch on lace on the bodice", "join bodice side", "fit")
    assert stands(found, "neaten waist", "stitch on lace at the waist", "set side zip")
    slip = work(SLIP)
    assert "lace-inset" == places(slip)["lace inset at the bust"].method.id
    lace = "lace inset at the bust"
    steps = (f"stitch on {lace}", "baste side", "fit", f"cut away behind {lace}")
    assert stands(slip, *steps)
    assert stands(slip, "tape neck stay", "baste side")


def test_a_maker_may_still_seam_her_lace() -> None:
    """What she says of the seam goes before what its name is taken for."""
    old, new = "{name: lace at the waist, ", "{name: lace at the waist, seam: plain, "
    assert "seam" == places(changed(QUINCE, old, new))["lace at the waist"].kind.id


def _sheet(name: str) -> str:
    """The whole sheet, its lines joined."""
    return " ".join(typed("sheet", str(FOLDER / f"{name}.yaml"), "--all").out.split())


def test_what_is_sewn_by_hand_is_set_no_foot_and_no_tension() -> None:
    """Not even where every other seam has one; the sentence of the foot is left out as well."""
    told = typed("sheet", str(FOLDER / f"{HERALD}.yaml")).out
    here = " ".join(
        told.split("  sequin trim on the front (")[1].split("\n  sleeve seam (")[0].split()
    )
    assert re.search("Stitch: (tex [0-9]+, )?by hand", here)
    assert not [word for word in ("tension", "Machine:", "pressure", "foot runs") if word in here]
    assert "Machine: medium pressure" in told


def test_a_sheer_hem_is_told_nothing_of_necks() -> None:
    """What shadows through a neck is told of the cloth, once."""
    told = _sheet(SLIP)
    assert "binding at a neck" not in told
    assert "Start every sheer with a new needle" in told


def test_one_side_is_closed_before_a_bodice_meets_a_skirt_that_is_round() -> None:
    """The other stays open for its concealed zip, and is closed round that afterwards."""
    found = work(QUINCE)
    side = found.tasks["join bodice side"].step.does
    assert "the one where side zip goes stays open" in side
    assert stands(found, "join bodice side", "fit", "join waist", "set side zip")
    assert stands(found, "set side zip", "close the side at side zip", "join armhole binding")
    assert stands(work("more/sundress"), "join bodice side", "join waist", "set side zip")


def test_a_skirt_that_hangs_open_at_the_side_is_joined_flat() -> None:
    """Front to front and back to back: both sides are closed in one run when the zip is in."""
    found = work("more/bias_gown")
    assert stands(found, "join waist", "set side zip", "join skirt side")
    assert "close the side at side zip" not in found.order


def test_a_neck_facing_meets_no_zip_in_the_side() -> None:
    """It is turned while the bodice lies flat; behind a zip in the back it still waits for that."""
    assert stands(work(QUINCE), "turn neck facing", "set side zip")
    behind = changed(QUINCE, "{name: side zip,", "{name: centre back zip,")
    assert stands(behind, "set centre back zip", "join neck facing")


def test_a_layer_that_hangs_free_and_frays_has_to_end_somewhere() -> None:
    """The lining of the skirt has no hem in the file; tulle may stay as it is cut."""
    told = _sheet(BALL)
    assert "lining hangs free in skirt and ends nowhere" in told
    assert "tulle hangs free" not in told
    assert "chiffon hangs free" not in told


def test_bones_go_in_when_the_seams_beside_them_are_sewn() -> None:
    """A stiffened bodice does not lie flat under the foot; of a tried pattern they are tried on.

    A new one is basted, and tried on before a channel holds its allowances.
    """
    boned = "insert bones in bone channels"
    assert stands(work(BALL), "fit", "press bodice side", boned, "close bone channels")
    tried = changed(BALL, "pattern: new", "pattern: tried")
    assert stands(tried, "press bodice side", boned, "fit")


def test_a_top_edge_is_turned_over_the_ends_of_its_zip() -> None:
    """And the seam of a skirt ends in no seam of the bodice, whose part says where it lies."""
    found = work(BALL)
    assert stands(found, "set centre back zip", "join top edge", "turn top edge")
    assert not _before(found, "press bodice princess", "baste centre back")


BIAS = """
garment: Sample
fitting: to the body
fabrics: {satin: {fabric: satin, fibres: {silk: 100}}, velvet: silk velvet}
seams:
  - {name: shoulder, layers: [satin, satin], length: 6 cm, times: 2}
  - {name: side, layers: [satin, satin], length: 110 cm, bias: yes, times: 2}
  - {name: neck binding, layers: [satin, {notion: bias binding}], length: 60 cm, shape: curved}
  - {name: sash, kind: ties, layers: [velvet, velvet], length: 200 cm}
  - {name: hem, layers: [satin], length: 240 cm, edge: hem, bias: yes}
"""


def test_a_bias_side_hangs_basted_before_it_is_sewn() -> None:
    """The cloth drops, its thread does not; on the straight it is sewn for the fitting."""
    assert stands(ordered(BIAS), "baste side", "hang the basted seams", "fit", "join side", "hang")
    straight = ordered(BIAS.replace("bias: yes, times: 2", "times: 2"))
    assert stands(straight, "join side", "fit")
    assert stands(ordered(BIAS.replace("to the body", "not at all")), "join side", "sew hem")


def test_a_sash_is_closed_and_hangs_from_nothing() -> None:
    """No end of it is sewn in at a mark, as those of a strap are."""
    found = ordered(BIAS)
    assert stands(found, "join sash", "turn through sash", "close the gap of sash")
    assert "sew in the ends of sash" not in found.order


def test_bones_are_drawn_out_of_the_way_of_the_iron_while_their_channels_are_open() -> None:
    """No towel covers what lies inside, nor what ends in the seam; what lies beside has one."""
    told = " ".join(typed("order", str(FOLDER / f"{HERALD}.yaml")).out.split())
    assert "draw the flat steel boning back out of the open channels" in told
    assert "brocade: where it ends in the seam go no hotter than 110 °C, and dry" in told
    assert "net: cover it with a dry folded towel" in told
    assert "brocade and flat steel boning: cover" not in told


def test_a_sleeve_seam_ends_in_no_panel_of_the_front() -> None:
    """It is sewn on the sleeve alone."""
    found = work(HERALD)
    assert not _before(found, "neaten piped front seam", "join sleeve seam")
    assert stands(found, "press wrist frill", "join sleeve seam", "join armhole")


@pytest.mark.parametrize(("said", "meant"), [("narrow hem", "hemmer"), ("zipper foot", "zip")])
def test_a_foot_is_known_by_its_other_names(said: str, meant: str) -> None:
    """A kit is written as it is spoken; what no foot is called is still refused."""
    assert meant == read_maker_fact("foot", said, known())
    with pytest.raises(InputError):
        read_maker_fact("foot", "narrow moon", known())


def test_a_seam_of_what_is_mounted_on_organza_is_pressed_open() -> None:
    """Nothing shows through its shell; so nothing is graded, and bones go in when it is sure."""
    found = work(BRIDE)
    assert "grade bodice princess" not in found.order
    bones = ("press bodice princess", "join bones", "insert bones in bones")
    assert stands(found, "fit", *bones)
    assert stands(changed(BRIDE, "pattern: new", "pattern: tried"), *bones, "fit")
    assert stands(found, "stitch on draped chiffon", "insert bones in bones")
    loose = changed(BRIDE, "kind: underlining, layers: [mikado, organza]", "layers: [lace, lace]")
    stayed = "stay-stitch bodice princess"
    assert "mikado with organza" in found.tasks[stayed].step.does
    assert "mikado and organza" in loose.tasks[stayed].step.does


def test_an_overskirt_on_a_band_of_the_gown_s_cloth_comes_off_all_the_same() -> None:
    """Its waistband takes in no lining, and its tulle runs into no seam of the skirt."""
    found = work(BRIDE)
    at = places(found)
    assert "overskirt" == at["tulle seams"].alone == at["overskirt waistband"].alone
    assert not [
        why
        for step in found.order
        for before in ("fell the lining to centre back zip", "press centre back")
        for why in _before(found, before, step)
        if step.endswith("overskirt waistband")
    ]


def test_loops_for_buttons_are_no_buttons() -> None:
    """They are sewn to the edge, and nothing is marked through a buttonhole."""
    found = work(BRIDE)
    assert "button-loops-sewn-on" == places(found)["button loops"].method.id
    assert "buttonholes" not in found.tasks["sew on button loops"].step.does
