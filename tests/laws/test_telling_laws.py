"""No line that is told contradicts a verdict that stands beside it.

All cloths alone, all pairs of forty cloths by family, the garments of tests/garments and the
shipped examples, read with the small vocabulary of `telling_words`.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from itertools import combinations
from pathlib import Path

import pytest
from msgspec.structs import replace

from advisor.answer.core import told_cautions, told_tasks, told_tests
from advisor.answer.teller import Teller
from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.decide.evaluate import judge
from advisor.knowledge.place import knowledge_folder
from advisor.project.load import load_project
from advisor.project.quick import quick_garment
from tests.laws.engine_garments import known
from tests.laws.telling_words import ACTS, Verdicts, acts, forbidden
from tests.laws.test_guard_laws import forty

GARMENTS = Path(__file__).parents[1] / "garments"
SOUND = sorted([*GARMENTS.glob("*.yaml"), *(GARMENTS / "more").glob("*.yaml")])
FUSIBLE = {"notion": "fusible interfacing"}
EXAMPLES = sorted((knowledge_folder() / "examples").glob("*.yaml"))


def lines(judgement: Judgement) -> Iterator[tuple[str, list[Verdicts]]]:
    """Every line that is told, with the verdicts beside it: in any one of them it has to hold."""
    teller = Teller(judgement.garment, known())
    for task in told_tasks(judgement, teller):
        if task.rule:
            yield task.text, beside(judgement, task.place)
    for caution in told_cautions(judgement, teller):
        yield caution.text, [v for name in caution.about for v in beside(judgement, name)]
    for test in told_tests(judgement, teller):
        about = test.places or test.layers  # without places each layer is tried by itself
        places = [v for name in about for v in beside(judgement, name)]
        for text in test.look_for:
            yield text, places


def beside(judgement: Judgement, name: str) -> list[Verdicts]:
    """The verdicts of a seam with those of a cloth of it; of a cloth, in each of its seams."""
    verdicts = judgement.verdicts
    found = []
    for seam in judgement.garment.seams:
        for cloth in seam.cloths():
            if name in (seam.name, cloth, judgement.garment.name):
                of_cloth = verdicts[Place("fabric", cloth)]
                found.append({**of_cloth, **verdicts[Place("seam", seam.name)]})
    return found or [verdicts.get(Place("fabric", name), {})]


def contradictions(judgement: Judgement) -> set[tuple[str, str]]:
    """The acts that are told where no verdict beside them allows them."""
    return {
        (act, text)
        for text, places in lines(judgement)
        for act in set.intersection(*(forbidden(text, v) for v in places))
    }


def pair(*layers: str | dict[str, str]) -> Judgement:
    return judge(quick_garment(list(layers), known()), known())


@pytest.mark.parametrize("besides", [(), (FUSIBLE,)], ids=["alone", "with a fusible"])
def test_no_cloth_alone_is_told_what_its_verdicts_forbid(besides: tuple[dict[str, str]]) -> None:
    """Every cloth, in a seam by itself, and with what is to be fused to it."""
    for entry in known().fabrics():
        assert set() == contradictions(pair(entry.name, *besides)), entry.name


def test_no_pair_is_told_what_its_verdicts_forbid() -> None:
    """All pairs of forty cloths chosen by family."""
    for one, two in combinations(forty(), 2):
        assert set() == contradictions(pair(one, two)), f"{one} with {two}"


@pytest.mark.parametrize("path", [*SOUND, *EXAMPLES], ids=lambda path: path.stem)
def test_no_garment_is_told_what_its_verdicts_forbid(path: Path) -> None:
    """Whole garments and what is shipped as examples."""
    assert set() == contradictions(judge(load_project(path, known()), known()))


def test_without_its_conditions_the_same_is_found_wrong() -> None:
    """The law can fail: told everywhere, the rules contradict verdicts in these ways at least."""
    found = set()
    alone: list[tuple[str | dict[str, str], ...]]
    alone = [(entry.name, FUSIBLE) for entry in known().fabrics()]
    for layers in [*alone, *combinations(forty()[:12], 2)]:
        judgement = pair(*layers)
        fired = [replace(f, rule=replace(f.rule, told={})) for f in judgement.gathered.fired]
        gathered = dataclasses.replace(judgement.gathered, fired=fired)
        everywhere = replace(judgement, gathered=gathered)
        found |= {act for act, _ in contradictions(everywhere)}
    assert {"iron", "steam", "damp", "pin", "fusible"} <= found


@pytest.mark.parametrize(
    ("line", "act"),
    [
        ("Press every seam flat before the next one crosses it.", None),
        ("Press a scrap on the face, half of it under a cloth.", "iron"),
        ("Open it with the fingers, look, and only then press it open.", "iron"),
        ("Trim it, then press it once to the side.", "iron"),
        ("Never iron vinyl.", None),
        ("Hold steam over a scrap.", "steam"),
        ("Turn each pin between finger and thumb as it enters.", "pin"),
        ("Fuse a hand-sized scrap and let it cool.", "fusible"),
        ("If it must be fused, fuse a scrap.", None),
        ("Work a buttonhole through the same layers.", "buttonhole"),
        ("Set the differential feed above 1.", "machine"),
    ],
)
def test_the_vocabulary_reads_an_act_and_not_its_mention(line: str, act: str | None) -> None:
    """What is told of another time or of nobody is no act."""
    assert act in (ACTS.keys() | {None})
    assert acts(line) == ({act} if act else set())
