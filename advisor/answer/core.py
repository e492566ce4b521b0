"""What is told of any garment: its layers, what hurts or spoils, what to do, what to try."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from advisor.answer import wording
from advisor.answer.instructions import instruction_text
from advisor.answer.model.told import ToldCaution, ToldLayer, ToldPlace, ToldTask, ToldTest
from advisor.answer.own_limits import own_limits
from advisor.answer.teller import Teller
from advisor.claims.collect import ALLOWANCE, Fired, Place
from advisor.claims.judgement import Judgement
from advisor.claims.telling import told_lines
from advisor.claims.valuesets import Span
from advisor.claims.workarounds import ALONE, INTERFACING, Instruction
from advisor.decide.trials import find_trials, guards, of_two_cloths, weight_of
from advisor.knowledge.model import COLD, LIMIT_ASPECT
from advisor.knowledge.places import Method
from advisor.project.garment import Seam

if TYPE_CHECKING:
    from advisor.answer.model.making import ToldBuild

TOLD_ELSEWHERE = frozenset({"cloth", "thread"})
"""Kinds of which the rules say what is to be done, or the settings."""
NAMES_A_THING = frozenset({"kind", "notion", "fabric"})
"""Facts by which a rule speaks of one thing or its like, and not of any that is soft or thick."""
AFTERWARDS = frozenset({"care", "prepare", "label"})
"""Areas of rules that hold for notions of every kind."""
STRUCK = frozenset({"embellished"})
"""What a needle may strike on a cloth: how to keep it away is told before all else."""
OF_THE_WEARER = frozenset({"fire", "child"})
"""Kinds of caution of the finished garment, and not of the work on it."""
FIRST, ALONGSIDE = (0, 0, ""), (1, 1, "")
"""The weight of what avoids a clash, and of what is pressed by itself though nothing clashes."""
NOTED = (6, 0, "")
"""The weight of what is noted: less than that of any rule."""
WORST_KINDS = ("eye", "child", "fire", "burn", "health", "cut", "damage")


def told_layers(teller: Teller) -> tuple[ToldLayer, ...]:
    """The cloths and notions of a garment, by name."""
    return tuple(_layer(name, teller) for name in sorted(teller.garment.cloths))


def _layer(name: str, teller: Teller) -> ToldLayer:
    cloth = teller.garment.cloths[name]
    known = cloth.mixes[0] if cloth.fibre_known else None
    return ToldLayer(
        name=name,
        fabric=cloth.entry,
        kind=teller.knowledge.entries[cloth.entry].kind,
        fibres=dict(known) if known else "unknown",
        may_be=() if known else tuple(dict(mix) for mix in cloth.mixes),
        weight=cloth.weight,
        text=teller.say(wording.made_of_text(cloth, teller.knowledge)),
        assumed=cloth.assumed,
        laid=cloth.laid,
    )


def told_places(
    judgement: Judgement,
    built: Mapping[str, ToldBuild] | None = None,
    methods: Mapping[str, Method] | None = None,
    say: Callable[[str], str] = str,
    channels: Mapping[str, str] | None = None,
) -> tuple[ToldPlace, ...]:
    """Every place with what the project says of it and, in a garment, what it comes to.

    Args:
        judgement: the decided garment.
        built: what each place comes to; None for a question, which has no lengths.
        methods: how the order of work makes each place; None where there is no order.
        say: puts the quantities of a sentence into the maker's units.
        channels: how wide a channel is stitched, by its place.
    """
    ways = methods or {}
    return tuple(
        ToldPlace(
            name=seam.name,
            layers=tuple(use.cloth for use in seam.uses),
            facts=dict(seam.facts),
            assumed=seam.assumed,
            built=None if built is None else built[seam.name],
            kind=seam.place,
            kind_from=seam.placed_by,
            guess=seam.guess,
            **_way(ways.get(seam.name), seam, judgement, say, (channels or {}).get(seam.name, "")),
        )
        for seam in judgement.garment.seams
    )


def _way(
    method: Method | None,
    seam: Seam,
    judgement: Judgement,
    say: Callable[[str], str],
    channel: str = "",
) -> dict[str, str]:
    """The method of a place; what the kind of seam says already is not said again."""
    if method is None or not method.id:
        return {}
    said = method.says if method.fits.get("seam") else method.says or method.name
    told = (*_turned(method, seam, judgement), channel)
    made = ", ".join(filter(None, (say(said).removesuffix("."), *map(say, told))))
    if seam.making.left_open:
        gap = say(f"{{{seam.making.left_open / 10:g} cm}} left open to turn through")
        made = f"{made}, {gap}" if made else gap
    return {"method": method.name, "made": made, "allowance_as": method.allowance}


def _turned(method: Method, seam: Seam, judgement: Judgement) -> tuple[str, ...]:
    """How deep a hem is turned, unless its allowance is told, and how its edge is finished."""
    turn = method.turns
    if turn is None:
        return ()
    from advisor.construction.hemroom import how_deep

    verdicts = judgement.verdicts.get(Place("seam", seam.name), {})
    given = ALLOWANCE in verdicts or "allowance" in seam.facts
    return (turn.edge,) if given else (how_deep(turn, seam, judgement.garment), turn.edge)


def told_cautions(judgement: Judgement, teller: Teller) -> tuple[ToldCaution, ...]:
    """Limits gone beyond first; then each caution once, with every place and cloth it is about.

    The worst kind comes first, and of a kind the weightiest.
    """
    own = own_limits(judgement, teller)
    about: dict[tuple[str, str], dict[str, None]] = {}
    found: dict[tuple[str, str], ToldCaution] = {}
    for key, caution, names in _fired_cautions(judgement, teller):
        about.setdefault(key, {}).update(dict.fromkeys(names))
        found.setdefault(key, caution)
    told = [replace(c, about=tuple(about[key])) for key, c in found.items()]
    return (*own, *sorted(told, key=lambda c: WORST_KINDS.index(c.kind)))


def _before_cutting(fired: Fired) -> tuple[int, bool, tuple[int, int, str]]:
    """How a rule's cautions rank: of equal weight what no later work makes good comes first."""
    weight = weight_of(fired)
    return weight[0], fired.rule.area != "prepare", weight


