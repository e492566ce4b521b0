"""The facts of a seam, a cloth's use and the maker's kit: which there are, and how each is read.

A question, a rule's example and a project file say the same things, so all three are read here.
Lengths become mm, weights g/m²; every word comes back in the spelling of the knowledge. The
bounds of a measure are estimates that only keep slips of the keyboard out.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from advisor.errors import InputError, Problem, nearest, shown
from advisor.knowledge.factwords import SEAM_WORDS, WEARERS, YES_NO
from advisor.knowledge.model import Aspect, Knowledge
from advisor.project.edgewords import MADE
from advisor.project.garment import Maker, Seam, Use
from advisor.project.otherwords import SAME_WORDS, with_meant_key
from advisor.units import parse

CHOICES = {
    "finish": "seam.finish",
    "seam": "seam.kind",
    "stitch": "stitch.type",
    "allowance": "seam.allowance",
    "needle": "needle.point",
    "needle size": "needle.size",
    "pressing": "press.motion",
    "support": "seam.support",
}
"""Keys of a seam by which the maker fixes an answer, and the aspect that each one fixes."""

NO_IRON = "finger-press"
"""The way of pressing in which no iron comes near the seam."""

SEAM_KEYS = ("length", *CHOICES, *SEAM_WORDS)
"""Everything that may be said of a seam besides its name and its layers."""

TAKEN = ("length", "allowance", *SEAM_WORDS)
"""What is taken for granted of a seam, or left out of account, where nobody says it."""

OF_OVERLOCKER = frozenset({"overlocked", "503", "504", "514", "516"})
"""Answers of hers that nothing but an overlocker makes."""
USUAL_OVERLOCKER = "4-thread"
"""The overlocker that is meant where somebody only says that she has one: estimate."""


class Measure(Struct, frozen=True):
    """A quantity's kind, its least and greatest value in the base unit, and both in words."""

    kind: str
    low: float
    high: float
    words: str
    unit: str = ""


MEASURES: Mapping[str, Measure] = {
    "length": Measure("length", 1.0, 50_000.0, "a length from 1 mm to 50 m", "cm or in"),
    "allowance": Measure("length", 3.0, 50.0, "from 3 to 50 mm (1/8 to 2 in)", "mm or in"),
    "foot lift": Measure("length", 1.0, 40.0, "from 1 to 40 mm", "mm or in"),
    "thickness": Measure("length", 0.01, 50.0, "from 0.01 to 50 mm", "mm or in"),
    "weight": Measure(
        "weight", 5.0, 3000.0, "from 5 to 3000 g/m² (0.15 to 88 oz/yd²)", "g/m2, oz or momme"
    ),
    "fullness": Measure("count", 1.0, 6.0, "from 1 (not gathered) to 6"),
    "stretched": Measure("count", 1.0, 2.0, "from 1 (not stretched) to 2"),
    "width": Measure("length", 1.0, 2_000.0, "a notion from 1 mm to 2 m wide", "mm or in"),
    "body": Measure("length", 50.0, 2_500.0, "a body from 5 cm to 2.5 m round", "cm or in"),
    "needle size": Measure("needle", 55.0, 130.0, "a needle from 55 to 130 (US 7 to 21)"),
}


ALSO_TAKEN = {"edge": tuple(MADE)}
"""Words of a key that say what is made, and are read as that."""


def read_fact(key: str, value: object, knowledge: Knowledge, *, bare: bool = True) -> str | float:
    """One fact of a seam, as rules ask it; a number without its unit is refused.

    Raises:
        InputError: no such fact, or no such answer.
    """
    if key in MEASURES and key in SEAM_KEYS:
        return read_measure(key, value, bare=bare)
    try:
        if key in SEAM_WORDS:
            return read_word(key, value, SEAM_WORDS[key], ALSO_TAKEN.get(key, ()))
        if key in CHOICES:
            return _read_option(key, value, knowledge.aspects[CHOICES[key]])
    except InputError as error:
        raise with_meant_key(error, key, _text(value).casefold(), knowledge) from None
    raise InputError(
        Problem(f"unknown fact '{key}' of a seam", None, None, nearest(key, SEAM_KEYS))
    )


