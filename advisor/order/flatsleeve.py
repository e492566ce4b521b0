"""A sleeve that is set in flat, and the side and sleeve seams closed in one run.

A flat cap with little ease, as of a shirt, is joined while side and sleeve lie open, and so is
one of an overlocked knit with none; only a high one, one over a pad or one with a lining of its
own is set into a closed armhole. Whoever names another method, or says that it runs over the
side, has it so; whose side is said to run over the armhole, its sleeve seam does too.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace, same_unit
from advisor.order.steps import MachineState
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts

ONE_ROW: Final = frozenset({"join", "row"})
"""The work by which two seams are sewn in one run."""
ARMHOLE, SIDE, UNDERARM = "armhole", "side", "underarm"
ROUND: Final = frozenset({"pad", "canvas", "lining-seam"})
"""Kinds of place of a garment whose sleeves are shaped at the head, or lined."""
OVERLOCKED: Final = frozenset({"504", "514", "516"})
BOTH_SIDES: Final = 2
"""How often a side is sewn; with a strip let into it, twice as often."""
LITTLE: Final = 1.035
"""Up to this fullness a cap is fed in flat: common practice, 1 to 2 cm of a shirt's armhole."""


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "sleeve set flat": lambda: set_flat(place, facts),
        "sleeve set in the round": lambda: not set_flat(place, facts),
        "no second row all round": lambda: not (facts.neatened(place) and facts.cut_down(place)),
    }


def set_flat(place: SeamPlace, facts: Facts) -> bool:
    """Whether a sleeve is joined flat: of a shirt, or of an overlocked knit without ease."""
    return _of_a_shirt(place, facts.places) or _of_a_knit(place, facts)


def _of_a_knit(place: SeamPlace, facts: Facts) -> bool:
    """Whether an overlocker joins a knit sleeve without ease, before its side and its own seam."""
    if place.role.id != ARMHOLE or place.unit != "shell" or place.kind.id != "seam":
        return False
    knit = all(facts.entry(name).structure == "knit" for name in place.seam.cloths())
    eased = any(use.fullness > 1.0 for use in place.seam.uses)
    stitch = facts.setups.word(Place("seam", place.name), "stitch.type", "")
    shaped = any(p.kind.id in ROUND for p in facts.places)
    shell = {p.role.id for p in facts.places if p.unit == "shell" and p.kind.family == "seam"}
    flat = not eased and not shaped and not _closed_first(place, facts.places)
    return knit and flat and stitch in OVERLOCKED and {SIDE, UNDERARM} <= shell


def _closed_first(sleeve: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether side or sleeve seam is closed before: it is said to run over one of them.

    A side with a strip let into it has two rows, and neither runs on into the sleeve alone.
    """
    tubes = [p for p in places if p.role.id in (SIDE, UNDERARM)]
    over = {p.name for p in tubes} & (sleeve.crosses or frozenset())
    return bool(over) or any(_with_a_strip(p) for p in tubes if same_unit(p, sleeve))


def _with_a_strip(side: SeamPlace) -> bool:
    return side.role.id == SIDE and side.seam.making.times > BOTH_SIDES


def _of_a_shirt(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a sleeve is one of a shirt, with so little ease that it is joined flat."""
    if place.role.id != ARMHOLE or place.kind.id != "seam" or place.unit != "shell":
        return False
    flat = all(use.fullness <= LITTLE for use in place.seam.uses)
    lined = any(p.role.id == ARMHOLE and p.unit == "lining" for p in places)
    return flat and not _closed_first(place, places) and not lined and is_shirt(places)


def is_shirt(places: Sequence[SeamPlace]) -> bool:
    """Whether a garment is built as a shirt: plackets in its sleeves, a stand, a yoke or a tail."""
    sleeve = any(p.kind.id == "placket" and nouns.ON_SLEEVE & _words(p) for p in places)
    stand = any("stand" in _words(p) and p.kind.id in ("collar", "faced-edge") for p in places)
    yoke = any(p.kind.id == "yoke" for p in places) or any("tail" in _words(p) for p in places)
    return sleeve and stand and yoke


def one_run(places: Sequence[SeamPlace]) -> tuple[SeamPlace, SeamPlace] | None:
    """The side and the sleeve seam that are sewn as one, where the sleeve is set in flat between.

    Both have to be made alike, or each is its own row.
    """
    sleeves = [p for p in places if p.role.id == ARMHOLE and _open_at_the_side(p, places)]
    for sleeve in sleeves:
        mine = [p for p in places if p.kind.id == "seam" and same_unit(p, sleeve)]
        sides = [p for p in mine if p.role.id == SIDE and set(p.cloths) & set(sleeve.cloths)]
        arms = [p for p in mine if p.role.id == UNDERARM]
        for side in sides:
            found = next((arm for arm in arms if arm.method.id == side.method.id), None)
            if found is not None and len(sides) == 1 and not _with_a_strip(side):
                return side, found
    return None


def _open_at_the_side(sleeve: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a sleeve goes in before its side is closed: by its method, or as the file says."""
    sides = (p for p in places if p.role.id == SIDE and same_unit(p, sleeve))
    told = any(sleeve.name in (p.crosses or ()) for p in sides)
    return told or UNDERARM in sleeve.method.crossed_by


def run_on_from(place: SeamPlace, places: Sequence[SeamPlace]) -> str:
    """The side in whose row a sleeve seam is sewn; "" where it is a row of its own."""
    pair = one_run(places)
    return pair[0].name if pair is not None and pair[1].name == place.name else ""


def as_one_row(
    state_of: Callable[[SeamPlace], MachineState | None],
    place: SeamPlace,
    places: Sequence[SeamPlace],
) -> MachineState | None:
    """How the machine is set for a row: of two seams in one run as the finer cloth wants it."""
    pair = one_run(places)
    if pair is None or place.name not in {p.name for p in pair}:
        return state_of(place)
    states = [state for p in pair if (state := state_of(p)) is not None]
    return min(states, key=lambda state: state.size, default=None)


def with_sleeves_flat(places: Sequence[SeamPlace]) -> tuple[SeamPlace, ...]:
    """The places, each sleeve seam running over the armhole that its own side is said to cross.

    A sleeve that is closed first cannot be set into an armhole whose side is still open.
    """
    return tuple(_over_its_armhole(p, places) if p.role.id == UNDERARM else p for p in places)


def _over_its_armhole(sleeve: SeamPlace, places: Sequence[SeamPlace]) -> SeamPlace:
    own = [p for p in places if p.unit == sleeve.unit and p.seam.part == sleeve.seam.part]
    sides = [p for p in own if p.role.id == SIDE]
    crossed = frozenset(
        p.name
        for p in own
        if p.role.id == ARMHOLE
        and set(p.cloths) & set(sleeve.cloths)
        and sleeve.name not in (p.crosses or ())
        and any(p.name in (side.crosses or ()) for side in sides)
    )
    return replace(sleeve, crosses=(sleeve.crosses or frozenset()) | crossed) if crossed else sleeve


def _words(place: SeamPlace) -> set[str]:
    return set(singular_words(place.name))
