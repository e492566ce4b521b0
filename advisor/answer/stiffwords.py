"""What the stiffness of measured cloths comes to, in words."""

from __future__ import annotations

from advisor.construction.seamwork import SeamWork
from advisor.craft.stiffness import CRISP, LEVELS
from advisor.units import System
from advisor.units.sentences import said

STIFFER = 1.0
"""A support stiffer than its cloth by itself shows its edge (common practice)."""


def stiff_says(work: SeamWork, units: System) -> list[str]:
    """Gathers crisp or soft, and what an interfacing makes of its cloth."""
    stiff = work.stiff
    if stiff is None:
        return []
    says = []
    if stiff.gathered:
        says.append(_gathers(stiff.gathered, stiff.lengths[stiff.gathered], units))
    if stiff.support:
        face, support = stiff.lengths[stiff.face], stiff.lengths[stiff.support]
        text = f"{stiff.face} bends at {_mm(face, units)}, {stiff.support} at {_mm(support, units)}"
        if stiff.together is not None:
            least = "at least " if stiff.fused else ""
            text += (
                f"; held as one {least}{stiff.times:.2g} times as stiff as {stiff.face} alone, "
                f"like a cloth that bends at {_mm(stiff.together, units)}"
            )
        more = " Its edge will show: take a softer one." if support > STIFFER * face else ""
        says.append(f"{text}.{more}")
    return says


def _gathers(cloth: str, length: float, units: System) -> str:
    bends = f"{cloth} bends at {_mm(length, units)}, so its gathers"
    if length >= CRISP:
        return f"{bends} are crisp and stand away."
    if length < LEVELS[0]:
        return f"{bends} are soft and fall close."
    return f"{bends} are neither crisp nor soft: they fall in rounded folds."


def _mm(length: float, units: System) -> str:
    return said(round(length), "mm", units)
