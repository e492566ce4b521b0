"""Thread to buy, and which reel of her rack does, as items of the shopping list."""

from __future__ import annotations

from collections.abc import Sequence

from advisor.answer.model.making import ToldReel, ToldShade, ToldThread
from advisor.render.printed.numbers import Numbers
from advisor.render.printed.section import Item, Part
from advisor.units import System, needle


def long(metres: float, units: System) -> str:
    """A length of thread."""
    return f"{metres / 0.9144:.0f} yd" if units == "us" else f"{metres:.0f} m"


def thread_short(rows: list[ToldThread], units: System) -> str:
    """All thread of one colour: how much of each size, and the reel of hers that does."""
    names = list(dict.fromkeys(name for row in rows for name in row.to_match))
    sizes = ", ".join(f"{long(row.total_m, units)}{_of_tex(row)}" for row in rows)
    mine = [f"the reel {one.thread}" for row in rows for one in row.shared if one.reel]
    mine += [f"your reel {reel.name} suits" for row in rows for reel in row.rack if reel.suits]
    return f"to match {' and '.join(names)}: {sizes}{f' ({mine[0]})' if mine else ''}"


def _of_tex(row: ToldThread) -> str:
    return f" of tex {row.tex:g}" if row.tex is not None else ""


def _takes(row: ToldThread, units: System) -> str:
    """What needle and bobbin take, rounded so that with the looper they add up to the total.

    What is sewn by the overlocker alone has no bobbin.
    """
    metre = 0.9144 if units == "us" else 1.0
    needle_m = round(row.needle_m / metre)
    rest = round(row.total_m / metre) - round(row.looper_m / metre) - needle_m
    if not row.bobbin_m:
        return f"needle {long((needle_m + rest) * metre, units)}"
    needle_m, rest = needle_m + min(rest, 0), max(rest, 0)
    return f"needle {long(needle_m * metre, units)}, bobbin {long(rest * metre, units)}"


def thread_item(row: ToldThread, units: System, numbers: Numbers) -> Item:
    """Thread of one colour: what it takes, what to buy, and what she has that suits."""
    tex = f", tex {row.tex:g}" if row.tex is not None else ""
    parts = []
    if row.total_m > 0:
        text = _takes(row, units)
        if row.overlocker_m:
            cones = long(row.overlocker_m, units)
            text += f", looper {long(row.looper_m, units)}; {cones} of it comes off the cones"
        parts = [Part(text, "takes", numbers.mark(row.sources)), Part(row.buy, "buy")]
        parts = [part for part in parts if part.text]
    if row.ticket:
        text = f"{row.ticket.of} ticket about {5 * round(row.ticket.number / 5)}"
        if row.needles_set:
            *first, last = map(needle, row.needles_set)
            listed = f"{', '.join(first)} and {last}" if first else last
            text += f"; sewn with needle {listed}"
        parts.append(Part(text, "size", numbers.mark(row.size_sources)))
    parts += [Part(_shared(row.shared), "colour")] if row.shared else []
    parts += [Part(_reel(reel), "rack", numbers.mark(reel.sources)) for reel in row.rack]
    if row.not_counted:
        names = ", ".join(row.not_counted)
        parts.append(Part(f"Not counted, because no length is given: {names}."))
    return Item(f"to match {' and '.join(row.to_match)}", f"{row.fibre}{tex}", tuple(parts))


def _reel(reel: ToldReel) -> str:
    """A reel of hers against the colour; daylight decides, for a screen's code is rough."""
    if reel.difference is None:
        text = f"your reel {reel.name} has the same word for its colour"
    else:
        text = (
            f"your reel {reel.name} is {reel.difference:.1f} away{_way(reel.darker)}: {reel.seen}"
        )
    text += f"; but {reel.wrong}" if reel.wrong else ""
    return f"{text}; lay it on the cloth by daylight"


def _way(darker: bool) -> str:
    return " and darker" if darker else " and lighter"


def _shared(rows: Sequence[ToldShade]) -> str:
    """Cloths sewn in a colour near their own, and how near it is to each."""
    what = f"your reel {rows[0].thread}" if rows[0].reel else "one thread for all"
    near = ", ".join(f"{r.difference:.1f} from {r.fabric}{_way(r.darker)} ({r.seen})" for r in rows)
    return f"{what}, {near}; lay it on the cloth by daylight"
