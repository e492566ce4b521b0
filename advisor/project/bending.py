"""Reads how a strip of a cloth bent over the edge of a table."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from advisor.project.findings import Findings
from advisor.project.measures import Asker

if TYPE_CHECKING:
    from advisor.textio.yamlfile import Steps

LEAST_SINK, MOST_SINK = 0.08, 0.9
"""Between these shares of the reach a sinking tells something, as in `craft.stiffness`."""


def read_overhang(
    about: Mapping[str, Any], steps: Steps, findings: Findings, *, bare: bool
) -> tuple[float, float | None] | None:
    """How far a strip reached and how far its end sank, mm; None where nothing is said."""
    ask = Asker(about, steps, findings, bare)
    reach, sinks = ask.measure("overhang"), ask.measure("sinks")
    if sinks is not None and reach is None:
        ask.deny("sinks", "a sinking says nothing without a reach", "overhang: as well")
        return None
    if reach is None or sinks is None:
        return None if reach is None else (reach, None)
    if not LEAST_SINK <= sinks / reach <= MOST_SINK:
        ask.deny(
            "sinks",
            f"an end that sinks by {sinks / reach:.0%} of the reach tells no stiffness",
            f"a reach of which it sinks by {LEAST_SINK:.0%} to {MOST_SINK:.0%}",
        )
        return None
    return reach, sinks
