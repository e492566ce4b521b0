"""Lets answers of one seam agree that were picked one by one.

Every verdict is right by itself, yet two picks may not go together: an edge enclosed in a seam
that encloses nothing, the seconds of a glue that the cloths rule out, or how an iron moves where
none may be used. What one answer makes idle is said no more; no clash is made or unmade here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from advisor.craft.irondial import mark_for
from advisor.engine.claims import Place
from advisor.engine.combine import Verdict, decide
from advisor.engine.speakers import Said
from advisor.engine.valuesets import Choice, Span
from advisor.knowledge.model import LIMIT_ASPECT, Claim, Knowledge
from advisor.project.garment import Garment

KIND, FINISH, DWELL = "seam.kind", "seam.finish", "press.dwell"
MOTION, MOISTURE = "press.motion", "press.moisture"
LINKED: Final = frozenset({KIND, FINISH, DWELL, MOTION})
"""Aspects whose verdicts this room may change; they are decided afresh every time."""
STEAM: Final = "hover with steam"
ENCLOSED: Final = "enclosed in the seam"
ENCLOSING: Final = frozenset({"French", "mock French", "felled", "self-bound"})


def agree(
    garment: Garment, verdicts: dict[Place, dict[str, Verdict]], knowledge: Knowledge
) -> None:
    """Bring the picks of every seam into line."""
    for place, by_aspect in verdicts.items():
        _no_iron(by_aspect)
        if place.scope == "seam":
            _edges(by_aspect)
            _idle_glue(garment, by_aspect, knowledge)


def _no_iron(by_aspect: dict[str, Verdict]) -> None:
    """Where no iron is used, fingers are left, and steam where every layer bears it."""
    heat, motion, moist = (by_aspect.get(name) for name in (LIMIT_ASPECT, MOTION, MOISTURE))
    if heat is None or motion is None or motion.clash or not _unmarked(heat):
        return
    left = ["finger-press"] if moist and _at_most(moist, 0.0) else ["finger-press", STEAM]
    mask = sum(1 << motion.aspect.words.index(word) for word in left)
    claim = Claim(MOTION, None, mask, None, "should", "result", "No iron is used here.",
                  ("derived",), 0, "no iron")  # fmt: skip
    # How an iron would have to move is nobody's wish where there is none.
    wishes = [
        s for s in (*motion.because, *motion.given_up)
        if s.claim.strength == "must" or not (Choice(s.claim.mask) & Choice(mask)).is_empty
    ]  # fmt: skip
    by_aspect[MOTION] = decide(motion.aspect, [*wishes, Said("no iron", claim)])


def _unmarked(heat: Verdict) -> bool:
    """Whether no mark of the dial is cool enough for what is advised."""
    span = heat.advised
    return isinstance(span, Span) and not span.is_empty and mark_for(span.high) is None


def _at_most(verdict: Verdict, most: float) -> bool:
    """Whether no more than so much is advised at a place."""
    return isinstance(verdict.advised, Span) and verdict.advised.high <= most


def _edges(by_aspect: dict[str, Verdict]) -> None:
    kind, finish = by_aspect.get(KIND), by_aspect.get(FINISH)
    if kind is None or finish is None or _word(finish) != ENCLOSED or _word(kind) in ENCLOSING:
        return
    other = _first(finish, lambda word: word != ENCLOSED)
    if other is not None:
        by_aspect[FINISH] = replace(finish, pick=other)
        return
    shut = _first(kind, lambda word: word in ENCLOSING)
    if shut is not None:
        by_aspect[KIND] = replace(kind, pick=shut)


def _word(verdict: Verdict) -> str:
    return "" if verdict.pick is None else verdict.aspect.words[int(verdict.pick)]


def _first(verdict: Verdict, fits: Callable[[str], bool]) -> float | None:
    """The first advised option that fits."""
    if not isinstance(verdict.advised, Choice):
        return None
    words = verdict.aspect.words
    return next((float(i) for i in verdict.advised.options() if fits(words[i])), None)


def _idle_glue(
    garment: Garment, by_aspect: dict[str, Verdict], knowledge: Knowledge
) -> None:  # fmt: skip
    """A fusible that a layer rules out is not fused, so its seconds are nobody's."""
    interfacing, dwell = by_aspect.get("interfacing.kind"), by_aspect.get(DWELL)
    if dwell is None or interfacing is None or not interfacing.clash:
        return
    glued = {
        name for name, cloth in garment.cloths.items()
        if "fusible" in knowledge.entries[cloth.entry].kind
    }  # fmt: skip
    said = [*dwell.because, *dwell.given_up]
    left = [s for s in said if not (s.cloths and s.cloths <= glued)]
    if not left:
        del by_aspect[DWELL]
    elif len(left) < len(said):
        by_aspect[DWELL] = decide(dwell.aspect, left)
