"""What is basted behind a piece lies under the iron in every seam of it, named there or not."""

from __future__ import annotations

from functools import cache

import pytest

from advisor.claims.collect import Place
from advisor.claims.judgement import Advice
from advisor.claims.valuesets import Span
from advisor.decide.advise import advise
from advisor.knowledge.model import LIMIT_ASPECT
from advisor.order.work import order_of
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known

HEAD = """garment: Small case
maker: {machine: household, overlocker: 4-thread}
fabrics:
  tweed: {fabric: tweed, fibres: {wool: 100}, weight: 380 g/m2}
  acetate: {fabric: satin, fibres: {acetate: 100}, weight: 110 g/m2}
  velveteen: {fabric: velveteen, fibres: {cotton: 100}, weight: 290 g/m2}
  coutil: {fabric: coutil, fibres: {cotton: 100}, weight: 300 g/m2}
  taffeta: {fabric: taffeta, fibres: {silk: 100}, weight: 90 g/m2}
seams:
"""
MOUNTED = "{name: front lining, layers: [tweed, acetate], kind: underlining}"
FACES = (
    "{name: body backing, layers: [velveteen, coutil], kind: underlining}",
    "{name: stomacher backing, layers: [taffeta, coutil], kind: underlining}",
)


@cache
def judged(*rows: str) -> Advice:
    """A garment of a few places."""
    text = HEAD + "\n".join(f"  - {row}" for row in rows) + "\n"
    return advise(garment_of(parse_yaml(text, "p.yaml"), known()), known())


def hottest(found: Advice, place: str) -> float:
    """The hottest iron that a place is told."""
    verdict = found.judgement.verdicts[Place("seam", place)][LIMIT_ASPECT]
    assert isinstance(verdict.advised, Span)
    return verdict.advised.high


OUTSEAM = "{name: outseam, layers: [tweed, tweed], length: 100 cm}"
NAMED = "{name: outseam, layers: [tweed, acetate, acetate, tweed], length: 100 cm}"


def test_a_seam_that_does_not_name_its_underlining_is_pressed_no_hotter_than_that_bears() -> None:
    """Acetate behind wool: 110 °C as where it is named; without it wool gets its own 150."""
    assert hottest(judged(OUTSEAM, MOUNTED), "outseam") == 110.0
    assert hottest(judged(NAMED, MOUNTED), "outseam") == 110.0
    assert hottest(judged(OUTSEAM), "outseam") == 150.0


def test_the_wool_is_told_to_be_pressed_before_it_is_mounted() -> None:
    """Two layers that want unlike irons: each by itself, and gently together."""
    found = judged(OUTSEAM, MOUNTED)
    told = {(i.kind, tuple(sorted(i.tender))) for i in found.judgement.instructions}
    clash = {c.place.name for c in found.judgement.conflicts}
    assert clash & {"outseam", "front lining"} or any("acetate" in tender for _, tender in told)
    order = order_of(found, known()).order
    assert order.index("hot press tweed") < order.index("baste front lining")


@pytest.mark.parametrize("place", ["side back seam", "channels"])
def test_a_backing_of_two_faces_is_as_tender_as_the_face_that_lies_there(place: str) -> None:
    """Coutil behind velveteen is pressed as cotton; where no face is named the gentlest counts."""
    rows = (
        *FACES,
        "{name: side back seam, layers: [velveteen, coutil, coutil, velveteen], length: 30 cm}",
        "{name: channels, layers: [coutil, coutil], length: 30 cm}",
    )
    silk = hottest(judged(*rows), "channels")
    assert silk < 200.0
    assert hottest(judged(*rows), place) == (silk if place == "channels" else 200.0)
