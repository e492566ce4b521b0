"""What a hostile expert read on the screen of `ask` and would not sign, each at its cause."""

from __future__ import annotations

import re
from functools import cache

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import answer
from advisor.project.quick import asked_garment
from advisor.render.screen.ask import ask_text
from tests.laws.engine_garments import known
from tests.typed import typed


@cache
def asked(*cloths: str) -> Answer:
    """The answer to a question."""
    return answer(asked_garment(cloths, known()), known())


def screen(*cloths: str) -> str:
    """The screen of a question, its lines joined again."""
    return re.sub(r"\s+", " ", ask_text(asked(*cloths), 80))


def set_here(text: str) -> str:
    """The settings of a screen, without what had to give way."""
    return (
        text.split("SET FOR")[1]
        .split("Had to give way", maxsplit=1)[0]
        .split("PREPARE", maxsplit=1)[0]
    )


@pytest.mark.parametrize(
    ("cloths", "expected"),
    [
        (("silk satin", "pearl trim"), "Press the silk satin before the pearl trim goes on"),
        (("cheesecloth", "elastic thread"), "Press the cheesecloth before the elastic thread"),
        (("waxed cotton", "tartan wool"), "Press the tartan wool pieces by themselves before"),
        (("real fur", "wool coating"), "Press the wool coating pieces by themselves before"),
        (("mohair knit", "silk chiffon"), "Press the silk chiffon pieces by themselves before"),
        (("shirting", "shell button"), "Press the shirting before the shell button goes on"),
        (
            ("silk noil", "shoulder pads"),
            "before the shoulder pads go on, and keep the hot iron off them; they",
        ),
    ],
)
def test_what_the_seam_keeps_from_the_iron_is_pressed_before(
    cloths: tuple[str, ...], expected: str
) -> None:
    """Parts are pressed by themselves (common practice): finger-pressed alone, satin never lies."""
    assert expected in screen(*cloths)


def test_two_that_take_no_iron_take_none() -> None:
    """Not 'elastic and mesh, which takes no iron, is joined'."""
    mesh = screen("embroidered tulle", "nude power mesh", "clear elastic")
    assert "nude power mesh, which take no iron, are joined" in mesh


def test_cotton_that_gets_two_dots_is_pressed_where_it_is() -> None:
    """150 °C presses a voile, if not at its best: nobody presses it apart for that."""
    assert "by themselves" not in screen("broderie anglaise", "cotton voile")


def test_flannel_and_poplin_are_kept_from_a_snap_in_one_sentence() -> None:
    """They were told one by one."""
    assert "Press the cotton poplin and flannelette before the snap" in screen(
        "flannelette", "cotton poplin", "snap"
    )
    assert "Press the double gauze and flannel before the snap" in screen(
        "flannel", "double gauze", "snap"
    )


def test_who_asks_of_a_notion_is_told_how_it_goes_in() -> None:
    """An elastic shorter than its edge, bones that end inside the seams (common practice)."""
    suit = screen("swimsuit fabric", "swimwear elastic")
    assert "do Cut the elastic 15 to 20 per cent shorter than its edge" in suit
    assert "do boning: bones end 6 mm or more inside the seams" in screen("duchess satin", "boning")


def test_nothing_is_told_of_what_is_not_there() -> None:
    """No loopers without an overlocker, no lining of a suit that has none, no wool in lyocell."""
    suit = screen("swimsuit fabric", "swimwear elastic")
    assert "looper" not in suit
    assert "shell and lining" not in suit
    assert "wool" not in screen("lyocell twill", "modal jersey")


def test_a_word_that_is_left_out_is_named() -> None:
    """'left out' alone tells nobody what."""
    assert "'crofty' not understood, left out" in screen("crofty twill", "modal jersey")


def test_a_thick_towel_is_nobody_s_wish_where_no_iron_comes() -> None:
    """Nor does a cloth give way that is pressed by itself."""
    fur = screen("faux fur", "satin lining")
    assert "iron no iron" in fur
    assert "thick towel" not in fur
    assert "tartan wool wanted" not in screen("waxed cotton", "tartan wool")


