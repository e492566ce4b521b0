"""Reads the parts of a garment: which cloths each has, which of them hang free, how it is fitted.

A place belongs to the part that it names with `part`, else to the one whose name stands in its
own: "skirt side" is of the skirt. It is fitted as its part is, unless it says so itself.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

from msgspec.structs import replace

from advisor.errors import shown
from advisor.project.garment import GarmentPart
from advisor.project.linings import in_their_parts
from advisor.project.measures import Asker
from advisor.project.methods import FITTINGS
from advisor.project.names import tidy_name
from advisor.project.placing import singular_words
from advisor.project.unjoined import parts_alone

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from advisor.knowledge.model import Knowledge
    from advisor.knowledge.places import PlaceKind
    from advisor.project.findings import Findings
    from advisor.project.garment import Garment, Seam
    from advisor.textio.yamlfile import Steps


CLOSES: Final = frozenset({"waistband", "casing"})
"""Kinds of place by which a part holds to the body, beside what fastens."""
FASTENING: Final = "fastening"


def with_parts(garment: Garment, data: Any, findings: Findings, knowledge: Knowledge) -> Garment:
    """The garment with its parts, and each place in its own."""
    said = data.get("parts") if isinstance(data, dict) else None
    if said is not None and not isinstance(said, dict):
        return garment  # told by its form already: a place that names one of them is no slip more
    unread = _unread(data, garment)
    parts = tuple(
        _part(name, about, garment, findings, unread)
        for name, about in (said.items() if isinstance(said, dict) else ())
        if _named(name) and isinstance(about, dict)
    )
    listed = data.get("seams") if isinstance(data, dict) else None
    listed = listed if isinstance(listed, list) else ()
    rows = [(i, row) for i, row in enumerate(listed) if isinstance(row, dict)]
    if len(rows) != len(garment.seams):
        return garment
    seams = tuple(
        _placed(seam, Asker(row, ("seams", i), findings), parts)
        for seam, (i, row) in zip(garment.seams, rows, strict=True)
    )
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    seams = in_their_parts(seams, entries)
    return _with_loose_parts(replace(garment, seams=seams, parts=parts), knowledge)


def _with_loose_parts(garment: Garment, knowledge: Knowledge) -> Garment:
    """The cloths of a part that is put on by itself come off the rest, to be pressed and cleaned.

    It closes round the body by a band, a casing or a fastening of its own; a part whose joining
    was only left out has none such. What it shares with another part stays on, but for a ribbon or
    the like of which each has a length of its own.
    """
    loose: set[str] = set()
    alone = parts_alone(garment, knowledge)
    for part in (part for part in garment.parts if part.name in alone):
        inside = [seam for seam in garment.seams if seam.part == part.name]
        held = {cloth for seam in inside for cloth in seam.cloths()}
        others = {cloth for seam in garment.seams if seam not in inside for cloth in seam.cloths()}
        others |= {c for other in garment.parts if other != part for c in other.layers}
        closes = any(closes_round(seam, knowledge.places.kinds) for seam in inside)
        shared = {
            n for n in held & others if knowledge.entries[garment.cloths[n].entry].kind != "cloth"
        }
        if closes and not (held | set(part.layers)) & others - shared:
            loose |= held - shared
    cloths = {
        name: replace(cloth, detachable=True) if name in loose else cloth
        for name, cloth in garment.cloths.items()
    }
    return replace(garment, cloths=cloths) if loose else garment


def closes_round(seam: Seam, kinds: Mapping[str, PlaceKind]) -> bool:
    """Whether a place holds what it lies on to the body."""
    kind = kinds.get(seam.place)
    return kind is not None and (kind.id in CLOSES or kind.family == FASTENING)


def _named(name: Any) -> bool:
    """Whether it is a name; what is none has been refused already."""
    try:
        return isinstance(name, str) and bool(tidy_name(name))
    except ValueError:
        return False


def _unread(data: Any, garment: Garment) -> frozenset[str]:
    """Cloths of the project that were not understood, which has been told where they stand."""
    listed = data.get("fabrics") if isinstance(data, dict) else None
    names = (name for name in listed if _named(name)) if isinstance(listed, dict) else ()
    return frozenset(tidy_name(name).casefold() for name in names) - {
        name.casefold() for name in garment.cloths
    }


def _part(
    name: str, about: dict[str, Any], garment: Garment, findings: Findings, unread: frozenset[str]
) -> GarmentPart:
    here: Steps = ("parts", name)
    layers = _cloths(about.get("layers"), (*here, "layers"), garment.cloths, findings, unread)
    within = layers or garment.cloths
    free = _cloths(about.get("separate"), (*here, "separate"), within, findings, unread)
    return GarmentPart(
        tidy_name(name), layers, free, Asker(about, here, findings).word("fitting", FITTINGS)
    )


def _cloths(
    said: Any, steps: Steps, known: Iterable[str], findings: Findings, unread: frozenset[str]
) -> tuple[str, ...]:
    """The cloths of a list, each as the project spells it; a band has its own twice."""
    spelled = {name.casefold(): name for name in known}
    listed = [said] if isinstance(said, str) else said
    found = []
    for i, word in enumerate(listed if isinstance(listed, list) else ()):
        at = steps if isinstance(said, str) else (*steps, i)
        if not isinstance(word, str):
            continue
        asked = " ".join(word.split()).casefold()
        name = spelled.get(asked)
        if name is None and asked in unread:
            continue
        if name is None:
            what = "layer of this part" if steps[-1] == "separate" else "fabric of this project"
            one = f"one of {', '.join(spelled.values())}"
            findings.say(at, f"no {what} is called {shown(word)}", one, (word, spelled.values()))
        else:
            found.append(name)
    return tuple(found)


def _placed(seam: Seam, asker: Asker, parts: tuple[GarmentPart, ...]) -> Seam:
    named = {part.name.casefold(): part for part in parts}
    if asker.said("part"):
        word = asker.word("part", [part.name for part in parts]) if parts else ""
        if not parts:
            asker.deny("part", "this project names no parts", "parts: at the left margin")
        part = named.get(word.casefold())
    else:
        part = part_named_in(seam.name, parts)
    if part is None:
        return seam
    return replace(seam, part=part.name, fitting=seam.fitting or part.fitting)


def part_named_in(name: str, parts: Iterable[GarmentPart]) -> GarmentPart | None:
    """The part whose words stand together in a name; the longest of several."""
    words = singular_words(name)
    held = [part for part in parts if _stands_in(singular_words(part.name), words)]
    return max(held, key=lambda part: len(part.name), default=None)


def _stands_in(some: tuple[str, ...], words: tuple[str, ...]) -> bool:
    spans = range(len(words) - len(some) + 1)
    return bool(some) and any(words[i : i + len(some)] == some for i in spans)
