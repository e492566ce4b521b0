"""Answers of one seam go together, and a hem is no seam."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest

from advisor.engine.agree import ENCLOSED, ENCLOSING
from advisor.engine.judge import judge
from advisor.errors import InputError
from advisor.knowledge.cache import load_knowledge
from advisor.knowledge.model import Knowledge
from advisor.project.load import load_project
from advisor.project.quick import quick_garment


@cache
def known() -> Knowledge:
    return load_knowledge()


def seam_of(layers: list[Any], seam: dict[str, Any] | None = None) -> dict[str, Any]:
    judgement = judge(quick_garment(layers, known(), seam), known())
    return next(v for place, v in judgement.verdicts.items() if place.scope == "seam")


def word(verdicts: dict[str, Any], aspect: str) -> str:
    verdict = verdicts[aspect]
    return str(verdict.aspect.words[int(verdict.pick)])


PAIRS = [
    ["boiled wool", "silk charmeuse"], ["silk chiffon"], ["nylon organza", "linen suiting"],
    ["cotton voile", "cotton poplin"], ["wool crepe", "silk habutai"], ["viscose challis"],
]  # fmt: skip


@pytest.mark.parametrize("layers", PAIRS, ids=" + ".join)
def test_an_edge_is_enclosed_only_by_a_seam_that_encloses(layers: list[str]) -> None:
    """Whoever is told that the edge is shut in is told a seam that shuts it in."""
    verdicts = seam_of(layers)
    if word(verdicts, "seam.finish") == ENCLOSED:
        assert word(verdicts, "seam.kind") in ENCLOSING


def test_glue_that_is_ruled_out_has_no_seconds() -> None:
    """Velvet rules a fusible out, so nobody is told to press it for its glue."""
    fused = seam_of(["wool coating", {"notion": "woven fusible interfacing"}, "wool coating"])
    ruled_out = seam_of(["viscose velvet", {"notion": "woven fusible interfacing"}, "wool coating"])
    assert ruled_out["interfacing.kind"].clash
    assert "press.dwell" in fused
    assert "press.dwell" not in ruled_out


def test_a_hem_is_hemmed_and_not_seamed() -> None:
    """At an edge that is a hem the cloth's hem is named, and elsewhere a seam."""
    hem, side = seam_of(["polyester georgette"], {"edge": "hem"}), seam_of(["polyester georgette"])
    assert "hem.kind" in hem
    assert "seam.kind" not in hem
    assert "seam.kind" in side
    assert "hem.kind" not in side


def test_cut_sizes_hold_their_fullness_already(tmp_path: Path) -> None:
    """A piece with cut sizes and a fullness is refused where the fullness stands."""
    file = tmp_path / "skirt.yaml"
    file.write_text(
        "garment: Skirt\n"
        "fabrics: {shell: {fabric: cotton poplin, width: 140 cm}}\n"
        "seams: [{name: side, layers: [shell, shell]}]\n"
        "pieces:\n"
        "  - {name: tier, fabric: shell, width: 60 cm, height: 20 cm, fullness: 2}\n",
        encoding="utf-8",
    )
    with pytest.raises(InputError, match=r"skirt\.yaml:5:\d+.*cut sizes"):
        load_project(file, known())