def _fired_cautions(
    judgement: Judgement, teller: Teller
) -> Iterator[tuple[tuple[str, str], ToldCaution, tuple[str, ...]]]:
    for fired in sorted(judgement.gathered.fired, key=_before_cutting):
        names = (fired.place.name,) if fired.place.scope == "seam" else fired.cloths
        for i in told_lines(fired, "cautions", judgement):
            caution = fired.rule.cautions[i]
            if caution["kind"] == "child" and judgement.garment.maker.worn_by == "adult":
                continue
            told = ToldCaution(
                id=fired.rule.id,
                area=fired.rule.area,
                kind=caution["kind"],
                text=teller.say(caution["text"]),
                about=(),
                sources=teller.cite(caution["sources"]),
                general=teller.say(fired.rule.general),
                meeting=fired.certain and of_two_cloths(fired.rule),
            )
            yield (fired.rule.id, caution["text"]), told, names


def told_tasks(judgement: Judgement, teller: Teller) -> tuple[ToldTask, ...]:
    """How parts are pressed by themselves, then what else is to be done, the weightiest first."""
    idle = {"press"} if _never_ironed(judgement) else set()
    first = [item for item in judgement.instructions if item.kind != ALONE]
    alone = [item for item in judgement.instructions if item.kind == ALONE]
    ruled = tuple(
        ToldTask(
            place=fired.place.name,
            scope=fired.place.scope,
            text=teller.say(text),
            rule=fired.rule.id,
            certain=fired.certain,
            weight=weight_of(fired),
            sources=teller.cite(fired.rule.sources),
            general=teller.say(fired.rule.general),
        )
        for fired in _as_asked(judgement, teller)
        if (fired.certain or guards(fired)) and fired.rule.area not in idle
        for text in (fired.rule.do[i] for i in told_lines(fired, "do", judgement))
    )
    ways = (*_ways(first, teller, FIRST), *ruled, *_ways(alone, teller, ALONGSIDE))
    return (*ways, *_of_notions(judgement, teller))


