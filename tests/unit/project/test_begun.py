"""A project begun from a usual garment: what is asked, and what is put in."""

from __future__ import annotations

from collections.abc import Iterable

import pytest

from advisor.errors import InputError
from advisor.knowledge.place import knowledge_folder
from advisor.project.begun import begun
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known

TEMPLATES = sorted((knowledge_folder() / "templates").glob("*.yaml"))
TEXTS = {path.stem: path.read_text(encoding="utf-8") for path in TEMPLATES}
USUAL = {
    "lined-dress",
    "gathered-skirt",
    "trousers",
    "tailored-jacket",
    "coat",
    "blouse",
    "knit-top",
    "swimsuit",
    "raincoat",
    "tutu",
    "cape",
    "bias-gown",
}


def answered(name: str, answers: Iterable[str]) -> tuple[str, list[str]]:
    """The text begun from a template, and what was told on the way."""
    told: list[str] = []
    left = iter(answers)
    return begun(TEXTS[name], lambda _: next(left, None), told.append, known()), told


def garment(text: str) -> Garment:
    """What the text says."""
    return garment_of(parse_yaml(text, "project.yaml"), known())


def test_there_are_twelve() -> None:
    """The twelve garments that a maker would begin from."""
    assert USUAL == set(TEXTS)


@pytest.mark.parametrize("name", sorted(TEXTS))
def test_nothing_typed_is_the_template(name: str) -> None:
    """Where the answers end, or are all empty, everything stays; some forty lines at the most."""
    assert TEXTS[name] == answered(name, ())[0] == answered(name, [""] * 20)[0]
    assert len(TEXTS[name].splitlines()) <= 45


def test_what_is_answered_stands_in_the_file() -> None:
    """Name, units, fitting, machine, overlocker and cloth; the rest as it was."""
    said = ["Lamp dress", "us", "loosely", "industrial", "4-thread", "silk dupioni", "brocade, red"]
    text, told = answered("lined-dress", said)
    made = garment(text)
    assert ("Lamp dress", "us", "loosely") == (made.name, made.units, made.fitting)
    assert ("industrial", "4-thread") == (made.maker.machine, made.maker.overlocker)
    assert "dupioni" == made.cloths["shell"].entry
    assert any("Understood: dupioni" in line for line in told)


def test_a_cloth_is_struck_with_all_of_its_places() -> None:
    """Without its lining a dress has no lining seams, and the file says nothing of the cloth."""
    text, _ = answered("lined-dress", [""] * 7 + ["lining, back dart"])
    made = garment(text)
    assert "lining" not in made.cloths
    names = {seam.name for seam in made.seams}
    assert not {n for n in names if "lining" in n or n == "back dart"}
    assert {"side", "hem", "armhole"} <= names


@pytest.mark.parametrize("wrong", ["sleve", "collar of gold"])
def test_what_is_no_place_is_asked_again(wrong: str) -> None:
    """One clear word, then the question once more."""
    text, told = answered("coat", [""] * 7 + [wrong, "sleeve hem"])
    assert any("is no place of it" in line for line in told)
    assert "sleeve hem" not in {seam.name for seam in garment(text).seams}


def test_not_everything_can_be_struck() -> None:
    """A garment without a place is none; somebody who never says anything else is left."""
    with pytest.raises(InputError, match="not understood"):
        answered("knit-top", [""] * 7 + ["cloth"] * 30)
