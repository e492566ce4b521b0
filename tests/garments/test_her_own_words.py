"""What a project may say of ease, of an opening to turn through, of unwashed cloth, of a wearer."""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Parts, answer
from advisor.claims.collect import Place
from advisor.decide.advise import advise
from advisor.errors import InputError
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.render.printed.compact import render_sheet
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, read, stands

FROCK = """\
garment: Party frock
worn by: child
fabrics:
  shell: {fabric: lawn, fibres: {cotton: 100}, unwashed: yes, shrinks: 4 %}
  lining: {fabric: batiste, fibres: {cotton: 100}}
seams:
  - {name: side, layers: [shell, shell], length: 30 cm, times: 2}
  - {name: armhole, layers: [shell, {use: shell, ease: 25 mm}], length: 32 cm, shape: curved}
  - {name: lining side, layers: [lining, lining], length: 30 cm, left open: 12 cm}
  - {name: bag the lining, layers: [shell, lining], length: 60 cm, shape: curved}
"""


@cache
def work(text: str = FROCK) -> Work:
    return ordered(text)


@cache
def told(text: str = FROCK) -> Answer:
    return answer(garment_of(parse_yaml(text, "frock.yaml"), known()), known(), Parts())


def refused(text: str) -> str:
    with pytest.raises(InputError) as caught:
        garment_of(parse_yaml(text, "frock.yaml"), known())
    (problem,) = caught.value.problems
    return str(problem)


def test_ease_is_a_length_and_becomes_a_fullness() -> None:
    """25 mm on 320 mm: the cap is 345 long, 7.8 % longer, which the order names."""
    armhole = next(seam for seam in told().seams if seam.name == "armhole")
    found = places(work())["armhole"]
    assert pytest.approx([1.0, 345 / 320]) == [use.fullness for use in found.seam.uses]
    assert "gathered-edge" != armhole.kind
    does = next(t.step.does for t in work().tasks.values() if "25 mm of ease" in t.step.does)
    assert "7.8" in does


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("ease: 25 mm", "ease: 25", "no unit"),
        (", length: 32 cm, shape", ", shape", "ease needs the length of the seam"),
        ("ease: 25 mm", "ease: 25 mm, fullness: 1.1", "both 'ease' and 'fullness'"),
        ("worn by: child", "worn by: dog", "unknown word 'dog'"),
        ("left open: 12 cm", "left open: 5 mm", "from 2 cm to 1 m"),
        ("unwashed: yes", "unwashed: maybe", "unknown word 'maybe'"),
    ],
)
def test_what_cannot_be_is_refused_once(old: str, new: str, says: str) -> None:
    """One slip, one message."""
    assert says in refused(FROCK.replace(old, new))


def test_the_garment_is_turned_through_the_opening_that_she_leaves() -> None:
    """The seam with the gap says so, and the bagged seam is turned and closed there."""
    tasks = work().tasks
    assert "leave 12 cm of it open to turn through" in tasks["join lining side"].step.does
    assert "opening" not in tasks["bag bag the lining"].step.does
    assert "the opening of lining side" in tasks["turn through bag the lining"].step.does
    assert "the opening of lining side" in tasks["close the opening of bag the lining"].step.does
    assert stands(work(), "join lining side", "turn through bag the lining")
    assert "12 cm left open to turn through" in " ".join(render_sheet(read(FROCK)).split())


def test_a_gap_of_its_own_is_as_wide_as_she_says() -> None:
    """Without a word it is a hand wide."""
    usual = FROCK.replace(", left open: 12 cm", "")
    assert "an opening a hand wide" in work(usual).tasks["bag bag the lining"].step.does
    own = usual.replace("length: 60 cm, shape", "length: 60 cm, left open: 15 cm, shape")
    assert "an opening of 15 cm" in work(own).tasks["bag bag the lining"].step.does


def test_unwashed_cloth_is_cut_as_it_comes_and_the_first_wash_is_foretold() -> None:
    """No step shrinks it; its loss in the first wash is told."""
    judged = advise(garment_of(parse_yaml(FROCK, "f.yaml"), known()), known()).judgement
    shrink = judged.verdicts[Place("fabric", "shell")]["prepare.preshrink"]
    assert shrink.pick is not None
    assert shrink.aspect.words[int(shrink.pick)] == "nothing"
    assert "shrink shell" not in work().tasks
    assert "shrink shell" in work(FROCK.replace(", unwashed: yes", "")).tasks
    assert any("first wash" in caution.text for caution in told().cautions)
    parting = " ".join(render_sheet(read(FROCK)).split())
    assert "Washed unshrunk, shell ends" in parting


