"""How thick the seams are of which nothing need be said: once for the garment."""

from __future__ import annotations

from collections.abc import Mapping

from advisor.answer.model.making import ToldBuild
from advisor.construction.seamwork import FINE


def is_fine(built: ToldBuild) -> bool:
    """Whether a place goes under the foot without being pressed down."""
    return built.room == FINE and not built.squeeze


def fine_bulk(built: Mapping[str, ToldBuild]) -> str | None:
    """What all the seams that go easily under the foot come to; None where none is sewn.

    Args:
        built: what every place comes to, by its name; thicknesses in mm.
    """
    sewn = {name: b for name, b in built.items() if is_fine(b) and " under the foot" in b.build}
    if not sewn:
        return None
    thickest = max(sewn, key=lambda name: (sewn[name].under_foot_mm or 0.0, name))
    figures = sewn[thickest].build.removesuffix(f": {FINE}")
    return f"{FINE} wherever no place says otherwise; the thickest of them is {thickest}, {figures}"
