"""What a place was taken for by its name alone, where the name can be read otherwise as well."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.knowledge.places import PlaceKind
from advisor.project.companions import BELONGING
from advisor.project.garment import Seam
from advisor.project.headwords import head_of, the_words
from advisor.project.kindnames import meant_in, spans_of
from advisor.project.nextto import OF_A_BAND
from advisor.project.ownwords import inside

BY_NAME: Final = "its name"


def with_guesses(
    seams: Sequence[Seam],
    said: Iterable[str],
    entries: Mapping[str, Entry],
    kinds: Mapping[str, PlaceKind],
) -> tuple[Seam, ...]:
    """The places, each with what it was taken for where another reading is possible."""
    own = frozenset(said)
    return tuple(
        seam if seam.name in own else replace(seam, guess=_guess(seam, seams, entries, kinds))
        for seam in seams
    )


def _guess(
    seam: Seam,
    seams: Sequence[Seam],
    entries: Mapping[str, Entry],
    kinds: Mapping[str, PlaceKind],
) -> str:
    """What is told of a guess; "" where the name leaves no doubt, or something else told."""
    if seam.companion is not None:
        belongs = seam.companion
        hosts = belongs.hosts[:1] if belongs.what in OF_A_BAND else belongs.hosts
        return f"the {belongs.what} of {' and '.join(hosts)}"
    words = head_of(the_words(seam.name))
    kind = kinds[seam.place].name if seam.place in kinds else ""
    if not kind or not seam.placed_by:
        return ""
    if words[-1:] and words[-1] in BELONGING:
        return f"{kind} by itself{_whose(seam, seams)}, of no other place"
    found, span = meant_in(words, kinds)
    about = {name: entries[name] for name in seam.cloths() if name in entries}
    if found and found != seam.place and inside(span, spans_of(words, seam, about)):
        said = {*words[span[0] : span[1]]}
        return f"{kind} of the cloth '{next(n for n in about if said <= {*the_words(n)})}'"
    stem, behind = words[: span[1]], words[span[1] :]
    part = seam.placed_by == BY_NAME and bool(behind) and set(behind) <= nouns.OF_A_PLACE
    return kind if part and _called(stem, seam, seams) else ""


def _whose(seam: Seam, seams: Sequence[Seam]) -> str:
    """The name by which it would belong to a place as long as it, of a cloth of it; "" for none."""
    named = seam.name.split()[-1]
    alike = (
        other.name
        for other in seams
        if other is not seam
        and other.long_mm == seam.long_mm > 0
        and set(other.cloths()) & set(seam.cloths())
    )
    return next((f" (called '{name} {named}' it would be that of {name})" for name in alike), "")


def _called(stem: tuple[str, ...], seam: Seam, seams: Sequence[Seam]) -> bool:
    """Whether another place is called so, of which this one may be a part."""
    others = (the_words(other.name) for other in seams if other is not seam)
    return any(words[-len(stem) :] == stem for words in others)
