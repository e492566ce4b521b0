"""A garment as the engine sees it: cloths, seams and the maker's machine, all resolved.

Light frozen values; whoever makes one (a phrase, a project file, a rule's example) has already
looked every name up. Lengths are mm, weights g/m².
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct, field
from msgspec.structs import force_setattr

from advisor.knowledge.model import Mix
from advisor.project.making import Making, Plan
from advisor.project.wished import Wishes
from advisor.units.showing import System


class Cloth(Struct, frozen=True):
    """One cloth or notion of the garment; several mixes mean that nobody knows which it is.

    `laid` names entries whose guards hold as well, for what is laid on the cloth; `notes` say what
    was assumed of it or not understood, and what follows from that. `unwashed` is cloth that she
    cuts as it comes, without shrinking it, `trims` one that is only laid on or binds. `overhang` is
    how far a strip of it reached over an edge and how far its end sank, mm (None: to the slope of
    the standard). `fibre_unknown` where the project says that nobody knows its fibre; `named` are
    the fibres that its own name holds. `put_in` is what only stands among the layers of a place, as
    a notion: it is no piece of the garment. `on_bias` is said of it in its own words.
    """

    name: str
    entry: str
    mixes: tuple[Mix, ...]
    weight: tuple[float, float] | None = None
    thickness: tuple[float, float] | None = None
    colour: str = ""
    shade: str = ""
    care: str = ""
    detachable: bool = False
    unwashed: bool = False
    trims: bool = False
    traits: dict[str, tuple[int, int]] = field(default_factory=dict)
    assumed: tuple[str, ...] = ()
    laid: tuple[str, ...] = ()
    notes: tuple[tuple[str, str], ...] = ()
    overhang: tuple[float, float | None] | None = None
    fibre_unknown: bool = False
    named: frozenset[str] = frozenset()
    put_in: bool = False
    on_bias: bool = False

    @property
    def fibre_known(self) -> bool:
        """Whether there is just one thing that this cloth can be made of."""
        return len(self.mixes) == 1


class Use(Struct, frozen=True):
    """How one cloth goes into a seam.

    `width` is that of a notion and `body` what the body measures round it, mm, where it is said.
    """

    cloth: str
    fullness: float = 1.0
    stretched: float = 1.0
    width: float | None = None
    body: float | None = None


class Companion(Struct, frozen=True):
    """What a place is to others that it belongs to, as the piping of an edge.

    `first` says that it is made before them, and not upon them.
    """

    hosts: tuple[str, ...]
    what: str
    first: bool


class Seam(Struct, frozen=True):
    """A place where layers are joined, from the side under the iron downwards.

    `facts` are the seam facts of the condition vocabulary; `choices` what the maker has fixed
    (aspect and answer). `apart`, `cold` and `by_hand` are set by remedies. `place` is the kind of
    place, "" where only cloths are asked about; `placed_by` is what it was inferred from, and
    `method` the way of making that the maker named; `fitting` how this place is fitted, and `part`
    the part of the garment that it belongs to; `fastening` the project's own word for what closes
    it; `companion` what it is to another place, where it belongs to one, and `guess` what its name
    alone was taken to mean, where another reading is possible; `half` is left or right of a zip,
    where the seams beside it tell on which side it lies.
    """

    name: str
    uses: tuple[Use, ...]
    facts: dict[str, Any] = field(default_factory=dict)
    choices: tuple[tuple[str, str | float], ...] = ()
    apart: frozenset[str] = frozenset()
    cold: bool = False
    by_hand: bool = False
    assumed: tuple[str, ...] = ()
    making: Making = field(default_factory=Making)
    place: str = ""
    placed_by: str = ""
    method: str = ""
    fitting: str = ""
    part: str = ""
    fastening: str = ""
    companion: Companion | None = None
    guess: str = ""
    half: str = ""
    different: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        named = tuple(dict.fromkeys(use.cloth for use in self.uses))
        force_setattr(self, "different", named)

    def cloths(self) -> tuple[str, ...]:
        """The different cloths of the seam, in the order of the stack."""
        return self.different

    @property
    def long_mm(self) -> float:
        """How long it is, mm; 0 where nobody says."""
        return float(self.facts.get("length") or 0.0)


class GarmentPart(Struct, frozen=True):
    """A named part of the garment, as its bodice: cloths from the body outwards.

    `separate` names those that hang free of the others; `fitting` is "" where nobody said.
    """

    name: str
    layers: tuple[str, ...] = ()
    separate: tuple[str, ...] = ()
    fitting: str = ""


class Maker(Struct, frozen=True):
    """What the maker works with, and for whom; `feet` is None where she has not said.

    `worn_by` is adult or child, "" where nobody says it; `worn_over` is yes or no where an example
    of a rule says whether it is a coat or the like, else "".
    """

    machine: str = "household"
    overlocker: str = ""
    feet: tuple[str, ...] | None = None
    foot_lift: float | None = None
    assumed: tuple[str, ...] = ()
    worn_by: str = ""
    worn_over: str = ""


class Garment(Struct, frozen=True):
    """The whole garment.

    `fitting` and `pattern` (tried, new) are "" where nobody said. `apart` holds cloths that get no
    heat of their own in the last press.
    """

    name: str
    cloths: dict[str, Cloth]
    seams: tuple[Seam, ...]
    maker: Maker = Maker()
    units: System = "metric"
    fitting: str = ""
    pattern: str = ""
    parts: tuple[GarmentPart, ...] = ()
    apart: frozenset[str] = frozenset()
    single: bool = False
    plan: Plan = field(default_factory=Plan)
    wishes: Wishes = field(default_factory=Wishes)
