"""Which notion of unknown fibre bounds the iron of the whole: found without asking in vain."""

from __future__ import annotations

import pytest

from advisor.claims.judgement import Judgement
from advisor.decide import unknowns
from advisor.decide.evaluate import judge
from advisor.knowledge.model import Mix
from advisor.project.load import load_project
from tests.garments.whole import FOLDER, known


def asked(name: str, monkeypatch: pytest.MonkeyPatch) -> tuple[set[str], set[str], Judgement]:
    """Which things are found, which were tried, and the judgement."""
    tried: list[str] = []

    def counted(judgement: Judgement, one: str, mix: Mix, *rest: object) -> Judgement:
        tried.append(one)
        return as_if(judgement, one, mix, known())

    as_if = unknowns.as_if
    monkeypatch.setattr(unknowns, "as_if", counted)
    found = judge(load_project(FOLDER / f"{name}.yaml", known()), known())
    rows = unknowns.find_ruling(found, known())
    monkeypatch.undo()
    return {row.cloth for row in rows}, set(tried), found


@pytest.mark.parametrize("name", ["more/toll_keeper", "more/ponte_dress", "more/shirt"])
def test_nothing_is_tried_that_another_holds_down(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever it is made of, the iron of the whole would stay where it is."""
    found, tried, judgement = asked(name, monkeypatch)
    limit = judgement.verdicts[unknowns._whole(judgement)]["press.temperature"]
    cloths = judgement.garment.cloths
    unsure = {n for s in limit.because for n in s.cloths if not cloths[n].fibre_known}
    spared = {n for n in unsure if known().entries[cloths[n].entry].kind != "cloth"} - tried
    assert found <= tried
    assert spared or found
    for one in spared:
        for mix in cloths[one].mixes:
            after = unknowns.as_if(judgement, one, mix, known())
            assert unknowns._whole_limit(after) <= unknowns._whole_limit(judgement)