def test_nobody_finds_out_a_fibre_for_one_degree() -> None:
    """149 and 150 °C are the same setting."""
    assert "instead of 149 °C" not in screen("lambskin", "wool crepe")


@pytest.mark.parametrize(
    "cloths",
    [
        ("pure wool melton", "fusible interfacing", "acetate lining"),
        ("pure wool melton", "acetate lining", "fusible interfacing"),
        ("fusible interfacing", "acetate lining", "pure wool melton"),
    ],
)
def test_a_glue_beside_a_tender_lining_is_fused_first(cloths: tuple[str, ...]) -> None:
    """A flat piece is fused before anything is joined to it (common practice): no clash."""
    told = asked(*cloths)
    text = screen(*cloths)
    assert told.conflicts == ()
    assert "Fuse the fusible interfacing to the flat pure wool melton before it is joined" in text
    assert "iron one dot, at its low end; never above 110 °C" in text
    assert "interfacing fusible" in text
    assert "10 to 16 s" not in text


def test_a_glue_that_no_layer_bears_stays_a_clash() -> None:
    """Velvet is crushed by the press, and sequins melt: it is fused to neither."""
    told = answer(
        asked_garment(("silk velvet", "fusible interfacing", "sequinned"), known()), known()
    )
    assert told.conflicts


def test_a_sheer_is_basted_to_a_pile() -> None:
    """The line told at the pins is the one that is told to be done (common practice)."""
    assert "pins hand basting" in screen("silk velvet", "chiffon")


@pytest.mark.parametrize("phrase", ["scuba with a neoprene feel", "scuba with neoprene feel"])
def test_what_a_cloth_feels_like_is_no_second_cloth(phrase: str) -> None:
    """A scuba knit, guarded as what it is like too."""
    (cloth,) = asked_garment([phrase], known()).cloths.values()
    assert (cloth.entry, cloth.laid) == ("scuba-knit", ("neoprene",))


def test_pearls_by_themselves_are_a_trim() -> None:
    """Nobody cuts a length of pearls; pearls on a tulle stay on their tulle."""
    entries = [c.entry for c in asked_garment(["pearls", "tulle"], known()).cloths.values()]
    assert entries == ["bead-trim", "tulle"]
    (trim,) = asked_garment(["fake pearls"], known()).cloths.values()
    assert trim.entry == "bead-trim"


@pytest.mark.parametrize("colour", ["gold", "silver", "copper"])
def test_a_metal_s_colour_beside_a_shop_s_own_word_may_be_a_metallic_yarn(colour: str) -> None:
    """Unknown is never safe: the film is spoilt at a heat that cotton bears."""
    cotton = asked(f"{colour} pure cotton poplin")
    named = asked(f"{colour} crofty pure cotton poplin")
    assert (200.0, 110.0) == (cotton.irons[0].limit_c, named.irons[0].limit_c)
    assert "metallic yarn" in screen(f"{colour} crofty pure cotton poplin")


def test_one_place_has_one_longest_press() -> None:
    """'At most 6 s' in the remedy beside 'at most 3 s' at the press: the less is told."""
    text = screen("lambskin", "wool crepe")
    assert "at most 3 s at a time" in text
    assert "(computed" not in text


def test_a_measure_that_is_not_used_is_named() -> None:
    """'assumed: not used' says of nothing that it was not used."""
    text = screen("cotton twill", "elastic waistband 40mm")
    assert "'40mm' is taken for a thickness or a size, not used" in text


@pytest.mark.parametrize("silk", ["pure silk crepe de chine", "pure silk charmeuse"])
def test_silk_beside_wool_starts_no_hotter_than_wool_has_to_have(silk: str) -> None:
    """Silk starts at one dot; 120 °C is what wool cannot do without, 130 °C only an estimate."""
    iron, alone = (asked(*cloths).irons for cloths in ([silk, "pure wool flannel"], [silk]))
    assert (110.0, 120.0) == (alone[0].start_c, next(i for i in iron if i.scope == "seam").start_c)


