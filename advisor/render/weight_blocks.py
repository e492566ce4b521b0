"""What the garment weighs and where it hangs, as a section of the shopping list."""

from __future__ import annotations

from advisor.answer.model.answer import Answer
from advisor.render.printed.numbers import Numbers
from advisor.render.printed.section import Item, Part, Section


def heavy(report: Answer) -> list[Item]:
    """Where something heavy hangs from something light; the close sheet tells no more."""
    hangs = report.weight.hangs if report.weight else ()
    return [Item(row.place, parts=(Part(f"{row.text}."),)) for row in hangs if row.heavy]


def weight(report: Answer, numbers: Numbers) -> list[Section]:
    """What the garment weighs, and what hangs from which place."""
    told = report.weight
    if told is None:
        return []
    marks = numbers.mark(told.sources)
    items = [Item("whole", parts=(Part(f"{told.text}.", marks=marks),))]
    items += [Item(row.place, parts=(Part(f"{row.text}."),)) for row in told.hangs]
    close = (
        "Pieces count as they are cut, so it is a little more than the garment will weigh; a step "
        "or a jump pulls some times as hard, and knits and bias sag long before a seam gives way."
    )
    return [Section("weight", "Weight, and where it hangs", tuple(items), close=close)]
