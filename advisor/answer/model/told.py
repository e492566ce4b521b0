"""What is told of any garment: layers, verdicts with their reasons, conflicts, cautions, tests."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from advisor.claims.workarounds import INTERFACING
from advisor.records import FLATTENED, OPTIONAL, UNWRITTEN

if TYPE_CHECKING:  # nothing is built for a question, which is answered sooner without
    from advisor.answer.model.making import ToldBuild

Word = str
Written = bool | int | float | str | list[str] | dict[str, str] | None
"""What a remedy writes into a project."""
Number = float
FIELDS_OF_KIND = {
    "options": frozenset({"options"}),
    "scale": frozenset({"low", "high"}),
    "range": frozenset({"unit", "low", "high", "limit"}),
}


@dataclass(frozen=True, slots=True)
class ToldSource:
    """A work that a value rests on; `read` only where its own text was not seen.

    `rank` is its standing, best first: that of its kind, of memory where it was not seen at all.
    """

    id: str
    citation: str
    kind: str
    read: str | None = field(default=None, metadata=OPTIONAL)
    rank: int = field(default=0, metadata=UNWRITTEN)


@dataclass(frozen=True, slots=True)
class ToldLayer:
    """A cloth or notion of the garment; `fibres` is the word unknown where several mixes fit.

    `laid` names what is laid on the cloth, whose guards hold as well.
    """

    name: str
    fabric: str
    kind: str
    fibres: dict[str, float | None] | str
    may_be: tuple[dict[str, float | None], ...]
    weight: tuple[float, float] | None
    text: str
    assumed: tuple[str, ...]
    laid: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ToldFact:
    """Something true of the input that a claim rests on."""

    who: str
    fact: str
    value: str


@dataclass(frozen=True, slots=True)
class ToldClaim:
    """What somebody says of an aspect; `decides` only among the reasons of an answer."""

    who: str
    says: str
    strength: str
    why: str
    rule: str
    certain: bool
    facts: tuple[ToldFact, ...]
    sources: tuple[str, ...]
    decides: bool | None = field(default=None, metadata=OPTIONAL)
    to: tuple[str, ...] | None = field(default=None, metadata=OPTIONAL)
    """Of a claim that is given up: who has the better of it."""


@dataclass(frozen=True, slots=True)
class ToldVerdict:
    """One answer in one place: the whole set, the pick in it, and its because.

    Temperatures are °C, lengths mm; `text` follows the maker's units. A range has unit, low,
    high and, for the iron, the limit of the layers; a scale low and high as words; else options.
    """

    aspect: str
    scope: str
    place: str
    kind: str
    options: tuple[str, ...] | None
    unit: str | None
    low: Number | Word | None
    high: Number | Word | None
    pick: Number | Word | None
    text: str
    because: tuple[ToldClaim, ...]
    given_up: tuple[ToldClaim, ...]
    limit: float | None = field(default=None, metadata=OPTIONAL)

    def written(self) -> frozenset[str]:
        """The fields that a verdict of its kind has."""
        every = frozenset().union(*FIELDS_OF_KIND.values())
        return frozenset(type(self).__slots__) - (every - FIELDS_OF_KIND[self.kind])

    def deciders(self) -> tuple[ToldClaim, ...]:
        """The claims that make the answer what it is."""
        return tuple(claim for claim in self.because if claim.decides)


@dataclass(frozen=True, slots=True)
class ToldPrice:
    """What a remedy costs, in steps of effort and of look."""

    effort: int
    look: int


@dataclass(frozen=True, slots=True)
class ToldLine:
    """A line to write into the project: the way to it in the file, and what stands there."""

    path: tuple[str | int, ...]
    value: Written


@dataclass(frozen=True, slots=True)
class ToldGap:
    """What the project seems to have forgotten at a place, and the line that says it.

    `line` is "" where no place is wanted, but another look at what is written.
    """

    id: str
    place: str
    text: str
    line: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldRemedy:
    """A change that was applied and re-run; of an order of work it is only a sentence."""

    text: str
    take: str | None = field(default=None, metadata=OPTIONAL)
    id: str | None = field(default=None, metadata=OPTIONAL)
    price: ToldPrice | None = field(default=None, metadata=OPTIONAL)
    then: str | None = field(default=None, metadata=OPTIONAL)
    earlier: bool | None = field(default=None, metadata=OPTIONAL)
    checked: bool | None = field(default=None, metadata=OPTIONAL)
    lines: tuple[ToldLine, ...] | None = field(default=None, metadata=OPTIONAL)
    yaml: str | None = field(default=None, metadata=OPTIONAL)
    sources: tuple[str, ...] | None = field(default=None, metadata=OPTIONAL)
    press_at_most_s: float | None = field(default=None, metadata=OPTIONAL)


@dataclass(frozen=True, slots=True)
class ToldLink:
    """One precedence of the order of work, with its reason."""

    before: str
    after: str
    why: str
    strength: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldConflict:
    """What cannot be reconciled; its number is the same wherever it is printed."""

    number: int
    id: str
    aspect: str
    aspects: tuple[str, ...]
    place: str
    places: tuple[str, ...]
    scope: str
    severity: str
    between: tuple[str, ...]
    message: str
    because: tuple[ToldClaim | ToldLink, ...]
    remedies: tuple[ToldRemedy, ...]

    no_cure: str = ""
    replaces: tuple[str, ...] = ()

    def bars_buying(self, item: str, places: Collection[str]) -> bool:
        """Whether a thing for some places is not bought before this is settled.

        It hurts, a layer rules it out, or what is offered first puts another in its place.
        """
        barred = self.severity == "injury" or INTERFACING in self.aspects
        here = self.scope == "garment" or bool({*self.places} & {*places})
        return here and (item in self.replaces or (barred and item in self.between))

    def cited(self) -> list[str]:
        """The sources of its reasons."""
        return [source for reason in self.because for source in reason.sources]


@dataclass(frozen=True, slots=True)
class ToldCureAll:
    """The cheapest remedies that between them leave no conflict, proved by running them."""

    takes: tuple[str, ...]
    remedies: tuple[str, ...]
    price: ToldPrice
    checked: bool
    lines: tuple[ToldLine, ...]
    yaml: str


@dataclass(frozen=True, slots=True)
class ToldInstruction:
    """How the work goes so that two layers never clash under one iron."""

    kind: str
    needy: tuple[str, ...]
    tender: tuple[str, ...]
    places: tuple[str, ...]
    text: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldCaution:
    """What can hurt somebody or spoil cloth, and what it is about.

    `general` is what to keep in mind at any sewing, in one sentence; empty where it is special.
    `meeting` when it is said because two cloths meet that are surely what it speaks of.
    """

    id: str
    area: str
    kind: str
    text: str
    about: tuple[str, ...]
    sources: tuple[str, ...]
    general: str = ""
    meeting: bool = field(default=False, metadata=UNWRITTEN)


@dataclass(frozen=True, slots=True)
class ToldTask:
    """Something to do that is no setting; `weight` is how much it matters, least first."""

    place: str
    scope: str
    text: str
    rule: str
    certain: bool
    weight: tuple[int, int, str]
    sources: tuple[str, ...]
    general: str = ""


@dataclass(frozen=True, slots=True)
class ToldResult:
    """What a test on scraps showed."""

    seam: str
    result: str
    works: bool | None


@dataclass(frozen=True, slots=True)
class ToldTest:
    """A sandwich to try on scraps; settings and results only where the seams are built.

    Without places each of the layers is tried by itself, before it is cut.
    """

    text: str
    layers: tuple[str, ...]
    places: tuple[str, ...]
    look_for: tuple[str, ...]
    settings: dict[str, Number | Word | None] | None = field(default=None, metadata=OPTIONAL)
    results: tuple[ToldResult, ...] | None = field(default=None, metadata=OPTIONAL)

    @property
    def stack(self) -> str:
        """What is tried, in words."""
        return " + ".join(self.layers) if self.places else ", ".join(self.layers)


@dataclass(frozen=True, slots=True)
class ToldFreed:
    """What some answers of a test of an unknown cloth would leave and allow, °C."""

    answers: tuple[str, ...]
    may_be: tuple[dict[str, float | None], ...]
    limit_c: float


@dataclass(frozen=True, slots=True)
class ToldCheapest:
    """The cheapest test of a cloth of unknown fibre."""

    id: str
    text: str
    frees: tuple[ToldFreed, ...]


@dataclass(frozen=True, slots=True)
class ToldUnknown:
    """What nobody has said, and what knowing it would change.

    Of a fibre: the iron limit now, and the most that knowing would allow, °C.
    """

    fact: str
    effect: str
    limit_c: float | None = field(default=None, metadata=OPTIONAL)
    most_c: float | None = field(default=None, metadata=OPTIONAL)
    test: ToldCheapest | None = field(default=None, metadata=OPTIONAL)
    short: str | None = field(default=None, metadata=OPTIONAL)


@dataclass(frozen=True, slots=True)
class ToldPlace:
    """A place where something is made; `built` is None for a question without lengths.

    `kind` is what is made there, and `kind_from` what that was inferred from; "" where it was said.
    `guess` is that in words, where only a name tells it and may be read otherwise; else "".
    `method` is the way in which the order of work makes it, `made` what a sheet says of that, and
    `allowance_as` an allowance that is another thing's width; "" where there is none to tell.
    """

    name: str
    layers: tuple[str, ...]
    facts: dict[str, str | float]
    assumed: tuple[str, ...]
    built: ToldBuild | None = field(default=None, metadata=FLATTENED)
    kind: str = ""
    kind_from: str = ""
    guess: str = ""
    method: str = ""
    made: str = ""
    allowance_as: str = ""
