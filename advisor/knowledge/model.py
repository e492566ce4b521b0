"""The knowledge as everything that answers sees it: light, frozen values without pydantic.

They are built from the plain JSON of `compiling`. A set is a pair of numbers or a mask of options.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import msgspec
from msgspec import Struct

from advisor.knowledge.index import RuleIndex
from advisor.knowledge.purposes import GUARDS, Ends, unsaid
from advisor.knowledge.registers import Registers
from advisor.knowledge.spoken import in_units
from advisor.knowledge.telling import ToldWhere, told_from
from advisor.knowledge.when_asked import WhenAsked
from advisor.units.showing import System

if TYPE_CHECKING:
    from advisor.knowledge.labels import LabelKnowledge
    from advisor.knowledge.observations import Observation
    from advisor.knowledge.ordering import OrderKnowledge
    from advisor.knowledge.places import PlaceKnowledge
    from advisor.knowledge.workshop import Workshop

Mix = tuple[tuple[str, float | None], ...]
"""Fibres of one cloth with their shares in percent; None where the share is not known."""

FORMAT = 21
"""Raised whenever the compiled form changes; a cache of another format is not read."""

LIMIT_ASPECT = "press.temperature"
COLD = 20.0
"""The temperature that stands for an iron that is not used, °C."""


class Source(Struct, frozen=True):
    """A work that a value rests on."""

    id: str
    citation: str
    kind: str
    read: str
    note: str
    rank: int
    good: bool
    where: str = ""
    nowhere: str = ""


class Aspect(Struct, frozen=True):
    """A question, its kind and the answers that it may have."""

    id: str
    title: str
    kind: str
    scopes: tuple[str, ...]
    unit: str
    low: float
    high: float
    steps: tuple[float, ...]
    prefer: str
    usual: float | None
    words: tuple[str, ...]
    labels: dict[str, str]
    excluded: bool
    ties: str = "low"
    ends: Ends = ("", "")
    """What a should is for that sets only one end: `at least`, `at most`; empty: the look."""
    asked_of: str = "both"
    """Who is asked it: `machine`, `hand` or `both`; a seam sewn by the other is not."""
    milder_safe: bool = False
    """Whether a milder answer harms nothing, so that an upper end only bounds a treatment."""
    several: bool = False
    """Whether several answers may be listed, since more than one of them can be used."""
    usually: tuple[int, ...] = ()
    """Options that the trade takes where nobody names a best, the most usual first."""
    usually_sources: tuple[str, ...] = ()
    usually_why: str = ""

    @property
    def gentle(self) -> bool:
        """Whether too much of it harms, so that less is picked where there is a doubt."""
        return self.ends[1] in GUARDS


class Claim(Struct, frozen=True):
    """Somebody says that an aspect lies in a set: `span` for ranges and scales, else `mask`.

    `ends` is what its lower and its upper end are for, where that is not what its strength and
    risk make of it by themselves.
    """

    aspect: str
    span: tuple[float, float] | None
    mask: int
    best: float | None
    strength: str
    risk: str
    why: str
    sources: tuple[str, ...]
    rank: int
    origin: str
    on: str = ""
    ends: Ends | None = None

    def __hash__(self) -> int:
        """Of what seldom is the same in two claims; all of them are hashed over and over."""
        return hash((self.aspect, self.origin, self.span, self.mask, self.why))

    @property
    def purposes(self) -> Ends:
        """What its lower and its upper end are for; of options both are the same."""
        return self.ends or (unsaid(self.strength, self.risk),) * 2

    @property
    def guards(self) -> bool:
        """Whether an end of it keeps fingers, needle or cloth whole."""
        return not GUARDS.isdisjoint(self.purposes)


class Ceiling(Struct, frozen=True):
    """A published iron ceiling, °C of the sole plate."""

    max: float
    sources: tuple[str, ...]
    note: str
    good: bool


class Fibre(Struct, frozen=True):
    """A generic fibre; `limit` is the strictest ceiling of good standing, `start` of any."""

    id: str
    name: str
    group: str
    ceilings: tuple[Ceiling, ...]
    limit: float
    start: float
    traits: dict[str, int]
    claims: tuple[Claim, ...]
    facts: dict[str, Any]


class Entry(Struct, frozen=True):
    """A cloth or a notion; trait levels are pairs (lowest, highest possible)."""

    id: str
    name: str
    also: tuple[str, ...]
    kind: str
    family: str
    structure: str
    weave: str
    mixes: tuple[Mix, ...]
    sold_sources: tuple[str, ...]
    weight: tuple[float, float] | None
    thickness: tuple[float, float] | None
    traits: dict[str, tuple[int, int]]
    claims: tuple[Claim, ...]
    facts: dict[str, Any]


class Rule(Struct, frozen=True):
    """One rule; `parts` are its conditions by role, `told` where its lines are told, by line."""

    id: str
    area: str
    claim: str
    why: str
    shape: str
    parts: dict[str, Any]
    claims: tuple[Claim, ...]
    do: tuple[str, ...]
    cautions: tuple[dict[str, Any], ...]
    tests: tuple[str, ...]
    limits: str
    sources: tuple[str, ...]
    general: str = ""
    told: dict[str, tuple[ToldWhere, ...]] = msgspec.field(default_factory=dict)


class Remedy(Struct, frozen=True):
    """A change that may cure a conflict on one of the aspects that it names."""

    id: str
    text: str
    then: str
    cures: tuple[str, ...]
    needs: dict[str, Any]
    change: dict[str, Any]
    effort: int
    look: int
    earlier: bool
    sources: tuple[str, ...]


class Machine(Struct, frozen=True):
    """What a kind of machine can do."""

    id: str
    name: str
    claims: tuple[Claim, ...]
    stitches: tuple[str, ...]
    foot_lift: float | None


@dataclass(frozen=True, slots=True)
class Knowledge:
    """Everything that is known, by id."""

    sources: dict[str, Source]
    aspects: dict[str, Aspect]
    traits: dict[str, tuple[str, ...]]
    trait_meanings: dict[str, str]
    fibres: dict[str, Fibre]
    entries: Mapping[str, Entry]
    rules: tuple[Rule, ...]
    remedies: tuple[Remedy, ...]
    machines: dict[str, Machine]
    names: dict[str, str]
    fibre_names: dict[str, str]
    examples: str = field(default="")
    registers: Registers = field(default_factory=lambda: Registers({}), compare=False, repr=False)
    left_out: tuple[str, ...] = ()
    plain: dict[str, Any] = field(default_factory=dict, compare=False, repr=False)
    system: System = "metric"
    index: RuleIndex[Rule] = field(init=False, compare=False, repr=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "index", RuleIndex(self.rules))

    def told(self, units: str) -> Knowledge:
        """The same knowledge with its sentences in the units of a reader, `metric` or `us`."""
        system: System = "us" if units == "us" else "metric"
        return self if system == self.system or not self.plain else from_plain(self.plain, system)

    @property
    def order(self) -> OrderKnowledge:
        """What is known of the order of work."""
        return self.registers.order

    @property
    def places(self) -> PlaceKnowledge:
        """Kinds of place, and the methods by which they are made."""
        return self.registers.places

    @property
    def workshop(self) -> Workshop:
        """What is known of seam classes and of tools."""
        return self.registers.workshop

    @property
    def labels(self) -> LabelKnowledge:
        """What is known of labels."""
        return self.registers.labels

    @property
    def observations(self) -> dict[str, Observation]:
        """What can be seen of a cloth, by the test's id."""
        return self.registers.observations

    def kind_of(self, id_: str) -> str:
        """The kind of an entry: every name asks for it, and few of the entries are looked into."""
        entries = self.entries
        return entries.kind_of(id_) if isinstance(entries, WhenAsked) else entries[id_].kind

    def fabrics(self) -> list[Entry]:
        """The cloths, in the order of their ids."""
        return [entry for entry in self.entries.values() if entry.kind == "cloth"]


