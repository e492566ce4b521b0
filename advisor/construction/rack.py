"""Thread that the maker has: which reel of her rack suits a cloth, by colour, fibre and size.

Reels stand in her kit (`navy #1b2a4a`) or in her own folder. A cloth whose colour is only a word
is matched by eye, unless a reel has the same word.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from msgspec import Struct

from advisor.claims.combine import Verdict
from advisor.claims.valuesets import Choice, Span
from advisor.craft.colour import Lab, Match, lab_of, matches
from advisor.knowledge.mine import Reel, reel_of
from advisor.knowledge.model import Knowledge
from advisor.knowledge.names import plain_name
from advisor.project.garment import Garment

FAR: Final = 6.0
"""A reel further away than this is no match at all (estimate)."""
NEAR_TEX: Final = 1.5
"""Nominal sizes of one thread differ by so much between makers, tex (estimate)."""
FIBRE, SIZE = "thread.fibre", "thread.size"


class Found(Struct, frozen=True):
    """A reel that is near a colour: how near, and what of it does not suit the places.

    `found` is None where reel and cloth have the same word for a colour and nothing to measure.
    """

    reel: Reel
    found: Match | None
    wrong: str = ""


def rack_of(garment: Garment, knowledge: Knowledge) -> tuple[Reel, ...]:
    """Every reel that she has, by kit and by her own folder, each name once."""
    aspect = knowledge.aspects.get(FIBRE)
    fibres = aspect.words if aspect else ()
    listed = [reel_of(text, fibres) for text in garment.plan.kit.threads or ()]
    named = {plain_name(reel.name): reel for reel in knowledge.registers.mine.reels}
    return tuple({**named, **{plain_name(reel.name): reel for reel in listed}}.values())


def near_of(garment: Garment, knowledge: Knowledge) -> float | None:
    """How near a thread has to be to be shared; 0 where she lets none be, None where unsaid."""
    said = garment.plan.kit.thread_near
    return knowledge.registers.mine.near if said is None else said


def lab_of_reel(reel: Reel) -> Lab | None:
    """The colour of a reel; None where it is only named."""
    if reel.lab is not None:
        return Lab(*reel.lab)
    return lab_of(reel.code) if reel.code else None


def from_rack(
    colour: str, reels: Iterable[Reel], places: Iterable[dict[str, Verdict]] = ()
) -> tuple[Found, ...]:
    """Reels that are near a colour: what suits first, then the best by colour.

    Args:
        colour: of the cloth, a code or a word.
        reels: what she has.
        places: the verdicts of what is sewn in this colour, for fibre and size.
    """
    verdicts = list(places)
    every = list(reels)
    if not colour.startswith("#"):
        same = [r for r in every if plain_name(r.name) == plain_name(colour) and colour]
        return tuple(Found(reel, None, unsuited(reel, verdicts)) for reel in same)
    named = {reel.name: reel for reel in every}
    colours = [(r.name, lab) for r in every if (lab := lab_of_reel(r)) is not None]
    near = [m for m in matches(lab_of(colour), colours) if m.difference <= FAR]
    found = [Found(named[m.name], m, unsuited(named[m.name], verdicts)) for m in near]
    return tuple(sorted(found, key=lambda one: bool(one.wrong)))


def unsuited(reel: Reel, places: Iterable[dict[str, Verdict]]) -> str:
    """What of a reel a place does not advise, in words; "" where it suits as far as is said."""
    for verdicts in places:
        fibre, size = verdicts.get(FIBRE), verdicts.get(SIZE)
        if reel.fibre and fibre is not None and not _has(fibre, reel.fibre):
            return f"it is {reel.fibre}"
        if reel.tex is not None and size is not None and not _bears(size, reel.tex):
            return f"it is tex {reel.tex:g}"
    return ""


def _has(fibre: Verdict, word: str) -> bool:
    advised, words = fibre.advised, fibre.aspect.words
    return not isinstance(advised, Choice) or (word in words and words.index(word) in advised)


def _bears(size: Verdict, tex: float) -> bool:
    advised = size.advised
    if not isinstance(advised, Span):
        return True
    return advised.low - NEAR_TEX <= tex <= advised.high + NEAR_TEX
