"""A petticoat under its dress is pressed and cleaned by itself, and has a label of its own.

It is known by what holds it to the body; a part of which only the joining was left out stays on,
and keeps every limit of its cloths for the whole.
"""

from __future__ import annotations

from advisor.answer.label import Asked
from advisor.answer.pipeline import Parts, answer
from advisor.project.garment import Garment
from advisor.project.load import garment_of, load_project
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, advice, known

BALL = "more/boathouse_ball"
CLOSED = "  - {name: yoke elastic, kind: casing,"
OWN = frozenset({"yoke", "tulle", "woven elastic"})


def ball(*changes: tuple[str, str]) -> Garment:
    """The dress with some words of its file changed."""
    text = (FOLDER / f"{BALL}.yaml").read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return garment_of(parse_yaml(text, "project.yaml"), known())


def loose(garment: Garment) -> set[str]:
    return {name for name, cloth in garment.cloths.items() if cloth.detachable}


def test_a_petticoat_on_a_band_of_its_own_comes_off() -> None:
    """Its elastic forbids the cleaner nothing that the satin needs."""
    assert OWN == loose(load_project(FOLDER / f"{BALL}.yaml", known()))
    assert not [c for c in advice(BALL).judgement.conflicts if c.aspect.startswith("care.")]


def test_its_cloths_are_cleaned_together_by_one_label() -> None:
    """What the tulle alone would bear spoils the elastic that it hangs from."""
    label = answer(ball(), known(), Parts(label=Asked())).label
    assert label is not None
    (petticoat,) = label.care.apart
    assert "petticoat" == petticoat.cloth
    lines = {line.aspect: line.line for line in petticoat.lines}
    assert "Do not dry clean" == lines["care.professional"]


def test_a_part_without_a_hold_of_its_own_stays_on() -> None:
    """Nobody has said how it is joined; its limits count for the whole garment."""
    held = ball((CLOSED, "  - {name: yoke elastic, kind: seam,"))
    assert set() == loose(held)


def test_a_part_that_shares_a_cloth_stays_on() -> None:
    """The yoke that is sewn to the dress as well is no petticoat."""
    joined = ball(("[satin, mount, chiffon, satin,", "[satin, mount, yoke, chiffon, satin,"))
    assert set() == loose(joined)
