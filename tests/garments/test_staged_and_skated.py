"""What a theatre cutter and a maker of skating dresses would not have let pass.

A bias evening dress with godets, a skating dress of velvet and mesh, a hooded cloak, a dress of
ponte. All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from advisor.claims.collect import Place
from advisor.claims.judgement import Advice
from advisor.construction.agreement import disagreements
from advisor.construction.bulk import picked
from advisor.decide.advise import advise
from advisor.decide.kit import kit_of
from advisor.order.work import order_of
from advisor.project.load import garment_of
from advisor.project.placing import singular_words
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, advice, changed, known, places, stands, told, work
from tests.typed import typed


@cache
def _advice(cloths: str, *places: str, head: str = "") -> Advice:
    """The advice on a garment of some cloths, `name: {…}` each, and places as a file has them."""
    lines = "\n".join(f"  - {{{place}}}" for place in places)
    text = f"garment: Sample\n{head}\nfabrics: {{{cloths}}}\nseams:\n{lines}\n"
    return advise(garment_of(parse_yaml(text, "project.yaml"), known()), known())


def _picked(found: Advice, place: str, aspect: str) -> str:
    return picked(found.judgement.verdicts[Place("seam", place)], aspect)


SIDES = ("armhole", "side", "brief crotch")


@pytest.mark.parametrize("place", SIDES)
@pytest.mark.parametrize(
    "cloth", ["sports mesh", "sweater knit", "waffle knit", "stretch velvet", "cotton jersey"]
)
def test_a_stretch_cloth_is_stayed_where_it_hangs_and_not_round_a_limb(
    cloth: str, place: str
) -> None:
    """However hard an armhole, a side or a crotch is pulled, it has to give; a shoulder has not."""
    found = _advice(
        f"a: {{fabric: {cloth}}}", f"name: {place}, layers: [a, a], length: 40 cm, stress: high"
    )
    assert _picked(found, place, "seam.support") in ("none", "")


@pytest.mark.parametrize("cloth", ["sweater knit", "waffle knit", "stretch velvet"])
def test_the_shoulder_of_a_stretch_cloth_is_stayed(cloth: str) -> None:
    """The whole garment hangs from it."""
    found = _advice(
        f"a: {{fabric: {cloth}}}", "name: shoulder, layers: [a, a], length: 12 cm, stress: high"
    )
    assert _picked(found, "shoulder", "seam.support") in ("stay tape", "clear elastic")


def test_no_tape_lies_in_an_armhole_of_ponte_and_mesh() -> None:
    """Nor where the open mesh asks for a strip to hold its stitches."""
    for mesh in ("sports mesh", "power mesh", "fishnet"):
        found = _advice(
            f"a: {{fabric: ponte}}, b: {{fabric: {mesh}}}",
            "name: armhole, layers: [a, b], length: 44 cm, stress: high",
        )
        assert _picked(found, "armhole", "seam.support") not in ("stay tape", "self-fabric strip")


def test_a_stretch_mesh_on_velvet_is_not_overcast_by_hand() -> None:
    """Each edge overcast by itself holds no seam that has to stretch; a woven sheer's is."""
    cloths = "velvet: {fabric: stretch velvet}, mesh: {fabric: power mesh}"
    found = _advice(cloths, "name: yoke seam, layers: [velvet, mesh], length: 46 cm, shape: curved")
    assert _picked(found, "yoke seam", "seam.finish") != "hand overcast"


CLOAK = (
    "shell: {fabric: wool coating}, lining: {fabric: satin, fibres: {acetate: 100}}",
    "name: side, layers: [shell, shell], length: 125 cm, times: 2",
    "name: hood to neck, layers: [shell, shell], length: 52 cm, shape: curved",
    "name: front facing, layers: [shell, shell], length: 125 cm, edge: turned",
    "name: lining seams, layers: [lining, lining], length: 120 cm, times: 3",
    "name: lining to facing, layers: [shell, lining], length: 300 cm",
    "name: clasp, kind: fastening, fastening: clasp, on: shell, number: 1",
    "name: hem, layers: [shell], length: 420 cm, edge: hem, shape: curved",
    "name: lining hem, layers: [lining], length: 410 cm, edge: hem, shape: curved",
)


def test_a_clasp_is_sewn_on_by_hand_and_is_no_hook() -> None:
    """What holds a whole cloak is sewn through a reinforcement, and bought as a clasp."""
    found = order_of(_advice(*CLOAK), known())
    clasp = places(found)["clasp"]
    assert (clasp.kind.id, clasp.method.id) == ("clasp", "clasp-sewn-on")
    does = found.tasks["fasten clasp"].step.does
    assert "strong doubled thread" in does
    assert "hook" not in does
    assert stands(found, "press lining hem", "fasten clasp")


