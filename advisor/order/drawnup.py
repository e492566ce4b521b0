"""How a full edge is told to be drawn up: its rows, how long it comes to, and where it is held."""

from __future__ import annotations

from advisor.construction.fullness import BY_MACHINE, drawn_up_by
from advisor.order.bandtried import basted_drawn_up
from advisor.order.beside import is_frill
from advisor.order.facts import Facts
from advisor.order.kinds import SeamPlace
from advisor.units import System, show

SET_IN = "armhole"
"""The seam by which a sleeve is set in."""
OVER_A_CORD = "gathered-over-cord"
QUARTERED, LONG_ROW = " and at each quarter, so that no thread is drawn far", 3000.0
"""What a long edge is told, and from which length on, flat, mm: estimate."""


OVER_THE_CAP = " over the cap of {}, from notch to notch"
"""A sleeve is gathered over its cap alone: below the notches it lies smooth under the arm."""
SLIPPERY = 2
"""From which level of `slippery` a third row is sewn."""
PULLED = "; once it is joined pull out the row that shows"
PULLED_ALL = "; once it is joined pull out every row, and try that it still stretches"
"""Of a seam that a stretching stitch sews: a thread left in it gives nowhere."""
UNBASTED = "take the basting out, and "
GIVING = 2
"""From this level of `stretch` on a cloth is put on by what its seams give."""
LEFT_FLAT = ", their ends long, and leave it flat: nothing is drawn up yet"
AT_MARKS = "pinned to the other edge at its marks"
AT_NOTCHES = "pinned to the armhole at its notches, the underarm flat"


def listed(names: list[str]) -> str:
    """`a`, `a and b`, `a, b and c`."""
    return " and ".join([", ".join(names[:-1]), names[-1]] if names[1:] else names)


def rows_sewn(place: SeamPlace, facts: Facts) -> str:
    """What draws a full edge up, as the project has it; long rows where it says nothing.

    Two, and a third where the cloth is slippery, as the sheet has it.
    """
    full = listed(list(place.full))
    full += ", each by itself" if len(place.full) > 1 else ""
    ways = {
        "gathering foot": f"gather {full} with the gathering foot",
        "overlock": f"gather {full} on the overlocker",
        "elastic": f"sew elastic, stretched, along {full}",
    }
    length = place.seam.long_mm
    if _on_the_cap(place):
        along = OVER_THE_CAP.format(full)
    else:
        flat = length * max((use.fullness for use in place.seam.uses), default=1.0)
        along = f" along {full}, broken at every cross seam" + QUARTERED * (flat > LONG_ROW)
    slips = any(facts.least(name, "slippery") >= SLIPPERY for name in place.full)
    rows = "three" if slips else "two"
    basted = facts.fitting.basted(place) and not basted_drawn_up(place)
    first = UNBASTED if basted else ""
    return first + ways.get(
        drawn_up_by(place.seam), f"stitch {rows} gathering rows{along}{LEFT_FLAT}"
    )


def drawn_up(place: SeamPlace, units: System, facts: Facts) -> str:
    """To what length a full edge is drawn up, just before it is joined; a foot has done it."""
    length = place.seam.facts.get("length")
    until = show("length", float(length), units) if length else "the length of the other edge"
    if drawn_up_by(place.seam) in (*BY_MACHINE, "elastic"):
        return f"{AT_MARKS}, ease the gathers to {until} and spread them"
    if place.method.id == OVER_A_CORD:
        return f"{AT_MARKS}, to {until}, the fullness spread"
    if _on_the_cap(place):
        return (
            f"{AT_NOTCHES}, draw the rows up only now, until all of it measures {until}, the "
            "fullness at the top"
        )
    gives = any(facts.least(name, "stretch") >= GIVING for name in place.cloths)
    gives = gives and not facts.of_seam("sewn straight", place)
    out = PULLED_ALL if gives else PULLED
    return f"{AT_MARKS}, draw the rows up only now, to {until}, and spread the fullness{out}"


def _on_the_cap(place: SeamPlace) -> bool:
    return place.role.id == SET_IN and not is_frill(place)
