"""The kit that a project calls for, against what the maker has, and what does instead.

What is needed is read off the verdicts; what she has stands in the project or in her settings
file. A substitute of `kit.yaml` is offered only where the engine, run again with it fixed in
every seam that wanted the tool, finds no new clash.
"""

from __future__ import annotations

from collections.abc import Container, Mapping, Sequence
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import STAYS
from advisor.claims.valuesets import Span
from advisor.construction.bulk import Verdicts, number, picked
from advisor.construction.finishing import finishing_of
from advisor.construction.notionlist import (
    Lengths,
    drawn_by_elastic,
    ends_of,
    lengths_of,
    notions_to_buy,
    with_ends,
)
from advisor.construction.stack import is_closed
from advisor.construction.stays import taped_elsewhere
from advisor.construction.widths import Width, usual_width
from advisor.craft.allowance import BOUND_STRIP_MM, STRIP_JOINS, hong_kong_strip, strip_square
from advisor.decide.instead import substitutes
from advisor.knowledge.model import Knowledge
from advisor.knowledge.names import plain_name
from advisor.knowledge.workshop import Substitute
from advisor.project.garment import Garment
from advisor.project.zipping import ZIP

HAVE, MISSING, NOT_SAID = "have", "missing", "not said"

TOOLS: Final = {
    "machine.foot": ("foot", "feet"),
    "pin.kind": ("pins", "pins"),
    "press.cloth": ("press cloth", "pressing"),
    "press.surface": ("pressing surface", "pressing"),
    "seam.support": ("in the seam", "tools"),
    "seam.finish": ("finish", "tools"),
    "cut.tool": ("cutting", "tools"),
    "cut.hold": ("holding the pattern", "tools"),
    "mark.method": ("marking", "tools"),
}
"""Aspects that call for a tool: its group, and the part of the kit that may hold it."""
FINISH: Final = "seam.finish"
WRONG_SIDE: Final = " on the wrong side"
"""How a mark is made, and no part of the name of what makes it."""
SUPPORT: Final = "seam.support"
HONG_KONG: Final = "Hong Kong"
STRIPS: Final = {
    HONG_KONG: ("encyclopedia-hong-kong", "estimate"),
    "bound": ("astm-d4965", "memory", "estimate"),
}
"""Finishes that bind an edge with a strip, and whose word it is."""
USUAL_ALLOWANCE: Final = 15.0
"""What an edge has that no allowance is decided for, such as the free edge of a facing, mm."""
EVERYBODY_HAS: Final = frozenset(
    {
        "standard",
        "none",
        "padded board",
        "pins",
        "pins in the allowance",
        "hand basting",
        "shears",
        "self-fabric",
        "self-fabric pile up",
        "self-fabric strip",
        "thick towel",
        "snips in the allowance",
        "cotton cloth",
        "dressmaking pins",
        "old shears",
        "brown paper",
        "thread tracing",
        "tailor's tacks",
        "fine pins",
        "tape tabs",
        "soap sliver",
        "chalk on the wrong side",
    }
)
"""What lies in any workroom, so that nobody needs telling (estimate)."""


class Strip(Struct, frozen=True):
    """Bias strip to cut, mm: its width from and to, and the side of a square that gives it."""

    width: tuple[float, float]
    square: float | None
    sources: tuple[str, ...]


class Need(Struct, frozen=True):
    """A tool that the project calls for.

    Attributes:
        state: have, missing, or not said.
        instead: what does instead, each tried by the engine.
        refused: substitutes that a cloth rules out.
        length: how much of it, mm, where it is bought or cut by length.
        strip: how a strip that binds edges is cut.
        number: how many, where it is bought by the piece.
        cut: how long each piece of it lies finished, and `ends` what it takes besides, mm.
        least: of what is cut to pieces like a cloth, the longest place that it lies in, mm.
        bends: of a bone, each material, its usual thickness and the least radius it takes, mm.
        width, spare, apart, tried, less: as `notionlist` says them of a notion.
    """

    group: str
    item: str
    aspect: str
    word: str
    places: tuple[str, ...]
    state: str
    instead: tuple[Substitute, ...] = ()
    refused: tuple[str, ...] = ()
    length: float | None = None
    strip: Strip | None = None
    number: int | None = None
    cut: tuple[Lengths, ...] = ()
    bends: tuple[tuple[str, float, float], ...] = ()
    ends: float = 0.0
    least: float | None = None
    width: Width | None = None
    spare: int = 0
    apart: float | None = None
    tried: bool = False
    less: tuple[float, ...] = ()

    @property
    def bought(self) -> float | None:
        """The length to buy with all ends in it, mm; None where it is no length, or not said."""
        return with_ends(self.length, self.cut, self.ends)