@pytest.mark.parametrize(("who", "told_of"), [("child", True), ("adult", False), ("", False)])
def test_a_child_has_dangers_of_its_own(who: str, told_of: bool) -> None:
    """Cautions for children stand for a child, and not where an adult wears it."""
    text = FROCK.replace("worn by: child\n", f"worn by: {who}\n" if who else "")
    kinds = {caution.kind for caution in told(text).cautions}
    assert ("child" in kinds) == told_of


@pytest.mark.parametrize(("who", "told_of"), [("child", True), ("adult", False), ("", True)])
def test_small_parts_are_told_unless_an_adult_wears_it(who: str, told_of: bool) -> None:
    """Unknown is never taken as safe: only the word adult takes the caution away."""
    line = "  - {name: ties, layers: [shell, {notion: drawcord}], length: 60 cm}\n"
    text = FROCK.replace("worn by: child\n", f"worn by: {who}\n" if who else "") + line
    found = [c for c in told(text).cautions if c.id == "cords-catch-and-strangle"]
    assert bool(found) == told_of


GOWN = """\
garment: Gown with a veil
fabrics: {shell: silk crepe, lining: cupro lining, veil: silk chiffon}
parts:
  bodice: {layers: [lining, shell], fitting: to the body}
  skirt: {layers: [lining, shell, veil], separate: veil, fitting: not at all}
seams:
  - {name: bodice side, layers: [shell, shell], length: 20 cm, times: 2}
  - {name: skirt side, layers: [shell, shell], length: 90 cm, times: 2}
  - {name: veil side, layers: [veil, veil], length: 90 cm, times: 2, part: skirt}
  - {name: skirt zip, layers: [shell, {notion: concealed zip}], length: 30 cm}
  - {name: waist, layers: [shell, shell, veil], length: 72 cm}
"""


def gown(text: str = GOWN) -> Answer:
    return read(text)


def test_a_part_says_what_lies_over_what_and_what_hangs_free() -> None:
    """From the body outwards, with its own fit; a place is of the part that its name holds."""
    bodice, skirt = gown().parts or ()
    assert ("lining", "shell") == bodice.layers
    assert ("skirt side", "veil side", "skirt zip") == skirt.places
    assert "Veil hangs free" in skirt.does
    assert "the opening of veil finished apart" in skirt.does
    assert "" == bodice.does
    text = " ".join(render_sheet(gown()).split())
    assert "HOW IT IS LAYERED bodice. From the body outwards: lining, shell." in text


def test_a_place_is_fitted_as_its_part_is() -> None:
    """The bodice waits for the fitting; the skirt, fitted not at all, does not; her word wins."""
    found = places(work(GOWN))
    assert "to the body" == found["bodice side"].seam.fitting
    assert "not at all" == found["veil side"].seam.fitting
    own = GOWN.replace("length: 90 cm, times: 2}", "length: 90 cm, times: 2, fitting: loosely}", 1)
    assert "loosely" == places(work(own))["skirt side"].seam.fitting


@pytest.mark.parametrize(
    ("old", "new", "id_", "says"),
    [
        ("skirt side, layers: [shell, shell]", "skirt side, layers: [shell, veil]",
         "part-separate", "skirt side sews veil to shell, while skirt says that veil hangs free."),
        ("bodice side, layers: [shell, shell]", "bodice side, layers: [shell, veil]",
         "part-layers", "bodice side holds veil, which the layers of bodice do not name."),
    ],
)  # fmt: skip
def test_a_place_that_goes_against_its_part_is_told(
    old: str, new: str, id_: str, says: str
) -> None:
    """No conflict of cloths, but two lines of the file that do not agree."""
    assert [] == [check for check in gown().checks or () if check.id.startswith("part")]
    (check,) = [c for c in gown(GOWN.replace(old, new)).checks or () if c.id.startswith("part")]
    assert (id_, says) == (check.id, check.text)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("separate: veil", "separate: vail", "no layer of this part is called 'vail'"),
        ("[lining, shell], fitting", "[lining, shall], fitting", "no fabric of this project"),
        ("part: skirt", "part: skort", "unknown word 'skort'"),
    ],
)
def test_a_slip_in_the_parts_is_one_message(old: str, new: str, says: str) -> None:
    """With the nearest right word."""
    assert says in refused(GOWN.replace(old, new))
