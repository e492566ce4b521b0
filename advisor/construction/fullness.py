"""How a full edge is drawn up: what the method reaches, what a strip measured, what to cut.

Usual ratios by weight and by method stand in `craft.fullness`, geometry of pleats in
`craft.pleats`. What a test strip measured goes before any table. A cloth that goes into one place
in two layers is cut twice.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from msgspec import Struct, field

from advisor.claims.subjects import subject_of
from advisor.craft import fullness as table
from advisor.craft import pleats as folds
from advisor.knowledge.model import Knowledge
from advisor.project.folded import pleated_apart
from advisor.project.garment import Garment, Seam, Use
from advisor.project.making import Pleats
from advisor.units import show_size

Shown = Callable[[float], str]

METHODS: Final = {
    "hand rows": table.GatherMethod.ROWS,
    "gathering foot": table.GatherMethod.FOOT,
    "overlock": table.GatherMethod.OVERLOCK,
    "elastic": table.GatherMethod.ELASTIC,
}
WAYS: Final = {
    "hand rows": "Hand rows",
    "gathering foot": "A gathering foot",
    "overlock": "An overlocker",
    "elastic": "Elastic",
}
SHEER, LIGHT, MEDIUM = 80.0, 150.0, 280.0
"""Where sheer, light and medium cloth end for gathering, g/m² (estimate)."""
BY_MACHINE: Final = ("gathering foot", "overlock")
STRIP: Final = 200.0
"""Length of a strip to gather for a trial, mm."""
NEAR: Final = 0.05
MEASURED: Final = 5.0
"""How near a length is to the hip that it was measured at, mm: estimate."""


class Fullness(Struct, frozen=True):
    """A full edge: planned and measured ratio, cut and finished width in mm, what to say of it.

    `cut` is the width of one layer; `layers` how many of this cloth lie in the place.
    """

    cloth: str
    method: str
    ratio: float
    measured: float | None
    finished: float | None
    cut: float | None
    usual: tuple[float, float]
    says: tuple[str, ...] = ()
    pitch: float | None = None
    layers: int = 1
    sources: tuple[str, ...] = field(default=table.SOURCES)


def fullness_of(seam: Seam, garment: Garment, knowledge: Knowledge) -> Fullness | None:
    """The full edge of a seam; None where every layer lies flat, or in pleats of its own place."""
    use = max(seam.uses, key=lambda u: u.fullness)
    if use.fullness <= 1:
        return None
    if seam.making.pleats is not None:
        return _pleated(seam, use, show_in(garment))
    if pleated_apart(seam, garment.seams):
        return None
    gathers = seam.making.gathers
    method = drawn_up_by(seam) or "hand rows"
    measured = gathers.measured if gathers else None
    planned = gathers.planned if gathers else use.fullness
    edge = gathers.to if gathers and gathers.to else seam.facts.get("length")
    ratio = table.gather_ratio(weight_class(use, garment, knowledge))
    named = gathers.method if gathers and gathers.method else method
    says = _gather_says(planned, named, measured, ratio, show_in(garment))
    says += _others_say(seam, use, edge, show_in(garment))
    finished = None if edge is None else float(edge)
    cut = None if finished is None else table.cut_width(finished, use.fullness)
    return Fullness(
        use.cloth,
        method,
        use.fullness,
        measured,
        finished,
        cut,
        (ratio.low, ratio.high),
        tuple(says),
        layers=_layers(seam, use),
        sources=ratio.sources,
    )


def drawn_up_by(seam: Seam) -> str:
    """How the full edge of a place is drawn up: as the maker named it, or by rows.

    A foot or an overlocker that does not reach the fullness, and of which no strip shows that it
    does, gives way to hand rows where those reach it.
    """
    gathers = seam.making.gathers
    if gathers is None or gathers.method not in BY_MACHINE or gathers.measured or seam.method:
        return "" if gathers is None else gathers.method
    reach, rows = (table.METHOD_RATIOS[METHODS[m]].high for m in (gathers.method, "hand rows"))
    return "hand rows" if reach < gathers.planned <= rows else gathers.method


def show_in(garment: Garment) -> Shown:
    """How lengths of this garment are written: in the maker's units."""
    units = garment.units
    return lambda length: show_size(length, units)


def _layers(seam: Seam, use: Use) -> int:
    return sum(1 for u in seam.uses if (u.cloth, u.fullness) == (use.cloth, use.fullness))


