"""What must hold of every remedy that is offered: it harms nothing, and a project can say it."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from advisor.claims.judgement import Advice, Cure, Judgement
from advisor.claims.workarounds import GLUED
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.decide.together import cure_all
from advisor.project.garment import Garment
from advisor.project.lines import Line
from advisor.project.load import garment_of
from advisor.project.taking import with_lines
from advisor.textio.yamlfile import parse_yaml
from tests.laws.engine_garments import garments, known
from tests.told import with_glue

ROOT = Path(__file__).resolve().parents[2]
DEMOS, WHOLE = ROOT / "knowledge" / "examples", ROOT / "tests" / "garments"
PROJECTS = sorted([*DEMOS.glob("*.yaml"), *WHOLE.glob("*.yaml")])
few = settings(max_examples=20, deadline=None, derandomize=True, database=None)

CLOTHS = (
    "linen suiting",
    "cotton calico",
    "nylon organza",
    "acetate satin",
    "viscose velvet",
    "wool coating 480 g/m2",
    "silk chiffon",
    "polyester sequinned cloth",
    "cotton denim",
    "leather",
)
NOTIONS = ("woven fusible interfacing", "low-temperature fusible", "coil zip", "elastic", "boning")
KEYS = ("finish: none", "edge: hem", "stress: high", "seam: French", "pressing: glide")


def read(text: str) -> Garment:
    return garment_of(parse_yaml(text, "project.yaml"), known())


@cache
def advice_of(path: Path) -> Advice:
    return advise(read(path.read_text("utf-8")), known())


@st.composite
def projects(draw: st.DrawFn) -> str:
    """A project of a few cloths that meet one another in a few seams, some with notions."""
    cloths = draw(st.lists(st.sampled_from(CLOTHS), min_size=2, max_size=4, unique=True))
    names = [f"c{i}" for i in range(len(cloths))]
    lines = ["garment: random", "fabrics:"]
    lines += [f"  {name}: {cloth}" for name, cloth in zip(names, cloths, strict=True)]
    lines.append("seams:")
    for i in range(draw(st.integers(1, 4))):
        layers = draw(st.lists(st.sampled_from(names), min_size=1, max_size=3))
        notion = draw(st.sampled_from((None, *NOTIONS)))
        if notion:
            layers.insert(draw(st.integers(1, len(layers))), f"{{notion: {notion}}}")
        said = draw(st.lists(st.sampled_from(KEYS), max_size=1))
        stack = ", ".join(layers)
        about = ", ".join([f"name: s{i}", f"layers: [{stack}]", *said])
        lines.append(f"  - {{{about}}}")
    return "\n".join(lines) + "\n"


def said_of(judgement: Judgement) -> dict[object, object]:
    return {
        (place, aspect): verdict.allowed
        for place, found in judgement.verdicts.items()
        for aspect, verdict in found.items()
    }


def assert_harmless(before: Judgement, cure: Cure) -> None:
    """No clash is new, none that stood has changed where the remedy worked, and glue is fused."""
    was = {one.key: one for c in before.conflicts for one in (c, *c.also)}
    seams = {seam.name: seam for seam in before.garment.seams}
    for conflict in cure.after.conflicts:
        for one in (conflict, *conflict.also):
            assert one.key in was, f"{cure.remedy} brings {one.id}"
            changed = [s for s in cure.after.garment.seams if s.name == one.place.name]
            if changed and changed[0] != seams[one.place.name]:
                assert one.clash == was[one.key].clash, f"{cure.remedy} breaks a must at {one.id}"
    for seam in cure.after.garment.seams:
        cloths = cure.after.garment.cloths
        glued = {n for n in seam.cloths() if known().entries[cloths[n].entry].kind in GLUED}
        if seam != seams[seam.name] and seam.cold:
            assert glued <= seam.apart, f"{cure.remedy}: glue at {seam.name} never takes"


def assert_said(text: str, lines: tuple[Line, ...], after: Judgement) -> None:
    """The lines written into the project make of it the garment that was judged."""
    found = judge(read(with_lines(text, lines, "project.yaml")), known())
    assert said_of(found) == said_of(after)
    assert set(found.clashes) == set(after.clashes)


@few
@given(garments())
def test_no_offered_remedy_harms_anything(garment: Garment) -> None:
    """Whatever the garment: a remedy breaks no must and leaves nothing half made."""
    advice = advise(garment, known())
    for conflict in advice.judgement.conflicts:
        for cure in advice.cures[conflict.key]:
            assert_harmless(advice.judgement, cure)


@pytest.mark.parametrize("path", PROJECTS, ids=lambda p: p.stem)
def test_each_remedy_of_a_whole_garment_is_harmless_and_can_be_written(path: Path) -> None:
    """Every remedy of the demos and the whole garments reads back as what was proved."""
    advice = advice_of(path)
    for conflict in advice.judgement.conflicts:
        for cure in advice.cures[conflict.key]:
            assert cure.lines
            assert_harmless(advice.judgement, cure)
            assert_said(path.read_text("utf-8"), cure.lines, cure.after)


@few
@given(projects())
def test_each_remedy_of_a_project_can_be_written(text: str) -> None:
    """What is offered for a project can be said in it, and then is so."""
    advice = advise(read(text), known())
    for conflict in advice.judgement.conflicts:
        for cure in advice.cures[conflict.key]:
            assert_harmless(advice.judgement, cure)
            assert_said(text, cure.lines, cure.after)


@few
@given(projects())
def test_taking_all_leaves_nothing(text: str) -> None:
    """The set that is offered to cure everything does, written down and judged with the heat."""
    advice = with_glue(advise(read(text), known()), known())
    found = cure_all(advice, known())
    if found is None:
        return
    cured = advise(read(with_lines(text, found.lines, "project.yaml")), known())
    assert () == with_glue(cured, known()).judgement.conflicts


@few
@given(projects())
def test_one_cause_is_one_conflict(text: str) -> None:
    """No two conflicts of a garment are between the same layers for the same iron or glue."""
    conflicts = judge(read(text), known()).conflicts
    pairs = [
        (c.clash[0].cloths, c.clash[-1].cloths)
        for c in conflicts
        if c.aspect in ("press.temperature", "press.moisture")
    ]
    assert len(pairs) == len(set(pairs))
    spots = [spot for c in conflicts for spot in c.spots]
    assert len(spots) == len(set(spots))
