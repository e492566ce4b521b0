"""The pieces of a seam that are of several layers each, as mounted or quilted ones are."""

from __future__ import annotations

from collections import Counter

from advisor.project.garment import Seam, Use


def sides_of(seam: Seam) -> tuple[tuple[Use, ...], tuple[Use, ...]]:
    """The layers of both pieces of a seam: half of each cloth where all lie there in pairs.

    So it is of pieces that are mounted or quilted; else the first layer is joined to the rest.
    """
    every = Counter(use.cloth for use in seam.uses)
    if any(number % 2 for number in every.values()):
        return seam.uses[:1], seam.uses[1:]
    met: Counter[str] = Counter()
    sides: tuple[list[Use], list[Use]] = ([], [])
    for use in seam.uses:
        sides[met[use.cloth] >= every[use.cloth] // 2].append(use)
        met[use.cloth] += 1
    return tuple(sides[0]), tuple(sides[1])


def whole_panels(seam: Seam, other: Seam) -> tuple[int, tuple[Use, ...]]:
    """How many panels of several layers carry a seam that is run over, and the layers beside them.

    A layer of one of their cloths alone is another piece. Where single layers are joined no panel
    is told from another, and every layer is left.
    """
    one, rest = (Counter(use.cloth for use in side) for side in sides_of(other))
    if one != rest or one.total() == 1:
        return 0, seam.uses
    have = Counter(use.cloth for use in seam.uses)
    panels = min(have[cloth] // number for cloth, number in one.items())
    met: Counter[str] = Counter()
    left = []
    for use in seam.uses:
        met[use.cloth] += 1
        if met[use.cloth] > one[use.cloth] * panels:
            left.append(use)
    return panels, tuple(left)
