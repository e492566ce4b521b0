"""From verdicts to presses that the heat model is asked about: stack, setting, cloth, moisture.

The layers lie in the order of the project, from the iron down. Each different stack is asked
once, for every place that has it. The sole is the band of the dial mark that the verdict gives;
where a layer wants more heat than another bears, the mark that it wants is asked as well, to
show what would happen; that is no setting to use.

No numbers are made here and nothing heavy is imported: `answers` of the heat model makes them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import is_heat_limit, is_heat_need
from advisor.claims.valuesets import Span
from advisor.construction.bulk import picked
from advisor.craft.irondial import mark_for
from advisor.heat.layers import FUSIBLES, laid_cloth, layer_of, part_in
from advisor.heat.model.materials import Layer, Range
from advisor.heat.model.stack import DOTS, Stack, felt_board, sole_for_dots, under_iron
from advisor.knowledge.model import LIMIT_ASPECT, Knowledge
from advisor.project.garment import Garment, Seam

UNTOUCHED = ("hover with steam", "finger-press")
COOLEST_IRON = 60.0
"""A layer that bears less than this gets no iron at all, and no course is drawn, °C: estimate."""


class IronSetting(Struct, frozen=True):
    """A dial mark, its band, and who wants it; nobody does where every layer bears it."""

    dots: int
    sole: Range
    wanted_by: tuple[str, ...] = ()


class Press(Struct, frozen=True):
    """One way of pressing one stack, for all the places that have it.

    `way` is advised, dried out (as advised, but cloth and layers hold no water any more), bare,
    cloth, turned, unsettled (dried out, and the iron has just come up) or wanted and wanted
    cloth (at the mark that a needy layer wants). `parts` are hard parts with the layer that
    holds each.
    """

    places: tuple[str, ...]
    way: str
    setting: IronSetting
    cloth: str
    moisture: str
    stack: Stack
    parts: tuple[tuple[str, str], ...] = ()


class Bed(Struct, frozen=True):
    """A stack as the project lays it, with its places, its limits and its setting."""

    places: tuple[str, ...]
    cloths: tuple[str, ...]
    limits: tuple[float | None, ...]
    setting: IronSetting | None
    wanted: IronSetting | None
    cloth: str
    moisture: str
    touched: bool


def beds(judgement: Judgement) -> list[Bed]:
    """Every different stack of the garment's seams, in the order in which they first come."""
    found: dict[Bed, list[str]] = {}
    for seam in judgement.garment.seams:
        bed = _bed(seam, judgement)
        if bed is not None:
            found.setdefault(bed, []).append(seam.name)
    return [
        Bed(tuple(names), b.cloths, b.limits, b.setting, b.wanted, b.cloth, b.moisture, b.touched)
        for b, names in found.items()
    ]


def _bed(seam: Seam, judgement: Judgement) -> Bed | None:
    by_aspect = judgement.verdicts.get(Place("seam", seam.name), {})
    verdict = by_aspect.get(LIMIT_ASPECT)
    if verdict is None or not isinstance(verdict.allowed, Span):
        return None
    cloths = tuple(use.cloth for use in seam.uses)
    limits = layer_limits(verdict, cloths)
    setting = setting_for(verdict.allowed.high)
    motion = picked(by_aspect, "press.motion")
    return Bed(
        (),
        cloths,
        tuple(limits[name] for name in cloths),
        setting,
        _wanted(verdict, setting),
        picked(by_aspect, "press.cloth") or "none",
        picked(by_aspect, "press.moisture") or "dry",
        motion not in UNTOUCHED,
    )


def layer_limits(verdict: Verdict, names: Iterable[str]) -> dict[str, float | None]:
    """What each layer bears, °C: the lowest of what guards it; never above the whole stack's."""
    said = (*verdict.because, *verdict.given_up, *verdict.clash)
    limits: dict[str, float | None] = {}
    for name in names:
        own = [
            s.claim.span[1]
            for s in said
            if name in s.cloths and s.claim.span and is_heat_limit(s.claim)
        ]
        limits[name] = min(own, default=None)
    return limits


def setting_for(limit: float) -> IronSetting | None:
    """The highest dial mark within a limit with its band, or None where no iron is cool enough."""
    mark = mark_for(limit)
    return None if mark is None else IronSetting(mark.dots, sole_for_dots(mark.dots))


def _wanted(verdict: Verdict, setting: IronSetting | None) -> IronSetting | None:
    """The mark that a layer wants and another does not bear."""
    if not verdict.clash:
        return None
    needs = [
        s
        for s in verdict.clash
        if is_heat_need(s.claim) and s.claim.strength == "must" and s.claim.span and s.cloths
    ]
    if not needs:
        return None
    most = max(s.claim.span[0] for s in needs if s.claim.span)
    dots = next((d for d, (nominal, _) in sorted(DOTS.items()) if nominal >= most), max(DOTS))
    if setting is not None and dots <= setting.dots:
        return None
    who = sorted({n for s in needs if s.claim.span and s.claim.span[0] == most for n in s.cloths})
    return IronSetting(dots, sole_for_dots(dots), tuple(who))