OTHER_FEET = (
    "blind hem",
    "button",
    "buttonhole",
    "cording",
    "darning",
    "hemmer",
    "open-toe",
    "piping",
    "satin stitch",
)
"""Feet that come with a machine and on which no advice turns (common practice)."""
SAME_FOOT = {
    "invisible zip": "concealed zip",
    "invisible zipper": "concealed zip",
    "narrow hem": "hemmer",
    "rolled hem": "hemmer",
    "zipper": "zip",
}
"""What a foot is called as well (common practice)."""


def read_maker_fact(
    key: str, value: object, knowledge: Knowledge, *, bare: bool = True
) -> str | float:
    """One fact of the maker's kit; `foot` is one of her feet.

    Raises:
        InputError: no such fact, or no such answer.
    """
    if key == "foot lift":
        return read_measure(key, value, bare=bare)
    if key == "machine":
        return read_word(key, value, machines_of(knowledge))
    if key == "overlocker":
        return read_word(key, value, [*overlockers_of(knowledge), *YES_NO])
    if key == "foot":
        return _read_foot(value, knowledge.aspects["machine.foot"])
    if key == "worn by":
        return read_word(key, value, WEARERS)
    if key == "outer garment":
        return read_word(key, value, YES_NO)
    known = ("machine", "foot lift", "overlocker", "feet", "worn by", "outer garment")
    raise InputError(Problem(f"unknown fact '{key}' of the maker", None, None, nearest(key, known)))


def overlockers_of(knowledge: Knowledge) -> tuple[str, ...]:
    """The overlockers that are known, by how many threads they have."""
    return tuple(id_ for id_ in knowledge.machines if id_.endswith("-thread"))


def machines_of(knowledge: Knowledge) -> tuple[str, ...]:
    """What a maker sews her seams on; an overlocker stands beside it."""
    return tuple(id_ for id_ in knowledge.machines if not id_.endswith("-thread"))


def make_maker(said: Mapping[str, Any]) -> Maker:
    """The maker of facts already read: machine, overlocker, feet (a tuple), foot lift."""
    overlocker = str(said.get("overlocker", ""))
    assumed = [key for key in ("machine", "overlocker", "foot lift", "feet") if key not in said]
    if overlocker == "yes":
        assumed.append("overlocker")
    return Maker(
        said.get("machine", "household"),
        {"yes": USUAL_OVERLOCKER, "no": ""}.get(overlocker, overlocker),
        said.get("feet"),
        said.get("foot lift"),
        tuple(assumed),
        said.get("worn by", ""),
        said.get("outer garment", ""),
    )


def with_overlocker(maker: Maker, seams: Iterable[Seam]) -> Maker:
    """The maker with the usual overlocker, where she names none and has something overlocked."""
    chosen = {answer for seam in seams for _, answer in seam.choices}
    if "overlocker" not in maker.assumed or maker.overlocker or not chosen & OF_OVERLOCKER:
        return maker
    return replace(maker, overlocker=USUAL_OVERLOCKER)


def make_seam(name: str, uses: tuple[Use, ...], said: Mapping[str, Any], maker: Maker) -> Seam:
    """A seam of facts already read; a lone layer is folded on itself or joined to its like."""
    assumed = [key for key in TAKEN if key not in said]
    if len(uses) == 1:
        uses = uses * 2
        assumed.insert(0, "layers")
    by_hand = said.get("stitched by", "hand" if maker.machine == "hand" else "") == "hand"
    if by_hand and "stitched by" in assumed:
        assumed.remove("stitched by")
    choices = tuple((CHOICES[key], said[key]) for key in sorted(said) if key in CHOICES)
    return Seam(
        name,
        uses,
        dict(said),
        choices,
        cold=said.get("pressing") == NO_IRON,
        by_hand=by_hand,
        assumed=tuple(assumed),
    )


