"""Why a place is made the way it is: what it was taken for, and what of it the method fits."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldPlace
from advisor.errors import InputError, Problem, shown
from advisor.explain.typed import listed, same
from advisor.knowledge.model import Knowledge
from advisor.knowledge.places import Method
from advisor.render.layout import wrap

WORDS: Final = frozenset({"made", "method", "making", "way"})
"""What asks for the way of making, as a sheet heads it."""
FITS: Final = {
    "seam": "its seam is {}",
    "hem": "its hem is {}",
    "notions": "it holds a notion such as {}",
    "roles": "in the garment it is {}",
    "words": "its name or its fastening says {}",
    "gathers": "it is gathered by {}",
    "facts": "of it holds: {}",
    "beside": "beside its shell it has a {}",
}


def asks_method(word: str) -> bool:
    """Whether a typed word asks how a place is made."""
    return same(word) in WORDS


def place_named(report: Answer, word: str) -> ToldPlace:
    """The place that somebody asks about.

    Raises:
        InputError: no such place, or nothing says how it is made.
    """
    names = [seam.name for seam in report.seams]
    found = next((seam for seam in report.seams if same(seam.name) == same(word)), None)
    if found is None:
        text = f"no place {shown(word)} in this garment that is made"
        raise InputError(Problem(text, None, f"one of {listed(names)}"))
    if not found.method:
        raise InputError(Problem(f"nothing says how {shown(found.name)} is made"))
    return found


def render_method(place: ToldPlace, method: Method, said: str, knowledge: Knowledge) -> list[str]:
    """The method of a place, what chose it, and on whose word; `said` is the one she named."""
    kind = knowledge.places.kinds[place.kind].name
    taken = f"taken from {place.kind_from}" if place.kind_from else "as the project says"
    lines = wrap(f"{place.name}, made: {method.name}")
    lines += wrap(f"  it is a place of the kind {kind}, {taken}", "", "      ")
    if said == method.id:
        lines += wrap("  because you name this method", "", "      ")
    else:
        lines += [line for text in _chosen(method, kind) for line in wrap(text, "", "      ")]
    lines += wrap(method.about, "      ")
    for text in method.sources:
        source = knowledge.sources[text.partition(" ")[0]]
        lines += wrap(f"on the word of {source.citation} ({source.kind})", "      ")
    return lines


def _chosen(method: Method, kind: str) -> list[str]:
    fits: Mapping[str, tuple[str, ...]] = method.fits
    held = [f"  because {FITS[key].format(' or '.join(words))}" for key, words in fits.items()]
    return held or [f"  because it is the usual way of making a {kind}"]
