"""The short way from a whole garment's file to its answer and its order of work."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from advisor.claims.collect import Place
from advisor.claims.judgement import Advice
from advisor.decide.advise import advise
from advisor.knowledge.model import Knowledge
from advisor.order.kinds import SeamPlace
from advisor.order.work import Work, order_of
from advisor.project.load import garment_of, load_project
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

FOLDER = Path(__file__).parent
NAMES = sorted(path.stem for path in FOLDER.glob("*.yaml"))
BLOUSE, TUTU, TOP, TROUSERS, SWIMSUIT, RAINCOAT = NAMES


@cache
def known() -> Knowledge:
    """The shipped knowledge."""
    return shipped()


@cache
def advice(name: str) -> Advice:
    """The advice on a garment, or on a case as `cases/name`."""
    return advise(load_project(FOLDER / f"{name}.yaml", known()), known())


@cache
def work(name: str) -> Work:
    """Its order of work."""
    return order_of(advice(name), known())


def changed(name: str, old: str, new: str) -> Work:
    """The order of a garment with some words of its file changed."""
    text = (FOLDER / f"{name}.yaml").read_text(encoding="utf-8")
    assert old in text
    garment = garment_of(parse_yaml(text.replace(old, new), "project.yaml"), known())
    return order_of(advise(garment, known()), known())


def aspects(name: str, place: str) -> set[str]:
    """What is asked at a place of a garment."""
    return set(advice(name).judgement.verdicts[Place("seam", place)])


def places(found: Work) -> dict[str, SeamPlace]:
    """The places of an order by name."""
    return {t.place.name: t.place for t in found.tasks.values() if t.place is not None}


def stands(found: Work, *steps: str) -> bool:
    """Whether steps stand in this order."""
    at = [found.order.index(step) for step in steps]
    return at == sorted(at)