def _claims(rows: list[list[Any]], origin: str) -> tuple[Claim, ...]:
    return tuple(
        Claim(
            *(aspect, tuple(span) if span else None, mask, best, strength, risk),
            *(why, tuple(sources), rank, origin, on, (ends[0], ends[1])),
        )
        for aspect, span, mask, best, strength, risk, why, sources, rank, on, ends in rows
    )


def _mix(rows: list[list[Any]]) -> Mix:
    return tuple((fibre, share) for fibre, share in rows)


def _pairs(rows: dict[str, list[int]]) -> dict[str, tuple[int, int]]:
    return {name: (low, high) for name, (low, high) in rows.items()}


def _fibre(id_: str, raw: dict[str, Any]) -> Fibre:
    ceilings = tuple(Ceiling(c[0], tuple(c[1]), c[2], c[3]) for c in raw["ceilings"])
    return Fibre(
        id_,
        *(raw["name"], raw["group"]),
        ceilings,
        raw["limit"],
        raw["start"],
        raw["traits"],
        _claims(raw["claims"], f"fibre {id_}"),
        raw["facts"],
    )


def _entry(id_: str, raw: dict[str, Any]) -> Entry:
    origin = ("fabric " if raw["kind"] == "cloth" else "notion ") + id_
    return Entry(
        id_,
        raw["name"],
        tuple(raw["also"]),
        raw["kind"],
        raw["family"],
        raw["structure"],
        raw["weave"],
        tuple(_mix(mix) for mix in raw["mixes"]),
        tuple(raw["sold_sources"]),
        tuple(raw["weight"]) if raw["weight"] else None,
        tuple(raw["thickness"]) if raw["thickness"] else None,
        _pairs(raw["traits"]),
        _claims(raw["claims"], origin),
        raw["facts"],
    )


