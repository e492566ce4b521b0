"""What each key of a project file means, in a sentence, and which words it takes.

An editor shows both through the JSON Schema; a new project file shows the sentences of the keys
that sleep in it. Closed lists refuse what the reader refuses; open ones only offer words, because
the reader takes longer names, plurals and quantities as well.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final, NamedTuple

from advisor.knowledge.model import Knowledge
from advisor.project.facts import (
    CHOICES,
    CLOTH_WORDS,
    SEAM_WORDS,
    WEARERS,
    YES_NO,
    machines_of,
    overlockers_of,
)
from advisor.project.making import GRAINS, LESS_BULK, METHODS, PLEAT_KINDS
from advisor.project.methods import FITTINGS, PATTERNS
from advisor.project.placing import known_kinds
from advisor.project.template import CLOTH, MAKER, SEAM


class Words(NamedTuple):
    """Words that a key takes; `closed` where it takes no others."""

    words: tuple[str, ...]
    closed: bool = True


QUANTITIES: Final = ("allowance", "needle size")
"""Keys by which a number is fixed."""
TOLD: Final[Mapping[str, Mapping[str, str]]] = {
    "ProjectForm": {
        "garment": "What the garment is called.",
        "units": "Which units are printed; either may be written.",
        "fitting": "How the garment is fitted: nothing past recall comes before a fitting.",
        "pattern": "Whether the pattern has been tried; a new one asks for a toile.",
        "worn by": "Who wears it; a child's garment has dangers of its own.",
        "maker": "What you sew with.",
        "fabrics": "Each cloth of the garment under a name of your own: a phrase, or its facts.",
        "parts": "The parts of the garment, each with its layers and how it is fitted.",
        "seams": "The places of the garment: seams, edges, fastenings and all else that is made.",
        "pieces": "The pieces that are cut, so that cloth to buy is reckoned.",
        "kit": "What lies in your workroom, so that what is missing is told.",
        "results": "What scraps have shown.",
        "order": "Your own wishes for the order of work.",
        "quote": "What you charge by.",
        "done": "Steps that are done; ticking writes them here.",
    },
    "ClothForm": {
        "fabric": "What it is: fibres if known, the cloth, a weight if known.",
        "notion": "A notion that is described like a cloth.",
        "sinks": "By how much the end of a strip lies lower that reaches over a table edge.",
    },
    "LayerForm": {
        "use": "A cloth of the project.",
        "notion": "A notion, such as coil zip or woven fusible interfacing.",
        "fullness": "How many times as long as the seam it is before it is gathered in.",
        "ease": "How much longer than the seam it is, eased in without gathers.",
        "stretched": "How many times its own length it is stretched to.",
        "width": "How wide a notion is: an elastic, a tape, a ribbon, a binding.",
    },
    "SeamForm": {
        "name": "What the place is called; its kind is read from it where none is said.",
        "layers": "What lies there, from the side under the iron downwards.",
        "on": "The cloth on which a fastening or a trimming lies, instead of layers.",
        "fastening": "What closes there.",
        "number": "How many of a fastening there are.",
        "shape": "Whether the line is straight, curved or turns a corner.",
        "crosses": "The places over whose ends this one runs.",
        "gathers": "How a full edge is drawn up.",
        "pleats": "How its pleats are laid.",
        "part": "The part of the garment that it belongs to.",
    },
    "GathersForm": {
        "to": "The length that it is drawn up to.",
        "method": "How it is drawn up.",
        "strip": "What a tried strip measured, flat and gathered.",
    },
    "StripForm": {
        "flat": "How long the strip was.",
        "gathered": "How long it was once gathered.",
    },
    "PleatsForm": {
        "kind": "How they are laid.",
        "number": "How many there are.",
        "depth": "How deep each one is, from its edge to its fold inside.",
        "spacing": "From one pleat to the next.",
        "face": "How much of each one shows.",
        "stitched down": "How far they are stitched down.",
        "hip": "Round the hips, where they are to close.",
        "waist": "Round the waist, to which they are tapered.",
    },
    "TucksForm": {
        "depth": "How deep each one is.",
        "number": "How many there are.",
        "spacing": "From one tuck to the next.",
    },
    "FlounceForm": {
        "seam": "The length of the seam that it is sewn to.",
        "depth": "How deep it hangs.",
        "pieces": "Of how many rings it is joined.",
        "turn": "What share of a whole circle each one is.",
    },
    "TiersForm": {
        "number": "How many tiers there are.",
        "heights": "How high each one is, from the top.",
        "fullness": "How many times as wide as the one above each one is.",
    },
    "PieceForm": {
        "name": "What the piece is called.",
        "fabric": "The cloth of the project that it is cut from.",
        "width": "Its width as cut.",
        "height": "Its height as cut.",
        "finished width": "Its width when sewn; allowances are added. Where it has a fullness, of "
        "all its pieces together.",
        "finished height": "Its height when sewn; allowances and hem are added.",
        "number": "How many are cut.",
        "fullness": "How many times its finished width it is cut.",
        "hem": "How deep its hem is.",
        "allowance": "How much is allowed at its edges.",
        "grain": "Which way of the cloth it is cut.",
        "narrow end": "Its width at the narrower end, where it tapers.",
        "matched": "Whether a pattern is to match from piece to piece.",
        "joined": "Whether it may be joined of several.",
        "tucks": "Its tucks, so that they are allowed for and marked.",
        "flounce": "A flounce of rings, instead of its sizes.",
        "tiers": "Its tiers, so that each one is cut.",
        "doubled": "Whether it is folded on itself.",
    },
    "KitForm": {
        "feet": "The feet in your kit.",
        "needles": "The needles in your kit, such as sharp 70.",
        "pins": "The pins in your kit.",
        "pressing": "What you press with.",
        "tools": "Your other tools.",
        "threads": "Your reels of thread.",
        "thread near": "How near in colour two cloths may share a thread, by CIEDE2000.",
    },
    "ResultForm": {
        "seam": "The place that the scrap stood for.",
        "result": "What it showed.",
        "works": "Whether it was good.",
    },
    "PartForm": {
        "layers": "Its cloths, from the body outwards.",
        "separate": "Those of them that hang free.",
        "fitting": "How it is fitted.",
    },
    "WishesForm": {
        "add": "Steps of your own.",
        "drop": "Steps that you leave out.",
        "tie": "Pairs of steps that follow each other.",
        "pin": "Steps that stand at a place of the order.",
        "after": "By step, those that come before it.",
        "costs": "Minutes that a change of set-up takes you.",
        "sitting": "How long you sit down to work, so that places to stop are told.",
    },
    "AddedForm": {
        "step": "What is done.",
        "after": "The steps before it.",
        "before": "The steps after it.",
        "on": "The cloths that it works on.",
        "minutes": "How long it takes.",
    },
    "PinForm": {
        "step": "The step.",
        "after": "The step just before it.",
        "before": "The step just after it.",
        "at": "Its number in the order.",
    },
    "QuoteForm": {
        "currency": "The money that it is told in.",
        "hour": "What an hour of your work costs.",
        "margin": "What is added to the sum, as a share.",
        "prices": "What a reel, a notion or a cloth costs.",
        "minutes": "Your own times by kind of work.",
        "others": "Other costs, by name.",
    },
}
"""By form and key, where a new project file does not say it already."""


def sentence(form: str, key: str, knowledge: Knowledge) -> str:
    """What a key of a form means; "" for a key that nobody explained."""
    told = TOLD.get(form, {}).get(key)
    if told is not None:
        return told
    shown = {"MakerForm": MAKER, "ClothForm": CLOTH, "SeamForm": SEAM}.get(form, {})
    words = shown.get(key, ("", ""))[1]
    words = words.replace("{traits}", ", ".join(knowledge.traits))
    words = words.replace("{machine.foot}", ", ".join(knowledge.aspects["machine.foot"].words))
    return f"{words[:1].upper()}{words[1:]}." if words else ""


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
        "GathersForm": {"method": Words(METHODS)},
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