def _others_say(seam: Seam, main: Use, edge: float | str | None, shown: Shown) -> list[str]:
    """Other full layers of the same place, each with its own width, in one sentence."""
    others = dict.fromkeys(u for u in seam.uses if u.fullness > 1)
    says = []
    for use in others:
        if (use.cloth, use.fullness) == (main.cloth, main.fullness):
            continue
        wide = "" if edge is None else f", {shown(table.cut_width(float(edge), use.fullness))} wide"
        number = _layers(seam, use)
        each = "" if number == 1 else f", {number} layers"
        says.append(f"{use.cloth} {use.fullness:.3g} to 1{wide}{each}")
    return [f"Here too: {'; '.join(says)}."] if says else []


def _gather_says(
    planned: float, method: str, measured: float | None, usual: table.Ratio, shown: Shown
) -> list[str]:
    says = []
    reach = table.METHOD_RATIOS[METHODS[method]]
    if measured is not None:
        if abs(measured - planned) > NEAR * planned:
            says.append(
                f"Your strip gathers {measured:.2g} to 1, not {planned:.2g}: cut by the "
                "strip, or draw it up by hand rows."
            )
    elif not reach.low <= planned <= reach.high:
        rows = planned <= table.METHOD_RATIOS[table.GatherMethod.ROWS].high
        instead = "use a zigzag over a cord, or gather it in two lots"
        if rows:
            over = method in BY_MACHINE and planned > reach.high
            instead = "use hand rows" if over else "try a strip first"
        says.append(
            f"{WAYS[method]} usually {'reach' if method == 'hand rows' else 'reaches'} "
            f"{reach.low:.3g} to {reach.high:.3g} to 1: {instead}."
        )
    elif method != "hand rows":
        says.append(
            f"Gather a strip of {shown(STRIP)} and measure it: {shown(STRIP)} ÷ what is left is "
            "the fullness."
        )
    if (measured or planned) > usual.high * 1.2:
        says.append(f"Fuller than this weight usually is ({usual.high:.3g} to 1), so bulky.")
    return says


def weight_class(use: Use, garment: Garment, knowledge: Knowledge) -> table.Weight:
    """How a cloth counts for gathering."""
    cloth = garment.cloths[use.cloth]
    subject = subject_of(cloth, use, knowledge)
    weight = sum(cloth.weight) / 2 if cloth.weight else MEDIUM
    if subject.levels.get("sheer", (0, 0))[0] > 0 and weight <= SHEER:
        return table.Weight.SHEER
    if weight <= LIGHT:
        return table.Weight.LIGHT
    return table.Weight.MEDIUM if weight <= MEDIUM else table.Weight.HEAVY


def _pleated(seam: Seam, use: Use, shown: Shown) -> Fullness:
    """Pleats: as wide as the hip and what they take up there, at hip and waist alike."""
    made = seam.making.pleats
    assert made is not None
    row = folds.pleats(
        folds.Pleat(made.kind), made.number, made.face, made.depth, spacing=made.spacing
    )
    finished, cut, says = row.finished, row.cut, list[str]()
    if made.hip and made.waist:
        finished = made.waist
        cut = made.hip + made.number * row.take_up
        says += _tapered_says(made, row, shown)
    edge = seam.facts.get("length")
    whole = finished if edge is None else float(edge)
    if made.hip and made.waist and abs(made.hip - whole) <= MEASURED < abs(finished - whole):
        says.append(
            f"The length said, {shown(whole)}, is the hip's: at the waist it is {shown(finished)}."
        )
        whole = finished
    if abs(finished - whole) > 1.0:
        rest = "the rest stays flat" if whole > finished else "make fewer, or narrower ones"
        says.append(f"The pleats come to {shown(finished)}, the seam to {shown(whole)}: {rest}.")
    if made.stitched_down:
        says.append(f"Stitch each pleat down for {shown(made.stitched_down)} before it is pressed.")
    flat = max(0.0, whole - finished)
    return Fullness(
        use.cloth,
        f"{made.kind} pleats",
        (cut + flat) / (finished + flat),
        None,
        finished + flat,
        cut + flat,
        (row.ratio, row.ratio),
        tuple(says),
        folds.pitch(finished, made.number),
        _layers(seam, use),
        row.sources,
    )


def _tapered_says(made: Pleats, row: folds.Pleating, shown: Shown) -> list[str]:
    """What each pleat takes up at hip and waist, and whether the folds then lie on each other."""
    assert made.hip
    assert made.waist
    each = folds.tapered_take_up(row.take_up, made.hip, made.waist, made.number)
    says = [f"Each pleat takes up {shown(row.take_up)} at the hip and {shown(each)} at the waist."]
    apart = made.waist / made.number
    deep = each / 2 if made.kind == folds.Pleat.KNIFE else each / 4
    room = apart if made.kind == folds.Pleat.KNIFE else apart / 2
    if deep > room * (1 + 1e-9):
        says.append(
            f"At the waist the folds are {shown(deep)} deep and have {shown(room)}, so they lie "
            "on each other there: test the bulk."
        )
    return says
