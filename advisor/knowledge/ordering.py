"""What is known of the order of work: read, cross-checked, compiled, and as light values.

`operations.yaml` is one file of four parts. The values here carry no pydantic, so that a warm
start reads them from the cache.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import TYPE_CHECKING, Any

from msgspec import Struct, field

from advisor.errors import Problem
from advisor.records import from_data

if TYPE_CHECKING:
    from advisor.knowledge.book import BookItem

FILE = "operations.yaml"
NEVER = "never"
"""Said of work that nothing undoes."""
NO_ACT = "nothing undoes this: say in a word or two what is done, as `act: trim`"
SEWN = (
    "join",
    "dart",
    "pleat",
    "zip",
    "hem",
    "set-lining",
    "fasten",
    "lay-on",
    "elastic",
    "glue",
)
"""The operations that make a place; `sew` in a precedence means any of them."""
GROUPS = frozenset({"sew", "any"})
KIND = "kind of seam"
CHANGES = frozenset(
    {
        "needle",
        "thread",
        "bobbin",
        "foot",
        "plate",
        "tension",
        "stitch",
        "overlock thread",
        "other machine",
        "iron hotter",
        "iron cooler",
        "iron moisture",
        "iron surface",
    }
)


class WorkMinutes(Struct, frozen=True):
    """How long a piece of work takes, for itself and for each metre of its place."""

    each: float
    per_metre: float


class Operation(Struct, frozen=True):
    """A piece of work that a garment may need; minutes are work without changes of set-up.

    `together` is the work that is done in one sitting with it, `act` what nothing undoes of it, in
    a word or two.
    """

    id: str
    does: str
    verb: str
    scope: str
    rank: int
    when: tuple[tuple[str, ...], ...]
    machine: str
    iron: str
    minutes: WorkMinutes
    undo: str
    let_out: bool
    together: tuple[str, ...]
    sources: tuple[str, ...]
    act: str = ""


class SeamKind(Struct, frozen=True):
    """What a seam is in the garment: its customary place, and the kinds that run into it."""

    id: str
    words: tuple[str, ...]
    stage: int
    flat: bool
    closes: bool
    fitted: bool
    last: bool
    apart: bool
    pressed: str
    crosses: tuple[str, ...]
    sources: tuple[str, ...]


class Pick(Struct, frozen=True):
    """Which steps one side of a precedence speaks of; an empty kind or tag asks nothing."""

    op: tuple[str, ...]
    kind: tuple[str, ...]
    place: tuple[str, ...]
    tag: tuple[str, ...]


class PrecedenceRule(Struct, frozen=True):
    """Why some steps come before others."""

    id: str
    before: Pick
    after: Pick
    where: str
    why: str
    strength: str
    sources: tuple[str, ...]


class OrderKnowledge(Struct, frozen=True):
    """All of it; `changes` are minutes by name."""

    operations: dict[str, Operation] = field(default_factory=dict)
    kinds: dict[str, SeamKind] = field(default_factory=dict)
    precedences: tuple[PrecedenceRule, ...] = ()
    changes: dict[str, float] = field(default_factory=dict)
    estimates: tuple[str, ...] = ()


def check_order(item: BookItem | None, sources: Collection[str]) -> list[Problem]:
    """Every word of the file that names nothing."""
    if item is None:
        return []
    form, problems = item.form, []
    operations = {*form.operations, *GROUPS}
    for part in ("operations", "kinds", "precedences", "changes"):
        for id_, entry in getattr(form, part).items():
            problems += item.uncited((part, id_, "sources"), entry.sources, sources)
    for id_, entry in form.operations.items():
        at = ("operations", id_, "with")
        problems += item.unknown(at, entry.together, operations, "operation")
        if entry.undo == NEVER and entry.act is None:
            problems.append(Problem(NO_ACT, item.where("operations", id_, "undo")))
    for id_, entry in form.kinds.items():
        problems += item.unknown(("kinds", id_, "crosses"), entry.crosses, form.kinds, KIND)
    for id_, entry in form.precedences.items():
        for side in ("before", "after"):
            pick, where = getattr(entry, side), ("precedences", id_, side)
            problems += item.unknown((*where, "op"), pick.op, operations, "operation")
            problems += item.unknown((*where, "kind"), pick.kind, form.kinds, KIND)
    problems += item.unknown(("changes",), form.changes, CHANGES, "change of set-up")
    if "plain" not in form.kinds:
        problems.append(Problem("the kind 'plain' is missing", item.where("kinds")))
    return problems


def compile_order(item: BookItem | None) -> dict[str, Any]:
    """The file as plain data; nothing where there is no such file."""
    if item is None:
        return {}
    plain: dict[str, Any] = item.form.model_dump(mode="json")
    return plain


def order_from_plain(raw: dict[str, Any]) -> OrderKnowledge:
    """The light values of what `compile_order` gave."""
    if not raw:
        return OrderKnowledge()
    changes = raw["changes"]
    return OrderKnowledge(
        {id_: from_data(Operation, row, id=id_) for id_, row in raw["operations"].items()},
        {id_: from_data(SeamKind, row, id=id_) for id_, row in raw["kinds"].items()},
        tuple(from_data(PrecedenceRule, row, id=id_) for id_, row in raw["precedences"].items()),
        {name: row["minutes"] for name, row in changes.items()},
        tuple(name for name, row in changes.items() if row["sources"] == ["estimate"]),
    )
