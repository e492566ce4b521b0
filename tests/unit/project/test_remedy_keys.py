"""The keys of a seam that a remedy is written in, and the lines that say a remedy."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from advisor.errors import InputError
from advisor.project.garment import Garment
from advisor.project.lines import Line, as_yaml, lines_between
from advisor.project.load import garment_of
from advisor.project.quick import quick_garment
from advisor.project.taking import with_lines
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

PROJECT = """\
garment: Jacket
fabrics:
  Shell: linen suiting
  frill: nylon organza
  glue: {notion: woven fusible interfacing}   # from the drawer
seams:
  - {name: hem, layers: [Shell, glue, frill], length: 90 cm%s}
"""


def read(said: str) -> Garment:
    return garment_of(parse_yaml(PROJECT % (said and f", {said}"), "p.yaml"), shipped())


def test_what_is_pressed_or_fused_first_is_a_layer_of_the_seam() -> None:
    """One name or several, capitals or not."""
    assert frozenset() == read("").seams[0].apart
    assert {"Shell"} == read("pressed first: shell").seams[0].apart
    both = read("pressed first: [Shell], fused first: glue").seams[0]
    assert {"Shell", "glue"} == both.apart


@pytest.mark.parametrize("said", ["pressed first: lining", "fused first: [glue, shel]"])
def test_a_name_that_is_no_layer_is_refused_with_its_place(said: str) -> None:
    """A slip would let the cloth be pressed as if it had been done."""
    with pytest.raises(InputError, match=r"p\.yaml:7:\d+.*no layer of this seam"):
        read(said)


def test_finger_press_leaves_no_iron_on_the_seam() -> None:
    """The word of the remedy is the word of the file."""
    assert read("pressing: finger-press").seams[0].cold
    assert not read("pressing: glide").seams[0].cold


def test_what_lessens_the_bulk_is_one_of_a_few_ways() -> None:
    """Each way by its name; another is refused with those that are known."""
    found = read("lessen bulk: [level the foot, offset the crossing]").seams[0]
    assert {"shim", "offset"} == found.making.helps
    with pytest.raises(InputError, match="level the foot"):
        read("lessen bulk: hammer it")


def test_lines_are_shown_as_a_project_says_them() -> None:
    """A key as YAML; an entry of a list and what is taken out as a remark."""
    lines = (
        Line(("seams", "hem", "pressed first"), ["Shell"]),
        Line(("seams", "hem", "finish"), None),
        Line(("maker", "feet"), ["walking"]),
    )
    expected = (
        "seams:\n  - name: hem\n    pressed first: [Shell]\n    # 'finish' is taken out\n"
        "maker:\n  feet: [walking]"
    )
    assert expected == as_yaml(lines)


def test_a_notion_that_nothing_names_any_more_leaves_the_fabrics() -> None:
    """Only what a garment is made of is listed; its line goes with its remark, no other."""
    line = Line(("seams", "hem", "layers", 1), {"notion": "silk organza"})
    new = with_lines(PROJECT % "", [line], "p.yaml")
    assert "glue" not in new
    assert "layers: [Shell, {notion: silk organza}, frill]" in new
    assert "  frill: nylon organza\nseams:" in new


def test_a_cloth_said_in_a_phrase_takes_a_key() -> None:
    """A bare phrase becomes a group of keys with the phrase in it."""
    new = with_lines(PROJECT % "", [Line(("fabrics", "frill", "detachable"), "yes")], "p.yaml")
    assert "frill: {fabric: nylon organza, detachable: yes}" in new
    assert garment_of(parse_yaml(new, "p.yaml"), shipped()).cloths["frill"].detachable


def test_feet_are_written_where_she_has_named_no_maker() -> None:
    """The group is made where it is missing."""
    new = with_lines(PROJECT % "", [Line(("maker", "feet"), ["walking"])], "p.yaml")
    assert ("walking",) == garment_of(parse_yaml(new, "p.yaml"), shipped()).maker.feet


def test_what_one_remedy_leaves_out_another_does_not_name() -> None:
    """Fused first by the one and left out by the other: the lines speak of the layers there are."""
    fusible = {"notion": "woven fusible interfacing"}
    old = quick_garment(["wool coating", fusible, "cotton calico"], shipped())
    (seam,) = old.seams
    first, glued, last = seam.uses
    both = replace(seam, uses=(first, last), apart=frozenset({first.cloth, glued.cloth}))
    cloths = {name: cloth for name, cloth in old.cloths.items() if name != glued.cloth}
    lines = lines_between(old, replace(old, cloths=cloths, seams=(both,)), shipped())
    assert [first.cloth] in [line.value for line in lines]
    assert not any(glued.cloth in str(line.value) for line in lines)


@pytest.mark.parametrize(("on", "left"), [("[Shell, glue]", "[Shell, frill]"), ("glue", "frill")])
def test_a_place_that_says_its_layers_with_on_keeps_its_key(on: str, left: str) -> None:
    """One name or a list of them: the layer is changed where it is written."""
    text = PROJECT.replace("layers: [Shell, glue, frill]", f"on: {on}") % ""
    at = 1 if "[" in on else 0
    new = with_lines(text, [Line(("seams", "hem", "layers", at), "frill")], "p.yaml")
    assert f"on: {left}, length: 90 cm" in new
    assert "glue" not in new
