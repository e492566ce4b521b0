"""What the tests of a project share: the knowledge, and a project that is sound."""

from __future__ import annotations

from functools import cache

from advisor.errors import InputError, Problem
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

SOUND = """\
garment: Bandstand jacket
units: metric
maker:
  machine: household
  foot lift: 6 mm
  overlocker: 4-thread
  feet: [standard, zip, walking]
fabrics:
  shell: {fabric: linen suiting, weight: 240 g/m2, colour: "#27455f", care: washable}
  lining: {fabric: satin, fibres: {acetate: 100}, detachable: yes}
  frill: {fabric: organza, fibres: [nylon, silk], thickness: 0.1 mm, traits: {pin marks: some}}
  cuff: cotton 95 elastane 5 rib knit
  gift: {fabric: brocade, fibres: unknown, shade: pale}
seams:
  - {name: shoulder, layers: [shell, shell], length: 13 cm, allowance: 15 mm, finish: zigzag}
  - name: front facing
    layers: [shell, {notion: woven fusible interfacing}, shell]
    length: 62 cm
    shape: curved
    edge: turned
    needle size: US 10
    stitch: 301
  - {name: hem frill, layers: [shell, {use: frill, fullness: 2.5}], length: 118 cm, stress: low}
  - {name: cuff, layers: [shell, {use: cuff, stretched: 1.2}], length: 24 cm, stress: high}
"""


@cache
def knowledge() -> Knowledge:
    """The knowledge that is shipped."""
    return shipped()


def garment(text: str) -> Garment:
    """The garment of a project's text."""
    return garment_of(parse_yaml(text, "p.yaml"), knowledge())


def problems(text: str) -> tuple[Problem, ...]:
    """Everything that is wrong with a project's text; nothing when it can be used."""
    try:
        garment(text)
    except InputError as error:
        return error.problems
    return ()


def changed(old: str, new: str) -> str:
    """The sound project with one place of it changed."""
    assert 1 == SOUND.count(old), old
    return SOUND.replace(old, new)
