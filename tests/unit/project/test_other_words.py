"""A maker's own word is understood, or refused with what she has to write instead."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.errors import InputError
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.project.schema import ProjectForm
from advisor.project.start import interview
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped, typed

TEXT = """
garment: Apron
{root}
fabrics:
  {cloth}
  lining: poplin
seams:
  - name: side
    layers: {layers}
    {said}
"""


def made(
    *, said: str = "", root: str = "", cloth: str = "shell: denim", layers: str = ""
) -> Garment:
    """The garment of a file with one line of it changed."""
    text = TEXT.format(said=said, root=root, cloth=cloth, layers=layers or "[shell, shell]")
    return garment_of(parse_yaml(text, "apron.yaml"), shipped())


@pytest.mark.parametrize(
    ("said", "aspect", "meant"),
    [
        ("stitch: zigzag", "stitch.type", "304"),
        ("stitch: straight", "stitch.type", "301"),
        ("stitch: overlock", "stitch.type", "514"),
        ("stitch: 3-thread overlock", "stitch.type", "504"),
        ("finish: serged", "seam.finish", "overlocked"),
        ("finish: left raw", "seam.finish", "none"),
        ("seam: flat-felled seam", "seam.kind", "felled"),
        ("seam: French seam", "seam.kind", "French"),
    ],
)
def test_the_word_of_the_trade_is_taken_for_the_number(said: str, aspect: str, meant: str) -> None:
    """Nobody sets a stitch by the number of a standard."""
    assert (aspect, meant) in made(said=said).seams[0].choices


@pytest.mark.parametrize(
    ("line", "instead"),
    [
        ({"said": "seam: patch pocket"}, "'kind: patch pocket'"),
        ({"said": "seam: narrow rolled hem"}, "'method: narrow rolled hem'"),
        ({"said": "needle: 90"}, "'needle size: 90'"),
        ({"said": "stitch: wiggly"}, "narrow zigzag (304)"),
        ({"said": "allowance: 1"}, "'allowance: 1 cm'"),
        ({"said": "allowance: 15"}, "'allowance: 15 mm'"),
        ({"said": "length: 40"}, "'length: 40 cm'"),
        ({"said": "iron: hot"}, "'pressing: finger-press'"),
        ({"said": "method: rolled"}, "narrow rolled hem"),
        ({"root": "machine: household"}, "it under 'maker:'"),
        ({"root": "maker: household"}, "'maker: {machine: household, feet: [standard, zip]}'"),
        ({"cloth": "shell: [denim]"}, "'shell: {fabric: linen suiting, weight: 240 g/m2}'"),
        ({"cloth": 'shell: "300"'}, "'300 g/m2'"),
        ({"cloth": "shell: fleece 300"}, "'300 g/m2'"),
        ({"layers": "shell + lining"}, "'layers: [shell, lining]'"),
        ({"layers": "shell"}, "'layers: [shell, shell]'"),
        ({"layers": "[shell, iron-on]"}, "{notion: iron-on}"),
    ],
)
def test_a_word_in_the_wrong_place_is_refused_with_the_line_to_write(
    line: dict[str, str], instead: str
) -> None:
    """The refusal says what to write, and what it says is taken."""
    with pytest.raises(InputError) as caught:
        made(**line)
    assert instead in str(caught.value)


def test_what_a_refusal_offers_instead_is_taken() -> None:
    """Each of the lines above."""
    assert made(said="kind: patch pocket").seams[0].place == "patch-pocket"
    assert made(said="needle size: 90").seams[0].facts["needle size"] == 90.0
    assert made(said="allowance: 1 cm").seams[0].facts["allowance"] == 10.0
    fused = made(layers="[shell, {notion: iron-on}]").cloths["iron-on"].entry
    assert fused == "non-woven-fusible-interfacing"


def test_every_example_of_a_key_is_one_that_its_form_takes() -> None:
    """An example that is refused helps nobody."""
    data = {"garment": "Apron", "fabrics": {"shell": "denim"}}
    seam = {"name": "side", "layers": ["shell"]}
    for key, example in ProjectForm.WRITTEN.items():
        value = parse_yaml(f"it: {example}", "x.yaml").data["it"]
        if key in ("layers", "on", "joins", "gathers", "pleats"):
            ProjectForm.model_validate({**data, "seams": [{**seam, key: value}]})
        elif key in ProjectForm.model_fields:
            ProjectForm.model_validate({**data, "seams": [seam], key: value})


@pytest.mark.parametrize("said", ["shell to lining", "shell + lining", "shell and lining"])
def test_cloths_without_commas_are_told_to_stand_between_commas(said: str) -> None:
    """The first question about a seam is answered so by whoever reads aloud."""
    lines = ["apron", "", "", "", "", "denim", "shell", "poplin", "lining", "", "side", said]
    answers = iter([*lines, "shell, lining"])
    told: list[str] = []
    interview(lambda _: next(answers, None), told.append, shipped())
    assert "commas between: shell, lining" in told[-1]


def test_what_cannot_be_left_out_is_not_said_to_end_the_list() -> None:
    """The first cloth and the first seam; from the second on an empty line ends them."""
    answers = iter(["apron", "", "", "", "", "denim", "shell", "", "side", "shell", "", "", "", ""])
    asked: list[str] = []

    def ask(question: str) -> str | None:
        asked.append(question)
        return next(answers, None)

    interview(ask, lambda _: None, shipped())
    ends = [question for question in asked if question.endswith("[no more]")]
    assert ["Cloth 2", "Seam 2:"] == [question[:7] for question in ends]
    assert any(question.startswith("Cloth 1 ") for question in asked)


def test_a_file_whose_ending_was_left_out_is_offered(tmp_path: Path) -> None:
    """And a file that stands in the place of a command is told which one prints it."""
    (tmp_path / "apron.yaml").write_text("garment: Apron\n", "utf-8")
    for words in (("sheet", "apron"), ("iron", "apron"), ("apron",), ("apron.yaml",)):
        done = typed(*words, folder=tmp_path)
        assert done.returncode == 2
        command = words[0] if len(words) == 2 else "sheet"
        assert f"`advisor {command} apron.yaml`" in done.err
    assert "apron" not in typed("sheet", "tunic", folder=tmp_path).err
