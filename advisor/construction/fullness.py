"""How a full edge is drawn up: what the method reaches, what a strip measured, what to cut.

Usual ratios by weight and by method stand in `craft.fullness`, geometry of pleats in
`craft.pleats`. What a test strip measured goes before any table.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Final

from advisor.claims.subjects import subject_of
from advisor.craft import fullness as table
from advisor.craft import pleats as folds
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam, Use

METHODS: Final = {
    "hand rows": table.Method.ROWS,
    "gathering foot": table.Method.FOOT,
    "overlock": table.Method.OVERLOCK,
    "elastic": table.Method.ELASTIC,
}
SHEER, LIGHT, MEDIUM = 80.0, 150.0, 280.0
"""Where sheer, light and medium cloth end for gathering, g/m² (estimate)."""
STRIP_CM: Final = 20
NEAR: Final = 0.05


@dataclass(frozen=True, slots=True)
class Fullness:
    """A full edge: planned and measured ratio, cut and finished width in mm, what to say of it."""

    cloth: str
    method: str
    ratio: float
    measured: float | None
    finished: float | None
    cut: float | None
    usual: tuple[float, float]
    says: tuple[str, ...] = ()
    pitch: float | None = None
    sources: tuple[str, ...] = field(default=table.SOURCES)


def fullness_of(seam: Seam, garment: Garment, knowledge: Knowledge) -> Fullness | None:
    """The full edge of a seam; None where every layer lies flat."""
    use = max(seam.uses, key=lambda u: u.fullness)
    if use.fullness <= 1:
        return None
    if seam.making.pleats is not None:
        return _pleated(seam, use)
    gathers = seam.making.gathers
    method = gathers.method if gathers and gathers.method else "hand rows"
    measured = gathers.measured if gathers else None
    planned = gathers.planned if gathers else use.fullness
    edge = gathers.to if gathers and gathers.to else seam.facts.get("length")
    ratio = table.gather_ratio(weight_class(use, garment, knowledge))
    says = _gather_says(planned, method, measured, ratio)
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
        sources=ratio.sources,
    )


def _gather_says(
    planned: float, method: str, measured: float | None, usual: table.Ratio
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
        says.append(
            f"A {method} usually reaches {reach.low:.3g} to {reach.high:.3g} to 1: use hand rows."
        )
    elif method != "hand rows":
        says.append(
            f"Gather a strip of {STRIP_CM} cm and measure it: {STRIP_CM} ÷ what is left "
            "is the fullness."
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


def _pleated(seam: Seam, use: Use) -> Fullness:
    made = seam.making.pleats
    assert made is not None
    row = folds.pleats(
        folds.Pleat(made.kind), made.number, made.face, made.depth, spacing=made.spacing
    )
    says = []
    edge = seam.facts.get("length")
    if edge is not None and abs(row.finished - float(edge)) > 1.0:
        says.append(
            f"The pleats come to {row.finished:.0f} mm, the seam to {float(edge):.0f} mm: "
            "the rest stays flat."
        )
    if made.hip and made.waist:
        each = folds.tapered_take_up(row.take_up, made.hip, made.waist, made.number)
        says.append(
            f"Each pleat takes up {row.take_up:.0f} mm at the hip and {each:.0f} mm at the waist."
        )
    flat = max(0.0, float(edge or row.finished) - row.finished)
    return Fullness(
        use.cloth,
        f"{made.kind} pleats",
        row.ratio,
        None,
        row.finished + flat,
        row.cut + flat,
        (row.ratio, row.ratio),
        tuple(says),
        folds.pitch(row.finished, made.number),
        row.sources,
    )
