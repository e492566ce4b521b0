"""How thick a seam is at every place that matters, as it lies and under the foot.

Plies are counted by geometry (`derived`: no published table was found), a full edge by its
fullness; thickness is that of `craft.thickness`. A cloth
whose fibre is not known counts by its least dense candidate, which is the thickest; a layer of
which neither weight nor thickness is known is left out, and the spot then says "at least".
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from typing import Final

from msgspec import Struct

from advisor.construction.cleared import cleared
from advisor.construction.panels import sides_of, whole_panels
from advisor.craft.pleats import Pleat, layers
from advisor.craft.thickness import (
    USUAL_PACKING,
    StackedCloth,
    Structure,
    as_it_lies,
    least_thickness,
    thickness_from_packing,
    under_foot,
)
from advisor.knowledge.model import Entry, Knowledge, Mix
from advisor.project.garment import Cloth, Garment, Seam, Use

Stack = dict[str, float]
"""Plies of each cloth."""

STITCH_LINE: Final = "at the stitch line"
ON_A_PLEAT: Final = "on a pleat"
FOLDED_SEAMS: Final = {
    "French": "in the French ridge",
    "mock French": "in the folded allowances",
    "felled": "in the felled seam",
    "self-bound": "in the bound edge",
}
CLOSED: Final = frozenset({"French", "mock French", "felled", "self-bound", "overlocked"})
"""Kinds of seam whose allowances lie to one side; the others are pressed open."""
STAY_MM: Final = 0.3
"""Thickness of a stay tape that stands for trimmed gathers, mm (estimate)."""


TAPE_MM: Final = 0.5
"""Thickness of a zip's tape, mm (estimate): its teeth are never sewn over."""
BANDS: Final = frozenset({"band", "neckband"})
"""Kinds of place, or families of them, where a knit that is stretched on lies folded."""
NONE: Final[frozenset[str]] = frozenset()
CORD: Final = "piping-cord"
SET_ON_TAPE: Final = ("press-stud-tape", "bra-hooks")
"""Snaps and hooks that are sold on a tape: the needle goes through that and never over them."""
EASED: Final = 0.15
"""What ease adds to the plies of a seam at most; nobody counts a twentieth of a ply."""
BESIDE: Final = frozenset({"zip", "bone"})
"""What is stitched beside and never over; its casing counts as a tape."""


class Spot(Struct, frozen=True):
    """A place of a seam: plies, mm as it lies and under the foot, and whether it is sewn over."""

    name: str
    plies: float
    lies_mm: float
    foot_mm: float
    sewn: bool
    complete: bool


def counted(plies: float) -> str:
    """A number of plies in words: whole, for nobody can lay a fifth of one."""
    told = math.ceil(plies - EASED)
    return f"{told} plies" if told != 1 else "1 ply"


def ply_of(cloth: Cloth, knowledge: Knowledge) -> StackedCloth | None:
    """One ply of a cloth, by its own figures or by the middle of what is usual for it."""
    entry = knowledge.entries[cloth.entry]
    if entry.kind in BESIDE or entry.id in (CORD, *SET_ON_TAPE):
        return StackedCloth(TAPE_MM)
    weight = sum(cloth.weight) / 2 if cloth.weight else None
    density = least_density(cloth.mixes, knowledge)
    if cloth.thickness:
        return StackedCloth(sum(cloth.thickness) / 2, 1.0, weight, density)
    if weight is None or density is None:
        return None
    low, high = USUAL_PACKING[_structure(entry)]
    return StackedCloth(
        thickness_from_packing(weight, density, (low + high) / 2), 1.0, weight, density
    )


def too_dense(cloth: Cloth, knowledge: Knowledge) -> bool:
    """Whether the weight and thickness that are said of a cloth cannot both be right.

    It would then be denser than the densest fibre that it may be made of.
    """
    found = [density_of(mix, knowledge) for mix in cloth.mixes]
    known = [density for density in found if density is not None]
    if cloth.weight is None or cloth.thickness is None or len(known) < len(found) or not known:
        return False
    return cloth.thickness[1] < least_thickness(cloth.weight[0], max(known))


def _structure(entry: Entry) -> Structure:
    if entry.structure == "knit":
        return Structure.KNIT
    return Structure.FLEECE if entry.structure == "composite" else Structure.WOVEN


