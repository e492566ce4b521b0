"""A lined coat of an open pile with a velvet collar and bound buttonholes, as a tailor makes it."""

from __future__ import annotations

import pytest

from tests.garments.whole import ordered, read

COAT = """garment: Beacon keeper's coat
units: metric
pattern: tried
fitting: loosely
maker: {machine: industrial, foot lift: 12 mm, overlocker: no, feet: [standard, walking]}
fabrics:
  fleecy: {fabric: mohair cloth, fibres: {mohair: 60, wool: 40}, weight: 580 g/m2}
  nap: {fabric: velveteen, fibres: {cotton: 100}, weight: 280 g/m2}
  twill: {fabric: gabardine, fibres: {wool: 100}, weight: 240 g/m2}
  slippery: {fabric: lining satin, fibres: {viscose: 100}, weight: 115 g/m2}
  canvas: {notion: hair canvas}
parts:
  outside: {layers: [fleecy]}
  inside: {layers: [slippery], separate: [slippery]}
seams:
  - {name: front canvas, layers: [fleecy, canvas], length: 1 m, kind: canvas, times: 2,
     part: outside}
  - {name: bound buttonholes, on: fleecy, fastening: buttonholes, number: 3,
     method: bound buttonhole, part: outside}
  - {name: welt pockets, layers: [fleecy, twill, slippery], length: 17 cm, kind: welt pocket,
     times: 2, part: outside}
  - {name: centre back, layers: [fleecy, fleecy], length: 1 m, part: outside}
  - {name: shoulder, layers: [fleecy, fleecy], length: 14 cm, stress: high, times: 2, part: outside}
  - {name: side, layers: [fleecy, fleecy], length: 80 cm, times: 2, part: outside}
  - {name: front facing, layers: [fleecy, canvas, fleecy], length: 1 m, edge: turned, times: 2,
     part: outside}
  - {name: undercollar, layers: [twill, canvas], length: 45 cm, kind: canvas}
  - {name: collar edge, layers: [nap, canvas, twill], length: 68 cm, shape: corner, edge: turned}
  - {name: collar seam, layers: [fleecy, nap], length: 45 cm, shape: curved, crosses: shoulder}
  - {name: sleeve seam, layers: [fleecy, fleecy], length: 45 cm, times: 2, part: outside}
  - {name: armhole, layers: [fleecy, {use: fleecy, ease: 28 mm}], length: 54 cm, shape: curved,
     stress: high,
     times: 2, crosses: [shoulder, side], part: outside}
  - {name: shoulder pads, layers: [fleecy, {notion: shoulder pad}], times: 2, part: outside}
  - {name: coat hem, layers: [fleecy], length: 130 cm, edge: hem, part: outside}
  - {name: lining side, layers: [slippery, slippery], length: 78 cm, times: 2, part: inside}
  - {name: lining shoulder, layers: [slippery, slippery], length: 13 cm, times: 2, part: inside}
  - {name: lining armhole, layers: [slippery, slippery], length: 54 cm, shape: curved,
     times: 2, part: inside}
  - {name: facing to lining, layers: [fleecy, slippery], length: 2 m, shape: curved}
  - {name: lining hem, layers: [slippery], length: 126 cm, edge: hem, part: inside}
  - {name: coat buttons, layers: [fleecy, {notion: horn button}], times: 3, part: outside}
"""


def steps(text: str = COAT) -> list[str]:
    """The names of the steps, in their order."""
    return list(ordered(text).order)


def does(step: str) -> str:
    """What is told of a step."""
    return ordered(COAT).tasks[step].step.does


def word(aspect: str, place: str, text: str = COAT) -> str:
    """What is told of an aspect at a place."""
    found = (v.text for v in read(text).verdicts if (v.place, v.aspect) == (place, aspect))
    return next(found, "")


def test_a_bound_buttonhole_is_stayed_closed_at_its_ends_and_opened_through_all_layers() -> None:
    """Strip, rows, slit, lips, triangles; then the canvas is in and opened, and last the facing."""
    works = [
        "stay the slits of bound buttonholes",
        "bind bound buttonholes",
        "slash bound buttonholes",
        "turn bound buttonholes",
        "close the ends of bound buttonholes",
        "baste front canvas",
        "open the canvas behind bound buttonholes",
        "join front facing",
        "open the facing behind bound buttonholes",
    ]
    assert works == [step for step in steps() if step in works]


