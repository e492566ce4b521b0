"""What is made at a place, by which method, and how it is fitted, as a project says it or not."""

from __future__ import annotations

import pytest

from advisor.errors import InputError
from advisor.knowledge.places import PlaceKind
from advisor.project.garment import Garment, Seam
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.unit.order.order_projects import known

HEAD = "garment: One\nfabrics:\n  shell: {fabric: gabardine}\n  frill: {fabric: organza}\nseams:\n"


def read(places: str, more: str = "") -> Garment:
    """The garment of some places."""
    return garment_of(parse_yaml(f"{HEAD}{places}{more}", "project.yaml"), known())


def one(name: str, layers: str = "[shell, shell]", more: str = "") -> Seam:
    """A place of its own."""
    return read(f"  - {{name: {name}, layers: {layers}{more}}}\n").seams[0]


INFERRED = [
    ("side", "[shell, shell]", "", "seam"),
    ("leg elastic", "[shell, {notion: elastic}]", "", "elastic-edge"),
    ("edge", "[shell, {notion: elastic}]", ", edge: folded", "elastic-edge"),
    ("waist elastic", "[shell, {notion: elastic}]", "", "casing"),
    ("waist casing", "[shell, {notion: elastic}]", ", edge: folded", "casing"),
    ("waistband button", "[shell, shell]", "", "button"),
    ("buttonholes", "[shell, shell]", "", "buttonhole"),
    ("button band", "[shell, shell]", "", "front-band"),
    ("pocket flap", "[shell, shell]", "", "faced-edge"),
    ("side pocket", "[shell, shell]", "", "set-in-pocket"),
    ("collar edge", "[shell, shell]", ", edge: turned", "faced-edge"),
    ("qwerty", "[shell, shell]", ", edge: turned", "faced-edge"),
    ("qwerty", "[shell, {use: frill, fullness: 2}]", "", "gathered-edge"),
    ("qwerty", "[shell, {use: frill, fullness: 1.05}]", "", "seam"),
    ("qwerty", "[shell]", ", edge: hem", "hem"),
    ("centre back", "[shell, {notion: coil zip}]", "", "zip"),
    ("neck", "[shell, {notion: hook and eye}]", "", "hook"),
    ("storm flap", "[shell, {notion: hook-and-loop tape}, shell]", ", edge: turned", "faced-edge"),
    ("stones on the yoke", "[shell, {notion: glass stones}]", "", "stones"),
    ("ribbon on the cuff", "[shell, {notion: satin ribbon}]", "", "ribbon"),
    ("sewn-on cuff", "[shell, shell]", "", "cuff"),
    ("qwerty", "[shell]", ", edge: faced", "faced-edge"),
    ("qwerty", "[shell]", ", edge: Bound", "bound-edge"),
    ("neck", "[shell]", ", edge: raw", "raw-edge"),
    ("hem", "[shell, {notion: elastic}]", ", kind: edge, edge: elastic", "elastic-edge"),
    ("qwerty", "[shell]", ", kind: edge, edge: turned", "faced-edge"),
    ("wrap edge", "[shell]", ", kind: edge", "faced-edge"),
    ("skirt edge", "[shell]", ", kind: edge", "hem"),
    ("glued stones", "[shell, {notion: glass button}]", "", "stones"),
    ("ribbon trim", "[shell, {notion: satin ribbon}]", "", "ribbon"),
    ("lapel roll line", "[shell, {notion: stay tape}]", "", "stay-tape"),
    ("shoulder pads", "[shell, {notion: shoulder pad}]", "", "pad"),
    ("front canvas", "[shell, {notion: hair canvas}]", "", "canvas"),
    ("undercollar", "[shell, {notion: hair canvas}]", "", "canvas"),
    ("facing fusing", "[{notion: woven fusible interfacing}, shell]", "", "interfacing"),
    ("edge", "[shell, {notion: hair canvas}, shell]", "", "seam"),
    ("belt loops", "[shell, shell]", "", "belt-loop"),
    ("underlining", "[shell, frill]", "", "underlining"),
    ("shoulder", "[shell, {notion: stay tape}, shell]", "", "seam"),
    ("cups", "[shell, {notion: bra cup}]", "", "cup"),
    ("shirred back", "[shell, {notion: elastic thread}]", "", "shirring"),
    ("shirred back", "[shell]", ", kind: shirring", "shirring"),
    ("back", "[shell]", ", method: shirred in rows", "shirring"),
    ("bone channels", "[shell, {notion: boning}, shell]", "", "boning"),
    ("bones", "[shell, {notion: boning}]", "", "boning"),
    ("bodice side", "[shell, {notion: boning}, shell]", "", "boned-seam"),
    ("front", "[shell, {notion: busk}, shell]", "", "boned-seam"),
    ("cup seam", "[shell, shell]", "", "seam"),
    ("upper cup", "[shell, shell]", "", "seam"),
    ("shirred side", "[shell, shell]", "", "seam"),
    ("shirring side seam", "[shell, shell]", "", "seam"),
]