def least_density(mixes: Iterable[Mix], knowledge: Knowledge) -> float | None:
    """Density in g/cm³ of the lightest thing that a cloth may be made of."""
    found = [density_of(mix, knowledge) for mix in mixes]
    known = [density for density in found if density is not None]
    return min(known) if known and len(known) == len(found) else None


def density_of(mix: Mix, knowledge: Knowledge) -> float | None:
    """Density of a mix by mass, g/cm³; shares that are not known count alike."""
    volume = 0.0
    for fibre, share in mix:
        about = knowledge.fibres[fibre].facts.get("density")
        if not about:
            return None
        value = about.get("value") or about.get("min")
        volume += (share / 100 if share is not None else 1 / len(mix)) / float(value)
    return 1 / volume if volume else None


def spots_of(
    seam: Seam, garment: Garment, knowledge: Knowledge, kinds: Mapping[str, str]
) -> list[Spot]:
    """Every place of a seam that matters for its bulk, the stitch line first.

    Args:
        seam: one of the garment's.
        garment: the whole, because seams cross.
        knowledge: for thickness and density.
        kinds: the kind that was picked for each seam.
    """
    seam = cleared(seam, garment, knowledge)
    plies = {name: ply_of(garment.cloths[name], knowledge) for name in seam.cloths()}
    for other in garment.seams:
        if other.name in seam.making.crosses:
            plies |= {name: ply_of(garment.cloths[name], knowledge) for name in other.cloths()}
    found = []
    for name, stack, sewn in _stacks(seam, garment, knowledge, kinds):
        spot = _measured(name, stack, plies, sewn=sewn)
        if "stay" in seam.making.helps and sewn:
            spot = Spot(
                spot.name,
                spot.plies + 1,
                spot.lies_mm + STAY_MM,
                spot.foot_mm + STAY_MM,
                sewn,
                spot.complete,
            )
        found.append(spot)
    return found


def _measured(
    name: str, stack: Stack, plies: Mapping[str, StackedCloth | None], *, sewn: bool
) -> Spot:
    layers = [
        StackedCloth(ply.thickness_mm, count, ply.weight_g_m2, ply.density_g_cm3)
        for cloth, count in stack.items()
        if (ply := plies[cloth]) is not None
    ]
    complete = len(layers) == len(stack)
    total = sum(stack.values())
    return Spot(name, total, as_it_lies(layers), under_foot(layers), sewn, complete)


def _stacks(
    seam: Seam, garment: Garment, knowledge: Knowledge, kinds: Mapping[str, str]
) -> list[tuple[str, Stack, bool]]:
    """Name, plies by cloth, and whether the machine sews there."""
    kind = kinds.get(seam.name, "plain")
    doubled = folded_bands(seam, garment, knowledge)
    line = stitch_line(seam, doubled)
    edge = seam.facts.get("edge")
    about = knowledge.places.kinds.get(seam.place)
    plies = about.plies if about else "joined"
    found: list[tuple[str, Stack, bool]] = [(STITCH_LINE, line, True)]
    full = max((use.fullness for use in seam.uses), default=1.0)
    made = seam.making.pleats
    if made is not None:
        plies_there = layers(Pleat(made.kind), made.face, made.depth, made.spacing)
        deep = {**line, seam.uses[-1].cloth: line[seam.uses[-1].cloth] - full + plies_there}
        found.append((ON_A_PLEAT, deep, True))
    if kind in FOLDED_SEAMS:
        found.append((FOLDED_SEAMS[kind], _times(line, 2), True))
    if edge == "hem" and plies != "flat":
        found.append(("at the hem over a seam", _over_a_seam(seam, line), True))
    elif plies not in ("flat", "folded"):
        found.append((_beside_name(kind), beside(seam, kind, doubled), False))
    if any(knowledge.entries[garment.cloths[c].entry].kind == "zip" for c in line):
        zipped = {
            c: n * 2 for c, n in line.items()
        }  # cloth with its turned allowance, and the tape's end folded away
        found.append(("at the end of the zip", zipped, True))
    crossed = [cleared(other, garment, knowledge) for other in garment.seams]
    found += _crossings(seam, crossed, kinds, doubled, banded=plies == "band")
    return found


