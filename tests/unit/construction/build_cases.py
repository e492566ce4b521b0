"""Projects for the tests of building and buying, by the shipped knowledge."""

from __future__ import annotations

from functools import cache
from typing import Any

from advisor.claims.collect import Place
from advisor.claims.judgement import Advice, Judgement
from advisor.construction.seamwork import SeamWork, seamworks
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

HEAD = """\
garment: Test apron
maker: {machine: household, foot lift: 6 mm, overlocker: 4-thread, feet: [standard]}
fabrics:
  denim: {fabric: denim, fibres: {cotton: 100}, weight: 400 g/m2, thickness: 0.9 mm, width: 150 cm}
  coat: {fabric: coating, fibres: {wool: 100}, weight: 600 g/m2, thickness: 3 mm}
  lawn: {fabric: lawn, fibres: {cotton: 100}, weight: 75 g/m2, thickness: 0.2 mm, colour: white}
  mystery: {fabric: lawn, fibres: unknown}
  film: {fabric: brocade, fibres: unknown}
seams:
"""


@cache
def known() -> Knowledge:
    return shipped()


def garment(seams: str, head: str = HEAD) -> Garment:
    """The project of these seams (lines of YAML)."""
    return garment_of(parse_yaml(head + seams + "\n", "p.yaml"), known())


def judged(seams: str, head: str = HEAD) -> Judgement:
    return judge(garment(seams, head), known())


def advised(seams: str, head: str = HEAD) -> Advice:
    return advise(garment(seams, head), known())


def works(seams: str, head: str = HEAD) -> dict[str, SeamWork]:
    """What each seam comes to, by its name."""
    return {work.seam.name: work for work in seamworks(judged(seams, head), known())}


def verdict(judgement: Judgement, seam: str, aspect: str = "seam.bulk") -> Any:
    return judgement.verdicts[Place("seam", seam)][aspect]
