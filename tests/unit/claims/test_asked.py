"""Who is asked an aspect is declared with it, and a word that a rule may test with its list."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.claims.collect import Place
from advisor.decide.evaluate import judge
from advisor.knowledge.load import read_book
from advisor.knowledge.model import Knowledge, from_plain
from advisor.knowledge.vocabulary import check_book
from advisor.overlay.cache import compile_folder
from advisor.project.quick import SEAM, quick_garment
from tests.unit.knowledge.small_book import FILES, rule, write_book

DIRECTION = (
    "stitch.direction: {title: direction, kind: options, scope: [seam], "
    "asked of: WHO, options: [with the grain, either way]}\n"
)
CLAIM = "{aspect: stitch.direction, of: [with the grain], why: It creeps., sources: [habit]}"


def known(tmp_path: Path, who: str) -> Knowledge:
    """The small book with a new aspect, of which a cloth and a rule speak."""
    velvet = FILES["fabrics/velvet.yaml"].replace("claims:\n", f"claims:\n  - {CLAIM}\n")
    assert CLAIM in velvet
    files = rule("stitch", "directed", "{layer: {pile: at least short}}", more=f"then: [{CLAIM}]\n")
    files |= {
        "fabrics/velvet.yaml": velvet,
        "aspects.yaml": FILES["aspects.yaml"] + DIRECTION.replace("WHO", who),
    }
    return from_plain(compile_folder(write_book(tmp_path, files)))


def asked(knowledge: Knowledge, stitched_by: str) -> bool:
    """Whether a seam of velvet is told the new aspect."""
    garment = quick_garment(["velvet", "velvet"], knowledge, {"stitched by": stitched_by})
    return "stitch.direction" in judge(garment, knowledge).verdicts[Place("seam", SEAM)]


@pytest.mark.parametrize(
    ("who", "machine", "hand"),
    [("machine", True, False), ("hand", False, True), ("both", True, True)],
)
def test_a_seam_is_asked_what_its_maker_can_set(
    tmp_path: Path, who: str, machine: bool, hand: bool
) -> None:
    """An aspect added for the machine is not told of a seam that is sewn by hand."""
    knowledge = known(tmp_path, who)
    assert machine is asked(knowledge, "machine")
    assert hand is asked(knowledge, "hand")


def test_a_weave_that_is_not_declared_is_refused(tmp_path: Path) -> None:
    """With file, line and column, and the nearest; one that is declared passes."""

    def problems(weave: str) -> list[str]:
        velvet = FILES["fabrics/velvet.yaml"].replace("weave: pile", f"weave: {weave}")
        words = "weave: {words: [plain, twill, satin], means: how threads lie}\n"
        files = {"fabrics/velvet.yaml": velvet, "words.yaml": words}
        return [str(p) for p in check_book(read_book(write_book(tmp_path, files)))]

    (found,) = (line for line in problems("plian") if "velvet.yaml" in line)
    assert "velvet.yaml:5:8: unknown weave 'plian'" in found
    assert "'plain'" in found
    assert [] == [line for line in problems("plain") if "velvet.yaml" in line]