def _ways(
    items: Sequence[Instruction], teller: Teller, weight: tuple[int, int, str]
) -> Iterator[ToldTask]:
    """What avoids a clash under the iron, at each of its places."""
    for item in items:
        for place in item.places:
            yield ToldTask(
                place=place.name,
                scope=place.scope,
                text=instruction_text(item, teller.garment, teller.knowledge, teller.units),
                rule="",
                certain=True,
                weight=weight,
                sources=teller.cite(("common-practice",)),
            )


def _as_asked(judgement: Judgement, teller: Teller) -> list[Fired]:
    """The rules that fired, the weightiest first; a notion that is asked about goes before all.

    Who asks of a bone or an elastic wants to hear how that goes in, and of two cloths what is done
    because they meet, by name before by kind; what is done for who buys or wears it comes after
    what is done at the table.
    """
    asked = teller.garment.single
    cloths, entries = teller.garment.cloths, teller.knowledge.entries
    notions = {n for n, c in cloths.items() if entries[c.entry].kind not in TOLD_ELSEWHERE}

    def names_a_notion(fired: Fired) -> bool:
        of_kind = any(fact.who in notions and fact.fact in NAMES_A_THING for fact in fired.facts)
        return asked and of_kind and fired.rule.area not in AFTERWARDS

    def names_a_cloth(fired: Fired) -> bool:
        return any(fact.fact == "fabric" for fact in fired.facts)

    def strikes(fired: Fired) -> bool:
        hard = any(fact.fact in STRUCK for fact in fired.facts)
        return asked and hard and any(c["kind"] == "eye" for c in fired.rule.cautions)

    def for_the_wearer(fired: Fired) -> bool:
        return asked and bool(OF_THE_WEARER & {c["kind"] for c in fired.rule.cautions})

    return sorted(
        judgement.gathered.fired,
        key=lambda f: (
            not strikes(f),
            not names_a_notion(f),
            asked and not f.certain,
            for_the_wearer(f),
            asked and f.rule.shape != "pair",
            asked and not (f.rule.shape == "pair" and names_a_cloth(f)),
            *weight_of(f),
        ),
    )


def _of_notions(judgement: Judgement, teller: Teller) -> Iterator[ToldTask]:
    """What the knowledge notes of each notion in use: how it is set, and what it fears.

    Nothing of a glue that a cloth rules out: it is left out, and not tried.
    """
    clashes = (c.between for c in judgement.conflicts if INTERFACING in c.aspects)
    ruled_out = {name for between in clashes for name in between}
    for name, cloth in judgement.garment.cloths.items():
        entry = teller.knowledge.entries[cloth.entry]
        told = entry.kind not in TOLD_ELSEWHERE and name not in ruled_out
        for note in entry.facts.get("notes", ()) if told else ():
            yield ToldTask(
                place=name,
                scope="fabric",
                text=teller.say(note["text"]),
                rule="",
                certain=True,
                weight=NOTED,
                sources=teller.cite(note["sources"]),
            )


def _never_ironed(judgement: Judgement) -> bool:
    """Whether no place of a garment is ironed, so that nothing about an iron is to be done."""
    heats = [
        verdicts[LIMIT_ASPECT].advised
        for place, verdicts in judgement.verdicts.items()
        if place.scope == "seam" and LIMIT_ASPECT in verdicts
    ]
    return bool(heats) and all(isinstance(h, Span) and h.high <= COLD for h in heats)


def told_tests(judgement: Judgement, teller: Teller) -> tuple[ToldTest, ...]:
    """The fewest sandwiches to try on scraps."""
    found = []
    for trial in find_trials(judgement):
        look_for = tuple(map(teller.say, trial.look_for))
        found.append(ToldTest(" ".join(look_for), trial.layers, trial.places, look_for))
    return tuple(found)