def kit_of(
    judgement: Judgement,
    knowledge: Knowledge,
    wrapped: Mapping[str, tuple[str, int]] | None = None,
) -> list[Need]:
    """Everything that the project calls for, in the order of working: cutting to pressing.

    `wrapped` are the places where the order of work wraps edges in a strip: the finish, and how
    many edges; None where no order is made.
    """
    garment = judgement.garment
    found: list[Need] = list(_needles(judgement))
    for (aspect, word), places in _wanted(judgement, knowledge.workshop.tools).items():
        group, part = TOOLS[aspect]
        state = state_of(garment, part, word)
        instead: tuple[Substitute, ...] = ()
        refused: tuple[str, ...] = ()
        if state != HAVE:
            instead, refused = substitutes(aspect, word, places, judgement, knowledge)
        tool = knowledge.workshop.tools.get((aspect, word))
        name = tool.name if tool else _item_name(aspect, word)
        need = Need(group, name, aspect, word, places, state, instead, refused)
        if aspect == SUPPORT:
            need = _support(need, word, garment, knowledge)
        found.append(need)
    found += _strips(judgement, wrapped)
    found += _notions(garment, knowledge)
    order = [
        "cutting",
        "holding the pattern",
        "marking",
        "pins",
        "needles",
        "foot",
        "in the seam",
        "finish",
        "press cloth",
        "pressing surface",
    ]
    return sorted(found, key=lambda n: (order.index(n.group), n.item))


def _item_name(aspect: str, word: str) -> str:
    if aspect == "machine.foot":
        return f"{word} foot"
    return f"press cloth: {word}" if aspect == "press.cloth" else word.removesuffix(WRONG_SIDE)


def _wanted(
    judgement: Judgement, tools: Container[tuple[str, str]]
) -> dict[tuple[str, str], tuple[str, ...]]:
    """Answers that call for a tool, each with the places that want it."""
    wanted: dict[tuple[str, str], list[str]] = {}
    garment = judgement.garment
    taped = {
        s.name
        for s in garment.seams
        if taped_elsewhere(s, garment) or any(garment.cloths[n].entry in STAYS for n in s.cloths())
    }
    for place, verdicts in judgement.verdicts.items():
        if place.scope == "garment":
            continue
        for aspect in TOOLS:
            word = picked(verdicts, aspect)
            if aspect == FINISH and (aspect, word) not in tools:
                continue  # the machine that sews the seam neatens it, or a strip that is listed
            if aspect == SUPPORT and place.name in taped:
                continue  # it is among the layers, or has a place of its own, and is bought so
            if word and word not in EVERYBODY_HAS and not _idle(aspect, verdicts):
                wanted.setdefault((aspect, word), []).append(place.name)
    return {key: tuple(places) for key, places in wanted.items()}


def _idle(aspect: str, verdicts: Verdicts) -> bool:
    """Pressing tools are idle where no iron is used."""
    if not aspect.startswith("press."):
        return False
    heat = number(verdicts, "press.temperature")
    return heat is not None and heat <= 20 and picked(verdicts, "press.moisture") == "dry"


def state_of(garment: Garment, part: str, word: str) -> str:
    """Whether a thing is in a part of the maker's kit: have, missing, or not said."""
    has: tuple[str, ...] | None = getattr(garment.plan.kit, part)
    if part == "feet" and garment.maker.feet is not None:
        has = garment.maker.feet
    if has is None:
        return NOT_SAID
    plain = plain_name(word)
    mine = [plain_name(item) for item in has]
    return HAVE if any(plain in item or item in plain for item in mine) else MISSING


def _needles(judgement: Judgement) -> list[Need]:
    """Each size and point of needle once, with its seams."""
    wanted: dict[tuple[str, float], list[str]] = {}
    for place, verdicts in judgement.verdicts.items():
        size, point = number(verdicts, "needle.size"), picked(verdicts, "needle.point")
        if place.scope == "seam" and size is not None and point:
            wanted.setdefault((point, size), []).append(place.name)
    found = []
    for (point, size), places in sorted(wanted.items()):
        item, word = f"{point} {size:g}", f"{size:g}"
        state = state_of_needle(judgement.garment, item)
        mine = _of_her_own(point, places, judgement) if state == MISSING else ()
        found.append(Need("needles", item, "needle.size", word, tuple(places), state, mine))
    return found


