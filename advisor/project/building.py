"""Reads how a seam is built: how often, over which seams, gathered or pleated by how much.

The geometry of pleats is that of `craft.pleats` (`derived`): an underlap may be no deeper than
its face and the flat cloth beside it, or half of that where it folds both ways.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial
from typing import TYPE_CHECKING, Any

from msgspec.structs import replace

from advisor.errors import shown
from advisor.knowledge.places import WAYS_TO_GATHER
from advisor.project.cloths import is_scalar
from advisor.project.easing import with_ease
from advisor.project.facts import read_word
from advisor.project.findings import Findings
from advisor.project.garment import Seam
from advisor.project.making import (
    LESS_BULK,
    OVERLAPS,
    PLEAT_KINDS,
    Gathers,
    Making,
    Pleats,
)
from advisor.project.measures import MANY, Asker

if TYPE_CHECKING:
    from advisor.textio.yamlfile import Steps

ROUNDED = 2.0
"""By how much the spacing of pleats may be rounded up, mm: as far as it is printed rounded."""


def with_making(
    seams: Sequence[Seam], listed: Any, findings: Findings, *, bare: bool
) -> tuple[Seam, ...]:
    """The seams with how each is built; a pleated or measured edge gets the fullness of that."""
    if not isinstance(listed, list):
        return tuple(seams)
    groups = [(i, about) for i, about in enumerate(listed) if isinstance(about, dict)]
    names = {seam.name.casefold(): seam.name for seam in seams}
    built = []
    for seam, (i, about) in zip(seams, groups, strict=True):
        asker = Asker(about, ("seams", i), findings, bare)
        many = MANY if "length" not in about else ""  # things that are set one by one
        making = Making(
            times=(asker.count("times", many) or 1) * (asker.count("number", many) or 1),
            counted="times" in about or "number" in about,
            gathers=_gathers(about.get("gathers"), asker),
            pleats=_pleats(seam, about.get("pleats"), asker),
            crosses=_crosses(seam, about.get("crosses"), asker, names),
            crosses_said="crosses" in about,
            moves=asker.yes("moves"),
            helps=_helps(about.get("lessen bulk"), asker),
            topstitch=asker.count("topstitch") or 0,
            left_open=asker.measure("left open") or 0.0,
        )
        first = _first(seam, about, asker)
        eased = with_ease(replace(seam, making=making, apart=first), asker)
        built.append(_full(eased, asker))
    return tuple(built)


def _helps(said: Any, asker: Asker) -> frozenset[str]:
    """What is done so that less lies under the foot."""
    found = set()
    for here, word in _listed(said, (*asker.steps, "lessen bulk")):
        read = partial(read_word, "lessen bulk", word, LESS_BULK)
        known = asker.findings.attempt(here, read) if is_scalar(word) else None
        found |= {LESS_BULK[known]} if known else set()
    return frozenset(found)


def _first(seam: Seam, about: Mapping[str, Any], asker: Asker) -> frozenset[str]:
    """The layers that get their heat before the seam is sewn: pressed alone, or fused flat."""
    names = {name.casefold(): name for name in seam.cloths()}
    found = set()
    for key in ("pressed first", "fused first"):
        for here, said in _listed(about.get(key), (*asker.steps, key)):
            if not isinstance(said, str):
                continue
            name = names.get(" ".join(said.split()).casefold())
            if name is None:
                asker.findings.say(
                    here,
                    f"no layer of this seam is called {shown(said)}",
                    "one of its layers",
                    (said, names.values()),
                )
            else:
                found.add(name)
    return frozenset(found)


def _listed(said: Any, steps: Steps) -> list[tuple[Steps, Any]]:
    """What stands under a key that takes one word or a list of them, each with its place."""
    if isinstance(said, list):
        return [((*steps, i), word) for i, word in enumerate(said)]
    return [] if said is None else [(steps, said)]


def _below(asker: Asker, key: str, about: Mapping[str, Any]) -> Asker:
    return Asker(about, (*asker.steps, key), asker.findings, asker.bare)


def _gathers(about: Any, asker: Asker) -> Gathers | None:
    if not isinstance(about, dict):
        return None
    here = _below(asker, "gathers", about)
    strip = about.get("strip")
    flat = gathered = None
    if isinstance(strip, dict):
        tested = _below(here, "strip", strip)
        flat, gathered = tested.measure("flat"), tested.measure("gathered")
        if flat and gathered and gathered > flat:
            tested.deny(
                "gathered",
                "a strip cannot be longer gathered than it was flat",
                f"at most {strip.get('flat')}",
            )
            flat = gathered = None
    return Gathers(here.word("method", WAYS_TO_GATHER), here.measure("to"), flat, gathered)


def _pleats(seam: Seam, about: Any, asker: Asker) -> Pleats | None:
    if not isinstance(about, dict):
        return None
    here = _below(asker, "pleats", about)
    kind, number = here.word("kind", PLEAT_KINDS), here.count("number")
    depth, spacing = here.measure("depth"), here.measure("spacing")
    face, edge = here.measure("face"), seam.facts.get("length")
    if not kind or number is None or depth is None:
        return None
    if face is None and edge is None:
        here.deny(
            "number",
            "pleats need their face, or the length of the seam they lie on",
            "face: 4 cm, or length: under the seam",
        )
        return None
    room = float(edge or 0.0) / number
    if face is not None:
        return _deep_enough(here, kind, number, depth, face, spacing or 0.0)
    if (spacing or 0.0) > room + ROUNDED:
        here.deny(
            "spacing",
            f"{number} pleats on this seam have {room:.4g} mm each, and none stands "
            f"{spacing:.4g} mm from the next",
            f"at most {room:.4g} mm",
        )
        return None
    # Without a face, from one pleat to the next is all of it.
    return _deep_enough(here, kind, number, depth, min(spacing or room, room), 0.0)


def _deep_enough(
    here: Asker, kind: str, number: int, depth: float, face: float, gap: float
) -> Pleats | None:
    """The pleats, unless no such fold can be laid."""
    most = (face + gap) * (OVERLAPS if kind == "knife" else 0.5)
    if depth > most * (1 + 1e-9):
        fits = f"at most {most:.4g} mm for a {kind} pleat with a face of {face:.4g} mm"
        here.deny("depth", f"'depth': {depth:.4g} mm is deeper than the spacing allows", fits)
        return None
    folds = 2 if kind == "knife" else 4
    ratio = (face + gap + folds * depth) / (face + gap)
    return Pleats(
        kind,
        number,
        depth,
        face,
        gap,
        ratio,
        here.measure("stitched down"),
        here.measure("hip"),
        here.measure("waist"),
    )


def _crosses(seam: Seam, said: Any, asker: Asker, names: Mapping[str, str]) -> tuple[str, ...]:
    listed = [said] if isinstance(said, str) else said
    found: dict[str, None] = {}
    for i, name in enumerate(listed if isinstance(listed, list) else ()):
        if not isinstance(name, str):
            continue
        here: Steps = (
            (*asker.steps, "crosses") if isinstance(said, str) else (*asker.steps, "crosses", i)
        )
        other = names.get(" ".join(name.split()).casefold())
        if other is None and "" in names:
            continue  # the name of some seam cannot be read, which is said already
        if other is None:
            asker.findings.say(
                here,
                f"no seam of this project is called {shown(name)}",
                "the name of another seam",
                (name, names.values()),
            )
        elif other == seam.name:
            asker.findings.say(here, "a seam cannot cross itself", "the name of another seam")
        else:
            found[other] = None
    return tuple(found)


def _as_measured(seam: Seam) -> Seam:
    """The seam with the fullness that its test strip showed, and the planned one kept."""
    gathers = seam.making.gathers
    if gathers is None:
        return seam
    planned = max(use.fullness for use in seam.uses)
    making = replace(seam.making, gathers=replace(gathers, planned=planned))
    measured = gathers.measured
    if measured is None:
        return replace(seam, making=making)
    uses = tuple(
        replace(use, fullness=max(1.0, measured)) if use.fullness == planned > 1 else use
        for use in seam.uses
    )
    return replace(seam, making=making, uses=uses)


def _layers(about: Mapping[str, Any]) -> list[Any]:
    layers = about.get("layers")
    return layers if isinstance(layers, list) else []


def _fullness_said(about: Mapping[str, Any]) -> bool:
    """Whether a layer has a fullness that is no number, which is said already."""
    said = [layer.get("fullness", 1) for layer in _layers(about) if isinstance(layer, dict)]
    return any(not _is_one(value) for value in said)


def _is_one(value: Any) -> bool:
    try:
        return float(value) == 1
    except (TypeError, ValueError):
        return False


def _full(seam: Seam, asker: Asker) -> Seam:
    """The seam with its full layer: by its pleats, or as it was said."""
    making = seam.making
    if not seam.uses:  # none of its layers was understood, which is said already
        return seam
    if making.pleats is None:
        told = len(_layers(asker.about)) == len(seam.uses) and not _fullness_said(asker.about)
        if making.gathers and told and not any(use.fullness > 1 for use in seam.uses):
            asker.findings.say(
                (*asker.steps, "gathers"),
                "no layer of this seam has any fullness",
                "{use: frill, fullness: 2} among its layers",
            )
        return _as_measured(seam)
    full = [i for i, use in enumerate(seam.uses) if use.fullness > 1]
    if making.gathers or full:
        asker.findings.say(
            (*asker.steps, "pleats"),
            "this edge is pleated and gathered at once",
            "one of the two; pleats make the fullness themselves",
        )
        return seam
    uses = list(seam.uses)
    uses[-1] = replace(uses[-1], fullness=making.pleats.ratio)
    return replace(seam, uses=tuple(uses))
