"""Reads what shapes a piece that is cut: its tucks, its flounce, its tiers.

Geometry as in `craft.fullness` (`derived`): a ring meets its seam at the radius seam ÷ (2π × share
of a circle × rings), its joins counted, and no ring may be larger than its cloth.
"""

from __future__ import annotations

import math

from advisor.errors import shown
from advisor.project.making import USUAL_ALLOWANCE, Flounce, Piece, Tiers, Tucks
from advisor.project.measures import Asker

USUAL_TIER = 1.5
"""Fullness of a tier where none is said (`trade-tiers`)."""
_SHAPES = ("flounce", "tiers", "tucks", "fullness")
_SIZES = ("width", "height", "finished width", "finished height")
_PLAIN_ONLY = ("narrow end", "grain", "doubled", "matched")
_NOT_WITH = {
    "flounce": (*_SIZES, *_PLAIN_ONLY),
    "tiers": ("width", "height", *_PLAIN_ONLY),
    "doubled": ("width", "height", "hem", "narrow end"),
}
_WHY = {
    "flounce": "a flounce has its size from its seam and its depth",
    "tiers": "tiers are reckoned from a finished width and lie along the cloth",
    "doubled": "a piece that is folded double is reckoned from finished sizes and has no hem",
}


def one_shape(ask: Asker) -> bool:
    """Whether what a piece says of its shape goes together; else that is noted."""
    said = [k for k in _SHAPES if isinstance(ask.about.get(k), dict) or ask.said(k)]
    if len(said) > 1:
        ask.deny(said[1], f"this piece has {said[0]} and {said[1]} at once", "one of them")
        return False
    for shape, others in _NOT_WITH.items():
        there = ask.yes(shape) if shape == "doubled" else shape in said
        wrong = next((key for key in others if there and ask.said(key)), None)
        if wrong is not None:
            ask.deny(wrong, f"{_WHY[shape]}, so '{wrong}' does not go with it")
            return False
    return True


def read_tucks(ask: Asker, wide: float | None) -> Tucks | None:
    """Tucks of a piece `wide` without them; spread over it where no spacing is said."""
    here = ask.below("tucks")
    if here is None:
        return None
    deep, number, spacing = here.measure("depth"), here.count("number"), here.measure("spacing")
    if deep is None or number is None:
        return None
    if wide is None and spacing is None:
        return None
    gap = spacing if spacing is not None else float(wide or 0.0) / number
    if deep > gap * (1 + 1e-9):
        here.deny(
            "depth",
            f"a tuck {deep:.4g} mm deep is deeper than its spacing",
            f"at most {gap:.4g} mm",
        )
        return None
    span = (number - 1) * gap + deep
    if wide is not None and span > wide * (1 + 1e-9):
        here.deny(
            "number",
            f"{number} tucks {gap:.4g} mm apart take {span:.4g} mm: more than the "
            f"piece, {wide:.4g} mm",
            "fewer tucks, or a smaller spacing",
        )
        return None
    return Tucks(deep, number, gap)


def read_flounce(ask: Asker, name: str, cloth: str, usable: float | None) -> Piece | None:
    """A flounce, unless its rings close up or are larger than the cloth."""
    here = ask.below("flounce")
    if here is None:
        return None
    seam, deep, turn = here.measure("seam"), here.measure("depth"), here.measure("turn") or 1.0
    rings, number, hem = here.count("pieces") or 1, ask.count("number") or 1, ask.measure("hem")
    said = ask.measure("allowance")
    if seam is None or deep is None:
        return None
    piece = Piece(
        name,
        cloth,
        seam,
        deep,
        cut=False,
        number=number,
        hem=hem,
        allowance=USUAL_ALLOWANCE if said is None else said,
        grain="any",
        flounce=Flounce(seam, deep, rings, turn),
    )
    inner = (seam + 2 * piece.allowance * rings) / (2 * math.pi * turn * rings)
    outer = inner + deep + (piece.hem or 0.0)
    if inner <= piece.allowance:
        here.deny(
            "seam",
            f"the inner edge has a radius of {inner:.4g} mm: its allowance of "
            f"{piece.allowance:.4g} mm closes it",
            "fewer pieces, a smaller turn or allowance",
        )
        return None
    across = outer if turn <= 0.5 else 2 * outer
    if usable is not None and across > usable * (1 + 1e-9):
        here.deny(
            "depth",
            f"the ring is {across:.5g} mm across: wider than the cloth {shown(cloth)}",
            f"at most {usable:.5g} mm, or more rings (pieces:)",
        )
        return None
    return piece


def read_tiers(ask: Asker, high: float | None) -> Tiers | None:
    """Tiers that share the finished height, or have their own heights."""
    here = ask.below("tiers")
    if here is None:
        return None
    number, heights = here.count("number", "tiers"), here.measures("heights", "finished height")
    full = here.measure("fullness") or USUAL_TIER
    listed = isinstance(here.about.get("heights"), list)
    if listed and (here.said("number") or ask.said("finished height")):
        where, key = (here, "number") if here.said("number") else (ask, "finished height")
        where.deny(key, "the heights of the tiers tell this already", "one of the two")
        return None
    if not listed and not here.said("number"):
        here.findings.say(
            here.steps,
            "these tiers have neither a number nor heights",
            "number: 3, or heights: [20 cm, 25 cm]",
        )
        return None
    if heights is not None:
        return Tiers(heights, full)
    if number is None or high is None:
        return None
    return Tiers((high / number,) * number, full)
