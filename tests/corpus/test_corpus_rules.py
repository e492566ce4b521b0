"""Every rule fires for certain in a whole garment: a project, a published case, or one of ours."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from advisor.decide.evaluate import judge
from advisor.knowledge.place import knowledge_folder
from advisor.project.garment import Garment
from advisor.project.load import garment_of, load_project
from advisor.project.quick import quick_garment
from advisor.textio.yamlfile import Document, read_yaml
from tests.corpus import audit

HERE = Path(__file__).parent


def our_cases() -> list[tuple[str, Document]]:
    """The whole garments beside this file, each as a document of its own."""
    document = read_yaml(HERE / "whole_cases.yaml")
    return [
        (raw["garment"], Document(raw, document.positions, document.file)) for raw in document.data
    ]


def garments() -> Iterator[Garment]:
    for path in sorted((knowledge_folder() / "examples").glob("*.yaml")):
        yield load_project(path, audit.knowledge())
    for _, document in our_cases():
        yield garment_of(document, audit.knowledge())
    for row in read_yaml(HERE.parent / "published" / "cases.yaml").data:
        for ask in row.get("asks", []):
            if len(ask.get("layers", [])) > 1:
                yield quick_garment(
                    ask["layers"], audit.knowledge(), ask.get("seam"), ask.get("maker")
                )


@cache
def fired() -> frozenset[str]:
    return frozenset(
        one.rule.id
        for garment in garments()
        for one in judge(garment, audit.knowledge()).gathered.fired
        if one.certain
    )


def test_every_rule_fires_in_a_whole_case() -> None:
    """No rule waits for a garment that nobody makes."""
    silent = sorted({rule.id for rule in audit.knowledge().rules} - fired())
    assert "" == audit.report(silent)


@pytest.mark.parametrize("name", [name for name, _ in our_cases()])
def test_our_whole_cases_are_whole(name: str) -> None:
    """Each of our garments has several unlike cloths and seams."""
    raw = dict(our_cases())[name].data
    assert len(raw["fabrics"]) >= 4
    assert len(raw["seams"]) >= 5