def test_no_canvas_is_opened_where_none_lies() -> None:
    """Without the canvas the strip alone holds the hole."""
    before, after = COAT.split("  - {name: front canvas")
    found = steps(before + after[after.index("  - {") :])
    assert "stay the slits of bound buttonholes" in found
    assert "open the canvas behind bound buttonholes" not in found


@pytest.mark.parametrize("place", ["bound buttonholes", "welt pockets"])
def test_lips_and_welts_have_no_edge_to_roll(place: str) -> None:
    """What is drawn through a slit shows a lip or a welt; a seam is rolled at an outer edge."""
    assert "roll the seam" in does("turn front facing")
    assert "roll the seam" not in does(f"turn {place}")


@pytest.mark.parametrize("crossed", ["crosses: [shoulder, side], ", ""])
def test_a_sleeve_is_closed_before_its_cap_is_pinned_in(crossed: str) -> None:
    """Also where the armhole is said to run over the seams of the body alone."""
    found = steps(COAT.replace("crosses: [shoulder, side], ", crossed))
    assert found.index("press sleeve seam") < found.index("draw up the ease of armhole")


FIRM = COAT.replace("twill: {fabric: gabardine,", "twill: {fabric: wool melton,")
"""The coat with an undercollar that bears steam."""


@pytest.mark.parametrize("place", ["collar edge", "collar seam"])
def test_no_sole_touches_a_velvet_collar_and_steam_only_where_all_of_it_bears_steam(
    place: str,
) -> None:
    """The pile in a board, steam held off; a gabardine that drops would mark gets none."""
    ways = {"collar edge": "held", "collar seam": "finger-press"}  # the coat bears no steam
    assert word("press.motion", place, FIRM).startswith(ways[place])
    assert word("press.motion", place) == "finger-press"
    assert word("press.moisture", place) != "steam"


def test_an_open_weave_is_taped_where_the_coat_hangs_and_nowhere_else() -> None:
    """The shoulder carries; centre back, side, sleeve and armhole hang from it."""
    hung = ("centre back", "side", "sleeve seam", "armhole", "facing to lining")
    assert "tape" in word("seam.support", "shoulder")
    assert not [place for place in hung if "tape" in word("seam.support", place)]


@pytest.mark.parametrize("name", ["inside", "lining"])
def test_edges_under_a_lining_that_is_a_part_are_left_plain(name: str) -> None:
    """However that part is called: nothing of the shell is bound."""
    text = COAT.replace("inside:", f"{name}:").replace("part: inside", f"part: {name}")
    told = {word("seam.finish", place, text) for place in ("centre back", "shoulder", "side")}
    assert not [finish for finish in told if "Hong Kong" in finish or "bound" in finish]


def test_a_deep_pile_lies_on_no_bare_board() -> None:
    """Nor beside a lining, which is content with whatever lies under the cloth beside it."""
    for place in ("welt pockets", "facing to lining", "centre back"):
        assert "board" not in word("press.surface", place).replace("needle board", "")


def test_where_no_iron_comes_on_the_whole_none_is_in_its_care() -> None:
    """The last press and the care of one coat say the same."""
    whole = "Beacon keeper's coat"
    assert word("press.temperature", whole, FIRM).startswith("no iron")
    assert word("care.iron", whole, FIRM).startswith("do not iron")
    assert "takes no iron" not in ordered(FIRM).tasks[steps(FIRM)[-1]].step.does


def test_what_the_last_press_spares_the_care_spares_too() -> None:
    """Pressed part by part, no iron comes over the velvet, nor does one later."""
    whole = "Beacon keeper's coat"
    assert "no iron on nap" in word("press.temperature", whole)
    assert "not over the horn button and nap" in word("care.iron", whole)
    assert "smooth nap with the hands" in does(steps()[-1])


def test_a_wool_that_wants_its_damp_cloth_is_not_told_as_pressed_dry() -> None:
    """Only the lining is pressed dry there."""
    dry = [i for i in read(COAT).instructions if "pressed dry" in i.text]
    assert dry
    assert not [i.text for i in dry if "twill, which are" in i.text]


def test_a_heavy_open_coating_hangs_before_its_hem() -> None:
    """A firm one is levelled at once."""
    found = steps()
    assert found.index("hang") < found.index("sew coat hem")
    firm = COAT.replace(
        "fabric: mohair cloth, fibres: {mohair: 60, wool: 40}",
        "fabric: wool coating, fibres: {wool: 100}",
    )
    assert "hang" not in steps(firm)
