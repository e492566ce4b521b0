"""The iron of every place as a setting: which mark, which end of its band, and the limit."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from advisor.answer.instructions import apart, by_parts, hanging, over, parted_text
from advisor.answer.model.plan import ToldIronSetting
from advisor.answer.teller import Teller
from advisor.answer.verdicts import never_pressed
from advisor.answer.wording import SAME, degrees
from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.consistency import STEAM
from advisor.claims.judgement import Judgement
from advisor.claims.valuesets import Span
from advisor.claims.workarounds import PART
from advisor.craft.irondial import MARKS, mark_for, starting, starts_too_cool
from advisor.knowledge.model import COLD, LIMIT_ASPECT
from advisor.units import System


def told_settings(judgement: Judgement, teller: Teller) -> tuple[ToldIronSetting, ...]:
    """The iron of every place that somebody speaks of, in the order of the places."""
    parted = by_parts(judgement.instructions)
    beside = {
        place: over(sorted(one.tender), "")
        for one in judgement.instructions
        if one.kind == PART
        for place in one.places
    }
    unpressed = never_pressed(judgement)
    found = tuple(
        _setting(place, verdict, teller.units, beside.get(place, ""), held=_held(by_aspect))
        for place, by_aspect in judgement.verdicts.items()
        if (verdict := by_aspect.get(LIMIT_ASPECT)) is not None and place.name not in unpressed
    )
    hung = over(hanging(judgement.instructions)) + apart(judgement.instructions, teller.units)

    def last(one: ToldIronSetting) -> str:
        text = f"{one.text}{hung}" if one.mark else one.text
        return text if parted is None else parted_text(parted, teller.units)

    return tuple(replace(one, text=last(one)) if one.scope == "garment" else one for one in found)


def _held(by_aspect: Mapping[str, Verdict]) -> str:
    """What is done where no iron may be set down."""
    motion = by_aspect.get("press.motion")
    if motion is None or motion.pick is None:
        return "finger-press"
    steamed = motion.aspect.words[int(motion.pick)] == STEAM
    return "hold steam above it" if steamed else "finger-press"


def _setting(
    place: Place, verdict: Verdict, units: System, beside: str, *, held: str
) -> ToldIronSetting:
    most = _high(verdict.advised)
    limit = max(most, _high(verdict.allowed))
    start = most if verdict.pick is None else min(verdict.pick, most)
    mark = mark_for(most)
    low_end = mark is not None and mark.band[1] > most
    return ToldIronSetting(
        place=place.name,
        scope=place.scope,
        mark=None if mark is None else mark.name,
        low_end=low_end,
        start_c=start if mark else COLD,
        most_c=most,
        limit_c=limit,
        text=_on_dial(mark.name, start, most, units, low_end=low_end)
        if mark
        else _off_dial(most, units, beside, held),
    )


def _off_dial(most: float, units: System, beside: str, held: str) -> str:
    """Where no iron comes; `beside` is the part that alone keeps it off, and goes in afterwards."""
    if most <= COLD:
        return f"no iron{beside}: {held}"
    return f"no iron{beside}: it bears {degrees(most, units)} and no dot is that low; {held}"


def _on_dial(mark: str, start: float, most: float, units: System, *, low_end: bool) -> str:
    where = f"{mark}, at its low end" if low_end else mark
    if start > COLD and starts_too_cool(start) and mark != MARKS[0].name:
        first, last = degrees(start, units), degrees(most, units)
        return f"start {starting(start)}, {first}; at most {where}; never above {last}"
    if mark == MARKS[0].name and MARKS[0].ceiling < start < most - SAME:
        return (
            f"start {starting(start)}, {degrees(start, units)}; never above {degrees(most, units)}"
        )
    begin = f"; start at {degrees(start, units)}" if COLD < start < most - SAME else ""
    return f"{where}{begin}; never above {degrees(most, units)}"


def _high(found: object) -> float:
    return found.high if isinstance(found, Span) and not found.is_empty else COLD