@pytest.mark.parametrize(("name", "layers", "more", "kind"), INFERRED)
def test_a_kind_is_inferred(name: str, layers: str, more: str, kind: str) -> None:
    """By the edge, the notions, the head of the name, the fullness; and it counts as assumed."""
    found = one(name, layers, more)
    assert kind == found.place
    assert ("kind" in found.assumed) == (found.placed_by != "")


def test_a_kind_that_is_said_is_not_assumed() -> None:
    """Whatever the name says."""
    found = one("waistband button", more=", kind: dart")
    assert ("dart", "") == (found.place, found.placed_by)
    assert "kind" not in found.assumed


@pytest.mark.parametrize("kind", [k for k in known().places.kinds.values() if k.id != "seam"])
def test_a_kind_is_said_by_the_name_it_is_printed_by(kind: PlaceKind) -> None:
    """`collar seam`, `snaps`: what `explain places` shows may be typed back."""
    assert kind.id == one("side", more=f", kind: {kind.name}").place


def test_a_fastening_is_said_on_one_cloth() -> None:
    """`kind: fastening, fastening: buttonholes, on: shell, number: 5`."""
    text = "  - {name: front, kind: fastening, fastening: buttonholes, on: shell, number: 5}\n"
    found = read(text).seams[0]
    assert ("buttonhole", 5) == (found.place, found.making.times)
    assert ("shell",) == found.cloths()


def test_a_method_that_is_named_says_what_is_made() -> None:
    """Where no kind was said, it goes before the name; it fixes the kind of seam."""
    found = one("collar", more=", method: French seam")
    assert ("seam", "its method", "french-seam") == (found.place, found.placed_by, found.method)
    assert ("seam.kind", "French") in found.choices


@pytest.mark.parametrize(
    ("more", "message", "near"),
    [
        (", method: Frensh seam", "no way of making a place is called", "French seam"),
        (", kind: dart, method: French seam", "'French seam' makes a seam", ""),
        (", fitting: tight", "'fitting': unknown word", ""),
        (", fastening: buttonhols", "'fastening': unknown word", "buttonholes"),
        (", kind: buttonhol", "'kind': unknown word", "buttonhole"),
    ],
)
def test_what_cannot_be_is_refused_at_its_line(more: str, message: str, near: str) -> None:
    """With the nearest names."""
    with pytest.raises(InputError) as caught:
        one("side", more=more)
    (problem,) = caught.value.problems
    assert message in problem.message
    assert near in str(problem)
    assert problem.where is not None
    assert 6 == problem.where.line


def test_a_place_needs_layers_or_a_cloth_to_be_on() -> None:
    """And is told both ways of saying it."""
    with pytest.raises(InputError, match="has no 'layers'"):
        read("  - {name: side}\n")


def test_fitting_and_pattern_of_the_whole() -> None:
    """Two words of the garment."""
    found = read("  - {name: side, layers: [shell, shell]}\n", "fitting: loosely\npattern: new\n")
    assert ("loosely", "new") == (found.fitting, found.pattern)


@pytest.mark.parametrize(
    ("place", "kind"),
    [
        ("{name: front placket, layers: [c, c], length: 100 cm, times: 2}", "front-band"),
        ("{name: placket, layers: [c, c], length: 30 cm, edge: folded}", "front-band"),
        ("{name: front placket, layers: [c, c], length: 16 cm}", "placket"),
        ("{name: sleeve placket, layers: [c, c]}", "placket"),
        ("{name: back vent, layers: [c, c], length: 45 cm}", "placket"),
    ],
)
def test_a_placket_as_long_as_a_front_is_its_button_band(place: str, kind: str) -> None:
    """Nobody slashes a front from neck to hem; a slit for a hand is bound (common practice)."""
    text = f"garment: Sample\nfabrics: {{c: {{fabric: lawn}}}}\nseams:\n  - {place}\n"
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    assert kind == garment.seams[0].place