def _of_her_own(point: str, places: Sequence[str], judgement: Judgement) -> tuple[Substitute, ...]:
    """A needle of her kit of the same point, of a size that every one of some places takes."""
    spans = [judgement.verdicts[Place("seam", name)]["needle.size"].advised for name in places]
    for mine in judgement.garment.plan.kit.needles or ():
        words = plain_name(mine).split()
        sizes = [float(word) for word in words if word.isdigit()]
        if (
            point in words
            and sizes
            and all(isinstance(s, Span) and s.low <= sizes[0] <= s.high for s in spans)
        ):
            return (Substitute("", f"the {mine} that you have", ("derived",)),)
    return ()


def state_of_needle(garment: Garment, item: str) -> str:
    """Whether a needle, by its point and size, is in her kit: have, missing, or not said."""
    has = garment.plan.kit.needles
    if has is None:
        return NOT_SAID
    fits = any(set(item.split()) <= set(plain_name(mine).split()) for mine in has)
    return HAVE if fits else MISSING


def _notions(garment: Garment, knowledge: Knowledge) -> list[Need]:
    """Interfacings, tapes, zips and buttons that the project puts into its places."""
    bought = notions_to_buy(garment, knowledge)
    drawn = drawn_by_elastic(garment, knowledge)
    return [
        Need(
            "in the seam",
            each.name,
            "",
            garment.cloths[each.name].entry if each.name in garment.cloths else "",
            each.places,
            state_of(garment, "tools", each.name),
            length=each.whole,
            number=each.number,
            cut=each.cut,
            bends=each.bends,
            ends=each.ends,
            least=each.least,
            width=each.width,
            spare=each.spare,
            apart=each.apart,
            tried=each.tried,
            less=each.less,
        )
        for each in (*bought, *([drawn] if drawn else []))
    ]


def _support(need: Need, word: str, garment: Garment, knowledge: Knowledge) -> Need:
    """What stays some seams, by the length; with ends and a width where it is a notion."""
    entry = knowledge.entries.get(word.replace(" ", "-"))
    if entry is None:
        return by_the_length(need, garment, 0.0)
    first = next(seam for seam in garment.seams if seam.name in need.places)
    need = replace(need, width=usual_width(entry, first))
    return by_the_length(need, garment, ends_of(entry, garment))


def by_the_length(need: Need, garment: Garment, ends: float, *, full: bool = False) -> Need:
    """A need with the length of each of its places; of each full cloth before it is drawn up."""
    every = []
    for seam in garment.seams:
        if seam.name in need.places:
            length = seam.facts.get("length")
            drawn = sum(use.fullness for use in seam.uses if use.fullness > 1) if full else 1.0
            drawn = drawn or 1.0
            # What is set into a slit lies between two edges, and each is held.
            edges = 2 if need.aspect == SUPPORT and seam.place == ZIP else 1
            times = seam.making.times * edges
            every.append((times, None if length is None else float(length) * drawn))
    cut, whole = lengths_of(every)
    return replace(need, length=whole, cut=cut, ends=ends)


def _strips(judgement: Judgement, wrapped: Mapping[str, tuple[str, int]] | None) -> list[Need]:
    """Bias strip for edges that are bound, by its width; joins and ends are in its length."""
    garment = judgement.garment
    wanted: dict[tuple[str, tuple[float, float]], dict[str, int]] = {}
    for seam in garment.seams:
        verdicts = judgement.verdicts[Place("seam", seam.name)]
        found = finishing_of(seam, garment, verdicts)
        word, edges = "" if found is None else found.finish, 2
        if wrapped is not None:
            word, edges = wrapped.get(seam.name, ("", 0))
        wide = BOUND_STRIP_MM
        if word == HONG_KONG:
            wide = (hong_kong_strip(USUAL_ALLOWANCE if found is None else found.allowance),) * 2
        elif is_closed(seam, picked(verdicts, "seam.kind")):
            edges = 1
        if word in STRIPS:
            wanted.setdefault((word, wide), {})[seam.name] = edges
    return [_strip(word, wide, places, garment) for (word, wide), places in sorted(wanted.items())]


def _strip(
    word: str, wide: tuple[float, float], places: Mapping[str, int], garment: Garment
) -> Need:
    every = [
        (seam.making.times * places[seam.name], seam.facts.get("length"))
        for seam in garment.seams
        if seam.name in places
    ]
    _, length = lengths_of((n, None if each is None else float(each)) for n, each in every)
    if length is not None:
        length *= 1 + STRIP_JOINS
    square = None if length is None else strip_square(length, wide[1])
    return Need(
        "in the seam",
        f"bias strip, {word}",
        FINISH,
        word,
        tuple(places),
        state_of(garment, "tools", "bias strip"),
        length=length,
        strip=Strip(wide, square, STRIPS[word]),
    )
