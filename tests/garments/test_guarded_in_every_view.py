"""What marks with water, crushes or melts is guarded in a question, a garment and all its views."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.decide.evaluate import judge
from advisor.project.quick import SEAM, quick_garment
from tests.garments.whole import FOLDER, known, read
from tests.typed import Done, typed

Layer = str | dict[str, str]
FUSIBLE: Layer = {"notion": "woven fusible interfacing"}
TOWPATH = FOLDER / "more" / "towpath_coat.yaml"


def seam(*layers: Layer) -> dict[str, Verdict]:
    """What is decided where some layers meet."""
    return judge(quick_garment(list(layers), known()), known()).verdicts[Place("seam", SEAM)]


def word(verdict: Verdict) -> str:
    assert verdict.pick is not None
    return verdict.aspect.words[int(verdict.pick)]


def ask(*cloths: str) -> str:
    return " ".join(typed("ask", *cloths).out.split())


def made(folder: Path, cloths: str, *places: str) -> Path:
    """A project with some cloths and places."""
    file = folder / "made.yaml"
    rows = "".join(f"  - {{{place}}}\n" for place in places)
    file.write_text(f"garment: Ferry smock\nfabrics:\n  {cloths}\nseams:\n{rows}", "utf-8")
    return file


def check(file: Path, *words: str) -> Done:
    return typed("check", str(file), *words)


@pytest.mark.parametrize(
    ("marked", "damp"),
    [
        ("pure acetate lining", "linen"),
        ("pure silk organza", "pure cotton poplin"),
        ("cupro lining", "pure linen suiting"),
        ("pure silk velvet", "pure wool coating"),
    ],
)
def test_no_look_of_a_neighbour_brings_damp_to_what_water_marks(marked: str, damp: str) -> None:
    """The cloth that wants the damp cloth gets it before, by itself."""
    assert word(seam(marked, damp)["press.moisture"]) == "dry"
    assert f"Press the {damp} pieces by themselves" in ask(marked, damp) or "lining" in marked


def test_what_no_drop_marks_and_what_a_glue_needs_stays_damp() -> None:
    """A lining of polyester is pressed with its linen, and glue takes no better for a viscose."""
    assert (
        word(seam("pure linen suiting", "pure polyester lining")["press.moisture"]) == "damp cloth"
    )
    assert word(seam("pure viscose lining", FUSIBLE)["press.moisture"]) == "damp cloth"


def test_a_lining_that_water_marks_is_pressed_dry_in_the_garment_as_well(tmp_path: Path) -> None:
    """Edge and last press alike: the question and the sheet say the same."""
    file = made(
        tmp_path,
        "front: linen suiting 240 g/m2\n  lining: {fabric: lining, fibres: {acetate: 100}}",
        "name: side, layers: [front, front], length: 24 cm",
        "name: front edge, layers: [front, lining], length: 60 cm, edge: turned",
    )
    told = json.loads(typed("sheet", str(file), "--json").out)["verdicts"]
    moist = {v["place"]: v["pick"] for v in told if v["aspect"] == "press.moisture"}
    assert moist["front edge"] == moist["Ferry smock"] == "dry"


@pytest.mark.parametrize("flat", ["cotton poplin", "wool crepe"])
def test_no_iron_rests_on_a_pile_of_polyester(flat: str) -> None:
    """Neither for a cotton nor for a wool that is pressed by itself before it."""
    assert "iron no iron: finger-press" in (text := ask("polyester velvet", flat))
    assert f"Press the {flat} pieces by themselves before polyester velvet" in text
    assert "polyester velvet wanted iron" not in text


def test_a_corduroy_with_a_little_polyester_is_pressed_and_fused() -> None:
    """Its pile is of cotton."""
    both = judge(quick_garment(["corduroy", FUSIBLE], known()), known())
    assert not both.conflicts
    assert "lift and lower" in ask("cotton corduroy")


def test_a_pile_starts_no_cooler_than_it_and_the_wool_before_it_need() -> None:
    """Both want 120 °C and more, so nobody starts them at one dot."""
    heat = seam("viscose velvet", "pure wool crepe")["press.temperature"]
    assert heat.pick == 120.0


@pytest.mark.parametrize("view", ["sheet", "iron", "order", "check"])
def test_every_view_says_how_hot_where_a_lining_ends_in_the_side(view: str) -> None:
    """The sheet too, at the place that is pressed hot."""
    text = " ".join(typed(view, str(TOWPATH)).out.split())
    assert "where it ends in the seam go no hotter than 110 °C, and dry" in text


def test_the_towpath_coat_is_pressed_as_its_lining_and_its_collar_bear() -> None:
    """Edges and the last press dry at one dot; a turned edge of velvet is opened with fingers."""
    told = json.loads(typed("sheet", str(TOWPATH), "--json").out)["verdicts"]
    at = {(v["place"], v["aspect"]): v["pick"] for v in told}
    for place in ("front edge", "armhole", "Towpath coat"):
        assert (place, at[place, "press.moisture"]) == (place, "dry")
        assert (place, at[place, "press.temperature"]) == (place, 110.0)
    assert at["collar edge", "press.motion"] == "finger-press"
    assert (at["collar edge", "press.moisture"], at["collar edge", "press.temperature"]) == (
        "dry",
        20,
    )


def test_an_iron_goes_round_a_button_on_the_label_as_on_the_board(tmp_path: Path) -> None:
    """A cord lock forbids no ironing, and a button of plastic does not cool the whole shirt."""
    body = "body: pure cotton poplin 120 g/m2"
    cord = "cord: {notion: drawcord, fibres: {polyester: 100}}"
    side = "name: side, layers: [body, body], length: 60 cm"
    hole = "kind: fastening, fastening: buttonholes, layers: [body, {notion: plastic button}]"
    channel = "kind: casing, layers: [body, cord, {notion: cord lock}], length: 120 cm"
    shirt = made(tmp_path, body, side, f"name: front, number: 7, {hole}")
    assert "Iron at most 200 °C, not over the plastic button" in typed("label", str(shirt)).out
    smock = made(tmp_path, f"{body}\n  {cord}", side, f"name: hem channel, {channel}")
    assert "Iron at most 150 °C, not over the cord lock" in typed("label", str(smock)).out


def test_nobody_is_told_to_have_given_way_to_himself() -> None:
    """Two words of polyester are one voice; what a share of elastane wishes is told."""
    told = json.loads(typed("ask", "wool suiting", "polyester lining", "--json").out)["verdicts"]
    heat = next(v for v in told if (v["aspect"], v["scope"]) == ("press.temperature", "seam"))
    lost = {(claim["who"], claim["says"]) for claim in heat["given_up"]}
    assert ("polyester lining", "at most 110 °C") not in lost
    assert ("wool suiting (may be elastane)", "at most 110 °C") in lost


@pytest.mark.parametrize(
    ("take", "bought"),
    [("1", "elastic of 75 % polyester, 25 % elastane"), ("1.2", "velvet ribbon of 100 % nylon")],
)
def test_a_notion_of_another_fibre_lets_the_garment_be_cleaned(
    take: str, bought: str, tmp_path: Path
) -> None:
    """Rubber bears no solvent and velvet no wash: either is bought of a fibre that does."""
    file = made(
        tmp_path,
        "skirt: cotton poplin 120 g/m2",
        "name: waist, kind: casing, layers: [skirt, {notion: elastic}], length: 72 cm",
        "name: band, kind: laid on, layers: [skirt, {notion: velvet ribbon}], length: 180 cm",
    )
    assert check(file).returncode == 1
    taken = check(file, "--take", take)
    assert taken.returncode == 0, taken.err
    assert bought in file.read_text("utf-8")
    assert "how it is cleaned" in taken.err
    assert check(file).returncode == 0


@pytest.mark.parametrize(
    ("cloth", "pressing"),
    [
        ("faux fur", "lift and lower"),
        ("waxed cotton", "lift and lower"),
        ("fleece", "glide"),
        ("pure polyester pleated", "hover with steam"),
        ("ripstop", "hover with steam"),
    ],
)
def test_her_own_way_of_pressing_meets_what_the_cloth_bears(
    cloth: str, pressing: str, tmp_path: Path
) -> None:
    """No dot of the dial is as cool as that, or no moisture is borne; giving it up cures."""
    hers = f"name: side, layers: [c, c], length: 60 cm, pressing: {pressing}"
    file = made(tmp_path, f"c: {cloth}", hers)
    found = check(file)
    assert found.returncode == 1
    assert "It ruins cloth" in found.out
    assert check(file, "--take", "all").returncode == 0
    assert check(file).returncode == 0


@pytest.mark.parametrize(
    ("layers", "pressing"),
    [("[c, {notion: elastic}]", "lift and lower"), ("[s, s]", "hover with steam")],
)
def test_her_iron_is_let_be_where_only_a_notion_or_a_wish_speaks_against_it(
    layers: str, pressing: str, tmp_path: Path
) -> None:
    """An elastic goes in afterwards, and a silk is steamed at a distance after a test."""
    cloths = "c: pure cotton poplin 120 g/m2\n  s: pure silk charmeuse 90 g/m2"
    hers = f"name: place, layers: {layers}, length: 60 cm, pressing: {pressing}"
    assert check(made(tmp_path, cloths, hers)).returncode == 0


def test_a_glue_that_a_pile_rules_out_moves_no_iron() -> None:
    """It is left out, so the turned velvet is opened with the fingers, with the glue or without."""
    glued = "{name: collar edge, layers: [collar, {notion: woven fusible interfacing}, shell],"
    text = TOWPATH.read_text("utf-8")
    assert "{name: collar edge, layers: [collar, shell]," in text
    found = read(text.replace("{name: collar edge, layers: [collar, shell],", glued))
    told = {v.aspect: v.pick for v in found.verdicts if v.place == "collar edge"}
    assert (told["press.motion"], told["press.temperature"]) == ("finger-press", 20.0)
    (clash,) = [c for c in found.conflicts if "collar edge" in c.places]
    assert "press.motion" not in clash.aspects


@pytest.mark.parametrize(
    "glue",
    ["woven fusible interfacing", "knit fusible interfacing", "non-woven fusible interfacing"],
)
def test_no_ground_of_a_fusible_lets_its_glue_be_overheated(tmp_path: Path, glue: str) -> None:
    """Named all cotton, it still melts: at an edge and at the buttonholes that lie over it."""
    cloths = f"linen: pure linen suiting\n  glue: {{notion: {glue}, fibres: {{cotton: 100}}}}"
    file = made(
        tmp_path,
        cloths,
        "name: facing fusing, layers: [glue, linen], length: 60 cm, times: 2",
        "name: front facing, layers: [linen, glue, linen], edge: turned, length: 60 cm",
        "name: holes, layers: [linen, glue, linen], fastening: buttonholes, length: 2.4 cm",
    )
    told = read(file.read_text("utf-8")).verdicts
    limits = {v.place: v.high for v in told if v.aspect == "press.temperature"}
    assert [limits["front facing"], limits["holes"]] == [160, 160]
