"""Makes a garment of one seam from a few phrases: for a question, and for a rule's examples."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from advisor.errors import InputError, Problem, nearest
from advisor.knowledge.model import Entry, Knowledge
from advisor.project.garment import Cloth, Garment, Maker, Seam, Use
from advisor.project.phrase import cloth_of, make_cloth, read_phrase

SEAM = "the seam"
CHOICES = {"finish": "seam.finish", "seam": "seam.kind", "stitch": "stitch.type",
           "allowance": "seam.allowance", "needle": "needle.point",
           "needle size": "needle.size", "pressing": "press.motion",
           "support": "seam.support"}  # fmt: skip
"""Keys of a seam by which the maker fixes an answer, and the aspect that each one fixes."""


def quick_garment(
    layers: list[Any],
    knowledge: Knowledge,
    seam: dict[str, Any] | None = None,
    maker: dict[str, Any] | None = None,
) -> Garment:
    """A garment of one seam.

    Args:
        layers: phrases, or mappings with `fabric` or `notion` (a phrase or name) and what is
            said of the cloth and its use (fullness, stretched, shade, care, detachable).
        seam: facts and choices of the seam, as in a project.
        maker: machine, overlocker, feet.

    Raises:
        InputError: a phrase is not understood.
    """
    cloths: dict[str, Cloth] = {}
    uses = [_use(layer, cloths, knowledge) for layer in layers]
    if len(uses) == 1:
        uses = uses * 2
    given = dict(seam or {})
    choices = tuple((CHOICES[key], value) for key, value in sorted(given.items()) if key in CHOICES)
    facts = {k: float(v) if isinstance(v, int) else v for k, v in given.items()}
    whole = Seam(SEAM, tuple(uses), facts, choices)
    about = maker or {}
    feet = about.get("feet")
    lift = about.get("foot lift")
    who = Maker(
        str(about.get("machine", "household")), _overlocker(about.get("overlocker", "")),
        None if feet is None else tuple(feet), None if lift is None else float(lift),
    )  # fmt: skip
    name = " with ".join(dict.fromkeys(use.cloth for use in uses))
    return Garment(name, cloths, (whole,), who, single=True)


def _overlocker(said: Any) -> str:
    return {"yes": "4-thread", "no": ""}.get(str(said), str(said))


def _use(layer: Any, cloths: dict[str, Cloth], knowledge: Knowledge) -> Use:
    about = layer if isinstance(layer, dict) else {"fabric": layer}
    phrase = str(about.get("fabric") or about.get("notion"))
    if "notion" in about:
        cloth = notion_cloth(phrase, phrase, knowledge)
    else:
        cloth = cloth_of(phrase, read_phrase(phrase, knowledge), knowledge)
    cloth = replace(
        cloth, shade=str(about.get("shade", "")), care=str(about.get("care", "")),
        detachable=about.get("detachable") == "yes",
    )  # fmt: skip
    name = phrase
    count = 2
    while name in cloths and cloths[name] != replace(cloth, name=name):
        name, count = f"{phrase} ({count})", count + 1
    cloths[name] = replace(cloth, name=name)
    return Use(name, float(about.get("fullness", 1.0)), float(about.get("stretched", 1.0)))


def notion_cloth(name: str, said: str, knowledge: Knowledge) -> Cloth:
    """The notion, or the cloth used as one, that a name stands for.

    Raises:
        InputError: nothing has that name.
    """
    entry = knowledge.entries.get(knowledge.names.get(plain_name(said), ""))
    if entry is None:
        known = nearest(said, [e.name for e in _notions(knowledge)])
        raise InputError((Problem(f"unknown notion '{said}'", None, None, known),))
    return make_cloth(name, entry, (), None)


def plain_name(text: str) -> str:
    """A name as the index of names holds it."""
    return " ".join(text.casefold().replace("-", " ").split())


def _notions(knowledge: Knowledge) -> list[Entry]:
    return [entry for entry in knowledge.entries.values() if entry.kind != "cloth"]
