"""What is known of places and how they are made: kinds, methods and their stages, as light values.

`places.yaml` is a register; each method is a file of its own in `methods/`. The values here carry
no pydantic, so that a warm start reads them from the cache.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from msgspec import Struct, field

from advisor.knowledge.names import KEPT
from advisor.knowledge.ordering import WorkMinutes
from advisor.knowledge.when_asked import WhenAsked
from advisor.records import from_data

if TYPE_CHECKING:
    from advisor.knowledge.book import BookItem

FILES = ("places",)
GROUPS: Mapping[str, tuple[str, ...]] = {
    "seam": ("seam.kind",),
    "support": ("seam.support",),
    "allowance": ("seam.allowance",),
    "finish": ("seam.finish",),
    "pins": ("pin.kind", "pin.place", "pin.insertion"),
    "machine": (
        "needle.point",
        "needle.size",
        "stitch.type",
        "stitch.length",
        "stitch.tension",
        "machine.foot",
        "machine.pressure",
    ),
    "thread": ("thread.fibre", "thread.size"),
    "hem": ("hem.kind",),
    "interfacing": ("interfacing.kind",),
}
"""The aspects of a place that a kind may leave out, in groups; pressing and care always apply."""
WAYS_TO_GATHER = ("hand rows", "gathering foot", "overlock", "elastic")
PLAIN = "seam"
"""The kind of a place that nothing says more of."""
SEWN_ON = frozenset({"hook", "snap", "button", "clasp", "bones-slid-in"})
"""Kinds of place in which nothing is joined: what is sewn on or slid in there is not pressed."""


class PlaceKind(Struct, frozen=True):
    """What is made at a place, and what follows from that alone.

    `drops` are the aspects that nobody asks there; `prepares` the work on single pieces before
    any stage of a method; `leads` whether it is meant where only its family is said; `plies` how
    layers pile up (joined, band, folded, flat, beside).
    """

    id: str
    name: str
    family: str
    means: str
    words: tuple[str, ...]
    notions: tuple[str, ...]
    drops: tuple[str, ...]
    allowance: bool
    finish: bool
    unit: str
    note: str
    plies: str
    prepares: tuple[str, ...]
    usual: str
    sources: tuple[str, ...]
    leads: bool = False


class Stage(Struct, frozen=True):
    """One stage of a method; "" and None mean that the piece of work says it.

    `act` is what nothing undoes of it, `lies` how the pieces have to lie (flat, open, any),
    `closes` what is closed by it, and `let_out` whether the place can still be let out after it:
    where not, it is past recall. `cuts_in` says that a slit or a notch is cut into the piece
    itself, which closes no more, and `cuts_behind` that what lies behind is cut away, which waits
    for the fitting by itself.
    """

    work: str
    verb: str = ""
    does: str = ""
    does_by_hand: str = ""
    when: tuple[tuple[str, ...], ...] | None = None
    machine: str = ""
    iron: str = ""
    minutes: WorkMinutes | None = None
    undo: str = ""
    act: str = ""
    lies: str = "any"
    closes: str = ""
    let_out: bool | None = None
    cuts_in: bool = False
    cuts_behind: bool = False


class Thing(Struct, frozen=True):
    """Something that a method uses up and that must be bought for it.

    `unit` says how it is counted: by the length of the place and its `ends` (mm), by the full
    length before it is drawn up, by the piece for each time of it, or once for the garment; of a
    row as many as the project says, and not counted where it says none; what is laced as long as
    its holes ask for, unless the garment names a cord. It is not bought where
    some place is made by a method in `unless`.
    """

    name: str
    unit: str
    note: str = ""
    unless: tuple[str, ...] = ()
    ends: float = 0.0
    tool: bool = False
    """Whether it is worked with and not used up: a foot, a punch, a die."""


class Depth(Struct, frozen=True):
    """The least and the most of a hem, mm; `told` says it, with `{depth}` for the figure."""

    min: float
    max: float
    told: str


class Turn(Struct, frozen=True):
    """How deep a hem is turned, on a straight edge and on a curve, and how its cut edge ends.

    `allowed` is what a hem takes at most that cannot be made deeper so; `deep` are the words of one
    that no figure tells.
    """

    deep: str
    usual: Depth | None
    curved: Depth | None
    allowed: Depth | None
    edge: str
    times: int = 1
    """How often it is turned up by that depth."""


class Method(Struct, frozen=True):
    """A way to make a place of some kinds; `fits` holds where the engine picks it by itself.

    `crossed_by` are places (shoulder, side …) that run over it when it is made so, whatever is
    usual; `buys` what it uses up; `allowance` an allowance that is told in words, because it is
    another thing's width; `says` what the sheet tells of it beyond its name; `turns` how deep a hem
    is turned and how its edge is finished. `by_hand` is the hand stitch of
    what shows of it where that is sewn without a machine, and `sewn` whether anything is sewn.
    """

    id: str
    name: str
    also: tuple[str, ...]
    makes: tuple[str, ...]
    about: str
    fits: dict[str, tuple[str, ...]]
    stages: tuple[Stage, ...]
    limits: str
    sources: tuple[str, ...]
    crossed_by: tuple[str, ...] = ()
    example: dict[str, Any] = field(default_factory=dict)
    buys: tuple[Thing, ...] = ()
    allowance: str = ""
    says: str = ""
    by_hand: str = ""
    sewn: bool = True
    turns: Turn | None = None


class PlaceKnowledge(Struct, frozen=True):
    """Kinds of place and methods, by id."""

    kinds: dict[str, PlaceKind] = field(default_factory=dict)
    methods: Mapping[str, Method] = field(default_factory=dict)

    def named(self, word: str) -> Method | None:
        """The method of a name or an id, capitals and hyphens or not."""
        plain = plain_word(word)
        for method in self.methods.values():
            if plain in map(plain_word, (method.id, method.name, *method.also)):
                return method
        return None


_INNER = re.compile(r"\binner(?= (?:skirt|dress|slip|bodice|layer|coat|jacket|hood))")
"""What a maker calls the lining that she wears as a garment of its own (`common-practice`)."""


@lru_cache(maxsize=KEPT)
def plain_word(text: str) -> str:
    """A name without capitals, hyphens and double spaces; an inner skirt or dress is a lining."""
    return _INNER.sub("lining", " ".join(text.casefold().replace("-", " ").split()))


def compile_places(
    places: Mapping[str, BookItem], methods: Mapping[str, BookItem]
) -> dict[str, Any]:
    """Both as plain data."""
    return {
        "kinds": {id_: _compiled_kind(item.form) for id_, item in places.items()},
        "methods": {id_: _compiled_method(item.form) for id_, item in sorted(methods.items())},
    }


def _compiled_kind(form: Any) -> dict[str, Any]:
    """A kind with what it drops in place of what it asks."""
    plain: dict[str, Any] = form.model_dump(mode="json")
    applies = set(plain.pop("applies"))
    drops = [a for group, aspects in GROUPS.items() if group not in applies for a in aspects]
    return {**plain, **plain.pop("buys"), "drops": drops}


def _compiled_method(form: Any) -> dict[str, Any]:
    """A method with only those conditions of its choice that it has."""
    plain: dict[str, Any] = form.model_dump(mode="json")
    plain["example"] = form.example.model_dump(mode="json", by_alias=True)
    return plain | {"fits": {key: words for key, words in plain["fits"].items() if words}}


def places_from_plain(raw: dict[str, Any]) -> PlaceKnowledge:
    """The light values of what `compile_places` gave; empty where there is none."""
    return PlaceKnowledge(
        {id_: from_data(PlaceKind, row, id=id_) for id_, row in raw.get("kinds", {}).items()},
        WhenAsked(raw.get("methods", {}), lambda id_, row: from_data(Method, row, id=id_)),
    )
