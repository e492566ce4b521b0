"""One decision is read by sheet, order, label and shopping: what two of them print is equal.

The `# MUST:` lines of the six garments that speak of several views at once, and a law over all of
them: the method of the order is the method of the sheet, and no needle, thread or iron differs.
"""

from __future__ import annotations

from functools import cache
from typing import Any, cast

import pytest

from advisor.answer.label import Asked
from advisor.answer.model.answer import Answer
from advisor.answer.model.needed import ToldNeed
from advisor.answer.model.told import ToldPlace
from advisor.answer.pipeline import WHOLE, Parts, answer, tell
from advisor.claims.collect import Place
from advisor.construction.bulk import number, picked
from advisor.craft.irondial import mark_for
from advisor.knowledge.model import COLD
from advisor.order.work import Work
from advisor.project.load import load_project
from advisor.records import as_data
from tests.garments.whole import (
    BLOUSE,
    FOLDER,
    NAMES,
    RAINCOAT,
    SWIMSUIT,
    TROUSERS,
    TUTU,
    advice,
    decided,
    known,
    ordered,
    places,
    stands,
    work,
)

EVERY = [*NAMES, "more/coat", "more/dress", "more/evening_dress", "more/leggings"]
TURNED = ("faced-edge", "collar", "cuff", "waistband", "lining-seam")


@cache
def told(name: str) -> Answer:
    parts = Parts(shopping=True, order=True, label=Asked())
    return tell(decided(FOLDER / f"{name}.yaml"), known(), parts)


def place(name: str, seam: str) -> ToldPlace:
    return next(p for p in told(name).seams if p.name == seam)


def need(name: str, item: str) -> ToldNeed:
    found = [n for n in told(name).kit or () if n.item.startswith(item)]
    assert found, f"{item} is not bought"
    return found[0]


def does(name: str, step: str) -> str:
    return work(name).tasks[step].step.does


@pytest.mark.parametrize("edge", ["leg elastic", "armhole elastic", "neck elastic"])
def test_an_elastic_edge_is_as_wide_as_its_elastic(edge: str) -> None:
    """05 MUST 1: the allowance is the width of the elastic, and no number stands against that."""
    assert "as wide as the elastic" in place(SWIMSUIT, edge).allowance_as
    assert "seam.allowance" not in advice(SWIMSUIT).judgement.verdicts[Place("seam", edge)]


def test_no_seam_of_a_swimsuit_is_ironed() -> None:
    """05 MUST 2: finger-pressed alike in sheet, order and label."""
    judgement = advice(SWIMSUIT).judgement
    for seam in judgement.garment.seams:
        verdicts = judgement.verdicts[Place("seam", seam.name)]
        assert picked(verdicts, "press.motion") == "finger-press", seam.name
        assert (number(verdicts, "press.temperature") or 0) <= COLD, seam.name
    assert all(t.step.iron is None for t in work(SWIMSUIT).tasks.values())
    label = told(SWIMSUIT).label
    assert label is not None
    assert "Do not iron" in [line.line for line in label.care.lines]
    said = " ".join(task.text for task in told(SWIMSUIT).advice)
    assert "Press every seam" not in said
    assert "turn the dial" not in said


def test_a_suit_gives_both_ways_and_its_loopers_are_soft() -> None:
    """05 MUST 3: check two-way stretch; textured thread in the loopers."""
    said = " ".join(task.text for task in told(SWIMSUIT).advice)
    assert "two-way stretch" in said
    assert "textured nylon or polyester thread into the loopers" in said


def test_jeans_are_topstitched_and_the_thread_is_bought() -> None:
    """04 MUST 1: thread, needle of 100 to 110, two rows, in sheet, order and shopping."""
    for seam in ("back yoke", "crotch", "inseam"):
        made = place(TROUSERS, seam).made
        assert "two rows" in made
        assert "100 to 110" in made
        assert "topstitching thread" in does(TROUSERS, f"fell {seam}")
        assert f"topstitch {seam}" in work(TROUSERS).tasks
    assert {"back yoke", "crotch", "inseam"} == set(need(TROUSERS, "topstitching thread").for_)
    assert need(TROUSERS, "topstitch needle 100 to 110").for_


def test_a_metal_button_asks_for_no_washing_by_hand() -> None:
    """04 MUST 3: machine wash, not hand wash because of a metal button."""
    label = told(TROUSERS).label
    assert label is not None
    assert label.care.lines[0].line == "Wash at 40 °C"


TAPED, BRUSHED = "seam sealing tape or seam sealant", "seam sealer"


