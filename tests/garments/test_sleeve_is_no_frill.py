"""A sleeve is as full as its cap is cut, and is told nothing of frills (`trade-fullness`)."""

from __future__ import annotations

import pytest

from advisor.answer.core import told_tasks
from advisor.answer.teller import Teller
from advisor.decide.advise import advise
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known

GARMENT = """
garment: Sample
fabrics: {{crepe: wool crepe, sheer: silk chiffon}}
seams: [{{name: {name}, layers: [crepe, {{use: sheer, fullness: 1.3}}], length: 48 cm}}]
"""


def _frill_is_told(name: str) -> bool:
    garment = garment_of(parse_yaml(GARMENT.format(name=name), "project.yaml"), known())
    judgement = advise(garment, known()).judgement
    tasks = told_tasks(judgement, Teller(garment, known()))
    return any("3 to 4 times" in task.text for task in tasks)


@pytest.mark.parametrize("name", ["sleeve head", "armhole", "set in sleeve"])
def test_a_sleeve_is_not_told_to_be_fuller(name: str) -> None:
    """Whether its shape is said or not."""
    assert not _frill_is_told(name)


@pytest.mark.parametrize("name", ["hem frill", "sleeve frill", "neck ruffle"])
def test_a_frill_is(name: str) -> None:
    """Also one at the end of a sleeve."""
    assert _frill_is_told(name)
