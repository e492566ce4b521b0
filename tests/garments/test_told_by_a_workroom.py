"""What the head of a workroom missed on the sheets, and must find there.

A closing by its own word is bought and sewn on, a hem says how deep it is and how its edge ends, a
child's coat is told of cords and toggles. All is common practice of the trade.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.decide.usedup import used_up
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places
from tests.typed import typed

CLOSED = """
garment: Sample
fabrics: {shell: {fabric: poplin, fibres: {cotton: 100}}}
seams:
  - {name: side, layers: [shell, shell], length: 60 cm}
  - {name: closing, kind: fastening, fastening: WORD, on: shell, number: 4}
"""
HEMMED = """
garment: Sample
fabrics:
  shell: CLOTH
  lining: viscose lining
seams:
  - {name: side, layers: [shell, shell], length: 60 cm}
  - {name: lining side, layers: [lining, lining], length: 55 cm}
  - {name: hem, layers: [LAYERS], length: 120 cm, edge: hem}
"""
CHILD = """
garment: NAME
worn by: child
fabrics: {shell: {fabric: boiled wool, fibres: {wool: 100}}}
seams:
  - {name: shoulder, layers: [shell, shell], length: 9 cm}
  - {name: PLACE, layers: [shell, shell], length: 36 cm}
  - {name: front closing, kind: fastening, fastening: toggle, on: shell, number: 3}
