"""Everything that one seam comes to, as it is built: one value a seam, for sheet and JSON."""

from __future__ import annotations

from typing import Final

from msgspec import Struct

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.construction.bands import Band, bands_of
from advisor.construction.bulk import (
    BULK,
    PLACING,
    Verdicts,
    kinds_of,
    lift_of,
    no_machine,
    number,
    picked,
    thickest,
)
from advisor.construction.finishing import (
    Finishing,
    Trimming,
    allowance_of,
    finishing_of,
    trimming_of,
)
from advisor.construction.fullness import Fullness, fullness_of
from advisor.construction.holding import Holding, holding_of
from advisor.construction.leftraw import left_as_cut
from advisor.construction.needlestack import NEEDLE, needed_needle
from advisor.construction.parting import LiningEase, Parting, lining_ease, parting_of
from advisor.construction.stack import Spot, ply_of, spots_of, too_dense
from advisor.construction.stiffening import Stiffness, stiffness_of
from advisor.construction.threads import Purpose, threads_of
from advisor.knowledge.model import Knowledge
from advisor.knowledge.workshop import SeamClass
from advisor.project.garment import Garment, Seam, Use

FINE, WARNING, CONFLICT, UNKNOWN = "fine", "warning", "conflict", "not known"
ROWS_THAT_HOLD: Final = frozenset({"felled", "lapped"})
"""Kinds of seam whose two rows share the pull; a second row in the allowance carries nothing."""


class SeamWork(Struct, frozen=True):
    """A seam as it is built.

    Attributes:
        spot: the sewn place that is thickest under the foot.
        lift: foot lift of the machine that sews it, mm.
        room: fine, warning, conflict or not known.
        overlocker: whether the maker has one.
        overlocked: whether it is the one that joins it.
        squeeze: whether it lies higher than the lift, and has to be pressed in by hand.
        placing: what the lever gives when it is held up, mm.
        fine_needle: the needle picked and the one this stack wants, NM, where it is too fine, and
            whether every layer bears that.
        no_foot: whether nothing of it goes under a foot.
        too_dense: cloths whose weight and thickness cannot both be right.
    """

    seam: Seam
    spots: tuple[Spot, ...]
    spot: Spot | None
    lift: float | None
    room: str
    squeeze: bool
    overlocker: bool
    overlocked: bool
    placing: float | None
    fine_needle: tuple[float, float, bool] | None
    too_dense: tuple[str, ...]
    finishing: Finishing | None
    trimming: Trimming
    holding: Holding
    full: Fullness | None
    threads: tuple[Purpose, ...] | None
    named: SeamClass | None
    parting: Parting | None = None
    lining: LiningEase | None = None
    stiff: Stiffness | None = None
    no_foot: bool = False
    bands: tuple[Band, ...] = ()


def seamworks(judgement: Judgement, knowledge: Knowledge) -> list[SeamWork]:
    """Every seam of a garment, in its order."""
    return [seamwork(seam, judgement, knowledge) for seam in judgement.garment.seams]


def seamwork(seam: Seam, judgement: Judgement, knowledge: Knowledge) -> SeamWork:
    """One seam."""
    garment = judgement.garment
    verdicts = judgement.verdicts[Place("seam", seam.name)]
    kind = picked(verdicts, "seam.kind")
    spots = tuple(spots_of(seam, garment, knowledge, kinds_of(garment, judgement.verdicts)))
    spot = thickest(list(spots))
    lift, machine = lift_of(garment, verdicts, knowledge)
    finishing = finishing_of(seam, garment, verdicts)
    thick = tuple(_thickness(use, garment, knowledge) for use in seam.uses)
    full = fullness_of(seam, garment, knowledge)
    rows = 2 if kind in ROWS_THAT_HOLD else 1
    no_foot = no_machine(seam, knowledge) or left_as_cut(seam, garment, knowledge)
    line = next((s.foot_mm for s in spots if s.sewn), 0.0)
    return SeamWork(
        seam=seam,
        spots=spots,
        spot=spot,
        lift=None if no_foot else lift,
        room=FINE if no_foot else _room(spot, verdicts),
        squeeze=bool(spot and lift and not no_foot and spot.lies_mm > lift),
        overlocker=bool(garment.maker.overlocker),
        overlocked=machine != knowledge.machines[garment.maker.machine].name,
        placing=placing_lift(garment, lift) if lift else None,
        fine_needle=None if no_foot else _fine_needle(spot, verdicts),
        too_dense=tuple(n for n in seam.cloths() if too_dense(garment.cloths[n], knowledge)),
        finishing=finishing,
        trimming=trimming_of(seam, allowance_of(seam, verdicts), thick),
        holding=holding_of(seam, garment, verdicts, knowledge, rows),
        full=full,
        threads=threads_of(seam, garment, verdicts, line, full),
        named=knowledge.workshop.classes.get(kind),
        parting=parting_of(seam, judgement, knowledge),
        lining=lining_ease(seam, judgement, knowledge),
        stiff=stiffness_of(seam, garment, knowledge),
        bands=tuple(bands_of(seam, garment, knowledge)),
        no_foot=no_foot,
    )


def _thickness(use: Use, garment: Garment, knowledge: Knowledge) -> float | None:
    """Thickness of one ply of a layer, mm."""
    ply = ply_of(garment.cloths[use.cloth], knowledge)
    return ply.thickness_mm if ply else None


def _room(spot: Spot | None, verdicts: Verdicts) -> str:
    """How the stack goes under the foot, read from the verdict on its bulk."""
    verdict = verdicts.get(BULK)
    if verdict is None or spot is None:
        return UNKNOWN
    if verdict.clash:
        return CONFLICT
    if verdict.given_up:
        return WARNING
    return FINE if spot.complete else UNKNOWN


def _fine_needle(spot: Spot | None, verdicts: Verdicts) -> tuple[float, float, bool] | None:
    """The needle picked, what the stack wants where it is finer, and whether cloths bear that."""
    pick = number(verdicts, NEEDLE)
    if spot is None or pick is None:
        return None
    suits, _ = needed_needle(spot.foot_mm)
    allowed = verdicts[NEEDLE].allowed
    return (pick, suits, suits in allowed) if pick < suits else None


def placing_lift(garment: Garment, lift: float) -> float:
    """What the lever gives when it is held up, mm: a household machine has more for placing."""
    return lift + PLACING if garment.maker.machine == "household" else lift


def bulk_sources() -> tuple[str, ...]:
    """What the thickness figures rest on."""
    return ("derived", "design-choice")
