"""Takes the measures out of a phrase: a weight in any usual unit, or a range in words.

A width, a yarn count, a denier or a number of wales is no weight; it is taken out too, so that no
number is read as the share of a fibre.
"""

from __future__ import annotations

import re

from advisor.errors import InputError, Problem
from advisor.project.phrases.lexicon import SHADES
from advisor.project.phrases.tokens import singulars
from advisor.units import parse

Weight = tuple[float, float]

_NUMBER = r"(\d+(?:[.,]\d+)?)"
_AREA = (
    r"(?:\s*(?:/|per|p)?\s*(?:sq(?:uare|\.)?\s*)?(?:met(?:re|er)s?|qm|sm|m|yards?|yd|y)(?![a-z])"
    r"\s*(?:-?2(?!\d)|²|\^2)?)?"
)
_WEIGHT = re.compile(
    rf"(?:\b(?:ca?|circa|approx)\b\.?\s*)?(?<![\w.]){_NUMBER}\s*-?\s*"
    rf"(gsm\b|kg\s*/\s*(?:sq\.?\s*m\b|m\s*(?:2\b|²|\^2))|g(?:rammes?|rams?|r|ms?)?\.?(?![a-z](?<!m)){_AREA}"
    rf"|ozs?\.?{_AREA}|ounces?{_AREA}|mommes?\b|mmes?\b|m\s?/\s?m\b|mm\b)",
    re.IGNORECASE,
)
_RUNNING = re.compile(
    rf"{_NUMBER}\s*g(?:rams?)?\s*/?\s*(?:lm|lin(?:ear)?\.?\s*m\w*|running\s*m\w*)\b", re.IGNORECASE
)
_ASIDE = re.compile(
    rf"(?<![\w.])(?:super\s*\d+\s*'?s?\b"
    rf"|{_NUMBER}\s*-?\s*(?:cm|inch(?:es)?|in|m|met(?:re|er)s?|yds?|yards?)\b(?:\s*wide|\s*width)?"
    rf"|{_NUMBER}\s*-?\s*(?:wales?|microns?|µm|den(?:ier)?|d|dtex|tex|tc|threads?(?:\s*count)?|count|ply|layers?|gauge|ne|nm|wt|mils?|holes?)\b"
    rf"|(?:tex|tkt|ticket|no|nr|size|ss)\.?\s*\d+(?:/\d+)?\b(?!\s*%)"
    rf"|{_NUMBER}w\b(?!/)|upf\s*\d+\+?|{_NUMBER}\s*-?\s*lea\b|\d\d+\s*[x×]\s*\d\d+\b"
    rf"|{_NUMBER}\s*\"|{_NUMBER}'?s\b|(?:\d+\s+)?\d+\s*/\s*\d+\s*(?:\"|in\b|inch(?:es)?\b))",
    re.IGNORECASE,
)
_UNIT_FIRST = re.compile(
    rf"(?<!\d)(?<!\d\s)\b(gsm|mommes?|oz)\b\s*[:=]?\s*{_NUMBER}\b(?!\s*%)", re.IGNORECASE
)
_THICK = re.compile(rf"(?<![\w.]){_NUMBER}\s*mm\s*(?:thick\w*|pile|deep)\b", re.IGNORECASE)
_THICKNESS = re.compile(rf"(?<![\w.]){_NUMBER}\s*mm\b", re.IGNORECASE)
_BY_THICKNESS = re.compile(
    r"leather|suede|hide\b|skin\b|neoprene|scuba|felt|foam|vinyl|fur\b|wadding|padded|sequin|bead|dot|spot"
    r"|ribbon|tape\b|elastic\b|zip|trim|braid|button|cord\b|eyelet|grommet|rivet|snap|popper|hook|bon(?:e|ing)\b"
    r"|binding|piping|webbing|strap|fringe|tassel|check|stripe|gingham|sherpa|sheepskin",
    re.IGNORECASE,
)
"""Cloths and patterns of which "mm" is a size; of a silk it is the momme."""
_LEAST_MOMME = 4.0
_LEAST, _MOST = 5.0, 3000.0
LIGHT = singulars(frozenset({"light", "lightweight", "lighter", "thin", "featherweight", "fine"}))
MIDDLE = frozenset({"medium", "mid", "midweight", "mediumweight", "middleweight", "middling"})
HEAVY = frozenset(
    {"heavy", "heavyweight", "heavier", "thick", "heavyduty", "chunky", "bottomweight"}
)
WEIGHT_WORDS = LIGHT | MIDDLE | HEAVY


def take_weight(text: str) -> tuple[str, Weight | None, tuple[str, ...]]:
    """The phrase without its measures, the weight in g/m², and what was left out.

    Raises:
        InputError: the weight is none that a cloth can have.
    """
    left: list[str] = []
    text = _UNIT_FIRST.sub(r"\2 \1", text)
    for pattern in (_RUNNING, _THICK):
        left += [found.group(0).strip() for found in pattern.finditer(text)]
        text = pattern.sub(" ", text)
    thick = _THICKNESS.search(text)
    if thick is not None and (
        _BY_THICKNESS.search(text) or float(thick.group(1).replace(",", ".")) < _LEAST_MOMME
    ):
        left.append(thick.group(0).strip())
        text = f"{text[: thick.start()]} {text[thick.end() :]}"
    weight = None
    found = _WEIGHT.search(text)
    if found is not None:
        grams = _grams(found.group(1), found.group(2))
        weight = (grams, grams)
        text = f"{text[: found.start()]} {text[found.end() :]}"
    return _ASIDE.sub(" ", text), weight, tuple(left)


def size_in(text: str) -> str:
    """What is said in millimetres: of a ring or a ribbon it is no weight in momme."""
    found = _THICKNESS.search(text)
    return found.group(0).strip() if found else ""


def _grams(number: str, unit: str) -> float:
    plain = unit.casefold()
    kinds = {"m": "momme", "o": "oz", "k": "kg/m2"}
    kind = kinds.get(plain[0], "gsm")
    text = f"{number}{unit}".strip()
    try:
        grams = parse("weight", f"{number.replace(',', '.')} {kind}")
    except ValueError as error:
        raise InputError(Problem(f"not understood: '{text}'", None, str(error))) from None
    if not _LEAST <= grams <= _MOST:
        expected = f"a weight from {_LEAST:g} to {_MOST:g} g/m2"
        raise InputError(Problem(f"not understood: '{text}'", None, expected))
    return grams


def weight_in_words(words: list[str], usual: Weight | None) -> Weight | None:
    """The third of a cloth's usual weights that a word names; None where no word does."""
    if usual is None:
        return None
    third = (usual[1] - usual[0]) / 3
    said = [
        word
        for at, word in enumerate(words)
        if word in WEIGHT_WORDS
        and not (word == "light" and words[at + 1 : at + 2] and words[at + 1] in SHADES)
    ]
    if any(word in HEAVY for word in said):
        return (round(usual[1] - third), usual[1])
    if any(word in MIDDLE for word in said):
        return (round(usual[0] + third), round(usual[1] - third))
    if any(word in LIGHT - {"fine"} for word in said):
        return (usual[0], round(usual[0] + third))
    return None
