"""Makes a garment of one seam from a few phrases: for a question, and for a rule's examples."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from msgspec.structs import replace

from advisor.errors import InputError, shown
from advisor.knowledge.model import Knowledge
from advisor.project.cloths import notion_cloth, read_cloth
from advisor.project.facts import (
    CHOICES,
    make_maker,
    make_seam,
    read_fact,
    read_maker_fact,
    read_measure,
)
from advisor.project.findings import Findings
from advisor.project.garment import Cloth, Garment, Maker, Use
from advisor.project.glue_first import fusing_first
from advisor.project.phrase import read_phrase, short_name
from advisor.project.phrases.asking import refuse_no_cloths
from advisor.project.phrases.boundaries import cloths_said

__all__ = ["CHOICES", "SEAM", "asked_garment", "notion_cloth", "quick_garment"]

SEAM = "the seam"


def quick_garment(
    layers: list[Any],
    knowledge: Knowledge,
    seam: dict[str, Any] | None = None,
    maker: dict[str, Any] | None = None,
) -> Garment:
    """A garment of one seam.

    Args:
        layers: phrases, or mappings with `fabric`, `use` or `notion` (a phrase or name) and what
            is said of the cloth and its use (fullness, stretched, shade, care, detachable).
        knowledge: where the names are looked up.
        seam: its facts, choices and name, as in a project, and as `place` the id of its kind.
        maker: machine, overlocker, feet, foot lift.

    Raises:
        InputError: a phrase, a fact or an answer is not understood.
    """
    cloths: dict[str, Cloth] = {}
    uses = tuple(_use(layer, cloths, knowledge) for layer in layers)
    about = dict(seam or {})
    place, fastening = (str(about.pop(key, "")) for key in ("place", "fastening"))
    called = str(about.pop("name", SEAM))
    said = {key: read_fact(key, value, knowledge) for key, value in about.items()}
    who = _maker(maker or {}, knowledge)
    whole = replace(make_seam(called, uses, said, who), place=place, fastening=fastening)
    name = " with ".join(dict.fromkeys(use.cloth for use in whole.uses))
    return Garment(name, cloths, (whole,), who, single=True)


def asked_garment(arguments: Sequence[str], knowledge: Knowledge) -> Garment:
    """The garment of a question: its cloths found in what was typed, with quotes or without.

    Raises:
        InputError: a cloth is not understood.
    """
    refuse_no_cloths(arguments, knowledge)
    cloths, note = cloths_said(arguments, knowledge)
    try:
        garment = fusing_first(quick_garment(list(cloths), knowledge), knowledge)
    except InputError as error:
        _refuse_alone(arguments, error, knowledge)
        raise
    if note is None:
        return garment
    first = garment.seams[0].uses[0].cloth
    cloth = garment.cloths[first]
    noted = {**garment.cloths, first: replace(cloth, notes=(note, *cloth.notes))}
    return replace(garment, cloths=noted)


def _refuse_alone(arguments: Sequence[str], error: InputError, knowledge: Knowledge) -> None:
    """Refuse the argument that was not understood by itself, not as it was joined to another."""
    refused = str(error)
    for word in arguments:
        if refused.startswith(f"not understood: {shown(word)}"):
            read_phrase(word, knowledge)


def _maker(about: dict[str, Any], knowledge: Knowledge) -> Maker:
    said: dict[str, Any] = {}
    for key, value in about.items():
        if key == "feet":
            said[key] = tuple(str(read_maker_fact("foot", foot, knowledge)) for foot in value)
        else:
            said[key] = read_maker_fact(key, value, knowledge)
    return make_maker(said)


def _use(layer: Any, cloths: dict[str, Cloth], knowledge: Knowledge) -> Use:
    about = dict(layer) if isinstance(layer, dict) else {"fabric": layer}
    if "use" in about:
        about["fabric"] = about.pop("use")
    phrase = str(about.get("notion") or about.get("fabric"))
    findings = Findings()
    cloth = read_cloth(phrase, about, (), findings, knowledge)
    findings.stop()
    if cloth is None:
        raise TypeError(f"a layer is a phrase or has one under `fabric` or `notion`: {layer!r}")
    short = short_name(phrase)
    name, count = short, 2
    while name in cloths and cloths[name] != replace(cloth, name=name):
        name, count = f"{short} ({count})", count + 1
    cloths[name] = replace(cloth, name=name)
    return Use(name, *(read_measure(k, about.get(k, 1)) for k in ("fullness", "stretched")))
