"""The order of work as text: a checklist, a line or two for each step, the worst said first."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby, zip_longest

from advisor.answer.model.answer import Answer
from advisor.answer.model.order import ToldOrder, ToldStep
from advisor.answer.model.told import ToldConflict, ToldLink
from advisor.errors import for_shell
from advisor.render.gap_text import no_steps
from advisor.render.layout import heading, wrap

WIDTH = 110
TOGETHER = frozenset({"shrink", "cut", "mark"})
"""Operations of which neighbours are told in one line."""
SAME = frozenset({"clear", "sew-back", "stay"})
"""Work of which neighbours that differ in their place alone are told once."""
VERBS = {"shrink": "Shrink", "cut": "Lay and cut", "mark": "Mark"}


def render_order(data: Answer) -> str:
    """The whole order, with its conflicts, sittings and price."""
    work = data.work
    if work is None:
        raise ValueError("the answer was not asked for its order of work")
    rows = work.order
    lines = heading(f"{data.garment}: order of work", 1)
    missing = no_steps(data)
    lines += _wrong(work) + (_para(missing) if missing else []) + _price(work)
    letter = "p" * (work.order_cost.shown == "plain")
    number = {row.step: f"{letter}{row.number}" for row in rows}
    if work.sittings:
        byname = {row.step: row for row in rows}
        done = [row for row in rows if row.done]
        if done:
            lines += heading("Done") + _steps(done, number)
        for k, sitting in enumerate(work.sittings, 1):
            over = f"; {sitting.over:.0f} min too long, and nothing to cut it at" * (
                sitting.over > 0
            )
            title = f"Sitting {k}: about {sitting.minutes:.0f} min{over}"
            lines += heading(title) + _steps([byname[n] for n in sitting.steps], number)
    else:
        lines += ["", *_steps(rows, number)]
    return "\n".join(lines + _after(work)) + "\n"


def _cycles(conflicts: Sequence[ToldConflict]) -> list[str]:
    lines: list[str] = []
    for conflict in conflicts:
        lines += _para(f"CANNOT BE: {conflict.message}")
        for link in conflict.because:
            if isinstance(link, ToldLink):
                lines += _para(f"{link.before} before {link.after}: {link.why}", "    ")
        for remedy in conflict.remedies[:2]:
            lines += _para(f"> {remedy.text}", "    ")
    return lines


def _wrong(data: ToldOrder) -> list[str]:
    lines = _cycles(data.order_conflicts)
    for remark in data.remarks:
        lines += _para(remark)
    clashes = dict.fromkeys(row.place for row in data.unsettled)
    if clashes:
        lines += _para(
            f"What clashes at {', '.join(clashes)} is settled by no order of work: change "
            "something there first; advisor check FILE says what."
        )
    carried = dict.fromkeys(row.place for row in data.settled)
    if carried:
        lines += _para(
            f"Nothing is decided yet at {', '.join(carried)}: this order goes by the first way out "
            "that advisor check FILE offers there; take it or another."
        )
    for row in data.keep_off:
        lines += _para(f"Take care: {row.text}")
    return lines


def _price(data: ToldOrder) -> list[str]:
    cost, rows = data.order_cost, data.order
    left = sum(not row.done for row in rows)
    many = f"{len(rows)} steps" + (f", {left} left" if left < len(rows) else "")
    if cost.shown == "plain":
        text = (
            f"{many} seam by seam, as is the custom: {cost.changes} changes of set-up, which "
            f"take about {_min(cost.minutes)}. Without --plain: the order with the fewest changes."
        )
    else:
        proof = (
            "no order that keeps the rules spends less"
            if cost.optimal
            else f"a better one could save {_min(cost.gap)} at most"
        )
        text = (
            f"{many}, {cost.changes} changes of set-up, which take about {_min(cost.minutes)}; "
            f"{proof}. Seam by seam, as is the custom, they take {_min(cost.plain)}."
        )
    lines = _para(f"{text} The work itself: about {_hours(cost.work)}.")
    never = dict.fromkeys(row.act for row in rows if row.undo == "never")
    tries = ", ".join(data.try_on)
    rows_drawn = any(row.operation == "gather" for row in rows)
    where = ["at the scrap tests", *(["in gathering rows"] if rows_drawn else [])]
    stop = " and at the fitting: stop there and try on" if tries else ""
    lines += _para(
        f"No way back after ! ({', '.join(never)}). A mistake costs least {', '.join(where)}{stop}."
    )
    return lines


def _steps(rows: Sequence[ToldStep], number: dict[str, str]) -> list[str]:
    lines: list[str] = []
    for _, group in groupby(rows, key=_kind):
        members = list(group)
        if members[0].operation in TOGETHER and len(members) > 1:
            lines += _many(members, number)
        elif len(members) > 1:
            lines += _same(members, number)
        else:
            for row in members:
                lines += _one(row, number[row.step])
    return lines


def _kind(row: ToldStep) -> str:
    plain = not (row.set_up or row.why or row.warn or row.done)
    if row.operation in SAME and plain and row.does.count(row.on[0]) == 1:
        return f"{row.operation} {row.does.replace(row.on[0], '')}"
    return str(row.operation) if row.operation in TOGETHER else str(row.step)


def _same(rows: list[ToldStep], number: dict[str, str]) -> list[str]:
    """Neighbours that do the very same at several places, told once with a box for each."""
    boxes = ", ".join(f"{_box(row)} {row.on[0]}" for row in rows)
    text = rows[0].does.replace(rows[0].on[0], boxes)
    return wrap(text, f"{_span(rows, number):>6} ", " " * 7, WIDTH)


def _span(rows: list[ToldStep], number: dict[str, str]) -> str:
    first, last = number[rows[0].step], number[rows[-1].step]
    return f"{first}-{last}" if _run(rows) else ", ".join(number[row.step] for row in rows)


def _many(rows: list[ToldStep], number: dict[str, str]) -> list[str]:
    """Neighbours of one operation in a paragraph, those alike together, a box each."""
    parts = []
    alike: dict[str, list[ToldStep]] = {}
    for row in rows:
        alike.setdefault(row.how, []).append(row)
    for how, group in alike.items():
        boxes = ", ".join(f"{_box(row)} {row.on[0]}" for row in group)
        parts.append(f"{boxes}: {how}")
    span, mark = _span(rows, number), "!" if rows[0].undo == "never" else ""
    text = f"{VERBS[rows[0].operation]}{mark} {'; '.join(parts)}."
    return wrap(text, f"{span:>6} ", " " * 7, WIDTH)


def _run(rows: Sequence[ToldStep]) -> bool:
    """Whether the numbers of some steps follow each other."""
    return [row.number for row in rows] == list(range(rows[0].number, rows[0].number + len(rows)))


def _one(row: ToldStep, number: str) -> list[str]:
    mark = "!" if row.undo == "never" else " "
    head = f"{number:>6} {_box(row)}{mark}"
    lines = wrap(row.does, head, " " * len(head), WIDTH)
    if row.done:
        return lines
    about = []
    if row.set_up:
        cost = f" ({_min(row.change_min)})" if row.change_min else ""
        about.append(f"{row.set_up[:1].upper()}{row.set_up[1:]}{cost}.")
    if row.why:
        about.append(row.why[:1].upper() + row.why[1:])
    for warning in row.warn:
        lines += wrap(warning, " " * 9 + "! ", " " * 11, WIDTH)
    return lines + (wrap(" ".join(about), " " * 11, None, WIDTH) if about else [])


def _after(data: ToldOrder) -> list[str]:
    rows = [row for row in data.order if not row.done]
    lines = heading("Where to stop")
    if not rows:
        return lines + _para("Everything is ticked.")
    letter = "p" * (data.order_cost.shown == "plain")
    text = "Nothing is left half-done after any step."
    if not all(row.stop for row in rows):
        told = ", ".join(f"{letter}{number}" for number in _good_stops(rows))
        text = f"Stop best after {told}: then nothing is left half-done."
    if not data.sittings:
        text += " --sitting 90min cuts the work into sittings."
    lines += _para(text)
    name = for_shell(rows[0].step)
    lines += _para(
        f"Tick a step off in the project file: --tick {name}. Why one stands where it does: "
        f"advisor why FILE {name} order."
    )
    lines += _para(" ".join(data.assumed))
    return lines


def _good_stops(rows: Sequence[ToldStep]) -> list[int]:
    """The last step of each run after which nothing is half-done."""
    return [
        row.number
        for row, after in zip_longest(rows, rows[1:])
        if row.stop and (after is None or not after.stop)
    ]


def _box(row: ToldStep) -> str:
    return "[x]" if row.done else "[ ]"


def _min(minutes: float) -> str:
    return f"{minutes:.1f}".removesuffix(".0") + " min"


def _hours(minutes: float) -> str:
    return f"{minutes / 60:.0f} h" if minutes >= 90 else f"{minutes:.0f} min"


def _para(text: str, first: str = "  ") -> list[str]:
    return wrap(text, first, first + "  ", WIDTH)


def order_line(work: ToldOrder, file: str) -> str:
    """The order in a line, for the sheet."""
    cost, rows, typed = work.order_cost, work.order, f"advisor order {for_shell(file)}"
    left = [row for row in rows if not row.done]
    if not left:
        return f"{typed}: all {len(rows)} steps are done."
    done = f", {len(rows) - len(left)} done" if len(left) < len(rows) else ""
    saved = cost.plain - cost.minutes
    less = f", {_min(saved)} less than seam by seam" if saved >= 1 else ""
    hot = [row.step for row in left if row.operation in ("press-alone", "fuse")]
    early = f"; before anything tender is in: {', '.join(hot)}" if hot else ""
    clash = " It has conflicts." if work.order_conflicts else ""
    return (
        f"{typed}: {len(rows)} steps{done}, {cost.changes} changes of set-up, "
        f"which take about {_min(cost.minutes)}{less}; next: {left[0].step}{early}.{clash}"
    )
