"""A seam's bulk against the machine: claims on `seam.bulk` that meet like any others.

What the stack needs is its thickest sewn place, pressed as the foot presses it; what the
machine gives is three quarters of its foot lift, or all of it with a shim and the hand wheel
(`design-choice`: no published share was found). From half of the lift on it is a warning.
Loading is another matter: a lofty stack that lies higher than the lift is squeezed in by hand,
so it is said and is no conflict.
"""

from __future__ import annotations

from typing import Final

from advisor.claims.collect import Gathered, Place
from advisor.claims.combine import Verdict, decide
from advisor.claims.speakers import OVERLOCKS, Said
from advisor.construction.leftraw import left_as_cut
from advisor.construction.stack import Spot, counted, spots_of
from advisor.craft.thickness import BLOCK_SHARE, WARN_SHARE
from advisor.knowledge.model import Claim, Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.unsewn import asked_by_itself
from advisor.units import show

BULK: Final = "seam.bulk"
OVERLOCK_LIFT: Final = 5.0
"""Foot lift of a home overlocker, mm: the low end of 5 to 6 (`memory`)."""
BY_HAND: Final = frozenset({"fastening", "stay", "laid on"})
"""Families of places that are sewn, glued or hammered on by hand unless a machine is asked of."""
WORKED: Final = frozenset({"buttonhole", "stay-tape"})
"""What goes under the foot though nobody is asked for a needle or a stitch there."""
PLACING: Final = 6.5
"""What holding the lever up adds on a household machine, for placing only (`manual-extra-lift`)."""

Verdicts = dict[str, Verdict]


def add_bulk(
    garment: Garment, gathered: Gathered, verdicts: dict[Place, Verdicts], knowledge: Knowledge
) -> None:
    """Let the stack and the machine speak in every machine-sewn seam, and decide."""
    aspect = knowledge.aspects.get(BULK)
    if aspect is None:
        return
    kinds = kinds_of(garment, verdicts)
    for seam in garment.seams:
        place = Place("seam", seam.name)
        said = bulk_says(seam, garment, verdicts[place], knowledge, kinds)
        if said:
            gathered.said[place][BULK] = said
            verdicts[place][BULK] = decide(aspect, said)


def kinds_of(garment: Garment, verdicts: dict[Place, Verdicts]) -> dict[str, str]:
    """The kind that was picked for each seam."""
    return {
        seam.name: picked(verdicts[Place("seam", seam.name)], "seam.kind") or "plain"
        for seam in garment.seams
    }


def bulk_says(
    seam: Seam,
    garment: Garment,
    verdicts: Verdicts,
    knowledge: Knowledge,
    kinds: dict[str, str],
) -> list[Said]:
    """What the stack needs, and what the machine can take."""
    if no_machine(seam, knowledge) or left_as_cut(seam, garment, knowledge):
        return []
    if asked_by_itself(seam, garment, knowledge):
        return []
    spots = spots_of(seam, garment, knowledge, kinds)
    spot = thickest(spots)
    lift, machine = lift_of(garment, verdicts, knowledge)
    if spot is None or lift is None:
        return []
    top = knowledge.aspects[BULK].high
    need = min(top, spot.foot_mm)
    about = frozenset(seam.cloths())
    why = f"{counted(spot.plies)} meet {spot.name}."
    said = [Said(seam.name, _claim((need, top), "must", why, ("derived",)), (), True, about)]
    share = 1.0 if "shim" in seam.making.helps else BLOCK_SHARE
    lifts = f"Its foot lifts {show('length', lift, 'us' if garment.units == 'us' else 'metric')}"
    blocks = f"{lifts}, and above {share * 100:g} % of that it cannot sew."
    warns = f"{lifts}, and above half of that it labours."
    for strength, part, text in (("must", share, blocks), ("should", WARN_SHARE, warns)):
        claim = _claim((0.0, min(top, lift * part)), strength, text, ("design-choice",))
        said.append(Said(machine, claim))
    return said


def no_machine(seam: Seam, knowledge: Knowledge) -> bool:
    """Whether nothing of a place goes under a foot: a rivet, a hook, a pad, or a seam by hand."""
    kind = knowledge.places.kinds.get(seam.place)
    if seam.by_hand or kind is None:
        return seam.by_hand
    return kind.family in BY_HAND and "needle.size" in kind.drops and kind.id not in WORKED


def _claim(span: tuple[float, float], strength: str, why: str, sources: tuple[str, ...]) -> Claim:
    risk = "result" if strength == "must" else ""
    return Claim(BULK, span, 0, None, strength, risk, why, sources, 2, "bulk")


def thickest(spots: list[Spot]) -> Spot | None:
    """The sewn place that is thickest under the foot; None where nothing is known of it."""
    sewn = [spot for spot in spots if spot.sewn and spot.foot_mm > 0]
    return max(sewn, key=lambda s: s.foot_mm, default=None)


def lift_of(garment: Garment, verdicts: Verdicts, knowledge: Knowledge) -> tuple[float | None, str]:
    """The foot lift of the machine that sews a seam, mm, and the machine's name."""
    maker = garment.maker
    if picked(verdicts, "stitch.type") in OVERLOCKS and maker.overlocker:
        return OVERLOCK_LIFT, knowledge.machines[maker.overlocker].name
    machine = knowledge.machines[maker.machine]
    return maker.foot_lift or machine.foot_lift, machine.name


def picked(verdicts: Verdicts, aspect: str) -> str:
    """The word that was picked on an aspect of options or words; "" where there is none."""
    verdict = verdicts.get(aspect)
    if verdict is None or verdict.pick is None:
        return ""
    return verdict.aspect.words[int(verdict.pick)]


def number(verdicts: Verdicts, aspect: str) -> float | None:
    """The number that was picked on an aspect of numbers."""
    verdict = verdicts.get(aspect)
    return None if verdict is None else verdict.pick
