"""Small pieces of text that the close and the detailed sheet share."""

from __future__ import annotations

from collections.abc import Iterable

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldConflict, ToldLayer, ToldPlace
from advisor.answer.press_clause import press_clauses
from advisor.render.printed.section import Part
from advisor.units import System, show, show_range

_DEGREES = {"injury": "It hurts you", "damage": "It ruins cloth", "result": "It shows"}
_MADE = ("needle.", "thread.", "stitch.", "machine.", "interfacing.", "seam.bulk")
"""Aspects of which a clash keeps the work from being made at all, where nobody is harmed."""
SETTINGS = ("needle.size", "needle.point", "stitch.length", "press.temperature")
"""What a scrap test tries."""
PRESSING = "press."
"""How the aspects of pressing begin."""
PRESS = "press"
"""The label of what is set at the iron."""


def degree(conflict: ToldConflict) -> str:
    """How bad a conflict is, in one of three degrees."""
    if conflict.aspect == "order":
        return "It will not work"
    # What she wants against what she has.
    hers = all(getattr(claim, "rule", "") == "maker" for claim in conflict.because)
    if conflict.severity == "result" and (hers or conflict.aspect.startswith(_MADE)):
        return "It will not work"
    return _DEGREES[conflict.severity]


def press_anew(report: Answer, place: str, parts: Iterable[Part]) -> list[str]:
    """What the heat model adds at a place; nothing that the place named for its press says.

    Where no press is told, as at a button, there is no time to count either.
    """
    if not any(v.place == place and v.aspect.startswith(PRESSING) for v in report.verdicts):
        return []
    told = press_clauses(report, place)
    earlier = next((part.same for part in parts if part.label == PRESS and part.same), "")
    return [] if earlier and told == press_clauses(report, earlier) else told


def layer_title(layer: ToldLayer, units: System) -> str:
    """A cloth's name, what it is, of what, and how heavy."""
    if layer.kind != "cloth":
        return f"{layer.name} ({layer.kind})"
    return f"{layer.name}: {about_layer(layer, units)}"


def about_layer(layer: ToldLayer, units: System) -> str:
    """What a cloth is, of what, and how heavy; of a notion, its kind."""
    if layer.kind != "cloth":
        return str(layer.kind)
    fabric = layer.fabric.replace("-", " ")
    named = "" if fabric in layer.name else f"{fabric}, "
    return f"{named}{layer.text}{_weight(layer, units)}"


def _weight(layer: ToldLayer, units: System) -> str:
    if not layer.weight:
        return ""
    low, high = layer.weight
    if low == high:
        return f", {show('weight', low, units)}"
    return f", weight taken as {show_range('weight', low, high, units)}"


def about_seam(seam: ToldPlace) -> str:
    """The stack of a seam and what the project says of it."""
    facts = seam.facts
    about = [str(facts[key]) for key in ("shape", "edge") if key in facts]
    if "stress" in facts:
        about.append(f"{facts['stress']} strain")
    return "; ".join([" + ".join(seam.layers), ", ".join(about)]).rstrip("; ")
