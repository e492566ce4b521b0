"""The short sentence that the heat model adds to a seam's press line; it can only cut time short.

It reads the answer's heat and nothing heavy, so that a quick question stays quick.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from advisor.answer.model.answer import Answer
    from advisor.answer.model.heat import ToldHeat, Wait
    from advisor.answer.model.told import ToldVerdict

LONG_S = 30.0
"""A limit reached later than this needs no counting: the top of the dwell aspect."""
UNSAYABLE = 20.0
"""How often the longest wait may hold the likely one and still be a figure worth saying: beyond
that the two ends, of which the one lets no heat into the cloth, foretell nothing (estimate)."""
COUNTABLE_S = 2.0
"""Nobody holds an iron for less than this by the clock: estimate."""
TOUCHED_S = 5.0
"""A press shorter than this is told as touches, for a press sets a seam in 5 to 10 s: estimate."""
COUNTED_S = 15.0
"""The sheet speaks only of times that somebody might pass without thinking: estimate."""


def press_clauses(answer: Answer, place: str) -> list[str]:
    """At most one short sentence for a seam; none where the rules are as strict already."""
    rows = _rows_of(answer, place)
    if _only_touched(rows) and not any(i.low_end for i in answer.irons if i.place == place):
        return ["Computed: under 2 s at a time, so touch and lift, and let cool."]
    longest = budget(rows)
    if longest is None or longest >= COUNTED_S:
        return []
    ruled = next(
        (
            v
            for v in answer.verdicts
            if (v.place, v.scope, v.aspect) == (place, "seam", "press.dwell")
        ),
        None,
    )
    low, high = (None, None) if ruled is None else (ruled.low, ruled.high)
    if isinstance(high, float) and high <= longest:
        return []
    told = isinstance(high, float) and high < LONG_S  # a rule's own "at most" stands beside it
    word = "here no more than" if told else "at most"
    spell = f"{word} {seconds(longest)}" if told else touches(longest)
    said = f"Computed: {spell} at a time, lift, let cool"
    glue = ruled is not None and isinstance(low, float) and _of_a_glue(ruled, answer)
    if not glue and (not isinstance(low, float) or longest >= low):
        return [f"{said}."]
    if glue:
        after = f"once it is fused, at most {seconds(longest)} at a time, lift, let cool"
        board = "by itself, on the board that the order names"
        return [f"That long to fuse the piece {board}; {after} (computed)."]
    return [f"{said}; the rest in several touches."]


def _rows_of(answer: Answer, place: str) -> list[ToldHeat]:
    """The ways of pressing a place, and those of every other that joins the same cloths.

    From the wrong side an iron comes to both cloths of a seam, whichever was named first.
    """
    rows = answer.heat or ()
    own = {frozenset(layer.name for layer in row.layers) for row in rows if row.place == place}
    return [row for row in rows if frozenset(layer.name for layer in row.layers) in own]


def longest_press(answer: Answer, place: str) -> float | None:
    """The longest press that is computed, s; None where none has to be counted."""
    longest = budget(_rows_of(answer, place))
    return None if longest is None or longest >= LONG_S else longest


def is_stricter(ruled: ToldVerdict | None, longest: float | None) -> bool:
    """Whether the time that rules give is told, and not the computed one."""
    if longest is None:
        return True
    return ruled is not None and isinstance(ruled.high, float) and ruled.high <= longest


def at_a_time(
    ruled: ToldVerdict | None, longest: float | None, answer: Answer
) -> list[tuple[str, str]]:
    """The row that tells a computed time; none where a rule's own is told at the press."""
    if longest is None or is_stricter(ruled, longest):
        return []
    said = f"{touches(longest)}, then lift and let it cool (computed, not measured)"
    fused = _fused(ruled, answer)
    return [("at a time", f"{fused} the flat piece; once it is fused {said}" if fused else said)]


def at_most_words(ruled: ToldVerdict | None, longest: float | None, answer: Answer) -> str:
    """How long a press may last, for a table: what rules give or, where that is less, computed."""
    fused = _fused(ruled, answer)
    stricter = is_stricter(ruled, longest)
    most = ruled.high if stricter and ruled is not None else longest
    after = "" if not isinstance(most, float) else touches(most)
    return (fused if stricter else f"{fused}, then {after}") if fused else after


def _fused(ruled: ToldVerdict | None, answer: Answer) -> str:
    """How long a glue is held under the iron; "" where none asks for it."""
    glued = ruled is not None and isinstance(ruled.low, float) and _of_a_glue(ruled, answer)
    return f"{ruled.text} to fuse" if glued and ruled is not None else ""


def _of_a_glue(dwell: ToldVerdict, answer: Answer) -> bool:
    """Whether a fusible asks for the time: it is fused before the seam is sewn."""
    glues = {layer.name for layer in answer.layers if "fusible" in layer.kind}
    return bool(glues) and bool(glues & {claim.who for claim in dwell.because})


def budget(rows: Sequence[ToldHeat]) -> float | None:
    """The longest press of a place, s, at the setting that all its layers bear; or None.

    A time that nobody can count says that the mark's band reaches beyond what is borne. Where the
    setting tells that, as "low end", it is no time to work by; else the place is only touched.
    """
    shortest = _shortest(rows)
    return None if shortest is None or shortest < COUNTABLE_S else shortest


def _only_touched(rows: Sequence[ToldHeat]) -> bool:
    shortest = _shortest(rows)
    return shortest is not None and shortest < COUNTABLE_S


def _shortest(rows: Sequence[ToldHeat]) -> float | None:
    found = (row.press_at_most_s for row in rows if row.way in ("advised", "dried out"))
    return min((one for one in found if one is not None), default=None)


def seconds(value: float) -> str:
    """Seconds for a limit, never rounded up."""
    return "a touch of under a second" if value < 1.0 else f"{int(value)} s"


def touches(value: float) -> str:
    """The longest press in words: so short a one is no press, but a touch after a touch."""
    return f"{'short touches, ' if value < TOUCHED_S else ''}at most {seconds(value)}"


def wait_words(wait: Sequence[float]) -> str:
    """How long a hard part stays hot: likely after one press, and at the most after many."""
    likely, most = minutes(wait[1]), minutes(wait[2])
    if likely == most:
        return f"about {likely}"
    if wait[2] > UNSAYABLE * wait[1]:
        return f"likely about {likely}, much longer after many in one place"
    return f"likely about {likely}, after many in one place up to {most}"


def times_in_words(times: Wait | None) -> str:
    """A band of seconds as a phrase: "about 3 s (2 to 5)", "about 9 s (6 or longer)"."""
    soonest, likely, latest = times or (None, None, None)
    if soonest is None:
        return "not within a minute"
    low = _seconds(soonest)
    if likely is None:
        return f"{low} s at the soonest"
    until = f"{low} or longer" if latest is None else f"{low} to {_seconds(latest)}"
    return f"about {_seconds(likely)} s ({until})"


def _seconds(value: float) -> str:
    """Whole seconds from three up, tenths below; cut off, never rounded up."""
    return f"{int(value)}" if value >= 3.0 else f"{int(value * 10.0) / 10.0:g}"


def minutes(value: float) -> str:
    """A wait, never rounded down."""
    if value <= 90.0:
        return f"{-int(-value // 10) * 10:d} s"
    return f"{-int(-value // 60):d} minutes"