def test_a_lining_that_is_set_to_its_facing_is_no_facing() -> None:
    """It is made up by itself and closes the garment; nothing of it is turned, or left free."""
    found = order_of(_advice(*CLOAK), known())
    assert places(found)["lining to facing"].kind.id == "lining-seam"
    assert "set lining to facing" in found.tasks
    assert not [step for step in found.tasks if step.startswith("neaten the edge of")]


def test_a_lining_that_swings_is_held_to_the_hem_by_thread_chains() -> None:
    """The lining of a cloak or a skirt blows out below; that of trousers is held by its legs."""
    found = order_of(_advice(*CLOAK), known())
    assert stands(found, "press hem", "press lining hem", "chain lining hem")
    legs = (CLOAK[0], "name: crotch, layers: [shell, shell], length: 60 cm", *CLOAK[1:])
    assert "chain lining hem" not in order_of(_advice(*legs), known()).tasks
    assert "chain inner slip hem" not in work(GOWN).tasks  # a rolled edge on the bias hangs free


def test_a_flared_hem_hangs_before_it_is_levelled() -> None:
    """Whoever says that it is curved, and how long, need not say that its edge lies on the bias."""
    found = order_of(_advice(*CLOAK), known())
    assert stands(found, "set lining to facing", "hang", "sew hem")
    narrow = (*CLOAK[:-2], "name: hem, layers: [shell], length: 130 cm, edge: hem, shape: curved")
    assert "hang" not in order_of(_advice(*narrow), known()).tasks


def test_the_hem_of_a_flare_is_not_turned_as_deep_as_that_of_a_coat() -> None:
    """Its raw edge is longer than the line that it comes to lie on."""
    found = _advice(*CLOAK)
    verdict = found.judgement.verdicts[Place("seam", "hem")]["seam.allowance"]
    assert verdict.pick == 25


SKATING, GOWN = "more/frostfair_skating", "more/nightjar_gown"


def test_a_skirt_that_hangs_from_a_bodice_is_joined_to_a_ring() -> None:
    """A circle cannot be sewn to the flat pieces: the sides of the bodice are closed first."""
    found = work(SKATING)
    assert places(found)["circle skirt"].role.id == "waist"
    assert stands(found, "join bodice side", "join circle skirt", "hang", "cut skirt hem")


def test_an_edge_that_the_sheet_leaves_raw_is_cut_and_not_turned_up() -> None:
    """A soft mesh curls a little, and its cut edge shows least all the same."""
    assert places(work(SKATING))["skirt hem"].method.id == "hem-left-raw"


def test_the_hem_of_an_upper_edge_is_levelled_on_no_hanger() -> None:
    """A cowl, a neck, a hood: it ends nothing that hangs, and is sewn while it lies flat."""
    found = work(GOWN)
    assert not places(found)["cowl edge"].role.last
    assert stands(found, "press cowl edge", "hang", "sew hem")


def test_a_binding_is_not_left_pinned_while_the_garment_is_tried_on() -> None:
    """It is wrapped round its edge when it is stitched down."""
    found = work(GOWN)
    assert "wrap neck binding" not in found.tasks
    assert stands(found, "fit", "stitch down neck binding")


def test_an_inner_skirt_or_slip_is_the_lining() -> None:
    """Its hem is levelled by that of the dress, and it is said that it hangs nowhere yet."""
    found = work(GOWN)
    assert places(found)["inner slip hem"].method.id == "lining-hem"
    said = [one.id for one in disagreements(advice(GOWN).judgement, known())]
    assert "loose lining" in said


def test_inner_alone_lines_nothing() -> None:
    """The inner leg and the inner sleeve are seams of the shell."""
    for name in ("inner leg seam", "inner sleeve seam", "inner pocket"):
        assert "lining" not in singular_words(name)
    assert singular_words("Inner skirts' side") == ("lining", "skirt", "side")


UNDERLINED = "Where the sheer covers a bodice, underline it"
SHEER = "sheer: {fabric: silk chiffon}, satin: {fabric: acetate satin, weight: 100 g/m2}"


@pytest.mark.parametrize(
    ("place", "covers"),
    [("bodice side", True), ("sleeve seam", False), ("overlay side", False), ("frill", False)],
)
def test_a_sheer_is_underlined_only_where_it_covers_the_body(place: str, covers: bool) -> None:
    """A sleeve of it, a frill or an overlay hangs free."""
    found = _advice(
        SHEER,
        f"name: {place}, layers: [sheer, sheer], length: 40 cm",
        "name: side, layers: [satin, satin], length: 40 cm",
    )
    said = [text for fired in found.judgement.gathered.fired for text in map(str, fired.rule.do)]
    assert any(UNDERLINED in text for text in said) == covers


