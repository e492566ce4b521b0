"""What a garment costs, out of its shopping list and its order of work.

Work is the sum of the steps' minutes and of the changes of set-up, hers where she says them; the
garments that she finished correct it (`craft.hours`).
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.answer.model.order import ToldOrder, ToldStep
from advisor.answer.model.quote import ToldCost, ToldQuote, ToldSpan, ToldStage
from advisor.answer.teller import Teller
from advisor.construction.costing import CostLine
from advisor.craft import hours
from advisor.errors import nearest
from advisor.knowledge.names import plain_name
from advisor.knowledge.pricing import Quoting

PREPARE: Final = "prepare and try"
CUT: Final = "cut and mark"
SEW: Final = "sew by machine"
PRESS: Final = "press and fuse"
HAND: Final = "by hand and fitting"
CHANGES: Final = "changes of set-up"
STAGES: Final = (PREPARE, CUT, SEW, PRESS, HAND, CHANGES)
_BY_WORK: Final = {
    "shrink": PREPARE,
    "toile": PREPARE,
    "test": PREPARE,
    "cut": CUT,
    "mark": CUT,
}
_SOURCES: Final = ("derived", "estimate", *hours.SOURCES)


def told_quote(
    lines: Iterable[CostLine], work: ToldOrder | None, quote: Quoting, teller: Teller
) -> ToldQuote:
    """The cost of a garment; with no order of work there are no hours."""
    costs = tuple(_cost(line, teller) for line in lines)
    steps = work.order if work is not None else ()
    stages = _stages(steps, quote)
    minutes = sum(stage.minutes for stage in stages)
    ratio = hours.ratio_of([one.took / one.reckoned for one in quote.finished])
    spans = ToldSpan(*(round(v, 3) for v in (ratio.low, ratio.likely, ratio.high)))
    taken = ToldSpan(*(round(minutes * v / 60, 2) for v in (ratio.low, ratio.likely, ratio.high)))
    things = _cents(line.cost for line in costs)
    margin = quote.margin or 0.0
    paid = None if quote.hour is None else _times(taken, quote.hour)
    missing = [f"{c.name} ({c.lacks})" for c in costs if c.cost is None]
    missing += [] if quote.hour is not None else ["the work (no price of an hour said)"]
    return ToldQuote(
        currency=quote.currency,
        lines=costs,
        things=things / 100,
        wasted=_cents(line.wasted for line in costs) / 100,
        stages=stages,
        minutes=round(minutes, 1),
        finished=ratio.jobs,
        ratio=spans,
        hours=taken,
        hour=quote.hour,
        work=paid,
        margin=margin,
        total=_total(things / 100, paid, margin),
        complete=not missing,
        missing=tuple(missing),
        says=tuple(_says(steps, quote)),
        sources=teller.cite(tuple(dict.fromkeys(_SOURCES))),
    )


def stage_of(step: ToldStep) -> str:
    """The stage that a step belongs to: by its piece of work, its machine, its iron."""
    if step.operation in _BY_WORK:
        return _BY_WORK[step.operation]
    if step.machine is not None:
        return SEW
    return PRESS if step.iron is not None else HAND


def own_minutes(step: ToldStep, quote: Quoting) -> float | None:
    """Her own time of a step: by its name, else by its piece of work."""
    for name in (step.step, step.operation):
        if plain_name(name) in quote.minutes:
            return quote.minutes[plain_name(name)]
    return None


def _stages(steps: Iterable[ToldStep], quote: Quoting) -> tuple[ToldStage, ...]:
    found = {stage: [0.0, 0, 0] for stage in STAGES}
    for step in steps:
        own = own_minutes(step, quote)
        row = found[stage_of(step)]
        row[0] += step.work_min if own is None else own
        row[1] += 1
        row[2] += own is not None
        if step.change_min:
            found[CHANGES][0] += step.change_min
            found[CHANGES][1] += 1
    return tuple(
        ToldStage(stage, round(minutes, 1), int(number), int(own))
        for stage, (minutes, number, own) in found.items()
        if number
    )


def _cost(line: CostLine, teller: Teller) -> ToldCost:
    cloth = teller.garment.cloths.get(line.name)
    what = "" if cloth is None else teller.knowledge.entries[cloth.entry].name
    return ToldCost(
        line.group,
        line.name,
        None if line.amount is None else round(line.amount, 3),
        line.unit,
        line.price,
        None if line.cents is None else line.cents / 100,
        line.wasted / 100,
        line.lacks,
        "" if what == line.name else what,
    )


def _cents(money: Iterable[float | None]) -> int:
    return sum(round(one * 100) for one in money if one is not None)


def _times(span: ToldSpan, price: float) -> ToldSpan:
    return ToldSpan(*(round(v * price, 2) for v in (span.low, span.likely, span.high)))


def _total(things: float, work: ToldSpan | None, margin: float) -> ToldSpan:
    ends = (0.0, 0.0, 0.0) if work is None else (work.low, work.likely, work.high)
    return ToldSpan(*(round((things + end) * (1 + margin), 2) for end in ends))


def _says(steps: Iterable[ToldStep], quote: Quoting) -> list[str]:
    """How far the figures are to be trusted, and what of hers was not understood."""
    every = list(steps)
    known = {plain_name(n): n for s in every for n in (s.step, s.operation) if n}
    says = []
    for name in quote.minutes:
        if name not in known:
            close = nearest(name, known)
            more = f" Did you mean {' or '.join(close)}?" if close else ""
            says.append(f"No step and no piece of work here is called '{name}'.{more}")
    if not every:
        return says
    counted = sum(own_minutes(step, quote) is not None for step in every)
    says.append(
        f"{counted} of {len(every)} steps have a time of your own; the others are our estimates, "
        "which nobody has measured."
    )
    count = len(quote.finished)
    if count:
        word = "garment" if count == 1 else "garments"
        says.append(f"Corrected by {count} {word} that you finished.")
    else:
        says.append(
            "No finished garment corrects it yet, so the range is wide: advisor learn took FILE "
            "'14 h' keeps what one took."
        )
    says.append("About 8 of 10 jobs should fall within the range, if these guesses are right.")
    return says
