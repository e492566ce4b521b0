"""A place said twice, under two names, or two things in one place: only the maker knows."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import combinations
from typing import Final

from advisor.construction.disagreement import Disagreement
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.onewaist import waist_that_joins
from advisor.project.placing import singular_words
from advisor.project.seampockets import opens_in_a_seam
from advisor.project.toldtwice import told_at

ALIKE: Final = 0.05
"""By which share two lengths of one place may differ: estimate."""
CALLED: Final = ("side", "shoulder", "inseam", "crotch", "underarm", "centre", "armhole")
"""Roles of seams that a garment has once, and that makers call by several names."""
ZIP, SIDE, CASING = "zip", "side", "casing"
JOINED: Final = frozenset({"seam", "gathered-edge"})
FAMILIES: Final = frozenset({"seam", "gathers", "band"})
"""Families of what joins two cloths; fastenings and trims may lie in several rows."""


def said_twice(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """The later of two places that join the same layers and are called alike."""
    kinds = knowledge.places.kinds
    joining = [s for s in garment.seams if s.place in kinds and kinds[s.place].family in FAMILIES]
    for first, later in combinations(joining, 2):
        if _same_layers(first, later) and _called_alike(first, later, knowledge):
            text = (
                f"may be the same seam as {first.name}: both join {_joined(later)}. If it is, "
                "strike one of them out, or it is sewn and bought for twice; if not, name the two "
                "apart"
            )
            yield Disagreement("said-twice", later.name, (), text)


def drawn_into_a_waist(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """A gathered edge on the line of a waist that joins the same cloths."""
    role = knowledge.order.kinds.get("waist")
    for seam in garment.seams:
        waist = waist_that_joins(seam, garment.seams, role.words if role else ())
        if waist is None:
            continue
        full = max(seam.uses, key=lambda use: use.fullness)
        text = (
            f"is as long as {waist.name}, which joins the same cloths: taken as one line, sewn "
            f"once, there. Then write {{use: {full.cloth}, fullness: {full.fullness:g}}} in that "
            "and strike this out; if it lies elsewhere, give it its own length"
        )
        yield Disagreement("said-twice", seam.name, (), text)


def told_once_more(garment: Garment) -> Iterator[Disagreement]:
    """An edge that stands beside its binding, a canvas of a facing beside that of its front."""
    for seam in garment.seams:
        other = told_at(seam, garment.seams)
        if other is not None:
            text = (
                f"is {other.name} told once more: taken as one, made and bought once, there. "
                "Strike this out, or name the two apart"
            )
            yield Disagreement("said-twice", seam.name, (), text)


def channel_said_twice(garment: Garment) -> Iterator[Disagreement]:
    """An elastic or a cord told by itself, beside the empty channel that it is drawn through."""
    channels = [(s, _bought(s, garment)) for s in garment.seams if s.place == CASING]
    for drawn, within in channels if any(not things for _, things in channels) else ():
        line = set(singular_words(drawn.name)) - nouns.DRAWN_THROUGH
        empty = (
            s for s, things in channels if not things and set(s.cloths()) & set(drawn.cloths())
        )
        near = [s for s in empty if line == set(singular_words(s.name)) - nouns.DRAWN_THROUGH]
        if within and line and near:
            text = (
                f"is drawn through {near[0].name}, which is one place with it: write "
                f"{', '.join(within)} among the layers of that and strike this out, or two "
                "channels are made"
            )
            yield Disagreement("said-twice", drawn.name, (), text)


def _bought(seam: Seam, garment: Garment) -> list[str]:
    return [name for name in seam.cloths() if garment.cloths[name].put_in]


def pocket_at_a_zip(garment: Garment) -> Iterator[Disagreement]:
    """A pair of pockets in the sides, of which a zip closes one: only the maker knows how."""
    zips = [s.name for s in garment.seams if s.place == ZIP and SIDE in singular_words(s.name)]
    for seam in garment.seams if zips else ():
        if seam.making.times > 1 and SIDE in singular_words(seam.name) and opens_in_a_seam(seam):
            text = (
                f"opens in both sides, and {zips[0]} closes one of them: leave the pocket out "
                "there, set the zip in the middle of the back, or say how it ends at the pocket"
            )
            yield Disagreement("pocket-at-zip", seam.name, (), text)


def zip_that_crosses_nothing(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """A zip that is said to cross no seam, of a garment with a bodice and a skirt that it may join.

    Its name or its part may say in which of the two it lies; else the waist is sewn over its end.
    """
    role = knowledge.order.kinds.get("waist")
    phrases = [set(singular_words(p)) for p in (role.words if role else ())]
    parts = (nouns.ABOVE, nouns.SKIRTS)
    both = all(any(speaks_of(s.name, part) for s in garment.seams) for part in parts)
    for zip_ in (s for s in garment.seams if s.place == ZIP and both):
        told = speaks_of(f"{zip_.name} {zip_.part}", nouns.ABOVE | nouns.HUNG_PARTS)
        if told or not zip_.making.crosses_said or zip_.making.crosses:
            continue
        for seam in garment.seams:
            words = set(singular_words(seam.name))
            waist = seam.place in JOINED and any(phrase <= words for phrase in phrases)
            if waist and set(seam.cloths()) & set(zip_.cloths()):
                text = (
                    f"crosses nothing, says the file, so {seam.name} is sewn over its end: right "
                    "where it lies wholly above that or below, and then name it after that; "
                    f"where it runs on over {seam.name}, write crosses: [{seam.name}]"
                )
                yield Disagreement("zip-crosses-nothing", zip_.name, (), text)


def _same_layers(first: Seam, later: Seam) -> bool:
    same = Counter(first.cloths()) == Counter(later.cloths()) and len(first.uses) > 1
    apart = first.part and later.part and first.part != later.part
    return same and first.place == later.place and not apart


def _joined(seam: Seam) -> str:
    return " and ".join([", ".join(seam.cloths()[:-1]), seam.cloths()[-1]])


def _called_alike(first: Seam, later: Seam, knowledge: Knowledge) -> bool:
    """Whether two names hold the same words, or are two names of one seam of the same length."""
    one, other = (set(singular_words(seam.name)) - nouns.IDLE for seam in (first, later))
    if one == other:
        return True
    lengths = [float(s.facts["length"]) for s in (first, later) if "length" in s.facts]
    alike = not lengths[1:] or abs(lengths[0] - lengths[1]) <= ALIKE * max(lengths)
    return alike and any(_of_role(one, other, id_, knowledge) for id_ in CALLED)


def _of_role(one: set[str], other: set[str], role: str, knowledge: Knowledge) -> bool:
    """Whether both sets of words name this role, and nothing in them tells the two apart."""
    phrases = [set(singular_words(p)) - nouns.IDLE for p in knowledge.order.kinds[role].words]
    own = set().union(*phrases) - (nouns.QUARTERS | {"sleeve", "opening"})
    named = all(any(p and p <= words for p in phrases) for words in (one, other))
    return named and one - own == other - own
