"""The short sentence that the heat model adds to a seam's press line; it can only cut time short.

It reads the report's `heat` rows and nothing heavy, so that a quick question stays quick.
"""

from __future__ import annotations

from typing import Any

LONG_S = 30.0
"""A limit reached later than this needs no counting: the top of the dwell aspect."""
COUNTED_S = 15.0
"""The sheet speaks only of times that somebody might pass without thinking: estimate."""


def press_clauses(report: dict[str, Any], place: str) -> list[str]:
    """At most one short sentence for a seam; none where the rules are as strict already."""
    rows = [r for r in report.get("heat", ()) if r["place"] == place]
    longest = budget(rows)
    if longest is None or longest >= COUNTED_S:
        return []
    ruled = next(
        (
            v
            for v in report["verdicts"]
            if v["place"] == place and v["scope"] == "seam" and v["aspect"] == "press.dwell"
        ),
        None,
    )
    if ruled is not None and ruled["high"] is not None and ruled["high"] <= longest:
        return []
    said = f"Computed: at most {seconds(longest)} at a time, lift, let cool"
    needs = 0.0 if ruled is None or ruled["low"] is None else ruled["low"]
    return [f"{said}; the rest in several touches." if longest < needs else f"{said}."]


def budget(rows: list[dict[str, Any]]) -> float | None:
    """The longest press of a place, s, at the setting that all its layers bear; or None."""
    found = [
        r["press_at_most_s"]
        for r in rows
        if r["way"] in ("advised", "dried out") and r["press_at_most_s"] is not None
    ]
    return min(found, default=None)


def seconds(value: float) -> str:
    """Seconds for a limit, never rounded up."""
    return "a touch of under a second" if value < 1.0 else f"{int(value)} s"


def wait_words(wait: list[float]) -> str:
    """How long a hard part stays hot: likely after one press, and at the most after many."""
    likely, most = minutes(wait[1]), minutes(wait[2])
    if likely == most:
        return f"about {likely}"
    return f"likely about {likely}, after many in one place up to {most}"


def minutes(value: float) -> str:
    """A wait, never rounded down."""
    if value <= 90.0:
        return f"{-int(-value // 10) * 10:d} s"
    return f"{-int(-value // 60):d} minutes"
