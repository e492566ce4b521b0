"""How many plies lie at each place of a seam.

Counting only; thicknesses are the business of `thickness`. The counts are geometry
(`derived`: no published table was found). A cloth with fullness R counts R plies on
average where it is drawn up, so a count need not be whole.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("derived",)


class Pressed(StrEnum):
    """How the allowances of a seam lie after pressing."""

    OPEN = "open"
    ONE_SIDE = "to one side"


class ZipSetting(StrEnum):
    """How a zip is set into its opening."""

    CENTRED = "centred"
    LAPPED = "lapped"
    CONCEALED = "concealed"


@dataclass(frozen=True, slots=True)
class Plies:
    """Plies of the first and of the second cloth, and of anything else (a zip's tape)."""

    first: float
    second: float
    other: float = 0.0

    @property
    def total(self) -> float:
        """All plies together."""
        return self.first + self.second + self.other

    def times(self, factor: float) -> Plies:
        """The same stack with the cloth repeated; the other material is not."""
        return Plies(self.first * factor, self.second * factor, self.other)

    def plus(self, more: Plies) -> Plies:
        """Two stacks on top of each other."""
        return Plies(self.first + more.first, self.second + more.second, self.other + more.other)


def stitch_line(first: float = 1.0, second: float = 1.0) -> Plies:
    """A plain seam at its stitch line: every ply of both sides (2 for two plain cloths).

    A side that is underlined has 2 plies, a gathered side R.
    """
    return Plies(checks.at_least("plies", first, 1), checks.at_least("plies", second, 1))


def beside(pressed: Pressed, first: float = 1.0, second: float = 1.0) -> Plies:
    """Beside a plain seam, on the first cloth's side: 2 pressed open, 3 pressed onto it."""
    seam = stitch_line(first, second)
    if pressed is Pressed.OPEN:
        return Plies(2 * seam.first, 0.0)
    return Plies(2 * seam.first, seam.second)


def crossing(*panels: tuple[float, float]) -> float:
    """Plies where two seams cross: (plies of the panel in the new seam) × (plies it brings).

    One pair for each panel of the new seam. Aligned seams in both panels give the product
    rule; seams pressed opposite ways bring 3 and 1 instead of 3 and 3.
    """
    if not panels:
        raise ValueError("a crossing needs at least one panel")
    return sum(
        checks.at_least("plies of a panel in the seam", here, 0)
        * checks.at_least("plies a panel brings", brought, 1)
        for here, brought in panels
    )


def crossing_of_seams(old: Pressed, new: Pressed | None, *, opposite: bool = False) -> float:
    """Plies where a plain new seam crosses plain seams of both its panels, aligned.

    `new` None counts at the stitch line; otherwise beside it, as pressed. `opposite` says
    that the two old seams are pressed away from each other.
    """
    thick = 2.0 if old is Pressed.OPEN else 3.0
    thin = 1.0 if opposite and old is Pressed.ONE_SIDE else thick
    if new is None:
        return crossing((1, thick), (1, thin))
    pressed = beside(new)
    return crossing((pressed.first, thick), (pressed.second, thin))


def french(*, pressed_to_side: bool = False) -> Plies:
    """The ridge of a French seam: 4; with the body it is pressed onto, 5."""
    return Plies(3.0 if pressed_to_side else 2.0, 2.0)


def mock_french(*, pressed_to_side: bool = False) -> Plies:
    """The folded allowances of a mock French seam: two doubled edges, as a French ridge."""
    return french(pressed_to_side=pressed_to_side)


def felled() -> Plies:
    """A flat-felled seam: 4."""
    return Plies(2.0, 2.0)


def gathered_edge(fullness: float, flat: float = 1.0, *, doubled: bool = False) -> Plies:
    """A gathered edge on a flat one, at the stitch line: flat plies + R.

    `flat` is 2 for a band or facing on both sides; `doubled` is a ruffle of folded cloth or
    a hem caught in the seam (2R).
    """
    ratio = checks.at_least("fullness", fullness, 1)
    return Plies(checks.at_least("flat plies", flat, 1), 2 * ratio if doubled else ratio)


def gathered_topstitched(fullness: float, *, doubled: bool = False) -> Plies:
    """A gathered edge pressed up and topstitched through the flat tier: 2 + R."""
    return gathered_edge(fullness, 2.0, doubled=doubled)


def gathered_cross_seam(fullness: float, pressed: Pressed) -> Plies:
    """What a seam inside the gathered tier adds there: +R open, +2R to one side."""
    ratio = checks.at_least("fullness", fullness, 1)
    return Plies(0.0, ratio if pressed is Pressed.OPEN else 2 * ratio)


def pleated_edge(
    depth: float, pitch: float, *, both_ways: bool = False, flat: float = 1.0
) -> Plies:
    """The thickest place of a pleated edge on a flat one: flat plies + 3 on a fold.

    `depth` is the fold depth, `pitch` the distance from pleat to pleat, `both_ways` a box or
    inverted pleat. A depth of 0 is no pleat; folds that would overlap are refused.
    """
    most = checks.above("pleat pitch", pitch) / (2 if both_ways else 1)
    if checks.at_least("fold depth", depth, 0) > most * (1 + 1e-9):
        raise ValueError(f"fold depth {depth:g} is deeper than its spacing allows ({most:g})")
    return Plies(checks.at_least("flat plies", flat, 1), 3.0 if depth else 1.0)


def hem(turns: int) -> Plies:
    """A hem turned once (2) or twice (3)."""
    return Plies(1.0 + checks.count("turns of a hem", turns), 0.0)


def hem_over_seam(turns: int, pressed: Pressed) -> float:
    """A hem where it lies over a seam of the same panel: each of its plies carries the seam."""
    return crossing((hem(turns).first, beside(pressed).total))


def zip_end(setting: ZipSetting, *, crossed: float = 1.0, tape_folded: bool = True) -> Plies:
    """The end of a zip beside its teeth, where a seam with `crossed` plies may cross it.

    Cloth and its turned allowance (2); a lapped zip has both sides there (4); the tape counts
    1, or 2 with its end folded away. The teeth themselves must never be sewn over.
    """
    cloth = Plies(2.0, 2.0 if setting is ZipSetting.LAPPED else 0.0)
    tape = 2.0 if tape_folded else 1.0
    crossed_cloth = cloth.times(checks.at_least("plies of the crossing seam", crossed, 1))
    return crossed_cloth.plus(Plies(0.0, 0.0, tape))