@pytest.mark.parametrize("name", ["bias_gown", "evening_dress", "ferryhouse_wrap", "quince_dress"])
def test_a_lining_of_thin_silk_or_a_lace_on_the_bodice_is_no_sheer_body(name: str) -> None:
    """Sheer sleeves, a thin lining or lace sewn on: no bodice of these is a sheer to underline."""
    found = told(FOLDER / "more" / f"{name}.yaml")
    assert not [task for task in found.advice if UNDERLINED in task.text]


def test_the_opening_of_a_zip_on_the_bias_is_stayed_before_it_hangs() -> None:
    """The tape gives nothing and the bias drops: a strip on the straight grain holds both edges."""
    found = work(GOWN)
    step = found.tasks["stay the opening of side zip"].step
    assert "25 mm" in step.does
    assert stands(found, step.id, "hang the basted seams", "set side zip")
    firm = _advice(
        "a: {fabric: wool gabardine}",
        "name: side, layers: [a, a], length: 40 cm, times: 2",
        "name: side zip, layers: [a, {notion: concealed zip}], length: 30 cm",
    )
    assert "stay the opening of side zip" not in order_of(firm, known()).tasks


def test_a_godet_is_sewn_from_its_point_and_never_in_a_seam_that_is_turned() -> None:
    """Two rows that meet in a point leave nothing to turn."""
    found = work(GOWN)
    assert places(found)["godets"].method.id == "godet-let-in"
    assert _picked(advice(GOWN), "godets", "seam.kind") not in ("French", "felled", "self-bound")
    assert "from the point down" in found.tasks["join godets"].step.does


def _printed(command: str, cloths: str, *places: str, folder: Path) -> str:
    """What a command prints of such a garment, its lines put together."""
    lines = "\n".join(f"  - {{{place}}}" for place in places)
    path = folder / "sample.yaml"
    path.write_text(f"garment: Sample\nfabrics: {{{cloths}}}\nseams:\n{lines}\n", encoding="utf-8")
    return " ".join(typed(command, str(path)).out.split())


def test_an_elastic_is_kept_beside_the_iron_in_every_view(tmp_path: Path) -> None:
    """Order, sheet and label iron the cotton and go round its elastic; none forbids the iron."""
    skirt = (
        "shell: {fabric: poplin, fibres: {cotton: 100}}",
        "name: side, layers: [shell, shell], length: 60 cm, times: 2",
        "name: waist elastic, layers: [shell, {notion: woven elastic}], length: 70 cm",
        "name: hem, layers: [shell], length: 120 cm, edge: hem",
    )
    order, sheet, label = (
        _printed(command, *skirt, folder=tmp_path) for command in ("order", "sheet", "label")
    )
    assert "go round the woven elastic with the iron" in order
    assert "iron at 200 °C, not over the woven elastic" in sheet
    assert "Iron at most 200 °C, not over the woven elastic" in label
    assert "do not iron" not in f"{sheet} {label}".casefold()


def test_a_cloth_that_takes_no_iron_is_not_ironed_for_its_elastic(tmp_path: Path) -> None:
    """Where the mesh itself forbids it, the elastic changes nothing."""
    mesh = (
        "shell: {fabric: power mesh, fibres: {nylon: 80, elastane: 20}}",
        "name: side, layers: [shell, shell], length: 30 cm",
        "name: leg elastic, layers: [shell, {notion: swimwear elastic}], length: 50 cm",
    )
    label = _printed("label", *mesh, folder=tmp_path)
    assert "Do not iron" in label
    assert "not over" not in label


def test_elastic_across_the_back_is_fastened_at_both_ends_and_lapped_to_no_ring() -> None:
    """The side seams take in its ends, so they are sewn after it."""
    cloths = "shell: {fabric: poplin, fibres: {cotton: 100}}"
    side = "name: side, layers: [shell, shell], length: 60 cm, times: 2"
    elastic = "layers: [shell, {notion: woven elastic}], length: 30 cm"
    found = order_of(_advice(cloths, side, f"name: back elastic, {elastic}"), known())
    assert "stitch the other end likewise" in found.tasks["draw through back elastic"].step.does
    assert stands(found, "draw through back elastic", "join side")
    ring = order_of(_advice(cloths, side, f"name: waist elastic, {elastic}"), known())
    assert "lap its ends" in ring.tasks["draw through waist elastic"].step.does
    assert stands(ring, "join side", "draw through waist elastic")


