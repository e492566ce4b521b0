"""The short way from a whole garment's file to its answer and its order of work."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import WHOLE, Decided, decide, tell
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
EXAMPLES = FOLDER.parents[1] / "knowledge" / "examples"
FILES = sorted([*EXAMPLES.glob("*.yaml"), *FOLDER.rglob("*.yaml")])
"""Every garment that is at hand, as the laws ask about them."""
NAMES = sorted(path.stem for path in FOLDER.glob("*.yaml"))
BLOUSE, TUTU, TOP, TROUSERS, SWIMSUIT, RAINCOAT = NAMES


@cache
def known() -> Knowledge:
    """The shipped knowledge."""
    return shipped()


@cache
def decided(file: Path) -> Decided:
    """A garment's file decided with everything that any view prints of it."""
    return decide(load_project(file, known()), known(), WHOLE)


@cache
def told(file: Path) -> Answer:
    """All that is told of it but the label."""
    return tell(decided(file), known(), WHOLE)


@cache
def advice(name: str) -> Advice:
    """The advice on a garment, or on a case as `cases/name`."""
    return advise(load_project(FOLDER / f"{name}.yaml", known()), known())


@cache
def work(name: str) -> Work:
    """Its order of work."""
    return order_of(advice(name), known())


@cache
def ordered(text: str) -> Work:
    """The order of work of a project that stands here as text."""
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    return order_of(advise(garment, known()), known())


@cache
def read(text: str) -> Answer:
    """All that is told of a project that stands here as text but the label."""
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    return tell(decide(garment, known(), WHOLE), known(), WHOLE)


def changed(name: str, old: str, new: str) -> Work:
    """The order of a garment with some words of its file changed."""
    text = (FOLDER / f"{name}.yaml").read_text(encoding="utf-8")
    assert old in text
    return ordered(text.replace(old, new))


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
