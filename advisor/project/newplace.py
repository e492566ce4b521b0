"""The line by which a project names a place that it has not named."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from advisor.knowledge.gaps import Wanted
from advisor.textio.flow import flow

CLOTH = "cloth"


def new_place(
    line: Wanted, cloths: Sequence[str], part: str, first: str, taken: Iterable[str]
) -> str:
    """The line to write among the seams of a project.

    Args:
        line: the place; of its layers `cloth` stands for the cloth, any other is a notion.
        cloths: those of its layers in turn, the last for all that are left.
        part: the part of the garment that it belongs to, "" where none is named.
        first: a word before its name, as "lining"; "" where it needs none.
        taken: the names of the places that there are.
    """
    layers: list[Any] = [{"notion": layer} for layer in line.layers]
    at = [i for i, layer in enumerate(line.layers) if layer == CLOTH]
    for i, nth in enumerate(at):
        layers[nth] = cloths[min(i, len(cloths) - 1)]
    name = f"{first} {line.name}" if first else line.name
    named: dict[str, Any] = {
        "name": name if name not in taken else f"{cloths[0]} {name}",
        "layers": layers,
    }
    said = {"kind": line.kind, "edge": line.edge, "part": part}
    named |= {key: value for key, value in said.items() if value}
    if line.times > 1:
        named["times"] = line.times
    return flow(named)