"""


def told(text: str, tmp_path: Path, *more: str) -> str:
    """The sheet of a project that stands here as text, its lines joined."""
    file = tmp_path / "sample.yaml"
    file.write_text(text, encoding="utf-8")
    return " ".join(typed("sheet", str(file), *more).out.split())


def hem(text: str) -> str:
    """The method of the hem of a project."""
    return places(ordered(text))["hem"].method.id


@pytest.mark.parametrize(
    ("word", "thing"),
    [
        ("hook", "hook with its eye or bar"),
        ("toggle", "toggle with its loop"),
        ("button", "button"),
        ("snap", "sew-on snap"),
        ("buckle", "buckle"),
    ],
)
def test_what_closes_by_its_word_alone_is_bought(word: str, thing: str) -> None:
    """A fastening that is no layer is on the list, as many as the project says."""
    text = CLOSED.replace("WORD", word)
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    (need,) = used_up(garment, ordered(text).methods, known())
    assert (need.word, need.number) == (thing, 4)


def test_a_fastening_of_no_number_is_told_as_not_counted() -> None:
    """One hook is no answer to a row of them."""
    text = CLOSED.replace("WORD", "hook").replace(", number: 4", "")
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    (need,) = used_up(garment, ordered(text).methods, known())
    assert need.number is None
    assert "not counted" in need.item


def test_a_fastening_that_is_a_layer_is_bought_once() -> None:
    """The notion in the place is on the list by itself."""
    text = CLOSED.replace("WORD, on: shell", "hook, layers: [shell, {notion: hook and eye}]")
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    assert not used_up(garment, ordered(text).methods, known())


def test_a_closing_is_made_by_the_word_for_it_whatever_its_name() -> None:
    """`fastening: toggle` is sewn on as a toggle, also where the place is called a closing."""
    assert (
        places(ordered(CLOSED.replace("WORD", "toggle")))["closing"].method.id == "toggle-on-a-loop"
    )


def test_buttonholes_without_buttons_get_as_many_as_there_are_holes(tmp_path: Path) -> None:
    """They are bought, told as taken for granted, and sewn on in the order of work."""
    text = CLOSED.replace("WORD", "buttonholes")
    assert "button (none is named: one for each buttonhole" in told(text, tmp_path, "--all") or (
        "Buy: 4" in told(text, tmp_path, "--only", "shopping")
    )
    assert "no buttons are named: taken as one for each of the 4" in told(text, tmp_path)
    order = " ".join(typed("order", str(tmp_path / "sample.yaml")).out.split())
    assert "sew one on through each" in order


def test_buttonholes_with_buttons_in_a_place_of_their_own_buy_none() -> None:
    """Nine buttons are nine, not eighteen."""
    text = CLOSED.replace("WORD", "buttonholes")
    text += "  - {name: buttons, kind: fastening, fastening: button, on: shell, number: 4}\n"
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    needs = used_up(garment, ordered(text).methods, known())
    assert [n.number for n in needs if n.item == "button"] == [4]


def test_a_buttonhole_wants_something_firm_behind_it_until_it_has_it(tmp_path: Path) -> None:
    """An interfacing in the front band of the same cloth is enough."""
    text = CLOSED.replace("WORD", "buttonholes")
    says = "lay a strip of a light one behind each buttonhole"
    assert says in told(text, tmp_path, "--all")
    band = "  - {name: front band, layers: [shell, {notion: sew-in interfacing}], length: 60 cm}\n"
    assert says not in told(text + band, tmp_path, "--all")


@pytest.mark.parametrize(
    ("cloth", "method"),
    [
        ("crepe 180 g/m2", "blind-hem"),
        ("{fabric: crepe, fibres: {wool: 100}}", "catch-stitched-hem"),
        ("viscose challis", "narrow-rolled-hem"),
        ("wool coating", "catch-stitched-hem"),
        ("cotton twill", "plain-hem"),
    ],
)
def test_a_hem_is_made_as_its_cloth_wants_it(cloth: str, method: str) -> None:
    """A dress or skirt of some weight is hemmed blind, a fine cloth rolled.

    Of the hand hems for wool crepe the catch stitch is the one that gives with it: a machine's
    blind stitch pulls a soft, springy face in.
    """
    assert method == hem(HEMMED.replace("CLOTH", cloth).replace("LAYERS", "shell"))


def test_crepe_of_wool_is_wool_crepe() -> None:
    """Whether the fibre stands in the name or under its own key."""
    text = HEMMED.replace("CLOTH", "{fabric: crepe, fibres: {wool: 100}}").replace(
        "LAYERS", "shell"
    )
    assert garment_of(parse_yaml(text, "p.yaml"), known()).cloths["shell"].entry == "wool-crepe"


def test_crepe_with_some_wool_in_it_is_crepe_still() -> None:
    """Only a cloth that is mostly of a fibre is called after it."""
    said = "{fabric: crepe, fibres: {viscose: 60, wool: 40}}"
    text = HEMMED.replace("CLOTH", said).replace("LAYERS", "shell")
    assert garment_of(parse_yaml(text, "p.yaml"), known()).cloths["shell"].entry == "crepe"


@pytest.mark.parametrize(
    ("cloth", "says"),
    [
        ("wool crepe", "4 to 5 cm deep, the cut edge overcast, bound or taped"),
        ("crepe 180 g/m2", "4 to 5 cm deep, the cut edge overlocked, overcast or taped"),
        ("cotton twill", "2 to 3 cm deep, the cut edge turned in 6 to 10 mm first"),
    ],
)
def test_a_sheet_says_how_deep_a_hem_is_and_how_its_edge_ends(
    cloth: str, says: str, tmp_path: Path
) -> None:
    """Otherwise nobody can cut it."""
    assert says in told(HEMMED.replace("CLOTH", cloth).replace("LAYERS", "shell"), tmp_path)


def test_a_curved_hem_is_shallower(tmp_path: Path) -> None:
    """A deep one does not lie on the curve."""
    text = HEMMED.replace("CLOTH", "wool crepe").replace("LAYERS", "shell")
    assert "2 to 3 cm deep" in told(text.replace("edge: hem", "edge: hem, shape: curved"), tmp_path)


def test_a_hem_whose_allowance_is_said_says_no_other_depth(tmp_path: Path) -> None:
    """Her own 3 cm are hers."""
    text = HEMMED.replace("CLOTH", "wool crepe").replace("LAYERS", "shell")
    assert "cm deep" not in told(text.replace("edge: hem", "edge: hem, allowance: 30 mm"), tmp_path)


@pytest.mark.parametrize("cloth", ["boucle 380 g/m2", "boiled wool", "wool crepe"])
def test_a_hem_with_its_lining_is_turned_up_and_the_lining_felled(cloth: str) -> None:
    """The lining is no facing: it is sewn up elsewhere."""
    text = HEMMED.replace("CLOTH", cloth).replace("LAYERS", "shell, lining")
    assert hem(text) == "hem-with-lining-felled"


def test_a_cloth_that_lines_nothing_is_no_lining_of_the_hem() -> None:
    """Without seams of its own it hangs nowhere by itself."""
    text = HEMMED.replace("CLOTH", "velvet").replace("LAYERS", "shell, lining")
    gone = "  - {name: lining side, layers: [lining, lining], length: 55 cm}\n"
    assert hem(text.replace(gone, "")) != "hem-with-lining-felled"


def test_a_faced_hem_is_allowed_no_depth(tmp_path: Path) -> None:
    """The facing is sewn on with a seam's allowance, however deep the coat would be turned."""
    text = HEMMED.replace("CLOTH", "wool coating").replace("LAYERS", "shell")
    sheet = told(text.replace("edge: hem", "edge: hem, method: faced hem"), tmp_path)
    assert "45 mm" not in sheet.partition("hem (")[2].partition("THE WHOLE")[0]


