"""What is told of a cloth that is pressed with a glue on it that bears less."""

from __future__ import annotations

from typing import TYPE_CHECKING

from advisor.claims.workarounds import GLUED
from advisor.order.drawnup import listed
from advisor.units import show

if TYPE_CHECKING:
    from advisor.order.facts import Facts


def over_glue(name: str, heat: float, facts: Facts) -> str:
    """How hot a cloth is pressed where an interfacing is fused to it; "" where that bears as much.

    Args:
        name: of the cloth.
        heat: what it is pressed with, °C.
        facts: of the garment.
    """
    setups = facts.setups
    held = (p for p in facts.places if facts.of_seam("fusible interfacing", p))
    fused = {n for p in held if name in setups.fused_to(p) for n in p.notions}
    glues = sorted(n for n in fused if facts.entry(n).kind in GLUED)
    most = {n: limit for n in glues if (limit := setups.bears_alone(n)) is not None}
    tender = [n for n, limit in most.items() if limit < heat]
    if not tender:
        return ""
    least = show("temperature", min(most[n] for n in tender), facts.garment.units)
    return f"; where {listed(tender)} is fused to it, at most {least}"
