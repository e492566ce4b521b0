"""A cloth flat by itself is judged among the cloths of its seam as among all of the garment."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.order.setups import Setups
from advisor.project.garment import Seam, Use
from advisor.project.load import load_project
from tests.typed import CHECKOUT, shipped

GARMENTS = [
    *sorted((CHECKOUT / "knowledge/examples").glob("*.yaml")),
    *sorted((CHECKOUT / "tests/garments").glob("*.yaml")),
]


@pytest.mark.parametrize("path", GARMENTS, ids=lambda path: path.stem)
def test_no_other_cloth_has_a_say(path: Path) -> None:
    """Each cloth on itself, and on the next one that the project names."""
    advice = advise(load_project(path, shipped()), shipped())
    garment = advice.judgement.garment
    known = shipped().told(garment.units)
    setups = Setups(advice, known)
    names = list(garment.cloths)
    for cloths in [*((name, name) for name in names), *pairwise(names)]:
        place = setups.alone(cloths)
        seam = Seam(place.name, tuple(map(Use, cloths)))
        among_all = judge(replace(garment, seams=(seam,)), known, advice.judgement)
        assert among_all.verdicts[Place("seam", seam.name)] == setups.judged(place)