def test_the_zigzag_of_an_applique_covers_the_edge_like_satin_stitch() -> None:
    """A seam's 2.5 mm would leave the cut edge bare; a lace let in has motifs instead."""
    cloths = "shell: {fabric: denim}, patch: {fabric: poplin}, lace: {fabric: lace}"
    found = _advice(
        cloths,
        "name: badge, layers: [shell, patch], length: 40 cm",
        "name: turned badge, layers: [shell, patch], length: 40 cm, edge: turned",
        "name: lace inset, layers: [patch, lace], length: 40 cm",
    )
    length = {
        place: found.judgement.verdicts[Place("seam", place)]["stitch.length"].pick
        for place in ("badge", "turned badge", "lace inset")
    }
    assert length["badge"] == 0.4
    assert min(length["turned badge"] or 0, length["lace inset"] or 0) > 1


def test_a_bag_of_lining_hangs_in_the_shell_and_is_closed_after_its_pocket() -> None:
    """It is no part of the lining, whatever it is cut of."""
    found = order_of(
        _advice(
            "shell: {fabric: denim}, bag: {fabric: lining}",
            "name: bound pocket, layers: [shell, shell, bag], length: 14 cm, times: 2",
            "name: bound pocket bag, layers: [bag, bag], length: 60 cm, times: 2",
            "name: side, layers: [shell, shell], length: 60 cm, times: 2",
        ),
        known(),
    )
    assert places(found)["bound pocket bag"].unit == "shell"
    assert stands(found, "turn bound pocket", "close bound pocket bag")


def test_no_needle_is_set_and_called_wrong_in_one_breath() -> None:
    """One plain thing to do where the cloths and the stack want different needles."""
    sheet = " ".join(typed("sheet", str(FOLDER / "more/bandmaster_skirt.yaml")).out.split())
    assert "turn the hand wheel, with glasses on" in sheet
    assert "is too thin for this stack" not in sheet


@pytest.mark.parametrize(("hem", "agrees"), [("125 cm", True), ("100 cm", False)])
def test_the_hem_of_a_flounce_is_held_against_its_ring(hem: str, agrees: bool) -> None:
    """A ring with 50 cm at its seam and 12 cm deep has 50 + 2 pi 12 = 125.4 cm at its hem."""
    text = f"""
garment: Sample
fabrics: {{shell: {{fabric: poplin}}, frill: {{fabric: lawn, width: 140 cm}}}}
seams:
  - {{name: hem flounce, layers: [shell, frill], length: 50 cm}}
  - {{name: flounce hem, layers: [frill], length: {hem}, edge: hem, shape: curved}}
pieces:
  - {{name: flounce, fabric: frill, flounce: {{seam: 50 cm, depth: 12 cm}}}}
"""
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    found = disagreements(advise(garment, known()).judgement, known())
    rings = [d.figures[1].value for d in found if d.id == "ring"]
    assert rings == ([] if agrees else [pytest.approx(1254, abs=1)])


DANCE = "more/harbour_dance"


def test_a_cuff_of_feathers_is_no_band() -> None:
    """Nothing of it is folded or felled: it is caught down by hand, after the last press."""
    found = work(DANCE)
    assert places(found)["feather cuffs"].method.id == "feathers-by-hand"
    assert not [step for step in found.tasks if "ends of feather cuffs" in step]


def test_a_skirt_is_joined_at_the_hip_when_both_are_closed() -> None:
    """Its panels and godets are whole, and the bodice is a ring, before one is set to the other."""
    found = work(DANCE)
    assert stands(found, "join bodice side", "join hip seam")
    assert stands(found, "press skirt panels", "neaten skirt godets", "join hip seam", "hang")


def test_cups_are_caught_into_a_bodice_that_can_be_put_on() -> None:
    """With its sides open there is no bodice to pin them in."""
    assert stands(work(DANCE), "fit", "join bodice side", "catch in bra cups")


def test_a_last_press_by_parts_names_the_trims_that_take_no_iron() -> None:
    """Cups lie under it and are spared; feathers come on when it is done."""
    (parted,) = [i for i in advice(DANCE).judgement.instructions if i.kind == "by parts"]
    assert parted.tender == {"bra cup", "brief", "powernet"}


SMOCK = "more/towline_smock"


def test_a_half_zip_makes_no_close_garment_and_lies_in_a_slit() -> None:
    """A smock is slipped over the head; no seam runs down its front to be basted shut."""
    found = work(SMOCK)
    assert places(found)["half zip"].method.id == "zip-in-a-slit"
    assert "baste shut half zip" not in found.tasks
    assert stands(found, "stay the opening of half zip", "slash half zip", "set half zip")
    assert [text for text in found.taken if text.startswith("Taken as fitted loosely")]


