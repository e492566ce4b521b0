"""What a garment weighs and where it hangs, in words: masses in the maker's units, pull in N."""

from __future__ import annotations

from advisor.answer.model.making import ToldHang, ToldWeight
from advisor.answer.teller import Teller
from advisor.claims.judgement import Judgement
from advisor.construction.seamwork import SeamWork
from advisor.construction.weighing import Hang, Weighed, hangs
from advisor.project.unjoined import parts_alone
from advisor.units import System
from advisor.units.factors import GRAM_PER_OUNCE, NEWTON_PER_POUND, PULL

POUND = 16
"""Ounces in a pound."""


def told_weight(
    judgement: Judgement, works: list[SeamWork], weighed: Weighed | None, teller: Teller
) -> ToldWeight | None:
    """The weight of a garment; None where no piece is said or nobody knows what it weighs."""
    if weighed is None or not weighed.cloths:
        return None
    apart = parts_alone(judgement.garment, teller.knowledge)
    carried = hangs(works, weighed, judgement.garment, sorted(apart))
    low, high = weighed.whole
    return ToldWeight(
        low_g=round(low, 1),
        high_g=round(high, 1),
        cloths_g={name: [round(v, 1) for v in ends] for name, ends in weighed.cloths.items()},
        notions_g=round(weighed.notions, 1),
        thread_g=round(weighed.thread, 1),
        unknown=weighed.unknown,
        uncounted=weighed.uncounted,
        hangs=tuple(_hang(place, hang, teller.units) for place, hang in carried.items()),
        text=_whole_text(weighed, teller.units),
        sources=teller.cite(weighed.sources),
    )


def mass_text(grams: float, units: System) -> str:
    """A mass to what kitchen scales show: 480 g, 1.25 kg; or 17 oz, 2 lb 3 oz."""
    if units != "us":
        if grams < 10:
            return f"{max(grams, 1):.0f} g"
        return f"{round(grams, -1):.0f} g" if grams < 995 else f"{grams / 1000:.2f} kg"
    ounces = grams / GRAM_PER_OUNCE
    if ounces < POUND:
        return f"{max(ounces, 0.1):.1f} oz"
    pounds, rest = divmod(round(ounces), POUND)
    return f"{pounds} lb {rest} oz" if rest else f"{pounds} lb"


def _whole_text(weighed: Weighed, units: System) -> str:
    low, high = (mass_text(value, units) for value in weighed.whole)
    least = "at least " if weighed.unknown or weighed.uncounted else "about "
    text = f"{least}{low}" if low == high else f"{least}{low} to {high}"
    parts = [f"{n} {mass_text(sum(v) / 2, units)}" for n, v in weighed.cloths.items()]
    if weighed.notions >= 1:
        parts.append(f"notions {mass_text(weighed.notions, units)}")
    if weighed.thread >= 1:
        parts.append(f"thread {mass_text(weighed.thread, units)}")
    lost = (*weighed.unknown, *weighed.uncounted)
    without = f"; without {', '.join(lost)}" if lost else ""
    return f"{text} as cut ({', '.join(parts)}{without})"


def _hang(place: str, hang: Hang, units: System) -> ToldHang:
    return ToldHang(
        place=place,
        mass_g=round(hang.mass, 1),
        newton=round(hang.newton, 2),
        n_per_cm=None if hang.per_cm is None else round(hang.per_cm, 3),
        carrier=hang.carrier,
        as_long_m=None if hang.as_long is None else round(hang.as_long, 2),
        holds_n_per_cm=None if hang.holds is None else round(hang.holds, 2),
        heavy=hang.heavy,
        text=_hang_text(place, hang, units),
    )


def _hang_text(place: str, hang: Hang, units: System) -> str:
    text = f"carries {mass_text(hang.mass, units)}"
    share, unit = PULL[units]
    if hang.per_cm is None:
        us = units == "us"
        on_each = f"{hang.newton / NEWTON_PER_POUND:.2g} lb" if us else f"{hang.newton:.1f} N"
        text += f", {on_each} on each at rest"
    else:
        text += f", {max(hang.per_cm * share, 0.001):.2g} {unit} at rest"
    if hang.holds is not None and hang.per_cm is not None:
        text += f", and holds {hang.holds * share:.0f}"
    if not hang.heavy:
        return text
    if hang.stay == place:
        return f"{text}, for that is what it is for: take petersham or a firm tape for it"
    if hang.stay:
        return f"{text}: {hang.stay} has to take the weight, not {hang.carrier}"
    if hang.as_long is None:
        return f"{text}: let a tape take the weight"
    return (
        f"{text}. That is heavy for {hang.carrier}: let a stay of tape take it, or underline what "
        "carries it"
    )