def folded_bands(seam: Seam, garment: Garment, knowledge: Knowledge) -> frozenset[str]:
    """The knits of a place that are stretched on as a band, which lies double in the seam."""
    about = knowledge.places.kinds.get(seam.place)
    if about is None or not {about.family, about.id} & BANDS:
        return frozenset()
    entries = {use.cloth: knowledge.entries[garment.cloths[use.cloth].entry] for use in seam.uses}
    return frozenset(
        use.cloth
        for use in seam.uses
        if use.stretched > 1.0 and entries[use.cloth].structure == "knit"
    )


def stitch_line(seam: Seam, doubled: frozenset[str] = NONE) -> Stack:
    """Plies of each cloth where the seam is stitched; a full edge counts its fullness."""
    stack: Stack = {}
    for use in seam.uses:
        count = use.fullness * (2 if use.cloth in doubled else 1)
        if "stay" in seam.making.helps and count > 1:
            count = 0.0
        stack[use.cloth] = stack.get(use.cloth, 0.0) + count
    return stack


def beside(seam: Seam, kind: str, doubled: frozenset[str] = NONE) -> Stack:
    """The thicker side beside the seam: its cloth and allowance, and the other's unless open."""
    one, other = (_laid(side, doubled) for side in sides_of(seam))
    first, second = _times(one, 2), _times(other, 2)
    if not is_closed(seam, kind):
        return max((first, second), key=lambda s: sum(s.values()))
    return {cloth: first.get(cloth, 0.0) + other.get(cloth, 0.0) for cloth in {**first, **other}}


def _laid(uses: Iterable[Use], doubled: frozenset[str]) -> Stack:
    stack: Stack = {}
    for use in uses:
        plies = use.fullness * (2 if use.cloth in doubled else 1)
        stack[use.cloth] = stack.get(use.cloth, 0.0) + plies
    return stack


def is_closed(seam: Seam, kind: str) -> bool:
    """Whether the allowances lie to one side: enclosed, overlocked as one, or gathered."""
    gathered = any(use.fullness > 1 for use in seam.uses)
    return kind in CLOSED or gathered or seam.facts.get("edge") == "turned"


def _beside_name(kind: str) -> str:
    return "beside it, to one side" if kind in CLOSED else "beside it"


def _times(stack: Stack, factor: float) -> Stack:
    return {cloth: count * factor for cloth, count in stack.items()}


def _over_a_seam(seam: Seam, line: Stack) -> Stack:
    """A hem where it runs over a seam: every ply carries it, less what is graded away."""
    return _times(line, 1.5 if "grade" in seam.making.helps else 2.0)


def _crossings(
    seam: Seam,
    others: Iterable[Seam],
    kinds: Mapping[str, str],
    doubled: frozenset[str],
    *,
    banded: bool,
) -> list[tuple[str, Stack, bool]]:
    """Where it runs over other seams: (plies of a panel in this seam) × (plies that it brings).

    Of a band only the garment's own layer carries the seam that it runs over; the band is whole.
    """
    found: list[tuple[str, Stack, bool]] = []
    folded = 2.0 if kinds.get(seam.name) in FOLDED_SEAMS else 1.0
    for other in others:
        if other.name not in seam.making.crosses:
            continue
        brought = _brought(other, kinds, opened="open" in seam.making.helps)
        once, carried = "offset" in seam.making.helps or banded, False
        panels, left = whole_panels(seam, other)
        stack = _times(brought, (min(panels, 1) if once else panels) * folded)
        for use in left:
            carries = not panels and use.cloth in other.cloths() and not (once and carried)
            carried = carried or carries
            here = brought if carries else {use.cloth: 2.0 if use.cloth in doubled else 1.0}
            for cloth, count in here.items():
                stack[cloth] = stack.get(cloth, 0.0) + count * use.fullness * folded
        found.append((f"where it crosses {other.name}", stack, True))
    return found


def _brought(seam: Seam, kinds: Mapping[str, str], *, opened: bool) -> Stack:
    """What a seam brings to one that crosses it: its thicker side, or its folded ridge."""
    kind = "plain" if opened else kinds.get(seam.name, "plain")
    return _times(stitch_line(seam), 2) if kind in FOLDED_SEAMS else beside(seam, kind)