@pytest.mark.parametrize(
    ("seam", "thing"),
    [
        ("shoulder", TAPED),
        ("side", TAPED),
        ("armhole", TAPED),
        ("hood centre", TAPED),
        ("hood to neck", BRUSHED),  # it holds the mesh, to which no tape sticks
    ],
)
def test_a_coated_seam_is_sealed_in_every_view(seam: str, thing: str) -> None:
    """06 MUST 1: sealing stands in the short sheet, in the order and on the shopping list."""
    assert "sealed on the coated side" in place(RAINCOAT, seam).made
    assert f"seal {seam}" in work(RAINCOAT).tasks
    assert seam in need(RAINCOAT, thing).for_


def test_fingers_or_iron_but_not_both() -> None:
    """06 MUST 2: where a mark of the iron is named, no place is finger-pressed as well."""
    for name in EVERY:
        for at, verdicts in advice(name).judgement.verdicts.items():
            heat = number(verdicts, "press.temperature")
            if at.scope == "seam" and heat is not None and mark_for(heat) is not None:
                assert picked(verdicts, "press.motion") != "finger-press", (name, at)


def test_glue_is_a_thing_that_is_bought_and_warned_of() -> None:
    """02 MUST 1: named, after all pressing, small parts and a child in mind, in sheet and order."""
    assert need(TUTU, "glue for stones").for_ == ("glued stones",)
    for text in (place(TUTU, "glued stones").made, does(TUTU, "glue glued stones")):
        assert "after every pressing" in text
        assert "child" in text
        assert "mall parts" in text


def test_the_armhole_is_made_once() -> None:
    """The sheet says the method of the order, and no kind of seam beside it."""
    assert place(BLOUSE, "armhole").made == "sleeve set in with ease"
    assert work(BLOUSE).methods["armhole"].id == "sleeve-set-in-with-ease"


@pytest.mark.parametrize("name", EVERY)
def test_sheet_and_order_tell_one_method(name: str) -> None:
    """A law: the method of every place is one, and what it is made of contradicts nothing."""
    in_order = {n: p.method for n, p in places(work(name)).items()}
    for found in told(name).seams:
        method = in_order.get(found.name)
        if method is None:
            continue
        assert found.method == method.name
        verdicts = advice(name).judgement.verdicts[Place("seam", found.name)]
        if found.kind in TURNED and "seam" not in found.facts:
            assert "seam.kind" not in verdicts, found.name
        kinds = method.fits.get("seam")
        if kinds and picked(verdicts, "seam.kind"):
            assert picked(verdicts, "seam.kind") in kinds, found.name


@pytest.mark.parametrize("name", EVERY)
def test_needle_thread_and_iron_of_the_order_are_those_of_the_sheet(name: str) -> None:
    """A law: the row that joins a place, and its iron, are set as the sheet says of the place.

    A channel or a casing is pressed while it is empty, so there the order may be hotter.
    """
    judgement = advice(name).judgement
    seen = 0
    for task in work(name).tasks.values():
        if task.place is None:
            continue
        verdicts = judgement.verdicts[Place("seam", task.place.name)]
        heat = number(verdicts, "press.temperature")
        iron, machine = task.step.iron, task.step.machine
        empty = task.place.kind.id in ("boning", "casing")
        if iron is not None and task.op == "press" and heat is not None and not empty:
            assert round(heat) == iron.temperature_c, task.id
            seen += 1
        if machine is not None and task.op == "join":
            said = (number(verdicts, "needle.size"), picked(verdicts, "needle.point"))
            assert said == (machine.size, machine.point), task.id
            seen += 1
    assert seen


@pytest.mark.parametrize("name", EVERY)
def test_what_a_method_uses_up_is_on_the_list(name: str) -> None:
    """A law: nothing is called for at a step that the shopping list does not hold.

    What closes a place may be a layer of it instead, and buttons may have a place of their own.
    """
    bought = {n.item.split(" (")[0]: set(n.for_) for n in told(name).kit or ()}
    methods = work(name).methods
    made = {method.id for method in methods.values()}
    layers = {seam.name: seam.layers for seam in told(name).seams}
    for seam, method in methods.items():
        for thing in method.buys:
            if not made & set(thing.unless):
                held = any(seam in bought.get(layer, ()) for layer in layers[seam])
                assert held or seam in bought[thing.name]


GOWN, LEGGINGS = "more/evening_dress", "more/leggings"
GOWN_ORDERS = [
    # worked as one with its mount (threads-underlining-2009), it is pressed open and not graded;
    # its single edges are neatened before, for no knife comes beside the bones that are tried on
    ["baste bodice underlining", "neaten bodice princess", "join bodice princess", "fit"],
    ["join bones", "press bones", "insert bones in bones"],
    ["join bodice side", "join top edge", "turn top edge"],
    ["join bodice side", "join waist", "set centre back zip", "join centre back", "sew hem"],
    ["join waist", "tack in waist stay", "last press"],
    ["insert bones in bones", "join waist"],
]


