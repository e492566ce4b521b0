"""What is taken over from a garment much like it is what would have been said anew."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

import pytest
from msgspec.structs import replace

from advisor.claims.collect import gather
from advisor.claims.gathered import Gathered
from advisor.decide.evaluate import judge
from advisor.project.garment import Garment, Seam
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

PROJECT = """garment: Ferry jacket
fabrics:
  shell: linen suiting
  pile: cotton velvet
  lining: {fabric: satin, fibres: {acetate: 100}}
  gift: {fabric: brocade, fibres: unknown}
  glue: {notion: woven fusible interfacing}
seams:
  - {name: shoulder, layers: [shell, shell], length: 13 cm}
  - {name: front, layers: [shell, glue, gift], length: 62 cm, shape: curved}
  - {name: collar, layers: [pile, lining], length: 44 cm}
  - {name: hem, layers: [shell, lining], length: 118 cm, edge: hem}
  - {name: closing, kind: buttonhole, fastening: buttonholes, on: shell, number: 5}
"""


@cache
def jacket() -> Garment:
    return garment_of(parse_yaml(PROJECT, "jacket.yaml"), shipped())


def with_seam(at: int, seam: Seam | None) -> Garment:
    """The jacket with one place made in another way, or left out."""
    seams = jacket().seams
    changed = () if seam is None else (seam,)
    return replace(jacket(), seams=(*seams[:at], *changed, *seams[at + 1 :]))


def changed() -> Iterator[Garment]:
    """The jacket with one thing changed after another, whatever words hang on."""
    for at, seam in enumerate(jacket().seams):
        yield with_seam(at, None)
        yield with_seam(at, replace(seam, cold=True))
        yield with_seam(at, replace(seam, apart=frozenset(seam.cloths())))
        yield with_seam(at, replace(seam, facts={**seam.facts, "stress": "high"}))
        yield with_seam(at, replace(seam, uses=seam.uses[::-1]))
        yield with_seam(at, replace(seam, uses=seam.uses[:1]))
        full = replace(seam.uses[0], fullness=2.5)
        yield with_seam(at, replace(seam, uses=(full, *seam.uses[1:])))
    cloths = jacket().cloths
    for name, cloth in cloths.items():
        yield replace(jacket(), cloths={**cloths, name: replace(cloth, detachable=True)})
        yield replace(jacket(), cloths={**cloths, name: replace(cloth, mixes=cloth.mixes[-1:])})
    yield replace(jacket(), cloths={**cloths, "lining": replace(cloths["shell"], name="lining")})
    yield replace(jacket(), seams=jacket().seams[::-1])
    yield replace(jacket(), apart=frozenset(("pile", "shell")))
    yield replace(jacket(), maker=replace(jacket().maker, machine="industrial"))
    yield replace(jacket(), name="Another jacket")
    yield jacket()


def heard(found: Gathered) -> tuple[object, ...]:
    """Everything that was said, in its order, with what fired."""
    said = [(place, list(by_aspect.items())) for place, by_aspect in found.said.items()]
    return said, found.fired, found.beside


@pytest.mark.parametrize("number", range(len(list(changed()))))
def test_taken_over_as_if_said_anew(number: int) -> None:
    """From the jacket as it was, and back: the same words, verdicts and clashes as without it."""
    known, garment = shipped(), list(changed())[number]
    before, anew = judge(jacket(), known), judge(garment, known)
    after = judge(garment, known, before)
    assert heard(after.gathered) == heard(anew.gathered)
    assert (after, after.verdicts) == (anew, anew.verdicts)
    assert heard(judge(jacket(), known, after).gathered) == heard(before.gathered)


def test_what_has_not_changed_is_not_asked_again() -> None:
    """The very words are taken over, at a place and of a cloth that nothing touched."""
    known = shipped()
    before = gather(jacket(), known)
    after = gather(with_seam(0, replace(jacket().seams[0], cold=True)), known, before)
    old = {id(fired) for fired in before.fired if fired.place.name == "collar"}
    new = {id(fired) for fired in after.fired if fired.place.name == "collar"}
    assert old
    assert new == old
    assert {id(f) for f in before.fired if f.place.name == "shoulder"}.isdisjoint(
        id(f) for f in after.fired if f.place.name == "shoulder"
    )