def test_a_childs_coat_is_told_of_cords_and_toggles_and_not_of_nightwear(tmp_path: Path) -> None:
    """Nobody sleeps in a coat; what catches and what comes off is what hurts there."""
    sheet = told(CHILD.replace("NAME", "Winter coat").replace("PLACE", "side"), tmp_path)
    assert "no cord, tie or long loop at hood or neck" in sheet
    assert "small parts choke" in sheet
    assert "Nightwear" not in sheet


def test_what_a_child_may_sleep_in_is_told_of_nightwear(tmp_path: Path) -> None:
    """A pyjama jacket is called a jacket and is none; no telling name says nothing."""
    for name in ("Pyjama jacket", "Sample"):
        sheet = told(CHILD.replace("NAME", name).replace("PLACE", "side"), tmp_path)
        assert "Nightwear" in sheet
        assert "no cord, tie" not in sheet


def test_a_hood_on_a_child_is_told_of_cords_whatever_it_is_on(tmp_path: Path) -> None:
    """A hood catches on a slide also where it is no coat's."""
    sheet = told(CHILD.replace("NAME", "Sample").replace("PLACE", "hood centre"), tmp_path)
    assert "no cord, tie or long loop at hood or neck" in sheet


def test_a_cloth_of_a_named_main_fibre_is_not_called_unknown(tmp_path: Path) -> None:
    """Flannel of wool is wool; what else is in it the seller knows, and nothing is burnt."""
    text = HEMMED.replace("CLOTH", "wool flannel").replace("LAYERS", "shell")
    sheet = told(text, tmp_path)
    assert "mainly wool, perhaps with nylon or polyester" in sheet
    assert "burn test" not in sheet
    assert "Ask the seller what else is in it" in sheet


def test_a_cloth_that_is_said_to_be_unknown_stays_unknown(tmp_path: Path) -> None:
    """What nobody knows its name does not vouch for."""
    said = "{fabric: wool flannel, fibres: unknown}"
    sheet = told(HEMMED.replace("CLOTH", said).replace("LAYERS", "shell"), tmp_path)
    assert "mainly wool" not in sheet
    assert "burn test is for practised adults" in sheet


def test_a_cloth_of_unknown_fibre_is_tried_as_a_square_first_of_all(tmp_path: Path) -> None:
    """Before any of the length is wetted or steamed."""
    said = "{fabric: brocade, fibres: unknown}"
    sheet = told(HEMMED.replace("CLOTH", said).replace("LAYERS", "shell"), tmp_path)
    assert "[ ] shell. First of all measure a square of 10 cm, treat it" in sheet