@pytest.mark.parametrize("steps", GOWN_ORDERS)
def test_a_boned_gown_is_built_as_a_workroom_does(steps: list[str]) -> None:
    """Its own MUSTs: channels empty when pressed, zip between waist and seam, stay after waist."""
    found = work(GOWN)
    assert () == found.cycles
    assert stands(found, *steps)


@pytest.mark.parametrize("seam", ["bodice princess", "bodice side"])
def test_an_underlining_makes_no_sheer_seam_of_a_firm_shell(seam: str) -> None:
    """Organdie between two layers of taffeta is hidden: no French seam of eight plies."""
    verdicts = advice(GOWN).judgement.verdicts[Place("seam", seam)]
    assert "plain" == picked(verdicts, "seam.kind")


def test_bones_are_bought_by_the_length() -> None:
    """Eight of them, shorter than their channels."""
    (cut,) = need(GOWN, "boning").cut_mm
    assert cut[0] == 8
    assert cut[1] is not None
    assert cut[1] < 220


def test_leggings_are_neither_ironed_nor_hung() -> None:
    """They lie close: nothing drops, and fingers open the seams."""
    found = work(LEGGINGS)
    assert "hang" not in found.tasks
    assert all(t.step.iron is None for t in found.tasks.values())
    assert work(LEGGINGS).methods["hem"].id == "twin-needle-hem"


def test_the_waist_elastic_of_leggings_is_cut_shorter() -> None:
    """72 cm stretched by 1.1 is 65.5 cm."""
    ((number_, each),) = need(LEGGINGS, "knitted elastic").cut_mm
    assert number_ == 1
    assert each is not None
    assert round(each / 10, 1) == 65.5


def made(cloths: str, *places_: str) -> Work:
    """The order of a small garment."""
    text = f"garment: g\nfabrics: {{{cloths}}}\nseams:\n" + "".join(f"  - {p}\n" for p in places_)
    return ordered(text)


def test_a_bagged_lining_leaves_an_opening_to_turn() -> None:
    """It is named, turned through, and closed by hand."""
    found = made(
        "shell: wool tweed, lining: viscose satin",
        "{name: bag the lining, layers: [shell, lining], length: 60 cm}",
    )
    steps = ["bag bag the lining", "turn through bag the lining"]
    assert "leave an opening a hand wide" in found.tasks[steps[0]].step.does
    assert stands(found, *steps, "close the opening of bag the lining")


@pytest.mark.parametrize(
    ("cloth", "method"), [("wool flannel", "plain-seam"), ("cotton flannel", "felled-seam")]
)
def test_a_lined_wool_skirt_has_no_felled_side(cloth: str, method: str) -> None:
    """Felled is for what is washed every week."""
    found = made(f"a: {cloth}", "{name: side, layers: [a, a], length: 60 cm, times: 2}")
    assert method == found.methods["side"].id


@pytest.mark.parametrize(
    ("cloth", "sealed"), [("laminated cotton", True), ("faux leather", False), ("poplin", False)]
)
def test_a_laminated_cape_is_sealed_too(cloth: str, sealed: bool) -> None:
    """Oilcloth keeps rain out as a coated nylon does; what looks like leather need not."""
    found = made(f"a: {cloth}", "{name: shoulder, layers: [a, a], length: 20 cm, times: 2}")
    assert sealed == ("seal shoulder" in found.tasks)


def test_both_hoods_are_whole_before_their_edge() -> None:
    """Shell and lining of a hood are seamed before they meet at the edge of the face."""
    found = made(
        "oil: laminated cotton, fleece: polyester fleece",
        "{name: hood centre, layers: [oil, oil], length: 38 cm, shape: curved}",
        "{name: hood lining centre, layers: [fleece, fleece], length: 38 cm, shape: curved}",
        "{name: hood edge, layers: [oil, fleece], length: 56 cm, shape: curved, edge: turned}",
    )
    assert stands(found, "join hood centre", "join hood edge")
    assert stands(found, "join hood lining centre", "join hood edge")


def named(found: object) -> set[str]:
    """The ids that stand in any `sources` of an answer's JSON, each perhaps with its place."""
    if isinstance(found, list):
        return {id_ for item in found for id_ in named(item)}
    if not isinstance(found, dict):
        return set()
    ids = {id_ for item in found.values() for id_ in named(item)}
    said = found.get("sources") or ()
    return ids | {text.split(" ", 1)[0] for text in said if isinstance(text, str)}


@pytest.mark.parametrize("name", EVERY)
def test_every_source_that_an_answer_names_is_listed_in_it(name: str) -> None:
    """From a value to its source in one step: no id leads nowhere."""
    garment = load_project(FOLDER / f"{name}.yaml", known())
    whole = cast(dict[str, Any], as_data(answer(garment, known(), WHOLE)))
    listed = {source["id"] for key in ("sources", "order_sources") for source in whole[key]}
    assert set() == named(whole) - listed