def test_every_view_names_the_mark_to_start_at() -> None:
    """The order said 'two dots' where the iron view started at one."""
    told = asked("pure silk charmeuse")
    said = next(v.text for v in told.verdicts if v.aspect == "press.temperature")
    assert "start at one dot, 110 °C, at most 150 °C (two dots, low end)" == said
    assert "start at one dot, 110 °C; at most two dots" in told.irons[0].text


@pytest.mark.parametrize(
    "cloths",
    [("minky", "silk brocade"), ("denim", "fleece"), ("silk charmeuse", "cotton jersey")],
)
def test_no_edge_is_overlocked_where_no_overlocker_is_named(cloths: tuple[str, ...]) -> None:
    """The screen says that it assumes none: nothing that needs one is advised."""
    text = screen(*cloths)
    assert "no overlocker" in text
    assert "overlocked" not in set_here(text)


@pytest.mark.parametrize("beside", ["cotton flannel", "coutil", "silk crepe"])
def test_no_lace_is_pinked(beside: str) -> None:
    """The teeth find no yarns to cut short, and nick its motifs."""
    assert "pinked" not in set_here(screen("corded lace", beside))
    assert "pinked" not in set_here(screen("lace", beside))


@pytest.mark.parametrize(
    "cloths", [("pvc", "cotton"), ("leather",), ("corded lace",), ("organdie", "denim")]
)
def test_every_seam_has_an_allowance(cloths: tuple[str, ...]) -> None:
    """Who cuts out has to know how much to leave beyond the seam line."""
    assert re.search(r"\d mm allowance", screen(*cloths))


@pytest.mark.parametrize(
    ("cloth", "hoped"), [("red wool gabardine", False), ("bamboo jersey", False), ("jersey", True)]
)
def test_a_cloth_is_not_hoped_to_be_without_its_named_fibre(cloth: str, hoped: bool) -> None:
    """200 °C is for cotton, and a wool gabardine is none."""
    assert hoped is ("200 °C" in screen(cloth))


def test_a_fusible_goes_to_the_shell_and_not_to_its_lining() -> None:
    """The tweed between them takes none; linen is what is to be stiffened."""
    text = screen("linen", "wool tweed", "fusible interfacing", "cupro lining")
    assert "Fuse the fusible interfacing to the flat linen before" in text


FOUR_LAYERS = [
    ("wool coating", "hair canvas", "silk organza", "viscose lining"),
    ("silk velvet", "chiffon", "acetate lining", "boning"),
    ("lace", "satin", "tulle", "power mesh"),
    ("brocade", "organza", "silk lining", "covered buttons"),
    ("foam", "scuba", "lace", "elastic"),
    ("waxed cotton", "wool tartan", "sheepskin", "metal zip"),
]


@pytest.mark.parametrize("cloths", FOUR_LAYERS, ids=" + ".join)
def test_four_layers_are_answered_on_about_one_screen(cloths: tuple[str, ...]) -> None:
    """Cloths in a few lines each in place of a table; no clash and nothing to do first is lost."""
    told = asked(*cloths)
    text = ask_text(told, 80)
    assert text.count("\n") <= 42 + 8 * len(told.conflicts)
    flat = re.sub(r"\s+", " ", text)
    first = [c.message for c in told.conflicts] + [item.text for item in told.instructions]
    assert all(re.sub(r"\s+", " ", one) in flat for one in first)
    assert [] == [
        c.text for c in told.cautions if c.kind == "eye" and not c.general and c.text not in flat
    ]


def test_no_needle_is_chosen_for_hooks_that_it_never_meets() -> None:
    """The needle goes through the tape: as fine as chiffon wants it, and nothing to strike."""
    text = screen("chiffon", "hook and eye tape")
    assert re.search(r"needle (60|65|70) ", text)
    assert "the seam wanted needle" not in text


@pytest.mark.parametrize(
    "cloths", [("beaded tulle", "satin", "power net"), ("sequin fabric", "velvet")]
)
def test_beads_are_cleared_from_the_seam_before_anything_else_is_done(
    cloths: tuple[str, ...],
) -> None:
    """What flies at the eyes was told, and not how to keep the needle from it."""
    assert "do Clear a finger's breadth on both sides of the seam line" in screen(*cloths)