def presses(
    judgement: Judgement, knowledge: Knowledge, *, full: bool = True
) -> tuple[list[Bed], list[Press]]:
    """The stacks, and all the presses that the model is to be asked about.

    `full` also asks without and with a cloth, turned over, and at the mark that a needy layer
    wants; else only what the time budget needs: a damp cloth dries out, so the budget is the
    shorter of the damp and the dry one.
    """
    found = beds(judgement)
    asked = [p for bed in found for p in _of_bed(bed, judgement.garment, knowledge, full=full)]
    return found, asked


def _of_bed(bed: Bed, garment: Garment, knowledge: Knowledge, *, full: bool) -> Iterator[Press]:
    known = [limit for limit in bed.limits if limit is not None]
    if not known or min(known) < COOLEST_IRON or not bed.touched:
        return
    make = _StackMaker(bed, garment, knowledge)
    if bed.setting is not None:
        damp_only = (bed.cloth, bed.moisture) == ("none", "damp cloth")
        cloth = "cotton cloth" if damp_only else bed.cloth
        yield make.press("advised", bed.setting, cloth, bed.moisture)
        if bed.moisture != "dry":
            yield make.press("dried out", bed.setting, cloth)
        if full and cloth != "none":
            yield make.press("bare", bed.setting)
        if full and cloth == "none":
            yield make.press("cloth", bed.setting, "cotton cloth")
        if full:
            yield make.press("unsettled", bed.setting, cloth)
    if full and bed.wanted is not None:
        yield make.press("wanted", bed.wanted)
        laid = bed.cloth if bed.cloth != "none" else "cotton cloth"
        yield make.press("wanted cloth", bed.wanted, laid)
    hardest = bed.wanted or bed.setting
    if full and hardest is not None and len(set(bed.limits)) > 1:
        yield make.press("turned", hardest)


def _steady(layer: Layer) -> Layer:
    """A layer of the board whose bulk counts as certain: it hardly moves what lies above."""
    return replace(
        layer,
        thickness_mm=Range.exact(layer.thickness_mm.mid),
        specific_heat=Range.exact(layer.specific_heat.mid),
    )


_BOARD = tuple(_steady(layer) for layer in felt_board())


class _StackMaker:
    """Makes the presses of one bed; its layers are built once, dry and moist."""

    def __init__(self, bed: Bed, garment: Garment, knowledge: Knowledge) -> None:
        self.bed = bed
        self.dry = plies(bed.cloths, bed.limits, garment, knowledge)
        self.moist = plies(bed.cloths, bed.limits, garment, knowledge, moist=True)
        self.parts = tuple(
            (name, part)
            for name in dict.fromkeys(bed.cloths)
            if (part := part_in(garment.cloths[name], knowledge))
        )

    def press(
        self, way: str, setting: IronSetting, cloth: str = "none", moisture: str = "dry"
    ) -> Press:
        """One way of pressing the bed."""
        layers = self.dry if moisture == "dry" else self.moist
        if way == "turned":
            layers = layers[::-1]
        sole = sole_for_dots(setting.dots, settled=way != "unsettled")
        stack = pressed(layers, sole, cloth, moisture)
        parts = self.parts if way == "advised" else ()
        return Press(self.bed.places, way, setting, cloth, moisture, stack, parts)


def plies(
    cloths: tuple[str, ...],
    limits: tuple[float | None, ...],
    garment: Garment,
    knowledge: Knowledge,
    *,
    moist: bool = False,
) -> tuple[Layer, ...]:
    """The layers of some cloths with their limits, from the iron down."""
    return tuple(
        layer_of(garment.cloths[name], limit, knowledge, moist=moist)
        for name, limit in zip(cloths, limits, strict=True)
    )


def pressed(layers: tuple[Layer, ...], sole: Range, cloth: str, moisture: str) -> Stack:
    """Layers on an ironing board under an iron, through a press cloth or none."""
    laid = None if cloth == "none" else laid_cloth(cloth, damp=moisture == "damp cloth")
    return under_iron(layers, sole, cloth=laid, moisture=moisture, board=_BOARD)


def fusibles_in(garment: Garment, knowledge: Knowledge, seam: Seam) -> list[int]:
    """Where in a seam's stack the fusibles lie, counted from the iron."""
    return [
        place
        for place, use in enumerate(seam.uses)
        if knowledge.entries[garment.cloths[use.cloth].entry].kind in FUSIBLES
    ]