def test_what_is_prepared_by_nothing_is_told_of_no_wash(tmp_path: Path) -> None:
    """Fringe is sewn on dry; a cotton tape is shrunk as the cloth is."""
    text = HEMMED.replace("CLOTH", "wool gabardine").replace("LAYERS", "shell")
    for notion, said in (("fringe", False), ("stay tape", True)):
        line = f"  - {{name: trim, layers: [shell, {{notion: {notion}}}], length: 80 cm}}\n"
        assert said == ("same wash or steam" in told(text + line, tmp_path, "--all"))


def test_no_light_cloth_is_bound(tmp_path: Path) -> None:
    """A strip round its edges would be the thickest finish of all."""
    text = HEMMED.replace("CLOTH", "viscose challis").replace("LAYERS", "shell")
    assert "edges bound" not in told(text, tmp_path).partition("SEAMS")[2]


def test_a_pocket_edge_is_stitched_straight_where_nothing_pulls(tmp_path: Path) -> None:
    """Boiled wool is zigzagged where a seam has to give, and nowhere else."""
    text = HEMMED.replace("CLOTH", "boiled wool").replace("LAYERS", "shell")
    line = "  - {name: patch pocket, layers: [shell, lining], length: 40 cm, shape: corner}\n"
    sheet = told(text + line, tmp_path)
    assert "zigzag" not in sheet.partition("patch pocket (")[2].partition("THE WHOLE")[0]


def test_a_slanting_pocket_edge_is_taped(tmp_path: Path) -> None:
    """It lies off the grain and gapes."""
    text = HEMMED.replace("CLOTH", "wool gabardine").replace("LAYERS", "shell")
    line = "  - {name: slant pockets, layers: [shell, lining], length: 18 cm, edge: turned}\n"
    assert "taped along its seam line" in told(text + line, tmp_path)


def test_the_needle_on_the_shopping_list_is_the_one_that_is_set(tmp_path: Path) -> None:
    """Not the one whose eye the thread would fill."""
    text = HEMMED.replace("CLOTH", "wool gabardine").replace("LAYERS", "shell")
    shopping = told(text, tmp_path, "--only", "shopping")
    assert "suits needle" not in shopping
    assert "sewn with needle" in shopping


def test_a_spiral_bone_is_told_no_radius(tmp_path: Path) -> None:
    """It bends every way; a flat steel is told that of steel alone."""
    text = HEMMED.replace("CLOTH", "coutil").replace("LAYERS", "shell")
    for bone, said in (("spiral boning", ""), ("flat steel boning", "Steel 0.3 mm")):
        line = f"  - {{name: boning, layers: [shell, {{notion: {bone}}}], length: 30 cm}}\n"
        shopping = told(text + line, tmp_path, "--only", "shopping")
        assert "Plastic" not in shopping
        assert said in shopping
        assert ("bends no tighter" in shopping) == bool(said)


def test_a_gathered_waist_is_told_nothing_of_pleats(tmp_path: Path) -> None:
    """Rows of gathers are not stitched down and pressed."""
    text = HEMMED.replace("CLOTH", "silk taffeta").replace("LAYERS", "shell")
    line = "  - {name: waist seam, layers: [shell, {use: shell, fullness: 1.8}], length: 70 cm}\n"
    assert "laid in pleats" not in told(text + line, tmp_path, "--all")


@pytest.mark.parametrize(
    ("cloth", "hangs"),
    [("viscose challis", True), ("boiled wool", False), ("cotton twill", False)],
)
def test_what_drops_hangs_a_day_and_nothing_else(cloth: str, hangs: bool) -> None:
    """Viscose lets down on the straight grain; a felted knit has been shrunk until it holds."""
    order = ordered(HEMMED.replace("CLOTH", cloth).replace("LAYERS", "shell")).order
    assert hangs == ("hang" in order)


def test_why_tells_by_what_a_method_was_chosen(tmp_path: Path) -> None:
    """The word of the sheet, "made", asks for it."""
    text = HEMMED.replace("CLOTH", "wool crepe").replace("LAYERS", "shell, lining")
    told(text, tmp_path)
    said = " ".join(typed("why", str(tmp_path / "sample.yaml"), "hem", "made").out.split())
    assert "hem, made: hem turned up, its lining felled with ease" in said
    assert "beside its shell it has a lining" in said
