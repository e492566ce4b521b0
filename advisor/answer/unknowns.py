"""What nobody has said, what knowing it would change, and the cheapest way to find out."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from advisor.answer import wording
from advisor.answer.model.told import ToldCheapest, ToldFreed, ToldUnknown
from advisor.answer.teller import Teller
from advisor.claims.judgement import Judgement
from advisor.decide.unknowns import Unknown, find_ruling, find_unknowns
from advisor.knowledge.model import Knowledge, Mix
from advisor.project.buttons import HOLES, buttons_of, half_for_show, holes_of
from advisor.project.mainfibre import vouched_for
from advisor.project.placing import singular_words
from advisor.units import System, show_range

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from advisor.identify.cheapest import CheapestTest
    from advisor.knowledge.places import Method
    from advisor.project.garment import Garment, Seam

_ACTS = {
    "flame": "a snip burnt as `advisor identify` tells, {title}",
    "solvent": "a drop of acetone on a snip as `advisor identify` tells",
}
_MOST_ANSWERS = 2
GATHERED_EDGE = "gathered-edge"
NO_WEIGHT = "weight not given"
HARDLY_HOTTER = 5.0
"""°C: no iron is set finer than that, so nobody burns a snip for less."""


def told_unknowns(judgement: Judgement, teller: Teller) -> tuple[ToldUnknown, ...]:
    """Every cloth of unknown fibre, then what was taken for granted."""
    kinds = {n: teller.knowledge.entries[c.entry].kind for n, c in teller.garment.cloths.items()}
    unknowns = find_unknowns(judgement, teller.knowledge)
    rows = [_unknown(one, teller) for one in unknowns if kinds[one.cloth] == "cloth"]
    if not judgement.garment.single:
        from advisor.answer.uncleaned import told_uncleaned

        rows += [_ruling(one, teller) for one in find_ruling(judgement, teller.knowledge)]
        rows += told_uncleaned(judgement, teller)
    rows.sort(key=lambda row: (row.limit_c or 0.0) - (row.most_c or 0.0))  # the costliest first
    idle, taken = _idle(teller.garment), (*_words(teller), *_weights(teller), *_machines(teller))
    return (*rows, *idle, *taken)


def _ruling(unknown: Unknown, teller: Teller) -> ToldUnknown:
    """A notion that bounds the iron of the whole, and what knowing its fibre would allow."""
    told = _unknown(unknown, teller)
    gain = told.effect.partition(". ")[0]
    return replace(
        told,
        effect=f"it bounds the iron of the whole; {gain}. Ask, or burn a snip",
        short=f"the fibre of {unknown.cloth}, which bounds the iron of the whole",
    )


def _idle(garment: Garment) -> tuple[ToldUnknown, ...]:
    """Cloths that no place, piece or part of the garment names: written down and forgotten."""
    named = {use.cloth for seam in garment.seams for use in seam.uses}
    named |= {piece.cloth for piece in garment.plan.pieces}
    named |= {layer for part in garment.parts for layer in part.layers}
    effect = (
        "it is counted in the last press and the care all the same: name it where it is sewn, or "
        "take it out of fabrics"
    )
    return tuple(
        ToldUnknown(f"{name} lies in no place", effect)
        for name in garment.cloths
        if name not in named
    )


def _unknown(unknown: Unknown, teller: Teller) -> ToldUnknown:
    """What naming the fibre of a cloth would allow."""
    cloth = teller.garment.cloths[unknown.cloth]
    knowledge, units = teller.knowledge, teller.units
    gains: dict[float, list[str]] = {}
    for mix, limit in unknown.candidates:
        gains.setdefault(limit, []).append(wording.mix_text(mix, knowledge))
    parts = [
        f"if it is {' or '.join(names)}: {wording.heat_text(limit, units)} instead of "
        f"{wording.heat_text(unknown.limit, units)}"
        for limit, names in sorted(gains.items())
        if limit - unknown.limit > HARDLY_HOTTER
    ]
    effect = "; ".join(parts) or "every candidate bears the same iron"
    named = vouched_for(cloth) is not None  # then the seller is asked, and nothing is burnt
    test = _cheapest(unknown, knowledge, units) if parts and not named else None
    if parts and named:
        effect = f"{effect}. Ask the seller what else is in it"
    if test is not None:
        effect = f"{effect}. {test.text}"
    fact = f"{unknown.cloth}: {wording.made_of_text(cloth, knowledge)}"
    most = max(limit for _, limit in unknown.candidates)
    short = (
        f"the fibres of {unknown.cloth} and their shares: its iron may then go up to "
        f"{wording.heat_text(most, units)} instead of {wording.heat_text(unknown.limit, units)}"
    )
    return ToldUnknown(fact, teller.say(effect), unknown.limit, most, test, short)


def _words(teller: Teller) -> tuple[ToldUnknown, ...]:
    """What was assumed of the words for a cloth, or not understood in them."""
    return tuple(
        ToldUnknown(f"{name}: {fact}", effect)
        for name, cloth in sorted(teller.garment.cloths.items())
        for fact, effect in cloth.notes
    )


def _weights(teller: Teller) -> tuple[ToldUnknown, ...]:
    """The weights that were taken as usual, in one row."""
    weights = [
        f"{name} {show_range('weight', *cloth.weight, teller.units)}"
        for name, cloth in sorted(teller.garment.cloths.items())
        if "weight" in cloth.assumed
        and cloth.weight
        and teller.knowledge.entries[cloth.entry].kind == "cloth"
    ]
    if not weights:
        return ()
    effect = f"taken as the usual weight of {', '.join(weights)}"
    return (ToldUnknown(NO_WEIGHT, effect),)


def told_buttons(
    garment: Garment, methods: Mapping[str, Method], knowledge: Knowledge
) -> tuple[ToldUnknown, ...]:
    """Buttonholes whose buttons nobody names: one is taken for each."""
    from advisor.decide.usedup import unnamed_buttons

    holes = unnamed_buttons(garment, methods, knowledge)
    if not holes:
        return ()
    seams = [seam for seam in garment.seams if seam.name in holes]
    number = sum(seam.making.times for seam in seams) if _counted(seams) else 0
    looped = all("loop" in singular_words(f"{s.name} {s.fastening}") for s in seams)
    one = "loop" if looped else "buttonhole"
    each = f"each of the {number} {one}s" if number > 1 else f"each {one}"
    effect = f"taken as one for {each}, marked through it and sewn on"
    return (ToldUnknown("no buttons are named", effect),)


def told_double(garment: Garment) -> tuple[ToldUnknown, ...]:
    """Twice as many buttons as holes: a double-breasted front, of which half are for show."""
    rows = []
    for hole in garment.seams:
        number = hole.making.times
        for seam in buttons_of(hole, garment) if hole.place == HOLES else ():
            every = sum(h.making.times for h in holes_of(seam, garment))
            if half_for_show(seam, every) and every == number:
                fact = f"{seam.name}: {seam.making.times} for {number} of {hole.name}"
                effect = (
                    f"taken as double-breasted: {number} close and {number} are for show, as far "
                    "beyond the middle of the front; the front that lies under is held by one more "
                    "button inside, which nobody names"
                )
                rows.append(ToldUnknown(fact, effect))
    return tuple(rows)


def told_fullness(garment: Garment) -> tuple[ToldUnknown, ...]:
    """Gathered edges of which nobody says how full they are: nothing is reckoned for them."""
    silent = [s for s in garment.seams if s.place == GATHERED_EDGE and not _told_full(s)]
    if not silent:
        return ()
    last = silent[0].uses[-1].cloth
    effect = (
        f"the last layer is gathered, and no cloth is reckoned for it beyond its piece; say "
        f"{{use: {last}, fullness: 2}} among the layers for that"
    )
    names = ", ".join(seam.name for seam in silent)
    return (ToldUnknown(f"{names}: how full it is gathered", effect),)


def _told_full(seam: Seam) -> bool:
    return seam.making.pleats is not None or any(use.fullness > 1 for use in seam.uses)


def _counted(seams: Sequence[Seam]) -> bool:
    return all(seam.making.counted for seam in seams)


def _machines(teller: Teller) -> tuple[ToldUnknown, ...]:
    """The machines that were taken for granted, in one row."""
    maker = teller.garment.maker
    taken = ["a household zigzag machine"] if "machine" in maker.assumed else []
    if "overlocker" in maker.assumed:
        own = teller.knowledge.machines[maker.overlocker].name if maker.overlocker else ""
        taken.append(own or "no overlocker")
    if not taken:
        return ()
    named = "machine" if "machine" in maker.assumed else "overlocker"
    return (ToldUnknown(f"your {named} is not named", f"taken as {', '.join(taken)}"),)


def _cheapest(unknown: Unknown, knowledge: Knowledge, units: System) -> ToldCheapest | None:
    """The test that frees the most of a cloth; None where none frees anything."""
    from advisor.identify.cheapest import cheapest_test

    found = cheapest_test(unknown, knowledge.observations)
    if found is None or all(f.limit - unknown.limit <= HARDLY_HOTTER for f in found.freed):
        return None
    frees = tuple(
        ToldFreed(freed.answers, tuple(dict(mix) for mix in freed.mixes), freed.limit)
        for freed in found.freed
    )
    return ToldCheapest(found.test, _sentence(found, knowledge, units), frees)


def _sentence(found: CheapestTest, knowledge: Knowledge, units: System) -> str:
    about = knowledge.observations[found.test]
    act = _ACTS.get(about.kind, "{title}").format(title=about.title)
    answers = [
        f"'{freed.answers[0]}' leaves {_names(freed.mixes, knowledge)}, "
        f"{wording.heat_text(freed.limit, units)}"
        for freed in found.freed[:_MOST_ANSWERS]
    ]
    return f"Ask first; else {act}: {'; '.join(answers)}"


def _names(mixes: tuple[Mix, ...], knowledge: Knowledge) -> str:
    return " or ".join(wording.mix_text(mix, knowledge) for mix in mixes)
