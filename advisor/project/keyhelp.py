"""What each key of a project file means, in a sentence, and which words it takes.

An editor shows both through the JSON Schema; a new project file shows the sentences of the keys
that sleep in it. Closed lists refuse what the reader refuses; open ones only offer words, because
the reader takes longer names, plurals and quantities as well.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Final, NamedTuple

from advisor.knowledge.factwords import CLOTH_WORDS, SEAM_WORDS, WEARERS, YES_NO
from advisor.knowledge.model import Knowledge
from advisor.knowledge.place import knowledge_folder
from advisor.knowledge.places import WAYS_TO_GATHER
from advisor.project.edgewords import MADE
from advisor.project.facts import CHOICES, machines_of, overlockers_of
from advisor.project.kindwords import known_kinds
from advisor.project.making import GRAINS, LESS_BULK, PLEAT_KINDS
from advisor.project.methods import FITTINGS, PATTERNS
from advisor.project.template import CLOTH, MAKER, SEAM
from advisor.textio.yamlfile import read_yaml


class Words(NamedTuple):
    """Words that a key takes; `closed` where it takes no others."""

    words: tuple[str, ...]
    closed: bool = True


QUANTITIES: Final = ("allowance", "needle size")
"""Keys by which a number is fixed."""
KEYS: Final = "keys.yaml"
"""The file of the knowledge that says by form what a key means, where a new file does not."""


def sentence(form: str, key: str, knowledge: Knowledge) -> str:
    """What a key of a form means; "" for a key that nobody explained."""
    told = _told(knowledge_folder()).get(form.removesuffix("Form").casefold(), {})
    if key in told:
        return told[key]
    shown = {"MakerForm": MAKER, "ClothForm": CLOTH, "SeamForm": SEAM}.get(form, {})
    words = shown.get(key, ("", ""))[1]
    words = words.replace("{traits}", ", ".join(knowledge.traits))
    words = words.replace("{machine.foot}", ", ".join(knowledge.aspects["machine.foot"].words))
    return f"{words[:1].upper()}{words[1:]}." if words else ""


@cache
def _told(folder: Path) -> Mapping[str, Mapping[str, str]]:
    """By form and key what the knowledge says of them; a folder may do without."""
    path = folder / KEYS
    told: Mapping[str, Mapping[str, str]] = read_yaml(path).data if path.is_file() else {}
    return told


def words_of(form: str, knowledge: Knowledge) -> Mapping[str, Words]:
    """By key of a form, the words that it takes."""
    aspects = knowledge.aspects
    fittings = Words(FITTINGS)
    kinds = knowledge.places.kinds.values()
    fixed = {key: Words(tuple(aspects[id_].words), closed=False) for key, id_ in CHOICES.items()}
    every: Mapping[str, Mapping[str, Words]] = {
        "ProjectForm": {
            "fitting": fittings,
            "pattern": Words(PATTERNS),
            "worn by": Words(WEARERS),
        },
        "MakerForm": {
            "machine": Words(machines_of(knowledge)),
            "overlocker": Words((*overlockers_of(knowledge), *YES_NO)),
            "feet": Words(tuple(aspects["machine.foot"].words), closed=False),
        },
        "ClothForm": {key: Words(words) for key, words in CLOTH_WORDS.items()},
        "LayerForm": {"notion": Words(_notions(knowledge), closed=False)},
        "SeamForm": {
            **{key: words for key, words in fixed.items() if key not in QUANTITIES},
            **{key: Words(words) for key, words in SEAM_WORDS.items()},
            "edge": Words((*SEAM_WORDS["edge"], *MADE)),
            "fitting": fittings,
            "moves": Words(YES_NO),
            "kind": Words(known_kinds(knowledge), closed=False),
            "fastening": Words(
                tuple(kind.name for kind in kinds if kind.family == "fastening"), closed=False
            ),
            "method": Words(
                tuple(method.name for method in knowledge.places.methods.values()), closed=False
            ),
            "lessen bulk": Words(tuple(LESS_BULK), closed=False),
        },
        "GathersForm": {"method": Words(WAYS_TO_GATHER)},
        "PleatsForm": {"kind": Words(PLEAT_KINDS)},
        "PieceForm": {
            "grain": Words(GRAINS),
            **{key: Words(YES_NO) for key in ("matched", "joined", "doubled")},
        },
        "ResultForm": {"works": Words(YES_NO)},
        "PartForm": {"fitting": fittings},
    }
    return every.get(form, {})


def _notions(knowledge: Knowledge) -> tuple[str, ...]:
    return tuple(e.name for e in knowledge.entries.values() if e.kind != "cloth")
