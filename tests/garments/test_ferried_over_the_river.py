"""A short velvet jacket with sleeves of a found damask, as a ferry's clerk wears it on a stage."""

from __future__ import annotations

from functools import cache

from advisor.answer.label import Asked
from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Parts, answer
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, read

JACKET = """
garment: ferry clerk's jacket
fabrics:
  body: {fabric: velvet, fibres: {cotton: 100}, weight: 300 g/m2}
  gift: {fabric: damask, fibres: unknown}
  lining: {fabric: lining, fibres: {viscose: 100}, weight: 90 g/m2}
  cord: {notion: braid, fibres: {viscose: 100}}
seams:
  - {name: front canvas, layers: [body, {notion: hair canvas}], length: 52 cm, kind: canvas}
  - {name: front braid, layers: [body, cord], length: 24 cm, times: 10}
  - {name: shoulder, layers: [body, body], length: 13 cm, times: 2}
  - {name: side, layers: [body, body], length: 30 cm, times: 2}
  - {name: collar edge, layers: [body, {notion: hair canvas}, gift], length: 58 cm, edge: turned}
  - {name: collar seam, layers: [body, body], length: 42 cm, shape: curved}
  - {name: front facing, layers: [body, gift], length: 52 cm, edge: turned, times: 2}
  - {name: armhole, layers: [body, gift], length: 48 cm, times: 2}
  - {name: hem, layers: [body], length: 92 cm, edge: hem}
  - {name: front hooks, layers: [body, {notion: hook and eye}], times: 10}
"""
WASHABLE = JACKET.replace("fabric: velvet,", "fabric: velvet, care: washable,")


@cache
def _label(text: str) -> Answer:
    garment = garment_of(parse_yaml(text, "here"), known())
    return answer(garment, known(), Parts(label=Asked("eu", "metric", frozenset())))


def _washed(text: str) -> str:
    label = _label(text).label
    assert label is not None
    return next(line.line or "" for line in label.care.lines if line.aspect == "care.wash")


def _prepared(text: str) -> float | str | None:
    return next(
        v.pick
        for v in read(text).verdicts
        if (v.scope, v.place, v.aspect) == ("fabric", "body", "prepare.preshrink")
    )


def test_a_velvet_that_nobody_calls_washable_is_neither_washed_nor_labelled_so() -> None:
    assert _washed(JACKET) == "Do not wash"
    assert _prepared(JACKET) == "steam"


def test_a_velvet_sold_as_washable_is_washed_by_hand() -> None:
    assert _washed(WASHABLE).startswith("Hand wash")
    assert _prepared(WASHABLE) == "wash as it will be washed"


def test_the_upper_layer_of_a_padded_collar_is_near_no_iron_before_it_is_joined() -> None:
    """The canvas is basted to the undercollar alone, which is a loose piece till then."""
    found = ordered(JACKET)
    joined = found.order.index("join collar edge")
    near = dict(found.hot_near)
    early = [step for step in near if found.order.index(step) < joined]
    assert "press shoulder" in early  # the canvas of the front is in by then
    assert not [step for step in early if "gift" in near[step]]
    assert "gift" in near["press hem"]


def test_a_cloth_of_unknown_fibre_only_may_melt() -> None:
    told = [c.text for c in read(JACKET).cautions if "melt, drip" in c.text or "melts, d" in c.text]
    assert len(told) == 1
    assert told[0].startswith("It may melt, drip and burn")
    sure = read(JACKET.replace("fibres: unknown", "fibres: {polyester: 100}"))
    assert any(c.text.startswith("It melts, drips and burns") for c in sure.cautions)


def test_what_is_only_sewn_on_is_neither_pressed_nor_at_odds_under_an_iron() -> None:
    found = read(JACKET)
    assert not [i for i in found.irons if i.place == "front hooks"]
    pressed = [v for v in found.verdicts if v.place == "front hooks" and v.aspect[:6] == "press."]
    assert not pressed
    assert not [c for c in found.conflicts if "front hooks" in c.places]
    assert [c for c in found.conflicts if "armhole" in c.places]
    # The turned edge of pile is opened with the fingers, so that no iron is at odds there.
    assert not [c for c in found.conflicts if "front facing" in c.places]


def test_the_iron_is_kept_off_a_fastening_of_plastic_all_the_same() -> None:
    shirt = """
garment: ferry clerk's shirt
fabrics: {body: {fabric: cotton poplin}, studs: {notion: button, fibres: {nylon: 100}}}
seams:
  - {name: side, layers: [body, body], length: 50 cm}
  - {name: front buttons, layers: [body, studs], times: 7}
"""
    kept = [i.text for i in read(shirt).instructions if "studs" in i.tender]
    assert kept
