"""What a check offers can be taken as it is offered, whatever the order of work makes of it.

The order takes the machine from places that its methods sew by hand, and no file says so: a remedy
is proved on what the file says.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from advisor.answer.pipeline import Decided, Parts, decide
from advisor.decide.taking import chosen
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from advisor.writing.remedies import rewritten, take_remedies
from tests.garments.whole import FILES, decided, known

COLLAR = """
garment: Ferry coat
fabrics:
  coating: {fabric: wool coating, fibres: {wool: 100}, weight: 480 g/m2}
  fur: {fabric: fake fur, fibres: {modacrylic: 60, polyester: 40}, weight: 700 g/m2}
seams:
  - {name: collar edge, layers: [coating, fur], length: 90 cm, shape: curved, edge: turned}
  - {name: coat hem, layers: [coating], length: 135 cm, edge: hem}
"""
MOST_ROUNDS = 12
"""How many remedies a garment of these may ask for."""


@cache
def as_checked(text: str) -> Decided:
    """A project decided as `check` does it, with its order of work behind it."""
    return decide(garment_of(parse_yaml(text, "project.yaml"), known()), known(), Parts())


def test_a_remedy_is_taken_where_the_order_sews_a_hem_by_hand(tmp_path: Path) -> None:
    """Thick cloth is hemmed by hand, which no file says; both remedies can be written."""
    file = tmp_path / "coat.yaml"
    for words in ("1", "1.2", "all"):
        file.write_text(COLLAR)
        assert take_remedies(file, words, known()).lines
        assert () == as_checked(file.read_text()).advice.judgement.conflicts


GIFT = """
garment: Lamplighter shirt
fabrics:
  body: {fabric: chambray, fibres: {cotton: 100}, weight: 130 g/m2}
  gift: {fabric: jacquard, fibres: unknown}
  glue: {notion: woven fusible interfacing}
seams:
  - {name: collar edge, layers: [gift, glue, gift], length: 52 cm, shape: corner, edge: turned}
  - {name: collar stand, layers: [gift, glue, gift, body], length: 40 cm, shape: curved}
"""


def test_all_are_taken_where_one_cause_stands_behind_another(tmp_path: Path) -> None:
    """Once the glue is gone its cloths clash by themselves: that is cured in the same stroke."""
    file = tmp_path / "shirt.yaml"
    file.write_text(GIFT)
    take_remedies(file, "1", known())
    assert as_checked(file.read_text()).advice.judgement.conflicts
    file.write_text(GIFT)
    take_remedies(file, "all", known())
    assert () == as_checked(file.read_text()).advice.judgement.conflicts


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.stem)
def test_each_remedy_can_be_taken_by_its_number(path: Path) -> None:
    """Of every garment at hand: what is typed is written, and its cause is gone from its place."""
    text, advice = path.read_text("utf-8"), decided(path).remedied
    assert decided(path).advice.judgement.conflicts == advice.judgement.conflicts
    for number, conflict in enumerate(advice.judgement.conflicts, 1):
        for which, _ in enumerate(advice.cures.get(conflict.key, ()), 1):
            together = chosen(advice, f"{number}.{which}", known())
            left = together.after.clashes.get(conflict.key)
            assert left is None or left.cause != conflict.cause
            assert text != rewritten(text, together, known(), path)


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.stem)
def test_remedies_taken_one_after_the_other_leave_none_to_take(path: Path) -> None:
    """The first remedy that is offered, taken again and again: what is left has none on file."""
    text, advice = path.read_text("utf-8"), decided(path).remedied
    for _ in range(MOST_ROUNDS):
        offered = [
            n for n, c in enumerate(advice.judgement.conflicts, 1) if advice.cures.get(c.key)
        ]
        if not offered:
            break
        text = rewritten(text, chosen(advice, str(offered[0]), known()), known(), path)
        advice = as_checked(text).remedied
    assert not any(advice.cures.values())
