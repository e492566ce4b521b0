"""What is a conflict in a whole garment, and what is only a way of working.

Craft judgements are common practice of the trade; what each garment has to get right stands as
`# MUST:` lines at the top of its file.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from advisor.answer.pipeline import answer
from advisor.claims.judgement import Advice
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.project.load import garment_of, load_project
from advisor.project.quick import asked_garment
from advisor.textio.yamlfile import parse_yaml
from tests.told import with_glue
from tests.typed import shipped

HERE = Path(__file__).parent


@cache
def advice_of(name: str) -> Advice:
    known = shipped()
    advice = advise(load_project(HERE / f"{name}.yaml", known), known)
    return with_glue(advice, known)


def told(name: str) -> list[str]:
    """The instructions of a garment, in words."""
    known = shipped()
    found = answer(load_project(HERE / f"{name}.yaml", known), known)
    return [i.text for i in found.instructions]


@pytest.mark.parametrize(
    "name",
    [
        "cases/cotton_dress_nylon_zip_is_ordinary",
        "cases/cotton_trousers_elastic_is_ordinary",
        "cases/finger_press_clears_its_conflict",
        "01_blouse",
        "03_knit_yoke",
        "05_swimsuit",
        "06_raincoat",
    ],
)
def test_an_ordinary_garment_has_no_conflict(name: str) -> None:
    """Zips, elastic, linings and trims are sewn into cotton every day, and nothing is ruined."""
    assert () == advice_of(name).judgement.conflicts


def test_a_zip_is_kept_from_the_hot_iron() -> None:
    """Press the edges first, then beside the zip."""
    (said,) = told("cases/cotton_dress_nylon_zip_is_ordinary")
    assert "before the concealed zip goes in" in said
    assert "keep the hot iron off it" in said


def test_a_casing_is_pressed_before_its_elastic_is_drawn_in() -> None:
    """Rubber bears no iron; the casing is pressed empty."""
    (said,) = told("cases/cotton_trousers_elastic_is_ordinary")
    assert "before the elastic goes in" in said


def test_net_on_a_basque_costs_at_most_the_result() -> None:
    """Net on calico: nothing is ruined, one cause for each net, and every one can be cured."""
    conflicts = advice_of("02_tutu").judgement.conflicts
    assert [("net row",), ("tulle row",)] == [c.places for c in conflicts]
    assert {"result"} == {c.severity for c in conflicts}
    assert all(
        "finger-press" in {r.remedy for r in advice_of("02_tutu").cures[c.key]} for c in conflicts
    )


def test_finger_pressing_the_net_clears_it() -> None:
    """`pressing: finger-press`, written at both rows, leaves nothing against the tutu."""
    text = (HERE / "02_tutu.yaml").read_text("utf-8")
    cured = text.replace("to: 23 in}}", "to: 23 in}, pressing: finger-press}")
    assert 2 == cured.count("finger-press}")
    known = shipped()
    found = advise(garment_of(parse_yaml(cured, "tutu"), known), known)
    assert () == found.judgement.conflicts


SATIN = "{fabric: satin, fibres: {acetate: 100}}"
ORDINARY = {
    "a wool skirt lined with acetate": (
        ["shell: wool suiting", f"lining: {SATIN}"],
        ["shell, shell", "lining, lining", "shell, lining"],
    ),
    "a T-shirt with its neckband": (
        ["body: cotton jersey", "rib: cotton 95 elastane 5 rib knit"],
        ["body, body", "body, rib"],
    ),
    "a padded shoulder": (["shell: linen suiting"], ["shell, {notion: shoulder pad}"]),
    "a bound casing": (
        ["shell: cotton poplin"],
        ["shell, {notion: woven elastic}", "shell, {notion: bias binding}"],
    ),
}


@pytest.mark.parametrize("what", ORDINARY)
def test_other_ordinary_garments(what: str) -> None:
    """What is sewn every day is no conflict."""
    cloths, stacks = ORDINARY[what]
    seams = [f"- {{name: s{i}, layers: [{stack}]}}" for i, stack in enumerate(stacks)]
    text = "\n  ".join(["garment: g\nfabrics:", *cloths]) + "\nseams:\n  " + "\n  ".join(seams)
    known = shipped()
    found = advise(garment_of(parse_yaml(text + "\n", "g"), known), known)
    assert [] == [c.id for c in found.judgement.conflicts]


@pytest.mark.parametrize(
    ("one", "other", "clashes"),
    [
        ("waxed cotton", "wool coating", True),
        ("leather", "glitter tulle", True),
        ("waxed cotton", "cotton poplin", False),
        ("leather", "acetate satin", False),
    ],
)
def test_a_cloth_s_own_way_of_cleaning_has_to_suit_the_other(
    one: str, other: str, clashes: bool
) -> None:
    """Wax leaves in solvent and a coating is not washed; a leather cleaner takes a satin too."""
    found = [c.aspect for c in judge(asked_garment([one, other], shipped()), shipped()).conflicts]
    assert clashes is ("care.method" in found)
