"""How the iron is set to fuse an interfacing to a single flat piece."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from itertools import pairwise

from msgspec.structs import replace

from advisor.claims.combine import Verdict
from advisor.claims.valuesets import Choice, Span
from advisor.craft.irondial import step_down
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Claim, Entry
from advisor.order.steps import IronState
from advisor.project.garment import Seam

SURFACE, FIRM = "press.surface", "hard board"
DWELL = "press.dwell"


def fusing_iron(notions: Iterable[Entry], verdicts: Mapping[str, Verdict]) -> IronState | None:
    """The iron for the first fusible of some notions, in °C; None where there is none.

    It is as hot as the glue wants, and hotter only where the verdicts of its place pick that.
    """
    verdict = verdicts.get(LIMIT_ASPECT)
    for entry in notions:
        if "fusible" not in entry.kind:
            continue
        about = entry.facts.get("fuses at") or {}
        needs = [c.span[0] for c in entry.claims if c.aspect == LIMIT_ASPECT and c.span]
        least = max([float(about.get("min", 0)), *needs])
        heat = least
        if verdict is not None and verdict.pick is not None:
            heat = max(least, step_down(verdict.pick))
        moisture = str(about.get("moisture", "dry"))
        bed = _bed(verdicts.get(SURFACE))
        return IronState(math.ceil(heat), moisture, bed) if heat > COLD else None
    return None


def no_damper(iron: IronState | None, lying: Iterable[Verdict | None]) -> IronState | None:
    """The iron of a glue, no damper than what it is fused to is pressed by itself.

    The sheet lets the glue give way there, for drops of water mark silk: so does the order.
    """
    spans = [v for v in lying if v is not None and isinstance(v.advised, Span)]
    if iron is None or not spans:
        return iron
    words = spans[0].aspect.words
    most = max(int(v.advised.high) for v in spans if isinstance(v.advised, Span))
    return replace(iron, moisture=words[min(words.index(iron.moisture), most)])


def fusing_time(notions: Sequence[Entry], dwell: Verdict | None) -> str:
    """How long each spot is held, as the sheet has it of the place, else as the glue wants it."""
    glues = [entry for entry in notions if "fusible" in entry.kind]
    needs = [c.span[0] for e in glues for c in e.claims if c.aspect == DWELL and c.span]
    advised = None if dwell is None else dwell.advised
    if needs and isinstance(advised, Span) and advised.low >= max(needs) > 0:
        longest = f" to {advised.high:g}" if advised.high > advised.low else ""
        return f"{advised.low:g}{longest} s"
    abouts = (entry.facts.get("fuses at") or {} for entry in glues)
    seconds = max((float(about.get("seconds", 0)) for about in abouts), default=0.0)
    return f"{seconds:g} s" if seconds else ""


def _bed(verdict: Verdict | None) -> str:
    """What the piece lies on: a glue wants it firm, but no pile is to be crushed."""
    if verdict is None or verdict.pick is None or not isinstance(verdict.allowed, Choice):
        return FIRM
    words = verdict.aspect.words
    firm = Choice.one_of(words.index(FIRM)).mask & verdict.allowed.mask
    return FIRM if firm else words[int(verdict.pick)]


def beside_glue(seam: Seam, kinds: Mapping[str, str]) -> list[str]:
    """What the fusibles of a place lie on, above or below: each is fused to one of those.

    Args:
        seam: the place.
        kinds: the kind of entry of every cloth of the garment.
    """
    names = [use.cloth for use in seam.uses]
    pairs = [*pairwise(names), *pairwise(reversed(names))]
    found = [other for one, other in pairs if "fusible" in kinds[one]]
    return [name for name in dict.fromkeys(found) if "fusible" not in kinds[name]]


def fused_onto(
    names: Iterable[str], iron: IronState | None, bears: Callable[[str], float | None]
) -> list[str]:
    """Which of the layers that a glue touches it is fused to: the first that bears its iron."""
    return [name for name in names if not too_hot(iron, [bears(name)])][:1]


def too_hot(iron: IronState | None, bears: Iterable[float | None]) -> bool:
    """Whether no cloth of a place bears the heat that its glue wants; `bears` are their limits."""
    known = [most for most in bears if most is not None]
    return iron is not None and bool(known) and max(known) < iron.temperature_c


def too_long(notions: Sequence[Entry], bearing: Sequence[Verdict | None]) -> bool:
    """Whether no cloth bears the iron for as long as the glue has to lie under it.

    Args:
        notions: what lies in the place.
        bearing: of each cloth that it may be fused to, how long the iron rests on it.
    """
    glues = [entry for entry in notions if "fusible" in entry.kind]
    needs = [c.span[0] for e in glues for c in e.claims if _must_lie(c) and c.span]
    most = [v.allowed.high if v and isinstance(v.allowed, Span) else math.inf for v in bearing]
    return bool(needs and most) and max(most) < max(needs)


def _must_lie(claim: Claim) -> bool:
    return claim.aspect == DWELL and claim.strength == "must"