def _rule(raw: dict[str, Any]) -> Rule:
    return Rule(
        *(raw["id"], raw["area"], raw["claim"], raw["why"], raw["shape"], raw["parts"]),
        _claims(raw["claims"], "rule " + raw["id"]),
        *(tuple(raw["do"]), tuple(raw["cautions"]), tuple(raw["tests"])),
        raw["limits"],
        tuple(raw["sources"]),
        raw["general"],
        told_from(raw["told"]),
    )


def _frozen(value: Any) -> Any:
    return tuple(value) if isinstance(value, list | tuple) else value


def from_plain(plain: dict[str, Any], system: System = "metric") -> Knowledge:
    """Build the knowledge from the compiled data.

    Args:
        plain: what `compiling.to_plain` gave, as it is or read back from JSON.
        system: the units that its sentences speak in.
    """
    raw = in_units(plain, system)
    return Knowledge(
        sources={id_: Source(id_, *row) for id_, row in raw["sources"].items()},
        aspects={
            id_: Aspect(id_, **{name: _frozen(value) for name, value in a.items()})
            for id_, a in raw["aspects"].items()
        },
        traits={id_: tuple(row[0]) for id_, row in raw["traits"].items()},
        trait_meanings={id_: row[1] for id_, row in raw["traits"].items()},
        fibres={id_: _fibre(id_, row) for id_, row in raw["fibres"].items()},
        entries=WhenAsked(raw["entries"], _entry),
        rules=tuple(map(_rule, raw["rules"])),
        remedies=tuple(
            Remedy(**{**r, "cures": tuple(r["cures"]), "sources": tuple(r["sources"])})
            for r in raw["remedies"]
        ),
        machines={
            id_: Machine(
                id_,
                m["name"],
                _claims(m["claims"], f"machine {id_}"),
                tuple(m["stitches"]),
                m["foot_lift"],
            )
            for id_, m in raw["machines"].items()
        },
        names=raw["names"],
        fibre_names=raw["fibre_names"],
        registers=Registers(raw),
        left_out=tuple(raw.get("left_out", ())),
        plain=plain,
        system=system,
    )
