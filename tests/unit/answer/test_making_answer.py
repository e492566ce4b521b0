"""What the sheet and its data say of building and buying, for the demo projects."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Parts, answer
from advisor.project.load import load_project
from advisor.render.printed.compact import render_sheet
from advisor.render.printed.detailed import render_detailed
from advisor.render.printed.only import render_only
from tests.told import written
from tests.typed import shipped

DEMOS = Path(__file__).resolve().parents[3] / "knowledge" / "examples"
JACKET, COAT = "bandstand-jacket", "lantern-parade-coat"


@cache
def told(name: str) -> Answer:
    """The answer to a demo, with what to buy."""
    known = shipped()
    return answer(load_project(DEMOS / f"{name}.yaml", known), known, Parts(shopping=True))


@cache
def data(name: str) -> dict[str, Any]:
    """The same as it is written."""
    return written(told(name))


def test_data_have_the_keys_of_the_contract() -> None:
    """Seams, cloth, thread and kit, each with the keys that other programs rest on."""
    found = data(JACKET)
    keys = {
        "name",
        "plies",
        "thickness_mm",
        "under_foot_mm",
        "allowance_mm",
        "finish",
        "needs_mm",
        "strength_n_per_cm",
        "thread_m",
    }
    assert all(keys <= set(seam) for seam in found["seams"])
    assert {"needle", "bobbin", "looper"} <= set(found["seams"][0]["thread_m"])
    assert {"fabric", "width_mm", "length_mm", "buy"} <= set(found["cloth"][0])
    assert {"colour", "needle_m", "bobbin_m", "looper_m", "buy"} <= set(found["thread"][0])
    assert {"item", "for", "state", "instead"} <= set(found["kit"][0])
    assert all(s["checked"] for row in found["kit"] for s in row["instead"])


def test_every_source_of_the_build_is_listed() -> None:
    """Whatever a row cites stands in the list of sources."""
    found = data(COAT)
    listed = {row["id"] for row in found["sources"]}
    cited = {s for row in found["seams"] for s in row["build_sources"]}
    cited |= {s for key in ("cloth", "thread") for row in found[key] for s in row["sources"]}
    cited |= {s for row in found["kit"] for other in row["instead"] for s in other["sources"]}
    assert cited
    assert {text.split(" ", 1)[0] for text in cited} <= listed


def test_results_of_scraps_stand_at_their_test() -> None:
    """What the project wrote down comes back with the sandwich that it belongs to."""
    (row,) = [test for test in data(JACKET)["tests"] if test["results"]]
    assert "lining side" in row["places"]
    assert row["results"][0]["works"] is True
    printed = " ".join(render_only(told(JACKET), "tests").split())
    assert "a walking foot was not needed" in printed


def test_every_seam_is_tried_in_just_one_sandwich() -> None:
    """None is left out, and none is tried twice."""
    places = [place for test in data(COAT)["tests"] for place in test["places"]]
    assert sorted(seam["name"] for seam in data(COAT)["seams"]) == sorted(places)


def test_two_sandwiches_never_have_the_same_layers_and_settings() -> None:
    """So there are as few as there can be."""
    kinds = [(tuple(t["layers"]), str(t["settings"])) for t in data(COAT)["tests"]]
    assert len(set(kinds)) == len(kinds)


SECTIONS = (
    "conflicts",
    "cautions",
    "cloths",
    "seams",
    "garment",
    "tests",
    "shopping",
    "cloth",
    "thread",
    "kit",
)


@pytest.mark.parametrize("name", SECTIONS)
def test_every_section_can_be_printed_alone(name: str) -> None:
    """It begins with the garment and says something."""
    text = render_only(told(COAT), name)
    assert text.startswith("Lantern parade coat: ")
    assert "Nothing to say here." not in text


def test_the_sheet_says_the_bulk_of_each_seam_and_what_to_buy() -> None:
    """A clause where a seam is thick, one line for all that are fine, and a few at the end."""
    text = " ".join(render_sheet(told(JACKET)).split())
    fine = [seam for seam in data(JACKET)["seams"] if seam["room"] == "fine"]
    assert fine
    for seam in data(JACKET)["seams"]:
        assert (f"{seam['build']}." in text) != (seam in fine)
    most = max(seam["under_foot_mm"] for seam in fine)
    assert f"{most:.1f} under the foot." in text.partition("Bulk: fine wherever")[2]
    assert "TO BUY Cloth: shell" in text


def test_the_detailed_sheet_says_how_a_seam_is_built() -> None:
    """All of it, not only what goes against the plan."""
    text = " ".join(render_detailed(told(JACKET), everything=True).split())
    for seam in data(JACKET)["seams"]:
        assert all(" ".join(says.split()) in text for says in seam["build_says"])


def test_without_pieces_the_list_says_how_to_have_cloth() -> None:
    """It does not pretend that nothing is needed."""
    found = replace(told(JACKET), cloth=())
    assert "write them under pieces:" in render_only(found, "shopping")
