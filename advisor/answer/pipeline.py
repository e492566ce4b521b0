"""One pipeline from a garment to its answer: decide, plan, tell. Every command goes this way.

What cannot be reconciled is found whatever part is asked for, so that the same garment has the
same conflicts, with the same numbers, and the same exit code everywhere.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from msgspec import Struct

from advisor.answer.conflicts import numbered, told_conflicts, told_cure_all
from advisor.answer.core import (
    told_cautions,
    told_layers,
    told_places,
    told_tasks,
    told_tests,
)
from advisor.answer.instructions import told_instruction
from advisor.answer.model.answer import SCHEMA, Answer
from advisor.answer.ownheat import with_irons
from advisor.answer.settings import told_settings
from advisor.answer.shaded import as_ordered
from advisor.answer.teller import Teller
from advisor.answer.unknowns import told_buttons, told_double, told_fullness, told_unknowns
from advisor.answer.verdicts import told_verdicts
from advisor.claims.judgement import Advice
from advisor.decide.advise import advise
from advisor.heat.stacks import fusibles_in
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment

if TYPE_CHECKING:
    from advisor.answer.label import Asked
    from advisor.claims.judgement import Judgement
    from advisor.heat.questions import Heat
    from advisor.order.work import Work


class Parts(Struct, frozen=True):
    """Which parts of an answer are wanted besides what is always told.

    Attributes:
        shopping: cloth, pieces, thread and kit.
        heat: the heat of the advised press of every place.
        timed: the same where a rule gives a time at the press, which the heat may shorten.
        ways: also the heat of every other way of pressing, and cooling.
        iron: every layer's own range.
        order: the steps of the order of work.
        plain: the customary order instead of the cheapest.
        sitting: how long a sitting may be, minutes.
        label: the label, for which market.
        quote: what it costs; needs shopping and order.
        file: what the project's file is called where a command is named.
    """

    shopping: bool = False
    heat: bool = False
    timed: bool = False
    ways: bool = False
    iron: bool = False
    order: bool = False
    plain: bool = False
    sitting: float | None = None
    label: Asked | None = None
    quote: bool = False
    file: str = "FILE"


WHOLE = Parts(shopping=True, heat=True, iron=True, order=True)
"""What a sheet prints."""


class Decided(Struct, frozen=True):
    """A garment decided: the advice with all its clashes, the heat and the order behind it.

    `as_written` is the advice on what the project says, before the methods that the order chose
    took the machine from some places: remedies are proved on it, for no file says more.
    """

    advice: Advice
    heat: Heat | None
    work: Work | None
    as_written: Advice | None = None

    @property
    def remedied(self) -> Advice:
        """The advice of which remedies are taken."""
        return self.as_written or self.advice


def answer(garment: Garment, knowledge: Knowledge, parts: Parts | None = None) -> Answer:
    """Everything that is asked about a garment.

    Args:
        garment: what is made, or some cloths of a question.
        knowledge: what the advice comes from.
        parts: what is wanted besides; nothing by default.

    Raises:
        InputError: a market of a label that is not known.
    """
    wanted = parts or Parts()
    knowledge = knowledge.told(garment.units)
    return tell(decide(garment, knowledge, wanted), knowledge, wanted)


def decide(garment: Garment, knowledge: Knowledge, parts: Parts) -> Decided:
    """Judge a garment with everything that can clash in it: claims, bulk, heat and order."""
    knowledge = knowledge.told(garment.units)
    advice, heat = _heated(advise(garment, knowledge), knowledge, parts)
    work = _ordered(advice, knowledge, plain=parts.plain)
    as_written = advice
    if work is not None:
        from advisor.answer.handwork import as_made, shut_in
        from advisor.answer.openglue import with_glue_open

        advice = as_made(as_ordered(advice, work), work.methods, shut_in(work))
        advice = with_glue_open(with_irons(advice, work), work)
    return Decided(advice, heat, work, as_written)


def _heated(advice: Advice, knowledge: Knowledge, parts: Parts) -> tuple[Advice, Heat | None]:
    """The clashes that only the heat shows; numpy comes in only where something asks for it."""
    garment = advice.judgement.garment
    fused = any(fusibles_in(garment, knowledge, seam) for seam in garment.seams)
    # A remedy that leaves a cooler iron on the place says how long it may lie there.
    pressed = any(c.aspect.startswith("press.") for c in advice.judgement.conflicts)
    timed = parts.timed and _is_timed(advice)
    if not (parts.heat or parts.ways or fused or pressed or timed):
        return advice, None
    from advisor.decide.gluing import advise_with_heat

    return advise_with_heat(advice, knowledge, full=parts.ways)


def _is_timed(advice: Advice) -> bool:
    """Whether a rule gives a time for the iron at some place."""
    seams = (v for place, v in advice.judgement.verdicts.items() if place.scope == "seam")
    return any("press.dwell" in verdicts for verdicts in seams)


def _ordered(advice: Advice, knowledge: Knowledge, *, plain: bool) -> Work | None:
    """The order of work; a question has none, nor has a knowledge without operations."""
    if advice.judgement.garment.single or not knowledge.order.operations:
        return None
    from advisor.order.work import order_of

    return order_of(advice, knowledge, plain=plain)


def tell(decided: Decided, knowledge: Knowledge, parts: Parts) -> Answer:
    """Put a decided garment into words, as far as is asked."""
    judgement = decided.advice.judgement
    knowledge = knowledge.told(judgement.garment.units)
    teller = Teller(judgement.garment, knowledge)
    clashes = told_conflicts(decided.advice, teller)
    found = Answer(
        schema=SCHEMA,
        garment=judgement.garment.name,
        units=teller.units,
        layers=told_layers(teller),
        seams=(),
        verdicts=told_verdicts(_labelled(judgement, knowledge), teller),
        irons=told_settings(judgement, teller),
        conflicts=clashes,
        cure_all=told_cure_all(decided.remedied, teller),
        instructions=tuple(told_instruction(i, teller) for i in judgement.instructions),
        cautions=told_cautions(judgement, teller),
        advice=told_tasks(judgement, teller),
        tests=told_tests(judgement, teller),
        unknowns=told_unknowns(judgement, teller),
        sources=(),
        file=parts.file,
    )
    found = _with_heat(_with_making(found, decided, parts, teller), decided, parts, teller)
    found = _with_label(_with_order(found, decided, parts, teller), decided, parts, teller)
    if parts.shopping and not judgement.garment.single:
        from advisor.answer.workroom import with_workroom

        things = knowledge.workshop.things
        found = replace(found, kit=with_workroom(found, decided.work, judgement.garment, things))
    if parts.quote:
        found = _with_quote(found, decided, teller)
    return replace(found, sources=teller.sources())


def _with_making(found: Answer, decided: Decided, parts: Parts, teller: Teller) -> Answer:
    judgement = decided.advice.judgement
    if judgement.garment.single:
        return replace(found, seams=told_places(judgement))
    from advisor.answer.bulkwords import fine_bulk
    from advisor.answer.channelwords import channels
    from advisor.answer.checkwords import told_checks
    from advisor.answer.gapwords import told_gaps
    from advisor.answer.making import told_builds, told_shopping, with_settings
    from advisor.answer.partwords import told_parts
    from advisor.construction.needlessgap import made_of

    built = told_builds(judgement, teller)
    methods = decided.work.methods if decided.work is not None else {}
    wide = channels(judgement, teller.knowledge)
    buttons = told_buttons(judgement.garment, methods, teller.knowledge)
    made = made_of(judgement, teller.knowledge)
    full = (*told_double(judgement.garment), *told_fullness(judgement.garment))
    found = replace(
        found,
        seams=told_places(made, built, methods, teller.say, wide),
        unknowns=(*found.unknowns, *buttons, *full),
        checks=told_checks(judgement, teller),
        missing=told_gaps(teller),
        parts=told_parts(judgement.garment, teller),
        bulk=fine_bulk(built),
        tests=with_settings(found.tests, judgement),
    )
    if not parts.shopping:
        return found
    bought = told_shopping(judgement, teller, decided.work)
    return replace(
        found,
        cloth=bought.cloth,
        cut=bought.cut,
        thread=bought.thread,
        weight=bought.weight,
        kit=bought.kit,
    )


def _with_heat(found: Answer, decided: Decided, parts: Parts, teller: Teller) -> Answer:
    if parts.iron:
        from advisor.answer.iron import told_iron

        found = replace(found, iron=told_iron(decided.advice.judgement, teller))
    if decided.heat is None:
        return found
    from advisor.answer.heat import told_heat, with_burns, with_shorter_remedies

    asked = parts.heat or parts.ways
    timed = parts.timed and _is_timed(decided.advice)
    rows = told_heat(decided.heat, teller if asked else Teller(teller.garment, teller.knowledge))
    shorter = with_shorter_remedies(found.conflicts, rows, found.verdicts)
    found = replace(found, conflicts=shorter, heat=rows if timed else found.heat)
    if not asked:
        return found
    return replace(found, heat=rows, cautions=with_burns(found.cautions, decided.heat, teller))


def _with_order(found: Answer, decided: Decided, parts: Parts, teller: Teller) -> Answer:
    if decided.work is None:
        return found
    from advisor.answer.matchwords import matching
    from advisor.answer.order import order_conflicts, told_order
    from advisor.answer.ordernotes import done_near, told_near

    every = numbered((*found.conflicts, *order_conflicts(decided.work, teller)))
    near = told_near(decided.work, teller)
    told_of = (*found.instructions, *near)
    advice = (*done_near(near), *matching(teller.garment, teller), *found.advice)
    found = replace(found, conflicts=every, instructions=told_of, advice=advice)
    if not parts.order:
        return found
    own = tuple(one for one in every if one.aspect == "order")
    told = told_order(decided.work, decided.advice, own, teller, parts.sitting)
    return replace(found, work=told)


def _with_quote(found: Answer, decided: Decided, teller: Teller) -> Answer:
    from advisor.answer.making import costs
    from advisor.answer.quote import told_quote
    from advisor.knowledge.pricing import laid_over

    judgement = decided.advice.judgement
    quote = laid_over(judgement.garment.plan.quote, teller.knowledge.registers.mine.quote)
    lines = costs(judgement, quote, teller.knowledge, decided.work)
    return replace(found, quote=told_quote(lines, found.work, quote, teller))


def _with_label(found: Answer, decided: Decided, parts: Parts, teller: Teller) -> Answer:
    if parts.label is None:
        return found
    from advisor.answer.label import told_label

    label = told_label(decided.advice.judgement, found.conflicts, parts.label, teller)
    return replace(found, label=label)


def _labelled(judgement: Judgement, knowledge: Knowledge) -> Judgement:
    """A judgement in which the care is that of the label; a question has none."""
    if judgement.garment.single:
        return judgement
    from advisor.label.whole import as_labelled

    return as_labelled(judgement, knowledge)
