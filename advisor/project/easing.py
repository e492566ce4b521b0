"""Reads by how much a layer is longer than its seam: said as a length, it becomes a fullness."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.project.garment import Seam, Use
from advisor.project.measures import Asker


def with_ease(seam: Seam, asker: Asker) -> Seam:
    """The seam with the fullness that the ease of its layers makes: 1 + ease / length of the seam.

    `derived`: the layer is as long as the seam and its ease together. A layer whose ease cannot be
    reckoned keeps its fullness, and the findings say why.
    """
    layers = asker.about.get("layers")
    if not isinstance(layers, list) or len(layers) != len(seam.uses):
        return seam  # a layer was not understood, which is said already
    uses = tuple(_eased(use, i, layers[i], seam, asker) for i, use in enumerate(seam.uses))
    return replace(seam, uses=uses)


def _eased(use: Use, i: int, layer: object, seam: Seam, asker: Asker) -> Use:
    if not isinstance(layer, dict) or "ease" not in layer:
        return use
    here = Asker(layer, (*asker.steps, "layers", i), asker.findings, asker.bare)
    ease, length = here.measure("ease"), seam.facts.get("length")
    if ease is None:
        return use
    if "fullness" in layer:
        here.deny("ease", "this layer has both 'ease' and 'fullness'", "one of the two")
        return use
    if length is None:
        here.deny("ease", "ease needs the length of the seam", "length: 47 cm, beside the name")
        return use
    return replace(use, fullness=1.0 + ease / float(length))
