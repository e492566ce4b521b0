"""The knowledge of the order of work: every word in it names something, every value a source."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from advisor.knowledge.book import BookItem
from advisor.knowledge.load import read_book
from advisor.knowledge.ordering import (
    CHANGES,
    OrderKnowledge,
    check_order,
    compile_order,
    order_from_plain,
)
from advisor.knowledge.schema_order import OrderForm
from advisor.order.costs import CostTable
from advisor.textio.yamlfile import parse_yaml

FOLDER = Path(__file__).resolve().parents[3] / "knowledge"

SMALL = """\
operations:
  join: {does: "Join {name}.", verb: join, scope: seam, rank: 0, machine: seam,
         minutes: {each: 4, per metre: 8}, undo: easy, with: [press], sources: [habit]}
  press: {does: "Press {name}.", verb: press, scope: seam, rank: 2, iron: seam,
          minutes: {each: 2}, undo: hard, sources: [habit]}
kinds:
  side: {words: [side], stage: 400, closes: yes, crosses: [plain], sources: [habit]}
  plain: {stage: 225, sources: [habit]}
precedences:
  sewn-before-pressed: {before: {op: [sew]}, after: {op: [press]}, where: same seam,
                        why: It is pressed once sewn., sources: [habit]}
changes:
  foot: {minutes: 1, sources: [habit]}
"""


def item(text: str) -> BookItem:
    document = parse_yaml(text, "operations.yaml")
    return BookItem("order", OrderForm.model_validate(document.data), document)


def test_small_knowledge_is_sound_and_compiles() -> None:
    """What was written comes back as light values, through JSON."""
    assert [] == check_order(item(SMALL), {"habit"})
    found = order_from_plain(json.loads(json.dumps(compile_order(item(SMALL)))))
    assert (4.0, 8.0, ("press",)) == (
        found.operations["join"].minutes.each,
        found.operations["join"].minutes.per_metre,
        found.operations["join"].together,
    )
    assert found.kinds["side"].closes
    assert ("plain",) == found.kinds["side"].crosses
    assert {"foot": 1.0} == found.changes


def test_a_folder_without_the_file_has_no_order() -> None:
    """No operations, and no complaint."""
    assert {} == compile_order(None)
    assert OrderKnowledge() == order_from_plain({})


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("with: [press]", "with: [pres]", "unknown operation 'pres'"),
        ("crosses: [plain]", "crosses: [plane]", "unknown kind of seam 'plane'"),
        ("op: [sew]", "op: [sow]", "unknown operation 'sow'"),
        ("sources: [habit]}\n", "sources: [hearsay]}\n", "unknown source 'hearsay'"),
        ("foot: {", "fot: {", "unknown change of set-up 'fot'"),
        ("  plain: {", "  plane: {", "the kind 'plain' is missing"),
    ],
)
def test_a_word_that_names_nothing_is_found(old: str, new: str, message: str) -> None:
    """With its line and the nearest name."""
    problems = check_order(item(SMALL.replace(old, new)), {"habit"})
    assert any(message in problem.message for problem in problems)
    assert all(problem.where and problem.where.line for problem in problems)


def test_the_shipped_file_names_every_change_and_prices_them_as_the_planner_does() -> None:
    """The prices of the file and the planner's own defaults are the same table."""
    book = read_book(FOLDER)
    assert book.order is not None
    assert [] == check_order(book.order, book.sources)
    prices = order_from_plain(compile_order(book.order)).changes
    assert set(prices) == CHANGES
    defaults = {name: getattr(CostTable(), name.replace(" ", "_")) for name in CHANGES}
    assert defaults == prices


def test_only_the_wait_for_a_cooler_iron_has_a_published_price() -> None:
    """All other prices are marked as estimates."""
    book = read_book(FOLDER)
    found = order_from_plain(compile_order(book.order))
    assert {"iron cooler"} == CHANGES - set(found.estimates)