def test_an_inner_hood_is_the_lining_of_the_hood() -> None:
    """It is turned to the hood at the face and taken in at the neck."""
    found = places(work(SMOCK))
    assert found["inner hood centre"].unit == "lining"
    assert found["hood opening"].unit == "both"


def test_all_that_is_basted_for_the_fitting_may_still_be_changed() -> None:
    """A shoulder that waits for the overlocker is as open as a side; a hood's lining is no body."""
    does = work(SMOCK).tasks["fit"].step.does
    assert does == "Try on and correct: shoulder, armhole, side and sleeve may still be changed."


CATSUIT = "more/aerial_catsuit"


def test_a_suit_with_a_zip_behind_can_be_sewn_in_some_order() -> None:
    """The zip runs over the waist and into the crotch, so the waist waits for no closed crotch."""
    found = work(CATSUIT)
    assert not found.cycles
    assert stands(found, "join waist petals", "set centre back zip", "join crotch")


def test_a_straight_frill_is_hemmed_before_it_is_drawn_up() -> None:
    """It lies long and flat then; the ring of a flounce hangs out first instead."""
    assert stands(work(CATSUIT), "press petal edges", "gather waist petals")
    old, new = "length: 300 cm, edge: hem}", "length: 300 cm, edge: hem, shape: curved}"
    assert stands(changed(CATSUIT, old, new), "gather waist petals", "sew petal edges")


def test_a_sleeve_is_made_up_before_it_is_closed_and_set_in() -> None:
    """Panes and puff of a doublet are the sleeve itself: none is added to one that hangs."""
    found = work("more/player_doublet")
    assert stands(found, "turn sleeve panes", "join armhole")
    assert stands(found, "join sleeve puff", "neaten sleeve puff", "join sleeve seam")
    assert stands(found, "join sleeve seam", "join armhole")


def test_a_stay_among_the_layers_of_a_seam_is_the_one_that_is_told_and_bought() -> None:
    """Clear elastic in the waist: no tape is advised, laid or bought beside it."""
    name = "more/tollhouse_dress"
    assert _picked(advice(name), "waist", "seam.support") == "clear elastic"
    needs = kit_of(advice(name).judgement, known())
    stays = {place for n in needs if n.aspect == "seam.support" for place in n.places}
    assert "shoulder" in stays
    assert not {"waist", "skirt lining to waist"} & stays


def test_the_lining_of_a_knitted_skirt_hangs_free() -> None:
    """Both give and swing alike; a chain would only pull at them."""
    assert "chain skirt lining hem" not in work("more/tollhouse_dress").tasks


ASSEMBLY = "more/assembly_gown"


def test_a_band_of_a_sleeve_is_a_band() -> None:
    """It takes in the gathered edge and is closed over it; no French seam hangs at the arm."""
    assert places(work(ASSEMBLY))["sleeve band"].kind.id == "cuff"


def test_a_sheer_that_is_mounted_is_not_told_to_be_mounted() -> None:
    """The place that bastes it to its backing is there already."""
    fired = advice(ASSEMBLY).judgement.gathered.fired
    assert "seams-of-the-lining-seen" not in {one.rule.id for one in fired}


DOMINO = "more/lockgate_domino"


def test_weights_are_caught_into_a_hem_that_is_pressed_already() -> None:
    """They are no second hem: nothing is levelled and turned up for them."""
    found = work(DOMINO)
    assert places(found)["hem weights"].method.id == "weights-in-the-hem"
    assert stands(found, "press hem", "catch in hem weights")


def test_a_lining_that_is_set_to_its_facing_is_not_taped() -> None:
    """A stretch lining gives with its wearer; where a knit edge meets a woven collar it is held."""
    found = advice(DOMINO)
    assert _picked(found, "lining to facing", "seam.support") in ("none", "")


def test_elastic_in_the_back_of_a_band_is_stitched_across_there() -> None:
    """The band is on and its sides are closed; only a piece by itself is drawn in before them."""
    found = work("more/bib_dungarees")
    assert places(found)["back elastic"].method.id == "elastic-in-the-back-of-a-band"
    assert stands(found, "press outside leg", "draw through back elastic")


def test_a_woven_neck_band_is_not_stretched_on() -> None:
    """Sateen gives nothing: the band takes the neck in as a stand does. A rib is stretched."""
    found = places(work("more/pier_clown"))
    assert found["neck band"].kind.id == "collar"
    assert places(work("more/cardigan"))["neck band"].kind.id == "neckband"