def read_word(key: str, value: object, known: Iterable[str], also: Iterable[str] = ()) -> str:
    """One of a few words, capitals or not; `true` and `false` are yes and no.

    `also` are words that are read before, and are told to whoever writes another.

    Raises:
        InputError: another word.
    """
    words = {word.casefold(): word for word in known}
    text = _text(value)
    called = text.casefold()
    found = words.get(called) or words.get(SAME_WORDS.get(key, {}).get(called, ""))
    if found is None:
        raise _unknown(key, text, [*words.values(), *also])
    return found


def _read_foot(value: object, aspect: Aspect) -> str:
    """A foot, with or without the word; one on which no advice turns is taken as it is."""
    text = _text(value)
    bare = text.casefold().removesuffix(" foot").strip()
    bare = SAME_FOOT.get(bare, bare)
    known = [*aspect.words, *OTHER_FEET]
    return bare if bare in known else _read_option("feet", text, aspect, known)


def _read_option(
    key: str, value: object, aspect: Aspect, known: Sequence[str] | None = None
) -> str:
    """An answer of an aspect, by its word or by the longer name that is printed for it.

    `known` is what a refusal names, where more than the aspect's words is understood.
    """
    text = _text(value)
    names = {word.casefold(): word for word in aspect.words}
    for word, label in aspect.labels.items():
        names.setdefault(label.casefold(), word)
        names.setdefault(label.partition(" (")[0].casefold(), word)
    found = names.get(text.casefold()) or SAME_WORDS.get(key, {}).get(text.casefold())
    if found is None:
        numbers = {
            word: aspect.labels.get(word, word) for word in aspect.words if word[0].isdigit()
        }
        raise _unknown(key, text, [numbers.get(word, word) for word in known or aspect.words])
    return found


def read_measure(
    key: str, value: object, *, bare: bool = True, about: Measure | None = None
) -> float:
    """A quantity within its bounds, in its base unit; `about` where the key has no bounds here.

    `bare` is whether metric units are suggested where a number stands without any.

    Raises:
        InputError: not such a quantity, beyond its bounds, or without a unit where it needs one.
    """
    about = about or MEASURES[key]
    text = _text(value)
    sure = bare and about.kind == "weight"  # so many ounces or momme no cloth has
    if about.unit and not sure and _is_bare(text) and text.strip("0.,"):
        raise _without_unit(key, text, about, bare=bare)
    if about.kind == "weight" and text.endswith("mm") and not text.endswith(" momme"):
        text = f"{text.removesuffix('mm')} momme"  # silk is sold by the "mm"
    try:
        number = parse(about.kind, text)
    except ValueError as error:
        message, _, accepted = str(error).partition("; write ")
        raise InputError(Problem(f"'{key}': {message}", None, accepted or None)) from None
    if not about.low - 1e-9 <= number <= about.high + 1e-9 or not math.isfinite(number):
        raise InputError(Problem(f"'{key}': {shown(text)} cannot be right", None, about.words))
    return number


def _without_unit(key: str, text: str, about: Measure, *, bare: bool) -> InputError:
    """The refusal of a bare number, with the line to write instead: 40 may be 40 mm or 40 cm."""
    units = about.unit.replace(" or ", ", ").split(", ")
    likeliest = [units[0], "cm", *units] if bare else [units[1], *units]
    written = f"{key}: {text} {next((u for u in likeliest if _fits(text, u, about)), likeliest[0])}"
    expected = f"a unit after it ({about.unit}), as in '{written}'"
    return InputError(Problem(f"'{key}': the number {shown(text)} has no unit", None, expected))


def _fits(text: str, unit: str, about: Measure) -> bool:
    """Whether a number with this unit would be taken."""
    try:
        return about.low <= parse(about.kind, f"{text} {unit}") <= about.high
    except ValueError:
        return False


def _is_bare(text: str) -> bool:
    return not any(sign.isalpha() or sign in '"″”' for sign in text)


def _text(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float) and value.is_integer():
        return f"{value:.0f}"
    return " ".join(str(value).split())


def _unknown(key: str, text: str, known: list[str]) -> InputError:
    expected = f"one of {', '.join(known)}"
    return InputError(
        Problem(f"'{key}': unknown word {shown(text)}", None, expected, nearest(text, known))
    )
