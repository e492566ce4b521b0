"""Every rule proves itself: its examples fire, its near misses do not, its cures cure."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from advisor.claims.combine import Verdict
from advisor.claims.judgement import Advice
from advisor.claims.valuesets import Choice
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.knowledge.load import read_book
from advisor.knowledge.place import knowledge_folder
from advisor.project.quick import quick_garment
from advisor.textio.yamlfile import read_yaml
from tests.typed import shipped as knowledge


def rule_files() -> list[Path]:
    return sorted((knowledge_folder() / "rules").glob("*/*.yaml"))


def examples(kind: str) -> list[Any]:
    found = []
    for path in rule_files():
        for i, example in enumerate(read_yaml(path).data["examples"][kind]):
            found.append(pytest.param(path.stem, example, id=f"{path.stem}-{i}"))
    return found


def fired(example: dict[str, Any]) -> tuple[set[str], Advice]:
    garment = quick_garment(
        example.get("layers", ["calico"]), knowledge(), example.get("seam"), example.get("maker")
    )
    advice = advise(garment, knowledge())
    return {f.rule.id for f in advice.judgement.gathered.fired}, advice


def verdicts_on(advice: Advice, aspect: str) -> list[Verdict]:
    return [v[aspect] for v in advice.judgement.verdicts.values() if aspect in v]


def inside(verdict: Verdict, expected: Any) -> bool:
    """Whether a verdict lies inside what an example expects."""
    aspect = verdict.aspect
    if isinstance(verdict.advised, Choice):
        wanted = expected if isinstance(expected, list) else [expected]
        if isinstance(expected, dict):
            refused = expected.get("not", [])
            wanted = expected.get("of") or [w for w in aspect.words if w not in refused]
        words = [aspect.words[i] for i in verdict.advised.options()]
        if aspect.excluded:
            return not set(wanted) & set(words)
        return bool(words) and set(words) <= set(wanted)
    if not isinstance(expected, dict):
        expected = {"min": expected, "max": expected}

    def number(value: Any) -> float:
        return float(aspect.words.index(str(value))) if aspect.words else float(value)

    low = number(expected["min"]) if "min" in expected else aspect.low
    high = number(expected["max"]) if "max" in expected else aspect.high
    return low <= verdict.advised.low <= verdict.advised.high <= high


@pytest.mark.parametrize(("rule", "example"), examples("fires"))
def test_example_fires(rule: str, example: dict[str, Any]) -> None:
    """The rule fires in its example and what it promises comes true."""
    ids, advice = fired(example)
    assert rule in ids
    for aspect, expected in example.get("expect", {}).items():
        found = verdicts_on(advice, aspect)
        assert found, f"no verdict on {aspect}"
        shown = [(v.allowed, v.advised, [s.claim.origin for s in v.because]) for v in found]
        assert any(inside(v, expected) for v in found), f"{aspect}: {expected}, but {shown}"
    wanted = example.get("conflict")
    if wanted:
        keys = [c.key for c in advice.judgement.conflicts if wanted in c.aspects]
        assert keys, f"no conflict on {wanted}, only {advice.judgement.conflicts}"
        if "cures" in example:
            cures = {cure.remedy for key in keys for cure in advice.cures[key]}
            assert example["cures"] in cures


@pytest.mark.parametrize(("rule", "example"), examples("quiet"))
def test_near_miss_is_quiet(rule: str, example: dict[str, Any]) -> None:
    """The rule does not fire in its near miss."""
    garment = quick_garment(
        example.get("layers", ["calico"]), knowledge(), example.get("seam"), example.get("maker")
    )
    judgement = judge(garment, knowledge())
    assert rule not in {f.rule.id for f in judgement.gathered.fired}


def test_every_rule_file_is_read() -> None:
    """No rule file is left out of the knowledge."""
    assert {path.stem for path in rule_files()} == set(read_book(knowledge_folder()).rules)
