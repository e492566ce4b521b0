"""Reads by which method a place is made, how a garment or a place is fitted, and its pattern.

A method that the maker names wins: where no kind was said it also says what is made there, and
the kind of seam or hem that it stands for becomes her own choice, which only a guard stands
against. A method that cannot make what she says is made there is refused.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from msgspec.structs import replace

from advisor.errors import shown
from advisor.knowledge.places import Method, plain_word
from advisor.project.measures import Asker
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.knowledge.model import Knowledge
    from advisor.project.findings import Findings
    from advisor.project.garment import Garment, Seam

FITTINGS = ("to the body", "loosely", "not at all")
PATTERNS = ("tried", "new")
STANDS_FOR = {"seam": "seam.kind", "hem": "hem.kind"}


def with_methods(garment: Garment, data: Any, findings: Findings, knowledge: Knowledge) -> Garment:
    """The garment with what its file says of methods, fitting and pattern."""
    if not isinstance(data, dict):
        return garment
    whole = Asker(data, (), findings)
    listed = data.get("seams")
    rows = [
        (i, row)
        for i, row in enumerate(listed if isinstance(listed, list) else ())
        if isinstance(row, dict)
    ]
    built = []
    for seam, (i, row) in zip(garment.seams, rows, strict=True):
        asker = Asker(row, ("seams", i), findings)
        fitted = replace(seam, fitting=asker.word("fitting", FITTINGS))
        said = row.get("method") or _called(seam, knowledge)
        if isinstance(said, str) and said:
            built.append(_made(fitted, said, asker, knowledge))
        else:
            built.append(_sewn_as_it_is(fitted, garment, knowledge))
    return replace(
        garment,
        seams=tuple(built),
        fitting=whole.word("fitting", FITTINGS),
        pattern=whole.word("pattern", PATTERNS),
    )


def _called(seam: Seam, knowledge: Knowledge) -> str:
    """The method that her own word for a fastening names; "" where none does."""
    kind = knowledge.places.kinds.get(seam.place)
    called = (seam.fastening, seam.name) if kind and kind.family == "fastening" else ()
    for word in called:
        method = knowledge.places.named(" ".join(singular_words(word))) if word else None
        if method is not None and seam.place in method.makes:
            return method.id
    return ""


def _made(seam: Seam, said: str, asker: Asker, knowledge: Knowledge) -> Seam:
    """The place with the method that was named, or as it was where that cannot be."""
    places = knowledge.places
    method = places.named(said)
    if method is None:
        names = sorted({m.name for m in places.methods.values()})
        held = [name for name in names if plain_word(said) in name.casefold().split()]
        asker.findings.say(
            (*asker.steps, "method"),
            f"'method': no way of making a place is called {shown(said)}",
            f"one of {', '.join(held)}" if held else "a method, as in 'advisor explain methods'",
            (plain_word(said), [] if held else names),
        )
        return seam
    if seam.place not in method.makes:
        if not seam.placed_by:
            kinds = " or a ".join(places.kinds[id_].name for id_ in method.makes)
            here = places.kinds[seam.place].name if seam.place in places.kinds else "seam"
            asker.findings.say(
                (*asker.steps, "method"),
                f"{shown(method.name)} makes a {kinds}, and this place is a {here}",
                f"kind: {method.makes[0].replace('-', ' ')}, or another method",
            )
            return seam
        seam = replace(seam, place=method.makes[0], placed_by="its method")
    made = replace(seam, method=method.id, choices=_chosen(seam, method))
    return _by_hand(made) if method.by_hand and "stitched by" not in seam.facts else made


def _sewn_as_it_is(seam: Seam, garment: Garment, knowledge: Knowledge) -> Seam:
    """A place by hand where one of its notions asks for a method by hand, and for nothing else."""
    entries = {garment.cloths[n].entry for n in seam.cloths() if n in garment.cloths}
    asked = any(
        method.by_hand
        and seam.place in method.makes
        and set(method.fits) == {"notions"}
        and entries & set(method.fits["notions"])
        for method in knowledge.places.methods.values()
    )
    said = "stitched by" in seam.facts and "stitched by" not in seam.assumed
    return _by_hand(seam) if asked and not said else seam


def _by_hand(seam: Seam) -> Seam:
    """The place sewn as its method is, so that no foot and no machine needle is set for it."""
    assumed = tuple(word for word in seam.assumed if word != "stitched by")
    return replace(seam, by_hand=True, assumed=assumed)


def _chosen(seam: Seam, method: Method) -> tuple[tuple[str, str | float], ...]:
    """The maker's choices, with the kind of seam or hem that the method stands for."""
    fixed = {aspect for aspect, _ in seam.choices}
    more = [
        (aspect, method.fits[key][0])
        for key, aspect in STANDS_FOR.items()
        if len(method.fits.get(key, ())) == 1 and aspect not in fixed
    ]
    return (*seam.choices, *more)