def test_a_glue_that_is_to_be_left_out_is_not_tried() -> None:
    """'Leave it out' above and 'try it on a scrap' below cannot both be done."""
    text = screen("georgette", "fusible web")
    assert "Leave the fusible web out" in text
    assert "fusible web: try it" not in text


def test_a_lapped_seam_has_no_allowances_to_lay_to_one_side() -> None:
    """They lie over one another there; a plain seam's are laid towards the thick cloth."""
    pairs = (("denim 12oz", "lace"), ("organza", "wool melton"))
    lapped, plain = (asked(*cloths) for cloths in pairs)
    assert "lapped seam" in screen("denim 12oz", "lace")
    laid = "Lay both allowances towards the thick cloth, never towards the sheer."
    assert [False, True] == [laid in [t.text for t in one.advice] for one in (lapped, plain)]


def test_a_wish_that_gave_way_says_what_it_was_about() -> None:
    """'Brocade wanted at most 2.5 mm' may be a stitch, an allowance or a stack."""
    assert "silk brocade wanted stitch at most 2.5 mm" in screen("minky", "silk brocade")
    assert "satin wanted needle sharp" in screen("satin", "power net")


@pytest.mark.parametrize("velvet", ["rayon velvet", "silk velvet"])
def test_a_glue_that_is_ruled_out_heats_nothing(velvet: str) -> None:
    """It is to be left out: the velvet is pressed no hotter and no wetter than by itself."""
    alone, beside = (asked(*cloths) for cloths in ([velvet], [velvet, "iron on interfacing"]))
    pressed = [next(i for i in one.irons if i.scope == "seam") for one in (alone, beside)]
    assert pressed[0].start_c >= pressed[1].start_c
    moist = [
        next(v.text for v in one.verdicts if v.aspect == "press.moisture" and v.scope == "seam")
        for one in (alone, beside)
    ]
    assert moist[0] == moist[1] == "dry"
    assert [c.aspect for c in beside.conflicts] == ["interfacing.kind"]


def test_wool_is_pressed_as_wool_over_its_own_canvas() -> None:
    """A tailor presses both at once; only a tenderer shell keeps the iron lower."""
    starts = [
        next(i.start_c for i in asked(*cloths).irons if i.scope == "seam")
        for cloths in (["pure wool coating", "hair canvas"], ["pure silk dupion", "hair canvas"])
    ]
    assert [130.0, 110.0] == starts


def test_no_skin_is_perforated_by_a_stitch_that_gives() -> None:
    """A leather gives no more for it, and tears along a row of close holes."""
    assert "stitch straight lockstitch (301), 3 mm" in screen(
        "neoprene", "leather trim", "chunky zip"
    )


@pytest.mark.parametrize("view", ["ask", "iron"])
def test_the_seconds_of_a_glue_are_for_fusing(view: str) -> None:
    """'At most 8 s' bonds no fusible that wants ten."""
    told = " ".join(typed(view, "viscose crepe", "fusible knit interfacing").out.split())
    assert "10 to 16 s to fuse the flat piece; once it is fused at most 8 s" in told


def test_a_glue_that_nobody_can_be_pressed_damp_for_is_a_clash() -> None:
    """Boucle may be acrylic and habotai takes no damp cloth: there is nothing to fuse it to."""
    cloths = ("boucle", "fusible weft interfacing", "silk habotai")
    told = asked(*cloths)
    assert ["press.temperature"] == [c.aspect for c in told.conflicts]
    assert "fusible weft interfacing needs at least 130 °C" in told.conflicts[0].message


def test_of_five_finishes_that_are_not_wanted_the_one_that_is_set_is_told() -> None:
    """'Not Hong Kong, not hand overcast, not ...' is no wish that anybody reads."""
    text = screen("minky", "cotton flannel")
    assert "cotton flannel wanted edges not trimmed and double-stitched." in text
